"""When a poured slab is ready for the knife, and what readings and touch tests say about that."""

from math import exp, log

from . import cooling, cooling_range, refit as refitting

MOST_POINTS = 120
TOUCH_AGAIN_S = 600.0  # a slab that is not firm is not ready for another ten minutes (practice)
COLD_ROOM_C = 18.0  # below this room temperature the slab gets brittle before it is cut (practice)


def plan(request):
    """The cooling of a poured slab."""
    slab = cooling.Slab(request)
    return _reply(request, slab, request["loss_factor"], request["loss_factor_sd"])


def refit(request):
    """The cooling of a poured slab after readings and touch tests."""
    slab = cooling.Slab(request)
    readings = sorted((float(one["at_s"]), float(one["surface_c"])) for one in request["readings"])
    touches = sorted((float(one["at_s"]), one["firm"]) for one in request["touches"])
    x, sd = refitting.fit(
        slab, readings, touches, log(request["loss_factor"]), request["loss_factor_sd"], 1.0, 2.0
    )
    reply = _reply(request, slab, exp(x), sd)
    reply["loss_factor"] = exp(x)
    reply["loss_factor_sd"] = sd
    return reply


def _reply(request, slab, loss_factor, loss_factor_sd):
    points = slab.run(loss_factor)
    milestones = []
    ready = None
    for name, at_s, low_s, high_s in cooling_range.spans(slab, points, loss_factor, loss_factor_sd):
        milestones.append({"name": name, "at_s": at_s, "low_s": low_s, "high_s": high_s})
        if name == "ready":
            ready = milestones[-1]
    return {
        "ready_s": ready["at_s"],
        "ready_low_s": ready["low_s"],
        "ready_high_s": ready["high_s"],
        "target_c": slab.target_c,
        "milestones": milestones,
        "curve": _curve(points),
        "warnings": _warnings(request, slab),
        "inputs": _inputs(),
    }


def _curve(points):
    every = 1 + (len(points) - 1) // MOST_POINTS
    kept = [points[i] for i in range(len(points)) if i % every == 0 or i == len(points) - 1]
    return [{"at_s": at_s, "core_c": core_c, "surface_c": surface_c} for at_s, core_c, surface_c in kept]


def _warnings(request, slab):
    found = []
    if slab.target_c > request["target_c"]:
        found.append({"code": "warm_room", "values": {"room_c": request["room_c"], "target_c": slab.target_c}})
    if request["room_c"] < COLD_ROOM_C:
        found.append({"code": "cold_room", "values": {"room_c": request["room_c"]}})
    return found


def _inputs():
    return []
