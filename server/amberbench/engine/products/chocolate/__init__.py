"""A bowl of tempered chocolate."""

from ...core.field_kinds import together
from ...steps.common import fields as common_fields
from ...steps.common import fold as common_fold
from ...steps.temper import fields as temper_fields
from ...steps.temper import fold as temper_fold
from ..kind import Kind
from . import decisions, fields, fold, plan, prompts

KIND = Kind(
    name="chocolate",
    functions={"chocolate.plan": plan.plan},
    described=fields.FUNCTIONS,
    routes={"bowl": "chocolate.plan"},
    function="chocolate.plan",
    course=(
        ("set_up", "ready_checked"),
        ("weigh", "weighed"),
        ("lot", "lot_named"),
        ("melt_bowl", "seeded"),
        ("temper_check", "strip_tested"),
        ("use", "bowl_used"),
        ("weigh_out", "weighed_out"),
        ("leftover", "leftover_named"),
        ("close", "closed"),
    ),
    without={
        "lot": common_fold.lot_is_known,
        "leftover": lambda run: not any(one["kg"] > 0.0 for one in run["out"]),
    },
    taken=fields.taken,
    begin=fold.begin,
    parts=("bowl",),
    events=together(common_fields.EVENTS, temper_fields.EVENTS, fields.EVENTS),
    folds=together(common_fold.FOLDS, temper_fold.FOLDS, fold.FOLDS),
    notes=common_fold.NOTES,
    decides=decisions.DECIDES,
    pages=prompts.PAGES,
    clocks=(("bowl", prompts.bowl_clocks),),
    hot=("melt_bowl", "close", "closed"),
    lends_chocolate=True,
)
