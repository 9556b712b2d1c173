"""What one closed batch teaches about the shop's oven, base, product and bowl, independently of its plan."""

from math import exp, log, sqrt

from ..batch import plan_and_run_checks
from ..batch.courses import KIND_OF
from ..core import check
from ..core.problems import Problem
from ..core.statistics import SD_TO_10_PERCENT
from ..steps.common.fields import TEN_DIPPED
from ..steps.cool import fields as cool_fields
from ..steps.cool import refit, time_spread, warm_room, wide_base
from ..steps.melt import fields as melt_fields
from ..steps.melt import oven as melt_oven
from ..steps.melt import unevenness
from ..steps.melt.estimate import Estimate
from ..steps.melt.next_action import follow_history
from . import fields
from . import ready as ready_to_cut

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Document, Readable
    from ..physics.pot import Pot
    from ..steps.cool.cooling_curve import Slab
    from ..types import LearnContributionRequest


WIDE_SD = 0.35  # of ln(power) while a batch is heard on its own; wide, and divided out again
WIDE_UNEVENNESS_SD = 1.0  # of the unevenness, likewise
ROUNDS = 3  # the filter is linear around what it starts from: from there again, until it starts from its answer
ONE_SIDED_SD = 1.5  # standard deviations; a normal cut off a little above its middle has its own place there
LEAST_INFORMATION = 1.0  # information on a logarithm, 1/sd², below which a batch says nothing
TRIM_WORDS, BOWL_WORDS = ("trim", "rest"), ("bowl",)


class TeachesNothing(Exception):
    """Why a batch teaches nothing about a part."""


def contribution_request(request: "LearnContributionRequest") -> "Document":
    """What a closed batch contributes to the shop's measured values.

    Request: batch_id, plan (the plan document), run (the run document, of a closed batch).
    Reply: contribution {batch_id, left_out, oven_id, base_id, product_id; oven {mass_kg (kg), rated_w (W), power_w (W),
    power_sd (of its logarithm)}, base {loss_factor, loss_factor_sd (of its logarithm), spread_sd (the same)}, pieces
    {planned, counted}, ready {core_c (°C), per_log_k (K), core_sd_k (K)}, trim and residue (fractions of the caramel
    weighed in), pickup (fraction of the undipped weight), each null where the batch teaches nothing; compared [{name,
    planned, low, high, happened}], unused [{part, why}]}.
    Raises: Problem not_a_plan (plan), not_a_run (run), not_closed (run).
    Relation: power: the filter of melt.next_burst with one power for the whole melt, started wide, its start taken
    out of its end again; power and heat capacity count as one. A jacket teaches nothing about an oven. Loss factor:
    the same with cool.refit. So a batch teaches the same whatever its plan had learnt, and batches may be pooled. Trim
    is what was weighed as trim or rest less the centres that were not counted; residue is what was weighed as bowl.
    Source: assumed for the wide starts.
    """
    plan, run = request["plan"], request["run"]
    if type(plan) is not dict:
        raise Problem("plan", "not_a_plan")
    plan_and_run_checks.check_run(run)
    if run["closed_at_ms"] is None:
        raise Problem("run", "not_closed")
    return {"contribution": contribution(request["batch_id"], plan, run)}


def contribution(batch_id: str, plan: "Readable", run: "Readable") -> "Any":
    """The contribution of a closed run."""
    found: "Document" = {"batch_id": batch_id, "left_out": run.get("left_out") is not None, "unused": []}
    for name in ("oven_id", "base_id", "product_id", "caramel_id"):
        found[name] = plan[name] if type(plan.get(name)) is str and len(plan[name]) <= 80 else None
    for part, teach in PARTS:
        try:
            # What was burnt, dropped or only tried says nothing of cooling and yield; its melt was a melt.
            if part != "oven" and run.get("thrown_away") is not None:
                raise TeachesNothing("thrown_away")
            taught = check.checked({part: fields.CONTRIBUTION[part]}, {part: teach(run)})
            found[part] = taught[part]
        except (TeachesNothing, Problem) as why:
            found[part] = None
            found["unused"].append({"part": part, "why": why.code if isinstance(why, Problem) else str(why)})
    found["pickup"] = _pickup(run)
    found["ready"] = _ready(run, plan)
    found["compared"] = compared(found, plan, run)
    return check.checked(fields.CONTRIBUTION, found)


def _oven(run: "Readable") -> "Document":
    """What the melt teaches about the oven."""
    if run["melt"] is None:
        raise TeachesNothing("not_in_this_batch")
    if run["melt"].get("jacket") is not None:
        raise TeachesNothing("in_a_jacket")
    known, melt = melt_fields.FUNCTIONS["melt.next_burst"]["request"], KIND_OF[run["kind"]].oven_melt(run)
    request = check.checked(known, dict(melt["request"], history=melt["history"]))
    oven = request["oven"]
    if oven["rated_w"] is None and oven["power_w"] is None:
        raise TeachesNothing("oven_without_power")
    pot = melt_oven.bowl(request)
    log_power, sd = _power(pot, request, log(melt_oven.power_prior(oven, request["mass_kg"])[0]))
    seen: "Document" = {"mass_kg": request["mass_kg"], "rated_w": oven["rated_w"]}
    seen.update(power_w=exp(log_power), power_sd=sd)
    seen.update(_unevenness(pot, request, log_power, sd))
    return seen


