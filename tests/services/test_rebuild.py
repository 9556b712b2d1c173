"""The projection is nothing but the log, folded."""

from sqlalchemy import select, text

from amberbench.services import folding
from amberbench.store import reading, writing
from amberbench.store.models import BatchRow, UnopenedRow
from tests.log import Phone, push


def rows(app):
    with app.app_context(), reading() as session:
        columns = list(BatchRow.__table__.columns)
        return sorted(tuple(row) for row in session.execute(select(*columns)))


def waiting(app):
    with app.app_context(), reading() as session:
        return list(session.scalars(select(UnopenedRow.batch_id)))


def test_rebuilding_gives_what_was_there_and_heals_what_was_damaged(app, client):
    closed, running, unopened = Phone(), Phone(), Phone()
    push(client, *closed.whole_batch())
    push(client, running.opens(), running.event("ready_checked"))
    push(client, unopened.event("freed"))
    before = rows(app)
    assert len(before) == 2
    with app.app_context():
        with writing() as session:
            session.execute(text("UPDATE batch SET pieces = 1, run = NULL, step = 'lost'"))
            values = "'ghost', name, kind, 1, 2, step, 3, 4, 5, device_id, 6, run, engine_version, broken, label"
            session.execute(text(f"INSERT INTO batch SELECT {values} FROM batch LIMIT 1"))
            session.execute(text("UPDATE unopened SET batch_id = 'ghost'"))
        assert rows(app) != before
        assert folding.rebuild() == 2
    assert rows(app) == before
    assert waiting(app) == [unopened.batch_id]
    push(client, unopened.opens())
    assert waiting(app) == []


def test_server_with_a_newer_engine_folds_all_batches_anew(app, client):
    closed, running = Phone(), Phone()
    push(client, *closed.whole_batch())
    push(client, running.opens())
    before = rows(app)
    with app.app_context():
        with writing() as session:
            session.execute(text("UPDATE batch SET pieces = 1, engine_version = '0.0.1' WHERE step = 'closed'"))
            session.execute(text("DELETE FROM batch WHERE step <> 'closed'"))
        folding.fold_outdated()
    assert rows(app) == before
