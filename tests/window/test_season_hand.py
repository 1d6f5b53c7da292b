"""Planning on the season map by mouse and keys: plantings moved in time and along, drawn out, dropped, refused."""

from datetime import date, timedelta

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gardenplot.drawing.letters import looks
from gardenplot.gestures.kept import layout_in
from gardenplot.plan import Plan, crop_of, planting_of
from gardenplot.season import dates_of
from gardenplot.window.main import MainWindow
from gardenplot.window.mime import with_crop
from gardenplot.window.season_lines import season_lines
from tests.drawing.hand_worked import plan_from
from tests.layout.ground import Fields, nm
from tests.window.season_mouse import SeasonMouse
from tests.window.shared_window import window

__all__ = ["window"]

DAY = timedelta(days=1)

Keys = Qt.KeyboardModifier
CROPS: list[Fields] = [
    {"id": "greens", "name": "Spring greens", "in_row": "20 cm", "row_spacing": "25 cm", "field_days": 45},
    {"id": "bean", "name": "Dwarf bean", "in_row": "15 cm", "row_spacing": "40 cm", "field_days": 60,
     "establish": "direct", "harvest_days": 20},
    {"id": "kale", "name": "Curly kale", "in_row": "40 cm", "row_spacing": "40 cm", "field_days": 70},
]  # fmt: skip
BEDS: list[Fields] = [
    {"id": bed, "name": name, "length": "12 m", "width": "80 cm"} for bed, name in (("b", "Long bed"), ("c", "Other"))
]


def plan_with(*plantings: Fields) -> Plan:
    whole = [{"bed": "b", "crop": "greens", "from": "2 m", "length": "4 m"} | one for one in plantings]
    return plan_from(beds=BEDS, crops=CROPS, plantings=whole)


SPRING: Fields = {"id": "p", "in_ground": "2027-04-05", "out": "2027-05-25"}
SUMMER: Fields = {"id": "q", "crop": "bean", "in_ground": "2027-06-10", "out": "2027-08-31"}


@pytest.fixture
def hand(window: MainWindow, qtbot: QtBot) -> SeasonMouse:
    """A mouse over the map of a bed with greens in spring and beans in summer."""
    window.docks[3].raise_()
    window.resizeDocks([window.docks[3]], [420], Qt.Orientation.Vertical)
    window.document.start(plan_with(SPRING, SUMMER))
    QApplication.processEvents()
    qtbot.waitUntil(window.season.isVisible)
    return SeasonMouse(window.season)


def days_of(window: MainWindow, planting: str = "p") -> tuple[date | None, date | None]:
    dates = dates_of(window.document.plan, planting_of(window.document.plan, planting))
    return dates.in_ground, dates.out


def readings_of(window: MainWindow, planting: str = "p") -> tuple[int, int]:
    layout = layout_in(window.document.plan, planting)
    return layout.start, layout.end


def within(day: date | None, wanted: date, days: int = 2) -> bool:
    return day is not None and abs((day - wanted).days) <= days


def lines_of(window: MainWindow) -> list[str]:
    trial, plan = window.canvas.stage.trial, window.document.plan
    assert trial is not None
    lines = season_lines(plan, trial, looks(plan))
    return ["".join(" " if one == "\u2009" else one for one in words) for words, _ink in lines]


def test_a_drag_moves_it_in_time_and_along_its_bed_as_one_step(window: MainWindow, hand: SeasonMouse) -> None:
    before = window.document.plan
    hand.drag(("4 m", date(2027, 4, 25)), ("9 m", date(2027, 5, 15)))
    first, out = days_of(window)
    assert first is not None
    assert out is not None
    assert (out - first).days == 50
    assert within(first, date(2027, 4, 25), 3)
    assert readings_of(window) == (nm("7 m"), nm("11 m"))
    assert window.document.stack.count() == 1
    assert window.document.stack.undoText() == "Move Spring greens"
    window.document.stack.undo()
    assert window.document.plan is before


@pytest.mark.parametrize(
    ("side", "way", "name"),
    [
        ("top", QPointF(0, 30), "Day in the ground of Spring greens"),
        ("bottom", QPointF(0, 15), "Day out of the ground of Spring greens"),
        ("left", QPointF(60, 0), "Resize Spring greens"),
        ("right", QPointF(60, 0), "Resize Spring greens"),
    ],
)
def test_each_side_of_a_planting_can_be_drawn(
    window: MainWindow, hand: SeasonMouse, side: str, way: QPointF, name: str
) -> None:
    frame = hand.axes.frame(hand.axes.season.blocks[0])
    middle = frame.center()
    at = {
        "top": QPointF(middle.x(), frame.top() + 1),
        "bottom": QPointF(middle.x(), frame.bottom() - 1),
        "left": QPointF(frame.left() + 1, middle.y()),
        "right": QPointF(frame.right() - 1, middle.y()),
    }[side]
    days, readings = days_of(window), readings_of(window)
    hand.press_at(at)
    hand.move_to(at + way)
    hand.release()
    assert window.document.stack.undoText() == name
    after = (*days_of(window), *readings_of(window))
    changed = [one != other for one, other in zip((*days, *readings), after, strict=True)]
    assert changed == [side == each for each in ("top", "bottom", "left", "right")]


