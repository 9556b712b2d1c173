"""A cluster that cools on its tray: finite elements in a spherical cap, a column of cells in the base under it.

Linear triangles in radius and height, heat kept at the nodes, conductivity and heat capacity constant; all
temperatures as excess over the room, stepped by TR-BDF2 as a slab is. The nodes stand column by column from the middle
to the rim, those of the base come last, so that the matrix has few places to fill.
"""

import math

from . import bases
from .conduction import ROOT_2, TR_BDF2_STAGE
from .convection import coefficient

ELEMENTS_ACROSS, ELEMENTS_UP = 7, 5
LEVELS = [0.5 * (1.0 - math.cos(math.pi * j / ELEMENTS_UP)) for j in range(ELEMENTS_UP + 1)]  # closer at top and foot
STEP_GROWTH, STEP_EXCESS_SHARE = 0.35, 0.2  # of a step over the last; of the excess that may fall in one


def height_m(volume_m3: float, radius_m: float) -> float:
    """Height in m of the spherical cap that stands on a circle and has a volume: π h (3 a² + h²)/6 solved for h."""
    half = 3.0 * volume_m3 / math.pi
    root: float = (half + math.sqrt(half * half + radius_m**6)) ** (1.0 / 3.0)
    return root - radius_m * radius_m / root


def _mesh(
    radius_m: float, tall_m: float
) -> tuple[list[tuple[float, float]], list[tuple[int, int, int]], list[int], list[int]]:
    """([(r, z)], [(node, node, node)], nodes of the top, nodes of the foot), each from the middle to the rim."""
    ball_m = 0.5 * (radius_m * radius_m + tall_m * tall_m) / tall_m
    points: list[tuple[float, float]] = []
    for i in range(ELEMENTS_ACROSS):
        r = radius_m * math.sin(0.5 * math.pi * i / ELEMENTS_ACROSS)
        top = (radius_m * radius_m - r * r) / (math.sqrt(ball_m * ball_m - r * r) + ball_m - tall_m)
        points += [(r, top * level) for level in LEVELS]
    rim, row = len(points), ELEMENTS_UP + 1
    points.append((radius_m, 0.0))
    triangles: list[tuple[int, int, int]] = []
    for i in range(ELEMENTS_ACROSS):
        for j in range(ELEMENTS_UP):
            here = i * row + j
            if i == ELEMENTS_ACROSS - 1:
                triangles.append((here, rim, here + 1))
            else:
                triangles += [(here, here + row, here + row + 1), (here, here + row + 1, here + 1)]
    tops = [i * row + ELEMENTS_UP for i in range(ELEMENTS_ACROSS)] + [rim]
    return points, triangles, tops, [i * row for i in range(ELEMENTS_ACROSS)] + [rim]


