"""What a shop's closed batches measured: oven power by mass, loss factor by base, yield and trim by product, residue.

Nothing measured is ever written down: it is folded again from the batches. Ranges are those of a new batch.
"""

from math import exp, log, sqrt

from ..core import check
from ..core.problems import Problem
from ..core.statistics import SD_TO_10_PERCENT
from ..steps.melt import oven as melt_oven
from ..steps.melt import unevenness
from . import fields, ready
from .pooling import count_good, robust_mean

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from typing import Any

    from ..core.annotations import Document, Readable


BANDS_KG = (0.0, 0.35, 0.7, 1.4, 2.8, 5.6, 11.2)  # an octave each, around ¼, ½, 1, 2, 4 and 8 kg
# Usual spreads from batch to batch, as logarithms unless said otherwise; nobody measured them (assumed). What the
# batches show moves them.
OVEN_SPREAD = 0.05  # mains voltage, place in the oven, bowl
# The range of a new batch, its spread known from n others alone: Student's t in place of the normal curve, (z² + 1) / 4
# over n - 1 at its 10 % point. Of few batches the spread is mostly what is assumed, which has wide ones in it already.
STUDENT, FEWEST_FREE = (SD_TO_10_PERCENT * SD_TO_10_PERCENT + 1.0) / 4.0, 7
UNEVENNESS_SPREAD = 0.10  # of hottest over mean rise: where in the oven the bowl stands
# Of OVEN_SPREAD, and the deviation of its logarithm: with less, the range of an oven that differs more from batch to
# batch came too narrow and stayed so: at 8 % from batch to batch 70 % instead of 80 % inside after eight.
OVEN_SHARE = 1.2, 0.8
LOSS_SPREAD = 0.08  # draughts, people
# Of the spread that plans assume for start, room and contact a part is the shop's own, the same every time (its
# parchment, where its thermometer hangs); this share of the standard deviation is the batch's.
BATCH_SHARE = 0.7
YIELD_SPREAD = 0.4  # of the logit
SHARE_SPREAD = 0.25
SHARE_SD = 0.1  # scales and scraping
# What is believed before the first batch; assumed.
PLATELESS_W, PLATELESS_SD = 600.0, 0.35  # an oven whose plate nobody typed
BAND_SD = 0.10  # of the load factor, from one mass band to the others
LOSS_SD = 0.2  # models: prior of ln(loss factor)
YIELD, YIELD_SD = 0.97, 1.0  # of the logit
TRIM, RESIDUE, PICKUP, SHARE_PRIOR_SD = 0.10, 0.02, 0.5, 0.8
LOST_SHARE = 0.05  # a batch with less than this good is lost: a fact, and no yield of cutting (assumed)
MOST_OVER = 1.2  # more good centres than planned by more than this are a slip of the finger


def fold(request: "Document") -> "Document":
    """What the shop's closed batches measured; the ranges are those of a new batch.

    Request: batches [contributions, as learn.contribution makes them, left_out true where the shop leaves one out],
    in any order.
    Reply: ovens [{id, mass_band {low_kg, high_kg (kg)}, mass_kg (kg, that the power is for), power_w (W), power_sd_w
    (W), power_low_w (W), power_high_w (W), n}], bases [{id, loss_factor, loss_factor_sd (of its logarithm), spread,
    n}], caramels [{id, ready_c, low_c, high_c (°C), n}], products [{id, yield, yield_sd, yield_low, yield_high, n,
    trim, pickup}], residue, trim and pickup {share, share_sd, share_low, share_high, n} or null, ignored [{batch_id,
    part, why}], n.
    Raises: nothing for what the batches hold: what makes no sense is ignored and listed. Batches left out count as
    not there.
    Relation: robust mean of logarithms, see `pooling`. Power: over rating plate × 0.60 × load factor, ± 20 %; an
    oven's other masses come in with another 10 %. Loss factor: around 1 ± 20 % and what of the spread of start,
    room and contact is the shop's own; `spread` is how far they move cooling from batch to batch, over what is assumed.
    Ready: mean of the core when found firm enough, around 27 ± 3 °C, at the heat loss that the base turned out to have.
    Yield: logit of good over planned centres, times the share of batches that were not lost altogether.
    Source: assumed for what is believed before the first batch and for the usual spreads.
    """
    ignored: "list[Document]" = []
    batches = _usable(request["batches"], ignored)
    bases = _bases(batches)
    return {
        "ovens": _ovens(batches),
        "bases": bases,
        "caramels": ready.measured(_by_id(batches, "caramel_id", "ready"), bases),
        "products": _products(batches, ignored),
        "residue": _share([one["residue"] for one in batches if one["residue"] is not None], RESIDUE),
        "ignored": sorted(ignored, key=lambda row: (row["batch_id"] or "", row["part"] or "", row["why"])),
        "n": len(batches),
    }


