"""Whose turn it is on the bench of clusters: the next tray, a second deposit, the funnel; by what was told last.

A turn begins with a tap and holds until the next one: nobody is called from a tray that is half laid.
"""

from ...core.check import constant
from . import trays
from .trays import SHORT_S, fresh_s, pace_kg_s, run_out_kg, seconds, short, span_s, tray_kg, window_ms

# Laying takes up to this much longer than planned; heating what came back, until it is in the funnel again
# (assumed).
SLOWER, REHEAT_S = 1.25, 200.0
# A fill that lasts for this share of what a fresh one does is used (assumed).
WORTH = 0.6
# A reading of the funnel counts for so long (assumed).
READ_AGAIN_S = 45.0
# Less than this is not heated again (the melt's model reaches no further).
LEAST_BOWL_KG = 0.05


def turn(state, at_ms):
    """(task, tray, since or from when in ms): lay, touch a tray before it is laid again, second, wait for a tray to
    turn tacky, or empty the funnel."""
    begun_ms = state["begun_ms"]
    if state["under_way"] is not None:
        laying = state["under_way"] == "lay"
        return state["under_way"], len(state["laid"]) if laying else seconds(state), begun_ms
    more = not state["all_laid"] and len(state["laid"]) < state["trays"]
    tray = seconds(state)
    if state["second"] is None or tray >= len(state["laid"]):
        return ("lay", len(state["laid"]), begun_ms) if more else ("empty", 0, begun_ms)
    if more and _in_time(state, begun_ms):
        return "lay", len(state["laid"]), begun_ms
    from_ms = max(begun_ms, window_ms(state, tray)[0])
    if at_ms < from_ms:
        return "wait", tray, from_ms
    # The first tray is touched; it speaks for the others.
    touched = tray > 0 or any(one["tacky"] for one in state["tests"])
    return ("second" if touched else "touch"), tray, from_ms


def _in_time(state, at_ms):
    """Whether every second deposit is still in time when another tray is laid first, with the funnel's breaks."""
    ahead = Ahead(state, at_ms)
    new = len(state["laid"])
    if ahead.better_anew(new):
        ahead.breaks()
    began_ms = ahead.at_ms
    ahead.lays("lay", new)
    laid_ms = ahead.at_ms
    for tray in range(seconds(state), new + 1):
        from_ms, to_ms = window_ms(state, tray) if tray < new else ahead.window_ms(began_ms, laid_ms)
        ahead.freshens(tray, from_ms)
        if ahead.at_ms + ahead.lays("second", tray) > to_ms:
            return False
    return True


def constants():
    """What a plan reckons fills and trays with, as input rows."""
    return [
        constant("deposit.poured_k", trays.POURED_K, "K"),
        constant("deposit.fill_sd_k", trays.FILL_SD_K, "K"),
        constant("deposit.fresh_k", trays.FRESH_K, "K"),
        constant("deposit.fill_guard_sd", trays.PLANS, ""),
        constant("deposit.quicker", trays.LIKELY_QUICKER, ""),
        constant("deposit.slower", SLOWER, ""),
        constant("deposit.reheat_s", REHEAT_S, "s"),
        constant("deposit.worth", WORTH, ""),
    ]


def most_on_tray(state):
    """The most clusters on a tray, at most a full one, of which every second deposit is in time; at least one."""
    full = state["per_tray"]

    def held(number):
        tray_s = state["tray_s"] * number / full
        trial = dict(state, per_tray=number, tray_s=tray_s, bowl_kg=state["all_kg"] - state["full_kg"], begun_ms=0.0)
        trial["fill"] = {"kg": state["full_kg"], "thick_ms": 1000.0 * state["fresh_s"]}
        return _in_time(trial, 0.0)

    low, high = 1, full
    while low < high:
        middle = high if high == full else (low + high + 1) // 2
        if held(middle):
            low = middle
        else:
            high = middle - 1
    return low


