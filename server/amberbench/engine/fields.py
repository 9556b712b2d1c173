"""Every field of every function: kind, unit, lowest and highest value, default, meaning.

Plain data, read by `check` (on the server and on the phone), by the API's schemas, by the OpenAPI document and by
the generator of the phone's types. A field is required unless it has a default. A default carries its basis
("assumed" or "published"), its source key and, where a test can measure it, the name of that test in `measure_by`.
"""

BASES = ("typed", "measured", "published", "assumed")


def _field(kind, meaning, more, **own):
    field = {"kind": kind, "meaning": meaning}
    field.update(own)
    field.update(more)
    return field


def number(unit, low, high, meaning, **more):
    """A finite number from low to high; unit "" for a pure number."""
    return _field("number", meaning, more, unit=unit, low=low, high=high)


def integer(low, high, meaning, **more):
    """A whole number from low to high."""
    return _field("integer", meaning, more, unit="", low=low, high=high)


def boolean(meaning, **more):
    """True or false."""
    return _field("boolean", meaning, more)


def text(most, meaning, **more):
    """Text of at most so many characters."""
    return _field("text", meaning, more, most=most)


def choice(options, meaning, **more):
    """One word of a list."""
    return _field("choice", meaning, more, options=list(options))


def record(fields, meaning, **more):
    """A record with these fields and no others."""
    return _field("record", meaning, more, fields=fields)


def many(item, least, most, meaning, **more):
    """A list of so many items."""
    return _field("many", meaning, more, item=item, least=least, most=most)


def either(alternatives, meaning, **more):
    """A word of a choice, a number, or the record whose field names fit best."""
    return _field("either", meaning, more, alternatives=alternatives)


def document(meaning, **more):
    """A document this list does not look into: a plan, a run. `unread`: nor for NaN, the reader sorts that out."""
    return _field("document", meaning, more)


def _with(*parts):
    fields = {}
    for part in parts:
        fields.update(part)
    return fields


# What several functions share -------------------------------------------------------------------------------------

MATERIAL_NAMES = (
    "caramel",
    "dark_chocolate",
    "milk_chocolate",
    "white_chocolate",
    "almond",
    "cashew",
    "hazelnut",
    "macadamia",
    "peanut",
    "pecan",
    "pistachio",
    "walnut",
    "pretzel",
)
COMPOSITION = record(
    {
        "water": number("", 0, 1, "mass fraction of water"),
        "protein": number("", 0, 1, "mass fraction of protein", default=0.0),
        "fat": number("", 0, 1, "mass fraction of fat", default=0.0),
        "carbohydrate": number("", 0, 1, "mass fraction of carbohydrate without fibre", default=0.0),
        "fibre": number("", 0, 1, "mass fraction of fibre", default=0.0),
        "ash": number("", 0, 1, "mass fraction of ash", default=0.0),
        "density_kg_m3": number("kg/m³", 300, 3000, "weighed density; null: from the composition", default=None),
    },
    "mass fractions that sum to 1 ± 0.02",
)
CONSTANTS = record(
    {
        "conductivity_w_mk": number("W/(m K)", 0.005, 500, "thermal conductivity"),
        "density_kg_m3": number("kg/m³", 1, 20000, "density"),
        "heat_capacity_j_kgk": number("J/(kg K)", 100, 10000, "specific heat"),
    },
    "constant thermal properties",
)
MATERIAL = either(
    [choice(MATERIAL_NAMES, "a built-in material"), COMPOSITION, CONSTANTS],
    "a built-in material, a composition or constants",
    default="caramel",
    basis="published",
    source="usda_sr28",
    measure_by="caramel_label",
)


def surface(words, meaning, default):
    """How a face gives heat to the air: a word, or a given coefficient."""
    return either(
        [
            choice(words, meaning),
            record({"h_w_m2k": number("W/(m² K)", 0, 500, "heat-transfer coefficient, radiation included")}, meaning),
        ],
        meaning,
        default=default,
        basis="assumed",
        source="mcadams",
    )


