"""Clusters: caramel from a funnel on nuts or pretzels, tray by tray."""

from ...core.field_kinds import together
from ...steps.common import fields as common_fields
from ...steps.common import fold as common_fold
from ...steps.common import prompts as common_prompts
from ...steps.deposit import decisions as deposit_decisions
from ...steps.deposit import fields as deposit_fields
from ...steps.deposit import fold as deposit_fold
from ...steps.dip import fields as dip_fields
from ...steps.dip import fold as dip_fold
from ...steps.dip import prompts as dip_prompts
from ...steps.jacket import decisions as jacket_decisions
from ...steps.jacket import fields as jacket_fields
from ...steps.jacket import fold as jacket_fold
from ...steps.melt import decisions as melt_decisions
from ...steps.melt import fields as melt_fields
from ...steps.melt import fold as melt_fold
from ...steps.melt import prompts as melt_prompts
from ...steps.temper import fields as temper_fields
from ...steps.temper import fold as temper_fold
from ..kind import Kind
from . import batches, calibration, clocks, decisions, fields, fold, job, plan, prompts, sheet, shop_row

KIND = Kind(
    name="cluster",
    functions={"cluster.plan": plan.plan, "cluster.learn": calibration.learn},
    described=fields.FUNCTIONS,
    routes={"clusters": "cluster.plan"},
    function="cluster.plan",
    mass_kg=lambda request: job.ClusterJob(batches.split(request)[0][1]).caramel_kg,
    course=(
        ("set_up", "ready_checked"),
        ("allergens", "allergens_checked"),
        ("under_lot", "under_lot_named"),
        ("under", "under_laid"),
        ("weigh", "weighed"),
        ("lot", "lot_named"),
        # Melting, filling and laying: the funnel is emptied when nothing is left to lay.
        ("melt", "funnel_emptied"),
        ("cool_tray", "tray_freed"),
        ("separate", "separated"),
        ("temper_check", "strip_tested"),
        ("dip", "dipped"),
        ("set", "set_hard"),
        ("count", "counted"),
        ("weigh_out", "weighed_out"),
        ("close", "closed"),
    ),
    without={
        "under_lot": fold.under_lots_are_named,
        "lot": common_fold.lot_is_known,
        "cool_tray": lambda run: not run["cluster"]["laid"],
        "temper_check": dip_fold.is_plain,
        "dip": dip_fold.is_plain,
        "set": dip_fold.is_plain,
    },
    never_skipped=("melt", "close"),
    taken=fields.taken,
    begin=fold.begin,
    parts=("melt", "cluster"),
    oven_melt=fold.oven_melt,
    bare_hands=("ready_checked", "allergens_checked", "under_lot_named"),
    sheet=sheet,
    in_shop=True,
    shop_row=shop_row.SHOP_ROW,
    piece_kg=shop_row.piece_kg,
    events=together(
        common_fields.EVENTS,
        melt_fields.EVENTS,
        jacket_fields.EVENTS,
        deposit_fields.EVENTS,
        temper_fields.EVENTS,
        dip_fields.EVENTS,
        fields.EVENTS,
    ),
    folds=together(
        common_fold.FOLDS,
        melt_fold.FOLDS,
        jacket_fold.FOLDS,
        deposit_fold.FOLDS,
        temper_fold.FOLDS,
        dip_fold.FOLDS,
        fold.FOLDS,
    ),
    notes=common_fold.NOTES,
    decides=together(melt_decisions.DECIDES, jacket_decisions.DECIDES, deposit_decisions.DECIDES, decisions.DECIDES),
    pages=together(common_prompts.PAGES, dip_prompts.PAGES, prompts.PAGES),
    clocks=(
        ("melt", melt_prompts.melt_clocks),
        ("cluster", clocks.cluster_clocks),
        ("dip", dip_prompts.dip_clocks),
    ),
    hot=("melt", "close", "closed"),
)
