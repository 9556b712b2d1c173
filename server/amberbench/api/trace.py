"""GET /api/trace: back to deliveries and forward to customers."""

from typing import Any

from flask import Response

from amberbench.schemas import request_schemas
from amberbench.schemas.json_schema import reference
from amberbench.services import tracing

from .json_blueprint import JsonBlueprint, answer

blueprint = JsonBlueprint("trace", __name__, description="What went into what")


@blueprint.route("/trace", methods=["GET"])
@blueprint.arguments(request_schemas.TraceQuery, location="query")
@blueprint.response(200, reference("Traced"))
def both_ways(query: dict[str, Any]) -> Response:
    """From a lot, batch, pack, order or customer both ways, over all years."""
    return answer(tracing.trace(query["start"]))
