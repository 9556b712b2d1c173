"""The log as lines of JSON, and a whole database moved to another kind: nothing changes on the way."""

import json

import pytest

from amberbench.app import create_app
from amberbench.store import db
from tests.log import Phone, pulled, push, uuid7
from tests.services.test_backup import JPEG, command
from tests.services.test_restore_drill import projections


@pytest.fixture
def exported(app, client, database, tmp_path):
    """A log with all that is awkward, and the file it was exported to."""
    phone = Phone()
    push(
        client,
        *phone.whole_batch(),
        phone.event("noted", text="Año nuevo, ½ – „Karamell“ \u2028 \U0001f36c") | {"hand": "left"},
    )
    push(client, phone.event("noted", text="far ahead") | {"at_ms": 1e14}, phone.event("freed") | {"offset_ms": -0.5})
    push(client, Phone().event("order_taken", boxes=1.0) | {"stream": "order/1", "batch_id": None})
    for _ in range(2):
        client.put(f"/api/photos/{uuid7()}", data=JPEG, content_type="image/jpeg")
    with app.app_context():
        db.engine.dispose()
    command("export", tmp_path / "log.jsonl", database=database)
    return tmp_path / "log.jsonl"


def without_log_id(file):
    first, *rest = file.read_text(encoding="utf-8").split("\n")
    head = json.loads(first)
    return head.pop("log_id"), head, rest


def test_log_exported_taken_in_and_exported_again_is_the_same_to_the_byte(app, client, exported, tmp_path):
    other = tmp_path / "other.sqlite"
    said = command("import", exported, database=other)
    assert "2 photos" in said
    command("export", tmp_path / "again.jsonl", database=other)
    log_id, *before = without_log_id(exported)
    other_id, *after = without_log_id(tmp_path / "again.jsonl")
    assert before == after
    assert log_id != other_id
    assert before[0]["events"] == len(pulled(client, 0)["events"])
    taken = create_app({"SQLALCHEMY_DATABASE_URI": f"sqlite:///{other}", "TESTING": True})
    assert projections(taken) == projections(app)
    with taken.app_context():
        db.engine.dispose()


def cut(lines):
    return lines[:-1]


def torn(lines):
    return [*lines[:-1], lines[-1][:100]]


def doubled_name(lines):
    return [lines[0], lines[1].replace('"v":1', '"v":1,"v":2'), *lines[2:]]


def headless(lines):
    return lines[1:]


def nothing(lines):
    return []


@pytest.mark.parametrize(
    ("spoil", "said"),
    [(cut, "cut short"), (torn, "no log"), (doubled_name, "no log"), (headless, "no log"), (nothing, "no log")],
)
def test_lines_that_are_no_whole_log_are_refused_and_nothing_is_kept(exported, tmp_path, spoil, said):
    lines = exported.read_text(encoding="utf-8").split("\n")[:-1]
    exported.write_text("\n".join(spoil(lines)), encoding="utf-8")
    assert said in command("import", exported, database=tmp_path / "other.sqlite", code=1)
    assert "begun" in command("begin", "--empty", database=tmp_path / "other.sqlite")


def test_log_is_not_taken_in_where_a_shop_was_begun(exported, database):
    assert "already" in command("import", exported, database=database, code=1)


def test_shop_moved_to_postgresql_and_back_is_the_same_log(app, exported, database, postgresql, tmp_path):
    url, back = postgresql.new_database(), tmp_path / "back.sqlite"
    before = projections(app)
    with app.app_context():
        db.engine.dispose()
    command("move", url, database=database)
    there = create_app({"SQLALCHEMY_DATABASE_URI": url, "TESTING": True})
    phone = Phone()
    cursor = pulled(there.test_client(), 0)["cursor"]
    assert push(there.test_client(), phone.event("freed"))[0]["position"] == cursor + 1
    with there.app_context():
        db.engine.dispose()
    command("move", f"sqlite:///{back}", "--database", url, database=database)
    command("export", tmp_path / "back.jsonl", database=back)
    (log_id, head, lines), (other_id, other_head, other_lines) = map(
        without_log_id, (exported, tmp_path / "back.jsonl")
    )
    assert log_id == other_id
    events = head.pop("events")
    assert other_head.pop("events") == events + 1
    assert other_head == head
    assert other_lines[:events] == lines[:events]
    assert other_lines[events + 1 :] == lines[events:]
    returned = create_app({"SQLALCHEMY_DATABASE_URI": f"sqlite:///{back}", "TESTING": True})
    assert [rows for rows in projections(returned)[0] if rows[0] != phone.batch_id] == before[0]
    with returned.app_context():
        db.engine.dispose()
    assert "already" in command("move", url, "--database", f"sqlite:///{back}", database=database, code=1)
