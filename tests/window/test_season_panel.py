"""The season map by mouse and keys, on the axis of the drawing above."""

from datetime import date, timedelta

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gardenplot.files import sample
from gardenplot.layout import lay_out_plan, standing
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_planting
from gardenplot.units import MM
from gardenplot.window.main import MainWindow
from gardenplot.window.season_axes import Axes
from gardenplot.window.season_panel import SeasonPanel

Keys = Qt.KeyboardModifier


@pytest.fixture
def panel(window: MainWindow, qtbot: QtBot) -> SeasonPanel:
    """The map in front, with a plan whose beds are planted twice a year."""
    window.document.open(sample("kestrel-howe.gardenplot"))
    window.resize(1400, 900)
    window.docks[3].raise_()
    QApplication.processEvents()
    qtbot.waitUntil(window.season.isVisible)
    return window.season


def axes_of(panel: SeasonPanel) -> Axes:
    axes = panel.axes()
    assert axes is not None
    return axes


def press(panel: SeasonPanel, point: QPointF) -> None:
    QTest.mousePress(panel, Qt.MouseButton.LeftButton, Keys.NoModifier, point.toPoint())


@pytest.mark.parametrize("zoomed", [False, True])
def test_a_tape_reading_is_straight_below_where_the_drawing_has_it(
    window: MainWindow, panel: SeasonPanel, zoomed: bool
) -> None:
    if zoomed:
        window.canvas.view.zoom_to(4000 * MM, 9000 * MM)
    bed = window.document.plan.beds[0].id
    for reading in (0, 5000, 12_000):
        above = window.canvas.places.point_of(bed, reading * MM, 0)
        below = axes_of(panel).x(reading)
        assert panel.mapToGlobal(QPointF(below, 0)).x() == pytest.approx(
            window.canvas.viewport().mapToGlobal(above).x(), abs=0.5
        )


def test_the_line_drawn_down_moves_the_day_that_the_drawing_shows(window: MainWindow, panel: SeasonPanel) -> None:
    axes, day = axes_of(panel), window.sight.day
    assert day is not None
    later = date(2027, 7, 10)
    line = QPointF(axes.x(0) + 5, axes.y(day, day))
    press(panel, line)
    QTest.mouseMove(panel, QPoint(round(line.x()), round(axes.y(later, later)) + 1))
    QTest.mouseRelease(panel, Qt.MouseButton.LeftButton)
    assert window.sight.day is not None
    assert abs((window.sight.day - later).days) <= 2
    QTest.mouseMove(panel, QPoint(round(line.x()), 20))
    assert abs((window.sight.day - later).days) <= 2


def test_a_press_on_a_planting_selects_it_and_leaves_the_day_alone(window: MainWindow, panel: SeasonPanel) -> None:
    axes, day = axes_of(panel), window.sight.day
    for block in axes.season.blocks:
        frame = axes.frame(block)
        press(panel, frame.bottomRight() - QPointF(3, 3))
        QTest.mouseRelease(panel, Qt.MouseButton.LeftButton)
        assert window.sight.planting == block.planting
        assert window.sight.day == day


def test_keys_move_the_day_and_choose_plantings(window: MainWindow, panel: SeasonPanel) -> None:
    panel.setFocus()
    first = window.sight.day
    assert first is not None
    for key, step in ((Qt.Key.Key_Down, 1), (Qt.Key.Key_PageDown, 7), (Qt.Key.Key_Up, -1), (Qt.Key.Key_PageUp, -7)):
        before = window.sight.day
        QTest.keyClick(panel, key)
        assert before is not None
        assert window.sight.day == before + timedelta(days=step)
    for _turn in range(60):
        QTest.keyClick(panel, Qt.Key.Key_PageDown)
    assert window.sight.day == axes_of(panel).season.span.last
    chosen = []
    for _block in axes_of(panel).season.blocks:
        QTest.keyClick(panel, Qt.Key.Key_Right)
        chosen.append(window.sight.planting)
    assert sorted(map(str, chosen)) == sorted(block.planting for block in axes_of(panel).season.blocks)


def test_it_shows_the_bed_in_sight(window: MainWindow, panel: SeasonPanel) -> None:
    for laid in lay_out_plan(window.document.plan):
        window.sight.select(laid.bed.id)
        shown = {block.planting for block in axes_of(panel).season.blocks}
        assert shown == {layout.planting for layout in standing(laid, None)}


def test_without_beds_or_dates_it_says_what_to_do(window: MainWindow, panel: SeasonPanel) -> None:
    window.document.start(Plan())
    assert panel.axes() is None
    QApplication.processEvents()
    press(panel, QPointF(300, 40))
    QTest.keyClick(panel, Qt.Key.Key_Down)
    assert window.sight.day is None


@pytest.mark.parametrize(
    ("size", "month", "share"), [((1440, 900), 23, 2), ((1600, 900), 23, 2), ((1024, 700), 15, 2)]
)
def test_a_season_can_be_read_at_first_and_the_drawing_has_twice_its_height(
    window: MainWindow, panel: SeasonPanel, size: tuple[int, int], month: float, share: float
) -> None:
    """Of a month so many pixels at least; in the usual window all four beds of the sample are still in sight."""
    window.resize(*size)
    window.panels.as_at_first()
    window.docks[3].raise_()
    QApplication.processEvents()
    assert axes_of(panel).each * 30 >= month
    assert window.canvas.viewport().height() >= share * panel.height()
    if size[0] >= 1440:
        assert window.canvas.verticalScrollBar().maximum() == 0


def test_the_days_of_all_beds_in_small_are_higher_where_there_are_more_of_them(
    window: MainWindow, panel: SeasonPanel
) -> None:
    beds = window.season_maps.beds
    short = beds.all_axes()[0]
    last = axes_of(panel).season.span.last + timedelta(days=300)
    one = window.document.plan.plantings[1]
    window.document.change("Out", change_planting(window.document.plan, one.id, out=last))
    long = beds.all_axes()[0]
    assert long.bottom - long.top > short.bottom - short.top
    assert beds.minimumHeight() == pytest.approx(4 * (long.bottom + long.below), abs=1)
