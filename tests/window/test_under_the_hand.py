"""What is written while the hand works keeps off the bed that it works in, and captions keep their lines."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.strips import Strip
from gardenplot.drawing.style import Ink
from gardenplot.files import sample
from gardenplot.gestures.kept import layout_in
from gardenplot.layout import standing
from gardenplot.units import MM
from gardenplot.window.canvas_captions import paint_captions
from gardenplot.window.canvas_paint import Scene, lines_box, lines_under
from gardenplot.window.canvas_selection import _around
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.hand_box import _fitted, box_of, seen_of
from gardenplot.window.main import MainWindow
from tests.gestures.hand import block, ground
from tests.window.mouse import Mouse

Key, Keys = Qt.Key, Qt.KeyboardModifier
_LEFT = Qt.MouseButton.LeftButton
SAMPLES = ("kestrel-howe", "larch-bend", "tarn-garth")

_TOUCHING = 1e-6
"""Pixels by which two that only touch may overlap in floating point."""


def drags(window: MainWindow, mouse: Mouse) -> Iterator[Scene]:
    """Scenes of a drag of the first block of each bed in sight, to and fro."""
    canvas = window.canvas
    for strip in canvas.view.strips().strips:
        shown = standing(strip.laid, window.sight.day)
        if not shown or strip.top + strip.height + TAPE > canvas.viewport().height():
            continue
        start = canvas.places.point_of(strip.bed, shown[0].start, 0) + QPointF(30, strip.height / 2)
        QTest.mousePress(canvas.viewport(), _LEFT, Keys.NoModifier, start.toPoint())
        for by, held in ((40, Keys.NoModifier), (150, Keys.ShiftModifier), (300, Keys.ControlModifier)):
            mouse.move_to(start + QPointF(by, 0), held)
            yield canvas._scene()
        QTest.keyClick(canvas, Key.Key_Escape)
        mouse.release()


def strip_of(scene: Scene, bed: str | None) -> Strip:
    strip = scene.strips.strip_of(bed or "")
    assert strip is not None
    return strip


@pytest.mark.parametrize("name", SAMPLES)
def test_the_lines_under_the_hand_never_lie_on_the_bed_or_its_captions(
    window: MainWindow, mouse: Mouse, name: str
) -> None:
    window.document.open(sample(f"{name}.gardenplot"))
    boxes = []
    for scene in drags(window, mouse):
        assert scene.trial is not None
        strip, frame = strip_of(scene, scene.trial.bed), window.canvas._frame()
        box = lines_box(scene, frame, lines_under(scene))
        worked = QRectF(0, strip.top + scene.top, frame.width(), strip.height + scene.strips.captions)
        assert not box.adjusted(0, _TOUCHING, 0, -_TOUCHING).intersects(worked)
        assert QRectF(0, TAPE, frame.width(), frame.height()).contains(box)
        boxes.append(box)
    assert boxes


def test_where_a_bed_fills_the_window_the_lines_stand_beside_the_hand(window: MainWindow) -> None:
    window.canvas.view.set_true_scale(True)
    window.canvas.view.zoom_to(0, 200 * MM)
    scene, frame = window.canvas._scene(), window.canvas._frame()
    seen = seen_of(scene.strips, scene.top, (scene.strips.strips[0].bed,))
    at = QPointF(300, 300)
    box = box_of(frame, at, (("3 plants", Ink.INK),), seen)
    assert (box.left(), box.top()) == (316, 322)


def test_in_a_narrow_window_a_line_goes_on_below_and_loses_no_word(window: MainWindow) -> None:
    wide, narrow = QRect(0, 0, 1200, 700), QRect(0, 0, 360, 700)
    lines = (("Leek   3 × 12 = 36 of 90 plants   0.30 – 2.10 m   1.80 m long   9.60 m left on 9 Apr", Ink.INK),)
    assert window.isVisible()
    assert _fitted(wide, lines) == lines
    folded = _fitted(narrow, lines)
    assert len(folded) > 1
    assert "   ".join(words for words, _ink in folded) == lines[0][0]
    box = box_of(narrow, QPointF(300, 300), lines)
    assert box.height() == 22 * len(folded) + 8
    assert 0 < box.left() < box.right() < narrow.width()


def test_what_is_measured_stands_off_its_bed_too(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    boxes: list[QRectF] = []

    def noted(_painter: object, _frame: object, box: QRectF, *_rest: object) -> None:
        boxes.append(box)

    monkeypatch.setattr("gardenplot.window.canvas_selection.paint_lines", noted)
    window.blocks.measure()
    QApplication.processEvents()
    scene = window.canvas._scene()
    assert scene.trial is not None
    assert scene.trial.measured is not None
    strip = strip_of(scene, scene.trial.measured.end.bed)
    assert boxes
    assert boxes[-1].top() >= strip.top + strip.height + scene.strips.captions + scene.top


def test_captions_keep_their_lines_while_a_block_is_dragged_past_them(
    window: MainWindow, mouse: Mouse, monkeypatch: pytest.MonkeyPatch
) -> None:
    window.document.start(ground(*(block(start, "60 cm") for start in ("1 m", "4 m", "5 m", "9 m"))))
    drawn: list[dict[str, int]] = []

    def noted(*given: object) -> None:
        if len(given[1]) > 1:  # type: ignore[arg-type]  # the captions of a bed
            drawn.append(dict(given[5]))  # type: ignore[call-overload]  # their lines
        paint_captions(*given)  # type: ignore[arg-type]  # what it was called with

    monkeypatch.setattr("gardenplot.window.canvas_paint.paint_captions", noted)
    window.canvas.viewport().repaint()
    mouse.press("b1", "4.3 m")
    for reading in ("4.8 m", "6.5 m", "8 m", "2.6 m", "11 m"):
        mouse.move("b1", reading)
        window.canvas.viewport().repaint()
    assert set(drawn[0].values()) == {0, 1}
    assert all(lines == drawn[0] for lines in drawn)
    mouse.release()


def test_the_frame_round_a_block_keeps_to_the_ground_that_the_block_has(window: MainWindow) -> None:
    window.document.open(sample("tarn-garth.gardenplot"))
    scene = window.canvas._scene()
    strip = strip_of(scene, "ell")
    kale = layout_in(scene.plan, "kale-1")
    frame = _around(scene, strip, kale, 2)
    middle = (kale.start + kale.end) / 2 / MM * scene.strips.along
    assert frame.boundingRect().bottom() < strip.height * 0.6
    assert frame.contains(QPointF(middle, strip.height * 0.2))
    assert not frame.contains(QPointF(middle, strip.height * 0.8))
