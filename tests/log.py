"""Events for tests of the log, as phones write them."""

import json
import random
from typing import Any

from flask.testing import FlaskClient

from amberbench.config import demo_shop_file
from amberbench.services import initial_shop_events
from tests.bench import NINE_OCLOCK_MS, planned_slab

Event = dict[str, Any]
_random = random.Random(7)
BEGUN = len(initial_shop_events.of_seed(json.loads(demo_shop_file().read_text(encoding="utf-8"))))
"""Events that the invented shop begins with: the first of a test has the next position."""


def uuid7(ms: float = NINE_OCLOCK_MS) -> str:
    """A UUIDv7 (RFC 9562): 48 bits of time, version, variant, random bits."""
    number = (int(ms) << 80) | (7 << 76) | (_random.getrandbits(12) << 64) | (2 << 62) | _random.getrandbits(62)
    text = f"{number:032x}"
    return "-".join((text[:8], text[8:12], text[12:16], text[16:20], text[20:]))


class Phone:
    """A phone that writes events of one batch; its clock moves a second with each."""

    def __init__(self, batch_id: str | None = None, device_id: str = "phone-a") -> None:
        self.batch_id = batch_id or uuid7()
        self.device_id = device_id
        self.seq = 0
        self.now_ms = int(NINE_OCLOCK_MS)

    def event(self, kind: str, **body: Any) -> Event:
        """The next event."""
        self.seq += 1
        self.now_ms += 1000
        return {
            "id": uuid7(self.now_ms),
            "v": 1,
            "shop_id": "demo-shop",
            "device_id": self.device_id,
            "seq": self.seq,
            "at_ms": self.now_ms,
            "offset_ms": 0,
            "batch_id": self.batch_id,
            "kind": kind,
            "body": body,
        }

    def opens(self) -> Event:
        """The event that opens the batch."""
        return self.event("batch_opened", plan=planned_slab(), engine_version="0.1.0")

    def whole_batch(self) -> list[Event]:
        """A short batch from opening to closing, 205 centres counted."""
        return [
            self.opens(),
            self.event("ready_checked"),
            self.event("weighed", kg=1.8, lot="A-117"),
            self.event("burst_started", seconds_s=60, advised_s=60),
            self.event("burst_ended"),
            self.event("stirred", free=True),
            self.event("read", surface_c=73.5),
            self.event("poured"),
            self.event("touched", firm=True),
            self.event("counted", pieces=205),
            self.event("closed"),
        ]


def push(client: FlaskClient, *events: Any) -> list[dict[str, Any]]:
    """Sends events; the answers."""
    response = client.post("/api/events", json={"events": list(events)})
    assert response.status_code == 200, response.get_data(as_text=True)
    answers: list[dict[str, Any]] = response.get_json()["answers"]
    return answers


def results(answers: list[dict[str, Any]]) -> list[str]:
    """Just the results."""
    return [answer["result"] for answer in answers]


def pulled(client: FlaskClient, after: int = BEGUN, limit: int = 500) -> dict[str, Any]:
    """One page after a cursor; first what came after the shop was begun."""
    response = client.get(f"/api/events?after={after}&limit={limit}")
    assert response.status_code == 200
    page: dict[str, Any] = response.get_json()
    return page
