"""The shop is the fold of its events: last write wins for each field of each row, history stays in the log.

Folding is total: an event that makes no sense is listed in `ignored` and changes nothing.
"""

from ..core import allergens, check, field_kinds, log
from ..core.problems import Problem
from ..physics import materials
from ..steps.melt import plan as melt
from ..steps.temper import plan as temper
from . import fields

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Document, Readable


KIND = "shop_set"
ID_LETTERS = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_.:-"
MOST_IGNORED = 50
# Lines of heat that must rise from one to the next.
HEAT_LINES = ("windows.slab.low_c", "windows.slab.high_c", "warn_c", "stop_c", "limit_c")
LOWEST_DENSITY, HIGHEST_DENSITY = 800.0, 1700.0  # kg/m³: whipped to nearly dry; beyond lies a slip


def fold(request: "Document") -> "Document":
    """The shop document after all of its events, whatever order they come in; the same id counts once.

    Request: shop_id (null: that of the first event), events (kind shop_set, body {doc, field, value, basis}).
    Reply: shop (the document: `{id, basis, …}` and a list for each of `fields.LISTS`, rows in the order in which
    they first appear, with every field or what stands until it is set; basis by "<doc>.<field>"), ignored [{id, why}].
    Raises: Problem for a request that is none; an event never raises.
    Relation: order of the log (run.order_key). null takes a value back; removed true hides a row. What a vessel is
    made of sets its specific heat. A caramel's label and weighed density make its material. Milk and white chocolate
    contain milk whatever was said.
    Source: usda_sr28 for what a label leaves out, memory for specific heats.
    """
    ignored: "list[Document]" = []
    shop_id = request["shop_id"]
    events = _in_order(request["events"], ignored)
    if shop_id is None and events:
        shop_id = events[0]["shop_id"]
    said: "dict[str, Document]" = {}
    order: list[str] = []
    for event in events:
        if event["shop_id"] != shop_id:
            _ignore(ignored, event, "other_shop")
            continue
        try:
            doc = _take(said, event["body"])
        except Problem as problem:
            _ignore(ignored, event, problem.code)
            continue
        if doc not in order:
            order.append(doc)
    return {"shop": _document(shop_id, said, order), "ignored": ignored}


def _in_order(events: "list[Any]", ignored: "list[Any]") -> "list[Document]":
    """Events that are some, each once, in the order of the log."""
    sound: "dict[str, Document]" = {}
    for event in events:
        if not log.well_formed(event) or type(event.get("shop_id")) is not str:
            _ignore(ignored, event, "malformed")
        elif event["kind"] != KIND:
            _ignore(ignored, event, "unknown_kind")
        else:
            sound[event["id"]] = event
    return sorted(sound.values(), key=log.total_key)


def _ignore(ignored: "list[Any]", event: "Any", why: str) -> None:
    if len(ignored) < MOST_IGNORED:
        name = event.get("id") if type(event) is dict else None
        ignored.append({"id": name if type(name) is str else None, "why": why})


def _take(said: "Document", body: "Document") -> "Any":
    """Writes one event's value where it belongs; returns the doc. Raises Problem."""
    doc: "Any" = body.get("doc")
    field: "Any" = body.get("field")
    basis = body.get("basis", "typed")
    if basis not in field_kinds.BASES:
        raise Problem("basis", "not_an_option", basis, accepted=list(field_kinds.BASES))
    value = accepted(doc, field, body.get("value"))
    row = said.setdefault(doc, {})
    row[field] = (value, basis)
    if field == "made_of" and value is not None:
        row["heat_capacity_j_kgk"] = (fields.MADE_OF[value], "assumed")
    return doc


def known_fields(doc: "Any") -> "Document":
    """The fields of a doc: "shop" or "<list>/<id>". Raises Problem malformed or not_an_option (doc)."""
    if doc == "shop":
        return fields.SHOP
    parts = doc.split("/") if type(doc) is str else []
    if len(parts) != 2 or not 0 < len(parts[1]) <= 64 or [one for one in parts[1] if one not in ID_LETTERS]:
        raise Problem("doc", "malformed", doc)
    if parts[0] not in fields.LISTS:
        raise Problem("doc", "not_an_option", parts[0], accepted=sorted(fields.LISTS))
    return fields.LISTS[parts[0]]


