"""Marks on paper: plan millimetres to points at a scale, in black and white, three weights of line."""

from collections.abc import Iterator
from math import ceil, cos, pi, sin, sqrt, tau
from typing import assert_never

import numpy as np
from attrs import frozen
from numpy.typing import NDArray
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from gardenplot.drawing.marks import Circle, Hatch, Label, Line, Mark, Outline, Plants, Point, Shape, Weight
from gardenplot.drawing.part import Window
from gardenplot.drawing.style import Ink
from gardenplot.layout.positions import positions
from gardenplot.sheets.paper import BOLD, FACE, POINT_PER_MM
from gardenplot.units import MM

_WIDTHS = {
    Weight.ROW: 0.18 * POINT_PER_MM,
    Weight.EDGE: 0.35 * POINT_PER_MM,
    Weight.STAKE: 0.5 * POINT_PER_MM,
}
_HATCH_STEP = 3.2 * POINT_PER_MM
_LABEL = 10
_OFF_CIRCLE = 0.01
"""Millimetres on paper by which a polygon may lie beside its circle."""


@frozen
class Frame:
    """Where a bed lies on the page: the head's end of its base line in points, and points per mm along and across.

    Across runs down the page, as the base line is the left edge seen from the head.
    """

    left: float
    top: float
    along: float
    across: float
    window: Window | None = None
    """The part of the bed that is seen, all of it where there is none."""

    def place(self, x: float, y: float) -> tuple[float, float]:
        """A place in mm as a point of the page."""
        return self.left + x * self.along, self.top - y * self.across


def render(page: Canvas, marks: tuple[Mark, ...], frame: Frame) -> None:
    """Draw marks; tints are left white, since colour and grey do not survive a photocopy."""
    for mark in marks:
        match mark:
            case Outline():
                _outline(page, mark, frame)
            case Plants():
                _plants(page, mark, frame)
            case Line():
                _line(page, mark, frame)
            case Label():
                _label(page, mark, frame)
            case _:
                assert_never(mark)


def _path(page: Canvas, mark: Outline, frame: Frame) -> PDFPathObject:
    path = page.beginPath()
    corners = mark.points if mark.circle is None else _round(mark.circle, max(frame.along, frame.across))
    for number, corner in enumerate(corners):
        x, y = frame.place(*corner)
        (path.lineTo if number else path.moveTo)(x, y)
    path.close()
    return path


def _round(circle: Circle, scale: float) -> tuple[Point, ...]:
    """A circle as a polygon in mm that at so many points per mm lies no farther beside it than is seen on paper.

    The middle of a side lies r (1 - cos(pi / n)) inside the circle, which is less than r (pi / n)^2 / 2.
    """
    (x, y), radius = circle
    count = 4 * max(9, ceil(pi * sqrt(radius * scale / POINT_PER_MM / (2 * _OFF_CIRCLE)) / 4))
    turns = (turn * tau / count for turn in range(count))
    return tuple((x + radius * cos(turn), y + radius * sin(turn)) for turn in turns)


def _outline(page: Canvas, mark: Outline, frame: Frame) -> None:
    if mark.hatch is Hatch.SLANTED or mark.hatch is Hatch.CROSSED:
        _hatch(page, mark, frame)
    if mark.hatch is Hatch.SOWN:
        _sown(page, mark, frame)
    if mark.pen is not None:
        page.setLineWidth(_WIDTHS[mark.pen.weight])
        page.setDash(3, 2) if mark.pen.dashed else page.setDash()
        page.drawPath(_path(page, mark, frame), stroke=1, fill=1 if mark.fill is Ink.INK else 0)
        page.setDash()


