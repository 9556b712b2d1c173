"""A small disk of its own for a test: a file system of so many bytes where root may mount one, filled to the byte."""

import os
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

PAGE = 4096


class SmallDisk:
    """A folder on a disk of its own."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.filler = folder / "filler"

    def fill(self, but: int = 0) -> None:
        """Fills it up but for so many pages."""
        self.free()
        left = os.statvfs(self.folder).f_bavail
        with self.filler.open("wb") as file:
            os.posix_fallocate(file.fileno(), 0, max(1, left - but) * PAGE)

    def free(self) -> None:
        """Takes the filling away."""
        self.filler.unlink(missing_ok=True)

    def remount(self, how: str) -> None:
        """Makes it "ro" or "rw"."""
        subprocess.run(["mount", "-o", f"remount,{how}", self.folder], check=True)


def may_mount() -> bool:
    """Whether this user may mount a file system here."""
    return os.geteuid() == 0 and subprocess.run(["unshare", "-m", "true"], capture_output=True).returncode == 0


@contextmanager
def small_disk(folder: Path, size: int) -> Iterator[SmallDisk]:
    """A tmpfs of `size` bytes at a folder; taken away with the block."""
    folder.mkdir()
    subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={size}", "tmpfs", folder], check=True)
    try:
        yield SmallDisk(folder)
    finally:
        subprocess.run(["umount", "-l", folder], check=True)
