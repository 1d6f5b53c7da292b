"""A window that runs from right to left: panels and tables are mirrored, the drawing and its readings are not.

The drawing is a plan of the ground: the head is where the tape is hooked on, left and right are those of somebody who
looks from head to foot, and figures are read from the left in every script.
"""

from collections.abc import Iterator

import numpy as np
import pytest
from attrs import evolve
from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QApplication, QWidget

from gardenplot.plan import Plan
from gardenplot.plan.edits import change_bed, change_crop
from gardenplot.window.main import MainWindow
from gardenplot.window.script import runs
from tests.plans import metric_plan
from tests.window.mouse import Mouse
from tests.window.walk import DIALOGS, cut, opened, picture, place, settle

HEBREW, ARABIC = "מיטה צפונית", "الحوض الشمالي"
LEFT, RIGHT = Qt.LayoutDirection.LeftToRight, Qt.LayoutDirection.RightToLeft


def named() -> Plan:
    """A plan with a Hebrew bed, an Arabic bed and a Hebrew crop."""
    plan = change_bed(change_bed(metric_plan(), "b1", name=HEBREW), "b2", name=ARABIC)
    return change_crop(plan, plan.crops[0].id, name="חסה")


@pytest.fixture(params=[LEFT, RIGHT], ids=["from the left", "from the right"])
def direction(dressed: QApplication, request: pytest.FixtureRequest) -> Iterator[Qt.LayoutDirection]:
    """The direction of the whole program, and from the left again afterwards."""
    dressed.setLayoutDirection(request.param)
    yield request.param
    dressed.setLayoutDirection(LEFT)


def made(plan: Plan) -> MainWindow:
    """A window on a plan."""
    shown = MainWindow()
    shown.resize(1440, 900)
    shown.document.start(plan)
    shown.show()
    settle(shown)
    return shown


def closed(shown: MainWindow) -> None:
    """Away with a window."""
    shown.document.start(metric_plan())
    shown.close()
    shown.deleteLater()
    QApplication.sendPostedEvents(shown, QEvent.Type.DeferredDelete.value)


def test_the_drawing_stays_as_it_is(dressed: QApplication) -> None:
    drawings = []
    for direction in (LEFT, RIGHT):
        dressed.setLayoutDirection(direction)
        shown = made(named())
        shown.sight.select("b2", "p2")
        shown.canvas.setFixedSize(900, 500)
        settle(shown)
        drawings.append(picture(shown.canvas))
        closed(shown)
    dressed.setLayoutDirection(LEFT)
    assert np.array_equal(drawings[0], drawings[1])


def test_the_rest_is_mirrored(direction: Qt.LayoutDirection) -> None:
    shown = made(named())
    name, sheet = place(shown.header.name, shown), place(shown.header.sheet, shown)
    assert (name.right() < sheet.left()) is (direction is LEFT)
    shelf, selected = place(shown.shelf, shown), place(shown.inspector, shown)
    assert (shelf.right() < selected.left()) is (direction is LEFT)
    shown.sight.select("b1", "p1")
    settle(shown)
    fields = shown.inspector.planting.form.fields
    one, other = place(fields["from"], shown), place(fields["to"], shown)
    assert (one.left() < other.left()) is (direction is LEFT)
    assert shown.canvas.layoutDirection() == LEFT
    closed(shown)


def test_a_drag_goes_where_the_hand_goes(direction: Qt.LayoutDirection) -> None:
    shown = made(metric_plan())
    assert shown.layoutDirection() == direction
    shown.canvas.view.zoom(3)
    bar = shown.canvas.horizontalScrollBar()
    assert bar.value() == pytest.approx(bar.maximum() / 2, rel=0.2)
    bar.setValue(0)
    Mouse(shown.canvas).drag("b1", "2 m", "3 m")
    assert shown.document.stack.undoText() == "Move Pak choi"
    assert shown.document.plan.plantings[0].start is not None
    closed(shown)


@pytest.mark.parametrize("direction", [RIGHT], indirect=True, ids=["from the right"])
@pytest.mark.parametrize("name", DIALOGS)
def test_dialogs_show_all_their_words(
    direction: Qt.LayoutDirection, host: MainWindow, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """From the left every other test of the dialogs sees them."""
    host.document.start(named())
    dialog = opened(host, name, monkeypatch.setattr)
    assert dialog.layoutDirection() == direction
    assert inked(dialog) > 0.002
    dialog.close()


@pytest.mark.parametrize("select", [(None, None), ("b1", "p1")])
def test_as_much_is_written_from_the_right_as_from_the_left(
    dressed: QApplication, select: tuple[str | None, str | None]
) -> None:
    written = []
    for direction in (LEFT, RIGHT):
        dressed.setLayoutDirection(direction)
        shown = made(named())
        shown.sight.select(*select)
        settle(shown)
        written.append([inked(part) for part in (shown.header, shown.shelf, shown.inspector, shown.ledger)])
        closed(shown)
    dressed.setLayoutDirection(LEFT)
    for one, other in zip(*written, strict=True):
        assert other == pytest.approx(one, rel=0.08)


def inked(part: QWidget) -> float:
    """What share of a part is as dark as ink."""
    shown = part.window()
    return float((cut(picture(shown), place(part, shown)).max(axis=-1) < 100).mean())


@pytest.mark.parametrize(
    ("words", "direction"),
    [
        ("0.40 – 14.15 m", LEFT),
        ("3 × 55", LEFT),
        ("165", LEFT),
        ("", LEFT),
        (HEBREW, RIGHT),
        (ARABIC, RIGHT),
        (f"3 × {HEBREW}", RIGHT),
        (f"A {HEBREW}", LEFT),
    ],
)
def test_words_run_from_the_side_of_their_first_letter(words: str, direction: Qt.LayoutDirection) -> None:
    assert runs(words) == direction


def test_captions_keep_letter_count_and_readings_in_their_order(dressed: QApplication) -> None:
    """A Hebrew crop's caption: its letter stands first and its readings last, as for any other crop."""
    shown = made(named())
    assert dressed.layoutDirection() == LEFT
    before = picture(shown.canvas.viewport())
    plan = shown.document.plan
    shown.document.change("Rename", evolve(plan, crops=tuple(evolve(crop, name="XXX") for crop in plan.crops)))
    settle(shown)
    after = picture(shown.canvas.viewport())
    changed = np.any(before != after, axis=-1)
    strip = shown.canvas.view.strips().strips[0]
    row = round(46 + strip.top + strip.height + 9 + 9)
    first = shown.canvas.view.strips().gutter + strip.laid.layouts[0].start / 1e6 * shown.canvas.view.along
    assert not changed[row, round(first) : round(first) + 16].any()
    closed(shown)
