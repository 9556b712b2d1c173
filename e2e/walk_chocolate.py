"""Chocolate: a bowl led from melt to leftover while a slab cools, then the slab dipped and salted from it."""

from collections.abc import Iterator

from e2e.phone import Phone

DIPPED = "Salted squares"
BOWL = "Dark chocolate"


def plans_dipped(phone: Phone) -> Iterator[str]:
    """The plan of a product that is dipped: what chocolate it takes."""
    phone.opens_place("Plan")
    phone.page.get_by_label(phone.word("Product"), exact=True).select_option(label=DIPPED)
    phone.page.get_by_label(phone.word("Caramel"), exact=True).fill("1.8")
    phone.answered()
    yield "plan, dipped"


def pours_the_slab(phone: Phone) -> None:
    phone.start.tap()
    phone.sets_up()
    phone.melts()
    phone.taps("Poured")
    phone.is_at("cool")


def plans_the_bowl(phone: Phone, kg: str = "2") -> Iterator[str]:
    """From the desk to the bowl's first step."""
    phone.opens_place("Plan")
    phone.page.get_by_label(phone.word("Product"), exact=True).select_option(label=phone.word("A bowl of chocolate"))
    phone.page.get_by_label(phone.word("Chocolate in temper"), exact=True).fill(kg)
    phone.answered()
    yield "plan, bowl of chocolate"
    phone.unfolds()
    seed = phone.page.get_by_label(phone.word("Seed"), exact=True)
    seed.fill("35")
    phone.refused()
    yield "plan, seed too warm"
    seed.fill("")
    phone.answered()
    phone.start.tap()
    phone.washes()
    phone.is_at("set_up")


def reads_the_bowl(phone: Phone, degrees: str) -> None:
    phone.opens("Read the bowl")
    phone.types(degrees)


def tempers(phone: Phone) -> Iterator[str]:
    """Set-up to a good strip, with a bowl too warm, too cool and a streaky strip on the way."""
    yield "set up, bowl"
    phone.taps()
    phone.is_at("weigh")
    yield "weigh, chocolate"
    phone.taps("As planned")
    phone.is_at("lot")
    yield "lot, chocolate"
    phone.types("55")
    phone.is_at("melt_bowl")
    yield "melt, the first burst"
    phone.taps("Start")
    yield "melt, heating"
    phone.waits_for_the_ring()
    yield "ring, stir chocolate"
    phone.silences()
    yield "melt, stir and read"
    phone.opens("Read the bowl")
    yield "keypad of the bowl, empty"
    phone.types("60")
    yield "melt, above its limit"
    reads_the_bowl(phone, "46.5")
    phone.is_at("seed")
    yield "seed"
    phone.taps()
    phone.is_at("stir_seed")
    yield "stir to range"
    for degrees, state in (("34", "bowl too warm"), ("29.5", "bowl too cool"), ("31.8", "strip test")):
        reads_the_bowl(phone, degrees)
        yield state
    phone.taps("Streaky or dull")
    yield "streaky, too warm"
    phone.taps()
    reads_the_bowl(phone, "31.6")
    phone.is_at("temper_check")
    phone.taps()
    phone.is_at("use")
    yield "chocolate in use"


def rewarms(phone: Phone) -> Iterator[str]:
    """The bowl's clock rings; it is warmed and read, gets too thick, and is used up."""
    phone.waits_for_the_ring(1500)
    yield "ring, the bowl"
    phone.silences()
    phone.is_at("rewarm")
    yield "warm the bowl"
    phone.taps()
    yield "read the bowl again"
    reads_the_bowl(phone, "31.7")
    phone.is_at("use")


def uses_up(phone: Phone) -> Iterator[str]:
    phone.page.get_by_role("button", name=phone.word("More")).tap()
    yield "more sheet of a bowl"
    phone.passes(750)
    phone.page.get_by_role("dialog").get_by_role("button", name=phone.word("Too thick")).tap()
    phone.looks()
    yield "bowl too thick"
    phone.taps()
    phone.taps("Done dipping")
    phone.is_at("weigh_out")
    yield "weigh the leftover"
    phone.types("0.6")
    phone.is_at("leftover")
    yield "number the leftover"
    phone.types("56")
    phone.is_at("close")
    yield "close, bowl"
    phone.taps()
    phone.is_at("closed")
    yield "closed, bowl"
    phone.page.get_by_role("button", name=phone.word("See the record")).tap()
    phone.page.get_by_role("heading", name=phone.word("Planned and happened")).wait_for()
    yield "record, bowl"


def dips(phone: Phone) -> Iterator[str]:
    """The cut slab rests, is dipped and salted, and sets."""
    for step in ("loosen", "prebottom", "flip", "score", "cut"):
        phone.is_at(step)
        phone.taps()
    phone.is_at("temper_check")
    yield "centres rest"
    phone.taps("Streaky or dull")
    yield "strip again"
    phone.page.clock.fast_forward(900_000)
    phone.waits_for_the_ring()
    phone.silences()
    phone.taps()
    phone.is_at("dip")
    yield "dip, before the first"
    phone.taps("Start")
    yield "dip"
    phone.waits_for_the_ring(200)
    yield "ring, salt"
    phone.silences()  # and says by it that they are salted
    phone.is_at("dip")
    yield "dip, salted"
    phone.taps("All dipped")
    phone.is_at("set")
    yield "set"
    phone.cools_until_the_ring()
    phone.silences()
    yield "set hard"
    phone.taps()
    phone.is_at("count")


def chocolate_shift(phone: Phone) -> Iterator[str]:
    """Every screen of a bowl of chocolate and of a dipped slab."""
    yield from plans_dipped(phone)
    pours_the_slab(phone)
    phone.leaves_the_bench()
    yield from plans_the_bowl(phone)
    yield from tempers(phone)
    yield from rewarms(phone)
    phone.leaves_the_bench()
    yield "today, slab and bowl"
    phone.returns_to(BOWL)
    yield from uses_up(phone)
    phone.opens_place("Bench")
    phone.returns_to(DIPPED)
    phone.cools()
    yield from dips(phone)
