"""Names say what a thing is, docstrings say it in a sentence, and imports stand at the top."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from tests.rules.source_tree import (
    ROOT,
    Defined,
    Definition,
    Function,
    Module,
    Offence,
    assert_none,
    modules,
    outlived,
    write_tree,
)

EMPTY_WORDS = frozenset(
    [
        "manager", "helper", "util", "utils", "common", "base", "core", "handler", "service", "controller",
        "data", "info", "process", "get", "do",
    ]
)  # fmt: skip

QT_OVERRIDES = {
    "data": "a Qt model is asked for a cell by this name",
    "setData": "a Qt model takes an edited cell by this name",
    "headerData": "a Qt model is asked for a heading by this name",
    "mimeData": "Qt asks by this name for what is dragged",
    "dropMimeData": "a Qt model takes what is dropped by this name",
    "setEditorData": "a Qt delegate fills its editor by this name",
    "setModelData": "a Qt delegate hands back what was edited by this name",
}
"""Names that Qt gives, allowed in a class that derives from one of Qt's."""

LATE_IMPORTS: dict[str, str] = {}
"""The files that import inside functions on purpose, by path, and the reason."""

_WORD = re.compile(r"[A-Z]+(?![a-z])|[A-Z]?[a-z]+|\d+")
_CLOSING = r"[\"'”’)`]*"
_SENTENCE_END = re.compile(rf"[.!?]{_CLOSING}$")
_NEXT_SENTENCE = re.compile(rf"[.!?]{_CLOSING}\s+[A-Z]")


def empty_names(root: Path) -> Iterator[Offence]:
    """Modules, classes and functions with a word in their name that says nothing."""
    for module in modules(root):
        for word in empty_words(module.name):
            yield Offence(str(module.path), f"“{word}” says nothing")
        for each in module.defined:
            if not _is_given_by_qt(each):
                yield from (Offence(each.where, f"“{word}” says nothing") for word in empty_words(each.node.name))


def echoing_modules(root: Path) -> Iterator[Offence]:
    """Modules that repeat the name of the package they stand in."""
    for module in modules(root):
        package = module.path.parent.name
        if module.path.stem != "__init__" and set(words(package)) <= set(words(module.path.stem)):
            yield Offence(str(module.path), f"repeats “{package}”")


def modules_without_a_sentence(root: Path) -> Iterator[Offence]:
    """Modules that do not open with a docstring whose first paragraph is one sentence."""
    for module in modules(root):
        docstring = ast.get_docstring(module.tree)
        if not docstring:
            yield Offence(str(module.path), "has no docstring")
        elif not is_one_sentence(docstring.split("\n\n")[0]):
            yield Offence(str(module.path), "does not open with one sentence")


def unexplained(root: Path) -> Iterator[Offence]:
    """Public classes, functions and methods outside `window` that have no docstring."""
    for module in modules(root):
        for each in module.defined:
            if module.room != "window" and _is_public(each) and not _is_explained(each.node):
                yield Offence(each.where, "has no docstring")


def late_imports(root: Path) -> Iterator[Offence]:
    """Files with imports inside functions."""
    for module in modules(root):
        for line in sorted(_late_import_lines(module)):
            yield Offence(str(module.path), f"line {line} imports inside a function")


def words(name: str) -> list[str]:
    """The words of a name in small letters: `drop_mimeData` gives drop, mime, data."""
    return [word.lower() for word in _WORD.findall(name)]


def empty_words(name: str) -> list[str]:
    """The words of a name, in the singular or plural, that say nothing; Python's own names are not ours."""
    if name.startswith("__") and name.endswith("__"):
        return []
    return [word for word in words(name) if {word, word.removesuffix("s")} & EMPTY_WORDS]


def is_one_sentence(paragraph: str) -> bool:
    """Whether a paragraph ends like a sentence and no second one begins in it."""
    return bool(_SENTENCE_END.search(paragraph)) and not _NEXT_SENTENCE.search(paragraph)


def _is_given_by_qt(each: Defined) -> bool:
    return each.is_method and each.node.name in QT_OVERRIDES and _derives_from_qt(each.around[-1])


def _derives_from_qt(owner: Definition) -> bool:
    bases = owner.bases if isinstance(owner, ast.ClassDef) else []
    return any(re.match(r"Q[A-Z]", ast.unparse(base).rpartition(".")[2]) for base in bases)


def _is_public(each: Defined) -> bool:
    inside_classes = all(isinstance(outer, ast.ClassDef) for outer in each.around)
    return inside_classes and not any(one.name.startswith("_") for one in (*each.around, each.node))


