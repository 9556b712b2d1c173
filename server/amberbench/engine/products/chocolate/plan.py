"""A bowl of chocolate as a whole: melt, seed, how long it stays in temper, and what readings teach about that."""

import math

from ...core.statistics import SD_TO_10_PERCENT
from ...steps.temper import plan as temper

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...physics.pot import Pot
    from ...types import ChocolatePlanReply, ChocolatePlanRequest


READ_SD_K = 0.2  # how well a probe in a stirred bowl repeats itself (assumed)
PASSED_ON = ("chocolate", "targets", "mass_kg", "melt_c", "seed_c", "room_c", "bowl")


def plan(request: "ChocolatePlanRequest") -> "ChocolatePlanReply":
    """A bowl of chocolate to melt, seed and keep in its working range.

    Request: as chocolate.temper.
    Reply: as chocolate.temper, and hold {seconds_s (s), low_s (s), high_s (s)} from the upper end of the working range,
    bowl_request (what the bench reckons with), inputs.
    Raises: Problem of chocolate.temper and chocolate.hold.
    Relation: that of chocolate.temper and chocolate.hold.
    Source: beckett_2009, wille_lutton_1966, mcadams, practice, as those two; assumed for what they assume.
    """
    asked: "Any" = request
    tempered: "Any" = temper.plan(asked)
    wanted: "Any" = {name: asked[name] for name in PASSED_ON}
    held: "Any" = dict(wanted, now_c=temper.lines(request)["work_high_c"])
    kept = temper.working_time(held)
    known = [row["field"] for row in tempered["inputs"]]
    inputs = tempered["inputs"] + [row for row in kept["inputs"] if row["field"] not in known]
    hold = {name: kept[name] for name in ("seconds_s", "low_s", "high_s")}
    tempered.update(inputs=inputs, hold=hold, bowl_request=wanted)
    reply: "ChocolatePlanReply" = tempered
    return reply


def working_time(request: "Readable", now_c: float, faster: float, faster_sd: float) -> "Document":
    """Seconds until a bowl of now_c (°C) leaves its working range: {seconds_s, low_s, high_s}.

    `faster`: logarithm of how much faster it cools than the model says, `faster_sd` its standard deviation.
    """
    seconds_s = temper.cooling_between(request, now_c, temper.lines(request)["work_low_c"])[0] / math.exp(faster)
    spread = math.exp(SD_TO_10_PERCENT * faster_sd)
    return {"seconds_s": seconds_s, "low_s": seconds_s / spread, "high_s": seconds_s * spread}


def first_faster_sd(request: "Readable") -> float:
    """Standard deviation of `faster` before anything was read in use."""
    line = temper.lines(request)
    return temper.cooling_between(request, line["work_high_c"], line["work_low_c"])[1]


def learn_cooling(
    request: "Readable", from_c: float, to_c: float, took_s: float, faster: float, faster_sd: float
) -> tuple[float, float]:
    """(`faster`, `faster_sd`) after a bowl left alone went from one reading to the next (°C) in took_s (s).

    One step of an extended Kalman filter on the fall in temperature; both readings scatter by READ_SD_K. A step moves
    by no more than two of its own standard deviations: one slip of the finger must not empty the clock.
    """
    pot, crystals_j_k = temper.bowl_of(request)
    fall_k = _cooling_rate(pot, crystals_j_k, from_c) * took_s
    fall_k = _cooling_rate(pot, crystals_j_k, max(from_c - 0.5 * fall_k, request["room_c"])) * took_s
    expected_k = fall_k * math.exp(faster)
    variance = faster_sd * faster_sd
    gain = variance * expected_k / (variance * expected_k * expected_k + 2.0 * READ_SD_K * READ_SD_K)
    step = gain * (from_c - to_c - expected_k)
    step = min(max(step, -2.0 * faster_sd), 2.0 * faster_sd)
    return faster + step, math.sqrt(variance * (1.0 - gain * expected_k))


def _cooling_rate(pot: "Pot", crystals_j_k: float, temp_c: float) -> float:
    """How fast a bowl of temp_c cools, in K/s."""
    return pot.loss_w(temp_c) / (pot.capacity(temp_c) + crystals_j_k)
