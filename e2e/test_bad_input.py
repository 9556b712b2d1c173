"""What cannot be right is said so, plainly and where it was typed; what was tapped wrongly can be taken back."""

import json
import re
import urllib.error
from typing import Any

import pytest
from playwright.sync_api import expect

from e2e.phone import Phone
from e2e.server import Server
from e2e.walk_cluster import CLUSTERS

NARROW_SPACE = "\u202f"

# (how much by, field, typed, what its sentence must name). The range is the engine's, in the shop's units.
BY_WEIGHT = [
    ("Caramel", "0", ["0 g", "50 g to 50 kg"]),
    ("Caramel", "-1", ["−1 kg", "50 g to 50 kg"]),
    ("Caramel", "900", ["900 kg", "50 g to 50 kg"]),
    ("Caramel", "a lot", ["a lot", "g, kg, oz, lb"]),
    ("Caramel", "2.5 in", ["in", "measures something else", "g, kg, oz, lb"]),
    ("Caramel", "2 stone", ["stone", "g, kg, oz, lb"]),
    ("Caramel", "", ["missing"]),
    ("Slab height", "0", ["0 mm", "2 mm to 100 mm"]),
    ("Slab height", "900", ["900 mm", "2 mm to 100 mm"]),
    ("Slab height", "10 lb", ["lb", "mm, cm, m, in"]),
    ("Centre length", "-24", ["−24 mm", "5 mm to 300 mm"]),
    ("Centre width", "4000", ["4,000 mm", "5 mm to 300 mm"]),
    ("Room", "90", ["90 °C", "−5 °C to 45 °C"]),
    ("Caramel now", "85", ["85 °C", "77 °C", "above the window"]),
]
BY_PIECES = [
    ("Centres", "0", ["0", "1 to 5,000"]),
    ("Centres", "12.5", ["12.5", "whole number"]),
    ("Centres", "10000000", ["10,000,000", "1 to 5,000"]),
    ("Centres", "3 kg", ["must be a number"]),
]
BY_BOXES = [
    ("Boxes", "-2", ["−2", "1 to 1,000"]),
    ("Centres in a box", "5000", ["5,000", "1 to 500"]),
]
FRAMES = [
    ("8", "300", "Frame length", ["8 mm", "20 mm to 5,000 mm"]),
    ("300", "9000", "Frame width", ["9,000 mm", "20 mm to 5,000 mm"]),
    ("30", "300", "Frame length", ["30 mm", "too small for one centre", "34 mm"]),
]


def chooses(phone: Phone, words: str) -> None:
    phone.page.get_by_role("radio", name=words, exact=True).tap()


def types_into(phone: Phone, label: str, text: str) -> None:
    phone.page.get_by_role("textbox", name=label, exact=True).fill(text)


def is_told(phone: Phone, label: str, words: list[str]) -> None:
    """One plain sentence at the field, naming all that; no start is offered; the field says that it is wrong."""
    sentence = phone.refused()
    expect(sentence).to_have_count(1)
    field = phone.page.get_by_role("textbox", name=label, exact=True)
    expect(field).to_have_attribute("aria-invalid", "true")
    assert field.get_attribute("aria-describedby") == sentence.get_attribute("id")
    told = (sentence.text_content() or "").replace(NARROW_SPACE, " ")
    assert told.endswith("."), f"no sentence: {told}"
    assert all(word in told for word in words), f"{label}: {told} does not name {words}"


def test_every_figure_of_the_plan_that_cannot_be_is_told_at_its_field(phone: Phone):
    phone.opens_place("Plan")
    phone.answered()
    phone.unfolds()
    for by, cases in (("By weight", BY_WEIGHT), ("Centres", BY_PIECES), ("Boxes", BY_BOXES)):
        chooses(phone, by)
        for label in {case[0] for case in cases if by != "By weight"}:
            types_into(phone, label, "12")
        for label, typed, words in cases:
            field = phone.page.get_by_role("textbox", name=label, exact=True)
            good = field.input_value()
            field.fill(typed)
            is_told(phone, label, words)
            field.fill(good)
    phone.answered()


def test_a_frame_that_cannot_be_is_told_at_its_field(phone: Phone):
    phone.opens_place("Plan")
    phone.unfolds()
    chooses(phone, "Use this one")
    for length, width, label, words in FRAMES:
        types_into(phone, "Frame length", length)
        types_into(phone, "Frame width", width)
        is_told(phone, label, words)


