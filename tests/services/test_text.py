"""Sentences and figures, as the server says them."""

import re
from pathlib import Path

import pytest

from amberbench import text
from amberbench.text.figures import NARROW_SPACE

SERVER = Path(text.__file__).parent.parent


@pytest.mark.parametrize(
    ("name", "value", "shown"),
    [
        ("mass_kg", 1.134, "1.13 kg"),
        ("kg", 0.0143, "14.3 g"),
        ("mass_kg", 0.4536, "454 g"),
        ("salt_each_kg", 0.00001, "0.01 g"),
        ("volume_m3", 0.0002, "0.2 l"),
        ("slab_height_m", 0.0127, "12.7 mm"),
        ("length_m", 0.35, "350 mm"),
        ("area_m2", 0.0645, "0.065 m²"),
        ("surface_c", 71.4, "71 °C"),
        ("room_c", -0.2, "0 °C"),
        ("loss_k", 2.25, "2.2 °C"),
        ("power_w", 650.4, "650 W"),
        ("pieces", 205, "205"),
        ("waste", 0.1234, "0.123"),
        ("mass_kg", 1e30, "1e+30 kg"),
        ("mass_kg", float("inf"), "inf"),
        ("windows", None, "–"),
    ],
)
def test_figures_are_as_fine_as_the_bench_reads_them(name, value, shown):
    assert text.formatted(name, value).replace(NARROW_SPACE, " ") == shown


@pytest.mark.parametrize(
    ("seconds", "shown"),
    [
        (45, "45 s"),
        (99.4, "99 s"),
        (100, "1 min 40 s"),
        (120, "2 min"),
        (2820, "47 min"),
        (6000, "1 h 40 min"),
        (-30, "−30 s"),
    ],
)
def test_durations_fit_a_glance(seconds, shown):
    assert text.formatted("total_s", seconds) == shown


def test_list_is_joined_and_clock_time_is_utc():
    assert text.formatted("bars_m", [0.01, 0.006]).replace(NARROW_SPACE, " ") == "10 mm, 6 mm"
    assert text.formatted("opened_at_ms", 1_764_000_000_000) == "16:00 UTC"


def test_one_batch_is_not_one_batches():
    assert text.sentence("server.rebuilt", {"n": 1}).startswith("1 batch ")
    assert text.sentence("server.rebuilt", {"n": 2}).startswith("2 batches ")


def test_spanish_figures_have_a_decimal_comma_and_spanish_batches_their_plural():
    assert text.formatted("mass_kg", 1.134, "es").replace(NARROW_SPACE, " ") == "1,13 kg"
    assert text.formatted("waste", 0.1234, "es") == "0,123"
    assert text.sentence("server.rebuilt", {"n": 1}, "es").startswith("Se ha rehecho 1 tanda ")
    assert text.sentence("server.rebuilt", {"n": 2}, "es").startswith("Se han rehecho 2 tandas ")


def test_missing_sentence_shows_its_key_and_missing_value_its_placeholder():
    assert text.sentence("server.nothing_like_it", {}) == "server.nothing_like_it"
    assert text.sentence("server.at", {}) == "Amberbench is at {address}"
    assert text.sentence("server.at", {"address": "x"}, "tlh") == "Amberbench is at x"


def test_every_problem_of_engine_and_server_has_a_sentence():
    codes = set()
    for file in SERVER.rglob("*.py"):
        source = file.read_text(encoding="utf-8")
        codes |= set(
            re.findall(r'(?:Problem|_problem|refuse)\(\s*(?:[^,()]+|[^,()]*\([^()]*\)),\s*"([a-z_]+)"', source)
        )
        codes |= set(re.findall(r'refuse\(\s*"([a-z_]+)"', source)) | set(re.findall(r'fault\(\s*"([a-z_]+)"', source))
    assert len(codes) > 30
    assert [code for code in sorted(codes) if text.sentence(f"problem.{code}", {}) == f"problem.{code}"] == []


@pytest.mark.parametrize(
    ("field", "unit", "given", "low", "high", "shown"),
    [
        ("funnel.volume_m3", "m³", 0.00005, 0.0002, 0.01, "0.05 l is too low. Accepted: 0.2 l to 10 l."),
        ("dip.salt_each_kg", "kg", 0, 0.00001, 0.002, "0 g is too low. Accepted: 0.01 g to 2 g."),
        ("under[0].kg_each", "kg", 0.00001, 0.00005, 0.2, "0.01 g is too low. Accepted: 0.05 g to 200 g."),
        ("thickness_m.bottom", "m", -0.001, 0, 0.01, "-1 mm is too low. Accepted: 0 mm to 10 mm."),
        ("contact_m2k_w", "m² K/W", -1, 0, 0.1, "-1 m² K/W is too low. Accepted: 0 m² K/W to 0.1 m² K/W."),
    ],
)
def test_what_is_accepted_never_reads_like_what_was_given(field, unit, given, low, high, shown):
    problem = {"field": field, "code": "too_low", "given": given, "low": low, "high": high, "unit": unit}
    assert text.problem_sentence(problem).replace(NARROW_SPACE, " ").split(": ", 1)[1] == shown
