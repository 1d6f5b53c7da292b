"""Filling gaps in the window: the best blocks under the mouse or at the keys, taken by a click or Enter."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from gardenplot.gestures.stage import Trial
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.units import M
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from tests.drawing.hand_worked import plan_from
from tests.window.mouse import Mouse
from tests.window.shared_window import window

__all__ = ["window"]

Key, Keys = Qt.Key, Qt.KeyboardModifier
_LEFT = Qt.MouseButton.LeftButton
_CROP = {"in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm"}
WISHES = [
    {"id": "w1", "crop": "leek", "least": 10, "most": 20, "worth": 2},
    {"id": "w2", "crop": "chard", "least": 10, "most": 30},
]


def plan_with(wishes: list[dict[str, object]], orders: list[dict[str, object]] | None = None) -> Plan:
    """Two beds of 6 m with two rows; a block from 2 to 4 m in the first."""
    return plan_from(
        beds=[{"id": bed, "name": f"Bed {bed}", "length": "6 m", "width": "80 cm"} for bed in ("b1", "b2")],
        crops=[{"id": "leek", "name": "Leek", **_CROP}, {"id": "chard", "name": "Chard", **_CROP}],
        plantings=[{"id": "p", "bed": "b1", "crop": "leek", "from": "2 m", "length": "2 m"}],
        wishes=wishes,
        orders=orders or [],
    )


def begin(window: MainWindow) -> None:
    """The key of the action, as a hand presses it."""
    QTest.keyClick(window.canvas, Key.Key_G, Keys.ControlModifier | Keys.ShiftModifier)


def click(window: MainWindow, mouse: Mouse, bed: str, reading: str) -> None:
    QTest.mouseClick(window.canvas.viewport(), _LEFT, Keys.NoModifier, mouse.point(bed, reading).toPoint())


def tried(window: MainWindow) -> Trial:
    trial = window.canvas.stage.trial
    assert trial is not None
    return trial


def blocks(plan: Plan) -> list[tuple[str, str, float, float]]:
    """All blocks: bed, crop, from and to in metres."""
    return [
        (one.bed, one.crop, one.start / M, one.end / M)
        for laid in lay_out_plan(plan)
        for one in sorted(laid.layouts, key=lambda each: each.start)
    ]


OLD = ("b1", "leek", 2.0, 4.0)


def test_the_best_blocks_stand_under_the_mouse_and_nothing_is_changed(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    document.start(plan_with(WISHES))
    begin(window)
    mouse.hover(mouse.point("b2", "3 m"))
    assert blocks(tried(window).plan) == [OLD, ("b2", "leek", 0, 2), ("b2", "chard", 2, 5)]
    mouse.hover(mouse.point("b1", "5 m"))
    assert blocks(tried(window).plan) == [OLD, ("b1", "leek", 4, 6)]
    says = window.canvas.accessibleDescription()
    assert "10 = 20   " in says
    assert "the best there is for this gap" in says
    assert "Chard: no room beside these" in says
    mouse.hover(mouse.point("b1", "3 m"))
    assert window.canvas.stage.trial is None
    assert document.stack.count() == 0


def test_clicks_take_them_one_step_each_and_what_a_wish_has_it_asks_for_no_more(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    document.start(plan_with(WISHES))
    begin(window)
    mouse.hover(mouse.point("b1", "5 m"))
    click(window, mouse, "b1", "5 m")
    assert document.stack.undoText() == "Fill a gap in Bed b1: Leek"
    mouse.hover(mouse.point("b2", "1 m"))
    click(window, mouse, "b2", "1 m")
    assert blocks(document.plan) == [OLD, ("b1", "leek", 4, 6), ("b2", "chard", 0, 3)]
    assert document.stack.count() == 2
    mouse.hover(mouse.point("b2", "5 m"))
    click(window, mouse, "b2", "5 m")
    assert "nothing more is wished for or ordered" in window.statusBar().currentMessage()
    QTest.keyClick(window.canvas, Key.Key_Escape)
    assert not window.canvas.stage.is_busy
    document.stack.undo()
    document.stack.undo()
    assert blocks(document.plan) == [OLD]


def test_of_many_blocks_the_words_beside_the_hand_tell_the_first_ones(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    document.start(plan_with([{"id": f"w{n}", "crop": "leek", "least": 4, "most": 4, "days": 30} for n in range(8)]))
    begin(window)
    mouse.hover(mouse.point("b2", "3 m"))
    says = window.canvas.accessibleDescription().splitlines()
    assert says[0].startswith("8 plantings   32 plants")
    assert len([line for line in says if "4 plants" in line]) == 3
    assert "and 5 blocks more" in says


def test_the_same_by_keys_from_gap_to_gap(window: MainWindow, document: Document) -> None:
    document.start(plan_with(WISHES))
    begin(window)
    assert tried(window).gap == (0, 2 * M)
    assert window.canvas.stage.at is not None
    QTest.keyClick(window.canvas, Key.Key_Right)
    assert tried(window).gap == (4 * M, 6 * M)
    QTest.keyClick(window.canvas, Key.Key_Down)
    assert (tried(window).bed, tried(window).gap) == ("b2", (0, 6 * M))
    QTest.keyClick(window.canvas, Key.Key_Up)
    assert tried(window).gap == (0, 2 * M)
    QTest.keyClick(window.canvas, Key.Key_Return)
    assert blocks(document.plan) == [("b1", "leek", 0, 2), OLD]
    QTest.keyClick(window.canvas, Key.Key_Right)
    QTest.keyClick(window.canvas, Key.Key_Left)
    assert tried(window).gap == (4 * M, 6 * M)
    QTest.keyClick(window.canvas, Key.Key_Escape)
    assert window.canvas.stage.trial is None
    assert document.stack.count() == 1


def test_without_wishes_the_crop_on_the_shelf_fills_the_gap(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    document.start(plan_with([]))
    window.shelf.list.setCurrentIndex(window.shelf.model.index(0))
    crop = window.shelf.chosen()
    assert crop is not None
    begin(window)
    mouse.hover(mouse.point("b2", "3 m"))
    click(window, mouse, "b2", "3 m")
    assert blocks(document.plan) == [OLD, ("b2", crop.id, 0, 6)]


def test_without_wishes_and_crop_it_says_why_not(window: MainWindow, document: Document) -> None:
    document.start(plan_with([]))
    window.shelf.list.clearSelection()
    window.shelf.list.setCurrentIndex(window.shelf.model.index(-1))
    assert window.shelf.chosen() is None
    begin(window)
    assert not window.canvas.stage.is_busy
    assert "choose a crop on the shelf" in window.statusBar().currentMessage()


def test_what_an_order_lacks_is_taken_for_the_order(window: MainWindow, document: Document, mouse: Mouse) -> None:
    document.start(plan_with([], [{"id": "o", "crop": "chard", "units": 12, "on": "2027-06-20"}]))
    window.shelf.list.setCurrentIndex(window.shelf.model.index(-1))
    begin(window)
    mouse.hover(mouse.point("b2", "3 m"))
    click(window, mouse, "b2", "3 m")
    assert document.plan.plantings[-1].order == "o"
