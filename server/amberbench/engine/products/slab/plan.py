"""A slab of caramels as a whole: caramel, bars, frame, cuts, melt and cooling from one request."""

from ...core.problems import Problem
from ...physics import materials
from ...steps.coat import plan as coat
from ...steps.cut import plan as cut
from ...steps.dip import plan as dip_plan
from ...steps.jacket import plan as jacket
from ...steps.melt import plan as melt
from .. import subplans
from ..poured import plan as poured_plan
from . import frame as slab_frame

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import SlabPlanRequest
    from .frame import SlabJob


def plan(request: "SlabPlanRequest") -> "Document":
    """A slab from caramel in hand, or for centres or boxes wanted: everything the bench needs.

    Request: have {kg (kg)} or want {pieces} or want {boxes, per_box}, exactly one; slab_height_m (m),
    piece_length_m (m), piece_width_m (m), trim_m (m), kerf_m (m); frame {length_m (m), width_m (m)} or "fit", within
    max_length_m (m) and max_width_m (m); bars_m (m) or null, oven, or jacket {water_c (°C), thickness_m (m) or null,
    chopped_m (m) or null}; vessel, burst_s (s), step_s (s), base, top,
    bottom, contact_m2k_w (m² K/W), target_c (°C), loss_factor, loss_factor_sd, spread, room_c (°C), humidity (fraction)
    or null, start_c (°C), windows {low_c, high_c, limit_c, warn_c, stop_c (°C)}, residue (fraction), material, block_kg
    (kg) or null, dip {dip.fields.DIP} or null, firmness and squeeze {cool.fields.FIRM}, basis, batches.
    Reply: caramel_kg (kg, with residue and trim), blocks, leftover_kg (kg, of the last block; without block_kg, of
    the caramel in hand), pour, cut, melt or jacket, cool (the replies of those functions), frames (others that would
    do), dip (or null), room (as room.advise), melt_request, cool_request, warnings, inputs.
    Warnings: those of pour.plan, cool.plan and chocolate.coating, more_than_frame_holds, borderline_caramel and
    slumps_caramel (softer_k: cut so much colder), brittle_caramel.
    Raises: Problem give_one_of, missing, too_high, more_than_a_bowl, too_little_caramel, too_much_caramel,
    no_frame_fits, frame_too_small_for_pieces, and those of pour.plan, cut.plan, melt.plan, melt.plan_jacket,
    cool.plan and chocolate.coating under this request's own names; not_the_shortest_side (jacket.thickness_m).
    Relation: bars nearest to slab_height_m; poured at the middle of the window. "fit" for centres: the smallest frame
    on the table that holds them. "fit" for caramel in hand: whole rows across, the length that uses all of it at the
    bars' height, the number of rows that gives most centres. A frame in hand is filled up to the bars, or, if the
    caramel does not reach, as far as it comes. Centres are weighed cold, at the settled height.
    Source: choi_okos_1986 for density and heat, practice for the window, assumed for the rest.
    """
    job, pour_c, others, poured, warnings = _choose_frame(request)
    cuts = _cut(request, poured, materials.resolved(request["material"]))
    melted = _melt(request, job, poured["mass_kg"])
    cooled = poured_plan.cool_down(request, poured, pour_c, ("frame", "frame"))
    dip = _dip(request, poured, cuts)
    reply = poured_plan.whole(request, poured, melted, cooled, warnings, job.kg, dip)
    own = {
        "cut": cuts,
        "melt": None if request["jacket"] else melted[1],
        "jacket": melted[1] if request["jacket"] else None,
        "frames": others,
        "dip": dip,
    }
    return dict(reply, **own)


def _choose_frame(request: "Readable") -> "tuple[SlabJob, float, list[Document], Document, list[Any]]":
    """(job, pouring temperature in °C, other frames, reply of pour.plan, own warnings)."""
    job = slab_frame.SlabJob(request)
    pour_c = poured_plan.middle_of_window(request)
    job.height_m = poured_plan.height_of_bars(request)
    job.density = materials.density(materials.resolved(request["material"]), pour_c)
    frame, others = slab_frame.choose(job, request["frame"])
    poured, warnings = _pour(request, job, frame, pour_c)
    return job, pour_c, others, poured, warnings


def caramel_kg(request: "Readable") -> float:
    """Caramel to weigh in (kg) for a checked request, without planning its melt and its cooling."""
    result: float = _choose_frame(request)[3]["mass_kg"]
    return result


def _pour(request: "Readable", job: "SlabJob", frame: "Readable", pour_c: float) -> "tuple[Document, list[Any]]":
    """(reply of pour.plan, own warnings) for the chosen frame."""
    area = frame["length_m"] * frame["width_m"]
    full_kg, warnings = job.mass_kg(area), []
    wanted = poured_plan.pour_wanted(request, frame, pour_c)
    fit = request["frame"] == "fit"
    if job.kg is not None and (fit or job.kg < full_kg):
        wanted.update({"solve_for": "length" if fit else "height", "mass_kg": job.kg})
        job.refuse_over_bowl(job.kg, None)
    else:
        wanted["solve_for"] = "mass"
        job.refuse_over_bowl(full_kg, None if fit else frame["length_m"])
        if job.kg is not None and job.kg > full_kg:
            values = {"have_kg": job.kg, "caramel_kg": full_kg}
            warnings.append({"code": "more_than_frame_holds", "values": values})
    names = {"mass_kg": job.field, "length_m": "frame.length_m", "width_m": "frame.width_m"}
    return poured_plan.pour_between(wanted, names), warnings


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


def _in_jacket(melt_request: "Readable") -> "Document":
    melt.refuse_lines(melt_request)
    return jacket.plan(jacket.request_for(melt_request))
