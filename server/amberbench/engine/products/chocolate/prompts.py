"""A bowl of chocolate as prompts: melt, seed, stir and read, strip, use, leftover. Nothing here changes the run."""

from ...core.copy_with import copy_with
from ...core.prompts import button, clock, entry, skip, text_entry
from ...steps.common.prompts import contains_caution, label_caution, lot_page
from ...steps.temper import plan as temper
from .decisions import chocolate_kg

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Readable
    from ...types import Advice, EntryButton, Sentence


# Half power in bursts of 15 to 30 s, short ones near the end (common practice, no published source).
BURST_S, SHORT_BURST_S, NEAR_K = 30.0, 15.0, 8.0
# Seed takes some minutes to melt and to cool the bowl; a strip begins to set within two to three (common practice, no
# published source).
STIR_MS, STRIP_MS = 120000.0, 180000.0
# More seed for a bowl that streaks or is still too warm: this share of what is in it (assumed).
MORE_SEED_SHARE = 0.03
# A reading further below the room than this is a slip of the finger (assumed).
READS_OFF_K = 5.0


def bowl_clocks(run: "Readable", step: str) -> "list[Any]":
    """What rings for a bowl: the burst, the stirring, the strip, and the end of its working range."""
    state, done = run["bowl"], run["done"]
    burning, read_ms = state["burning"], state["read_ms"]
    if burning is not None:
        return [clock("stir_bowl", burning["started_ms"], burning["due_ms"], "stir")]
    if "use" in done or "melt_bowl" not in done:
        return []
    if "temper_check" in done:
        known = state["hold"] is not None and not state["thick"]
        return [clock("bowl", read_ms, due_ms(state), "read")] if known else []
    if read_ms is None:
        since_ms = max([state["seeded_ms"] or 0.0] + [one["at_ms"] for one in state["warmed"]])
        return [clock("read_bowl", since_ms, since_ms + STIR_MS, "read")]
    if state["hold"] is not None and not state["streaky"]:
        return [clock("strip", read_ms, read_ms + STRIP_MS, "ready")]
    return []


def due_ms(state: "Readable") -> float:
    """When a bowl in its working range may leave it, at the early end."""
    result: float = state["read_ms"] + 1000.0 * state["hold"]["low_s"]
    return result


