"""The doors: schema in, one service call, document out. No queries, no arithmetic."""

from flask import Flask

from . import batches, events, export, phone, photos, plans, shop
from .problems import ProblemApi


def init_app(app: Flask) -> None:
    """Registers every door of the server."""
    api = ProblemApi(app)
    for door in (plans, events, batches, photos, export, shop):
        api.register_blueprint(door.blueprint, url_prefix="/api")
    app.register_blueprint(phone.blueprint)
