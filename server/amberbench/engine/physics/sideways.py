"""Heat that a base wider than the slab carries off sideways, from under the middle of the slab.

Along each side a strip of the base: half of the slab, and what lies beyond it, bare above and below. Where conduction
in two directions is a product of one in each, what each draws from the middle adds up. Finite volumes, implicit in
time, all temperatures as excess over the air; the base is taken as equally warm through its thickness, the slab as
one store of heat behind the resistance to it.
"""

from math import exp

UNDER, BEYOND = 8, 10  # cells under half of the slab, and beyond it
WIDER = 1.4  # each cell beyond the slab is so much wider than the one before it
STEPS, LONGER = 48, 1.15  # steps of time, each so much longer than the one before it
UNTIL_S = 28800.0  # after that the profile keeps its shape
LEAST_MARGIN_M = 1e-6


class Strip:
    """A strip of the base under and beyond the slab; heat capacities in J/(m² K), all others in W/(m² K) or W/K.

    slab, base: capacities; contact: from slab to base; above: slab to air; below: base to air;
    bare: top of the base beyond the slab to air; carried: conductivity times thickness of the base, W/K.
    """

    def __init__(
        self, slab: float, base: float, contact: float, above: float, below: float, bare: float, carried: float
    ) -> None:
        self.slab, self.base, self.contact, self.above = slab, base, contact, above
        self.below, self.bare, self.carried = below, bare, carried

    def drawn(self, half_m: float, margin_m: float) -> list[float]:
        """What leaves sideways under the middle of the slab, W/(m² K) of the base's excess there, after each step."""
        if margin_m < LEAST_MARGIN_M:
            return [0.0] * STEPS
        first = margin_m * (WIDER - 1.0) / (WIDER**BEYOND - 1.0)
        widths = [half_m / UNDER] * UNDER + [first * WIDER**i for i in range(BEYOND)]
        across = [2.0 * self.carried / (widths[i - 1] + widths[i]) if i else 0.0 for i in range(len(widths))] + [0.0]
        slab, base = [1.0] * UNDER, [0.0] * len(widths)
        found, step_s = [], first_step_s()
        for _ in range(STEPS):
            self._advance(slab, base, widths, across, step_s)
            step_s *= LONGER
            found.append(across[1] * (base[0] - base[1]) / (widths[0] * base[0]))
        return found

    def _advance(
        self, slab: list[float], base: list[float], widths: list[float], across: list[float], step_s: float
    ) -> None:
        """One implicit step: the slab's cells are put into the base's equations, then two sweeps."""
        kept, stored, contact = self.slab / step_s, self.base / step_s, self.contact
        passed = contact / (kept + self.above + contact)
        inverse: list[float] = []
        for i, width in enumerate(widths):
            covered = i < UNDER
            diagonal = width * (stored + self.below + (contact * (1.0 - passed) if covered else self.bare))
            base[i] *= stored * width
            if covered:
                base[i] += width * passed * kept * slab[i]
            if i:
                down = across[i] * inverse[-1]
                base[i] += down * base[i - 1]
                diagonal -= down * across[i]
            inverse.append(1.0 / (diagonal + across[i] + across[i + 1]))
        for i in range(len(widths) - 1, -1, -1):
            base[i] *= inverse[i]
            if i + 1 < len(widths):
                base[i] += across[i + 1] * inverse[i] * base[i + 1]
        for i in range(UNDER):
            slab[i] = (kept * slab[i] + contact * base[i]) / (kept + self.above + contact)


def first_step_s() -> float:
    """The first of STEPS steps that together are UNTIL_S long, in s."""
    return UNTIL_S * (LONGER - 1.0) / (LONGER**STEPS - 1.0)


class Sideways:
    """What a base carries off sideways from under the middle of a slab with two sides, over time.

    sides: [(half of the slab, margin of the base beyond it)] in m; base_excess: of the base at pouring, K.
    """

    def __init__(self, strip: "Strip", sides: list[tuple[float, float]], base_excess: float) -> None:
        self.drawn = [0.0] * (STEPS + 1)
        for half_m, margin_m in sides:
            for i, one in enumerate(strip.drawn(half_m, margin_m)):
                self.drawn[i + 1] += one
        self.base_excess = base_excess
        self.rate = (strip.below + strip.bare) / strip.base

    def at(self, at_s: float) -> tuple[float, float]:
        """(W/(m² K) carried off, excess of the base far beyond the slab in K) at a time in s after pouring."""
        step_s, ends_s, i = first_step_s(), 0.0, 0
        while i < STEPS and at_s >= ends_s + step_s:
            ends_s, step_s, i = ends_s + step_s, step_s * LONGER, i + 1
        share = (at_s - ends_s) / step_s if i < STEPS else 0.0
        now, then = self.drawn[i], self.drawn[min(i + 1, STEPS)]
        return now + share * (then - now), self.base_excess * exp(-min(self.rate * at_s, 50.0))
