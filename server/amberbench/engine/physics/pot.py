"""A bowl in a room: the heat it holds and the heat it loses."""

import math

from . import materials
from .bases import SLAB_EMISSIVITY
from .convection import radiation

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Readable


VESSEL_SHARE = 0.6  # share of the vessel that follows the caramel; assumed, 0.3–0.9
VESSEL_SHARE_SD = 0.17  # spread of the same, evenly over that range
CAPACITY_SD = 0.04  # relative spread of the caramel's specific heat (6–12 % water); assumed
LOSS_SD = 0.4  # relative spread of the losses; assumed


class Pot:
    """Caramel and bowl in a room: heat content, capacity and loss at a bulk temperature in °C."""

    def __init__(self, mass_kg: float, material: "Readable | str", vessel: "Readable | None", room_c: float) -> None:
        self.mass_kg = mass_kg
        self.material = materials.resolved(material)
        self.polynomial = materials.heat_polynomial(self.material)
        self.vessel_j_k = VESSEL_SHARE * vessel["mass_kg"] * vessel["heat_capacity_j_kgk"] if vessel else 0.0
        self.room_c = room_c
        self.most_j = self.content(materials.HIGHEST_C)
        self.room_j = self.content(room_c)
        # Hemispherical filling: open top and the wall behind it, both still-air surfaces.
        volume_m3 = mass_kg / materials.density(self.material, 60.0)
        self.radius_m = (1.5 * volume_m3 / math.pi) ** (1.0 / 3.0)
        self.area_m2 = 3.0 * math.pi * self.radius_m * self.radius_m

    def capacity(self, temp_c: float) -> float:
        """Heat capacity of caramel and following vessel in J/K."""
        if temp_c < 0.0:
            return self.mass_kg * materials.heat_capacity(self.material, temp_c) + self.vessel_j_k
        a0, a1, a2 = self.polynomial
        return self.mass_kg * (a0 + temp_c * (a1 + temp_c * a2)) + self.vessel_j_k

    def capacity_sd(self, temp_c: float) -> float:
        """Relative standard deviation of the heat capacity: nobody measured this caramel, nor its bowl's share."""
        vessel = self.vessel_j_k * VESSEL_SHARE_SD / VESSEL_SHARE / self.capacity(temp_c)
        return math.sqrt(vessel * vessel + CAPACITY_SD * CAPACITY_SD)

    def content(self, temp_c: float) -> float:
        """Heat content above 0 °C in J, by exact integration."""
        if temp_c < 0.0:
            return self.mass_kg * materials.enthalpy(self.material, temp_c) + self.vessel_j_k * temp_c
        a0, a1, a2 = self.polynomial
        return temp_c * (self.mass_kg * (a0 + temp_c * (a1 / 2.0 + temp_c * a2 / 3.0)) + self.vessel_j_k)

    def warmed(self, temp_c: float, energy_j: float) -> float:
        """Bulk temperature in °C after taking up energy_j, at most 150 °C: Newton, within 1e-6 K."""
        wanted = self.content(temp_c) + energy_j
        if wanted >= self.most_j:
            return materials.HIGHEST_C
        warm_c = temp_c + energy_j / self.capacity(temp_c)
        warm_c = temp_c + energy_j / self.capacity(0.5 * (temp_c + warm_c))
        for _ in range(6):
            step_k = (wanted - self.content(warm_c)) / self.capacity(warm_c)
            warm_c += step_k
            if abs(step_k) < 1e-6:
                break
        return warm_c

    def loss_w(self, temp_c: float) -> float:
        """Heat lost to the room in W: still air (1.32·(ΔT/d)^¼, mcadams) and radiation from top and wall."""
        over_k = temp_c - self.room_c
        if over_k == 0.0:
            return 0.0
        still_air: float = 1.32 * (abs(over_k) / (2.0 * self.radius_m)) ** 0.25
        lost_w: float = self.area_m2 * (still_air + radiation(SLAB_EMISSIVITY, temp_c, self.room_c)) * over_k
        return lost_w

    def lost_j(self, temp_c: float, seconds_s: float) -> float:
        """Heat lost in J at the rate of the start, never more than brings it to the room."""
        lost_j, most_j = self.loss_w(temp_c) * seconds_s, self.content(temp_c) - self.room_j
        return min(lost_j, most_j) if lost_j > 0.0 else max(lost_j, most_j)

    def cooled(self, temp_c: float, seconds_s: float) -> float:
        """Bulk temperature in °C after standing or being stirred in the room, in steps of at most a minute."""
        left_s = seconds_s
        while left_s > 0.0:
            span_s = min(60.0 if left_s < 3600.0 else left_s / 60.0, left_s)
            over_k = temp_c - self.room_c
            rate = self.loss_w(temp_c) / self.capacity(temp_c) / over_k if over_k else 0.0
            temp_c = self.room_c + over_k * math.exp(-rate * span_s)
            left_s -= span_s
        return temp_c
