"""Pages of lots, orders, boxes, labels and traces, small and in both languages: nothing runs out of them."""

import re

from playwright.sync_api import expect

from e2e.languages import english_only, language_faults, reads_in
from e2e.phone import Phone
from e2e.ruler import still
from e2e.spills import SCREENS, spills
from e2e.test_week_story import server  # noqa: F401

# What has come when the page is drawn, in words or by its place.
PAGES = {
    "/stock": "a[href^='/stock/invented']",
    "/stock/new": ".trade-form .chip",
    "/stock/invented-firm-117": ".pane-one details.card",
    "/orders": "a[href^='/orders/invented']",
    "/orders/new": ".trade-form .chip",
    "/orders/needs": ".pane-one h2",
    "/orders/invented-bakery": ".pane-one details.card",
    "/label/order/invented-bakery": ".label-preview",
    "/day": ".warning-line, .cards li",
    "/packs/invented-nine": "form .go",
    "/label/invented-nine": ".label-preview",
    "/trace/lot/invented-salt-7": ".trace-picture",
    "/trace/lot/invented-salt-7/recall": ".trace-columns",
    "/shop/shop": "form .go",
    "/shop/boxes/new": "form .go",
    "/batches": "summary",
}


def test_pages_of_orders_and_stock_hold_small_screens_and_large_letters_in_both_languages(phone: Phone):
    phone.keeps_every_language()
    faults, english = [], english_only()
    for page, sign in PAGES.items():
        phone.page.goto(page)
        expect(phone.page.locator(sign).first).to_be_visible()
        phone.page.evaluate("() => document.querySelectorAll('details').forEach((one) => (one.open = true))")
        for language in ("en", "es"):
            reads_in(phone.page, language)
            for width, height in SCREENS:
                phone.page.set_viewport_size({"width": width, "height": height})
                faults += [f"{page} in {language} at {width} × {height}: {fault}" for fault in still(phone, spills)]
        # A label keeps the language that was chosen for it.
        if "/label/" not in page:
            faults += [f"{page}: {fault}" for fault in language_faults(phone.page, english)]
        reads_in(phone.page, "en")
        phone.page.set_viewport_size({"width": 390, "height": 844})
    assert not faults, "\n".join(faults)
    assert phone.errors == []


def test_a_control_that_runs_out_would_be_found(phone: Phone):
    phone.page.goto("/orders/new")
    expect(phone.page.locator(".trade-form .chip").first).to_be_visible()
    assert still(phone, spills) == []
    phone.draws_with(".trade-form .go { margin-left: 120px; width: 100% }")
    assert re.search("runs out", " ".join(spills(phone)))
