"""The tables. `event` is the record of truth, `photo` what some events tell of, `phone` and `pairing` who may come in.

The others are rebuilt from the log.
"""

from sqlalchemy import BigInteger, Float, Index, Integer, LargeBinary, MetaData, String, Text, text
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

CONVENTION = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "pk": "pk_%(table_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s",
}


FLAGGED = text("flags != ''")


class Base(DeclarativeBase):
    """What all tables share."""

    metadata = MetaData(naming_convention=CONVENTION)


class LogRow(Base):
    """Which log this is: one row, made with the database. Phones know by it that another database has come."""

    __tablename__ = "log"

    log_id: Mapped[str] = mapped_column(String(36), primary_key=True)


class EventRow(Base):
    """One fact, as a device sent it. Never changed, never deleted."""

    __tablename__ = "event"

    position: Mapped[int] = mapped_column(BigInteger().with_variant(Integer, "sqlite"), primary_key=True)
    id: Mapped[str] = mapped_column(String(36), unique=True)
    shop_id: Mapped[str] = mapped_column(String(64))
    device_id: Mapped[str] = mapped_column(String(64))
    seq: Mapped[int] = mapped_column(BigInteger)
    # Milliseconds as the phone wrote them; an estimated offset may have a half. REAL keeps both exactly.
    at_ms: Mapped[float] = mapped_column(Float(53))
    offset_ms: Mapped[float] = mapped_column(Float(53))
    # The stream it belongs to: "batch" and the batch, "shop" and the shop, or what a newer app knows.
    stream_kind: Mapped[str] = mapped_column(String(20), server_default="")
    stream_id: Mapped[str] = mapped_column(String(64), server_default="")
    batch_id: Mapped[str | None] = mapped_column(String(64))
    kind: Mapped[str] = mapped_column(String(40))
    v: Mapped[int] = mapped_column(Integer)
    body: Mapped[str] = mapped_column(Text)
    # Members a newer app put beside those above, as JSON, kept for the day the server knows them.
    more: Mapped[str | None] = mapped_column(Text)
    received_ms: Mapped[int] = mapped_column(BigInteger)
    # Words joined by commas: "future", "other_shop", "relayed" (by another phone); "ahead" follows from its times.
    flags: Mapped[str] = mapped_column(String(80), default="")

    __table_args__ = (
        Index(None, "stream_kind", "stream_id", "position"),
        # Only of events that have any, which are few.
        Index("ix_event_flags", "device_id", "flags", sqlite_where=FLAGGED, postgresql_where=FLAGGED),
        {"sqlite_autoincrement": True},
    )

    @property
    def stream(self) -> str:
        """The stream as it travels: "<kind>/<id>"."""
        return f"{self.stream_kind}/{self.stream_id}"


class BatchRow(Base):
    """What a batch's events amount to: rebuilt from the log by `amberbench rebuild`."""

    __tablename__ = "batch"

    batch_id: Mapped[str] = mapped_column(String(64), primary_key=True)
    name: Mapped[str] = mapped_column(String(200))
    kind: Mapped[str] = mapped_column(String(40))
    opened_at_ms: Mapped[float] = mapped_column(Float(53), index=True)
    closed_at_ms: Mapped[float | None] = mapped_column(Float(53), index=True)
    step: Mapped[str | None] = mapped_column(String(40))
    pieces: Mapped[int | None] = mapped_column(Integer)
    caramel_kg: Mapped[float | None] = mapped_column(Float(53))
    good_kg: Mapped[float | None] = mapped_column(Float(53))
    device_id: Mapped[str] = mapped_column(String(64))
    events: Mapped[int] = mapped_column(Integer)
    # What its label says, as JSON: lots, allergens, why it was thrown away; null before an engine that says it.
    label: Mapped[str | None] = mapped_column(Text)
    # The engine that folded it; "" for none that we know.
    engine_version: Mapped[str] = mapped_column(String(20), server_default="")
    # The run document as JSON; null when the engine could not fold the events.
    run: Mapped[str | None] = mapped_column(Text, deferred=True)
    # What went wrong in folding, where it was a mistake of ours; it is folded again by the next version.
    broken: Mapped[str | None] = mapped_column(String(300))


