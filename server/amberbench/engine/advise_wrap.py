"""Wrapping as a prompt: cut centres rest, then they are wrapped the same day, before they take up water."""

from .advise_dip import CENTRES_REST_MS
from .prompts import button, skip


def wrap_page(run, at_ms, advice):
    advice["action"] = button("wrapped", "wrapped")
    advice["choices"] = [skip("wrap")]
    advice["caution"] = {"word": "NOTICE", "code": "caution.wrap_soon"}
    rested_ms = run["done"].get("cut", at_ms - CENTRES_REST_MS) + CENTRES_REST_MS
    if at_ms < rested_ms:
        advice["say"] = {"code": "say.wrap_rest", "values": {}}
        advice["number"] = {"name": "due_ms", "value": rested_ms}
