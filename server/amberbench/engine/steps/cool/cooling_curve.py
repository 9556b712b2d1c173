"""One slab that cools, from a checked request: its layers, its milestones and when they are reached."""

from math import log

from ...core.problems import Problem
from ...physics import bases, convection, materials
from ...physics.conduction import LayerStack, Transient

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...physics.sideways import Sideways


LONGEST_S = 172800.0  # two days: a slab that takes longer is not a plan
ROOM_MARGIN_K = 1.0  # a slab never gets to room temperature: a bench brings it to this much above the room
# Hottest point at which an ordinary firm caramel is ready for the knife, in any room: half an inch on marble then
# takes one to two hours at 20 to 22 °C, which is common practice, no published source.
READY_C = 27.0

# Each milestone: the point of the slab and the temperature in °C at which it is reached, for an ordinary firm
# caramel, in any room. Assumed, nobody's measurement: a deposit welds while its skin is still above what stirs freely
# less a few kelvin, and paper comes off once the slab is near the temperature it is cut at.
# The last number is how far above the target the milestone stays at least, so that the order holds.
MILESTONES = (
    ("skin", "surface", 60.0, 20.0),
    ("tacky", "surface", 45.0, 12.0),
    ("firm", "core", 38.0, 6.0),
    ("free", "core", 28.0, 1.0),
    ("ready", "core", None, 0.0),
)
COLD_C = 18.0  # core; colder caramel splits under the knife; assumed
ROUNDING_K = 1e-9


def is_brought(temp_c: float, room_c: float) -> bool:
    """Whether a bench in this room brings caramel to temp_c (°C)."""
    return temp_c >= room_c + ROOM_MARGIN_K - ROUNDING_K


def thresholds(request: "Readable") -> list[tuple[str, str, float]]:
    """[(name, point, temperature in °C)] of every milestone, from the hottest; "cold" only where it comes to that."""
    target = float(request["target_c"])
    found = []
    for name, point, temp_c, margin_k in MILESTONES:
        found.append((name, point, target if temp_c is None else max(temp_c, target + margin_k)))
    cold_c = min(COLD_C, target - ROOM_MARGIN_K)
    if is_brought(cold_c, request["room_c"]):
        found.append(("cold", "core", cold_c))
    return found


def quadratic(function: "Callable[..., Any]", low_c: float, high_c: float) -> tuple[float, float, float]:
    """(a0, a1, a2) of the parabola through a property at low_c, the middle and high_c."""
    middle_c = 0.5 * (low_c + high_c)
    low, middle, high = function(low_c), function(middle_c), function(high_c)
    half = 0.5 * (high_c - low_c)
    bend = (low - 2.0 * middle + high) / (2.0 * half * half)
    slope = (high - low) / (2.0 * half)
    return (middle - middle_c * (slope - middle_c * bend), slope - 2.0 * middle_c * bend, bend)


def properties(
    material: "Readable", low_c: float, high_c: float
) -> tuple[tuple[float, float, float], tuple[float, float, float]]:
    """Parabolas of conductivity in W/(m K) and heat capacity in J/(m³ K) between two temperatures in °C."""
    low_c = max(low_c, materials.LOWEST_C)
    high_c = max(high_c, low_c + 10.0)

    def volume_capacity(temp_c: float) -> float:
        return materials.density(material, temp_c) * materials.heat_capacity(material, temp_c)

    return (
        quadratic(lambda temp_c: materials.conductivity(material, temp_c), low_c, high_c),
        quadratic(volume_capacity, low_c, high_c),
    )


