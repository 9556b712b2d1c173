"""A stand-up test: a cube of caramel that stands for three days."""

from ...core.field_kinds import together
from ...steps.common import fields as common_fields
from ...steps.common import fold as common_fold
from ..kind import Kind
from . import decisions, fields, fold, plan, prompts

KIND = Kind(
    name="standup",
    functions={"flow.stand_up_test": plan.stand_up_test},
    described=fields.FUNCTIONS,
    routes={"standup": "flow.stand_up_test"},
    course=(
        ("set_up", "ready_checked"),
        ("lot", "lot_named"),
        ("stand", "stood"),
        ("close", "closed"),
    ),
    without={"lot": common_fold.lot_is_known},
    begin=fold.begin,
    events=together(common_fields.EVENTS, fields.EVENTS),
    folds=together(common_fold.FOLDS, fold.FOLDS),
    decides=decisions.DECIDES,
    pages=prompts.PAGES,
    clocks=(("stand", prompts.stand_clocks),),
    shares_bench=False,
)
