"""What is printed is chosen beside the pages, by mouse and key, and the pages follow."""

from collections.abc import Iterator
from pathlib import Path

import pypdfium2
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QMessageBox

from gardenplot.files import sample
from gardenplot.plan.file import read_plan
from gardenplot.sheets.choices import NAMES, Kind
from gardenplot.units import CM
from gardenplot.window.main import MainWindow
from gardenplot.window.preview import Preview
from gardenplot.window.prints import print_of, print_of_all
from tests.drawing.hand_worked import hand_worked
from tests.sheets.pdf_pages import bookmarks_of, pages_of
from tests.window.shared_window import window

__all__ = ["window"]


@pytest.fixture
def preview(window: MainWindow) -> Iterator[Preview]:
    """The bed sheet of a hand-worked bed."""
    shown = Preview(hand_worked("s1"), "Rook Hollow", print_of(Kind.BEDS), window)
    shown.show()
    yield shown
    shown.close()
    shown.deleteLater()


def tick(preview: Preview, kind: Kind) -> None:
    """Click on the box of a kind."""
    box = preview.choices.kinds[kind]
    QTest.mouseClick(box, Qt.MouseButton.LeftButton, pos=QPoint(8, box.height() // 2))


def chapters(preview: Preview) -> list[str]:
    """The bookmarks of what is shown that name a kind."""
    return [words for words, _page in bookmarks_of(preview.sheets.pdf) if words in NAMES.values()]


def test_a_kind_ticked_joins_the_pages_and_unticked_leaves_them(preview: Preview) -> None:
    assert not chapters(preview)
    tick(preview, Kind.DATES)
    assert chapters(preview) == [NAMES[Kind.BEDS], NAMES[Kind.DATES]]
    assert "Sheets" in preview.windowTitle()
    assert preview.number.text() == f"page 1 of {len(pypdfium2.PdfDocument(preview.sheets.pdf))}"
    tick(preview, Kind.BEDS)
    assert "Dates by week" in preview.windowTitle()
    assert "Pak choi" in pages_of(preview.sheets.pdf)[0].text


def test_nothing_ticked_is_told_and_cannot_be_printed_or_kept(preview: Preview) -> None:
    tick(preview, Kind.BEDS)
    assert "nothing is chosen" in preview.picture.text()
    assert not any(button.isEnabled() for button in (preview.print, preview.keep, preview.single, preview.after))
    tick(preview, Kind.BEDS)
    assert preview.print.isEnabled()
    assert not preview.picture.pixmap().isNull()


def test_only_the_beds_that_are_ticked_are_printed(window: MainWindow) -> None:
    plan = read_plan(sample("larch-bend.gardenplot")).plan
    shown = Preview(plan, "Rook Hollow", print_of(Kind.BEDS), window)
    shown.show()
    beds = shown.choices.beds
    beds.setFocus()
    beds.setCurrentRow(0)
    QTest.keyClick(beds, Qt.Key.Key_Space)
    assert set(shown.sheets.first_page) == {bed.id for bed in plan.beds[1:]}
    shown.close()


def test_the_scale_chosen_is_that_of_the_drawing(preview: Preview) -> None:
    tick(preview, Kind.BEDS)
    tick(preview, Kind.DRAWING)
    scale = preview.choices.scale
    scale.setCurrentIndex(scale.findData(20))
    scale.activated.emit(scale.currentIndex())
    assert all("To scale 1 : 20" in page.text for page in pages_of(preview.sheets.pdf))


def test_strings_beside_the_rows_move_the_figures_and_are_remembered(window: MainWindow, preview: Preview) -> None:
    assert "strings" not in pages_of(preview.sheets.pdf)[0].text
    string = preview.choices.string
    QTest.keyClick(string, Qt.Key.Key_Down)
    assert string.currentData() == 3 * CM
    assert "strings 3 cm left of the rows" in pages_of(preview.sheets.pdf)[0].text
    again = Preview(hand_worked("s1"), "Rook Hollow", print_of(Kind.BEDS), window)
    assert again.choices.string.currentData() == 3 * CM
    assert "strings 3 cm left" in pages_of(again.sheets.pdf)[0].text
    again.deleteLater()


def test_what_there_is_nothing_of_is_said(window: MainWindow) -> None:
    plan = hand_worked("s6")
    shown = Preview(plan, "Rook Hollow", print_of_all(), window)
    left_out = [NAMES[kind] for kind in shown.sheets.left_out]
    assert left_out
    assert shown.caution.text() == f"Nothing to print of: {', '.join(left_out)}"
    shown.deleteLater()


def test_kept_one_by_one_each_kind_has_its_file(
    preview: Preview, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    folder = tmp_path / "sheets"
    folder.mkdir()
    assert not preview.single.isEnabled()
    tick(preview, Kind.DATES)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_asked: str(folder))
    preview.single.click()
    assert sorted(path.name for path in folder.iterdir()) == [
        "Rook Hollow bed sheets.pdf", "Rook Hollow dates by week.pdf",
    ]  # fmt: skip
    assert "Dates by week" in pages_of((folder / "Rook Hollow dates by week.pdf").read_bytes())[0].text


def test_a_folder_that_cannot_be_written_to_is_told(
    preview: Preview, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    told: list[str] = []
    tick(preview, Kind.DATES)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_asked: str(tmp_path / "no"))
    monkeypatch.setattr(QMessageBox, "warning", lambda _parent, _title, words: told.append(words))
    preview.single.click()
    assert "cannot be written" in told[0]


def test_the_action_shows_the_set_of_a_season(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    shown: list[list[str]] = []
    monkeypatch.setattr(Preview, "exec", lambda preview: shown.append(chapters(preview)))
    window.document.start(hand_worked("s1"))
    QTest.keySequence(window, "Ctrl+Shift+P")
    assert shown[0][0] == NAMES[Kind.BEDS]
    assert len(shown[0]) >= 3


def test_what_concerns_a_kind_is_shown_with_it_alone(preview: Preview) -> None:
    choices = preview.choices
    assert choices.string.isVisible()
    assert not any(field.isVisible() for field in (choices.scale, choices.board, choices.label, choices.labels_from))
    tick(preview, Kind.LABELS)
    assert choices.label.isVisible()
    assert choices.labels_from.isVisible()


def test_labels_are_of_the_size_chosen_or_typed_and_a_size_that_is_none_is_told(preview: Preview) -> None:
    tick(preview, Kind.BEDS)
    tick(preview, Kind.LABELS)
    label = preview.choices.label
    for typed, fits in (("70 x 37 mm, 3 x 8 on A4", True), ("soon", False), ("60 x 30 mm", True)):
        line = label.lineEdit()
        assert line is not None
        line.setFocus()
        line.selectAll()
        QTest.keyClicks(line, typed)
        QTest.keyClick(line, Qt.Key.Key_Return)
        assert preview.print.isEnabled() == fits
        assert (typed in preview.picture.text()) == (not fits)
    again = Preview(hand_worked("s1"), "Rook Hollow", print_of(Kind.LABELS), preview)
    assert again.choices.label.currentText() == "60 x 30 mm"
    again.deleteLater()


def test_a_longer_board_has_longer_strips(preview: Preview) -> None:
    tick(preview, Kind.BEDS)
    tick(preview, Kind.STRIPS)
    pages = len(pypdfium2.PdfDocument(preview.sheets.pdf))
    board = preview.choices.board
    board.setCurrentIndex(board.count() - 1)
    board.activated.emit(board.currentIndex())
    assert len(pypdfium2.PdfDocument(preview.sheets.pdf)) > pages


def test_labels_begin_at_the_first_free_one_and_one_that_a_sheet_has_not_is_told(preview: Preview) -> None:
    tick(preview, Kind.BEDS)
    tick(preview, Kind.LABELS)
    field = preview.choices.labels_from
    assert field.text() == "1"
    before = preview.sheets.pdf
    for typed, fits in (("3", True), ("900", False)):
        field.selectAll()
        QTest.keyClicks(field, typed)
        QTest.keyClick(field, Qt.Key.Key_Return)
        assert preview.print.isEnabled() == fits
    assert preview.sheets.pdf != before


def test_a_field_that_is_left_unchanged_makes_nothing_anew(preview: Preview) -> None:
    tick(preview, Kind.LABELS)
    made = preview.sheets
    preview.choices.labels_from.editingFinished.emit()
    assert preview.sheets is made
    tick(preview, Kind.LABELS)
    assert preview.sheets is not made
