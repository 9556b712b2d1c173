"""Slabs that cool by somebody else's sums: the exact series, and a fine grid under scipy's own integrator.

Nothing of the engine's cooling is used here: own air (ideal gas, Sutherland's viscosity, Prandtl number 0.71), own
grid (nodes on the faces, 48 in the slab and 24 in each layer), own time steps (LSODA with a banded Jacobian, relative
tolerance 1e-7). The caramel's properties come from `amberbench.engine.materials`, which has tests of its own.
"""

import math
import random
from functools import cache

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from amberbench.engine.physics import materials

SIGMA = 5.670374419e-8
SLAB_CELLS, LAYER_CELLS = 48, 24


# The exact series -----------------------------------------------------------------------------------------------------


@cache
def roots(bi, count=60):
    """ζ and C of the plane wall, ζ tan ζ = Bi: one root in each (nπ, nπ + π/2)."""
    zeta = np.array(
        [
            brentq(lambda z: z * math.sin(z) - bi * math.cos(z), n * math.pi, n * math.pi + math.pi / 2, xtol=1e-14)
            for n in range(count)
        ]
    )
    return zeta, 4 * np.sin(zeta) / (2 * zeta + np.sin(2 * zeta))


def series(bi, fo, xi):
    """(T − air)/(start − air) at ξ = x/L from the insulated face."""
    zeta, c = roots(bi)
    return float(np.sum(c * np.cos(zeta * xi) * np.exp(-zeta * zeta * fo)))


def series_fourier(bi, theta, xi=0.0):
    """Fourier number at which the point ξ has cooled to theta."""
    return brentq(lambda fo: series(bi, fo, xi) - theta, 1e-4, 500.0, xtol=1e-10)


def at_point(points, at_s):
    """(core, surface) in °C at a time, by a cubic through the points (at_s, core, surface) of a course around it."""
    times = [point[0] for point in points]
    first = min(max(int(np.searchsorted(times, at_s)) - 2, 0), len(times) - 4)
    near = points[first : first + 4]
    return tuple(
        sum(
            one[column] * math.prod((at_s - other[0]) / (one[0] - other[0]) for other in near if other is not one)
            for one in near
        )
        for column in (1, 2)
    )


# A fine grid ----------------------------------------------------------------------------------------------------------


def air(film_c):
    """(conductivity W/(m K), g β Pr/ν² in 1/(m³ K)) of dry air at 101 325 Pa."""
    kelvin = film_c + 273.15
    viscosity = 1.716e-5 * (kelvin / 273.15) ** 1.5 * (273.15 + 110.4) / (kelvin + 110.4)
    density = 101325.0 / (287.05 * kelvin)
    return viscosity * 1006.0 / 0.71, 9.80665 / kelvin * 0.71 / (viscosity / density) ** 2


def exchange(setting, face_c, room_c, plate_m, up, emissivity):
    """Coefficient of a face: McAdams' plates and radiation, or as given."""
    if isinstance(setting, dict):
        return setting["h_w_m2k"]
    if setting == "insulated":
        return 0.0
    hot, cold = face_c + 273.15, room_c + 273.15
    radiation = emissivity * SIGMA * (hot**4 - cold**4) / (hot - cold) if abs(hot - cold) > 1e-6 else 0.0
    k, per_m3k = air((face_c + room_c) / 2)
    ra = per_m3k * abs(face_c - room_c) * plate_m**3
    if (face_c > room_c) == up:
        nu = 0.54 * ra**0.25 if ra < 1e7 else 0.15 * ra ** (1 / 3)
    else:
        nu = 0.27 * ra**0.25
    return nu * k / plate_m + radiation


