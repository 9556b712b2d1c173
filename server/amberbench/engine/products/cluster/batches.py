"""What is more than one bowl takes, as several batches of clusters: alike, or with smaller ones at the end."""

from .. import capacity, remelt, subplans
from .job import ClusterJob

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable

# What a batch asks for otherwise than the whole did.
ASKED = ("rows", "caramel_kg", "old")


def split(request: "Readable") -> "list[tuple[int, Readable]]":
    """[(how many batches, the request of each)] in the order in which they are made; one of 1 where one is enough."""
    job = ClusterJob(request)
    number = capacity.batches_for(job.caramel_kg, job.most_kg)
    if number == 1:
        return [(1, request)]
    capacity.refuse_many(job.field, job.caramel_kg, number, "kg")
    if request["caramel_kg"] is not None:
        return [(number, dict(request, caramel_kg=request["caramel_kg"] / number))]
    most = max(row["clusters"] for row in request["rows"])
    for shared in (_alike, _in_turn):
        for batches in range(number, capacity.MOST_BATCHES + 1):
            shares = shared(request, batches)
            if all(_takes(request, share) for share in shares):
                return _grouped(request, shares)
            if shared is _alike and batches >= most:
                break
    return [(1, request)]


def _alike(request: "Readable", number: int) -> list[list[int]]:
    """How many clusters of each row go into each batch: as many of each, and what is left of a row into the last."""
    shares = []
    for batch in range(number):
        share = []
        for row in request["rows"]:
            each = -(-row["clusters"] // number)
            share.append(max(0, min(each, row["clusters"] - batch * each)))
        if sum(share) > 0:
            shares.append(share)
    return shares


def _in_turn(request: "Readable", number: int) -> list[list[int]]:
    """The same, one row after the other: where every batch would have one cluster of each and that is too much."""
    rows = [row["clusters"] for row in request["rows"]]
    total, shares = sum(rows), []
    for batch in range(number):
        first, end, before, share = total * batch // number, total * (batch + 1) // number, 0, []
        for clusters in rows:
            share.append(max(0, min(end, before + clusters) - max(first, before)))
            before += clusters
        if sum(share) > 0:
            shares.append(share)
    return shares


def _takes(request: "Readable", share: list[int]) -> bool:
    """Whether one bowl takes so many of each row; a single cluster is as small as they come."""
    asked = ClusterJob(_of(request, share))
    return capacity.holds(asked.most_kg, asked.caramel_kg) or sum(share) == 1


def _of(request: "Readable", share: list[int]) -> "Document":
    rows = [dict(row, clusters=number) for row, number in zip(request["rows"], share) if number > 0]
    return dict(request, rows=rows)


def _grouped(request: "Readable", shares: list[list[int]]) -> "list[tuple[int, Readable]]":
    groups: "list[tuple[int, list[int]]]" = []
    for share in shares:
        if groups and groups[-1][1] == share:
            groups[-1] = (groups[-1][0] + 1, share)
        else:
            groups.append((1, share))
    return [(number, _of(request, share)) for number, share in groups]


def said(whole: "Readable", groups: "list[tuple[int, Readable]]") -> "Document":
    """What a plan says of its batches, and of what it could not be held to."""
    each = []
    for number, request in groups:
        job = ClusterJob(request)
        one = {"count": number, "pieces": job.clusters, "good": job.good, "caramel_kg": job.caramel_kg}
        each.append(dict(one, asked={name: request[name] for name in ASKED}))
    together = capacity.together(whole, whole["caramel_kg"], each)
    remelt.share_out(whole, together, each)
    return {
        "good": each[0]["good"],
        "batches": each,
        "together": together,
        "sizes_unknown": ["bowl"] if whole["vessel_volume_m3"] is None else [],
    }


def weights(request: "Readable", job: ClusterJob, piece_kg: float) -> "Document":
    """What is weighed out for one batch and what it makes, and what to mind of old caramel in it."""
    old, warnings = remelt.reckoned(request, job.caramel_kg)
    blocks, leftover_kg = subplans.blocks(job.caramel_kg, request["block_kg"], request["caramel_kg"], old["old_kg"])
    return {
        "remelt": old,
        "warnings": warnings,
        "clusters": job.clusters,
        "second_kg": request["second_kg"],
        "deposits_kg": job.deposits_kg,
        "caramel_kg": job.caramel_kg,
        "piece_kg": piece_kg,
        "blocks": blocks,
        "leftover_kg": leftover_kg,
    }