def test_lines_beside_the_hand_tell_days_readings_and_why_it_cannot_be(window: MainWindow, hand: SeasonMouse) -> None:
    before = window.document.plan
    hand.press("4 m", date(2027, 4, 25))
    hand.move("4 m", date(2027, 6, 20))
    figures, against, *_rest = lines_of(window)
    assert figures.startswith("Spring greens   ")
    assert "2.00 – 6.00 m" in figures
    assert against == "stands 4.00 m into B Dwarf bean, there 10 Jun – 31 Aug 2027, 82 days"
    hand.release()
    assert window.document.plan is before
    assert "Dwarf bean" in window.statusBar().currentMessage()


def test_escape_gives_back_exactly_what_was(window: MainWindow, hand: SeasonMouse) -> None:
    before = window.document.plan
    hand.press("4 m", date(2027, 4, 25))
    hand.move("9 m", date(2027, 5, 20))
    assert window.canvas.stage.trial is not None
    QTest.keyClick(window.season, Qt.Key.Key_Escape)
    assert window.canvas.stage.trial is None
    hand.move("10 m", date(2027, 5, 25))
    hand.release()
    assert window.document.plan is before
    assert window.document.stack.count() == 0
    assert window.sight.planting == "p"


def test_it_is_drawn_to_the_day_on_which_its_ground_is_free(window: MainWindow, hand: SeasonMouse) -> None:
    hand.press("4 m", date(2027, 7, 1))
    hand.move("4 m", date(2027, 6, 16))
    hand.release()
    assert days_of(window, "q")[0] == date(2027, 5, 25)


def test_with_alt_held_nothing_draws_it(window: MainWindow, hand: SeasonMouse) -> None:
    hand.press("4 m", date(2027, 7, 1))
    hand.move("4 m", date(2027, 6, 16))
    hand.move("4 m", date(2027, 6, 18), Keys.AltModifier)
    hand.release()
    first, _out = days_of(window, "q")
    assert first != date(2027, 5, 25)
    assert within(first, date(2027, 5, 28))


def test_what_is_in_the_ground_is_refused_but_for_the_day_it_is_out(window: MainWindow, hand: SeasonMouse) -> None:
    window.document.start(plan_with(SPRING | {"actual": {"set_out": "2027-04-06"}}, SUMMER))
    before = window.document.plan
    hand.drag(("4 m", date(2027, 4, 25)), ("9 m", date(2027, 5, 15)))
    assert window.document.plan is before
    assert "has been in the ground since Tue 6 Apr 2027" in window.statusBar().currentMessage()
    frame = hand.axes.frame(hand.axes.season.blocks[0])
    hand.press_at(QPointF(frame.center().x(), frame.bottom() - 1))
    hand.move_to(QPointF(frame.center().x(), frame.bottom() - 30))
    hand.release()
    first, out = days_of(window)
    assert first == date(2027, 4, 6)
    assert out is not None
    assert out < date(2027, 5, 20)


def test_keys_move_the_chosen_planting_by_days_and_weeks_and_along(window: MainWindow, hand: SeasonMouse) -> None:
    window.sight.select("b", "p")
    window.season.setFocus()
    for key, held, days in (
        (Qt.Key.Key_Down, Keys.AltModifier, (date(2027, 4, 6), date(2027, 5, 26))),
        (Qt.Key.Key_Down, Keys.AltModifier | Keys.ShiftModifier, (date(2027, 4, 13), date(2027, 6, 2))),
        (Qt.Key.Key_Up, Keys.AltModifier, (date(2027, 4, 12), date(2027, 6, 1))),
        (Qt.Key.Key_PageUp, Keys.AltModifier, (date(2027, 4, 12), date(2027, 5, 31))),
        (Qt.Key.Key_PageDown, Keys.AltModifier | Keys.ShiftModifier, (date(2027, 4, 12), date(2027, 6, 7))),
    ):
        QTest.keyClick(window.season, key, held)
        assert days_of(window) == days
    assert window.document.stack.count() == 2
    QTest.keyClick(window.season, Qt.Key.Key_Right, Keys.AltModifier)
    assert readings_of(window) == (nm("2.05 m"), nm("6.05 m"))
    before = window.document.plan
    QTest.keyClick(window.season, Qt.Key.Key_Down, Keys.AltModifier | Keys.ShiftModifier)
    assert window.document.plan is before
    assert "Dwarf bean" in window.statusBar().currentMessage()
    assert hand.axes.season.bed == "b"


