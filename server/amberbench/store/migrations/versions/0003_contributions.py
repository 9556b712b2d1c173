"""What closed batches teach, kept beside them."""

import sqlalchemy as sa
from alembic import op

revision: str = "0003"
down_revision: str | None = "0002"
branch_labels: str | None = None
depends_on: str | None = None


def upgrade() -> None:
    op.create_table(
        "contribution",
        sa.Column("batch_id", sa.String(length=64), nullable=False),
        sa.Column("events", sa.Integer(), nullable=False),
        sa.Column("engine_version", sa.String(length=20), nullable=False),
        sa.Column("document", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("batch_id", name="pk_contribution"),
    )


def downgrade() -> None:
    op.drop_table("contribution")
