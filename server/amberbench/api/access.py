"""Who may do what: every endpoint has its role here, and every request is asked for it before anything else is done."""

import ipaddress
from contextlib import suppress
from urllib.parse import urlsplit

from flask import Flask, Response, current_app, g, request
from werkzeug.wrappers import Request

from amberbench.engine.core.problems import Problem
from amberbench.services import pairing, plans, stream_documents
from amberbench.services.pairing import Phone
from amberbench.services.roles import BENCH, OWNER, READER, may

from .rate_limit import RateLimit

ANYONE = "anyone"
ROLE_OF_ENDPOINT = {
    "shop.health": ANYONE,
    "phones.pair": ANYONE,
    "api-docs.openapi_json": READER,
    "batches.newest": READER,
    "batches.record": READER,
    "batches.taught": READER,
    "events.pull": READER,
    "events.start": READER,
    "export.batches": READER,
    "export.log": READER,
    "export.timeline": READER,
    "photos.show": READER,
    "shop.document": READER,
    "trace.both_ways": READER,
    "events.push": BENCH,
    "photos.keep": BENCH,
    "phones.listed": OWNER,
    "phones.offer": OWNER,
    "phones.revoke": OWNER,
}
ROLE_OF_ENDPOINT |= {f"plans.{name}": READER for name in plans.ROUTES}
ROLE_OF_ENDPOINT |= {
    f"stream_documents.{kind}_{what}": READER
    for kind in stream_documents.KINDS
    for what in ("page", "one", "csv", "json")
}

ROLE_OF_ENDPOINT |= {f"stream_documents.{kind}_import": BENCH for kind in stream_documents.KINDS}

READS = ("GET", "HEAD", "OPTIONS")
COOKIE = "amberbench"
COOKIE_S = pairing.UNSEEN_MS // 1000
# A phone that comes back sends what it kept by the hundred and its photos one by one; a person pairs once.
WRITES_AT_ONCE, WRITES_PER_SECOND = 300, 30
PAIRS_AT_ONCE, PAIRS_PER_SECOND = 10, 1 / 30


def init_app(app: Flask) -> None:
    """Asks before every request. Raises LookupError for an endpoint without a role, or a role without an endpoint."""
    wrong = set(app.view_functions) ^ set(ROLE_OF_ENDPOINT)
    if wrong:
        raise LookupError(f"ROLE_OF_ENDPOINT and the routes differ: {sorted(wrong)}")
    app.extensions["amberbench_limits"] = {
        "writes": RateLimit(WRITES_AT_ONCE, WRITES_PER_SECOND),
        "pairs": RateLimit(PAIRS_AT_ONCE, PAIRS_PER_SECOND),
    }
    app.before_request(authorize)
    app.after_request(renew_cookie)


def authorize() -> None:
    """Lets a request go on, or raises Problem: foreign_host, foreign_origin, not_paired, not_for_role, too_often.

    Notes the phone that asks in `g.phone`, and in `g.role` what it may do; None: nobody's.
    """
    g.phone = g.role = None
    if not is_known_host(request, current_app):
        raise Problem("Host", "foreign_host", request.headers.get("Host", "")[:80])
    if request.method not in READS and not _is_from_here(request):
        raise Problem("Origin", "foreign_origin", request.headers.get("Origin", "")[:80])
    g.phone = _phone()
    g.role = g.phone.role if g.phone else None if current_app.config["SIGN_IN"] else OWNER
    if request.endpoint is None:  # No such address, or not in this way: it will be said.
        return
    needed = ROLE_OF_ENDPOINT[request.endpoint]
    if needed != ANYONE and g.role is None:
        raise Problem("phone", "not_paired")
    if needed != ANYONE and not may(g.role, needed):
        raise Problem("role", "not_for_role", g.role, accepted=[needed])
    _limit()


def is_known_host(asking: Request, app: Flask) -> bool:
    """Whether a request was meant for this server: a page elsewhere may have its own name lead here (DNS rebinding).

    An address in figures cannot be made to lead elsewhere. Werkzeug's own list cannot hold one of IPv6.
    """
    try:
        name = urlsplit(f"//{asking.environ.get('HTTP_HOST', '')}").hostname or ""
    except ValueError:
        return False
    with suppress(ValueError):
        address = ipaddress.ip_address(name)
        return address.is_loopback or bool(app.config["SIGN_IN"])
    certificate = app.config["CERTIFICATE"]
    return name in app.config["HOSTS"] or (certificate is not None and name in certificate.names)


def set_cookie(response: Response, token: str) -> None:
    """Gives the phone its token: out of reach of scripts, for this host alone; unencrypted at loopback only."""
    response.set_cookie(
        _cookie(), token, COOKIE_S, secure=request.is_secure, httponly=True, samesite="Strict", path="/"
    )


def renew_cookie(response: Response) -> Response:
    """Lets the cookie of a phone that is in use never run out."""
    if getattr(g, "renews", False) and _cookie() not in response.headers.get("Set-Cookie", ""):
        set_cookie(response, request.cookies[_cookie()])
    return response


def _phone() -> Phone | None:
    """The paired phone that asks; at times it is noted that it was seen."""
    token = request.cookies.get(_cookie())
    phone = pairing.phone_of(token, g.received_ms) if token and current_app.config["SIGN_IN"] else None
    if phone and g.received_ms > phone.seen_ms + pairing.SEEN_EVERY_MS:
        g.renews = True
        pairing.seen(phone, g.received_ms)
    return phone


def _cookie() -> str:
    return f"__Host-{COOKIE}" if request.is_secure else COOKIE


def _is_from_here(asking: Request) -> bool:
    """Whether a page of our own asks, or no page at all (a program says no Origin)."""
    origin = asking.headers.get("Origin")
    same = asking.headers.get("Sec-Fetch-Site", "same-origin") in ("same-origin", "none")
    # Whether with TLS or without is not compared: behind a proxy it is not known here.
    return same and (origin is None or origin.partition("://")[2] == asking.headers.get("Host"))


def _limit() -> None:
    if request.method in READS or not current_app.config["SIGN_IN"]:
        return
    kind, who = ("writes", g.phone.phone_id) if g.phone else ("pairs", request.remote_addr or "")
    if not current_app.extensions["amberbench_limits"][kind].takes(who):
        raise Problem("request", "too_often")
