"""The page over plain http that leads a phone through trusting the shop's authority, and nothing else."""

from collections.abc import Iterable
from functools import partial
from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

from flask import Flask, Response, render_template, request

from amberbench import text
from amberbench.api.json_blueprint import language
from amberbench.serving import Listener

from .certificate import OwnCertificate

CHECK = "/trusted"
"""Answered over HTTPS to whoever trusts the certificate, from any page."""
POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; connect-src https:; frame-ancestors 'none'"
# Of every phone, the steps in their order.
STEPS = {
    "iphone": ("lan.iphone_load", "lan.iphone_install", "lan.iphone_trust", "lan.iphone_back"),
    "android": ("lan.android_load", "lan.android_install", "lan.android_choose", "lan.android_back"),
    "other": ("lan.other_load", "lan.other_trust"),
}
TITLES = {"iphone": "lan.on_iphone", "android": "lan.on_android", "other": "lan.on_other"}
SAID = ("lan.why", "lan.load", "lan.not_yet", "lan.works", "lan.go_on", "lan.fingerprint")


def page(certificate: OwnCertificate, served: Listener, lead_on: str) -> Flask:
    """The page, for the app that is served beside it; `lead_on`: where to, once the certificate is trusted."""
    app = Flask("amberbench.lan")

    @app.get("/")
    def steps() -> str:
        phone = _phone(request.user_agent.string)
        say = partial(text.sentence, values={}, language=language(request))
        name = request.host.rpartition(":")[0].strip("[]")
        host = name if name in certificate.names else certificate.wanted()[0]
        app_at = served.address(host).rstrip("/")
        return render_template(
            "page.html",
            language=language(request),
            say={code.partition(".")[2]: say(code) for code in SAID},
            phones=[(say(TITLES[one]), [say(code) for code in codes], one == phone) for one, codes in STEPS.items()],
            check=f"{app_at}{CHECK}",
            lead_on=f"{app_at}{lead_on}",
            fingerprint=certificate.fingerprint(),
        )

    @app.get("/amberbench.crt")
    def authority() -> Response:
        return Response(certificate.to_trust(), mimetype="application/x-x509-ca-cert")

    @app.after_request
    def restrict(response: Response) -> Response:
        response.headers["Content-Security-Policy"] = POLICY
        response.headers["X-Content-Type-Options"] = "nosniff"
        response.headers["Cache-Control"] = "no-store"
        return response

    return app


def answering_the_check(application: WSGIApplication) -> WSGIApplication:
    """The app, with a resource that a page of another origin may fetch to learn whether the phone trusts it."""

    def answered(environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        if environ.get("PATH_INFO") != CHECK:
            return application(environ, start_response)
        start_response(
            "204 No Content", [("Cross-Origin-Resource-Policy", "cross-origin"), ("Cache-Control", "no-store")]
        )
        return []

    return answered


def _phone(user_agent: str) -> str:
    if "Android" in user_agent:
        return "android"
    return "iphone" if "iPhone" in user_agent or "iPad" in user_agent else "other"
