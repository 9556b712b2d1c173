"""What a shop takes along: its batches and one batch's timeline as CSV, its whole log as JSON."""

from collections.abc import Iterator
from typing import Any

from amberbench.engine import catalogue

from . import batches, events, spreadsheet, strict_json

PAGE = 500


def batches_csv() -> str:
    """All batches, newest first, as CSV."""
    found: list[dict[str, Any]] = []
    more = True
    while more:
        page = batches.newest(PAGE, found[-1]["batch_id"] if found else None)
        found += page["batches"]
        more = page["more"]
    return spreadsheet.write(catalogue.call("table.batches", {"batches": found}))


def timeline_csv(batch_id: str) -> str | None:
    """What happened in a batch as CSV; None if unknown."""
    record = batches.record(batch_id)
    if record is None:
        return None
    ignored = [one["id"] for one in (record["run"] or {}).get("ignored", []) if one["id"]]
    ignored += [one["id"] for one in record["set_aside"]]
    events = record["events"] + record["set_aside"]
    return spreadsheet.write(catalogue.call("table.timeline", {"events": events, "ignored": ignored}))


def log_json() -> Iterator[str]:
    """Every event, of the batches and of the shop, as one JSON document `{app, holds, events}`, page by page."""
    yield '{"app": "amberbench", "holds": "log", "events": ['
    after, more, mark = 0, True, "\n"
    while more:
        page = events.pull(after, PAGE)
        for one in page["events"]:
            yield mark + strict_json.write(one)
            mark = ",\n"
        after, more = page["cursor"], page["more"]
    yield "\n]}\n"
