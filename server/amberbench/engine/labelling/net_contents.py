"""Net contents: is what is in the packages what their label says? By the rule of the US or of the EU and the UK.

Guide only: local rules and the inspector decide. Each figure's status stands in the tests that hold it.
"""

import math

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document, Readable

# Below the last digit of any kitchen scale: two weights that differ by less are equal (g).
SAME_G = 1e-6
# US: the label up to so many g, and how much one package may be short (g); Handbook 133, table 2-5.
MOST_SHORT_G = (
    (54, 3.6), (81, 5.4), (117, 7.2), (154, 9.0), (208, 10.8), (263, 12.7), (317, 14.5), (381, 16.3), (426, 18.1),
    (489, 19.9), (571, 21.7), (635, 23.5), (698, 25.4), (771, 27.2), (852, 29.0), (970, 31.7), (1120, 35.3),
    (1250, 39.0), (1450, 42.6), (1760, 49.8), (2130, 54.4), (2630, 63.5), (3080, 68.0), (3580, 77.1), (4260, 86.1),
    (5300, 99.7), (6480, 113.0), (8020, 127.0), (10520, 140.0), (14330, 167.0), (19230, 199.0), (24670, 226.0),
)  # fmt: skip
# EU: the label up to so many g, and how much a package may be short: g, or a share, which is rounded up to a tenth of a
# gram (directive 76/211/EEC as the French decree 78-166 gives it; the rounding from memory).
TOLERABLE_G = (
    (50, 0.09),
    (100, 4.5),
    (200, 0.045),
    (300, 9.0),
    (500, 0.03),
    (1000, 15.0),
    (10000, 0.015),
    (15000, 150.0),
)
# US: sample correction factor by how many were weighed; category A.
SCF = {2: 8.984, 3: 2.484, 4: 1.591, 5: 1.241, 6: 1.05, 7: 0.925, 8: 0.836, 9: 0.769, 10: 0.715, 11: 0.672, 12: 0.635,
       24: 0.422, 48: 0.291}  # fmt: skip
# EU: lots up to so many packages: (weigh, at most so many short, from so many refused), weighed in two goes.
DOUBLE_PLAN = ((500, (30, 1, 3), (60, 4, 5)), (3200, (50, 2, 5), (100, 6, 7)), (10**9, (80, 3, 7), (160, 8, 9)))
SMALL_LOT = 100
SHARE_SHORT = 0.02  # the stricter of the two that are in use (2 and 2.5 %)


def most_short_g(rule: str, label_g: float) -> float:
    """How much one package may be short: the MAV (us) or the tolerable negative error (eu), g."""
    if rule == "us":
        if label_g <= 36:
            return 0.1 * label_g
        for up_to, most in MOST_SHORT_G:
            if label_g <= up_to:
                return most
        return 0.02 * label_g
    for up_to, most in TOLERABLE_G:
        if label_g <= up_to:
            return most if most >= 1 else _up_to_a_tenth(most * label_g)
    return _up_to_a_tenth(0.01 * label_g)


def _up_to_a_tenth(value_g: float) -> float:
    return math.ceil(value_g * 10 - 1e-9) / 10


