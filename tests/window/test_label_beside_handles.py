"""What is left is read beside a chosen block, whose ends are taken hold of at half the height of its bed."""

import pytest
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.marks import Label
from gardenplot.drawing.style import LIGHT
from gardenplot.window.painting import Scale, paint

GROUND = "#ff00ff"


@pytest.mark.parametrize(("room", "tall", "in_the_middle"), [(50, 120, False), (90, 120, True), (50, 40, True)])
def test_words_that_fill_their_ground_stand_above_what_ends_are_pulled_by(
    dressed: QApplication, room: int, tall: int, in_the_middle: bool
) -> None:
    assert dressed is not None
    picture = QImage(room, tall, QImage.Format.Format_RGB32)
    picture.fill(QColor(GROUND))
    painter = QPainter(picture)
    label = Label((room / 2, tall / 2), ("94 cm left, and more", "94 cm"), room, tall, bold=True)
    paint(painter, (label,), Scale(1.0, 1.0, 0.0, float(room)), LIGHT)
    painter.end()
    written = {y for y in range(tall) for x in range(room) if picture.pixelColor(x, y).name() != GROUND}
    assert written
    middle = set(range(tall // 2 - 8, tall // 2 + 8))
    assert bool(written & middle) is in_the_middle
