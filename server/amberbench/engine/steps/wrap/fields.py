"""The event of wrapping."""

EVENTS: dict = {
    "wrapped": {},
}