BASE_NAMES = ("steel_sheet", "aluminium_tray", "marble", "granite", "wood_board")
LAYER = record(
    {
        "thickness_m": number("m", 0.0001, 0.2, "thickness of the layer"),
        "conductivity_w_mk": number("W/(m K)", 0.005, 500, "thermal conductivity"),
        "density_kg_m3": number("kg/m³", 1, 20000, "density"),
        "heat_capacity_j_kgk": number("J/(kg K)", 100, 10000, "specific heat"),
    },
    "one layer of the base",
)
BASE = either(
    [
        choice(BASE_NAMES, "a built-in base"),
        record(
            {
                "layers": many(LAYER, 1, 4, "layers from the slab downwards"),
                "area_ratio": number("", 1, 20, "base area over slab area", default=1.0),
            },
            "a base of one's own",
        ),
    ],
    "what the slab lies on; null: bottom face given by `bottom` alone",
    default="marble",
    nullable=True,
    basis="assumed",
    source="en_12524",
    measure_by="cooling_readings",
)
ROOM = number("°C", -5, 45, "room temperature", default=21.0, basis="assumed", source="assumed", measure_by="room_thermometer")
START = number("°C", -30, 150, "temperature before heating", default=21.0, basis="assumed", source="assumed", measure_by="block_reading")
BASIS = {"basis": document("basis of fields by dotted path: typed, measured, published or assumed", default=None)}
INPUTS = {
    "inputs": many(
        record(
            {
                "field": text(80, "dotted path of the field"),
                "value": document("the value used"),
                "unit": text(20, "its unit"),
                "basis": choice(BASES, "where the value comes from"),
                "source": text(40, "source key, or null", default=None),
                "measure_by": text(40, "the test that measures it, or null", default=None),
            },
            "one input and its basis",
        ),
        0,
        200,
        "every input that went into the answer",
    )
}

# melt ---------------------------------------------------------------------------------------------------------------

OVEN = record(
    {
        "rated_w": number("W", 200, 3500, "power on the rating plate", default=None),
        "power_w": number("W", 100, 3500, "power that this mass absorbs, as measured", default=None),
        "power_sd_w": number("W", 1, 1500, "standard deviation of power_w", default=None),
        "turntable": boolean("whether it turns the bowl", default=True),
        "unevenness": number(
            "", 1, 4, "hottest rise over mean rise in one burst; null: by turntable", default=None,
            basis="assumed", source="memory", measure_by="hot_spot_readings",
        ),
    },
    "the microwave oven",
)
VESSEL = record(
    {
        "mass_kg": number("kg", 0.01, 20, "mass of the empty vessel"),
        "heat_capacity_j_kgk": number(
            "J/(kg K)", 300, 3000, "specific heat of the vessel", default=800.0, basis="assumed", source="memory"
        ),
    },
    "the bowl or jug; null: none counted",
    default=None,
)
MELT = _with(
    {
        "mass_kg": number("kg", 0.05, 10, "caramel in the bowl"),
        "start_c": START,
        "window_low_c": number("°C", 30, 120, "coolest bulk temperature to pour at", default=71.0, basis="published", source="practice"),
        "window_high_c": number("°C", 30, 120, "hottest bulk temperature to pour at", default=77.0, basis="published", source="practice"),
        "room_c": ROOM,
        "material": MATERIAL,
        "limit_c": number("°C", 40, 140, "scorch limit for any spot", default=93.3, basis="published", source="practice", measure_by="caramel_label"),
        "warn_c": number("°C", 40, 140, "bulk temperature from which it darkens", default=82.0, basis="published", source="practice", measure_by="caramel_label"),
        "stop_c": number("°C", 40, 140, "bulk temperature at which heating stops", default=85.0, basis="published", source="practice", measure_by="caramel_label"),
        "burst_s": number("s", 5, 300, "longest burst", default=60.0, basis="published", source="practice"),
        "step_s": number("s", 1, 30, "what the oven can set: 1, 5, 10, 15 or 30", default=5.0, basis="assumed", source="assumed"),
        "oven": OVEN,
        "vessel": VESSEL,
    },
    BASIS,
)
HISTORY = many(
    record(
        {
            "kind": choice(("burst", "stir", "reading", "rest"), "what happened"),
            "seconds_s": number("s", 0, 36000, "length of the burst or rest", default=None),
            "free": boolean("whether it stirs freely", default=None),
            "surface_c": number("°C", 0, 150, "infrared reading", default=None),
        },
        "one happening",
    ),
    0,
    400,
    "what happened so far, in order",
)
BURST = record(
    {
        "seconds_s": number("s", 1, 300, "length of the burst"),
        "expected_c": number("°C", -1e6, 1e6, "bulk temperature expected after it and a stir"),
        "low_c": number("°C", -1e6, 1e6, "10 % point of expected_c"),
        "high_c": number("°C", -1e6, 1e6, "90 % point of expected_c"),
        "hottest_c": number("°C", -1e6, 1e6, "hottest spot before the stir, 95 % point"),
    },
    "one burst",
)

