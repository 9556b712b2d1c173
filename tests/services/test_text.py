"""Sentences and figures, as the server says them."""

import re
from pathlib import Path

import pytest

from amberbench import text
from amberbench.text.figures import SPECIFICATION

SERVER = Path(text.__file__).parent.parent


def plain(text):
    return text.replace(SPECIFICATION["unit_space"], " ").replace(SPECIFICATION["part_space"], " ")


@pytest.mark.parametrize(
    ("name", "value", "shown"),
    [
        ("mass_kg", float("inf"), "∞ kg"),
        ("mass_kg", float("nan"), "–"),
        ("windows", None, "–"),
        ("nuts", True, "True"),
        ("base", "marble", "marble"),
        ("mass_kg", 10**400, "∞ kg"),
    ],
)
def test_what_is_no_usual_number_is_shown_too(name, value, shown):
    assert plain(text.formatted(name, value)) == shown


def test_list_is_joined_and_clock_time_is_utc():
    assert plain(text.formatted("bars_m", [0.01, 0.006])) == "10 mm, 6 mm"
    assert text.formatted("opened_at_ms", 1_764_000_000_000) == "16:00 UTC"


def test_one_batch_is_not_one_batches():
    assert text.sentence("server.rebuilt", {"n": 1}).startswith("1 batch ")
    assert text.sentence("server.rebuilt", {"n": 2}).startswith("2 batches ")


def test_spanish_figures_have_a_decimal_comma_and_spanish_batches_their_plural():
    assert plain(text.formatted("mass_kg", 1.134, "es")) == "1,13 kg"
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
        codes |= set(re.findall(r'\b(?:refuse|fault)\(\s*"([a-z_]+)"', source))
    assert len(codes) > 30
    assert [code for code in sorted(codes) if text.sentence(f"problem.{code}", {}) == f"problem.{code}"] == []


@pytest.mark.parametrize(
    ("field", "unit", "given", "low", "high", "shown"),
    [
        ("funnel.volume_m3", "m³", 0.00005, 0.0002, 0.01, "50 ml is too low. Accepted: 200 ml to 10 l."),
        ("dip.salt_each_kg", "kg", 0, 0.00001, 0.002, "0 g is too low. Accepted: 0.01 g to 2 g."),
        ("under[0].kg_each", "kg", 0.00001, 0.00005, 0.2, "0.01 g is too low. Accepted: 0.05 g to 200 g."),
        ("thickness_m.bottom", "m", -0.001, 0, 0.01, "−1 mm is too low. Accepted: 0 mm to 10 mm."),
        ("room_c", "°C", 14.98, 15, 35, "14.98 °C is too low. Accepted: 15 °C to 35 °C."),
        ("bowl[0].targets", "°C", 27.04, 27.5, 29, "27 °C is too low. Accepted: 28 °C to 29 °C."),
        ("melt.room_humidity", "", -0.1, 0, 1, "−10 % is too low. Accepted: 0 % to 100 %."),
        ("viscosity_pa_s", "Pa s", 0, 0.1, 90, "0 Pa s is too low. Accepted: 0.1 Pa s to 90 Pa s."),
        ("contact_m2k_w", "m² K/W", -1, 0, 0.1, "−1 m² K/W is too low. Accepted: 0 m² K/W to 0.1 m² K/W."),
    ],
)
def test_what_is_accepted_never_reads_like_what_was_given(field, unit, given, low, high, shown):
    problem = {"field": field, "code": "too_low", "given": given, "low": low, "high": high, "unit": unit}
    assert plain(text.problem_sentence(problem)).split(": ", 1)[1] == shown
