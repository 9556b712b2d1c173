"""A slab of caramels as a whole: caramel, bars, frame, cuts, melt and cooling from one request."""

from ...core.check import figure
from ...core.problems import Problem
from ...physics import materials
from ...steps.coat import plan as coat
from ...steps.cut import plan as cut
from ...steps.dip import plan as dip_plan
from ...steps.jacket import plan as jacket
from ...steps.melt import plan as melt
from .. import capacity, remelt, subplans
from ..poured import plan as poured_plan
from . import batches
from . import frame as slab_frame

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import SlabPlanReply, SlabPlanRequest
    from ..poured.plan import FrameRoom
    from .frame import SlabJob


def plan(request: "SlabPlanRequest") -> "SlabPlanReply":
    """A slab from caramel in hand, or for centres or boxes wanted: everything the bench needs.

    Request: have {kg (kg)} or want {pieces} or want {boxes, per_box}, exactly one; yield_share (fraction of the centres
    cut that is good), trim_share (fraction of the caramel) or null; old {kg (kg), share, remelts} or null,
    remelts_allowed or null, slab_height_m (m), piece_length_m (m), piece_width_m (m), trim_m (m), kerf_m (m); frame
    {length_m (m), width_m (m)} or "fit", within max_length_m (m) and max_width_m (m); bars [{height_m (m), length_m (m)
    or null, count}] or bars_m (m) or neither; oven, or jacket {water_c (°C), thickness_m (m) or null, chopped_m (m) or
    null}; vessel, vessel_volume_m3 (m³) or null, burst_s (s), step_s (s), base, base_length_m, base_width_m,
    base_thickness_m (m) or null, top, bottom, contact_m2k_w (m² K/W), target_c and fridge_c (°C), loss_factor,
    loss_factor_sd, spread, room_c (°C), humidity (fraction) or null, start_c (°C), windows
    {low_c, high_c, limit_c, warn_c, stop_c (°C)}, residue (fraction), material, stiffer_k (K) or null, block_kg (kg) or
    null, dip {dip.fields.DIP} or null, firmness and squeeze {cool.fields.FIRM}, basis, batches.
    Reply: of the first batch caramel_kg (kg, with residue and trim), remelt {old_kg (kg), fresh_kg (kg), n, allowed_n},
    blocks, leftover_kg (kg, of the last block; without block_kg, of the caramel in hand), pour, cut, good (centres),
    square {lost_fraction, seconds_s (s), warmest_c (°C)} or null, trim_kg (kg, to expect), melt or jacket, cool (the
    replies of those functions), frames (others that would do), dip
    (or null), room (as room.advise), melt_request, cool_request; of all: batches [{count, caramel_kg (kg), pieces,
    good, length_m (m), width_m (m), asked}], asked being what the request of that batch has in place of this one's;
    together {batches, caramel_kg (kg), pieces, good, blocks, leftover_kg (kg)}; sizes_unknown (bars, bowl: not held to,
    as nobody has said how long or large they are), warnings, inputs.
    Warnings: those of pour.plan, cool.plan and chocolate.coating, more_than_frame_holds, trim_takes_a_row,
    frame_outruns_bars, those of old caramel, borderline_caramel and slumps_caramel (softer_k: cut so much colder),
    brittle_caramel, centres_sink and centres_sink_before_dip (lost_percent, wait_s, warmest_c).
    Raises: Problem give_one_of, missing, too_high, more_than_a_bowl (a frame in hand, or one centre), too_many_batches,
    too_little_caramel, no_frame_fits, and those of pour.plan, cut.plan, melt.plan, melt.plan_jacket, cool.plan and
    chocolate.coating under this request's own names; not_the_shortest_side (jacket.thickness_m).
    Relation: bars nearest to slab_height_m; poured at the middle of the window. "fit" for centres: the smallest frame
    that holds as many as it takes for those wanted to be good, on the table and the base and inside the bars: a bar's
    length less its width, which is taken to be its height. "fit" for caramel in hand: whole rows across, the length
    that uses all of it at the bars' height, the number of rows that gives most centres. A frame in hand is filled up to
    the bars, or, if the caramel does not reach, as far as it comes. A bowl takes two thirds of its volume of hot
    caramel, and 10 kg. What is more than one slab or bowl takes becomes as few batches as can be, alike or with a
    smaller last one; within a hundredth weights are the same. Centres are weighed cold, at the settled height.
    Source: choi_okos_1986 for density and heat, practice for the window and the bowl's share, assumed for the rest.
    """
    groups = batches.split(request)
    parts_of = [_batch(number, one) for number, one in groups]
    together = capacity.together(request, request["have"] and request["have"]["kg"], parts_of)
    remelt.share_out(request, together, parts_of)
    first = dict(groups[0][1], old=parts_of[0]["asked"]["old"])
    job, others, poured, warnings = _choose_frame(first)
    cuts = _cut(first, poured, materials.resolved(first["material"]))
    melted = _melt(first, job, poured["mass_kg"])
    cooled = poured_plan.cool_down(first, poured, job.pour_c, ("frame", "frame"))
    dip = _dip(first, poured, cuts)
    warnings += _left_over(request, parts_of) + _trim_takes(first, cuts)
    whole: "Any" = poured_plan.whole(first, poured, melted, cooled, warnings, job.kg, dip)
    whole.update(
        {
            "cut": cuts,
            "good": job.good_of(cuts["pieces"]),
            "melt": None if first["jacket"] else melted[1],
            "jacket": melted[1] if first["jacket"] else None,
            "frames": others,
            "dip": dip,
            "trim_kg": _trim_kg(first, poured["mass_kg"], cuts),
            "batches": parts_of,
            "together": together,
        }
    )
    reply: "SlabPlanReply" = whole
    return reply


