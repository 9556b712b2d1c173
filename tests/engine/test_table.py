"""Lists as CSV: read back by Python's own reader, safe in a spreadsheet, times as the calendar has them."""

import csv
import io
import json
import random
import re
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from amberbench.engine import catalogue, fields
from amberbench.engine.exports import table
from amberbench.services import spreadsheet
from tests.bench import Bench

# Read by pwa/src/state/csv.test.ts too.
VECTORS = Path(__file__).parent.parent / "csv_vectors.json"

SUMMARY = {"batch_id": "b1", "name": "Squares", "kind": "slab", "opened_at_ms": 1_764_000_000_000.0}


def rows(text):
    assert text.endswith("\r\n")
    assert "\n" not in text.replace("\r\n", "")
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


def batches(*summaries):
    return rows(spreadsheet.write(catalogue.call("table.batches", {"batches": list(summaries)})))


@pytest.mark.parametrize("name", ["Squares, 24 mm", 'the "big" ones', " led by a space", "ñandú", "a;b"])
def test_a_name_comes_back_as_it_was(name):
    assert batches(SUMMARY | {"name": name})[0]["name"] == name


# What spreadsheets begin a formula with (from memory).
@pytest.mark.parametrize("name", ["=1+2", "+1", "-1", "@SUM(A1)", "\t=1", "  =1", '=HYPERLINK("x";"y")', "＝1"])
def test_no_spreadsheet_runs_a_name(name):
    found = batches(SUMMARY | {"name": name})[0]["name"]
    assert found == "'" + name.replace("\t=", "\t'=")


def opened_at_semicolons(text):
    """The cells a spreadsheet makes of a file when it was told that ";" parts them."""
    return [cell for row in csv.reader(io.StringIO(text, newline=""), delimiter=";") for cell in row]


@pytest.mark.parametrize("space", ["", " ", '"', ' "" ', "\t", ";;"])
@pytest.mark.parametrize("part", [";", "\r\n", "\n", "\r", "\t", "x;y;"])
def test_no_spreadsheet_runs_what_comes_after_another_parting_mark(part, space):
    name = f"Squares{part}{space}=1+1;x"
    text = spreadsheet.write(catalogue.call("table.batches", {"batches": [SUMMARY | {"name": name}]}))
    cells = [*opened_at_semicolons(text), *(part for one in opened_at_semicolons(text) for part in one.split("\t"))]
    assert [cell for cell in cells if cell.strip(' "')[:1] in set("=+-@")] == []
    assert rows_as_written(text)[0]["name"].replace("'", "") == name


def rows_as_written(text):
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


@pytest.mark.parametrize("seed", range(40))
def test_only_apostrophes_are_added_to_a_name(seed):
    rng = random.Random(seed)
    name = "".join(rng.choice(' "\t;=+-@,a\n') for _ in range(rng.randrange(1, 30)))
    text = spreadsheet.write(catalogue.call("table.batches", {"batches": [SUMMARY | {"name": name}]}))
    assert rows_as_written(text)[0]["name"].replace("'", "") == name
    assert [cell for cell in opened_at_semicolons(text) if cell.strip(' "\t')[:1] in set("=+-@")] == []


def test_numbers_are_bare_and_below_nought_no_formula():
    assert table.cell(-1.5) == "-1.5"
    assert table.cell(1.8) == "1.8"
    assert table.cell(0.1 + 0.2) == "0.3"
    assert table.cell(1e300) == "1.000000e+300"
    assert table.cell(None) == ""


def test_pieces_say_whether_they_were_counted():
    counted, planned, unknown = batches(
        SUMMARY | {"pieces": 205, "good_kg": 1.5}, SUMMARY | {"pieces": 220}, SUMMARY | {"closed_at_ms": None}
    )
    assert (counted["pieces_are"], counted["good_kg"]) == ("counted", "1.5")
    assert (planned["pieces_are"], planned["good_kg"]) == ("planned", "")
    assert (unknown["pieces"], unknown["pieces_are"], unknown["closed_at"]) == ("", "", "")


def test_times_are_those_of_the_calendar():
    rng = random.Random(4)
    instants = [0, 951_782_399_000, 951_868_800_000, 4_107_542_400_000, 1_764_000_000_999]
    instants += [rng.randrange(10**14) for _ in range(2000)]
    found = batches(*({**SUMMARY, "opened_at_ms": at_ms} for at_ms in instants))
    epoch = datetime(1970, 1, 1, tzinfo=UTC)
    assert [datetime.fromisoformat(row["opened_at"]) for row in found] == [
        epoch + timedelta(seconds=at_ms // 1000) for at_ms in instants
    ]
    assert all(re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", row["opened_at"]) for row in found)


def test_time_that_no_calendar_shows_is_left_empty():
    bench = Bench()
    bench.does("read", surface_c=20.0, typed_at_ms=1e15)
    events = [
        one | {"body": one["body"] | {"typed_at_ms": bad}}
        for one, bad in zip(bench.events, (-1.0, "noon"), strict=True)
    ]
    table = catalogue.call("table.timeline", {"events": events})
    assert [row[table["columns"].index("typed_at")] for row in table["rows"]] == ["", ""]


@pytest.mark.parametrize("case", json.loads(VECTORS.read_text(encoding="utf-8")), ids=lambda case: case["what"])
def test_server_writes_the_file_that_the_phone_writes(case):
    assert spreadsheet.write(case["table"]) == case["csv"]


def test_a_timeline_says_what_was_taken_back_what_did_not_fit_and_what_was_typed_later():
    bench = Bench()
    wrong = bench.does("read", surface_c=20.0)
    bench.does("undone", event_id=wrong)
    stray = bench.does("scored", text='=cmd|"x"', typed_at_ms=bench.now_ms)
    found = rows(
        spreadsheet.write(catalogue.call("table.timeline", {"events": bench.events[::-1], "ignored": [stray, wrong]}))
    )
    assert [row["kind"] for row in found] == ["batch_opened", "read", "undone", "scored"]
    assert [row["counts"] for row in found] == ["yes", "taken_back", "yes", "did_not_fit"]
    assert found[1]["surface_c"] == "20"
    assert found[3]["text"] == '\'=cmd|"x"'
    assert found[3]["typed_at"] == found[2]["at"]
    assert found[2]["typed_at"] == ""


# What the phone adds by itself: counters, beliefs, names of other events and files, and the shop's own documents.
NOT_BY_HAND = {
    *("seen", "started_ms", "until_ms", "event_id", "photo_id", "bytes", "width_px", "height_px", "engine_version"),
    *("advised_s", "then", "read", "from_c", "expected_c", "low_c", "high_c", "low_s", "high_s", "bulk_c", "sd_k"),
    *("left_kg", "left_out", "ended", "wanted", "name", "spot", "task", "at_ms"),
}


def test_a_timeline_has_a_column_for_all_that_a_hand_tells():
    told = {
        name
        for body in fields.EVENTS.values()
        for name, field in body.items()
        if field["kind"] in ("number", "integer", "boolean", "choice", "text")
    }
    assert told - NOT_BY_HAND == set(table.BODY_COLUMNS)
