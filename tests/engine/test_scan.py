"""Every plan, scanned over every continuous input: reversals, jumps and gaps in what it mainly answers.

The few that are wanted are named with their reason; a test fails when another comes, and when one of these goes.
"""

import fnmatch
import math
from typing import Any

import pytest

from amberbench.engine import catalogue
from tests import scan
from tests.bench import SLAB_REQUEST
from tests.strategies_deposit import ON_A_BED, ON_NUTS

COOLED = ["ready_s", "ready_low_s", "ready_high_s", "chill.bench_s", "chill.seconds_s", "chill.sooner_s"]
COOLED += ["milestones." + name for name in ("skin", "tacky", "firm", "free")]
WINDOWS = {"low_c": 71.0, "high_c": 77.0, "limit_c": 93.0, "warn_c": 82.0, "stop_c": 85.0}
LINES = {"window_low_c": 71.0, "window_high_c": 77.0, "limit_c": 93.0, "warn_c": 82.0, "stop_c": 85.0}
OVEN = {"rated_w": 1000.0, "unevenness": 1.8}
BOWL = {"mass_kg": 0.9, "heat_capacity_j_kgk": 800.0}
STONE = {"base": "marble", "base_length_m": 0.6, "base_width_m": 0.5, "base_thickness_m": 0.02}
SLAB = {name: SLAB_REQUEST[name] for name in SLAB_REQUEST if name != "bars_m"} | STONE
FRAME = {"frame": {"length_m": 0.4, "width_m": 0.35}}
DIP = {"method": "fork", "dip_s": 20.0}
READ = {"readings": [{"at_s": 1800.0, "surface_c": 42.0}], "touches": []}
COSTS = {
    "uses": [{"name": "caramel", "amount": 5.0, "lot_amount": 20.0, "lot_price_minor": 2000000}],
    "waste_share": 0.1,
    "hands_s": 7200.0,
    "rate_minor_per_h": 200000,
    "energy_j": 4e6,
    "energy_minor_per_kwh": 30000,
    "pieces": 100,
}
HALF_INCH = {"thickness_m": 0.0127}

