"""In which order the batches at one bench are taken, and where a wash lies between two.

All here is common practice, no published source: free of an allergen before with it, a full wash of tools, surfaces
and hands between. It informs; the shop's own allergen plan, local codes and the makers' labels come first.
"""

from ..core import allergens as core_allergens
from ..core.problems import Problem
from .courses import KIND_OF

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..core.annotations import Document, Readable
    from ..types import BatchOrderRequest, Warning


# A bench that nobody has touched for so long was cleaned at the end of a day (common practice, no published source).
DAY_MS = 10 * 3600000.0
INSTANTS = ("since_ms", "touched_ms", "washed_ms", "answered_ms")


def order(request: "BatchOrderRequest") -> "Document":
    """In which order to take the batches of a day, and where to wash tools, surfaces and hands between two.

    Request: at_ms (ms, corrected time now), batches (each id, kind, name, contains, labels_known, under, coated, state,
    soon (a clock of it rings now or within minutes), hot (caramel or chocolate of it is hot) and the instants since_ms,
    touched_ms, washed_ms and answered_ms (ms), null for never).
    Reply: order (planned and open ones: id, allergens, after, wash), now (open ones: what to wash off if hands go to
    them as the bench stands: id, after, wash, until_ms (ms, when hands were last at those)), warnings (own_plan;
    label_unknown with names).
    Raises: Problem batch_twice (one id in two batches), still_to_come (an instant after at_ms), not_begun (touched_ms
    of a planned batch).
    Relation: those that are soon come before all others, for a clock does not wait; then what is hot, for which no wash
    is asked, for it cools meanwhile. Of each part a batch comes after
    those whose allergens are a true part of its own, and one with nuts or peanuts after all without, even where they
    lie on the bench already: the others want a wash in any order, and so no more nuts come to the bench before it.
    Among those that may come next one that takes all that is on the bench, then the fewest allergens, then the
    oldest. Wash where something on the bench is not declared. A bowl of chocolate takes what all open batches that
    may be dipped from it declare: those that hold all it holds. A wash for any batch cleans the bench; what nobody
    touched for ten hours is off it.
    Example: squares with milk, clusters with milk and pecans: squares first, no wash between; a wash if hands go back.
    Source: practice for order, wash and ten hours; memory for the allergens of what lies under, and for nuts last.
    """
    batches = _with_allergens_held(request["batches"], request["at_ms"])
    shown = [one for one in batches if one["state"] != "closed"]
    used = _left_something(batches, request["at_ms"])
    return {"order": _in_order(shown, used), "now": _wash_rows(shown, used), "warnings": _warnings(shown)}


def _with_allergens_held(asked: "Sequence[Readable]", at_ms: float) -> "list[Document]":
    """The batches that share the bench, each with what it `holds` and what it `takes` without a wash."""
    seen, held = {}, []
    for index, one in enumerate(asked):
        path = "batches[" + str(index) + "]."
        if one["id"] in seen:
            raise Problem(path + "id", "batch_twice", one["id"])
        seen[one["id"]] = True
        for name in INSTANTS:
            if one[name] is not None and one[name] > at_ms:
                raise Problem(path + name, "still_to_come", one[name], high=at_ms, unit="ms")
        if one["state"] == "planned" and one["touched_ms"] is not None:
            raise Problem(path + "touched_ms", "not_begun", one["touched_ms"])
        if KIND_OF[one["kind"]].shares_bench:
            held.append(
                dict(one, holds=core_allergens.in_label_order(one["contains"] + _allergens_of_materials(one["under"])))
            )
    for one in held:
        one["takes"] = _allowed_on_bench(one, held)
    return held


def _allergens_of_materials(materials: list[str]) -> list[str | None]:
    return [core_allergens.allergen_of(one) for one in materials]


def _allowed_on_bench(batch: "Readable", held: "Sequence[Readable]") -> list[str]:
    """What may be on the bench when a batch goes on: its own allergens, and a bowl's those of what is dipped."""
    own: list[str] = batch["holds"]
    if not KIND_OF[batch["kind"]].lends_chocolate:
        return own
    dipped = [one["holds"] for one in held if one["coated"] and one["state"] == "open"]
    dipped = [one for one in dipped if not _undeclared(own, one)]
    if not dipped:
        return own
    return core_allergens.in_label_order(own + [one for one in dipped[0] if all(one in other for other in dipped)])


