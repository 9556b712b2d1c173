"""Bodies of revolution that cool, by somebody else's sums: finite elements in radius and height, under scipy.

Linear triangles, heat kept at the nodes, properties constant, implicit Euler in small steps with one extrapolation
(second order). Nothing of the engine's conduction is used here. Excess over the room is 1 at the start.
"""

import itertools
import math
from typing import Any

import numpy as np
from scipy.optimize import brentq
from scipy.sparse import coo_matrix, diags
from scipy.sparse.linalg import splu


class Body:
    """Points (r, z) in m, triangles of their numbers, k in W/(m K), heat capacity in J/(m³ K); `more` nodes besides."""

    def __init__(self, points: Any, triangles: Any, k: float, rho_cp: float, more: int = 0) -> None:
        self.points = np.array(points)
        self.size = len(self.points) + more
        self.capacity = np.zeros(self.size)
        self.rows: dict[str, list[tuple[int, int, float]]] = {"inside": [], "skin": []}
        for triangle in triangles:
            self._triangle(list(triangle), k, rho_cp)

    def _triangle(self, nodes: list[int], k: float, rho_cp: float) -> None:
        (r1, z1), (r2, z2), (r3, z3) = self.points[nodes]
        area = 0.5 * abs((r2 - r1) * (z3 - z1) - (r3 - r1) * (z2 - z1))
        around = r1 + r2 + r3
        b, c = (z2 - z3, z3 - z1, z1 - z2), (r3 - r2, r1 - r3, r2 - r1)
        for m, node in enumerate(nodes):
            self.capacity[node] += rho_cp * area * 2.0 * math.pi * (around + self.points[node][0]) / 12.0
            for n, other in enumerate(nodes):
                value = 2.0 * math.pi * around / 3.0 * k * (b[m] * b[n] + c[m] * c[n]) / (4.0 * area)
                self.rows["inside"].append((node, other, value))

    def exchange(self, nodes: list[int], h: float, other: int | None = None) -> None:
        """A face given by its nodes in order gives heat to the room or to another node, at h W/(m² K)."""
        for a, b in itertools.pairwise(nodes):
            (r1, z1), (r2, z2) = self.points[a], self.points[b]
            for node, near, far in ((a, r1, r2), (b, r2, r1)):
                self.give(node, h * 2.0 * math.pi * math.hypot(r2 - r1, z2 - z1) * (2.0 * near + far) / 6.0, other)

    def give(self, node: int, w_k: float, other: int | None = None) -> None:
        """A conductance in W/K from a node to the room or to another node."""
        skin = self.rows["skin"]
        skin.append((node, node, w_k))
        if other is not None:
            skin += [(other, other, w_k), (node, other, -w_k), (other, node, -w_k)]

    def matrix(self, part: str) -> Any:
        """Links of a part as a sparse matrix."""
        i, j, v = zip(*self.rows[part], strict=True)
        return coo_matrix((v, (i, j)), shape=(self.size, self.size)).tocsc()

    def step(self, links: Any, excess: Any, span_s: float) -> Any:
        """The excess a span later."""
        whole = splu((diags(self.capacity / span_s) + links).tocsc())
        half = splu((diags(self.capacity / (0.5 * span_s)) + links).tocsc())
        return self.stepped(whole, half, excess, span_s)

    def stepped(self, whole: Any, half: Any, excess: Any, span_s: float) -> Any:
        once = whole.solve(self.capacity / span_s * excess)
        twice = half.solve(self.capacity / (0.5 * span_s) * excess)
        twice = half.solve(self.capacity / (0.5 * span_s) * twice)
        return 2.0 * twice - once


def cap_height_m(volume_m3: float, radius_m: float) -> float:
    """Height of the spherical cap on a circle that has a volume."""
    return float(brentq(lambda h: math.pi * h * (3 * radius_m**2 + h * h) / 6 - volume_m3, 0.0, 10 * radius_m))


