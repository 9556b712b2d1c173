"""A mistake of ours in the phone's engine is told as one: what was told is kept, and other batches go on."""

import re

from playwright.sync_api import expect

from e2e.phone import BETWEEN_TAPS_MS, Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent, record

BROKE = re.compile("Something in the app broke")
# The worker keeps its MicroPython under this name on `self` (pwa/src/engine/worker.ts).
HAS_ENGINE = "() => Boolean(self.amberbenchPython)"
RUN = "(code) => self.amberbenchPython.runPython(code)"
MISTAKE = """
from engine import FOLDS_batch_folds as FOLDS
def mistaken(run, body, at_ms):
    return None + 1
FOLDS["ready_checked"] = mistaken
"""


def plant(phone: Phone) -> None:
    """A fold goes wrong from now on, as by a forgotten argument."""
    planted = 0
    for worker in phone.page.workers:
        if worker.evaluate(HAS_ENGINE):
            worker.evaluate(RUN, MISTAKE)
            planted += 1
    assert planted


def goes_to(phone: Phone, batch_id: str) -> None:
    phone.leaves_the_bench()
    phone.page.locator(f'a[href="/bench/{batch_id}"]').first.tap()
    phone.page.wait_for_url(re.compile(batch_id))


def test_mistake_in_a_fold_is_told_keeps_the_tap_and_leaves_the_other_batch_alone(phone: Phone, server: Server):
    going = phone.plans_and_starts()
    phone.taps()
    phone.is_at("weigh")
    phone.leaves_the_bench()
    broken = phone.plans_and_starts(kg="1.2")
    plant(phone)
    phone.passes(BETWEEN_TAPS_MS)
    phone.lets_it_ring()
    phone.button.tap()
    expect(phone.page.get_by_text(BROKE)).to_be_visible()
    assert phone.facts()[-1]["kind"] == "ready_checked"
    goes_to(phone, going)
    phone.is_at("weigh")
    expect(phone.page.get_by_text(BROKE)).to_have_count(0)
    all_sent(phone)
    assert [event["kind"] for event in record(server, broken)["events"]] == ["batch_opened", "ready_checked"]
    phone.page.reload()
    goes_to(phone, broken)
    phone.is_at("weigh")
    expect(phone.page.get_by_text(BROKE)).to_have_count(0)
