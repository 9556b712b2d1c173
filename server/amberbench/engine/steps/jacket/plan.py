"""Melting in a water-jacketed vessel: hours instead of bursts, the wall below the scorch limit."""

import math

from ...core import check
from ...core.problems import Problem
from ...core.statistics import SD_TO_10_PERCENT
from ...physics import materials
from ...physics.plane_wall import middle_and_mean, roots
from ..melt.estimate import FREE_C
from . import fields

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Readable
    from ...types import MeltPlanJacketReply, MeltPlanJacketRequest


# From the jacket water through the wall into caramel: assumed, so that the trade's one figure lies in the range.
WALL_W_M2K = 25.0
WALL_SPREAD = 1.5  # one standard deviation of its range, as a factor (assumed)
WALL_FACTOR_10_PERCENT = WALL_SPREAD**SD_TO_10_PERCENT
SOFTENS_C = 38.0  # a block that is put in warmer than this begins to give before it stirs freely (assumed)
WARMER_K = 2.0  # water less than this above the window takes for ever to bring caramel into it (assumed)


class Block:
    """A block, or the pieces it was chopped into, in a jacket of one temperature."""

    def __init__(self, request: "Readable") -> None:
        block = request["block"]
        self.material = materials.resolved(request["material"])
        self.sides_m = [block["length_m"], block["width_m"], block["height_m"]]
        middle_c = 0.5 * (request["start_c"] + request["jacket_c"])
        self.k = materials.conductivity(self.material, middle_c)
        self.rho_cp = materials.density(self.material, middle_c) * materials.heat_capacity(self.material, middle_c)
        self.start_c, self.jacket_c, self.window_c = request["start_c"], request["jacket_c"], request["window_low_c"]

    def conduction_s(self, sides_m: list[float], wall_w_m2k: float) -> tuple[float, float]:
        """(s until the middle of a piece stirs freely, or is in a window below that; its mean temperature then in °C).

        The three-dimensional θ is the product of three plane walls.
        """
        walls = [(0.5 * side_m, roots(0.5 * wall_w_m2k * side_m / self.k)) for side_m in sides_m]
        goal = (min(FREE_C, self.window_c) - self.jacket_c) / (self.start_c - self.jacket_c)
        if goal >= 1.0:
            return 0.0, self.start_c
        low_s, high_s, mean = 0.0, 1e7, 1.0
        for _ in range(60):
            at_s, middle, mean = 0.5 * (low_s + high_s), 1.0, 1.0
            for half_m, zetas in walls:
                one, average = middle_and_mean(zetas, self.k / self.rho_cp * at_s / (half_m * half_m))
                middle, mean = middle * one, mean * average
            if middle > goal:
                low_s = at_s
            else:
                high_s = at_s
        return high_s, self.jacket_c + (self.start_c - self.jacket_c) * mean

    def stirred_s(self, from_c: float, to_c: float, wall_w_m2k: float) -> float:
        """Seconds a stirred vessel takes from one temperature to another; heat comes in by bottom and sides."""
        if from_c >= to_c:
            return 0.0
        length_m, width_m, height_m = self.sides_m
        area_m2 = length_m * width_m + 2.0 * (length_m + width_m) * height_m
        slowness_s = self.rho_cp * length_m * width_m * height_m / (wall_w_m2k * area_m2)
        result: float = slowness_s * math.log((self.jacket_c - from_c) / (self.jacket_c - to_c))
        return result

    def seconds_s(self, chopped_m: float | None, wall_w_m2k: float) -> float:
        """Whole: conduction until it slumps, then stirred. Chopped: stirred all along, behind its slowest piece.

        That counts the warming of large pieces twice, so chopped is never said to be slower than whole. What is put in
        warm gives the sooner, the nearer it is to stirring freely: at that it is stirred at once.
        """
        slumped_s, mean_c = self.conduction_s(self.sides_m, wall_w_m2k)
        stirred_s = self.stirred_s(self.start_c, self.window_c, wall_w_m2k)
        stiff: float = min(1.0, max(0.0, (FREE_C - self.start_c) / (FREE_C - SOFTENS_C)))
        conducted_s = slumped_s + self.stirred_s(mean_c, self.window_c, wall_w_m2k)
        whole_s: float = stirred_s + stiff * (conducted_s - stirred_s)
        if chopped_m is None:
            return whole_s
        pieces_m = [min(side_m, chopped_m) for side_m in self.sides_m]
        piece_s = self.conduction_s(pieces_m, wall_w_m2k)[0]
        return min(whole_s, stiff * piece_s + stirred_s)


