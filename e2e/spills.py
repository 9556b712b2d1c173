"""Lettering and controls of the desk that run out of their screen; lettering cut by its picture, or over other."""

from e2e.phone import Phone

# A small phone, and a large one with letters twice as large.
SCREENS = ((320, 568), (195, 422))

SPILT = """() => {
    const shown = (one) =>
        // What is far from the screen is not laid out again at another size.
        one.checkVisibility({ opacityProperty: true, visibilityProperty: true, contentVisibilityAuto: true }) &&
        !one.closest(".unseen, option");
    // Firefox takes the stroke round letters into their getBoundingClientRect; getBBox leaves it out everywhere.
    const letters = (text) => {
        const { p1, p2, p3, p4 } = DOMQuad.fromRect(text.getBBox());
        const onScreen = [p1, p2, p3, p4].map((corner) => corner.matrixTransform(text.getScreenCTM()));
        return new DOMQuad(...onScreen).getBounds();
    };
    const faults = [];
    const walker = document.createTreeWalker(document.querySelector("#app"), NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        if (!node.data.trim() || !shown(node.parentElement)) continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        const out = [...range.getClientRects()].some((one) => one.left < -1 || one.right > innerWidth + 1);
        if (out) faults.push(`“${node.data.trim().slice(0, 40)}” runs out of the screen`);
    }
    const typed = "#app input:not([type=file], [type=radio], [type=checkbox])";
    for (const one of document.querySelectorAll(`#app button, #app select, ${typed}`)) {
        const { left, right, width } = one.getBoundingClientRect();
        const out = shown(one) && width > 0 && (left < -1 || right > innerWidth + 1);
        if (out) faults.push(`the control “${one.ariaLabel || one.innerText}” runs out of the screen`);
    }
    for (const picture of document.querySelectorAll(".picture-desk svg")) {
        const edge = picture.getBoundingClientRect();
        const lettering = [...picture.querySelectorAll("text")];
        const words = lettering.map((text) => ({ text, box: letters(text) }));
        const across = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const down = (a, b) => Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        words.forEach(({ text, box }, index) => {
            const inside = across(box, edge) >= box.width - 1 && down(box, edge) >= box.height - 1;
            if (!inside) faults.push(`“${text.textContent}” is cut by its picture`);
            for (const other of words.slice(index + 1))
                if (across(box, other.box) > 5 && down(box, other.box) > 5)
                    faults.push(`“${text.textContent}” and “${other.text.textContent}” lie over each other`);
        });
    }
    return faults;
}"""


def spills(phone: Phone) -> list[str]:
    """Of the desk's screen as it stands."""
    return [] if phone.at_the_bench else phone.page.evaluate(SPILT)
