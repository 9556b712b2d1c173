"""A shop is set up from nothing on a phone, planned with at once, and edited on two phones off line."""

import os
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect

from e2e import axe, ruler
from e2e.conftest import PHONE
from e2e.languages import english_only, language_faults, reads_in
from e2e.phone import Phone
from e2e.server import Fork, ForkedServer, Server
from e2e.sync_helpers import all_sent

# As by a link of the app itself.
GO = "(path) => { history.pushState(null, '', path); dispatchEvent(new PopStateEvent('popstate')); }"
LISTS = (
    "ovens",
    "vessels",
    "caramels",
    "chocolates",
    "products",
    "bases",
    "bars",
    "tables",
    "frames",
    "trays",
    "funnels",
    "thermometers",
)


@pytest.fixture
def server(tmp_path: Path) -> Iterator[Server]:
    """A server whose shop is empty."""
    server = ForkedServer(tmp_path)
    seed = Fork(["begin", "--empty", *server.keeps], server.log)
    seed.wait(60)
    assert seed.poll() == 0, server.log.read_text()
    with server:
        yield server


def opens_shop(phone: Phone, *path: str) -> None:
    """Into the shop, then along the names of its links."""
    phone.opens_place("Shop")
    for name in path:
        phone.page.get_by_role("link", name=name).tap()
        phone.passes(400)


def fills(phone: Phone, **fields: str) -> None:
    """Types into fields by their labels (underlines are spaces) and keeps the row."""
    for label, value in fields.items():
        phone.page.get_by_label(label.replace("_", " "), exact=True).fill(value)
    keeps(phone)


def keeps(phone: Phone) -> None:
    phone.passes(600)
    expect(phone.page.get_by_role("button", name="Keep")).to_have_attribute("aria-disabled", "false")
    phone.page.get_by_role("button", name="Keep").tap()
    expect(phone.page.get_by_role("status")).to_contain_text(re.compile("Added|Changed"))


def adds(phone: Phone, list_name: str, button: str, **fields: str) -> None:
    opens_shop(phone, re.compile(f"^{list_name}"), button)
    fills(phone, **fields)


def sets_up_a_minimal_shop(phone: Phone) -> None:
    adds(phone, "Microwaves", "Add a microwave", Name="Blue oven", Power="900")
    adds(phone, "Caramels", "Add a caramel", Name="House caramel", Weight_of_a_block="2.5")
    opens_shop(phone, re.compile("^Products"), "Add a product")
    phone.page.get_by_label("Caramel", exact=True).select_option(label="House caramel")
    fills(phone, Name="Small squares", Centre_length="25", Centre_width="25", Slab_height="10")


def test_an_empty_shop_is_set_up_and_a_slab_planned_with_it(phone: Phone):
    expect(phone.page.get_by_role("link", name="Set up the shop")).to_be_visible()
    sets_up_a_minimal_shop(phone)
    phone.opens_place("Plan")
    phone.page.get_by_label("Caramel", exact=True).fill("1.5")
    phone.answered()
    expect(phone.page.get_by_label("Product").locator("option:checked")).to_have_text("Small squares")
    expect(phone.page.locator(".plan-answer")).to_contain_text("Weigh out 1.5")
    phone.start.tap()
    phone.is_at("set_up")
    assert phone.errors == []


def test_an_empty_shop_speaks_as_the_phone_does_until_it_says_otherwise(browser: Browser, server: Server):
    context = browser.new_context(base_url=server.url, **PHONE | {"locale": "es-MX"})
    phone = Phone(context.new_page())
    phone.language = "es-MX"
    phone.installs()
    expect(phone.page.locator("html")).to_have_attribute("lang", "es-MX")
    expect(phone.page.get_by_role("heading", name="Este taller está vacío")).to_be_visible()
    phone.opens_place("Shop")
    phone.page.get_by_role("link", name=re.compile("idioma")).tap()
    expect(phone.page.get_by_label("Idioma", exact=True)).to_have_value("es-MX")
    phone.page.get_by_label("Idioma", exact=True).select_option("en")
    phone.passes(600)
    phone.page.get_by_role("button", name="Guardar").tap()
    expect(phone.page.locator("html")).to_have_attribute("lang", "en")
    context.close()