def _is_explained(node: Definition) -> bool:
    # `def id(self) -> str: ...` in a protocol or an overload is all there is to say.
    is_stub = isinstance(node, Function) and ast.unparse(node.body[0]) == "..."
    return is_stub or bool(ast.get_docstring(node))


def _late_import_lines(module: Module) -> set[int]:
    return {
        node.lineno
        for each in module.defined
        if isinstance(each.node, Function)
        for node in ast.walk(each.node)
        if isinstance(node, ast.Import | ast.ImportFrom)
    }


def test_no_name_holds_an_empty_word() -> None:
    assert_none(empty_names(ROOT))


def test_no_module_repeats_its_package() -> None:
    assert_none(echoing_modules(ROOT))


def test_every_module_opens_with_one_sentence() -> None:
    assert_none(modules_without_a_sentence(ROOT))


def test_everything_public_outside_the_window_has_a_docstring() -> None:
    assert_none(unexplained(ROOT))


def test_no_function_imports() -> None:
    assert_none(late_imports(ROOT), excused=LATE_IMPORTS)


def test_each_late_import_is_still_needed() -> None:
    assert not outlived(LATE_IMPORTS, late_imports(ROOT))


def test_empty_words_are_found_in_every_kind_of_name(tmp_path: Path) -> None:
    source = """
class PDFHandler:
    def __get__(self): ...
    def readBaseLine(self):
        def do_it(): ...
        async def database(): ...
def undo(): ...
class BedModel(QtCore.QAbstractListModel):
    def data(self): ...
    def plantData(self): ...
class Bed:
    def data(self): ...
"""
    tree = {"gardenplot/plan/file_utils.py": source, "gardenplot/helpers/__init__.py": "", "gardenplot/core.py": ""}
    assert [offence.where for offence in empty_names(write_tree(tmp_path, tree))] == [
        "gardenplot/core.py",
        "gardenplot/helpers/__init__.py",
        "gardenplot/plan/file_utils.py",
        "gardenplot/plan/file_utils.py::PDFHandler",
        "gardenplot/plan/file_utils.py::PDFHandler.readBaseLine",
        "gardenplot/plan/file_utils.py::PDFHandler.readBaseLine.do_it",
        "gardenplot/plan/file_utils.py::BedModel.plantData",
        "gardenplot/plan/file_utils.py::Bed.data",
    ]


def test_a_module_that_repeats_its_package_is_found(tmp_path: Path) -> None:
    names = ["plan/__init__.py", "plan/plan.py", "plan/plan_file.py", "plan/planting.py", "plan/file.py"]
    write_tree(tmp_path, {f"gardenplot/{name}": "" for name in names})
    assert [offence.where for offence in echoing_modules(tmp_path)] == [
        "gardenplot/plan/plan.py",
        "gardenplot/plan/plan_file.py",
    ]


def test_a_module_that_does_not_open_with_one_sentence_is_found(tmp_path: Path) -> None:
    good = {
        "gardenplot/a.py": '"""One sentence, e.g. 2.5 m,\nover two lines."""',
        "gardenplot/b.py": '"""One sentence.\n\nMore. And more."""',
    }
    bad = {
        "gardenplot/c.py": "",
        "gardenplot/d.py": '"""Two. Sentences."""',
        "gardenplot/e.py": '"""No end"""',
        "gardenplot/f.py": 'import re\n"""Too late."""',
    }
    write_tree(tmp_path, good | bad)
    assert [offence.where for offence in modules_without_a_sentence(tmp_path)] == list(bad)


def test_what_is_public_and_has_no_docstring_is_found(tmp_path: Path) -> None:
    source = """
def bare():
    def inner(): return 1
    return inner
def _private(): return 1
class _Private:
    def method(self): return 1
class Bare:
    def __str__(self): return ""
    def method(self): return 1
    def stub(self): ...
class Told:
    '''A class.'''
    def method(self):
        '''A method.'''
"""
    write_tree(tmp_path, {"gardenplot/plan/a.py": source, "gardenplot/window/a.py": source})
    assert [offence.where for offence in unexplained(tmp_path)] == [
        "gardenplot/plan/a.py::bare",
        "gardenplot/plan/a.py::Bare",
        "gardenplot/plan/a.py::Bare.method",
    ]


def test_an_import_inside_a_function_is_found(tmp_path: Path) -> None:
    source = """
import re
if TYPE_CHECKING:
    import ast
class Bed:
    import os
    def draw(self):
        def inner():
            import numpy
        if self:
            from a import b
"""
    write_tree(tmp_path, {"gardenplot/a.py": source})
    assert [offence.what for offence in late_imports(tmp_path)] == [
        "line 9 imports inside a function",
        "line 11 imports inside a function",
    ]
