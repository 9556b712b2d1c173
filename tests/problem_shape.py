"""The one shape of every error, asserted in one place."""

import re
from typing import Any

from werkzeug.test import TestResponse

from tests.conforming import is_document

# What a sentence may leave unfilled by mistake; a brace alone is what somebody typed.
PLACEHOLDER = re.compile(r"\{[a-z_]+\}")


def assert_problem(response: TestResponse, status: int, code: str | None = None, field: str | None = None) -> Any:
    """Problem details (RFC 9457) with this status and, among the errors, this code at this field; returns it."""
    assert response.status_code == status, response.get_data(as_text=True)
    assert response.mimetype == "application/problem+json"
    assert response.headers["Cache-Control"] == "no-store"
    document = response.get_json()
    is_document("ProblemDetails", document)
    assert document["status"] == status
    assert document["detail"]
    for error in document["errors"]:
        assert not error["message"].startswith("problem."), f"no sentence for {error['code']}"
        assert not PLACEHOLDER.search(error["message"]), error["message"]
    if code is not None:
        found = [(error["code"], error["field"]) for error in document["errors"]]
        assert any(code == one and field in (None, where) for one, where in found), found
    return document
