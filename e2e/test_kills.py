"""The phone's browser, killed again and again while it sends what was tapped and takes in what another phone wrote."""

import random
import time

import pytest

from e2e.conftest import KillableBrowser
from e2e.server import Server
from e2e.sync_helpers import all_sent, exchanges, hears, record, tapped_elsewhere


def kills(killable: KillableBrowser, server: Server, times: int, seed: int) -> int:
    """Kills it so many times; how many facts there are in the end, on the phone and on the server alike."""
    chance = random.Random(seed)
    phone = killable.opens()
    phone.installs()
    phone.plans_and_starts()
    batch, batch_id = phone.page.url, phone.page.url.rpartition("/")[2]
    written = {fact["id"] for fact in phone.facts()}
    for number in range(times):
        tapped_elsewhere(server, phone, "noted", {"text": f"note {number}"})
        if number % 2:
            phone.undoes()
        else:
            phone.taps()
        exchanges(phone)
        written |= {fact["id"] for fact in phone.facts()}
        time.sleep(chance.uniform(0.0, 0.2))
        killable.is_killed()
        phone = killable.opens()
        phone.page.goto(batch)
        phone.looks()
        assert written <= {fact["id"] for fact in phone.facts()}
    all_sent(phone)
    kept = [event["id"] for event in record(server, batch_id)["events"]]
    assert len(kept) == len(set(kept))
    assert written <= set(kept)
    hears(phone, len(kept))
    assert {fact["id"] for fact in phone.facts()} == set(kept)
    return len(kept)


@pytest.mark.prove
def test_forty_kills_of_the_browser_lose_and_double_nothing(killable: KillableBrowser, server: Server):
    seed = random.randrange(10**6)
    print(f"\n40 kills of the browser from seed {seed}: {kills(killable, server, 40, seed)} facts")
