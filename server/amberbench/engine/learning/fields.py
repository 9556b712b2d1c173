"""The fields of learning: what a closed batch contributes, what many of them say, and how a plan takes that in."""

from ..core.field_kinds import boolean, choice, document, integer, many, number, record, text
from ..products import KINDS

# Plans that take in what was measured.
KIND_BY_FUNCTION = {kind.function: kind for kind in KINDS if kind.function is not None and kind.mass_kg is not None}
ID = text(80, "its id in the shop document")
OVEN_SEEN = record(
    {
        "mass_kg": number("kg", 0.05, 10, "caramel in the bowl"),
        "rated_w": number("W", 200, 3500, "power on the rating plate", default=None),
        "power_w": number("W", 20, 3500, "power that this mass took up, by this batch alone"),
        "power_sd": number("", 0.001, 2, "standard deviation of its logarithm"),
        "unevenness": number(
            "", -10, 20, "hottest rise over mean rise, by this batch alone; null: not read", default=None
        ),
        "unevenness_sd": number("", 0.001, 5, "its standard deviation", default=None),
    },
    "what the melt says of the oven",
    default=None,
)
BASE_SEEN = record(
    {
        "loss_factor": number("", 0.05, 20, "heat loss over that of the model, by this batch alone"),
        "loss_factor_sd": number("", 0.001, 5, "standard deviation of its logarithm"),
        "spread_sd": number("", 0, 5, "what start, room and contact are assumed to add, in ln(loss factor)"),
    },
    "what the cooling says of the base",
    default=None,
)
PIECES_SEEN = record(
    {
        "planned": integer(1, 1000000, "centres planned"),
        "counted": integer(0, 1000000, "good centres counted"),
    },
    "what was counted",
    default=None,
)
READY_SEEN = record(
    {
        "core_c": number("°C", 10, 60, "hottest point when firm enough, by the model at a loss factor of 1"),
        "per_log_k": number("K", -100, 100, "by how much that moves with the logarithm of the loss factor"),
        "core_sd_k": number("K", 0.1, 20, "its standard deviation"),
    },
    "what the touches say of the temperature it is cut at",
    default=None,
)
SHARE = {"trim": "trim weighed, over the caramel weighed in", "residue": "left in the bowl, over the same"}
COMPARED = record(
    {
        "name": text(40, "power_w, jacket_s, ready_s, pieces or caramel_kg; the end says the unit"),
        "planned": number("", 0, 1e8, "as planned"),
        "low": number("", 0, 1e8, "10 % point of the plan; null: none", default=None),
        "high": number("", 0, 1e8, "90 % point of the plan; null: none", default=None),
        "happened": number("", 0, 1e8, "as it turned out"),
    },
    "one figure, planned against happened",
)
CONTRIBUTION = {
    "batch_id": text(80, "the batch"),
    "left_out": boolean("whether the shop leaves it out", default=False),
    "oven_id": text(80, "the oven", default=None),
    "base_id": text(80, "the base", default=None),
    "product_id": text(80, "the product", default=None),
    "caramel_id": text(80, "the caramel", default=None),
    "oven": OVEN_SEEN,
    "base": BASE_SEEN,
    "ready": READY_SEEN,
    "pieces": PIECES_SEEN,
    "trim": number("", 0, 1, SHARE["trim"], default=None),
    "residue": number("", 0, 0.3, SHARE["residue"], default=None),
    "pickup": number("", 0.01, 5, "chocolate taken up over the undipped weight, by ten pieces weighed", default=None),
    "compared": many(COMPARED, 0, 8, "planned against happened", default=[]),
    "unused": many(
        record({"part": text(20, "oven, base, pieces, trim or residue"), "why": text(40, "why not")}, "one part"),
        0,
        8,
        "what the batch does not tell, and why",
        default=[],
    ),
}
N = integer(1, 100000, "batches it rests on")
OVEN_LEARNT = record(
    {
        "id": ID,
        "mass_band": record(
            {
                "low_kg": number("kg", 0, 20, "from this mass"),
                "high_kg": number("kg", 0, 20, "up to this mass"),
            },
            "masses it was measured with",
        ),
        "mass_kg": number("kg", 0.05, 10, "mass that power_w is for"),
        "power_w": number("W", 100, 3500, "power that this mass takes up"),
        "power_sd_w": number("W", 1, 1500, "its standard deviation for the next batch"),
        "power_low_w": number("W", 1, 5000, "10 % point of the next batch"),
        "power_high_w": number("W", 1, 20000, "90 % point of the next batch"),
        "unevenness": number("", 1, 4, "hottest rise over mean rise in one burst; null: not read yet", default=None),
        "unevenness_sd": number("", 0, 2, "its standard deviation for the next batch", default=None),
        "n": N,
    },
    "an oven at a mass",
)
BASE_LEARNT = record(
    {
        "id": ID,
        "loss_factor": number("", 0.2, 5, "heat loss over that of the model"),
        "loss_factor_sd": number("", 0.01, 1, "standard deviation of its logarithm for the next batch"),
        "spread": number("", 0.05, 5, "spread of start, room and contact over what is assumed"),
        "n": N,
    },
    "a base",
)
SHARE_LEARNT = {
    "share": number("", 0, 1, "of the caramel weighed in"),
    "share_sd": number("", 0, 1, "its standard deviation for the next batch"),
    "share_low": number("", 0, 1, "10 % point of the next batch"),
    "share_high": number("", 0, 1, "90 % point of the next batch"),
    "n": N,
}
PRODUCT_LEARNT = record(
    {
        "id": ID,
        "yield": number("", 0, 1, "good centres over those planned; 0 while n is 0"),
        "yield_sd": number("", 0, 1, "its standard deviation for the next batch"),
        "yield_low": number("", 0, 1, "10 % point of the next batch"),
        "yield_high": number("", 0, 1, "90 % point of the next batch"),
        "n": integer(0, 100000, "batches it rests on"),
        "trim": record(SHARE_LEARNT, "trim weighed; null: never", default=None),
        "pickup": record(
            {name: SHARE_LEARNT[name] if name == "n" else dict(SHARE_LEARNT[name], high=5) for name in SHARE_LEARNT},
            "chocolate taken up over the undipped weight; null: never weighed",
            default=None,
        ),
    },
    "a product",
)
CARAMEL_LEARNT = record(
    {
        "id": ID,
        "ready_c": number("°C", 15, 45, "hottest point of a slab when this shop cuts it"),
        "low_c": number("°C", 0, 60, "10 % point of the next batch"),
        "high_c": number("°C", 0, 60, "90 % point of the next batch"),
        "n": N,
    },
    "a caramel",
)
IGNORED = record(
    {
        "batch_id": text(80, "the batch; null: it has no id", default=None),
        "part": text(20, "oven, base, pieces, trim or residue; null: all of it", default=None),
        "why": text(40, "a problem's code"),
    },
    "something not taken in",
)
FOLDED = {
    "ovens": many(OVEN_LEARNT, 0, 10000, "by id and mass"),
    "bases": many(BASE_LEARNT, 0, 5000, "by id"),
    "products": many(PRODUCT_LEARNT, 0, 5000, "by id"),
    "caramels": many(CARAMEL_LEARNT, 0, 5000, "by id", default=[]),
    "residue": record(SHARE_LEARNT, "what stays in the bowl; null: never weighed", default=None),
    "ignored": many(IGNORED, 0, 30000, "what was not taken in"),
    "n": integer(0, 100000, "batches taken in"),
}
FUNCTIONS = {
    "learn.contribution": {
        "request": {
            "batch_id": text(80, "the batch"),
            "plan": document("its plan document", of="PlanDocument"),
            "run": document("its run, as `run.replay` makes it", unread=True, of="Run"),
        },
        "reply": {"contribution": record(CONTRIBUTION, "what it tells")},
    },
    "learn.fold": {
        "request": {
            "batches": many(
                document(
                    "a contribution, with left_out true where the shop leaves it out", unread=True, of="Contribution"
                ),
                0,
                5000,
                "contributions of closed batches, in any order",
            )
        },
        "reply": FOLDED,
    },
    "learn.apply": {
        "request": {
            "measured": document("the reply of learn.fold", of="Measured"),
            "request": document("a request to the function", of="PlanRequest"),
            "function": choice(tuple(KIND_BY_FUNCTION), "which function it is for", default="slab.plan"),
            "oven_id": text(80, "the oven it uses", default=None),
            "base_id": text(80, "the base it uses", default=None),
            "product_id": text(80, "the product it makes", default=None),
            "caramel_id": text(80, "the caramel it is made of", default=None),
        },
        "reply": {
            "request": document("the same request with the shop's measured values in it", of="PlanRequest"),
            "used": many(
                record(
                    {
                        "field": text(80, "dotted path in the request"),
                        "value": number("", 0, 1e6, "the measured value"),
                        "n": N,
                    },
                    "one value",
                ),
                0,
                20,
                "what was taken in",
            ),
        },
    },
}
