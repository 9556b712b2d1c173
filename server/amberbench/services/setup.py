"""Makes a database ready: newest tables, batches folded by this engine, and a shop."""

from amberbench import store

from . import batches, shop


def set_up(demo_shop: str, now_ms: int) -> bool:
    """Applies missing migrations, folds what another engine folded, stores the invented shop where there is none.

    Returns whether it stored the shop.
    """
    store.upgrade()
    batches.fold_outdated()
    return shop.seed(demo_shop, now_ms)
