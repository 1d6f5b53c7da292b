"""Seen from near: captions and names stay in sight, the way to zero is shown, spacings are dimensioned."""

import pytest
from PySide6.QtCore import QRect
from PySide6.QtGui import QColor, QImage

from gardenplot.drawing.letters import looks
from gardenplot.drawing.style import Ink
from gardenplot.drawing.tape_words import zero_words
from gardenplot.gestures.kept import layout_in
from gardenplot.units import CM, MM, M, Units
from gardenplot.window.main import MainWindow
from gardenplot.window.theme import colour, palette
from tests.window.walk import settle


def shot(window: MainWindow) -> QImage:
    settle(window)
    return window.canvas.viewport().grab().toImage()


def amount(image: QImage, area: QRect, wanted: QColor) -> int:
    """How many pixels of an area have a colour, or nearly so."""
    inside = area.intersected(image.rect())
    return sum(
        abs(QColor(image.pixel(x, y)).lightness() - wanted.lightness()) < 12
        and abs(QColor(image.pixel(x, y)).red() - wanted.red()) < 24
        for x in range(inside.left(), inside.right() + 1)
        for y in range(inside.top(), inside.bottom() + 1)
    )


@pytest.fixture
def near(window: MainWindow) -> MainWindow:
    """The window with half a metre of the first block in sight, its bed higher than the window."""
    block = layout_in(window.document.plan, "p1")
    window.canvas.view.zoom_to(block.start + 2 * M, block.start + 2 * M + 50 * CM)
    window.canvas.verticalScrollBar().setValue(0)
    return window


def test_the_caption_of_a_block_larger_than_the_window_lies_at_its_foot(near: MainWindow) -> None:
    view = near.canvas.view
    strip, (_left, top) = view.strips().strips[0], view.origin
    assert strip.top + strip.height + top > view.size[1], "the bed reaches out of sight"
    image, ink = shot(near), colour(palette(), looks(near.document.plan)["p1"].ink)
    foot = QRect(strip_left(near), image.height() - 26, 40, 26)
    assert amount(image, foot, ink) > 100


def strip_left(window: MainWindow) -> int:
    return window.canvas.view.strips().gutter - 10


def test_the_name_of_a_bed_higher_than_the_window_stays_in_sight(near: MainWindow) -> None:
    bar = near.canvas.verticalScrollBar()
    bar.setValue(300)
    image = shot(near)
    head = QRect(10, 48, strip_left(near) - 20, 40)
    assert bar.value() == 300
    assert amount(image, head, colour(palette(), Ink.INK)) > 40


def test_an_arrow_points_to_zero_while_it_is_out_of_sight(near: MainWindow) -> None:
    accent, corner = colour(palette(), Ink.ACCENT), QRect(10, 10, strip_left(near) - 12, 30)
    assert amount(shot(near), corner, accent) > 20
    near.canvas.view.fit()
    assert amount(shot(near), corner, accent) == 0


def test_the_way_to_zero_is_said_in_full_or_short() -> None:
    assert zero_words(7_200 * MM, Units.METRIC) == ("0 at head, 7.20\u2009m", "0, 7.20\u2009m")


def test_spacings_are_dimensioned_from_near_alone(near: MainWindow) -> None:
    """In the middle of a block nothing is as light as paper but what figures stand on."""
    assert light(shot(near), QRect(strip_left(near) + 60, 60, 700, 400)) > 400
    near.canvas.view.zoom(0.2)
    spot = near.canvas.places.point_of("b1", layout_in(near.document.plan, "p1").start + 2 * M, 0).toPoint()
    assert light(shot(near), QRect(spot.x(), spot.y() + 4, 60, 40)) == 0


def light(image: QImage, area: QRect) -> int:
    """How many pixels of an area are about as light as paper."""
    inside = area.intersected(image.rect())
    return sum(
        QColor(image.pixel(x, y)).lightness() > 232
        for x in range(inside.left(), inside.right() + 1)
        for y in range(inside.top(), inside.bottom() + 1)
    )
