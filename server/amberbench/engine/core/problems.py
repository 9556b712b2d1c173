"""Problem: why a field of a request is not accepted."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from .annotations import Document


MOST_SHOWN = 80


class Problem(ValueError):
    """One field of a request cannot be accepted.

    field: dotted path in the request, e.g. "oven.rated_w"; code: key of the sentence "problem.<code>" in the
    text catalogue; given: the offending value; low, high, unit: the accepted range, where there is one;
    accepted: the accepted words, where there are some.
    """

    def __init__(
        self,
        field: str,
        code: str,
        given: "Any" = None,
        low: float | None = None,
        high: float | None = None,
        unit: str | None = None,
        accepted: "list[Any] | None" = None,
    ) -> None:
        self.field = field
        self.code = code
        self.given = given
        self.low = low
        self.high = high
        self.unit = unit
        self.accepted = accepted
        super().__init__(field + ": " + code)

    def document(self) -> "Document":
        """The problem as a document; whoever shows it puts the sentence of the code in the place of `message`."""
        return {
            "field": self.field,
            "code": self.code,
            "given": _shown(self.given),
            "low": self.low,
            "high": self.high,
            "unit": self.unit,
            "accepted": self.accepted,
            "message": self.field + ": " + self.code,
        }


def _shown(value: "Any") -> "Any":
    """The given value as a document may carry it: finite, short, and the same under every Python."""
    if type(value) is str and len(value) > MOST_SHOWN:
        return value[:MOST_SHOWN] + "…"
    if type(value) is float and value - value != 0.0:
        return str(value)
    if type(value) is dict:
        return "…"
    if type(value) in (list, tuple):
        return "[…]"
    return value