# What is scanned: (request, its main answers).
SCANNED: dict[str, list[tuple[dict[str, Any], list[str]]]] = {
    "melt.oven_from_water_test": [
        ({"water_kg": 1.0, "start_c": 18.0, "end_c": 50.0, "seconds_s": 120.0}, ["power_w", "power_sd"])
    ],
    "melt.plan": [({"mass_kg": 0.9, "oven": OVEN, "vessel": BOWL} | LINES, ["total_s", "energy_j"])],
    "melt.plan_jacket": [
        (
            {"block": {"length_m": 0.1, "width_m": 0.1, "height_m": 0.1}, "jacket_c": 88.0},
            ["seconds_s", "low_s", "high_s"],
        ),
        (
            {"block": {"length_m": 0.1, "width_m": 0.1, "height_m": 0.1}, "jacket_c": 88.0, "chopped_m": 0.03},
            ["seconds_s", "low_s", "high_s"],
        ),
    ],
    "pour.plan": [
        ({"solve_for": "mass", "length_m": 0.3, "width_m": 0.3, "slab_height_m": 0.012}, ["mass_kg"]),
        ({"solve_for": "length", "mass_kg": 1.8, "width_m": 0.3, "slab_height_m": 0.012}, ["length_m", "area_m2"]),
        (
            {"solve_for": "height", "mass_kg": 1.8, "length_m": 0.4, "width_m": 0.3},
            ["slab_height_m", "settled_height_m"],
        ),
    ],
    "cut.plan": [
        (
            {"length_m": 0.4, "width_m": 0.3, "thickness_m": 0.012, "piece_length_m": 0.025, "piece_width_m": 0.025},
            ["pieces", "piece_kg"],
        )
    ],
    "cool.plan": [
        (HALF_INCH | STONE | {"room_c": 21.0, "base_start_c": 21.0}, COOLED),
        (HALF_INCH | {"base": "steel_sheet", "room_c": 29.0, "base_length_m": 0.6, "base_width_m": 0.5}, COOLED),
    ],
    "cool.refit": [(HALF_INCH | STONE | READ, ["ready_s", "loss_factor"])],
    "chocolate.coating": [
        (
            {
                "pieces": 100,
                "piece": {"length_m": 0.024, "width_m": 0.024, "height_m": 0.012},
                "bowl_width_m": 0.2,
                "prebottom_m2": 0.1,
            },
            ["per_piece_kg", "coating_kg", "total_kg", "prebottom_kg"],
        )
    ],
    "chocolate.temper": [({"mass_kg": 2.0, "bowl": BOWL}, ["seed_kg", "seed_share"])],
    "chocolate.plan": [({"mass_kg": 2.0, "bowl": BOWL}, ["seed_kg", "seed_share", "hold.seconds_s"])],
    "chocolate.hold": [({"mass_kg": 2.0, "now_c": 32.0, "bowl": BOWL}, ["seconds_s", "low_s", "high_s"])],
    "chocolate.salting": [({"dip_s": 20.0, "pieces": 100}, ["every", "salt_kg"])],
    "deposit.fill": [({"pace_kg_s": 0.004, "now_c": 75.0, "fill_kg": 0.9}, ["seconds_s"])],
    "materials.heat": [({"material": "caramel", "mass_kg": 1.0, "from_c": 20.0, "to_c": 70.0}, ["energy_j"])],
    "materials.properties": [
        (
            {"material": "caramel", "temp_c": 40.0},
            ["density_kg_m3", "heat_capacity_j_kgk", "conductivity_w_mk", "diffusivity_m2_s"],
        )
    ],
    "shop.density": [({"mass_kg": 1.4, "volume_m3": 0.001}, ["density_kg_m3"])],
    "cost.batch": [(COSTS, ["total_minor", "waste_minor", "piece_minor"])],
    "cost.box": [
        (
            {"lines": [{"name": "Squares", "count": 9, "batch": {k: COSTS[k] for k in COSTS if k != "waste_share"}}]},
            ["total_minor", "exact_minor"],
        )
    ],
    "cost.price": [
        (
            {"cost_minor": 100000, "margin_percent": 40.0, "price_minor": 250000, "tax_percent": 10.0},
            ["price_minor", "margin_minor", "margin_percent"],
        )
    ],
    "room.dew_point": [({"temp_c": 21.0, "humidity": 0.5}, ["dew_point_c"])],
    "flow.viscosity": [({"temp_c": 40.0, "moisture": 0.085}, ["viscosity_pa_s", "low_pa_s", "high_pa_s"])],
    "flow.stand_up_test": [
        (
            {"heights": [{"at_s": 0.0, "height_m": 0.02}, {"at_s": 3600.0, "height_m": 0.0198}], "room_c": 21.0},
            ["lost_fraction", "viscosity_pa_s", "stiffer_k", "square_to_c"],
        )
    ],
    "slab.plan": [
        (
            SLAB | FRAME | {"oven": OVEN, "vessel": BOWL, "windows": WINDOWS, "dip": DIP},
            ["caramel_kg", "cut.pieces", "melt.total_s", "cool.ready_s", "square.lost_fraction"],
        ),
        (SLAB | {"oven": OVEN, "windows": WINDOWS}, ["caramel_kg", "cut.pieces", "pour.length_m"]),
    ],
    "cluster.plan": [
        (
            ON_NUTS | LINES | {"window_low_c": 65.0, "oven": OVEN, "vessel": BOWL},
            ["caramel_kg", "second.from_s", "second.to_s", "free.from_s", "chill.seconds_s", "fill_s", "safe_s"],
        ),
    ],
}
# A bed under caramel in hand, in the long scan alone: a plan of clusters takes longest.
LONG: dict[str, list[tuple[dict[str, Any], list[str]]]] = {
    "cluster.plan": [(ON_A_BED | {"window_low_c": 65.0}, ["clusters", "free.from_s", "fill_s", "safe_s"])]
}
POINTS = {"cluster.plan": 8, "slab.plan": 13, "cool.plan": 15, "cool.refit": 13}
USUAL_POINTS = 17

