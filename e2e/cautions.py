"""A caution and a keypad stand whole in view on every bench screen, whatever the screen's size and the letters'."""

from collections.abc import Iterator

from e2e import ruler
from e2e.phone import Phone

# A small phone, one on its side, a tablet; the last two are 390 × 844 and 1024 × 768 with everything at 200 %.
SCREENS = ((320, 568), (844, 390), (1024, 768), (195, 422), (512, 384))

# What of the batch's cautions cannot be read: hidden, out of the screen, or covered by something else.
UNSEEN = """() => [...document.querySelectorAll("main.bench .caution")].flatMap((caution) => {
    const shown = caution.checkVisibility({ opacityProperty: true, visibilityProperty: true });
    if (!shown) return ["is hidden"];
    const { left, top, right, bottom } = caution.getBoundingClientRect();
    const outside = left < 0 || top < 0 || right > innerWidth || bottom > innerHeight;
    if (outside) return [`runs from ${left}, ${top} to ${right}, ${bottom}`];
    const { scrollHeight, clientHeight, scrollWidth, clientWidth } = caution;
    if (scrollHeight > clientHeight + 1 || scrollWidth > clientWidth + 1) return ["is cut"];
    const range = document.createRange();
    range.selectNodeContents(caution);
    const covered = [...range.getClientRects()].filter((one) => one.width > 0).some((one) => {
        const hit = document.elementFromPoint((one.left + one.right) / 2, (one.top + one.bottom) / 2);
        return hit === null || !caution.contains(hit);
    });
    return covered ? ["is covered"] : [];
})"""


# Of a keypad: keys, what sends the number and the unit typed in, each whole in view and reached by a finger.
UNREACHED = """() => [...document.querySelectorAll(".bench-entry :is(.key, .act, .typed small)")].flatMap((one) => {
    if (!one.checkVisibility()) return [];
    const { left, top, right, bottom } = one.getBoundingClientRect();
    const outside = left < 0 || top < 0 || right > innerWidth + 0.5 || bottom > innerHeight + 0.5;
    if (outside) return [`“${one.innerText}” runs from ${left}, ${top} to ${right}, ${bottom}`];
    const hit = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    // While a strip rings, the first tap anywhere silences it: it may lie over the button, never over a key.
    if (one.matches(".act") && hit?.closest(".ring-strip")) return [];
    return hit !== null && one.contains(hit) ? [] : [`“${one.innerText}” is covered`];
})"""


def caution_faults(phone: Phone) -> Iterator[str]:
    """Of the screen as it stands, on each of these; the viewport is the last one's then."""
    if phone.page.locator("main.bench .caution, .keys").count() == 0 or phone.page.locator(".ring, .sheet").count():
        return
    for width, height in SCREENS:
        phone.page.set_viewport_size({"width": width, "height": height})
        phone.passes(20)
        yield from (f"at {width} × {height}: {fault}" for fault in unseen(phone))


def unseen(phone: Phone) -> list[str]:
    """Of the screen as it stands, and still once a busy machine has drawn it."""
    if phone.page.locator(".ring, .sheet").count():
        return []
    if phone.page.evaluate(UNSEEN) or phone.page.evaluate(UNREACHED):
        ruler.settles(phone)
    return [f"the caution {fault}" for fault in phone.page.evaluate(UNSEEN)] + phone.page.evaluate(UNREACHED)
