"""What is painted piece by piece, from pictures kept, is what would be painted anew as a whole."""

import random
from collections.abc import Callable, Iterable
from datetime import date
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QGuiApplication, QImage, QPainter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.bed import BedFigure
from gardenplot.drawing.covers import Layer
from gardenplot.drawing.marks import Mark
from gardenplot.drawing.style import Palette
from gardenplot.errors import PlanError
from gardenplot.files import sample
from gardenplot.gestures.kept import layout_in
from gardenplot.plan import Cover, Plan
from gardenplot.plan.edits import add_cover, change_bed, change_crop, change_planting, remove_planting
from gardenplot.units import Units, parse_length
from gardenplot.window.canvas_paint import Scene
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.painting import Scale, paint
from gardenplot.window.strip_pictures import StripPictures
from tests.plan.test_edits import EVERY_ATTEMPT
from tests.plans import metric_plan, plans
from tests.window.conftest import made
from tests.window.mouse import Mouse
from tests.window.shared_window import window

__all__ = ["window"]

Keys = Qt.KeyboardModifier
_BESIDE = 60
"""Pixels beside what is in sight for a dash and a rim."""
SAMPLES = ("kestrel-howe", "larch-bend", "otter-steep", "tarn-garth")


def settled(window: MainWindow) -> QImage:
    """What the canvas shows once all that is waiting was painted."""
    QApplication.processEvents()
    return _shot(window)


def anew(window: MainWindow) -> QImage:
    """What it shows when all of it is painted with no picture kept."""
    window.canvas._pictures = StripPictures()
    window.canvas.viewport().repaint()
    return _shot(window)


def _shot(window: MainWindow) -> QImage:
    """What was painted last, which Qt keeps behind the widgets, and not a new painting."""
    screen = QGuiApplication.primaryScreen().grabWindow(window.winId()).toImage()
    canvas = window.canvas.viewport()
    corner = canvas.mapTo(window, canvas.rect().topLeft())
    times = screen.devicePixelRatio()
    left, top, width, height = (round(at * times) for at in (corner.x(), corner.y(), canvas.width(), canvas.height()))
    return screen.copy(left, top, width, height)


def wander(window: MainWindow, mouse: Mouse, chance: random.Random) -> None:
    """One thing that a person does to the sight or the plan."""
    canvas = window.canvas
    spot = QPointF(chance.uniform(150, canvas.viewport().width()), chance.uniform(60, canvas.viewport().height()))
    keys = (Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_Left, Qt.Key.Key_Right)
    deeds: tuple[Callable[[], object], ...] = (
        lambda: mouse.roll(spot, Keys.ControlModifier, chance.choice((-1, 1, 2))),
        lambda: mouse.roll(spot, Keys.ShiftModifier, chance.choice((-3, 3))),
        lambda: mouse.roll(spot, Keys.NoModifier, chance.choice((-2, 2))),
        lambda: canvas.view.fit(all_beds=chance.random() < 0.5),
        lambda: QTest.keyClick(canvas, chance.choice(keys), chance.choice((Keys.NoModifier, Keys.ControlModifier))),
        window.document.stack.undo,
        lambda: QTest.keyClick(canvas, Qt.Key.Key_Down, Keys.ShiftModifier),
        window.blocks.choose_all,
        window.blocks.measure,
        lambda: _drag(window, mouse, spot, chance),
        lambda: _drag(window, mouse, spot, chance),
    )
    chance.choice(deeds)()


def _drag(window: MainWindow, mouse: Mouse, spot: QPointF, chance: random.Random) -> None:
    """A drag that ends in the plan, is given up, or goes on."""
    QTest.mousePress(window.canvas.viewport(), Qt.MouseButton.LeftButton, Keys.NoModifier, spot.toPoint())
    for _step in range(4):
        held = chance.choice((Keys.NoModifier, Keys.ShiftModifier, Keys.ControlModifier, Keys.AltModifier))
        mouse.move_to(spot + QPointF(chance.uniform(-300, 300), chance.uniform(-500, 500)), held)
        QApplication.processEvents()
    assert settled(window) == anew(window)
    end = chance.random()
    if end < 0.3:
        QTest.keyClick(window.canvas, Qt.Key.Key_Escape)
    if end < 0.6:
        mouse.release()


@pytest.mark.parametrize("name", SAMPLES)
def test_whatever_a_person_does_the_canvas_shows_what_a_new_painting_would(
    window: MainWindow, mouse: Mouse, name: str
) -> None:
    window.document.open(sample(f"{name}.gardenplot"))
    chance = random.Random(name)
    for _turn in range(12):
        for _step in range(chance.randrange(1, 5)):
            wander(window, mouse, chance)
            QApplication.processEvents()
        assert settled(window) == anew(window)


def many_beds() -> Plan:
    """The metric plan, and 60 slim beds with a block each, of which one is too long for its bed."""
    plan, block = metric_plan(), metric_plan().plantings[0]
    beds = [evolve(plan.beds[0], id=f"n{number}", name=f"Row {number}") for number in range(60)]
    blocks = [evolve(block, id=f"q{number}", bed=f"n{number}", plants=60) for number in range(60)]
    blocks[11] = evolve(blocks[11], start=parse_length("13 m"))
    return evolve(plan, beds=(*plan.beds, *beds), plantings=(*plan.plantings, *blocks))


