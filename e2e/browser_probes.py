"""Scripts put into the browser before the app starts: they note its tones and wake locks, or take one of them away."""

from playwright.sync_api import BrowserContext, Page

# Each tone the app starts is noted with the phone's time; each wake lock is kept, so that it can be taken away.
WIRETAP = """(() => {
    globalThis.heard = [];
    globalThis.locks = [];
    const oscillator = AudioContext.prototype.createOscillator;
    AudioContext.prototype.createOscillator = function () {
        heard.push(Date.now());
        return oscillator.call(this);
    };
    const request = WakeLock.prototype.request;
    WakeLock.prototype.request = async function (kind) {
        const lock = await request.call(this, kind);
        locks.push(lock);
        return lock;
    };
})()"""

# What was silenced is on the phone's disk.
ACKNOWLEDGED = """async () => {
    const open = indexedDB.open("amberbench");
    const db = await new Promise((yes, no) => { open.onsuccess = () => yes(open.result); open.onerror = no; });
    const asked = db.transaction("meta").objectStore("meta").get("acknowledged");
    const known = await new Promise((yes) => { asked.onsuccess = () => yes(asked.result); });
    db.close();
    return (known ?? []).length > 0;
}"""


class BrowserProbe:
    def __init__(self, context: BrowserContext) -> None:
        context.add_init_script(WIRETAP)

    def heard(self, page: Page, from_ms: float, to_ms: float) -> int:
        """How many tones were started in a span of the phone's time."""
        tones: list[float] = page.evaluate("() => heard")
        return sum(from_ms <= tone < to_ms for tone in tones)

    def locks(self, page: Page) -> list[bool]:
        """The wake locks asked for so far, oldest first: whether each is still held."""
        held: list[bool] = page.evaluate("() => locks.map((lock) => !lock.released)")
        return held

    def shows_untouched(self, page: Page, selector: str) -> None:
        """Waits for something on a page nobody has touched: what Playwright asks by itself would count as a tap."""
        session = page.context.new_cdp_session(page)
        asked = {"expression": f"document.querySelector({selector!r}) !== null", "returnByValue": True}
        for _ in range(200):
            if session.send("Runtime.evaluate", asked)["result"]["value"]:
                return session.detach()
            page.wait_for_timeout(50)
        raise AssertionError(f"no {selector} on the page")

    def loses_the_lock(self, page: Page) -> None:
        page.evaluate("() => locks.at(-1).release()")


# A voice of the phone's own system, as a browser lists it; what it is handed is kept.
VOICE = """(() => {
    globalThis.spoken = [];
    globalThis.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
    const speaker = new EventTarget();
    speaker.getVoices = () => [{ lang: "en-GB" }, { lang: "es-ES" }];
    speaker.cancel = () => {};
    speaker.speak = (one) => spoken.push(one.text);
    Object.defineProperty(globalThis, "speechSynthesis", { value: speaker });
})()"""


def has_a_voice(context: BrowserContext) -> None:
    """Browsers on this kind of machine have none: what they would speak is kept instead."""
    context.add_init_script(VOICE)


def refuses_to_stay_awake(context: BrowserContext) -> None:
    context.add_init_script(
        "WakeLock.prototype.request = () => Promise.reject(new DOMException('no', 'NotAllowedError'))"
    )


def knows_no_wake_lock(context: BrowserContext) -> None:
    context.add_init_script("delete Navigator.prototype.wakeLock")
