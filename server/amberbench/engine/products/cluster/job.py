"""Asked of a plan of clusters: rows, weights, what goes under, places on the tray; what cannot be is refused."""

import math

from ...core import allergens
from ...core.check import is_below
from ...core.problems import Problem
from ...physics import materials
from ...steps.deposit import trays
from .. import capacity, subplans
from ..capacity import BOWL_KG
from . import footprint, lattice, tray_cooling
from .fields import IN_HAND
from .lattice import ROUNDING_M

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable


class ClusterWeights:
    """rows [(number, kg of a first deposit)], clusters, deposits, deposits_kg, caramel_kg to weigh in, most_kg that a
    bowl takes, heaviest_kg (of the first deposits), largest_kg (of all), pour_c, field: what the weight goes by in the
    request."""

    def __init__(self, request: "Readable") -> None:
        self.request = request
        self.pour_c = 0.5 * (request["window_low_c"] + request["window_high_c"])
        self.density = materials.density(materials.resolved(request["material"]), self.pour_c)
        second_kg = request["second_kg"]
        if not request["rows"] and request["caramel_kg"] is None and request["deposit_kg"] is not None:
            raise Problem("caramel_kg", "missing", low=IN_HAND["low"], high=IN_HAND["high"], unit="kg")
        if bool(request["rows"]) == (request["caramel_kg"] is not None):
            raise Problem("rows", "give_one_of", accepted=["rows", "caramel_kg"])
        self.yield_share: float = request["yield_share"]
        if request["rows"]:
            self.field = "rows"
            # A few more are laid where some are known to go wrong.
            self.rows = [
                (math.ceil(row["clusters"] / self.yield_share - 1e-9), row["deposit_kg"]) for row in request["rows"]
            ]
        else:
            self.field = "caramel_kg"
            self.rows = [self._from_caramel(second_kg)]
        self.clusters = sum(number for number, _ in self.rows)
        self.deposits = self.clusters * (2 if second_kg > 0.0 else 1)
        self.deposits_kg = sum(number * kg for number, kg in self.rows) + self.clusters * second_kg
        self.caramel_kg = self.deposits_kg / (1.0 - request["residue"])
        self.heaviest_kg = max(kg for _, kg in self.rows)
        self.largest_kg = max(second_kg, self.heaviest_kg)
        self.most_kg = capacity.most_kg(request, self.density)

    def _from_caramel(self, second_kg: float) -> tuple[int, float]:
        """(clusters, deposit) that the caramel in hand gives."""
        request = self.request
        have_kg, deposit_kg, lost = request["caramel_kg"], request["deposit_kg"], request["residue"]
        if deposit_kg is None:
            raise Problem("deposit_kg", "missing", low=0.0005, high=0.5, unit="kg")
        number = int(have_kg * (1.0 - lost) / (deposit_kg + second_kg) + 1e-9)
        if number == 0:
            self._refuse_too_little(deposit_kg, second_kg)
        return number, deposit_kg

    def refuse_weights(self) -> None:
        """Refuses what is no weight for one bowl."""
        if not capacity.holds(self.most_kg, self.caramel_kg):
            raise Problem(self.field, "more_than_a_bowl", self.caramel_kg, high=self.most_kg, unit="kg")
        if is_below(self.caramel_kg, BOWL_KG["low"]):
            self._refuse_too_little(self.rows[0][1], self.request["second_kg"])

    def _refuse_too_little(self, kg: float, second_kg: float) -> None:
        """Names what was typed, and the least of it that makes whole clusters enough for a bowl."""
        request, given = self.request, 1.0 - self.request["residue"]
        least = max(1, math.ceil(BOWL_KG["low"] * given / (kg + second_kg) - 1e-9))
        if not request["rows"]:
            low_kg = max(IN_HAND["low"], least * (kg + second_kg) / given)
            raise Problem("caramel_kg", "too_little_caramel", request["caramel_kg"], low=low_kg, unit="kg")
        if len(request["rows"]) == 1:
            # So many good ones that enough are laid.
            low = int((least - 1) * self.yield_share + 1e-9) + 1
            raise Problem("rows[0].clusters", "too_little_caramel", request["rows"][0]["clusters"], low=low)
        raise Problem("rows", "too_little_caramel", self.caramel_kg, low=BOWL_KG["low"], unit="kg")

    @property
    def good(self) -> int:
        """How many clusters are likely to turn out good."""
        return max(1, int(self.clusters * self.yield_share + 1e-9))


