"""Every word that reaches screen or paper can be translated."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from tests.rules.source_tree import ROOT, Module, Offence, assert_none, modules, write_tree

SPEAKING_ROOMS = frozenset({"window", "sheets", "drawing"})

SHOWS_TEXT = frozenset(
    [
        "setText", "setWindowTitle", "setTitle", "setToolTip", "setStatusTip", "setWhatsThis",
        "setPlaceholderText", "setSpecialValueText", "setAccessibleName", "setAccessibleDescription",
        "setInformativeText", "setDetailedText", "setLabelText", "setButtonText", "setTabText",
        "setHeaderData", "setHeaderLabels", "setHorizontalHeaderLabels", "setVerticalHeaderLabels",
        "showMessage", "addAction", "addMenu", "addTab", "addItem", "addItems", "addRow", "addButton",
        "addToolBar", "drawText", "QLabel", "PlainLabel", "QPushButton", "QToolButton", "QCheckBox", "QRadioButton",
        "QGroupBox", "QAction", "QMenu", "QDockWidget", "QToolBar", "QMessageBox", "QTableWidgetItem",
        "QTreeWidgetItem", "QListWidgetItem", "QStandardItem", "drawString", "drawCentredString",
        "drawRightString", "Paragraph",
    ]
)  # fmt: skip
"""Functions and methods of Qt, reportlab and this program that put their text before a person."""

NOT_SHOWN = frozenset({"objectName", "styleSheet", "shortcut", "style"})
"""Keyword arguments of these whose text nobody reads."""

TRANSLATES = frozenset({"_", "ngettext"})

# What stands for a value inside an f-string: no letter, so that only written words are seen.
_HOLE = "\0"
_MARKUP = re.compile(r"<[^<>]*>|&\w+;")


def untranslated(root: Path) -> Iterator[Offence]:
    """Words written straight into a call that shows them, and f-strings that no catalogue can hold."""
    for module in modules(root):
        if module.room in SPEAKING_ROOMS:
            for line, text in sorted(_untranslated(module)):
                yield Offence(str(module.path), f"line {line} shows “{text}” untranslated")


def _untranslated(module: Module) -> Iterator[tuple[int, str]]:
    for call in (node for node in ast.walk(module.tree) if isinstance(node, ast.Call)):
        name = _called(call)
        if name in SHOWS_TEXT:
            shown = [each.value for each in call.keywords if each.arg not in NOT_SHOWN]
            written = [text for part in (*call.args, *shown) for text in _written(part)]
        elif name in TRANSLATES:
            written = [text for part in call.args if isinstance(part, ast.JoinedStr) for text in _written(part)]
        else:
            continue
        yield from ((call.lineno, text.replace(_HOLE, "…")) for text in written if _has_words(text))


def _called(call: ast.Call) -> str:
    match call.func:
        case ast.Name(id=name) | ast.Attribute(attr=name):
            return name
    return ""


def _written(node: ast.expr) -> Iterator[str]:
    """The literal texts that an expression may show as they are."""
    match node:
        case ast.Constant(value=str(text)):
            yield text
        case ast.JoinedStr(values=parts):
            yield "".join(str(part.value) if isinstance(part, ast.Constant) else _HOLE for part in parts)
        case ast.Call(func=ast.Attribute(value=ast.Constant(value=str(template)))):
            yield template
        case _:
            for part in _alternatives(node):
                yield from _written(part)


def _alternatives(node: ast.expr) -> list[ast.expr]:
    """The parts of an expression any of which may become its text."""
    match node:
        case ast.IfExp(body=first, orelse=second) | ast.BinOp(left=first, right=second):
            return [first, second]
        case ast.List(elts=parts) | ast.Tuple(elts=parts) | ast.BoolOp(values=parts):
            return parts
    return []


def _has_words(text: str) -> bool:
    return any(letter.isalpha() for letter in _MARKUP.sub("", text))


def test_every_word_shown_is_translated() -> None:
    assert_none(untranslated(ROOT))


def test_words_shown_without_translation_are_found(tmp_path: Path) -> None:
    source = """
label.setText("Bed")
QtWidgets.QLabel(f"{count} plants", parent)
menu.addAction(icon, "Undo")
QPushButton(text="Save")
table.setHorizontalHeaderLabels([_("Bed"), "Crop"])
label.setToolTip("On" if on else _("Off"))
label.setTitle(_("Bed") + " of " + name)
label.setStatusTip("{} beds".format(count))
label.setText(_(f"Bed {name}"))
Paragraph(f"<b>{name}</b> sown", style)
label.setWindowTitle("%s beds" % count)
"""
    write_tree(tmp_path, {f"gardenplot/{room}/a.py": source for room in ("window", "plan")})
    found = list(untranslated(tmp_path))
    assert {offence.where for offence in found} == {"gardenplot/window/a.py"}
    assert [offence.what.split("“")[1].split("”")[0] for offence in found] == [
        "Bed",
        "… plants",
        "Undo",
        "Save",
        "Crop",
        "On",
        " of ",
        "{} beds",
        "Bed …",
        "<b>…</b> sown",
        "%s beds",
    ]


def test_translated_words_and_signs_pass(tmp_path: Path) -> None:
    source = """
label.setText(_("Bed"))
label.setText("")
label.setText("—")
label.setText(f"{number} × {other}")
label.setText(ngettext("{n} plant", "{n} plants", n).format(n="many"))
label.setText(", ".join(names))
label.setObjectName("bed")
QPushButton(_("Save"), objectName="save")
Paragraph(f'<font size="{size}">{name}</font>&nbsp;', styles["body"])
table.setHorizontalHeaderLabels([_("Bed"), _("Crop")])
"""
    rooms = ("window", "sheets", "drawing")
    write_tree(tmp_path, {f"gardenplot/{room}/a.py": source for room in rooms})
    assert_none(untranslated(tmp_path))
