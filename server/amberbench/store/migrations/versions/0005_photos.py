"""Pictures of batches, as the phones sent them."""

import sqlalchemy as sa
from alembic import op

revision: str = "0005"
down_revision: str | None = "0004"
branch_labels: str | None = None
depends_on: str | None = None


def upgrade() -> None:
    op.create_table(
        "photo",
        sa.Column("photo_id", sa.String(length=36), nullable=False),
        sa.Column("content", sa.LargeBinary(), nullable=False),
        sa.Column("received_ms", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("photo_id", name="pk_photo"),
    )


def downgrade() -> None:
    op.drop_table("photo")
