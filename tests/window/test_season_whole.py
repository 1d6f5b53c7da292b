"""A whole season of two samples planned by mouse on the season map: spring greens, a summer crop, autumn.

Kestrel Howe, tunnel bed in metres: lettuce and spinach, then cucumbers, then both again. Larch Bend, tunnel bed in
feet: cos lettuce, tomatoes set out among it before it is cut, then kale. The samples' own summer crops are taken out
first, so that everything after spring is the hand's.
"""

from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit
from pytestqt.qtbot import QtBot

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says
from gardenplot.files import sample
from gardenplot.findings import Kind, find_all
from gardenplot.gestures.season_words import season_line
from gardenplot.plan import Plan, crop_of
from gardenplot.plan.file import read_plan, write_plan
from gardenplot.window.main import MainWindow
from gardenplot.window.mime import with_crop
from tests.window.season_mouse import SeasonMouse
from tests.window.test_season_hand import lines_of

Keys, Key = Qt.KeyboardModifier, Qt.Key


@pytest.fixture
def hand(window: MainWindow, qtbot: QtBot) -> SeasonMouse:
    """A mouse over the map of a window whose panels are as in a new program."""
    window.panels.as_at_first()
    window.docks[3].raise_()
    QApplication.processEvents()
    qtbot.waitUntil(window.season.isVisible)
    return SeasonMouse(window.season)


def begin(window: MainWindow, name: str, bed: str) -> Plan:
    window.document.open(sample(name))
    window.sight.select(bed)
    QApplication.processEvents()
    return window.document.plan


def line(window: MainWindow, planting: str) -> str:
    """A planting's days, readings and plants, as the map tells them."""
    words = season_line(window.document.plan, planting)
    return "   ".join("".join(" " if one == "\u2009" else one for one in words).split("   ")[1:])


def found(window: MainWindow, bed: str, *kinds: Kind) -> list[str]:
    plan = window.document.plan
    return [says(plan, one, looks(plan)) for one in find_all(plan) if one.bed == bed and one.kind in kinds]


def drop(window: MainWindow, hand: SeasonMouse, crop: str, reading: str, day: date) -> None:
    hand.drop(with_crop(crop_of(window.document.plan, crop)), reading, day)


def draw(hand: SeasonMouse, planting: str, side: str, day: date) -> None:
    """Draw the upper or the lower side of a planting to a day."""
    frame = hand.block(planting)
    hand.press_at(QPointF(frame.center().x(), frame.top() + 1 if side == "upper" else frame.bottom() - 1))
    hand.move_to(QPointF(frame.center().x(), hand.axes.y(day, day) + hand.axes.each / 2))
    hand.release()


def write(field: QLineEdit, text: str) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Key.Key_Return)


def undone(window: MainWindow, begun: Plan, steps: list[str]) -> None:
    """All steps, by name, lead back to the very plan that was begun, and forward again."""
    stack, done = window.document.stack, window.document.plan
    assert [stack.text(number) for number in range(stack.count())] == steps
    while stack.canUndo():
        stack.undo()
    assert window.document.plan is begun
    while stack.canRedo():
        stack.redo()
    assert window.document.plan is done


def test_lettuce_and_spinach_then_cucumbers_then_both_again(
    window: MainWindow, hand: SeasonMouse, tmp_path: Path
) -> None:
    begun = begin(window, "kestrel-howe.gardenplot", "tunnel-north")
    assert line(window, "lettuce-1") == "31 Mar – 15 May 2027, 45 days   0.40 – 14.15 m   3 × 55 = 165"
    assert line(window, "spinach-1") == "24 Mar – 20 May 2027, 57 days   14.40 – 16.40 m   4 × 20 = 80"
    hand.click_at(hand.block("cucumber-1").center())
    QTest.keyClick(window.season, Key.Key_Delete)
    _cucumbers(window, hand)
    _autumn_too_late(window, hand)
    _autumn_in_time(window, hand)
    assert not found(window, "tunnel-north", Kind.OVERLAP, Kind.OUTSIDE, Kind.OUT_UNREADY, Kind.FROST, Kind.DATES)
    write_plan(tmp_path / "season.gardenplot", window.document.plan)
    assert read_plan(tmp_path / "season.gardenplot").plan == window.document.plan
    undone(window, begun, [
        "Remove Cucumber", "Place Cucumber", "Day out of the ground of Cucumber", "Copy Spinach",
        "Place Butterhead lettuce", "Day out of the ground of Cucumber", "Move 2 plantings",
        "Resize Butterhead lettuce", "Move Spinach",
    ])  # fmt: skip


def _cucumbers(window: MainWindow, hand: SeasonMouse) -> None:
    """Refused among the lettuce, placed on the day after the last freeze, out when the tunnel is wanted again."""
    before = window.document.plan
    drop(window, hand, "cucumber", "0.65 m", date(2027, 4, 25))
    assert window.document.plan is before
    assert "free from Sat 15 May 2027" in window.statusBar().currentMessage()
    drop(window, hand, "cucumber", "0.65 m", date(2027, 5, 28))
    assert line(window, "cucumber") == "28 May – 13 Jul 2027, 46 days   0.40 – 17.40 m   34 plants"
    draw(hand, "cucumber", "lower", date(2027, 9, 20))
    assert line(window, "cucumber") == "28 May – 20 Sep 2027, 115 days   0.40 – 17.40 m   34 plants"


