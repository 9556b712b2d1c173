"""Helpers of stories with several phones: exchanges with the server, and how a batch looks on another phone."""

import os
from typing import Any

from e2e import axe, ruler
from e2e.phone import Phone
from e2e.server import Server
from tests.log import uuid7

# So many exchanges are waited for, at most.
PATIENCE = 100


def exchanges(phone: Phone) -> None:
    """The phone talks to the server now: the system has told it of a network."""
    phone.page.evaluate("() => dispatchEvent(new Event('online'))")
    phone.passes(200)
    phone.page.wait_for_timeout(50)  # the server's time is the real one


def all_sent(phone: Phone) -> None:
    """At the bench nothing says so: the outbox does."""
    for _ in range(PATIENCE):
        if not phone.unsent():
            return
        exchanges(phone)
    raise AssertionError("facts are still waiting to be sent")


def hears(phone: Phone, count: int) -> None:
    """The phone has pulled what the other one has written."""
    for _ in range(PATIENCE):
        if len(phone.facts()) >= count:
            break
        exchanges(phone)
    assert len(phone.facts()) == count


def record(server: Server, batch_id: str) -> dict[str, Any]:
    found: dict[str, Any] = server.asks(f"/api/batches/{batch_id}")
    return found


def send(server: Server, events: list[dict[str, Any]]) -> None:
    """Events that reach the server past any phone of the story."""
    answers = server.asks("/api/events", {"events": events})["answers"]
    assert {one["result"] for one in answers} == {"stored"}


def tapped_elsewhere(server: Server, phone: Phone, kind: str, body: dict[str, Any]) -> None:
    """An event of this phone's batch, by another phone."""
    newest = phone.facts()[-1]
    theirs = {"id": uuid7(), "device_id": "another-phone", "at_ms": newest["at_ms"] + 1, "kind": kind, "body": body}
    send(server, [newest | theirs])


def seen_faults(phone: Phone, name: str) -> list[str]:
    """What breaks the design or WCAG on three phones, dark and light."""
    found = []
    for width, height in ((360, 640), (390, 760), (390, 844)):
        phone.page.set_viewport_size({"width": width, "height": height})
        found += [f"at {width} × {height}: {fault}" for fault in ruler.size_faults(phone)]
    for scheme in ("light", "dark"):
        phone.page.emulate_media(color_scheme=scheme)
        ruler.settles(phone)
        found += [f"in the {scheme}: {fault}" for fault in axe.faults(phone.page, at_the_bench=True)]
        if folder := os.environ.get("AMBERBENCH_SHOTS"):
            phone.page.screenshot(path=f"{folder}/watched-{name}-{phone.language}-{scheme}.png", scale="css")
    return found