def test_the_whole_shop_can_be_set_up_without_a_network_and_arrives_later(phone: Phone, server: Server):
    phone.loses_the_network()
    sets_up_a_minimal_shop(phone)
    phone.page.reload()
    opens_shop(phone)
    expect(phone.page.get_by_role("link", name=re.compile("^Microwaves"))).to_contain_text("Blue oven")
    phone.finds_the_network()
    sends_everything(phone)


def sends_everything(phone: Phone) -> None:
    """Everything unsent is sent, and the phone says so."""
    phone.opens_place("Settings")
    phone.page.get_by_role("button", name="Send now").tap()
    all_sent(phone)
    expect(phone.page.get_by_text("The server has everything recorded here")).to_be_visible()


def test_what_cannot_be_is_refused_before_it_is_written(phone: Phone):
    opens_shop(phone, re.compile("^Microwaves"), "Add a microwave")
    phone.page.get_by_label("Power", exact=True).fill("90000")
    phone.passes(600)
    expect(phone.page.locator(".field-problem")).to_contain_text(re.compile("too high"))
    expect(phone.page.get_by_role("button", name="Keep")).to_have_attribute("aria-disabled", "true")
    phone.page.get_by_label("Power", exact=True).fill("1.2 kW")
    keeps(phone)
    expect(phone.page.locator(".rows")).to_contain_text(re.compile(r"1[\s\u202f,]?200\s?W"))


def test_salt_nobody_would_put_on_a_piece_is_refused_by_the_words_of_its_field(phone: Phone):
    opens_shop(phone, re.compile("^Products"), "Add a product")
    phone.page.get_by_text("Dipping, salt and box").tap()
    for salt in ("0", "100"):
        phone.page.get_by_label("Salt on one piece", exact=True).fill(salt)
        phone.passes(600)
        told = phone.page.locator(".field-problem")
        expect(told).to_contain_text(re.compile(r"^Salt on one piece: .* Accepted: 0\.01\s?g to 2\s?g\.$"))


def test_a_row_taken_away_comes_back_when_asked(phone: Phone):
    adds(phone, "Microwaves", "Add a microwave", Name="Blue oven", Power="900")
    phone.page.get_by_role("link", name=re.compile("Blue oven")).tap()
    phone.page.get_by_role("button", name="Remove Blue oven").tap()
    expect(phone.page.get_by_role("status")).to_contain_text("Removed Blue oven")
    expect(phone.page.locator(".rows")).not_to_contain_text("Blue oven")
    phone.page.get_by_role("button", name="Undo").tap()
    expect(phone.page.locator(".rows")).to_contain_text("Blue oven")


def test_density_and_power_are_measured_by_guided_tests(phone: Phone):
    opens_shop(phone, re.compile("^Caramels"), "Add a caramel")
    phone.page.get_by_text("Measure the density").tap()
    phone.page.get_by_label("Caramel in the cup", exact=True).fill("325 g")
    phone.page.get_by_label("Volume of the cup", exact=True).fill("250")
    phone.page.get_by_role("button", name="Work it out").tap()
    phone.page.get_by_role("button", name=re.compile("Use 1.3")).tap()
    expect(phone.page.get_by_label("Density", exact=True)).to_have_value("1.3")
    fills(phone, Name="Weighed caramel")
    opens_shop(phone, re.compile("^Microwaves"), "Add a microwave")
    phone.page.get_by_text("Measure the power").tap()
    for label, value in (("Water", "1"), ("Water before", "10"), ("Water after", "60"), ("Time at full power", "20 s")):
        phone.page.get_by_label(label, exact=True).fill(value)
    phone.page.get_by_role("button", name="Work it out").tap()
    expect(phone.page.locator(".field-problem")).to_contain_text("3,500 W")
    phone.page.get_by_label("Water after", exact=True).fill("20.1")
    phone.page.get_by_label("Time at full power", exact=True).fill("52.5 s")
    phone.page.get_by_role("button", name="Work it out").tap()
    phone.page.get_by_role("button", name=re.compile("Use 84")).tap()
    fills(phone, Name="Tested oven")
    phone.page.get_by_role("link", name=re.compile("Tested oven")).tap()
    expect(phone.page.get_by_text("Measured in this shop")).to_be_visible()


