"""Heat conduction through a slab and the layers under it, from the air above to the air below.

Finite volumes in one dimension, all temperatures as excess over the air (the same above and below), stepped by
TR-BDF2: second order in time and without ringing at large steps. The properties and the coefficients at the faces
are taken in the middle of a step, extrapolated from the step before, so that each step is two sweeps of one matrix.
A base that is wider than the slab carries heat off sideways as well (`sideways`).
"""

from .convection import coefficient

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .sideways import Sideways

ROOT_2 = 1.4142135623730951
LEAST_EXCESS_K = 0.5  # steps get no finer than for this: on a cold base the slab goes through the air's temperature
TR_BDF2_STAGE = 1.0 - 0.5 * ROOT_2  # γ/2 of TR-BDF2, γ = 2 − √2


class LayerStack:
    """A slab on its base, cut into cells; heights in m, everything per m² of slab.

    conductivity, capacity: (a0, a1, a2) of the slab's conductivity in W/(m K) and heat capacity in J/(m³ K) over °C.
    layers: [(thickness m, conductivity W/(m K), capacity J/(m³ K))] from the slab downwards.
    """

    def __init__(
        self,
        thickness_m: float,
        conductivity: tuple[float, float, float],
        capacity: tuple[float, float, float],
        layers: list[tuple[float, float, float]],
        area_ratio: float,
        cells: int = 18,
        layer_cells: int = 5,
    ) -> None:
        self.cells = cells
        self.thickness_m = thickness_m
        self.end_m = 0.5 * thickness_m / (cells - 2)  # two half cells at each face, where the profile bends most
        self.widths = [self.end_m if i < 2 or i >= cells - 2 else 2.0 * self.end_m for i in range(cells)]
        self.per_width = [1.0 / (self.widths[i - 1] + self.widths[i]) if i else 0.0 for i in range(cells)]
        self.conductivity = conductivity
        self.capacity = capacity
        self.area_ratio = area_ratio
        self.base_capacity = []
        self.base_link = []  # conductance to the cell above, W/(m² K); the first without the slab's half cell
        self.foot_resistance = 0.0  # from the middle of the lowest base cell to its underside, m² K/W
        self.base_carries = []  # share of each base cell in what the base conducts sideways
        carried = sum(thickness * k for thickness, k, _ in layers)
        above = 0.0
        for thickness, k, volume_capacity in layers:
            number = layer_cells if thickness / k > 0.002 else 1
            half = 0.5 * thickness / number / k
            for _ in range(number):
                self.base_capacity.append(volume_capacity * thickness / number * area_ratio)
                self.base_link.append(above + half)
                self.base_carries.append(thickness * k / number / carried)
                above = half
            self.foot_resistance = half


def at_temperature(polynomial: tuple[float, float, float], temp_c: float) -> float:
    """A property (a0, a1, a2) at a temperature in °C."""
    return polynomial[0] + temp_c * (polynomial[1] + temp_c * polynomial[2])