class Slab:
    """A slab on its base as a request describes it; `course` simulates how it cools."""

    def __init__(
        self,
        request: "Readable",
        cells: int = 18,
        layer_cells: int = 5,
        finer: float = 1.0,
        area_ratio: float | None = None,
    ) -> None:
        self.finer = finer
        self.sideways: "Sideways | None" = None  # through a base that is wider than the slab
        self.start_c, self.room_c = float(request["start_c"]), float(request["room_c"])
        self.target_c = float(request["target_c"])
        lowest_c = max(self.target_c, self.room_c + ROOM_MARGIN_K)
        if self.start_c <= lowest_c:
            raise Problem("start_c", "start_below_target", self.start_c, low=lowest_c, unit="°C")
        base_c = request["base_start_c"]
        self.base_start_c = self.room_c if base_c is None else float(base_c)
        self.contact = float(request["contact_m2k_w"])
        self.thresholds = thresholds(request)
        layers, ratio, emissivity = bases.resolved_base(request["base"], request["base_thickness_m"])
        ratio = ratio if area_ratio is None else area_ratio
        conductivity, capacity = properties(
            materials.resolved(request["material"]), min(self.room_c, self.base_start_c), self.start_c
        )
        self.stack = LayerStack(request["thickness_m"], conductivity, capacity, layers, ratio, cells, layer_cells)
        plate_m = convection.plate_length_m(request["length_m"], request["width_m"])
        self.top = convection.face(request["top"], bases.SLAB_EMISSIVITY, plate_m, True)
        self.bottom = convection.face(request["bottom"], emissivity, plate_m * ratio**0.5, False)

    def transient(self, loss_factor: float, contact_m2k_w: float | None = None) -> "Transient":
        """A simulation from pouring, at a loss factor and, where given, another contact resistance in m² K/W."""
        contact = self.contact if contact_m2k_w is None else contact_m2k_w
        return Transient(
            self.stack,
            self.start_c,
            self.base_start_c,
            self.room_c,
            contact,
            self.top,
            self.bottom,
            loss_factor,
            self.finer,
            self.sideways,
        )

    def run(
        self, loss_factor: float, contact_m2k_w: float | None = None, longest_s: float = LONGEST_S
    ) -> list[tuple[float, float, float]]:
        """Points [(at_s, core_c, surface_c)] from pouring until the last milestone that is reached in time.

        In a room that does not bring the target they end a kelvin above the room; on a base colder than the room they
        may go on to the target, or end where the slab begins to warm again.
        Raises Problem `cools_too_slowly` when the hottest point is above its target after longest_s (s).
        """
        course = self.transient(loss_factor, contact_m2k_w)
        points = [(0.0, self.start_c, self.start_c)]
        last_c, chilled = self.thresholds[-1][2], self.base_start_c < self.room_c
        brought = is_brought(self.target_c, self.room_c)
        ends_c = last_c if brought or chilled else self.room_c + ROOM_MARGIN_K
        while course.core_c > ends_c:
            if course.at_s > longest_s:
                if course.core_c <= max(self.target_c, self.room_c + ROOM_MARGIN_K):
                    break
                raise Problem("target_c", "cools_too_slowly", self.target_c, unit="°C")
            course.advance()
            if not brought and points[-1][1] <= course.core_c < self.start_c:
                break
            points.append((course.at_s, course.core_c, course.surface_c))
        return points


def crossing_s(points: list[tuple[float, float, float]], column: int, temp_c: float, room_c: float) -> float | None:
    """When a column of the points first falls to temp_c, in s; None when it never does.

    Between two points, and after the last, the excess over the room is taken to fall exponentially.
    """
    if points[0][column] <= temp_c:
        return 0.0
    for i in range(1, len(points)):
        if points[i][column] <= temp_c:
            return _between(points[i - 1], points[i], column, temp_c, room_c)
    if temp_c <= room_c or points[-1][column] >= points[-2][column]:
        return None
    return _between(points[-2], points[-1], column, temp_c, room_c)


def _between(
    before: tuple[float, float, float], after: tuple[float, float, float], column: int, temp_c: float, room_c: float
) -> float:
    high, low = before[column], after[column]
    if low > room_c and temp_c > room_c:
        share = log((high - room_c) / (temp_c - room_c)) / log((high - room_c) / (low - room_c))
    else:
        share = (high - temp_c) / (high - low)
    return before[0] + share * (after[0] - before[0])


COLUMNS = {"core": 1, "surface": 2}


def times(slab: "Slab", points: list[tuple[float, float, float]]) -> "Document":
    """{name: s} of every milestone on a course."""
    found = {}
    for name, point, temp_c in slab.thresholds:
        at_s = crossing_s(points, COLUMNS[point], temp_c, slab.room_c)
        if at_s is not None:
            found[name] = at_s
    return found
