"""What the test files of single kinds (`tests/kinds/test_<kind>.py`) bring to the tests of all.

Each may have SENSIBLE (requests by function, as in `strategies`), PLANS (functions that give a plan document) and
BENCHES (functions of a `random.Random` that give a batch driven some steps).
"""

from importlib import import_module
from pathlib import Path
from typing import Any

from tests.bench import dipped_slab, jacket_slab, planned_bowl, planned_clusters, planned_slab


def of_kinds(name: str) -> list[Any]:
    """What every such file has by a name."""
    files = sorted((Path(__file__).parent / "kinds").glob("test_*.py"))
    modules = [import_module(f"tests.kinds.{file.stem}") for file in files]
    return [getattr(module, name) for module in modules if hasattr(module, name)]


PLANS_OF_ALL = [planned_slab, jacket_slab, dipped_slab, planned_clusters, planned_bowl]
PLANS_OF_ALL += [planned for plans in of_kinds("PLANS") for planned in plans]
