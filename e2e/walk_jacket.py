"""A batch in the water jacket, stopped at every screen of its own, and the shifts that checks go through."""

from collections.abc import Callable, Iterator

import pytest

from e2e.phone import Phone
from e2e.walk import melt_shift, slab_shift
from e2e.walk_chocolate import chocolate_shift
from e2e.walk_cluster import cluster_shift
from e2e.walk_room import room_shift
from e2e.walk_stand import stand_shift


def waits_for_hours(phone: Phone, step: str) -> None:
    """In steps of five minutes until a step is asked for and rings; the water is topped up on the way."""
    for _ in range(100):
        if phone.ring.count() and phone.step == "top_up" and step != "top_up":
            phone.silences()
            phone.taps()
        if phone.ring.count() and phone.step == step:
            return
        phone.page.clock.fast_forward(300_000)
        phone.passes(1_000)
    raise AssertionError(f"eight hours and no {step}")


def chooses_the_jacket(phone: Phone) -> None:
    """Plans a slab from 1.8 kg with the shop's water-jacketed vessel."""
    phone.opens_place("Plan")
    phone.page.get_by_label(phone.word("Caramel"), exact=True).fill("1.8")
    phone.unfolds()
    phone.page.get_by_label(phone.word("Bowl or jug"), exact=True).select_option(label="Water-jacketed kettle, 5 l")
    phone.answered()


def starts(phone: Phone) -> Iterator[str]:
    """From the plan until the block is in the water jacket."""
    phone.start.tap()
    phone.is_at("set_up")
    yield "set up, water jacket"
    phone.taps()
    phone.types("1.8")
    phone.types("117")
    phone.is_at("block_in")
    yield "block in"
    phone.taps()
    phone.is_at("soften")
    yield "softening"


def jacket_until_the_pour(phone: Phone) -> Iterator[str]:
    """A batch in the water jacket: every prompt until it may be poured."""
    chooses_the_jacket(phone)
    yield "plan, water jacket"
    water = phone.page.get_by_label(phone.word("Jacket water"), exact=True)
    water.fill("100")
    phone.refused()
    yield "plan, water too hot"
    water.fill("88")
    phone.answered()
    yield from starts(phone)
    yield from softens(phone)


def softens(phone: Phone) -> Iterator[str]:
    waits_for_hours(phone, "top_up")
    yield "ring, water"
    phone.silences()
    yield "top up"
    phone.taps()
    waits_for_hours(phone, "look")
    yield "ring, look"
    phone.silences()
    yield "look"
    phone.taps("Lumps left")
    waits_for_hours(phone, "look")
    phone.silences()
    phone.taps("Stirs freely")
    phone.is_at("read")
    yield "read, from the jacket"
    phone.types("64")
    phone.is_at("soften")
    yield "softening, free"
    waits_for_hours(phone, "read")
    phone.silences()
    phone.types("90")
    yield "ring, too hot in the jacket"
    phone.silences()
    yield "rest, too hot in the jacket"
    phone.taps()
    phone.opens("Read it")
    phone.types("73")
    phone.is_at("pour")
    yield "pour, from the jacket"


def jacket_shift(phone: Phone) -> Iterator[str]:
    """The same for a slab from a water jacket: what is different there."""
    yield from jacket_until_the_pour(phone)
    phone.taps("Poured")
    phone.cools()
    phone.cuts_and_closes()
    phone.page.get_by_role("button", name=phone.word("See the record")).tap()
    phone.page.get_by_role("heading", name=phone.word("Planned and happened")).wait_for()
    yield "record, water jacket"


Shift = Callable[[Phone], Iterator[str]]
SHIFTS = pytest.mark.parametrize(
    "shift", [melt_shift, slab_shift, jacket_shift, cluster_shift, chocolate_shift, room_shift, stand_shift]
)
