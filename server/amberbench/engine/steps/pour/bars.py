"""Bars that close a frame: four of one height are a set, and how long they are says how large a frame they close.

Each bar's end butts against the side of the next, so a side of the frame, inside, is a bar's length less a bar's width
at most, and any shorter one can be set. Bars are taken to be as wide as they are high (assumed).
"""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable


BARS_IN_A_SET = 4
# Shorter inside than this is no frame (m); what pour.plan accepts.
SHORTEST_M = 0.02


class BarSet:
    """Four bars of a height: `height_m`, and the longest sides of a frame inside them, None where nobody has said how
    long they are."""

    def __init__(self, height_m: float, lengths_m: list[float | None]) -> None:
        self.height_m = height_m
        known = sorted((one for one in lengths_m if one is not None), reverse=True)
        whole = len(known) == len(lengths_m)
        # The two longer ones lie along the frame, the two shorter across.
        self.longest_m = max(SHORTEST_M, known[1] - height_m) if whole else None
        self.widest_m = max(SHORTEST_M, known[3] - height_m) if whole else None


def sets_of(bars: "list[Readable]") -> list[BarSet]:
    """The sets that bars [{height_m (m), length_m (m) or null, count}] make, longer bars first; those over are left."""
    by_height: "dict[int, list[tuple[float, float | None]]]" = {}
    for bar in bars:
        # To the micrometre: rows of one height, typed apart.
        key = int(bar["height_m"] * 1e6 + 0.5)
        by_height.setdefault(key, []).extend([(bar["height_m"], bar["length_m"])] * bar["count"])
    found = []
    for key in sorted(by_height):
        # A bar of unknown length is taken last.
        rows = sorted(by_height[key], key=lambda row: -1.0 if row[1] is None else row[1], reverse=True)
        for first in range(0, len(rows) - BARS_IN_A_SET + 1, BARS_IN_A_SET):
            found.append(BarSet(rows[0][0], [row[1] for row in rows[first : first + BARS_IN_A_SET]]))
    return found


def frame_within(sets: list[BarSet], stack_m: list[float]) -> tuple[float | None, float | None]:
    """(longest, widest) frame in m that a stack of bars (heights in m) closes; None: nobody said how long they are."""
    left, longest, widest = list(sets), [], []
    for height_m in stack_m:
        one = next(one for one in left if one.height_m == height_m)
        left.remove(one)
        if one.longest_m is not None and one.widest_m is not None:
            longest.append(one.longest_m)
            widest.append(one.widest_m)
    if len(longest) < len(stack_m):
        return None, None
    return min(longest), min(widest)
