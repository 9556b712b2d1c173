"""Where facts are kept: models, named queries, numbered migrations."""

from .database import db, init_app, place, reading, take_along, upgrade, writing

__all__ = ["db", "init_app", "place", "reading", "take_along", "upgrade", "writing"]
