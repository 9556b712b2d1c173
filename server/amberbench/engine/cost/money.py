"""Money in whole minor units: sums of exact fractions, rounded once, with parts that add up to the whole."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

# Amounts are whole millionths of their unit (mg of kg), minutes whole milliseconds.
MILLIONTHS = 1000000
HOUR_MS = 3600000


def millionths(amount: float) -> int:
    """An amount in whole millionths, ties away from zero."""
    whole = int(abs(amount) * MILLIONTHS + 0.5)
    return whole if amount >= 0 else -whole


class Share:
    """An exact part of some money: numerator over denominator, in minor units."""

    def __init__(self, top: int, bottom: int = 1) -> None:
        self.top, self.bottom = top, bottom

    def plus(self, other: "Share") -> "Share":
        if self.bottom == other.bottom:
            return Share(self.top + other.top, self.bottom)
        return Share(self.top * other.bottom + other.top * self.bottom, self.bottom * other.bottom)._reduced()

    def times(self, top: int, bottom: int) -> "Share":
        return Share(self.top * top, self.bottom * bottom)._reduced()

    def _reduced(self) -> "Share":
        one, other = abs(self.top), self.bottom
        while other:
            one, other = other, one % other
        return Share(self.top // one, self.bottom // one) if one > 1 else self

    def rounded(self) -> int:
        """Whole minor units, ties up."""
        return (2 * self.top + self.bottom) // (2 * self.bottom)

    def up(self) -> int:
        """Whole minor units that are no less."""
        return -(-self.top // self.bottom)

    def whole(self) -> int:
        """Whole minor units below it."""
        return self.top // self.bottom


def total(shares: "Sequence[Share]") -> Share:
    found = Share(0)
    for share in shares:
        found = found.plus(share)
    return found


def parts(shares: "Sequence[Share]") -> list[int]:
    """Each share in whole minor units, together the rounded total: those with the largest rests are rounded up."""
    missing = total(shares).rounded() - sum(share.whole() for share in shares)
    # Rests compared exactly: over the product of all denominators.
    common = 1
    for share in shares:
        common *= share.bottom
    rests = [(-(share.top % share.bottom) * (common // share.bottom), n) for n, share in enumerate(shares)]
    up = [n for _rest, n in sorted(rests)[:missing]]
    return [share.whole() + (n in up) for n, share in enumerate(shares)]
