"""What the events of lots, orders and boxes packed amount to: one table for all three kinds of stream."""

import sqlalchemy as sa
from alembic import op

revision: str = "0014"
down_revision: str | None = "0011"
branch_labels: str | None = None
depends_on: str | None = None

TABLE, INDEXES = "stream_document", (("kind", "at_ms", "id"), ("kind", "closed_ms"))


def upgrade() -> None:
    op.create_table(
        TABLE,
        sa.Column("kind", sa.String(length=20), nullable=False),
        sa.Column("id", sa.String(length=64), nullable=False),
        sa.Column("at_ms", sa.Float(53), nullable=False),
        sa.Column("closed_ms", sa.Float(53), nullable=True),
        sa.Column("search", sa.Text(), nullable=False),
        sa.Column("document", sa.Text(), nullable=True),
        sa.Column("events", sa.Integer(), nullable=False),
        sa.Column("engine_version", sa.String(length=20), nullable=False),
        sa.Column("broken", sa.String(length=300), nullable=True),
        sa.PrimaryKeyConstraint("kind", "id", name=f"pk_{TABLE}"),
    )
    for columns in INDEXES:
        op.create_index(f"ix_{TABLE}_{'_'.join(columns)}", TABLE, columns)


def downgrade() -> None:
    op.drop_table(TABLE)
