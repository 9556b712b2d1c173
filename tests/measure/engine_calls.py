"""The engine calls that are timed: requests as a phone sends them, from our own invented scenario (tests/bench.py)."""

import json
import random
from typing import Any

from amberbench.engine import catalogue
from tests import strategies_batch
from tests.bench import Bench, planned_slab

Calls = list[tuple[str, str]]
"""Functions of the catalogue, each with its request as JSON text; made one after the other and timed as one."""

EVENTS = 400
BURSTS = 60  # the most a melt plan has
BATCHES = 200  # of a busy shop in a year
REFITS = 12  # a reading every ten minutes for two hours
RELOAD = f"reload: run.replay, {EVENTS} events"
TARGETS_S = {"melt.next_burst": 0.020, "cool.plan": 0.400, RELOAD: 0.100}
"""At 4×, from what a hand at the bench feels as at once; ours, no published source."""


def bench_calls() -> dict[str, Calls]:
    """What hands at the bench wait for, by the name of its row."""
    late = _before_the_last_burst()
    melt = late.run["melt"]
    long = _long_batch()
    return {
        "melt.next_burst": _calls("melt.next_burst", dict(melt["request"], history=melt["history"])),
        "run.advise at a burst": _calls("run.advise", {"run": late.run, "at_ms": late.now_ms}),
        RELOAD: _calls("run.replay", _for_worker(long)),
        "reload: run.advise after it": _calls("run.advise", {"run": long.run, "at_ms": long.now_ms}),
    }


def desk_calls() -> dict[str, Calls]:
    """What the desk's engine computes, by the name of its row."""
    plan = planned_slab()
    cooling = plan["reply"]["cool_request"]
    return {
        "cool.plan": _calls("cool.plan", cooling),
        "cool.refit, 3 readings": _calls("cool.refit", dict(cooling, readings=_readings(), touches=[])),
        "slab.plan": _calls("slab.plan", plan["request"]),
        f"learn.fold, {BATCHES} batches": _calls("learn.fold", {"batches": _taught()}),
    }


def _calls(name: str, request: dict[str, Any]) -> Calls:
    return [(name, json.dumps(request))]


def _for_worker(bench: Bench) -> dict[str, Any]:
    """A batch as the phone asks for its fold (`replayRequest.ts`): without what only pictures and the desk read."""
    reply = {name: part for name, part in bench.plan["reply"].items() if name not in ("melt", "inputs", "frames")}
    for part, left_out in (("cool", ("curve", "milestones", "inputs")), ("cut", ("cuts_along_m", "cuts_across_m"))):
        reply[part] = {name: value for name, value in reply[part].items() if name not in left_out}
    plan = {name: part for name, part in bench.plan.items() if name != "request"}
    told = ("id", "device_id", "seq", "at_ms", "offset_ms", "kind", "body")
    events = [{name: event[name] for name in told} for event in bench.events]
    events[0]["body"] = {}
    return {"plan": plan | {"reply": reply}, "events": events}


def _before_the_last_burst() -> Bench:
    """A usual melt whose next burst is the last: the longest history a usual decision looks at."""
    bench = Bench()
    bench.sets_up()
    bench.melts()
    last = max(index for index, event in enumerate(bench.events) if event["kind"] == "burst_started")
    del bench.events[last:]
    bench.now_ms = bench.events[-1]["at_ms"] + 1000.0
    assert bench.advice["step"] == "burst"
    return bench


def _taught() -> list[dict[str, Any]]:
    """What so many batches may have told."""
    rng = random.Random(3)
    return [strategies_batch.contribution(rng, f"batch-{number}") for number in range(BATCHES)]


def _readings() -> list[dict[str, float]]:
    """The planned surface at three points of the planned curve."""
    curve = planned_slab()["reply"]["cool"]["curve"]
    chosen = [curve[len(curve) * part // 5] for part in (1, 2, 3)]
    return [{"at_s": point["at_s"], "surface_c": point["surface_c"]} for point in chosen]


def _long_batch() -> Bench:
    """A batch of exactly EVENTS events: bursts with stir and reading, poured, slab readings with refits, notes."""
    bench = Bench()
    bench.sets_up()
    for _ in range(BURSTS):
        bench.does("burst_started", seconds_s=30, advised_s=30)
        bench.does("stirred", 40, free=True)
        bench.does("read", surface_c=60.0)
    bench.does("poured")
    refit = dict(planned_slab()["reply"]["cool_request"], readings=_readings(), touches=[])
    whole = catalogue.call("cool.refit", refit)
    reply = {name: whole[name] for name in ("ready_s", "ready_low_s", "ready_high_s", "loss_factor", "loss_factor_sd")}
    for seen in range(1, REFITS + 1):
        bench.does("slab_read", 600, surface_c=70.0 - 3.0 * seen)
        bench.does("cooling_refitted", seen=seen, reply=reply)
    while len(bench.events) < EVENTS:
        bench.does("noted", text="Stirred once more by the door, where it is cooler.")
    run = bench.run
    assert len(bench.events) == EVENTS
    assert run["ignored"] == [], run["ignored"]
    assert len(run["cool"]["readings"]) == REFITS
    return bench
