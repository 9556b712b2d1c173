"""Two phones and the server, one batch, chance: the phone's own modules under Node against the real server."""

import json
import random

import pytest

from e2e.proofs import proved
from e2e.server import Server


def stories(server: Server, runs: int, seed: int) -> dict[str, object]:
    """Runs so many stories; what was met in them. A story that does not end well names its seed."""
    said = proved("twoPhones", SERVER=server.url, RUNS=str(runs), SEED=str(seed))
    found: dict[str, object] = json.loads(next(line for line in said.splitlines() if line.startswith("{")))
    return found


def test_six_stories_of_two_phones_end_in_one_run(server: Server):
    assert stories(server, runs=6, seed=1)["stories"] == 6


@pytest.mark.prove
def test_a_thousand_stories_of_two_phones_end_in_one_run(server: Server):
    seed = random.randrange(10**6, 10**9)
    found = stories(server, runs=1000, seed=seed)
    print(f"\n1,000 stories from seed {seed}: {found}")
    assert found["stories"] == 1000
