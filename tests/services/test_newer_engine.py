"""A server whose engine has changed by one constant: another version, and everything it folds is folded again."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

from sqlalchemy import select, text

from amberbench.engine import VERSION
from amberbench.engine.version import sources, version_of
from amberbench.services import folding
from amberbench.store import reading, writing
from amberbench.store.models import BatchRow, ContributionRow
from tests.bench import planned_slab
from tests.log import Phone, push

ROOT = Path(__file__).parents[2]
HISTORY = ("engine/steps/melt/fold.py", "MOST_HISTORY = 390", "MOST_HISTORY = 2")
"""What a fold keeps of a melt, and so what the melt teaches."""
POWER = ("engine/steps/melt/oven.py", "RATED_SHARE = 0.60", "RATED_SHARE = 0.70")
"""What a kilogram of caramel is thought to take up, and so how long bursts are."""
ASK = """
import json, sys
from amberbench.app import create_app
from amberbench.engine import VERSION, catalogue
from amberbench.services import folding

app = create_app({"SQLALCHEMY_DATABASE_URI": sys.argv[1]})
with app.app_context():
    folding.fold_outdated()
client = app.test_client()
told = {
    "version": VERSION,
    "health": client.get("/api/health").get_json()["engine_version"],
    "records": [client.get(f"/api/batches/{one}").get_json() for one in sys.argv[2:]],
    "contributions": client.get("/api/contributions").get_json()["contributions"],
}
print(json.dumps(told))
"""


def with_another(constant: tuple[str, str, str], folder: Path) -> Path:
    """A folder with a copy of the package in which one constant is another."""
    here = ROOT / "server/amberbench"
    package = shutil.copytree(here, folder / "amberbench", ignore=shutil.ignore_patterns("__pycache__"))
    file, before, after = constant
    source = (package / file).read_text(encoding="utf-8")
    assert source.count(before) == 1
    (package / file).write_text(source.replace(before, after), encoding="utf-8")
    return folder


def melted(phone: Phone) -> list:
    """Opened and melted in two bursts, each read."""
    oven_known = planned_slab() | {"oven_id": "oven", "base_id": "stone", "product_id": "sea"}
    events = [
        phone.event("batch_opened", plan=oven_known, engine_version=VERSION),
        phone.event("ready_checked"),
        phone.event("weighed", kg=1.8, lot="A-117"),
    ]
    for surface_c in (48.0, 73.5):
        events.append(phone.event("burst_started", seconds_s=60, advised_s=60))
        phone.now_ms += 90_000
        events += [phone.event("stirred", free=True), phone.event("read", surface_c=surface_c)]
    return events


def asked(engine: Path, app, *batch_ids: str) -> dict:
    """What a server with that engine tells of the same database."""
    address = app.config["SQLALCHEMY_DATABASE_URI"]
    environment = {**os.environ, "PYTHONPATH": str(engine)}
    done = subprocess.run(
        [sys.executable, "-c", ASK, address, *batch_ids], env=environment, capture_output=True, timeout=60
    )
    assert done.returncode == 0, done.stderr.decode()
    return json.loads(done.stdout)


def test_one_constant_changed_is_another_version_and_folds_and_teaches_anew(app, client, tmp_path):
    closed, running = Phone(), Phone()
    push(client, *melted(closed), closed.event("poured"), closed.event("counted", pieces=205), closed.event("closed"))
    push(client, *melted(running), running.event("burst_started", seconds_s=30, advised_s=30))
    same = asked(ROOT / "server", app, closed.batch_id, running.batch_id)
    other = asked(with_another(HISTORY, tmp_path), app, closed.batch_id, running.batch_id)
    assert same["version"] == same["health"] == VERSION
    assert other["version"] == other["health"] != VERSION
    for before, after in zip(same["records"], other["records"], strict=True):
        assert before["events"] == after["events"]
        assert before["run"] != after["run"]
    (before,), (after,) = same["contributions"], other["contributions"]
    assert before["contribution"]["oven"] != after["contribution"]["oven"]
    with app.app_context(), reading() as session:
        versions = {
            *session.scalars(select(BatchRow.engine_version)),
            *session.scalars(select(ContributionRow.engine_version)),
        }
    assert versions == {other["version"]}


def test_a_burst_that_is_on_is_due_when_it_was_due_before_the_server_was_renewed(app, client, tmp_path):
    running = Phone()
    push(client, *melted(running), running.event("burst_started", seconds_s=30, advised_s=30))
    (before,) = asked(ROOT / "server", app, running.batch_id)["records"]
    other = asked(with_another(POWER, tmp_path), app, running.batch_id)
    assert other["version"] != VERSION
    (after,) = other["records"]
    assert before["run"]["melt"]["burning"]["due_ms"] == running.now_ms + 30_000
    assert before["run"]["melt"]["burning"] == after["run"]["melt"]["burning"]


def test_a_record_is_folded_again_before_it_is_shown(app, client):
    phone = Phone()
    push(client, *phone.whole_batch())
    address = f"/api/batches/{phone.batch_id}"
    before = client.get(address).get_json()
    with app.app_context(), writing() as session:
        session.execute(text("UPDATE batch SET engine_version = '0.1.0', pieces = 1, run = '{}'"))
    assert client.get(address).get_json() == before


def test_what_an_earlier_engine_found_is_taught_until_the_batch_is_folded_again(app, client):
    phone = Phone()
    push(client, *melted(phone), phone.event("poured"), phone.event("counted", pieces=205), phone.event("closed"))
    before = client.get("/api/contributions").get_json()
    with app.app_context(), writing() as session:
        session.execute(text("UPDATE batch SET engine_version = '0.1.0', run = '{}'"))
        session.execute(text("UPDATE contribution SET engine_version = '0.1.0'"))
    assert client.get("/api/contributions").get_json()["contributions"][0]["contribution"] is not None
    with app.app_context():
        folding.fold_outdated()
    assert client.get("/api/contributions").get_json() == before


def test_version_is_of_paths_and_bytes_whatever_ends_the_lines_and_lies_beside_them(tmp_path):
    engine = shutil.copytree(ROOT / "server/amberbench/engine", tmp_path / "engine")
    for file in engine.rglob("*.py"):
        file.write_bytes(file.read_bytes().replace(b"\n", b"\r\n"))
    (engine / "__pycache__").mkdir(exist_ok=True)
    (engine / "__pycache__/catalogue.cpython-311.pyc").write_bytes(b"compiled")
    (engine / "types.py").write_text("made for a type checker", encoding="utf-8")
    assert version_of(sources(engine)) == VERSION
    (engine / "core/units.py").rename(engine / "core/unit.py")
    assert version_of(sources(engine)) != VERSION
