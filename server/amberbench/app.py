"""The application: wiring only."""

from collections.abc import Mapping
from functools import partial
from pathlib import Path
from typing import Any

from flask import Flask
from werkzeug.middleware.proxy_fix import ProxyFix

from . import api, config, store
from .api import access, json_blueprint, outermost, static_files

OPENAPI = {
    "API_TITLE": "Amberbench",
    "API_VERSION": "v1",
    "OPENAPI_VERSION": "3.1.0",
    "OPENAPI_URL_PREFIX": "/api",
    "OPENAPI_JSON_PATH": "openapi.json",
    "API_SPEC_OPTIONS": {
        "components": {"securitySchemes": {"phone": {"type": "apiKey", "in": "cookie", "name": access.COOKIE}}},
        "security": [{"phone": []}],
    },
}


def create_app(overrides: Mapping[str, Any] | None = None) -> Flask:
    """The Flask application; `overrides` go before the settings of the environment."""
    app = Flask("amberbench", static_folder=None, instance_path=str(config.data_folder()))
    app.config.from_mapping(OPENAPI)
    app.config.from_mapping(config.settings())
    app.config.from_mapping(overrides or {})
    app.before_request(json_blueprint.note_arrival)
    app.after_request(json_blueprint.no_store)
    app.after_request(json_blueprint.compress)
    app.after_request(static_files.restrict)
    app.after_request(outermost.note)
    store.init_app(app)
    api.init_app(app)
    access.init_app(app)
    folder = Path(app.config["PWA_FOLDER"])
    files = static_files.StaticFiles(app.wsgi_app, folder, partial(access.is_known_host, app=app))
    app.wsgi_app = outermost.Outermost(files)  # type: ignore[method-assign]
    if proxies := app.config["PROXIES"]:
        app.wsgi_app = ProxyFix(app.wsgi_app, x_for=proxies, x_proto=proxies, x_host=proxies)  # type: ignore[method-assign]
    return app