def _autumn_too_late(window: MainWindow, hand: SeasonMouse) -> None:
    """Spinach copied down from spring, lettuce from the shelf: so late that short days stop them until March."""
    start = hand.block("spinach-1").center()
    hand.press_at(start)
    hand.move_to(start + QPointF(0, 180 * hand.axes.each), Keys.ControlModifier)
    assert lines_of(window)[1:] == [
        "ready Fri 3 Mar 2028",
        "is out 108 days before it is ready",
        "a copy   the day C Cucumber is out   reading as it was",
    ]
    hand.release()
    assert line(window, "spinach-1-2") == "20 Sep – 16 Nov 2027, 57 days   14.40 – 16.40 m   4 × 20 = 80"
    assert found(window, "tunnel-north", Kind.OUT_UNREADY) == ["is out 108 days before it is ready"]
    drop(window, hand, "butterhead", "0.55 m", date(2027, 9, 21))
    assert line(window, "butterhead") == "20 Sep 2027 – 2 Mar 2028, 164 days   0.40 – 14.15 m   3 × 55 = 165"


def _autumn_in_time(window: MainWindow, hand: SeasonMouse) -> None:
    """The cucumbers are out a month sooner; both crops go up together to that day, then closer to the head."""
    draw(hand, "cucumber", "lower", date(2027, 8, 20))
    hand.click_at(hand.block("spinach-1-2").center())
    hand.click_at(hand.block("butterhead").center(), Keys.ControlModifier)
    start = hand.block("butterhead").center()
    hand.press_at(start)
    hand.move_to(start - QPointF(0, 30 * hand.axes.each))
    hand.release()
    assert line(window, "butterhead") == "20 Aug – 4 Oct 2027, 45 days   0.40 – 14.15 m   3 × 55 = 165"
    assert line(window, "spinach-1-2") == "20 Aug – 16 Oct 2027, 57 days   14.40 – 16.40 m   4 × 20 = 80"
    frame = hand.block("butterhead")
    hand.press_at(QPointF(frame.right() - 1, frame.center().y()))
    hand.move("10.4 m", date(2027, 9, 10))
    hand.release()
    assert line(window, "butterhead") == "20 Aug – 4 Oct 2027, 45 days   0.40 – 10.40 m   3 × 40 = 120"
    start = hand.block("spinach-1-2").center()
    hand.press_at(start)
    hand.move_to(start - QPointF(3800 * hand.axes.along, 0))
    hand.release()
    assert line(window, "spinach-1-2") == "20 Aug – 16 Oct 2027, 57 days   10.60 – 12.60 m   4 × 20 = 80"


def test_cos_lettuce_then_tomatoes_in_places_kept_among_it_then_kale(window: MainWindow, hand: SeasonMouse) -> None:
    begun = begin(window, "larch-bend.gardenplot", "hoop-1")
    assert line(window, "cos-1") == "19 Apr – 5 Jun 2027, 47 days   1′ 6″ – 41′ 3″   3 × 53 = 159"
    hand.click_at(hand.block("tomato-1").center())
    QTest.keyClick(window.season, Key.Key_Delete)
    drop(window, hand, "tomato", "2' 6\"", date(2027, 6, 8))
    assert line(window, "tomato") == "5 Jun – 17 Aug 2027, 73 days   1′ 6″ – 57′ 6″   28 plants"
    _relay(window, hand)
    draw(hand, "tomato", "lower", date(2027, 8, 24))
    drop(window, hand, "kale", "2' 6\"", date(2027, 8, 26))
    assert line(window, "tomato") == "27 May – 24 Aug 2027, 89 days   1′ 6″ – 57′ 6″   28 plants"
    assert line(window, "kale") == "24 Aug – 16 Oct 2027, 53 days   1′ 6″ – 58′ 6″   2 × 57 = 114"
    assert not found(window, "hoop-1", Kind.OVERLAP, Kind.OUTSIDE, Kind.IN_THE_WAY, Kind.OUT_UNREADY)
    assert found(window, "hoop-1", Kind.FROST) == [
        "very tender, 12 days before Tue 8 Jun 2027; in 10% of years a freeze comes later still, in up to 50% "
        "once it is out: have a cover at hand, or wait"
    ]
    undone(window, begun, [
        "Remove Tomato, staked", "Place Tomato, staked", "Keep clear of Tomato, staked",
        "Day in the ground of Tomato, staked", "Small cos lettuce: leave the places empty",
        "Day out of the ground of Tomato, staked", "Place Kale",
    ])  # fmt: skip


def _relay(window: MainWindow, hand: SeasonMouse) -> None:
    """Set out nine days before the lettuce is cut: refused, unless places are kept for them among it."""
    before = window.document.plan
    draw(hand, "tomato", "upper", date(2027, 5, 27))
    assert window.document.plan is before
    assert "Small cos lettuce" in window.statusBar().currentMessage()
    write(window.inspector.planting.form.fields["keep_clear"], "6 in")
    draw(hand, "tomato", "upper", date(2027, 5, 27))
    assert line(window, "tomato") == "27 May – 8 Aug 2027, 73 days   1′ 6″ – 57′ 6″   28 plants"
    (in_the_way,) = found(window, "hoop-1", Kind.IN_THE_WAY)
    assert in_the_way.startswith("27 plants stand within 6″ of places of B Tomato, staked: cut them by Wed 26 May")
    hand.click_at(hand.block("cos-1").center() - QPointF(0, 5))
    assert window.sight.planting == "cos-1"
    assert [len(one.readings) for one in hand.axes.season.blocks[0].kept] == [20]
    box = window.inspector.planting.reserved
    box.setFocus()
    QTest.keyClick(box, Key.Key_Down)
    assert line(window, "cos-1") == "19 Apr – 5 Jun 2027, 47 days   1′ 6″ – 41′ 3″   2 × 53 + 26 = 132"