# pour, cut ----------------------------------------------------------------------------------------------------------

RESIDUE = number(
    "", 0, 0.3, "fraction of the caramel that stays in the bowl", default=0.02, basis="assumed", source="memory", measure_by="bowl_residue"
)
BARS = many(
    number("m", 0.002, 0.1, "height of a bar"),
    1,
    20,
    "heights of the bars owned, one entry for each set that closes a frame, up to three stacked; null: any height",
    default=None,
)
POUR = {
    "solve_for": choice(("mass", "length", "height"), "the unknown"),
    "mass_kg": number("kg", 0.05, 50, "caramel weighed in", default=None),
    "length_m": number("m", 0.02, 5, "frame length", default=None),
    "width_m": number("m", 0.02, 5, "frame width", default=None),
    "slab_height_m": number("m", 0.002, 0.1, "slab height wanted", default=None),
    "bars_m": BARS,
    "max_length_m": number("m", 0.02, 5, "longest frame the table allows", default=None),
    "max_width_m": number("m", 0.02, 5, "widest frame the table allows", default=None),
    "pour_c": number("°C", 20, 130, "temperature at pouring", default=74.0, basis="published", source="practice"),
    "room_c": ROOM,
    "residue": RESIDUE,
    "material": MATERIAL,
}
PIECE = {
    "piece_length_m": number("m", 0.005, 0.3, "length of one centre"),
    "piece_width_m": number("m", 0.005, 0.3, "width of one centre"),
    "trim_m": number("m", 0, 0.1, "trim on every edge", default=0.005, basis="assumed", source="assumed", measure_by="trim_weighed"),
    "kerf_m": number("m", 0, 0.01, "cut loss between centres", default=0.0, basis="assumed", source="assumed", measure_by="cut_loss"),
}
CUT = _with(
    {
        "length_m": number("m", 0.02, 5, "frame length"),
        "width_m": number("m", 0.02, 5, "frame width"),
        "thickness_m": number("m", 0.001, 0.1, "slab height after cooling"),
        "material": MATERIAL,
    },
    PIECE,
)
FIT = _with(
    {
        "pieces": integer(1, 5000, "centres wanted"),
        "max_length_m": number("m", 0.02, 5, "longest frame the bars and the table allow"),
        "max_width_m": number("m", 0.02, 5, "widest frame"),
    },
    PIECE,
)
FRAME_FOUND = record(
    {
        "rows": integer(1, 5000, "centres across the width"),
        "columns": integer(1, 5000, "centres along the length"),
        "rotated": boolean("whether the centre's length lies across the frame"),
        "length_m": number("m", 0, 5, "frame length"),
        "width_m": number("m", 0, 5, "frame width"),
        "pieces": integer(1, 1000000, "centres it gives"),
        "waste": number("", 0, 1, "share of the area that is trim, cut loss or centres beyond those wanted"),
    },
    "one frame that fits",
)

# cool ---------------------------------------------------------------------------------------------------------------

