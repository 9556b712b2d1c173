"""The command `amberbench`, run as anybody runs it."""

import json
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from amberbench.cli import main
from amberbench.engine import catalogue
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
    written = (ROOT / "pwa" / "src" / "engine" / "types.d.ts").read_text(encoding="utf-8")
    assert written == phone_types(), "run: amberbench types > pwa/src/engine/types.d.ts"
    assert run("types").stdout == phone_types()


def test_openapi_is_printed():
    assert json.loads(run("openapi").stdout)["paths"]["/api/plans/slab"]["post"]


def test_shop_is_seeded_once_and_batches_rebuilt(tmp_path):
    file = tmp_path / "new" / "shop.sqlite"
    assert "was stored" in run("seed", database=file).stdout
    assert "already" in run("seed", database=file).stdout
    assert "0 batches" in run("rebuild", database=file).stdout


@pytest.mark.parametrize("host", ["0.0.0.0", "192.0.2.7", "::", "bench.lan"])
def test_address_that_others_reach_is_refused_without_a_certificate(host, tmp_path):
    done = run("serve", "--host", host, database=tmp_path / "x.sqlite")
    assert done.exit_code == 2
    assert "--cert" in done.stderr
    assert not (tmp_path / "x.sqlite").exists()