class FineSlab:
    """A slab of caramel on layers, solved on a fine grid of nodes that lie on the faces of the layers.

    layers: [(thickness m, k, ρ·cp)]; contact in m² K/W splits the node between slab and base in two.
    """

    def __init__(self, request, layers=(), area_ratio=1.0, emissivity=0.95, loss_factor=1.0, slab_cells=SLAB_CELLS):
        self.request, self.factor, self.emissivity, self.ratio = request, loss_factor, emissivity, area_ratio
        self.room = request["room_c"]
        self.plate = request["length_m"] * request["width_m"] / (2 * (request["length_m"] + request["width_m"]))
        material = materials.resolved(request["material"])
        self.table_c = np.linspace(-40.0, 150.0, 381)
        self.table_k = np.array([materials.conductivity(material, t) for t in self.table_c])
        self.table_c_vol = np.array(
            [materials.density(material, t) * materials.heat_capacity(material, t) for t in self.table_c]
        )
        self.nodes = slab_cells + 1
        self.step = request["thickness_m"] / slab_cells
        shares = np.ones(self.nodes)
        shares[[0, -1]] = 0.5
        self.slab_share = shares * self.step
        capacity, links = [], []
        for number, (thickness, k, volume_capacity) in enumerate(layers):
            cells = LAYER_CELLS
            size = thickness / cells
            half = 0.5 * size * volume_capacity * area_ratio
            if number == 0:
                capacity.append(half)
            else:
                capacity[-1] += half
            for cell in range(cells):
                links.append(k / size)
                capacity.append(half if cell == cells - 1 else 2 * half)
        self.base_capacity, self.base_links = np.array(capacity), np.array(links)
        self.has_base = bool(layers)

    def rates(self, _, temps):
        slab = temps[: self.nodes]
        k = np.interp(slab, self.table_c, self.table_k)
        capacity = np.interp(slab, self.table_c, self.table_c_vol) * self.slab_share
        flow = np.zeros(len(temps) + 1)  # downwards, W/m²; flow[i] enters node i from above
        flow[1 : self.nodes] = (k[:-1] + k[1:]) / 2 / self.step * (slab[:-1] - slab[1:])
        if self.has_base:
            flow[self.nodes] = (slab[-1] - temps[self.nodes]) / max(self.request["contact_m2k_w"], 1e-6)
            base = temps[self.nodes :]
            flow[self.nodes + 1 : -1] = self.base_links * (base[:-1] - base[1:])
            capacity = np.concatenate([capacity, self.base_capacity])
        top = exchange(self.request["top"], temps[0], self.room, self.plate, True, 0.95)
        plate = self.plate * math.sqrt(self.ratio)
        foot = exchange(self.request["bottom"], temps[-1], self.room, plate, False, self.emissivity) * self.ratio
        flow[0] = -self.factor * top * (temps[0] - self.room)
        flow[-1] = self.factor * foot * (temps[-1] - self.room)
        return (flow[:-1] - flow[1:]) / capacity

    def solve(self, until_s):
        """A function of time in s: (hottest point of the slab, its top face) in °C."""
        base_c = self.request["base_start_c"]
        start = np.concatenate(
            [
                np.full(self.nodes, float(self.request["start_c"])),
                np.full(len(self.base_capacity), float(self.room if base_c is None else base_c)),
            ]
        )
        answer = solve_ivp(
            self.rates, (0.0, until_s), start, method="LSODA", lband=1, uband=1, rtol=1e-7, atol=1e-6, dense_output=True
        )
        assert answer.success, answer.message

        def at(seconds):
            slab = answer.sol(seconds)[: self.nodes]
            return float(slab.max()), float(slab[0])

        return at

    def ready_s(self, target_c, until_s):
        """(time in s at which the hottest point reaches the target, the course)."""
        at = self.solve(until_s)
        return brentq(lambda seconds: at(seconds)[0] - target_c, 0.0, until_s, xtol=0.01), at


# Thickness m (assumed); k, ρ, cp as printed in DIN EN 12524 (plywood of 500 kg/m³ for the board); emissivity of the
# underside from handheld-thermometer manuals (stainless steel, aluminium as received, marble, planed oak).
BASES = {
    "steel_sheet": (0.0015, 17.0, 7900.0, 460.0, 0.16),
    "aluminium_tray": (0.0015, 160.0, 2800.0, 880.0, 0.09),
    "marble": (0.020, 3.5, 2800.0, 1000.0, 0.93),
    "granite": (0.030, 2.8, 2600.0, 1000.0, 0.93),
    "wood_board": (0.018, 0.13, 500.0, 1600.0, 0.90),
}


def fine(request, loss_factor=1.0, contact_m2k_w=None, slab_cells=SLAB_CELLS):
    """The fine-grid slab of a checked request to cool.plan."""
    if contact_m2k_w is not None:
        request = {**request, "contact_m2k_w": contact_m2k_w}
    base = request["base"]
    if base is None:
        return FineSlab(request, (), 1.0, 0.95, loss_factor, slab_cells)
    if isinstance(base, str):
        thickness, k, rho, cp, emissivity = BASES[base]
        return FineSlab(request, [(thickness, k, rho * cp)], 1.0, emissivity, loss_factor, slab_cells)
    layers = [
        (one["thickness_m"], one["conductivity_w_mk"], one["density_kg_m3"] * one["heat_capacity_j_kgk"])
        for one in base["layers"]
    ]
    return FineSlab(request, layers, base["area_ratio"], 0.90, loss_factor, slab_cells)


# Random slabs ---------------------------------------------------------------------------------------------------------


def random_request(rng: random.Random):
    """What a person would type: thickness, base, room, pouring temperature, frame. Ranges are ours (assumed)."""
    return {
        "thickness_m": rng.uniform(0.008, 0.020),
        "start_c": rng.uniform(70.0, 78.0),
        "room_c": rng.uniform(17.0, 26.0),
        "base": rng.choice(sorted(BASES)),
        "bottom": rng.choice(("still_air", "still_air", "insulated")),
        "contact_m2k_w": math.exp(rng.uniform(math.log(0.002), math.log(0.010))),
        "length_m": rng.uniform(0.25, 0.6),
        "width_m": rng.uniform(0.2, 0.4),
    }
