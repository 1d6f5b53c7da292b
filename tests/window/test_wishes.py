"""Wishes below the drawing: added and changed in a dialog, by keys, for the shelf's crop; undone by name."""

from datetime import date

import pytest
from attrs import evolve
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QLineEdit

from gardenplot.gestures.wish_typed import wish_values
from gardenplot.plan import Wish, crop_of
from gardenplot.plan.edits import add_wish, change_planting
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.window.main import MainWindow
from tests.journeys.person import rows_of
from tests.plans import metric_plan
from tests.window.shared_window import window

__all__ = ["window"]

Key, Keys = Qt.Key, Qt.KeyboardModifier
NOTHING = dict.fromkeys(
    ("least", "most", "piece", "days", "earliest", "latest", "times", "every_days", "worth", "beds"), ""
)


class Typing:
    """Types into the dialog about to open and presses Return, or Escape where it stays; keeps what it said."""

    def __init__(self, texts: dict[str, str]) -> None:
        self._texts = texts
        self.said: list[str] = []
        self.focus = self.crop = ""
        QTimer.singleShot(0, self._type)

    def _type(self) -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, AskDialog)
        crop = dialog.fields.get("crop")
        if isinstance(crop, QComboBox) and not crop.currentText():
            crop.setCurrentText("Leek")
        self.crop = str(dialog.typed().get("crop"))
        for name, text in self._texts.items():
            field = dialog.fields[name]
            assert isinstance(field, QLineEdit)
            field.clear()
            QTest.keyClicks(field, text)
        QTest.keyClick(dialog, Key.Key_Return)
        if dialog.isVisible():
            self.said = [one.text() for one in dialog.findChildren(QLabel) if one.isVisible()]
            focused = dialog.focusWidget()
            self.focus = focused.objectName() if focused else ""
            is_long = "crop" in dialog.fields
            QTest.keyClick(dialog, Key.Key_Escape)
            assert dialog.isVisible() is is_long, "what was typed goes unasked"
            if is_long:
                QTest.keyClick(dialog, Key.Key_Escape)


def test_a_wish_is_added_by_key_changed_from_its_row_removed_and_undone_by_name(
    window: MainWindow, document: Document
) -> None:
    wish = {"least": "20", "most": "60", "days": "50", "earliest": "2027-04-09", "latest": "2027-08-01"}
    window.canvas.setFocus()
    Typing(wish | {"piece": "15", "times": "3", "every_days": "10", "worth": "0.80", "beds": "Field, upper"})
    QTest.keyClick(window.canvas, Key.Key_I, Keys.ControlModifier)
    (made,) = document.plan.wishes
    assert (made.least, made.most, made.piece, made.days, made.worth) == (20, 60, 15, 50, 0.8)
    assert (made.times, made.every_days) == (3, 10)
    assert (made.earliest, made.latest, made.beds) == (date(2027, 4, 9), date(2027, 8, 1), ("b2",))
    window.ledger.go_to(window.ledger.wishes.table)
    name = crop_of(document.plan, made.crop).name
    days = ["Fri 9 Apr 2027", "Sun 1 Aug 2027"]
    assert [list(row) for row in rows_of(window.ledger.wishes.table)] == [
        [
            name,
            "20",
            "60",
            "0",
            "not planted",
            "50",
            *days,
            "0.8",
            "Field, upper",
            "15 or more",
            "3 times, every 10 days",
        ]
    ]
    Typing({"most": "70"})
    window.ledger.wishes.wanted.emit(made.id)
    assert document.plan.wishes == (evolve(made, most=70),)
    assert document.stack.undoText() == f"Change the wish for {name}"
    table = window.ledger.wishes.table
    table.setCurrentIndex(table.model().index(0, 0))
    QTest.mouseClick(window.ledger.wishes.remove, Qt.MouseButton.LeftButton)
    assert not document.plan.wishes
    assert document.stack.undoText() == f"Remove the wish for {name}"
    document.stack.undo()
    assert document.plan.wishes == (evolve(made, most=70),)


def test_a_wish_for_the_shelfs_crop_has_that_crop_chosen(window: MainWindow, document: Document) -> None:
    leek = document.plan.crops[1]
    window.shelf.choose(leek)
    typing = Typing({"most": "30"})
    QTest.keyClick(window.shelf.list, Key.Key_I, Keys.ControlModifier | Keys.ShiftModifier)
    assert typing.crop == leek.name
    assert [(wish.crop, wish.least, wish.most, wish.beds) for wish in document.plan.wishes] == [("leek", 1, 30, ())]


@pytest.mark.parametrize(
    ("texts", "field", "words"),
    [
        ({"least": "many"}, "least", "no whole number"),
        ({"least": "9", "most": "5"}, "most", "at most 5 plants cannot be 9"),
        ({"most": "9", "piece": "10"}, "piece", "at most 9 plants have no piece of 10"),
        ({"times": "4"}, "earliest", "the first time"),
        ({"worth": "dear"}, "worth", "no number"),
        ({"worth": "1,200"}, "worth", "no number"),
        ({"worth": "-1"}, "worth", "nothing or more"),
        ({"earliest": "2027-05-09", "latest": "2027-05-01"}, "latest", "before the day"),
        ({"earliest": "2027-05-01", "latest": "2027-05-09", "days": "30"}, "days", "30 days do not lie"),
        ({"latest": "2027-05-09"}, "earliest", "from which day"),
        ({"beds": "Nowhere"}, "beds", "no bed “Nowhere”"),
    ],
)
def test_what_is_wrong_stands_at_its_field_and_changes_nothing(
    window: MainWindow, document: Document, texts: dict[str, str], field: str, words: str
) -> None:
    typing = Typing(texts)
    window.wishes.edit()
    assert any(words in said for said in typing.said)
    assert typing.focus == field
    assert document.stack.count() == 0
    assert set(wish_values(NOTHING | texts, document.plan)[1]) == {field}


def test_the_row_says_what_the_plan_lacks_as_it_stands(window: MainWindow, document: Document) -> None:
    document.start(add_wish(metric_plan(), Wish("w", "leek", most=400)))
    document.change("For the wish", change_planting(document.plan, "p2", wish="w"))
    window.ledger.go_to(window.ledger.wishes.table)
    ((_crop, _least, _most, planted, lacks, *_rest),) = rows_of(window.ledger.wishes.table)
    assert lacks == f"short by {400 - int(planted)} plants"
    document.stack.undo()
    ((_crop, _least, _most, planted, lacks, *_rest),) = rows_of(window.ledger.wishes.table)
    assert (planted, lacks) == ("0", "not planted")


def test_a_row_that_is_out_of_sight_and_gone_from_the_plan_is_chosen_no_more(
    window: MainWindow, document: Document
) -> None:
    ledger = window.ledger
    document.change("Wish", add_wish(document.plan, Wish("w1", "leek", 10)))
    ledger.go_to(ledger.wishes.table)
    row = ledger.wishes.table.topLevelItem(0)
    assert row is not None
    ledger.wishes.table.setCurrentItem(row)
    assert window.registry.made("wish.remove").isEnabled()
    ledger.go_to(ledger.counts)
    document.stack.undo()
    window.registry.refresh()
    assert not window.registry.made("wish.remove").isEnabled()
    window.wishes.remove()
    assert document.stack.index() == 0
