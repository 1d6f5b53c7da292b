"""What somebody wrote into a plan is never taken for rich text on the screen, nor for a command anywhere."""

import ast
from collections.abc import Iterator
from pathlib import Path

from tests.rules.source_tree import ROOT, Module, Offence, assert_none, modules, outlived, write_tree

PLAIN = "gardenplot/window/plain.py"
"""The one module that may make a label of Qt's own kind."""
BOXES = frozenset({"warning", "question", "information", "critical", "about"})
TIPS = frozenset({"setToolTip", "setWhatsThis", "showText", "setInformativeText"})
DANGEROUS = frozenset({"eval", "exec", "compile", "__import__"})
MODULES = frozenset(
    {"pickle", "marshal", "shelve", "subprocess", "socket", "http", "urllib.request", "ftplib", "yaml"}
)
"""Modules by which a file could make the program run or fetch something."""

OWN_WORDS: dict[str, str] = {
    "gardenplot/window/registry.py": "reasons and tips of actions are sentences of the program",
    "gardenplot/window/side_title.py": "the titles of panels",
    "gardenplot/window/title_buttons.py": "the words of the buttons of panels",
}
"""Modules whose tips come from variables that no plan has a part in."""


def rich(root: Path) -> Iterator[Offence]:
    """Labels that look for marks in their words, and tips and boxes with words that are not made plain."""
    for module in modules(root):
        if module.room == "window" and str(module.path) != PLAIN:
            for line, what in (found for node in ast.walk(module.tree) for found in _rich(node)):
                yield Offence(str(module.path), f"line {line} {what}")


def _rich(node: ast.AST) -> Iterator[tuple[int, str]]:
    if isinstance(node, ast.ClassDef) and any(ast.unparse(base) == "QLabel" for base in node.bases):
        yield node.lineno, "derives a label that is not plain"
    if not isinstance(node, ast.Call):
        return
    called = ast.unparse(node.func)
    name = called.rpartition(".")[2]
    if called == "QLabel":
        yield node.lineno, "makes a label that is not plain"
    elif name in TIPS and not _is_plain(node.args[-1]):
        yield node.lineno, f"shows {ast.unparse(node.args[-1])} as a tip"
    elif called.startswith("QMessageBox.") and name in BOXES and not _is_plain(node.args[2]):
        yield node.lineno, f"shows {ast.unparse(node.args[2])} in a box"
    elif name == "setTextFormat" and "Plain" not in ast.unparse(node.args[0]):
        yield node.lineno, "asks for rich text"


def _is_plain(words: ast.expr) -> bool:
    """Whether words are made plain, or are written in the program."""
    match words:
        case ast.Constant():
            return True
        case ast.Call(func=ast.Name(id="as_is")):
            return True
        case ast.Call(func=ast.Name(id="_"), args=[ast.Constant()]):
            return True
        case ast.Call(func=ast.Attribute(attr="format", value=inner), keywords=keywords):
            return _is_plain(inner) and all(one.arg in ("rows", "needs", "scale") for one in keywords)
        case ast.IfExp(body=body, orelse=other):
            return _is_plain(body) and _is_plain(other)
        case _:
            return False


def dangers(root: Path) -> Iterator[Offence]:
    """Calls and imports by which what stands in a file could be run or fetched."""
    for module in modules(root):
        for node in ast.walk(module.tree):
            if isinstance(node, ast.Call) and ast.unparse(node.func) in DANGEROUS:
                yield Offence(str(module.path), f"line {node.lineno} calls {ast.unparse(node.func)}")
        yield from _imported(module)


def _imported(module: Module) -> Iterator[Offence]:
    for node in ast.walk(module.tree):
        names = (
            [alias.name for alias in node.names]
            if isinstance(node, ast.Import)
            else [node.module or ""]
            if isinstance(node, ast.ImportFrom)
            else []
        )
        line = getattr(node, "lineno", 0)
        for name in names:
            if any(name == one or name.startswith(f"{one}.") for one in MODULES):
                yield Offence(str(module.path), f"line {line} imports {name}")


def test_nothing_of_a_plan_is_shown_as_rich_text() -> None:
    assert_none(rich(ROOT), excused=OWN_WORDS)


def test_each_exception_is_still_needed() -> None:
    assert not outlived(OWN_WORDS, rich(ROOT))


def test_nothing_in_a_file_can_be_run_or_fetched() -> None:
    assert_none(dangers(ROOT))


def test_rich_words_are_found(tmp_path: Path) -> None:
    source = """
label = QLabel(name)
class Mine(QLabel): ...
part.setToolTip(plan.name)
part.setToolTip(_("tip"))
part.setToolTip(as_is(name) if name else "")
part.setToolTip(_("of {name}").format(name=name))
QMessageBox.warning(self, _("t"), str(error))
QMessageBox.warning(self, _("t"), as_is(error))
QToolTip.showText(at, words)
label.setTextFormat(Qt.TextFormat.RichText)
"""
    tree = {"gardenplot/window/a.py": source, "gardenplot/plan/a.py": source}
    lines = [offence.what.split()[1] for offence in rich(write_tree(tmp_path, tree))]
    assert sorted(map(int, lines)) == [2, 3, 4, 7, 8, 10, 11]


def test_dangers_are_found(tmp_path: Path) -> None:
    source = """
import urllib.parse
import urllib.request
from subprocess import run
eval(text)
dialog.exec()
"""
    lines = [offence.what.split()[1] for offence in dangers(write_tree(tmp_path, {"gardenplot/a.py": source}))]
    assert sorted(map(int, lines)) == [3, 4, 5]