def check(request: "Readable") -> "Document":
    """What the weights of some packages say of their lot, and how many are still to be weighed.

    Request: rule (us or eu), label_kg (kg), net_kg (kg, by package), lot_size (packages), division_kg (kg, of the
    scale; null: unknown).
    Reply: wanted (packages to weigh in all, as far as it is known), mean_error_kg (kg, of net less label, of those that
    decide on the mean; null: none weighed), sd_kg (kg, of the same; null below two), most_short_kg (kg, what one
    package may be short), mean_limit_kg (kg, how far the mean may lie below the label; null until it is known), short
    (packages beyond most_short_kg; eu: of those that decide), short_allowed, far_short (eu: beyond twice that), mean,
    each and verdict (open, pass or fail), division_wanted_kg (kg, the coarsest scale that will do: a sixth of
    most_short_kg), scale_fits (null: unknown).
    Raises: none of its own.
    Relation: the first weighed decide, as many as the plan wants: more of them change nothing, but that us counts every
    short package. us: a mean below the label passes within SCF × s, none (of 48: one) may be short beyond the MAV. eu:
    lots of 100 and more, mean ≥ label − k s with k = t(0.995)/√n; packages short in a first go, which alone decides
    unless it leaves it open, then in both together; lots below 100 are weighed whole.
    Source: handbook_133 for the US, most of it memory; uk_si_2006_659 for the EU.
    """
    rule, label_g = request["rule"], request["label_kg"] * 1000.0
    errors = [net * 1000.0 - label_g for net in request["net_kg"]]
    most = most_short_g(rule, label_g)
    far = _short(errors, 2.0 * most) if rule == "eu" else 0
    judged = _us(request["lot_size"], errors, most) if rule == "us" else _eu(request["lot_size"], errors, most, far)
    deciding = errors[: judged["of_mean"]]
    sd = _deviation(deciding)
    limit, mean = _mean(deciding, judged["of_mean"], judged["factor"])
    division = most / 6.0
    scale = request["division_kg"]
    return {
        "wanted": judged["wanted"],
        "mean_error_kg": sum(deciding) / len(deciding) / 1000.0 if deciding else None,
        "sd_kg": None if sd is None else sd / 1000.0,
        "most_short_kg": most / 1000.0,
        "mean_limit_kg": None if limit is None else limit / 1000.0,
        "short": judged["short"],
        "short_allowed": judged["allowed"],
        "far_short": far,
        "mean": mean,
        "each": judged["each"],
        "verdict": _together(mean, judged["each"]),
        "division_wanted_kg": division / 1000.0,
        "scale_fits": None if scale is None else scale * 1000.0 <= division + SAME_G,
    }


def _short(errors: list[float], most: float) -> int:
    return len([error for error in errors if error < -most - SAME_G])


def _mean(errors: list[float], wanted: int, factor: float | None) -> tuple[float | None, str]:
    """How far the mean of so many may lie below the label (g; null: not known yet), and whether it does."""
    if len(errors) < wanted:
        return None, "open"
    limit = (factor or 0.0) * (_deviation(errors) or 0.0)
    return limit, "pass" if factor is None or sum(errors) / wanted >= -limit - SAME_G else "fail"


def _deviation(errors: list[float]) -> float | None:
    if len(errors) < 2:
        return None
    mean = sum(errors) / len(errors)
    return math.sqrt(sum((error - mean) * (error - mean) for error in errors) / (len(errors) - 1))


def _together(mean: str, each: str) -> str:
    if "fail" in (mean, each):
        return "fail"
    return "open" if "open" in (mean, each) else "pass"


def _us(lot: int, errors: list[float], most: float) -> "Document":
    wanted = lot if lot < 12 else 12 if lot <= 250 else 24 if lot <= 3200 else 48
    allowed = 1 if wanted == 48 else 0
    short = _short(errors, most)
    each = "fail" if short > allowed else "pass" if len(errors) >= wanted else "open"
    # No factor: of a single package the MAV alone decides.
    return {"wanted": wanted, "of_mean": wanted, "factor": SCF.get(wanted), "short": short, "allowed": allowed,
            "each": each}  # fmt: skip


def _eu(lot: int, errors: list[float], most: float, far: int) -> "Document":
    if lot < SMALL_LOT:
        allowed = int(lot * SHARE_SHORT)
        of_mean, factor = lot, 0.0
        wanted, refused = lot, allowed + 1
    else:
        first, second = next(plan[1:] for plan in DOUBLE_PLAN if lot <= plan[0])
        is_open = len(errors) >= first[0] and first[1] < _short(errors[: first[0]], most) < first[2]
        wanted, allowed, refused = second if is_open else first
        of_mean, factor = (30, 0.503) if lot <= 500 else (50, 0.379)
    short = _short(errors[:wanted], most)
    each = "fail" if far or short >= refused else "pass" if len(errors) >= wanted else "open"
    return {"wanted": max(wanted, of_mean), "of_mean": of_mean, "factor": factor, "short": short, "allowed": allowed,
            "each": each}  # fmt: skip
