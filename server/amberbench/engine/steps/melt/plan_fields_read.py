"""What a run reads of a plan's melt."""

from ...core.field_kinds import together
from .fields import MELT

LINES = ("mass_kg", "start_c", "material", "window_low_c", "window_high_c", "limit_c", "warn_c", "stop_c")
# In a jacket there is neither oven nor burst.
IN_JACKET = {name: MELT[name] for name in LINES}
IN_OVEN = together(IN_JACKET, {name: MELT[name] for name in ("room_c", "burst_s", "step_s", "oven", "vessel")})