def test_edits_of_two_phones_off_line_merge_field_by_field(phone: Phone, browser: Browser, server: Server):
    adds(phone, "Microwaves", "Add a microwave", Name="Blue oven", Power="900")
    sends_everything(phone)
    context = browser.new_context(base_url=server.url, **PHONE)
    other = Phone(context.new_page())
    other.installs()
    for one in (phone, other):
        one.loses_the_network()
        opens_shop(one, re.compile("^Microwaves"), re.compile("Blue oven"))
    fills(phone, Power="850")
    other.page.get_by_label("Smallest step of its dial").select_option("15")
    fills(other, Name="Old oven")
    for one in (phone, other, phone):
        one.finds_the_network()
        sends_everything(one)
    for one in (phone, other):
        opens_shop(one, re.compile("^Microwaves"), re.compile("Old oven"))
        expect(one.page.get_by_label("Power", exact=True)).to_have_value("850")
        expect(one.page.get_by_label("Smallest step of its dial")).to_have_value("15")
    context.close()


def test_the_invented_shop_can_be_taken_and_taken_away(phone: Phone):
    phone.page.get_by_role("button", name="Take the demo shop").tap()
    expect(phone.page.get_by_role("heading", name=re.compile("Demonstration kitchen"))).to_be_visible()
    phone.opens_place("Plan")
    phone.answered()
    opens_shop(phone)
    phone.page.get_by_role("button", name="Start with an empty shop").tap()
    expect(phone.page.get_by_text("Nothing here is your own yet")).to_be_visible()
    phone.page.get_by_role("button", name="Leave it as it is").tap()
    phone.page.get_by_role("button", name="Start with an empty shop").tap()
    phone.page.get_by_role("button", name="Remove what is invented").tap()
    expect(phone.page.get_by_role("heading", name="This shop is empty")).to_be_visible()
    phone.page.get_by_role("button", name="Undo").tap()
    expect(phone.page.get_by_role("heading", name="This is an invented shop")).to_be_visible()


def test_ones_own_rows_stay_when_the_invented_ones_are_taken_away(phone: Phone, server: Server):
    phone.page.get_by_role("button", name="Take the demo shop").tap()
    expect(phone.page.get_by_role("heading", name=re.compile("Demonstration kitchen"))).to_be_visible()
    adds(phone, "Microwaves", "Add a microwave", Name="Blue oven", Power="900")
    opens_shop(phone, re.compile("^Bowls and jugs"), re.compile("^Glass bowl"))
    fills(phone, Name="Our glass bowl")
    opens_shop(phone, re.compile("^Products"), "Add a product")
    phone.page.get_by_label("Caramel", exact=True).select_option(label="Firm caramel")
    fills(phone, Name="Ours", Centre_length="25", Centre_width="25", Slab_height="10")
    opens_shop(phone)
    phone.page.get_by_role("button", name="Start with an empty shop").tap()
    question = phone.page.get_by_role("group", name="Start with an empty shop")
    goes, stays = (question.locator("ul").nth(n) for n in (0, 1))
    for name in ("Blue oven", "Our glass bowl", "Ours", "Firm caramel"):
        expect(stays).to_contain_text(name)
        expect(goes).not_to_contain_text(name)
    expect(goes).to_contain_text("Large microwave")
    phone.page.get_by_role("button", name="Remove what is invented").tap()
    expect(phone.page.get_by_role("link", name=re.compile("^Microwaves"))).to_have_text("MicrowavesBlue oven")
    sends_everything(phone)
    shop = server.asks("/api/shop")
    left = {one["name"] for name in LISTS for one in shop[name]}
    assert left == {"Blue oven", "Our glass bowl", "Ours", "Firm caramel"}
    assert (shop["invented"], shop["name"]) == (False, "")


