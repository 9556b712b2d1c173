"""However the events of batches are cut into pushes, what is kept is the fold of the whole log."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import event, select

from amberbench.services import folding
from amberbench.store import db, queries, reading, writing
from amberbench.store.models import BatchRow, UnopenedRow
from tests.bench import dipped_slab, planned_bowl, planned_slab
from tests.log import Phone, push

KINDS = (
    ("ready_checked", {}),
    ("weighed", {"kg": 1.75, "lot": "A-117"}),
    ("burst_started", {"seconds_s": 60.5, "advised_s": 60}),
    ("burst_ended", {}),
    ("stirred", {"free": True}),
    ("read", {"surface_c": 71.5}),
    ("read", {"surface_c": "warm"}),
    ("poured", {}),
    ("slab_read", {"surface_c": 45.0}),
    ("touched", {"firm": False}),
    ("counted", {"pieces": 205}),
    ("bowl_burst", {"seconds_s": 30}),
    ("bowl_read", {"bowl_c": 31.4}),
    ("bowl_read", {"bowl_c": 31.9}),
    ("bowl_read", {"bowl_c": 34}),
    ("seeded", {"kg": 0.5}),
    ("strip_tested", {"good": True}),
    ("strip_tested", {"good": False}),
    ("bowl_warmed", {}),
    ("bowl_used", {}),
    ("dipping_started", {}),
    ("salted", {}),
    ("dipped", {}),
    ("weighed_out", {"kg": 0.2, "what": "chocolate"}),
    ("noted", {"text": "x"}),
    ("photographed", {"photo_id": "p", "bytes": 9, "width_px": 4, "height_px": 3}),
    ("taken_over", {}),
    ("sprinkled", {}),
    ("batch_opened", {"plan": {"kind": "slab"}}),
    ("closed", {}),
    ("undone", {}),
    ("redone", {}),
    ("renamed", {"name": "Squares C"}),
    ("thrown_away", {"reason": "dropped"}),
    ("series_ended", {"ended": True}),
)


@st.composite
def batch_logs(draw):
    """The events of a batch on two phones, in the order they reach the server, and the sizes of the pushes."""
    phone = Phone()
    plan = draw(st.sampled_from([planned_slab(), dipped_slab(), planned_bowl()]))
    events = [phone.event("batch_opened", plan=plan)]
    for kind, body in draw(st.lists(st.sampled_from(KINDS), max_size=30)):
        told = phone.event(kind, **body)
        if kind in ("undone", "redone"):
            told["body"]["event_id"] = draw(st.sampled_from(events))["id"]
        told["device_id"] = draw(st.sampled_from(["phone-a", "phone-b"]))
        told["at_ms"] += draw(st.sampled_from([0, 0, 0, -1000, -2500.5, 4000, 2 * 86_400_000]))
        events.append(told)
    if draw(st.booleans()):
        events = draw(st.permutations(events))
    return events, draw(st.lists(st.integers(1, 9), min_size=1, max_size=30))


def kept(app, batch_id):
    with app.app_context(), reading() as session:
        asked = select(*BatchRow.__table__.columns).where(BatchRow.batch_id == batch_id)
        return session.execute(asked).mappings().one_or_none()


def waits(session, batch_id):
    return session.scalar(select(UnopenedRow).where(UnopenedRow.batch_id == batch_id)) is not None


def folded_whole(app, batch_id):
    with app.app_context(), writing() as session:
        row = queries.batch(session, batch_id)
        if row is not None:
            session.delete(row)
            session.flush()
        assert waits(session, batch_id) == (row is None)
        folding.refold_batch(session, batch_id)
    return kept(app, batch_id)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60)
@given(log=batch_logs())
def test_what_pushes_add_up_to_is_the_fold_of_the_whole_log(app, client, log):
    events, sizes = log
    batch_id = events[0]["batch_id"]
    while events:
        size = sizes.pop() if sizes else len(events)
        push(client, *events[:size])
        events = events[size:]
        assert kept(app, batch_id) == folded_whole(app, batch_id)


def test_events_at_the_end_are_folded_without_reading_the_log(app, client):
    phone = Phone()
    push(client, phone.opens(), phone.event("ready_checked"))
    asked = []
    with app.app_context():
        event.listen(db.engine, "before_cursor_execute", lambda *args: asked.append(args[2]))
    push(client, phone.event("weighed", kg=1.8, lot="A-117"), phone.event("noted", text="x"))
    assert not [one for one in asked if "event.stream_id = " in one]
    assert (kept(app, phone.batch_id)["events"], kept(app, phone.batch_id)["caramel_kg"]) == (4, 1.8)
    push(client, phone.event("undone", event_id=phone.event("noted")["id"]))
    assert [one for one in asked if "event.stream_id = " in one]


def test_a_figure_no_column_takes_harms_no_other_batch_of_the_push(app, client, caplog):
    sound, absurd = Phone(), Phone()
    opening = absurd.opens()
    plan = opening["body"]["plan"]
    cut = dict(plan["reply"]["cut"], pieces=1e300)
    opening["body"] = {"plan": dict(plan, reply=dict(plan["reply"], cut=cut))}
    push(client, opening, *sound.whole_batch())
    assert kept(app, absurd.batch_id)["run"] is None
    assert kept(app, sound.batch_id)["step"] == "closed"
    assert "could not be folded" in caplog.text
