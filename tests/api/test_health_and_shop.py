"""Is the server there, what time has it, whose shop is it."""

from amberbench.engine import VERSION
from tests.conforming import is_document


def test_health_says_who_answers_and_when(client, clock):
    document = client.get("/api/health").get_json()
    is_document("Health", document)
    assert document["app"] == "amberbench"
    assert document["engine_version"] == VERSION
    assert document["shop_id"] == "demo-shop"
    assert document["received_ms"] == document["sent_ms"] == clock.now_ms


def test_phone_finds_its_clock_error_from_the_two_server_times(client, clock):
    # RFC 5905, section 8: offset = ((T2 - T1) + (T3 - T4)) / 2. The phone is 125 s fast; 60 ms out, 20 ms back.
    phone_ms = clock.now_ms + 125_000 - 60
    document = client.get("/api/health").get_json()
    back_ms = clock.now_ms + 125_000 + 20
    offset_ms = ((document["received_ms"] - phone_ms) + (document["sent_ms"] - back_ms)) / 2
    assert offset_ms == -124_980


def test_shop_is_the_invented_one(client):
    document = client.get("/api/shop").get_json()
    is_document("Shop", document)
    assert document["invented"] is True


def test_every_oven_and_caramel_of_the_shop_can_be_planned_with(client):
    shop = client.get("/api/shop").get_json()
    for oven in shop["ovens"]:
        for caramel in shop["caramels"]:
            request = {
                "mass_kg": 1.2,
                "material": caramel["material"],
                "oven": {"rated_w": oven["rated_w"], "turntable": oven["turntable"]},
                "step_s": oven["step_s"],
            }
            response = client.post("/api/plans/melt", json=request)
            assert response.status_code == 200, response.get_json()


def test_api_answers_are_never_cached(client):
    for path in ("/api/health", "/api/shop", "/api/events", "/api/nowhere"):
        assert client.get(path).headers["Cache-Control"] == "no-store"