def test_a_field_that_goes_away_takes_its_problem_along(phone: Phone):
    phone.opens_place("Plan")
    chooses(phone, "Centres")
    types_into(phone, "Centres", "many")
    is_told(phone, "Centres", ["must be a number"])
    chooses(phone, "By weight")
    phone.answered()
    phone.unfolds()
    types_into(phone, "Centre length", "wide")
    is_told(phone, "Centre length", ["wide"])
    phone.page.get_by_label("Product", exact=True).select_option(label="Batons, 60 by 18 mm")
    phone.answered()


# What the form cannot say, but a script can: (where, value, field named, code).
BY_SCRIPT = [
    ({"windows": {"low_c": 77, "high_c": 71}}, "windows.low_c", "window_upside_down"),
    ({"windows": {"low_c": 71, "high_c": 92}}, "windows.high_c", "line_above_line"),
    ({"trim_m": 0.1, "frame": {"length_m": 0.15, "width_m": 0.3}}, "trim_m", "trim_larger_than_frame"),
    ({"have": {"kg": True}}, "have.kg", None),
    ({"have": {"kg": "2.5 in"}}, "have.kg", "wrong_unit"),
    ({"sugar": 1}, "sugar", "unknown_field"),
]


def asks(server: Server, change: dict[str, Any], base: dict[str, Any]) -> tuple[int, dict[str, Any]]:
    try:
        return 200, server.asks("/api/plans/slab", base | change)
    except urllib.error.HTTPError as refusal:
        with refusal:
            return refusal.code, json.load(refusal)


def test_a_script_is_refused_in_the_same_plain_words(phone: Phone, server: Server):
    phone.plans_and_starts()
    base = phone.facts_of("batch_opened")[0]["body"]["plan"]["request"]
    base.pop("basis", None)
    assert asks(server, {}, base)[0] == 200
    for change, field, code in BY_SCRIPT:
        status, problem = asks(server, change, base)
        assert status == 422, (change, problem)
        error = problem["errors"][0]
        assert error["field"] == field, (change, error)
        assert code is None or error["code"] == code, (change, error)
        assert error["message"].endswith("."), error


def test_impossible_values_are_questioned_and_not_swallowed(phone: Phone):
    phone.plans_and_starts()
    phone.taps()
    before = phone.facts()
    for keys, unit in (("0", "kg"), ("99", "kg")):
        phone.keys(keys)
        phone.passes(750)
        phone.button.tap()
        expect(phone.page.get_by_role("alert")).to_contain_text(f"{keys}")
        expect(phone.page.get_by_role("alert")).to_contain_text(re.compile(f"cannot be right.*10.{unit}"))
        phone.button.tap()
        expect(phone.page.locator("output")).to_contain_text("–")
    assert phone.facts() == before


def test_a_reading_of_800_is_questioned_in_the_shops_unit(phone: Phone):
    phone.opens_place("Settings")
    phone.page.get_by_label("Temperatures", exact=True).select_option("°F")
    reads_after_one_burst(phone)
    before = phone.facts()
    phone.keys("800")
    phone.passes(750)
    phone.button.tap()
    expect(phone.page.get_by_role("alert")).to_contain_text(re.compile("800.°F cannot be right.*302.°F"))
    phone.button.tap()
    assert phone.facts() == before
    phone.types("165")
    assert phone.facts_of("read")[-1]["body"]["surface_c"] == pytest.approx((165 - 32) / 1.8)


def reads_after_one_burst(phone: Phone) -> None:
    phone.plans_and_starts()
    phone.sets_up()
    phone.starts_a_burst()
    phone.waits_for_the_ring()
    phone.silences()
    phone.taps("Stirs freely")
    phone.is_at("read")


def test_unknown_addresses_say_so_plainly(phone: Phone):
    for address, words in (
        ("/nonsense", "There is nothing at this address."),
        ("/bench/unknown", "This phone does not have that batch."),
        ("/batches/unknown", "Neither the server nor this phone has that batch."),
    ):
        phone.page.goto(address)
        expect(phone.page.get_by_text(words)).to_be_visible()
        expect(phone.page.get_by_role("link", name="Bench")).to_be_visible()
    assert phone.errors == []


def test_clusters_are_told_by_the_words_of_their_own_fields(phone: Phone):
    phone.opens_place("Plan")
    phone.page.get_by_label("Product", exact=True).select_option(label=CLUSTERS)
    phone.answered()
    types_into(phone, "Clusters", "many")
    is_told(phone, "Clusters", ["clusters must be a number"])
    types_into(phone, "Clusters", "60")
    chooses(phone, "Caramel in hand")
    phone.answered()
    types_into(phone, "Caramel", "")
    is_told(phone, "Caramel", ["caramel in hand is missing"])
