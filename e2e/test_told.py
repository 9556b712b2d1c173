"""What a person is told: prompts aloud, a sound not heard, facts that may get lost, first aid; and notes."""

import json
import re
from pathlib import Path
from urllib.request import urlopen

import pytest
from playwright.sync_api import Browser, BrowserContext, Route, expect

from e2e import axe, browser_probes
from e2e.conftest import PHONE
from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent, exchanges

# Every screen of the desk, by the address under which it is opened, with its title.
SCREENS = {
    "/": "Demo",
    "/plan": "A slab of caramels",
    "/day": "The day",
    "/orders": "Orders",
    "/stock": "Stock",
    "/batches": "Batches",
    "/settings": "Settings",
    "/shop": "The shop",
    "/learned": "What the shop has learnt",
    "/label/gone": "Labels",
    "/nowhere": "There is nothing at this address.",
}
DAY_MS = 24 * 3_600_000
COOL_IT = re.compile("Cool the burn at once")


def test_a_note_written_off_line_stands_in_the_log(phone: Phone):
    phone.plans_and_starts()
    phone.loses_the_network()
    phone.opens("More")
    phone.opens("Write a note")
    notes(phone, "The new bowl, a little damp")
    expect(phone.page.get_by_role("dialog")).to_have_count(0)
    assert written_notes(phone) == ["The new bowl, a little damp"]
    phone.is_at("set_up")


def test_a_note_on_a_record_stands_in_its_timeline_and_reaches_the_server(phone: Phone):
    batch = phone.plans_and_starts()
    phone.leaves_the_bench()
    phone.page.goto(f"/batches/{batch}")
    phone.loses_the_network()
    notes(phone, "Sold to the school fair")
    expect(phone.page.locator(".timeline")).to_contain_text("Note: Sold to the school fair")
    phone.finds_the_network()
    all_sent(phone)
    events = phone.page.request.get(f"/api/batches/{batch}").json()["events"]
    assert [one["body"]["text"] for one in events if one["kind"] == "noted"] == ["Sold to the school fair"]


def test_server_whose_data_are_gone_is_told_and_facts_wait_on_the_phone(phone: Phone, server: Server, tmp_path: Path):
    batch = phone.plans_and_starts()
    all_sent(phone)
    away = server.database.rename(tmp_path / "away.sqlite")
    phone.opens("More")
    phone.opens("Write a note")
    notes(phone, "Nobody has this yet")
    phone.leaves_the_bench()
    exchanges(phone)
    expect(phone.page.get_by_text(re.compile("The shop's data are gone from where they were"))).to_be_visible()
    assert phone.unsent() == 1
    away.rename(server.database)
    all_sent(phone)
    expect(phone.page.get_by_text(re.compile("data are gone"))).to_have_count(0)
    kinds = [one["kind"] for one in server.asks(f"/api/batches/{batch}")["events"]]
    assert kinds.count("noted") == 1


def test_prompts_and_clocks_are_spoken_to_who_wants_them(context: BrowserContext):
    browser_probes.has_a_voice(context)
    phone = Phone(context.new_page())
    phone.installs()
    phone.plans_and_starts()
    assert spoken(phone) == [], "nobody has asked for it"
    phone.leaves_the_bench()
    phone.opens_place("Settings")
    phone.page.get_by_role("radio", name="On", exact=True).check()
    phone.returns_to("Squares")
    phone.sets_up()
    prompts = spoken(phone)
    assert prompts[0] == "Parchment, bars, gloves, water bowl ready?"
    assert prompts[-1].startswith("Bowl in, high,")
    phone.starts_a_burst()
    phone.waits_for_the_ring()
    phone.page.wait_for_function("() => spoken.at(-1) === 'Turn'")
    phone.silences()
    phone.page.wait_for_function("() => spoken.at(-1) === document.querySelector('.say').textContent")


def test_a_phone_without_a_voice_says_so(context: BrowserContext):
    context.add_init_script("Object.defineProperty(globalThis, 'speechSynthesis', { value: undefined })")
    phone = Phone(context.new_page())
    phone.page.goto("/settings")
    phone.page.get_by_role("button", name="Say something").tap()
    expect(phone.page.get_by_text("This browser cannot speak.")).to_be_visible()


def test_who_does_not_hear_the_test_sound_is_told_what_to_check(phone: Phone):
    phone.plans_and_starts()
    phone.sets_up()
    phone.starts_a_burst()
    phone.opens("Try the sound")
    phone.opens("I did not hear it")
    expect(phone.bench).to_contain_text("Mute switch? Volume?")
    phone.opens("Play it again")
    phone.opens("I heard it")
    expect(phone.bench.get_by_role("button", name=re.compile("sound|heard|Play"))).to_have_count(0)


def test_facts_unsent_for_more_than_a_day_are_told_and_saved_to_a_file(phone: Phone, tmp_path: Path):
    phone.loses_the_network()
    phone.plans_and_starts()
    phone.leaves_the_bench()
    told = phone.page.get_by_text(re.compile("^Entries kept here since .* have not reached the server"))
    phone.page.clock.fast_forward(DAY_MS - 600_000)
    phone.passes(1_000)
    expect(told).to_have_count(0)
    phone.page.clock.fast_forward(1_200_000)
    phone.passes(1_000)
    expect(told).to_be_visible()
    with phone.page.expect_download() as waiting:
        phone.page.get_by_role("button", name="Save unsent entries to a file").tap()
    waiting.value.save_as(tmp_path / "facts.json")
    saved = json.loads((tmp_path / "facts.json").read_text())["events"]
    assert [one["id"] for one in saved] == [one["id"] for one in phone.facts()] != []


