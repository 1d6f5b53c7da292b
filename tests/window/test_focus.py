"""The keyboard comes to every part in the order of reading, each says its name, and where it is can be seen."""

from collections.abc import Iterator
from itertools import pairwise

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QDockWidget,
    QPushButton,
    QScrollArea,
    QTabBar,
    QVBoxLayout,
    QWidget,
)

from gardenplot.window.end_buttons import make_strong
from gardenplot.window.main import MainWindow
from tests.colours_seen import contrasts
from tests.window.walk import DIALOGS, Pixels, is_whole, light, opened, picture, place, settle, stops

AROUND = 3
"""How far outside of a part its mark may be."""
LEAST_CHANGE = 3.0
"""Least contrast of a mark with what was there before (WCAG 2.2, 2.4.13)."""
SCHEMES = pytest.mark.parametrize(
    "screen", [Qt.ColorScheme.Light, Qt.ColorScheme.Dark], ids=["light", "dark"], indirect=True
)
SHOWN = pytest.mark.parametrize(
    ("selected", "tab"),
    [((None, None), 0), (("b1", None), 1), (("b1", "p1"), 2), ((None, None), 3)],
    ids=["plan, counts", "bed, by crop", "planting, orders", "plan, findings"],
)


@pytest.fixture(scope="module")
def screen(dressed: QApplication, request: pytest.FixtureRequest) -> Iterator[QApplication]:
    """The program on a light or a dark screen, and on a light one afterwards."""
    dressed.styleHints().colorSchemeChanged.emit(request.param)
    yield dressed
    dressed.styleHints().colorSchemeChanged.emit(Qt.ColorScheme.Light)


@SCHEMES
@SHOWN
def test_focus_is_seen_on_every_part_of_the_window(
    screen: QApplication, window: MainWindow, selected: tuple[str | None, str | None], tab: int
) -> None:
    window.sight.select(*selected)
    window.ledger.setCurrentIndex(tab)
    window.canvas.setFocus()
    settle(window)
    assert screen.focusWidget() is window.canvas
    assert_every_stop_is_marked(window)


@SCHEMES
@pytest.mark.parametrize("name", ["season", "ledger"])
def test_focus_is_seen_on_panels_that_lie_behind_one_another(
    screen: QApplication, window: MainWindow, name: str
) -> None:
    panel = window.findChild(QDockWidget, name)
    assert panel is not None
    panel.raise_()
    settle(window)
    window.canvas.setFocus()
    settle(window)
    assert screen.focusWidget() is window.canvas
    assert any(panel.isAncestorOf(part) for part in stops(window))
    assert_every_stop_is_marked(window)


@SCHEMES
@pytest.mark.parametrize("bed", [None, "b1"])
def test_focus_is_seen_on_the_drawing_of_the_ground(
    screen: QApplication, window: MainWindow, bed: str | None
) -> None:
    window.canvas.setFocus()
    window.sight.select(bed)
    window.views.show_ground(True)
    settle(window)
    assert screen.focusWidget() is window.views.ground
    assert_every_stop_is_marked(window)