class Transient:
    """The temperatures of a stack after pouring, one step at a time."""

    def __init__(
        self,
        stack: "LayerStack",
        start_c: float,
        base_start_c: float,
        air_c: float,
        contact_m2k_w: float,
        top: tuple[str, float, float, bool],
        bottom: tuple[str, float, float, bool],
        loss_factor: float,
        finer: float = 1.0,
        sideways: "Sideways | None" = None,
    ) -> None:
        self.stack = stack
        self.sideways = sideways
        self.air_c = air_c
        self.contact = contact_m2k_w
        self.top, self.bottom = top, bottom
        self.loss_factor = loss_factor
        self.growth = 0.3 / finer
        self.share = 0.2 / finer
        slab, base = stack.cells, len(stack.base_capacity)
        self.excess = [start_c - air_c] * slab + [base_start_c - air_c] * base
        self.before = self.excess[:]
        self.at_s = 0.0
        self.step_s = 0.002 / finer * self._slab_time()
        self.last_s = self.step_s
        self.surface_c = self.core_c = self.foot_c = start_c
        if base:
            self.foot_c = base_start_c
        size = slab + base
        self.links = [0.0] * (size + 1)
        self.away = [0.0] * size  # sideways out of each cell, in J/(m² K) of a stage
        self.beyond = 0.0  # excess of the base far beyond the slab, K
        self.capacity = [0.0] * slab + stack.base_capacity
        self.lower = [0.0] * (size + 1)
        self.inverse = [0.0] * size
        self.middle = [0.0] * size
        self.surface_rate = self.foot_rate = 0.0

    def _slab_time(self) -> float:
        stack = self.stack
        temp_c = self.excess[0] + self.air_c
        capacity, conductivity = (at_temperature(one, temp_c) for one in (stack.capacity, stack.conductivity))
        return stack.thickness_m * stack.thickness_m * capacity / conductivity

    def advance(self) -> None:
        """One step; at_s, surface_c, core_c follow."""
        self._links()
        self._factor()
        self._sweeps()
        self.at_s += self.step_s
        was = (self.surface_c, self.foot_c, self.core_c)
        self._faces()
        self.surface_rate = (self.surface_c - was[0]) / self.step_s
        self.foot_rate = (self.foot_c - was[1]) / self.step_s
        self._next_step(was[2])

    def _next_step(self, core_was: float) -> None:
        self.last_s = self.step_s
        longest = self.last_s * (1.0 + self.growth)
        fall, excess = core_was - self.core_c, max(self.core_c - self.air_c, LEAST_EXCESS_K)
        if fall > 0.0:
            longest = min(longest, max(self.share * excess * self.step_s / fall, 0.5 * self.last_s))
        self.step_s = longest

    def _links(self) -> None:
        """Conductances between cells and heat capacities of the slab's cells, at the middle of the step."""
        stack, excess, before, air_c = self.stack, self.excess, self.before, self.air_c
        slab, end_m, widths, per_width = stack.cells, stack.end_m, stack.widths, stack.per_width
        k0, k1, k2 = stack.conductivity
        c0, c1, c2 = stack.capacity
        links, capacity = self.links, self.capacity
        ahead = 0.5 * self.step_s / self.last_s
        k_top = k = k_above = 0.0
        for i in range(slab):
            temp = air_c + excess[i] + ahead * (excess[i] - before[i])
            k = k0 + temp * (k1 + temp * k2)
            capacity[i] = widths[i] * (c0 + temp * (c1 + temp * c2))
            if i:
                links[i] = (k_above + k) * per_width[i]
            else:
                k_top = k
            k_above = k
        self.k_top, self.k_foot = k_top, k
        half = 0.5 * self.step_s
        self.h_top = self.loss_factor * coefficient(self.top, self.surface_c + half * self.surface_rate, air_c)
        h_foot = self.loss_factor * coefficient(self.bottom, self.foot_c + half * self.foot_rate, air_c)
        self.h_foot = h_foot * stack.area_ratio
        links[0] = _in_series(self.h_top, 0.5 * end_m / k_top)
        if not stack.base_link:
            links[slab] = _in_series(self.h_foot, 0.5 * end_m / k)
            return
        links[slab] = 1.0 / (0.5 * end_m / k + self.contact + stack.base_link[0])
        for i in range(1, len(stack.base_link)):
            links[slab + i] = 1.0 / stack.base_link[i]
        links[-1] = _in_series(self.h_foot, stack.foot_resistance)
        if self.sideways is not None:
            drawn, self.beyond = self.sideways.at(self.at_s + half)
            for i, share in enumerate(stack.base_carries):
                self.away[slab + i] = TR_BDF2_STAGE * self.step_s * drawn * share

    def _factor(self) -> None:
        links, capacity, lower, inverse, away = self.links, self.capacity, self.lower, self.inverse, self.away
        stage = TR_BDF2_STAGE * self.step_s
        above = stage * links[0]
        pivot_inverse = 0.0
        for i in range(len(inverse)):
            below = stage * links[i + 1]
            down = above * pivot_inverse if i else 0.0
            pivot = capacity[i] + away[i] + above + below - (down * above if i else 0.0)
            pivot_inverse = 1.0 / pivot
            inverse[i] = pivot_inverse
            lower[i] = down
            above = below
        lower[len(inverse)] = 0.0

    def _sweeps(self) -> None:
        """Both stages: M w = C x + b, then M x' = C ((1 + √2) w − √2 x) + b; b comes sideways from beyond the slab."""
        excess, middle, before = self.excess, self.middle, self.before
        capacity, away, beyond = self.capacity, self.away, self.beyond
        for i in range(len(excess)):
            before[i] = excess[i]
            middle[i] = capacity[i] * excess[i] + away[i] * beyond
        self._solve(middle)
        for i in range(len(excess)):
            excess[i] = capacity[i] * ((1.0 + ROOT_2) * middle[i] - ROOT_2 * before[i]) + away[i] * beyond
        self._solve(excess)

    def _solve(self, values: list[float]) -> None:
        lower, inverse = self.lower, self.inverse
        last = 0.0
        for i in range(len(values)):
            last = values[i] + lower[i] * last
            values[i] = last
        last = 0.0
        for i in range(len(values) - 1, -1, -1):
            last = values[i] * inverse[i] + lower[i + 1] * last
            values[i] = last

    def _faces(self) -> None:
        """Temperatures of the top face, the hottest point and the underside: parabolas through the nearest cells."""
        excess, slab, cell_m = self.excess, self.stack.cells, self.stack.end_m
        pull = self.k_top / (3.0 * cell_m)
        top = pull * (9.0 * excess[0] - excess[1]) / (8.0 * pull + self.h_top)
        self.surface_c = self.air_c + top
        low = slab - 1
        if len(excess) > slab:
            flux = self.links[slab] * (excess[low] - excess[slab])
            foot = excess[-1]
            self.foot_c = self.air_c + foot - self.links[-1] * foot * self.stack.foot_resistance
        else:
            flux = self.links[slab] * excess[low]
        slope = flux / self.k_foot * cell_m  # per cell, upwards from the lower face
        face = (9.0 * excess[low] - excess[low - 1] - 3.0 * slope) / 8.0
        if len(excess) == slab:
            self.foot_c = self.air_c + face
        self.core_c = self.air_c + _hottest(excess, slab, top, face, slope)


def _in_series(h: float, resistance: float) -> float:
    return h / (1.0 + h * resistance)


def _hottest(excess: list[float], slab: int, top: float, face: float, slope: float) -> float:
    """The highest excess in the slab: a face, or the vertex of the parabola through the hottest cell."""
    best = 0
    for i in range(1, slab):
        if excess[i] > excess[best]:
            best = i
    value = max(excess[best], top, face)
    if 0 < best < slab - 1:
        up, down = excess[best - 1], excess[best + 1]
        bend = 2.0 * excess[best] - up - down
        if bend > 0.0:
            value = max(value, excess[best] + (up - down) * (up - down) / (8.0 * bend))
    elif best == slab - 1 and slope > 0.0:
        bend = 2.0 * (face + 0.5 * slope - excess[best])  # a of face + slope·s − a·s², s in cells, times ½
        if bend > 0.0:
            value = max(value, face + slope * slope / (8.0 * bend))
    return value
