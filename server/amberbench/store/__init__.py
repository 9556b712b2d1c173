"""Where facts are kept: models, named queries, numbered migrations."""

from .database import db, import_earlier_database, init_app, place, reading, upgrade, writing

__all__ = ["db", "import_earlier_database", "init_app", "place", "reading", "upgrade", "writing"]
