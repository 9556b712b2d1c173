"""Sensible requests drawn at random for the log of a batch, on the phone, on paper and in tables."""

from amberbench.engine import fields
from tests.bench import Bench, dipped_slab, jacket_slab, planned_bowl, planned_clusters
from tests.drawing import maybe
from tests.gathered import of_kinds


def _bench(rng, stop=None):
    """A batch driven some steps by the prompts, with some events that do not fit."""
    in_jacket = rng.random() < 0.3
    bench = Bench(jacket_slab() if in_jacket else None)
    stop = stop or rng.randrange(1, 6)
    if stop > 1:
        bench.sets_up()
    if stop > 2 and in_jacket:
        bench.softens(rng.randrange(4), rng.uniform(66, 80))
    elif stop > 2:
        bench.melts(rng.uniform(0.9, 1.1))
    if stop > 3:
        bench.does("poured", 30, bulk_c=74.0)
        bench.does("slab_read", 1800, surface_c=rng.uniform(35, 50))
    if stop > 4:
        bench.does("touched", 3600, firm=rng.random() < 0.6)
    for kind in rng.sample(sorted(fields.EVENTS), 3):
        bench.does(kind, rng.uniform(1, 60), kg=1.0, seconds_s=30)
    bench.does("read", rng.uniform(1, 60), surface_c=rng.uniform(20, 90))
    return bench


def _bowl_bench(rng):
    """A bowl of chocolate driven some steps, by the prompts and beside them."""
    bench = Bench(planned_bowl())
    bench.sets_up_bowl()
    for _ in range(rng.randrange(12)):
        if rng.random() < 0.5:
            bench.does("bowl_read", rng.uniform(5, 600), bowl_c=rng.choice([rng.uniform(20, 60), 31.5, 31.9]))
        elif rng.random() < 0.7 and bench.advice["action"] and "kind" in bench.advice["action"]:
            bench.taps(rng.uniform(5, 200))
        else:
            kind = rng.choice(["strip_tested", "bowl_warmed", "bowl_thickened", "bowl_used", "seeded"])
            bench.does(kind, rng.uniform(5, 600), good=rng.random() < 0.7, kg=0.1)
    return bench


def _cluster_bench(rng):
    """Clusters from the weighing in, by the prompts and beside them."""
    bench = Bench(planned_clusters())
    for kind in ("ready_checked", "allergens_checked", "under_lot_named", "under_laid"):
        bench.does(kind, 20)
    bench.does("weighed", 60, kg=rng.uniform(0.8, 1.6))
    bench.does("filled", 900, kg=rng.uniform(0.3, 1.2), bulk_c=rng.uniform(70, 77))
    kinds = ["tray_laid", "second_laid", "tack_tested", "fill_read", "filled", "fill_ended", "laying_ended",
             "funnel_emptied", "tray_freed", "separated", "undone"]  # fmt: skip
    for _ in range(rng.randrange(14)):
        if rng.random() < 0.6 and bench.advice["action"] and "kind" in bench.advice["action"]:
            bench.taps(rng.uniform(5, 400))
        else:
            last = bench.events[-1]["id"]
            told = {"kg": 0.4, "bulk_c": 73.0, "surface_c": rng.uniform(60, 80), "left_kg": 0.1, "event_id": last}
            bench.does(
                rng.choice(kinds), rng.uniform(5, 900), tacky=rng.random() < 0.6, free=rng.random() < 0.6, **told
            )
    return bench


def _dip_bench(rng):
    """A slab that is cut and then dipped or wrapped, by the prompts."""
    bench = Bench(dipped_slab() | {"finish": rng.choice(["dipped", "dipped", "wrapped"])})
    bench.sets_up()
    bench.does("poured", 1800, bulk_c=74.0)
    bench.does("cut", 9000)
    for _ in range(rng.randrange(8)):
        bench.waits(rng.uniform(0, 1000))
        if rng.random() < 0.8 and bench.advice["action"]:
            bench.taps(rng.uniform(5, 200))
        else:
            bench.does(rng.choice(["strip_tested", "salted", "dipped", "set_hard", "wrapped"]), 5, good=False)
    return bench


def _shared_bench(rng):
    """A batch that is told of nuts on the bench at some step, and answers it or not."""
    bench = _bench(rng)
    told = {"after": ["Pecans"], "allergens": ["nuts"], "until_ms": bench.now_ms + rng.uniform(-1e4, 1e4)}
    bench.does("wash_told", 1, wanted=rng.random() < 0.9, **told)
    bench.waits(rng.choice([0, 1e5]))
    if rng.random() < 0.5:
        bench.does(rng.choice(["washed", "washed", "step_skipped"]), 1, step="wash")
    return bench


def _back_and_forth(rng):
    """A batch of which something is taken back and put back again; at last perhaps thrown away."""
    bench = _bench(rng)
    for _ in range(rng.randrange(4)):
        bench.does(rng.choice(["undone", "redone"]), 1, event_id=rng.choice(bench.events)["id"])
    if rng.random() < 0.3:
        bench.does("thrown_away", 1, reason=rng.choice(["burnt", "trial", "lost"]))
    return bench


def any_bench(rng):
    own = [bench for benches in of_kinds("BENCHES") for bench in benches]
    every = [_bench, _bench, _bowl_bench, _cluster_bench, _dip_bench, _shared_bench, _back_and_forth, *own]
    return rng.choice(every)(rng)


def _replay(rng):
    bench = any_bench(rng)
    return {"plan": bench.plan, "events": rng.sample(bench.events, len(bench.events))}


