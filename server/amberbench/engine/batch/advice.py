"""What to do next: one prompt, one number, one big button, its caution; and the clocks that run.

`advise` reads a run and the time and changes nothing. It names sentences by their key in the text catalogue
("say.…", "more.…", "button.…", "caution.…"); the numbers beside them carry their unit in their name.
"""

from ..core.problems import Problem
from ..core.prompts import MOST_TIMES, button, clock, entry, lot_page, most_pieces, skip
from ..products.chocolate import prompts as chocolate_prompts
from ..products.cluster import prompts as cluster_prompts
from ..products.standup import prompts as standup_prompts
from ..steps.dip import prompts as dip_prompts
from ..steps.jacket.prompts import jacket_clocks, jacket_page
from ..steps.melt.prompts import frame_for, melt_page
from ..steps.room import prompts as room_prompts
from ..steps.wash import prompts as wash_prompts
from ..steps.wrap.prompts import rest_clocks, wrap_page
from .courses import open_step

# The cooling tray is left alone; the bowl soaks meanwhile (common practice, no published source).
SOAK_MS = 120000.0
# A slab that feels firm before this share of the earliest time is a slip of the finger (assumed); it can be skipped.
SOONEST_FIRM = 0.3
# A slab's top reads no further than this below the shop's room or above what was poured (assumed: a cold kitchen and
# an infrared thermometer's error); anything else is a slip of the finger.
READS_OFF_K = 12.0
# More of the caramel than this in the bowl is the bowl on the scale with it (assumed; learning takes in no more).
MOST_RESIDUE = 0.3
# A slab longer or shorter than the map by more than this share no longer matches it (assumed).
SAME_LENGTH = 0.03


def advise(run, at_ms):
    """The open step of a run and what the screen says of it at a corrected time in ms; see fields, "run.advise"."""
    step = open_step(run)
    advice = {
        "step": step,
        "say": {"code": "say." + step, "values": {}},
        "more": None,
        "number": None,
        "action": None,
        "choices": [],
        "entry": None,
        "caution": None,
        "wants": None,
        "melt": None,
        "clocks": [],
    }
    PAGES[run["kind"]][step](run, at_ms, advice)
    wash_prompts.mind(run, step, advice)
    room_prompts.mind(run, advice)
    advice["wants"] = _wants(run)
    advice["clocks"] = sorted(advice["clocks"] + _clocks(run), key=lambda clock: (clock["due_ms"], clock["name"]))
    undoable = run["undoable"]
    advice["undo"] = None
    if undoable is not None:
        advice["undo"] = {"event_id": undoable["event_id"], "code": "undo." + undoable["kind"]}
    return advice


def _clocks(run):
    clocks = []
    for part, clocks_of in CLOCKS:
        if run.get(part) is not None:
            clocks += clocks_of(run)
    return clocks


def _melt_clocks(run):
    clocks, melt = [], run["melt"]
    burning, resting = melt["burning"], melt["resting"]
    # Whoever took the bowl out early stands beside it: nothing to ring for.
    if burning is not None and burning["due_ms"] >= burning["started_ms"] + 1000.0 * burning["seconds_s"]:
        clocks.append(clock(burning["then"], burning["started_ms"], burning["due_ms"], "stir"))
    if resting is not None:
        clocks.append(clock("rest", resting["started_ms"], resting["due_ms"], "read"))
    if melt["jacket"] is not None and "melt" not in run["done"]:
        clocks += jacket_clocks(run)
    return clocks


def _slab_clocks(run):
    done, step = run["done"], open_step(run)
    if "melt" in done and step == "cool":
        return [clock("touch", done["melt"], run["cool"]["due_ms"], "ready")]
    return rest_clocks(run, step)


# The clocks of each part that a batch may have.
CLOCKS = (
    ("melt", _melt_clocks),
    ("cool", _slab_clocks),
    ("bowl", chocolate_prompts.bowl_clocks),
    ("cluster", cluster_prompts.cluster_clocks),
    ("dip", dip_prompts.dip_clocks),
    ("stand", standup_prompts.stand_clocks),
)


