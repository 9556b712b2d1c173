"""GET /api/batches.csv, /api/batches/<id>.csv, /api/log.json: files to keep or to open in a spreadsheet."""

from flask import Response, abort, stream_with_context

from amberbench.services import export

from .files import CSV, file
from .json_blueprint import JsonBlueprint

blueprint = JsonBlueprint("export", __name__, description="Files to take along")


@blueprint.route("/batches.csv", methods=["GET"])
@blueprint.response(200, {"type": "string"}, content_type="text/csv")
def batches() -> Response:
    """All batches, newest first, one a row. Names carry units (kg); times are ISO 8601, UTC.

    `pieces_are` says counted or planned; `caramel_kg` is weighed in, else planned. RFC 4180; a cell that a spreadsheet
    would run as a formula begins with an apostrophe.
    """
    return file("amberbench-batches.csv", export.batches_csv(), CSV)


@blueprint.route("/batches/<batch_id>.csv", methods=["GET"])
@blueprint.response(200, {"type": "string"}, content_type="text/csv")
def timeline(batch_id: str) -> Response:
    """What happened in one batch, an event a row, in the order of the log.

    `counts` says yes, taken_back or did_not_fit; `typed_at` is filled where the event was typed in later.
    """
    text = export.timeline_csv(batch_id)
    if text is None:
        abort(404)
    return file("amberbench-timeline.csv", text, CSV)


@blueprint.route("/log.json", methods=["GET"])
@blueprint.response(200, {"type": "object"})
def log() -> Response:
    """Every event of batches and shop, in the server's order: `{app, holds: "log", events}`."""
    return file("amberbench-log.json", stream_with_context(export.log_json()), "application/json")
