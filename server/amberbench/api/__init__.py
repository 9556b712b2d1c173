"""The endpoints: schema in, one service call, document out. No queries, no arithmetic."""

from flask import Flask

from . import batches, events, export, phones, photos, plans, shop, stream_documents, trace
from .problems import ProblemApi


def init_app(app: Flask) -> None:
    """Registers every endpoint of the server."""
    api = ProblemApi(app)
    for module in (plans, events, batches, photos, export, shop, phones, stream_documents, trace):
        api.register_blueprint(module.blueprint, url_prefix="/api")
    api.describe_documents()
