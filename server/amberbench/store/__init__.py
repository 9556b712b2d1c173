"""Where facts are kept: models, named queries, numbered migrations."""

from .database import db, init_app, reading, upgrade, writing

__all__ = ["db", "init_app", "reading", "upgrade", "writing"]
