"""Files, functions and classes stay small."""

import ast
from collections import Counter
from collections.abc import Callable
from itertools import chain
from pathlib import Path

import pytest

from tests.rules.source_tree import ROOT, Function, Offence, assert_none, modules, outlived, write_tree

EXCEPTIONS: dict[str, str] = {}
"""What is larger on purpose: "path" or "path::Qualified.name", and the reason."""

FILE_LINES = 400
FUNCTION_LINES = 40
CLASS_METHODS = 12


def long_files(root: Path) -> list[Offence]:
    """Files of more than 400 lines."""
    sizes = ((str(module.path), len(module.text.splitlines())) for module in modules(root))
    return [Offence(where, f"{size} lines") for where, size in sizes if size > FILE_LINES]


def long_functions(root: Path) -> list[Offence]:
    """Functions of more than 40 lines from `def` to the end, their docstring apart."""
    return [
        Offence(each.where, f"{code_lines(each.node)} lines of code")
        for module in modules(root)
        for each in module.defined
        if isinstance(each.node, Function) and code_lines(each.node) > FUNCTION_LINES
    ]


def large_classes(root: Path) -> list[Offence]:
    """Classes of more than 12 methods, properties and Qt's overridden events among them."""
    methods = Counter(
        each.where.rpartition(".")[0]
        for module in modules(root)
        for each in module.defined
        if each.is_method and isinstance(each.node, Function)
    )
    return [Offence(where, f"{count} methods") for where, count in methods.items() if count > CLASS_METHODS]


def code_lines(function: Function) -> int:
    """The lines of a function without its decorators and docstring."""
    has_docstring = ast.get_docstring(function, clean=False) is not None
    return _lines(function) - (_lines(function.body[0]) if has_docstring else 0)


def _lines(node: ast.stmt) -> int:
    return (node.end_lineno or node.lineno) - node.lineno + 1


RULES = (long_files, long_functions, large_classes)


@pytest.mark.parametrize("rule", RULES)
def test_nothing_grows_past_its_limit(rule: Callable[[Path], list[Offence]]) -> None:
    assert_none(rule(ROOT), excused=EXCEPTIONS)


def test_each_exception_is_still_needed() -> None:
    assert not outlived(EXCEPTIONS, chain.from_iterable(rule(ROOT) for rule in RULES))


def test_a_file_of_401_lines_is_found(tmp_path: Path) -> None:
    write_tree(tmp_path, {"gardenplot/a.py": "x = 1\n" * 400, "gardenplot/plan/b.py": "x = 1\n" * 401})
    assert [offence.where for offence in long_files(tmp_path)] == ["gardenplot/plan/b.py"]


def test_a_function_of_41_lines_is_found_wherever_it_stands(tmp_path: Path) -> None:
    fits = "@decorated(\n    'not counted',\n)\ndef fits():\n    '''Nor\n    this.'''\n" + "    x = 1\n" * 39
    grows = "class Bed:\n    async def grows(self):\n        '''Nor this.'''\n" + "        x = 1\n" * 40
    write_tree(tmp_path, {"gardenplot/a.py": fits + grows})
    assert long_functions(tmp_path) == [Offence("gardenplot/a.py::Bed.grows", "41 lines of code")]


def test_a_class_of_13_methods_is_found_and_its_inner_functions_are_not_counted(tmp_path: Path) -> None:
    small = "".join(f"    def m{n}(self):\n        def inner(): ...\n" for n in range(12))
    large = small + "    if True:\n        @property\n        def paintEvent(self): ...\n"
    write_tree(tmp_path, {"gardenplot/a.py": f"class Small:\n{small}\nclass Large:\n{large}"})
    assert large_classes(tmp_path) == [Offence("gardenplot/a.py::Large", "13 methods")]


def test_an_exception_excuses_its_place_and_must_be_removed_once_it_does_not() -> None:
    offence = Offence("gardenplot/a.py::Bed", "13 methods")
    assert_none([offence], excused={offence.where: "thirteen is lucky here"})
    with pytest.raises(AssertionError, match=r"a\.py::Bed: 13 methods"):
        assert_none([offence], excused={"gardenplot/a.py": "another place"})
    exceptions = {offence.where: "thirteen is lucky here", "gardenplot/b.py": "was long once"}
    assert outlived(exceptions, [offence]) == ["gardenplot/b.py"]
    assert outlived({offence.where: " "}, [offence]) == [offence.where]
