"""What is decided when a bowl is read: how fast it cools, by its readings, and how long it stays in its range."""

from . import plan

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable


def chocolate_kg(run: "Readable") -> float:
    """What was melted and seeded into the bowl, in kg."""
    melted_kg: float = run["planned"]["caramel_kg"] if run["weighed_kg"] is None else run["weighed_kg"]
    seeded_kg: float = sum(one["kg"] for one in run["bowl"]["seeds"])
    return melted_kg + seeded_kg


def _read(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    """A bowl left alone between two readings in use has shown how fast it cools."""
    state, read_c = run["bowl"], body["bowl_c"]
    request, line = dict(state["request"], mass_kg=chocolate_kg(run)), state["line"]
    faster, faster_sd = state["faster"], state["faster_sd"]
    if faster_sd is None:
        faster_sd = plan.first_faster_sd(state["request"])
    proven_ms = run["done"].get("temper_check")
    if proven_ms is not None and state["read_c"] is not None and state["read_ms"] >= proven_ms:
        took_s = (at_ms - state["read_ms"]) / 1000.0
        faster, faster_sd = plan.learn_cooling(request, state["read_c"], read_c, took_s, faster, faster_sd)
    hold = None
    if line["work_low_c"] <= read_c <= line["work_high_c"]:
        hold = plan.working_time(request, read_c, faster, faster_sd)
    return {"faster": faster, "faster_sd": faster_sd, "hold": hold}


DECIDES = {"bowl_read": _read}
