"""What goes into a piece of a product of the shop, by the names that stock gives it."""

from ..core import check
from ..core.allergens import allergen_of
from ..core.check import figure
from ..core.problems import Problem
from ..physics import materials
from ..steps.coat import plan as coat
from ..steps.coat.fields import COATING
from . import KINDS
from .hands import rows
from .poured.plan import USUAL_HEIGHT_M

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Document, Readable

CARAMEL_C = 70.0
LIES_UNDER = ("under", "also")
COUNT = 3.0  # pieces that lie under, where nobody has said how many (assumed)
PREBOTTOM_M = 0.0005  # as the shop's row has it (assumed)


def density_of(caramel: "Any") -> float:
    """Density of a row of caramel (kg/m³)."""
    return figure(caramel, "density_kg_m3") or materials.density(materials.resolved("caramel"), CARAMEL_C)


def row_of(shop: "Any", name: str, row_id: "Any") -> "Any":
    """A row of a list of the shop by its id; {}: there is none."""
    found = [one for one in rows(shop, name) if one.get("id") == row_id]
    return found[0] if found else {}


def of_product(row: "Any", shop: "Any") -> "Document | None":
    """What a piece takes of each material, with what drips off; None: its size is not known.

    Reply: caramel_kg (kg), piece_kg (kg, finished), parts [{material, amount (in its unit)}], unlisted (what it
    takes that no row of the shop names, or nobody has weighed: caramel, under, chocolate, salt).
    """
    sizes = [one.piece_kg for one in KINDS if one.piece_kg and one.name == row.get("kind")]
    caramel = row_of(shop, "caramels", row.get("caramel_id"))
    caramel_kg = sizes[0](row, density_of(caramel)) if sizes else None
    if caramel_kg is None:
        return None
    found: "Document" = {"caramel_kg": caramel_kg, "piece_kg": caramel_kg, "parts": [], "unlisted": []}
    _take(found, "caramel", "caramels", caramel, caramel_kg, caramel_kg)
    for name in LIES_UNDER:
        _under(found, row, shop, name)
    _chocolate(found, row, shop)
    salt_kg = figure(row, "coating", "salt_each_kg") if row.get("finish") == "dipped" else None
    if salt_kg:
        salts = [one for one in rows(shop, "materials") if one.get("what") == "salt"]
        named = [one for one in salts if one.get("name") == (row.get("coating") or {}).get("salt")]
        salt = (named or salts or [{}])[0]
        _take(found, "salt", "materials", {} if _is_counted(salt) else salt, salt_kg, salt_kg)
    return found


def _is_counted(row: "Any") -> bool:
    """Whether a material is bought by the piece."""
    return bool(row.get("unit") == "each")


def _take(found: "Document", what: str, name: str, row: "Any", amount: float, stays: float) -> None:
    found["piece_kg"] += 0.0 if what == "caramel" else stays
    if type(row.get("id")) is str:
        found["parts"].append({"material": name + "/" + row["id"], "amount": amount})
    elif what not in found["unlisted"]:
        found["unlisted"].append(what)


def under_row(shop: "Any", kind: str) -> "Any":
    """The row in stock of what lies under: called so, or with that allergen alone on its label; {}: none."""
    under = [one for one in rows(shop, "materials") if one.get("what") == "under"]
    called = [one for one in under if one.get("id") == kind or kind in str(one.get("name")).lower()]
    allergen = allergen_of(kind)
    alike = [one for one in under if allergen is not None and one.get("contains") == [allergen]]
    return (called or alike or [{}])[0]


def _under(found: "Document", row: "Any", shop: "Any", name: str) -> None:
    kind = (row.get("cluster") or {}).get(name) if row["kind"] == "cluster" else None
    if type(kind) is not str:
        return
    each_kg = figure(row, "cluster", name + "_each_kg")
    count = figure(row, "cluster", name + "_count") or COUNT
    amount = (each_kg or 0.0) * count
    listed = under_row(shop, kind) if each_kg else {}
    _take(found, "under", "materials", listed, count if _is_counted(listed) else amount, amount)


def _chocolate(found: "Document", row: "Any", shop: "Any") -> None:
    dipped, below = row.get("finish") == "dipped", row.get("prebottom") is True
    if not dipped and not below:
        return
    chocolate = row_of(shop, "chocolates", row.get("chocolate_id"))
    sides = [figure(row, "piece_" + one + "_m") for one in ("length", "width")]
    below_m = (figure(row, "coating", "prebottom_m") or PREBOTTOM_M) if below else 0.0
    try:
        if dipped:
            coated: "Any" = coat.plan(_request(found, row, chocolate, sides, below_m))
            coat_kg, under_kg = coated["coating_kg"], coated["prebottom_kg"]
        else:
            density = materials.density(materials.resolved(_kind(chocolate)), coat.COLD_C)
            coat_kg, under_kg, coated = 0.0, (sides[0] or 0.0) * (sides[1] or 0.0) * below_m * density, {"drip_kg": 0.0}
    except Problem:  # a cluster whose pick-up nobody has weighed, or figures that do not go together
        _take(found, "chocolate", "chocolates", {}, 0.0, 0.0)
        return
    _take(found, "chocolate", "chocolates", chocolate, coat_kg + under_kg + coated["drip_kg"], coat_kg + under_kg)


def _kind(chocolate: "Any") -> str:
    kind = chocolate.get("chocolate")
    return kind if type(kind) is str else "dark_chocolate"


def _request(found: "Readable", row: "Any", chocolate: "Any", sides: "list[float | None]", below_m: float) -> "Any":
    coating: "Any" = row.get("coating") or {}
    wanted: "Document" = {"pieces": 1, "chocolate": _kind(chocolate), "prebottom_m": below_m}
    if row["kind"] == "cluster":
        wanted.update(piece=None, centre_kg=found["piece_kg"], prebottom_m=0.0)
    else:
        height_m = figure(row, "slab_height_m") or USUAL_HEIGHT_M
        wanted["piece"] = {"length_m": sides[0], "width_m": sides[1], "height_m": height_m}
    thick_m = coating.get("thickness_m")
    if thick_m is not None:
        wanted["thickness_m"] = {"bottom": thick_m, "side": thick_m, "top": thick_m}
    for name, here in (("pickup_share", "pickup"), ("method", "method")):
        if coating.get(name) is not None:
            wanted[here] = coating[name]
    return check.checked(COATING, wanted)
