"""PUT and GET /api/photos/<id>: pictures of a batch, each told of by an event `photographed`."""

from flask import Response, abort, g, request
from werkzeug.exceptions import UnsupportedMediaType

from amberbench.services import photos

from .json_blueprint import JsonBlueprint, body

blueprint = JsonBlueprint("photos", __name__, description="Photos of batches: sent once, never changed")

JPEG = "image/jpeg"
PICTURE = {"type": "string", "format": "binary"}


@blueprint.route("/photos/<photo_id>", methods=["PUT"])
@blueprint.doc(requestBody={"required": True, "content": {JPEG: {"schema": PICTURE}}})
@blueprint.response(204)
@blueprint.alt_response(409, response="CONFLICT")
@blueprint.alt_response(413, response="REQUEST_ENTITY_TOO_LARGE")
@blueprint.alt_response(415, response="UNSUPPORTED_MEDIA_TYPE")
@blueprint.alt_response(422, response="UNPROCESSABLE_ENTITY")
def keep(photo_id: str) -> None:
    """Keeps a JPEG picture of at most 2 MB under its UUIDv7; the same once more changes nothing."""
    if request.mimetype != JPEG:
        raise UnsupportedMediaType
    if not photos.keep(photo_id, body(request), g.received_ms):
        abort(409)


@blueprint.route("/photos/<photo_id>", methods=["GET"])
@blueprint.response(200, PICTURE, content_type=JPEG)
@blueprint.alt_response(404, response="NOT_FOUND")
def show(photo_id: str) -> Response:
    """A picture as it was sent; 404 while the phone that took it has not sent it."""
    content = photos.photo(photo_id)
    if content is None:
        abort(404)
    response = Response(content, mimetype=JPEG)
    response.headers.set("Content-Disposition", "inline", filename=f"amberbench-{photo_id}.jpg")
    # What stands under an id stays.
    response.headers["Cache-Control"] = "private, max-age=31536000, immutable"
    return response
