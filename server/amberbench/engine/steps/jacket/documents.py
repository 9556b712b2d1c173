"""The melt in a water jacket as a run keeps it."""

from ...core.documents import instant, listed, quantity
from ...core.field_kinds import boolean, document, record

STATE = {
    "seconds_s": quantity("s", "expected until it is in the window"),
    "low_s": quantity("s", "10 % point"),
    "high_s": quantity("s", "90 % point"),
    "started_ms": instant("when the block went in", nullable=True),
    "set_ms": instant("since when the clock of the next look runs", nullable=True),
    "due_ms": instant("when it is looked at next", nullable=True),
    "slower": quantity("", "how much longer than planned it takes, by the looks so far"),
    "looks": listed(document("a look", of="JacketLook"), "looks, in order"),
    "topped_ms": instant("when hot water was last added", nullable=True),
    "read_ms": instant("when it was last read", nullable=True),
}
LOOK = {
    "at_s": quantity("s", "time since the block went in"),
    "free": boolean("whether it stirred freely"),
}
DOCUMENTS = {
    "JacketState": record(STATE, "the melt in a water jacket"),
    "JacketLook": record(LOOK, "a look at a block in its jacket"),
}