def _unevenness(pot: "Pot", request: "Readable", log_power: float, sd: float) -> "Document":
    """Hottest rise over mean rise, by the readings of the hottest spot alone; the power as the whole melt tells it."""
    wide = unevenness.USUAL, WIDE_UNEVENNESS_SD
    estimate = Estimate(pot, (exp(log_power), sd), request["start_c"], None, wide)
    follow_history(estimate, request["history"])
    before, after = 1.0 / (WIDE_UNEVENNESS_SD * WIDE_UNEVENNESS_SD), 1.0 / estimate.uneven.var
    if after - before < 1e-6:
        return {}
    alone = (estimate.uneven.mean * after - wide[0] * before) / (after - before)
    return {"unevenness": alone, "unevenness_sd": 1.0 / sqrt(after - before)}


def _power(pot: "Pot", request: "Readable", start: float) -> tuple[float, float]:
    """(ln of the one power that explains the melt, its standard deviation) by the readings alone."""
    for _ in range(ROUNDS):
        estimate = Estimate(pot, (exp(start), WIDE_SD), request["start_c"])
        estimate.drift_sd = 0.0
        before = 1.0 / estimate.pp
        follow_history(estimate, request["history"])
        information = 1.0 / estimate.pp - before
        if not estimate.heard or information < LEAST_INFORMATION:
            raise TeachesNothing("says_nothing")
        alone = (estimate.log_p / estimate.pp - start * before) / information
        start = min(max(alone, start - 1.0, log(25.0)), start + 1.0, log(3400.0))
    return start, 1.0 / sqrt(information)


def _base(run: "Readable") -> "Document":
    """What the cooling teaches about the base."""
    cool = run["cool"]
    if cool is None:
        raise TeachesNothing("not_in_this_batch")
    request = _seen_on_bench(run, cool)
    slab = wide_base.slab(request)
    soonest_s = refit.soonest_firm_s(slab, log(request["loss_factor"]), request["loss_factor_sd"])
    touches = [one for one in request["touches"] if not one["firm"] or one["at_s"] >= soonest_s]
    request["touches"] = refit.telling(slab, touches)
    if not request["readings"] and not request["touches"]:
        raise TeachesNothing("says_nothing")
    factor, sd = request["loss_factor"], request["loss_factor_sd"]
    spread_sd = min(time_spread.in_loss_factor(warm_room.coolest_brought(request), factor, sd), 5.0)
    # What a touch test says depends on where it was expected: where the plan's range lay. Its start is taken out again.
    prior, prior_sd = log(factor), sqrt(sd * sd + (request["spread"] * spread_sd) ** 2)
    x, sd = _refitted(slab, request, prior, prior_sd)
    information = 1.0 / (sd * sd) - 1.0 / (prior_sd * prior_sd)
    if information < LEAST_INFORMATION:
        raise TeachesNothing("says_nothing")
    over = (x - prior) / (prior_sd * prior_sd) / information
    if len({one["firm"] for one in request["touches"]}) == 1:
        # Firm at the first touch says "this much or more": near, and that much surer, moves a mean by the same.
        most = ONE_SIDED_SD * sd
        information *= max(1.0, abs(over) / most)
        over = min(max(over, -most), most)
    factor = exp(min(max(x + over, refit.LOWEST), refit.HIGHEST))
    return {"loss_factor": factor, "loss_factor_sd": 1.0 / sqrt(information), "spread_sd": spread_sd}


def _seen_on_bench(run: "Readable", cool: "Readable") -> "Any":
    """A checked request to cool.refit: what is read or felt after it came out of the refrigerator says nothing here."""
    known = cool_fields.FUNCTIONS["cool.refit"]["request"]
    chilled_s = (cool.get("chilled_ms", 1e300) - run["done"].get("melt", 0.0)) / 1000.0
    seen = {name: [one for one in cool[name] if one["at_s"] <= chilled_s] for name in ("readings", "touches")}
    return check.checked(known, dict(cool["request"], **seen))


def _ready(run: "Readable", plan: "Readable") -> "Document | None":
    """What the touches say of the temperature it is cut at; nothing where nobody read the slab, as heat loss and
    ready cannot be told apart by touches alone."""
    cool, planned = run["cool"], _planned_cooling(plan)
    if cool is None or planned is None or run.get("thrown_away") is not None:
        return None
    request = _seen_on_bench(run, cool)
    if not request["readings"]:
        return None
    touches = sorted(request["touches"], key=lambda one: (one["at_s"], one["firm"]))
    found = ready_to_cut.told(wide_base.slab(request), touches, min(planned["ready_low_s"], cool["ready_low_s"]))
    return found if found and 10.0 <= found["core_c"] <= 60.0 else None


