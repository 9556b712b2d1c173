"""How many trays have come how far."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document


def second_deposits(state: "Document") -> int:
    """How many trays have their second deposit."""
    return len([one for one in state["laid"] if one["second_ms"] is not None])


def freed(state: "Document") -> int:
    """How many trays are free of their paper."""
    return len([one for one in state["laid"] if one["freed_ms"] is not None])
