"""For a server of several processes: `gunicorn 'amberbench.hosted:application()'`, with one shop or with several.

Several: AMBERBENCH_SHOPS names a JSON file `{"caramels.example": "<database>", ...}`, a database for each name in the
address. Each shop has a database, or a schema of PostgreSQL, of its own: what is asked of one finds no other's tables.
"""

import threading
from collections.abc import Iterable, Mapping
from contextlib import suppress
from typing import Any
from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

from flask import Flask
from werkzeug.wrappers import Response

from . import config, text
from .api import outermost
from .app import create_app
from .services import clock, setup
from .store import Unusable

OF_MANY = {"SQLALCHEMY_ENGINE_OPTIONS": {"pool_size": 1}}
"""Every process keeps one connection for a shop, and opens more while it needs them: shops may be many."""


def application() -> WSGIApplication:
    """The application, with its tables made and an empty shop begun where there is none."""
    outermost.keep_log(None)
    shops = config.shops()
    return _ready(None) if shops is None else Shops(shops)


class Shops:
    """Hands each request to the application of the shop that its Host names; made ready when it is first asked for."""

    def __init__(self, databases: Mapping[str, str]) -> None:
        self.databases = databases
        self.ready: dict[str, Flask] = {}
        self.turn = threading.Lock()

    def __call__(self, environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        name = environ.get("HTTP_HOST", "").partition(":")[0].lower()
        if name not in self.databases:
            return Response(text.sentence("server.no_shop_here", {}), 421)(environ, start_response)
        with self.turn:
            if name not in self.ready:
                self.ready[name] = _ready(
                    {"SQLALCHEMY_DATABASE_URI": self.databases[name], "HOSTS": config.hosts(name)} | OF_MANY
                )
        return self.ready[name](environ, start_response)


def _ready(overrides: Mapping[str, Any] | None) -> Flask:
    app = create_app(overrides)
    with app.app_context(), suppress(Unusable):  # it is in the log, and every request is answered with it
        setup.set_up(None, clock.system_now_ms())
    setup.go_on_beside(app, None)
    return app
