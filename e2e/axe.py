"""axe-core on the page as it stands: what breaks WCAG 2.2 A and AA, and at the bench AAA's contrast of 7 : 1."""

from pathlib import Path
from typing import Any

from playwright.sync_api import Page

SOURCE = (Path(__file__).parents[1] / "pwa/node_modules/axe-core/axe.min.js").read_text()
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
# What another colour scheme can change.
COLOURS = ["color-contrast", "link-in-text-block"]

RUN = """async ([only, enhanced]) => {
    const found = await axe.run(document, {
        runOnly: only,
        rules: { "color-contrast-enhanced": { enabled: enhanced } },
        resultTypes: ["violations"],
    });
    return {
        faults: found.violations.flatMap((rule) =>
            rule.nodes.map((node) => [rule.id, node.target.flat().join(" "), rule.help])),
    };
}"""


def faults(page: Page, at_the_bench: bool) -> list[str]:
    """Each violation as a sentence: the rule, the element, what the rule asks for."""
    return _run(page, {"type": "tag", "values": TAGS}, at_the_bench)


def colour_faults(page: Page, at_the_bench: bool) -> list[str]:
    rules = [*COLOURS, "color-contrast-enhanced"] if at_the_bench else COLOURS
    return _run(page, {"type": "rule", "values": rules}, at_the_bench)


def _run(page: Page, only: dict[str, Any], at_the_bench: bool) -> list[str]:
    if not page.evaluate("() => typeof axe === 'object'"):
        page.evaluate(SOURCE)
    found = page.evaluate(RUN, [only, at_the_bench])
    return [f"{rule}: {where}: {asks}" for rule, where, asks in found["faults"]]