class ClusterJob(ClusterWeights):
    """And per_s (deposits), fill_kg, usual_fill_kg (as the funnel's share has it), most_fill_kg (what it takes where
    that is all there is)."""

    def __init__(self, request: "Readable") -> None:
        super().__init__(request)
        self.per_s = request["deposits_per_min"] / 60.0
        brimful_kg = self.density * request["funnel"]["volume_m3"]
        full_kg = brimful_kg * request["funnel"]["fill"]
        self._refuse_over_fill(full_kg)
        self.most_fill_kg = min(brimful_kg, trays.MOST_FILL * full_kg)
        self.usual_fill_kg = min(full_kg, self.deposits_kg)
        self.fill_kg = self._fill_kg(full_kg)

    def _fill_kg(self, full_kg: float) -> float:
        """One fill: the share that is usual, or a little more where that saves a fill."""
        mean_kg = self.deposits_kg / self.deposits
        number = math.ceil(self.deposits_kg / self.most_fill_kg - 1e-9)
        alike_kg = mean_kg * math.ceil(self.deposits / number - 1e-9)
        saves = number < math.ceil(self.deposits_kg / full_kg - 1e-9)
        result: float = alike_kg if saves and alike_kg <= self.most_fill_kg else self.usual_fill_kg
        return result

    def _refuse_over_fill(self, full_kg: float) -> None:
        request = self.request
        asked = [("rows[" + str(i) + "].deposit_kg", row["deposit_kg"]) for i, row in enumerate(request["rows"])]
        if not request["rows"]:
            asked = [("deposit_kg", request["deposit_kg"])]
        for field, kg in asked + [("second_kg", request["second_kg"])]:
            if kg > full_kg:
                raise Problem(field, "heavier_than_fill", kg, high=full_kg, unit="kg")


def tray_layout(request: "Readable", job: "ClusterJob") -> tuple[str, list[tuple[float, float]]]:
    """(pattern, positions in m) of a full tray."""
    tray, spread_m = request["tray"], request["spread_m"]
    sides = (tray["length_m"], tray["width_m"])
    for name, side_m in (("tray.length_m", sides[0]), ("tray.width_m", sides[1])):
        if side_m < spread_m - ROUNDING_M:
            raise Problem(name, "tray_smaller_than_deposit", side_m, low=spread_m, unit="m")
    most_m = 0.5 * (min(sides) - spread_m)
    if tray["rim_m"] > most_m + ROUNDING_M:
        raise Problem("tray.rim_m", "rim_leaves_no_room", tray["rim_m"], high=max(0.0, most_m), unit="m")
    sizes = [(kg, tray_cooling.spread_m(1.0, kg / job.heaviest_kg)) for _, kg in job.rows]
    footprint.refuse_width(spread_m, sizes, request["second_kg"], job.density)
    pattern, positions = lattice.best(*sides, tray["rim_m"], spread_m, spread_m + request["gap_m"])
    room_m = max(sides) - 2.0 * tray["rim_m"] - 2.0 * spread_m
    if len(positions) == 1 and job.clusters > 1 and room_m >= 0.0:
        raise Problem("gap_m", "gap_leaves_no_room", request["gap_m"], high=room_m, unit="m")
    return pattern, positions


