"""What may break under a running batch: server, version, storage, tabs. Nothing is lost, or it is plainly said."""

import os
import re
import shutil
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Route, expect

from e2e import axe
from e2e.conftest import PHONE
from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent, exchanges, hears, record, seen_faults, tapped_elsewhere

ROOT = Path(__file__).parents[1]
# Every connection the app opens is kept, so that it can be closed under it as iOS does.
HOLD_CONNECTIONS = """(() => {
    globalThis.connections = [];
    const open = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function (...all) {
        const request = open.apply(this, all);
        request.addEventListener("success", () => connections.push(request.result));
        return request;
    };
})()"""
EVICT = """() => new Promise((yes, no) => {
    const request = indexedDB.deleteDatabase("amberbench");
    request.onsuccess = () => yes();
    request.onerror = request.onblocked = () => no(new Error("the store is still held"));
})"""
TAP_IF_READY = """() => {
    if (document.querySelector("main.bench").dataset.step === "set_up") document.querySelector("button.act").click();
}"""
NEWER_FORM = """() => new Promise((yes, no) => {
    const request = indexedDB.open("amberbench", 1000);
    request.onsuccess = () => yes(request.result.close());
    request.onerror = request.onblocked = () => no(new Error("the store is still held"));
})"""
STATUS = "async (path) => (await fetch(path)).status"
WAITING = "async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting)"


def same_everywhere(phone: Phone, server: Server, batch_id: str) -> list[dict[str, Any]]:
    """Everything sent; the server has exactly what the phone has, each once, in one order."""
    all_sent(phone)
    events: list[dict[str, Any]] = record(server, batch_id)["events"]
    assert [event["id"] for event in events] == [fact["id"] for fact in phone.facts()]
    return events


# Killed so long after a push was sent (ms); None: after it was stored, before the answer arrived.
KILLED_AFTER = (None, 2, 12)


def test_server_killed_while_it_takes_a_push_has_all_once_afterwards(phone: Phone, server: Server):
    batch_id = phone.plans_and_starts()
    phone.sets_up()
    for after_ms in KILLED_AFTER:
        all_sent(phone)
        phone.loses_the_network()
        phone.starts_a_burst()
        phone.taps("Out early")
        for _ in range(2):
            phone.undoes()
            phone.is_at("burst")
            phone.looks()
        expect(phone.bench.get_by_role("button", name="Start")).to_be_visible()
        assert phone.unsent() == 4
        killed_in_a_push(phone, server, after_ms)
        server.start()
        same_everywhere(phone, server, batch_id)
        phone.is_at("burst")
    assert phone.errors == []


def killed_in_a_push(phone: Phone, server: Server, after_ms: int | None) -> None:
    """The network is back, the phone pushes, and the server's process is killed meanwhile."""
    killed = threading.Event()

    def kill() -> None:
        server.kill()
        killed.set()

    def on_the_way(route: Route) -> None:
        if after_ms is None:
            server.asks("/api/events", route.request.post_data_json)
            kill()
            return route.abort()
        threading.Timer(after_ms / 1000, kill).start()
        route.continue_()

    phone.page.route("**/api/events", on_the_way, times=1)
    phone.finds_the_network()
    for _ in range(100):
        if killed.is_set():
            return
        exchanges(phone)
    raise AssertionError("the phone did not push")


@pytest.fixture
def releases(tmp_path: Path) -> Iterator[Server]:
    """A server of its own copy of the app, which can be given a new version."""
    for part in ("server/amberbench", "seed_data", "pwa/dist"):
        shutil.copytree(ROOT / part, tmp_path / part, ignore=shutil.ignore_patterns("__pycache__"))
    before = os.environ.get("PYTHONPATH")
    os.environ["PYTHONPATH"] = str(tmp_path / "server")
    try:
        with Server(tmp_path) as server:
            yield server
    finally:
        os.environ.pop("PYTHONPATH") if before is None else os.environ.update(PYTHONPATH=before)


def comes_out_anew(folder: Path) -> str:
    """A new version of the app: another page, a screen fewer, and a worker that knows of it.

    Returns the address of the screen's file."""
    page, worker = folder / "index.html", folder / "sw.js"
    page.write_text(page.read_text().replace("<head>", '<head><meta name="release" content="2">', 1))
    found = worker.read_text()
    changed = re.sub(r'(revision:"|revision":")[0-9a-f]{8}', r"\g<1>00000000", found)
    assert changed != found
    screen = next(folder.glob("assets/place-shop-*.js")).name
    fewer = re.sub(rf"\{{[^{{}}]*assets/{screen}[^{{}}]*\}},?", "", changed)
    assert fewer != changed
    worker.write_text(fewer)
    for old in [*folder.glob("index.html.*"), *folder.glob("sw.js.*"), *folder.glob(f"assets/{screen}*")]:
        old.unlink()
    return f"/assets/{screen}"