def test_the_invented_shop_comes_in_the_language_of_the_phone_that_takes_it(phone: Phone):
    phone.speaks("es")
    phone.page.get_by_role("button", name=phone.word("Take the demo shop")).tap()
    expect(phone.page.get_by_role("heading", name="Cocina de demostración (inventada)")).to_be_visible()
    phone.opens_place("Plan")
    phone.answered()
    expect(phone.page.get_by_label("Microondas", exact=True)).to_contain_text("Microondas grande")


def screens(phone: Phone) -> Iterator[str]:
    """Every screen of the shop: empty, filled, and each form."""
    yield "/"
    yield "/shop"
    phone.page.get_by_role("button", name="Take the demo shop").tap()
    expect(phone.page.get_by_role("heading", name="This is an invented shop")).to_be_visible()
    yield "/shop"
    yield "/shop/shop"
    yield "/settings"
    for name in LISTS:
        yield f"/shop/{name}"
        yield f"/shop/{name}/new"
    yield "/shop/caramels/caramel-soft"
    yield "/shop/chocolates/chocolate-milk"
    yield "/shop/products/square-salted-20"
    yield "/shop/products/cluster-pecan"


def test_every_screen_of_the_shop_is_accessible_and_fits_the_smallest_phone(phone: Phone):
    found, english = [], english_only()
    seen = ""
    phone.page.set_viewport_size({"width": 360, "height": 640})
    for path in screens(phone):
        if path != seen:
            phone.page.evaluate(GO, path)
            expect(phone.page.locator("h1")).not_to_have_text("")
        seen = path
        phone.passes(700)
        for folded in phone.page.locator("main details").all():
            folded.evaluate("one => { one.open = true; }")
        for language in ("en", "es"):
            reads_in(phone.page, language)
            faults = []
            for scheme in ("dark", "light"):
                phone.page.emulate_media(color_scheme=scheme)
                ruler.settles(phone)
                faults += axe.faults(phone.page, at_the_bench=False) + ruler.desk_faults(phone)
            faults += language_faults(phone.page, english) if language == "es" else []
            found += [f"{path} in {language}: {fault}" for fault in faults]
            if folder := os.environ.get("AMBERBENCH_SHOTS"):
                tall = phone.page.locator("main").evaluate("one => one.scrollHeight") + 60
                phone.page.set_viewport_size({"width": 360, "height": tall})
                phone.page.screenshot(path=f"{folder}/{path.strip('/').replace('/', '-') or 'today'}-{language}.png")
                phone.page.set_viewport_size({"width": 360, "height": 640})
        reads_in(phone.page, "en")
    assert not found, "\n".join(found)


def test_a_product_of_clusters_shows_its_own_fields_and_keeps_those_of_a_slab(phone: Phone):
    phone.page.get_by_role("button", name="Take the demo shop").tap()
    opens_shop(phone, re.compile("^Products"), re.compile("^Pecan clusters"))
    field = phone.page.get_by_label
    height = field("Slab height", exact=True)
    expect(field("One deposit", exact=True)).to_have_value("9")
    expect(height).to_have_count(0)
    expect(field("Trim on every edge", exact=True)).to_have_count(0)
    # What was typed as a slab is not written once it is clusters again.
    field("Made as").select_option(label="slab, cut")
    expect(field("One deposit", exact=True)).to_have_count(0)
    stands = height.input_value()
    height.fill("900")
    phone.passes(600)
    expect(phone.page.locator(".field-problem")).to_have_count(1)
    field("Made as").select_option(label="clusters")
    fills(phone, One_deposit="10")
    link = phone.page.get_by_role("link", name=re.compile("^Pecan clusters"))
    expect(link).to_contain_text(re.compile(r"10\s?g"))
    link.tap()
    field("Made as").select_option(label="slab, cut")
    expect(height).to_have_value(stands)
    assert phone.errors == []