def _wants(run):
    """The refit of the cooling, when readings or touch tests have come in that no refit has seen; `keep` names what
    of its reply goes into the log."""
    cool = run["cool"]
    if cool is None or "melt" not in run["done"] or "cool" in run["done"] or run["closed_at_ms"] is not None:
        return None
    seen = len(cool["readings"]) + len(cool["touches"])
    if seen == cool["fitted"]:
        return None
    request = dict(cool["request"], readings=cool["readings"], touches=cool["touches"])
    wants = {"name": "cool.refit", "request": request, "kind": "cooling_refitted", "body": {"seen": seen}}
    wants["keep"] = ["ready_s", "ready_low_s", "ready_high_s", "loss_factor", "loss_factor_sd"]
    return wants


# One page for each step ---------------------------------------------------------------------------------------------


def _set_up(run, at_ms, advice):
    planned = run["planned"]
    frame = {name: planned[name] for name in ("length_m", "width_m", "bar_height_m")}
    advice["more"] = {"code": "more.frame", "values": frame}
    advice["action"] = button("all_ready", "ready_checked")
    advice["caution"] = {"word": "WARNING", "code": "caution.set_up"}
    if run["melt"]["jacket"] is not None:
        request = run["melt"]["request"]
        heat = {"jacket_c": request["jacket_c"], "limit_c": request["limit_c"]}
        advice["say"] = {"code": "say.set_up_jacket", "values": {}}
        advice["more"] = {"code": "more.set_up_jacket", "values": heat}
        advice["caution"] = {"word": "WARNING", "code": "caution.hot_water"}


def _weigh(run, at_ms, advice):
    planned_kg = run["planned"]["caramel_kg"]
    if run["lot"]:
        advice["more"] = {"code": "more.lot", "values": {"lot": run["lot"]}}
    advice["number"] = {"name": "caramel_kg", "value": planned_kg}
    advice["entry"] = entry(
        "weighed",
        "kg",
        0.05,
        10.0,
        likely_low=planned_kg * 0.97,
        likely_high=planned_kg * 1.03,
        body={"lot": run["lot"]},
    )
    advice["entry"]["name"] = "caramel_kg"
    advice["choices"] = [button("as_planned", "weighed", {"kg": planned_kg, "lot": run["lot"]})]
    advice["caution"] = {"word": "NOTICE", "code": "caution.milk"}


def _melt(run, at_ms, advice):
    page = melt_page if run["melt"]["jacket"] is None else jacket_page
    page(run, at_ms, advice)


def _cool(run, at_ms, advice):
    cool = run["cool"]
    poured_ms = run["done"]["melt"]
    read = {"code": "button.read_slab", "entry": _slab_entry(cool)}
    seen = len(cool["touches"])
    firm = button("firm", "touched", {"firm": True, "seen": seen})
    if at_ms >= cool["due_ms"]:
        advice["step"] = "touch"
        advice["say"] = {"code": "say.touch", "values": {}}
        advice["action"] = firm
        advice["choices"] = [button("not_yet", "touched", {"firm": False, "seen": seen}), read]
        advice["caution"] = {"word": "CAUTION", "code": "caution.glove_touch"}
        return
    if at_ms < poured_ms + SOAK_MS:
        advice["say"] = {"code": "say.soak", "values": {}}
        advice["caution"] = {"word": "CAUTION", "code": "caution.soak"}
    span = {
        "low_at_ms": poured_ms + 1000.0 * cool["ready_low_s"],
        "ready_at_ms": poured_ms + 1000.0 * cool["ready_s"],
        "high_at_ms": poured_ms + 1000.0 * cool["ready_high_s"],
    }
    meanwhile = "more.cooling_chocolate" if run["prebottom"] else "more.cooling"
    advice["more"] = {"code": meanwhile, "values": span}
    advice["number"] = {"name": "due_ms", "value": cool["due_ms"]}
    advice["action"] = read
    if at_ms >= poured_ms + 1000.0 * SOONEST_FIRM * cool["ready_low_s"]:
        advice["choices"] = [dict(firm, code="button.firm_now")]


def _slab_entry(cool):
    request = cool["request"]
    low_c = max(0.0, request["room_c"] - READS_OFF_K)
    high_c = min(150.0, request["start_c"] + READS_OFF_K)
    last = cool["readings"][-1]["surface_c"] if cool["readings"] else None
    body = {"seen": len(cool["readings"])}
    return entry("slab_read", "surface_c", low_c, high_c, last=last, body=body)


