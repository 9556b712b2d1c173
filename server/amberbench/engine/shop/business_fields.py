"""What can be set of a shop's trade: money, hours, what it buys, boxes it sells, customers, suppliers, people."""

from ..core.allergens import ALLERGENS
from ..core.dates import WEEKDAYS
from ..core.field_kinds import boolean, choice, integer, many, number, record, text

NAME = text(60, "what people call it", default="")
SHOP = {
    "address": text(300, "the maker's address, as labels name it", default=""),
    "currency": text(3, "ISO 4217 code of the money it counts in", default=""),
    "rate_minor_per_h": integer(0, 10**9, "what an hour of hands costs, in the smallest coin", default=None),
    "energy_minor_per_kwh": number("", 0, 1e6, "what a kilowatt hour costs, in the smallest coin", default=None),
    "open_s": number("s", 0, 86400, "when work begins, seconds of the day", default=28800.0),
    "close_s": number("s", 0, 86400, "when work ends, seconds of the day", default=61200.0),
    "work_days": many(choice(WEEKDAYS, "a day"), 0, 7, "days on which there is work", default=list(WEEKDAYS[:5])),
    "rule": choice(("us", "eu", "uk"), "whose rules labels and net contents follow; null: not chosen", default=None),
    "code_pattern": text(
        40, "how lot codes are made: YY, Y, DDD, L stand for year, day of the year, letter", default="YYDDDL"
    ),
}
# What is bought, by the pack: its label, its supplier, and below how much it is to be bought again.
BOUGHT = {
    "pack_amount": number("", 0.000001, 100000, "how much is in a pack, in its unit", default=None),
    "lowest": number("", 0, 100000, "to be bought below this, in its unit; null: never", default=None),
    "ingredients": text(1000, "ingredients as its label lists them, in order", default=""),
    "ingredients_other": text(1000, "the same list in the other language of labels in two", default=""),
    "best_by_days": integer(1, 10000, "how many days it keeps; null: its label says", default=None),
    "supplier_id": text(64, "who it is bought from", default=None),
}
WHAT_FOR = ("under", "salt", "packaging", "other")
MATERIALS = {
    "name": NAME,
    "what": choice(WHAT_FOR, "what it is for", default="other"),
    "unit": choice(("kg", "each"), "whether it is weighed or counted", default="kg"),
    "contains": many(choice(ALLERGENS, "an allergen"), 0, 40, "allergens on its label", default=[]),
}
MATERIALS.update(BOUGHT)
BOXES = {
    "name": NAME,
    "lines": many(
        record(
            {"product_id": text(64, "a product"), "count": integer(1, 1000, "how many of it")}, "so many of a product"
        ),
        0,
        40,
        "what is in it",
        default=[],
    ),
    "columns": integer(1, 100, "pockets across; null: no pockets", default=None),
    "rows": integer(1, 100, "pockets down; null: no pockets", default=None),
    "tare_kg": number("kg", 0, 10, "weight of the empty box with cups and lid", default=None),
    "label_kg": number("kg", 0.001, 100, "net weight its label declares", default=None),
    "price_minor": integer(0, 10**9, "its price, in the smallest coin; null: not set", default=None),
    "tax_share": number("", 0, 1, "tax on top of the price", default=None),
    "shelf_days": integer(1, 10000, "how many days it keeps from when it is packed", default=None),
    "label_width_m": number("m", 0.01, 0.5, "width of its label", default=None),
    "label_height_m": number("m", 0.01, 0.5, "height of its label", default=None),
    "packaging": many(
        record(
            {"material": text(90, "materials/<id>"), "amount": number("", 0, 1000, "how much of it")},
            "so much of a material",
        ),
        0,
        20,
        "box, cups, lid, label of one",
        default=[],
    ),
}
CUSTOMERS = {
    "name": NAME,
    "address": text(300, "where it goes", default=""),
    "counter": boolean("whether it is the shop's own counter", default=False),
}
SUPPLIERS = {
    "name": NAME,
    "address": text(300, "where it comes from", default=""),
    "phone": text(40, "its telephone", default=""),
}
PEOPLE = {
    "name": NAME,
    "initial": text(3, "one letter or two that stand for the name", default=""),
    "role": text(40, "what this person does", default=""),
}
