"""A bed is the same dots wherever its picture begins, at any sharpness of the screen and any size of text.

A bed is kept as a picture that begins half a window before what is in sight; what it shows must not depend on that.
"""

from itertools import product

import pytest
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.bed import BedFigure, draw_bed
from gardenplot.drawing.letters import looks
from gardenplot.drawing.marks import Hatch, Outline, box
from gardenplot.drawing.style import LIGHT, Ink
from gardenplot.layout import lay_out_bed
from gardenplot.window.painting import Scale
from gardenplot.window.strip_pictures import StripPictures
from tests.plans import metric_plan

WIDE, HIGH = 400, 200
"""Pixels of the canvas before it is sharper or its text larger."""
BAND = 200.0
"""Millimetres of bed across that each hatch has."""
SCROLLED = ((-300, -301), (-300, -263), (-300, -390), (-391, -285), (-391, -462))
"""Where the head of the bed lies when its picture is painted and when it is seen again, in pixels of the drawing.

Some of these lie halfway between two pixels of the screen.
"""


def every_hatch() -> BedFigure:
    """A bed of 20 m with a band of each hatch."""
    bands = [
        Outline(box(0, at * BAND, 20_000, (at + 1) * BAND), fill=Ink.PLANTING_1, tint=0.2, hatch=hatch)
        for at, hatch in enumerate(Hatch)
    ]
    return BedFigure("hatched", 20_000, BAND * len(bands), tuple(bands))


def planted() -> BedFigure:
    """A bed as it is drawn, with dashes, leftover and letters."""
    plan = metric_plan()
    return draw_bed(lay_out_bed(plan, plan.beds[0]), None, looks(plan), plan.place.units)


def seen(pictures: StripPictures, figure: BedFigure, along: float, left: int, times: tuple[float, float]) -> QImage:
    """A bed on a canvas of so many pixels of the screen a pixel, with text so many times as large."""
    sharp, text = times
    image = QImage(round(WIDE * sharp), round(HIGH * sharp), QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(sharp)
    image.fill(QColor("white"))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(text, text)
    painter.translate(left, 20)
    sight = Scale(along, 0.0931, max(0.0, -left / along), (WIDE / text - left) / along)
    pictures.paint(painter, [(figure, 0.0)], 0.0, sight, 10, LIGHT)
    painter.end()
    return image


@pytest.mark.parametrize("times", list(product((1.0, 1.25, 1.5, 2.0), (1.0, 1.25, 1.5))))
@pytest.mark.parametrize("figure", [every_hatch(), planted()], ids=["hatched", "planted"])
def test_a_picture_that_is_kept_shows_what_one_painted_anew_shows(
    dressed: QApplication, figure: BedFigure, times: tuple[float, float]
) -> None:
    assert dressed is not None
    for along, (before, left) in product((0.05587653543307087, 0.1, 0.3137), SCROLLED):
        kept = StripPictures()
        for at in (before, before - 20, before):
            # What is painted while one scrolls goes on beyond what is in sight.
            seen(kept, figure, along, at, times)
        picture = kept._pictures[figure.bed]
        shown = seen(kept, figure, along, left, times)
        assert kept._pictures[figure.bed] is picture
        assert shown == seen(StripPictures(), figure, along, left, times)
