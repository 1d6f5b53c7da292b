"""The season is filled beside the drawing: proposed, then taken in one step or left without a trace."""

from collections.abc import Callable
from datetime import date, timedelta
from multiprocessing import active_children

import pytest
from attrs import evolve
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from gardenplot.exports.apart import Parts
from gardenplot.filling import Filling, First, Weights, fill
from gardenplot.filling.effort import turns_in
from gardenplot.filling.telling import fill_and_others
from gardenplot.filling.wanted import wanted_in
from gardenplot.plan import Plan, Wish
from gardenplot.plan.edits import add_wish
from gardenplot.window import fill_dialog
from gardenplot.window.document import Document
from gardenplot.window.fill_dialog import FillDialog
from gardenplot.window.main import MainWindow
from tests.filling.test_others import torn
from tests.journeys.person import rows_of
from tests.plans import metric_plan
from tests.window.mouse import Mouse

Key, Keys = Qt.Key, Qt.KeyboardModifier


def wished() -> Plan:
    """Two wishes: one that finds ground, one that nothing has room for."""
    plan = add_wish(metric_plan(), Wish("some", "leek", least=10, most=20, beds=("b2",)))
    return add_wish(plan, Wish("vast", "pak-choi", least=5000, most=6000))


def overfull(wishes: int) -> Plan:
    """More wishes than there is ground for, none quite like another: no filling meets its bound."""
    plan = evolve(metric_plan(), plantings=())
    for number in range(wishes):
        plants, first = 37 + 11 * number, date(2027, 4, 1) + timedelta(days=9 * (number * 7 % 13))
        days, latest = 40 + number * 5 % 37, first + timedelta(days=95)
        wish = Wish(f"w{number}", "leek", plants, plants, days, first, latest, worth=1 + number / 17)
        plan = add_wish(plan, wish)
    return plan


@pytest.fixture
def filling(window: MainWindow, document: Document) -> Callable[[Plan], FillDialog]:
    """Opens a plan and its dialog by key."""

    def opened(plan: Plan) -> FillDialog:
        document.start(plan)
        window.canvas.setFocus()
        QTest.keyClick(window.canvas, Key.Key_F, Keys.ControlModifier | Keys.ShiftModifier)
        (dialog,) = window.findChildren(FillDialog)
        assert dialog.isVisible()
        return dialog

    return opened


def press(button: QPushButton) -> None:
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)


def test_a_proposal_is_drawn_and_taken_in_one_step_by_name(
    window: MainWindow, document: Document, qtbot: QtBot, filling: Callable[[Plan], FillDialog]
) -> None:
    plan, dialog = wished(), filling(wished())
    QTest.keyClick(dialog, Key.Key_Return)
    qtbot.waitUntil(dialog.take.isVisible, timeout=20_000)
    assert document.plan == plan
    trial = window.canvas.stage.trial
    assert trial is not None
    assert trial.proposed == tuple(one.id for one in trial.plan.plantings[3:])
    assert "1 of 2 wishes and orders met" in dialog.says.text()
    assert "worth 20, the best there is" in dialog.says.text()
    lacks, placed = rows_of(dialog.found)
    assert list(lacks)[:4] == ["Pak choi", "found no place", "", "0 of 6 000"]
    assert (placed[0], placed[1], placed[3]) == ("Leek", "Field, upper", "20")
    QTest.keyClick(dialog, Key.Key_Return)
    assert not dialog.isVisible()
    assert document.stack.undoText() == "Fill the season"
    assert document.plan == fill(plan, turns_in(plan, fill_dialog.SECONDS)).plan
    assert [one.id for one in wanted_in(document.plan, Weights())] == ["vast"]
    document.stack.undo()
    assert document.plan == plan


@pytest.mark.parametrize("where", ["leave", "dialog", "drawing"])
def test_a_proposal_that_is_left_leaves_no_trace(
    window: MainWindow, document: Document, qtbot: QtBot, filling: Callable[[Plan], FillDialog], where: str
) -> None:
    document.start(wished())
    window.canvas.setFocus()
    before = window.canvas.grab().toImage()
    dialog = filling(wished())
    press(dialog.begin)
    qtbot.waitUntil(dialog.take.isVisible, timeout=20_000)
    assert window.canvas.grab().toImage() != before
    if where == "leave":
        press(dialog.leave)
    else:
        QTest.keyClick(dialog if where == "dialog" else window.canvas, Key.Key_Escape)
    assert not dialog.isVisible()
    assert window.canvas.stage.trial is None
    window.activateWindow()
    window.canvas.setFocus()
    qtbot.waitUntil(window.canvas.hasFocus)
    assert window.canvas.grab().toImage() == before
    assert (document.plan, document.stack.count()) == (wished(), 0)


