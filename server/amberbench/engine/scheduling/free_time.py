"""The free minutes of one person or thing, as the bits of one integer: bit n is set while minute n is free."""


def runs(free: int, length: int) -> int:
    """The minutes from which `length` minutes are free without a break, as bits."""
    have, found = 1, free
    while have < length:
        step = min(have, length - have)
        found &= found >> step
        have += step
    return found


def lowest(bits: int) -> int:
    """The number of the lowest bit that is set; -1 for none."""
    if bits & 1:
        return 0
    if not bits:
        return -1
    width = 2
    while not bits & ((1 << width) - 1):
        width *= 2
    low = 0
    while width > 1:
        width //= 2
        if not bits & ((1 << width) - 1):
            bits >>= width
            low += width
    return low


def span(start: int, length: int) -> int:
    """The bits of so many minutes from `start`; what lies before minute 0 is left out."""
    if start < 0:
        start, length = 0, length + start
    return ((1 << length) - 1) << start if length > 0 else 0


def without(free: int, taken: int) -> int:
    """What stays free when `taken` is used."""
    return free & taken ^ free
