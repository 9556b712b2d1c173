"""The plan and the run of a stand-up test."""

from ...core.documents import instant, listed, quantity
from ...core.field_kinds import document, record, text, together
from ...core.fields import INPUTS
from ..documents import HEAD, PLANNED, RUN, absent, kind
from . import fields

VERDICT = fields.FUNCTIONS["flow.stand_up_test"]["reply"]["verdict"]
ROOM = {"room_c": quantity("°C", "room temperature")}
REPLY = together(ROOM, INPUTS)
PLAN = together(kind("standup"), HEAD, {"caramel_id": text(64, "the caramel that is tried")})
DOCUMENTS = {
    "StandupPlan": record(
        together(
            PLAN,
            {
                "request": record(ROOM, "where it stands"),
                "reply": record(REPLY, "the same: nothing of it is computed beforehand"),
            },
        ),
        "the plan of a stand-up test of a caramel",
    ),
    "StandupPlanTaken": record(
        together(PLAN, {"reply": record(ROOM, "nothing else of it is needed")}),
        "what a run takes of the plan of a stand-up test",
    ),
    "StandupRun": record(
        together(
            kind("standup"),
            RUN,
            {"planned": record(PLANNED, "what was planned"), "stand": document("the test", of="StandState")},
            absent("melt", "cool", "cluster", "bowl"),
        ),
        "the state of a stand-up test",
    ),
    "StandState": record(
        {
            "heights": listed(document("a height", of="StoodHeight"), "heights of the cube, the fresh one first"),
            "lost_fraction": quantity("", "share of its first height that is lost", nullable=True),
            "verdict": dict(VERDICT, nullable=True),
        },
        "a cube that stands",
    ),
    "StoodHeight": record(
        {"at_ms": instant("when"), "height_m": quantity("m", "height of the cube then")}, "a height of the cube"
    ),
}