def test_the_hand_changes_nothing_while_a_proposal_is_drawn_and_an_edit_gives_it_up(
    window: MainWindow, document: Document, qtbot: QtBot, filling: Callable[[Plan], FillDialog], mouse: Mouse
) -> None:
    dialog = filling(wished())
    press(dialog.begin)
    qtbot.waitUntil(dialog.take.isVisible, timeout=20_000)
    mouse.drag("b1", "1 m", "5 m")
    assert (document.plan, dialog.isVisible()) == (wished(), True)
    document.change("A wish more", add_wish(document.plan, Wish("more", "leek")))
    assert not dialog.isVisible()
    assert window.canvas.stage.trial is None


def test_the_best_so_far_is_drawn_and_kept_when_it_is_stopped(
    window: MainWindow,
    document: Document,
    qtbot: QtBot,
    filling: Callable[[Plan], FillDialog],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(fill_dialog, "SECONDS", 50_000.0)
    dialog = filling(overfull(60))
    press(dialog.begin)
    qtbot.waitUntil(lambda: "best so far" in dialog.says.text() and dialog.bar.value() > 0, timeout=20_000)
    assert window.canvas.stage.trial is not None
    press(dialog.stop)
    assert dialog.take.isVisible()
    qtbot.waitUntil(lambda: active_children() == [], timeout=20_000)
    best = dialog.filling
    assert best is not None
    press(dialog.take)
    assert document.plan.plantings == best.plan.plantings
    assert document.stack.count() == 1


def test_a_process_that_dies_is_told_and_the_plan_is_as_it_was(
    window: MainWindow,
    document: Document,
    qtbot: QtBot,
    filling: Callable[[Plan], FillDialog],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(fill_dialog, "_WORK", ("os", "abort"))
    dialog = filling(wished())
    press(dialog.begin)
    qtbot.waitUntil(lambda: not dialog.isVisible(), timeout=20_000)
    assert "ended before it was done; the plan is as it was" in window.statusBar().currentMessage()
    assert (document.plan, document.stack.count()) == (wished(), 0)


def test_without_wishes_and_orders_the_key_says_what_would_help(window: MainWindow) -> None:
    QTest.keyClick(window.canvas, Key.Key_F, Keys.ControlModifier | Keys.ShiftModifier)
    assert "Nothing is wished for" in window.statusBar().currentMessage()
    assert not window.findChildren(FillDialog)
    assert not window.ledger.wishes.fill.isEnabled()


def test_what_counts_is_kept_for_the_next_time(filling: Callable[[Plan], FillDialog]) -> None:
    dialog = filling(wished())
    QTest.keyClick(dialog.weights.orders, Key.Key_Down)
    chosen = dialog.weights.orders.currentText()
    assert dialog.weights.weights() == Weights(orders=1000)
    QTest.keyClick(dialog.weights.apart, Key.Key_Down)
    QTest.keyClick(dialog.weights.first, Key.Key_Down)
    last = dialog.weights.weights()
    assert last == Weights(orders=1000, apart=True, first=First.ROOM)
    dialog.reject()
    parent = dialog.parentWidget()
    assert parent is not None
    other = FillDialog(dialog._document, dialog._stage, parent)
    assert other.weights.orders.currentText() == chosen
    assert other.weights.weights() == last


def test_the_filling_that_tells_is_the_one_that_does_not() -> None:
    told: list[Parts] = []
    plan = overfull(24)
    filling, _others = fill_and_others(plan, 300, Weights(), told=lambda *parts: told.append(Parts(*parts)))
    assert filling == fill(plan, 300)
    bests = [one.best for one in told if one.best is not None]
    worths = [best.worth for best in bests if isinstance(best, Filling)]
    assert bests
    assert worths == sorted(worths)
    assert worths[-1] <= filling.worth
    done = [one.done for one in told]
    assert done == sorted(done)
    assert {one.of for one in told} == {300}


def test_a_filling_that_differs_in_kind_is_looked_at_and_taken_instead(
    window: MainWindow,
    document: Document,
    qtbot: QtBot,
    filling: Callable[[Plan], FillDialog],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(fill_dialog, "SECONDS", 0.1)
    dialog = filling(torn())
    press(dialog.begin)
    qtbot.waitUntil(dialog.take.isVisible, timeout=20_000)
    assert [dialog.offers.itemText(number) for number in range(dialog.offers.count())] == [
        "as it was weighed: 0 of 2 met",
        "wishes as much as orders: 1 of 2 met",
    ]
    drawn: list[str] = []
    window.canvas.stage.shown.connect(lambda: drawn.append("drawn"))
    dialog.offers.picked.emit(dialog.filling)
    assert drawn == [], "what is drawn already is not drawn again"
    QTest.keyClick(dialog.offers, Qt.Key.Key_Down)
    assert drawn == ["drawn"]
    assert [row[0] for row in rows_of(dialog.found)] == ["Leek", "Pak choi", "Leek"]
    trial = window.canvas.stage.trial
    assert trial is not None
    assert [one.crop for one in trial.plan.plantings] == ["pak-choi", "leek"]
    press(dialog.take)
    assert document.plan.plantings == trial.plan.plantings
    document.stack.undo()
    assert document.plan.plantings == ()
