"""What is more than one slab or one bowl takes, as several batches: alike, or with a smaller one at the end."""

from ...core.problems import Problem
from ...steps.cut import plan as cut
from .. import capacity
from . import frame as slab_frame
from .frame import SlabJob

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable

# What a batch asks for otherwise than the whole did.
ASKED = ("have", "want", "frame", "max_length_m", "max_width_m", "old")


def split(request: "Readable") -> "list[tuple[int, Readable]]":
    """[(how many batches, the request of each)] in the order in which they are made; one of 1 where one is enough."""
    job = SlabJob(request)
    if request["frame"] != "fit":
        found = _in_frame(request, job)
    elif job.kg is None:
        found = _by_frame(request, job)
    else:
        longest, widest = job.room
        found = _alike(request, job.kg, min(job.most_kg, job.mass_kg(longest * widest)))
    capacity.refuse_many(job.field, job.amount, sum(number for number, _ in found), "" if job.kg is None else "kg")
    return found or [(1, request)]


def _have(request: "Readable", kg: float) -> "Document":
    return dict(request, have={"kg": kg}, want=None)


def _want(request: "Readable", good: int, per: int = 1) -> "Document":
    boxes = {"pieces": None, "boxes": good, "per_box": per}
    return dict(request, have=None, want=boxes if per > 1 else {"pieces": good, "boxes": None, "per_box": None})


def _alike(request: "Readable", kg: float, most_kg: float) -> "list[tuple[int, Readable]]":
    number = capacity.batches_for(kg, most_kg)
    return [(number, _have(request, kg / number))] if number > 1 else []


def _in_frame(request: "Readable", job: SlabJob) -> "list[tuple[int, Readable]]":
    """A frame in hand, filled again and again; the last, smaller one gets the thickness of the others from bars set
    closer inside it."""
    length, width = request["frame"]["length_m"], request["frame"]["width_m"]
    full_kg = job.mass_kg(length * width)
    within = dict(request, frame="fit", max_length_m=length, max_width_m=width)
    if job.kg is None:
        return _pieces_in_frame(request, within, job)
    if full_kg > job.most_kg:
        return _alike(request, job.kg, job.most_kg)
    number = capacity.batches_for(job.kg, full_kg)
    rest_kg = job.kg - (number - 1) * full_kg
    if number == 1:
        return []
    if rest_kg >= full_kg * (1.0 - capacity.SAME_SHARE):
        return [(number, _have(request, full_kg))]
    last = _possible(_have(within, rest_kg))
    # What is too little for a slab stays over.
    found: "list[tuple[int, Readable]]" = [(number - 1, _have(request, full_kg))] if last or number > 2 else []
    return found + [(1, last)] if last else found


def _pieces_in_frame(request: "Readable", within: "Document", job: SlabJob) -> "list[tuple[int, Readable]]":
    """The same for centres wanted; within: the request for a smaller frame inside the one in hand."""
    along, across, trim, kerf = job.sizes
    rows, columns, _ = cut.layout(within["max_length_m"], within["max_width_m"], along, across, trim, kerf)
    each = job.good_of(rows * columns) if rows * columns else 0
    if each == 0 or job.good <= each:
        return []
    number = -(-job.good // each)
    rest = job.good - (number - 1) * each
    last = _possible(_want(within, rest)) if rest < each else None
    full = _want(request, each)
    return [(number - 1, full), (1, last)] if last else [(number, full)]


def _by_frame(request: "Readable", job: SlabJob) -> "list[tuple[int, Readable]]":
    """Whole boxes to a slab where one box fits at all, else centres; as few slabs as can be."""
    for per in (job.per, 1):
        amount = job.good // per
        if _fits(job, amount * per):
            return [] if per == job.per else [(1, _want(request, job.good))]
        most = _most_that_fits(job, amount, per)
        if most > 0:
            number = -(-amount // most)
            each = -(-amount // number)
            rest = amount - (number - 1) * each
            same, last = _want(request, each, per), _possible(_want(request, rest, per)) if rest < each else None
            return [(number - 1, same), (1, last)] if last else [(number, same)]
    return []


def most_pieces(job: SlabJob, kg: float | None) -> int:
    """The most centres of one slab from one bowl and, where it is said, of no more than so much caramel (kg)."""
    if kg is not None:
        job.most_kg = min(job.most_kg, kg / capacity.ROUNDING)
    return _most_that_fits(job, slab_frame.MOST_PIECES + 1, 1)


def _most_that_fits(job: SlabJob, amount: int, per: int) -> int:
    """The most of an amount that does not fit, by halving; 0: not even one does."""
    low, high = 0, amount
    while high - low > 1:
        middle = (low + high) // 2
        if _fits(job, middle * per):
            low = middle
        else:
            high = middle
    return low


def _fits(job: SlabJob, good: int) -> bool:
    """Whether one slab from one bowl gives so many good centres."""
    frames = slab_frame.frames_within(job, job.planned_for(good))
    return bool(frames) and capacity.holds(job.most_kg, job.mass_kg(frames[0]["length_m"] * frames[0]["width_m"]))


def _possible(request: "Document") -> "Document | None":
    """The request where a slab can be made of it, else None."""
    try:
        job = SlabJob(request)
        chosen = slab_frame.choose(job, request["frame"])[0]
        job.refuse_over_bowl(job.kg or job.mass_kg(chosen["length_m"] * chosen["width_m"]), None)
    except Problem:
        return None
    return request
