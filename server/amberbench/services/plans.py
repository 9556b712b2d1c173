"""Plans: the engine asked, for the API and for the command line."""

from typing import Any

from amberbench.engine import catalogue
from amberbench.engine.products import KINDS

from . import strict_json

# Functions that POST /api/plans/<name> answers.
ROUTES = {
    "melt": "melt.plan",
    "jacket": "melt.plan_jacket",
    "cooling": "cool.plan",
    "frame": "cut.fit_frame",
    "coating": "chocolate.coating",
    "temper": "chocolate.temper",
    "room": "room.advise",
    "needs": "needs.plan",
    "day": "schedule.plan",
}
for _kind in KINDS:
    ROUTES.update(_kind.routes)


def plan(function: str, request: dict[str, Any]) -> dict[str, Any]:
    """The reply of an engine function. Raises Problem."""
    reply: dict[str, Any] = catalogue.call(function, request)
    return reply


def compute(function: str, text: bytes) -> str:
    """JSON in, JSON out, for `amberbench compute`. Raises Problem, also for what is no JSON or not finite."""
    return strict_json.write(plan(function, strict_json.read(text)))


def functions() -> list[str]:
    """The names `compute` knows."""
    return sorted(catalogue.FUNCTIONS)
