"""GET /api/phones, DELETE /api/phones/<id>, POST /api/pairings, POST /api/pairings/use: the phones of the shop."""

from typing import Any

from flask import Response, abort, g, request

from amberbench.engine.core.problems import Problem
from amberbench.schemas import request_schemas
from amberbench.schemas.json_schema import reference
from amberbench.services import pairing

from . import access
from .json_blueprint import JsonBlueprint, answer

blueprint = JsonBlueprint("phones", __name__, description="The phones of the shop: paired, listed, revoked")


@blueprint.route("/phones", methods=["GET"])
@blueprint.response(200, reference("Phones"))
def listed() -> Response:
    """The paired phones, in the order they were paired."""
    own = g.phone.phone_id if g.phone else None
    return answer({"phones": pairing.listed(own)})


@blueprint.route("/phones/<phone_id>", methods=["DELETE"])
@blueprint.response(204)
@blueprint.alt_response(404, response="NOT_FOUND")
def revoke(phone_id: str) -> None:
    """Lets a phone in no more, at once; it keeps what it has. Its own phone nobody revokes."""
    if g.phone and phone_id == g.phone.phone_id:
        raise Problem("phone_id", "own_phone")
    if not pairing.revoke(phone_id, g.received_ms):
        abort(404)


@blueprint.route("/pairings", methods=["POST"])
@blueprint.arguments(request_schemas.Offered)
@blueprint.response(200, reference("PairingOffer"))
def offer(asked: dict[str, Any]) -> Response:
    """Lets one more phone in: a link, its picture (QR code) and eight digits, good for five minutes, once."""
    made = pairing.offer(request.host_url, asked["name"], asked["role"], g.received_ms)
    return answer(made._asdict() | {"picture": made.picture()})


@blueprint.route("/pairings/use", methods=["POST"])
@blueprint.arguments(request_schemas.Pairing)
@blueprint.response(200, reference("PairedPhone"))
def pair(asked: dict[str, Any]) -> Response:
    """Pairs the phone that asks, by the code of a link or eight digits; its token comes as a cookie."""
    token, phone = pairing.pair(asked["code"], asked["device_id"], g.received_ms)
    response = answer(pairing.document(phone, phone.phone_id))
    access.set_cookie(response, token)
    return response