def _batch(number: int, request: "Readable") -> "Document":
    """What the plan says of one batch, or of several alike."""
    job, _, poured, _ = _choose_frame(request)
    pieces = _cut(request, poured, materials.resolved(request["material"]))["pieces"]
    found = {"count": number, "pieces": pieces, "good": job.good_of(pieces), "caramel_kg": poured["mass_kg"]}
    asked = {name: request[name] for name in batches.ASKED}
    return dict(found, length_m=poured["length_m"], width_m=poured["width_m"], asked=asked)


def _trim_kg(request: "Readable", caramel_kg: float, cuts: "Readable") -> float:
    share = request["trim_share"]
    trim_kg: float = cuts["trim_kg"] if share is None else share * caramel_kg
    return trim_kg


def _left_over(request: "Readable", parts_of: "list[Document]") -> "list[Document]":
    """A warning when the frames take less than the caramel in hand; not for what a scale would not show."""
    if request["have"] is None:
        return []
    have_kg, used_kg = request["have"]["kg"], sum(one["count"] * one["caramel_kg"] for one in parts_of)
    if have_kg <= used_kg * capacity.ROUNDING:
        return []
    return [{"code": "more_than_frame_holds", "values": {"have_kg": have_kg, "caramel_kg": used_kg}}]


def _trim_takes(request: "Readable", cuts: "Readable") -> "list[Document]":
    """A warning when a frame in hand would hold more centres with no trim: its sides are just that much too short."""
    if request["frame"] == "fit":
        return []
    sizes = (request["piece_length_m"], request["piece_width_m"], 0.0, request["kerf_m"])
    rows, columns, _ = cut.layout(request["frame"]["length_m"], request["frame"]["width_m"], *sizes)
    if rows * columns <= cuts["pieces"]:
        return []
    values = {"n": cuts["pieces"], "untrimmed_n": rows * columns, "trim_m": request["trim_m"]}
    return [{"code": "trim_takes_a_row", "values": values}]


def _choose_frame(request: "Readable") -> "tuple[SlabJob, list[Document], Document, list[Any]]":
    """(job, other frames, reply of pour.plan, own warnings)."""
    job = slab_frame.SlabJob(request)
    frame, others = slab_frame.choose(job, request["frame"])
    poured, warnings = _pour(request, job, frame)
    return job, others, poured, warnings


def caramel_kg(request: "Readable") -> float:
    """Caramel to weigh in (kg) for a batch of a checked request, without planning its melt and its cooling."""
    result: float = _choose_frame(batches.split(request)[0][1])[2]["mass_kg"]
    return result


