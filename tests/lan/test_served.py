"""`amberbench serve --lan` on real sockets: certificate, page, check, health."""

import ssl
import urllib.error
import urllib.request

import pytest
from click.testing import CliRunner

from amberbench.cli import main
from tests.api.test_real_server import get, serving


@pytest.fixture
def data(tmp_path, monkeypatch):
    monkeypatch.setenv("AMBERBENCH_DATA_FOLDER", str(tmp_path / "data"))
    return tmp_path / "data"


def asked(address, path="", **headers):
    with urllib.request.urlopen(urllib.request.Request(f"{address}{path}", headers=headers), timeout=20) as answer:
        return answer.read(), answer.headers


def test_phone_is_led_from_plain_http_to_https_it_trusts(tmp_path, data):
    options = ("--lan", "--host", "127.0.0.1", "--name", "127.0.0.1", "--page-port", "0")
    with serving(tmp_path, *options, until="SHA-256") as (_, said):
        lines = "".join(said)
        app, page = [word for word in lines.split() if "://" in word]
        page = page.rstrip(":")
        assert str(data / "certificates") in lines
        assert "█" in lines
        # The page: in the reader's language, the steps of the phone that asks opened.
        shown, headers = asked(page, **{"User-Agent": "an iPhone", "Accept-Language": "es"})
        assert "Ajustes de confianza de los certificados" in shown.decode()
        assert shown.decode().count("<details open>") == 1
        assert "script-src 'self'" in headers["Content-Security-Policy"]
        assert f'data-check="{app}trusted"' in shown.decode()
        # The certificate it hands out is the one that makes the app trusted, and only that.
        der, headers = asked(page, "amberbench.crt")
        assert headers["Content-Type"] == "application/x-x509-ca-cert"
        context = ssl.create_default_context(cadata=der)
        health = get(f"{app}api/health", context)
        assert health["certificate_days_left"] == 395
        with pytest.raises(urllib.error.URLError, match="CERTIFICATE_VERIFY_FAILED"):
            get(f"{app}trusted", ssl.create_default_context())
        with urllib.request.urlopen(f"{app}trusted", timeout=20, context=context) as answer:
            assert answer.status == 204
            assert answer.headers["Cross-Origin-Resource-Policy"] == "cross-origin"
        for path in ("api/events", "api/shop", "authority.pem", "static/../templates/page.html"):
            with pytest.raises(urllib.error.HTTPError, match="404"):
                asked(page, path)


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["--lan", "--cert", __file__, "--key", __file__], "makes its own certificate"),
        (["--lan", "--behind-proxy", "1"], "makes its own certificate"),
        (["--name", "shop"], "belong to --lan"),
        (["--lan", "--host", "127.0.0.1", "--name", "a b"], "a b is neither an address nor"),
        (["--host", "0.0.0.0"], "phones need HTTPS"),
    ],
)
def test_options_that_make_no_sense_together_are_said(data, arguments, sentence):
    result = CliRunner().invoke(main, ["serve", "--database", "sqlite://", *arguments])
    assert result.exit_code == 2
    assert sentence in result.output


def test_authority_that_cannot_be_used_is_named_with_the_way_out(data):
    file = data / "certificates/authority.pem"
    file.parent.mkdir(parents=True)
    file.write_text("torn")
    result = CliRunner().invoke(
        main, ["serve", "--database", "sqlite://", "--lan", "--host", "127.0.0.1", "--port", "0"]
    )
    assert result.exit_code == 1
    assert str(file) in result.output
    assert "--new-authority" in result.output
    assert file.read_text() == "torn"


def test_forwarded_headers_are_believed_only_behind_a_proxy(tmp_path):
    sent = {"X-Forwarded-Proto": "https", "X-Forwarded-Host": "shop.example", "X-Forwarded-For": "203.0.113.9"}
    from amberbench.app import create_app

    for proxies, expected in ((0, ("http", "localhost", "127.0.0.1")), (1, ("https", "shop.example", "203.0.113.9"))):
        app = create_app(
            {"SQLALCHEMY_DATABASE_URI": "sqlite://", "PROXIES": proxies, "HOSTS": {"localhost", "shop.example"}}
        )
        seen = []

        @app.before_request
        def look(seen=seen):
            from flask import request

            seen.append((request.scheme, request.host, request.remote_addr))

        app.test_client().get("/api/openapi.json", headers=sent)
        assert seen == [expected]
