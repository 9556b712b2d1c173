"""The clocks of clusters: the funnel and the bowl, a tray that turns tacky or cold, a tray that comes free."""

from ...core.prompts import clock
from ...steps.deposit.schedule import next_task
from ...steps.deposit.trays import window_ms
from ...steps.deposit.trays_done import freed, second_deposits

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable
    from ...types import Clock


# A bowl that waits is seen to so long before a tray is tacky, and the funnel filled so long before (assumed).
SEE_TO_BOWL_BEFORE_MS, FILL_BEFORE_MS = 300000.0, 30000.0


def cluster_clocks(run: "Readable", step: str) -> "list[Clock]":
    """The clocks: the fill leaves its window or runs low, a tray turns tacky or cold, a tray comes free."""
    state, done = run["cluster"], run["done"]
    if "melt" not in done:
        return _laying_clocks(run)
    if "cool_tray" in done or not state["laid"]:
        return []
    return [clock("tray", resting_ms(state), free_due_ms(state), "ready")]


def _laying_clocks(run: "Readable") -> "list[Clock]":
    clocks, state = [], run["cluster"]
    fill, waits = state["fill"], _bowl_waits_ms(run)
    if fill is not None:
        # Never due before it was set: what should have been changed long ago is due now.
        clocks.append(clock("fill", fill["at_ms"], max(fill["at_ms"], fill["due_ms"]), "read"))
    elif waits is not None:
        clocks.append(clock("fill", state["begun_ms"], waits, "read"))
    tray = second_deposits(state)
    if state["second"] is not None and tray < len(state["laid"]):
        from_ms, to_ms = window_ms(state, tray)
        if (fill is not None or waits is not None) and _is_untouched(state, tray):
            clocks.append(clock("tacky", state["laid"][tray]["began_ms"], from_ms, "ready"))
        clocks.append(clock("cold", from_ms, to_ms, "stir"))
    return clocks


def _bowl_waits_ms(run: "Readable") -> float | None:
    """Until when the bowl waits for a tray to turn tacky; None: nobody waits, or somebody has been at it since then."""
    state = run["cluster"]
    if state["begun_ms"] is None or heating(run):
        return None
    task, _, from_ms = next_task(state, state["begun_ms"])
    until_ms, since_ms = waits_ms(run, from_ms), max(state["begun_ms"], run["melt"]["last_at_ms"] or 0.0)
    return until_ms if task == "wait" and until_ms > since_ms else None


def _is_untouched(state: "Readable", tray: int) -> bool:
    """Whether a tray is still to be tried, and its second deposit not begun."""
    return state["under_way"] != "second" and not (tray == 0 and any(one["tacky"] for one in state["tests"]))


def waits_ms(run: "Readable", from_ms: float) -> float:
    """Until when the bowl may be left alone before a tray is tacky: it is heated, then kept, then filled from."""
    return from_ms - (FILL_BEFORE_MS if read_since(run) else SEE_TO_BOWL_BEFORE_MS)


def resting_ms(state: "Readable") -> float:
    """Since when the next tray to be freed rests."""
    tray = state["laid"][freed(state)]
    result: float = tray["laid_ms"] if tray["second_ms"] is None else tray["second_ms"]
    return result


def free_due_ms(state: "Readable") -> float:
    """When the next tray should be tried."""
    if state["free_again_ms"] is not None:
        again_ms: float = state["free_again_ms"]
        return again_ms
    result: float = resting_ms(state) + 1000.0 * state["free"]["from_s"]
    return result


def heating(run: "Readable") -> bool:
    """Whether the bowl is in the oven, or rests off the heat."""
    return run["melt"]["burning"] is not None or run["melt"]["resting"] is not None


def read_since(run: "Readable") -> bool:
    """Whether the bowl was read after its last burst."""
    kinds = [one["kind"] for one in run["melt"]["history"]]
    return "reading" in kinds and "burst" not in kinds[len(kinds) - 1 - kinds[::-1].index("reading") :]