def plan(request: "MeltPlanJacketRequest") -> "MeltPlanJacketReply":
    """Time until a block in a water jacket is in the window.

    Request: block {length_m (m), width_m (m), height_m (m)}, start_c (°C), jacket_c (°C), window_low_c (°C), limit_c
    (°C), material, chopped_m (m, or null), basis, batches.
    Reply: seconds_s (s), low_s (s), high_s (s), inputs.
    Raises: Problem jacket_above_limit (jacket_c), jacket_too_cool (jacket_c), start_above_window (start_c).
    Relation: product of three plane-wall series, the top warmed as the rest (a lid; assumed), until the middle stirs
    freely, then a stirred vessel heated by bottom and sides; a block that goes in at 38 °C or more is partly stirred
    from the start, at 48 °C altogether; chopped at most as long as whole; range from the wall's
    coefficient. Within ± 40 % of the one figure the trade gives.
    Example: a 4.5 kg can over water of 88 °C, to 77 °C: 3.1 h, 2.7 to 3.9; the trade says about three and a half
    (common practice, no published source).
    Source: incropera, choi_okos_1986; assumed for the wall, practice for where it stirs freely.
    """
    water_c, low_c, limit_c = request["jacket_c"], request["window_low_c"] + WARMER_K, request["limit_c"]
    if water_c >= limit_c:
        raise Problem("jacket_c", "jacket_above_limit", water_c, low_c, limit_c, "°C")
    if check.is_below(water_c, low_c, "°C"):
        raise Problem("jacket_c", "jacket_too_cool", water_c, low_c, limit_c, "°C")
    if request["start_c"] >= request["window_low_c"]:
        raise Problem("start_c", "start_above_window", request["start_c"], high=request["window_low_c"], unit="°C")
    block, chopped_m = Block(request), request["chopped_m"]
    return {
        "seconds_s": block.seconds_s(chopped_m, WALL_W_M2K),
        "low_s": block.seconds_s(chopped_m, WALL_W_M2K * WALL_FACTOR_10_PERCENT),
        "high_s": block.seconds_s(chopped_m, WALL_W_M2K / WALL_FACTOR_10_PERCENT),
        "inputs": [
            check.constant("jacket.wall_w_m2k", WALL_W_M2K, "W/(m² K)"),
            check.constant("jacket.free_c", FREE_C, "°C", "practice"),
            check.constant("jacket.softens_c", SOFTENS_C, "°C"),
        ],
    }


def request_for(melt: "Readable") -> "Any":
    """The checked request to `plan` for what a slab's plan knows.

    `melt`: mass_kg (kg), thickness_m (m, of a square block; null: a cube, the slowest shape), chopped_m, start_c,
    jacket_c, window_low_c, limit_c, material. Raises Problem not_the_shortest_side (thickness_m), and one for
    sides no block has (block.length_m).
    """
    volume_m3 = melt["mass_kg"] / materials.density(materials.resolved(melt["material"]), melt["start_c"])
    cube_m = volume_m3 ** (1.0 / 3.0)
    height_m = cube_m if melt["thickness_m"] is None else melt["thickness_m"]
    if height_m > cube_m:
        raise Problem("thickness_m", "not_the_shortest_side", height_m, 0.01, cube_m, "m")
    side_m = math.sqrt(volume_m3 / height_m)
    known = fields.FUNCTIONS["melt.plan_jacket"]["request"]
    wanted = {name: melt[name] for name in known if name in melt and name != "basis"}
    wanted["block"] = {"length_m": side_m, "width_m": side_m, "height_m": height_m}
    return check.checked(known, wanted)


def warmed_s(melt: "Readable", from_c: float, to_c: float, slower: float) -> float | None:
    """Seconds in which stirred caramel may get from one temperature to another at the earliest; None: never.

    `slower`: how much longer than planned the block took so far, at least 1.
    """
    if to_c >= melt["jacket_c"]:
        return None
    return slower * Block(request_for(melt)).stirred_s(from_c, to_c, WALL_W_M2K * WALL_FACTOR_10_PERCENT)
