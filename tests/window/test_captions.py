"""Captions below a bed near the edge of the drawing: read with their tape readings where there is room at all."""

from typing import Any

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QImage, QPainter

from gardenplot.drawing.captions import Caption, captions
from gardenplot.drawing.letters import looks
from gardenplot.layout import lay_out_bed
from gardenplot.plan import Plan
from gardenplot.window import canvas_captions
from gardenplot.window.canvas_captions import caption_lines, paint_captions
from gardenplot.window.theme import palette
from tests.gestures.hand import block, ground

ALONG = 0.05
"""Pixels for a mm of bed: 12 m are 600 pixels."""


def below(plan: Plan) -> tuple[Caption, ...]:
    """The captions of the plan's one bed."""
    return captions(plan, lay_out_bed(plan, plan.beds[0]), None, looks(plan))


def painted(shown: tuple[Caption, ...], right: float, monkeypatch: pytest.MonkeyPatch) -> dict[str, QPointF]:
    """What is written of captions where the drawing ends at so many pixels, and where."""
    seen: dict[str, QPointF] = {}

    def show(_painter: QPainter, frame: QRectF, _paint: Any, _letter: str, words: str, *_more: Any) -> None:
        seen[words] = frame.topLeft()

    monkeypatch.setattr(canvas_captions._KEPT, "show", show)
    image = QImage(800, 200, QImage.Format.Format_RGB32)
    painter, sight = QPainter(image), QRectF(0, 0, right, 200)
    paint_captions(painter, shown, ALONG, 60, sight, caption_lines(shown, ALONG, sight), palette())
    painter.end()
    return seen


@pytest.mark.usefixtures("dressed")
def test_the_last_caption_goes_back_to_where_its_readings_can_be_read(monkeypatch: pytest.MonkeyPatch) -> None:
    one, last = below(ground(block("0 m", "1 m"), block("9 m", "2 m")))
    free = painted((one, last), 800, monkeypatch)
    near = painted((one, last), 600, monkeypatch)
    assert one.read in free
    assert last.read in free
    assert free.keys() == near.keys()
    assert near[last.read].x() < free[last.read].x()
    assert near[last.read].y() == free[last.read].y(), "there is room in the same line"


@pytest.mark.usefixtures("dressed")
def test_it_takes_the_second_line_where_the_one_before_leaves_no_room(monkeypatch: pytest.MonkeyPatch) -> None:
    one, last = below(ground(block("4 m", "4.8 m"), block("9 m", "2 m")))
    near = painted((one, last), 600, monkeypatch)
    assert {one.read, last.read} == near.keys()
    assert near[last.read].y() > near[one.read].y()


@pytest.mark.usefixtures("dressed")
def test_a_block_that_goes_on_beyond_the_drawing_keeps_its_letter_at_its_head(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    one, last = below(ground(block("0 m", "1 m"), block("9 m", "2 m")))
    cut = painted((one, last), 500, monkeypatch)
    assert last.read not in cut
    assert one.read in cut
