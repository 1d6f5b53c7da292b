"""A series made from the menu, changed as one, left by one, and taken back in one step."""

from datetime import date
from time import process_time

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from gardenplot.drawing.days import short_day
from gardenplot.drawing.tables import order_rows
from gardenplot.gestures.kept import layout_in
from gardenplot.plan import Order, Plan, planting_of
from gardenplot.plan.edits import add_order, change_crop, change_planting
from gardenplot.plan.series import series_of
from gardenplot.season import market_days
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from tests.drawing.hand_worked import plan_from
from tests.plans import metric_plan
from tests.window.shared_window import window
from tests.window.test_dialogs import Answers
from tests.window.test_panels import finish
from tests.window.test_planting_days import BED, KALE

__all__ = ["window"]

ORDER = Order("o1", "pak-choi", 40, date(2027, 6, 5), times=7, every_days=7)


def kales(*in_ground: str) -> Plan:
    """Three plantings of one series, of which some were set out."""
    came = {"actual": {"set_out": "2027-04-20"}}
    plantings = [
        {"id": f"k{number}", "bed": "b1", "crop": "kale", "from": f"{3 * number} m", "plants": 12, "series": "k"}
        | (came if f"k{number}" in in_ground else {})
        for number in (1, 2, 3)
    ]
    return plan_from(beds=[BED], crops=[KALE], plantings=plantings)


def repeat(window: MainWindow, texts: dict[str, str]) -> Answers:
    """Answer the dialog of the action."""
    answers = Answers(texts)
    window.registry.made("planting.series").trigger()
    return answers


def with_order(window: MainWindow) -> None:
    plan = add_order(metric_plan(), ORDER)
    plan = change_planting(plan, "p1", order="o1", plants=None, in_ground=None, out=None)
    window.document.start(plan)
    window.sight.select("b1", "p1")


def test_each_market_day_gets_its_planting_in_one_step_and_those_without_ground_are_told(
    window: MainWindow, document: Document
) -> None:
    with_order(window)
    before = document.plan
    repeat(window, {})
    assert document.stack.count() == 1
    assert document.stack.undoText() == "Series of Pak choi"
    series = series_of(document.plan, "p1")
    markets = {one.market or 1 for one in series}
    rows = order_rows(document.plan)
    assert [row.met for row in rows] == ["met" if row.market in markets else "not planted" for row in rows]
    days = market_days(ORDER)
    without = [short_day(days[row.market - 1]) for row in rows if row.market not in markets]
    assert 0 < len(without) < 6
    made = len(series) - 1
    told = window.statusBar().currentMessage()
    assert told.startswith(f"Pak choi: {made} of 6 plantings have ground; none is free for ")
    assert all(day in told for day in without)
    document.stack.undo()
    assert document.plan is before
    document.stack.redo()
    assert len(series_of(document.plan, "p1")) == made + 1


def test_a_series_that_finds_no_ground_is_told_in_the_dialog_and_makes_no_step(
    window: MainWindow, document: Document
) -> None:
    window.sight.select("b1", "p1")
    answers = repeat(window, {"times": "5", "every": "1"})
    told = "Pak choi: 0 of 5 plantings have ground; none is free for 10 Apr, 11 Apr, 12 Apr and 2 days more"
    assert told in answers.said
    assert document.stack.count() == 0


def test_without_further_market_days_it_is_asked_how_often(window: MainWindow, document: Document) -> None:
    window.sight.select("b1", "p1")
    repeat(window, {"times": "2", "every": "60"})
    assert [one.in_ground for one in series_of(document.plan, "p1")] == [
        date(2027, 4, 9), date(2027, 6, 8), date(2027, 8, 7),
    ]  # fmt: skip
    assert window.statusBar().currentMessage() == "Pak choi: 2 plantings more"


def test_numbers_that_make_no_series_are_told_at_their_fields(window: MainWindow, document: Document) -> None:
    window.sight.select("b1", "p1")
    for texts, field in (({}, "times"), ({"times": "0"}, "times"), ({"times": "3", "every": "0"}, "every")):
        answers = repeat(window, texts)
        assert answers.focus == field
        assert any("from 1 to" in words for words in answers.said)
    with_order(window)
    assert any("from 1 to 6" in words for words in repeat(window, {"times": "7"}).said)
    assert document.stack.count() == 0


