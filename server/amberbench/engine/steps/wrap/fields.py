"""The event of wrapping."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document


EVENTS: "Document" = {
    "wrapped": {},
}
