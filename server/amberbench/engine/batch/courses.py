"""The courses of a batch: for each kind its steps in order, and the event that ends each.

An event ends a step of the same name in every kind that has it. The order is common practice, no published source.
"""

STEPS = {
    "slab": (
        ("set_up", "ready_checked"),
        ("weigh", "weighed"),
        ("lot", "lot_named"),
        ("melt", "poured"),
        ("cool", "touched"),
        ("loosen", "freed"),
        ("prebottom", "prebottomed"),
        ("flip", "flipped"),
        ("score", "scored"),
        ("cut", "cut"),
        ("temper_check", "strip_tested"),
        ("dip", "dipped"),
        ("set", "set_hard"),
        ("wrap", "wrapped"),
        ("count", "counted"),
        ("weigh_out", "weighed_out"),
        ("close", "closed"),
    ),
    "cluster": (
        ("set_up", "ready_checked"),
        ("allergens", "allergens_checked"),
        ("under", "under_laid"),
        ("weigh", "weighed"),
        ("lot", "lot_named"),
        # Melting, filling and laying: the funnel is emptied when nothing is left to lay.
        ("melt", "funnel_emptied"),
        ("cool_tray", "tray_freed"),
        ("separate", "separated"),
        ("temper_check", "strip_tested"),
        ("dip", "dipped"),
        ("set", "set_hard"),
        ("count", "counted"),
        ("weigh_out", "weighed_out"),
        ("close", "closed"),
    ),
    "standup": (
        ("set_up", "ready_checked"),
        ("lot", "lot_named"),
        ("stand", "stood"),
        ("close", "closed"),
    ),
    "chocolate": (
        ("set_up", "ready_checked"),
        ("weigh", "weighed"),
        ("lot", "lot_named"),
        ("melt_bowl", "seeded"),
        ("temper_check", "strip_tested"),
        ("use", "bowl_used"),
        ("weigh_out", "weighed_out"),
        ("leftover", "leftover_named"),
        ("close", "closed"),
    ),
}
ORDER = {kind: [step for step, _ in steps] for kind, steps in STEPS.items()}
STEP_OF = {event: step for steps in STEPS.values() for step, event in steps}
# Without these there is no batch.
NEVER_SKIPPED = ("melt", "close")
DIPPING = ("temper_check", "dip", "set")


def open_step(run):
    """The first step after the furthest one done: hands may go ahead, and what they passed is passed."""
    order, furthest = ORDER[run["kind"]], -1
    for index, step in enumerate(order):
        if step in run["done"]:
            furthest = index
    melt = run["melt"]
    if melt is not None and melt["last_at_ms"] is not None:
        furthest = max(furthest, order.index("melt") - 1)
    for step in order[furthest + 1 :]:
        if not _left_out(run, step):
            return step
    return "closed"


def _left_out(run, step):
    """Whether this batch does without a step of its course."""
    if step in DIPPING and run["kind"] != "chocolate":
        return run.get("dip") is None
    if step == "wrap":
        return not run.get("wrap")
    if step == "cool_tray":
        return not run["cluster"]["laid"]
    if step == "leftover":
        return not any(one["kg"] > 0.0 for one in run["out"])
    return (step == "prebottom" and not run["prebottom"]) or (step == "lot" and bool(run["lot"]))