def _pour(request: "Readable", job: "SlabJob", frame: "Readable") -> "tuple[Document, list[Any]]":
    """(reply of pour.plan, own warnings) for the chosen frame."""
    full_kg = job.mass_kg(frame["length_m"] * frame["width_m"])
    wanted = poured_plan.pour_wanted(request, frame, job.pour_c, job.frame_room.owned_m)
    fit = request["frame"] == "fit"
    # A frame fitted to the caramel in hand takes it to the gram.
    if job.kg is not None and job.kg < full_kg + (1e-9 if fit else 0.0):
        wanted.update({"solve_for": "length" if fit else "height", "mass_kg": job.kg})
        job.refuse_over_bowl(job.kg, None)
    else:
        wanted["solve_for"] = "mass"
        job.refuse_over_bowl(full_kg, None if fit else frame["length_m"])
    names = {"mass_kg": job.field, "length_m": "frame.length_m", "width_m": "frame.width_m"}
    warnings = [] if fit else _outruns_bars(frame, job.frame_room)
    return poured_plan.pour_between(wanted, names), warnings


def _outruns_bars(frame: "Readable", room: "FrameRoom") -> "list[Any]":
    """A warning when the bars are too short to close a frame in hand."""
    if room.closes(frame["length_m"], frame["width_m"]):
        return []
    longest, widest = room.bars_m
    values = {"length_m": frame["length_m"], "width_m": frame["width_m"], "longest_m": longest, "widest_m": widest}
    return [{"code": "frame_outruns_bars", "values": values}]


def _cut(request: "Readable", poured: "Readable", material: "Readable") -> "Document":
    density = materials.density(material, request["room_c"])
    return cut.cut_up(
        poured["length_m"],
        poured["width_m"],
        poured["settled_height_m"],
        request["piece_length_m"],
        request["piece_width_m"],
        request["trim_m"],
        request["kerf_m"],
        density,
    )


def _dip(request: "Readable", poured: "Readable", cuts: "Readable") -> "Document | None":
    """The reply of dipping, or None; the pre-bottom goes on the whole slab before it is cut."""
    dip = request["dip"]
    if dip is None:
        return None
    sides = (request["piece_length_m"], request["piece_width_m"], poured["settled_height_m"])
    piece, under_m2 = dict(zip(coat.SIDES, sides)), poured["area_m2"]
    asked = (dip, cuts["pieces"], piece, cuts["piece_kg"], request["material"], under_m2, request["room_c"])
    return subplans.call_renamed(lambda one: dip_plan.plan(*one), asked, {name: "dip." + name for name in dip})


def _melt(request: "Readable", job: "SlabJob", caramel_kg: float) -> "tuple[Document, Document]":
    """(request, reply) of the melt, in the oven or in a water jacket."""
    if request["jacket"] is None:
        if request["oven"] is None:
            raise Problem("oven", "missing")
        return poured_plan.melt_in_oven(request, job.field, caramel_kg)
    jacketed, names = request["jacket"], poured_plan.melt_names(job.field)
    full = {"mass_kg": caramel_kg, "jacket_c": jacketed["water_c"], "start_c": request["start_c"]}
    full.update(thickness_m=jacketed["thickness_m"], chopped_m=jacketed["chopped_m"], material=request["material"])
    full.update({poured_plan.LINES[line]: request["windows"][line] for line in poured_plan.LINES})
    names.update({"block." + side: "jacket.thickness_m" for side in ("length_m", "width_m", "height_m")})
    names.update(jacket_c="jacket.water_c", thickness_m="jacket.thickness_m")
    return full, subplans.call_renamed(_in_jacket, full, names)


def _in_jacket(melt_request: "Readable") -> "Any":
    melt.refuse_lines(melt_request)
    return jacket.plan(jacket.request_for(melt_request))


def piece_kg(row: "Any", density: float) -> float | None:
    """Caramel in a centre (kg) of a product of the shop, or None: its sizes are not known."""
    sizes = [figure(row, "piece_" + name + "_m") for name in ("length", "width")]
    height_m = figure(row, "slab_height_m") or poured_plan.USUAL_HEIGHT_M
    return sizes[0] * sizes[1] * height_m * density if sizes[0] and sizes[1] else None
