"""The phone in a person's hand: what is read from it and what is tapped. Stories speak through this."""

import re
import time

from playwright.sync_api import Locator, expect

from e2e.device import PATIENCE_MS, Device
from e2e.disk import READ_LOG

# The words in the foot; and what a place leads on to, by the words of the link there.
PLACES = ("Bench", "Orders", "Stock", "Records", "Shop")
UNDER = {"Plan": ("Bench", "Plan a batch"), "Settings": ("Shop", "Settings")}
LETTERS = ("ABC", "DEF", "GHI", "JKL", "MNO", "PQR", "STU", "VWX", "YZ-")
# A tap within 700 ms of another does not count.
BETWEEN_TAPS_MS = 750
# A reading right after a stir runs about this much cold (contract of the simulated kitchens).
READS_COLD_K = 1.0


class Phone(Device):
    """A device with somebody's hands at it."""

    # --- the app ---

    def speaks(self, language: str) -> None:
        """Chooses another language under Shop, Settings, and goes back to the bench."""
        self.opens_place("Settings")
        self.page.get_by_label(self.word("Language")).select_option(language)
        expect(self.page.locator("html")).to_have_attribute("lang", language)
        self.language = language
        self.opens_place("Bench")

    def opens_place(self, name: str) -> None:
        """One of the desk's places by the words in its foot, or what is reached from a place or from every head."""
        if name != "Help":
            place = UNDER.get(name, (name,))[0]
            self.page.get_by_role("navigation").get_by_role("link", name=self.word(place)).tap()
            self.passes(300)
        if name not in PLACES:
            words = self.word(UNDER.get(name, (name, name))[1])
            self.page.get_by_role("main").get_by_role("link", name=re.compile(f"^{re.escape(words)}")).tap()
            self.passes(300)

    def leaves_the_bench(self) -> None:
        self.page.get_by_role("button", name=self.word("More")).tap()
        self.page.get_by_role("link", name=self.word("Other batches")).tap()
        expect(self.page.get_by_role("navigation", name=self.word("Screens"))).to_be_visible()

    def returns_to(self, name: str) -> None:
        """From the desk to a running batch."""
        self.opens_place("Bench")
        self.page.get_by_role("link", name=name).tap()
        expect(self.bench).to_be_visible()

    @property
    def start(self) -> Locator:
        return self.page.get_by_role("button", name=self.word("Keep this plan and start"))

    def answered(self) -> None:
        """The plan shown is the answer to what stands in the form."""
        self.passes(500)
        expect(self.start).to_have_attribute("aria-disabled", "false")

    def unfolds(self) -> None:
        """Opens what of a plan's form is folded."""
        if self.page.locator(".plan-more:not([open])").count():
            self.page.locator(".plan-more > summary").tap()

    def refused(self) -> Locator:
        """The plan is refused: the sentences at the fields that cannot be accepted."""
        self.passes(500)
        expect(self.start).to_have_count(0)
        expect(self.page.locator(".plan-answer")).to_have_attribute("aria-busy", "false")
        return self.page.locator(".field-problem")

    def plans_and_starts(self, kg: str = "1.8", at: str = "set_up") -> str:
        """Plans a slab from caramel by weight with the shop's first product and starts it; the batch's id."""
        self.opens_place("Plan")
        self.page.get_by_label(self.word("Caramel"), exact=True).fill(kg)
        self.answered()
        self.start.tap()
        self.page.wait_for_url(re.compile("/bench/"))
        self.is_at(at)
        return self.page.url.rsplit("/", 1)[1]

    def keeps_on_paper(self) -> str:
        """Keeps the plan as a batch sheet to fill in by hand; the batch's id."""
        self.page.get_by_role("button", name=self.word("Keep it as a paper batch sheet")).tap()
        self.page.wait_for_url(re.compile("/sheet$"))
        self.page.locator(".paper").wait_for()
        return self.page.url.split("/")[-2]

    # --- time ---

    def waits_for_the_ring(self, most_s: int = 75) -> None:
        """In steps of two seconds, of ten where it may take long."""
        step_s = 2 if most_s <= 75 else 10
        for _ in range(0, most_s, step_s):
            if self.ring.count():
                return
            self.passes(step_s * 1000)
        raise AssertionError(f"nothing rang within {most_s} s at step {self.step}")

    # --- the bench ---

    @property
    def at_the_bench(self) -> bool:
        """Whether a bench screen, a sheet or a ringing clock is what is seen."""
        return self.page.locator("main.bench, .ring, .sheet").count() > 0

    @property
    def bench(self) -> Locator:
        return self.page.locator("main.bench")

    @property
    def step(self) -> str:
        return self.bench.get_attribute("data-step") or ""

    def is_at(self, step: str) -> None:
        expect(self.bench).to_have_attribute("data-step", step)

    @property
    def button(self) -> Locator:
        return self.bench.locator("button.act")

    @property
    def tap_to_ring(self) -> Locator:
        """Asks for the tap without which a running clock will not be heard."""
        return self.page.locator(".act-tap")

    def lets_it_ring(self) -> None:
        if self.tap_to_ring.count():
            self.tap_to_ring.tap()
            expect(self.tap_to_ring).to_have_count(0)

    @property
    def ring(self) -> Locator:
        return self.page.locator(".ring, .ring-strip")

    def taps(self, words: str | None = None) -> None:
        """Taps the big button, or the button of these words; returns when the tap is in the log."""
        self.passes(BETWEEN_TAPS_MS)
        if self.ring.count():  # two clocks were due within a second
            self.silences()
            self.passes(BETWEEN_TAPS_MS)
        self.lets_it_ring()
        before = len(self.facts())
        target = self.bench.get_by_role("button", name=self.word(words)) if words else self.button
        target.first.tap()
        self.has_written(before + 1)
        self.looks()

    def has_written(self, count: int) -> None:
        """Waits until so many facts are in the log."""
        self.waits_until(f"async () => (await ({READ_LOG})()).length >= {count}")

    def waits_until(self, script: str) -> None:
        """Waits until what the script promises is true: Playwright's own wait takes the promise for an answer."""
        for _ in range(PATIENCE_MS // 50):
            if self.page.evaluate(script):
                return
            self.passes(10)
            time.sleep(0.04)
        raise AssertionError(f"in vain at step {self.step}: {script}")

    def opens(self, words: str) -> None:
        """Taps a button that opens something and writes nothing."""
        self.passes(BETWEEN_TAPS_MS)
        self.lets_it_ring()
        before = len(self.facts())
        self.page.get_by_role("button", name=self.word(words)).first.tap()
        self.passes(BETWEEN_TAPS_MS)
        assert len(self.facts()) == before, f"opening “{words}” wrote an event"

    def closes_sheet(self) -> None:
        self.page.get_by_role("button", name=self.word("Back to the batch")).tap()
        expect(self.page.get_by_role("dialog")).to_have_count(0)

    def silences(self) -> None:
        expect(self.ring.first).to_be_visible()
        self.page.touchscreen.tap(200, 300)  # anywhere: the screen under it is untouched
        expect(self.ring).to_have_count(0)

    def keys(self, digits: str) -> None:
        for digit in digits:
            name = self.word("Decimal mark") if digit == "." else digit
            self.page.locator(".keys").get_by_role("button", name=name, exact=True).tap()

    def letters(self, letters: str) -> None:
        """Letters and the dash of a lot: the key of three, then the one that is meant; the letters stay."""
        keys = self.page.locator(".keys")
        if keys.get_by_role("button", name=self.word("ABC, letters and dash")).count():
            keys.get_by_role("button", name=self.word("ABC, letters and dash")).tap()
        for letter in letters:
            three = next(one for one in LETTERS if letter in one)
            keys.get_by_role("button", name=three, exact=True).tap()
            name = self.word("Dash") if letter == "-" else letter
            keys.get_by_role("button", name=name, exact=True).tap()

    def takes_back_digits(self, count: int) -> None:
        for _ in range(count):
            self.page.locator(".keys").get_by_role("button", name=self.word("Delete the last digit")).tap()

    @property
    def has_keypad(self) -> bool:
        return self.page.locator(".keys").count() > 0

    def types(self, digits: str) -> None:
        """Types on our own keypad and sends it."""
        self.keys(digits)
        self.taps()

    def undoes(self) -> None:
        self.passes(BETWEEN_TAPS_MS)
        self.page.locator("button.undo").first.tap()

    # --- whole stretches of the job ---

    def washes(self) -> None:
        """At the bench of a batch just opened: washes, if what was there before wants it."""
        expect(self.bench).to_have_attribute("data-step", re.compile("^(wash|set_up)$"))
        if self.step == "wash":
            self.taps()

    def sets_up(self) -> None:
        self.is_at("set_up")
        self.taps()
        self.is_at("weigh")
        self.types("1.8")
        self.is_at("lot")
        self.types("117")
        self.is_at("burst")

    def starts_a_burst(self) -> None:
        self.is_at("burst")
        self.taps("Start")
        expect(self.button).to_have_count(0)

    def bursts(self) -> None:
        """One burst, its turn or stir, and the reading where one is wanted; the caramel heats as planned."""
        self.starts_a_burst()
        self.waits_for_the_ring()
        self.silences()
        expected_c = self.facts_of("burst_started")[-1]["body"]["expected_c"]
        if self.step == "turn":
            self.taps()
        elif expected_c < 49 and self.bench.get_by_role("button", name=self.word("Lumps left")).count():
            self.taps("Lumps left")
        else:
            self.taps()
        while self.step == "read":
            self.types(str(round(expected_c - READS_COLD_K)))

    def looks(self) -> None:
        """Waits until the screen has taken in the last tap."""
        self.passes(50)
        expect(self.bench).to_have_attribute("data-pending", "false")

    def melts(self, until: str = "pour") -> None:
        for _ in range(14):
            if self.step == until:
                return
            self.bursts()
        raise AssertionError("fourteen bursts and still not in the window")

    def cools_until_the_ring(self) -> None:
        """Hours pass in steps of ten minutes until the press clock rings."""
        for _ in range(40):
            if self.ring.count():
                return
            self.page.clock.fast_forward(600_000)
            self.passes(1_000)
        raise AssertionError("the slab cooled for seven hours and nothing rang")

    def cools(self) -> None:
        """The slab cools until it is to be pressed, and the middle is firm."""
        self.cools_until_the_ring()
        self.silences()
        self.is_at("touch")
        self.taps("Firm")

    def cuts_and_closes(self) -> None:
        for step in ("loosen", "prebottom", "flip", "score", "cut"):
            self.is_at(step)
            self.taps()
        self.is_at("count")
        self.types("200")
        self.is_at("weigh_out")
        self.types("0.1")
        self.is_at("close")
        self.taps()
        self.is_at("closed")
