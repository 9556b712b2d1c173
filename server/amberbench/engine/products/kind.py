"""The record by which the rest of the engine knows a kind of batch."""


def _nothing(run):
    return None


def _melt(run):
    return run["melt"]


class Kind:
    """A kind of batch.

    name; function: what plans it in the catalogue (None: nothing does), `request` its fields, `mass_kg` what it would
    melt for a checked request; course: its steps in order, each with the event that ends it; without: by step,
    whether a run does without it; never_skipped: without these there is no batch; begin: what its run starts with, by
    the plan's reply; parts: the members of the run that are null in batches of other kinds; events: the bodies of its
    own events; by_itself: those that the phone writes and nobody taps; bare_hands: those with which nothing of the
    batch comes onto the bench; folds: by event; notes: by event, what a step that is only marked notes besides;
    pages: by step; clocks: (part of the run, clocks of it); wants: the computation a run waits for; hot: steps that a
    wash waits for; oven_melt: of a run, the melt that tells of the microwave; sheet: what its batch sheet on paper
    has of its own (None: it has no sheet); in_shop: whether the shop keeps products of this kind; shares_bench,
    lends_chocolate: its part in the day's order.
    """

    def __init__(
        self,
        name,
        course,
        begin,
        events,
        folds,
        pages,
        clocks,
        parts=(),
        function=None,
        request=None,
        mass_kg=None,
        without=None,
        never_skipped=("close",),
        notes=None,
        wants=_nothing,
        hot=("close", "closed"),
        by_itself=(),
        bare_hands=("ready_checked",),
        oven_melt=_melt,
        sheet=None,
        in_shop=False,
        shares_bench=True,
        lends_chocolate=False,
    ):
        self.name, self.course, self.begin = name, course, begin
        self.events, self.folds, self.notes = events, folds, notes or {}
        self.pages, self.clocks, self.wants = pages, clocks, wants
        self.function, self.request, self.mass_kg = function, request, mass_kg
        self.without, self.never_skipped, self.hot = without or {}, never_skipped, hot
        self.parts, self.oven_melt = parts, oven_melt
        self.by_itself, self.bare_hands = by_itself, bare_hands
        self.sheet, self.in_shop = sheet, in_shop
        self.shares_bench, self.lends_chocolate = shares_bench, lends_chocolate
