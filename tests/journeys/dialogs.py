"""What a person does with the dialogs that ask for something."""

import time
from collections.abc import Mapping
from pathlib import Path

from PySide6.QtWidgets import QApplication, QComboBox, QDialog, QFileDialog, QLineEdit, QWidget

from gardenplot.window.forms import AskDialog
from gardenplot.window.preview import Preview
from tests.journeys.person import Person

_OFFERED = 4.0
"""Seconds in which a dialog that takes a name has long closed."""


def dialog(person: Person, title: str) -> QDialog:
    """The dialog of that title, once it is there."""
    person.expect(_title, title)
    found = person.see(QApplication.activeModalWidget)
    assert isinstance(found, QDialog)
    return found


def fill(person: Person, title: str, texts: Mapping[str, str]) -> None:
    """Go through a dialog's fields with Tab, type what is given for them by name, and accept."""
    asking = dialog(person, title)
    assert isinstance(asking, AskDialog)
    assert texts.keys() <= asking.fields.keys()
    for number, (name, field) in enumerate(asking.fields.items()):
        if person.see(field.isHidden):
            assert name not in texts, f"{name} is not asked for"
            continue
        if number:
            person.press("Tab")
        person.wait_until(field.hasFocus, f"the keyboard in “{name}” of “{title}”")
        if name in texts:
            _enter(person, field, texts[name])
    person.press("Return")
    _expect_end(person, title)


def name_file(person: Person, title: str, path: Path) -> None:
    """Type a file's name into the dialog that asks for one, again where what stands there is not what was typed."""
    asking = dialog(person, title)
    assert isinstance(asking, QFileDialog)
    line = person.see(lambda: asking.findChild(QLineEdit, "fileNameEdit"))
    assert isinstance(line, QLineEdit)
    for _typing in range(3):
        person.press("ctrl+a")
        person.type(str(path))
        if _stands(person, line, str(path)):
            break
    person.expect(line.text, str(path))
    # The names that the dialog offers while one is typed may take the first, and on a slow machine another.
    for _press in range(3):
        person.press("Return")
        until = time.monotonic() + _OFFERED
        while person.see(_title) == title and time.monotonic() < until:
            time.sleep(0.05)
        if person.see(_title) != title:
            break
    _expect_end(person, title)


def _stands(person: Person, line: QLineEdit, text: str) -> bool:
    """Whether a text stands in a line as soon as the window has taken all keys."""
    until = time.monotonic() + _OFFERED
    while person.see(line.text) != text and time.monotonic() < until:
        time.sleep(0.05)
    return person.see(line.text) == text


def keep_sheets(person: Person, name: str, path: Path, paper: str) -> None:
    """Open the bed sheets of the plan of that name, choose the paper, keep them as a PDF and close them."""
    title = f"Bed sheets: {name}"
    person.press("ctrl+p")
    preview = dialog(person, title)
    assert isinstance(preview, Preview)
    person.click(preview.paper)
    _choose(person, preview.paper, paper)
    person.press("Return")
    person.click(preview.keep)
    name_file(person, "Keep as PDF", path)
    person.press("Escape")
    _expect_end(person, title)


def _title() -> str:
    widget = QApplication.activeModalWidget()
    return widget.windowTitle() if widget is not None else ""


def _expect_end(person: Person, title: str) -> None:
    person.wait_until(lambda: _title() != title, f"the end of “{title}”")


def _enter(person: Person, field: QWidget, text: str) -> None:
    if isinstance(field, QComboBox):
        _choose(person, field, text)
        person.expect(field.currentText, text)
    elif isinstance(field, QLineEdit):
        person.type(text)
        person.expect(field.text, text)


def _choose(person: Person, box: QComboBox, text: str) -> None:
    """Go up or down to an entry of a choice."""
    down = person.see(lambda: box.findText(text) - box.currentIndex())
    if down:
        person.press(*["Down" if down > 0 else "Up"] * abs(down))
