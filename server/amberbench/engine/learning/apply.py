"""How a plan takes in what the shop's batches measured."""

from math import log, sqrt

from ..core import check
from ..core.problems import Problem
from ..steps.melt import oven, unevenness
from . import fields
from .fold import BAND_SD

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from typing import Any

    from ..core.annotations import Document, Readable
    from ..products.kind import Kind


def apply_request(request: "Document") -> "Document":
    """A request to slab.plan or cluster.plan with the shop's measured values in place of what is assumed.

    Request: measured (the reply of learn.fold), request (a request to the function named), function, oven_id, base_id,
    product_id, caramel_id.
    Reply: request (the same, with oven.power_w, oven.power_sd_w, oven.unevenness, oven.unevenness_sd, loss_factor,
    loss_factor_sd, spread, target_c, residue, yield_share, dip.pickup and trim_share where measured; their basis is
    measured, their number of batches in batches), used [{field, value, n}].
    Raises: Problem not_measured (measured), and those of the function for amount and frame.
    Relation: what a person typed for this batch stays. The power is that of the nearest mass measured, by the
    load factor; another 10 % of spread outside its band.
    Source: buffler_1993 for the load factor, assumed for the spread.
    """
    asked = dict(request["request"]) if type(request["request"]) is dict else request["request"]
    kind = fields.KIND_BY_FUNCTION[request["function"]]
    check.checked(kind.request, asked)
    basis, batches = asked.get("basis") or {}, asked.get("batches") or {}
    check.check_basis(basis)
    if type(batches) is not dict:
        raise Problem("batches", "not_a_record", batches)
    basis, batches = dict(basis), dict(batches)
    found: "list[Document]" = []
    try:
        measured = check.checked(fields.FUNCTIONS["learn.fold"]["reply"], request["measured"])
    except Problem:
        raise Problem("measured", "not_measured") from None

    def take(field: str, value: float, n: int) -> None:
        basis[field], batches[field] = "measured", n
        found.append({"field": field, "value": value, "n": n})

    if measured["residue"] is not None and _free(asked, "residue", basis):
        asked["residue"] = min(measured["residue"]["share"], 0.3)
        take("residue", asked["residue"], measured["residue"]["n"])
    for base in _with_id(measured["bases"], request["base_id"]):
        if _free(asked, "loss_factor", basis):
            for field in ("loss_factor", "loss_factor_sd", "spread"):
                asked[field] = base[field]
                take(field, base[field], base["n"])
    _take_ready(kind, asked, _with_id(measured["caramels"], request["caramel_id"]), basis, take)
    for product in _with_id(measured["products"], request["product_id"]):
        _take_product(kind, asked, product, basis, take)
        _take_pickup(asked, product["pickup"], basis, take)
    _take_oven(kind, asked, measured["ovens"], request["oven_id"], basis, take)
    if found:
        asked["basis"], asked["batches"] = basis, batches
    return {"request": asked, "used": found}


def _with_id(rows: "Sequence[Readable]", row_id: str | None) -> "list[Readable]":
    return [row for row in rows if row["id"] == row_id]


def _free(record: "Readable", name: str, basis: "Readable", path: str | None = None) -> bool:
    """Whether a field was left to a default or an older measurement, not typed for this batch."""
    return record.get(name) is None or basis.get(path or name, "typed") != "typed"


def _take_ready(
    kind: "Kind", asked: "Document", caramels: "list[Readable]", basis: "Readable", take: "Callable[..., Any]"
) -> None:
    """The temperature at which this shop cuts the caramel, where the plan knows of such."""
    for caramel in caramels:
        if "target_c" in kind.request and _free(asked, "target_c", basis):
            asked["target_c"] = caramel["ready_c"]
            take("target_c", caramel["ready_c"], caramel["n"])


def _take_product(
    kind: "Kind", asked: "Document", product: "Readable", basis: "Readable", take: "Callable[..., Any]"
) -> None:
    """What turned out good of the product, and what was trimmed off it, where the plan knows of such."""
    shares = {"yield_share": (product["yield"], product["n"])}
    if product["trim"] is not None:
        shares["trim_share"] = (product["trim"]["share"], product["trim"]["n"])
    for name in sorted(shares):
        share, n = shares[name]
        if n > 0 and name in kind.request and _free(asked, name, basis):
            asked[name] = min(max(share, kind.request[name]["low"]), kind.request[name]["high"])
            take(name, asked[name], n)


def _take_pickup(asked: "Document", pickup: "Readable | None", basis: "Readable", take: "Callable[..., Any]") -> None:
    """What dipped pieces took up, unless somebody typed that, or how thick the coat is."""
    dip = asked.get("dip")
    if pickup is None or type(dip) is not dict:
        return
    if all(_free(dip, name, basis, "dip." + name) for name in ("pickup", "thickness_m")):
        asked["dip"] = dict(dip, pickup=max(pickup["share"], 0.01))
        take("dip.pickup", asked["dip"]["pickup"], pickup["n"])


def _take_oven(
    kind: "Kind",
    asked: "Document",
    ovens: "Sequence[Readable]",
    oven_id: str | None,
    basis: "Readable",
    take: "Callable[..., Any]",
) -> None:
    mine = _with_id(ovens, oven_id)
    if not mine or asked.get("jacket") is not None:
        return
    mass_kg = kind.mass_kg(check.checked(kind.request, asked))
    one = min(mine, key=lambda one: (abs(log(one["mass_kg"] / mass_kg)), one["mass_kg"]))
    given = asked.get("oven") or {}
    if one["unevenness"] is not None and _free(given, "unevenness", basis, "oven.unevenness"):
        by_mass = unevenness.by_mass(mass_kg) - unevenness.by_mass(one["mass_kg"])
        uneven = min(max(one["unevenness"] + by_mass, 1.0), 4.0)
        asked["oven"] = given = dict(given, unevenness=uneven, unevenness_sd=one["unevenness_sd"])
        take("oven.unevenness", uneven, one["n"])
        take("oven.unevenness_sd", one["unevenness_sd"], one["n"])
    if not _free(given, "power_w", basis, "oven.power_w"):
        return
    power_w = one["power_w"] * oven.load_factor(mass_kg) / oven.load_factor(one["mass_kg"])
    spread = one["power_sd_w"] / one["power_w"]
    if not one["mass_band"]["low_kg"] <= mass_kg < one["mass_band"]["high_kg"]:
        spread = sqrt(spread * spread + BAND_SD * BAND_SD)
    power_w = min(max(power_w, 100.0), 3500.0)
    power_sd_w = min(max(power_w * spread, 1.0), 1500.0)
    asked["oven"] = dict(given, power_w=power_w, power_sd_w=power_sd_w, measured_in=oven.IN_MELTS)
    take("oven.power_w", power_w, one["n"])
    take("oven.power_sd_w", power_sd_w, one["n"])
