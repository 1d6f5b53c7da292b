"""Questions and warnings before the window, with words that are shown as they are."""

from collections.abc import Sequence

from PySide6.QtWidgets import QMessageBox, QWidget

from gardenplot.window.end_buttons import make_strong
from gardenplot.window.plain import as_is


def warn(parent: QWidget, title: str, words: str) -> None:
    """Say what went wrong, and wait until it is read."""
    QMessageBox.warning(parent, title, as_is(words))


def choose(parent: QWidget, title: str, words: str, choices: Sequence[str]) -> int | None:
    """Ask which of some ways to go, the first of which is the usual one; None where it is given up."""
    box = QMessageBox(QMessageBox.Icon.Question, title, as_is(words), QMessageBox.StandardButton.NoButton, parent)
    buttons = [box.addButton(words, QMessageBox.ButtonRole.AcceptRole) for words in choices]
    make_strong(buttons[0])
    box.setEscapeButton(box.addButton(QMessageBox.StandardButton.Cancel))
    box.setDefaultButton(buttons[0])
    box.exec()
    pressed = box.clickedButton()
    return next((number for number, button in enumerate(buttons) if button is pressed), None)


def is_sure(parent: QWidget, title: str, words: str, does: str) -> bool:
    """Ask before what cannot be taken back: whoever presses Enter without reading gives it up."""
    cancel = QMessageBox.StandardButton.Cancel
    box = QMessageBox(QMessageBox.Icon.Question, title, as_is(words), cancel, parent)
    button = box.addButton(does, QMessageBox.ButtonRole.AcceptRole)
    box.setDefaultButton(cancel)
    box.exec()
    return box.clickedButton() is button


def ask_to_save(parent: QWidget, title: str, words: str) -> QMessageBox.StandardButton:
    """Ask what to do with changes: Save, which is the usual way, Discard, or Cancel, which stays."""
    button = QMessageBox.StandardButton
    box = QMessageBox(
        QMessageBox.Icon.Question, title, as_is(words), button.Save | button.Discard | button.Cancel, parent
    )
    box.setDefaultButton(button.Save)
    make_strong(box.button(button.Save))
    box.exec()
    return box.standardButton(box.clickedButton())