def _usable(batches: "list[Any]", ignored: "list[Any]") -> "list[Document]":
    """The checked contributions that count, by batch id; the rest goes to `ignored` with the reason."""
    found: "list[tuple[str, list[float], Document]]" = []
    for batch in batches:
        try:
            if type(batch) is not dict:
                raise Problem("batches", "not_a_record")
            # A newer version may tell more.
            known = {name: batch[name] for name in fields.CONTRIBUTION if name in batch}
            full = check.checked(fields.CONTRIBUTION, known)
        except Problem as problem:
            name = batch.get("batch_id") if type(batch) is dict else None
            ignored.append({"batch_id": name if type(name) is str and len(name) <= 80 else None, "part": None})
            ignored[-1]["why"] = problem.code
            continue
        if not full["left_out"]:
            found.append((full["batch_id"], _sort_key(full), full))
    found = sorted(found, key=lambda one: (one[0], one[1]))
    for index in range(1, len(found)):
        if found[index][0] == found[index - 1][0]:
            ignored.append({"batch_id": found[index][0], "part": None, "why": "twice"})
    return [found[i][2] for i in range(len(found)) if i == 0 or found[i][0] != found[i - 1][0]]


def _sort_key(batch: "Document") -> list[float]:
    """Its numbers as a list, by which one of two contributions of the same batch is chosen whatever their order."""
    row = []
    for part in ORDERED:
        record = batch[part] or {}
        row += [-1.0 if record.get(name) is None else float(record[name]) for name in sorted(PARTS[part])]
    return row + [-1.0 if batch[name] is None else float(batch[name]) for name in ("trim", "residue", "pickup")]


ORDERED = ("oven", "base", "pieces", "ready")  # a dict has no order under MicroPython
PARTS = {part: fields.CONTRIBUTION[part]["fields"] for part in ORDERED}


def _by_id(batches: "Sequence[Readable]", key: str, part: str) -> "list[tuple[str, list[Readable]]]":
    """[(id, its batches)] of the contributions that have this part, in order of id."""
    groups: "dict[str, list[Readable]]" = {}
    for batch in batches:
        if batch[key] is not None and batch[part] is not None:
            groups.setdefault(batch[key], []).append(batch)
    return [(name, groups[name]) for name in sorted(groups)]


def _ovens(batches: "Sequence[Readable]") -> "list[Document]":
    rows = []
    for name, group in _by_id(batches, "oven_id", "oven"):
        prior, prior_sd = _power_before_any_melt([batch["oven"]["rated_w"] for batch in group])
        by_band: dict[int, list[tuple[float, float, float]]] = {}
        for batch in group:
            oven = batch["oven"]
            band = max(i for i in range(len(BANDS_KG) - 1) if BANDS_KG[i] <= oven["mass_kg"])
            # Per unit of load factor, so that masses of one band compare.
            value = log(oven["power_w"] / melt_oven.load_factor(oven["mass_kg"]))
            by_band.setdefault(band, []).append((value, oven["power_sd"], OVEN_SPREAD))
        uneven = _unevenness([batch["oven"] for batch in group])
        for band in sorted(by_band):
            others = [one for other in by_band if other != band for one in by_band[other]]
            rows.append(_oven(name, band, by_band[band], _from_other_masses(others, prior, prior_sd)))
            rows[-1].update(uneven(rows[-1]["mass_kg"]))
    return _with_batches(rows)


