"""Every number that the window shows was typed by the grower or opens its working, which says the same figure.

A walk over every table, panel and dialog: each text with a digit is in a field, or it is asked by the key, and once a
table by a double click, how it came about, and the figure is among the values of what opens. What is neither stands
in `NO_SUMS`, with the reason.
"""

import re
from collections.abc import Callable, Iterator
from datetime import date
from functools import partial
from pathlib import Path

import pytest
from attrs import evolve
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QComboBox,
    QLabel,
    QTreeWidget,
    QTreeWidgetItem,
    QTreeWidgetItemIterator,
    QWidget,
)
from pytestqt.qtbot import QtBot

from gardenplot.drawing.filling_words import worth_words
from gardenplot.drawing.number_words import Line
from gardenplot.filling import fill
from gardenplot.filling.ways_out import lacks
from gardenplot.plan import Actual, Plan
from gardenplot.plan.file import read_plan
from gardenplot.window.again_dialog import AgainDialog
from gardenplot.window.answers_dialog import AnswersDialog
from gardenplot.window.candidate_column import CandidateColumn
from gardenplot.window.compare_dialog import CompareDialog
from gardenplot.window.fill_dialog import FillDialog
from gardenplot.window.main import MainWindow
from gardenplot.window.pattern_choice import PatternButton
from gardenplot.window.tables import Table
from gardenplot.window.ways_dialog import WaysDialog
from gardenplot.window.working_dialog import WorkingDialog
from tests.drawing.figures_told import figures, without_names
from tests.drawing.hand_worked import hand_worked
from tests.plans import metric_plan
from tests.scenarios.again_plans import both_short, late_and_short, two_short
from tests.window.shared_window import window
from tests.window.walk import settle

__all__ = ["window"]

NO_SUMS = {
    r"Week \d+|\d[\w ]* – \d+ \w+ \d{4}": "a week of the calendar: no sum of the plan gives it",
    r"swatches 1 : \d+|.*scale 1 : .*": "the scale of the picture, as it was zoomed",
    r".*1 year in 10|like 18 May or 05-18|28 °F, −2.2 °C": "words beside a field: what is to be typed there",
}
"""What shows a digit and is no number of the plan, as a pattern of the whole text, with the reason."""


def is_no_sum(text: str) -> bool:
    return any(re.fullmatch(pattern, text) for pattern in NO_SUMS)


