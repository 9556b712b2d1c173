"""Old caramel in a batch: trim and leftovers melted again beside fresh caramel, and how often they were before."""

from ..core.field_kinds import integer, number, record
from ..core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document, Readable


# Up to a quarter of a batch, and once (common practice, no published source; the maker's label stands over it).
USUAL_SHARE = 0.25
USUAL_TIMES = 1
REQUEST = {
    "old": record(
        {
            "kg": number("kg", 0, 50, "its weight, for all batches of the plan; null: by its share", default=None),
            "share": number("", 0, 1, "its share of the caramel weighed in; null: by its weight", default=None),
            "remelts": integer(0, 10, "times it was melted again already; trim of fresh caramel: 0", default=0),
        },
        "trim and leftovers to melt again; null: none",
        default=None,
    ),
    "remelts_allowed": integer(
        0, 10, "times that the caramel's label allows it to be melted again; null: not known", default=None
    ),
}
REMELT = record(
    {
        "old_kg": number("kg", 0, 50, "old caramel to weigh in"),
        "fresh_kg": number("kg", 0, 50, "fresh caramel to weigh in beside it"),
        "n": integer(0, 11, "times that the oldest of it will have been melted again after this batch"),
        "allowed_n": integer(0, 10, "times that its label allows; null: not known", default=None),
    },
    "old caramel in it, and how often what is left over has been melted again",
)


def share_out(request: "Readable", together: "Readable", batches: "list[Document]") -> None:
    """Gives each of several batches the same share of the old caramel in hand, in what each is asked with."""
    old = request["old"]
    if old is not None and old["kg"] is not None and together["batches"] > 1:
        old = dict(old, kg=None, share=min(1.0, old["kg"] / together["caramel_kg"]))
    for one in batches:
        one["asked"]["old"] = old


def reckoned(request: "Readable", caramel_kg: float) -> "tuple[Document, list[Document]]":
    """(what goes in of old and of fresh caramel, what to mind) in a batch of so much caramel (kg)."""
    old, allowed = request["old"], request["remelts_allowed"]
    if old is None:
        return {"old_kg": 0.0, "fresh_kg": caramel_kg, "n": 0, "allowed_n": allowed}, []
    if (old["kg"] is None) == (old["share"] is None):
        raise Problem("old", "give_one_of", accepted=["kg", "share"])
    old_kg = min(caramel_kg, old["kg"] if old["kg"] is not None else old["share"] * caramel_kg)
    found = {"old_kg": old_kg, "fresh_kg": caramel_kg - old_kg, "n": 0, "allowed_n": allowed}
    if old_kg == 0.0:
        return found, []
    found["n"] = old["remelts"] + 1
    return found, _warnings(found, old_kg / caramel_kg)


def _warnings(found: "Readable", share: float) -> "list[Document]":
    times, allowed, values = found["n"], found["allowed_n"], {"n": found["n"], "allowed_n": found["allowed_n"]}
    warnings = [{"code": "old_is_clean", "values": {}}]
    if allowed is not None and times > allowed:
        warnings.append({"code": "remelted_too_often", "values": values})
    elif allowed is None:
        code = "remelts_unknown" if times <= USUAL_TIMES else "remelted_often"
        warnings.append({"code": code, "values": {"n": times}})
    if share > USUAL_SHARE + 1e-9:
        warnings.append({"code": "much_old_caramel", "values": {"share": share, "usual_share": USUAL_SHARE}})
    return warnings