def _with_batches(rows: "list[Document]") -> "list[Document]":
    """Those that rest on a batch at all: of one whose only batch is more likely bad than good, nothing is known."""
    return [row for row in rows if row["n"] > 0]


def _unevenness(seen: "Sequence[Readable]") -> "Callable[[float], Document]":
    """What a mass in kg is told of an oven's unevenness: null where nobody read its hottest spot."""
    rows = []
    for oven in seen:
        if oven["unevenness"] is not None and oven["unevenness_sd"] is not None:
            value = oven["unevenness"] - unevenness.by_mass(oven["mass_kg"])
            rows.append((value, oven["unevenness_sd"], UNEVENNESS_SPREAD))
    if not rows:
        return lambda mass_kg: {"unevenness": None, "unevenness_sd": None}
    mean, sd, share = robust_mean(rows, unevenness.USUAL, unevenness.STILL_SD)
    spread = min(sqrt(sd * sd + (share * UNEVENNESS_SPREAD) ** 2), 2.0)
    return lambda mass_kg: {
        "unevenness": min(max(mean + unevenness.by_mass(mass_kg), 1.0), 4.0),
        "unevenness_sd": spread,
    }


def _power_before_any_melt(rated: list[float | None]) -> tuple[float, float]:
    """(ln of the power per unit of load factor, its standard deviation) before any melt: the middle of the plates."""
    plates = [one for one in rated if one is not None]
    if not plates:
        return log(PLATELESS_W), PLATELESS_SD
    return log(_median(plates) * melt_oven.RATED_SHARE), melt_oven.RATED_SD


