"""Scans a function of the catalogue over one input at a time: where do its main answers turn round, jump or fail?

Every number that a function's request describes is scanned, also inside records; what is counted (whole numbers) is
not. Ranges are those that a kitchen may have, not all that is accepted.
"""

import copy
import itertools
import math
from typing import Any

from amberbench.engine import catalogue, fields
from amberbench.engine.core.problems import Problem

# A change against the way of the others that is larger than this share of the answer is a reversal: steps in time and
# rounding are smaller.
REVERSAL = 0.01
# A change between two neighbouring points is looked at more closely when it is larger than this share of the answer,
# and is a jump when most of it happens within a 256th of the way.
JUMP, HALVINGS = 0.04, 8

# What a kitchen may have, by the last name of an input; else its own limits.
SENSIBLE = {
    "room_c": (12.0, 33.0),
    "start_c": (5.0, 65.0),
    "humidity": (0.2, 0.9),
    "mass_kg": (0.3, 3.0),
    "caramel_kg": (0.4, 3.0),
    "kg": (0.5, 3.0),
    "slab_height_m": (0.006, 0.025),
    "height_m": (0.008, 0.03),
    "thickness_m": (0.006, 0.03),
    "base_thickness_m": (0.005, 0.06),
    "base_length_m": (0.2, 2.0),
    "base_width_m": (0.2, 2.0),
    "base_start_c": (12.0, 30.0),
    "length_m": (0.2, 0.6),
    "width_m": (0.2, 0.5),
    "max_length_m": (0.3, 1.0),
    "max_width_m": (0.25, 0.8),
    "piece_length_m": (0.015, 0.05),
    "piece_width_m": (0.015, 0.05),
    "trim_m": (0.0, 0.02),
    "kerf_m": (0.0, 0.004),
    "rim_m": (0.0, 0.03),
    "gap_m": (0.0, 0.02),
    "spread_m": (0.036, 0.05),
    "deposit_kg": (0.006, 0.02),
    "second_kg": (0.0, 0.01),
    "kg_each": (0.0005, 0.003),
    "bed_kg_m2": (1.0, 6.0),
    "deposits_per_min": (8.0, 40.0),
    "volume_m3": (0.0004, 0.002),
    "vessel_volume_m3": (0.002, 0.008),
    "fill": (0.4, 0.9),
    "h_w_m2k": (4.0, 20.0),
    "rated_w": (700.0, 1200.0),
    "power_w": (400.0, 800.0),
    "power_sd": (0.02, 0.3),
    "unevenness": (1.2, 3.0),
    "heat_capacity_j_kgk": (400.0, 2000.0),
    "share": (0.05, 0.9),
    "burst_s": (20.0, 90.0),
    "step_s": (1.0, 15.0),
    "water_c": (80.0, 92.0),
    "jacket_c": (80.0, 92.0),
    "chopped_m": (0.01, 0.05),
    "low_c": (66.0, 74.0),
    "high_c": (75.0, 81.0),
    "window_low_c": (62.0, 73.0),
    "window_high_c": (75.0, 81.0),
    "limit_c": (90.0, 99.0),
    "warn_c": (81.5, 88.0),
    "stop_c": (84.0, 92.0),
    "target_c": (20.0, 32.0),
    "fridge_c": (1.0, 10.0),
    "loss_factor": (0.5, 2.0),
    "loss_factor_sd": (0.05, 0.5),
    "spread": (0.3, 2.0),
    "contact_m2k_w": (0.001, 0.02),
    "residue": (0.0, 0.05),
    "pour_c": (66.0, 80.0),
    "melt_c": (42.0, 50.0),
    "seed_c": (15.0, 24.0),
    "now_c": (72.0, 80.0),
    "stiffer_k": (-5.0, 12.0),
    "yield_share": (0.7, 1.0),
    "trim_share": (0.0, 0.3),
    "pickup": (0.1, 0.5),
    "prebottom_m": (0.0, 0.002),
    "bowl_reserve_kg": (0.1, 1.0),
    "dip_s": (5.0, 60.0),
    "set_s": (60.0, 600.0),
    "salt_each_kg": (0.00005, 0.001),
    "block_kg": (0.5, 5.0),
    "pace_kg_s": (0.001, 0.01),
    "fill_kg": (0.3, 1.2),
    "temp_c": (10.0, 80.0),
    "moisture": (0.05, 0.15),
    "fat": (0.0, 0.2),
    "dry_glass_c": (30.0, 80.0),
    "water_kg": (0.5, 2.0),
    "end_c": (35.0, 70.0),
    "seconds_s": (30.0, 180.0),
    "reading_low_k": (0.0, 3.0),
    "reading_sd_k": (0.5, 4.0),
    "surface_c": (35.0, 50.0),
    "at_s": (600.0, 3000.0),
    "reserve_share": (0.0, 0.5),
    "from_c": (10.0, 30.0),
    "to_c": (60.0, 90.0),
    "amount": (1.0, 10.0),
    "lot_amount": (10.0, 30.0),
    "hands_s": (600.0, 20000.0),
    "energy_j": (1e5, 1e7),
    "margin_percent": (0.0, 80.0),
    "tax_percent": (0.0, 25.0),
    # Where one name means two things.
    "shop.density volume_m3": (0.0005, 0.002),
    "cool.plan start_c": (60.0, 85.0),
    "cool.refit start_c": (60.0, 85.0),
}