def accepted(doc: "Any", field: "Any", value: "Any") -> "Any":
    """A value as the log takes it; null stays null. Raises Problem named after the field."""
    known = known_fields(doc)
    if field == "removed" and doc != "shop":
        described = fields.REMOVED
    elif type(field) is str and field in known:
        described = known[field]
    else:
        raise Problem("field", "unknown_field", field, accepted=sorted(known))
    if value is None:
        return None
    value = check.CHECKS[described["kind"]](described, value, field)
    if field == "step_s" and value not in melt.STEPS_S:
        raise Problem(field, "not_an_option", value, unit="s", accepted=list(melt.STEPS_S))
    return value


def check_request(request: "Document") -> "Document":
    """Whether values fit a row of the shop, before they are written.

    Request: doc ("shop" or "<list>/<id>"), values (by field; null: not set).
    Reply: values, as the log takes them.
    Raises: Problem malformed (doc), unknown_field, those of each value under its field's name; window_upside_down,
    line_above_line when a caramel's heat lines do not rise; composition_sum when its label adds up to more than 1;
    milk_in_caramel when it is said to be free of milk and its label's protein is not given; milk_in_chocolate when
    milk or white chocolate is;
    heat_line_too_low and missing for a temper curve; metal_in_oven (made_of) for a metal vessel without a water jacket.
    Source: practice for the order of the heat lines.
    """
    doc, values = request["doc"], request["values"]
    if type(values) is not dict:
        raise Problem("values", "not_a_record", values)
    full = {str(field): accepted(doc, field, values[field]) for field in sorted(values, key=str)}
    if full.get("made_of") in fields.METALS and not full.get("jacketed"):
        raise Problem("made_of", "metal_in_oven", full["made_of"])
    if doc.startswith("caramels/"):
        _check_lines(full)
        _check_label(full)
        _check_milk(full)
    if doc.startswith("chocolates/"):
        _check_curve(full)
        if full.get("contains") is not None and _unnamed(full):
            raise Problem("contains", "milk_in_chocolate")
    return {"values": full}


def _check_lines(full: "Readable") -> None:
    low, high = (full.get("windows.deposit." + name) for name in ("low_c", "high_c"))
    if low is not None and high is not None and low >= high:
        raise Problem("windows.deposit.low_c", "window_upside_down", low, high=high, unit="°C")
    lines = [(name, full[name]) for name in HEAT_LINES if full.get(name) is not None]
    for index in range(1, len(lines)):
        below, above = lines[index - 1], lines[index]
        if below[0] == HEAT_LINES[0] and above[0] == HEAT_LINES[1] and below[1] >= above[1]:
            raise Problem(below[0], "window_upside_down", below[1], high=above[1], unit="°C")
        if check.is_above(below[1], above[1], "°C"):
            raise Problem(below[0], "line_above_line", below[1], high=above[1], unit="°C")


def _check_milk(full: "Readable") -> None:
    """What is reckoned as firm caramel, which is made with milk, is not free of it."""
    contains = full.get("contains")
    if contains is not None and "milk" not in contains and full.get("label.protein_share") is None:
        raise Problem("contains", "milk_in_caramel")


def _unnamed(chocolate: "Document") -> list[str]:
    """What the kind of a chocolate contains by its name and its list leaves out."""
    named = allergens.allergen_of(chocolate["chocolate"])
    return [] if named is None or named in chocolate["contains"] else [named]


def _check_curve(full: "Readable") -> None:
    """A temper curve of one's own is whole and in order, or there is none."""
    given = {name: full["targets." + name] for name in temper.LINES if full.get("targets." + name) is not None}
    missing = [name for name in temper.LINES if name not in given]
    if given and missing:
        raise Problem("targets." + missing[0], "missing", unit="°C")
    if given:
        temper.lines({"targets": given})