COOL = _with(
    {
        "thickness_m": number("m", 0.001, 0.1, "slab height"),
        "start_c": number("°C", 20, 150, "temperature when poured", default=74.0, basis="published", source="practice"),
        "room_c": ROOM,
        "material": MATERIAL,
        "top": surface(("still_air", "fan"), "how the top gives off heat", "still_air"),
        "base": BASE,
        "contact_m2k_w": number(
            "m² K/W", 0, 0.1, "resistance of parchment between slab and base", default=0.005, basis="published", source="asme_1992"
        ),
        "bottom": surface(("still_air", "fan", "insulated"), "how the underside gives off heat", "still_air"),
        "target_c": number("°C", 5, 60, "hottest point when ready for the knife", default=24.0, basis="published", source="practice"),
        "length_m": number("m", 0.02, 5, "slab length", default=0.35),
        "width_m": number("m", 0.02, 5, "slab width", default=0.35),
        "base_start_c": number("°C", -20, 60, "temperature of the base at pouring; null: room", default=None),
        "loss_factor": number(
            "", 0.2, 5, "heat loss over that of the model", default=1.0, basis="assumed", source="assumed", measure_by="cooling_readings"
        ),
        "loss_factor_sd": number("", 0.01, 1, "standard deviation of the logarithm of loss_factor", default=0.2, basis="assumed", source="assumed"),
    },
    BASIS,
)
SPAN = {
    "at_s": number("s", 0, 1e8, "time after pouring"),
    "low_s": number("s", 0, 1e8, "10 % point"),
    "high_s": number("s", 0, 1e8, "90 % point"),
}
COOL_REPLY = _with(
    {
        "ready_s": number("s", 0, 1e8, "time after pouring until it can be cut"),
        "ready_low_s": number("s", 0, 1e8, "10 % point"),
        "ready_high_s": number("s", 0, 1e8, "90 % point"),
        "target_c": number("°C", 5, 60, "hottest point at ready, raised to room + 1 K in a warm room"),
        "milestones": many(
            record(
                _with({"name": choice(("skin", "tacky", "firm", "free", "ready", "cold"), "what the slab can do then")}, SPAN),
                "one milestone",
            ),
            0,
            6,
            "in order of time; those never reached are left out",
        ),
        "curve": many(
            record(
                {
                    "at_s": number("s", 0, 1e8, "time after pouring"),
                    "core_c": number("°C", -30, 150, "hottest point"),
                    "surface_c": number("°C", -30, 150, "top surface"),
                },
                "one point",
            ),
            2,
            120,
            "core and surface over time",
        ),
        "warnings": many(record({"code": text(40, "key of the sentence"), "values": document("numbers in it")}, "one"), 0, 10, "what to mind"),
    },
    INPUTS,
)

# slab ---------------------------------------------------------------------------------------------------------------

SLAB = _with(
    {
        "have": record({"kg": number("kg", 0.05, 50, "caramel in hand")}, "caramel by weight", default=None),
        "want": record(
            {
                "pieces": integer(1, 5000, "centres", default=None),
                "boxes": integer(1, 1000, "boxes", default=None),
                "per_box": integer(1, 500, "centres in a box", default=None),
            },
            "centres, or boxes and centres a box",
            default=None,
        ),
        "slab_height_m": number("m", 0.002, 0.1, "slab height wanted"),
        "frame": either(
            [
                choice(("fit",), "find a frame"),
                record(
                    {"length_m": number("m", 0.02, 5, "frame length"), "width_m": number("m", 0.02, 5, "frame width")},
                    "a frame in hand",
                ),
            ],
            "a frame in hand, or find one",
            default="fit",
        ),
        "max_length_m": number("m", 0.02, 5, "longest frame", default=0.6),
        "max_width_m": number("m", 0.02, 5, "widest frame", default=0.4),
        "bars_m": BARS,
        "oven": OVEN,
        "vessel": VESSEL,
        "step_s": MELT["step_s"],
        "base": BASE,
        "top": COOL["top"],
        "bottom": COOL["bottom"],
        "contact_m2k_w": COOL["contact_m2k_w"],
        "loss_factor": COOL["loss_factor"],
        "loss_factor_sd": COOL["loss_factor_sd"],
        "room_c": ROOM,
        "start_c": START,
        "windows": record(
            {
                "low_c": MELT["window_low_c"],
                "high_c": MELT["window_high_c"],
                "limit_c": MELT["limit_c"],
                "warn_c": MELT["warn_c"],
                "stop_c": MELT["stop_c"],
            },
            "the heat lines of this caramel",
            default={},
        ),
        "residue": RESIDUE,
        "material": MATERIAL,
        "block_kg": number("kg", 0.05, 50, "weight of one block as bought", default=None),
    },
    PIECE,
    BASIS,
)

