"""A sphere that cools in air and shrinks evenly as it empties: its mean excess over the room, in closed form.

θ = Σ Aₙ exp(−ζₙ²Fo), 1 − ζₙ cot ζₙ = Bi, Aₙ = 6 Bi²/(ζₙ²(ζₙ² + Bi² − Bi)); Bi = h·R/k, Fo = α·t/R² on the first radius
(incropera). While it empties its radius falls as L = (1 − Fo/E)^⅓, and what runs out has the mean temperature. The
first term then goes by the resistances of skin and inside in series, 1/ζ₁² = 1/(3 Bi L) + b with b as at the start.
The others are fed through the skin, L times as strongly: dθₙ = −Aₙ ζₙ² exp(−ζₙ² ∫ dFo/L²) dFo/L.
"""

import math

TERMS = 8


def roots(bi: float) -> list[float]:
    """The first roots of 1 − ζ cot ζ = Bi, one in each (n π, (n + 1) π), by bisection."""
    found = []
    for n in range(TERMS):
        low, high = n * math.pi, (n + 1) * math.pi
        for _ in range(50):
            middle = 0.5 * (low + high)
            # (1 − Bi) sin ζ − ζ cos ζ, which has no pole; its sign turns with every branch
            if ((1.0 - bi) * math.sin(middle) < middle * math.cos(middle)) == (n % 2 == 0):
                low = middle
            else:
                high = middle
        found.append(0.5 * (low + high))
    return found


def _shrunk(gone: float) -> float:
    """1 − L of a body of which a share is gone, exact also where hardly anything is."""
    if gone < 1e-5:
        return gone / 3.0 * (1.0 + gone / 3.0)
    result: float = 1.0 - max(0.0, 1.0 - gone) ** (1.0 / 3.0)
    return result


class CoolingSphere:
    """bi: Biot number on the first radius; empties: Fourier number at which it is empty; inside: resistance of the
    inside over that of a ball, for a body of another shape that the ball stands for."""

    def __init__(self, bi: float, empties: float, inside: float = 1.0) -> None:
        self.empties = empties
        self.squares = [zeta * zeta for zeta in roots(bi)]
        self.shares = [6.0 * bi * bi / (square * (square + bi * bi - bi)) for square in self.squares]
        self.skin = 1.0 / (3.0 * bi)
        self.inside = inside * (1.0 / self.squares[0] - self.skin)

    def mean_excess(self, fo: float, empties: float | None = None) -> float:
        """Mean excess over the room at a Fourier number, 1 at the start; `empties`: as if it were empty then."""
        empties = self.empties if empties is None else empties
        radius = max(0.0, 1.0 - fo / empties) ** (1.0 / 3.0)
        shrunk = _shrunk(fo / empties)
        slow = 3.0 * empties * self._slowed(radius, shrunk) / self.inside
        total = self.shares[0] * math.exp(-min(slow, 600.0))
        for index in range(1, TERMS):
            often = 3.0 * empties * self.squares[index]
            left = (radius - 1.0 / often) * math.exp(-min(often * shrunk, 600.0))
            total += self.shares[index] * (1.0 / often + left)
        return min(1.0, total)

    def _slowed(self, radius: float, shrunk: float) -> float:
        """1 − L − skin/inside · ln(whole/now), by its series where both are nearly alike."""
        now = self.skin + self.inside * radius
        over = self.inside * shrunk / now
        if over > 1e-3:
            return shrunk - self.skin / self.inside * math.log(1.0 + over)
        rest = over * over * (0.5 - over * (1.0 / 3.0 - over * 0.25))
        return shrunk * self.inside * radius / now + self.skin / self.inside * rest

    def fourier_at(self, excess: float) -> float | None:
        """Fourier number at which the mean has fallen to an excess, by bisection; None: empty before that."""
        if excess >= 1.0:
            return 0.0
        low, high = 0.0, self.empties
        if self.mean_excess(high) > excess:
            return None
        for _ in range(50):
            middle = 0.5 * (low + high)
            if self.mean_excess(middle) > excess:
                low = middle
            else:
                high = middle
        return high

    def empty_when_at(self, excess: float) -> float:
        """Fourier number at which a body is empty that empties just so slowly that its mean has by then fallen to an
        excess, more than 0: whatever empties faster stays warmer."""
        low, high = 0.0, 1.0
        while self.mean_excess(high, high) > excess:
            low, high = high, 2.0 * high
        for _ in range(50):
            middle = 0.5 * (low + high)
            if self.mean_excess(middle, middle) > excess:
                low = middle
            else:
                high = middle
        return high
