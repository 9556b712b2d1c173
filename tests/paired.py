"""Phones of a shop that lets only paired ones in."""

from flask import Flask
from flask.testing import FlaskClient

from amberbench.services import pairing
from tests.conftest import SetClock

HERE = "http://localhost/"


class PairedClient(FlaskClient):
    """A client that holds the token of a paired phone."""

    phone_id: str


def paired(app: Flask, clock: SetClock, role: str, device_id: str = "phone-a") -> PairedClient:
    """A client with the token of a phone that was paired so."""
    client = PairedClient(app, app.response_class, use_cookies=True)
    with app.app_context():
        code = pairing.offer(HERE, role, role, clock.now_ms).link.split("#")[1]
    answer = client.post("/api/pairings/use", json={"code": code, "device_id": device_id})
    assert answer.status_code == 200, answer.get_data(as_text=True)
    client.phone_id = answer.get_json()["phone_id"]
    return client