# events -------------------------------------------------------------------------------------------------------------

BURST_ADVICE = {
    "advised_s": number("s", 0, 3600, "what the engine advised", default=None),
    "then": choice(("turn", "stir"), "what follows the burst", default="stir"),
    "read": boolean("whether a reading is wanted after it", default=False),
    "from_c": number("°C", -30, 250, "bulk temperature believed before it", default=None),
    "expected_c": number("°C", -30, 250, "bulk temperature expected after it", default=None),
    "low_c": number("°C", -50, 250, "10 % point of expected_c", default=None),
    "high_c": number("°C", -30, 300, "90 % point of expected_c", default=None),
}
# The body of every kind of event that a slab's fold understands. Fields a newer version added are passed over.
EVENTS = {
    "batch_opened": {"plan": document("the plan"), "engine_version": text(20, "version that planned it", default="")},
    "ready_checked": {},
    "weighed": {"kg": number("kg", 0.01, 50, "caramel weighed in"), "lot": text(60, "its lot", default=None)},
    "lot_named": {"lot": text(60, "lot of the caramel")},
    "burst_started": _with({"seconds_s": number("s", 1, 600, "time set on the oven")}, BURST_ADVICE),
    "burst_ended": {},
    "stirred": {"free": boolean("whether it stirs freely", default=False)},
    "read": {"surface_c": number("°C", 0, 150, "infrared reading")},
    "rested": {"seconds_s": number("s", 1, 3600, "time off the heat")},
    "poured": {"bulk_c": number("°C", 20, 150, "bulk temperature believed at pouring", default=None)},
    "slab_read": {"surface_c": number("°C", -10, 150, "infrared reading of the slab")},
    "touched": {"firm": boolean("whether the middle felt firm enough to cut")},
    "cooling_refitted": {
        "seen": integer(0, 200, "how many readings and touch tests it took in"),
        "reply": document("the reply of cool.refit"),
    },
    "freed": {},
    "prebottomed": {},
    "flipped": {},
    "scored": {},
    "cut": {},
    "counted": {"pieces": integer(0, 100000, "good pieces")},
    "weighed_out": {"kg": number("kg", 0, 50, "what the scale says"), "what": text(40, "what was weighed", default="rest")},
    "noted": {"text": text(2000, "a note")},
    "step_skipped": {"step": text(40, "the step")},
    "undone": {"event_id": text(80, "the event taken back")},
    "closed": {},
}

# Every function -----------------------------------------------------------------------------------------------------