def test_one_that_is_typed_changes_all_of_its_series_until_it_leaves(window: MainWindow, document: Document) -> None:
    window.sight.select("b1", "p1")
    leave = window.registry.made("planting.leave-series")
    assert not leave.isEnabled()
    assert "belongs to no series" in leave.toolTip()
    repeat(window, {"times": "3", "every": "60"})
    window.sight.select("b1", "p1-2")
    fields = window.inspector.planting.form.fields
    finish(fields["plants"], "90")
    finish(fields["in_row"], "20 cm")
    assert [layout_in(document.plan, one.id).plants for one in series_of(document.plan, "p1")] == [90] * 4
    assert {str(one.in_row) for one in series_of(document.plan, "p1")} == {"20 cm"}
    assert leave.isEnabled()
    leave.trigger()
    assert "has left its series" in window.statusBar().currentMessage()
    finish(fields["plants"], "30")
    assert [one.plants for one in series_of(document.plan, "p1")] == [90] * 3
    assert planting_of(document.plan, "p1-2").plants == 30
    assert not leave.isEnabled()


def test_when_all_but_one_are_removed_there_is_no_series(window: MainWindow, document: Document) -> None:
    window.sight.select("b1", "p1")
    repeat(window, {"times": "2", "every": "60"})
    for one in ("p1-2", "p1"):
        window.sight.select("b1", one)
        window.registry.made("planting.remove").trigger()
    assert planting_of(document.plan, "p1-3").series is None
    document.stack.undo()
    assert planting_of(document.plan, "p1-3").series is not None


def test_five_hundred_successions_do_not_keep_the_hand_waiting(window: MainWindow, document: Document) -> None:
    plan = change_crop(metric_plan(), "pak-choi", field_days=20)
    document.start(change_planting(plan, "p1", plants=12, out=None))
    window.sight.select("b1", "p1")
    window.ledger.setCurrentIndex(1)
    began = process_time()
    repeat(window, {"times": "500", "every": "2"})
    took = process_time() - began
    assert len(series_of(document.plan, "p1")) > 300
    assert took < 4, took
    document.stack.undo()
    assert len(document.plan.plantings) == 3


def test_the_panel_says_before_one_types_how_many_are_changed_together(
    window: MainWindow, document: Document
) -> None:
    document.start(kales())
    window.sight.select("b1", "k1")
    panel = window.inspector.planting
    assert panel.series.text() == (
        "One of 3 in a series: its pattern, rows, spacings and size are changed in 2 others too, "
        "place and days in this one alone."
    )
    before = {one.id: layout_in(document.plan, one.id).plants for one in document.plan.plantings}
    finish(panel.form.fields["plants"], "15")
    changed = [one for one, plants in before.items() if layout_in(document.plan, one).plants != plants]
    assert changed == ["k1", "k2", "k3"]


def test_one_is_changed_alone_after_the_button_beside_those_words(window: MainWindow, document: Document) -> None:
    document.start(kales())
    window.sight.select("b1", "k2")
    panel = window.inspector.planting
    assert panel.leave.isVisible()
    QTest.mouseClick(panel.leave, Qt.MouseButton.LeftButton)
    assert planting_of(document.plan, "k2").series is None
    assert panel.series.isHidden()
    assert panel.leave.isHidden()
    finish(panel.form.fields["plants"], "15")
    assert [layout_in(document.plan, one).plants for one in ("k1", "k2", "k3")] == [12, 15, 12]
    document.stack.undo()
    document.stack.undo()
    window.sight.select("b1", "k2")
    assert panel.leave.isVisible()


@pytest.mark.parametrize(
    ("there", "words"),
    [
        (("k3",), "are changed in 1 other too"),
        (("k1",), "One of 3 in a series, but in the ground: it stands by itself."),
        (("k2", "k3"), "One of 3 in a series, of which all others are in the ground."),
    ],
)
def test_what_is_in_the_ground_is_not_counted_among_them(
    window: MainWindow, document: Document, there: tuple[str, ...], words: str
) -> None:
    document.start(kales(*there))
    window.sight.select("b1", "k1")
    assert words in window.inspector.planting.series.text()


def test_a_planting_by_itself_says_nothing_of_a_series(window: MainWindow) -> None:
    window.sight.select("b1", "p1")
    assert window.inspector.planting.series.isHidden()
    assert window.inspector.planting.leave.isHidden()
