"""The magnifier: where it stands, when it goes, and that it shows what lies under the pointer, true to scale."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, QPointF, QRect, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.strips import Under
from gardenplot.drawing.tape_words import under_words
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_bed, remove_planting
from gardenplot.units import MM
from gardenplot.window.lettering import lettering
from gardenplot.window.magnifier import WIDTH, reading_lines
from gardenplot.window.main import MainWindow
from tests.plans import metric_plan
from tests.window.mouse import Mouse
from tests.window.test_repaint import anew, settled

pytestmark = pytest.mark.usefixtures("dressed")


@pytest.fixture
def pointed(window: MainWindow, mouse: Mouse) -> Mouse:
    """A mouse over a window whose magnifier is switched on by its key."""
    window.activateWindow()
    QApplication.processEvents()
    QTest.keyClick(window, Qt.Key.Key_F8)
    return mouse


def frame_of(window: MainWindow) -> QRect:
    return window.canvas.magnifier.geometry()


def test_it_stands_by_the_pointer_inside_the_drawing_and_not_over_the_pointer(
    window: MainWindow, pointed: Mouse
) -> None:
    for bed, reading in (("b1", "0.1 m"), ("b1", "11.9 m"), ("b2", "3 m"), ("b2", "0.2 m")):
        point = pointed.point(bed, reading)
        pointed.move_to(point)
        assert window.canvas.magnifier.isVisible()
        assert window.canvas.viewport().rect().contains(frame_of(window))
        assert not frame_of(window).contains(point.toPoint())


def test_it_goes_with_the_pointer_and_when_it_is_switched_off(window: MainWindow, pointed: Mouse) -> None:
    pointed.move("b1", "4 m")
    pointed.move_to(QPointF(400, 10))
    assert not window.canvas.magnifier.isVisible()
    pointed.move("b1", "4 m")
    QTest.keyClick(window, Qt.Key.Key_F8)
    assert not window.canvas.magnifier.isVisible()
    pointed.move("b1", "5 m")
    assert not window.canvas.magnifier.isVisible()


def test_under_a_pointer_that_rests_it_follows_what_changes(window: MainWindow, pointed: Mouse) -> None:
    document = window.document
    pointed.move("b1", "4 m")
    before = settled(window)
    document.change("Remove", remove_planting(document.plan, "p1"))
    after = settled(window)
    assert after == anew(window) != before
    window.canvas.view.zoom(1.5)
    assert settled(window) == anew(window)
    document.stack.undo()
    assert settled(window) == anew(window)
    document.start(Plan())
    assert not window.canvas.magnifier.isVisible()


def test_the_mouse_works_through_it(window: MainWindow, pointed: Mouse) -> None:
    pointed.move("b1", "5 m")
    pointed.drag("b1", "5 m", "6 m")
    assert window.document.stack.text(0) == "Move Pak choi"


def test_it_shows_the_place_itself_in_its_middle_and_plants_round(window: MainWindow, pointed: Mouse) -> None:
    magnifier = window.canvas.magnifier
    pointed.move("b1", "5 m")
    QApplication.processEvents()
    on_plants = magnifier.grab().toImage()
    pointed.move("b1", "11.8 m")
    QApplication.processEvents()
    on_margin = magnifier.grab().toImage()
    assert _colours(on_plants) > 2 * _colours(on_margin)


def _colours(image: QImage) -> int:
    """How many colours there are round the middle: plants with their edges have many, bare soil few."""
    middle = image.rect().center()
    return len({image.pixel(middle + QPoint(x, y)) for x in range(-90, 91, 2) for y in range(-60, 61, 2)})


@given(st.text(st.sampled_from("abcdefgh  "), min_size=1, max_size=70))
def test_its_reading_is_whole_in_as_many_lines_as_it_needs(name: str) -> None:
    plan = change_bed(metric_plan(), "b1", name=name)
    at = Under("b1", 4_210 * MM, 310 * MM)
    lines = reading_lines(plan, at)
    assert "".join("".join(lines).split()) == "".join(under_words(plan, at).split())
    assert all(lettering(line, 12, bold=True).width <= WIDTH - 20 for line in lines)


def test_it_grows_with_its_reading_and_stays_inside_the_drawing(window: MainWindow, pointed: Mouse) -> None:
    window.document.change("Rename", change_bed(window.document.plan, "b1", name="A"))
    pointed.move("b1", "4 m")
    usual = frame_of(window).height()
    name = "The bed below the old drove road, north of the burn"
    window.document.change("Rename", change_bed(window.document.plan, "b1", name=name))
    pointed.move("b1", "4 m")
    assert frame_of(window).height() == usual + 16
    assert window.canvas.viewport().rect().contains(frame_of(window))
