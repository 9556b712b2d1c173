"""The wash before a batch goes on, as a run keeps it."""

from ...core.describe import document, record
from ...core.documents import instant, only
from . import fields

STATE = {
    "wanted": document("what must be washed off; null: nothing", of="WashWanted", nullable=True),
    "washed_ms": instant("when it was last washed", nullable=True),
    "answered_ms": instant("when a wash was last done, or passed over", nullable=True),
}
DOCUMENTS = {
    "WashState": record(STATE, "the wash before a batch"),
    "WashWanted": record(
        only(fields.EVENTS["wash_told"], "after", "allergens", "until_ms"), "what the bench was used for before"
    ),
}
