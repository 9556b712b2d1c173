"""The record by which the rest of the engine knows a kind of batch."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from ..core.annotations import Document, Readable
    from ..types import Clock, Wants


def _nothing(run: "Readable") -> "Any":
    return None


def _nothing_taken(reply: "Readable") -> "Document":
    return {}


def _melt(run: "Readable") -> "Document":
    result: "Document" = run["melt"]
    return result


class Kind:
    """A kind of batch.

    What it is called and planned by:
    - name: in plans, runs and events, and of its folder
    - in_shop: whether the shop keeps products of this kind; shop_row: what only those have, below the kind's name;
      piece_kg: of such a row and a density (kg/m³), the caramel in a piece (kg; None: its size is not known)
    - functions: its functions in the catalogue, by name; described: their fields; routes: those the API answers, by
      the last word of the route
    - what: in a few words; plan_members: what its plan document says besides what every one says
    - function: the one that plans it (None: nothing does); request: its fields; mass_kg: the caramel (kg) that a
      checked request would melt

    What is done:
    - course: its steps in order, each with the event that ends it; without: by step, whether a run does without it;
      never_skipped: steps that nobody may pass over
    - begin: of a plan's reply, what its run starts with; parts: members of the run that other kinds have as null
    - events: the bodies of its own events; folds: by event; decides: by event, what is decided when it is told;
      notes: by event that only marks its step, what it notes besides
    - by_itself: events that the phone writes and nobody taps; bare_hands: events with which nothing of the batch comes
      onto the bench

    What is said:
    - pages: by step; clocks: (part of the run, its clocks)
    - pending_computation: of a run, the computation it waits for
    - hot: steps that a wash waits for; shares_bench, lends_chocolate: its part in the day's order
    - oven_melt: of a run, the melt that tells of the microwave; sheet: what its paper sheet has of its own (None: none)
    """

    def __init__(
        self,
        name: str,
        course: tuple[tuple[str, str], ...],
        begin: "Callable[..., Document]",
        events: "Document",
        folds: "dict[str, Callable[..., None]]",
        pages: "dict[str, Callable[..., None]]",
        clocks: "tuple[tuple[str, Callable[..., list[Clock]]], ...]",
        functions: "dict[str, Callable[..., Any]]",
        described: "dict[str, Document]",
        routes: "dict[str, str]",
        parts: tuple[str, ...] = (),
        what: str = "",
        plan_members: "Document | None" = None,
        function: str | None = None,
        mass_kg: "Any" = None,
        without: "dict[str, Callable[..., bool]] | None" = None,
        never_skipped: tuple[str, ...] = ("close",),
        notes: "dict[str, Callable[..., None]] | None" = None,
        taken: "Callable[[Document], Document]" = _nothing_taken,
        decides: "dict[str, Callable[..., Document]] | None" = None,
        pending_computation: "Callable[..., Wants | None]" = _nothing,
        hot: tuple[str, ...] = ("close", "closed"),
        by_itself: tuple[str, ...] = (),
        bare_hands: tuple[str, ...] = ("ready_checked",),
        oven_melt: "Callable[..., Any]" = _melt,
        sheet: "Any" = None,
        in_shop: bool = False,
        shop_row: "Document | None" = None,
        piece_kg: "Callable[[Any, float], float | None] | None" = None,
        shares_bench: bool = True,
        lends_chocolate: bool = False,
    ) -> None:
        self.name, self.course, self.begin, self.taken = name, course, begin, taken
        self.events, self.folds, self.notes, self.decides = events, folds, notes or {}, decides or {}
        self.pages, self.clocks, self.pending_computation = pages, clocks, pending_computation
        self.functions, self.described, self.routes = functions, described, routes
        self.function, self.mass_kg = function, mass_kg
        self.what, self.plan_members = what, plan_members or {}
        self.request: "Any" = None if function is None else described[function]["request"]
        self.without, self.never_skipped, self.hot = without or {}, never_skipped, hot
        self.parts, self.oven_melt = parts, oven_melt
        self.by_itself, self.bare_hands = by_itself, bare_hands
        self.sheet, self.in_shop, self.shop_row, self.piece_kg = sheet, in_shop, shop_row or {}, piece_kg
        self.shares_bench, self.lends_chocolate = shares_bench, lends_chocolate
