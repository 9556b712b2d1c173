"""One shift at the bench, stopped at every screen and state a person can meet, so that each can be looked at.

Two halves, which may be walked at once: the melt, with a caramel that gets too warm, then too hot; and the slab, from
the pour to the closed record. While it cools a second batch starts, whose screens carry a clock of the first.
"""

import re
from collections.abc import Iterator

from e2e.camera import takes_photo
from e2e.phone import Phone

# Readings (°C) typed in this story; the shop's window is 71–77 °C, its darkening line 82, its stop line 85.
SCORCHED, OVER, IN_WINDOW = "96", "79", "74"
MOST_READINGS = 6
FORMS = {"Orders": "New order", "Stock": "A delivery came"}


def desk_before_work(phone: Phone) -> Iterator[str]:
    """The desk of a phone that has no batch yet, and the plan with answer, problem and something unreadable."""
    yield "today, empty"
    phone.page.get_by_role("button", name=phone.word("Who is at this phone?")).tap()
    yield "who is at this phone"
    phone.page.get_by_role("dialog").get_by_role("button", name="First worker").tap()
    for place in ("Records", "Orders", "Stock", "Shop", "Help", "Settings"):
        phone.opens_place(place)
        if place == "Settings":
            phone.page.get_by_label(phone.word("Name of another phone")).fill("Bench")
            phone.page.get_by_role("button", name=phone.word("Show a code")).tap()
            phone.page.locator(".pairing-code").wait_for()
        if form := FORMS.get(place):
            phone.page.get_by_role("link", name=phone.word(form), exact=True).tap()
            yield f"{place.lower()}, a form"
            phone.opens_place(place)
        yield f"{place.lower()}, empty" if place in ("Records", "Orders", "Stock") else place.lower()
    phone.opens_place("Plan")
    phone.answered()
    yield "plan, answered"
    phone.page.get_by_role("button", name=phone.word("Print the plan")).tap()
    phone.page.locator(".paper").wait_for()
    yield "plan, as a printed page"
    phone.page.get_by_role("button", name=phone.word("Back"), exact=True).tap()
    phone.page.locator(".mark-assumed").first.tap()
    phone.page.get_by_role("button", name=re.compile(phone.word("assumed"))).first.tap()
    yield "plan, basis of a figure opened"
    caramel = phone.page.get_by_label(phone.word("Caramel"), exact=True)
    caramel.fill("900")
    phone.refused()
    yield "plan, a problem"
    caramel.fill("a lot")
    phone.refused()
    yield "plan, unread quantity"


def melting(phone: Phone) -> Iterator[str]:
    """The first batch until it is poured: every prompt of the melt, rings, and both ways of being too warm."""
    phone.plans_and_starts()
    yield "set up"
    yield from sheets(phone)
    phone.taps()
    yield from keypad(phone, "weigh", "1.8", "99")
    yield from keypad(phone, "lot", "117")
    yield "burst, the first"
    phone.starts_a_burst()
    yield "burst, heating"
    phone.bench.get_by_role("button", name=phone.word("Try the sound")).tap()
    phone.bench.get_by_role("button", name=phone.word("I heard it"), exact=True).wait_for()
    yield "burst, sound tried"
    phone.bench.get_by_role("button", name=phone.word("I did not hear it")).tap()
    yield "burst, sound not heard"
    phone.bench.get_by_role("button", name=phone.word("Play it again")).tap()
    phone.bench.get_by_role("button", name=phone.word("I heard it"), exact=True).tap()
    yield "burst, sound heard"
    phone.waits_for_the_ring()
    yield "ring, turn"
    phone.silences()
    yield "turn"
    phone.taps()
    yield "burst, the second"
    while phone.step != "stir":
        phone.starts_a_burst()
        phone.waits_for_the_ring()
        phone.silences()
        if phone.step == "turn":
            phone.taps()
    yield "stir"
    phone.taps("Stirs freely")
    yield from too_hot_then_warm(phone)
    yield "pour"


def too_hot_then_warm(phone: Phone) -> Iterator[str]:
    if phone.step == "burst":
        yield "burst, a reading offered"
        phone.opens("Read it")
        yield "burst, reading opened"
    yield from reading(phone, SCORCHED)
    if not phone.ring.count():
        yield "read again"
        reads_until(phone, SCORCHED, "rest")
    yield "ring, too hot"
    phone.silences()
    yield "rest, too hot"
    phone.taps()
    yield "rest, off the heat"
    phone.opens("Read it")
    phone.keys("7")
    phone.waits_for_the_ring(700)
    yield "ring, as a strip over half a reading"
    phone.silences()
    phone.takes_back_digits(1)
    reads_until(phone, OVER, "rest")
    yield "rest, too warm"
    phone.taps()
    phone.opens("Read it")
    reads_until(phone, IN_WINDOW, "pour")


def reading(phone: Phone, value: str) -> Iterator[str]:
    yield "keypad of a reading, empty"
    phone.keys(value)
    yield "keypad of a reading, typed"
    phone.taps()


def reads_until(phone: Phone, value: str, step: str) -> None:
    """Types the same reading as often as the phone asks for it."""
    for _ in range(MOST_READINGS):
        if phone.has_keypad:
            phone.types(value)
        elif phone.step == "rest" and step != "rest":
            phone.opens("Read it")
        if phone.step == step:
            return
    raise AssertionError(f"{MOST_READINGS} readings of {value} and still at {phone.step}, not at {step}")