class SphericalCap:
    """A cap on its base. radius_m, tall_m (m); conductivity in W/(m K); capacity in J/(m³ K); base as `bases.described`
    takes it, of which each cap has tray_ratio times its own foot; contact in m² K/W."""

    def __init__(
        self,
        radius_m: float,
        tall_m: float,
        conductivity: float,
        capacity: float,
        base: str,
        tray_ratio: float,
        contact_m2k_w: float,
    ) -> None:
        points, triangles, self.tops, feet = _mesh(radius_m, tall_m)
        layers, ratio, _ = bases.resolved_base(base)
        self.cap_nodes = len(points)
        cells = _cells(layers)
        size = self.cap_nodes + len(cells)
        self.capacity = [0.0] * size
        self.links: list[dict[int, float]] = [
            {} for _ in range(size)
        ]  # each node's links to earlier ones, W/K; itself: their sum
        for triangle in triangles:
            self._triangle(triangle, points, conductivity, capacity)
        # Straight edges cut off a little of the round cap: its heat is kept.
        round_m3 = math.pi * tall_m * (3.0 * radius_m * radius_m + tall_m * tall_m) / 6.0
        kept = capacity * round_m3 / sum(self.capacity)
        self.capacity = [kept * one for one in self.capacity]
        self.face = self._edges(points, self.tops)
        foot = self._edges(points, feet)
        foot_m2, under = math.pi * radius_m * radius_m, self.cap_nodes
        for node in feet:
            self._link(under, node, foot[node] / (contact_m2k_w + cells[0][1]))
        shared_m2 = foot_m2 * tray_ratio * ratio
        for index, (volume_capacity, half) in enumerate(cells):
            self.capacity[under + index] = volume_capacity * shared_m2
            if index:
                self._link(under + index, under + index - 1, shared_m2 / (half + cells[index - 1][1]))
        self.bare_m2, self.under_m2, self.last_half = max(0.0, shared_m2 - foot_m2), shared_m2, cells[-1][1]
        self._pack()

    def _triangle(
        self, nodes: tuple[int, int, int], points: list[tuple[float, float]], conductivity: float, capacity: float
    ) -> None:
        (r1, z1), (r2, z2), (r3, z3) = [points[node] for node in nodes]
        area = 0.5 * abs((r2 - r1) * (z3 - z1) - (r3 - r1) * (z2 - z1))
        radii = r1 + r2 + r3
        b, c = (z2 - z3, z3 - z1, z1 - z2), (r3 - r2, r1 - r3, r2 - r1)
        share = conductivity * 2.0 * math.pi * radii / 3.0 / (4.0 * area)
        for m in range(3):
            self.capacity[nodes[m]] += capacity * 2.0 * math.pi * area * (points[nodes[m]][0] + radii) / 12.0
            for n in range(m):
                self._link(nodes[m], nodes[n], -share * (b[m] * b[n] + c[m] * c[n]))

    def _link(self, one: int, other: int, w_k: float) -> None:
        late, early = max(one, other), min(one, other)
        self.links[late][early] = self.links[late].get(early, 0.0) - w_k
        for node in (one, other):
            self.links[node][node] = self.links[node].get(node, 0.0) + w_k

    def _edges(self, points: list[tuple[float, float]], nodes: list[int]) -> dict[int, float]:
        """Area in m² that each node has of a face given by its nodes in order."""
        areas = {node: 0.0 for node in nodes}
        for index in range(1, len(nodes)):
            (r, z), (s, t) = points[nodes[index - 1]], points[nodes[index]]
            ring = 2.0 * math.pi * math.sqrt((s - r) * (s - r) + (t - z) * (t - z)) / 6.0
            areas[nodes[index - 1]] += ring * (2.0 * r + s)
            areas[nodes[index]] += ring * (r + 2.0 * s)
        return areas

    def _pack(self) -> None:
        """The links as rows without gaps: `first[i]` is the first node that row i reaches, itself not in the row."""
        self.first, self.rows, self.own = [], [], []
        for node, links in enumerate(self.links):
            first = min(links)
            self.first.append(first)
            self.rows.append([links.get(other, 0.0) for other in range(first, node)])
            self.own.append(links[node])


def _cells(layers: list[tuple[float, float, float]]) -> list[tuple[float, float]]:
    """[(heat capacity J/(m² K), half its resistance m² K/W)] of the base's cells, from the top."""
    cells: list[tuple[float, float]] = []
    for thickness, k, volume_capacity in layers:
        number = 4 if thickness / k > 0.002 else 1
        cells += [(volume_capacity * thickness / number, 0.5 * thickness / number / k)] * number
    return cells


def _hottest_excess(excess: list[float]) -> float:
    """The highest excess on the axis, between its nodes: the vertex of the parabola through the hottest three."""
    best = 1
    for j in range(2, ELEMENTS_UP):
        if excess[j] > excess[best]:
            best = j
    low, high = LEVELS[best - 1] - LEVELS[best], LEVELS[best + 1] - LEVELS[best]
    down, up = (excess[best - 1] - excess[best]) / low, (excess[best + 1] - excess[best]) / high
    bend = (up - down) / (high - low)
    slope = down - bend * low
    at = -0.5 * slope / bend if bend < 0.0 else 0.0
    return excess[best] + (0.5 * slope * at if low < at < high else 0.0)


