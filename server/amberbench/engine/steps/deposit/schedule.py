"""What to lay next on the bench of clusters: a new tray, a second deposit, or nothing but the funnel.

A task begins with a tap and holds until the next one: nobody is called away from a tray that is half laid.
"""

from ...core.check import constant
from . import trays
from .trays import (
    LEAST_BOWL_KG,
    SHORTEST_FILL_S,
    fills_are_short,
    fresh_fill_s,
    laying_s,
    next_fill_kg,
    pace_kg_s,
    run_out_kg,
    tray_kg,
    whole_fill_s,
    window_ms,
)
from .trays_done import second_deposits

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable
    from ...types import Input


# Laying takes up to this many times longer than planned; heating what came back, until it is in the funnel again
# (assumed).
SLOW_PACE_FACTOR, REHEAT_S = 1.25, 200.0
# A fill that lasts for this share of what a fresh one does is used (assumed).
WORTHWHILE_SHARE = 0.6
# A reading of the funnel counts for so long (assumed).
READ_AGAIN_S = 45.0


def next_task(state: "Readable", at_ms: float) -> tuple[str, int, float]:
    """(task, tray from 0, since or from when in ms); task is one of

    lay: first deposits on a new tray; touch: try whether a tray is tacky; second: second deposits on a tray;
    wait: until a tray is tacky; empty: nothing is left to lay, empty the funnel.
    """
    begun_ms = state["begun_ms"]
    if state["under_way"] is not None:
        laying = state["under_way"] == "lay"
        return state["under_way"], len(state["laid"]) if laying else second_deposits(state), begun_ms
    more = not state["all_laid"] and len(state["laid"]) < state["trays"]
    tray = second_deposits(state)
    if state["second"] is None or tray >= len(state["laid"]):
        return ("lay", len(state["laid"]), begun_ms) if more else ("empty", 0, begun_ms)
    if more and _second_deposits_in_time(state, begun_ms):
        return "lay", len(state["laid"]), begun_ms
    from_ms = max(begun_ms, window_ms(state, tray)[0])
    if at_ms < from_ms:
        return "wait", tray, from_ms
    # The first tray is touched; it speaks for the others.
    touched = tray > 0 or any(one["tacky"] for one in state["tests"])
    return ("second" if touched else "touch"), tray, from_ms


def _second_deposits_in_time(state: "Readable", at_ms: float) -> bool:
    """Whether every second deposit is still in time when another tray is laid first and the funnel refilled."""
    forecast = FunnelForecast(state, at_ms)
    new = len(state["laid"])
    if forecast.needs_fresh_fill(new):
        forecast.refill()
    began_ms = forecast.at_ms
    forecast.lay_tray("lay", new)
    laid_ms = forecast.at_ms
    for tray in range(second_deposits(state), new + 1):
        from_ms, to_ms = window_ms(state, tray) if tray < new else forecast.window_ms(began_ms, laid_ms)
        forecast.wait_until_tacky(tray, from_ms)
        if forecast.at_ms + forecast.lay_tray("second", tray) > to_ms:
            return False
    return True


def constants() -> "list[Input]":
    """The constants that a plan uses for fills and trays, as input rows."""
    return [
        constant("deposit.poured_k", trays.POURING_LOSS_K, "K"),
        constant("deposit.fill_sd_k", trays.FILL_SD_K, "K"),
        constant("deposit.fresh_k", trays.FRESH_BOWL_K, "K"),
        constant("deposit.fill_guard_sd", trays.PLANNED_TEMP_SD, ""),
        constant("deposit.quicker", trays.LIKELY_LOSS_FACTOR, ""),
        constant("deposit.slower", SLOW_PACE_FACTOR, ""),
        constant("deposit.reheat_s", REHEAT_S, "s"),
        constant("deposit.most_fill", trays.MOST_FILL, ""),
        constant("deposit.worth", WORTHWHILE_SHARE, ""),
    ]


def most_on_tray(state: "Readable") -> int:
    """The most clusters on a tray, at most a full one, of which every second deposit is in time; at least one."""
    full = state["per_tray"]

    def is_in_time(number: int) -> bool:
        tray_s = state["tray_s"] * number / full
        trial = dict(state, per_tray=number, tray_s=tray_s, begun_ms=0.0)
        trial.update(_first_fill(state))
        return _second_deposits_in_time(trial, 0.0)

    low, high = 1, full
    while low < high:
        middle = high if high == full else (low + high + 1) // 2
        if is_in_time(middle):
            low = middle
        else:
            high = middle - 1
    return low


def _first_fill(state: "Readable") -> "Document":
    """Bowl and funnel once the funnel is filled first."""
    kg = next_fill_kg(state, state["all_kg"])
    return {"bowl_kg": state["all_kg"] - kg, "fill": {"kg": kg, "thick_ms": 1000.0 * fresh_fill_s(state, kg)}}