@SCHEMES
@pytest.mark.parametrize("name", DIALOGS)
def test_focus_is_seen_on_every_part_of_the_dialogs(
    screen: QApplication, host: MainWindow, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert screen.styleHints() is not None
    dialog = opened(host, name, monkeypatch.setattr)
    assert_every_stop_is_marked(dialog)
    dialog.close()


@SCHEMES
@pytest.mark.usefixtures("screen")
def test_a_button_that_accepts_stands_out_with_the_keyboard_no_less_than_without() -> None:
    shown = QDialog()
    column = QVBoxLayout(shown)
    buttons = [QPushButton("Add order"), QPushButton("Leave it")]
    make_strong(buttons[0])
    for button in buttons:
        column.addWidget(button)
    shown.show()
    settle(shown)
    standing_out = []
    for focused in (buttons[0], buttons[1]):
        focused.setFocus()
        settle(shown)
        seen = light(picture(shown, place(buttons[0], shown)))
        standing_out.append(int(np.count_nonzero(contrasts(seen, seen[:1, :1]) >= LEAST_CHANGE)))
    assert standing_out[0] > standing_out[1]
    shown.close()


def assert_every_stop_is_marked(shown: QWidget) -> None:
    """Go through with Tab; what was around a part before and after must differ by a mark that is seen."""
    found = stops(shown)
    assert len(found) >= 3
    names = [spoken(part) for part in found]
    assert all(names), names
    for part, after in zip(found, (*found[1:], found[0]), strict=True):
        assert shown.focusWidget() is part
        QApplication.processEvents()
        assert not part.visibleRegion().isEmpty(), f"{spoken(part)} has the keyboard out of sight"
        focused = in_sight(part, shown)
        while shown.focusWidget() is part:
            QTest.keyClick(part, Qt.Key.Key_Tab)
        assert shown.focusWidget() is after
        left = in_sight(part, shown)
        if focused is not None and left is not None:
            assert has_mark(focused, left), f"{part} {spoken(part)}"


def in_sight(part: QWidget, shown: QWidget) -> Pixels | None:
    """A part and what is close around it; None where it is scrolled out of sight."""
    frame = place(part, shown, AROUND)
    if isinstance(part, QTabBar):
        frame = part.tabRect(part.currentIndex()).translated(part.mapTo(shown, QPoint(0, 0)))
    return picture(shown, frame) if is_whole(part) else None


def has_mark(focused: Pixels, left: Pixels) -> bool:
    """Whether pixels changed with enough contrast, as many at least as the longer side of the part has."""
    changed = contrasts(light(focused), light(left)) >= LEAST_CHANGE
    return int(np.count_nonzero(changed)) >= int(max(changed.shape) * 0.75)


def spoken(part: QWidget) -> str:
    """The name that a screen reader says."""
    named = QAccessible.queryAccessibleInterface(part)
    own = named.text(QAccessible.Text.Name) if named is not None else ""
    if isinstance(part, QTabBar) and named is not None:
        return named.child(part.currentIndex()).text(QAccessible.Text.Name)
    return own


def test_the_test_sees_a_ring_and_does_not_see_a_faint_one() -> None:
    """The test of the test: two pixels of accent round a field are a mark, two pixels a little darker are none."""
    plain = np.full((30, 100, 3), 243, np.uint8)
    for value, seen in ((40, True), (205, False)):
        ringed = plain.copy()
        ringed[:2] = ringed[-2:] = value
        assert has_mark(ringed, plain) is seen


def test_tab_goes_through_the_window_panel_by_panel_and_down_each_panel(window: MainWindow) -> None:
    window.sight.select("b1", "p1")
    window.canvas.setFocus()
    settle(window)
    panels = [window.canvas, window.shelf, window.inspector, window.ledger, window.season_maps, window.header]
    found = stops(window)
    settle(window)
    order = [panel for part in found for panel in panels if panel is part or panel.isAncestorOf(part)]
    assert len(order) >= len(found) - 1, "only the tabs of panels that lie behind one another are in no panel"
    assert [panel for number, panel in enumerate(order) if panel is not order[number - 1]] == panels
    for panel in panels:
        inside = [
            QRect(part.mapTo(window, part.rect().topLeft()), part.size())
            for part in found
            if panel.isAncestorOf(part) and not isinstance(part, QScrollArea)
        ]
        for one, other in pairwise(inside):
            assert other.center().y() >= one.center().y(), (panel, one, other)


@pytest.mark.parametrize("name", DIALOGS)
def test_shift_tab_comes_back_the_same_way(host: MainWindow, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    dialog = opened(host, name, monkeypatch.setattr)
    there = stops(dialog)
    back: list[QWidget] = []
    while len(back) < len(there):
        part = dialog.focusWidget()
        assert part is not None
        QTest.keyClick(part, Qt.Key.Key_Backtab)
        back.append(part)
    assert back == [there[0], *reversed(there[1:])]
    dialog.close()


def test_the_panel_in_front_stays_there_when_the_keyboard_comes_back_with_the_window(
    window: MainWindow, dressed: QApplication
) -> None:
    hidden = window.ledger.tabBar()
    window.registry.made("view.season").trigger()
    settle(window)
    dressed.focusChanged.emit(None, hidden)
    settle(window)
    assert not window.season.visibleRegion().isEmpty()
    dressed.focusChanged.emit(window.canvas, hidden)
    settle(window)
    assert not hidden.visibleRegion().isEmpty()
