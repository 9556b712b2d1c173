"""Batches into which an event from more than a day ahead was folded are folded again, without it.

`set_up` folds whatever carries another engine's version, and works out again what is not in `contribution`.
"""

from alembic import op

revision: str = "0006"
down_revision: str | None = "0005"
branch_labels: str | None = None
depends_on: str | None = None

AHEAD = "SELECT batch_id FROM event WHERE at_ms + offset_ms > received_ms + 86400000 AND batch_id IS NOT NULL"


def upgrade() -> None:
    op.execute(f"UPDATE batch SET engine_version = '' WHERE batch_id IN ({AHEAD})")
    op.execute(f"DELETE FROM contribution WHERE batch_id IN ({AHEAD})")


def downgrade() -> None:
    pass  # the older app folds them as it does
