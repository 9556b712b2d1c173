"""What one bowl takes, and the batches that make up more: fields that plans share, and their reckoning."""

from ..core.field_kinds import integer, many, number, record
from ..core.field_kinds import together as together_fields
from ..core.problems import Problem
from ..steps.melt.fields import MELT
from . import remelt, subplans

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..core.annotations import Document, Readable


BOWL_KG = MELT["mass_kg"]
# A bowl is filled to two thirds at most: what is left is for stirring, and caramel rises as it boils at the wall
# (common practice, no published source).
FILLED_SHARE = 2.0 / 3.0
# Within a hundredth two weights are the same: bars and scales are no better (assumed).
SAME_SHARE = 0.01
ROUNDING = 1.0 + SAME_SHARE
# More in one plan is a slip of the finger (assumed).
MOST_BATCHES = 100

VESSEL_VOLUME = number("m³", 0.0003, 0.2, "what the bowl holds, filled to the brim; null: unknown", default=None)
YIELD = number(
    "",
    0.05,
    1,
    "share of what is made that turns out good",
    default=1.0,
    basis="assumed",
    source="assumed",
    measure_by="pieces_counted",
)
ALL = {
    "caramel_kg": number("kg", 0, 50000, "caramel to weigh in"),
    "pieces": integer(0, 1000000, "pieces to make"),
    "good": integer(0, 1000000, "pieces of them that are likely to be good"),
}
# A plan is that of its first batch.
GOOD = {"good": integer(0, 1000000, "pieces that are likely to be good, by the share that turns out good")}
TOGETHER = record(
    together_fields(
        ALL,
        {
            "batches": integer(1, MOST_BATCHES, "batches"),
            "blocks": integer(0, 100000, "blocks to open for all"),
            "leftover_kg": number("kg", 0, 1000, "left of the last block; without block_kg, of the caramel in hand"),
        },
    ),
    "all batches together",
)


def batches_of(**own: "Document") -> "Document":
    """The field of a plan's reply that says which batches it takes; own: what only these have."""
    each = together_fields(ALL, {"count": integer(1, MOST_BATCHES, "batches alike")}, own)
    return many(record(each, "batches alike"), 1, MOST_BATCHES, "the batches that make up what is asked for, in order")


def together(request: "Readable", have_kg: float | None, batches: "Sequence[Readable]") -> "Document":
    """All batches of a plan's reply as one sum; have_kg: the caramel in hand."""
    found = {name: sum(one["count"] * one[name] for one in batches) for name in ALL}
    found["batches"] = sum(one["count"] for one in batches)
    old, _ = remelt.reckoned(request, found["caramel_kg"])
    opened = subplans.blocks(found["caramel_kg"], request["block_kg"], have_kg, old["old_kg"])
    found["blocks"], found["leftover_kg"] = opened
    return found


def most_kg(request: "Readable", density: float) -> float:
    """Caramel (kg) of a density (kg/m³, hot) that one melt may take, by the bowl and by the melt's model; a hundredth
    more is still taken."""
    volume_m3, most = request["vessel_volume_m3"], float(BOWL_KG["high"]) / ROUNDING
    return most if volume_m3 is None else min(most, FILLED_SHARE * float(volume_m3) * density)


def holds(most: float, amount: float) -> bool:
    """Whether an amount is no more than the most, within a hundredth."""
    return amount <= most * ROUNDING + 1e-9


def to_melt(caramel_kg: float) -> float:
    """The same caramel (kg) as the melt's model takes it: to no rounding more than its most."""
    return min(caramel_kg, float(BOWL_KG["high"]))


def batches_for(amount: float, most: float) -> int:
    """How many batches of at most so much make up an amount; a hundredth over is no batch more."""
    number = int(amount / most)
    return max(1, number if holds(number * most, amount) else number + 1)


def refuse_many(field: str, given: float, number: int, unit: str) -> None:
    """Refuses what would take more batches than anybody plans at once."""
    if number > MOST_BATCHES:
        most = given * MOST_BATCHES / number
        raise Problem(field, "too_many_batches", given, high=most if unit else int(most), unit=unit)
