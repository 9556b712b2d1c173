"""Prompts of the steps that every batch has: weigh, lot, weigh out, close."""

from ...core.copy_with import copy_with
from ...core.prompts import SLIP_FACTOR, button, entry, skip, text_entry
from .fields import BOWL_KG, THROWN_AWAY

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable

    from ...core.annotations import Readable
    from ...types import Advice, Caution, Entry, EventButton, Sentence, SignalWord


def lot_page(run: "Readable", at_ms: float, advice: "Advice") -> None:
    """The page that asks for the lot of the caramel."""
    advice["entry"] = text_entry("lot_named", "lot")
    advice["choices"] = [skip("lot")]


def contains_caution(run: "Readable", unknown: str) -> "Caution":
    """What the batch contains by all labels; where nothing is known of it, the caution of that key."""
    contains = run.get("contains", [])
    if not contains:
        return {"word": "WARNING", "code": unknown}
    code = "caution.contains" if run.get("labels_known") else "caution.contains_some"
    return {"word": "WARNING", "code": code, "values": {"allergens": contains}}


# More of the caramel than this in the bowl is the bowl on the scale with it (assumed; learning takes in no more).
MOST_RESIDUE = 0.3


def _weigh_old(old_kg: float, advice: "Advice") -> None:
    """Old caramel goes into the bowl first: its weight is the one that would else be lost in the sum."""
    advice["say"] = {"code": "say.weigh_old", "values": {}}
    advice["number"] = {"name": "old_kg", "value": old_kg}
    typed = entry("old_weighed", "kg", 0.0, SLIP_FACTOR * old_kg, likely_low=0.9 * old_kg, likely_high=1.1 * old_kg)
    advice["entry"] = copy_with(typed, name="old_kg")
    advice["choices"] = [button("as_planned", "old_weighed", {"kg": old_kg})]
    advice["caution"] = {"word": "WARNING", "code": "caution.old_caramel"}


def _weigh(run: "Readable", at_ms: float, advice: "Advice") -> None:
    planned_kg, remelt = run["planned"]["caramel_kg"], run.get("remelt")
    if remelt and remelt["old_kg"] > 0.0 and remelt["weighed_kg"] is None:
        return _weigh_old(remelt["old_kg"], advice)
    if remelt and remelt["weighed_kg"]:
        advice["more"] = {"code": "more.old_weighed", "values": {"old_kg": remelt["weighed_kg"]}}
    elif run["lot"]:
        advice["more"] = {"code": "more.lot", "values": {"lot": run["lot"]}}
    advice["number"] = {"name": "caramel_kg", "value": planned_kg}
    typed = entry(
        "weighed",
        "kg",
        BOWL_KG["low"],
        float(BOWL_KG["high"]),
        likely_low=planned_kg * 0.97,
        likely_high=planned_kg * 1.03,
        body={"lot": run["lot"]},
    )
    advice["entry"] = copy_with(typed, name="caramel_kg")
    advice["choices"] = [button("as_planned", "weighed", {"kg": planned_kg, "lot": run["lot"]})]
    advice["caution"] = contains_caution(run, "caution.milk")


def plain_page(words: str, kind: str, word: "SignalWord", caution: str) -> "Callable[..., None]":
    """A step of one sentence, one button and one caution."""

    def page(run: "Readable", at_ms: float, advice: "Advice") -> None:
        advice["action"] = button(words, kind)
        advice["choices"] = [skip(advice["step"])]
        advice["caution"] = {"word": word, "code": "caution." + caution}

    return page


def _weigh_out(run: "Readable", at_ms: float, advice: "Advice") -> None:
    weighed_kg = run["weighed_kg"] or run["planned"]["caramel_kg"]
    typed = entry("weighed_out", "kg", 0.0, SLIP_FACTOR * weighed_kg, body={"what": "rest", "seen": len(run["out"])})
    advice["entry"] = copy_with(typed, name="rest_kg")
    remelt = run.get("remelt")
    if remelt:
        advice["more"] = {"code": "more.melted_again", "values": {"n": remelt["n"]}}
    advice["choices"] = [skip("weigh_out")]


def _close(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["action"] = button("close", "closed")
    if any(one["what"] == "bowl" for one in run["out"]):
        advice["more"] = _leftovers(run.get("remelt"))
    else:
        # With both, the notice would not fit a small phone.
        advice["choices"] = [{"code": "button.weigh_bowl", "entry": _bowl_entry(run)}]
    advice["caution"] = label_caution(run)


def label_caution(run: "Readable") -> "Caution":
    """What the labels of a closed batch carry; without a lot nothing of it can be traced."""
    if run.get("may_contain"):
        values = {"allergens": run["may_contain"]}
        return {"word": "WARNING", "code": "caution.label_may_contain", "values": values}
    return {"word": "WARNING", "code": "caution.allergen_lot" if run["lot"] else "caution.no_lot"}


def _leftovers(remelt: "Readable | None") -> "Sentence":
    """What may become of what is left over: the label of its caramel decides."""
    if not remelt or remelt["allowed_n"] is None:
        return {"code": "more.leftovers", "values": {}}
    left_n = max(0, remelt["allowed_n"] - remelt["n"])
    return {"code": "more.leftovers_allowed", "values": {"n": left_n}}


def _bowl_entry(run: "Readable") -> "Entry":
    """The page that weighs what stayed in the bowl, from which plans learn how much to melt."""
    most_kg = MOST_RESIDUE * (run["weighed_kg"] or run["planned"]["caramel_kg"])
    made = entry("weighed_out", "kg", 0.0, most_kg, body={"what": "bowl", "seen": len(run["out"])})
    made["name"] = "bowl_kg"
    return made


def throw_away_button(begun: bool) -> "EventButton":
    """Throws the batch away for a reason; what was never begun can only be called back."""
    reasons = [one for one in THROWN_AWAY if (one == "unused") != begun]
    return copy_with(button("throw_away", "thrown_away"), reasons=reasons)


def closed_page(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["more"] = {"code": "more.closed", "values": {"n": run["pieces"] or 0}}


PAGES = {"weigh": _weigh, "lot": lot_page, "weigh_out": _weigh_out, "close": _close, "closed": closed_page}
