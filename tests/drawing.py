"""What every strategy that draws requests by chance shares."""

import random
from typing import Any


def maybe(rng: random.Random, request: dict[str, Any], name: str, value: Any, chance: float = 0.5) -> None:
    """Sets a field of a request, or leaves it to its default."""
    if rng.random() < chance:
        request[name] = value
