"""The queries of what went into what."""

from collections.abc import Iterable, Sequence

from sqlalchemy import CTE, String, cast, delete, insert, literal, select
from sqlalchemy.orm import Session

from .models import BatchRow, LinkRow, StreamDocumentRow

Link = tuple[str, str]


def replace(session: Session, owner: str, links: Iterable[Link]) -> None:
    """The links that follow from one stream, in place of those it had."""
    session.execute(delete(LinkRow).where(LinkRow.owner == owner))
    rows = [{"owner": owner, "from_node": one, "to_node": other} for one, other in sorted(set(links))]
    if rows:
        session.execute(insert(LinkRow), rows)


def around(session: Session, start: str) -> Sequence[Link]:
    """The links among what leads to a node and what it leads to, each once."""
    back, forward = _reached(start, to_results=False), _reached(start, to_results=True)
    asked = select(LinkRow.from_node, LinkRow.to_node)
    found: dict[Link, None] = {}
    for query in (
        asked.join(back, LinkRow.to_node == back.c.node),
        asked.join(forward, LinkRow.from_node == forward.c.node),
        # From what went in past the start itself: boxes from a lot that the batch and its box both hold.
        asked.where(LinkRow.from_node.in_(select(back.c.node)), LinkRow.to_node.in_(select(forward.c.node))),
    ):
        found.update(dict.fromkeys((one, other) for one, other in session.execute(query)))
    return list(found)


def _reached(start: str, to_results: bool) -> CTE:
    """The start and all that is reached from it one way; UNION keeps each once, so that a ring ends."""
    near, far = (LinkRow.from_node, LinkRow.to_node) if to_results else (LinkRow.to_node, LinkRow.from_node)
    first = select(cast(literal(start), String(200)).label("node"))
    reached = first.cte("forward" if to_results else "back", recursive=True)
    return reached.union(select(far).where(near == reached.c.node))


def batch_names(session: Session, batch_ids: Sequence[str]) -> dict[str, str]:
    """What some batches are called."""
    return dict(session.execute(select(BatchRow.batch_id, BatchRow.name).where(BatchRow.batch_id.in_(batch_ids))).all())


def documents(session: Session, kind: str, ids: Sequence[str]) -> dict[str, str | None]:
    """The documents of some streams of a kind, as JSON."""
    asked = select(StreamDocumentRow.id, StreamDocumentRow.document)
    return dict(session.execute(asked.where(StreamDocumentRow.kind == kind, StreamDocumentRow.id.in_(ids))).all())
