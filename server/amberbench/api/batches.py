"""GET /api/batches, GET /api/batches/<id>, GET /api/contributions: records, and what they teach."""

from typing import Any

from flask import Response, abort

from amberbench.schemas import request_schemas
from amberbench.schemas.json_schema import reference
from amberbench.services import batches, contributions

from .json_blueprint import JsonBlueprint, answer

blueprint = JsonBlueprint("batches", __name__, description="What was made, folded from the log")


@blueprint.route("/batches", methods=["GET"])
@blueprint.arguments(request_schemas.BatchesQuery, location="query")
@blueprint.response(200, reference("Batches"))
def newest(query: dict[str, Any]) -> Response:
    """Summaries, newest first."""
    return answer(batches.newest(query["limit"], query["before"]))


@blueprint.route("/batches/<batch_id>", methods=["GET"])
@blueprint.response(200, reference("ServerRecord"))
def record(batch_id: str) -> Response:
    """Everything about one batch: planned and happened."""
    found = batches.record(batch_id)
    if found is None:
        abort(404)
    return answer(found)


@blueprint.route("/contributions", methods=["GET"])
@blueprint.response(200, reference("Contributions"))
def taught() -> Response:
    """What the batches closed last teach, newest first: a phone folds them by learn.fold."""
    return answer(contributions.newest())
