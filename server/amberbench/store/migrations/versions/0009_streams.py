"""Which stream an event belongs to: a batch or the shop, later an order or a lot. Older events get theirs here.

What said of no batch belonged to the shop.
"""

import sqlalchemy as sa
from alembic import op

revision: str = "0009"
down_revision: str | None = "0008"
branch_labels: str | None = None
depends_on: str | None = None

OLD_INDEX, INDEX = "ix_event_batch_id_position", "ix_event_stream_kind_stream_id_position"


def upgrade() -> None:
    op.add_column("event", sa.Column("stream_kind", sa.String(length=20), nullable=False, server_default=""))
    op.add_column("event", sa.Column("stream_id", sa.String(length=64), nullable=False, server_default=""))
    event = sa.table(
        "event", sa.column("batch_id"), sa.column("shop_id"), sa.column("stream_kind"), sa.column("stream_id")
    )
    kind = sa.case((event.c.batch_id.is_(None), "shop"), else_="batch")
    stream_id = sa.func.coalesce(event.c.batch_id, event.c.shop_id)
    op.execute(event.update().values(stream_kind=kind, stream_id=stream_id))
    op.drop_index(OLD_INDEX, "event")
    op.create_index(INDEX, "event", ["stream_kind", "stream_id", "position"])


def downgrade() -> None:
    op.drop_index(INDEX, "event")
    op.create_index(OLD_INDEX, "event", ["batch_id", "position"])
    op.drop_column("event", "stream_id")
    op.drop_column("event", "stream_kind")
