"""The engine's version: a hash of its sources, the same in the repository, in a wheel and in the phone's app.

The one module that is not in MicroPython's dialect: the phone's build writes the version in its place.
"""

from hashlib import sha256
from pathlib import Path

ENGINE = Path(__file__).parent

MADE = "types.py"
"""Made of the other files by the command `types`, for type checkers, where one is at work; no part of the version."""

DIGITS = 16
"""So many hexadecimal digits of the hash: the columns and fields that hold a version take 20 characters."""


def sources(engine: Path = ENGINE) -> list[tuple[str, bytes]]:
    """Every Python file of an engine's folder in the order of their names: (path inside the folder, its bytes)."""
    found = (
        (file.relative_to(engine).as_posix(), file.read_bytes())
        for file in engine.rglob("*.py")
        if file != engine / MADE
    )
    # A checkout may end its lines in another way; a version is of what is written.
    return sorted((path, content.replace(b"\r\n", b"\n")) for path, content in found)


def version_of(files: list[tuple[str, bytes]]) -> str:
    """The version of an engine with these files."""
    whole = sha256()
    for path, content in files:
        whole.update(f"{path}\0{len(content)}\0".encode())
        whole.update(content)
    return whole.hexdigest()[:DIGITS]


VERSION = version_of(sources())
