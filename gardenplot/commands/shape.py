"""Arguments and output that the commands share."""

import json
import sys
from argparse import ArgumentParser
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from gardenplot.plan import Plan
from gardenplot.plan.file import read_plan
from gardenplot.units import MM
from gardenplot.words import _


def add_plan(parser: ArgumentParser) -> None:
    """The plan file that a command works on."""
    parser.add_argument("plan", type=Path, metavar="PLAN", help=_("a plan file"))


def add_json(parser: ArgumentParser) -> None:
    """The switch for output that a machine reads."""
    parser.add_argument("--json", action="store_true", help=_("print JSON"))


def opened(path: Path) -> Plan:
    """The plan in a file; what is not known in it is said on standard error. Raises FileError."""
    found = read_plan(path)
    for problem in found.problems:
        print(f"{path}: {problem}", file=sys.stderr)
    return found.plan


def print_json(value: dict[str, Any]) -> None:
    """Print a value as JSON."""
    print(json.dumps(value, ensure_ascii=False, indent=2))


def in_mm(nm: int | None) -> int | float | None:
    """A length in millimetres, whole where it is."""
    if nm is None:
        return None
    return nm // MM if nm % MM == 0 else nm / MM


def print_table(rows: Sequence[tuple[str, ...]]) -> None:
    """Print rows as columns, the first row as their heading."""
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for row in rows:
        print("  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip())
