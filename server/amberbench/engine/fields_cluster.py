"""The events of a batch of clusters."""

from .fields_shared import SEEN
from .kinds import boolean, number, together

EVENTS = {
    "allergens_checked": {},
    "under_laid": {},
    "filled": together(
        {
            "kg": number("kg", 0.001, 20, "caramel in the funnel then"),
            "bulk_c": number("°C", 20, 150, "its temperature as believed"),
            "sd_k": number("K", 0, 60, "standard deviation of bulk_c, as believed; null: as usual", default=None),
            "bowl_c": number("°C", 20, 150, "what stays in the bowl, as believed; null: as warm", default=None),
        },
        SEEN,
    ),
    "fill_read": together({"surface_c": number("°C", 0, 150, "infrared reading into the funnel")}, SEEN),
    "fill_ended": together(
        {
            "left_kg": number("kg", 0, 20, "what goes back from the funnel into the bowl", default=0.0),
            "bulk_c": number("°C", 20, 150, "temperature of the bowl with it, as believed"),
        },
        SEEN,
    ),
    "tray_laid": SEEN,
    "laying_ended": {},
    "tack_tested": together({"tacky": boolean("whether the first row is tacky")}, SEEN),
    "second_laid": SEEN,
    "funnel_emptied": {},
    "tray_freed": together({"free": boolean("whether its clusters come off the paper")}, SEEN),
    "separated": {},
}
