"""A robust mean of one quantity over a shop's batches, and how far a new batch may lie from it.

Each batch tells a value with a standard deviation of its own; batches differ by a usual spread times a share that is
the same for all of them and unknown. One in twenty or so is bad (a slip, a wrong scale) and may lie anywhere, as often
as a normal curve of ten usual spreads has it in its middle. The mean has a normal prior, the logarithm of the share
another. For each share on a short list the mean is found by weighing the batches again and again with their chance of
being good, and the shares are weighed by the chance of what was seen (Laplace). A batch far off counts for nothing.
"""

from math import exp, log, sqrt

BAD_BATCH_CHANCE = 0.05  # how often a batch is bad; assumed
BAD_BATCH_SPREADS = 10.0
SPREAD_SHARES = (2.8, 2.0, 1.4, 1.0, 0.7, 0.5, 0.3)
PRIOR_SHARE, PRIOR_SHARE_SD = 0.75, 0.6  # before the first batch, and the deviation of its logarithm; assumed
ROUNDS = 5


def robust_mean(
    seen: list[tuple[float, float, float]],
    prior: float,
    prior_sd: float,
    usual_share: tuple[float, float] = (PRIOR_SHARE, PRIOR_SHARE_SD),
) -> tuple[float, float, float]:
    """(mean, its standard deviation, share of the usual spread that batches show).

    seen: [(value, own standard deviation, usual spread)], in any order. A new batch lies around the mean with
    sqrt(sd² + (share · usual spread)²).
    """
    rows = sorted((value, sd * sd, spread * spread) for value, sd, spread in seen)
    starts = [_median(rows)] if len(rows) > 2 else [prior, _median(rows)]
    peaks = []
    for start in starts:
        for share in SPREAD_SHARES:
            mean, variance, chance = _most_likely_mean(rows, share * share, start, prior, prior_sd * prior_sd)
            peaks.append((chance - 0.5 * (log(share / usual_share[0]) / usual_share[1]) ** 2, mean, variance, share))
            start = mean
    return _averaged(peaks)


def count_good(seen: list[tuple[float, float, float]], mean: float, share: float) -> int:
    """How many of `seen` are more likely good than bad around the mean and with the share that `robust_mean` found."""
    rows = [(value, sd * sd, spread * spread) for value, sd, spread in seen]
    return len(
        [
            1
            for value, good, odds in _with_variance_and_odds(rows, share * share)
            if _chance_good(value - mean, good, odds) >= 0.5
        ]
    )


def _with_variance_and_odds(rows: list[tuple[float, float, float]], share2: float) -> list[tuple[float, float, float]]:
    """[(value, its variance when good, odds of bad against good in the middle)]"""
    known = []
    for value, own, between in rows:
        good = own + share2 * between
        known.append(
            (value, good, BAD_BATCH_CHANCE / (1.0 - BAD_BATCH_CHANCE) * sqrt(good / between) / BAD_BATCH_SPREADS)
        )
    return known


def _chance_good(off: float, variance: float, odds: float) -> float:
    """The chance that a batch so far off is a good one."""
    return 1.0 / (1.0 + odds * exp(min(0.5 * off * off / variance, 600.0)))


def _median(rows: list[tuple[float, float, float]]) -> float:
    half = len(rows) // 2
    return rows[half][0] if len(rows) % 2 else 0.5 * (rows[half - 1][0] + rows[half][0])


def _most_likely_mean(
    rows: list[tuple[float, float, float]], share2: float, mean: float, prior: float, prior_var: float
) -> tuple[float, float, float]:
    """(most likely mean, its variance, ln of the chance of it all) at one share; fixed rounds, the same everywhere."""
    known = _with_variance_and_odds(rows, share2)
    information = 0.0
    for _ in range(ROUNDS):
        information, pull = 1.0 / prior_var, prior / prior_var
        for value, good, odds in known:
            one = _chance_good(value - mean, good, odds) / good
            information += one
            pull += one * value
        mean = pull / information
    chance = -0.5 * (mean - prior) ** 2 / prior_var - 0.5 * log(information)
    for value, good, odds in known:
        # ln of good and bad together, from the larger of the two.
        off2 = (value - mean) ** 2 / good
        over = log(odds) + 0.5 * off2
        both = over + log(1.0 + exp(-over)) if over > 0.0 else log(1.0 + exp(over))
        chance += both - 0.5 * log(good) - 0.5 * off2
    return mean, 1.0 / information, chance


def _averaged(peaks: list[tuple[float, float, float, float]]) -> tuple[float, float, float]:
    most = max(peak[0] for peak in peaks)
    weights = [exp(max(peak[0] - most, -600.0)) for peak in peaks]
    total = sum(weights)
    mean = sum(weights[i] * peaks[i][1] for i in range(len(peaks))) / total
    variance = sum(weights[i] * (peaks[i][2] + (peaks[i][1] - mean) ** 2) for i in range(len(peaks))) / total
    share2 = sum(weights[i] * peaks[i][3] ** 2 for i in range(len(peaks))) / total
    return mean, sqrt(variance), sqrt(share2)
