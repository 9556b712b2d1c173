"""What plans made of other plans share: renaming the fields of problems, requests of parts, blocks to open."""

import math

from ..core import check
from ..core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from ..core.annotations import Document, Readable


def call_renamed(
    function: "Callable[..., Any]",
    request: "Any",
    names: "Readable",
) -> "Document":
    """Calls a function; a Problem it raises names the fields of the whole plan."""
    try:
        result: "Document" = function(request)
        return result
    except Problem as problem:
        raise Problem(
            names.get(problem.field, problem.field),
            problem.code,
            problem.given,
            problem.low,
            problem.high,
            problem.unit,
            problem.accepted,
        ) from None


def blocks(caramel_kg: float, block_kg: float | None, have_kg: float | None, old_kg: float = 0.0) -> tuple[int, float]:
    """(blocks to open, kg left of the last one); without a block weight what stays of the caramel in hand.

    old_kg: what of the caramel is none of a block.
    """
    if block_kg is None:
        return 0, max(0.0, have_kg - caramel_kg) if have_kg is not None else 0.0
    fresh_kg = caramel_kg - old_kg
    # A milligram of grace: two blocks' weight are two blocks.
    number = max(0, math.ceil((fresh_kg - 1e-6) / block_kg))
    return number, max(0.0, number * block_kg - fresh_kg)


def checked_part(known: "Readable", wanted: "Readable", request: "Readable", names: "Readable") -> "Any":
    """The wanted fields checked, with the basis that each has in the whole plan's own request."""
    said = request["basis"] or {}
    basis = {}
    for name in wanted:
        theirs = names.get(name, name)
        for path in said:
            if path == theirs or path.startswith(theirs + "."):
                basis[name + path[len(theirs) :]] = said[path]
    whole = call_renamed(lambda one: check.checked(known, one), wanted, names)
    whole["basis"] = basis or None
    return whole
