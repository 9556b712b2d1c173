"""The shop's own HTTPS: from the code on the server's screen to a phone that works without a network."""

import datetime
import re
import shutil
import ssl
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest
from cryptography.hazmat.primitives.serialization import Encoding
from playwright.sync_api import BrowserType, Error, Page, expect

from amberbench.lan import authority
from e2e import webkit
from e2e.conftest import PHONE
from e2e.https import ADDRESS, HttpsServer, Profile
from e2e.phone import Phone

DAY = datetime.timedelta(days=1)
INSIDE, OUTSIDE = "inside.example", "outside.example"
NO_TRUST = "ERR_CERT|SEC_ERROR|SSL_ERROR|MOZILLA_PKIX"


@pytest.fixture
def https(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[HttpsServer]:
    server = HttpsServer(tmp_path)
    monkeypatch.setenv("AMBERBENCH_DATA_FOLDER", str(server.data))
    monkeypatch.delenv("AMBERBENCH_SIGN_IN")
    with server:
        yield server


def signed(server: HttpsServer, name: str, days_left: int) -> Path:
    """A certificate of the shop's authority that ends so many days from now, in a file of its own."""
    own = server.data / "certificates"
    folder = server.data.parent / f"{name}_{days_left}"
    shutil.copytree(own, folder)
    made = datetime.datetime.now(datetime.UTC) + days_left * DAY - authority.LEAF_LASTS + DAY
    (folder / authority.LEAF_FILE).unlink()
    return authority.leaf(folder, [name], made)


def loads(page: Page, file: Path, asks: bool) -> None:
    """The authority by the page's link. asks: the browser opens a window of its own for it, where no hand reaches."""
    link = page.get_by_role("link", name="Load the certificate")
    if asks:
        file.write_bytes(page.request.get(link.evaluate("one => one.href")).body())
        return
    with page.expect_download() as load:
        link.click()
    load.value.save_as(file)


def test_phone_comes_to_trust_the_shop_and_is_told_when_that_ends(
    browser_type: BrowserType, browser_type_launch_args: dict[str, Any], https: HttpsServer, tmp_path: Path
) -> None:
    profile = Profile(
        browser_type, browser_type_launch_args["executable_path"], tmp_path / "home", PHONE | {"base_url": https.url}
    )
    page_at = f"http://{ADDRESS}:{https.page}/"
    with profile.opened() as context:
        page = context.pages[0]
        with pytest.raises(Error, match=NO_TRUST):
            context.new_page().goto(https.url)
        page.goto(page_at)
        expect(page.get_by_text("does not trust the certificate yet")).to_be_visible()
        loads(page, tmp_path / "amberbench.crt", asks=profile.is_firefox)
    profile.trusts(tmp_path / "amberbench.crt")
    with profile.opened() as context:
        phone = Phone(context.pages[0], fake_clock=False)
        phone.page.goto(page_at)
        phone.page.wait_for_url(f"{https.url}/**")
        expect(phone.page.get_by_text("This phone is not paired")).to_be_visible()
        link = re.search(r"https://\S+/pair#\S+", https.log.read_text())
        assert link
        phone.page.goto(link[0])
        expect(phone.page.get_by_role("heading", name="This phone is paired")).to_be_visible()
        phone.installs()
        expect(phone.page.get_by_text("The server's certificate")).to_have_count(0)
    # What ends soon is told on the first screen.
    https.stop()
    https.with_certificate(signed(https, ADDRESS, days_left=10))
    https.start()
    with profile.opened() as context:
        context.pages[0].goto("/")
        expect(context.pages[0].get_by_text("The server's certificate ends in 9 days")).to_be_visible()
    # It has ended: the app opens, and says why it reaches nobody. So it does with no server at all.
    https.stop()
    https.with_certificate(signed(https, ADDRESS, days_left=-1))
    https.start()
    with profile.opened() as context:
        page = context.pages[0]
        page.clock.install(time=time.time() + 11 * 86_400)
        for end in (None, https.stop):
            if end:
                end()
            page.goto("/")
            expect(page.get_by_text("The server's certificate ended on")).to_be_visible()
            expect(page.get_by_text("The server does not answer just now")).to_be_visible()


def test_name_outside_the_constraints_is_refused_though_it_is_signed(
    browser_type: BrowserType, browser_type_launch_args: dict[str, Any], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(authority, "_may_sign", lambda *_: True)
    profile = Profile(browser_type, browser_type_launch_args["executable_path"], tmp_path / "home", {})
    now = datetime.datetime.now(datetime.UTC)
    own = authority.authority(tmp_path / "own", [INSIDE], True, now)
    (tmp_path / "own.crt").write_bytes(own.public_bytes(Encoding.DER))
    profile.trusts(tmp_path / "own.crt")
    with profile.opened(all_names_at=ADDRESS) as context:
        with answering(tmp_path / "own", INSIDE) as address:
            answer = context.new_page().goto(address)
            assert answer
            assert answer.ok
        with answering(tmp_path / "own", OUTSIDE) as address, pytest.raises(Error, match=NO_TRUST):
            context.new_page().goto(address)


SAYS = "return document.body.innerText.includes(arguments[0])"


@pytest.mark.prove
def test_webkit_trusts_the_shop_starts_without_it_and_refuses_a_name_outside(
    https: HttpsServer, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert not webkit.missing(), f"run `python -m e2e.webkit`: {webkit.missing()}"
    profile, bundle, hosts = tmp_path / "profile", tmp_path / "trusted.crt", tmp_path / "hosts"
    own = authority.authority(https.data / "certificates", [], True, datetime.datetime.now(datetime.UTC))
    bundle.write_bytes(webkit.TRUSTED.read_bytes() + own.public_bytes(Encoding.PEM))
    hosts.write_text(f"{ADDRESS} {INSIDE} {OUTSIDE}\n")
    trusting = {webkit.TRUSTED: bundle, Path("/etc/hosts"): hosts}
    with webkit.opened(tmp_path / "without") as browser:
        browser.opens(https.url)
        browser.waits_for(SAYS, "TLS certificate")
    with webkit.opened(profile, trusting) as browser:
        link = re.search(r"https://\S+/pair#\S+", https.log.read_text())
        assert link
        browser.opens(link[0])
        browser.waits_for(SAYS, "This phone is paired")
        browser.opens(https.url)
        browser.waits_for(SAYS, "Ready to work without a network", most_s=120)
    https.stop()
    with webkit.opened(profile, trusting) as browser:
        browser.opens(https.url)
        browser.waits_for(SAYS, "The server does not answer just now")
        browser.waits_for(SAYS, "Ready to work without a network")
    # A name outside is refused though it is signed.
    monkeypatch.setattr(authority, "_may_sign", lambda *_: True)
    shutil.copytree(https.data / "certificates", tmp_path / "named")
    with webkit.opened(profile, trusting) as browser, answering(tmp_path / "named", OUTSIDE) as address:
        browser.opens(address)
        browser.waits_for(SAYS, "TLS certificate")


@contextmanager
def answering(folder: Path, name: str) -> Iterator[str]:
    """A server with a certificate of the authority in a folder, for a name; gives its address."""
    context = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
    context.load_cert_chain(authority.leaf(folder, [name], datetime.datetime.now(datetime.UTC)))

    class Word(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            self.send_response(200)
            self.end_headers()
            self.wfile.write(b"here")

        def log_message(self, *_: object) -> None:
            pass

    with ThreadingHTTPServer((ADDRESS, 0), Word) as server:
        server.socket = context.wrap_socket(server.socket, server_side=True)
        threading.Thread(target=server.serve_forever, daemon=True).start()
        try:
            yield f"https://{name}:{server.server_port}/"
        finally:
            server.shutdown()
