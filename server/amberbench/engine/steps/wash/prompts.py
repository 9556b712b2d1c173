"""The prompt for the wash between two batches, before a batch goes on."""

from ...core.copy_with import copy_with
from ...core.prompts import button, skip
from .fields import UNWASHED

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable
    from ...types import Advice


def add_wash_prompt(run: "Readable", step: str, advice: "Advice", hot: tuple[str, ...]) -> None:
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
    advice["choices"] = [copy_with(skip("wash"), reasons=list(UNWASHED))]
    advice["caution"] = {"word": "WARNING", "code": "caution.wash"}
