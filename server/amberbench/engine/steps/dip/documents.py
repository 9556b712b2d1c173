"""Dipping as a run keeps it."""

from ...core.documents import count, instant, listed, only
from ...core.field_kinds import boolean, document, many, record, together
from . import fields

STATE = together(
    {
        name: dict(field, nullable=name != "method")
        for name, field in only(
            fields.DIP_REPLY["fields"], "method", "dip_s", "salt", "salt_each_kg", "top_mark"
        ).items()
    },
    {
        "every": count("pieces to dip before the first of them is marked or salted"),
        "started_ms": instant("when it was started", nullable=True),
        "bowls": many(
            record(fields.BOWL, "a bowl"), 0, 20, "bowls of chocolate in use then; an older run has none", optional=True
        ),
        "salted": count("how many times it was marked or salted"),
        "salted_ms": instant("when last", nullable=True),
        "strips": listed(document("a strip", of="Strip"), "strip tests, in order"),
        "streaky": boolean("whether the last strip did not set well"),
    },
)
DOCUMENTS = {"DipState": record(STATE, "the dipping of a batch")}