def one_under(request: "Readable", across_m: float) -> "list[tuple[Readable, float]]":
    """[(resolved material, kg)] of what lies under one cluster that covers so much of the tray."""
    _refuse_both(request)
    found: "list[tuple[Readable, float]]" = [
        (_resolved(one["material"], "under[" + str(index) + "].material"), one["count"] * one["kg_each"])
        for index, one in enumerate(request["under"])
    ]
    for index, (material, kg_m2) in enumerate(_bed(request)):
        covered_kg = kg_m2 * 0.25 * math.pi * across_m * across_m
        found.append((_resolved(material, "bed.materials[" + str(index) + "].material"), covered_kg))
    return found


def _refuse_both(request: "Readable") -> None:
    if request["under"] and request["bed"] is not None:
        raise Problem("under", "give_one_of", accepted=["under", "bed"])


def _resolved(material: str, path: str) -> "Document":
    return subplans.call_renamed(materials.resolved, material, {"material": path})


def _bed(request: "Readable") -> list[tuple[str, float]]:
    """[(material, kg/m²)] of the bed."""
    if request["bed"] is None:
        return []
    mixed = request["bed"]["materials"]
    total = sum(one["share"] for one in mixed)
    if total < 0.98 or total > 1.02:
        raise Problem("bed.materials", "shares_sum", total, 0.98, 1.02)
    return [(one["material"], request["bed"]["bed_kg_m2"] * one["share"] / total) for one in mixed]


def materials_under(request: "Readable", job: "ClusterJob", beds_m2: list[float]) -> "tuple[list[Document], float]":
    """(what to have ready [{material, kg, count, allergen}], kg of it in a finished cluster, the mean).

    beds_m2: what the bed of each tray covers in m².
    """
    number, ready, each_kg = job.clusters, [], 0.0
    for one in request["under"]:
        kg = one["count"] * one["kg_each"]
        ready.append(_to_have_ready(one["material"], number * kg, number * one["count"]))
        each_kg += kg
    covered_m2 = _covered_m2(request, job)
    for material, kg_m2 in _bed(request):
        ready.append(_to_have_ready(material, sum(beds_m2) * kg_m2, None))
        each_kg += kg_m2 * covered_m2
    return ready, each_kg


def beds_m2(
    request: "Readable", job: "ClusterJob", pattern: str, positions: list[tuple[float, float]], held: "Readable"
) -> list[float]:
    """What the bed of each tray covers in m²; positions of a whole tray, held as the plan has it.

    Inside the rim, from where laying begins to half-way behind the last row that is laid; to the end if every row is.
    """
    full, trays = held["per_tray"], held["trays"]
    last = job.clusters - (trays - 1) * full
    every_m2 = _rows_m2(request["tray"], pattern, positions, full)
    return [every_m2] * (trays - 1) + [_rows_m2(request["tray"], pattern, positions, last)]


def _rows_m2(tray: "Readable", pattern: str, positions: list[tuple[float, float]], number: int) -> float:
    """The tray inside its rim in m² as far as the rows of the first `number` places go."""
    sides = [tray[name] - 2.0 * tray["rim_m"] for name in ("length_m", "width_m")]
    onward = 0 if pattern == "staggered_short" else 1  # the way rows follow each other
    row_m = positions[number - 1][onward]
    beyond = [place[onward] for place in positions[number:] if place[onward] > row_m + ROUNDING_M]
    if beyond:
        sides[onward] = 0.5 * (row_m + beyond[0]) - tray["rim_m"]
    result: float = sides[0] * sides[1]
    return result


def _to_have_ready(material: str, kg: float, count: int | None) -> "Document":
    return {"material": material, "kg": kg, "count": count, "allergen": allergens.allergen_of(material)}


def _covered_m2(request: "Readable", job: "ClusterJob") -> float:
    """What a cluster covers of the tray in m², the mean."""
    across = [(number, tray_cooling.spread_m(request["spread_m"], kg / job.heaviest_kg)) for number, kg in job.rows]
    result: float = sum(number * 0.25 * math.pi * wide_m * wide_m for number, wide_m in across) / job.clusters
    return result
