"""The core temperature at which a shop cuts a caramel, from when its slabs were found firm enough."""

from math import exp, log, sqrt

from ..core.statistics import SD_TO_10_PERCENT
from ..steps.cool.cooling_curve import READY_C
from ..steps.cool.refit import TOUCH_SD_K, at_times
from .pooling import count_good, robust_mean

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..core.annotations import Document, Readable
    from ..steps.cool.cooling_curve import Slab


READY_SD_K = 3.0  # of what shops call ready, before the first batch (assumed)
BATCH_SPREAD_K = 1.0  # from batch to batch: thumbs, the lot's own firmness (assumed)
STEP = 0.2  # of ln(loss factor), over which the slope is taken
LOWEST_C, HIGHEST_C = 15.0, 45.0


def told(slab: "Slab", touches: "Sequence[Readable]", expected_low_s: float) -> "Document | None":
    """What the touches of one slab say of ready: its core then by the model at a loss factor of 1, and by how much
    that moves with the logarithm of the loss factor, so that what the base turns out to lose can be put in.

    Between a touch that was not firm and the next one that was; or at a firm one before anybody was asked to touch
    (expected_low_s, s after pouring). Firm when asked, the slab may have been ready long before: None.
    """
    firm_s = [one["at_s"] for one in touches if one["firm"]]
    if not firm_s:
        return None
    soft_s = [one["at_s"] for one in touches if not one["firm"] and one["at_s"] < firm_s[0]]
    if not soft_s and firm_s[0] >= expected_low_s:
        return None
    times = [max(soft_s), firm_s[0]] if soft_s else [firm_s[0]]
    cores = [[core_c for core_c, _ in at_times(slab, exp(x), times)] for x in (-STEP, 0.0, STEP)]
    means = [sum(row) / len(row) for row in cores]
    between_k = cores[1][0] - cores[1][-1]
    return {
        "core_c": means[1],
        "per_log_k": (means[2] - means[0]) / (2.0 * STEP),
        "core_sd_k": sqrt(TOUCH_SD_K * TOUCH_SD_K + between_k * between_k / 12.0),
    }


def measured(groups: "Sequence[tuple[str, Sequence[Readable]]]", bases: "Sequence[Readable]") -> "list[Document]":
    """Ready of each caramel, of [(its id, its batches)]; bases: what their heat loss is known to be by now."""
    known = {one["id"]: one for one in bases}
    rows = []
    for name, batches in groups:
        seen = [_at_known_loss(batch["ready"], known.get(batch["base_id"])) for batch in batches]
        mean, sd, share = robust_mean(seen, READY_C, READY_SD_K)
        ready_c = min(max(mean, LOWEST_C), HIGHEST_C)
        spread = sqrt(sd * sd + (share * BATCH_SPREAD_K) ** 2)
        row: "Document" = {"id": name, "ready_c": ready_c, "n": count_good(seen, mean, share)}
        row.update(low_c=ready_c - SD_TO_10_PERCENT * spread, high_c=ready_c + SD_TO_10_PERCENT * spread)
        rows.append(row)
    return [row for row in rows if row["n"] > 0]


def _at_known_loss(ready: "Readable", base: "Readable | None") -> tuple[float, float, float]:
    """(core °C, its standard deviation, usual spread in K) at the base's own heat loss."""
    x, sd = (log(base["loss_factor"]), base["loss_factor_sd"]) if base else (0.0, 0.0)
    slope_k = ready["per_log_k"]
    return ready["core_c"] + slope_k * x, sqrt(ready["core_sd_k"] ** 2 + (slope_k * sd) ** 2), BATCH_SPREAD_K