@pytest.mark.parametrize("promised", [True, False])
def test_today_says_when_the_browser_does_not_promise_to_keep_the_data(context: BrowserContext, promised: bool):
    answer = json.dumps(promised)
    for name in ("persist", "persisted"):
        context.add_init_script(f"StorageManager.prototype.{name} = async () => {answer}")
    phone = Phone(context.new_page())
    phone.installs()
    told = phone.page.get_by_text("The browser may clear what is recorded here")
    expect(told).to_have_count(0 if promised else 1)


def test_over_plain_http_the_phone_is_told_that_it_needs_https(browser: Browser, server: Server):
    context = browser.new_context(base_url="http://shop.test", **PHONE)

    def answers(route: Route) -> None:
        try:
            with urlopen(route.request.url.replace("http://shop.test", server.url)) as answer:
                route.fulfill(headers=dict(answer.headers), body=answer.read())
        except OSError:
            route.abort()

    context.route("http://shop.test/**", answers)
    page = context.new_page()
    for place in ("/", "/settings"):
        page.goto(place)
        expect(page.get_by_text("It needs HTTPS. Start the server with serve -\u2060-\u2060lan")).to_be_visible()
        expect(page.get_by_text("Keep this page open")).to_have_count(0)
    context.unroute_all(behavior="ignoreErrors")
    context.close()


def test_first_aid_is_two_taps_away_everywhere_without_a_network(phone: Phone):
    batch = phone.plans_and_starts()
    phone.loses_the_network()
    phone.taps()
    phone.is_at("weigh")
    helps(phone)
    phone.types("1.8")
    phone.types("117")
    phone.starts_a_burst()
    helps(phone)
    phone.waits_for_the_ring()
    phone.silences()  # the first tap
    helps(phone)
    for place, title in (SCREENS | {f"/batches/{batch}": "Squares"}).items():
        phone.page.goto(place)
        expect(phone.page.get_by_role("heading", level=1, name=title)).to_be_visible()
        expect(phone.page.get_by_text("Fetching the screen")).to_have_count(0)
        phone.opens_place("Help")
        expect(phone.page.get_by_text(COOL_IT)).to_be_in_viewport()


def test_a_screen_that_cannot_be_fetched_says_so_and_comes_when_it_is_asked_for_again(browser: Browser, server: Server):
    context = browser.new_context(base_url=server.url, service_workers="block", **PHONE)
    context.route("**/assets/place-*", lambda route: route.abort())
    phone = Phone(context.new_page())
    phone.page.goto("/")
    phone.opens_place("Records")
    expect(phone.page.get_by_role("alert")).to_have_text(re.compile("This screen could not be fetched"))
    expect(phone.page.get_by_role("heading", level=1, name="Records")).to_be_visible()
    assert axe.faults(phone.page, at_the_bench=False) == []
    # Every place is asked for once after the first screen; from then on only a hand asks again.
    phone.page.wait_for_load_state("networkidle")
    context.unroute("**/assets/place-*")
    phone.page.get_by_role("button", name="Try again").tap()
    expect(phone.page.get_by_text("No batch yet.")).to_be_visible()
    context.close()


def test_first_aid_names_number_and_signs_at_the_bench_and_its_sources_on_help(phone: Phone):
    phone.plans_and_starts()
    phone.page.get_by_role("button", name="First aid").tap()
    aid = phone.page.get_by_role("dialog")
    for words in (
        "112, 911, 999",
        "breathing is hard",
        "in an eye, the mouth or the throat",
        "shock",
        "electricity",
        "a joint",
        "While it cools",
    ):
        expect(aid.get_by_text(re.compile(words)).first).to_be_attached()
    expect(aid.get_by_text(re.compile("serves only until you are at the tap"))).to_be_visible()
    expect(aid.get_by_text(re.compile("clean plastic bag for a hand"))).to_be_attached()
    # Whoever is burnt has no use for who says so.
    expect(aid.get_by_text(re.compile("St John"))).to_have_count(0)
    phone.closes_sheet()
    phone.leaves_the_bench()
    phone.opens_place("Help")
    expect(phone.page.get_by_text(re.compile("St John Ambulance"))).to_be_attached()


def test_a_printed_plan_carries_first_aid(phone: Phone):
    phone.opens_place("Plan")
    phone.answered()
    phone.page.get_by_role("button", name="Print the plan").tap()
    expect(phone.page.locator(".paper .first-aid")).to_contain_text("20 minutes under cool running water")


# --- what the stories do and see ---


def notes(phone: Phone, words: str) -> None:
    phone.page.get_by_label("What to remember").fill(words)
    phone.passes(750)
    phone.page.get_by_role("button", name="Keep the note").tap()


def written_notes(phone: Phone) -> list[str]:
    return [fact["body"]["text"] for fact in phone.facts_of("noted")]


def spoken(phone: Phone) -> list[str]:
    words: list[str] = phone.page.evaluate("() => spoken")
    return words


def helps(phone: Phone) -> None:
    """At most two taps show what to do; then back to the batch. A keypad has first aid under More."""
    if phone.has_keypad:
        phone.page.get_by_role("button", name="More").tap()
    phone.page.get_by_role("button", name="First aid").tap()
    expect(phone.page.get_by_role("dialog").get_by_text(COOL_IT)).to_be_in_viewport()
    phone.closes_sheet()
