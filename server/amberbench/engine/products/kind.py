"""The record by which the rest of the engine knows a kind of batch."""


def _nothing(run):
    return None


class Kind:
    """A kind of batch.

    name; function: what plans it in the catalogue (None: nothing does), `request` its fields, `mass_kg` what it would
    melt for a checked request; course: its steps in order, each with the event that ends it; without: by step, whether
    a run does without it; never_skipped: without these there is no batch; begin: what its run starts with, by the
    plan's reply; events: the bodies of its own events; folds: by event; notes: by event, what a step that is only
    marked notes besides; pages: by step; clocks: (part of the run, clocks of it); wants: the computation a run waits
    for; hot: steps that a wash waits for; shares_bench, lends_chocolate: its part in the day's order.
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
        function=None,
        request=None,
        mass_kg=None,
        without=None,
        never_skipped=("close",),
        notes=None,
        wants=_nothing,
        hot=("close", "closed"),
        shares_bench=True,
        lends_chocolate=False,
    ):
        self.name, self.course, self.begin = name, course, begin
        self.events, self.folds, self.notes = events, folds, notes or {}
        self.pages, self.clocks, self.wants = pages, clocks, wants
        self.function, self.request, self.mass_kg = function, request, mass_kg
        self.without, self.never_skipped, self.hot = without or {}, never_skipped, hot
        self.shares_bench, self.lends_chocolate = shares_bench, lends_chocolate