class Asked:
    """What the working dialog was opened with, instead of waiting for it to be closed."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self._kept: list[tuple[Line, ...]] = []
        monkeypatch.setattr(WorkingDialog, "exec", lambda dialog: self._kept.append(dialog.lines))

    @property
    def is_open(self) -> bool:
        """Whether anything was opened that nobody looked at yet."""
        return bool(self._kept)

    def values(self) -> set[str]:
        """The figures among the values of what was opened last; nothing where nothing was opened."""
        lines = self._kept.pop() if self._kept else ()
        assert not self._kept
        return {figure for line in lines for figure in figures(line.value)}


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> Asked:
    return Asked(monkeypatch)


def press(part: QWidget) -> None:
    """Ask by the key, with the keyboard in a part."""
    part.setFocus()
    QTest.keyClick(part, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)


def rows(table: Table) -> Iterator[QTreeWidgetItem]:
    at = QTreeWidgetItemIterator(table)
    while (item := at.value()) is not None:
        yield item
        at += 1


def lacking_in_table(window: MainWindow, table: Table, asked: Asked) -> Iterator[str]:
    """The cells of a table whose figures nothing explains."""
    plan = window.document.plan
    for item in list(rows(table)):
        columns = table.worked_out or range(table.columnCount())
        cells = [without_names(item.text(column), plan) for column in sorted(columns)]
        wanted = [cell for cell in cells if figures(cell) and not is_no_sum(cell)]
        if not wanted:
            continue
        table.setCurrentItem(item)
        press(table)
        values = asked.values()
        yield from (f"{cell!r} of {cells}, not among {sorted(values)}" for cell in wanted if figures(cell) - values)


def lacking_in_patterns(window: MainWindow, asked: Asked) -> Iterator[str]:
    """The patterns side by side: each is a button of its own, which the keyboard comes to."""
    for button in window.inspector.findChildren(PatternButton):
        if button.isVisible():
            press(button)
            values = asked.values()
            if figures(button.accessibleName()) - values:
                yield f"{button.accessibleName()!r}, not among {sorted(values)}"


def lacking_in_words(shown: QWidget | None, plan: Plan, values: set[str]) -> Iterator[str]:
    """The labels and buttons of a part of the window whose figures nothing explains."""
    assert shown is not None
    for part in (shown, *shown.findChildren(QWidget)):
        if not part.isVisibleTo(shown.window()) or not isinstance(part, QLabel | QAbstractButton):
            continue
        words = "" if isinstance(part, PatternButton) else part.text() or part.accessibleName()
        for line in words.splitlines():
            # A sum with its value is a working itself.
            text = without_names(line, plan).rpartition("→")[2]
            if not is_no_sum(text) and figures(text) - values:
                yield f"{type(part).__name__} {text!r}: {sorted(figures(text) - values)} not among {sorted(values)}"


def lacking(window: MainWindow, asked: Asked) -> Iterator[str]:
    """All that the window shows and cannot explain: every table, and the panel of all that can be selected."""
    plan, ledger = window.document.plan, window.ledger
    for number in range(ledger.count()):
        ledger.setCurrentIndex(number)
        page = ledger.currentWidget()
        assert page is not None
        for table in (page, *page.findChildren(QWidget)):
            if isinstance(table, Table):
                yield from lacking_in_table(window, table, asked)
    beds = [(bed.id, None) for bed in plan.beds]
    blocks = [(planting.bed, planting.id) for planting in plan.plantings]
    for bed, block in ((None, None), *beds, *blocks):
        window.sight.select(bed, block)
        settle(window)
        press(window.canvas)
        values = asked.values()
        yield from lacking_in_words(window.inspector.currentWidget(), plan, values)
        if block is not None:
            yield from lacking_in_patterns(window, asked)
        if bed is None:
            yield from lacking_in_words(window.statusBar(), plan, values)
            yield from lacking_in_words(window.header, plan, values)
            yield from lacking_in_words(window.shelf, plan, values)


def _plan(path: Path) -> Plan:
    return read_plan(path).plan


def bought_in() -> Plan:
    """S6 with 16 plants bought in, and no fennel raised for these."""
    plan = hand_worked("s6")
    return evolve(plan, plantings=(evolve(plan.plantings[0], actual=Actual(bought=16)), *plan.plantings[1:]))


SAMPLES = Path(__file__).parents[2] / "samples"
PLANS: dict[str, Callable[[], Plan]] = {
    "metric": metric_plan,
    **{name: partial(hand_worked, name) for name in ("s1", "s2", "s3", "s4", "s5", "s6")},
    "bought": bought_in,
    **{path.stem: partial(_plan, path) for path in sorted(SAMPLES.glob("*.gardenplot"))},
}


@pytest.mark.parametrize("name", PLANS)
def test_every_number_of_the_window_opens_its_working(window: MainWindow, asked: Asked, name: str) -> None:
    window.document.start(PLANS[name]())
    found = list(dict.fromkeys(lacking(window, asked)))
    assert not found, "\n".join(found)


def double_click(table: Table, item: QTreeWidgetItem, column: int) -> None:
    table.scrollToItem(item)
    at = table.visualRect(table.indexFromItem(item, column)).center()
    viewport, button, keys = table.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    QTest.mouseClick(viewport, button, keys, at)
    QTest.mouseDClick(viewport, button, keys, at)


@pytest.mark.parametrize(
    ("tab", "column", "figure"),
    [(0, 3, "136"), (1, 1, "45"), (2, 3, "134"), (2, 4, "136"), (4, 0, "7"), (5, 1, "175"), (6, 2, "65")],
)
def test_a_double_click_on_a_number_opens_it_too(
    window: MainWindow, asked: Asked, tab: int, column: int, figure: str
) -> None:
    """The numbers of S1, worked by hand: 136 of 134 pak choi, 45 kohlrabi, sown on 7 March, 175 seeds, 65 cm left."""
    window.document.start(hand_worked("s1"))
    window.ledger.setCurrentIndex(tab)
    page = window.ledger.currentWidget()
    assert page is not None
    table = page if isinstance(page, Table) else page.findChildren(QTreeWidget)[0]
    assert isinstance(table, Table)
    item = next(each for each in rows(table) if figure in figures(each.text(column)))
    double_click(table, item, column)
    assert figure in asked.values()


def test_a_double_click_on_words_of_a_panel_opens_the_numbers_of_what_is_selected(
    window: MainWindow, asked: Asked
) -> None:
    window.document.start(hand_worked("s1"))
    planting = window.document.plan.plantings[0]
    for bed, block, figure in (
        (None, None, "181"), (planting.bed, None, "65"), (planting.bed, planting.id, "157"),
    ):  # fmt: skip
        window.sight.select(bed, block)
        settle(window)
        panels = window.inspector
        words = panels.planting.working if block else panels.bed.left if bed else panels.plan.total
        QTest.mouseDClick(words, Qt.MouseButton.LeftButton)
        assert figure in asked.values()
    QTest.mouseDClick(window.total, Qt.MouseButton.LeftButton)
    assert "181" in asked.values()


def test_a_typed_number_of_an_order_is_changed_by_a_double_click_and_not_explained(
    window: MainWindow, asked: Asked
) -> None:
    window.document.start(hand_worked("s1"))
    wanted: list[object] = []
    window.ledger.order_wanted.disconnect()
    window.ledger.order_wanted.connect(wanted.append)
    window.ledger.setCurrentIndex(2)
    double_click(window.ledger.orders, next(rows(window.ledger.orders)), 1)
    assert len(wanted) == 1
    assert not asked.values()


def test_every_candidate_of_a_comparison_opens_its_numbers(window: MainWindow, asked: Asked) -> None:
    for name in ("s1", "s4"):
        plan = hand_worked(name)
        for planting in plan.plantings:
            dialog = CompareDialog(plan, planting.id, window)
            dialog.show()
            for column in dialog.findChildren(CandidateColumn):
                QTest.mouseClick(column, Qt.MouseButton.LeftButton)
                QTest.mouseClick(dialog.numbers, Qt.MouseButton.LeftButton)
                values, said = asked.values(), without_names(column.accessibleName(), plan)
                assert not figures(said) - values, f"{said}: {sorted(figures(said) - values)}"
            dialog.close()
            dialog.deleteLater()


def test_a_filling_opens_its_worth_and_what_it_placed(window: MainWindow, asked: Asked) -> None:
    plan = read_plan(SAMPLES / "larch-bend.gardenplot").plan
    window.document.start(plan)
    dialog = FillDialog(window.document, window.canvas.stage, window)
    dialog.show()
    filling = fill(plan, 60)
    dialog._offer(filling)
    QTest.mouseClick(dialog.numbers, Qt.MouseButton.LeftButton)
    values = asked.values()
    assert not figures(without_names(worth_words(filling), plan)) - values
    for item in rows(dialog.found):
        dialog.found.setFocus()
        dialog.found.setCurrentItem(item)
        said = " ".join(without_names(item.text(column), plan) for column in range(dialog.found.columnCount()))
        dialog.found.wanted.emit(item)
        assert not figures(said) - asked.values(), said
    dialog.close()


Turns = list[Callable[[], None]]
"""What turns a dialog to each of its troubles."""


def troubles(window: MainWindow, name: str) -> tuple[AnswersDialog, Turns]:
    """A dialog of troubles with what can be done about them, by the name of its plan."""
    document, sight = window.document, window.sight
    document.start(TROUBLED[name]())
    if name.startswith("ways"):
        lacking = lacks(document.plan)
        ways = WaysDialog(document, window.canvas, sight, window, lacking, 0)
        return ways, [partial(_turn, ways.which, number) for number in range(ways.which.count())]
    document.today = lambda: date(2025, 4, 21)
    again = AgainDialog(document, window.canvas, sight, window)
    again.loss.setText("5 %")
    again.loss.editingFinished.emit()
    table = again.all.table
    turns: Turns = [partial(_go_to, table, at) for at in range(max(1, table.topLevelItemCount()))]
    return again, turns


def _go_to(table: QTreeWidget, number: int) -> None:
    """Go to a row; where only one deviates, there are none."""
    item = table.topLevelItem(number)
    if item is not None:
        table.setCurrentItem(item)


def _turn(which: QComboBox, number: int) -> None:
    which.setCurrentIndex(number)
    which.activated.emit(number)


TROUBLED: dict[str, Callable[[], Plan]] = {
    "ways s5": partial(hand_worked, "s5"),
    "ways two short": two_short,
    "again late and short": late_and_short,
    "again both short": both_short,
}


@pytest.mark.parametrize("name", TROUBLED)
def test_every_trouble_and_what_can_be_done_opens_its_numbers(window: MainWindow, asked: Asked, name: str) -> None:
    dialog, turns = troubles(window, name)
    dialog.show()
    found: list[str] = []
    for turn in turns:
        turn()
        found += lacking_in_answers(window, dialog, asked)
    dialog.close()
    assert not found, "\n".join(dict.fromkeys(found))


def lacking_in_answers(window: MainWindow, dialog: AnswersDialog, asked: Asked) -> Iterator[str]:
    """The figures of a trouble and of all that can be done about it which nothing explains."""
    view, plan = dialog.view, window.document.plan
    for item in rows(view.table):
        view.table.setCurrentItem(item)
        QTest.mouseClick(dialog.numbers, Qt.MouseButton.LeftButton)
        values = asked.values()
        heads = view.table.headerItem()
        cells = [one.text(column) for one in (heads, item) for column in range(view.table.columnCount())]
        words = (view.says.text(), view.more.text(), view.price.text(), dialog.which.currentText())
        for line in (*cells, *(line for text in words for line in text.splitlines())):
            said = without_names(line, plan)
            if figures(said) - values:
                yield f"{item.text(0)}: {line!r}: {sorted(figures(said) - values)} not among {sorted(values)}"


def test_a_double_click_or_the_key_opens_the_numbers_of_what_can_be_done_and_takes_nothing(
    window: MainWindow, asked: Asked, qtbot: QtBot
) -> None:
    """S5 by hand: with less coriander 2 of 60 bunches can be sold, 58 fewer."""
    dialog, _turns = troubles(window, "ways s5")
    dialog.resize(1400, 600)
    dialog.show()
    table, plan = dialog.view.table, window.document.plan
    (item,) = table.findItems("Less Coriander", Qt.MatchFlag.MatchExactly)
    double_click(table, item, 2)
    assert {"60", "58"} <= asked.values()
    QTest.mouseMove(dialog.view.says)
    for words in (dialog.view.says, dialog.view.price):
        QTest.mouseDClick(words, Qt.MouseButton.LeftButton)
        assert "58" in asked.values()
    dialog.activateWindow()
    table.setFocus()
    qtbot.waitUntil(table.hasFocus)
    press(table)
    # A button whose keys are pressed is seen to go down first.
    qtbot.waitUntil(lambda: asked.is_open)
    assert "58" in asked.values()
    assert window.document.plan is plan
    assert dialog.isVisible()
    double_click(table, item, 0)
    assert not asked.values()
    assert window.document.plan != plan
