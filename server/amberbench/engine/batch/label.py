"""What a batch says on labels and lists: what it contains, what may be in it, its lots, why it was thrown away."""

from ..core.allergens import allergen_of, in_label_order

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..core.annotations import Document, Readable


def of_plan(plan: "Readable", under: "Sequence[Readable]") -> "Document":
    """What a batch contains by its plan: the labels of what it is made of, and what lies under its caramel.

    labels_known: whether somebody copied all of these labels, and all that lies under has a name.
    """
    said = plan.get("contains")
    beneath = [allergen_of(one["material"]) or one["allergen"] for one in under]
    named = all(one["material"] is not None for one in under)
    contains = in_label_order((said if type(said) is list else []) + beneath)
    return {"contains": contains, "labels_known": plan.get("labels_known") is True and named}


def of_run(run: "Readable") -> "Document":
    """The same of a run, for a line of the list of batches and its table."""
    cluster = run.get("cluster") or {}
    thrown = run.get("thrown_away")
    return {
        "lot": run["lot"],
        "contains": run.get("contains", []),
        "labels_known": run.get("labels_known", False),
        "may_contain": run.get("may_contain", []),
        "uses": run.get("uses", []),
        "under_lots": [one for one in cluster.get("under_lots", []) if one["lot"]],
        "thrown_away": None if thrown is None else thrown["reason"],
    }
