"""A page of the app on a device: its language, its network, its time, and what is on its disk."""

import re
import time
from typing import Any

from playwright.sync_api import Page

from e2e.disk import COUNT_UNSENT, READ_LOG
from e2e.words import spoken

# Every wait in the stories is bounded by this.
PATIENCE_MS = 15_000
# The languages whose texts the phone keeps.
TEXTS_KEPT = """async () => {
    const names = [];
    for (const cache of await caches.keys())
        for (const { url } of await (await caches.open(cache)).keys())
            names.push(/\\/text-(.+)-[\\w-]{8}\\.js$/.exec(url)?.[1]);
    return names.filter(Boolean).sort();
}"""


class Device:
    """One page of the app. With a fake clock, time passes only when the story says so."""

    def __init__(self, page: Page, fake_clock: bool = True) -> None:
        self.page = page
        self.fake_clock = fake_clock
        self.language = "en"
        page.set_default_timeout(PATIENCE_MS)
        self.errors: list[str] = []
        page.on("pageerror", lambda error: self.errors.append(str(error)))
        if fake_clock:
            page.clock.install()

    def installs(self) -> None:
        """Opens the app while there is a network, and waits until the phone says that it needs none."""
        self.page.goto("/")
        ready = re.compile("^" + self.word("Ready to work without a network"))
        self.page.get_by_text(ready).wait_for(timeout=PATIENCE_MS)

    def keeps_every_language(self) -> None:
        """Waits until the texts are here that a first visit does not wait for."""
        for _ in range(100):
            if len(self.page.evaluate(TEXTS_KEPT)) == 3:
                return
            time.sleep(0.2)
        raise AssertionError("the phone has not every language")

    def word(self, english: str) -> str:
        """What stands on this phone where an English one has these words."""
        return spoken(english, self.language)

    def draws_with(self, css: str) -> None:
        """The page with a style sheet more, as the page's policy allows one: made by script, not written inline."""
        self.page.evaluate(
            "css => { const sheet = new CSSStyleSheet(); sheet.replaceSync(css);"
            " document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]; }",
            css,
        )

    def loses_the_network(self) -> None:
        self.page.context.set_offline(True)

    def finds_the_network(self) -> None:
        self.page.context.set_offline(False)

    def passes(self, ms: int) -> None:
        """Lets time pass: the fake clock's, or the real one's."""
        if self.fake_clock:
            self.page.clock.run_for(ms)
        else:
            self.page.wait_for_timeout(ms)

    def facts(self) -> list[dict[str, Any]]:
        """All events of batches the phone holds, in the order of the log."""
        events = self.page.evaluate(READ_LOG)
        return sorted(events, key=lambda event: (event["at_ms"] + event["offset_ms"], event["device_id"], event["seq"]))

    def unsent(self) -> int:
        """How many facts wait on the phone for the server."""
        return int(self.page.evaluate(COUNT_UNSENT))

    def facts_of(self, kind: str) -> list[dict[str, Any]]:
        return [event for event in self.facts() if event["kind"] == kind]
