"""What ends a dialog stands in one order everywhere, and Enter presses what has the keyboard."""

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QMessageBox, QPushButton, QWidget

from gardenplot.sheets.choices import Kind
from gardenplot.window.fill_dialog import FillDialog
from gardenplot.window.main import MainWindow
from gardenplot.window.preview import Preview
from gardenplot.window.prints import print_of
from gardenplot.window.questions import ask_to_save, choose
from tests.window.walk import DIALOGS, opened, settle

ONLY_CLOSED = {"keys", "working"}
"""Dialogs that ask for nothing."""


@pytest.mark.parametrize("name", DIALOGS)
def test_the_button_that_accepts_is_strong_and_stands_at_the_end(
    host: MainWindow, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    dialog = opened(host, name, monkeypatch.setattr)
    foot = lowest(dialog)
    strong = [button for button in foot if button.property("strong")]
    assert strong == ([] if name in ONLY_CLOSED else [foot[-1]]), [button.text() for button in foot]
    defaults = [button for button in foot if button.isDefault()]
    assert defaults in ([], foot[-1:]), [button.text() for button in defaults]
    dialog.close()


def lowest(shown: QWidget) -> list[QPushButton]:
    """The buttons in the lowest line of a dialog, from left to right."""
    found = {one: one.mapTo(shown, QPoint(0, 0)) for one in shown.findChildren(QPushButton) if one.isVisible()}
    low = max(at.y() for at in found.values())
    return sorted((one for one, at in found.items() if low - at.y() < one.height()), key=lambda one: found[one].x())


@pytest.mark.parametrize("kind", ["changes", "choice"])
def test_a_question_has_its_buttons_in_the_same_order(
    window: MainWindow, kind: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: list[list[str]] = []

    def look(box: QMessageBox) -> int:
        box.show()
        settle(box)
        foot = lowest(box)
        seen.append([button.text() for button in foot])
        assert [button.property("strong") for button in foot] == [None] * (len(foot) - 1) + [True]
        assert foot[-1].isDefault()
        box.activateWindow()
        foot[0].setFocus()
        for button in (*foot[1:], foot[0]):
            QTest.keyClick(box, Qt.Key.Key_Tab)
            assert box.focusWidget() is button
        foot[-1].click()
        return 0

    monkeypatch.setattr(QMessageBox, "exec", look)
    if kind == "changes":
        assert ask_to_save(window, "Changes", "Not saved.") == QMessageBox.StandardButton.Save
        assert seen == [["Discard", "Cancel", "Save"]]
    else:
        assert choose(window, "Sure", "Really?", ("Throw away",)) == 0
        assert seen == [["Cancel", "Throw away"]]


def test_enter_on_cancel_does_not_fill(window: MainWindow) -> None:
    dialog = FillDialog(window.document, window.canvas.stage, window)
    dialog.show()
    dialog.leave.setFocus()
    QTest.keyClick(dialog.leave, Qt.Key.Key_Return)
    assert not dialog.isVisible()
    assert dialog.filling is None
    assert not dialog.stop.isVisible()


def test_enter_keeps_a_sheet_and_what_was_kept_is_said(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_asked: (str(tmp_path / "sill.pdf"), ""))
    shown = Preview(window.document.plan, "Upper Sill", print_of(Kind.BEDS, "b2"), window)
    shown.show()
    assert shown.focusWidget() is shown.keep
    QTest.keyClick(shown.keep, Qt.Key.Key_Return)
    assert (tmp_path / "sill.pdf").read_bytes() == shown.sheets.pdf
    assert shown.caution.text() == f"{print_of(Kind.BEDS).caution} · kept as sill.pdf"
    shown.close()
    shown.deleteLater()
