"""Whether the server can keep what it is told."""

from typing import Any

from sqlalchemy import update

from amberbench import store
from amberbench.store import Unusable, queries, reading, writing
from amberbench.store.models import LogRow

from . import backup

__all__ = ["Unusable", "health"]


def health() -> dict[str, Any]:
    """`{shop_id, log_id, backup_ms}`: which shop this is, None before there is one; which log; its newest backup.

    Raises Unusable when the data cannot be read or written. After a write that failed, one is tried.
    """
    kept = store.storage()
    kept.check(writes=True)
    kept.check_room()
    if kept.fault:
        with writing() as session:
            session.execute(update(LogRow).values(log_id=LogRow.log_id))
    with reading() as session:
        row = queries.shop(session)
        names = {"shop_id": None if row is None else row.id, "log_id": queries.log_id(session)}
    return names | {"backup_ms": backup.newest_ms()}
