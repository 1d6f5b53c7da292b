"""Text up to twice as large, and small windows: nothing is cut, nothing lies over another, the drawing keeps room."""

from collections.abc import Iterator
from itertools import combinations

import pytest
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QCheckBox,
    QDateEdit,
    QDialog,
    QDockWidget,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QToolButton,
    QWidget,
)

from gardenplot.plan.edits import change_place
from gardenplot.window.elided import Elided
from gardenplot.window.main import MainWindow
from gardenplot.window.panels import Panels
from gardenplot.window.pattern_choice import PatternButton
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.window.theme import dress
from tests.plans import metric_plan
from tests.window.conftest import begin_anew, closed, made
from tests.window.walk import DIALOGS, opened, settle, text_of

SIZES = [(1.0, 1024, 700), (1.0, 1366, 768), (1.3, 1366, 768), (1.6, 1366, 768), (2.0, 1366, 768), (2.0, 1024, 700)]
LONG = "The glasshouse field below the old drove road, north of the burn"
SMALLEST_DRAWING = 480, 170
Size = tuple[float, int, int]


def dialogs_with(size: Size) -> list[str]:
    """Every dialog with the least text in the smallest window and with the largest text; in between by turns."""
    number = SIZES.index(size)
    everywhere = number in (0, len(SIZES) - 2, len(SIZES) - 1)
    return [name for at, name in enumerate(DIALOGS) if everywhere or at % 3 == number - 1]


def told(size: Size) -> str:
    """A size of text and window in words."""
    return f"{size[0]:.0%} in {size[1]} x {size[2]}"


@pytest.fixture(scope="module", params=SIZES, ids=told)
def size(dressed: QApplication, request: pytest.FixtureRequest) -> Iterator[Size]:
    """Text of that size, for all tests with it, and the size of the window."""
    size: Size = request.param
    with text_of(dressed, size[0], dress):
        yield size


@pytest.fixture
def large(dressed: QApplication, size: Size, monkeypatch: pytest.MonkeyPatch) -> Iterator[MainWindow]:
    """A window as large as its screen, with text of that size, and a plan with a long name."""
    monkeypatch.setattr(Panels, "room", size[1])
    shown = made(change_place(metric_plan(), name=LONG), size[1:])
    settle(shown)
    assert (shown.width(), shown.height()) == size[1:], f"the least size is {shown.minimumSizeHint()}"
    yield shown
    closed(shown, dressed)


def test_a_panel_beside_the_drawing_is_closed_by_a_button_that_grows_with_the_text(
    large: MainWindow, size: Size
) -> None:
    """24 pixels are the least target of WCAG 2.2, 2.5.8."""
    title = large.docks[0].titleBarWidget()
    assert title is not None
    buttons = {button.accessibleName(): button for button in title.findChildren(QToolButton)}
    assert {*buttons} == {"Close Shelf", "Let Shelf float, or put it back"}
    for button in buttons.values():
        assert min(button.width(), button.height()) >= round(24 * size[0])
        assert title.rect().contains(button.geometry())
    buttons["Close Shelf"].click()
    assert large.docks[0].isHidden()


@pytest.mark.parametrize("selected", [(None, None), ("b1", None), ("b2", "p2")], ids=["plan", "bed", "planting"])
def test_nothing_of_the_window_is_cut(large: MainWindow, selected: tuple[str | None, str | None]) -> None:
    large.sight.select(*selected)
    for tab in range(4):
        large.ledger.setCurrentIndex(tab)
        settle(large)
        assert_whole(large)


def test_the_drawing_keeps_room(large: MainWindow) -> None:
    seen = large.canvas.viewport().size()
    assert (seen.width(), seen.height()) >= SMALLEST_DRAWING
    assert seen.height() >= SMALLEST_DRAWING[1]


