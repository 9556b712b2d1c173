"""The command `amberbench`, run as anybody runs it."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from amberbench.engine import catalogue
from amberbench.schemas.phone_types import phone_types

ROOT = Path(__file__).parent.parent.parent


def run(*arguments, text="", database=None):
    environment = os.environ | {"PYTHONPATH": str(ROOT / "server"), "PYTHONWARNINGS": "error"}
    if database:
        environment["AMBERBENCH_DATABASE_URL"] = f"sqlite:///{database}"
    command = [sys.executable, "-m", "amberbench", *arguments]
    return subprocess.run(command, input=text.encode(), capture_output=True, timeout=60, env=environment, cwd=ROOT)


def test_compute_lists_every_function():
    assert run("compute", "--list").stdout.decode().split() == sorted(catalogue.FUNCTIONS)


def test_compute_answers_json_with_json():
    done = run("compute", "cut.fit_frame", text=json.dumps(FRAME))
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout) == catalogue.call("cut.fit_frame", FRAME)


FRAME = {"pieces": 96, "piece_length_m": 0.024, "piece_width_m": 0.024, "max_length_m": 0.5, "max_width_m": 0.4}


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
    ],
)
def test_compute_ends_with_2_and_the_problem_on_standard_error(name, text, code):
    done = run("compute", name, text=text)
    assert (done.returncode, done.stdout) == (2, b"")
    assert json.loads(done.stderr)["code"] == code


def test_phones_types_are_those_of_the_engine():
    written = (ROOT / "pwa" / "src" / "engine" / "types.d.ts").read_text(encoding="utf-8")
    assert written == phone_types(), "run: amberbench types > pwa/src/engine/types.d.ts"
    assert run("types").stdout.decode() == phone_types()


def test_openapi_is_printed():
    assert json.loads(run("openapi").stdout)["paths"]["/api/plans/slab"]["post"]


def test_shop_is_seeded_once_and_batches_rebuilt(tmp_path):
    file = tmp_path / "new" / "shop.sqlite"
    assert b"was stored" in run("seed", database=file).stdout
    assert b"already" in run("seed", database=file).stdout
    assert b"0 batches" in run("rebuild", database=file).stdout


@pytest.mark.parametrize("host", ["0.0.0.0", "192.0.2.7", "::", "bench.lan"])
def test_address_that_others_reach_is_refused_without_a_certificate(host, tmp_path):
    done = run("serve", "--host", host, database=tmp_path / "x.sqlite")
    assert done.returncode == 2
    assert b"--cert" in done.stderr
    assert not (tmp_path / "x.sqlite").exists()
