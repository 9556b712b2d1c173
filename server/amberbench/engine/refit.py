"""The loss factor of a slab from infrared readings and touch tests while it cools.

The most probable ln(loss factor) under its prior (normal), readings with heavy tails (Student's t with 4 degrees of
freedom, so that one reading off the mark does not carry the rest) and touch tests (the hottest point is below the
target when the middle feels firm, above when not, blurred by TOUCH_SD_K). Model temperatures at the readings are
parabolas in ln(loss factor) through three courses; the course nearest the answer is replaced until they agree.
"""

from math import erf, exp, log, pi, sqrt

FREEDOM = 4.0
TOUCH_SD_K = 1.5  # blur of "firm" as a temperature of the hottest point; assumed
BIAS_SD_K = 0.5  # of the mean error of a thermometer's readings; assumed
CLOSE = 0.004  # of ln(loss factor) between two rounds


def fit(slab, readings, touches, prior, prior_sd, low_k, sd_k):
    """(ln loss factor, standard deviation) after readings [(s, °C)] and touches [(s, firm)], both in order of time.

    prior: ln of the loss factor before, prior_sd its standard deviation; readings run low_k K cold, scatter sd_k K.
    """
    if not readings and not touches:
        return prior, prior_sd
    times = sorted(set([at for at, _ in readings] + [at for at, _ in touches]))
    nodes = [(x, at_times(slab, exp(x), times)) for x in (prior - prior_sd, prior, prior + prior_sd)]
    scale = sd_k * sqrt((FREEDOM - 2.0) / FREEDOM)

    def cost(x):
        model = _parabolas(nodes, x)
        total = 0.5 * ((x - prior) / prior_sd) ** 2
        for at, surface_c in readings:
            error = (surface_c + low_k - model[times.index(at)][1]) / scale
            total += 0.5 * (FREEDOM + 1.0) * log(1.0 + error * error / FREEDOM)
        for at, firm in touches:
            over = (model[times.index(at)][0] - slab.target_c) / TOUCH_SD_K
            total -= _log_normal_tail(over if firm else -over)
        return total

    x = prior
    for _ in range(6):
        before, x = x, _lowest(cost, nodes[0][0] - prior_sd, nodes[-1][0] + prior_sd)
        if abs(x - before) < CLOSE:
            break
        nodes = _with_node(nodes, (x, at_times(slab, exp(x), times)))
    width = 0.02
    bend = (cost(x - width) - 2.0 * cost(x) + cost(x + width)) / (width * width)
    variance = min(1.0 / bend if bend > 0.0 else prior_sd**2, prior_sd**2)
    return x, sqrt(variance)


def at_times(slab, loss_factor, times):
    """[(core °C, surface °C)] of a course at times in s, in order, straight between steps."""
    course = slab.course(loss_factor)
    found = []
    was = (0.0, course.core_c, course.surface_c)
    now = was
    for at in times:
        while now[0] < at:
            was = now
            course.advance()
            now = (course.at_s, course.core_c, course.surface_c)
        share = (at - was[0]) / (now[0] - was[0]) if now[0] > was[0] else 0.0
        found.append((was[1] + share * (now[1] - was[1]), was[2] + share * (now[2] - was[2])))
    return found


def _parabolas(nodes, x):
    (a, at_a), (b, at_b), (c, at_c) = nodes
    wa = (x - b) * (x - c) / ((a - b) * (a - c))
    wb = (x - a) * (x - c) / ((b - a) * (b - c))
    wc = (x - a) * (x - b) / ((c - a) * (c - b))
    return [
        (wa * p[0] + wb * q[0] + wc * r[0], wa * p[1] + wb * q[1] + wc * r[1]) for p, q, r in zip(at_a, at_b, at_c)
    ]


def _with_node(nodes, node):
    """Three nodes around the new one: the farthest goes, unless the new one is already there."""
    for old in nodes:
        if abs(old[0] - node[0]) < 1e-6:
            return nodes
    farthest = max(range(3), key=lambda i: (abs(nodes[i][0] - node[0]), i))
    kept = [nodes[i] for i in range(3) if i != farthest] + [node]
    return sorted(kept, key=lambda one: one[0])


def _lowest(cost, low, high):
    """Where a cost with one or two valleys is lowest: a coarse look, then thirds of the best stretch."""
    steps = 12
    width = (high - low) / steps
    best = min(range(steps + 1), key=lambda i: (cost(low + i * width), i))
    a, b = low + (best - 1) * width, low + (best + 1) * width
    while b - a > 0.001:
        third = (b - a) / 3.0
        if cost(a + third) < cost(b - third):
            b -= third
        else:
            a += third
    return 0.5 * (a + b)


def _log_normal_tail(over):
    """ln of the chance that a standard normal is above `over`; its asymptote where that chance underflows."""
    if over < 5.0:
        return log(0.5 * (1.0 - erf(over / sqrt(2.0))))
    return -0.5 * over * over - log(over * sqrt(2.0 * pi))
