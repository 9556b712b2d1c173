"""The record by which the rest of the engine knows a kind of batch."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from ..core.annotations import Document


def _nothing(run: "Document") -> "Any":
    return None


def _melt(run: "Document") -> "Document":
    result: "Document" = run["melt"]
    return result


class Kind:
    """A kind of batch.

    name; function: what plans it in the catalogue (None: nothing does), `request` its fields, `mass_kg` what it
    would melt for a checked request; course: its steps in order, each with the event that ends it; without: by
    step, whether a run does without it; never_skipped: without these there is no batch; begin: what its run starts
    with, by the plan's reply; parts: the members of the run that are null in batches of other kinds; events: the
    bodies of its own events; by_itself: those that the phone writes and nobody taps; bare_hands: those with which
    nothing of the batch comes onto the bench; folds: by event; decides: by event, what is decided when it is told;
    notes: by event, what a step that is only marked notes besides; pages: by step; clocks: (part of the run, clocks
    of it); wants: the computation a run waits for; hot: steps that a wash waits for; oven_melt: of a run, the melt
    that tells of the microwave; sheet: what its batch sheet on paper has of its own (None: it has no sheet);
    in_shop: whether the shop keeps products of this kind; shares_bench, lends_chocolate: its part in the day's
    order.
    """

    def __init__(
        self,
        name: "Any",
        course: tuple[tuple[str, str], ...],
        begin: "Callable[[Document], Document]",
        events: "Document",
        folds: "dict[str, Callable[..., None]]",
        pages: "dict[str, Callable[..., Document]]",
        clocks: "tuple[tuple[str, Callable[[Document, str], list[Document]]], ...]",
        parts: tuple[str, ...] = (),
        function: str | None = None,
        request: "Any" = None,
        mass_kg: "Any" = None,
        without: "dict[str, Callable[[Document], bool]] | None" = None,
        never_skipped: tuple[str, ...] = ("close",),
        notes: "dict[str, Callable[[Document, Document], None]] | None" = None,
        decides: "dict[str, Callable[..., Document]] | None" = None,
        pending_computation: "Callable[[Document], Document | None]" = _nothing,
        hot: tuple[str, ...] = ("close", "closed"),
        by_itself: tuple[str, ...] = (),
        bare_hands: tuple[str, ...] = ("ready_checked",),
        oven_melt: "Callable[[Document], Document]" = _melt,
        sheet: "Any" = None,
        in_shop: bool = False,
        shares_bench: bool = True,
        lends_chocolate: bool = False,
    ) -> None:
        self.name, self.course, self.begin = name, course, begin
        self.events, self.folds, self.notes, self.decides = events, folds, notes or {}, decides or {}
        self.pages, self.clocks, self.pending_computation = pages, clocks, pending_computation
        self.function, self.request, self.mass_kg = function, request, mass_kg
        self.without, self.never_skipped, self.hot = without or {}, never_skipped, hot
        self.parts, self.oven_melt = parts, oven_melt
        self.by_itself, self.bare_hands = by_itself, bare_hands
        self.sheet, self.in_shop = sheet, in_shop
        self.shares_bench, self.lends_chocolate = shares_bench, lends_chocolate