# (function, input, answer, fault): why it is wanted. "*" stands for any.
BURSTS = "a melt is whole bursts in whole steps: one more or less, and what they overshoot"
ROWS = "a frame that is fitted has whole rows and columns"
STONE_BUFFERS = "a thin stone is itself soon cool, one of 2 cm has to be cooled as well, a thick one hardly warms"
LATTICE = "a tray holds whole clusters in the fullest of three patterns; each has its share of the tray"
READING = "what was read stays when all else moves; a reading far from the course is doubted and pulls less"
SEVERAL = "what one slab does not take becomes a batch of its own"
NO_SECOND = "without a second deposit there are half as many, each heavier; a light one cools on what is tacky already"
WANTED = {
    ("melt.plan", "*", "total_s", "jump"): BURSTS,
    ("melt.plan", "*", "total_s", "reversal"): BURSTS,
    ("melt.plan", "*", "energy_j", "jump"): BURSTS,
    ("melt.plan", "*", "energy_j", "reversal"): BURSTS,
    ("melt.plan", "step_s", "", "gap"): "coarse steps land in a window or beside it, as it happens",
    ("cool.plan", "base_thickness_m", "*", "reversal"): STONE_BUFFERS,
    ("cool.refit", "base_thickness_m", "ready_s", "reversal"): STONE_BUFFERS,
    ("cool.refit", "readings.0.at_s", "*", "reversal"): READING,
    ("cool.refit", "room_c", "*", "reversal"): READING,
    ("cool.refit", "thickness_m", "*", "reversal"): READING,
    ("slab.plan", "base_thickness_m", "cool.ready_s", "reversal"): STONE_BUFFERS,
    ("slab.plan", "*", "melt.total_s", "jump"): BURSTS,
    ("slab.plan", "*", "melt.total_s", "reversal"): BURSTS,
    ("slab.plan", "step_s", "", "gap"): "as in melt.plan",
    ("slab.plan", "*", "pour.length_m", "jump"): ROWS,
    ("slab.plan", "*", "pour.length_m", "reversal"): ROWS,
    ("slab.plan", "max_length_m", "caramel_kg", "jump"): SEVERAL,
    ("slab.plan", "base_*_m", "caramel_kg", "jump"): SEVERAL,
    ("slab.plan", "*", "square.lost_fraction", "jump"): "centres are whole; the last of them waits for all the others",
    ("slab.plan", "frame.length_m", "*", "reversal"): "a frame too large for the caramel is filled less high",
    ("slab.plan", "frame.width_m", "*", "reversal"): "a frame too large for the caramel is filled less high",
    ("cluster.plan", "gap_m", "*", "jump"): LATTICE,
    ("cluster.plan", "spread_m", "*", "jump"): LATTICE,
    ("cluster.plan", "spread_m", "*", "reversal"): LATTICE,
    ("cluster.plan", "second_kg", "*", "jump"): NO_SECOND,
    ("cluster.plan", "second_kg", "*", "reversal"): NO_SECOND,
    ("cluster.plan", "step_s", "", "gap"): "as in melt.plan",
}
# These only a finer grid meets.
FINER = {
    ("cool.plan", "room_c", "ready_*_s", "jump"): "the range is that of the bench, then that of bench and chill",
    (
        "cool.plan",
        "base_thickness_m",
        "ready_high_s",
        "jump",
    ): "read beyond the course's last step, which ends late or soon",
    ("cool.refit", "readings.0.surface_c", "*", "reversal"): READING,
    ("cluster.plan", "tray.*", "*", "jump"): LATTICE,
    ("cluster.plan", "tray.*", "*", "reversal"): LATTICE,
    ("cluster.plan", "gap_m", "*", "reversal"): LATTICE,
}


