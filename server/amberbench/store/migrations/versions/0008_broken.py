"""Why a batch could not be folded, where that was a mistake of ours."""

import sqlalchemy as sa
from alembic import op

revision: str = "0008"
down_revision: str | None = "0007"
branch_labels: str | None = None
depends_on: str | None = None


def upgrade() -> None:
    with op.batch_alter_table("batch") as batch:
        batch.add_column(sa.Column("broken", sa.String(length=300), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("batch") as batch:
        batch.drop_column("broken")
