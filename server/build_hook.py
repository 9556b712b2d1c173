"""Puts the built phone app and the invented shop into the wheel. An editable install reads both from the repository."""

from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

PACKED = {"pwa/dist": "amberbench/pwa", "seed_data": "amberbench/seed_data"}


class PackWhatIsBuilt(BuildHookInterface):  # type: ignore[type-arg]
    """Hatchling calls it before it packs a wheel."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Adds what is there; a wheel without the app says so when it is served."""
        if version == "editable":
            return
        for source, target in PACKED.items():
            if (Path(self.root) / source).is_dir():
                build_data["force_include"][str(Path(self.root) / source)] = target