def _plain(words, kind, word, caution):
    """A step of one sentence, one button and one caution."""

    def page(run, at_ms, advice):
        advice["action"] = button(words, kind)
        advice["choices"] = [skip(advice["step"])]
        advice["caution"] = {"word": word, "code": "caution." + caution}

    return page


def _by_map(words, kind, caution):
    """As `_plain`, by the slab map; says so when more or less was weighed in and the map is not the slab's length."""
    plain = _plain(words, kind, "CAUTION", caution)

    def page(run, at_ms, advice):
        plain(run, at_ms, advice)
        planned_m, length_m = run["planned"]["length_m"], frame_for(run)["length_m"]
        if abs(length_m - planned_m) > SAME_LENGTH * planned_m:
            advice["more"] = {"code": "more.other_length", "values": {"length_m": length_m, "planned_m": planned_m}}

    return page


def _count(run, at_ms, advice):
    planned = run["planned"]
    pieces = planned["pieces"]
    likely = pieces * frame_for(run)["length_m"] / planned["length_m"]
    advice["more"] = {"code": "more.planned_pieces", "values": {"n": pieces}}
    advice["entry"] = entry(
        "counted", "pieces", 0, most_pieces(max(pieces, likely)), likely_low=0.9 * likely, likely_high=likely
    )
    advice["caution"] = {"word": "NOTICE", "code": "caution.wash_hands"}


def _weigh_out(run, at_ms, advice):
    weighed_kg = run["weighed_kg"] or run["planned"]["caramel_kg"]
    advice["entry"] = entry(
        "weighed_out", "kg", 0.0, MOST_TIMES * weighed_kg, body={"what": "rest", "seen": len(run["out"])}
    )
    advice["entry"]["name"] = "rest_kg"
    advice["choices"] = [skip("weigh_out")]


def _close(run, at_ms, advice):
    advice["action"] = button("close", "closed")
    if any(one["what"] == "bowl" for one in run["out"]):
        advice["more"] = {"code": "more.leftovers", "values": {}}
    else:
        # With both, the notice would not fit a small phone.
        advice["choices"] = [{"code": "button.weigh_bowl", "entry": _bowl_entry(run)}]
    advice["caution"] = {"word": "NOTICE", "code": "caution.allergen_lot"}


def _bowl_entry(run):
    """What stays in the bowl teaches how much to melt."""
    most_kg = MOST_RESIDUE * (run["weighed_kg"] or run["planned"]["caramel_kg"])
    made = entry("weighed_out", "kg", 0.0, most_kg, body={"what": "bowl", "seen": len(run["out"])})
    made["name"] = "bowl_kg"
    return made


def _closed(run, at_ms, advice):
    advice["more"] = {"code": "more.closed", "values": {"n": run["pieces"] or 0}}


STEPS = {
    "set_up": _set_up,
    "weigh": _weigh,
    "lot": lot_page,
    "melt": _melt,
    "cool": _cool,
    "loosen": _plain("loosened", "freed", "CAUTION", "knife"),
    "prebottom": _plain("prebottomed", "prebottomed", "NOTICE", "chocolate_dry"),
    "flip": _plain("flipped", "flipped", "CAUTION", "flip"),
    "score": _by_map("scored", "scored", "knife"),
    "cut": _by_map("cut", "cut", "knife_cut"),
    "wrap": wrap_page,
    "count": _count,
    "weigh_out": _weigh_out,
    "close": _close,
    "closed": _closed,
}
STEPS.update(dip_prompts.PAGES)
# The pages of each kind of batch.
PAGES = {"slab": STEPS, "cluster": dict(STEPS), "chocolate": chocolate_prompts.PAGES, "standup": standup_prompts.PAGES}
PAGES["cluster"].update(cluster_prompts.PAGES)


def advise_request(request):
    """What a run's screen says at a time.

    Request: run (a run document), at_ms (corrected time, ms). Reply: as `advise`.
    Raises: Problem not_a_run (run).
    """
    try:
        return advise(request["run"], request["at_ms"])
    except (KeyError, TypeError, AttributeError, ZeroDivisionError):
        raise Problem("run", "not_a_run") from None