def _median(values: list[float]) -> float:
    return sorted(values)[len(values) // 2]


def _from_other_masses(others: list[tuple[float, float, float]], prior: float, prior_sd: float) -> tuple[float, float]:
    """The same after the oven's melts of other masses."""
    if not others:
        return prior, prior_sd
    mean, sd, _ = robust_mean(others, prior, prior_sd, OVEN_SHARE)
    return mean, sqrt(sd * sd + BAND_SD * BAND_SD)


def _oven(name: str, band: int, seen: list[tuple[float, float, float]], before: tuple[float, float]) -> "Document":
    mean, sd, share = robust_mean(seen, before[0], before[1], OVEN_SHARE)
    mass_kg = (max(BANDS_KG[band], 0.175) * BANDS_KG[band + 1]) ** 0.5
    power_w = min(max(exp(mean) * melt_oven.load_factor(mass_kg), 100.0), 3500.0)
    spread, counted = sqrt(sd * sd + (share * OVEN_SPREAD) ** 2), count_good(seen, mean, share)
    to_10 = SD_TO_10_PERCENT * (1.0 + STUDENT / max(counted - 1, FEWEST_FREE))
    return {
        "id": name,
        "mass_band": {"low_kg": BANDS_KG[band], "high_kg": BANDS_KG[band + 1]},
        "mass_kg": mass_kg,
        "power_w": power_w,
        "power_sd_w": min(max(power_w * spread, 1.0), 1500.0),
        "power_low_w": power_w * exp(-to_10 * spread),
        "power_high_w": power_w * exp(to_10 * spread),
        "n": counted,
    }


def _bases(batches: "Sequence[Readable]") -> "list[Document]":
    rows = []
    for name, group in _by_id(batches, "base_id", "base"):
        seen = []
        for batch in group:
            base = batch["base"]
            usual = sqrt((BATCH_SHARE * base["spread_sd"]) ** 2 + LOSS_SPREAD * LOSS_SPREAD)
            seen.append((log(base["loss_factor"]), base["loss_factor_sd"], usual))
        own = _median([batch["base"]["spread_sd"] for batch in group])
        mean, sd, share = robust_mean(
            seen, 0.0, sqrt(LOSS_SD * LOSS_SD + (1.0 - BATCH_SHARE * BATCH_SHARE) * own * own)
        )
        spread = sqrt(sd * sd + (share * LOSS_SPREAD) ** 2)
        rows.append(
            {
                "id": name,
                "loss_factor": min(max(exp(mean), 0.2), 5.0),
                "loss_factor_sd": min(max(spread, 0.01), 1.0),
                "spread": min(max(share * BATCH_SHARE, 0.05), 5.0),
                "n": count_good(seen, mean, share),
            }
        )
    return _with_batches(rows)


def _products(batches: "Sequence[Readable]", ignored: "list[Any]") -> "list[Document]":
    trims = {name: [batch["trim"] for batch in group] for name, group in _by_id(batches, "product_id", "trim")}
    pickups = {name: [batch["pickup"] for batch in group] for name, group in _by_id(batches, "product_id", "pickup")}
    counts: "dict[str, Any]" = {}
    for name, group in _by_id(batches, "product_id", "pieces"):
        for batch in group:
            pieces = batch["pieces"]
            if pieces["counted"] > MOST_OVER * pieces["planned"]:
                ignored.append({"batch_id": batch["batch_id"], "part": "pieces", "why": "more_than_planned"})
            else:
                counts.setdefault(name, []).append((pieces["planned"], min(pieces["planned"], pieces["counted"])))
    rows = []
    for name in sorted(set(list(trims) + list(pickups) + list(counts))):
        row = _yield(counts.get(name, []))
        row.update({"id": name, "trim": _share(trims.get(name, []), TRIM)})
        row["pickup"] = _share(pickups.get(name, []), PICKUP, 5.0)
        rows.append(row)
    return rows


def _yield(counts: list[tuple[int, int]]) -> "Document":
    """Share of good centres of [(planned, counted)]: its logit, half a centre added to either side, over the batches
    that were not lost; times the share of batches that were not, half a batch added."""
    if not counts:
        return {"yield": 0.0, "yield_sd": 0.0, "yield_low": 0.0, "yield_high": 0.0, "n": 0}
    seen = []
    for planned, counted in counts:
        if counted >= LOST_SHARE * planned:
            good, bad = counted + 0.5, planned - counted + 0.5
            seen.append((log(good / bad), sqrt(1.0 / good + 1.0 / bad), YIELD_SPREAD))
    lost = len(counts) - len(seen)
    kept = (len(seen) + 0.5) / (len(counts) + 0.5)
    mean, sd, share = log(YIELD / (1.0 - YIELD)), YIELD_SD, 1.0
    if seen:
        mean, sd, share = robust_mean(seen, mean, sd)
    good = 1.0 / (1.0 + exp(-mean))
    usual = _median([planned for planned, _ in counts])
    # A new batch also draws its own centres, good or lost.
    chance = 1.0 / (usual * good * (1.0 - good) + 0.5)
    spread = sqrt(sd * sd + (share * YIELD_SPREAD) ** 2 + chance)
    low = 1.0 / (1.0 + exp(-mean + SD_TO_10_PERCENT * spread))
    return {
        "yield": kept * good,
        "yield_sd": kept * good * (1.0 - good) * spread + good * sqrt(kept * (1.0 - kept)),
        # A lost batch lies below the 10 % point, or is it.
        "yield_low": min(low, kept * good) if 1.0 - kept < 0.1 else 0.0,
        "yield_high": 1.0 / (1.0 + exp(-mean - SD_TO_10_PERCENT * spread)),
        "n": count_good(seen, mean, share) + lost,
    }


def _share(shares: list[float], usual: float, most: float = 1.0) -> "Document | None":
    """A share of the caramel weighed in, by its logarithm; a gram in a kilogram counts as that at least."""
    if not shares:
        return None
    seen = [(log(max(share, 0.001)), SHARE_SD, SHARE_SPREAD) for share in shares]
    mean, sd, share = robust_mean(seen, log(usual), SHARE_PRIOR_SD)
    counted = count_good(seen, mean, share)
    if counted == 0:
        return None
    spread = sqrt(sd * sd + (share * SHARE_SPREAD) ** 2 + SHARE_SD * SHARE_SD)
    middle = exp(mean)
    return {
        "share": min(middle, most),
        "share_sd": min(middle * spread, most),
        "share_low": min(middle * exp(-SD_TO_10_PERCENT * spread), most),
        "share_high": min(middle * exp(SD_TO_10_PERCENT * spread), most),
        "n": counted,
    }
