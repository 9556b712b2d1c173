"""Bodies nobody should send, at every endpoint that takes one, and every endpoint under the wrong verb."""

import pytest

from amberbench.engine.products import KINDS
from tests.problem_shape import assert_problem

BODIES = [
    (b"", 400, "not_json"),
    (b"{", 400, "not_json"),
    (b"'mass'", 400, "not_json"),
    (b"\xff\xfe{}", 400, "not_json"),
    (b"\xef\xbb\xbf{}", 400, "not_json"),
    (b'{"a": 1, "a": 2}', 400, "duplicate_name"),
    (b"[" * 100_000, 400, "too_deep"),
    (b"[" * 500 + b"]" * 500, 400, "too_deep"),
    (b'{"a":' * 2000 + b"1" + b"}" * 2000, 400, "too_deep"),
    (b'{"a": "\\ud800"}', 400, "broken_text"),
    (b'{"\\udfff": 1}', 400, "broken_text"),
    (b'{"a": "\\u0000"}', 400, "broken_text"),
    (b'{"mass_kg": NaN}', 422, "not_finite"),
    (b'{"events": [Infinity]}', 422, "not_finite"),
    (b'{"a": [{"b": 1e400}]}', 422, "not_finite"),
    (b'{"a": 12345678901234567890}', 422, "whole_too_large"),
    (b'{"a": ' + b"9" * 5000 + b"}", 400, "not_json"),
    (b"[]", 422, "not_a_record"),
    (b"null", 422, None),
    (b"7", 422, "not_a_record"),
    (b'"lb"', 422, "not_a_record"),
]


# Those that plan a kind of batch; the others are counted below.
OF_KINDS = sum(len(kind.routes) for kind in KINDS)


def routes(app):
    """Every route of the API: (rule, verbs it takes)."""
    rules = [rule for rule in app.url_map.iter_rules() if rule.rule.startswith("/api/")]
    return [(rule.rule, rule.methods - {"HEAD", "OPTIONS"}) for rule in rules]


def address(rule):
    return rule.replace("<batch_id>", "nobody-opened-this").replace("<photo_id>", "nobody-took-this")


def test_every_endpoint_that_takes_a_body_refuses_bad_ones(readonly_client):
    posts = [rule for rule, verbs in routes(readonly_client.application) if "POST" in verbs]
    assert len(posts) == 15 + OF_KINDS
    for rule in posts:
        for body, status, code in BODIES:
            assert_problem(readonly_client.post(rule, data=body, content_type="application/json"), status, code)
        assert_problem(
            readonly_client.post(rule, data=b"mass_kg=1", content_type="application/x-www-form-urlencoded"), 415
        )
        assert_problem(readonly_client.post(rule, data=b"{}"), 415)
        assert_problem(readonly_client.post(rule, data=b" " * 10_000_000, content_type="application/json"), 413)


def test_every_endpoint_refuses_the_wrong_verb(readonly_client):
    taken = {}
    for rule, verbs in routes(readonly_client.application):
        taken.setdefault(rule, set()).update(verbs)
    assert len(taken) == 38 + OF_KINDS
    for rule, verbs in taken.items():
        for verb in {"GET", "POST", "PUT", "PATCH", "DELETE"} - verbs:
            response = readonly_client.open(address(rule), method=verb, json={})
            assert_problem(response, 405)
            assert set(response.headers["Allow"].split(", ")) >= verbs


@pytest.mark.parametrize(
    "path", ["/api", "/api/", "/api/nowhere", "/api/plans/fudge", "/api/batches/x/y", "/api/../api"]
)
@pytest.mark.parametrize("verb", ["GET", "POST", "DELETE"])
def test_unknown_address_of_the_api_is_a_problem_never_the_app(readonly_client, path, verb):
    assert_problem(readonly_client.open(path, method=verb), 404)


@pytest.mark.parametrize(
    "query", ["after=-1", "after=x", "after=1e3", "after=٣", "after=", "limit=0", "limit=501", "limit=9" * 40]
)
def test_bad_cursor_is_a_problem(readonly_client, query):
    assert_problem(readonly_client.get(f"/api/events?{query}"), 422, field=query.split("=")[0])


@pytest.mark.parametrize("query", ["limit=0", "limit=1001", "limit=many", "before=%00", "before=" + "x" * 100])
def test_bad_page_of_batches_is_a_problem(readonly_client, query):
    assert_problem(readonly_client.get(f"/api/batches?{query}"), 422, field=query.split("=")[0])


@pytest.mark.parametrize("batch_id", ["%00", "%ff", "a b", "x" * 5000, "'; drop table event; --"])
def test_strange_batch_id_is_not_found(readonly_client, batch_id):
    assert_problem(readonly_client.get(f"/api/batches/{batch_id}"), 404)


def test_problem_speaks_english_where_it_has_no_other_language(readonly_client):
    response = readonly_client.get("/api/nowhere", headers={"Accept-Language": "tlh, *;q=0.1"})
    assert assert_problem(response, 404)["detail"] == "There is nothing here."


@pytest.mark.parametrize(
    ("asked", "language", "given"),
    [
        ("es", "es", "900,5"),
        ("es-AR, en;q=0.5", "es", "900,5"),
        ("es-419, en;q=0.5", "es-MX", "900.5"),
        ("fr, es;q=0.8, en;q=0.2", "es", "900,5"),
    ],
)
def test_problem_speaks_spanish_to_who_asks_for_it(readonly_client, asked, language, given):
    request = {"mass_kg": 900.5, "oven": {"rated_w": 1000}}
    response = readonly_client.post("/api/plans/melt", json=request, headers={"Accept-Language": asked})
    document = assert_problem(response, 422, field="mass_kg")
    assert response.headers["Content-Language"] == language
    assert "Accept-Language" in response.headers["Vary"]
    assert f"{given}\u202fkg es demasiado. Se admite: de" in document["detail"]
