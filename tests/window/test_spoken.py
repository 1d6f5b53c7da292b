"""What a screen reader finds in the drawing: a tree of beds and plantings with names, places and states."""

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gardenplot.plan.edits import change_planting, remove_bed, remove_planting
from gardenplot.units import CM, Units, length_of
from gardenplot.window.canvas_spoken import Thing
from gardenplot.window.main import MainWindow
from tests.window.mouse import Mouse
from tests.window.walk import settle

Text, Role = QAccessible.Text, QAccessible.Role
ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(autouse=True)
def listening(dressed: QApplication) -> Iterator[None]:
    """A screen reader is running."""
    assert dressed is not None
    QAccessible.setActive(True)
    yield
    QAccessible.setActive(False)


def drawing(window: MainWindow) -> QAccessibleInterface:
    """The canvas as a screen reader sees it."""
    return QAccessible.queryAccessibleInterface(window.canvas)


def children(parent: QAccessibleInterface) -> list[QAccessibleInterface]:
    """All that is inside."""
    return [parent.child(number) for number in range(parent.childCount())]


def names(parent: QAccessibleInterface) -> list[str]:
    """The names of all that is inside."""
    return [plain(child.text(Text.Name)) for child in children(parent)]


def plain(words: str) -> str:
    """Words with spaces of one kind."""
    return words.replace("\u2009", " ")


def test_the_drawing_is_a_tree_of_beds_and_their_plantings(window: MainWindow) -> None:
    tree = drawing(window)
    assert tree.role() == Role.Tree
    assert tree.text(Text.Name) == "Drawing of the beds"
    beds = children(tree)
    assert names(tree) == [
        "Tunnel, east, bed of 15.00 m × 75 cm, 1 planting, 4.40 m left on 9 Apr",
        "Field, upper, bed of 20.00 m × 1.20 m, 2 plantings, 85 cm left on 9 Apr",
    ]
    assert names(beds[0]) == ["A Pak choi, 3 × 40 = 120, 0.30 to 10.30 m"]
    for item in (*beds, *children(beds[0])):
        assert item.role() == Role.TreeItem
        assert item.isValid()


def test_every_item_knows_its_way_up_and_down(window: MainWindow) -> None:
    tree = drawing(window)
    for number, bed in enumerate(children(tree)):
        assert tree.indexOfChild(bed) == number
        assert bed.parent().object() is window.canvas
        for place, planting in enumerate(children(bed)):
            assert bed.indexOfChild(planting) == place
            assert planting.parent().object() is bed.object()
            assert tree.indexOfChild(planting) == -1
            assert planting.childCount() == 0
            assert planting.child(0) is None


def test_the_rectangle_is_where_the_block_is_drawn_and_a_point_in_it_finds_it(window: MainWindow) -> None:
    tree, viewport = drawing(window), window.canvas.viewport()
    whole = QRect(viewport.mapToGlobal(QPoint(0, 0)), viewport.size())
    for bed in children(tree):
        assert whole.contains(bed.rect())
        for planting in children(bed):
            frame = planting.rect()
            assert bed.rect().contains(frame)
            found = tree.childAt(frame.center().x(), frame.center().y())
            assert found.object() is planting.object()
    mouse = Mouse(window.canvas)
    start = viewport.mapToGlobal(mouse.point("b1", "30 cm").toPoint())
    assert abs(children(children(tree)[0])[0].rect().left() - start.x()) <= 1


def test_the_selection_is_a_state_and_has_the_focus(window: MainWindow) -> None:
    window.canvas.setFocus()
    settle(window)
    tree = drawing(window)
    told: list[Thing] = []
    window.canvas.spoken.told.connect(told.append)
    assert tree.focusChild() is None
    QTest.keyClick(window.canvas, Qt.Key.Key_Down)
    planting = children(children(tree)[0])[0]
    assert told == [planting.object()]
    assert tree.focusChild().object() is planting.object()
    state = planting.state()
    assert (state.selected, state.focused, state.focusable, state.selectable) == (1, 1, 1, 1)
    QTest.keyClick(window.canvas, Qt.Key.Key_Down)
    assert planting.state().selected == 0
    assert told[-1].planting == "p2"
    window.sight.select("b2")
    assert told[-1] is children(tree)[1].object()
    window.shelf.search.setFocus()
    assert children(tree)[1].state().focused == 0
    assert children(tree)[1].state().selected == 1
    window.canvas.setFocus()
    settle(window)
    assert told[-1] is children(tree)[1].object()
    assert len(told) == 4


