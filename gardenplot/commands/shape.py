"""Arguments and output that the commands share."""

import json
import sys
from argparse import ArgumentParser, ArgumentTypeError
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Any, TypeVar

from gardenplot.errors import FileError, PlanError
from gardenplot.plan import Plan
from gardenplot.plan.file import SUFFIX, read_plan, write_whole
from gardenplot.units import MM
from gardenplot.words import _

T = TypeVar("T")


def add_plan(parser: ArgumentParser) -> None:
    """The plan file that a command works on."""
    parser.add_argument("plan", type=Path, metavar="PLAN", help=_("a plan file"))


def add_json(parser: ArgumentParser) -> None:
    """The switch for output that a machine reads."""
    parser.add_argument("--json", action="store_true", help=_("print JSON"))


def asked(read: Callable[[str], T], says: str) -> Callable[[str], T]:
    """What reads an argument and tells in words where it is none; `says` has a place for what was `typed`."""

    def reader(text: str) -> T:
        try:
            return read(text)
        except ValueError:
            raise ArgumentTypeError(says.format(typed=text)) from None

    return reader


NO_PAPER = _("“{typed}” is no paper of this program: write a4 or letter")


def opened(path: Path) -> Plan:
    """The plan in a file; what is not known in it is said on standard error. Raises FileError."""
    found = read_plan(path)
    for problem in found.problems:
        print(f"{path}: {problem}", file=sys.stderr)
    return found.plan


def named_beds(plan: Plan, named: Iterable[str] | None) -> frozenset[str]:
    """The beds that a command is for, none for all of them; raises PlanError for one that the plan does not have."""
    beds = frozenset(named or ())
    for bed in sorted(beds - {one.id for one in plan.beds}):
        raise PlanError(_("there is no “{id}” in the plan").format(id=bed))
    return beds


def out_beside(plan: Path, out: Path | None, word: str) -> Path:
    """Where a new plan is written: as named, else a name beside the plan's, with a word, that no file has yet.

    Raises FileError where that is the plan's own file.
    """
    names = (
        f"{plan.stem}-{word}{number}{plan.suffix}" for number in ("", *(f"-{count}" for count in range(2, 1000)))
    )
    free = (plan.with_name(name) for name in names)
    path = out or next((path for path in free if not path.exists()), plan)
    if _is_same(plan, path):
        raise FileError(_("{path}: the new plan needs a name of its own").format(path=path))
    return path


def write_out(plan: Path, out: Path, content: bytes) -> None:
    """Write a sheet, a table or the like that a command made of a plan.

    Raises FileError where it cannot be written, and where its name is that of the plan or of any plan file: a name
    that was left out, or completed by the shell, would cost the grower the plan.
    """
    if out.suffix == SUFFIX or _is_same(plan, out):
        raise FileError(_("{path}: this is the name of a plan, it is not written over").format(path=out))
    write_whole(out, content)


def _is_same(plan: Path, other: Path) -> bool:
    return plan.exists() and other.exists() and other.samefile(plan)


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