def numbers(known: dict[str, Any], request: dict[str, Any], path: str = "") -> list[tuple[str, dict[str, Any]]]:
    """[(dotted path, field)] of every number of a request, in records as deep as the request goes."""
    found: list[tuple[str, dict[str, Any]]] = []
    for name, field in known.items():
        here, given = path + name, request.get(name)
        if field["kind"] == "number":
            found.append((here, field))
            continue
        for record in [field, *field.get("alternatives", [])]:
            if record["kind"] == "record" and isinstance(given, dict):
                found += numbers(record["fields"], given, here + ".")
        if field["kind"] == "many" and field["item"]["kind"] == "record" and given:
            for index, one in enumerate(given):
                found += numbers(field["item"]["fields"], one, f"{here}.{index}.")
    return found


def inputs_of(name: str, request: dict[str, Any]) -> list[tuple[str, float, float]]:
    """[(dotted path, lowest, highest)] of what is scanned of a request."""
    found = []
    for path, field in numbers(fields.FUNCTIONS[name]["request"], request):
        last = path.split(".")[-1]
        low, high = SENSIBLE.get(f"{name} {last}") or SENSIBLE.get(last, (field["low"], field["high"]))
        found.append((path, max(low, field["low"]), min(high, field["high"])))
    return found


def with_value(request: dict[str, Any], path: str, value: float) -> dict[str, Any]:
    """The request with a value at a dotted path."""
    changed = copy.deepcopy(request)
    *way, last = path.split(".")
    at: Any = changed
    for name in way:
        at = at[int(name)] if isinstance(at, list) else at[name]
    at[last] = value
    return changed


def taken(reply: dict[str, Any], path: str) -> float | None:
    """A number of a reply by its dotted path; null, a list or a name in it may stand on the way."""
    at: Any = reply
    for name in path.split("."):
        if at is None:
            return None
        at = next((one for one in at if one["name"] == name), None) if isinstance(at, list) else at.get(name)
    return at["at_s"] if isinstance(at, dict) else at


class Line:
    """The answers of a function along one input."""

    def __init__(self, name: str, request: dict[str, Any], path: str, outputs: list[str]) -> None:
        self.name, self.request, self.path, self.outputs = name, request, path, outputs
        self.calls = 0

    def at(self, value: float) -> dict[str, float | None] | None:
        """The outputs at a value; None where it is refused."""
        self.calls += 1
        try:
            reply = catalogue.call(self.name, with_value(self.request, self.path, value))
        except Problem:
            return None
        return {output: taken(reply, output) for output in self.outputs}

    def scanned(self, low: float, high: float, points: int) -> set[tuple[str, str]]:
        """{(output, "reversal" or "jump" or "gap")}; a gap is refused between what is accepted."""
        values = [low + (high - low) * i / (points - 1) for i in range(points)]
        answers = [self.at(value) for value in values]
        accepted = [i for i, one in enumerate(answers) if one is not None]
        found = set()
        if accepted and len(accepted) != accepted[-1] - accepted[0] + 1:
            found.add(("", "gap"))
        for output in self.outputs:
            line = [(values[i], answers[i][output]) for i in accepted]  # type: ignore[index]
            found |= {(output, fault) for fault in self._faults(output, [one for one in line if one[1] is not None])}
        return found

    def _faults(self, output: str, line: list[tuple[float, Any]]) -> set[str]:
        if len(line) < 3:
            return set()
        least = REVERSAL * max(abs(value) for _, value in line)
        changes = [after[1] - before[1] for before, after in itertools.pairwise(line)]
        found = set()
        if turns([value for _, value in line], least):
            found.add("reversal")
        if not all(type(value) is int for _, value in line):
            for i, change in enumerate(changes):
                if abs(change) > JUMP / REVERSAL * least and self._jumps(output, line[i], line[i + 1]):
                    found.add("jump")
                    break
        return found

    def _jumps(self, output: str, before: tuple[float, float], after: tuple[float, float]) -> bool:
        whole = abs(after[1] - before[1])
        for _ in range(HALVINGS):
            middle = 0.5 * (before[0] + after[0])
            answer = self.at(middle)
            value = answer and answer[output]
            if value is None:
                return False
            if abs(value - before[1]) > abs(after[1] - value):
                after = (middle, value)
            else:
                before = (middle, value)
            if abs(after[1] - before[1]) < 0.6 * whole:
                return False
        return math.isfinite(whole)


def turns(values: list[float], least: float) -> bool:
    """Whether a line goes up by more than `least` and down by more than that too."""
    top = bottom = values[0]
    rose = fell = 0.0
    for value in values[1:]:
        rose, fell = max(rose, value - bottom), max(fell, top - value)
        top, bottom = max(top, value), min(bottom, value)
    return rose > least and fell > least
