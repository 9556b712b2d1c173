"""The files of `server/deploy`: what can be tried without an engine for containers and without root's systemd."""

import json
import os
import shutil
import subprocess
import sys
import time
import zipfile
from contextlib import ExitStack, contextmanager
from pathlib import Path

import pytest
import yaml

from e2e import debian
from e2e.server import free_port
from tests.api.test_real_server import serving

ROOT = Path(__file__).parents[1]
DEPLOY = ROOT / "server/deploy"
NAME = "caramels.example"


def installed(program, package):
    """A program, installed from Debian where it is missing and we are root."""
    if not shutil.which(program) and debian.can_install():
        debian.install(package)
    found = shutil.which(program)
    assert found, f"{program} is missing: install {package}"
    return found


def certificate(folder):
    """A throw-away certificate and key for the public name."""
    cert, key = folder / "fullchain.pem", folder / "key.pem"
    command = "openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes -days 2 -subj /CN=proxy"
    made = [*command.split(), "-addext", f"subjectAltName=DNS:{NAME},IP:127.0.0.1", "-keyout", key, "-out", cert]
    subprocess.run(made, check=True, capture_output=True, timeout=20)
    return cert, key


def nginx(folder, port, app):
    """The command that runs nginx with our file, only its places and ports others."""
    cert, key = certificate(folder)
    ours = (DEPLOY / "nginx.conf").read_text()
    for there, here in (
        ("listen 443", f"listen 127.0.0.1:{port}"),
        ("/etc/ssl/amberbench/fullchain.pem", str(cert)),
        ("/etc/ssl/amberbench/key.pem", str(key)),
        ("127.0.0.1:8765", app),
    ):
        assert there in ours
        ours = ours.replace(there, here)
    kept = ("client_body", "proxy", "fastcgi", "uwsgi", "scgi")
    ours = " ".join(f"{one}_temp_path {folder}/{one};" for one in kept) + ours
    # Its workers would be nobody, who may not write into our folder.
    root = "user root; " if os.geteuid() == 0 else ""
    whole = f"{root}daemon off; pid {folder}/pid; error_log {folder}/log; events {{}} http {{ access_log off; {ours} }}"
    (folder / "nginx.conf").write_text(whole)
    return [installed("nginx", "nginx-light"), "-c", folder / "nginx.conf"], {}, cert


def caddy(folder, port, app):
    """The command that runs Caddy with our file; a certificate of its own in place of a public one."""
    ours = (DEPLOY / "Caddyfile").read_text()
    assert ours.count("{$AMBERBENCH_NAME}") == 1
    local = "{\n\tadmin off\n\tskip_install_trust\n\tauto_https disable_redirects\n\tlocal_certs\n}\n"
    (folder / "Caddyfile").write_text(local + ours)
    more = {"AMBERBENCH_NAME": f"https://{NAME}:{port}", "AMBERBENCH_APP": app, "XDG_DATA_HOME": str(folder)}
    run = [installed("caddy", "caddy"), "run", "--adapter", "caddyfile", "--config", folder / "Caddyfile"]
    return run, more, folder / "caddy/pki/authorities/local/root.crt"


@contextmanager
def running(command, environment, log):
    with (
        log.open("wb") as said,
        subprocess.Popen(command, stdout=said, stderr=said, env=os.environ | environment) as process,
    ):
        try:
            yield
        finally:
            process.terminate()


def through(port, trusted, path, body=None, patience_s=20):
    """An answer of the proxy, by its public name, over a certificate that is trusted."""
    until = time.monotonic() + patience_s
    while True:
        try:
            command = ["curl", "--silent", "--show-error", "--max-time", "20", "--include", "--cacert", trusted]
            command += ["--resolve", f"{NAME}:{port}:127.0.0.1", f"https://{NAME}:{port}{path}"]
            command += ["--data-binary", "@-", "--header", "Content-Type: application/json"] if body else []
            done = subprocess.run(command, input=body, capture_output=True, timeout=30, check=True)
            return done.stdout.decode()
        except (OSError, subprocess.CalledProcessError):
            if time.monotonic() > until:
                raise
            time.sleep(0.2)


