"""Makes a database ready: newest tables, batches and shop folded by this engine, and a shop to begin with."""

from amberbench import store

from . import batches, shop


def set_up(seed: str | None, now_ms: int, language: str = "en") -> bool:
    """Applies missing migrations, folds what another engine folded, begins a shop where there is none.

    seed: JSON of `seed_data`, whose words are taken in this language; None: an empty shop. Returns whether a shop was
    begun.
    """
    store.upgrade()
    batches.fold_outdated()
    return shop.begin(seed, now_ms, language)
