"""Two days of a shop whose clocks jump: phones off by hours, a server set back and forth, answers that get lost."""

import copy
import random

import pytest
from sqlalchemy import select

from amberbench.services import streams
from amberbench.store import reading
from amberbench.store.models import BatchRow, ShopRow, UnopenedRow
from tests.log import pulled
from tests.measure.events import APART_MS, WritingPhone

HOUR_MS = 3_600_000
# A clock without a battery begins decades ago.
YEAR_MS = 8766 * HOUR_MS


class OwnPhone(WritingPhone):
    """A phone with an outbox and a clock that is off: by how much it knows only roughly, and the error jumps."""

    def __init__(self, device_id, chance):
        super().__init__(device_id)
        self.chance, self.outbox, self.error_ms, self.cursor, self.seen = chance, [], 0, 0, {}

    def works(self):
        """Writes the events of its next slabs as its clock has them."""
        for event in self.next_round():
            known_ms = self.error_ms + self.chance.choice([0, 0, 0, self.chance.randint(-90_000, 90_000)])
            self.outbox.append(event | {"at_ms": event["at_ms"] + self.error_ms, "offset_ms": -known_ms})
            if self.chance.random() < 0.02:  # the system sets its clock, a person sets it to another day
                errors_ms = [0, HOUR_MS, -HOUR_MS, 30 * HOUR_MS, -400 * HOUR_MS, -9 * YEAR_MS, 7_000]
                self.error_ms = self.chance.choice(errors_ms)

    def sends(self, client):
        """Sends some of what waits; now and then the answer is lost, and the same goes once more. What was stored."""
        group = self.outbox[: self.chance.randint(1, 40)]
        answers = client.post("/api/events", json={"events": copy.deepcopy(group)}).get_json()["answers"]
        assert {one["result"] for one in answers} <= {"stored", "known"}
        if self.chance.random() > 0.15:
            del self.outbox[: len(group)]
        return {one["id"] for one in answers}

    def pulls(self, client):
        page = pulled(client, self.cursor, self.chance.randint(1, 200))
        for one in page["events"]:
            assert one["id"] not in self.seen
            self.seen[one["id"]] = one["position"]
        self.cursor = page["cursor"]
        return page["more"]


def rows():
    with reading() as session:
        batches = session.execute(select(*BatchRow.__table__.columns).order_by(BatchRow.batch_id)).all()
        unopened = session.scalars(select(UnopenedRow.batch_id).order_by(UnopenedRow.batch_id)).all()
        return batches, unopened, session.execute(select(*ShopRow.__table__.columns)).all()


def lives(app, clock, rounds, seed):
    """So many rounds of slabs on three phones; how many events there are in the end."""
    chance, client = random.Random(seed), app.test_client()
    phones = [OwnPhone(f"phone-{number}", chance) for number in range(3)]
    begins_ms, acknowledged = clock.now_ms, set()
    for turn in range(rounds):
        for phone in phones:
            phone.works()
        while any(phone.outbox for phone in phones):
            phone = chance.choice(phones)
            acknowledged |= phone.sends(client) if phone.outbox else set()
            phone.pulls(client)
            jump_ms = chance.choice([0, 0, 0, 0, 20 * HOUR_MS, -20 * HOUR_MS, -300 * HOUR_MS, -50 * YEAR_MS])
            clock.now_ms = begins_ms + turn * APART_MS + chance.randrange(APART_MS) + jump_ms
    for phone in phones:
        while phone.pulls(client):
            pass
        assert phone.seen == phones[0].seen
    assert acknowledged <= phones[0].seen.keys()
    with app.app_context():
        before = rows()
        streams.rebuild()
        assert rows() == before
        # A batch whose opening was set aside, more than a day ahead, waits for somebody to let it in.
        assert len(before[0]) + len(before[1]) == 2 * 3 * rounds
        assert all(row.broken is None for row in before[0])
    return len(acknowledged)


def test_clocks_that_jump_lose_nothing(app, clock):
    assert lives(app, clock, 1, seed=3) > 100


@pytest.mark.prove
def test_two_days_of_jumping_clocks_lose_nothing(app_on_each_database, clock):
    seed = random.randrange(10**6)
    # Sixteen times three hours: two days, both nights worked through.
    print(f"\ntwo days of three phones from seed {seed}: {lives(app_on_each_database, clock, 16, seed)} events")
