"""An index of the few events that have a flag, so that those which came through another phone are counted at once."""

import sqlalchemy as sa
from alembic import op

revision: str = "0019"
down_revision: str | None = "0016"
branch_labels: str | None = None
depends_on: str | None = None

INDEX = "ix_event_flags"


def upgrade() -> None:
    flagged = sa.text("flags != ''")
    op.create_index(INDEX, "event", ["device_id", "flags"], sqlite_where=flagged, postgresql_where=flagged)


def downgrade() -> None:
    op.drop_index(INDEX, "event")