def test_where_beds_lie_close_nothing_that_lies_over_any_of_them_is_left_out(
    window: MainWindow, mouse: Mouse, monkeypatch: pytest.MonkeyPatch
) -> None:
    sight, layers = window.sight, window.canvas.layers
    window.document.start(many_beds())
    window.canvas.view.fit(all_beds=True)
    assert not window.canvas.view.strips().has_captions
    deeds: tuple[Callable[[], object], ...] = (
        lambda: sight.select("n7"),
        lambda: sight.select("n7", "q7"),
        lambda: sight.point_at(("n31", 0, parse_length("3 m").nm)),
        lambda: sight.show_day(date(2027, 4, 20)),
        lambda: sight.show_day(date(2027, 9, 1)),
        lambda: sight.show_day(None),
        lambda: layers.show(Layer.LEFTOVER, False),
        window.blocks.choose_all,
        lambda: mouse.press("n20", "4 m"),
        lambda: mouse.move("n20", "5 m", Keys.ShiftModifier),
        lambda: mouse.move("n11", "14.9 m", Keys.ShiftModifier),
        mouse.release,
    )
    for deed in deeds:
        deed()
        shown = settled(window)
        with monkeypatch.context() as all_of_them:
            all_of_them.setattr("gardenplot.window.canvas_paint._touched", _all_beds)
            assert shown == anew(window)


def _all_beds(scene: Scene) -> frozenset[str | None]:
    return frozenset(bed.id for bed in scene.plan.beds)


