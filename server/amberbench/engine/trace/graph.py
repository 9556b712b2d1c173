"""What went into what: deliveries, batches, boxes packed, orders and customers as one graph.

A node is "<kind>/<id>": lot, batch, pack, order, customer. A link leads from what went in to what came of it.
"""

from ..core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

    from ..core.annotations import Document, Readable

    Link = tuple[str, str]

KINDS = ("lot", "batch", "pack", "order", "customer")


def links_of_lot(lot: "Readable") -> "list[Link]":
    """From the batch it was left over of, and to the lot it was poured to."""
    node = "lot/" + lot["id"]
    found = [("batch/" + lot["made_from"], node)] if lot["made_from"] else []
    return found + ([(node, "lot/" + lot["merged_into"])] if lot["merged_into"] else [])


def links_of_batch(batch_id: str, uses: "Sequence[Readable]", bowls: "Sequence[str]") -> "list[Link]":
    """From the lots that went in, and the bowls of chocolate it was dipped from."""
    node = "batch/" + batch_id
    return [("lot/" + use["lot_id"], node) for use in uses] + [("batch/" + bowl, node) for bowl in bowls]


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

    Request: start ("<kind>/<id>"), links (pairs: from what went in, to what came of it).
    Reply: back and forward (nodes by distance, nearest first, without the start), links (those among them and the
    start), deliveries (lots that came from outside, the start too if it is one), customers (who got something of it).
    Raises: Problem not_a_node (start).
    Relation: breadth first, each node once; a ring ends where it began.
    Source: practice; 21 CFR part 1 subpart J asks for one step back and one forward.
    """
    start = request["start"]
    if start.split("/")[0] not in KINDS or start.count("/") < 1 or start.endswith("/"):
        raise Problem("start", "not_a_node", start, accepted=list(KINDS))
    sources: "dict[str, list[str]]" = {}
    results: "dict[str, list[str]]" = {}
    for link in request["links"]:
        results.setdefault(link["from"], []).append(link["to"])
        sources.setdefault(link["to"], []).append(link["from"])
    back, forward = _reached(start, sources), _reached(start, results)
    among = {name: True for name in back + forward + [start]}
    kept = [dict(link) for link in request["links"] if link["from"] in among and link["to"] in among]
    return {
        "back": back,
        "forward": forward,
        "links": _once(kept),
        "deliveries": [name for name in back + [start] if name[:4] == "lot/" and not sources.get(name)],
        "customers": [name for name in forward if name[:9] == "customer/"],
    }


def _reached(start: str, neighbours: "dict[str, list[str]]") -> list[str]:
    found, seen = [start], {start: True}
    for name in found:  # grows while it is walked
        for other in sorted(neighbours.get(name, [])):
            if other not in seen:
                seen[other] = True
                found.append(other)
    return found[1:]


def _once(links: "list[Any]") -> "list[Any]":
    seen: "dict[tuple[str, str], bool]" = {}
    found = []
    for link in links:
        key = (link["from"], link["to"])
        if key not in seen:
            seen[key] = True
            found.append(link)
    return found
