"""Settings, from the environment. Nothing here is secret yet; there is no sign-in."""

import ipaddress
import os
from pathlib import Path
from typing import Any

MOST_BODY_BYTES = 2 * 1024 * 1024
"""A request of 500 events stays below this; more is refused before it is read."""

PACKAGE = Path(__file__).parent


def settings(instance_path: str) -> dict[str, Any]:
    """The settings of the application; a caller of `create_app` may override each of them."""
    database_file = Path(instance_path) / "amberbench.sqlite"
    return {
        "SQLALCHEMY_DATABASE_URI": os.environ.get("AMBERBENCH_DATABASE_URL") or f"sqlite:///{database_file}",
        "MAX_CONTENT_LENGTH": MOST_BODY_BYTES,
        "PWA_FOLDER": _first_folder(PACKAGE / "pwa", PACKAGE.parent.parent / "pwa" / "dist"),
        "NOW_MS": None,
    }


def demo_shop_file() -> Path:
    """The invented shop: packaged, or in the repository."""
    return _first_folder(PACKAGE / "seed_data", PACKAGE.parent.parent / "seed_data") / "demo_shop.json"


def is_loopback(host: str) -> bool:
    """Whether only this machine reaches an address."""
    if host == "localhost":
        return True
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False


def _first_folder(packaged: Path, in_repository: Path) -> Path:
    return packaged if packaged.is_dir() else in_repository
