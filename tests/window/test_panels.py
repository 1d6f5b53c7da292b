"""What is selected, typed into the panels: right texts are edits, wrong ones are told at their field."""

import pytest
from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QScrollArea, QToolButton, QWidget
from pytestqt.qtbot import QtBot

from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.typed import PATTERN_FIELDS
from gardenplot.plan import Direction, Pattern, bed_of, planting_of
from gardenplot.plan.edits import change_planting, remove_bed, remove_planting
from gardenplot.units import CM, parse_length
from gardenplot.window.bed_panel import BedPanel
from gardenplot.window.document import Document
from gardenplot.window.fields import Typed
from gardenplot.window.headed_area import HeadedArea
from gardenplot.window.main import MainWindow
from gardenplot.window.new_plan import NewPlanDialog
from gardenplot.window.plan_panel import PlanPanel
from gardenplot.window.planting_panel import PlantingPanel
from tests.window.shared_window import window
from tests.window.walk import is_whole, settle

__all__ = ["window"]

Key = Qt.Key


def finish(field: Typed, text: str) -> None:
    """Type another text into a field and finish it."""
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Key.Key_Return)


@pytest.fixture
def fields(window: MainWindow) -> dict[str, Typed]:
    """The fields of the first planting, which is selected."""
    window.sight.select("b1", "p1")
    return window.inspector.planting.form.fields


def test_what_is_typed_after_enter_takes_the_place_of_what_was_finished(
    document: Document, fields: dict[str, Typed]
) -> None:
    finish(fields["to"], "5 m + 30 cm")
    assert (fields["to"].text(), fields["to"].selectedText()) == ("5.3 m", "5.3 m")
    QTest.keyClicks(fields["to"], "4.3 m")
    QTest.keyClick(fields["to"], Key.Key_Return)
    assert fields["to"].text() == "4.3 m"
    assert document.stack.count() == 2


@pytest.mark.parametrize(
    ("field", "text", "start", "end", "plants"),
    [
        ("plants", "90", 30, 780, 90),
        ("length", "5 m", 30, 530, 60),
        ("length", "5", 30, 530, 60),
        ("from", "1 m", 100, 1100, 120),
        ("to", "5.3 m", 30, 530, 60),
        ("in_row", "20 cm", 30, 830, 120),
        ("slack", "50 cm", 30, 1080, 120),
    ],
)
def test_a_text_that_can_be_read_is_one_step_of_undo(
    document: Document, fields: dict[str, Typed], field: str, text: str, start: int, end: int, plants: int
) -> None:
    before = document.plan
    finish(fields[field], text)
    block = layout_in(document.plan, "p1")
    assert (block.start / CM, block.end / CM, block.plants) == (start, end, plants)
    assert document.stack.count() == 1
    document.stack.undo()
    assert document.plan is before


@pytest.mark.parametrize(
    ("field", "text", "told"),
    [
        ("plants", "many", "“many” is no whole number"),
        ("from", "1,000 m", "can be read in two ways"),
        ("to", "10 cm", "is not beyond"),
        ("length", "five metres", "“five metres” is no length"),
        ("in_row", "-5 cm", "is less than nothing"),
        ("in_ground", "9 April", "“9 April” is no date"),
    ],
)
def test_a_text_that_cannot_be_read_is_told_at_its_field_and_the_old_value_is_kept(
    window: MainWindow, document: Document, fields: dict[str, Typed], field: str, text: str, told: str
) -> None:
    before, shown = document.plan, fields[field].text()
    finish(fields[field], text)
    assert told in fields[field].complaint.text()
    assert fields[field].complaint.isVisible()
    assert fields[field].text() == text
    assert document.plan is before
    assert not any(other.complaint.isVisible() for name, other in fields.items() if name != field)
    QTest.keyClick(fields[field], Key.Key_Escape)
    assert fields[field].text() == shown
    assert not fields[field].complaint.isVisible()
    assert window.sight.planting == "p1"


def test_the_text_that_stands_there_makes_no_step(document: Document, fields: dict[str, Typed]) -> None:
    for field in fields.values():
        finish(field, field.text())
        assert not field.complaint.isVisible()
    assert document.stack.count() == 0


def test_a_complaint_is_over_once_the_text_is_right(document: Document, fields: dict[str, Typed]) -> None:
    finish(fields["length"], "five")
    finish(fields["length"], "5 m")
    assert not fields["length"].complaint.isVisible()
    assert layout_in(document.plan, "p1").length == 500 * CM


def test_the_fields_follow_undo(document: Document, fields: dict[str, Typed]) -> None:
    finish(fields["plants"], "90")
    document.stack.undo()
    assert fields["plants"].text() == "120"
    assert fields["to"].text() == "10.3 m"


