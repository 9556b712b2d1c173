"""The log of events, the batches folded from it, the shop."""

import sqlalchemy as sa
from alembic import op

revision: str = "0001"
down_revision: str | None = None
branch_labels: str | None = None
depends_on: str | None = None


def upgrade() -> None:
    op.create_table(
        "batch",
        sa.Column("batch_id", sa.String(length=64), nullable=False),
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("kind", sa.String(length=40), nullable=False),
        sa.Column("opened_at_ms", sa.Float(precision=53), nullable=False),
        sa.Column("closed_at_ms", sa.Float(precision=53), nullable=True),
        sa.Column("step", sa.String(length=40), nullable=True),
        sa.Column("pieces", sa.Integer(), nullable=True),
        sa.Column("caramel_kg", sa.Float(precision=53), nullable=True),
        sa.Column("good_kg", sa.Float(precision=53), nullable=True),
        sa.Column("device_id", sa.String(length=64), nullable=False),
        sa.Column("events", sa.Integer(), nullable=False),
        sa.Column("run", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("batch_id", name=op.f("pk_batch")),
    )
    with op.batch_alter_table("batch", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_batch_closed_at_ms"), ["closed_at_ms"], unique=False)
        batch_op.create_index(batch_op.f("ix_batch_opened_at_ms"), ["opened_at_ms"], unique=False)

    op.create_table(
        "event",
        sa.Column("position", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("shop_id", sa.String(length=64), nullable=False),
        sa.Column("device_id", sa.String(length=64), nullable=False),
        sa.Column("seq", sa.BigInteger(), nullable=False),
        sa.Column("at_ms", sa.Float(precision=53), nullable=False),
        sa.Column("offset_ms", sa.Float(precision=53), nullable=False),
        sa.Column("batch_id", sa.String(length=64), nullable=True),
        sa.Column("kind", sa.String(length=40), nullable=False),
        sa.Column("v", sa.Integer(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("more", sa.Text(), nullable=True),
        sa.Column("received_ms", sa.BigInteger(), nullable=False),
        sa.Column("flags", sa.String(length=80), nullable=False),
        sa.PrimaryKeyConstraint("position", name=op.f("pk_event")),
        sa.UniqueConstraint("id", name=op.f("uq_event_id")),
        sqlite_autoincrement=True,
    )
    with op.batch_alter_table("event", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_event_batch_id_position"), ["batch_id", "position"], unique=False)

    op.create_table(
        "shop",
        sa.Column("id", sa.String(length=64), nullable=False),
        sa.Column("document", sa.Text(), nullable=False),
        sa.Column("changed_ms", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_shop")),
    )


def downgrade() -> None:
    raise NotImplementedError("These tables hold facts. Put back a copy of the database instead.")
