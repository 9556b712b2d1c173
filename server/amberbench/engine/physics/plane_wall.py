"""The plane wall with convection on both faces: exact series for its middle and its mean.

θ = (T − T∞)/(T₀ − T∞) = Σ Cₙ cos(ζₙξ) exp(−ζₙ²Fo) with ζₙ tan ζₙ = Bi and Cₙ = 4 sin ζₙ/(2ζₙ + sin 2ζₙ); Bi = h·L/k
and Fo = α·t/L² with the half thickness L. Source: incropera. Six terms: exact to 1e-4 from Fo = 0.02 on.
"""

import math

TERMS = 6


def roots(bi: float) -> list[float]:
    """The first roots of ζ tan ζ = Bi, by bisection between the poles."""
    found = []
    for n in range(TERMS):
        low, high = n * math.pi, (n + 0.5) * math.pi
        for _ in range(50):
            middle = 0.5 * (low + high)
            # ζ sin ζ − Bi cos ζ, which has no pole; its sign turns with every branch
            below = (middle * math.sin(middle) < bi * math.cos(middle)) == (n % 2 == 0)
            if below:
                low = middle
            else:
                high = middle
        found.append(0.5 * (low + high))
    return found


def middle_and_mean(zetas: list[float], fo: float) -> tuple[float, float]:
    """(θ in the middle, mean θ) at a Fourier number; `zetas` as `roots` gives them."""
    middle = mean = 0.0
    for zeta in zetas:
        share = 4.0 * math.sin(zeta) / (2.0 * zeta + math.sin(2.0 * zeta)) * math.exp(-min(zeta * zeta * fo, 600.0))
        middle += share
        mean += share * math.sin(zeta) / zeta
    return min(middle, 1.0), min(mean, 1.0)
