"""Every error of the API in one shape: problem details (RFC 9457) with a list of what is wrong."""

from http import HTTPStatus
from typing import Any

import flask_smorest
from flask import Flask, Response, request
from sqlalchemy.exc import OperationalError
from werkzeug.exceptions import HTTPException, InternalServerError

from amberbench import text
from amberbench.engine.core.problems import Problem
from amberbench.schemas import json_schema
from amberbench.schemas.fault import flatten
from amberbench.schemas.openapi import describe
from amberbench.services import stream_import, strict_json, unexpected_errors
from amberbench.services.health import Unusable
from amberbench.services.quotas import TooMuch

from .json_blueprint import is_api, language, read_away_body

PROBLEM = "application/problem+json"
# The body could not be read at all, or whoever asks may not; whatever else is wrong is wrong with a field.
STATUS_OF_CODE = dict.fromkeys(("not_json", "too_deep", "duplicate_name", "broken_text"), 400) | {
    "not_paired": 401,
    "not_for_role": 403,
    "foreign_origin": 403,
    "foreign_host": 421,
    "too_often": 429,
}
HEADERS_OF_STATUS = {401: {"WWW-Authenticate": 'Cookie realm="amberbench"'}, 429: {"Retry-After": "10"}}


class ProblemApi(flask_smorest.Api):  # type: ignore[misc]
    """The API with its OpenAPI document and its one handler of errors."""

    ERROR_SCHEMA = json_schema.reference("ProblemDetails")
    DEFAULT_RESPONSE_CONTENT_TYPE = "application/json"

    def init_app(self, app: Flask, **more: Any) -> None:
        """Registers the document and the handlers."""
        super().init_app(app, **more)
        self.ma_plugin.converter.add_attribute_function(describe)
        app.register_error_handler(Problem, _refused)
        app.register_error_handler(OperationalError, _busy)
        app.register_error_handler(Unusable, _unusable)
        app.register_error_handler(TooMuch, _too_much)
        app.register_error_handler(Exception, _broken)

    def describe_documents(self) -> None:
        """Writes down what the endpoints refer to, once all of them are registered."""
        for name, schema in json_schema.components(self.spec.to_dict()).items():
            self.spec.components.schema(name, schema)

    def _register_responses(self) -> None:
        """Errors have a media type of their own; flask-smorest knows one for all replies."""
        usual, self.DEFAULT_RESPONSE_CONTENT_TYPE = self.DEFAULT_RESPONSE_CONTENT_TYPE, PROBLEM
        super()._register_responses()
        self.DEFAULT_RESPONSE_CONTENT_TYPE = usual

    def handle_http_exception(self, error: HTTPException) -> HTTPException | Response:
        """An HTTP error as problem details; outside the API as the plain page it is."""
        if not is_api(request.path):
            return error
        status = error.code or 500
        if status == HTTPStatus.REQUEST_ENTITY_TOO_LARGE:
            read_away_body()
        faults = flatten(getattr(error, "data", {}).get("faults", []))
        response = _problem(status, faults)
        for name, value in error.get_headers():
            if name in ("Allow", "Retry-After"):
                response.headers[name] = value
        return response


def _refused(problem: Problem) -> Response:
    status = STATUS_OF_CODE.get(problem.code, 422)
    response = _problem(status, [problem.document()])
    response.headers.extend(HEADERS_OF_STATUS.get(status, {}))
    return response


def _unusable(error: Unusable) -> Response:
    """The data cannot be used: told with the reason. Nothing was stored, and the phone keeps what it has."""
    if error.code == "busy":
        return _busy(error)
    response = _problem(
        503, [], {"detail": text.sentence(f"server.data_{error.code}", {}, language(request)), "reason": error.code}
    )
    response.headers["Retry-After"] = "30"
    return response


def _too_much(_: TooMuch) -> Response:
    """A device has sent enough today: it keeps what it has and comes again."""
    response = _problem(429, [])
    response.headers["Retry-After"] = "3600"
    return response


def _busy(_: Exception) -> Response:
    """The database cannot take it now; nothing was stored, and the phone keeps it and comes again."""
    response = _problem(503, [])
    response.headers["Retry-After"] = "5"
    return response


def _broken(error: Exception) -> Response | HTTPException:
    """A mistake of ours, told as one: it is in the log under the id that the answer gives."""
    error_id = unexpected_errors.record(f"{request.method} {request.path[:200]}", error)
    if not is_api(request.path):
        return InternalServerError(original_exception=error)
    return _problem(500, [], {"instance": f"urn:uuid:{error_id}"})


def _problem(status: int, faults: list[dict[str, Any]], more: dict[str, str] | None = None) -> Response:
    spoken = language(request)
    names = [stream_import.cell_name(fault["field"], spoken) for fault in faults]
    said = [text.problem_sentence(fault, spoken, name) for fault, name in zip(faults, names, strict=True)]
    errors = [fault | {"message": one} for fault, one in zip(faults, said, strict=True)]
    document = {
        "type": "about:blank",
        "title": HTTPStatus(status).phrase,
        "status": status,
        "detail": errors[0]["message"] if errors else text.sentence(f"server.status_{status}", {}, spoken),
        "errors": errors,
    }
    document |= more or {}
    response = Response(strict_json.write(document), status, mimetype=PROBLEM)
    response.content_language.add(spoken)
    response.vary.add("Accept-Language")
    return response