def count_fills(state: "Readable") -> tuple[int, float, float]:
    """(fills, kg that no fill is sure to lay, s from the first fill to the last deposit) of a whole job, laid in the
    order in which the bench would ask for it, at a slow pace."""
    trial = dict(state, laid=[], tests=[{"tacky": True}], all_laid=False, under_way=None, begun_ms=0.0)
    trial.update(_first_fill(state))
    rest_kg = 0.0
    fills = 1
    for _ in range(2 * state["trays"]):
        task, tray, from_ms = next_task(trial, trial["begun_ms"])
        if task == "empty":
            break
        forecast = FunnelForecast(trial, trial["begun_ms"])
        if task != "lay":
            forecast.wait_until_tacky(tray, from_ms)
        elif state["second"] is not None and forecast.needs_fresh_fill(tray):
            forecast.refill()
        began_ms = forecast.at_ms
        forecast.lay_tray("lay" if task == "lay" else "second", tray)
        if task == "lay":
            trial["laid"].append({"began_ms": began_ms, "laid_ms": forecast.at_ms, "second_ms": None})
        else:
            trial["laid"][tray]["second_ms"] = forecast.at_ms
        trial["fill"] = {"kg": forecast.kg, "thick_ms": forecast.at_ms + 1000.0 * forecast.left_s}
        trial["bowl_kg"], trial["begun_ms"] = forecast.more_kg, forecast.at_ms
        fills, rest_kg = fills + forecast.refills, rest_kg + forecast.rest_kg
    return fills, rest_kg, trial["begun_ms"] / 1000.0


class FunnelForecast:
    """Simulates the next trays: time (at_ms), what the funnel and bowl hold (kg, more_kg), how much longer the fill
    lasts (left_s), how often it was refilled (refills), what is too cool by then and too little to reheat (rest_kg)."""

    def __init__(self, state: "Readable", at_ms: float) -> None:
        self.state, self.at_ms = state, at_ms
        self.whole_s = whole_fill_s(state)
        fill = state["fill"]
        self.kg = 0.0 if fill is None else fill["kg"]
        self.left_s = 0.0 if fill is None else max(0.0, fill["thick_ms"] - at_ms) / 1000.0
        self.more_kg, self.refills, self.rest_kg = state["bowl_kg"], 0, 0.0

    def wait_until(self, until_ms: float) -> None:
        if until_ms > self.at_ms:
            self.left_s -= (until_ms - self.at_ms) / 1000.0
            self.at_ms = until_ms

    def refill(self) -> float:
        """Empties the funnel into the bowl, reheats and fills it; returns how long that takes in ms."""
        self.refills += 1
        self.more_kg += self.kg
        self.kg = next_fill_kg(self.state, self.more_kg)
        self.more_kg -= self.kg
        self.left_s = fresh_fill_s(self.state, self.kg)
        self.at_ms += 1000.0 * REHEAT_S
        return 1000.0 * REHEAT_S

    def outlasts(self, task: str, tray: int, left_s: float) -> bool:
        """Whether the fill, which lasts left_s more, is enough for a whole tray."""
        return self.kg >= tray_kg(self.state, task, tray) and left_s >= SLOW_PACE_FACTOR * laying_s(self.state, tray)

    def wait_until_tacky(self, tray: int, from_ms: float) -> None:
        """Waits until from_ms, when a tray is tacky; refills meanwhile if the fill would not last for that tray."""
        spare_s = self.left_s - max(0.0, from_ms - self.at_ms) / 1000.0
        if not self.outlasts("second", tray, spare_s) and spare_s < self.whole_s:
            self.wait_until(from_ms - 1000.0 * REHEAT_S)
            self.refill()
        self.wait_until(from_ms)

    def needs_fresh_fill(self, tray: int) -> bool:
        """Whether to refill before a tray is begun, because this fill would not last for it and a fresh one would."""
        needs_s = SLOW_PACE_FACTOR * laying_s(self.state, tray)
        return self.left_s < needs_s <= self.whole_s and self.left_s < WORTHWHILE_SHARE * self.whole_s

    def lay_tray(self, task: str, tray: int) -> float:
        """Lays a tray; returns how long refills hold it up in ms."""
        need_kg, pace, held_ms = tray_kg(self.state, task, tray), pace_kg_s(self.state, task, tray), 0.0
        for _ in range(20):
            now_kg = min(need_kg, self.kg, max(0.0, self.left_s) * pace / SLOW_PACE_FACTOR)
            self.wait_until(self.at_ms + 1000.0 * SLOW_PACE_FACTOR * now_kg / max(pace, 1e-9))
            self.kg -= now_kg
            need_kg -= now_kg
            if need_kg <= 1e-6 or self.more_kg + self.kg < LEAST_BOWL_KG:
                break
            held_ms += self.refill()
        self.rest_kg += need_kg if need_kg > 1e-6 else 0.0
        return held_ms

    def window_ms(self, began_ms: float, laid_ms: float) -> tuple[float, float]:
        """The window of the second deposit, as `trays.window_ms`, of the tray that was laid in this forecast."""
        state = self.state
        held_ms = max(0.0, laid_ms - began_ms - 1000.0 * SLOW_PACE_FACTOR * laying_s(state, len(state["laid"])))
        from_s, to_s = (state["tack"] * state["second"][name] for name in ("from_s", "to_s"))
        return began_ms + held_ms + 1000.0 * from_s, began_ms + 1000.0 * to_s


