"""Names of types that only the type checker reads; nothing here runs."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    # A document of the log, of a request or of a reply, as JSON brings it.
    Document = dict[str, Any]
