"""A warm, damp room: what its air does stands on the plan and at the bench; the slab is chilled, the sticks wrapped."""

from collections.abc import Iterator

from e2e.phone import Phone

WRAPPED = "Wrapped sticks"


def plans_in_damp_air(phone: Phone, room: str = "28", humidity: str = "70") -> None:
    phone.opens_place("Plan")
    phone.page.get_by_label(phone.word("Product"), exact=True).select_option(label=WRAPPED)
    phone.page.get_by_label(phone.word("Room"), exact=True).fill(room)
    phone.unfolds()
    phone.page.get_by_label(phone.word("Humidity"), exact=True).fill(humidity)
    phone.answered()


def wraps(phone: Phone) -> Iterator[str]:
    """From the firm slab to the wrapped sticks."""
    for step in ("loosen", "flip", "score", "cut"):
        phone.is_at(step)
        yield f"{step}, in a warm damp room"
        phone.taps()
    phone.is_at("wrap")
    yield "wrap, centres rest"
    phone.waits_for_the_ring(1200)
    phone.silences()
    yield "wrap"
    phone.taps("All wrapped")
    phone.is_at("count")


def room_shift(phone: Phone) -> Iterator[str]:
    plans_in_damp_air(phone)
    yield "plan, warm damp room"
    phone.start.tap()
    phone.sets_up()
    phone.melts()
    phone.taps("Poured")
    yield "cool, in a room that does not firm it"
    phone.cools_until_the_ring()
    yield "ring, into the fridge"
    phone.silences()
    phone.is_at("chill")
    yield "chill"
    phone.taps("In the fridge")
    yield "cool, in the fridge"
    phone.waits_for_the_ring(1200)
    phone.silences()
    phone.is_at("touch")
    yield "touch, in a warm damp room"
    phone.taps("Firm")
    yield from wraps(phone)