def _refitted(slab: "Slab", request: "Readable", prior: float, prior_sd: float) -> tuple[float, float]:
    """(mean of ln(loss factor), its standard deviation) after the readings and touch tests of a checked request."""
    readings = sorted((float(one["at_s"]), float(one["surface_c"])) for one in request["readings"])
    touches = sorted((float(one["at_s"]), one["firm"]) for one in request["touches"])
    low_k, sd_k = request["reading_low_k"], request["reading_sd_k"]
    fitted: tuple[float, float] = refit.fit(refit.Evidence(slab, readings, touches, low_k, sd_k), prior, prior_sd)
    return fitted


def _pieces(run: "Readable") -> "Document":
    """What was planned and counted."""
    if run["pieces"] is None:
        raise TeachesNothing("not_counted")
    return {"planned": run["planned"]["pieces"], "counted": run["pieces"]}


def _out_kg(run: "Readable", words: tuple[str, ...]) -> float:
    if not check.is_number(run["weighed_kg"]) or run["weighed_kg"] <= 0.0:
        raise TeachesNothing("not_weighed_in")
    weighed = [one["kg"] for one in run["out"] if one["what"] in words]
    if not weighed or not all(check.is_number(kg) for kg in weighed):
        raise TeachesNothing("not_weighed_out")
    out_kg: float = sum(weighed)
    return out_kg


def _trim(run: "Readable") -> float:
    """Trim over the caramel weighed in; centres that did not count as good were weighed with it."""
    out_kg = _out_kg(run, TRIM_WORDS)
    if run["pieces"] is None:
        raise TeachesNothing("not_counted")
    lost = max(0, run["planned"]["pieces"] - run["pieces"])
    share: float = max(0.0, out_kg - lost * run["planned"]["piece_kg"]) / run["weighed_kg"]
    return share


def _residue(run: "Readable") -> float:
    share: float = _out_kg(run, BOWL_WORDS) / run["weighed_kg"]
    return share


def _pickup(run: "Readable") -> float | None:
    """Chocolate taken up over the undipped weight, of ten pieces weighed; None where nobody weighed them."""
    weighed = [one["kg"] for one in run["out"] if one["what"] == TEN_DIPPED]
    undipped_kg = 10.0 * run["planned"]["piece_kg"] if weighed else 0.0
    if not weighed or undipped_kg <= 0.0:
        return None
    taken_up: float = weighed[-1] / undipped_kg - 1.0
    known = fields.CONTRIBUTION["pickup"]
    return taken_up if known["low"] <= taken_up <= known["high"] else None


PARTS = (("oven", _oven), ("base", _base), ("pieces", _pieces), ("trim", _trim), ("residue", _residue))


def compared(found: "Readable", plan: "Readable", run: "Readable") -> "list[Document]":
    """[{name, planned, low, high, happened}]: the plan against what happened, as far as both are known."""
    rows = []
    oven = found["oven"]
    if oven is not None:
        asked = KIND_OF[run["kind"]].oven_melt(run)["request"]
        power_w, sd = melt_oven.power_prior(check.checked(melt_fields.MELT, asked)["oven"], oven["mass_kg"])
        low_w, high_w = power_w * exp(-SD_TO_10_PERCENT * sd), power_w * exp(SD_TO_10_PERCENT * sd)
        rows.append(_row("power_w", power_w, low_w, high_w, oven["power_w"]))
    jacket = None if run["melt"] is None else run["melt"].get("jacket")
    if jacket is not None and jacket["started_ms"] is not None and "melt" in run["done"]:
        took_s = (run["done"]["melt"] - jacket["started_ms"]) / 1000.0
        rows.append(_row("jacket_s", jacket["seconds_s"], jacket["low_s"], jacket["high_s"], took_s))
    touches = [] if run["cool"] is None else run["cool"]["touches"]
    firm = [touch["at_s"] for touch in touches if touch["firm"]]
    planned = _planned_cooling(plan)
    if firm and planned is not None:
        rows.append(_row("ready_s", planned["ready_s"], planned["ready_low_s"], planned["ready_high_s"], firm[0]))
    if run["pieces"] is not None:
        rows.append(_row("pieces", run["planned"]["pieces"], None, None, run["pieces"]))
    if run["weighed_kg"] is not None:
        rows.append(_row("caramel_kg", run["planned"]["caramel_kg"], None, None, run["weighed_kg"]))
    return rows


def _planned_cooling(plan: "Readable") -> "Document | None":
    """What the plan said of the cooling; None when it is no plan."""
    reply = plan.get("reply")
    cool = reply.get("cool") if type(reply) is dict else None
    names = ("ready_s", "ready_low_s", "ready_high_s")
    if type(cool) is dict and all(check.is_number(cool.get(name)) for name in names):
        return cool
    return None


def _row(name: str, planned: float, low: float | None, high: float | None, happened: float) -> "Document":
    return {"name": name, "planned": planned, "low": low, "high": high, "happened": happened}