def reckoned(state):
    """(fills, times the caramel is heated again) of a whole job, laid as the bench would have it laid."""
    trial = dict(state, laid=[], tests=[{"tacky": True}], all_laid=False, under_way=None, begun_ms=0.0)
    trial["bowl_kg"] = state["all_kg"] - state["full_kg"]
    trial["fill"] = {"kg": state["full_kg"], "thick_ms": 1000.0 * state["fresh_s"]}
    fills = 1
    for _ in range(2 * state["trays"]):
        task, tray, from_ms = turn(trial, trial["begun_ms"])
        if task == "empty":
            break
        ahead = Ahead(trial, trial["begun_ms"])
        if task != "lay":
            ahead.freshens(tray, from_ms)
        elif state["second"] is not None and ahead.better_anew(tray):
            ahead.breaks()
        began_ms = ahead.at_ms
        ahead.lays("lay" if task == "lay" else "second", tray)
        if task == "lay":
            trial["laid"].append({"began_ms": began_ms, "laid_ms": ahead.at_ms, "second_ms": None})
        else:
            trial["laid"][tray]["second_ms"] = ahead.at_ms
        trial["fill"] = {"kg": ahead.kg, "thick_ms": ahead.at_ms + 1000.0 * ahead.left_s}
        trial["bowl_kg"], trial["begun_ms"] = ahead.more_kg, ahead.at_ms
        fills += ahead.broken
    return fills, fills - 1


class Ahead:
    """What the next stretch of work takes, with the breaks that the funnel needs."""

    def __init__(self, state, at_ms):
        self.state, self.at_ms = state, at_ms
        self.whole_s = state["fresh_s"]
        fill = state["fill"]
        self.kg = 0.0 if fill is None else fill["kg"]
        self.left_s = 0.0 if fill is None else max(0.0, fill["thick_ms"] - at_ms) / 1000.0
        self.more_kg, self.broken = state["bowl_kg"], 0

    def waits(self, until_ms):
        if until_ms > self.at_ms:
            self.left_s -= (until_ms - self.at_ms) / 1000.0
            self.at_ms = until_ms

    def breaks(self):
        """The funnel is filled anew; in ms what that takes."""
        self.broken += 1
        self.more_kg += self.kg
        self.kg = min(self.state["full_kg"], self.more_kg)
        self.more_kg -= self.kg
        self.left_s = fresh_s(self.state, self.kg)
        self.at_ms += 1000.0 * REHEAT_S
        return 1000.0 * REHEAT_S

    def outlasts(self, task, tray, left_s):
        """Whether the fill, good for so much longer, lasts for a whole tray."""
        return self.kg >= tray_kg(self.state, task, tray) and left_s >= SLOWER * span_s(self.state, tray)

    def freshens(self, tray, from_ms):
        """Waits until a tray is tacky; the fill that would not outlast its second deposit is changed meanwhile."""
        spare_s = self.left_s - max(0.0, from_ms - self.at_ms) / 1000.0
        if not self.outlasts("second", tray, spare_s) and spare_s < self.whole_s:
            self.waits(from_ms - 1000.0 * REHEAT_S)
            self.breaks()
        self.waits(from_ms)

    def better_anew(self, tray):
        """Whether a tray that will be laid again should not be begun with this fill, which would not outlast it."""
        needs_s = SLOWER * span_s(self.state, tray)
        return self.left_s < needs_s <= self.whole_s and self.left_s < WORTH * self.whole_s

    def lays(self, task, tray):
        """Lays a tray; in ms how long it is held up by the funnel."""
        need_kg, pace, held_ms = tray_kg(self.state, task, tray), pace_kg_s(self.state, task, tray), 0.0
        for _ in range(20):
            now_kg = min(need_kg, self.kg, max(0.0, self.left_s) * pace / SLOWER)
            self.waits(self.at_ms + 1000.0 * SLOWER * now_kg / max(pace, 1e-9))
            self.kg -= now_kg
            need_kg -= now_kg
            if need_kg <= 1e-6 or self.more_kg + self.kg < LEAST_BOWL_KG:
                break
            held_ms += self.breaks()
        return held_ms

    def window_ms(self, began_ms, laid_ms):
        """The window of the tray that was laid in this reckoning."""
        state = self.state
        held_ms = max(0.0, laid_ms - began_ms - 1000.0 * SLOWER * span_s(state, len(state["laid"])))
        from_s, to_s = (state["tack"] * state["second"][name] for name in ("from_s", "to_s"))
        return began_ms + held_ms + 1000.0 * from_s, began_ms + 1000.0 * to_s


