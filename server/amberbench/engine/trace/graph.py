"""What went into what: deliveries, batches, boxes packed, orders and customers as one graph.

A node is "<kind>/<id>": lot, batch, pack, order, customer. A link leads from what went in to what came of it.
At the bench a lot is typed as its label says it, so a batch hangs on a name ("name/chocolates#118"), and so does every
lot of chocolate that came under it: two deliveries of one name are both followed. Names are passed through, not shown.
"""

from ..core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..core.annotations import Document, Readable

    Link = tuple[str, str]

KINDS = ("lot", "batch", "pack", "order", "customer")
NAME = "name/"


def links_of_lot(lot: "Readable") -> "list[Link]":
    """From the batch it was left over of, to the lot it was poured to, and to its name."""
    node = "lot/" + lot["id"]
    found = [("batch/" + lot["made_from"], node)] if lot["made_from"] else []
    found += [(node, "lot/" + lot["merged_into"])] if lot["merged_into"] else []
    return found + [(node, name) for name in _names(lot["material"].split("/")[0], [lot["supplier_lot"]])]


def links_of_batch(batch: "Readable") -> "list[Link]":
    """From the lots that were taken or typed for it, as `of_run` has them, and to what was left of its chocolate."""
    node = "batch/" + batch["batch_id"]
    went_in = _names("chocolates" if batch["is_bowl"] else "caramels", [batch["lot"]])
    went_in += _names("chocolates", batch["dipped_lots"]) + _names("materials", batch["under_lots"])
    went_in += ["lot/" + lot_id for lot_id in batch["used_lots"]]
    return [(name, node) for name in went_in] + [(node, name) for name in _names("chocolates", [batch["leftover_lot"]])]


def of_run(batch_id: str, run: "Readable") -> "Document":
    """What `links_of_batch` reads of a run."""
    bowl, dip, cluster = run["bowl"], run.get("dip"), run.get("cluster")
    return {
        "batch_id": batch_id,
        "is_bowl": bowl is not None,
        "lot": run["lot"],
        "used_lots": [use["lot_id"] for use in run.get("uses", [])],
        "dipped_lots": [one["lot"] for one in (dip or {}).get("bowls", [])],
        "under_lots": [one["lot"] for one in (cluster or {}).get("under_lots", [])],
        "leftover_lot": None if bowl is None else bowl["leftover_lot"],
    }


def _names(materials: str, lots: "Sequence[str | None]") -> list[str]:
    named = [lot.strip().lower() for lot in lots if lot is not None]
    return [NAME + materials + "#" + lot for lot in named if lot]


def links_of_pack(pack: "Readable") -> "list[Link]":
    """From the batches whose pieces it holds, and the lots it is packed in."""
    node = "pack/" + pack["id"]
    found = [("batch/" + one["batch_id"], node) for one in pack["from"] if one["batch_id"]]
    return found + [("lot/" + one["lot_id"], node) for one in pack["lots"]]


def links_of_order(order: "Readable") -> "list[Link]":
    """From the boxes that were handed over for it, and to its customer."""
    node = "order/" + order["id"]
    found = [("pack/" + one["pack_id"], node) for one in order["handed"] if one["pack_id"]]
    named = order["customer_id"] or order["customer"]
    return found + ([(node, "customer/" + named)] if found and named else [])


def walk(request: "Readable") -> "Document":
    """From one thing back to deliveries and forward to customers.

    Request: start ("<kind>/<id>"), links (text, a line for each: what went in, a tab, what came of it; thousands of
    records would take a phone seconds to check).
    Reply: back and forward (nodes by distance, nearest first, without the start), links (those among them and the
    start), deliveries (lots that came from outside, the start too if it is one), customers (who got something of it).
    Raises: Problem not_a_node (start), not_a_link (links: a line that is not two).
    Relation: breadth first, each node once; a ring ends where it began. From outside comes a lot that no batch left,
    whatever was poured to it.
    Source: practice; 21 CFR part 1 subpart J asks for one step back and one forward.
    """
    links: "list[Link]" = []
    for line in request["links"].split("\n"):
        ends = line.split("\t")
        if len(ends) == 2:
            links.append((ends[0], ends[1]))
        elif line:
            raise Problem("links", "not_a_link", line[:200])
    return both_ways(request["start"], links)


def both_ways(start: str, links: "Sequence[Link]") -> "Document":
    """What `walk` replies; raises what it does."""
    if start.split("/")[0] not in KINDS or start.count("/") < 1 or start.endswith("/"):
        raise Problem("start", "not_a_node", start, accepted=list(KINDS))
    without_names = shown(links)
    sources: "dict[str, list[str]]" = {}
    results: "dict[str, list[str]]" = {}
    for one, other in without_names:
        results.setdefault(one, []).append(other)
        sources.setdefault(other, []).append(one)
    back, forward = _reached(start, sources), _reached(start, results)
    among = {name: True for name in back + forward + [start]}
    kept = [link for link in without_names if link[0] in among and link[1] in among]
    return {
        "back": back,
        "forward": forward,
        "links": [{"from": one, "to": other} for one, other in _once(kept)],
        "deliveries": [name for name in back + [start] if name[:4] == "lot/" and not _is_left_over(name, sources)],
        "customers": [name for name in forward if name[:9] == "customer/"],
    }


def _is_left_over(name: str, sources: "dict[str, list[str]]") -> bool:
    return bool([one for one in sources.get(name, []) if one[:6] == "batch/"])


def shown(links: "Sequence[Link]") -> "list[Link]":
    """The links without names: whatever leads to a name leads to all that follows from it."""
    into: "dict[str, list[str]]" = {}
    for one, other in links:
        if other[:5] == NAME:
            into.setdefault(other, []).append(one)
    found: "list[Link]" = []
    for link in links:
        if link[0][:5] == NAME:
            found += [(one, link[1]) for one in into.get(link[0], []) if one != link[1]]
        elif link[1][:5] != NAME:
            found.append(link)
    return found


def _reached(start: str, neighbours: "dict[str, list[str]]") -> list[str]:
    found, seen = [start], {start: True}
    for name in found:  # grows while it is walked
        for other in sorted(neighbours.get(name, [])):
            if other not in seen:
                seen[other] = True
                found.append(other)
    return found[1:]


def _once(links: "Sequence[Link]") -> "list[Link]":
    seen: "dict[Link, bool]" = {}
    found = []
    for link in links:
        if link not in seen:
            seen[link] = True
            found.append(link)
    return found
