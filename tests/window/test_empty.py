"""Where there is nothing yet, words say what to do, with the action itself as a button, until there is something."""

import pytest
from PySide6.QtCore import QDate, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton, QWidget

from gardenplot.plan import Plan, crop_of
from gardenplot.plan.edits import add_bed
from gardenplot.window.document import Document
from gardenplot.window.empty_states import EmptyState
from gardenplot.window.forms import AskDialog
from gardenplot.window.main import MainWindow
from tests.journeys.person import rows_of
from tests.plans import feet_plan, metric_plan


def shown(over: QWidget) -> EmptyState | None:
    """The empty state that lies over a widget, if one does."""
    return next((one for one in over.findChildren(EmptyState) if one.isVisible()), None)


def button(over: QWidget, words: str) -> QPushButton:
    state = shown(over)
    assert state is not None
    return next(one for one in state.findChildren(QPushButton) if one.text().startswith(words))


@pytest.fixture
def empty(window: MainWindow, document: Document) -> MainWindow:
    """The window with a plan without anything."""
    document.start(Plan())
    return window


def test_without_a_bed_the_drawing_offers_to_add_one(empty: MainWindow, document: Document) -> None:
    viewport = empty.canvas.viewport()
    titles: list[str] = []

    def close() -> None:
        dialog = QApplication.activeModalWidget()
        assert dialog is not None
        titles.append(dialog.windowTitle())
        dialog.close()

    for words in ("Add bed", "New plan"):
        QTimer.singleShot(0, close)
        QTest.mouseClick(button(viewport, words), Qt.MouseButton.LeftButton)
    assert titles == ["Add bed", "New plan"]
    bed = metric_plan().beds[0]
    document.change("Add bed", add_bed(document.plan, bed))
    state = shown(viewport)
    assert state is not None
    assert "Nothing is planted yet" in state.label.text()
    document.stack.undo()
    assert button(viewport, "Add bed").isVisible()


def test_tracing_a_first_bed_lays_the_ground_open(empty: MainWindow) -> None:
    button(empty.canvas.viewport(), "Trace").click()
    assert shown(empty.canvas.viewport()) is None
    QTest.keyClick(empty.canvas, Qt.Key.Key_Escape)
    assert shown(empty.canvas.viewport()) is not None


def test_with_beds_and_no_crop_it_leads_to_the_shelf(window: MainWindow, document: Document) -> None:
    plan = metric_plan()
    document.start(Plan(beds=plan.beds, crops=plan.crops))
    button(window.canvas.viewport(), "Find a crop").click()
    assert window.shelf.search.hasFocus()
    window.plantings.place(plan.crops[0])
    assert shown(window.canvas.viewport()) is None


def test_an_order_that_is_added_is_shown_and_its_crop_is_what_to_drag_first(
    window: MainWindow, document: Document
) -> None:
    plan = metric_plan()
    document.start(Plan(beds=plan.beds, crops=plan.crops))

    def order() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, AskDialog)
        for name, words in (("crop", "Leek"), ("units", "120"), ("on", "2027-06-12")):
            QTest.keyClicks(dialog.fields[name], words)
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    QTimer.singleShot(0, order)
    button(window.canvas.viewport(), "Add order").click()
    (ordered,) = document.plan.orders
    assert window.ledger.orders.isVisible()
    assert rows_of(window.ledger.orders)[0][1] == "120"
    state = shown(window.canvas.viewport())
    assert state is not None
    assert f"Drag {crop_of(document.plan, ordered.crop).name} from" in state.label.text()


def test_a_plan_without_days_shows_today_first_when_not_all_days_are_shown(
    window: MainWindow, document: Document
) -> None:
    document.start(Plan(beds=metric_plan().beds))
    today = QDate(*document.today().timetuple()[:3])
    assert (window.header.always.isChecked(), window.header.day.date()) == (True, today)
    window.header.always.click()
    assert window.header.day.date() == today
    assert window.sight.day == document.today()


def test_a_full_plan_has_no_empty_state_but_in_its_orders(window: MainWindow) -> None:
    seen = []
    for tab in range(7):
        window.ledger.setCurrentIndex(tab)
        QApplication.processEvents()
        seen.append(shown(window.ledger) is not None)
    assert seen == [False, False, True, True, False, False, False]
    assert shown(window.canvas.viewport()) is None


def test_orders_crops_dates_and_findings_say_what_will_stand_there(empty: MainWindow, document: Document) -> None:
    told = []
    for tab in (1, 2, 3, 4, 5, 6):
        empty.ledger.setCurrentIndex(tab)
        state = shown(empty.ledger)
        assert state is not None
        told.append(state.label.text())
    assert [words.partition(".")[0].partition(":")[0] for words in told] == [
        "Nothing is planted yet",
        "No order yet",
        "No wish yet",
        "Nothing is planted yet",
        "Nothing is needed",
        "Nothing is planted yet",
    ]
    document.start(feet_plan())
    for tab in (1, 2, 4, 5, 6):
        empty.ledger.setCurrentIndex(tab)
        assert shown(empty.ledger) is None


def test_a_search_without_result_says_so_and_shows_all_again(window: MainWindow) -> None:
    window.shelf.search.setText("moonberry")
    state = shown(window.shelf)
    assert state is not None
    assert "moonberry" in state.label.text()
    button(window.shelf, "All crops").click()
    assert shown(window.shelf) is None
    assert window.shelf.model.rowCount() > 50


def test_a_button_is_enabled_as_its_action_is(empty: MainWindow, document: Document) -> None:
    empty.ledger.setCurrentIndex(6)
    sheet = button(empty.ledger, "Bed sheet")
    assert not sheet.isEnabled()
    document.start(metric_plan())
    assert sheet.isEnabled()


def test_what_cannot_be_printed_or_removed_has_no_live_button_and_says_why(
    empty: MainWindow, document: Document
) -> None:
    sheet, remove = empty.header.sheet, empty.ledger.remove_order
    assert (sheet.isEnabled(), remove.isEnabled()) == (False, False)
    assert (sheet.toolTip(), remove.toolTip()) == (
        "There is no bed yet: Bed ▸ Add bed …",
        "There is no order yet.",
    )
    document.start(metric_plan())
    assert (sheet.isEnabled(), sheet.toolTip(), remove.isEnabled()) == (True, "", False)
