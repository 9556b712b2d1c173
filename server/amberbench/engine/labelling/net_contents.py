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
# EU: the label up to so many g, and how much a package may be short: g, or a share (directive 76/211/EEC).
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
    Reply: wanted (packages to weigh in all, as far as it is known), mean_error_kg (kg, of net less label; null: none
    weighed), sd_kg (kg; null below two), most_short_kg (kg, what one package may be short), mean_limit_kg (kg, how far
    the mean may lie below the label; null until it is known), short (packages beyond most_short_kg), short_allowed,
    far_short (eu: beyond twice that), mean, each and verdict (open, pass or fail), division_wanted_kg (kg, the
    coarsest scale that will do: a sixth of most_short_kg), scale_fits (null: unknown).
    Raises: none of its own.
    Relation: us: a mean below the label passes within SCF × s, none (of 48: one) may be short beyond the MAV. eu: lots
    of 100 and more, mean ≥ label − k s with k = t(0.995)/√n; a second go where the first leaves it open; lots below
    100 are weighed whole.
    Source: handbook_133 for the US, most of it memory; uk_si_2006_659 for the EU.
    """
    rule, label_g = request["rule"], request["label_kg"] * 1000.0
    errors = [net * 1000.0 - label_g for net in request["net_kg"]]
    most = most_short_g(rule, label_g)
    short = len([error for error in errors if error < -most - SAME_G])
    far = len([error for error in errors if error < -2.0 * most - SAME_G])
    mean = sum(errors) / len(errors) if errors else None
    sd = _deviation(errors)
    judged = (_us if rule == "us" else _eu)(request["lot_size"], errors, mean, sd, short, far)
    division = most / 6.0
    scale = request["division_kg"]
    return {
        "wanted": judged["wanted"],
        "mean_error_kg": None if mean is None else mean / 1000.0,
        "sd_kg": None if sd is None else sd / 1000.0,
        "most_short_kg": most / 1000.0,
        "mean_limit_kg": None if judged["limit"] is None else judged["limit"] / 1000.0,
        "short": short,
        "short_allowed": judged["allowed"],
        "far_short": far if rule == "eu" else 0,
        "mean": judged["mean"],
        "each": judged["each"],
        "verdict": _together(judged["mean"], judged["each"]),
        "division_wanted_kg": division / 1000.0,
        "scale_fits": None if scale is None else scale * 1000.0 <= division + SAME_G,
    }


def _deviation(errors: list[float]) -> float | None:
    if len(errors) < 2:
        return None
    mean = sum(errors) / len(errors)
    return math.sqrt(sum((error - mean) * (error - mean) for error in errors) / (len(errors) - 1))


def _together(mean: str, each: str) -> str:
    if "fail" in (mean, each):
        return "fail"
    return "open" if "open" in (mean, each) else "pass"


def _us(lot: int, errors: list[float], mean: float | None, sd: float | None, short: int, far: int) -> "Document":
    wanted = lot if lot < 12 else 12 if lot <= 250 else 24 if lot <= 3200 else 48
    allowed = 1 if wanted == 48 else 0
    each = "fail" if short > allowed else "pass" if len(errors) >= wanted else "open"
    if len(errors) < wanted or mean is None:
        return {"wanted": wanted, "limit": None, "allowed": allowed, "mean": "open", "each": each}
    limit = SCF[wanted] * sd if wanted in SCF and sd is not None else 0.0
    judged = "pass" if mean >= -limit - SAME_G else "fail"
    if wanted == 1:  # a single package: the MAV alone holds for it
        judged = "pass"
    return {"wanted": wanted, "limit": limit, "allowed": allowed, "mean": judged, "each": each}


def _eu(lot: int, errors: list[float], mean: float | None, sd: float | None, short: int, far: int) -> "Document":
    weighed = len(errors)
    if lot < SMALL_LOT:
        allowed = int(lot * SHARE_SHORT)
        each = "fail" if far or short > allowed else "pass" if weighed >= lot else "open"
        judged = "open" if weighed < lot or mean is None else "pass" if mean >= -SAME_G else "fail"
        return {
            "wanted": lot,
            "limit": None if weighed < lot else 0.0,
            "allowed": allowed,
            "mean": judged,
            "each": each,
        }
    first, second = next(plan[1:] for plan in DOUBLE_PLAN if lot <= plan[0])
    stage = first if weighed < second[0] else second
    each = "open"
    if far or short >= second[2] or (weighed <= first[0] and short >= first[2]):
        each = "fail"
    elif (weighed >= first[0] and short <= first[1]) or (weighed >= second[0] and short <= second[1]):
        each = "pass"
    wanted = second[0] if each == "open" and weighed >= first[0] else first[0]
    of_mean, factor = (30, 0.503) if lot <= 500 else (50, 0.379)
    if weighed < of_mean or mean is None or sd is None:
        return {"wanted": max(wanted, of_mean), "limit": None, "allowed": stage[1], "mean": "open", "each": each}
    limit = factor * sd
    judged = "pass" if mean >= -limit - SAME_G else "fail"
    return {"wanted": max(wanted, of_mean), "limit": limit, "allowed": stage[1], "mean": judged, "each": each}
