"""Whatever is sent, the answer is a reply or a problem: never a failure of the server."""

import json

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from amberbench.engine import fields as engine_fields
from tests.api.test_plan_endpoints import REQUESTS
from tests.log import Phone, pulled, uuid7
from tests.problem_shape import assert_problem

# The client is shared by the examples: they only add to the log, or ask.
SHARED = settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
WORDS = st.sampled_from(
    ["", "2.5 lb", "0.5 in", "70 °F", "1e308 kg", "-3 s", "caramel", "fit", "fan", "nan", "°", "1 per"]
)
VALUES = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(2**60), 2**60)
    | st.floats()
    | st.floats(0, 100)
    | WORDS
    | st.text(max_size=6),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(["value", "unit", "layers", "kg", "power_w", "length_m", "h_w_m2k", "x"]), inner, max_size=3
        )
    ),
    max_leaves=6,
)


@st.composite
def spoiled(draw, name):
    """A sound request with some fields of its own, or of nobody's, set to anything."""
    function, request = REQUESTS[name]
    names = sorted(engine_fields.FUNCTIONS[function]["request"])
    changes = draw(st.dictionaries(st.sampled_from([*names, "colour"]), VALUES, max_size=3))
    return request | changes


def check(response):
    if response.status_code == 200:
        json.loads(response.data, parse_constant=lambda word: (_ for _ in ()).throw(ValueError(word)))
    else:
        assert response.status_code in (400, 422)
        assert_problem(response, response.status_code)


@SHARED
@given(st.data())
def test_plans_answer_or_refuse(client, data):
    name = data.draw(st.sampled_from(sorted(set(REQUESTS) - {"cooling", "slab"})))
    check(client.post(f"/api/plans/{name}", json=data.draw(spoiled(name))))


@settings(SHARED, max_examples=40)
@given(st.data())
def test_slow_plans_answer_or_refuse(client, data):
    name = data.draw(st.sampled_from(["cooling", "slab"]))
    check(client.post(f"/api/plans/{name}", json=data.draw(spoiled(name))))


@SHARED
@given(
    st.lists(VALUES | st.dictionaries(st.sampled_from(list(Phone().event("freed"))), VALUES, max_size=10), max_size=4)
)
def test_any_events_are_answered_one_by_one(client, events):
    response = client.post("/api/events", json={"events": events})
    check(response)
    if response.status_code == 200:
        assert len(response.get_json()["answers"]) == len(events)


KINDS = st.sampled_from(sorted(engine_fields.EVENTS))
BODIES = st.dictionaries(
    st.sampled_from(["kg", "seconds_s", "surface_c", "pieces", "plan", "firm", "event_id", "step"]), VALUES, max_size=3
)


@SHARED
@given(st.lists(st.tuples(KINDS, BODIES, st.integers(0, 2**53), st.floats(-1e14, 1e14)), min_size=1, max_size=6))
def test_well_formed_events_are_stored_whatever_they_say(client, happenings):
    phone = Phone(uuid7())
    events = [
        phone.event(kind, **body) | {"at_ms": min(at_ms, 10**14), "offset_ms": offset_ms}
        for kind, body, at_ms, offset_ms in happenings
    ]
    response = client.post("/api/events", json={"events": events})
    check(response)
    if response.status_code == 200:
        assert {answer["result"] for answer in response.get_json()["answers"]} == {"stored"}
        first = response.get_json()["answers"][0]["position"]
        kept = pulled(client, first - 1)["events"]
        assert [one["body"] for one in kept] == [event["body"] for event in events]
        check(client.get("/api/snapshot"))


QUERIES = st.text(st.characters(codec="utf-8"), max_size=12)


@SHARED
@given(QUERIES, QUERIES, st.sampled_from(["events", "batches", "batches/x"]))
def test_any_query_is_answered_or_refused(client, first, second, endpoint):
    response = client.get(f"/api/{endpoint}", query_string={"after": first, "limit": second, "before": first})
    if response.status_code != 200:
        assert response.status_code in (404, 422)
        assert_problem(response, response.status_code)
