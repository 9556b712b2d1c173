"""Events as a busy shop's phones write them: usual slabs led from opening to closing, several at once on each phone."""

import json
from functools import cache
from itertools import count
from typing import Any

from tests.bench import NINE_OCLOCK_MS, Bench
from tests.log import uuid7

DEVICES = ("phone-a", "phone-b", "phone-c")
AT_ONCE = 2  # batches that one phone leads at a time
APART_MS = 3 * 3600 * 1000  # from one slab to the next at a place on the bench
FINISH = ("freed", "flipped", "scored", "cut")


@cache
def usual_slab() -> list[dict[str, Any]]:
    """A slab of our scenario, led by the prompts from opening to closing."""
    bench = Bench()
    bench.sets_up()
    bench.melts()
    bench.does("poured", 30, bulk_c=73.0)
    for surface_c in (60.0, 45.0, 33.0):
        bench.does("slab_read", 1200, surface_c=surface_c)
    bench.does("touched", 1800, firm=False)
    bench.does("noted", text="Stirred once more by the door, where it is cooler.")
    bench.does("touched", 700, firm=True)
    for kind in FINISH:
        bench.does(kind, 120)
    bench.does("counted", 900, pieces=205)
    bench.does("weighed_out", 30, kg=0.09, what="rest")
    bench.does("closed", 30)
    ignored = bench.run["ignored"]
    if ignored:
        raise RuntimeError(f"a usual slab has events that do not fit: {ignored}")
    return bench.events


class WritingPhone:
    """A phone whose log grows: the events of its running slabs, told in turn."""

    def __init__(self, device_id: str) -> None:
        self.device_id = device_id
        self.seq = count(1)
        self.rounds = 0

    def next_round(self) -> list[dict[str, Any]]:
        """The next slabs, all begun within seconds and finished together."""
        shift_ms = self.rounds * APART_MS
        self.rounds += 1
        batch_ids = [uuid7(NINE_OCLOCK_MS + shift_ms) for _ in range(AT_ONCE)]
        return [
            self._event(told, batch_id, shift_ms + 1500 * place)
            for told in usual_slab()
            for place, batch_id in enumerate(batch_ids)
        ]

    def _event(self, told: dict[str, Any], batch_id: str, shift_ms: int) -> dict[str, Any]:
        at_ms = told["at_ms"] + shift_ms
        own = {"id": uuid7(at_ms), "shop_id": "demo-shop", "device_id": self.device_id, "seq": next(self.seq)}
        return told | own | {"at_ms": at_ms, "offset_ms": -40.5, "batch_id": batch_id}


def pushes(groups: int, size: int) -> list[str]:
    """So many groups of events as the bodies of pushes, from the phones in turn; a group may cut batches in two."""
    phones = [(WritingPhone(device_id), []) for device_id in DEVICES]
    texts = []
    for number in range(groups):
        phone, waiting = phones[number % len(phones)]
        while len(waiting) < size:
            waiting += phone.next_round()
        texts.append(json.dumps({"events": waiting[:size]}, ensure_ascii=False, separators=(",", ":")))
        del waiting[:size]
    return texts
