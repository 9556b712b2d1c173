"""Where facts are kept: models, named queries, numbered migrations, copies of all of it."""

from .database import (
    begun_ms,
    beside,
    close,
    db,
    file,
    import_earlier_database,
    init_app,
    mark_begun,
    missing_migrations,
    place,
    prepare,
    reading,
    storage,
    upgrade,
    url,
    writing,
)
from .storage_health import Unusable

__all__ = [
    "Unusable",
    "begun_ms",
    "beside",
    "close",
    "db",
    "file",
    "import_earlier_database",
    "init_app",
    "mark_begun",
    "missing_migrations",
    "place",
    "prepare",
    "reading",
    "storage",
    "upgrade",
    "url",
    "writing",
]
