"""GET /api/shop, GET /api/health."""

from typing import Any

from flask import Response, abort, current_app, g

from amberbench.engine import VERSION
from amberbench.schemas.json_schema import reference
from amberbench.services import health as storage_health
from amberbench.services import shop, unexpected_errors

from .json_blueprint import JsonBlueprint, answer, with_clock

blueprint = JsonBlueprint("shop", __name__, description="The shop, and whether its server answers")


@blueprint.route("/shop", methods=["GET"])
@blueprint.response(200, reference("Shop"))
def document() -> Response:
    """Ovens, vessels, bases, bars, caramels, products."""
    found = shop.document()
    if found is None:
        abort(404)
    return answer(found)


@blueprint.route("/health", methods=["GET"])
@blueprint.response(200, {"oneOf": [reference("Health"), reference("HealthForStrangers")]})
def health() -> Response:
    """Proof of being on line, and the server's clock; to who is not paired, that alone.

    503 with the reason when the data cannot be used.
    """
    found = storage_health.health()
    if g.role is None:
        return answer({"paired": False})
    about: dict[str, Any] = {"app": "amberbench", "engine_version": VERSION, "errors": unexpected_errors.counted()}
    certificate = current_app.config["CERTIFICATE"]
    if certificate:
        about |= {"certificate_until_ms": certificate.until_ms(), "certificate_days_left": certificate.days_left()}
    return answer(with_clock(about | found | {"role": g.role}))
