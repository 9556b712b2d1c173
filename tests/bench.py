"""A person at the bench, for tests: does things at given times, asks what comes next."""

from functools import cache
from typing import Any

from amberbench.engine import catalogue
from tests.strategies_deposit import ON_NUTS

NINE_OCLOCK_MS = 1_764_000_000_000.0

# Our own scenario: 1.8 kg, 10 mm bars, 24 mm squares, °C.
SLAB_REQUEST: dict[str, Any] = {
    "have": {"kg": 1.8},
    "slab_height_m": 0.010,
    "piece_length_m": 0.024,
    "piece_width_m": 0.024,
    "bars_m": [0.010, 0.012],
    "oven": {"rated_w": 1000, "turntable": True},
    "vessel": {"mass_kg": 0.9},
    "base": "marble",
    "room_c": 21.0,
    "block_kg": 2.5,
}


@cache
def planned_slab() -> dict[str, Any]:
    """The plan document of the scenario; treat it as read-only."""
    return {
        "kind": "slab",
        "name": "Sea salt squares",
        "prebottom": False,
        "lot": "A-117",
        "request": SLAB_REQUEST,
        "reply": catalogue.call("slab.plan", SLAB_REQUEST),
    }


@cache
def planned_clusters() -> dict[str, Any]:
    """Nut clusters with a second deposit, in a shop's usual window, as a plan document; treat it as read-only."""
    request = ON_NUTS | {"window_low_c": 65.0}
    reply = catalogue.call("cluster.plan", request)
    return {"kind": "cluster", "name": "Nut clusters", "lot": None, "request": request, "reply": reply}


@cache
def jacket_slab() -> dict[str, Any]:
    """The same in a water jacket at 88 °C, the block whole; treat it as read-only."""
    request = {name: value for name, value in SLAB_REQUEST.items() if name not in ("oven", "vessel")}
    request["jacket"] = {"water_c": 88.0}
    return planned_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)}


@cache
def dipped_slab() -> dict[str, Any]:
    """The scenario's squares dipped and salted; treat it as read-only."""
    dip = {"salt_each_kg": 0.0001, "salt": "flaky sea salt"}
    dip["pocket_m"] = {"length_m": 0.03, "width_m": 0.03, "height_m": 0.02}
    request = SLAB_REQUEST | {"dip": dip}
    plan = {"finish": "dipped", "request": request, "reply": catalogue.call("slab.plan", request)}
    return planned_slab() | plan


def with_dip(**dip: Any) -> dict[str, Any]:
    """The same, dipped otherwise."""
    request = dipped_slab()["request"]
    request = request | {"dip": request["dip"] | dip}
    return dipped_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)}


@cache
def planned_bowl() -> dict[str, Any]:
    """2 kg of dark chocolate in a glass bowl at 20 °C; treat it as read-only."""
    request = {"chocolate": "dark_chocolate", "mass_kg": 2.0, "melt_c": 45.0, "room_c": 20.0, "bowl": {"mass_kg": 0.8}}
    plan = {"kind": "chocolate", "name": "Dark chocolate", "lot": "D-4", "request": request}
    return plan | {"reply": catalogue.call("chocolate.plan", request)}


def stand_up_test() -> dict[str, Any]:
    """A cube of firm caramel in a room at 21 °C."""
    room = {"room_c": 21.0}
    return {
        "kind": "standup",
        "name": "Firm caramel",
        "caramel_id": "firm",
        "lot": None,
        "request": room,
        "reply": room | {"inputs": []},
    }


