"""What is kept as a picture and shown again looks as if it were painted where it stands."""

from collections.abc import Callable
from functools import partial
from math import inf

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter

from gardenplot.drawing.strips import Ground, Strips
from gardenplot.drawing.style import DARK, LIGHT, Ink
from gardenplot.units import Units
from gardenplot.window.canvas_tape import _BASE, _paint_stretch, _Stretch, paint_tape
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.kept_pictures import KeptPictures

pytestmark = pytest.mark.usefixtures("dressed")
WIDE, TALL = 900, TAPE
STEP = 6
"""How far a shade may be off where clear pixels are laid on paper."""
INK = QColor(20, 60, 160)
FRAME = QRectF(0, 0, 60, 20)
sharpnesses = st.sampled_from([1.0, 1.25, 1.3, 1.5, 2.0, 3.0])


def seen(sharp: float, paint: Callable[[QPainter], object]) -> NDArray[np.int64]:
    """The red of all pixels of a screen with so many of them to a pixel, painted on white."""
    image = QImage(round(WIDE * sharp), round(TALL * sharp), QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(sharp)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint(painter)
    painter.end()
    return np.array(image.constBits(), dtype=np.int64).reshape(image.height(), -1, 4)[:, : image.width(), 2]


def chip(painter: QPainter) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(INK)
    painter.drawRoundedRect(FRAME.adjusted(1, 1, -1, -1), 5, 5)


@given(st.integers(0, 800), st.integers(0, 20), sharpnesses)
def test_a_picture_looks_as_what_is_painted_on_whole_pixels(left: int, top: int, sharp: float) -> None:
    at = QPointF(left / sharp, top / sharp)
    shown = seen(sharp, lambda on: KeptPictures(4).show(on, FRAME.translated(at), chip))

    def painted(on: QPainter) -> None:
        on.translate(at)
        chip(on)

    assert np.abs(shown - seen(sharp, painted)).max() <= 2


@given(st.floats(0, 800), sharpnesses)
def test_it_is_as_sharp_wherever_it_stands(left: float, sharp: float) -> None:
    kept = KeptPictures(4)
    frames = (FRAME.translated(beside, 4) for beside in (left, 0.0))
    there, here = (seen(sharp, partial(kept.show, frame=frame, paint=chip)) for frame in frames)
    assert np.sort(there, axis=None).tolist() == np.sort(here, axis=None).tolist()


def test_it_is_painted_once_for_each_sharpness_and_again_when_it_was_let_go() -> None:
    kept, made = KeptPictures(2), list[str]()

    def note(_on: QPainter, key: str) -> None:
        made.append(key)

    def show(key: str, sharp: float = 1.0) -> None:
        seen(sharp, lambda on: kept.show(on, FRAME, note, key))

    for key in ("A", "A", "B", "A"):
        show(key)
    show("A", 2.0)
    assert made == ["A", "B", "A"], "the one in twice as many pixels is another"
    show("A")
    assert made == ["A", "B", "A", "A"], "the first was let go for it"


@given(
    st.integers(-2000, 400).map(lambda half: 2 * half),
    # No reading lies right between two pixels, where either would do for its words.
    st.integers(10, 2000).map(lambda number: number / 997),
    st.sampled_from([1.0, 1.5, 2.0, 3.0]),
    st.sampled_from(Units),
)
@example(388, 0.516, 1.0, Units.METRIC)
def test_the_tape_looks_as_painted_in_one_piece(left: int, along: float, sharp: float, units: Units) -> None:
    gutter = 110
    strips = Strips((), along, 1.0, 100.0, ground=Ground(0, 100), gutter=gutter)

    def in_one_piece(on: QPainter) -> None:
        on.fillRect(QRectF(0, 0, WIDE, TAPE), QColor(LIGHT[Ink.PAPER]))
        on.save()
        on.setClipRect(QRectF(gutter - 10, 0, WIDE, TAPE))
        whole = _Stretch(-left - 99, WIDE - left + 99, -99, along, inf, units)
        _paint_stretch(on, whole, LIGHT[Ink.INK], LIGHT[Ink.PAPER])
        on.restore()
        on.fillRect(QRectF(0, TAPE - 1, WIDE, 1), QColor(LIGHT[Ink.RULE]))

    shown = seen(sharp, lambda on: paint_tape(on, QRect(0, 0, WIDE, TAPE), strips, left, units, LIGHT))
    apart = np.abs(shown - seen(sharp, in_one_piece))[:, round(gutter * sharp) :]
    assert apart.max() <= STEP


def test_the_tape_ends_with_the_longest_bed_and_is_dark_on_a_dark_screen() -> None:
    stretch = _Stretch(0, 400, 0, 0.1, 3000, Units.METRIC)
    light, dark = (
        seen(1.0, partial(_paint_stretch, shown=stretch, ink=inks[Ink.INK], paper=inks[Ink.PAPER]))
        for inks in (LIGHT, DARK)
    )
    row = int(_BASE)
    assert (light[row, 4:300] < 120).all()
    assert (light[row, 302:400] == 255).all()
    assert light[row, 20:280].max() < dark[row, 20:280].min()
