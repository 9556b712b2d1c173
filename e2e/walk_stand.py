"""A stand-up test: a cube of a delivery, measured over three days, and its verdict kept for the caramel."""

from collections.abc import Iterator

from e2e.phone import Phone

HOUR_MS, DAY_MS = 3_600_000, 86_400_000
CARAMEL = "Firm caramel"


def starts_the_test(phone: Phone) -> Iterator[str]:
    """From the caramel in the shop to the measured fresh cube."""
    phone.page.goto("/shop/caramels")
    phone.page.get_by_role("link", name=CARAMEL).tap()
    start = phone.page.get_by_role("button", name=phone.word("Start the three-day stand-up test"))
    start.wait_for()
    yield "caramel, with its tests"
    start.tap()
    phone.is_at("set_up")
    yield "set up, cube"
    phone.taps()
    phone.is_at("lot")
    phone.types("117")
    phone.is_at("stand")
    yield "cube, fresh"
    phone.types("20")


def measures(phone: Phone, after_ms: int, height_mm: str) -> Iterator[str]:
    """Waits for the next look and takes it."""
    phone.page.clock.fast_forward(after_ms)
    phone.passes(1_000)
    phone.silences()
    phone.is_at("stand_look")
    yield f"cube, due after {after_ms // HOUR_MS} h"
    phone.types(height_mm)


def keeps_the_verdict(phone: Phone) -> Iterator[str]:
    phone.is_at("close")
    yield "cube, verdict"
    phone.taps("Close the batch")
    phone.page.get_by_role("button", name=phone.word("See the record")).tap()
    keep = phone.page.get_by_role("button", name=CARAMEL)
    keep.wait_for()
    yield "record, stand-up test"
    keep.tap()
    keep.wait_for(state="hidden")


def stand_shift(phone: Phone) -> Iterator[str]:
    yield from starts_the_test(phone)
    # Days pass on the phone only: it must not hear the server's clock.
    phone.loses_the_network()
    yield "cube, left alone"
    yield from measures(phone, HOUR_MS, "19.9")
    phone.leaves_the_bench()
    yield "today, a cube stands"
    phone.returns_to(CARAMEL)
    yield from measures(phone, DAY_MS - HOUR_MS, "18")
    yield from measures(phone, 2 * DAY_MS, "16")
    yield from keeps_the_verdict(phone)
    phone.opens_place("Plan")
    phone.answered()
    yield "plan of a caramel that slumps"