class Bench:
    """One batch on one device, with a clock that moves only when told to."""

    def __init__(self, plan: dict[str, Any] | None = None, device: str = "phone-a") -> None:
        self.plan = plan or planned_slab()
        self.device = device
        self.now_ms = NINE_OCLOCK_MS
        self.events: list[dict[str, Any]] = []
        self.does("batch_opened", plan=self.plan, engine_version="0.1.0")

    def does(self, kind: str, after_s: float = 1.0, **body: Any) -> str:
        """Writes one event some seconds after the last; returns its id."""
        self.now_ms += 1000.0 * after_s
        seq = len(self.events) + 1
        event = {"id": f"{self.device}-{seq}", "v": 1, "shop_id": "demo", "device_id": self.device, "seq": seq}
        event.update(at_ms=self.now_ms, offset_ms=0.0, batch_id="batch-1", kind=kind, body=body)
        self.events.append(event)
        return event["id"]

    def tells(self, kind: str, after_s: float = 1.0, **body: Any) -> str:
        """The same as a phone tells it: with what is decided then."""
        fact = {"kind": kind, "at_ms": self.now_ms + 1000.0 * after_s, "body": body}
        [decided] = catalogue.call("run.decide", {"run": self.run, "facts": [fact]})["decided"]
        assert decided is not None, kind
        return self.does(kind, after_s, **body, decided=decided)

    def waits(self, seconds_s: float) -> None:
        self.now_ms += 1000.0 * seconds_s

    @property
    def run(self) -> dict[str, Any]:
        return catalogue.call("run.replay", {"plan": self.plan, "events": self.events})["run"]

    @property
    def advice(self) -> dict[str, Any]:
        return catalogue.call("run.advise", {"run": self.run, "at_ms": self.now_ms})

    def taps(self, after_s: float = 1.0) -> str:
        """Taps the big button, or the first choice where there is none."""
        advice = self.advice
        button = advice["action"] or advice["choices"][0]
        return self.does(button["kind"], after_s, **button["body"])

    def sets_up(self) -> None:
        self.does("ready_checked", 60)
        self.does("weighed", 120, kg=1.8, lot="A-117")

    def sets_up_clusters(self) -> None:
        for kind in ("ready_checked", "allergens_checked", "under_laid"):
            self.does(kind, 60)
        self.does("weighed", 120, kg=self.plan["reply"]["caramel_kg"], lot="A-117")

    def sets_up_bowl(self) -> None:
        self.does("ready_checked", 60)
        self.does("weighed", 120, kg=self.plan["reply"]["melt_kg"], lot="D-4")

    def sets_up_cube(self) -> None:
        self.does("ready_checked", 60)
        self.does("lot_named", 20, lot="A-117")

    def melts(self, power_share: float = 1.0, until: str = "pour") -> int:
        """Follows the prompts, with a bowl that heats as the engine expects times `power_share`; counts the bursts."""
        bulk_c, bursts = self.run["melt"]["request"]["start_c"], 0
        while (advice := self.advice)["step"] not in (until, "cool"):
            if advice["step"] == "burst":
                rise_k = advice["melt"]["expected_c"] - advice["melt"]["bulk_c"]
                self.taps()
                self.waits(self.events[-1]["body"]["seconds_s"])
                bulk_c += rise_k * power_share
                bursts += 1
            elif advice["step"] in ("turn", "stir"):
                self.does("stirred", 40, free=bulk_c > 49)
            elif advice["step"] == "read":
                self.does("read", 5, surface_c=bulk_c - 1)
            else:
                raise AssertionError(f"a usual melt does not come to {advice['step']}")
            assert bursts < 15
        return bursts

    def softens(self, looks: int = 1, reading_c: float = 73.0) -> None:
        """In a jacket: the block goes in, is looked at so often with lumps left, then stirs freely and is read."""
        self.taps()
        for _ in range(looks):
            self.until("look")
            self.does("stirred", 30, free=False)
        self.until("look")
        self.does("stirred", 30, free=True)
        self.does("read", 20, surface_c=reading_c)

    def until(self, step: str) -> None:
        """Waits, topping up the water when that is asked for."""
        for _ in range(200):
            if self.advice["step"] == "top_up":
                self.taps()
            if self.advice["step"] == step:
                return
            self.waits(300)
        raise AssertionError(f"{step} never came")


def tells_once(alone: Bench, two: Bench, kind: str, body: dict[str, Any]) -> None:
    """The same told by a second hand, forty seconds later, changes nothing and is not counted."""
    alone.does(kind, 5, **body)
    two.does(kind, 5, **body)
    two.does(kind, 40, **body)
    once, twice = alone.run, two.run
    assert len(twice.pop("ignored")) == 1 + len(once.pop("ignored"))
    assert once == twice
