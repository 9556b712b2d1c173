"""A slab of caramels between bars, cut by a map."""

from ...core.field_kinds import together
from ...steps.common import fields as common_fields
from ...steps.common import fold as common_fold
from ...steps.common import prompts as common_prompts
from ...steps.cool import decisions as cool_decisions
from ...steps.cool import fields as cool_fields
from ...steps.cool import fold as cool_fold
from ...steps.cool import prompts as cool_prompts
from ...steps.dip import fields as dip_fields
from ...steps.dip import fold as dip_fold
from ...steps.dip import prompts as dip_prompts
from ...steps.jacket import decisions as jacket_decisions
from ...steps.jacket import fields as jacket_fields
from ...steps.jacket import fold as jacket_fold
from ...steps.jacket import prompts as jacket_prompts
from ...steps.melt import decisions as melt_decisions
from ...steps.melt import fields as melt_fields
from ...steps.melt import fold as melt_fold
from ...steps.melt import prompts as melt_prompts
from ...steps.pour import prompts as pour_prompts
from ...steps.temper import fields as temper_fields
from ...steps.temper import fold as temper_fold
from ...steps.wrap import fields as wrap_fields
from ..kind import Kind
from ..poured import fields as poured_fields
from ..poured import fold as poured_fold
from ..poured import sheet as poured_sheet
from . import fields, plan, prompts

KIND = Kind(
    name="slab",
    functions={"slab.plan": plan.plan},
    described=fields.FUNCTIONS,
    routes={"slab": "slab.plan"},
    function="slab.plan",
    mass_kg=plan.caramel_kg,
    what="a slab of caramels",
    plan_members=fields.PLAN,
    course=(
        ("set_up", "ready_checked"),
        ("weigh", "weighed"),
        ("lot", "lot_named"),
        ("melt", "poured"),
        ("cool", "touched"),
        ("loosen", "freed"),
        ("prebottom", "prebottomed"),
        ("flip", "flipped"),
        ("score", "scored"),
        ("cut", "cut"),
        ("temper_check", "strip_tested"),
        ("dip", "dipped"),
        ("set", "set_hard"),
        ("wrap", "wrapped"),
        ("count", "counted"),
        ("weigh_out", "weighed_out"),
        ("close", "closed"),
    ),
    without={
        "lot": common_fold.lot_is_known,
        "prebottom": lambda run: not run["prebottom"],
        "temper_check": dip_fold.is_plain,
        "dip": dip_fold.is_plain,
        "set": dip_fold.is_plain,
        "wrap": lambda run: not run.get("wrap"),
    },
    never_skipped=("melt", "close"),
    taken=poured_fields.taken,
    begin=poured_fold.begin,
    parts=("melt", "cool"),
    by_itself=("cooling_refitted",),
    sheet=poured_sheet,
    in_shop=True,
    piece_kg=plan.piece_kg,
    events=together(
        common_fields.EVENTS,
        melt_fields.EVENTS,
        jacket_fields.EVENTS,
        cool_fields.EVENTS,
        temper_fields.EVENTS,
        dip_fields.EVENTS,
        wrap_fields.EVENTS,
        poured_fields.EVENTS,
        fields.EVENTS,
    ),
    folds=together(
        common_fold.FOLDS,
        melt_fold.FOLDS,
        jacket_fold.FOLDS,
        cool_fold.FOLDS,
        temper_fold.FOLDS,
        dip_fold.FOLDS,
    ),
    notes=common_fold.NOTES,
    decides=together(melt_decisions.DECIDES, jacket_decisions.DECIDES, cool_decisions.DECIDES),
    pages=together(common_prompts.PAGES, dip_prompts.PAGES, prompts.PAGES),
    clocks=(
        ("melt", melt_prompts.melt_clocks),
        ("melt", jacket_prompts.jacket_clocks),
        ("cool", pour_prompts.cooling_clocks),
        ("cool", prompts.flip_clocks),
        ("dip", dip_prompts.dip_clocks),
    ),
    pending_computation=cool_prompts.pending_refit,
    hot=("melt", "close", "closed"),
)
