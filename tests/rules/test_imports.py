"""Each room imports only what stands below it, and each large library stays in one room."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

from tests.rules.source_tree import ROOT, Module, Offence, assert_none, modules, write_tree

ONLY_IN = {"PySide6": "window", "shiboken6": "window", "reportlab": "sheets", "ezdxf": "exports"}


def strayed_libraries(root: Path) -> Iterator[Offence]:
    """Imports of a library outside the one room that may know it."""
    for module in modules(root):
        for line, name in _imported(module):
            library = name.partition(".")[0]
            if ONLY_IN.get(library, module.room) != module.room:
                what = f"line {line} imports {name}, which belongs in {ONLY_IN[library]}"
                yield Offence(str(module.path), what)


def _imported(module: Module) -> Iterator[tuple[int, str]]:
    for node in ast.walk(module.tree):
        match node:
            case ast.Import(names=names):
                yield from ((node.lineno, alias.name) for alias in names)
            case ast.ImportFrom(module=str(name), level=0):
                yield node.lineno, name


def broken_contracts(root: Path) -> str:
    """What import-linter says of the contracts in `pyproject.toml`; nothing if all are kept."""
    # In a process of its own: it reads its configuration and the package from the current folder.
    command = "from importlinter.cli import lint_imports_command; lint_imports_command()"
    run = subprocess.run(
        [sys.executable, "-c", command, "--no-logo", "--no-cache"],
        cwd=root,
        capture_output=True,
        encoding="utf-8",
        check=False,
    )
    return run.stdout + run.stderr if run.returncode else ""


def test_the_contracts_between_rooms_are_kept() -> None:
    broken = broken_contracts(ROOT)
    assert not broken, broken


def test_each_large_library_stays_in_its_room() -> None:
    assert_none(strayed_libraries(ROOT))


def test_a_broken_contract_is_found(tmp_path: Path) -> None:
    contract = """
[tool.importlinter]
root_package = "gardenplot"
[[tool.importlinter.contracts]]
name = "the shed is below the house"
type = "layers"
containers = ["gardenplot"]
layers = ["house", "shed"]
"""
    tree = {
        "pyproject.toml": contract,
        "gardenplot/__init__.py": "",
        "gardenplot/house.py": "import gardenplot.shed\n",
        "gardenplot/shed.py": "",
    }
    assert not broken_contracts(write_tree(tmp_path, tree))
    write_tree(tmp_path, {"gardenplot/house.py": "", "gardenplot/shed.py": "import gardenplot.house\n"})
    assert "gardenplot.shed is not allowed to import gardenplot.house" in broken_contracts(tmp_path)


def test_a_library_outside_its_room_is_found(tmp_path: Path) -> None:
    everything = """
import PySide6.QtGui as gui, shiboken6
from ezdxf.document import Drawing
from . import reportlab
def late():
    from reportlab import platypus
"""
    rooms = ["exports/dxf", "plan/value", "sheets/page", "window"]
    write_tree(tmp_path, {f"gardenplot/{room}.py": everything for room in rooms})
    found = {(offence.where, offence.what.split()[3].strip(",")) for offence in strayed_libraries(tmp_path)}
    assert found == {
        ("gardenplot/exports/dxf.py", "PySide6.QtGui"),
        ("gardenplot/exports/dxf.py", "shiboken6"),
        ("gardenplot/exports/dxf.py", "reportlab"),
        ("gardenplot/plan/value.py", "PySide6.QtGui"),
        ("gardenplot/plan/value.py", "shiboken6"),
        ("gardenplot/plan/value.py", "ezdxf.document"),
        ("gardenplot/plan/value.py", "reportlab"),
        ("gardenplot/sheets/page.py", "PySide6.QtGui"),
        ("gardenplot/sheets/page.py", "shiboken6"),
        ("gardenplot/sheets/page.py", "ezdxf.document"),
        ("gardenplot/window.py", "ezdxf.document"),
        ("gardenplot/window.py", "reportlab"),
    }
