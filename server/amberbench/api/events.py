"""POST and GET /api/events, GET /api/snapshot: the batch log."""

from typing import Any

from flask import Response, g

from amberbench.schemas import request_schemas
from amberbench.schemas.json_schema import reference
from amberbench.services import events, snapshot

from .json_blueprint import JsonBlueprint, answer, now_ms, with_clock

blueprint = JsonBlueprint("events", __name__, description="The batch log: facts are appended, never changed")


@blueprint.route("/events", methods=["POST"])
@blueprint.arguments(request_schemas.Push)
@blueprint.response(200, reference("Pushed"))
def push(request: dict[str, Any]) -> Response:
    """Stores events; the same event twice is known, not stored twice."""
    return answer(with_clock(events.push(request["events"], g.received_ms, g.role, g.phone and g.phone.device_id)))


@blueprint.route("/events", methods=["GET"])
@blueprint.arguments(request_schemas.PullQuery, location="query")
@blueprint.response(200, reference("Pulled"))
def pull(query: dict[str, Any]) -> Response:
    """Events after a cursor, in the server's order; a problem when the log is no longer the one the cursor is of."""
    return answer(events.pull(query["after"], query["limit"], query["seen"]))


@blueprint.route("/snapshot", methods=["GET"])
@blueprint.arguments(request_schemas.SnapshotQuery, location="query")
@blueprint.response(200, reference("Snapshot"))
def start(query: dict[str, Any]) -> Response:
    """What a phone starts from, page by page; pulls go on after its cursor."""
    return answer(snapshot.snapshot(now_ms(), query["after"], query["upto"]))
