"""What the drawing means is told by form too: selection, findings, leftover, plantings, to all kinds of eyes."""

from itertools import combinations

import numpy as np
import pytest
from PySide6.QtCore import QRect
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.bed import draw_bed
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.marks import Hatch, Mark, Outline, Pen, Shape, Weight, box
from gardenplot.drawing.style import DARK, LIGHT, Ink, Palette
from gardenplot.layout import lay_out_bed
from gardenplot.plan.edits import change_planting
from gardenplot.units import CM, Units, length_of
from gardenplot.window.main import MainWindow
from gardenplot.window.painting import Scale, paint
from tests.colours_seen import Sight, Values, contrasts, seen_light
from tests.plans import metric_plan
from tests.window.shared_window import window
from tests.window.walk import cut, light, picture, settle

__all__ = ["window"]

SIGHTS = pytest.mark.parametrize("sight", Sight)
TOLD = 3.0


def canvas(window: MainWindow, sight: Sight) -> Values:
    """The drawing as those eyes see it."""
    settle(window)
    return seen_light(light(picture(window.canvas.viewport())), sight)


def stretch(window: MainWindow, bed: str, start: int, end: int) -> QRect:
    """The piece of the canvas between two tape readings in cm of a bed."""
    width = next(one for one in window.document.plan.beds if one.id == bed).width.nm
    corners = [window.canvas.places.point_of(bed, *at) for at in ((start * CM, 0), (end * CM, width))]
    return QRect(corners[0].toPoint(), corners[1].toPoint())


def changed(one: Values, other: Values, frame: QRect) -> int:
    """How many pixels of a piece differ so much that it is seen."""
    parts = [values[frame.top() : frame.bottom() + 1, frame.left() : frame.right() + 1] for values in (one, other)]
    return int(np.count_nonzero(contrasts(parts[0], parts[1]) >= TOLD))


@SIGHTS
def test_what_is_selected_has_a_frame_and_handles(window: MainWindow, sight: Sight) -> None:
    window.shelf.search.setFocus()
    before = canvas(window, sight)
    window.sight.select("b1", "p1")
    frame = stretch(window, "b1", 30, 1030).adjusted(-6, -6, 6, 6)
    assert changed(before, canvas(window, sight), frame) >= frame.width()


@SIGHTS
def test_a_bed_that_is_selected_has_a_bar_beside_its_name(window: MainWindow, sight: Sight) -> None:
    window.shelf.search.setFocus()
    before = canvas(window, sight)
    window.sight.select("b2")
    bed = stretch(window, "b2", 0, 100)
    assert changed(before, canvas(window, sight), QRect(0, bed.top(), 8, bed.height())) >= bed.height()


@SIGHTS
@pytest.mark.parametrize("inks", [LIGHT, DARK], ids=["light", "dark"])
def test_ground_that_two_plantings_want_is_crossed(dressed: QApplication, sight: Sight, inks: Palette) -> None:
    assert dressed is not None
    block = Outline(box(0, 0, 60, 30), fill=Ink.PLANTING_1, tint=0.16)
    trouble = Outline(box(0, 0, 60, 30), pen=Pen(Ink.ACCENT, Weight.STAKE), hatch=Hatch.CROSSED)
    plain, crossed = (painted(marks, inks, sight) for marks in ((block,), (block, trouble)))
    assert np.mean(contrasts(plain, crossed)[4:-4, 4:-4] >= 2) > 0.15


def test_an_overlap_is_drawn_with_that_hatch(window: MainWindow) -> None:
    plan = window.document.plan
    over = change_planting(plan, "p2", bed="b1", start=length_of(400 * CM, Units.METRIC))
    figure = draw_bed(lay_out_bed(over, over.beds[0]), None, looks(over), Units.METRIC)
    assert any(isinstance(mark, Outline) and mark.hatch is Hatch.CROSSED for mark in figure.marks)


@SIGHTS
def test_leftover_is_hatched_and_bare_soil_is_not(window: MainWindow, sight: Sight) -> None:
    seen = canvas(window, sight)
    hatched, bare = (lines_in(seen, stretch(window, "b1", *ends)) for ends in ((1045, 1125), (1472, 1498)))
    assert 0.05 < hatched < 0.6
    assert bare < 0.02


def lines_in(seen: Values, frame: QRect) -> float:
    """What share of a piece stands out from its lightest ground."""
    inner = frame.adjusted(3, 6, -3, -6)
    part = seen[inner.top() : inner.bottom() + 1, inner.left() : inner.right() + 1].reshape(-1, 3)
    ground = part[[int(part.sum(axis=-1).argmax())]]
    return float((contrasts(part, ground) >= 1.3).mean())


@SIGHTS
@pytest.mark.parametrize("inks", [LIGHT, DARK], ids=["light", "dark"])
def test_plantings_from_afar_are_told_by_their_hatch(dressed: QApplication, sight: Sight, inks: Palette) -> None:
    """All in one colour: blocks of any two shapes differ in a good share of their pixels."""
    assert dressed is not None
    patches = [afar(shape, inks, sight) for shape in Shape]
    for one, other in combinations(patches, 2):
        assert np.mean(contrasts(one, other) >= 1.5) > 0.1


def afar(shape: Shape, inks: Palette, sight: Sight) -> Values:
    """A block as it is drawn from afar."""
    look = Look("p1", "A", Ink.PLANTING_1, shape)
    return painted((Outline(box(0, 0, 60, 30), fill=look.ink, tint=0.4, hatch=look.hatch),), inks, sight)


def painted(marks: tuple[Mark, ...], inks: Palette, sight: Sight) -> Values:
    """Marks on 60 × 30 pixels of soil, as those eyes see them."""
    image = QImage(60, 30, QImage.Format.Format_RGB888)
    image.fill(inks[Ink.SOIL])
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint(painter, marks, Scale(1, 1, 0, 60), inks)
    painter.end()
    rows = np.frombuffer(bytes(image.constBits()), np.uint8).reshape(30, image.bytesPerLine())[:, :180]
    return seen_light(light(rows.reshape(30, 60, 3)), sight)


def test_the_samples_of_these_tests_are_what_they_are_taken_for(window: MainWindow) -> None:
    """The readings above lie in the leftover and in the foot margin of the first bed."""
    assert window.document.plan == metric_plan()
    pixels = picture(window.canvas.viewport())
    assert cut(pixels, stretch(window, "b1", 1045, 1125)).size > 0
