"""How far the times of a cooling slab may be off: 10 % and 90 % points from the ranges of what went in."""

from math import exp, log, sqrt

from ...core.statistics import SD_TO_10_PERCENT
from . import cooling_curve

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable
    from .cooling_curve import Slab


# Standard deviations nobody measured (source assumed). Contact: of its logarithm; ln 5 between the published
# 0.002 and 0.010 m² K/W of paper on metal (asme_1992), taken as three standard deviations.
CONTACT_SD = 0.5
START_SD_K = 1.5
ROOM_SD_K = 1.0
ROOM_STEP_K = 0.2
LATEST_S = 1e8  # three years: where a range has no end, as of a target in the room's own spread, it is cut here


def spans(
    slab: "Slab", points: list[tuple[float, float, float]], loss_factor: float, loss_factor_sd: float, spread: float
) -> list[tuple[str, float, float, float]]:
    """[(name, at_s, low_s, high_s)] of every milestone, in order of time.

    Loss factor and contact: one more course each, the change in ln t taken as symmetric. Start and room: read off
    the course itself, whose excess over the room scales with the excess at the start. The four are independent;
    contact, start and room count by the share `spread` of their standard deviations.
    """
    at = cooling_curve.times(slab, points)
    by_loss, by_contact = _courses(slab, loss_factor, loss_factor_sd)
    found = []
    for name, point, temp_c in slab.thresholds:
        if name not in at or at[name] > LATEST_S:
            continue
        if at[name] <= 0.0:
            found.append((name, 0.0, 0.0, 0.0))
            continue
        loss = _shift(by_loss, at, name)
        low, high = _others(slab, points, (name, point, temp_c), at, by_contact)
        low, high = (sqrt(loss * loss + (spread * one) ** 2) for one in (low, high))
        latest = min(at[name] * exp(min(high, 50.0)), LATEST_S)
        found.append((name, at[name], at[name] * exp(-low), latest))
    return sorted(found, key=lambda one: (one[1], one[2], one[0]))


def in_loss_factor(slab: "Slab", loss_factor: float, loss_factor_sd: float) -> float:
    """Standard deviation of ln(loss factor) that moves ready as far as start, room and contact together do."""
    points = slab.run(loss_factor)
    at = cooling_curve.times(slab, points)
    by_loss, by_contact = _courses(slab, loss_factor, loss_factor_sd)
    ready = next(one for one in slab.thresholds if one[0] == "ready")
    low, high = _others(slab, points, ready, at, by_contact)
    loss = _shift(by_loss, at, "ready")
    return 0.5 * (low + high) * loss_factor_sd / loss if loss else 0.0


def _courses(slab: "Slab", loss_factor: float, loss_factor_sd: float) -> "tuple[Document, Document]":
    """Milestones at the 90 % point of the loss factor, and at that of the contact ({} where there is none)."""
    by_loss = cooling_curve.times(slab, slab.run(loss_factor * exp(SD_TO_10_PERCENT * loss_factor_sd)))
    if slab.contact <= 0.0 or not slab.stack.base_link:
        return by_loss, {}
    contact = slab.contact * exp(SD_TO_10_PERCENT * CONTACT_SD)
    return by_loss, cooling_curve.times(slab, slab.run(loss_factor, contact, 10.0 * cooling_curve.LONGEST_S))


def _shift(other: "Readable", at: "Readable", name: str) -> float:
    """By how much ln t of a milestone differs on another course."""
    return abs(log(other[name] / at[name])) if other.get(name) else 0.0


def _others(
    slab: "Slab",
    points: list[tuple[float, float, float]],
    threshold: tuple[str, str, float],
    at: "Readable",
    by_contact: "Readable",
) -> tuple[float, float]:
    """Changes of ln t to the 10 % and the 90 % side by start, room and contact together."""
    name, point, temp_c = threshold
    contact = _shift(by_contact, at, name)
    low, high = _scaled(slab, points, cooling_curve.COLUMNS[point], temp_c, at[name])
    return sqrt(low * low + contact * contact), sqrt(high * high + contact * contact)


def _scaled(
    slab: "Slab", points: list[tuple[float, float, float]], column: int, temp_c: float, at_s: float
) -> tuple[float, float]:
    """Changes of ln t to the 10 % and the 90 % side when start or room are other than given.

    Of the room by its slope here: in one that is warmer by its whole spread the slab may never get there.
    """
    low = high = 0.0
    for start_k, room_k, times in ((START_SD_K, 0.0, 1.0), (0.0, ROOM_STEP_K, ROOM_SD_K / ROOM_STEP_K)):
        for sign in (-SD_TO_10_PERCENT, SD_TO_10_PERCENT):
            room, start = slab.room_c + sign * room_k, slab.start_c + sign * start_k
            share = (temp_c - room) / (start - room)
            other = cooling_curve.crossing_s(
                points, column, slab.room_c + (slab.start_c - slab.room_c) * share, slab.room_c
            )
            if not other:
                continue
            change = times * log(other / at_s)
            if change < 0.0:
                low = sqrt(low * low + change * change)
            else:
                high = sqrt(high * high + change * change)
    return low, high