def test_a_new_version_waits_until_no_batch_runs(browser: Browser, releases: Server, tmp_path: Path):
    context = browser.new_context(base_url=releases.url, **PHONE)
    phone = Phone(context.new_page())
    phone.installs()
    other = context.new_page()
    other.goto("/help")
    phone.plans_and_starts()
    phone.sets_up()
    phone.starts_a_burst()
    gone = comes_out_anew(tmp_path / "pwa/dist")
    phone.page.evaluate("async () => void (await (await navigator.serviceWorker.getRegistration()).update())")
    phone.waits_until(WAITING)
    release = phone.page.locator("meta[name=release]")
    for _ in range(2):
        phone.passes(4_000)
        expect(phone.bench).to_contain_text("Heating")
        expect(release).to_have_count(0)
        phone.page.reload()
        phone.looks()
    phone.leaves_the_bench()
    expect(phone.page.get_by_text("A new version is ready. It waits until no batch runs.")).to_be_visible()
    offer = phone.page.get_by_role("button", name="Take the new version")
    expect(offer).to_have_count(0)
    assert axe.faults(phone.page, at_the_bench=False) == []
    known = len(phone.facts())
    all_sent(phone)
    tapped_elsewhere(releases, phone, "closed", {})
    hears(phone, known + 1)
    offer.tap()
    expect(release).to_have_count(1)
    assert len(phone.facts()) == known + 1
    # A page of the version before still opens its screens; when it is gone, their files are.
    assert phone.page.request.get(gone).status == 404
    assert other.evaluate(STATUS, gone) == 200
    other.close()
    phone.page.reload()
    phone.waits_until("async () => (await caches.keys()).length === 1")
    assert phone.errors == []
    context.close()


def test_storage_thrown_away_under_the_open_app_loses_no_running_batch(phone: Phone, server: Server):
    phone.loses_the_network()
    batch_id = phone.plans_and_starts()
    phone.sets_up()
    phone.starts_a_burst()
    before = phone.facts()
    phone.page.evaluate(EVICT)
    phone.passes(750)
    phone.bench.get_by_role("button", name="Out early").tap()
    phone.is_at("turn")
    expect(phone.bench).to_contain_text("The browser emptied this phone's storage.")
    assert seen_faults(phone, "emptied") == []
    after = phone.facts()
    assert after[:-1] == before
    assert after[-1]["device_id"] == before[-1]["device_id"]
    assert after[-1]["seq"] == before[-1]["seq"] + 1
    phone.page.reload()
    phone.is_at("turn")
    phone.taps()
    phone.finds_the_network()
    same_everywhere(phone, server, batch_id)


def test_storage_thrown_away_while_the_app_was_closed_comes_back_from_the_server(phone: Phone, server: Server):
    batch_id = phone.plans_and_starts()
    phone.sets_up()
    phone.starts_a_burst()
    all_sent(phone)
    before = phone.facts()
    phone.page.goto("/api/health")
    phone.page.evaluate(EVICT)
    phone.page.goto(f"/bench/{batch_id}")
    expect(phone.bench).to_contain_text("Another phone runs this batch.")
    assert [fact["id"] for fact in phone.facts()] == [fact["id"] for fact in before]
    phone.taps("Take it over here")
    phone.waits_for_the_ring()
    phone.silences()
    phone.taps()
    assert len({event["device_id"] for event in same_everywhere(phone, server, batch_id)}) == 2


HOW_CLOSED = ("connection.close()", "connection.dispatchEvent(new Event('versionchange'))")


def test_a_store_closed_under_the_app_is_opened_again(browser: Browser, server: Server):
    context = browser.new_context(base_url=server.url, **PHONE)
    context.add_init_script(HOLD_CONNECTIONS)
    phone = Phone(context.new_page())
    phone.installs()
    batch_id = phone.plans_and_starts()
    for step, how in zip(("set_up", "weigh", "lot", "burst"), HOW_CLOSED * 2, strict=True):
        phone.is_at(step)
        assert phone.page.evaluate(f"() => connections.map((connection) => {{ {how}; return 1; }}).length")
        if phone.has_keypad:
            phone.types("1.8" if step == "weigh" else "117")
        else:
            phone.taps()
    same_everywhere(phone, server, batch_id)
    # Firefox has no sound where these stories are told, and says so.
    mute = phone.word("No sound yet: watch the screen.")
    expect(phone.page.locator(".trouble").filter(has_not_text=mute)).to_have_count(0)
    assert phone.errors == []
    context.close()


def test_a_page_older_than_the_store_says_so_and_claims_nothing(phone: Phone):
    phone.plans_and_starts()
    before = phone.facts()
    phone.page.evaluate(NEWER_FORM)
    phone.passes(750)
    phone.button.tap()
    expect(phone.bench).to_contain_text("another tab has a newer version. Reload this page")
    phone.is_at("set_up")
    assert phone.facts() == before
    assert seen_faults(phone, "outdated") == []


def test_a_second_tab_follows_the_first_and_neither_counts_twice(phone: Phone, server: Server):
    batch_id = phone.plans_and_starts()
    second = Phone(phone.page.context.new_page())
    second.page.goto(f"/bench/{batch_id}")
    second.is_at("set_up")
    for one in (phone, second):
        one.passes(750)
    for one in (phone, second):
        one.page.evaluate(TAP_IF_READY)
    for one in (phone, second):
        one.is_at("weigh")
    second.taps("As planned")
    phone.is_at("lot")
    phone.taps("No lot")
    second.is_at("burst")
    phone.starts_a_burst()
    second.is_at("burst")
    for one in (phone, second):
        one.waits_for_the_ring()
    second.silences()
    expect(phone.ring).to_have_count(0)
    second.page.close()
    phone.taps()
    events = same_everywhere(phone, server, batch_id)
    assert len({event["device_id"] for event in events}) == 1
    assert len({event["seq"] for event in events}) == len(events)
    run = record(server, batch_id)["run"]
    assert len(run["melt"]["bursts"]) == 1