def due_ms(state):
    """(when the funnel has to be seen to in ms, why): it turns too thick, it runs low, or it is filled anew in time
    for a second deposit that it would not outlast."""
    fill, now = state["fill"], turn(state, state["begun_ms"])
    task, tray, from_ms = now
    found_ms, why = fill["thick_ms"], "thick"
    pace = pace_kg_s(state, task, tray)
    late = task in ("second", "touch") and found_ms + 1000.0 * REHEAT_S > window_ms(state, tray)[1]
    rest = pace > 0.0 and state["bowl_kg"] + fill["kg"] < LEAST_BOWL_KG
    if (late or rest) and found_ms <= fill["seen_ms"] + 1000.0 * READ_AGAIN_S:
        # Heated again it would come too late, or not at all: what was just read is laid while it is likely warm enough.
        found_ms = fill["likely_ms"]
    if short(state):
        found_ms = max(found_ms, fill["likely_ms"], fill["filled_ms"] + 1000.0 * SHORT_S)
    if pace > 0.0 and state["bowl_kg"] >= LEAST_BOWL_KG:
        low_ms = max(fill["at_ms"], from_ms) + 1000.0 * fill["kg"] / pace
        if low_ms < found_ms:
            found_ms, why = low_ms, "low"
    fresh_ms = _freshen_ms(state, task, tray, from_ms)
    if fresh_ms is not None and fresh_ms < found_ms:
        return fresh_ms, "anew"
    return found_ms, why


def _freshen_ms(state, task, tray, from_ms):
    """When to fill anew before a tray is begun; None: the fill outlasts it, or there is no time left for that."""
    fill, begun_ms = state["fill"], state["begun_ms"]
    if state["second"] is None or task == "empty" or state["under_way"] is not None:
        return None
    # A fill made since the last tray was told is not changed for another.
    told_ms = max([0.0] + [one["laid_ms"] if one["second_ms"] is None else one["second_ms"] for one in state["laid"]])
    if fill["filled_ms"] >= told_ms or state["bowl_kg"] + fill["kg"] < LEAST_BOWL_KG:
        return None
    ahead = Ahead(state, begun_ms)
    if task == "lay":
        return begun_ms if ahead.better_anew(tray) else None
    ahead.waits(from_ms)
    if ahead.outlasts("second", tray, ahead.left_s) or ahead.left_s >= WORTH * fresh_s(state, fill["kg"]):
        return None
    ahead.at_ms = max(begun_ms, from_ms - 1000.0 * REHEAT_S)
    ahead.breaks()
    held_ms = ahead.lays("second", tray)
    return begun_ms if max(from_ms, begun_ms + 1000.0 * REHEAT_S) + held_ms <= window_ms(state, tray)[1] else None


def left_kg(state, at_ms):
    """What is left in the funnel at a time, laid at the planned pace."""
    return max(0.0, state["fill"]["kg"] - run_out_kg(state, turn(state, at_ms), at_ms))


def needed_s(state, at_ms):
    """How long what is under way still takes, at the pace."""
    task, tray, _ = turn(state, at_ms)
    if task == "empty":
        return 0.0
    whole_kg = tray_kg(state, "lay" if task == "lay" else "second", tray)
    done_kg = state["base_kg"] - state["bowl_kg"] - left_kg(state, at_ms) if state["fill"] is not None else 0.0
    return SLOWER * span_s(state, tray) * max(0.0, 1.0 - done_kg / max(whole_kg, 1e-9))
