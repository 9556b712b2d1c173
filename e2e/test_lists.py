"""Lists go out as a file and come in again, where they stand."""

from pathlib import Path

from playwright.sync_api import expect

from e2e.phone import Phone
from e2e.server import Server

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
