"""Debian's packages, for what the tests need of the machine: installed where apt is and we are root."""

import os
import shutil
import subprocess


def can_install() -> bool:
    return shutil.which("apt-get") is not None and os.geteuid() == 0


def install(*either: str, recommended: bool = False) -> None:
    """Installs the first of these packages that this Debian has, with what it needs or also with what it recommends."""
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    subprocess.run(["apt-get", "update", "-qq"], check=True, env=quiet)
    more = [] if recommended else ["--no-install-recommends"]
    for package in either:
        apt = ["apt-get", "install", "-y", "-qq", *more, package]
        if subprocess.run(apt, env=quiet, stdout=subprocess.DEVNULL).returncode == 0:
            return