def _bounds(mark: Outline, frame: Frame) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of what is seen of a shape, in points."""
    xs, ys = zip(*(frame.place(*corner) for corner in mark.points), strict=True)
    if frame.window is None:
        return min(xs), min(ys), max(xs), max(ys)
    (left, top), (right, bottom) = (
        frame.place(frame.window.left, frame.window.top), frame.place(frame.window.right, frame.window.bottom)
    )  # fmt: skip
    return max(min(xs), left), max(min(ys), bottom), min(max(xs), right), min(max(ys), top)


def _hatch(page: Canvas, mark: Outline, frame: Frame) -> None:
    left, bottom, right, top = _bounds(mark, frame)
    height = top - bottom
    page.saveState()
    page.clipPath(_path(page, mark, frame), stroke=0, fill=0)
    page.setLineWidth(_WIDTHS[Weight.ROW])
    for x in _steps(left - height, right, frame.left - frame.top + bottom, _HATCH_STEP):
        page.line(x, bottom, x + height, top)
    if mark.hatch is Hatch.CROSSED:
        for x in _steps(left - height, right, frame.left + frame.top - top, _HATCH_STEP):
            page.line(x, top, x + height, bottom)
    page.restoreState()


def _steps(first: float, last: float, through: float, step: float) -> Iterator[float]:
    """Steps from one number to another that meet a third, so that what is drawn on two pages goes on from one to the
    other.
    """
    for number in range(ceil((first - through) / step), ceil((last - through) / step)):
        yield through + number * step


def _sown(page: Canvas, mark: Outline, frame: Frame) -> None:
    """A broadcast band as scattered dots."""
    left, bottom, right, top = _bounds(mark, frame)
    step = 1.6 * POINT_PER_MM
    page.saveState()
    page.clipPath(_path(page, mark, frame), stroke=0, fill=0)
    page.setLineWidth(0.35 * POINT_PER_MM)
    page.setLineCap(1)
    for y in _steps(bottom, top, frame.top - step / 2, step):
        odd = round((frame.top - y) / step - 0.5) % 2
        for x in _steps(left, right, frame.left + step * (0.3 + 0.55 * odd), step):
            page.line(x, y, x, y)
    page.restoreState()


def _line(page: Canvas, mark: Line, frame: Frame) -> None:
    (x1, y1), (x2, y2) = frame.place(*mark.start), frame.place(*mark.end)
    reach = mark.overhang * POINT_PER_MM
    page.setLineWidth(_WIDTHS[mark.pen.weight])
    page.setDash(3, 2) if mark.pen.dashed else page.setDash()
    page.line(x1, y1 + reach, x2, y2 - reach)
    page.setDash()


def _label(page: Canvas, mark: Label, frame: Frame) -> None:
    face = BOLD if mark.bold else FACE
    room = mark.room * frame.along - 6
    text = next((one for one in mark.texts if pdfmetrics.stringWidth(one, face, _LABEL) <= room), None)
    if text is None:
        return
    x, y = frame.place(*mark.at)
    width = pdfmetrics.stringWidth(text, face, _LABEL)
    page.setFillGray(1)
    page.rect(x - width / 2 - 2.5, y - _LABEL * 0.55, width + 5, _LABEL * 1.1, stroke=0, fill=1)
    page.setFillGray(0)
    page.setFont(face, _LABEL)
    page.drawCentredString(x, y - _LABEL * 0.36, text)


def plant_radius(spread: float, frame: Frame) -> float:
    """The radius in points of the mark of a plant that is so many mm wide: no smaller and no larger than is read."""
    return _radius(spread, frame, 2.2)


def kept_radius(spread: float, frame: Frame) -> float:
    """The radius in points of the ring round a place that is kept: larger than a plant that stands in it."""
    return _radius(spread, frame, 3.6)


def _radius(spread: float, frame: Frame, most: float) -> float:
    return max(0.32 * POINT_PER_MM, min(spread / 2 * min(frame.along, frame.across), most * POINT_PER_MM) * 0.8)


def _plants(page: Canvas, mark: Plants, frame: Frame) -> None:
    """Place one shape, kept once in the file, at every plant by raw operators (PDF 32000-1, 8.10 form XObjects)."""
    radius = kept_radius(mark.spread, frame) if mark.ink is Ink.ACCENT else plant_radius(mark.spread, frame)
    name = f"plant-{mark.shape}-{radius:.3f}".replace(".", "_")
    if not page.hasForm(name):
        _make_form(page, name, mark.shape, radius)
    in_bed = _in_sight(positions(mark.layout) / MM, frame.window)
    if not len(in_bed):
        return
    scale = np.array([frame.along, -frame.across])
    first, *others = (np.array([frame.left, frame.top]) + in_bed * scale).tolist()
    page.saveState()
    page.translate(*first)
    page.doForm(name)  # tells the page that it uses the form
    page.restoreState()
    page.addLiteral("\n".join([f"q 1 0 0 1 {x:.4f} {y:.4f} cm /FormXob.{name} Do Q" for x, y in others]))


def _in_sight(places: NDArray[np.float64], window: Window | None) -> NDArray[np.float64]:
    """The places in mm, of shape (n, 2), in a window; the rim of a plant beyond it would be a stray line."""
    if window is None:
        return places
    low, high = np.array([window.left, window.top]), np.array([window.right, window.bottom])
    return places[((places >= low) & (places <= high)).all(axis=1)]


def _make_form(page: Canvas, name: str, shape: Shape, radius: float) -> None:
    page.beginForm(name, -radius - 1, -radius - 1, radius + 1, radius + 1)
    page.setLineWidth(0.3 * POINT_PER_MM)
    page.setFillGray(0)
    page.setStrokeGray(0)
    side = radius * 0.85
    match shape:
        case Shape.DISC:
            page.circle(0, 0, radius, stroke=0, fill=1)
        case Shape.RING:
            page.circle(0, 0, radius, stroke=1, fill=0)
        case Shape.SQUARE:
            page.rect(-side, -side, 2 * side, 2 * side, stroke=0, fill=1)
        case Shape.CROSS:
            page.line(-side, -side, side, side)
            page.line(-side, side, side, -side)
        case Shape.DIAMOND:
            _polygon(page, [(0, radius), (radius, 0), (0, -radius), (-radius, 0)], fill=0)
        case Shape.TRIANGLE:
            _polygon(page, [(0, radius), (side, -side), (-side, -side)], fill=1)
    page.endForm()


def _polygon(page: Canvas, corners: list[tuple[float, float]], *, fill: int) -> None:
    path = page.beginPath()
    path.moveTo(*corners[0])
    for corner in corners[1:]:
        path.lineTo(*corner)
    path.close()
    page.drawPath(path, stroke=1, fill=fill)
