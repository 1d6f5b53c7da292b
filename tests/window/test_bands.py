"""A better filling is painted strip by strip, so that nothing waits for all of it, and comes to the same picture."""

from typing import Any

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QRect
from PySide6.QtGui import QImage, QRegion
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.strips import Strip
from gardenplot.gestures.proposal import hold, proposed
from gardenplot.gestures.stage import Trial
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.window import canvas, canvas_paint, strip_pictures
from gardenplot.window.canvas_bands import MOST, bands
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from tests.plans import metric_plan
from tests.window.painted import Painted
from tests.window.test_repaint import anew, settled

(LAID, *_others) = lay_out_plan(metric_plan())


@given(
    heights=st.lists(st.tuples(st.floats(0, 80), st.floats(0.5, 200)), max_size=60),
    top=st.floats(-3000, 200),
    frame=st.builds(QRect, st.just(0), st.just(0), st.integers(1, 3000), st.integers(1, 2000)),
)
def test_bands_are_a_frame_cut_from_edge_to_edge_below_its_strips(
    heights: list[tuple[float, float]], top: float, frame: QRect
) -> None:
    strips, at = [], 0.0
    for gap, height in heights:
        strips.append(Strip(LAID, at + gap, height))
        at += gap + height
    found = list(bands(strips, top, frame))
    assert 1 <= len(found) <= MOST + 1
    assert sum(one.width() * one.height() for one in found) == frame.width() * frame.height()
    assert sum((QRegion(one) for one in found), QRegion()) == QRegion(frame)
    feet = {round(strip.top + strip.height + top) for strip in strips}
    assert {one.bottom() + 1 for one in found[:-1]} <= feet


def filled(plan: Plan, beds: int) -> tuple[Plan, Plan]:
    """A plan of so many beds without plantings, and one in which each of them is planted."""
    block = plan.plantings[0]
    empty = evolve(plan, beds=tuple(evolve(plan.beds[0], id=f"n{number}") for number in range(beds)), plantings=())
    more = tuple(evolve(block, id=f"q{number}", bed=f"n{number}") for number in range(beds))
    return empty, evolve(empty, plantings=more)


def begun(window: MainWindow, document: Document) -> tuple[Trial, QImage]:
    """Have a proposal for six empty beds waited for: the proposal, and what the canvas shows before."""
    empty, full = filled(metric_plan(), 6)
    document.start(empty)
    window.canvas.view.fit(all_beds=True)
    window.canvas.stage.begin(hold(), measuring=True)
    return proposed(empty, full), settled(window)


def test_what_is_shown_in_bits_is_painted_a_part_at_a_time_and_all_of_it_in_the_end(
    window: MainWindow, document: Document
) -> None:
    full, blank = begun(window, document)
    seen = Painted()
    window.canvas.viewport().installEventFilter(seen)
    window.canvas.stage.show(full, in_bits=True)
    for _turn in range(200):
        QApplication.processEvents()
    shown = settled(window)
    tall = window.canvas.viewport().height()
    heights = [rect.height() for rect in seen.rects]
    assert len(heights) >= 6
    assert max(heights) < tall / 2
    assert sum(heights) >= tall
    assert shown != blank
    assert shown == anew(window)


def test_what_is_given_up_before_all_of_it_was_painted_leaves_nothing_behind(
    window: MainWindow, document: Document
) -> None:
    full, blank = begun(window, document)
    window.canvas.stage.show(full, in_bits=True)
    QApplication.processEvents()
    window.canvas.stage.give_up()
    for _turn in range(100):
        QApplication.processEvents()
    assert settled(window) == blank == anew(window)


def test_what_is_painted_in_bits_was_made_ready_in_turns_before(
    window: MainWindow, document: Document, monkeypatch: pytest.MonkeyPatch
) -> None:
    full, _blank = begun(window, document)
    made, is_painting = list[bool](), [False]
    make, paint = strip_pictures._painted, canvas_paint.paint_scene

    def painted(*all_of_it: Any) -> strip_pictures.Picture:
        made.append(is_painting[0])
        return make(*all_of_it)

    def paint_scene(*all_of_it: Any) -> None:
        is_painting[0] = True
        paint(*all_of_it)
        is_painting[0] = False

    monkeypatch.setattr(strip_pictures, "_painted", painted)
    monkeypatch.setattr(canvas, "paint_scene", paint_scene)
    window.canvas.stage.show(full, in_bits=True)
    for _turn in range(200):
        QApplication.processEvents()
    assert made == [False] * 6
