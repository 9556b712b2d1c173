"""Boxes packed together are the fold of their events: packed, weighed, labelled, taken back."""

from ..core import stream_fold
from . import fields

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Readable
    from ..types import (
        LabelsPrintedBody,
        NetWeighedBody,
        Pack,
        PackedBody,
        PackFoldReply,
        PackFoldRequest,
        UnpackedBody,
    )


def fold(request: "PackFoldRequest") -> "PackFoldReply":
    """Boxes packed together after all of their events, whatever order these come in; the same id counts once.

    Request: id (of the pack), events.
    Reply: document (the pack), ignored [{id, why}]. A later `packed` corrects the one before.
    Raises: Problem for a request that is none; an event never raises.
    Source: practice.
    """
    result: "PackFoldReply" = stream_fold.fold(request, fields.EVENTS, stream_fold.begun(fields.PACK), FOLDS)
    return result


def _pack(pack: "Pack", body: "PackedBody", at_ms: float, event: "Readable") -> None:
    for name in ("box_id", "from", "lots", "code", "seconds"):
        pack[name] = body[name]
    pack["made_on"], pack["best_by"] = (
        stream_fold.day_or_none(body["made_on"]),
        stream_fold.day_or_none(body["best_by"]),
    )
    pack["count"] += body["count"] - pack["packed"]
    pack["packed"] = body["count"]
    if pack["at_ms"] is None:
        pack["at_ms"] = at_ms


def _weigh(pack: "Pack", body: "NetWeighedBody", at_ms: float, event: "Readable") -> None:
    pack["net_kg"].append(body["net_kg"])


def _print(pack: "Pack", body: "LabelsPrintedBody", at_ms: float, event: "Readable") -> None:
    pack["printed"] += body["n"]


def _unpack(pack: "Pack", body: "UnpackedBody", at_ms: float, event: "Readable") -> None:
    pack["count"] -= body["count"]


FOLDS = {"packed": _pack, "net_weighed": _weigh, "labels_printed": _print, "unpacked": _unpack}