CUT_REPLY = {
    "rows": integer(1, 5000, "centres across the width"),
    "columns": integer(1, 5000, "centres along the length"),
    "pieces": integer(1, 1000000, "centres"),
    "rotated": boolean("whether the centre's length lies across the frame"),
    "cuts_along_m": many(number("m", 0, 5, "distance from the datum edge"), 2, 5001, "cuts that run along the length, from the long edge"),
    "cuts_across_m": many(number("m", 0, 5, "distance from the datum edge"), 2, 5001, "cuts that run across, from the short edge"),
    "piece_kg": number("kg", 0, 200, "mass of one centre"),
    "trim_kg": number("kg", 0, 50000, "mass of trim and cut loss"),
}
POUR_REPLY = _with(
    {
        "mass_kg": number("kg", 0, 50, "caramel weighed in"),
        "length_m": number("m", 0, 5, "frame length"),
        "width_m": number("m", 0, 5, "frame width"),
        "slab_height_m": number("m", 0, 0.1, "height of the poured slab"),
        "settled_height_m": number("m", 0, 0.12, "height once at room temperature"),
        "bars": many(number("m", 0, 0.1, "height of a bar"), 0, 20, "the bars to stack, thickest first"),
        "bar_height_m": number("m", 0, 0.2, "their total height"),
        "area_m2": number("m²", 0, 25, "area inside the frame"),
        "volume_m3": number("m³", 0, 3, "volume poured"),
        "warnings": COOL_REPLY["warnings"],
    },
    INPUTS,
)
MELT_REPLY = _with(
    {
        "bursts": many(BURST, 0, 60, "the plan, to be corrected by every reading; none when it starts in the window"),
        "total_s": number("s", 0, 36000, "bursts and stirs together"),
        "energy_j": number("J", -1e8, 1e8, "energy the caramel and the vessel take up"),
    },
    INPUTS,
)
COOL_READINGS = {
    "readings": many(
        record({"at_s": number("s", 0, 1e6, "time after pouring"), "surface_c": number("°C", -10, 150, "infrared reading of the top")}, "one reading"),
        0,
        60,
        "infrared readings so far",
        default=[],
    ),
    "touches": many(
        record({"at_s": number("s", 0, 1e6, "time after pouring"), "firm": boolean("whether the middle felt firm enough to cut")}, "one touch test"),
        0,
        60,
        "touch tests so far",
        default=[],
    ),
    "reading_low_k": number("K", -5, 5, "how cold readings run", default=1.0, basis="assumed", source="emissivity_manuals"),
    "reading_sd_k": number("K", 0.05, 10, "standard deviation of a reading", default=2.0, basis="assumed", source="assumed"),
}
RUN = document("the state of a batch, as `run.replay` makes it")

