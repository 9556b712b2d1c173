"""The normal distribution, as far as ranges and chances need it."""

from math import erf

SD_TO_10_PERCENT = 1.2815515655446004  # standard deviations from the mean to the 10 % or 90 % point


def normal_below(z: float) -> float:
    """Probability that a standard normal variable lies below z."""
    return 0.5 * (1.0 + erf(z / 1.4142135623730951))
