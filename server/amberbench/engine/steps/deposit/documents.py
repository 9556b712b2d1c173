"""The fill of a funnel and the trays that are laid from it, as a run keeps them."""

from ...core.documents import count, instant, listed, quantity
from ...core.field_kinds import choice, document, number, record
from . import fields

FILL_STATE = {
    "at_ms": instant("when it was last told of"),
    "filled_ms": instant("when the funnel was filled"),
    "seen_ms": instant("when it was filled or read"),
    "kg": quantity("kg", "what is in the funnel"),
    "now_c": quantity("°C", "how warm it is, as believed"),
    "sure_c": quantity("°C", "the same, on the safe side"),
    "sd_k": quantity("K", "standard deviation of now_c"),
    "filled_c": quantity("°C", "how warm it was when filled", optional=True),
    "lost_k": quantity("K", "what it has lost since", optional=True),
    "thick_ms": instant("when it leaves its window, on the safe side"),
    "likely_ms": instant("the same, with less on the safe side"),
    "due_ms": instant("when it has to be seen to"),
    "why": choice(("thick", "low", "anew"), "why then"),
}
LAID = {
    "began_ms": instant("when it was begun"),
    "laid_ms": instant("when it was laid"),
    "second_ms": instant("when it had its second deposit", nullable=True),
    "freed_ms": instant("when it came off its paper", nullable=True),
}
SIZE = {
    "clusters": count("clusters of this size"),
    "deposit_kg": quantity("kg", "one first deposit"),
    "spread_m": quantity("m", "across it once it lies", optional=True),
}
STATE = {
    "full_kg": quantity("kg", "one fill of the funnel"),
    "most_fill_kg": quantity("kg", "what the funnel takes where that is all there is", optional=True),
    "fresh_s": quantity("s", "how long a fresh fill stays warm enough, on the safe side"),
    "fill": document("what is in the funnel; null: nothing", of="FillState", nullable=True),
    "fills": count("fills so far"),
    "filled_ms": instant("when it was filled first", nullable=True),
    "bowl_kg": quantity("kg", "what is in the bowl", nullable=True),
    "base_kg": quantity("kg", "what bowl and funnel held when this turn began", nullable=True),
    "begun_ms": instant("when this turn began", nullable=True),
    "under_way": choice(("lay", "second"), "what was begun and is not done", nullable=True),
    "melted": document("the melt before the first fill", of="Melted", nullable=True),
    "readings": listed(document("a reading", of="FunnelReading"), "readings of the funnel, in order"),
    "request": document("what the bench reckons a fill with", of="FillRequest"),
}
DOCUMENTS = {
    "FillState": record(FILL_STATE, "what is in the funnel"),
    "FillRequest": record(fields.FILL, "a request to deposit.fill without what is read and weighed at the bench"),
    "LaidTray": record(LAID, "a tray that was laid"),
    "ClusterSize": record(SIZE, "clusters of one size"),
    "Melted": record(
        {
            "request": document("what the bench reckoned with", of="MeltRequest"),
            "history": listed(document("one happening", of="Happening"), "what happened, in order"),
        },
        "the melt of all that was weighed in, before fills were taken from the bowl",
    ),
    "FunnelReading": record(
        {"at_ms": instant("when"), "surface_c": number("°C", 0, 150, "infrared reading into the funnel")},
        "a reading of the funnel",
    ),
}
