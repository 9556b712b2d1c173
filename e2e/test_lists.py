"""Lists of any length: they scroll smoothly, go out as a file and come in again."""

from pathlib import Path

import pytest
from playwright.sync_api import expect

from e2e.phone import Phone
from e2e.server import Server
from tests.measure import browser

# Above this a person notices that a list stutters (W3C Long Tasks API).
LONGEST_TASK_MS = 50
NOTE_TASKS = """() => {
    globalThis.longTasks = [];
    new PerformanceObserver((all) => longTasks.push(...all.getEntries().map((one) => one.duration)))
        .observe({ type: "longtask" });
}"""
HEAD = "id,customer,wanted_at,placed_at,box_id,count,note\n"


def orders(number: int) -> str:
    rows = [
        f"o-{nth},Customer {nth},2027-{1 + nth % 12:02d}-{1 + nth % 28:02d}T15:00:00Z,2025-11-24T09:00:00Z,"
        f"box-{nth % 5},{1 + nth % 60},\n"
        for nth in range(number)
    ]
    return HEAD + "".join(rows)


def test_orders_are_saved_as_a_table_and_a_table_of_others_is_taken_in(phone: Phone, server: Server, tmp_path: Path):
    server.asks("/api/orders", {"file": orders(1)})
    phone.opens_place("Orders")
    files = phone.page.locator("details", has_text="Orders as a file")
    files.locator("summary").tap()
    with phone.page.expect_download() as saved:
        files.get_by_role("button", name="Save as a table (CSV)").tap()
    file = tmp_path / "orders.csv"
    saved.value.save_as(file)
    text = file.read_text(encoding="utf-8")
    assert "Customer 0" in text
    other = text.replace("o-0", "o-1").replace("Customer 0", "Corner bakery")
    file.write_text(other.replace(",1,", ",one,"), encoding="utf-8")
    picker = files.locator("input[type=file]")
    picker.set_input_files(file)
    expect(files.get_by_role("status")).to_contain_text("Line 2, count: “one” cannot be read. Accepted: 2.5.")
    file.write_text(other, encoding="utf-8")
    picker.set_input_files(file)
    expect(files.get_by_role("status")).to_have_text("Taken in: 1 new, 0 here before.")
    expect(phone.page.get_by_role("link", name="Corner bakery")).to_be_visible()


@pytest.mark.prove
def test_two_thousand_orders_scroll_without_a_long_task_on_a_slow_phone(phone: Phone, server: Server):
    head, *rows = orders(2000).splitlines(keepends=True)
    for at in range(0, 2000, 200):  # a request is answered within the patience of a test
        server.asks("/api/orders", {"file": head + "".join(rows[at : at + 200])})
    phone.opens_place("Orders")
    page = phone.page
    expect(page.get_by_role("link", name="Customer 0", exact=False).first).to_be_visible(timeout=120_000)
    page.wait_for_timeout(8000)
    slow = browser.slow_page(page)
    page.evaluate(NOTE_TASKS)
    seen = 0
    for _ in range(400):
        page.locator("main").evaluate("(main) => main.scrollBy(0, 700)")
        page.wait_for_timeout(60)
        seen = page.locator(".cards-long .batch-card").count()
        if seen == 2000:
            break
    tasks = page.evaluate("longTasks")
    print(f"\n{seen} orders drawn; the longest of {len(tasks)} long tasks: {max(tasks, default=0):g} ms")
    slow.detach()
    assert seen == 2000
    assert max(tasks, default=0) <= LONGEST_TASK_MS