def test_a_planting_that_is_moved_is_read_again_with_its_new_readings(window: MainWindow) -> None:
    window.canvas.setFocus()
    window.sight.select("b1", "p1")
    settle(window)
    told: list[Thing] = []
    window.canvas.spoken.told.connect(told.append)
    QTest.keyClick(window.canvas, Qt.Key.Key_Right)
    assert [thing.planting for thing in told] == ["p1"]
    assert plain(told[0].text(Text.Name)) != "A Pak choi, 3 × 40 = 120, 0.30 to 10.30 m"
    assert plain(told[0].text(Text.Name)).startswith("A Pak choi, 3 × 40 = 120, ")


def test_what_is_wrong_is_its_description(window: MainWindow) -> None:
    document = window.document
    document.change("In", change_planting(document.plan, "p2", start=length_of(5 * CM, Units.METRIC)))
    leek = next(item for bed in children(drawing(window)) for item in children(bed) if "Leek" in item.text(Text.Name))
    assert "margin" in leek.text(Text.Description)


def test_only_what_stands_on_the_day_shown_is_in_the_tree(window: MainWindow) -> None:
    first = window.document.plan.plantings[0]
    assert first.out is not None
    window.sight.show_day(first.out)
    assert names(children(drawing(window))[0]) == []


def test_what_is_removed_is_gone_and_what_is_held_of_it_does_no_harm(window: MainWindow) -> None:
    tree, document = drawing(window), window.document
    bed, planting = children(tree)[0], children(children(tree)[0])[0]
    document.change("Remove", remove_planting(document.plan, "p1"))
    assert bed.childCount() == 0
    assert planting.text(Text.Name) == ""
    assert planting.rect().isEmpty()
    document.change("Remove", remove_bed(document.plan, "b1"))
    assert tree.childCount() == 1
    assert bed.text(Text.Name) == ""
    document.stack.undo()
    document.stack.undo()
    assert len(names(children(tree)[0])) == 1


def test_what_is_scrolled_away_is_said_to_be_out_of_sight(window: MainWindow) -> None:
    window.canvas.view.zoom_to(0, 200 * CM)
    last = children(children(drawing(window))[1])[-1]
    assert last.state().offscreen == 1
    assert children(children(drawing(window))[0])[0].state().offscreen == 0


MANY_WINDOWS = """
import gc, sys
from gardenplot.__main__ import load_window
load_window()
from PySide6.QtCore import QEvent
from PySide6.QtGui import QAccessible
from gardenplot.window.main import MainWindow
from gardenplot.window.start import made_app
from gardenplot.plan.edits import remove_planting, remove_bed
from tests.plans import metric_plan

app = made_app()
QAccessible.setActive(True)
# What is loaded by now is no garbage, and to look through it a hundred times takes most of the time.
gc.freeze()
held = []
for turn in range(12):
    window = MainWindow()
    window.document.start(metric_plan())
    window.show()
    app.processEvents()
    for again in range(40):
        tree = QAccessible.queryAccessibleInterface(window.canvas)
        held += [tree.child(0), tree.child(1), tree.child(1).child(0)]
        [one.text(QAccessible.Text.Name) for one in held[-3:]]
        window.sight.select("b2", "p2" if again % 2 else "p3")
        gc.collect() if again % 10 == 0 else None
    window.document.change("one", remove_planting(window.document.plan, "p2"))
    window.document.change("two", remove_bed(window.document.plan, "b1"))
    app.processEvents()
    gc.collect()
    window.document.start(metric_plan())
    window.close()
    window.deleteLater()
    app.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    del window, tree
    gc.collect()
held.clear()
gc.collect()
print("alive")
"""


def test_windows_that_come_and_go_take_their_spoken_things_along_without_a_crash() -> None:
    run = subprocess.run(
        [sys.executable, "-c", MANY_WINDOWS],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        encoding="utf-8",
        timeout=120,
        check=False,
    )
    assert run.returncode == 0, run.stdout
    assert run.stdout.strip().splitlines()[-1] == "alive"
