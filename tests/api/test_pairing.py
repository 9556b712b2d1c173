"""A phone is paired by a code, once; it is known by its token until it is revoked."""

import re
import sqlite3
from contextlib import closing

import pytest

from amberbench import phone_commands
from amberbench.services import pairing
from tests.conforming import is_document
from tests.paired import HERE, paired
from tests.problem_shape import assert_problem
from tests.services.test_command_line import run


def offered(app, clock, **more):
    with app.app_context():
        return pairing.offer(HERE, "Phone by the microwave", "bench", clock.now_ms, **more)


def use(client, code, device_id="phone-a"):
    return client.post("/api/pairings/use", json={"code": code, "device_id": device_id})


def code_of(offer):
    return offer.link.split("#")[1]


def test_link_pairs_one_phone_once(shop, clock):
    offer = offered(shop, clock)
    client = shop.test_client()
    answer = use(client, code_of(offer))
    is_document("PairedPhone", answer.get_json())
    assert (answer.get_json()["name"], answer.get_json()["role"]) == ("Phone by the microwave", "bench")
    assert client.get("/api/shop").status_code == 200
    assert_problem(use(shop.test_client(), code_of(offer), "phone-b"), 422, "code_used", "code")


def test_eight_digits_do_the_same_typed_with_a_space(shop, clock):
    digits = offered(shop, clock).digits
    assert re.fullmatch(r"\d{8}", digits)
    client = shop.test_client()
    assert use(client, f"{digits[:4]} {digits[4:]}").status_code == 200
    assert client.get("/api/shop").status_code == 200


def test_server_of_a_network_says_how_one_more_phone_is_paired(shop, clock, capsys):
    with shop.app_context():
        owners = pairing.offer(HERE, "Owner's phone", "owner", clock.now_ms)
    assert use(shop.test_client(), code_of(owners)).status_code == 200
    phone_commands.say_owners_link(shop, "http://127.0.0.1:8765/")
    assert capsys.readouterr().out == ""
    phone_commands.say_owners_link(shop, "https://192.0.2.7:8765/")
    assert "amberbench pair --address https://192.0.2.7:8765/" in capsys.readouterr().out


@pytest.mark.parametrize("served_at", ["https://192.0.2.7:8765/", "http://127.0.0.1:9000/", None])
def test_pair_names_the_address_at_which_the_server_was_started(shop, database, served_at):
    if served_at:
        phone_commands.say_owners_link(shop, served_at)
    said = run("pair", database=database).output
    assert f"{served_at or 'http://127.0.0.1:8765/'}pair#" in said
    assert ("no phone reaches that address" in said) == (served_at != "https://192.0.2.7:8765/")
    named = run("pair", "--address", "https://shop.example/", database=database).output
    assert "https://shop.example/pair#" in named
    assert "no phone reaches" not in named


@pytest.mark.parametrize(("with_digits", "good_ms"), [(True, 5 * 60_000), (False, 10 * 60_000)])
def test_code_is_good_for_its_minutes(shop, clock, with_digits, good_ms):
    late, early = (offered(shop, clock, with_digits=with_digits) for _ in range(2))
    clock.now_ms += good_ms - 1
    assert use(shop.test_client(), code_of(early)).status_code == 200
    clock.now_ms += 1
    assert_problem(use(shop.test_client(), code_of(late)), 422, "code_over", "code")


def test_five_wrong_tries_close_the_digits_and_leave_the_link(shop, clock):
    offer = offered(shop, clock)
    wrong = f"{(int(offer.digits) + 1) % 10**8:08}"
    for _ in range(5):
        assert_problem(use(shop.test_client(), wrong), 422, "code_wrong", "code")
    assert_problem(use(shop.test_client(), offer.digits), 422, "code_over", "code")
    assert use(shop.test_client(), code_of(offer)).status_code == 200


def test_four_wrong_tries_leave_the_digits(shop, clock):
    offer = offered(shop, clock)
    wrong = f"{(int(offer.digits) + 1) % 10**8:08}"
    for _ in range(4):
        use(shop.test_client(), wrong)
    assert use(shop.test_client(), offer.digits).status_code == 200


def test_tries_without_end_are_told_to_wait(shop):
    answers = [use(shop.test_client(), "12345678").status_code for _ in range(12)]
    assert answers == [422] * 10 + [429] * 2


