"""What a paired phone may do: each role may what the ones before it may."""

READER, BENCH, OWNER = "reader", "bench", "owner"
"""Look and print; run, record and plan; the shop, its prices and its phones."""
ROLES = (READER, BENCH, OWNER)


def may(role: str | None, needed: str) -> bool:
    """Whether a role is enough; None, nobody's, never is."""
    return role is not None and ROLES.index(role) >= ROLES.index(needed)
