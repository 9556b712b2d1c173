"""The server itself, on a socket: address, HTTPS, large bodies, an orderly end."""

import http.client
import json
import os
import shutil
import signal
import sqlite3
import ssl
import subprocess
import sys
import time
import urllib.error
import urllib.request
from contextlib import closing, contextmanager
from pathlib import Path

import pytest
from click.testing import CliRunner

from amberbench.cli import main
from tests.log import Phone

ROOT = Path(__file__).parent.parent.parent


@contextmanager
def serving(folder, *arguments, until="://"):
    """A server on a free port; gives the address in the first line with `until`; ends it and returns what it said."""
    environment = os.environ | {"PYTHONPATH": str(ROOT / "server"), "PYTHONUNBUFFERED": "1"}
    environment["AMBERBENCH_DATABASE_URL"] = f"sqlite:///{folder / 'served.sqlite'}"
    command = [sys.executable, "-m", "amberbench", "serve", "--port", "0", *arguments]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=environment, text=True)
    try:
        said = []
        for line in process.stdout:
            said.append(line)
            if until in line:
                break
        assert said, process.stderr.read()
        yield said[-1].split()[-1], said
    finally:
        process.send_signal(signal.SIGTERM)
        process.stdout.close()
        process.stderr.close()
        assert process.wait(20) == 0


def get(address, context=None):
    with urllib.request.urlopen(address, timeout=20, context=context) as response:
        return json.load(response)


def test_first_start_sets_up_the_shop_and_the_next_finds_it(tmp_path):
    with serving(tmp_path) as (address, said):
        assert address.startswith("http://127.0.0.1:")
        assert "invented" in said[0]
        assert get(f"{address}api/health")["shop_id"] == get(f"{address}api/shop")["id"]
    with serving(tmp_path) as (address, said):
        assert len(said) == 1
    with serving(tmp_path, "--language", "es") as (address, said):
        assert "--language changes nothing" in said[0]


def test_ten_megabytes_are_refused_as_a_problem_on_the_wire(tmp_path):
    with serving(tmp_path) as (address, _):
        connection = http.client.HTTPConnection(address.split("/")[2], timeout=20)
        for headers in ({}, {"Transfer-Encoding": "chunked"}):
            body = (b" " * 100_000 for _ in range(100)) if headers else b" " * 10_000_000
            connection.request(
                "POST",
                "/api/events",
                body,
                {"Content-Type": "application/json"} | headers,
                encode_chunked=bool(headers),
            )
            response = connection.getresponse()
            assert response.status == 413
            assert response.headers["Content-Type"] == "application/problem+json"
            assert json.load(response)["status"] == 413
            connection.close()
        assert get(f"{address}api/health")["app"] == "amberbench"


def test_long_address_or_header_is_refused_and_the_server_goes_on(tmp_path):
    with serving(tmp_path) as (served, _):
        place = served.split("/")[2]
        for length in (256, 60_000):
            connection = http.client.HTTPConnection(place, timeout=20)
            connection.request("GET", "/" + "a" * length)
            assert connection.getresponse().status == 404
            connection.close()
        # What is longer than 64 kB is cut off before all of it has come in, without a word.
        with pytest.raises((ConnectionResetError, BrokenPipeError, http.client.RemoteDisconnected)):
            get(f"http://{place}/{'a' * 1_000_000}")
        eight_megabytes = urllib.request.Request(f"{served}api/health", headers={"X-Long": "a" * 8 * 1024 * 1024})
        with pytest.raises((ConnectionResetError, BrokenPipeError, urllib.error.URLError)) as refused:
            get(eight_megabytes)
        assert not isinstance(refused.value, urllib.error.HTTPError)
        assert get(f"{served}api/health")["app"] == "amberbench"


@pytest.mark.skipif(shutil.which("openssl") is None, reason="openssl makes the throw-away certificate")
def test_certificate_makes_it_https_and_pairs_the_owners_phone_first(tmp_path, monkeypatch):
    cert, key = tmp_path / "cert.pem", tmp_path / "key.pem"
    command = "openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes -days 2 -subj /CN=bench"
    made = [*command.split(), "-addext", "subjectAltName=IP:127.0.0.1", "-keyout", key, "-out", cert]
    subprocess.run(made, check=True, capture_output=True, timeout=20)
    monkeypatch.delenv("AMBERBENCH_SIGN_IN")
    secure = ("--host", "0.0.0.0", "--cert", str(cert), "--key", str(key))
    with serving(tmp_path, *secure, until="/pair#") as (address, said):
        assert any("the browser that is to be the owner's" in line for line in said)
        context = ssl.create_default_context(cafile=cert)
        base = address.partition("/pair#")[0].replace("0.0.0.0", "127.0.0.1")
        assert get(f"{base}/api/health", context) == {"paired": False}
        body = json.dumps({"code": address.partition("#")[2], "device_id": "phone-a"}).encode()
        asked = urllib.request.Request(f"{base}/api/pairings/use", body, {"Content-Type": "application/json"})
        with urllib.request.urlopen(asked, timeout=20, context=context) as paired:
            assert json.load(paired)["role"] == "owner"
            assert paired.headers["Set-Cookie"].startswith("__Host-amberbench=")
            assert "Server" not in paired.headers
            assert paired.headers["Strict-Transport-Security"] == "max-age=31536000"
    lines = [json.loads(line) for line in (tmp_path / "served.sqlite.access.log").read_text().splitlines()]
    assert [(one["route"], one["status"]) for one in lines] == [("/api/health", 200), ("/api/pairings/use", 200)]
    assert (tmp_path / "served.sqlite.access.log").stat().st_mode & 0o077 == 0


def test_without_sign_in_nobody_but_this_computer_is_served(tmp_path):
    cert = tmp_path / "x.pem"
    cert.touch()
    secure = ["--host", "0.0.0.0", "--cert", str(cert), "--key", str(cert)]
    done = CliRunner().invoke(main, ["serve", "--database", "sqlite://", *secure])
    assert done.exit_code == 2
    assert "AMBERBENCH_SIGN_IN=off" in done.output


def test_what_another_engine_folded_is_folded_again_while_the_server_answers(tmp_path):
    phone = Phone()
    body = json.dumps({"events": phone.whole_batch()}).encode()
    with serving(tmp_path) as (address, _):
        headers = {"Content-Type": "application/json"}
        with urllib.request.urlopen(urllib.request.Request(f"{address}api/events", body, headers), timeout=20):
            before = get(f"{address}api/batches")
    with closing(sqlite3.connect(tmp_path / "served.sqlite")) as database, database:
        database.execute("UPDATE batch SET engine_version = '0.1.0', pieces = 1, run = NULL")
    with serving(tmp_path) as (address, _):
        until = time.monotonic() + 20
        while (now := get(f"{address}api/batches")) != before and time.monotonic() < until:
            time.sleep(0.1)
        assert now == before
