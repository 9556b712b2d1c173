"""POST /api/plans/…: the engine's plans."""

from collections.abc import Callable
from typing import Any

from flask import Response

from amberbench.schemas import json_schema
from amberbench.schemas.from_fields import request_schema
from amberbench.services import plans

from .json_blueprint import JsonBlueprint, answer

blueprint = JsonBlueprint("plans", __name__, description="Plans, computed by the engine the phone carries too")


def _endpoint(function: str) -> Callable[[dict[str, Any]], Response]:
    @blueprint.arguments(request_schema(function))
    @blueprint.response(200, json_schema.reply(function))
    def plan(request: dict[str, Any]) -> Response:
        return answer(plans.plan(function, request))

    plan.__doc__ = f'{function}: numbers in SI, or with their unit (`{{"value": 2.5, "unit": "lb"}}`, `"2.5 lb"`)'
    return plan  # type: ignore[no-any-return]


for name, function in plans.ROUTES.items():
    blueprint.route(f"/plans/{name}", methods=["POST"], endpoint=name)(_endpoint(function))