@pytest.mark.parametrize(
    ("body", "field"),
    [
        ({"code": "x", "device_id": "no spaces"}, "device_id"),
        ({"code": "x", "device_id": ""}, "device_id"),
        ({"code": 7, "device_id": "phone-a"}, "code"),
        ({"device_id": "phone-a"}, "code"),
        ({"code": "é" * 10_000, "device_id": "phone-a"}, "code"),
    ],
)
def test_bad_pairing_is_a_problem(shop, body, field):
    assert_problem(shop.test_client().post("/api/pairings/use", json=body), 422, field=field)


@pytest.mark.parametrize(
    ("body", "code", "field"),
    [
        ({"name": "  ", "role": "bench"}, "missing", "name"),
        ({"name": "x" * 81, "role": "bench"}, "too_long", "name"),
        ({"name": "Phone", "role": "king"}, "not_an_option", "role"),
    ],
)
def test_bad_offer_is_a_problem(shop, clock, body, code, field):
    assert_problem(paired(shop, clock, "owner").post("/api/pairings", json=body), 422, code, field)


def test_owner_pairs_lists_and_revokes_a_second_phone(shop, clock):
    owner, second = paired(shop, clock, "owner", "phone-o"), shop.test_client()
    clock.now_ms += 1
    offer = owner.post("/api/pairings", json={"name": "By the microwave", "role": "bench"}).get_json()
    is_document("PairingOffer", offer)
    assert offer["link"].startswith(f"{HERE}pair#")
    assert offer["picture"].startswith("data:image/svg+xml")
    use(second, offer["digits"], "phone-b")
    listed = owner.get("/api/phones").get_json()
    is_document("Phones", listed)
    assert [(one["name"], one["role"], one["own"]) for one in listed["phones"]] == [
        ("owner", "owner", True),
        ("By the microwave", "bench", False),
    ]
    assert owner.delete(f"/api/phones/{listed['phones'][1]['phone_id']}").status_code == 204
    assert_problem(second.get("/api/shop"), 401, "not_paired")
    assert second.get("/api/health").get_json() == {"paired": False}
    assert_problem(owner.delete(f"/api/phones/{owner.phone_id}"), 422, "own_phone")
    assert_problem(owner.delete("/api/phones/nobody"), 404)


def test_phone_paired_again_is_known_by_its_new_token_alone(shop, clock):
    first = paired(shop, clock, "bench")
    again = paired(shop, clock, "owner")
    assert first.get("/api/shop").status_code == 401
    assert [one["role"] for one in again.get("/api/phones").get_json()["phones"]] == ["owner"]


def test_last_seen_moves_and_the_cookie_is_given_anew(shop, clock):
    client = paired(shop, clock, "owner")
    seen_ms = clock.now_ms
    clock.now_ms += 60_000
    assert "Set-Cookie" not in client.get("/api/health").headers
    assert client.get("/api/phones").get_json()["phones"][0]["seen_ms"] == seen_ms
    clock.now_ms += 10 * 60_000
    assert "Max-Age=34560000" in client.get("/api/health").headers["Set-Cookie"]
    assert client.get("/api/phones").get_json()["phones"][0]["seen_ms"] == clock.now_ms


def test_phone_not_seen_for_over_a_year_pairs_again(shop, clock):
    client = paired(shop, clock, "owner")
    clock.now_ms += pairing.UNSEEN_MS + 1
    assert_problem(client.get("/api/shop"), 401, "not_paired")


def test_cookie_is_out_of_reach_and_for_this_host_alone(shop, clock):
    for base, start in (("http://localhost", "amberbench="), ("https://bench.local", "__Host-amberbench=")):
        shop.config["HOSTS"] |= {"bench.local"}
        body = {"code": code_of(offered(shop, clock)), "device_id": "phone-a"}
        cookie = shop.test_client().post("/api/pairings/use", json=body, base_url=base).headers["Set-Cookie"]
        assert cookie.startswith(start)
        parts = set(cookie.split("; ")[1:])
        assert {"HttpOnly", "Path=/", "SameSite=Strict"} <= parts
        assert ("Secure" in parts) == base.startswith("https")
        assert not any(part.startswith("Domain") for part in parts)


def test_database_holds_no_token_and_no_code(shop, clock, database):
    waiting, offer = offered(shop, clock), offered(shop, clock)
    client = shop.test_client()
    use(client, code_of(offer))
    secrets = [client.get_cookie("amberbench").value, code_of(waiting), waiting.digits]
    with closing(sqlite3.connect(database)) as connection:
        everything = "\n".join(connection.iterdump())
    assert "Phone by the microwave" in everything
    assert not [one for one in secrets if one in everything]
