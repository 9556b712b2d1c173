"""A batch in a line, and what paper brings."""

from ..core.field_kinds import record
from .fields import SUMMARY

DOCUMENTS = {
    "Summary": record(
        {name: dict(SUMMARY[name], nullable=SUMMARY[name].get("default", "") is None) for name in SUMMARY},
        "a batch in a line",
    ),
}
