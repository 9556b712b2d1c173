"""The wash between two batches as a prompt: before a batch goes on, where the hand moves."""

from ...core.prompts import button, skip


def add_wash_prompt(run, step, advice, hot):
    """Shows the wash instead of the page of a step, unless that step is hot or only waits for a clock."""
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
