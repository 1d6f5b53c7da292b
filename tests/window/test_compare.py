"""Layouts compared in the window: opened by key and by button, worked by keys and by mouse, taken in one step."""

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given, settings
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from gardenplot.drawing.compare_words import candidate_name, step_name
from gardenplot.gestures.kept import layout_in
from gardenplot.layout.candidate import Reason
from gardenplot.layout.positions import positions
from gardenplot.layout.proposals import proposals
from gardenplot.plan import Pattern, Plan, planting_of
from gardenplot.window.candidate_column import CandidateColumn, heights_of
from gardenplot.window.compare_dialog import CompareDialog
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.reasons import CHOOSE_PLANTING
from gardenplot.window.theme import dress
from tests.drawing.hand_worked import hand_worked
from tests.plans import metric_plan, plans
from tests.window.shared_window import window
from tests.window.walk import settle, text_of

__all__ = ["window"]

Key, Keys = Qt.Key, Qt.KeyboardModifier
Works = Callable[[CompareDialog], None]


class Working:
    """Works with the dialog that is about to open, and gives it up where it stays open."""

    def __init__(self, works: Works) -> None:
        self._works = works
        self.seen = False
        QTimer.singleShot(0, self._work)

    def _work(self) -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, CompareDialog)
        self.seen = True
        try:
            self._works(dialog)
        finally:
            if dialog.isVisible():
                dialog.reject()


def press(dialog: CompareDialog, *keys: Qt.Key) -> None:
    """Press keys where the keyboard is in the dialog."""
    for key in keys:
        QTest.keyClick(dialog.focusWidget() or dialog, key)


def column_for(dialog: CompareDialog, pattern: Pattern) -> CandidateColumn:
    """The first column of a pattern."""
    return next(one for one in dialog.columns.columns if one.shown.candidate.layout.grid.pattern is pattern)


def retype(dialog: CompareDialog, field: str, text: str) -> None:
    """Type another text into a field, without finishing it."""
    line = dialog.form.fields[field]
    line.setFocus()
    line.selectAll()
    QTest.keyClicks(line, text)


@pytest.fixture
def opened(window: MainWindow) -> Callable[[Works], None]:
    """Open the dialog for the first planting by its key, and work with it."""

    def open_and(works: Works) -> None:
        window.sight.select("b1", "p1")
        working = Working(works)
        window.plantings.compare_layouts()
        assert working.seen

    return open_and


def test_ctrl_l_opens_it_and_an_arrow_and_enter_take_the_next_column_in_one_step(
    window: MainWindow, document: Document, qtbot: QtBot
) -> None:
    before = document.plan
    window.sight.select("b1", "p1")
    names: list[str] = []
    places = []

    def take_second(dialog: CompareDialog) -> None:
        press(dialog, Key.Key_Right)
        names.append(candidate_name(dialog.chosen))
        places.append(positions(dialog.chosen.layout))
        press(dialog, Key.Key_Return)

    working = Working(take_second)
    qtbot.waitUntil(window.isActiveWindow)
    QTest.keyClick(window.canvas, Key.Key_L, Keys.ControlModifier)
    assert working.seen
    assert planting_of(document.plan, "p1").pattern is Pattern.STAGGERED
    assert np.array_equal(positions(layout_in(document.plan, "p1")), places[0])
    assert document.stack.count() == 1
    assert document.stack.undoText() == f"Pak choi: {names[0]}" == "Pak choi: 3 rows staggered"
    document.stack.undo()
    assert document.plan is before


def test_the_button_of_the_panel_opens_it_and_a_double_click_takes(window: MainWindow, document: Document) -> None:
    window.sight.select("b1", "p1")

    def double_click(dialog: CompareDialog) -> None:
        QTest.mouseDClick(column_for(dialog, Pattern.TRIANGULAR), Qt.MouseButton.LeftButton)
        assert not dialog.isVisible()

    working = Working(double_click)
    QTest.mouseClick(window.inspector.planting.compare, Qt.MouseButton.LeftButton)
    assert working.seen
    assert planting_of(document.plan, "p1").pattern is Pattern.TRIANGULAR


def test_a_click_chooses_and_the_button_takes(opened: Callable[[Works], None], document: Document) -> None:
    def click(dialog: CompareDialog) -> None:
        column = column_for(dialog, Pattern.TWIN)
        QTest.mouseClick(column, Qt.MouseButton.LeftButton, Keys.NoModifier, QPoint(20, 20))
        assert dialog.chosen is column.shown.candidate
        QTest.mouseClick(dialog.take, Qt.MouseButton.LeftButton)

    opened(click)
    assert planting_of(document.plan, "p1").pattern is Pattern.TWIN


