"""Allergens that labels name, by the lists of the EU and the US, and those of what lies under the caramel.

The EU's fourteen: annex II of Regulation (EU) No 1169/2011 (read). The US nine: 21 USC 321(qq), with sesame since the
FASTER Act of 2021 (read). Both want the kind of nut by its name (21 USC 343(w)(2); article 21 of the regulation), and
the EU that of cereal. Pine nuts are on the list of tree nuts of the US alone (FDA guidance of January 2025, read in
summaries); it counts black, California and Japanese walnuts as kinds of their own, which are walnuts here.
"""

TREE_NUTS = ("almond", "brazil_nut", "cashew", "hazelnut", "macadamia", "pecan", "pine_nut", "pistachio", "walnut")
CEREALS = ("wheat", "rye", "barley", "oats")
# "nuts" and "gluten" are what a label says that names no kind, and what older rows say: one kind is not the other, so
# that they cover none and none covers them.
OTHERS_OF_EUROPE = ("fish", "crustaceans", "molluscs", "celery", "mustard", "lupin")
ALLERGENS = (
    ("milk", "nuts")
    + TREE_NUTS
    + ("peanuts", "gluten")
    + CEREALS
    + ("soya", "egg", "sesame", "sulphites")
    + OTHERS_OF_EUROPE
)
# A batch with these comes after every batch without: their crumbs travel, and the worst reactions are to them (from
# memory).
LAST = ("nuts", "peanuts") + TREE_NUTS
# Of chocolate only what the name says; its label says the rest.
OTHERS = {"peanut": "peanuts", "pretzel": "wheat", "milk_chocolate": "milk", "white_chocolate": "milk"}

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Iterable


def allergen_of(material: str | None) -> str | None:
    """The allergen of a material by its name, or None: none known, or a material of the shop's own."""
    if material in TREE_NUTS:
        return material
    return OTHERS.get(material) if isinstance(material, str) else None


def in_label_order(found: "Iterable[str | None]") -> list[str]:
    """Allergens once each, in the order of the list."""
    said = list(found)
    return [one for one in ALLERGENS if one in said]