class CapOnTray:
    """A cap (spacing across × up) on a tray that is one lump; all W, J per m² of foot, tray_ratio times over."""

    def __init__(self, radius_m, tall_m, k, rho_cp, top_w_m2k, contact_m2k_w, tray_j_m2k, tray_w_m2k, grid=(40, 14)):
        across, up = grid
        ball_m = (radius_m**2 + tall_m**2) / (2 * tall_m)
        points, triangles = [], []
        for i in range(across):
            r = radius_m * math.sin(0.5 * math.pi * i / across)
            top = math.sqrt(ball_m**2 - r * r) - (ball_m - tall_m)
            points += [(r, top * j / up) for j in range(up + 1)]
        points.append((radius_m, 0.0))
        row, rim = up + 1, across * (up + 1)
        for i in range(across - 1):
            for j in range(up):
                a, b = i * row + j, (i + 1) * row + j
                triangles += [(a, b, b + 1), (a, b + 1, a + 1)]
        triangles += [((across - 1) * row + j, rim, (across - 1) * row + j + 1) for j in range(up)]
        self.body = Body(points, triangles, k, rho_cp, more=1)
        self.tops = [i * row + up for i in range(across)] + [rim]
        self.body.exchange(self.tops, top_w_m2k)
        tray, foot_m2 = self.body.size - 1, math.pi * radius_m**2
        self.body.exchange([i * row for i in range(across)] + [rim], 1.0 / contact_m2k_w, tray)
        self.body.capacity[tray] = tray_j_m2k * foot_m2
        self.body.give(tray, tray_w_m2k * foot_m2)
        self.start = np.ones(self.body.size)
        self.start[tray] = 0.0

    def course(self, until_s: float, steps: int = 800) -> tuple[Any, Any, Any]:
        """(times s, hottest, area-mean of the top face)."""
        body, span = self.body, until_s / steps
        links = body.matrix("inside") + body.matrix("skin")
        whole = splu((diags(body.capacity / span) + links).tocsc())
        half = splu((diags(body.capacity / (0.5 * span)) + links).tocsc())
        now, hottest, face = self.start, [1.0], [1.0]
        for _ in range(steps):
            now = body.stepped(whole, half, now, span)
            hottest.append(float(np.max(now[:-1])))
            face.append(self._face(now))
        return np.linspace(0.0, until_s, steps + 1), np.array(hottest), np.array(face)

    def _face(self, now: Any) -> float:
        total = heat = 0.0
        for a, b in zip(self.tops[:-1], self.tops[1:], strict=True):
            (r1, z1), (r2, z2) = self.body.points[a], self.body.points[b]
            area = (r1 + r2) * math.hypot(r2 - r1, z2 - z1)
            total, heat = total + area, heat + area * 0.5 * (now[a] + now[b])
        return heat / total


def cone_means(volume_m3, k, rho_cp, h_w_m2k, empty_s, until_s, steps=160, rows=36):
    """(times s, mean excess) of a cone of 60°, tip down, that keeps its shape as it runs out evenly.

    In the coordinates of its first size conduction goes with 1/L² and the skin with 1/L; what runs out has the mean.
    """
    top_m = (math.sqrt(3.0) * volume_m3 / math.pi) ** (1.0 / 3.0)
    up = [math.sin(0.5 * math.pi * i / rows) for i in range(rows + 1)]
    points, triangles = [(0.0, 0.0)], []
    for i in range(1, rows + 1):
        points += [(top_m * up[i] * up[j], math.sqrt(3.0) * top_m * up[i]) for j in range(rows + 1)]
    for j in range(rows):
        triangles.append((0, 1 + j, 2 + j))
    for i in range(rows - 1):
        for j in range(rows):
            a, b = 1 + i * (rows + 1) + j, 1 + (i + 1) * (rows + 1) + j
            triangles += [(a, b, b + 1), (a, b + 1, a + 1)]
    body = Body(points, triangles, k, rho_cp)
    last = 1 + (rows - 1) * (rows + 1)
    body.exchange([last + j for j in range(rows + 1)], h_w_m2k)
    body.exchange([0] + [1 + i * (rows + 1) + rows for i in range(rows)], h_w_m2k)
    inside, skin = body.matrix("inside"), body.matrix("skin")
    times = until_s * np.linspace(0.0, 1.0, steps + 1) ** 1.5
    now, means = np.ones(body.size), [1.0]
    for before, after in itertools.pairwise(times):
        size = (1.0 - 0.5 * (before + after) / empty_s) ** (1.0 / 3.0)
        now = body.step(inside / size**2 + skin / size, now, after - before)
        means.append(float(np.sum(body.capacity * now) / np.sum(body.capacity)))
    return times, np.array(means)