def test_escape_and_cancel_and_taking_what_is_there_change_nothing(
    opened: Callable[[Works], None], document: Document
) -> None:
    plan = document.plan
    opened(lambda dialog: press(dialog, Key.Key_Right, Key.Key_Escape))
    opened(lambda dialog: QTest.mouseClick(dialog.cancel, Qt.MouseButton.LeftButton))
    opened(lambda dialog: press(dialog, Key.Key_Return))
    assert document.plan is plan
    assert document.stack.count() == 0


def test_home_and_end_go_to_the_outer_columns_and_arrows_stop_there(opened: Callable[[Works], None]) -> None:
    def walk(dialog: CompareDialog) -> None:
        last = len(dialog.columns.columns) - 1
        chosen = []
        for key in (Key.Key_Left, Key.Key_End, Key.Key_Right, Key.Key_Left, Key.Key_Home):
            press(dialog, key)
            chosen.append(dialog.columns.chosen_number)
        assert chosen == [0, last, last, last - 1, 0]

    opened(walk)


def test_a_candidate_is_typed_from_the_chosen_one_and_taken(
    opened: Callable[[Works], None], document: Document
) -> None:
    def type_it(dialog: CompareDialog) -> None:
        count = len(dialog.columns.columns)
        retype(dialog, "in_row", "20 cm")
        press(dialog, Key.Key_Return)
        assert len(dialog.columns.columns) == count + 1
        assert dialog.chosen.reason is Reason.TYPED
        assert dialog.columns.chosen_number == count
        assert dialog.form.fields["in_row"].text() == "20 cm"
        assert isinstance(dialog.focusWidget(), CandidateColumn)
        press(dialog, Key.Key_Return)

    opened(type_it)
    planting = planting_of(document.plan, "p1")
    assert (str(planting.in_row), planting.rows, planting.row_spacing, planting.edge) == ("20 cm", None, (), None)
    assert document.stack.count() == 1


def test_pattern_and_direction_are_chosen_by_keys(opened: Callable[[Works], None]) -> None:
    def choose(dialog: CompareDialog) -> None:
        dialog.form.pattern.setFocus()
        press(dialog, Key.Key_Down)
        dialog.form.direction.setFocus()
        press(dialog, Key.Key_Down)
        press(dialog, Key.Key_Return)
        grid = dialog.chosen.layout.grid
        assert (grid.pattern, grid.runs_across) == (Pattern.STAGGERED, True)

    opened(choose)


def test_rows_cannot_run_across_where_the_pattern_does_not_turn(opened: Callable[[Works], None]) -> None:
    def choose(dialog: CompareDialog) -> None:
        press_on = dialog.form.pattern
        press_on.setFocus()
        QTest.keyClicks(press_on, "tw")
        press_on.activated.emit(press_on.currentIndex())
        assert press_on.currentData() == Pattern.TWIN
        assert not dialog.form.direction.isEnabled()

    opened(choose)


@pytest.mark.parametrize(
    ("field", "text", "told"),
    [
        ("in_row", "hand wide", "“hand wide” is no length"),
        ("rows", "some", "“some” is no whole number"),
        ("row_spacing", "45 cm to 30 cm", "is more than the most"),
        ("edge", "-5 cm", "is less than nothing"),
        ("in_row", "1 mm", "is a size a slip"),
    ],
)
def test_a_wrong_text_is_told_at_its_field_and_no_column_is_added(
    opened: Callable[[Works], None], document: Document, field: str, text: str, told: str
) -> None:
    plan = document.plan

    def type_it(dialog: CompareDialog) -> None:
        count = len(dialog.columns.columns)
        retype(dialog, field, text)
        press(dialog, Key.Key_Return)
        line = dialog.form.fields[field]
        assert told in line.complaint.text()
        assert line.complaint.isVisible()
        assert len(dialog.columns.columns) == count
        assert dialog.focusWidget() is line
        press(dialog, Key.Key_Escape)
        assert dialog.isVisible()
        assert not line.complaint.isVisible()

    opened(type_it)
    assert document.plan is plan


