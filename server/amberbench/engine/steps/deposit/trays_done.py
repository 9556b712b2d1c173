"""How many trays have come how far."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable


def second_deposits(state: "Readable") -> int:
    """How many trays have their second deposit."""
    return len([one for one in state["laid"] if one["second_ms"] is not None])


def freed(state: "Readable") -> int:
    """How many trays are free of their paper."""
    return len([one for one in state["laid"] if one["freed_ms"] is not None])
