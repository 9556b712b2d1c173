"""What the room's air and a soft caramel mean at the bench, said at the step where something can still be done."""

# Warnings of a plan, the steps that say them again in a few words, and those words. The first that fits is said.
AT = (
    ("slumps_caramel", ("cut",), "more.cut_slumps"),
    ("borderline_caramel", ("cut",), "more.cut_sinks"),
    ("brittle_caramel", ("score",), "more.cut_brittle"),
    ("condensation", ("loosen", "score"), "more.air_condenses"),
    ("soft_caramel", ("loosen", "score"), "warning.chill_slab"),
    ("warm_room", ("touch", "loosen", "score"), "warning.chill_slab"),
    ("cold_room", ("score", "cut"), "more.air_brittle"),
    ("sugar_bloom", ("cut", "temper_check"), "more.air_humid"),
    ("humid_room", ("cut", "temper_check"), "more.air_humid"),
    ("sticky_caramel", ("cut", "wrap"), "more.air_sticky"),
    ("fat_bloom", ("cut", "set"), "more.air_bloom"),
    ("slow_setting", ("cut", "set"), "more.air_slow"),
)


def minded(reply):
    """The warnings of a plan's reply that the bench says again, [{code, values}]; old plans carry no room."""
    told = (reply.get("room") or {}).get("warnings", []) + reply.get("warnings", [])
    return [one for one in told if one["code"] in [code for code, _, _ in AT]]


def mind(run, advice):
    """Puts what the room means at this step beside the prompt, where nothing else stands there."""
    if advice["more"] is not None:
        return
    warnings = {one["code"]: one["values"] for one in run.get("room", [])}
    for code, steps, words in AT:
        if code in warnings and advice["step"] in steps:
            advice["more"] = {"code": words, "values": warnings[code]}
            return
