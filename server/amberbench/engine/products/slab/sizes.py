"""How large a batch of a product of the shop can be, and what it takes: by `slab.plan`'s own choice of a frame."""

from ...core import check
from ...core.check import figure
from .. import hands
from ..poured.plan import USUAL_HEIGHT_M
from . import batches, fields
from . import frame as slab_frame
from .frame import MOST_PIECES, SlabJob

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable

OF_PRODUCT = ("piece_length_m", "piece_width_m", "trim_m", "kerf_m")
# What of a request to slab.plan decides how much caramel so many centres take.
FIELDS = {
    name: fields.SLAB[name]
    for name in OF_PRODUCT
    + ("slab_height_m", "max_length_m", "max_width_m", "bars_m", "bars", "base", "base_length_m", "base_width_m")
    + ("windows", "material", "residue", "vessel_volume_m3")
}


def asked(row: "Any", shop: "Any", caramel: "Any") -> "Any":
    """What slab.plan is asked of a product besides how many: in the largest bowl, on the largest base.

    Raises: Problem for what is out of range.
    """
    found: "Document" = {name: row.get(name) for name in OF_PRODUCT}
    found["slab_height_m"] = figure(row, "slab_height_m") or USUAL_HEIGHT_M
    for table in hands.rows(shop, "tables")[:1]:
        found.update({name: table.get(name) for name in ("max_length_m", "max_width_m")})
    bars = [one for one in hands.rows(shop, "bars") if figure(one, "height_m")]
    if bars:
        found["bars"] = [_said({name: one.get(name) for name in ("height_m", "length_m", "count")}) for one in bars]
    bases = hands.rows(shop, "bases")
    areas = [(figure(one, "length_m") or 0.0) * (figure(one, "width_m") or 0.0) for one in bases]
    # On one whose size nobody has said there is room for every frame.
    if bases and 0.0 not in areas:
        base = bases[areas.index(max(areas))]
        found.update({"base": base.get("base"), "base_length_m": base["length_m"], "base_width_m": base["width_m"]})
    found["windows"] = _said({name: figure(caramel, "windows", "slab", name) for name in ("low_c", "high_c")})
    found["material"] = caramel.get("material")
    found["vessel_volume_m3"] = hands.largest_bowl_m3(shop)
    return check.checked(FIELDS, _said(found))


def _said(found: "Document") -> "Document":
    return {name: found[name] for name in found if found[name] is not None}


def _job(request: "Readable", pieces: int) -> SlabJob:
    want = {"pieces": pieces, "boxes": None, "per_box": None}
    return SlabJob(dict(request, have=None, want=want, yield_share=1.0, frame="fit"))


def most_pieces(request: "Readable", kg: float | None = None) -> int:
    """The most centres that one bowl, one table and, where it is said, so much caramel (kg) give; 0: not even one."""
    return batches.most_pieces(_job(request, MOST_PIECES), kg)


def caramel_kg(request: "Readable", pieces: int) -> float | None:
    """Caramel to weigh in (kg) for so many centres: with trim, cut loss and what stays in the bowl; None: no frame."""
    job = _job(request, pieces)
    frames = slab_frame.frames_within(job, pieces)
    return job.mass_kg(frames[0]["length_m"] * frames[0]["width_m"]) if frames else None
