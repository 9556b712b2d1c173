"""How long the steps of a batch take by hand, and a task of the day that is made of them.

Times are assumed where nobody has published any; the shop's own batches stand over them (`scheduling/tasks.py`).
"""

from ..core.check import figure

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Document

SET_UP_S = 600.0  # tools, paper, scale, weighing in (assumed)
MELT_S = 1200.0  # bursts and stirs, of a plan that does not say (assumed)
COUNT_S = 300.0  # counting, weighing what is left, washing up (assumed)
TEMPER_S = 1800.0  # melting, seeding, a strip (assumed)
EACH_S = 3.0  # cutting or parting a piece, and counting it (assumed)
WRAP_EACH_S = 10.0  # wrapping a piece (assumed)
SET_S = 1200.0  # until chocolate is hard (assumed)
# Cut pieces are dipped or wrapped the same day, before they lose their shape (common practice, no published source).
SAME_DAY_S = 8 * 3600.0
LONGEST_S = 12 * 3600.0


def rows(shop: "Any", name: str) -> "list[Any]":
    """The rows of a list of the shop; none of what is no list."""
    found = shop.get(name)
    return [one for one in found if type(one) is dict] if type(found) is list else []


def largest_bowl_m3(shop: "Any") -> float | None:
    """What the shop's largest bowl holds (m³), or None: nobody has said."""
    known = [volume for volume in [figure(one, "volume_m3") for one in rows(shop, "vessels")] if volume]
    return max(known) if known else None


def task(name: str, steps: tuple[str, ...], hands_s: float, **more: "Any") -> "Document":
    """A task: its name, the steps it is made of (the last one ends it), its time (s).

    waits: the step that ends the wait after it, with wait_s (s); uses and keeps: things; most_s (s): how long after the
    task before at most; parts: whether it may be done in several goes.
    """
    found: "Document" = {"waits": None, "wait_s": 0.0, "uses": [], "keeps": [], "most_s": None, "parts": False}
    found.update(more)
    found.update(name=name, steps=steps, hands_s=min(LONGEST_S, hands_s))
    return found


def finished(plan: "Any", pieces: float) -> "list[Document]":
    """Dipping or wrapping, and the count, after pieces were cut or parted."""
    found: "list[Document]" = []
    first: "float | None" = SAME_DAY_S
    if plan.get("finish") == "dipped" or figure(plan, "reply", "dip", "dip_all_s") is not None:
        dip_s = figure(plan, "reply", "dip", "dip_all_s") or 20.0 * pieces
        set_s = figure(plan, "request", "dip", "set_s") or SET_S
        steps = ("temper_check", "dip")
        more = {"waits": "set", "wait_s": min(LONGEST_S, set_s), "most_s": first, "parts": True}
        found.append(task("dip", steps, TEMPER_S + dip_s, **more))
        first = None
    wrap_s = WRAP_EACH_S * pieces if plan.get("finish") == "wrapped" else 0.0
    counted = ("count", "weigh_out", "close")
    found.append(
        task(
            "wrap" if wrap_s else "count",
            ("wrap",) + counted if wrap_s else counted,
            COUNT_S + wrap_s,
            most_s=first,
            parts=True,
        )
    )
    return found
