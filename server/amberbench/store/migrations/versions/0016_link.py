"""What went into what: the links of lots, batches, boxes packed, orders and customers, found from either end."""

import sqlalchemy as sa
from alembic import op

revision: str = "0016"
down_revision: str | None = "0014"
branch_labels: str | None = None
depends_on: str | None = None

TABLE = "link"


def upgrade() -> None:
    op.create_table(
        TABLE,
        sa.Column("owner", sa.String(length=90), nullable=False),
        sa.Column("from_node", sa.String(length=200), nullable=False),
        sa.Column("to_node", sa.String(length=200), nullable=False),
        sa.PrimaryKeyConstraint("owner", "from_node", "to_node", name=f"pk_{TABLE}"),
    )
    for column in ("from_node", "to_node"):
        op.create_index(f"ix_{TABLE}_{column}", TABLE, [column])


def downgrade() -> None:
    op.drop_table(TABLE)
