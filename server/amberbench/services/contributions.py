"""What the shop's closed batches teach, worked out once for each and kept."""

import logging
from typing import Any

from sqlalchemy.orm import Session

from amberbench.engine import VERSION, catalogue
from amberbench.engine.batch import courses
from amberbench.engine.core.problems import Problem
from amberbench.store import queries, reading, writing
from amberbench.store.models import BatchRow, ContributionRow

from . import documents, set_aside, strict_json, unexpected_errors
from .folding import opening_of

log = logging.getLogger(__name__)
Document = dict[str, Any]

MOST = 60
"""So many batches, those closed last, teach: ovens age, rooms change with the season."""

KINDS_WITHOUT_MELT = [kind for kind, steps in courses.ORDER.items() if "melt" not in steps]
"""Kinds of batch that melt no caramel and so teach nothing: they must not crowd out those that do."""


def newest() -> Document:
    """`{contributions: [{batch_id, name, closed_at_ms, reason, contribution}]}` of the batches closed last.

    `reason` is why the shop leaves a batch out, or null; `contribution` as learn.contribution makes it, null for a
    batch that cannot be read. What is missing or outdated is worked out between transactions: it takes a while. Of a
    batch that another engine folded stands what that one found, until this one has folded it (`folding.fold_outdated`).
    """
    with reading() as session:
        rows = queries.batches_closed_last(session, MOST, KINDS_WITHOUT_MELT)
        kept = queries.contributions(session, [row.batch_id for row in rows])
        lines = [_line(row, kept.get(row.batch_id)) for row in rows]
        outdated = [
            (line, row.events, {"batch_id": row.batch_id, "plan": _plan(session, row.batch_id), "run": _run(row)})
            for row, line in zip(rows, lines, strict=True)
            if row.engine_version == VERSION and not _is_good(kept.get(row.batch_id), row.events)
        ]
    for line, _, request in outdated:
        line["contribution"] = _contribution(request)
    if outdated:
        with writing() as session:
            for line, events, _ in outdated:
                _keep(session, line, events)
    return {"contributions": lines}


def _is_good(kept: ContributionRow | None, events: int) -> bool:
    return kept is not None and (kept.events, kept.engine_version) == (events, VERSION)


def _plan(session: Session, batch_id: str) -> Document | None:
    openings, _ = set_aside.split(session, [documents.event(one) for one in queries.openings_of(session, batch_id)])
    opening = opening_of(openings)
    return opening["body"]["plan"] if opening else None


def _run(row: BatchRow) -> Document:
    return strict_json.read(row.run) if row.run else {}


def _line(row: BatchRow, kept: ContributionRow | None) -> Document:
    return {
        "batch_id": row.batch_id,
        "name": row.name,
        "closed_at_ms": None if row.closed_at_ms is None else documents.whole(row.closed_at_ms),
        "reason": _run(row).get("left_out"),
        "contribution": strict_json.read(kept.document) if kept and kept.document else None,
    }


def _contribution(request: Document) -> Document | None:
    try:
        contribution: Document = catalogue.call("learn.contribution", request)["contribution"]
        return contribution
    except Problem as problem:
        log.warning("batch %s teaches nothing: %s", request["batch_id"], problem)
        return None
    except Exception as error:  # the others teach all the same
        unexpected_errors.record(f"batch {request['batch_id']} teaches nothing", error)
        return None


def _keep(session: Session, line: Document, events: int) -> None:
    contribution = line["contribution"]
    document = strict_json.write(contribution) if contribution else None
    session.merge(ContributionRow(batch_id=line["batch_id"], events=events, engine_version=VERSION, document=document))
