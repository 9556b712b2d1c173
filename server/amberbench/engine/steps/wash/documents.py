"""The wash before a batch goes on, as a run keeps it."""

from ...core.documents import instant, listed, only, words
from ...core.field_kinds import document, record
from . import fields

STATE = {
    "wanted": document("what must be washed off; null: nothing", of="WashWanted", nullable=True),
    "washed_ms": instant("when it was last washed", nullable=True),
    "answered_ms": instant("when a wash was last done, or passed over", nullable=True),
}
DOCUMENTS = {
    "WashState": record(STATE, "the wash before a batch"),
    "WashSkipped": record(
        {
            "allergens": listed(words("an allergen"), "what should have been washed off"),
            "reason": words("a code; null: an older app asked for none", nullable=True),
            "text": words("the same in words; empty: none"),
        },
        "a wash that was passed over",
    ),
    "WashWanted": record(
        only(fields.EVENTS["wash_told"], "after", "allergens", "until_ms"), "what the bench was used for before"
    ),
}
