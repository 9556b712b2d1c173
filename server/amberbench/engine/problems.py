"""What a request can have wrong with it."""


class Problem(ValueError):
    """One field of a request cannot be accepted.

    field: dotted path in the request, e.g. "oven.rated_w"; code: key of the sentence "problem.<code>" in the
    text catalogue; given: the offending value; low, high, unit: the accepted range, where there is one;
    accepted: the accepted words, where there are some.
    """

    def __init__(self, field, code, given=None, low=None, high=None, unit=None, accepted=None):
        self.field = field
        self.code = code
        self.given = given
        self.low = low
        self.high = high
        self.unit = unit
        self.accepted = accepted
        super().__init__(self.sentence())

    def sentence(self):
        """English, in SI units: for the command line. Screens use the text catalogue instead."""
        words = self.field + ": " + self.code.replace("_", " ")
        if self.given is not None:
            words += ", given " + str(self.given)
        unit = " " + self.unit if self.unit else ""
        if self.low is not None and self.high is not None:
            words += "; accepted is " + str(self.low) + " to " + str(self.high) + unit
        elif self.low is not None:
            words += "; accepted is " + str(self.low) + unit + " or more"
        elif self.high is not None:
            words += "; accepted is at most " + str(self.high) + unit
        if self.accepted:
            words += "; accepted: " + ", ".join(str(word) for word in self.accepted)
        return words

    def document(self):
        """The problem as a document: `{field, code, given, low, high, unit, accepted, message}`."""
        return {
            "field": self.field,
            "code": self.code,
            "given": self.given if _plain(self.given) else str(self.given),
            "low": self.low,
            "high": self.high,
            "unit": self.unit,
            "accepted": self.accepted,
            "message": self.sentence(),
        }


def _plain(value):
    if isinstance(value, float):
        return value - value == 0.0
    return value is None or isinstance(value, (str, int))
