"""Every route × (no token, each role, revoked, unknown, another shop's, foreign Origin, foreign Host)."""

import json
import logging
import shutil

import pytest

from amberbench.api import access
from amberbench.api.access import ANYONE, READS, ROLE_OF_ENDPOINT
from amberbench.services import pairing, roles
from tests.conftest import application
from tests.log import Phone, push
from tests.paired import paired
from tests.problem_shape import assert_problem

CLOSED = (401, 403, 421, 429)


def calls(app):
    """Every call there is: (endpoint, method, address)."""
    for rule in app.url_map.iter_rules():
        for method in sorted(rule.methods - {"OPTIONS"}):  # Flask answers those of an address, for all its endpoints.
            yield rule.endpoint, method, rule.rule.replace("<", "").replace(">", "")


def statuses(client, app, **headers):
    """What each call is answered, by endpoint and method; never a failure of ours."""
    found = {}
    for endpoint, method, address in calls(app):
        answer = client.open(address, method=method, headers=headers)
        assert answer.status_code < 500, (endpoint, method)
        found[endpoint, method] = answer.status_code
    return found


def kept(app):
    """How many events and phones there are."""
    with app.app_context():
        stored = app.test_client()
        app.config["SIGN_IN"] = False
        events = stored.get("/api/snapshot").get_json()["cursor"]
        app.config["SIGN_IN"] = True
        return events, len(pairing.phones())


def refuses(endpoint, role):
    needed = ROLE_OF_ENDPOINT[endpoint]
    return needed != ANYONE and not roles.may(role, needed)


def test_without_a_token_that_is_good_only_health_and_pairing_answer(shop, clock, database, tmp_path):
    revoked = paired(shop, clock, "owner", "phone-r")
    with shop.app_context():
        assert pairing.revoke(revoked.phone_id, clock.now_ms)
    unknown = shop.test_client()
    unknown.set_cookie("amberbench", "x" * 43)
    elsewhere = application(shutil.copy(database, tmp_path / "other.sqlite"), clock, SIGN_IN=True)
    of_another_shop = shop.test_client()
    of_another_shop.set_cookie("amberbench", paired(elsewhere, clock, "owner").get_cookie("amberbench").value)
    clients = {"none": shop.test_client(), "revoked": revoked, "unknown": unknown, "other shop": of_another_shop}
    before = kept(shop)
    for name, client in clients.items():
        for (endpoint, method), status in statuses(client, shop).items():
            assert (status == 401) == (ROLE_OF_ENDPOINT[endpoint] != ANYONE), (name, endpoint, method, status)
    assert kept(shop) == before


@pytest.mark.parametrize("role", roles.ROLES)
def test_each_role_may_what_the_table_says(shop, clock, role):
    client = paired(shop, clock, role)
    for (endpoint, method), status in statuses(client, shop).items():
        if refuses(endpoint, role):
            assert status == 403, (endpoint, method, status)
        else:
            assert status not in CLOSED, (endpoint, method, status)


@pytest.mark.parametrize(
    "headers",
    [
        {"Origin": "https://elsewhere.example"},
        {"Origin": "null"},
        {"Origin": "http://localhost:8000"},
        {"Origin": "http://localhost.elsewhere.example"},
        {"Sec-Fetch-Site": "cross-site"},
        {"Sec-Fetch-Site": "same-site", "Origin": "http://localhost"},
    ],
)
def test_page_of_another_address_writes_nothing(shop, clock, headers):
    client = paired(shop, clock, "owner")
    before = kept(shop)
    for (endpoint, method), status in statuses(client, shop, **headers).items():
        assert (status == 403) == (method not in READS), (endpoint, method, status)
    assert kept(shop) == before


def test_page_of_our_own_writes(shop, clock):
    client = paired(shop, clock, "bench")
    headers = {"Origin": "http://localhost", "Sec-Fetch-Site": "same-origin"}
    answer = client.post("/api/events", json={"events": [Phone().event("noted", text="a")]}, headers=headers)
    assert answer.get_json()["answers"][0]["result"] == "stored"


@pytest.mark.parametrize(
    "host", ["elsewhere.example", "localhost.elsewhere.example", "elsewhere.example:8765", "[", ""]
)
def test_name_that_is_not_ours_is_refused_everywhere(shop, clock, host):
    client = paired(shop, clock, "owner")
    assert set(statuses(client, shop, Host=host).values()) == {421}
    assert client.get("/", headers={"Host": host}).status_code == 421


@pytest.mark.parametrize(
    "host", ["localhost", "LOCALHOST:8765", "127.0.0.1:8765", "[::1]:8765", "192.168.1.7", "bench.shop"]
)
def test_names_and_addresses_of_ours_are_taken(shop, clock, host):
    shop.config["HOSTS"] |= {"bench.shop"}
    assert paired(shop, clock, "reader").get("/api/health", headers={"Host": host}).status_code == 200


