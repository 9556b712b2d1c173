"""Which log this is: a random name, made once with each database; an older database gets one now."""

import uuid

import sqlalchemy as sa
from alembic import op

revision: str = "0007"
down_revision: str | None = "0006"
branch_labels: str | None = None
depends_on: str | None = None


def upgrade() -> None:
    log = op.create_table(
        "log",
        sa.Column("log_id", sa.String(length=36), nullable=False),
        sa.PrimaryKeyConstraint("log_id", name="pk_log"),
    )
    op.bulk_insert(log, [{"log_id": str(uuid.uuid4())}])


def downgrade() -> None:
    op.drop_table("log")
