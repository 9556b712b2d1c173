"""Settings, from the environment. Nothing here is secret: tokens and codes are kept in the database, as hashes."""

import ipaddress
import json
import os
import socket
import sys
from pathlib import Path
from typing import Any

import platformdirs

MOST_BODY_BYTES = 2 * 1024 * 1024
"""A request of 500 events stays below this; more is refused before it is read."""

PACKAGE = Path(__file__).parent


DATABASE_FILE = "amberbench.sqlite"


def data_folder() -> Path:
    """Where the data lie: AMBERBENCH_DATA_FOLDER; else the user's data folder, or `server/instance` in a clone."""
    if said := os.environ.get("AMBERBENCH_DATA_FOLDER"):
        return Path(said)
    return platformdirs.user_data_path("amberbench", appauthor=False) if _is_packaged() else PACKAGE.parent / "instance"


def earlier_file() -> Path | None:
    """Where version 0.1.0, installed, kept its data: inside its Python environment. None in a clone."""
    return Path(sys.prefix) / "var" / "amberbench-instance" / DATABASE_FILE if _is_packaged() else None


def settings() -> dict[str, Any]:
    """The settings of the application; a caller of `create_app` may override each of them."""
    database_file = data_folder() / DATABASE_FILE
    return {
        "SQLALCHEMY_DATABASE_URI": os.environ.get("AMBERBENCH_DATABASE_URL") or f"sqlite:///{database_file}",
        "MAX_CONTENT_LENGTH": MOST_BODY_BYTES,
        "PWA_FOLDER": PACKAGE / "pwa" if _is_packaged() else PACKAGE.parent.parent / "pwa" / "dist",
        "BACKUP_FOLDER": os.environ.get("AMBERBENCH_BACKUP_FOLDER"),
        "PROXIES": int(os.environ.get("AMBERBENCH_PROXIES", 0)),
        "ADDRESS": os.environ.get("AMBERBENCH_ADDRESS"),
        "CERTIFICATE": None,
        "NOW_MS": None,
        "SIGN_IN": os.environ.get("AMBERBENCH_SIGN_IN") != "off",
        "HOSTS": hosts(*os.environ.get("AMBERBENCH_HOSTS", "").split(",")),
    }


def shops() -> dict[str, str] | None:
    """The database of each shop by the name in its address, from the file AMBERBENCH_SHOPS names; None without one."""
    file = os.environ.get("AMBERBENCH_SHOPS")
    return None if file is None else {name.lower(): url for name, url in json.loads(Path(file).read_text()).items()}


def hosts(*more: str) -> frozenset[str]:
    """The names by which the server may be asked: this computer's, and others of its own; figures need no name."""
    own = socket.gethostname()
    return frozenset(name.strip().lower() for name in ("localhost", own, f"{own}.local", *more)) - {""}


def demo_shop_file() -> Path:
    """The invented shop: packaged, or in the repository."""
    return (PACKAGE if _is_packaged() else PACKAGE.parent.parent) / "seed_data" / "demo_shop.json"


def demo_trade_file() -> Path:
    """Its invented deliveries, boxes and orders."""
    return demo_shop_file().with_name("demo_trade.json")


def is_loopback(host: str) -> bool:
    """Whether only this machine reaches an address."""
    if host == "localhost":
        return True
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False


def _is_packaged() -> bool:
    """Whether this is an installed wheel: only there do the phone's files lie inside the package."""
    return (PACKAGE / "pwa").is_dir()
