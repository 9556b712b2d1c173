"""The plan and the run of clusters."""

from ...core.documents import count, instant, listed, optional, quantity, without, words
from ...core.field_kinds import boolean, choice, document, record, together
from ...steps.deposit import documents as deposit
from ..documents import HEAD, PLANNED, RUN, absent, kind
from . import fields

REPLY = fields.CLUSTER_REPLY
PLAN = together(
    kind("cluster"),
    HEAD,
    {"finish": choice(("plain", "dipped"), "what becomes of the clusters", optional=True)},
)
# An older version had none of these.
LATER = ("sizes", "by_tray", "second_kg", "safe_s", "dip", "bed", "room", "warnings", "remelt")
TAKEN = without(REPLY, "positions_m", "melt", "inputs", "good", "batches", "together", "sizes_unknown")
STATE = together(
    deposit.STATE,
    {
        "tray_s": REPLY["tray_s"],
        "trays": REPLY["trays"],
        "per_tray": REPLY["per_tray"],
        "sizes": listed(document("clusters of one size", of="ClusterSize"), "clusters of each size, in laying order"),
        "second_kg": quantity("kg", "one second deposit"),
        "given": quantity("", "share of the caramel that is laid"),
        "second": REPLY["second"],
        "free": REPLY["free"],
        "chill": dict(REPLY["chill"], optional=True),
        "laid": listed(document("a tray", of="LaidTray"), "trays, in laying order"),
        "all_laid": boolean("whether no further tray is laid"),
        "tests": listed(document("a test", of="TackTest"), "touches before a second deposit, in order"),
        "tack": quantity("", "how much later than planned the caramel turns tacky"),
        "tries": listed(document("a try", of="FreeTest"), "tries to free a tray, in order"),
        "free_again_ms": instant("when the next tray is tried again", nullable=True),
        "under_lots": listed(
            document("a lot", of="UnderLot"), "lots of what lies under, in the order of the plan", optional=True
        ),
    },
)
UNDER = {
    "material": words("its name; null: only its make-up is known", nullable=True),
    "each_n": count("how many lie under each; null: a bed", nullable=True),
    "allergen": words("its allergen; null: none known", nullable=True),
}
PLANNED_CLUSTERS = together(
    PLANNED,
    {
        "per_tray": REPLY["per_tray"],
        "trays": REPLY["trays"],
        "under_kg": quantity("kg", "what goes under all of them"),
        "bed": boolean("whether that is a bed"),
        "bed_kg": dict(REPLY["bed"], optional=True),
        "under": listed(document("one kind", of="LiesUnder"), "what lies under", optional=True),
    },
)
DOCUMENTS = {
    "ClusterPlan": record(
        together(
            PLAN,
            {
                "request": record(fields.CLUSTER_REQUEST, "the request to cluster.plan", asked=True),
                "reply": record(REPLY, "the reply of cluster.plan"),
            },
        ),
        "the plan of clusters",
    ),
    "ClusterPlanTaken": record(
        together(PLAN, {"reply": record(optional(TAKEN, *LATER), "of the reply of cluster.plan")}),
        "what a run takes of the plan of clusters",
    ),
    "ClusterRun": record(
        together(
            kind("cluster"),
            RUN,
            {
                "planned": record(PLANNED_CLUSTERS, "what was planned"),
                "melt": document("the melt", of="MeltState"),
                "cluster": document("the trays and the funnel", of="ClusterState"),
            },
            absent("cool", "bowl", "stand"),
        ),
        "the state of a batch of clusters",
    ),
    "ClusterState": record(STATE, "the trays and the funnel of a batch"),
    "LiesUnder": record(UNDER, "what lies under a cluster"),
    "UnderLot": record(
        {
            "material": words("what lies under; null: it has no name", nullable=True),
            "lot": words("its lot; null: none is known", nullable=True),
        },
        "the lot of what lies under",
    ),
    "TackTest": record(
        {"at_s": quantity("s", "time after laying was begun"), "tacky": boolean("whether it was tacky")},
        "a touch before a second deposit",
    ),
    "FreeTest": record(
        {"at_ms": instant("when"), "free": boolean("whether its clusters came off the paper")}, "a try to free a tray"
    ),
}
