"""Phones that were paired, and the codes by which one is."""

import sqlalchemy as sa
from alembic import op

revision: str = "0011"
down_revision: str | None = "0010"
branch_labels: str | None = None
depends_on: str | None = None


def upgrade() -> None:
    op.create_table(
        "phone",
        sa.Column("phone_id", sa.String(length=36), nullable=False),
        sa.Column("token_hash", sa.String(length=64), nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("device_id", sa.String(length=64), nullable=False),
        sa.Column("role", sa.String(length=10), nullable=False),
        sa.Column("paired_ms", sa.BigInteger(), nullable=False),
        sa.Column("seen_ms", sa.BigInteger(), nullable=False),
        sa.Column("revoked_ms", sa.BigInteger(), nullable=True),
        sa.PrimaryKeyConstraint("phone_id", name="pk_phone"),
        sa.UniqueConstraint("token_hash", name="uq_phone_token_hash"),
    )
    op.create_table(
        "pairing",
        sa.Column("code_hash", sa.String(length=64), nullable=False),
        sa.Column("digits_hash", sa.String(length=64), nullable=True),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("role", sa.String(length=10), nullable=False),
        sa.Column("expires_ms", sa.BigInteger(), nullable=False),
        sa.Column("wrong_tries", sa.Integer(), nullable=False),
        sa.Column("used_ms", sa.BigInteger(), nullable=True),
        sa.PrimaryKeyConstraint("code_hash", name="pk_pairing"),
    )


def downgrade() -> None:
    op.drop_table("pairing")
    op.drop_table("phone")
