"""What the label of a batch says: lots, allergens, why it was thrown away."""

import sqlalchemy as sa
from alembic import op

revision: str = "0010"
down_revision: str | None = "0009"
branch_labels: str | None = None
depends_on: str | None = None


def upgrade() -> None:
    with op.batch_alter_table("batch") as batch:
        batch.add_column(sa.Column("label", sa.Text(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("batch") as batch:
        batch.drop_column("label")
