"""Puts the built phone app and the invented shop into the packages; an editable install reads both where they are."""

from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

PACKED = {"pwa/dist": "amberbench/pwa", "seed_data": "amberbench/seed_data"}
NOT_BUILT = "The phone's app is not built: pwa/dist/index.html is missing. `make wheel` builds it and the packages."


class PackWhatIsBuilt(BuildHookInterface):  # type: ignore[type-arg]
    """Hatchling calls it before it packs a wheel or a source distribution."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Adds both to the wheel, where they lie inside the package; ends the build where the app is missing."""
        if version == "editable":
            return
        if not (Path(self.root) / "pwa/dist/index.html").is_file():
            self.app.abort(NOT_BUILT)
        if self.target_name == "wheel":
            build_data["force_include"] |= {str(Path(self.root) / source): to for source, to in PACKED.items()}