def test_a_frame_of_the_shop_fills_in_both_sides_of_a_plan(phone: Phone):
    expect(phone.page.get_by_role("heading", name="This shop is empty")).to_be_visible()
    phone.opens_place("Plan")
    expect(phone.page.get_by_role("link", name="Set up the shop")).to_be_visible()
    sets_up_a_minimal_shop(phone)
    adds(phone, "Frames", "Add a frame", Name="Old frame", Length_inside="30 cm", Width_inside="25 cm")
    phone.opens_place("Plan")
    phone.unfolds()
    phone.page.get_by_label("Use this one").check()
    phone.page.get_by_label("Frame of the shop").select_option(label="Old frame")
    phone.answered()
    expect(phone.page.get_by_label("Frame length", exact=True)).to_have_value("300")
    expect(phone.page.locator(".plan-answer")).to_contain_text(re.compile(r"Frame\s?300 × 250\s?mm"))


def test_units_chosen_in_an_empty_shop_are_the_shops_and_its_first_windows_round_figures(phone: Phone):
    phone.opens_place("Settings")
    phone.page.get_by_label("Temperatures", exact=True).select_option("°F")
    expect(phone.page.get_by_label("Temperatures", exact=True)).to_have_value("°F")
    expect(phone.page.get_by_text("Only on this phone")).to_have_count(0)
    opens_shop(phone, re.compile("^Caramels"), "Add a caramel")
    phone.page.get_by_text("Temperatures, firmness").tap()
    windows = (("Pour from", "160"), ("Pour up to", "170"), ("Warmest to deposit", "180"), ("Scorches at", "200"))
    for label, value in windows:
        expect(phone.page.get_by_label(label, exact=True)).to_have_value(value)


def test_units_chosen_on_one_phone_become_those_of_the_whole_shop(phone: Phone, browser: Browser, server: Server):
    phone.page.get_by_role("button", name="Take the demo shop").tap()
    expect(phone.page.get_by_role("heading", name=re.compile("Demonstration kitchen"))).to_be_visible()
    phone.opens_place("Settings")
    phone.page.get_by_label("Temperatures", exact=True).select_option("°F")
    phone.page.get_by_label("Lengths", exact=True).select_option("in")
    expect(phone.page.get_by_text("Only on this phone. The shop has °C, kg, mm.")).to_be_visible()
    phone.page.get_by_role("button", name="Use these in the whole shop").tap()
    expect(phone.page.get_by_text("Only on this phone")).to_have_count(0)
    sends_everything(phone)
    context = browser.new_context(base_url=server.url, **PHONE)
    other = Phone(context.new_page())
    other.installs()
    other.opens_place("Settings")
    expect(other.page.get_by_label("Temperatures", exact=True)).to_have_value("°F")
    expect(other.page.get_by_label("Weights", exact=True)).to_have_value("kg")
    expect(other.page.get_by_label("Lengths", exact=True)).to_have_value("in")
    context.close()


def test_a_form_half_made_outlasts_the_bowl_another_screen_and_a_reload(phone: Phone):
    phone.page.get_by_role("button", name="Take the demo shop").tap()
    phone.opens_place("Plan")
    phone.answered()
    phone.page.get_by_label("Caramel", exact=True).fill("2.3")
    phone.unfolds()
    phone.page.get_by_label("Humidity", exact=True).fill("40")
    phone.answered()
    phone.opens_place("Help")
    phone.page.reload()
    phone.opens_place("Plan")
    expect(phone.page.get_by_label("Caramel", exact=True)).to_have_value("2.3")
    phone.unfolds()
    expect(phone.page.get_by_label("Humidity", exact=True)).to_have_value("40")
    phone.answered()
    phone.start.tap()
    phone.is_at("set_up")
    phone.leaves_the_bench()
    phone.opens_place("Plan")
    expect(phone.page.get_by_label("Caramel", exact=True)).to_have_value("1.8")
