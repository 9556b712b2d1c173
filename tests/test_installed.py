"""The packages as somebody else installs them: the phone's app inside, no Node, data in the user's own folder."""

import fcntl
import json
import os
import re
import shutil
import signal
import sqlite3
import stat
import subprocess
import sys
import tarfile
import urllib.error
import urllib.request
import zipfile
from contextlib import closing, contextmanager
from importlib.metadata import distribution
from pathlib import Path

import pytest
from packaging.requirements import Requirement

from amberbench import config
from amberbench.engine import catalogue

ROOT = Path(__file__).parent.parent
FRAME = {"pieces": 96, "piece_length_m": 0.024, "piece_width_m": 0.024, "max_length_m": 0.5, "max_width_m": 0.4}


@pytest.fixture(scope="session")
def packages(tmp_path_factory):
    """Both packages, built once for all workers of a test run."""
    folder = tmp_path_factory.getbasetemp()
    folder = (folder.parent if os.environ.get("PYTEST_XDIST_WORKER") else folder) / "packages"
    with open(f"{folder}.lock", "w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not folder.is_dir():
            shutil.rmtree(f"{folder}.part", ignore_errors=True)
            build(ROOT, f"{folder}.part").check_returncode()
            Path(f"{folder}.part").rename(folder)
    return folder


def build(root, folder):
    command = [sys.executable, "-m", "hatchling", "build", "-d", folder]
    return subprocess.run(command, cwd=root, capture_output=True, text=True, timeout=120)


def built_files():
    """Names of the phone's files, from its folder."""
    dist = ROOT / "pwa/dist"
    return {str(file.relative_to(dist)) for file in dist.rglob("*") if file.is_file()}


def test_wheel_and_source_hold_the_phones_app_and_the_licence(packages):
    with zipfile.ZipFile(next(packages.glob("*.whl"))) as wheel:
        names = set(wheel.namelist())
        assert {f"amberbench/pwa/{name}" for name in built_files()} <= names
        assert "MIT License" in wheel.read(next(name for name in names if name.endswith("licenses/LICENSE"))).decode()
    with tarfile.open(next(packages.glob("*.tar.gz"))) as source:
        names = {name.partition("/")[2] for name in source.getnames()}
    assert {f"pwa/dist/{name}" for name in built_files()} <= names
    tracked = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    assert set(tracked.split("\0")) - {""} <= names


def test_git_keeps_nothing_that_is_made():
    ignored = ["git", "ls-files", "--cached", "--ignored", "--exclude-standard"]
    assert subprocess.run(ignored, cwd=ROOT, capture_output=True, text=True, check=True).stdout == ""


def test_no_package_is_built_without_the_phones_app(tmp_path):
    for part in ("pyproject.toml", "README.md", "LICENSE", "server/build_hook.py", "server/amberbench/__init__.py"):
        (tmp_path / part).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(ROOT / part, tmp_path / part)
    done = build(tmp_path, tmp_path / "packages")
    assert done.returncode == 1
    assert "The phone's app is not built" in done.stdout + done.stderr
    assert "Traceback" not in done.stdout + done.stderr
    assert not list((tmp_path / "packages").glob("*"))


def test_notices_name_every_part_that_is_shipped():
    notices = (ROOT / "pwa/dist/notices.txt").read_text(encoding="utf-8")
    assert notices.startswith("# Amberbench\n\nMIT License\n\nCopyright (c) 2026 the Amberbench maintainers")
    declared = json.loads((ROOT / "pwa/package.json").read_text())["dependencies"]
    sources = "".join(file.read_text() for file in (ROOT / "pwa/src").rglob("*.ts*") if ".test." not in file.name)
    shipped = {name for name in declared if re.search(rf'from "{re.escape(name)}[/"]', sources)}
    assert {"preact", "@preact/signals", "idb"} < shipped
    python = "@micropython/micropython-webassembly-pyscript"
    assert f"MicroPython {declared[python]}," in notices
    for name in shipped - {python}:
        assert f"## {name} - {declared[name]} (" in notices


def needed(requirements, found):
    """Adds to `found` the distributions of these requirements and all that they need here, as their metadata say."""
    for requirement in map(Requirement, requirements):
        if requirement.marker is None or requirement.marker.evaluate({"extra": ""}):
            one = distribution(requirement.name)
            if one.name not in found:
                found[one.name] = one
                needed(one.requires or (), found)
    return found


@pytest.fixture
def installed(packages, tmp_path):
    """A Python environment with the wheel and what the wheel says it needs, nothing else; its folder."""
    environment = tmp_path / "environment"
    subprocess.run([sys.executable, "-m", "venv", "--without-pip", environment], check=True, timeout=60)
    install = [sys.executable, "-m", "pip", "--python", environment, "install", "--quiet", "--no-index", "--no-deps"]
    subprocess.run([*install, next(packages.glob("*.whl"))], check=True, timeout=120)
    site = next(environment.glob("lib/python*/site-packages"))
    wheel = next(site.glob("amberbench-*.dist-info/METADATA")).read_text()
    found = needed(re.findall(r"^Requires-Dist: (.+)$", wheel, re.MULTILINE), {})
    for one in found.values():
        for top in {file.parts[0] for file in one.files if file.parts[0] not in ("..", "__pycache__")}:
            (site / top).exists() or (site / top).symlink_to(one.locate_file(top))
    return environment


def surroundings(environment, home):
    """What the command finds around it: its own environment alone on the path, a home of its own, nobody to pair."""
    home.mkdir(exist_ok=True)
    own = {"PATH": str(environment / "bin"), "HOME": str(home), "AMBERBENCH_SIGN_IN": "off"}
    return own | {"LANG": "C.UTF-8", "PYTHONUNBUFFERED": "1"}


@contextmanager
def served(environment, home):
    """`amberbench serve` of an environment; gives its address and what it said first."""
    process = subprocess.Popen(
        [environment / "bin/amberbench", "serve", "--port", "0"],
        **{"stdout": subprocess.PIPE, "stderr": subprocess.STDOUT, "text": True},
        **{"env": surroundings(environment, home), "cwd": home},
    )
    try:
        said = ""
        for line in process.stdout:
            said += line
            if found := re.search(r"http://\S+/", line):
                break
        assert found, said
        yield found[0], said
    finally:
        process.send_signal(signal.SIGTERM)
        process.communicate(timeout=20)
        assert process.returncode == 0


def get(address, body=None):
    request = urllib.request.Request(address, body, {"Content-Type": "application/json"})
    with urllib.request.urlopen(request, timeout=20) as response:
        return response.headers, response.read()


def test_installed_app_serves_the_phone_without_node_and_keeps_its_data_at_home(installed, tmp_path):
    home = tmp_path / "home"
    assert shutil.which("node", path=surroundings(installed, home)["PATH"]) is None
    before = {file for file in installed.rglob("*") if "__pycache__" not in file.parts}
    with served(installed, home) as (address, _):
        assert json.loads(get(f"{address}api/health")[1])["app"] == "amberbench"
        shell = get(address)[1]
        assert shell == (ROOT / "pwa/dist/index.html").read_bytes()
        types = {
            "sw.js": "text/javascript",
            "assets/*.wasm": "application/wasm",
            "assets/worker-*.js": "text/javascript",
        }
        for pattern, kind in types.items():
            file = next(ROOT.glob(f"pwa/dist/{pattern}"))
            headers, content = get(address + str(file.relative_to(ROOT / "pwa/dist")))
            assert headers["Content-Type"].partition(";")[0] == kind
            assert content == file.read_bytes()
        plan = json.loads(get(f"{address}api/plans/frame", json.dumps(FRAME).encode())[1])
        assert plan == json.loads(json.dumps(catalogue.call("cut.fit_frame", FRAME)))
        folder = home / ".local/share/amberbench"
        modes = {file.name: stat.S_IMODE(file.stat().st_mode) for file in folder.iterdir()}
        beside = ("", "-wal", "-shm", ".begun", ".address", ".access.log")
        assert modes == {f"amberbench.sqlite{end}": 0o600 for end in beside}
        assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    assert {file for file in installed.rglob("*") if "__pycache__" not in file.parts} == before


def test_installed_app_takes_along_what_an_earlier_one_kept_in_its_environment(installed, ready_database, tmp_path):
    earlier = installed / "var/amberbench-instance/amberbench.sqlite"
    earlier.parent.mkdir(parents=True)
    shutil.copy(ready_database, earlier)
    with closing(sqlite3.connect(earlier)) as database:
        events = database.execute("SELECT count(*) FROM event").fetchone()
    with served(installed, tmp_path / "home") as (_, said):
        assert "copied" in said
        assert str(earlier) in said
    with served(installed, tmp_path / "home") as (_, said):
        assert "copied" not in said
        with closing(sqlite3.connect(tmp_path / "home/.local/share/amberbench/amberbench.sqlite")) as database:
            assert database.execute("SELECT count(*) FROM event").fetchone() == events
    assert earlier.is_file()


def test_clone_goes_on_with_the_data_inside_it(monkeypatch):
    monkeypatch.delenv("AMBERBENCH_DATA_FOLDER")
    assert config.settings()["SQLALCHEMY_DATABASE_URI"] == f"sqlite:///{ROOT / 'server/instance/amberbench.sqlite'}"
