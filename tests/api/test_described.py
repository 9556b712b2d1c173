"""The served API asked whatever its own description allows, and what it does not: no 5xx, and answers as described."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.api.test_real_server import serving

SHAKE = Path(sys.executable).with_name("schemathesis")
# Left out: what asks for sign-in (`test_access.py` asks every route), and what takes a refusal that stands in no schema
# for a mistake: an id that nothing has, a slab that fits no frame.
LEFT_OUT = "ignored_auth,object_level_authorization,negative_data_rejection,positive_data_acceptance"


@pytest.mark.prove
def test_served_api_answers_as_it_describes_itself(tmp_path):
    assert SHAKE.exists(), "run `make .venv/shake`"
    with serving(tmp_path) as (address, _):
        command = [SHAKE, "run", f"{address}api/openapi.json", "--checks", "all", "--exclude-checks", LEFT_OUT]
        command += ["--max-examples", "20", "--no-color", "--warnings", "off", "--continue-on-failure"]
        done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, timeout=1800, check=False)
    print(done.stdout[done.stdout.rfind("== SUMMARY") :])
    assert done.returncode == 0, done.stdout[-6000:]