def test_the_keys_for_undo_are_the_plan_s_while_nothing_is_typed_and_the_text_s_while_something_is(
    document: Document, fields: dict[str, Typed], qtbot: QtBot
) -> None:
    qtbot.waitUntil(fields["plants"].isActiveWindow)
    finish(fields["plants"], "90")
    QTest.keyClicks(fields["plants"], "1")
    QTest.keyClick(fields["plants"], Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert fields["plants"].text() == "90"
    assert document.stack.index() == 1
    QTest.keyClick(fields["plants"], Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert document.stack.index() == 0
    assert fields["plants"].text() == "120"
    QTest.keyClick(fields["plants"], Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert document.stack.index() == 1


def test_a_pattern_is_picked_by_mouse_and_by_arrows_and_space(
    window: MainWindow, document: Document, fields: dict[str, Typed]
) -> None:
    assert fields
    buttons = window.inspector.planting.patterns.buttons
    QTest.mouseClick(buttons[Pattern.TRIANGULAR], Qt.MouseButton.LeftButton)
    assert planting_of(document.plan, "p1").pattern is Pattern.TRIANGULAR
    buttons[Pattern.TRIANGULAR].setFocus()
    QTest.keyClick(buttons[Pattern.TRIANGULAR], Key.Key_Left)
    assert QApplication.focusWidget() is buttons[Pattern.STAGGERED]
    QTest.keyClick(buttons[Pattern.STAGGERED], Key.Key_Space)
    assert planting_of(document.plan, "p1").pattern is Pattern.STAGGERED
    assert buttons[Pattern.STAGGERED].isChecked()


def test_another_bed_is_chosen_for_a_planting(
    window: MainWindow, document: Document, fields: dict[str, Typed]
) -> None:
    assert fields
    box = window.inspector.planting.bed
    assert [box.itemText(row) for row in range(box.count())] == ["Tunnel, east", "Field, upper"]
    QTest.keyClick(box, Key.Key_Down)
    assert planting_of(document.plan, "p1").bed == "b2"
    assert window.sight.bed == "b2"


@pytest.mark.parametrize(
    ("field", "text"), [("length", "16 m"), ("gap", "2 ft"), ("head_margin", ""), ("name", "West")]
)
def test_a_bed_is_changed_by_typing(window: MainWindow, document: Document, field: str, text: str) -> None:
    window.sight.select("b1")
    typed = window.inspector.bed.form.fields[field]
    typed.clear()
    finish(typed, text)
    value = getattr(bed_of(document.plan, "b1"), field)
    assert ("" if value is None else str(value)) == text
    assert typed.text() == text
    assert document.stack.count() == 1


@pytest.mark.parametrize(
    ("field", "text", "length", "width"),
    [("diameter", "3 m", "3 m", "3 m"), ("box", "2.4 m by 1.2 m, boards 4 cm, posts 9 cm", "2.32 m", "1.12 m")],
)
def test_a_bed_is_given_a_shape_by_typing_and_undo_takes_it_back(
    window: MainWindow, document: Document, field: str, text: str, length: str, width: str
) -> None:
    before = document.plan
    window.sight.select("b1")
    fields = window.inspector.bed.form.fields
    finish(fields[field], text)
    assert (fields["length"].text(), fields["width"].text(), fields[field].text()) == (length, width, text)
    finish(fields["length"], "4 m")
    assert field.title() in fields["length"].complaint.text()
    assert document.stack.count() == 1
    document.stack.undo()
    assert document.plan is before


def test_a_slope_tells_the_length_on_the_map_below_the_length(window: MainWindow) -> None:
    window.sight.select("b1")
    form = window.inspector.bed.form
    assert not form.hints["length"].isVisible()
    finish(form.fields["slope"], "75 %")
    assert form.fields["length"].text() == "15 m"
    assert form.hints["length"].text() == "12.00\u2009m on the map"
    assert form.hints["length"].isVisible()


def test_a_bed_needs_a_length(window: MainWindow, document: Document) -> None:
    window.sight.select("b1")
    typed = window.inspector.bed.form.fields["length"]
    typed.setFocus()
    typed.clear()
    QTest.keyClick(typed, Key.Key_Return)
    assert "a length is needed" in typed.complaint.text()
    assert bed_of(document.plan, "b1").length.text == "15 m"


def test_the_selection_follows_what_is_removed(window: MainWindow, document: Document) -> None:
    window.sight.select("b1", "p1")
    document.change("Remove Pak choi", remove_planting(document.plan, "p1"))
    assert (window.sight.bed, window.sight.planting) == ("b1", None)
    assert window.inspector.bed.isVisible()
    document.change("Remove bed Tunnel, east", remove_bed(document.plan, "b1"))
    assert (window.sight.bed, window.sight.planting) == (None, None)
    assert window.inspector.plan.isVisible()
    document.stack.undo()
    document.stack.undo()
    assert document.stack.index() == 0
    assert window.inspector.plan.isVisible()


def test_the_selection_is_lost_with_the_plan_it_belonged_to(window: MainWindow, document: Document) -> None:
    window.sight.select("b2", "p3")
    document.start(remove_planting(document.plan, "p3"))
    assert (window.sight.bed, window.sight.planting) == (None, None)


def choose(window: MainWindow, name: str, words: str) -> None:
    """Choose from a list of the planting panel by its words, as its open list does."""
    box = window.inspector.planting.chosen[name]
    box.setCurrentIndex(box.findText(words))
    box.activated.emit(box.currentIndex())
    assert box.currentText() == words


@pytest.mark.parametrize(
    ("words", "pattern"),
    [
        ("staggered", Pattern.STAGGERED),
        ("twin rows", Pattern.TWIN),
        ("own offsets", Pattern.OFFSETS),
        ("cells", Pattern.CELLS),
        ("rings", Pattern.RINGS),
        ("broadcast", Pattern.BROADCAST),
    ],
)
def test_every_pattern_can_be_chosen_and_is_one_step_of_undo(
    window: MainWindow, document: Document, words: str, pattern: Pattern
) -> None:
    window.sight.select("b1", "p1")
    before = document.plan
    panel = window.inspector.planting
    choose(window, "pattern", words)
    assert planting_of(document.plan, "p1").pattern is pattern
    assert document.stack.count() == 1
    for name, its_own in PATTERN_FIELDS.items():
        assert panel.form.fields[name].isVisible() == (pattern is its_own)
    document.stack.undo()
    assert document.plan is before


def test_rows_are_turned_across_by_keys_and_back_by_a_pattern_that_cannot(
    window: MainWindow, document: Document
) -> None:
    window.sight.select("b1", "p1")
    choose(window, "direction", "across the bed")
    assert planting_of(document.plan, "p1").direction is Direction.ACROSS
    assert layout_in(document.plan, "p1").grid.runs_across
    choose(window, "pattern", "twin rows")
    assert planting_of(document.plan, "p1").direction is Direction.ALONG
    assert not window.inspector.planting.chosen["direction"].isVisible()


def test_own_offsets_begin_where_the_rows_lie_and_are_typed(window: MainWindow, document: Document) -> None:
    window.sight.select("b1", "p1")
    offsets = layout_in(document.plan, "p1").grid.offsets
    choose(window, "pattern", "own offsets")
    assert layout_in(document.plan, "p1").grid.offsets == offsets
    finish(window.inspector.planting.form.fields["offsets"], "10 cm; 65 cm")
    assert [offset // CM for offset in layout_in(document.plan, "p1").grid.offsets] == [10, 65]
    finish(window.inspector.planting.form.fields["offsets"], "10 cm; 5 cm")
    assert "5 cm is not beyond 10 cm" in window.inspector.planting.form.fields["offsets"].complaint.text()


@pytest.mark.usefixtures("fields")
def test_the_cards_of_patterns_are_painted_anew_only_when_they_show_something_else(window: MainWindow) -> None:
    painted, patterns, area = Painted(), window.inspector.planting.patterns, window.inspector.currentWidget()
    assert isinstance(area, QScrollArea)
    area.ensureWidgetVisible(patterns)
    window.canvas.setFocus()
    settle(window)
    for card in patterns.buttons.values():
        card.installEventFilter(painted)
    QTest.keyClick(window.canvas, Qt.Key.Key_Right)
    QApplication.processEvents()
    assert painted.cards == []
    window.document.change("wider", change_planting(window.document.plan, "p1", in_row=parse_length("40 cm")))
    QApplication.processEvents()
    assert {*painted.cards} == {*patterns.buttons.values()}


@pytest.mark.usefixtures("fields")
def test_a_line_parts_the_heading_from_fields_that_go_on_under_it(window: MainWindow) -> None:
    area = window.inspector.currentWidget()
    assert isinstance(area, HeadedArea)
    bar = area.verticalScrollBar()
    seen = []
    for at in (0, bar.maximum(), 0):
        bar.setValue(at)
        seen.append(area.line.isVisible())
    assert seen == [False, True, False]
    assert window.inspector.planting.title.geometry().bottom() < area.line.y() < area.viewport().y()


class Painted(QObject):
    """Keeps which widgets were painted."""

    def __init__(self) -> None:
        super().__init__()
        self.cards: list[QObject] = []

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802  # Qt's own name
        if event.type() is QEvent.Type.Paint:
            self.cards.append(watched)
        return False


@pytest.mark.usefixtures("fields")
def test_the_wheel_scrolls_the_panel_and_never_turns_a_choice(window: MainWindow, document: Document) -> None:
    plan, panel = document.plan, window.inspector.planting
    for box in (panel.bed, panel.chosen["pattern"]):
        before = box.currentIndex()
        for notch in (-120, 120):
            turned = wheel_over(box, notch)
            QApplication.sendEvent(box, turned)
            assert not turned.isAccepted()
        assert box.currentIndex() == before
    assert document.plan is plan


def test_no_choice_takes_the_keyboard_by_the_wheel(window: MainWindow, document: Document) -> None:
    """Qt would give it to what the wheel is turned over, and what is typed next would end up there."""
    window.sight.select("b1", "p1")
    dialog = NewPlanDialog(document, window)
    boxes = [*window.inspector.findChildren(QComboBox), *dialog.findChildren(QComboBox)]
    assert len(boxes) >= 6
    assert {box.focusPolicy() for box in boxes} == {Qt.FocusPolicy.StrongFocus}
    dialog.deleteLater()


def wheel_over(box: QWidget, notch: int) -> QWheelEvent:
    """One notch of the wheel over the middle of a widget, in eighths of a degree; negative is down."""
    at = QPointF(box.rect().center())
    still, ends = QPoint(), Qt.ScrollPhase.NoScrollPhase
    held, none = Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier
    return QWheelEvent(at, box.mapToGlobal(at), still, QPoint(0, notch), held, none, ends, False)


def test_the_wheel_turns_no_choice_of_a_dialog(window: MainWindow, document: Document) -> None:
    dialog = NewPlanDialog(document, window)
    for name in ("units", "crop"):
        box = dialog.fields[name]
        assert isinstance(box, QComboBox)
        before = box.currentText()
        for notch in (-120, 120, -120):
            QApplication.sendEvent(box, wheel_over(box, notch))
            assert box.currentText() == before
    dialog.deleteLater()


def test_a_card_says_in_words_that_rows_stand_closer_than_the_packet(window: MainWindow) -> None:
    window.sight.select("b1", "p1")
    button = window.inspector.planting.patterns.buttons[Pattern.STRAIGHT]
    assert "closer than the packet" not in button.accessibleName()
    finish(window.inspector.planting.form.fields["row_spacing"], "10 cm")
    assert "rows 10\u2009cm apart, closer than the packet" in button.accessibleName()


def test_the_content_of_the_lower_panel_has_the_height(window: MainWindow) -> None:
    dock = next(one for one in window.docks if one.objectName() == "ledger")
    assert window.ledger.height() == dock.height()
    side = dock.titleBarWidget()
    assert side is not None
    buttons = {button.accessibleName(): button for button in side.findChildren(QToolButton)}
    QTest.mouseClick(buttons["Close Counts, orders, findings"], Qt.MouseButton.LeftButton)
    assert not dock.isVisible()


def test_headings_stand_over_their_numbers(window: MainWindow) -> None:
    for table in (window.ledger.counts, window.ledger.crops, window.ledger.orders):
        head = table.headerItem()
        sides = [bool(head.textAlignment(at) & Qt.AlignmentFlag.AlignRight) for at in range(table.columnCount())]
        assert [at for at, is_right in enumerate(sides) if is_right] == list(table.numbers)


@pytest.mark.own_window
@pytest.mark.parametrize("selected", [(None, None), ("b1", None), ("b1", "p1")], ids=["plan", "bed", "planting"])
def test_whose_fields_these_are_stays_in_sight_while_they_are_scrolled(
    window: MainWindow, selected: tuple[str | None, str | None]
) -> None:
    window.resize(1024, 700)
    window.sight.select(*selected)
    area = window.inspector.currentWidget()
    assert isinstance(area, QScrollArea)
    panel = area.widget()
    assert isinstance(panel, PlanPanel | BedPanel | PlantingPanel)
    settle(window)
    before = panel.title.mapTo(window, QPoint(0, 0))
    area.verticalScrollBar().setValue(area.verticalScrollBar().maximum())
    settle(window)
    assert area.verticalScrollBar().value() > 0
    assert panel.title.text()
    assert is_whole(panel.title)
    assert panel.title.mapTo(window, QPoint(0, 0)) == before
