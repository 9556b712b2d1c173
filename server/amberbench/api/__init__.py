"""The doors: schema in, one service call, document out. No queries, no arithmetic."""

from flask import Flask

from . import batches, events, export, phone, plans, shop
from .problems import ProblemApi


def init_app(app: Flask) -> None:
    """Registers every door of the server."""
    api = ProblemApi(app)
    for blueprint in (plans.blueprint, events.blueprint, batches.blueprint, export.blueprint, shop.blueprint):
        api.register_blueprint(blueprint, url_prefix="/api")
    app.register_blueprint(phone.blueprint)
