"""Photos of batches: kept as they come in, each under the id that its event `photographed` names."""

from amberbench.engine.core.problems import Problem
from amberbench.store import queries, reading, writing
from amberbench.store.models import PhotoRow

from . import quotas
from .event_validation import UUID_7

# Start and end of image (ITU-T T.81, table B.1; from memory). Nothing between is looked at: browsers draw it or do not.
FIRST, LAST = b"\xff\xd8\xff", b"\xff\xd9"


def keep(photo_id: str, content: bytes, received_ms: int) -> bool:
    """Stores a picture; True as well when it is there already, False when another one stands under this id.

    Raises Problem: `malformed` for an id that is no UUIDv7, `not_a_jpeg` for bytes that do not begin and end as one.
    Raises quotas.TooMuch when enough came today.
    """
    if not UUID_7.fullmatch(photo_id):
        raise Problem("photo_id", "malformed", photo_id[:60])
    if not (content.startswith(FIRST) and content.endswith(LAST)):
        raise Problem("photo", "not_a_jpeg")
    with writing() as session:
        kept = queries.photo(session, photo_id)
        if kept is None:
            quotas.count_photo(len(content), received_ms)
            session.add(PhotoRow(photo_id=photo_id, content=content, received_ms=received_ms))
        return kept is None or kept == content


def photo(photo_id: str) -> bytes | None:
    """A picture; None if unknown."""
    if not UUID_7.fullmatch(photo_id):
        return None
    with reading() as session:
        return queries.photo(session, photo_id)
