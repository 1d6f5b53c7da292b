"""What is filled rather than stroked looks as Qt's own strokes and hatches do, which are the referee."""

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QImage, QPainter, QPen

from gardenplot.window.levels import paint_box, paint_chip, paint_line
from gardenplot.window.painting import _tile

pytestmark = pytest.mark.usefixtures("qapp")
RIM, PAPER = QColor(40, 30, 20), QColor(240, 230, 200)
SIDE = 200
BEYOND = 130.0
"""So long a line is filled."""
STEP = 255 // 8
"""How far a shade may be off: Qt strokes on a grid of its own of some eighth of a pixel."""

places = st.floats(5, 20)
sizes = st.floats(8, 160)


def painted(paint: Callable[[QPainter], object]) -> NDArray[np.int64]:
    """The red of all pixels, a byte each, of a picture on white."""
    image = QImage(SIDE, SIDE, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint(painter)
    painter.end()
    return np.array(image.constBits(), dtype=np.int64).reshape(SIDE, SIDE, 4)[:, :, 2]


def pen_of(width: float) -> QPen:
    pen = QPen(RIM, width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    return pen


@given(places, places, sizes, sizes, st.sampled_from([0.8, 1.2, 1.4, 2.0]))
def test_a_box_looks_as_stroked(left: float, top: float, width: float, height: float, rim: float) -> None:
    box = QRectF(left, top, width, height)

    def stroke(painter: QPainter) -> None:
        painter.setPen(pen_of(rim))
        painter.setBrush(PAPER)
        painter.drawRect(box)

    filled, stroked = painted(lambda painter: paint_box(painter, box, pen_of(rim), PAPER)), painted(stroke)
    assert np.abs(filled - stroked).max() <= 2 * STEP
    assert np.abs(filled - stroked).mean() < 1


def test_a_box_slimmer_than_its_rim_is_all_rim() -> None:
    seen = painted(lambda painter: paint_box(painter, QRectF(10, 10, 100, 1), pen_of(2), PAPER))
    assert seen[10, 50] == RIM.red()
    assert PAPER.red() not in seen


@pytest.mark.parametrize("fill", [None, QColor(200, 100, 50, 90)])
def test_a_box_that_shows_what_is_under_it_is_stroked_alone(fill: QColor | None) -> None:
    seen = painted(lambda painter: paint_box(painter, QRectF(10, 10, 100, 50), pen_of(1.2), fill))
    assert seen[35, 50] == (255 if fill is None else pytest.approx(255 - 55 * 90 / 255, abs=1))


@given(places, places, sizes, sizes)
def test_a_chip_looks_as_stroked(left: float, top: float, width: float, height: float) -> None:
    box = QRectF(left, top, width + 4, height + 4)

    def stroke(painter: QPainter) -> None:
        painter.setPen(QPen(RIM, 1))
        painter.setBrush(PAPER)
        painter.drawRoundedRect(box, 4, 4)

    filled, stroked = painted(lambda painter: paint_chip(painter, box, 4, RIM, PAPER)), painted(stroke)
    assert np.abs(filled - stroked).max() <= 3 * STEP
    assert np.abs(filled - stroked).mean() < 1


@given(places, places, st.sampled_from([0.8, 1.2, 1.4]), st.booleans(), st.booleans())
def test_a_line_looks_as_stroked(left: float, top: float, width: float, upright: bool, dashed: bool) -> None:
    start = QPointF(left, top)
    end = start + (QPointF(0, BEYOND) if upright else QPointF(BEYOND, 0))
    pen = pen_of(width)
    if dashed:
        pen.setDashPattern([5, 3])

    def stroke(painter: QPainter) -> None:
        painter.setPen(pen)
        painter.drawLine(start, end)

    filled = painted(lambda painter: paint_line(painter, start, end, pen))
    assert np.abs(filled - painted(stroke)).max() <= STEP


@pytest.mark.parametrize(
    "style", [Qt.BrushStyle.BDiagPattern, Qt.BrushStyle.Dense6Pattern, Qt.BrushStyle.CrossPattern]
)
def test_a_piece_of_hatch_goes_on_as_the_hatch(style: Qt.BrushStyle) -> None:
    ink, area = QColor(90, 60, 20, 150), QRectF(3.3, 4.6, 170.5, 180.2)
    hatched = painted(lambda painter: painter.fillRect(area, QBrush(ink, style)))
    laid = painted(lambda painter: painter.fillRect(area, QBrush(_tile(style, ink.rgba()))))
    assert np.abs(hatched - laid).max() <= 1
    assert hatched.min() < 255