def noting_beds(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The beds that are painted from now on."""
    painted: list[str] = []
    paint = StripPictures.paint

    def noted(
        pictures: StripPictures, painter: QPainter, beds: Iterable[tuple[BedFigure, float]], *rest: Any
    ) -> None:
        some = list(beds)
        painted.extend(figure.bed for figure, _top in some)
        paint(pictures, painter, some, *rest)

    monkeypatch.setattr(StripPictures, "paint", noted)
    return painted


def test_a_step_of_a_drag_paints_no_more_than_the_beds_it_is_about(
    window: MainWindow, mouse: Mouse, monkeypatch: pytest.MonkeyPatch
) -> None:
    window.document.open(sample("kestrel-howe.gardenplot"))
    first = window.document.plan.beds[0].id
    mouse.press(first, "5 m")
    mouse.move(first, "5.2 m")
    QApplication.processEvents()
    painted = noting_beds(monkeypatch)
    mouse.move(first, "5.4 m")
    QApplication.processEvents()
    assert first in painted
    assert len(painted) < len(window.canvas.view.strips().strips)
    mouse.release()


@pytest.mark.usefixtures("own_settings")
@settings(max_examples=12)
@given(st.data(), plans())
def test_whatever_is_edited_the_canvas_shows_what_a_new_painting_would(
    hosts: list[MainWindow], data: st.DataObject, begun: Plan
) -> None:
    if not hosts:
        hosts.append(made(metric_plan()))
    shown = hosts[0]
    shown.document.start(begun)
    for _turn in range(data.draw(st.integers(1, 5))):
        try:
            after = EVERY_ATTEMPT[data.draw(st.sampled_from([*EVERY_ATTEMPT]))](shown.document.plan, data)
        except PlanError:
            continue
        shown.document.change("edit", after)
        assert settled(shown) == anew(shown)


EDITS: dict[str, Callable[[Plan], Plan]] = {
    "a bed is longer": lambda plan: change_bed(plan, "b1", length=parse_length("11 m")),
    "a bed has another name": lambda plan: change_bed(plan, "b1", name="The long one by the gate"),
    "a crop has another name": lambda plan: change_crop(plan, plan.crops[0].id, name="Other"),
    "what stood first in the walking order is gone": lambda plan: remove_planting(plan, "p1"),
    "a bed has a cover": lambda plan: add_cover(plan, Cover("c1", "b1", parse_length("1 m"), parse_length("3 m"))),
    "units are others": lambda plan: evolve(plan, place=evolve(plan.place, units=Units.FEET_AND_INCHES)),
    "beds are in another order": lambda plan: evolve(plan, beds=plan.beds[::-1]),
}


@pytest.mark.parametrize("edit", EDITS.values(), ids=EDITS.keys())
def test_whatever_changes_in_some_bed_is_seen_and_once_undone_is_seen_no_more(
    window: MainWindow, document: Document, edit: Callable[[Plan], Plan]
) -> None:
    document.start(many_beds())
    before = settled(window)
    document.change("edit", edit(document.plan))
    assert before != settled(window) == anew(window)
    document.stack.undo()
    assert settled(window) == anew(window) == before


def test_an_edit_paints_no_more_than_the_beds_it_changes(
    window: MainWindow, document: Document, monkeypatch: pytest.MonkeyPatch
) -> None:
    document.start(many_beds())
    settled(window)
    painted = noting_beds(monkeypatch)
    document.change("edit", change_planting(document.plan, "p1", plants=20))
    QApplication.processEvents()
    assert painted == ["b1"]


def test_who_scrolls_on_has_no_bed_painted_anew(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    window.document.open(sample("kestrel-howe.gardenplot"))
    window.canvas.view.zoom_to(0, parse_length("6 m").nm)
    settled(window)
    bar, painted = window.canvas.horizontalScrollBar(), list[float]()
    bar.setValue(bar.value() + 60)
    settled(window)

    def paint_also(painter: QPainter, marks: tuple[Mark, ...], scale: Scale, inks: Palette) -> None:
        painted.append(scale.first)
        paint(painter, marks, scale, inks)

    monkeypatch.setattr("gardenplot.window.strip_pictures.paint", paint_also)
    for by in (12, 40, 90, -90):
        bar.setValue(bar.value() + by)
        QApplication.processEvents()
    assert not painted
    window.canvas.view.zoom(1.2, QPointF(300, 100))
    QApplication.processEvents()
    assert painted, "it is seen what is painted"


def test_who_zooms_has_no_more_painted_than_is_in_sight(window: MainWindow) -> None:
    window.document.open(sample("kestrel-howe.gardenplot"))
    for first, last in (("4 m", "8 m"), ("5 m", "7 m")):
        window.canvas.view.zoom_to(parse_length(first).nm, parse_length(last).nm)
        settled(window)
        left, _top = window.canvas.view.origin
        width, _height = window.canvas.view.size
        for one in window.canvas._pictures._pictures.values():
            right = one.left + one.image.deviceIndependentSize().width()
            assert left + one.left >= -_BESIDE
            assert left + right <= width + _BESIDE


def test_a_bed_that_has_changed_is_painted_anew_and_one_that_is_gone_is_forgotten(
    window: MainWindow, document: Document
) -> None:
    before = settled(window)
    document.change("wider", change_bed(document.plan, "b1", width=parse_length("1.2 m")))
    assert settled(window) != before
    document.change("emptied", remove_planting(document.plan, "p1"))
    assert settled(window) == anew(window)
    document.stack.undo()
    document.stack.undo()
    assert settled(window) == before


def test_far_from_the_hand_too_a_large_bed_follows_the_drag(window: MainWindow, mouse: Mouse) -> None:
    window.document.open(sample("otter-steep.gardenplot"))
    window.resize(1100, 1400)
    window.canvas.view.zoom_to(0, parse_length("3 m").nm)
    block = next(one for one in window.document.plan.plantings if one.bed == "corner")
    grip = window.canvas.places.point_of("corner", layout_in(window.document.plan, block.id).start, 0)
    window.sight.select("corner", block.id)
    QTest.mousePress(
        window.canvas.viewport(), Qt.MouseButton.LeftButton, Keys.NoModifier, (grip + QPointF(40, 8)).toPoint()
    )
    for by in (60, 80, 100):
        mouse.move_to(grip + QPointF(by, 8))
        assert window.canvas.stage.trial is not None
        assert settled(window) == anew(window)
    mouse.release()


def test_of_a_wide_bed_looked_at_closely_no_picture_is_kept_that_no_screen_could_hold(
    window: MainWindow, mouse: Mouse, document: Document
) -> None:
    document.change("wide", change_bed(document.plan, "b1", width=parse_length("9 m")))
    window.canvas.view.zoom_to(0, parse_length("20 cm").nm)
    assert settled(window) == anew(window)
    assert "b1" not in window.canvas._pictures._pictures
    mouse.roll(QPointF(400, 300), Keys.NoModifier, -2)
    assert settled(window) == anew(window)
    window.sight.select("b1", "p1")
    assert settled(window) == anew(window)


def test_drip_lines_are_dashed_alike_however_the_drawing_was_scrolled(window: MainWindow, document: Document) -> None:
    lines = (parse_length("20 cm"), parse_length("55 cm"))
    document.change("watered", change_bed(document.plan, "b1", drip_lines=lines))
    for layer in Layer:
        window.canvas.layers.show(layer, True)
    window.canvas.view.zoom_to(0, parse_length("1.5 m").nm)
    bar = window.canvas.horizontalScrollBar()
    for at in (0, 30, 1111, 1500, 2717, 3000, 4321, 2900, bar.maximum(), 0):
        bar.setValue(at)
        assert settled(window) == anew(window)


def test_the_dots_of_the_keyboard_come_and_go_with_it(window: MainWindow) -> None:
    window.activateWindow()
    window.canvas.setFocus()
    window.sight.select("b1", "p1")
    here = settled(window)
    window.shelf.search.setFocus()
    assert settled(window) != here
    assert settled(window) == anew(window)
    window.canvas.setFocus()
    assert settled(window) == here


def test_all_beds_at_once_are_painted_in_a_window_that_has_no_room_for_them(window: MainWindow) -> None:
    # Qt speaks of pictures without a height, which fails this test.
    window.canvas.view.fit(all_beds=True)
    for height in (900, 60, 300):
        window.canvas.resize(window.canvas.width(), height)
        window.canvas.grab()
