"""GET /api/{lots,orders,packs}, one of each, and all as CSV or JSON; POST takes such a file in."""

from typing import Any

from flask import Response, abort, g

from amberbench.schemas import request_schemas
from amberbench.schemas.json_schema import reference
from amberbench.services import stream_documents, stream_export, stream_import

from .files import CSV, file
from .json_blueprint import JsonBlueprint, answer

blueprint = JsonBlueprint(
    "stream_documents", __name__, description="Lots, orders and boxes packed, folded from the log"
)


def _add(kind: str) -> None:
    """The addresses of one kind of stream."""
    place, name = f"/{kind}s", kind.capitalize()

    @blueprint.route(place, methods=["GET"], endpoint=f"{kind}_page")
    @blueprint.arguments(request_schemas.StreamDocumentsQuery, location="query")
    @blueprint.response(200, reference(f"{name}s"))
    def page(query: dict[str, Any]) -> Response:
        """A page of the list, latest first."""
        return answer(stream_documents.page(kind, **query))

    @blueprint.route(place, methods=["POST"], endpoint=f"{kind}_import")
    @blueprint.arguments(request_schemas.TableFile)
    @blueprint.response(200, reference("TakenIn"))
    def taken_in(given: dict[str, str]) -> Response:
        """Takes in a CSV or JSON file as this server writes it, or a CSV typed by hand: all of it or nothing."""
        return answer(stream_import.take_in(kind, given["file"], g.received_ms))

    @blueprint.route(f"{place}.csv", methods=["GET"], endpoint=f"{kind}_csv")
    @blueprint.response(200, {"type": "string"}, content_type="text/csv")
    def table() -> Response:
        """All of them, latest first; of an order a row for each line. RFC 4180; times are ISO 8601, UTC."""
        return file(f"amberbench-{kind}s.csv", stream_export.as_csv(kind), CSV)

    @blueprint.route(f"{place}.json", methods=["GET"], endpoint=f"{kind}_json")
    @blueprint.response(200, {"type": "object"})
    def whole() -> Response:
        """All of them, latest first: `{app, holds, engine_version, documents, events}`."""
        return file(f"amberbench-{kind}s.json", stream_export.as_json(kind), "application/json")

    @blueprint.route(f"{place}/<stream_id>", methods=["GET"], endpoint=f"{kind}_one")
    @blueprint.response(200, reference(f"{name}Record"))
    def one(stream_id: str) -> Response:
        """One of them with its events."""
        found = stream_documents.one(kind, stream_id)
        if found is None:
            abort(404)
        return answer(found)


for _kind in stream_documents.KINDS:
    _add(_kind)