def test_what_is_chosen_is_told_with_its_days_as_they_change(window: MainWindow, hand: SeasonMouse) -> None:
    hand.press("4 m", date(2027, 4, 25))
    hand.release()
    assert "5 Apr – 25 May 2027, 50 days" in window.season.accessibleDescription()
    QTest.keyClick(window.season, Qt.Key.Key_Down, Keys.AltModifier)
    assert "6 Apr – 26 May 2027, 50 days" in window.season.accessibleDescription()
    window.document.start(plan_with(SUMMER))
    assert window.season.accessibleDescription() == ""


def test_the_wheel_scrolls_the_days_and_zooms_at_the_pointer(window: MainWindow, hand: SeasonMouse) -> None:
    whole, day = hand.axes.season.span, date(2027, 6, 15)
    y = hand.axes.y(day, day)
    hand.roll("8 m", day, 3, Keys.ControlModifier)
    closer = hand.axes.season.span
    assert closer.days < whole.days * 0.6
    assert hand.axes.y(day, day) == pytest.approx(y, abs=2 * hand.axes.each)
    hand.roll("8 m", day, -1)
    assert hand.axes.season.span.first > closer.first
    assert hand.axes.season.span.days == closer.days
    QTest.keyClick(window.season, Qt.Key.Key_0)
    assert hand.axes.season.span == whole
    QTest.keyClick(window.season, Qt.Key.Key_Plus)
    assert hand.axes.season.span.days < whole.days


def test_all_beds_in_small_and_a_click_that_chooses_one(window: MainWindow, hand: SeasonMouse, qtbot: QtBot) -> None:
    maps = window.season_maps
    QTest.mouseClick(maps.switch, Qt.MouseButton.LeftButton, pos=maps.switch.rect().center() / 2)
    qtbot.waitUntil(maps.beds.isVisible)
    above = window.canvas.places.point_of("c", nm("5 m"), 0)
    axes = maps.beds.all_axes()
    assert [one.season.bed for one in axes] == ["b", "c"]
    below = maps.beds.mapToGlobal(QPointF(axes[1].x(5000), 0)).x()
    assert below == pytest.approx(window.canvas.viewport().mapToGlobal(above).x(), abs=0.5)
    QTest.mouseClick(
        maps.beds, Qt.MouseButton.LeftButton, pos=axes[0].frame(axes[0].season.blocks[1]).center().toPoint()
    )
    assert (window.sight.bed, window.sight.planting) == ("b", "q")
    QTest.keyClick(maps.beds, Qt.Key.Key_Down)
    assert (window.sight.bed, window.sight.planting) == ("c", None)
    QTest.keyClick(maps.beds, Qt.Key.Key_Return)
    assert not maps.switch.isChecked()
    assert hand.axes.season.bed == "c"


def test_spring_greens_a_summer_crop_and_an_autumn_crop_after_one_another(
    window: MainWindow, hand: SeasonMouse
) -> None:
    """A year in one bed, planned on the map: dropped from the shelf, dragged up to the day on which it is free."""
    document = window.document
    document.start(plan_from(beds=BEDS, crops=CROPS))
    first = hand.axes.season.span.first
    year = first.year
    hand.drop(with_crop(crop_of(document.plan, "greens")), "0.15 m", first)
    assert [one.crop for one in document.plan.plantings] == ["greens"]
    _drawn_to(window, hand, "greens", date(year + 1, 4, 5))
    set_out, out = days_of(window, "greens")
    assert set_out is not None
    assert out is not None
    assert abs(set_out - date(year + 1, 4, 5)) <= DAY
    assert (out - set_out).days == 46
    hand.drop(with_crop(crop_of(document.plan, "bean")), "0.15 m", out + DAY)
    free = out + timedelta(days=81)
    assert days_of(window, "bean") == (out, free)
    hand.drop(with_crop(crop_of(document.plan, "kale")), "0.15 m", date(year + 1, 9, 10))
    _drawn_to(window, hand, "kale", free + 2 * DAY)
    assert days_of(window, "kale")[0] == free
    blocks = [readings_of(window, one) for one in ("greens", "bean", "kale")]
    assert all(start == 0 for start, _end in blocks)
    assert not hand.axes.season.clashes
    assert document.stack.count() >= 4


def _drawn_to(window: MainWindow, hand: SeasonMouse, planting: str, day: date) -> None:
    """Drag a planting by its middle until its first day is a day, or nearly."""
    for _time in range(4):
        now = days_of(window, planting)[0]
        assert now is not None
        if now == day:
            return
        frame = hand.axes.frame(next(one for one in hand.axes.season.blocks if one.planting == planting))
        at = QPointF(frame.center().x(), max(frame.center().y(), hand.axes.top + 1))
        hand.press_at(at)
        hand.move_to(at + QPointF(0, (day - now).days * hand.axes.each))
        hand.release()
        if days_of(window, planting)[0] == now:
            return
