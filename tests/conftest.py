"""What the server's tests share: a real application on a real, migrated SQLite file, and a clock of ours."""

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient
from hypothesis import settings

from amberbench.app import create_app
from amberbench.config import demo_shop_file
from amberbench.services import setup
from amberbench.store import db
from tests.bench import NINE_OCLOCK_MS
from tests.postgresql import Cluster, cluster

# Servers that tests start: anybody is let in, but for the tests of pairing.
os.environ.setdefault("AMBERBENCH_SIGN_IN", "off")
# The machine is shared: deadlines would test the neighbours.
settings.register_profile("amberbench", deadline=None, derandomize=True, print_blob=True)
settings.register_profile("prove", deadline=None, max_examples=2000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "amberbench"))


class SetClock:
    """The server's clock, moved by the test; it stands still by itself."""

    def __init__(self) -> None:
        self.now_ms = int(NINE_OCLOCK_MS)

    def __call__(self) -> int:
        return self.now_ms


def application(file: Path, clock: SetClock | None = None, **overrides: object) -> Flask:
    """The application on a database file; anybody is let in, but for the tests of pairing."""
    given = {"SQLALCHEMY_DATABASE_URI": f"sqlite:///{file}", "NOW_MS": clock, "TESTING": True, "SIGN_IN": False}
    return create_app(given | overrides)


@pytest.fixture(scope="session", autouse=True)
def data_folder(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Where what belongs to a database without a file of its own lies: not among the data of this clone."""
    folder = tmp_path_factory.mktemp("data")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("AMBERBENCH_DATA_FOLDER", str(folder))
        yield folder


@pytest.fixture(scope="session")
def ready_database(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A file that went through every migration and holds the invented shop; copied for each test."""
    file = tmp_path_factory.mktemp("database") / "ready.sqlite"
    app = application(file)
    with app.app_context():
        setup.set_up(demo_shop_file().read_text(encoding="utf-8"), int(NINE_OCLOCK_MS))
        db.engine.dispose()
    return file


@pytest.fixture
def database(ready_database: Path, tmp_path: Path) -> Path:
    """A database file of the test's own."""
    return Path(shutil.copy(ready_database, tmp_path / "amberbench.sqlite"))


@pytest.fixture
def clock() -> SetClock:
    """The server's clock."""
    return SetClock()


@pytest.fixture
def app(database: Path, clock: SetClock, tmp_path: Path) -> Iterator[Flask]:
    """The application; no phone app is built in its folder."""
    app = application(database, clock, PWA_FOLDER=tmp_path / "pwa")
    yield app
    with app.app_context():
        db.engine.dispose()


@pytest.fixture
def shop(database: Path, clock: SetClock, tmp_path: Path) -> Iterator[Flask]:
    """The application as a shop has it: only paired phones are let in."""
    app = application(database, clock, PWA_FOLDER=tmp_path / "pwa", SIGN_IN=True)
    yield app
    with app.app_context():
        db.engine.dispose()


@pytest.fixture(scope="session")
def postgresql() -> Iterator[Cluster]:
    """A PostgreSQL of this run's own."""
    with cluster() as own:
        yield own


@pytest.fixture(params=["sqlite", "postgresql"])
def app_on_each_database(request: pytest.FixtureRequest, clock: SetClock) -> Iterator[Flask]:
    """The application with the invented shop, on SQLite and on PostgreSQL."""
    if request.param == "sqlite":
        yield request.getfixturevalue("app")
        return
    url = request.getfixturevalue("postgresql").new_database()
    app = create_app({"SQLALCHEMY_DATABASE_URI": url, "NOW_MS": clock, "TESTING": True})
    with app.app_context():
        setup.set_up(demo_shop_file().read_text(encoding="utf-8"), int(NINE_OCLOCK_MS))
    yield app
    with app.app_context():
        db.engine.dispose()


@pytest.fixture(scope="session")
def readonly_client(ready_database: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[FlaskClient]:
    """A client for tests that store nothing; shared by all of them, for an application takes time to set up."""
    file = Path(shutil.copy(ready_database, tmp_path_factory.mktemp("readonly_client") / "amberbench.sqlite"))
    app = application(file, SetClock(), PWA_FOLDER=file.parent / "pwa")
    yield app.test_client()
    with app.app_context():
        db.engine.dispose()


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    """A client of the application."""
    return app.test_client()