def keypad(phone: Phone, step: str, value: str, impossible: str | None = None) -> Iterator[str]:
    """A keypad empty, typed, and (where a value can be impossible) questioned; then sent."""
    phone.is_at(step)
    yield f"{step}, keypad empty"
    if impossible:
        phone.keys(impossible)
        phone.passes(750)
        phone.button.tap()
        phone.page.locator(".asked").wait_for()
        yield f"{step}, keypad questioned"
        phone.button.tap()
    phone.keys(value)
    yield f"{step}, keypad typed"
    phone.taps()


def sheets(phone: Phone) -> Iterator[str]:
    phone.page.get_by_role("button", name=phone.word("First aid")).tap()
    yield "first-aid sheet"
    phone.closes_sheet()
    phone.page.get_by_role("button", name=phone.word("More")).tap()
    yield "more sheet"
    phone.page.get_by_role("button", name=phone.word("Write a note")).tap()
    phone.page.get_by_label(phone.word("What to remember")).wait_for()
    yield "note sheet"
    phone.closes_sheet()


def cooling(phone: Phone) -> Iterator[str]:
    """The first batch rests; a second one starts beside it and is left in its first burst."""
    phone.taps("Poured")
    yield "cool, the bowl soaks"
    phone.page.clock.fast_forward(130_000)
    phone.passes(1_000)
    yield "cool"
    phone.opens("Read the slab")
    yield "cool, keypad of the slab's top"
    phone.keys("68")
    yield "cool, slab's top typed"
    phone.taps()
    yield "cool, read once"
    phone.leaves_the_bench()
    yield "today, one batch running"
    phone.plans_and_starts()
    yield "set up, beside another clock"
    phone.taps()
    yield "weigh, beside another clock"
    phone.types("1.8")
    phone.taps()
    phone.starts_a_burst()
    yield "burst, heating beside another clock"
    phone.leaves_the_bench()
    yield "today, two batches running"
    phone.page.get_by_role("link", name="Squares, 24 mm").last.tap()
    phone.is_at("cool")
    yield "cool, beside another clock"
    phone.waits_for_the_ring()
    yield "ring, of the other batch"
    phone.silences()
    phone.cools_until_the_ring()
    yield "ring, the slab"
    phone.silences()
    yield "touch"
    refits = len(phone.facts_of("cooling_refitted"))
    phone.taps("Not yet: 10")
    for _ in range(50):
        if len(phone.facts_of("cooling_refitted")) > refits:
            break
        phone.passes(100)
    phone.taps("Firm already")


def cutting(phone: Phone) -> Iterator[str]:
    for step in ("loosen", "prebottom", "flip", "score"):
        phone.is_at(step)
        yield step
        if step == "score":
            phone.opens("Open the map")
            yield "map sheet"
            phone.closes_sheet()
        phone.taps()
    phone.is_at("cut")
    yield "cut"
    phone.taps()
    yield from keypad(phone, "count", "196")
    yield from keypad(phone, "weigh_out", "0.12", "99")
    phone.is_at("close")
    yield "close"
    phone.opens("Weigh the bowl")
    yield from keypad(phone, "close", "0.03")
    phone.taps("Close the batch")
    phone.is_at("closed")
    yield "closed"


def desk_after_work(phone: Phone) -> Iterator[str]:
    phone.page.get_by_role("button", name=phone.word("See the record")).tap()
    phone.page.get_by_role("heading", name=phone.word("Planned and happened")).wait_for()
    yield "record"
    takes_photo(phone)
    yield "record, with a photo"
    phone.page.locator("button.photo").tap()
    phone.page.get_by_role("dialog").wait_for()
    yield "photo, opened"
    phone.page.get_by_role("button", name=phone.word("Close the photo")).tap()
    phone.page.get_by_role("link", name=phone.word("The record as one printed page")).tap()
    phone.page.locator(".paper").wait_for()
    yield "record, as a printed page"
    phone.page.get_by_role("button", name=phone.word("Back"), exact=True).tap()
    yield from on_paper(phone)
    phone.opens_place("Records")
    yield "batches, filled"
    phone.page.goto("/bench/unknown")
    yield "bench, unknown batch"
    phone.page.goto("/nonsense")
    yield "unknown address"


def on_paper(phone: Phone) -> Iterator[str]:
    """A batch kept as a sheet, and the sheet typed back with one row half filled in."""
    phone.opens_place("Plan")
    phone.answered()
    phone.keeps_on_paper()
    yield "batch sheet"
    phone.page.get_by_role("button", name=phone.word("Type the paper sheet in")).tap()
    phone.page.get_by_label(phone.word("Seconds set"), exact=True).first.fill("60")
    yield "sheet, typed back"
    phone.page.get_by_role("button", name=phone.word("Write it into the record")).tap()
    phone.page.get_by_role("alert").first.wait_for()
    yield "sheet, a problem"


def melt_shift(phone: Phone) -> Iterator[str]:
    """From the empty desk until the caramel may be poured."""
    yield from desk_before_work(phone)
    yield from melting(phone)


def slab_shift(phone: Phone) -> Iterator[str]:
    """From the pour to the record and what else stands at the desk."""
    phone.plans_and_starts()
    phone.sets_up()
    phone.melts()
    for part in (cooling, cutting, desk_after_work):
        yield from part(phone)