def test_panels_share_a_place_only_where_they_must_and_keys_lead_to_both(large: MainWindow, size: Size) -> None:
    shelf, selected = (large.findChild(QDockWidget, name) for name in ("shelf", "selected"))
    assert shelf is not None
    assert selected is not None
    share = size[0] > 1.6 and size[1] < 1366
    assert (large.tabifiedDockWidgets(shelf) == [selected]) is share
    large.sight.select("b1", "p1")
    for action, panel in (("edit.selected", selected), ("edit.find-crop", shelf), ("edit.selected", selected)):
        large.registry.made(action).trigger()
        settle(large)
        assert not panel.visibleRegion().isEmpty()
        focused = large.focusWidget()
        assert focused is not None
        assert panel.isAncestorOf(focused)
    large.panels.as_at_first()
    settle(large)
    assert (large.tabifiedDockWidgets(shelf) == [selected]) is share
    assert large.width() == size[1]


def test_the_name_of_the_plan_is_cut_with_a_sign_and_told_whole(large: MainWindow) -> None:
    name = large.header.name
    assert name.shown.endswith("…")
    assert name.toolTip() == LONG or name.toolTip() == name.text()
    assert name.width() >= name.minimumSizeHint().width()


def test_nothing_of_the_dialogs_is_cut(large: MainWindow, size: Size, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in dialogs_with(size):
        begin_anew(large, change_place(metric_plan(), name=LONG))
        dialog = opened(large, name, monkeypatch.setattr)
        room = room_on_screen(dialog)
        assert dialog.width() <= room.width(), name
        assert dialog.height() <= room.height(), name
        assert_whole(dialog)
        dialog.close()


def assert_whole(shown: QWidget) -> None:
    """Every part has the room that its words need and lies over none of its fellows."""
    for area in shown.findChildren(QScrollArea):
        if area.isVisibleTo(shown) and not area.horizontalScrollBar().isVisible():
            inside = area.widget()
            assert inside is None or inside.width() <= area.viewport().width(), f"{area.accessibleName()} is cut"
    seen = [part for part in shown.findChildren(QWidget) if part.isVisibleTo(shown)]
    for part in seen:
        assert lacks(part) <= 0, f"{type(part).__name__} {said(part)!r} lacks {lacks(part)} pixels"
    for one, other in combinations([part for part in seen if said(part)], 2):
        if one.parentWidget() is other.parentWidget():
            assert not one.geometry().intersects(other.geometry()), f"{said(one)!r} lies over {said(other)!r}"


def said(part: QWidget) -> str:
    """The words of a label, a button or a field."""
    return part.text() if isinstance(part, QLabel | QAbstractButton | QLineEdit) else ""


def lacks(part: QWidget) -> int:
    """How many pixels a part has too few for its words; what is elided with a tip has enough."""
    if isinstance(part, Elided):
        return part.minimumSizeHint().width() - part.width()
    if isinstance(part, QLabel) and part.text():
        if part.wordWrap():
            longest = max(part.fontMetrics().horizontalAdvance(word) for word in part.text().split() or [""])
            return max(part.heightForWidth(part.width()) - part.height(), longest - part.width())
        return max(part.sizeHint().width() - part.width(), part.sizeHint().height() - part.height() - 1)
    if isinstance(part, PatternButton):
        return part.sizeHint().height() - part.height()
    if isinstance(part, QDateEdit):
        return max(part.sizeHint().width() - part.width(), part.fontMetrics().height() + 8 - part.height())
    if isinstance(part, QPushButton | QCheckBox):
        return max(part.sizeHint().width() - part.width(), part.sizeHint().height() - part.height())
    return 0


def test_what_is_cut_is_found(window: MainWindow) -> None:
    """The test of the test: a button that is too narrow, and a label over another."""
    button = QPushButton("far too many words", window.header)
    button.setGeometry(0, 0, 40, 30)
    button.show()
    with pytest.raises(AssertionError, match="far too many words"):
        assert_whole(window)
    button.hide()
    dialog = QDialog(window)
    for words in ("one", "other"):
        QLabel(words, dialog).setGeometry(10, 10, 100, 60)
    dialog.show()
    with pytest.raises(AssertionError, match="lies over"):
        assert_whole(dialog)
    dialog.close()
