"""How much of its height a cut piece loses as it stands: a column of viscous caramel that sinks by its own weight.

A slice at depth z below the top carries ρ·g·z and shortens at ρ·g·z/(3·η), three times the viscosity standing against
a column that is free to spread; over the whole height dH/dt = −ρ·g·H²/(6·η), so that 1/H grows evenly (reckoned here
from the viscosity of a column under load, Trouton 1906, from memory). What the plate holds back is left out: it sinks
rather less.
"""

from math import log10

from . import materials
from .viscosity import DRY_GLASS_C, GLASS_LOG, WLF_1, WLF_2_K, glass_c, log_viscosity

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Readable


GRAVITY = 9.80665
SOFTEST_K, STIFFEST_K = -30.0, 40.0


def lost_share(height_m: float, seconds_s: float, viscosity_pa_s: float, density_kg_m3: float) -> float:
    """The share of its height (m) that a piece loses in seconds_s (s)."""
    grown = density_kg_m3 * GRAVITY * height_m * seconds_s / (6.0 * viscosity_pa_s)
    return grown / (1.0 + grown)


def viscosity_by_loss(height_m: float, seconds_s: float, lost: float, density_kg_m3: float) -> float:
    """The viscosity in Pa s of a piece of height_m (m) that has lost a share of its height in seconds_s (s)."""
    return density_kg_m3 * GRAVITY * height_m * seconds_s * (1.0 - lost) / (6.0 * lost)


def glass_of(material: "Readable") -> float | None:
    """The glass temperature in °C of a resolved material by its water; None where nothing is known of that."""
    sugar_and_water = 1.0 - material.get("fat", 1.0)
    if sugar_and_water <= material.get("water", 1.0):
        return None
    return glass_c(material["water"] / sugar_and_water, DRY_GLASS_C)


def stiffer_k(glass: float, temp_c: float, viscosity_pa_s: float) -> float:
    """By how many K caramel of a viscosity at temp_c (°C) is stiffer: as stiff as is reckoned that much colder."""
    from_glass = GLASS_LOG - log10(viscosity_pa_s)
    above_k = from_glass * WLF_2_K / (WLF_1 - from_glass) if from_glass < WLF_1 else STIFFEST_K
    return min(max(temp_c - glass - above_k, SOFTEST_K), STIFFEST_K)


def warmest_c(
    material: "Readable", glass: float, stiffer: float, height_m: float, seconds_s: float, lost: float
) -> float:
    """The warmest room in °C in which a piece loses no more than a share of its height in seconds_s (s)."""
    most = viscosity_by_loss(height_m, seconds_s, lost, materials.density(material, glass + stiffer + 25.0))
    from_glass = GLASS_LOG - log10(most)
    return glass + stiffer + from_glass * WLF_2_K / (WLF_1 - from_glass)


def lost_in_room(
    material: "Readable", glass: float, stiffer: float, height_m: float, seconds_s: float, room_c: float
) -> float:
    """The share of its height that a piece loses in a room of room_c (°C)."""
    above_k = room_c - stiffer - glass
    if above_k <= 0.0:
        return 0.0
    return lost_share(height_m, seconds_s, 10.0 ** log_viscosity(above_k), materials.density(material, room_c))
