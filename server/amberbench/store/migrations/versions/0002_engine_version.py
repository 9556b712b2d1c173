"""Which engine folded a batch, so that a newer one folds it anew."""

import sqlalchemy as sa
from alembic import op

revision: str = "0002"
down_revision: str | None = "0001"
branch_labels: str | None = None
depends_on: str | None = None


def upgrade() -> None:
    with op.batch_alter_table("batch") as batch:
        batch.add_column(sa.Column("engine_version", sa.String(length=20), nullable=False, server_default=""))


def downgrade() -> None:
    with op.batch_alter_table("batch") as batch:
        batch.drop_column("engine_version")
