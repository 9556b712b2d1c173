"""What the phone needs at the bench, and `call(name, request)`, by which it is reached.

The phone has this with all it imports as one file, and what `catalogue` adds as another, which only the desk asks for.
"""

import json

from . import bench_fields as fields
from .batch import advice, batch_order, run
from .core import check, units
from .core.problems import Problem
from .physics import humid_air, materials, viscosity
from .products import KINDS
from .shop import fold as shop_fold
from .steps.coat import plan as coat
from .steps.cool import plan as cool
from .steps.cut import plan as cut
from .steps.deposit import funnel
from .steps.dip import salt_interval
from .steps.jacket import plan as jacket
from .steps.melt import plan as melt
from .steps.pour import plan as pour
from .steps.room import plan as room
from .steps.temper import plan as temper

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from .core.annotations import Document


FUNCTIONS: "dict[str, Callable[..., Any]]" = {
    "units.convert": units.convert_request,
    "materials.properties": materials.properties,
    "materials.heat": materials.heat,
    "melt.oven_from_water_test": melt.oven_from_water_test,
    "melt.plan": melt.plan,
    "melt.next_burst": melt.next_burst,
    "melt.plan_jacket": jacket.plan,
    "pour.plan": pour.plan,
    "cut.plan": cut.plan,
    "cut.fit_frame": cut.fit_frame,
    "cool.plan": cool.plan,
    "cool.refit": cool.refit,
    "chocolate.coating": coat.plan,
    "chocolate.temper": temper.plan,
    "chocolate.hold": temper.working_time,
    "chocolate.salting": salt_interval.salting,
    "deposit.fill": funnel.fill,
    "room.dew_point": humid_air.dew_point,
    "room.advise": room.advise,
    "flow.viscosity": viscosity.viscosity,
    "run.replay": run.replay_request,
    "run.apply": run.apply_request,
    "run.advise": advice.advise_request,
    "run.decide": run.decide_request,
    "shop.fold": shop_fold.fold,
    "shop.check": shop_fold.check_request,
    "shop.density": shop_fold.density,
    "batch.order": batch_order.order,
}

for _kind in KINDS:
    FUNCTIONS.update(_kind.functions)

# Names that functions had in earlier versions: an old one is refused with the new one.
RENAMED = {
    "deposit.plan": "cluster.plan",
    "deposit.learn": "cluster.learn",
    "chocolate.bowl": "chocolate.plan",
    "day.order": "batch.order",
}


def is_known(name: str) -> bool:
    """Whether a function is here already: on the phone those of `catalogue` are added when one is first asked for."""
    return name in FUNCTIONS


def call(name: str, request: "Any") -> "Document":
    """The reply of one function to a request; raises Problem when the request makes no sense.

    Where the reply lists `inputs`, those of the request come first, then what the function itself assumed.
    """
    if name in RENAMED:
        raise Problem("name", "renamed_function", name, accepted=[RENAMED[name]])
    if name not in FUNCTIONS:
        raise Problem("name", "unknown_function", name, accepted=sorted(FUNCTIONS))
    request_fields = fields.FUNCTIONS[name]["request"]
    full = check.checked(request_fields, request)
    if "inputs" not in fields.FUNCTIONS[name]["reply"]:
        bare: "Document" = FUNCTIONS[name](full)
        return bare
    inputs = check.inputs(request_fields, request, full)
    if "basis" in request_fields:
        # A plan that hands its fields on (slab.plan) hands on where they came from, defaults included.
        full["basis"] = {row["field"]: row["basis"] for row in inputs}
    reply: "Document" = FUNCTIONS[name](full)
    reply["inputs"] = inputs + reply.get("inputs", [])
    return reply


def call_text(name: str, text: str) -> str:
    """The same with JSON on both sides, for the phone's worker: `{"reply": …}` or `{"problem": …}`."""
    try:
        return json.dumps({"reply": call(name, _parsed(text))})
    except Problem as problem:
        return json.dumps({"problem": problem.document()})


def _parsed(text: str) -> "Any":
    try:
        return json.loads(text)
    except ValueError:
        raise Problem("request", "not_json") from None
