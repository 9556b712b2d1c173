"""Names of types that only the type checker reads; nothing here runs."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable, Mapping
    from typing import Any

    # A document of the log, of a request or of a reply, as JSON brings it.
    Document = dict[str, Any]
    # The same where it is only read: whole, or as much of it as is needed.
    Readable = Mapping[str, Any]
    # What a fold asks for what was decided when an event was told, by when that was which it builds on (ms).
    Decide = Callable[..., Document]