def fits(found: tuple[str, str, str, str], pattern: tuple[str, str, str, str]) -> bool:
    """Whether what was found is what a pattern names."""
    return all(fnmatch.fnmatchcase(one, wanted) for one, wanted in zip(found, pattern, strict=True))


def found_in(
    name: str, requests: list[tuple[dict[str, Any], list[str]]], points: int
) -> set[tuple[str, str, str, str]]:
    """{(function, input, answer, fault)} of all these requests."""
    found = set()
    for request, outputs in requests:
        for path, low, high in scan.inputs_of(name, request):
            line = scan.Line(name, request, path, outputs)
            found |= {(name, path, output, fault) for output, fault in line.scanned(low, high, points)}
    return found


@pytest.mark.parametrize("name", SCANNED)
def test_no_answer_turns_round_jumps_or_fails_between_but_where_it_is_wanted(name):
    found = found_in(name, SCANNED[name], POINTS.get(name, USUAL_POINTS))
    patterns = [one for one in [*WANTED, *FINER] if one[0] == name]
    assert sorted(one for one in found if not any(fits(one, pattern) for pattern in patterns)) == []
    assert [one for one in patterns if one in WANTED and not any(fits(faults, one) for faults in found)] == []


@pytest.mark.prove
@pytest.mark.parametrize("name", SCANNED)
def test_nor_on_a_grid_four_times_as_fine(name):
    requests = SCANNED[name] + LONG.get(name, [])
    found = found_in(name, requests, 4 * POINTS.get(name, USUAL_POINTS) + 1)
    inputs = sum(len(scan.inputs_of(name, request)) for request, _ in requests)
    print(f"\n{name}: {inputs} inputs, {len(found)} wanted reversals, jumps and gaps")
    assert sorted(one for one in found if not any(fits(one, pattern) for pattern in [*WANTED, *FINER])) == []


# The scan itself -----------------------------------------------------------------------------------------------------


def test_scan_takes_up_every_function_that_makes_a_plan():
    planned = {name for name in catalogue.FUNCTIONS if name.endswith((".plan", ".plan_jacket"))}
    # Pieces, batches and minutes are whole: those two are held to brute force instead. Figures on labels go by the
    # steps of the law, and the published examples hold them.
    assert planned - {"needs.plan", "schedule.plan"} <= set(SCANNED)
    # The months add up what was, batch by batch: nothing of it is an input that a person moves.
    assert {name for name in catalogue.FUNCTIONS if name.startswith("cost.")} - {"cost.months"} <= set(SCANNED)


@pytest.mark.parametrize(
    ("line", "fault"),
    [
        (lambda x: x, set()),
        (lambda x: abs(x - 0.4), {"reversal"}),
        (lambda x: 1.0 + x + (0.5 if x > 0.37 else 0.0), {"jump"}),
        (lambda x: 1.0 + (0.5 * x if x < 0.37 else -x), {"reversal", "jump"}),
        (lambda x: math.exp(6.0 * x), set()),
        (lambda x: 1.0 + math.sqrt(x), set()),
        (lambda x: 3 if x > 0.5 else 2, set()),
    ],
)
def test_reversals_and_jumps_are_found_and_nothing_else(line, fault, monkeypatch):
    monkeypatch.setattr(scan.Line, "at", lambda self, value: {"it": line(value)})
    found = scan.Line("", {}, "", ["it"]).scanned(0.0, 1.0, 17)
    assert {one for _, one in found} == fault


def test_what_is_refused_between_what_is_accepted_is_a_gap(monkeypatch):
    monkeypatch.setattr(scan.Line, "at", lambda self, value: None if 0.4 < value < 0.6 else {"it": value})
    assert scan.Line("", {}, "", ["it"]).scanned(0.0, 1.0, 17) == {("", "gap")}