class StreamDocumentRow(Base):
    """What the events of a lot, an order or boxes packed amount to: rebuilt from the log by `amberbench rebuild`."""

    __tablename__ = "stream_document"

    kind: Mapped[str] = mapped_column(String(20), primary_key=True)
    id: Mapped[str] = mapped_column(String(64), primary_key=True)
    # When it came, is wanted, was packed: what lists are sorted by (ms).
    at_ms: Mapped[float] = mapped_column(Float(53))
    # Since when nobody has to do with it any more (ms); null: it is open.
    closed_ms: Mapped[float | None] = mapped_column(Float(53))
    # What it is found by, in small letters.
    search: Mapped[str] = mapped_column(Text)
    # As JSON; null when the engine could not fold the events.
    document: Mapped[str | None] = mapped_column(Text)
    events: Mapped[int] = mapped_column(Integer)
    engine_version: Mapped[str] = mapped_column(String(20))
    broken: Mapped[str | None] = mapped_column(String(300))

    __table_args__ = (Index(None, "kind", "at_ms", "id"), Index(None, "kind", "closed_ms"))


class LinkRow(Base):
    """That one thing went into another, as the events of a stream say; rebuilt with what that stream amounts to.

    A node is "<kind>/<id>" (`engine/trace/graph.py`); `owner` is the stream.
    """

    __tablename__ = "link"

    owner: Mapped[str] = mapped_column(String(90), primary_key=True)
    from_node: Mapped[str] = mapped_column(String(200), primary_key=True, index=True)
    to_node: Mapped[str] = mapped_column(String(200), primary_key=True, index=True)


class UnopenedRow(Base):
    """A batch of the log whose opening has not come yet; rebuilt with `batch`."""

    __tablename__ = "unopened"

    batch_id: Mapped[str] = mapped_column(String(64), primary_key=True)


class ContributionRow(Base):
    """What a closed batch teaches, kept because it is slow to work out; good for so many events and that engine."""

    __tablename__ = "contribution"

    batch_id: Mapped[str] = mapped_column(String(64), primary_key=True)
    events: Mapped[int] = mapped_column(Integer)
    engine_version: Mapped[str] = mapped_column(String(20))
    # As learn.contribution makes it; null when the batch could not be read.
    document: Mapped[str | None] = mapped_column(Text)


class PhotoRow(Base):
    """A JPEG picture that an event `photographed` tells of. Never changed."""

    __tablename__ = "photo"

    photo_id: Mapped[str] = mapped_column(String(36), primary_key=True)
    content: Mapped[bytes] = mapped_column(LargeBinary)
    received_ms: Mapped[int] = mapped_column(BigInteger)


class ShopRow(Base):
    """What the shop's events amount to, as one JSON document: folded again by every `shop_set`."""

    __tablename__ = "shop"

    id: Mapped[str] = mapped_column(String(64), primary_key=True)
    document: Mapped[str] = mapped_column(Text)
    changed_ms: Mapped[int] = mapped_column(BigInteger)


class PhoneRow(Base):
    """A phone that was paired. Its token is kept as a hash (SHA-256, hexadecimal); a revoked one stays for its name."""

    __tablename__ = "phone"

    phone_id: Mapped[str] = mapped_column(String(36), primary_key=True)
    token_hash: Mapped[str] = mapped_column(String(64), unique=True)
    name: Mapped[str] = mapped_column(String(80))
    # The name under which it writes events.
    device_id: Mapped[str] = mapped_column(String(64))
    role: Mapped[str] = mapped_column(String(10))
    paired_ms: Mapped[int] = mapped_column(BigInteger)
    seen_ms: Mapped[int] = mapped_column(BigInteger)
    revoked_ms: Mapped[int | None] = mapped_column(BigInteger)


class PairingRow(Base):
    """A code that lets one phone in, as hashes: that of the link, and that of the eight digits where there are some."""

    __tablename__ = "pairing"

    code_hash: Mapped[str] = mapped_column(String(64), primary_key=True)
    digits_hash: Mapped[str | None] = mapped_column(String(64))
    name: Mapped[str] = mapped_column(String(80))
    role: Mapped[str] = mapped_column(String(10))
    expires_ms: Mapped[int] = mapped_column(BigInteger)
    wrong_tries: Mapped[int] = mapped_column(Integer)
    used_ms: Mapped[int | None] = mapped_column(BigInteger)