def _set_up(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["say"] = {"code": "say.set_up_bowl", "values": {}}
    advice["more"] = {"code": "more.set_up_bowl", "values": {}}
    advice["action"] = button("all_ready", "ready_checked")
    advice["caution"] = {"word": "WARNING", "code": "caution.bowl_allergens"}


def _weigh(run: "Readable", at_ms: float, advice: "Advice") -> None:
    planned_kg, lot = run["planned"]["caramel_kg"], run["lot"]
    advice["more"] = {"code": "more.seed_aside", "values": {"seed_kg": run["planned"]["seed_kg"]}}
    advice["number"] = {"name": "caramel_kg", "value": planned_kg}
    likely = {"likely_low": planned_kg * 0.97, "likely_high": planned_kg * 1.03, "body": {"lot": lot}}
    advice["entry"] = copy_with(entry("weighed", "kg", 0.05, 50.0, **likely), name="caramel_kg")
    advice["choices"] = [button("as_planned", "weighed", {"kg": planned_kg, "lot": lot})]
    advice["caution"] = contains_caution(run, "caution.chocolate_label")


def _lot(run: "Readable", at_ms: float, advice: "Advice") -> None:
    lot_page(run, at_ms, advice)
    advice["say"] = {"code": "say.lot_chocolate", "values": {}}


def _read(run: "Readable", low_c: float, high_c: float) -> "EntryButton":
    state = run["bowl"]
    last = state["readings"][-1]["bowl_c"] if state["readings"] else None
    typed = entry(
        "bowl_read",
        "bowl_c",
        max(0.0, state["request"]["room_c"] - READS_OFF_K),
        90.0,
        last=last,
        band_low=low_c,
        band_high=high_c,
        body={"seen": len(state["readings"])},
    )
    return {"code": "button.read_bowl", "entry": typed}


def _melt(run: "Readable", at_ms: float, advice: "Advice") -> None:
    state, line = run["bowl"], run["bowl"]["line"]
    low_c, high_c = line["melt_low_c"], line["melt_high_c"]
    read, read_c, burning = _read(run, low_c, high_c), state["read_c"], state["burning"]
    melt_range: "Sentence" = {"code": "more.melt_range", "values": {"bowl_low_c": low_c, "bowl_high_c": high_c}}
    advice["more"] = melt_range if burning is None else None
    if burning is not None and at_ms < burning["due_ms"]:
        advice["say"] = {"code": "say.heating", "values": {}}
        advice["number"] = {"name": "due_ms", "value": burning["due_ms"]}
        advice["caution"] = {"word": "WARNING", "code": "caution.mitts"}
        return
    seconds_s = SHORT_BURST_S if read_c is not None and read_c > low_c - NEAR_K else BURST_S
    body = {"seconds_s": seconds_s, "seen": len(state["bursts"])}
    if burning is not None:
        advice["say"] = {"code": "say.stir_bowl", "values": {}}
        advice["action"] = read
        advice["choices"] = [button("lumps_more", "bowl_burst", body)]
        advice["caution"] = {"word": "CAUTION", "code": "caution.bowl_hot"}
    elif read_c is None or read_c < low_c:
        advice["say"] = {"code": "say.melt_bowl", "values": {"seconds_s": seconds_s}}
        advice["number"] = {"name": "seconds_s", "value": seconds_s}
        advice["action"] = button("start", "bowl_burst", body)
        advice["choices"] = [read]
        if not state["bursts"]:
            # Said where the hand moves, once.
            advice["caution"] = {"word": "WARNING", "code": "caution.no_metal"}
    elif read_c > high_c:
        advice["say"] = {"code": "say.bowl_over_limit", "values": {}}
        advice["caution"] = {"word": "CAUTION", "code": "caution.bowl_hot"}
        advice["number"] = {"name": "bowl_c", "value": read_c}
        advice["action"] = read
    else:
        _first_seed(run, read_c, read, advice)


def _first_seed(run: "Readable", read_c: float, read: "EntryButton", advice: "Advice") -> None:
    state, line = run["bowl"], run["bowl"]["line"]
    kg = temper.seed_kg(state["request"], chocolate_kg(run), read_c)
    advice["step"] = "seed"
    _seed(kg, state, advice)
    advice["more"] = {"code": "more.seed_in", "values": {"bowl_high_c": line["work_high_c"]}}
    advice["choices"] = [read]


def _seed(kg: float, state: "Readable", advice: "Advice") -> None:
    advice["say"] = {"code": "say.seed", "values": {"seed_kg": kg}}
    advice["number"] = {"name": "seed_kg", "value": kg}
    advice["action"] = button("seeded", "seeded", {"kg": kg, "seen": len(state["seeds"])})


def _warm(state: "Readable", advice: "Advice") -> None:
    """The bowl wants warming: the button that says it was, and what may hurt meanwhile."""
    advice["action"] = button("bowl_warmed", "bowl_warmed", {"seen": len(state["warmed"])})
    advice["caution"] = {"word": "WARNING", "code": "caution.warm_bowl"}


def _more_seed(run: "Readable", advice: "Advice", code: str) -> None:
    state = run["bowl"]
    _seed(MORE_SEED_SHARE * chocolate_kg(run), state, advice)
    advice["say"]["code"] = code
    advice["more"] = {"code": "more.bowl_cool_it", "values": {"bowl_high_c": state["line"]["work_high_c"]}}


def _temper(run: "Readable", at_ms: float, advice: "Advice") -> None:
    """Stirred and read until it is in its working range; then a strip says whether it is in temper."""
    state, line = run["bowl"], run["bowl"]["line"]
    low_c, high_c, read_c = line["work_low_c"], line["work_high_c"], state["read_c"]
    read = _read(run, low_c, high_c)
    advice["step"] = "stir_seed"
    if read_c is None:
        advice["say"] = {"code": "say.stir_seed", "values": {}}
        advice["caution"] = {"word": "NOTICE", "code": "caution.chocolate_dry"}
        advice["more"] = {"code": "more.work_range", "values": {"bowl_low_c": low_c, "bowl_high_c": high_c}}
        advice["action"] = read
    elif read_c > high_c:
        _more_seed(run, advice, "say.bowl_too_warm")
        advice["choices"] = [read]
    elif read_c < low_c:
        _too_cool(state, read, advice)
    elif state["streaky"] and read_c > 0.5 * (low_c + high_c):
        _more_seed(run, advice, "say.streaky_warm")
        # Too few crystals, though it is in its range (common practice, no published source).
        advice["more"] = {"code": "more.streaky_in_range", "values": {}}
        advice["choices"] = [read]
    elif state["streaky"]:
        _too_cool(state, read, advice)
        advice["say"] = {"code": "say.streaky_cool", "values": {}}
    else:
        advice["step"] = "temper_check"
        advice["say"] = {"code": "say.temper_check", "values": {}}
        advice["more"] = {"code": "more.strip", "values": {}}
        seen = len(state["strips"])
        advice["action"] = button("strip_good", "strip_tested", {"good": True, "seen": seen})
        advice["choices"] = [button("strip_streaky", "strip_tested", {"good": False, "seen": seen}), read]


def _too_cool(state: "Readable", read: "EntryButton", advice: "Advice") -> None:
    advice["say"] = {"code": "say.bowl_too_cool", "values": {}}
    advice["more"] = {"code": "more.bowl_warm_it", "values": {"bowl_high_c": state["line"]["work_high_c"]}}
    _warm(state, advice)
    advice["choices"] = [read]


def _use(run: "Readable", at_ms: float, advice: "Advice") -> None:
    state, line = run["bowl"], run["bowl"]["line"]
    low_c, high_c, read_c = line["work_low_c"], line["work_high_c"], state["read_c"]
    read, used = _read(run, low_c, high_c), button("bowl_used", "bowl_used")
    thick = button("bowl_thick", "bowl_thickened")
    if state["thick"]:
        _too_cool(state, read, advice)
        advice["say"] = {"code": "say.bowl_thick", "values": {}}
        advice["more"] = {"code": "more.bowl_thick", "values": {"bowl_high_c": high_c}}
    elif read_c is not None and read_c < low_c:
        _too_cool(state, read, advice)
        advice["choices"] = [read, used]
    elif state["hold"] is None:
        advice["say"] = {"code": "say.read_bowl", "values": {}}
        advice["more"] = {"code": "more.work_range", "values": {"bowl_low_c": low_c, "bowl_high_c": high_c}}
        advice["action"] = read
        advice["choices"] = [used]
    elif at_ms >= due_ms(state):
        advice["step"] = "rewarm"
        advice["say"] = {"code": "say.rewarm", "values": {}}
        advice["more"] = {"code": "more.rewarm", "values": {"bowl_high_c": high_c}}
        _warm(state, advice)
        advice["choices"] = [read, used]
    else:
        ready_ms = state["read_ms"] + 1000.0 * state["hold"]["seconds_s"]
        advice["more"] = {"code": "more.in_temper", "values": {"ready_at_ms": ready_ms}}
        advice["number"] = {"name": "due_ms", "value": due_ms(state)}
        advice["action"] = read
        advice["choices"] = [used, thick]


def _weigh_out(run: "Readable", at_ms: float, advice: "Advice") -> None:
    body = {"what": "chocolate", "seen": len(run["out"])}
    advice["say"] = {"code": "say.weigh_chocolate", "values": {}}
    advice["more"] = {"code": "more.weigh_chocolate", "values": {}}
    advice["entry"] = copy_with(
        entry("weighed_out", "kg", 0.0, min(50.0, 1.2 * chocolate_kg(run)), body=body), name="rest_kg"
    )
    advice["choices"] = [skip("weigh_out")]


def _leftover(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["more"] = {"code": "more.leftover", "values": {"lot": run["lot"]}} if run["lot"] else None
    advice["entry"] = text_entry("leftover_named", "lot")
    advice["choices"] = [skip("leftover")]
    advice["caution"] = {"word": "WARNING", "code": "caution.leftover_carries"}


def _close(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["action"] = button("close", "closed")
    advice["caution"] = label_caution(run)


def _closed(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["more"] = {"code": "more.closed_bowl", "values": {"rest_kg": sum(one["kg"] for one in run["out"])}}


PAGES = {
    "set_up": _set_up,
    "weigh": _weigh,
    "lot": _lot,
    "melt_bowl": _melt,
    "temper_check": _temper,
    "use": _use,
    "weigh_out": _weigh_out,
    "leftover": _leftover,
    "close": _close,
    "closed": _closed,
}
