"""Makes a database ready: newest tables, and a shop."""

from amberbench import store

from . import shop


def set_up(demo_shop: str, now_ms: int) -> bool:
    """Applies the migrations that are missing and stores the invented shop where there is none; whether it did."""
    store.upgrade()
    return shop.seed(demo_shop, now_ms)