def test_without_sign_in_only_this_computer_is_served(app):
    client = app.test_client()
    assert client.get("/api/shop", headers={"Host": "127.0.0.1:8765"}).status_code == 200
    for host in ("192.168.1.7", "bench.shop"):
        assert_problem(client.get("/api/shop", headers={"Host": host}), 421, "foreign_host")


def test_route_without_a_role_keeps_the_server_from_starting(app, monkeypatch):
    monkeypatch.delitem(ROLE_OF_ENDPOINT, "export.log")
    with pytest.raises(LookupError, match=r"export\.log"):
        access.init_app(app)


def test_shop_is_changed_by_an_owner_alone_and_the_rest_of_a_push_is_stored(shop, clock):
    edit = Phone().event("shop_set", doc="shop", field="name", value="Mine", basis="typed")
    edit |= {"batch_id": None, "stream": "shop/demo-shop"}
    noted = Phone().event("noted", text="a")
    bench = paired(shop, clock, "bench", "phone-b")
    refused, stored = push(bench, edit, noted)
    assert (refused["result"], refused["code"], refused["field"]) == ("refused", "not_for_role", "stream")
    assert stored["result"] == "stored"
    owner = paired(shop, clock, "owner", "phone-o")
    assert push(owner, edit)[0]["result"] == "stored"
    assert owner.get("/api/shop").get_json()["name"] == "Mine"


def test_event_brought_by_another_phone_than_it_is_of_is_marked_and_counted(shop, clock):
    paired(shop, clock, "bench", "phone-a")
    other = paired(shop, clock, "bench", "phone-b")
    of_a, of_b, of_lost = (Phone(device_id=name).event("noted", text="x") for name in ("phone-a", "phone-b", "phone-l"))
    assert [one["flags"] for one in push(other, of_a, of_b, of_lost)] == [["relayed"], [], []]
    listed = paired(shop, clock, "owner", "phone-o").get("/api/phones").get_json()["phones"]
    assert {one["device_id"]: one["relayed"] for one in listed} == {"phone-a": 1, "phone-b": 0, "phone-o": 0}


def test_health_says_little_to_who_is_not_paired(shop, clock):
    assert shop.test_client().get("/api/health").get_json() == {"paired": False}
    known = paired(shop, clock, "reader").get("/api/health").get_json()
    assert (known["app"], known["role"]) == ("amberbench", "reader")


def test_writes_too_fast_are_told_to_wait_and_reading_goes_on(shop, clock):
    shop.extensions["amberbench_limits"]["writes"] = access.RateLimit(3, 0.001)
    client = paired(shop, clock, "bench")
    answers = [client.post("/api/events", json={"events": []}) for _ in range(5)]
    assert [one.status_code for one in answers] == [200, 200, 200, 429, 429]
    assert_problem(answers[-1], 429, "too_often")
    assert int(answers[-1].headers["Retry-After"]) > 0
    assert client.get("/api/snapshot").status_code == 200
    other = paired(shop, clock, "bench", "phone-b")
    assert other.post("/api/events", json={"events": []}).status_code == 200


def test_each_request_is_a_line_without_a_secret(shop, clock, caplog):
    caplog.set_level(logging.INFO, "amberbench.access")
    client = paired(shop, clock, "bench")
    client.get("/api/batches/somebody?before=secret", headers={"Authorization": "secret"})
    client.get("/secret")
    shop.test_client().get("/api/shop")
    lines = [json.loads(record.message) for record in caplog.records if record.name == "amberbench.access"]
    assert [(one["method"], one["route"], one["status"], one["phone"]) for one in lines] == [
        ("POST", "/api/pairings/use", 200, None),
        ("GET", "/api/batches/<batch_id>", 404, client.phone_id),
        ("GET", "app", 503, None),
        ("GET", "/api/shop", 401, None),
    ]
    assert all(one["ms"] >= 0 and one["at"].endswith("+00:00") for one in lines)
    token = client.get_cookie("amberbench").value
    assert "secret" not in caplog.text
    assert token not in caplog.text


def test_answers_carry_the_headers_that_keep_them_to_themselves(shop):
    plain = shop.test_client().get("/api/health")
    assert plain.headers["Cross-Origin-Resource-Policy"] == "same-origin"
    assert plain.headers["X-Content-Type-Options"] == "nosniff"
    assert "Strict-Transport-Security" not in plain.headers
    assert "Server" not in plain.headers
    secure = shop.test_client().get("/api/health", base_url="https://localhost")
    assert secure.headers["Strict-Transport-Security"] == "max-age=31536000"
