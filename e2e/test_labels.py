"""Labels of boxes packed, printed off line: as large as the label, each letter where the preview shows it."""

import ctypes
from pathlib import Path
from typing import Any

import pypdfium2
import pypdfium2.raw as pdfium
import pytest
import zxingcpp
from playwright.sync_api import expect

from e2e import axe
from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import PATIENCE, all_sent, exchanges, send
from tests.log import uuid7

MM_A_POINT = 25.4 / 72
DRAWN = """() => [...document.querySelectorAll('.label-preview text')].map((one) =>
    [one.textContent, one.getAttribute('x') / 100, one.getAttribute('y') / 100])"""
NEAR_MM = 0.1
# Runs of the preview that reach into the next one on their line.
RUN_TOGETHER = """() => [...document.querySelectorAll('.label-preview text')].flatMap((one, nth, all) => {
    const at = (text, name) => Number(text.getAttribute(name)), next = all[nth + 1];
    if (!next || at(next, 'y') !== at(one, 'y') || at(next, 'x') <= at(one, 'x')) return [];
    return at(one, 'x') + one.getComputedTextLength() > at(next, 'x') + 10 ? [one.textContent + next.textContent] : [];
})"""


def packed(phone: Phone, server: Server, batch_id: str) -> None:
    """Boxes that another phone packed of this phone's batch; they have reached this one."""
    pack_id = uuid7()
    newest = phone.facts()[-1]
    body = {
        "box_id": "nine-squares",
        "count": 3,
        "from": [{"batch_id": batch_id, "pieces": 27}],
        "code": "26334A",
        "made_on": "2026-11-30",
        "best_by": "2027-01-29",
    }
    theirs = {"id": uuid7(), "device_id": "another-phone", "at_ms": newest["at_ms"] + 1, "stream": f"pack/{pack_id}"}
    send(server, [newest | theirs | {"batch_id": None, "kind": "packed", "body": body}])
    phone.page.goto("/orders")
    link = phone.page.get_by_role("link", name="Labels: Box of 9 salted squares, lot 26334A")
    for _ in range(PATIENCE):
        if link.count():
            link.tap()
            return
        exchanges(phone)
    raise AssertionError("the boxes did not come")


def saved(phone: Phone, button: str, to: Path) -> pypdfium2.PdfDocument:
    with phone.page.expect_download() as waiting:
        phone.page.get_by_role("button", name=button).tap()
    waiting.value.save_as(to)
    return pypdfium2.PdfDocument(to)


def size_mm(page: pypdfium2.PdfPage) -> list[float]:
    return [side * MM_A_POINT for side in page.get_size()]


def letters(page: pypdfium2.PdfPage) -> list[tuple[str, float, float]]:
    """Each letter of a page with the point it stands on (mm from the upper left)."""
    text = page.get_textpage()
    x, y = ctypes.c_double(), ctypes.c_double()
    found = []
    for i in range(text.count_chars()):
        letter = chr(pdfium.FPDFText_GetUnicode(text, i))
        if letter.isspace() or pdfium.FPDFText_IsGenerated(text, i) == 1:
            continue
        assert pdfium.FPDFText_GetCharOrigin(text, i, x, y)
        found.append((letter, x.value * MM_A_POINT, (page.get_height() - y.value) * MM_A_POINT))
    return found


def each_letter_is_where_it_was_drawn(page: pypdfium2.PdfPage, drawn: list[Any]) -> None:
    printed = letters(page)
    assert "".join(one[0] for one in printed) == "".join("".join(words.split()) for words, _, _ in drawn)
    at = 0
    for words, x, y in drawn:
        # Where a run begins with a space, its first letter stands that much further on.
        if words.strip():
            assert printed[at][2] == pytest.approx(y, abs=NEAR_MM), words
        if not words[0].isspace():
            assert printed[at][1] == pytest.approx(x, abs=NEAR_MM), words
        at += len("".join(words.split()))


def prints_a_tray_card(phone: Phone, folder: Path) -> None:
    kinds = phone.page.get_by_role("group", name="What to print")
    kinds.get_by_role("radio", name="Tray card").check()
    expect(phone.page.locator(".label-preview")).not_to_contain_text("65 g")
    drawn = phone.page.evaluate(DRAWN)
    (card,) = saved(phone, "Print or share the card", folder / "tray.pdf")
    assert size_mm(card) == pytest.approx([105, 74], abs=0.01)
    each_letter_is_where_it_was_drawn(card, drawn)
    kinds.get_by_role("radio", name="Labels").check()


def test_labels_are_printed_off_line_at_their_true_size(phone: Phone, server: Server, tmp_path: Path):
    batch_id = phone.plans_and_starts()
    all_sent(phone)
    packed(phone, server, batch_id)
    phone.loses_the_network()
    phone.page.reload()
    expect(phone.page.get_by_text("Guide only: your local rules decide.")).to_be_visible()
    expect(phone.page.locator(".label-preview")).to_contain_text("65 g")
    # Squares with a coat below: milk from the caramel, soya from the chocolate, marked within the list.
    strong = phone.page.locator(".label-preview text[font-weight]").all_text_contents()
    assert {"milk", "soya"} <= set(strong)
    assert phone.page.evaluate(RUN_TOGETHER) == []
    phone.page.get_by_role("group", name="Say when it was made").get_by_role("radio", name="yes", exact=True).check()
    expect(phone.page.locator(".label-preview")).to_contain_text("Made on 30 Nov 2026")
    # Nobody weighed these boxes: the e mark is wanted in vain, and that is said.
    phone.page.get_by_role("group", name="Print the ℮ mark").get_by_role("radio", name="yes", exact=True).check()
    expect(phone.page.get_by_text("The ℮ mark is left out until the net contents")).to_be_visible()
    prints_a_tray_card(phone, tmp_path)
    print_it = phone.page.get_by_role("button", name="Print or share the labels")
    expect(print_it).to_have_attribute("aria-disabled", "true")
    (ruler,) = saved(phone, "Print the ruler page", tmp_path / "ruler.pdf")
    assert size_mm(ruler) == pytest.approx([70, 50], abs=0.01)
    assert "".join(one[0] for one in letters(ruler)) == "Thislinemustmeasure60mm."
    phone.page.get_by_label("The line measures", exact=True).fill("58")
    expect(phone.page.get_by_text("The line of 60 mm measures 58 mm")).to_be_visible()
    phone.page.get_by_label("The line measures", exact=True).fill("60")
    expect(print_it).to_have_attribute("aria-disabled", "false")
    drawn = phone.page.evaluate(DRAWN)
    document = saved(phone, "Print or share the labels", tmp_path / "labels.pdf")
    assert len(document) == 3
    for page in document:
        assert size_mm(page) == pytest.approx([70, 50], abs=0.01)
        each_letter_is_where_it_was_drawn(page, drawn)
    # As a 203-dpi printer for labels has it: 3 dots a module.
    for dpi in (203, 300):
        (code,) = zxingcpp.read_barcodes(document[0].render(scale=dpi / 72, grayscale=True).to_numpy())
        assert code.text == "LOT:26334A"
    assert axe.faults(phone.page, at_the_bench=False) == []
    phone.finds_the_network()
    all_sent(phone)
    assert server.asks("/api/packs")["documents"][0]["printed"] == 3
    assert phone.errors == []