def _check_label(full: "Readable") -> None:
    parts = [full.get("label." + name + "_share") or 0.0 for name in fields.LABEL]
    if sum(parts) > 1.02:
        raise Problem("label_share", "composition_sum", sum(parts), 0, 1.02)


def _document(shop_id: str, said: "Document", order: list[str]) -> "Document":
    basis: "Document" = {}
    shop = _row("shop", fields.SHOP, said.get("shop", {}), basis, [])
    shop["id"] = shop_id
    for name in fields.LISTS:
        shop[name] = []
    for doc in order:
        if doc == "shop" or said[doc].get("removed", (None, None))[0]:
            continue
        name, row_id = doc.split("/")
        row = _row(doc, fields.LISTS[name], said[doc], basis, shop["units"].values())
        row["id"] = row_id
        if name == "caramels":
            row["material"] = _material(row)
            _keep_below_darkening(row["windows"]["deposit"], row["warn_c"], said[doc])
        if name == "chocolates":
            row["contains"] = _unnamed(row) + row["contains"]
        shop[name].append(row)
    shop["basis"] = basis
    return shop


def _keep_below_darkening(window: "Document", warn_c: float, said: "Document") -> None:
    """A window for deposits that nobody has set ends at the darkening line at the latest."""
    if said.get("windows.deposit.high_c", (None, None))[0] is None:
        window["high_c"] = min(window["high_c"], warn_c)


def _row(doc: str, known: "Document", said: "Document", basis: "Document", own_units: "Any") -> "Document":
    """A row with every field as it was said or as it stands until then; what it rests on goes into `basis`."""
    row: "Document" = {}
    for field in known:
        value, rests_on = said.get(field, (None, None))
        if value is None:
            value, rests_on = check.default_in(known[field], own_units), known[field].get("basis")
        # Nobody measures a name.
        if value is not None and rests_on and known[field]["kind"] != "text":
            basis[doc + "." + field] = rests_on
        _put(row, field.split("."), list(value) if type(value) is list else value)
    return row


def _put(row: "Document", path: list[str], value: "Any") -> None:
    for name in path[:-1]:
        if name not in row:
            row[name] = {}
        row = row[name]
    row[path[-1]] = value


def _material(row: "Document") -> "Any":
    """What the engine reckons a caramel with: its built-in name, or that make-up with what its label says.

    The dry parts, from the label or else from the built-in make-up, fill what the water leaves: labels seldom add up.
    """
    name, density = row["material"], row["density_kg_m3"]
    label = {part: row["label"][part + "_share"] for part in fields.LABEL}
    if density is None and not [part for part in label if label[part] is not None]:
        return name
    usual = materials.resolved(name)
    if "water" not in usual:
        return name
    mixture = {part: usual[part] if label[part] is None else label[part] for part in label}
    dry = sum(mixture[part] for part in mixture if part != "water")
    scale = (1.0 - mixture["water"]) / dry if dry > 0.0 else 0.0
    if scale <= 0.0:
        return name
    for part in mixture:
        if part != "water":
            mixture[part] = mixture[part] * scale
    mixture["density_kg_m3"] = density
    return mixture


def density(request: "Document") -> "Document":
    """Density of a caramel from the weight of a known volume.

    Request: mass_kg (kg), volume_m3 (m³).
    Reply: density_kg_m3 (kg/m³).
    Raises: Problem density_out_of_reach (volume_m3) outside 800–1700 kg/m³.
    Relation: mass over volume. Example: 325 g in a 250 ml cup are 1300 kg/m³.
    Source: practice for the accepted range.
    """
    value = request["mass_kg"] / request["volume_m3"]
    if value < LOWEST_DENSITY or value > HIGHEST_DENSITY:
        raise Problem("volume_m3", "density_out_of_reach", value, LOWEST_DENSITY, HIGHEST_DENSITY, "kg/m³")
    return {"density_kg_m3": value}