def _apply(rng):
    bench = any_bench(rng)
    return {"run": bench.run, "event": dict(rng.choice(bench.events), id="another-1")}


def _decide(rng):
    """The last events of a batch as facts that are about to be told, after those before them."""
    bench = any_bench(rng)
    told = rng.randrange(1, len(bench.events))
    later, bench.events = bench.events[told:], bench.events[:told]
    return {"run": bench.run, "facts": [{name: one[name] for name in ("kind", "at_ms", "body")} for one in later]}


def _contribution_request(rng):
    """A whole batch by the prompts, closed; some parts of it left out."""
    bench = _bench(rng, 5)
    bench.does("touched", 3600, firm=True)
    if rng.random() < 0.8:
        bench.does("counted", 600, pieces=rng.randrange(150, 206))
    for what in rng.sample(["rest", "trim", "bowl", "funnel"], 2):
        bench.does("weighed_out", 30, kg=rng.uniform(0.0, 0.4), what=what)
    bench.does("closed", 10)
    plan = bench.plan | {"oven_id": rng.choice(["a", "b"]), "base_id": rng.choice(["a", None]), "product_id": "p"}
    return {"batch_id": "batch-1", "plan": plan, "run": bench.run}


def contribution(rng, batch_id):
    """What a closed batch may contribute, with parts missing."""
    planned = rng.randrange(20, 300)
    parts = {
        "oven": {"mass_kg": rng.uniform(0.2, 6.0), "rated_w": rng.choice([None, 900, 1000]),
                 "power_w": rng.uniform(300, 900), "power_sd": rng.uniform(0.02, 0.2)},
        "base": {"loss_factor": rng.uniform(0.6, 1.6), "loss_factor_sd": rng.uniform(0.05, 0.4),
                 "spread_sd": rng.uniform(0.05, 0.3)},
        "pieces": {"planned": planned, "counted": rng.randrange(planned // 2, planned + 1)},
        "trim": rng.uniform(0, 0.2), "residue": rng.uniform(0, 0.05),
    }  # fmt: skip
    kept = {part: parts[part] for part in parts if rng.random() < 0.8}
    ids = {name: rng.choice(["a", "b"]) for name in ("oven_id", "base_id", "product_id")}
    return kept | ids | {"batch_id": batch_id, "left_out": rng.random() < 0.1}


def _trays_on_paper(rng, at_ms):
    """Fills and trays of a sheet after some time, instead of a pour."""
    laid = [at_ms + 60000.0 * minute for minute in range(2, 2 + rng.randrange(4))]
    trays = [{"laid_at_ms": one} for one in laid]
    for one in trays:
        maybe(rng, one, "second_at_ms", one["laid_at_ms"] + 9e5)
        maybe(rng, one, "freed_at_ms", laid[-1] + 6e6)
    fills = [{"at_ms": at_ms + 6e4 * minute} for minute in (1, 3)]
    maybe(rng, fills[1], "surface_c", rng.uniform(60, 80))
    return {
        "fill": {"fill_kg": rng.uniform(0.2, 1), "low_c": 68.0}, "fills": fills, "trays": trays, "slab": [],
        "poured_at_ms": None, "nuts_clear": rng.random() < 0.5,
    }  # fmt: skip


def _paper(rng):
    """A sheet of one morning, some of its boxes empty."""
    at_ms = 1.764e12
    sheet = {"after_ms": at_ms, "now_ms": at_ms + 1e8, "bursts": [], "slab": [], "poured_at_ms": at_ms + 3e6}
    for _ in range(rng.randrange(6)):
        at_ms += rng.randrange(2, 5) * 60000.0
        sheet["bursts"].append({"at_ms": at_ms, "seconds_s": rng.randrange(20, 100), "free": rng.random() < 0.5})
        maybe(rng, sheet["bursts"][-1], "surface_c", rng.uniform(30, 80))
    at_ms = sheet["poured_at_ms"]
    for _ in range(rng.randrange(4)):
        at_ms += 1.2e6
        sheet["slab"].append({"at_ms": at_ms, "surface_c": rng.uniform(20, 60)})
        maybe(rng, sheet["slab"][-1], "firm", rng.random() < 0.5)
    if rng.random() < 0.5:
        sheet |= _trays_on_paper(rng, at_ms)
    maybe(rng, sheet, "weighed_kg", rng.uniform(1, 2))
    maybe(rng, sheet, "lot", "A-117")
    maybe(rng, sheet, "pieces", rng.randrange(200))
    return sheet | {"notes": ["ä"] if rng.random() < 0.5 else []}


def _summary(rng, batch_id):
    pieces = rng.choice([None, 205])
    return {"batch_id": batch_id, "name": rng.choice(["Squares, 24 mm", '=1+"2"', "ä"]), "opened_at_ms": 1.764e12,
            "pieces": pieces, "good_kg": rng.choice([None, rng.uniform(1, 2)]) if pieces else None}  # fmt: skip


SENSIBLE = {
    "learn.contribution": _contribution_request,
    "paper.events": _paper,
    "table.batches": lambda rng: {"batches": [_summary(rng, f"b{n}") for n in range(rng.randrange(5))]},
    "table.timeline": lambda rng: {"events": _bench(rng).events, "ignored": ["phone-a-2"]},
    "run.replay": _replay,
    "run.apply": _apply,
    "run.decide": _decide,
    "run.advise": lambda rng: {"run": (bench := any_bench(rng)).run, "at_ms": bench.now_ms + rng.uniform(0, 1e7)},
}  # fmt: skip
