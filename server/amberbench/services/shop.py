"""The shop: its document, and the invented one to try things with."""

from typing import Any

from amberbench.store import queries, reading, writing
from amberbench.store.models import ShopRow

from . import strict_json


def document() -> dict[str, Any] | None:
    """The shop document, or None before there is one."""
    with reading() as session:
        row = queries.shop(session)
        return None if row is None else strict_json.read(row.document)


def shop_id() -> str | None:
    """The id of the shop, or None before there is one."""
    with reading() as session:
        row = queries.shop(session)
        return None if row is None else row.id


def seed(text: str, now_ms: int) -> bool:
    """Stores the shop in a JSON text unless there is a shop already; whether it was stored."""
    shop = strict_json.read(text)
    with writing() as session:
        if queries.shop(session) is not None:
            return False
        session.add(ShopRow(id=shop["id"], document=strict_json.write(shop), changed_ms=now_ms))
        return True