@pytest.mark.prove
@pytest.mark.parametrize("proxy", [nginx, caddy])
def test_app_answers_behind_the_proxy_by_its_public_name(proxy, tmp_path, monkeypatch):
    monkeypatch.delenv("AMBERBENCH_SIGN_IN")
    monkeypatch.setenv("AMBERBENCH_HOSTS", NAME)
    port = free_port()
    with ExitStack() as stack:
        address, _ = stack.enter_context(serving(tmp_path, "--behind-proxy", "1"))
        command, more, trusted = proxy(tmp_path, port, address.split("/")[2])
        stack.enter_context(running(command, more, tmp_path / "proxy.log"))
        health = through(port, trusted, "/api/health")
        assert json.loads(health.split("\r\n\r\n")[-1]) == {"paired": False}, (tmp_path / "proxy.log").read_text()
        # It knows that it is asked over HTTPS.
        assert "strict-transport-security" in health.lower()
        assert "<html" in through(port, trusted, "/")
        # As large as the app takes it: refused by the app, in its sentence, and not by the proxy.
        assert "application/problem+json" in through(port, trusted, "/api/events", b" " * (2 * 1024 * 1024 + 1))


@pytest.mark.prove
def test_what_the_dockerfile_does_gives_a_server_that_answers(tmp_path, monkeypatch):
    monkeypatch.delenv("AMBERBENCH_SIGN_IN")
    wheel = next(iter(ROOT.glob("dist/amberbench-*.whl")), None)
    if wheel is None:
        subprocess.run(["make", "wheel"], cwd=ROOT, check=True, capture_output=True, timeout=600)
        wheel = next(ROOT.glob("dist/amberbench-*.whl"))
    assert "amberbench/lan/templates/page.html" in zipfile.ZipFile(wheel).namelist()
    steps = (DEPLOY / "Dockerfile").read_text().replace("\\\n", " ").splitlines()
    pip = tmp_path / "venv/bin/pip"
    subprocess.run([sys.executable, "-m", "venv", tmp_path / "venv"], check=True, timeout=120)
    for source in (line.split()[1] for line in steps if line.startswith("COPY")):
        for file in ROOT.glob(source):
            shutil.copy(file, tmp_path)
    for line in (line for line in steps if line.startswith("RUN pip")):
        shell = line.removeprefix("RUN ").replace("/tmp/", f"{tmp_path}/").replace("pip install", f"{pip} install -q")
        subprocess.run(shell, shell=True, check=True, timeout=600)
    command = json.loads(next(line for line in steps if line.startswith("CMD")).removeprefix("CMD "))
    check = json.loads(next(line for line in steps if line.startswith("HEALTHCHECK")).split("CMD ")[1])
    port = str(free_port())
    environment = {
        "AMBERBENCH_DATA_FOLDER": str(tmp_path / "data"),
        "PATH": f"{tmp_path}/venv/bin:{os.environ['PATH']}",
    }
    with running([tmp_path / "venv/bin" / command[0], *command[1:], "--port", port], environment, tmp_path / "log"):
        until = time.monotonic() + 60
        healthy = [tmp_path / "venv/bin/python", check[1], check[2].replace("8765", port)]
        while subprocess.run(healthy, capture_output=True, timeout=20, check=False).returncode:
            assert time.monotonic() < until, (tmp_path / "log").read_text()
            time.sleep(0.5)
        assert (tmp_path / "data/amberbench.sqlite").exists()


def test_compose_file_names_what_is_there():
    compose = yaml.safe_load((DEPLOY / "compose.yaml").read_text())
    named = {volume.split(":")[0] for one in compose["services"].values() for volume in one.get("volumes", [])}
    assert {one for one in named if not one.startswith("./")} == set(compose["volumes"])
    assert all((DEPLOY / one).exists() for one in named if one.startswith("./"))
    app = compose["services"]["app"]["build"]
    assert (DEPLOY / app["context"] / app["dockerfile"]).resolve() == DEPLOY / "Dockerfile"
    assert {"service_healthy"} == {one["condition"] for one in compose["services"]["proxy"]["depends_on"].values()}
    assert "HEALTHCHECK" in (DEPLOY / "Dockerfile").read_text()


@pytest.mark.skipif(shutil.which("systemd-analyze") is None, reason="systemd-analyze judges the unit")
def test_unit_is_one_for_systemd(tmp_path):
    unit = (DEPLOY / "amberbench.service").read_text()
    assert unit.count("ExecStart=/opt/amberbench/bin/amberbench") == 2
    file = tmp_path / "amberbench.service"
    file.write_text(unit.replace("/opt/amberbench/bin/amberbench", shutil.which("true")))
    command = ["systemd-analyze", "verify", file]
    judged = subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)
    assert judged.returncode == 0, judged.stderr
    assert "amberbench.service" not in judged.stderr