class CapCooling:
    """Temperatures of a cap after it was laid, a step at a time; top and bottom as `convection.face` gives them."""

    def __init__(
        self,
        cap: "SphericalCap",
        start_c: float,
        base_start_c: float,
        room_c: float,
        top: tuple[str, float, float, bool],
        bottom: tuple[str, float, float, bool],
        loss_factor: float,
    ) -> None:
        self.cap, self.room_c, self.top, self.bottom, self.loss_factor = cap, room_c, top, bottom, loss_factor
        nodes, size = cap.cap_nodes, len(cap.own)
        self.excess = [start_c - room_c] * nodes + [base_start_c - room_c] * (size - nodes)
        self.at_s, self.core_c, self.surface_c = 0.0, start_c, start_c
        self.face_m2 = sum(cap.face.values())
        self.step_s = 0.003 * sum(cap.capacity[:nodes]) / (10.0 * (self.face_m2 + cap.bare_m2))

    def base_c(self) -> float:
        """Temperature of the top of the base in °C."""
        return self.room_c + self.excess[self.cap.cap_nodes]

    def mean_c(self) -> float:
        """Mean temperature of the cap in °C, by heat."""
        nodes, capacity = self.cap.cap_nodes, self.cap.capacity
        heat = sum(capacity[i] * self.excess[i] for i in range(nodes))
        return self.room_c + heat / sum(capacity[:nodes])

    def advance(self) -> None:
        """One step; at_s, core_c (hottest) and surface_c (mean of the top face) follow."""
        core_was, excess = self.core_c - self.room_c, self.excess
        self._factor()
        capacity = self.cap.capacity
        middle = [capacity[i] * excess[i] for i in range(len(excess))]
        self._solve(middle)
        for i in range(len(excess)):
            excess[i] = capacity[i] * ((1.0 + ROOT_2) * middle[i] - ROOT_2 * excess[i])
        self._solve(excess)
        self.at_s += self.step_s
        core, face = max(max(excess[: self.cap.cap_nodes]), _hottest_excess(excess)), self.cap.face
        self.core_c = self.room_c + core
        self.surface_c = self.room_c + sum(face[node] * excess[node] for node in face) / self.face_m2
        longest = (1.0 + STEP_GROWTH) * self.step_s
        if core_was > core > 0.0:
            longest = min(longest, max(STEP_EXCESS_SHARE * core / (core_was - core), 0.5) * self.step_s)
        self.step_s = longest

    def _loss(self, node: int) -> float:
        """What node gives to the room, W/K, at the coefficients of this step."""
        cap, given = self.cap, 0.0
        if node in cap.face:
            given += self.h_top * cap.face[node]
        if node == cap.cap_nodes:
            given += self.h_top * cap.bare_m2
        if node == len(cap.own) - 1:
            given += cap.under_m2 * self.h_foot / (1.0 + self.h_foot * cap.last_half)
        return given

    def _factor(self) -> None:
        """L D Lᵀ of capacity + TR_BDF2_STAGE·step·links, row by row within the packed rows."""
        cap, stage = self.cap, TR_BDF2_STAGE * self.step_s
        self.h_top = self.loss_factor * coefficient(self.top, self.surface_c, self.room_c)
        self.h_foot = self.loss_factor * coefficient(self.bottom, self.room_c + self.excess[-1], self.room_c)
        firsts: list[int] = cap.first
        lower: list[list[float]] = []
        pivots: list[float] = []
        self.lower, self.pivots = lower, pivots
        for i in range(len(cap.own)):
            first = firsts[i]
            row = [stage * value for value in cap.rows[i]]
            pivot = cap.capacity[i] + stage * (cap.own[i] + self._loss(i))
            for j in range(first, i):
                theirs, start = lower[j], firsts[j]
                value = row[j - first]
                for k in range(max(first, start), j):
                    value -= row[k - first] * theirs[k - start]
                row[j - first] = value
            for j in range(first, i):
                value = row[j - first]
                row[j - first] = value / pivots[j]
                pivot -= value * row[j - first]
            lower.append(row)
            pivots.append(pivot)

    def _solve(self, values: list[float]) -> None:
        """Solves in place."""
        firsts, lower, pivots = self.cap.first, self.lower, self.pivots
        size = len(values)
        for i in range(size):
            first, row, value = firsts[i], lower[i], values[i]
            for k in range(len(row)):
                value -= row[k] * values[first + k]
            values[i] = value
        for i in range(size):
            values[i] /= pivots[i]
        for i in range(size - 1, -1, -1):
            first, row, value = firsts[i], lower[i], values[i]
            for k in range(len(row)):
                values[first + k] -= row[k] * value