def test_what_stands_in_the_same_places_is_shown_where_it_is(opened: Callable[[Works], None]) -> None:
    def type_it(dialog: CompareDialog) -> None:
        count = len(dialog.columns.columns)
        QTest.mouseClick(dialog.form.add, Qt.MouseButton.LeftButton)
        assert len(dialog.columns.columns) == count
        assert dialog.columns.chosen_number == 0
        assert "very places" in dialog.form.complaint.text()

    opened(type_it)


def test_delete_takes_a_column_away_but_never_the_first(opened: Callable[[Works], None]) -> None:
    def delete(dialog: CompareDialog) -> None:
        names = [column.shown.name for column in dialog.columns.columns]
        press(dialog, Key.Key_Delete)
        assert not dialog.away.isEnabled()
        press(dialog, Key.Key_Right, Key.Key_Delete)
        QTest.mouseClick(dialog.away, Qt.MouseButton.LeftButton)
        assert [column.shown.name for column in dialog.columns.columns] == [names[0], *names[3:]]
        assert dialog.columns.chosen_number == 1

    opened(delete)


def test_without_a_planting_it_says_what_to_choose(window: MainWindow) -> None:
    window.sight.select("b1")
    window.plantings.compare_layouts()
    assert window.statusBar().currentMessage() == CHOOSE_PLANTING


def test_the_columns_scroll_and_their_headings_stay(opened: Callable[[Works], None]) -> None:
    def scroll(dialog: CompareDialog) -> None:
        dialog.resize(600, 500)
        QGuiApplication.processEvents()
        at = dialog.columns.headings.mapTo(dialog, QPoint(0, 0))
        press(dialog, Key.Key_End)
        assert dialog.columns.horizontalScrollBar().value() > 0
        assert dialog.columns.headings.mapTo(dialog, QPoint(0, 0)) == at
        assert _in_sight(dialog.columns.columns[-1], dialog.columns.viewport())
        down = dialog.columns.verticalScrollBar()
        down.setValue(40)
        assert dialog.columns.headings.y() == -down.value() < 0

    opened(scroll)


def _in_sight(part: QWidget, around: QWidget) -> bool:
    left = part.mapTo(around, QPoint(0, 0)).x()
    return left >= 0 and left + part.width() <= around.width()


def test_a_column_says_all_of_itself_to_those_who_listen(window: MainWindow, document: Document) -> None:
    document.start(hand_worked("s3"))
    dialog = CompareDialog(document.plan, "p1", window)
    says = dialog.columns.columns[0].accessibleName()
    for words in ("3 rows straight, cut first", "as it is", "Plants 207", "23 in the way"):
        assert words in says
    praised = [column.shown.name for column in dialog.columns.columns if column.shown.best]
    assert praised == ["3 rows straight, leave the places empty"]
    dialog.deleteLater()


def test_all_pictures_of_a_comparison_are_to_the_same_scale(window: MainWindow, document: Document) -> None:
    dialog = CompareDialog(document.plan, "p1", window)
    sizes = {(column.width(), column.height(), column.shown.figure.width) for column in dialog.columns.columns}
    assert len(sizes) == 1
    dialog.deleteLater()


@settings(max_examples=30)
@given(plans(least_plantings=1))
def test_any_candidate_taken_and_undone_gives_the_very_plan(plan: Plan) -> None:
    planting = plan.plantings[0].id
    document = Document()
    document.start(plan)
    for one in proposals(plan, planting):
        assert document.change(step_name(one), one.plan) == (one.plan != plan)
        assert np.array_equal(positions(layout_in(document.plan, planting)), positions(one.layout))
        if document.stack.canUndo():
            document.stack.undo()
        assert document.plan is plan


def test_with_text_twice_as_large_the_drawings_keep_their_room_and_the_fields_come_when_asked_for(
    dressed: QApplication,
) -> None:
    with text_of(dressed, 2.0, dress):
        dialog = CompareDialog(metric_plan(), "p1")
        dialog.show()
        settle(dialog)
        drawn = next(one for one in dialog.columns.columns if one.isChecked())
        heights = heights_of([one.shown for one in dialog.columns.columns])
        assert dialog.columns.viewport().height() >= heights.head + heights.picture
        assert drawn.width() <= dialog.columns.viewport().width()
        before = len(dialog.columns.columns)
        dialog.form.add.click()
        assert dialog.form.pattern.hasFocus()
        retype(dialog, "in_row", "31 cm")
        dialog.form.add.click()
        assert len(dialog.columns.columns) == before + 1
        assert not dialog.form.fields["in_row"].isVisible()
        dialog.close()