def due_ms(state: "Readable") -> tuple[float, str]:
    """(when the fill's clock rings in ms, why).

    Why: "thick", the fill turns too cool to deposit; "low", it runs low; "anew", it is changed for a fresh one in time
    for a second deposit for which it would not last.
    """
    fill, now = state["fill"], next_task(state, state["begun_ms"])
    task, tray, from_ms = now
    found_ms, why = fill["thick_ms"], "thick"
    pace = pace_kg_s(state, task, tray)
    late = task in ("second", "touch") and found_ms + 1000.0 * REHEAT_S > window_ms(state, tray)[1]
    rest = pace > 0.0 and state["bowl_kg"] + fill["kg"] < LEAST_BOWL_KG
    if (late or rest) and found_ms <= fill["seen_ms"] + 1000.0 * READ_AGAIN_S:
        # Heated again it would come too late, or not at all: what was just read is laid while it is likely warm enough.
        found_ms = fill["likely_ms"]
    if fills_are_short(state):
        found_ms = max(found_ms, fill["likely_ms"], fill["filled_ms"] + 1000.0 * SHORTEST_FILL_S)
    if pace > 0.0 and state["bowl_kg"] >= LEAST_BOWL_KG:
        low_ms = max(fill["at_ms"], from_ms) + 1000.0 * fill["kg"] / pace
        if low_ms < found_ms:
            found_ms, why = low_ms, "low"
    fresh_ms = _early_refill_ms(state, task, tray, from_ms)
    if fresh_ms is not None and fresh_ms < found_ms:
        return fresh_ms, "anew"
    return found_ms, why


def _early_refill_ms(state: "Readable", task: str, tray: int, from_ms: float) -> float | None:
    """When to refill before a tray is begun in ms; None: the fill lasts for it, or there is no time left to refill."""
    fill, begun_ms = state["fill"], state["begun_ms"]
    if state["second"] is None or task == "empty" or state["under_way"] is not None:
        return None
    # A fill made after the last tray was laid is not changed for another.
    told_ms = max([0.0] + [one["laid_ms"] if one["second_ms"] is None else one["second_ms"] for one in state["laid"]])
    if fill["filled_ms"] >= told_ms or state["bowl_kg"] + fill["kg"] < LEAST_BOWL_KG:
        return None
    forecast = FunnelForecast(state, begun_ms)
    if task == "lay":
        return begun_ms if forecast.needs_fresh_fill(tray) else None
    forecast.wait_until(from_ms)
    if forecast.outlasts("second", tray, forecast.left_s) or forecast.left_s >= WORTHWHILE_SHARE * fresh_fill_s(
        state, fill["kg"]
    ):
        return None
    forecast.at_ms = max(begun_ms, from_ms - 1000.0 * REHEAT_S)
    forecast.refill()
    held_ms = forecast.lay_tray("second", tray)
    return begun_ms if max(from_ms, begun_ms + 1000.0 * REHEAT_S) + held_ms <= window_ms(state, tray)[1] else None


def left_kg(state: "Readable", at_ms: float) -> float:
    """What is left in the funnel at a time, laid at the planned pace."""
    result: float = max(0.0, state["fill"]["kg"] - run_out_kg(state, next_task(state, at_ms), at_ms))
    return result


def needed_s(state: "Readable", at_ms: float) -> float:
    """How long the task under way still takes in s, at a slow pace."""
    task, tray, _ = next_task(state, at_ms)
    if task == "empty":
        return 0.0
    whole_kg = tray_kg(state, "lay" if task == "lay" else "second", tray)
    done_kg = state["base_kg"] - state["bowl_kg"] - left_kg(state, at_ms) if state["fill"] is not None else 0.0
    return SLOW_PACE_FACTOR * laying_s(state, tray) * max(0.0, 1.0 - done_kg / max(whole_kg, 1e-9))
