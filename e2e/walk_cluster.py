"""Clusters with a second deposit, stopped at every screen of their own."""

from collections.abc import Iterator

from e2e.phone import Phone

CLUSTERS = "Pecan clusters"


def opens_the_plan(phone: Phone) -> None:
    phone.opens_place("Plan")
    phone.page.get_by_label(phone.word("Product"), exact=True).select_option(label=CLUSTERS)
    phone.page.wait_for_url("**/plan/clusters")


def plans_clusters(phone: Phone, sizes: bool = False) -> Iterator[str]:
    """From Today to the kept plan of forty clusters, which one tray takes; of two sizes."""
    opens_the_plan(phone)
    phone.answered()
    yield "plan, clusters"
    phone.unfolds()
    gap = phone.page.get_by_label(phone.word("Gap between two"), exact=True)
    gap.fill("2000")
    phone.refused()
    yield "plan, clusters with no room between them"
    gap.fill("8")
    phone.page.get_by_role("textbox", name=phone.word("Clusters"), exact=True).fill("40")
    phone.answered()
    if sizes:
        yield from says_two_sizes(phone)
    phone.start.tap()


def says_two_sizes(phone: Phone) -> Iterator[str]:
    """Half of the forty lighter than the others, and too heavy at first."""
    phone.page.get_by_role("textbox", name=phone.word("Clusters"), exact=True).fill("20")
    phone.page.get_by_role("button", name=phone.word("Another size")).tap()
    second = phone.page.get_by_role("group", name=phone.word("Size {n}").replace("{n}", "2"), exact=True)
    second.get_by_label(phone.word("One deposit"), exact=True).fill("900")
    phone.refused()
    yield "plan, clusters of two sizes, one too heavy"
    second.get_by_label(phone.word("One deposit"), exact=True).fill("8")
    phone.answered()
    yield "plan, clusters of two sizes"


def until_the_fill(phone: Phone) -> Iterator[str]:
    """Gate, what goes under, weighing in and the melt."""
    phone.is_at("set_up")
    yield "set up, clusters"
    phone.taps()
    phone.is_at("allergens")
    yield "allergens"
    phone.taps()
    phone.is_at("under_lot")
    yield "lot of what lies under"
    phone.keys("7")
    phone.letters("P-")
    yield "lot with letters, half typed"
    phone.opens("DEF")
    yield "three letters to choose from"
    phone.page.locator(".keys").get_by_role("button", name="E", exact=True).tap()
    phone.taps()
    phone.is_at("under")
    yield "what goes under"
    phone.taps()
    phone.taps("As planned")
    phone.types("117")
    phone.melts("fill")
    yield "fill"


def lays(phone: Phone) -> Iterator[str]:
    """One tray, and again while it is tacky."""
    phone.taps()
    phone.is_at("lay")
    yield "lay"
    phone.opens("Read the funnel")
    yield "keypad of the funnel"
    phone.types("75")
    phone.is_at("lay")
    phone.taps()
    phone.is_at("reheat")
    yield "funnel to be filled anew"
    tends_the_bowl(phone, "wait")
    yield "wait until it is tacky"
    phone.waits_for_the_ring(400)
    yield "ring, funnel"
    phone.silences()
    tends_the_bowl(phone, "tacky")
    phone.is_at("tacky")
    yield "tacky"
    phone.taps()
    phone.is_at("second")
    yield "second deposit"
    phone.taps()
    phone.is_at("empty")
    yield "empty the funnel"
    phone.taps()


def tends_the_bowl(phone: Phone, until: str) -> None:
    """Follows what bowl and funnel ask for until a step."""
    for _ in range(30):
        if phone.ring.count():
            phone.silences()
        if phone.step == until:
            return
        if phone.step == "burst":
            phone.bursts()
        elif phone.has_keypad:
            phone.types("74")
        elif phone.step == "wait":
            phone.waits_for_the_ring(400)
            phone.silences()
        else:
            phone.taps()
    raise AssertionError(f"{until} never came")


def frees_and_closes(phone: Phone) -> Iterator[str]:
    """The tray cools, is freed, split, counted."""
    phone.is_at("cool_tray")
    yield "tray resting"
    phone.cools_until_the_ring()
    phone.silences()
    phone.is_at("release")
    yield "release"
    phone.taps()
    phone.is_at("separate")
    yield "separate"
    phone.taps()
    phone.is_at("count")
    yield "count clusters"
    phone.types("38")
    phone.is_at("weigh_out")
    phone.types("0.05")
    phone.is_at("close")
    phone.taps()
    phone.is_at("closed")


def weighs_ten(phone: Phone, together: str, under: str, widths: tuple[str, ...]) -> None:
    """Opens the guide to the funnel and types what scale and ruler said."""
    phone.page.get_by_text(phone.word("Learn my funnel: weigh ten clusters")).tap()
    phone.page.get_by_label(phone.word("Their weight together"), exact=True).fill(together)
    phone.page.get_by_label(phone.word("What lies under them"), exact=True).fill(under)
    for n, width in enumerate(widths, start=1):
        phone.page.get_by_label(phone.word("Width {n}").replace("{n}", str(n)), exact=True).fill(width)
    phone.page.get_by_role("button", name=phone.word("Work it out")).tap()


def learns_the_funnel(phone: Phone) -> Iterator[str]:
    """On the record: ten clusters of this batch weighed and measured, refused, mended, kept."""
    weighs_ten(phone, "185", "200", ("37", "40", "43"))
    phone.page.locator(".guide .field-problem").wait_for()
    yield "record, a weighing that cannot be"
    phone.page.get_by_label(phone.word("What lies under them"), exact=True).fill("45")
    phone.page.get_by_role("button", name=phone.word("Work it out")).tap()
    keep = phone.page.get_by_role("button", name=phone.word("Keep it for {name}").replace("{name}", CLUSTERS))
    keep.wait_for()
    yield "record, what ten clusters taught"
    keep.tap()
    keep.wait_for(state="hidden")
    yield "record, kept for the product"


def cluster_shift(phone: Phone) -> Iterator[str]:
    """A batch of clusters from plan to record."""
    yield from plans_clusters(phone, sizes=True)
    for stretch in (until_the_fill, lays, frees_and_closes):
        yield from stretch(phone)
    phone.page.get_by_role("button", name=phone.word("See the record")).tap()
    phone.page.get_by_role("heading", name=phone.word("Planned and happened")).wait_for()
    yield "record, clusters"
    yield from learns_the_funnel(phone)


def keeps_a_sheet(phone: Phone, clusters: str, sizes: bool = False) -> str:
    """Plans clusters, half of them lighter if of two sizes, and keeps them as a paper sheet; the batch's id."""
    opens_the_plan(phone)
    phone.page.get_by_role("textbox", name=phone.word("Clusters"), exact=True).fill(clusters)
    if sizes:
        phone.page.get_by_role("button", name=phone.word("Another size")).tap()
        phone.page.get_by_label(phone.word("One deposit"), exact=True).nth(1).fill("8")
    phone.answered()
    return phone.keeps_on_paper()


def has_a_keypad_for_lots(phone: Phone) -> None:
    """Clusters, as far as the lot of their nuts."""
    for _ in plans_clusters(phone):
        pass
    phone.taps()
    phone.taps()
    phone.is_at("under_lot")
