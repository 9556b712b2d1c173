"""How long the phone's engine takes to start: MicroPython with the bytes that ship, beside it with the sources."""

import json
import subprocess
from collections.abc import Iterator
from pathlib import Path

from tests.parity.test_parity import MICROPYTHON, ROOT, node, shipped

from .table import Row, growth_row
from .timing import of_pairs

ROUNDS = 15
AT_MOST = 0.5


def rows() -> Iterator[Row]:
    """One row, under Node: MicroPython is the phone's, its heap too."""
    script = Path(__file__).with_suffix(".mjs")
    command = [node(), script, shipped(), ROOT / "server/amberbench/engine", MICROPYTHON, str(ROUNDS)]
    done = subprocess.run(command, check=True, stdout=subprocess.PIPE, timeout=300)
    pairs = [(shipped_ms / 1000.0, sources_ms / 1000.0) for shipped_ms, sources_ms in json.loads(done.stdout)]
    yield growth_row("engine start, in MicroPython under Node", of_pairs(pairs), "from its sources", AT_MOST)
