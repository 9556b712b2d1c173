"""The command `amberbench`, run as anybody runs it."""

import json
import sqlite3
import stat
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
from click.testing import CliRunner

from amberbench.cli import main
from amberbench.engine import catalogue
from amberbench.schemas.engine_types import engine_types
from amberbench.schemas.phone_types import phone_types

ROOT = Path(__file__).parent.parent.parent
FRAME = {"pieces": 96, "piece_length_m": 0.024, "piece_width_m": 0.024, "max_length_m": 0.5, "max_width_m": 0.4}


def run(*arguments, text="", database=None):
    """The command in this process; with `database`, on that file."""
    environment = {"AMBERBENCH_DATABASE_URL": f"sqlite:///{database}"} if database else None
    return CliRunner(env=environment).invoke(main, arguments, input=text, prog_name="amberbench")


def test_compute_lists_every_function():
    assert run("compute", "--list").stdout.split() == sorted(catalogue.FUNCTIONS)


def test_compute_answers_json_with_json():
    command = [sys.executable, "-m", "amberbench", "compute", "cut.fit_frame"]
    text = json.dumps(FRAME).encode()
    done = subprocess.run(command, input=text, capture_output=True, timeout=60, cwd=ROOT / "server")
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout) == catalogue.call("cut.fit_frame", FRAME)


@pytest.mark.parametrize(
    ("name", "text", "code"),
    [
        ("cut.fit_frame", "{", "not_json"),
        ("cut.fit_frame", "", "not_json"),
        ("cut.fit_frame", "[]", "not_a_record"),
        ("cut.fit_frame", json.dumps(FRAME | {"pieces": float("nan")}), "not_finite"),
        ("cut.fit_frame", json.dumps(FRAME | {"kerf_m": float("inf")}), "not_finite"),
        ("cut.fit_frame", json.dumps(FRAME | {"pieces": 0}), "too_low"),
        ("cut.fit_frame", json.dumps(FRAME | {"pieces": True}), "not_a_number"),
        ("cut.fudge", "{}", "unknown_function"),
        ("deposit.plan", "{}", "renamed_function"),
    ],
)
def test_compute_ends_with_2_and_the_problem_on_standard_error(name, text, code):
    done = run("compute", name, text=text)
    assert (done.exit_code, done.stdout) == (2, "")
    problem = json.loads(done.stderr)
    assert problem["code"] == code
    assert problem["message"].endswith(".")


def test_phones_types_are_those_of_the_engine():
    written = (ROOT / "pwa" / "src" / "engine" / "types.ts").read_text(encoding="utf-8")
    assert written == phone_types(), "run: make types"
    assert run("types").stdout == phone_types()


def test_type_checkers_types_are_those_of_the_engine():
    written = (ROOT / "server" / "amberbench" / "engine" / "types.py").read_text(encoding="utf-8")
    assert written == engine_types(), "run: make types"
    assert run("types", "python").stdout == engine_types()


def test_openapi_is_printed():
    assert json.loads(run("openapi").stdout)["paths"]["/api/plans/slab"]["post"]


def test_shop_is_begun_once_and_batches_rebuilt(tmp_path):
    file = tmp_path / "new" / "shop.sqlite"
    assert "was stored" in run("begin", database=file).stdout
    assert "already" in run("begin", database=file).stdout
    assert "0 batches" in run("rebuild", database=file).stdout


def test_command_by_its_name_of_before_works_and_is_not_offered(tmp_path):
    assert "begun" in run("seed", "--empty", database=tmp_path / "shop.sqlite").stdout
    offered = [line.split()[0] for line in run("--help").stdout.partition("Commands:")[2].split("\n") if line.strip()]
    assert "begin" in offered
    assert "seed" not in offered


def test_new_database_and_its_folder_are_for_their_owner_alone(tmp_path):
    file = tmp_path / "new" / "shop.sqlite"
    run("begin", database=file)
    assert (stat.S_IMODE(file.parent.stat().st_mode), stat.S_IMODE(file.stat().st_mode)) == (0o700, 0o600)


def test_mode_somebody_gave_to_a_chosen_file_stays(tmp_path):
    file = tmp_path / "shop.sqlite"
    run("begin", database=file)
    file.chmod(0o640)
    run("rebuild", database=file)
    assert stat.S_IMODE(file.stat().st_mode) == 0o640


def no_database(file):
    file.write_text("a list of what to buy")
    return "not a database"


def newer_database(file):
    run("begin", database=file)
    with closing(sqlite3.connect(file)) as database, database:
        database.execute("UPDATE alembic_version SET version_num = '9999'")
    return "newer version"


def folder_that_is_a_file(file):
    file.parent.write_text("no folder")
    return "cannot be used"


@pytest.mark.parametrize("spoil", [no_database, newer_database, folder_that_is_a_file])
def test_data_that_cannot_be_used_are_named_and_left_alone(tmp_path, spoil):
    file = tmp_path / ("folder/shop.sqlite" if spoil is folder_that_is_a_file else "shop.sqlite")
    said = spoil(file)
    before = file.read_bytes() if file.is_file() else None
    done = run("begin", database=file)
    assert done.exit_code == 1
    assert isinstance(done.exception, SystemExit)
    assert said in done.stderr
    assert str(file) in done.stderr
    assert (file.read_bytes() if file.is_file() else None) == before


@pytest.mark.parametrize("host", ["0.0.0.0", "192.0.2.7", "::", "bench.lan"])
def test_address_that_others_reach_is_refused_without_a_certificate(host, tmp_path):
    done = run("serve", "--host", host, database=tmp_path / "x.sqlite")
    assert done.exit_code == 2
    assert "--cert" in done.stderr
    assert not (tmp_path / "x.sqlite").exists()
