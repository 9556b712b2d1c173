"""What a shop's batches say together: a robust mean of one quantity, and how far a new batch may lie from it.

Each batch tells a value with a standard deviation of its own; batches differ by a usual spread times a share that is
the same for all of them and unknown. Value minus mean follows Student's t with four degrees of freedom, so a batch that
lies far off hardly counts; the mean has a normal prior, the logarithm of the share another. For each share on a short
list the mean is found by weighing again and again, and the shares are weighed by the chance of what was seen (Laplace).
"""

from math import exp, log, sqrt

FREEDOM = 4.0
SHARES = (2.8, 2.0, 1.4, 1.0, 0.7, 0.5, 0.35, 0.25)
# ln(share) before the first batch; assumed. With the tails allowed for, the usual spread is then what is expected.
SHARE, SHARE_SD = 0.7, 0.6
TAIL = 1.196  # 90 % point of Student's t with four degrees of freedom (1.533) over that of the normal (1.282)
ROUNDS = 6
TENTH = 1.2815515655446004  # standard deviations from the mean to the 10 % or 90 % point


def pooled(seen, prior, prior_sd):
    """(mean, its standard deviation, share of the usual spread that batches show, the tails allowed for).

    seen: [(value, own standard deviation, usual spread)], in any order. A new batch lies within
    mean ± sqrt(sd² + (share · usual spread)²) as a normal variable would.
    """
    rows = sorted((value, sd * sd, spread * spread) for value, sd, spread in seen)
    starts = [_middle(rows)] if len(rows) > 2 else [prior, _middle(rows)]
    peaks = []
    for start in starts:
        for share in SHARES:
            mean, variance, chance = _peak(rows, share * share, start, prior, prior_sd * prior_sd)
            peaks.append((chance - 0.5 * (log(share / SHARE) / SHARE_SD) ** 2, mean, variance, share))
            start = mean
    return _weighed(peaks)


def _middle(rows):
    half = len(rows) // 2
    return rows[half][0] if len(rows) % 2 else 0.5 * (rows[half - 1][0] + rows[half][0])


def _peak(rows, share2, mean, prior, prior_var):
    """(most likely mean, its variance, ln of the chance of it all) at one share; fixed rounds, the same everywhere."""
    known = [(value, own + share2 * between) for value, own, between in rows]
    weight = 0.0
    for _ in range(ROUNDS):
        weight, pull = 1.0 / prior_var, prior / prior_var
        for value, variance in known:
            off = value - mean
            one = (FREEDOM + 1.0) / (FREEDOM * variance + off * off)
            weight += one
            pull += one * value
        mean = pull / weight
    # Fisher's information of Student's t is (ν + 1)/(ν + 3) of the mean weight.
    information = 1.0 / prior_var + (weight - 1.0 / prior_var) * (FREEDOM + 1.0) / (FREEDOM + 3.0)
    chance = -0.5 * (mean - prior) ** 2 / prior_var - 0.5 * log(information)
    for value, variance in known:
        off = value - mean
        chance -= 0.5 * log(variance) + 0.5 * (FREEDOM + 1.0) * log(1.0 + off * off / (FREEDOM * variance))
    return mean, 1.0 / information, chance


def _weighed(peaks):
    most = max(peak[0] for peak in peaks)
    weights = [exp(max(peak[0] - most, -600.0)) for peak in peaks]
    total = sum(weights)
    mean = sum(weights[i] * peaks[i][1] for i in range(len(peaks))) / total
    variance = sum(weights[i] * (peaks[i][2] + (peaks[i][1] - mean) ** 2) for i in range(len(peaks))) / total
    share2 = sum(weights[i] * peaks[i][3] ** 2 for i in range(len(peaks))) / total
    return mean, sqrt(variance), TAIL * sqrt(share2)
