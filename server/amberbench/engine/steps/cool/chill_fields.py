"""The chill of a slab that its room leaves too warm to be cut: what a plan says of it and a run keeps."""

from math import ceil

from ...core.field_kinds import number

LEAST_CHILL_S = 300.0  # a door that opens and wrapping warm the air more than a shorter chill cools (practice)
CHILL = {
    "bench_s": number("s", 0, 1e8, "time after pouring until the bench brings nothing more"),
    "from_c": number("°C", -5, 50, "hottest point when it goes into the refrigerator"),
    "fridge_c": number("°C", 0, 15, "air of the refrigerator"),
    "seconds_s": number("s", 0, 1e6, "time in the refrigerator until it can be cut"),
    "low_s": number("s", 0, 1e6, "10 % point"),
    "high_s": number("s", 0, 1e6, "90 % point"),
    "surface_c": number("°C", -10, 50, "its top when it comes out"),
    "sooner_at_s": number("s", 0, 1e8, "time after pouring from which it may go in sooner: firm", default=None),
    "sooner_s": number("s", 0, 1e6, "time in the refrigerator then; null: it is not firm before bench_s", default=None),
}


def as_told_s(seconds_s: float) -> float:
    """The length of a chill in s as it is said and rung: whole minutes that are no shorter, five at least."""
    return max(LEAST_CHILL_S, 60.0 * ceil(seconds_s / 60.0))
