"""What went into what, both ways, over all years: the links are kept as streams are folded."""

from typing import Any

from sqlalchemy.orm import Session

from amberbench.engine.trace import graph
from amberbench.store import link_queries, reading

from . import strict_json

Document = dict[str, Any]

NAMED = 400
"""So many of the nearest are called by name: whoever asks knows the latest by itself."""
LINKS_OF = {"lot": graph.links_of_lot, "pack": graph.links_of_pack, "order": graph.links_of_order}
NAME_IN = {"lot": "supplier_lot", "pack": "code", "order": "customer"}


def keep(session: Session, kind: str, document: Document) -> None:
    """The links of a lot, an order or boxes packed."""
    link_queries.replace(session, f"{kind}/{document['id']}", LINKS_OF[kind](document))


def keep_batch(session: Session, batch_id: str, run: Document, before: list[link_queries.Link] | None = None) -> None:
    """The links of a batch; nothing is written where those before were the same."""
    links = links_of_run(batch_id, run)
    if links != before:
        link_queries.replace(session, f"batch/{batch_id}", links)


def links_of_run(batch_id: str, run: Document) -> list[link_queries.Link]:
    """What `keep_batch` keeps of a run."""
    return graph.links_of_batch(graph.of_run(batch_id, run))


def trace(start: str) -> Document:
    """`{trace, names}`: as `trace.walk` replies, and what the nearest are called. Raises Problem."""
    with reading() as session:
        walked = graph.both_ways(start, link_queries.around(session, start[:200]))
        nodes = [start, *walked["back"][: NAMED // 2], *walked["forward"][: NAMED // 2]]
        return {"trace": walked, "names": _names(session, nodes)}


def _names(session: Session, nodes: list[str]) -> list[Document]:
    by_kind: dict[str, list[str]] = {}
    for node in nodes:
        kind, stream_id = node.split("/", 1)
        by_kind.setdefault(kind, []).append(stream_id)
    named = {f"batch/{one}": name for one, name in link_queries.batch_names(session, by_kind.get("batch", [])).items()}
    for kind, member in NAME_IN.items():
        for stream_id, document in link_queries.documents(session, kind, by_kind.get(kind, [])).items():
            named[f"{kind}/{stream_id}"] = (strict_json.read(document)[member] if document else "") or ""
    return [{"node": node, "name": name} for node, name in named.items() if name]
