"""Repeats the plan's warnings of the room's air and of a soft caramel at the step where something can still be done."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import Advice


# Warnings of a plan, the steps that say them again in a few words, and those words. The first that fits is said.
AT_STEPS = (
    ("centres_sink_before_dip", ("cut",), "more.cut_sinks_here"),
    ("centres_sink", ("cut",), "more.cut_sinks_here"),
    ("slumps_caramel", ("cut",), "more.cut_slumps"),
    ("borderline_caramel", ("cut",), "more.cut_sinks"),
    ("brittle_caramel", ("score",), "more.cut_brittle"),
    ("condensation", ("loosen", "score"), "more.air_condenses"),
    ("soft_caramel", ("loosen", "score"), "warning.chill_slab"),
    ("warm_room", ("touch", "loosen", "score"), "warning.chill_slab"),
    ("chill_wrapped", ("touch", "loosen", "score"), "more.chill_again"),
    ("cold_room", ("score", "cut"), "more.air_brittle"),
    ("sugar_bloom", ("cut", "temper_check"), "more.air_humid"),
    ("humid_room", ("cut", "temper_check"), "more.air_humid"),
    ("sticky_caramel", ("cut", "wrap"), "more.air_sticky"),
    ("fat_bloom", ("cut", "set"), "more.air_bloom"),
    ("slow_setting", ("cut", "set"), "more.air_slow"),
)


def warnings_for_bench(reply: "Document") -> "list[Any]":
    """The warnings of a plan's reply that prompts repeat, [{code, values}]; plans of older versions have no room."""
    warnings = (reply.get("room") or {}).get("warnings", []) + reply.get("warnings", [])
    return [one for one in warnings if one["code"] in [code for code, _, _ in AT_STEPS]]


def add_room_advice(run: "Readable", advice: "Advice") -> None:
    """Adds what the room means for this step to the prompt, if nothing else is said beside it."""
    if advice["more"] is not None:
        return
    warnings = {one["code"]: one["values"] for one in run.get("room", [])}
    for code, steps, words in AT_STEPS:
        if code in warnings and advice["step"] in steps:
            advice["more"] = {"code": words, "values": warnings[code]}
            return
