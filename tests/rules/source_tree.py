"""The program's source as syntax trees, for the rules of the house that read it."""

import ast
from collections.abc import Collection, Iterable, Iterator, Mapping
from functools import cached_property, lru_cache
from pathlib import Path, PurePosixPath

from attrs import frozen

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = "gardenplot"

Function = ast.FunctionDef | ast.AsyncFunctionDef
Definition = Function | ast.ClassDef


@frozen
class Offence:
    """A place that breaks a rule, as "path" or "path::Qualified.name", and how it does."""

    where: str
    what: str

    def __str__(self) -> str:
        return f"{self.where}: {self.what}"


@frozen(eq=False)
class Defined:
    """A class or function, its place, and the classes and functions around it from the outside in."""

    where: str
    node: Definition
    around: tuple[Definition, ...]

    @property
    def is_method(self) -> bool:
        """Whether it stands directly in a class."""
        return bool(self.around) and isinstance(self.around[-1], ast.ClassDef)


@frozen(eq=False)
class Module:
    """One file of the program."""

    path: PurePosixPath
    text: str
    tree: ast.Module

    @property
    def room(self) -> str:
        """The first name below the package: "window" for gardenplot/window/canvas.py and gardenplot/window.py."""
        return PurePosixPath(self.path.parts[1]).stem

    @property
    def name(self) -> str:
        """The module's own name; a package bears that of its folder."""
        return self.path.parent.name if self.path.stem == "__init__" else self.path.stem

    @cached_property
    def defined(self) -> tuple[Defined, ...]:
        """Every class and function, however deep."""
        return tuple(_defined(self.tree, str(self.path), ()))


def _defined(node: ast.AST, path: str, around: tuple[Definition, ...]) -> Iterator[Defined]:
    for child in ast.iter_child_nodes(node):
        if isinstance(child, Definition):
            inside = (*around, child)
            yield Defined(f"{path}::{'.'.join(each.name for each in inside)}", child, around)
            yield from _defined(child, path, inside)
        else:
            yield from _defined(child, path, around)


def modules(root: Path) -> list[Module]:
    """Every module of the package below `root`, in order of their paths."""
    files = sorted((root / PACKAGE).rglob("*.py"))
    # A rule that reads nothing would hold for ever.
    assert files, f"no modules in {root / PACKAGE}"
    return [_module(file, root, file.stat().st_mtime_ns) for file in files]


@lru_cache(maxsize=1024)
def _module(file: Path, root: Path, _written: int) -> Module:
    """A file, read once for all rules unless it is written anew."""
    text = file.read_text(encoding="utf-8")
    return Module(PurePosixPath(file.relative_to(root).as_posix()), text, ast.parse(text, str(file)))


def write_tree(root: Path, files: Mapping[str, str]) -> Path:
    """Write a small tree of files to try a rule on."""
    for path, text in files.items():
        file = root / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")
    return root


def assert_none(offences: Iterable[Offence], *, excused: Collection[str] = ()) -> None:
    """Fail with one line for every offence whose place is not excused."""
    lines = [str(offence) for offence in offences if offence.where not in excused]
    assert not lines, "\n".join(["", *lines])


def outlived(exceptions: Mapping[str, str], offences: Iterable[Offence]) -> list[str]:
    """The exceptions that excuse nothing any more or give no reason."""
    places = {offence.where for offence in offences}
    return [where for where, reason in exceptions.items() if where not in places or not reason.strip()]
