"""Allergens that labels name, and those of what lies under the caramel."""

ALLERGENS = (
    "milk",
    "nuts",
    "peanuts",
    "gluten",
    "soya",
    "egg",
    "sesame",
    "sulphites",
)
# Nuts as annex II of Regulation (EU) No 1169/2011 has them, pretzels of wheat; ALLERGENS are eight of its fourteen
# (read), the others are taken to have no place at this bench (assumed). Of chocolate only what the name says;
# its label says the rest.
NUTS = ("almond", "cashew", "hazelnut", "macadamia", "pecan", "pistachio", "walnut")
# A batch with these comes after every batch without: their crumbs travel, and the worst reactions are to them (from
# memory).
LAST = ("nuts", "peanuts")
OTHERS = {"peanut": "peanuts", "pretzel": "gluten", "milk_chocolate": "milk", "white_chocolate": "milk"}


def allergen_of(material: str) -> str | None:
    """The allergen of a material by its name, or None: none known, or a material of the shop's own."""
    if material in NUTS:
        return "nuts"
    return OTHERS.get(material) if isinstance(material, str) else None