FUNCTIONS = {
    "units.convert": {
        "request": {
            "value": number("", -1e12, 1e12, "what to convert"),
            "from": text(8, "its unit"),
            "to": text(8, "the unit wanted"),
        },
        "reply": {"value": number("", -1e16, 1e16, "the converted value")},
    },
    "materials.properties": {
        "request": {"material": MATERIAL, "temp_c": number("°C", -40, 150, "temperature")},
        "reply": {
            "density_kg_m3": number("kg/m³", 0, 20000, "density"),
            "heat_capacity_j_kgk": number("J/(kg K)", 0, 10000, "specific heat"),
            "conductivity_w_mk": number("W/(m K)", 0, 500, "thermal conductivity"),
            "diffusivity_m2_s": number("m²/s", 0, 5, "thermal diffusivity"),
        },
    },
    "materials.heat": {
        "request": {
            "material": MATERIAL,
            "mass_kg": number("kg", 0, 1000, "mass"),
            "from_c": number("°C", -40, 150, "first temperature"),
            "to_c": number("°C", -40, 150, "last temperature"),
        },
        "reply": {"energy_j": number("J", -1e10, 1e10, "heat taken up; negative when cooling")},
    },
    "melt.oven_from_water_test": {
        "request": {
            "water_kg": number("kg", 0.2, 3, "water"),
            "start_c": number("°C", 0, 60, "stirred water before"),
            "end_c": number("°C", 1, 95, "stirred water after"),
            "seconds_s": number("s", 20, 600, "time"),
            "container_kg": number("kg", 0.01, 5, "empty container", default=None),
            "room_c": number("°C", -5, 45, "room temperature", default=None),
        },
        "reply": {
            "power_w": number("W", 0, 5000, "power the water absorbed"),
            "power_sd_w": number("W", 0, 5000, "its standard deviation"),
        },
    },
    "melt.plan": {"request": MELT, "reply": MELT_REPLY},
    "melt.next_burst": {
        "request": _with(MELT, {"history": HISTORY}),
        "reply": {
            "action": choice(("burst", "ready", "read_again", "rest", "stop"), "what to do"),
            "seconds_s": number("s", 0, 3600, "length of the burst or rest, 0 otherwise"),
            "then": choice(("turn", "stir"), "what follows the burst"),
            "read": boolean("whether a reading is wanted after this burst"),
            "bulk_c": number("°C", -1e6, 1e6, "bulk temperature now"),
            "bulk_low_c": number("°C", -1e6, 1e6, "10 % point"),
            "bulk_high_c": number("°C", -1e6, 1e6, "90 % point"),
            "expected_c": number("°C", -1e6, 1e6, "bulk temperature after the burst and a stir"),
            "hottest_c": number("°C", -1e6, 1e6, "hottest spot in the burst, 95 % point"),
            "power_w": number("W", 0, 5000, "power this mass absorbs, as believed now"),
            "power_sd_w": number("W", 0, 5000, "its standard deviation"),
            "reason": document("`{code, values}`: why"),
        },
    },
    "pour.plan": {"request": _with(POUR, BASIS), "reply": POUR_REPLY},
    "cut.plan": {"request": CUT, "reply": CUT_REPLY},
    "cut.fit_frame": {"request": FIT, "reply": {"frames": many(FRAME_FOUND, 0, 40, "frames that fit, smallest area first")}},
    "cool.plan": {"request": COOL, "reply": COOL_REPLY},
    "cool.refit": {
        "request": _with(COOL, COOL_READINGS),
        "reply": _with(
            COOL_REPLY,
            {
                "loss_factor": number("", 0.1, 10, "heat loss over that of the model, as fitted"),
                "loss_factor_sd": number("", 0, 2, "standard deviation of its logarithm"),
            },
        ),
    },
    "slab.plan": {
        "request": SLAB,
        "reply": _with(
            {
                "caramel_kg": number("kg", 0, 50, "caramel to weigh in"),
                "blocks": integer(0, 1000, "blocks to open"),
                "leftover_kg": number("kg", 0, 50, "left of the last block"),
                "pour": record(POUR_REPLY, "as pour.plan"),
                "cut": record(CUT_REPLY, "as cut.plan"),
                "melt": record(MELT_REPLY, "as melt.plan"),
                "cool": record(COOL_REPLY, "as cool.plan"),
                "frames": many(FRAME_FOUND, 0, 40, "other frames that would do"),
                "melt_request": document("the request to melt.plan, for melt.next_burst at the bench"),
                "cool_request": document("the request to cool.plan, for cool.refit at the bench"),
                "warnings": COOL_REPLY["warnings"],
            },
            INPUTS,
        ),
    },
    "run.replay": {
        "request": {"plan": document("the plan of the batch"), "events": many(document("an event", unread=True), 0, 20000, "events, in any order")},
        "reply": {"run": RUN},
    },
    "run.apply": {"request": {"run": RUN, "event": document("an event", unread=True)}, "reply": {"run": RUN}},
    "run.advise": {
        "request": {"run": RUN, "at_ms": number("ms", 0, 1e14, "corrected time now")},
        "reply": {
            "step": text(40, "the step that is open"),
            "say": document("`{code, values}`: the prompt"),
            "number": document("`{kind, value, low, high}`: the one number that matters, or null"),
            "clocks": many(document("`{name, due_ms, sound}`"), 0, 20, "running clocks, soonest first"),
            "action": document("`{code, kind, body}`, or `{code, entry}` that opens the keypad: the big button, or null"),
            "choices": many(document("as `action`"), 0, 6, "other buttons of this step"),
            "entry": document(
                "`{kind, field, name, low, high, last, likely_low, likely_high, band_low, band_high, body}`: a number to type, or null"
            ),
            "caution": document("`{word, code}`: signal word and sentence, or null"),
            "more": document("`{code, values}`: a second, smaller line, or null"),
            "wants": document("`{name, request, kind}`: call this function, write its reply as an event of this kind; or null"),
            "undo": document("`{event_id, code}`: what undo would take back, or null"),
            "melt": document("the reply of melt.next_burst while melting, for the ladder; or null"),
        },
    },
}
