"""A bowl of chocolate as folds: bursts, readings, seed, strips, warming, what is left."""

from ...core import duplicates
from ...core.unfit import Unfit, part

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Decide, Document
    from ...types import (
        BowlBurstBody,
        BowlReadBody,
        BowlState,
        BowlThickenedBody,
        BowlUsedBody,
        BowlWarmedBody,
        ChocolateRun,
        LeftoverNamedBody,
        SeededBody,
    )


MOST_OF_A_KIND = 120


def opened(reply: "Document") -> "BowlState":
    """The bowl's state in a run before anything is heated; `reply` is the plan's."""
    steps = {one["name"]: one for one in reply["steps"]}
    line: "Any" = {
        name + "_" + end: steps[name][end] for name in ("melt", "cool", "work") for end in ("low_c", "high_c")
    }
    return {
        "request": reply["bowl_request"],
        "line": line,
        "bursts": [],
        "burning": None,
        "readings": [],
        "read_c": None,
        "read_ms": None,
        "seeds": [],
        "seeded_ms": None,
        "strips": [],
        "warmed": [],
        "thick": False,
        "streaky": False,
        "faster": 0.0,
        "faster_sd": None,
        "hold": None,
        "leftover_lot": None,
    }


def _state(run: "ChocolateRun", counted: str) -> "BowlState":
    """The state of the bowl while it is in hand; `counted` names the list that an event would lengthen."""
    part(run, "bowl")
    if "use" in run["done"]:
        raise Unfit("already_done")
    if len(part(run["bowl"], counted)) >= MOST_OF_A_KIND:
        raise Unfit("too_many")
    return run["bowl"]


def _forget_reading(state: "BowlState") -> None:
    """After heat or seed nobody knows how warm the bowl is."""
    state["read_c"] = state["read_ms"] = state["hold"] = state["burning"] = None
    state["thick"] = state["streaky"] = False


def _burst(run: "ChocolateRun", body: "BowlBurstBody", at_ms: float) -> None:
    state = _state(run, "bursts")
    if "melt_bowl" in run["done"]:
        raise Unfit("already_done")
    if state["burning"] is not None and at_ms < state["burning"]["due_ms"]:
        raise Unfit("burst_running")
    duplicates.refuse_same_reading(body, state["bursts"], "seconds_s")
    _forget_reading(state)
    state["bursts"].append({"seconds_s": body["seconds_s"], "at_ms": at_ms})
    state["burning"] = {"started_ms": at_ms, "due_ms": at_ms + 1000.0 * body["seconds_s"]}


def _read(run: "ChocolateRun", body: "BowlReadBody", at_ms: float, decide: "Decide") -> None:
    state = _state(run, "readings")
    duplicates.refuse_same_reading(body, state["readings"], "bowl_c")
    read_c, decided = body["bowl_c"], decide(state["read_ms"])
    _forget_reading(state)
    state["readings"].append({"at_ms": at_ms, "bowl_c": read_c})
    state["read_c"], state["read_ms"] = read_c, at_ms
    for name in ("faster", "faster_sd", "hold"):
        state[name] = decided[name]
    if read_c > state["line"]["work_high_c"]:
        # Its crystals melt: it has to be tempered again.
        run["done"].pop("temper_check", None)


def _seed(run: "ChocolateRun", body: "SeededBody", at_ms: float) -> None:
    state = _state(run, "seeds")
    duplicates.refuse_same_reading(body, state["seeds"], "kg")
    _forget_reading(state)
    state["seeds"].append({"kg": body["kg"], "at_ms": at_ms})
    state["seeded_ms"] = at_ms
    run["done"]["melt_bowl"] = at_ms
    run["done"].pop("temper_check", None)


def _warm(run: "ChocolateRun", body: "BowlWarmedBody", at_ms: float) -> None:
    state = _state(run, "warmed")
    duplicates.refuse_same_tap(body, len(state["warmed"]))
    _forget_reading(state)
    state["warmed"].append({"at_ms": at_ms})


def _thicken(run: "ChocolateRun", body: "BowlThickenedBody", at_ms: float) -> None:
    state = _state(run, "warmed")
    if state["thick"]:
        raise Unfit("already_done")
    state["thick"] = True


def _use_up(run: "ChocolateRun", body: "BowlUsedBody", at_ms: float) -> None:
    _state(run, "strips")
    run["done"]["use"] = at_ms


def _name_leftover(run: "ChocolateRun", body: "LeftoverNamedBody", at_ms: float) -> None:
    part(run, "bowl")
    run["bowl"]["leftover_lot"] = body["lot"]
    run["done"]["leftover"] = at_ms


FOLDS = {
    "bowl_burst": _burst,
    "bowl_read": _read,
    "seeded": _seed,
    "bowl_warmed": _warm,
    "bowl_thickened": _thicken,
    "bowl_used": _use_up,
    "leftover_named": _name_leftover,
}


def begin(reply: "Document") -> "Document":
    # The chocolate to weigh in stands where the caramel does in other batches; nobody counts pieces of it.
    planned = {"caramel_kg": reply["melt_kg"], "seed_kg": reply["seed_kg"], "pieces": None, "piece_kg": None}
    return {"planned": planned, "bowl": opened(reply)}
