"""Which batches wait for their opening, so that a snapshot need not look through the log for them.

`set_up` fills it: it folds every batch of the log that has not been folded.
"""

import sqlalchemy as sa
from alembic import op

revision: str = "0004"
down_revision: str | None = "0003"
branch_labels: str | None = None
depends_on: str | None = None


def upgrade() -> None:
    op.create_table(
        "unopened",
        sa.Column("batch_id", sa.String(length=64), nullable=False),
        sa.PrimaryKeyConstraint("batch_id", name="pk_unopened"),
    )


def downgrade() -> None:
    op.drop_table("unopened")
