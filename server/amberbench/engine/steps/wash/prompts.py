"""The wash between two batches as a prompt: before a batch goes on, where the hand moves."""

from ...core.prompts import button, skip


def mind(run, step, advice, hot):
    """Puts the wash in the place of a step's page, unless hands are at something hot or only a clock is waited for."""
    wanted = (run.get("wash") or {}).get("wanted")
    waits = advice["number"] is not None and advice["number"]["name"] == "due_ms"
    if wanted is None or step in hot or waits:
        return
    advice["step"] = "wash"
    advice["say"] = {"code": "say.wash", "values": {"allergens": wanted["allergens"]}}
    advice["more"] = {"code": "more.wash", "values": {"after": wanted["after"]}}
    advice["number"] = advice["entry"] = None
    advice["action"] = button("washed", "washed")
    advice["choices"] = [skip("wash")]
    advice["caution"] = {"word": "WARNING", "code": "caution.wash"}