def _undeclared(allergens: list[str], declared: list[str]) -> list[str]:
    return [one for one in allergens if one not in declared]


def _left_something(batches: "Sequence[Readable]", at_ms: float) -> "list[Readable]":
    """The batches that left something on the bench, longest ago first."""
    clean_ms = max([at_ms - DAY_MS] + [one["washed_ms"] for one in batches if one["washed_ms"] is not None])
    used = [one for one in batches if one["touched_ms"] is not None and one["touched_ms"] > clean_ms]
    return sorted(used, key=lambda one: (one["touched_ms"], one["id"]))


def _left_undeclared_by(batch: "Readable", used: "Sequence[Readable]") -> "list[Readable]":
    """Those of the used ones that left what this batch does not declare, since its last wash was settled."""
    since_ms = -1.0 if batch["answered_ms"] is None else batch["answered_ms"]
    others = [one for one in used if one["id"] != batch["id"] and one["touched_ms"] > since_ms]
    return [one for one in others if _undeclared(one["holds"], batch["takes"])]


def _all_allergens(batches: "Sequence[Readable]") -> list[str]:
    return core_allergens.in_label_order([allergen for one in batches for allergen in one["holds"]])


def _wash_rows(shown: "Sequence[Readable]", used: "Sequence[Readable]") -> "list[Document]":
    found = []
    for one in shown:
        if one["state"] == "open":
            after = _left_undeclared_by(one, used)
            before = [{"id": other["id"], "name": other["name"], "allergens": other["holds"]} for other in after]
            row = {"id": one["id"], "after": before, "wash": _undeclared(_all_allergens(after), one["takes"])}
            row["until_ms"] = after[-1]["touched_ms"] if after else None
            found.append(row)
    return found


def _in_order(shown: "Sequence[Readable]", used: "Sequence[Readable]") -> "list[Document]":
    """The order of the day: each time the batch that comes next, by `_rank` and by what is then on the bench."""
    rest, bench, found = list(shown), list(used), []
    while rest:
        near = [one for one in rest if one["soon"]] or [one for one in rest if one["hot"]] or rest
        free = [one for one in near if not any(_is_subset(other["holds"], one["holds"]) for other in near)]
        batch = min(free, key=lambda one: _rank(one, bench))
        rest = [one for one in rest if one["id"] != batch["id"]]
        # Who was used and who was last washed for does not tell what is to come: each is a whole batch again.
        after = [one for one in bench if one["id"] != batch["id"] and _undeclared(one["holds"], batch["takes"])]
        wash = [] if batch["hot"] else _undeclared(_all_allergens(after), batch["takes"])
        ids = [one["id"] for one in after] if wash else []
        found.append({"id": batch["id"], "allergens": batch["holds"], "after": ids, "wash": wash})
        bench = [batch] if wash else [one for one in bench if one["id"] != batch["id"]] + [batch]
    return found


def _is_subset(part: list[str], whole: list[str]) -> bool:
    return len(part) < len(whole) and not _undeclared(part, whole)


def _rank(batch: "Readable", bench: "Sequence[Readable]") -> tuple[list[str] | float | str, ...]:
    last = 1 if any(one in batch["holds"] for one in core_allergens.LAST) else 0
    washes = 1 if _undeclared(_all_allergens(bench), batch["takes"]) else 0
    begun = 0 if batch["state"] == "open" else 1
    since_ms = 0.0 if batch["since_ms"] is None else batch["since_ms"]
    return (last, washes, len(batch["holds"]), batch["holds"], begun, since_ms, batch["id"])


def _warnings(shown: "Sequence[Readable]") -> "list[Warning]":
    warnings: "list[Warning]" = [{"code": "own_plan", "values": {}}] if len(shown) > 1 else []
    unknown = [one["name"] for one in shown if not one["labels_known"]]
    return warnings + ([{"code": "label_unknown", "values": {"names": unknown}}] if unknown else [])
