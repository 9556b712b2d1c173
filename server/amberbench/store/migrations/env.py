"""Runs the migrations on the database of the current application."""

from alembic import context
from flask import current_app

from amberbench.store.database import db, take_turn
from amberbench.store.models import Base


def run() -> None:
    """Applies what is missing, all of it in one transaction where the database can."""
    arguments = current_app.extensions["migrate"].configure_args
    with db.engine.connect() as connection:
        context.configure(connection=connection, target_metadata=Base.metadata, **arguments)
        with context.begin_transaction():
            # Of several processes that start together one migrates, and the others find it done.
            take_turn(connection)
            context.run_migrations()


run()
