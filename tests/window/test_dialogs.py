"""The dialogs that ask: ready to be typed into, closed by right answers, and told what is wrong with others."""

from collections.abc import Callable, Mapping
from datetime import date

import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QLineEdit, QPushButton, QScrollArea

from gardenplot.drawing.style import Ink
from gardenplot.drawing.tables import order_rows
from gardenplot.plan import DaysFrom, Establish, Frost, bed_of, crop_of, order_of
from gardenplot.plan.edits import add_order, change_planting
from gardenplot.units import Units
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.window.ground_requests import ask_tunnel
from gardenplot.window.main import MainWindow
from gardenplot.window.new_plan import ask_new_plan
from gardenplot.window.order_dialog import OrderDialog
from gardenplot.window.requests import ask_bed, ask_crop, ask_order
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.window.theme import palette
from tests.plans import feet_plan
from tests.window.shared_window import window
from tests.window.walk import opened, place, settle

__all__ = ["window"]

Asks = Callable[[Document, MainWindow], bool]
KOHLRABI = {"name": "Kohlrabi", "in_row": "25 cm", "row_spacing": "25 cm to 30 cm"}
ORDER = {"crop": "Leek", "units": "300", "on": "2027-08-14"}


class Answers:
    """Fills the dialog that is about to open and accepts it, or gives it up where it stays; keeps what it said."""

    def __init__(self, texts: Mapping[str, str], look: Callable[[], None] = lambda: None) -> None:
        self._texts, self._look = texts, look
        self.said: list[str] = []
        self.focus = ""
        QTimer.singleShot(0, self._answer)

    def _answer(self) -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, AskDialog)
        for name, text in self._texts.items():
            field = dialog.fields[name]
            if isinstance(field, QComboBox):
                field.setCurrentText(text)
            elif isinstance(field, QLineEdit):
                field.setText(text)
        QTest.keyClick(dialog, Qt.Key.Key_Return)
        if dialog.isVisible():
            self.said = [label.text() for label in dialog.findChildren(QLabel) if label.isVisible()]
            focused = dialog.focusWidget()
            self.focus = focused.objectName() if focused else ""
            self._look()
            dialog.reject()


@pytest.mark.parametrize(
    ("ask", "first"), [(ask_bed, "name"), (ask_crop, "name"), (ask_order, "crop"), (ask_new_plan, "units")]
)
def test_the_keyboard_is_in_the_first_field(window: MainWindow, document: Document, ask: Asks, first: str) -> None:
    focused: list[str] = []

    def look() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, AskDialog)
        focused.extend(name for name, field in dialog.fields.items() if field is dialog.focusWidget())
        dialog.reject()

    QTimer.singleShot(0, look)
    assert not ask(document, window)
    assert focused == [first]
    assert document.stack.count() == 0


def test_a_bed_is_added_and_selected(window: MainWindow, document: Document) -> None:
    Answers({"name": "Field, by the wall", "length": "8 m", "width": "1.20 m", "margin": "", "gap": "10"})
    window.beds.add_bed()
    bed = document.plan.beds[-1]
    assert (bed.id, bed.name, str(bed.length), str(bed.gap)) == (
        "field-by-the-wall",
        "Field, by the wall",
        "8 m",
        "10 cm",
    )
    assert bed.head_margin is None
    assert window.sight.bed == bed.id


def test_a_crop_comes_from_its_packet(window: MainWindow, document: Document) -> None:
    Answers(KOHLRABI | {"establish": "sown where it grows", "field_loss": "5 %"})
    assert ask_crop(document, window)
    crop = crop_of(document.plan, "kohlrabi")
    assert (crop.name, str(crop.in_row), crop.establish) == ("Kohlrabi", "25 cm", Establish.DIRECT)
    assert [str(length) for length in crop.row_spacing] == ["25 cm", "30 cm"]
    assert document.stack.undoText() == "Crop Kohlrabi"


def test_a_packet_shows_as_many_of_its_lines_as_the_screen_has_room_for(
    host: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    dialog = opened(host, "seed packet", monkeypatch.setattr)
    room = room_on_screen(dialog).height()
    area = dialog.findChild(QScrollArea)
    assert area is not None
    assert dialog.height() <= room
    assert area.height() >= room * 0.9 - 150
    dialog.close()


def test_a_crop_that_was_entered_is_chosen_on_the_shelf_whatever_was_looked_for(window: MainWindow) -> None:
    window.shelf.search.setText("pak")
    Answers(KOHLRABI)
    window.plantings.new_crop()
    chosen = window.shelf.chosen()
    assert chosen is not None
    assert chosen.id == "kohlrabi"


def test_a_packet_says_from_where_its_days_count_and_what_else_there_is_to_know_of_time(
    window: MainWindow, document: Document
) -> None:
    days = {"field_days": "60", "cool_days": "14", "harvest_days": "21", "pot_up_days": "10", "oldest_days": "40"}
    Answers(KOHLRABI | days | {"raising_days": "28", "days_from": "sowing", "frost": "half-hardy"})
    assert ask_crop(document, window)
    crop = crop_of(document.plan, "kohlrabi")
    assert (crop.days_from, crop.frost) == (DaysFrom.SOWING, Frost.HALF_HARDY)
    assert [getattr(crop, name) for name in days] == [60, 14, 21, 10, 40]
    steps = document.stack.count()
    Answers({})
    assert ask_crop(document, window, "kohlrabi")
    assert document.stack.count() == steps
    Answers({"days_from": "when it goes into its bed", "frost": "not said"})
    assert ask_crop(document, window, "kohlrabi")
    crop = crop_of(document.plan, "kohlrabi")
    assert (crop.days_from, crop.frost) == (None, None)


def test_a_crop_that_is_looked_at_and_accepted_makes_no_step(window: MainWindow, document: Document) -> None:
    Answers({})
    assert ask_crop(document, window, "pak-choi")
    assert document.stack.count() == 0


def test_an_order_brings_its_crop_from_the_catalogue_and_is_changed_afterwards(
    window: MainWindow, document: Document
) -> None:
    Answers(ORDER | {"crop": "Kohlrabi", "measure": "2"})
    assert ask_order(document, window)
    order = document.plan.orders[0]
    assert (order.units, order.plants_per_unit, order.on) == (300, 2, date(2027, 8, 14))
    assert crop_of(document.plan, order.crop).name == "Kohlrabi"
    Answers({"units": "250"})
    assert ask_order(document, window, order.id)
    assert order_of(document.plan, order.id).units == 250
    assert document.stack.count() == 2


def test_an_order_may_be_wanted_on_several_market_days_and_be_cut_from_row(
    window: MainWindow, document: Document
) -> None:
    document.start(feet_plan())
    told = {"crop": "Beetroot", "units": "24", "unit": "a length of row", "measure": "1.5", "times": "4"}
    Answers(told | {"on": "2028-05-30", "every_days": "7"})
    assert ask_order(document, window)
    order = document.plan.orders[-1]
    assert (str(order.row_per_unit), order.plants_per_unit, order.units_per_plant) == ("1.5 ft", 1, None)
    window.ledger.setCurrentIndex(2)
    rows = [row for row in order_rows(document.plan) if row.order == order.id]
    table = window.ledger.orders
    shown = [table.topLevelItem(number) for number in range(table.topLevelItemCount())]
    keys = [(order.id, market) for market in (1, 2, 3, 4)]
    days = [(item.text(2), item.text(5)) for item in shown if item is not None and table.key_of(item) in keys]
    assert days == [(f"Tue {day} 2028", "not planted") for day in ("30 May", "6 Jun", "13 Jun", "20 Jun")]
    assert [row.market for row in rows] == [1, 2, 3, 4]
    Answers({"unit": "part of a plant", "measure": "6", "times": ""})
    assert ask_order(document, window, order.id)
    order = order_of(document.plan, order.id)
    assert (order.row_per_unit, order.units_per_plant, order.times) == (None, 6, 1)
    document.stack.undo()
    assert order_of(document.plan, order.id).times == 4


def test_an_order_that_is_looked_at_and_accepted_makes_no_step(window: MainWindow, document: Document) -> None:
    for unit, measure in (("one plant or more", "3"), ("a length of row", "40 cm")):
        Answers(ORDER | {"unit": unit, "measure": measure, "times": "3", "every_days": "14"})
        assert ask_order(document, window)
        count = document.stack.count()
        Answers({})
        assert ask_order(document, window, document.plan.orders[-1].id)
        assert document.stack.count() == count


def test_what_can_be_typed_about_a_unit_goes_with_what_it_is(window: MainWindow, document: Document) -> None:
    dialog = OrderDialog(document, None, window)
    unit, measure = dialog.fields["unit"], dialog.fields["measure"]
    assert isinstance(unit, QComboBox)
    assert isinstance(measure, QLineEdit)
    assert measure.placeholderText() == "1, each plant is a unit"
    assert measure.accessibleName() == "Plants in a unit"
    unit.setCurrentText("a length of row")
    assert measure.placeholderText() == "like 50 cm"
    assert measure.accessibleName() == "Row for a unit"
    assert "Row for a unit" in [label.text() for label in dialog.findChildren(QLabel)]
    dialog.deleteLater()


def test_a_new_plan_has_the_beds_that_were_asked_for(window: MainWindow, document: Document) -> None:
    Answers(
        {"name": "Two Poplars", "units": "decimal feet", "beds": "3", "length": "50", "width": "2.5", "margin": "1"}
    )
    assert ask_new_plan(document, window)
    plan = document.plan
    assert (plan.place.name, plan.place.units) == ("Two Poplars", Units.DECIMAL_FEET)
    assert [str(bed.length) for bed in plan.beds] == ["50 ft"] * 3
    assert [bed.name for bed in plan.beds] == ["Bed 1", "Bed 2", "Bed 3"]
    assert not document.is_saved, "it is kept nowhere yet"


@pytest.mark.parametrize(
    ("ask", "texts", "told"),
    [
        (ask_bed, {"length": "8 m", "width": "wide"}, "“wide” is no length"),
        (ask_bed, {"length": "1 m", "width": "75 cm", "margin": "60 cm"}, "margin"),
        (ask_crop, KOHLRABI | {"name": ""}, "a name is needed"),
        (ask_crop, KOHLRABI | {"in_row": "hand wide"}, "“hand wide” is no length"),
        (ask_crop, KOHLRABI | {"seeds_per_gram": "some"}, "“some” is no number"),
        (ask_crop, KOHLRABI | {"germination": "120 %"}, "“120 %” is no share"),
        (ask_order, ORDER | {"units": ""}, "how many units"),
        (ask_order, ORDER | {"on": "14 August"}, "“14 August” is no date"),
        (ask_order, ORDER | {"units": "3.5"}, "“3.5” is no whole number"),
        (ask_new_plan, {"length": "50 ft", "width": "x"}, "“x” is no length"),
        (ask_new_plan, {"length": "50 ft", "width": "30 in", "beds": "two"}, "“two” is no whole number"),
    ],
)
def test_what_is_wrong_is_said_and_the_dialog_stays(
    window: MainWindow, document: Document, ask: Asks, texts: dict[str, str], told: str
) -> None:
    plan, answers = document.plan, Answers(texts)
    assert not ask(document, window)
    assert any(told in words for words in answers.said), answers.said
    assert document.plan is plan


def test_the_keyboard_goes_to_the_field_that_is_wrong(window: MainWindow, document: Document) -> None:
    answers = Answers(KOHLRABI | {"spare": "plenty"})
    assert not ask_crop(document, window)
    assert answers.focus == "spare"


def test_a_bare_number_takes_the_unit_of_the_usual_size(window: MainWindow, document: Document) -> None:
    document.start(feet_plan())
    Answers({"name": "Strip", "length": "24", "width": "30"})
    assert ask_bed(document, window)
    bed = bed_of(document.plan, "strip")
    assert (str(bed.length), str(bed.width)) == ("24 ft", "30 in")


@pytest.mark.parametrize(
    ("ask", "texts", "field"),
    [
        (ask_bed, {"length": "8 m", "width": "wide"}, "width"),
        (ask_bed, {"length": "1 m", "width": "75 cm", "margin": "60 cm"}, "margin"),
        (ask_crop, KOHLRABI | {"row_spacing": "45 cm to 30 cm"}, "row_spacing"),
        (ask_crop, KOHLRABI | {"field_days": "2000"}, "field_days"),
        (ask_crop, KOHLRABI | {"oldest_days": "2000"}, "oldest_days"),
        (ask_crop, KOHLRABI | {"cool_days": "a few"}, "cool_days"),
        (ask_order, ORDER | {"units": ""}, "units"),
        (ask_order, ORDER | {"on": "soon"}, "on"),
        (ask_order, ORDER | {"units": "0"}, "units"),
        (ask_order, ORDER | {"measure": "half"}, "measure"),
        (ask_order, ORDER | {"lead_days": "-1"}, "lead_days"),
        (ask_order, ORDER | {"times": "0"}, "times"),
        (ask_order, ORDER | {"times": "2000"}, "times"),
        (ask_order, ORDER | {"every_days": "weekly"}, "every_days"),
        (ask_order, ORDER | {"every_days": "0"}, "every_days"),
        (ask_order, ORDER | {"unit": "a length of row", "measure": ""}, "measure"),
        (ask_order, ORDER | {"unit": "a length of row", "measure": "0 m"}, "measure"),
        (ask_order, ORDER | {"unit": "part of a plant", "measure": "0"}, "measure"),
        (ask_tunnel, {"x": "1 m", "y": "there"}, "y"),
        (ask_tunnel, {"x": "1 m", "y": "1 m", "length": "0", "width": "5 m"}, "length"),
    ],
)
def test_what_is_wrong_stands_below_its_field_which_keeps_its_text(
    window: MainWindow, document: Document, ask: Asks, texts: dict[str, str], field: str
) -> None:
    told: list[tuple[str, str, bool]] = []

    def look() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, AskDialog)
        settle(dialog)
        complaint, line = dialog._complaints[field], dialog.fields[field]
        assert isinstance(line, QLineEdit)
        below = complaint.mapTo(dialog, QPoint()).y() >= line.mapTo(dialog, line.rect().bottomLeft()).y()
        told.append((line.text(), complaint.text(), complaint.isVisible() and below))
        assert not dialog._complaints[""].isVisible()

    answers = Answers(texts, look)
    assert not ask(document, window)
    assert answers.focus == field
    ((kept, words, is_below),) = told
    assert (kept, is_below) == (texts[field], True)
    assert words
    assert "[" not in words


BUTTONS = {
    "add bed": "Add bed",
    "seed packet": "Add crop",
    "order": "Add order",
    "new plan": "Make plan",
    "cover": "Add cover",
    "tunnel": "Add tunnel",
    "series": "Make series",
}


@pytest.mark.parametrize("name", BUTTONS)
def test_the_button_that_accepts_says_what_it_does(
    host: MainWindow, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    dialog = opened(host, name, monkeypatch.setattr)
    words = [button.text() for button in dialog.findChildren(QPushButton)]
    assert sorted(words) == sorted([BUTTONS[name], "Cancel"])
    assert next(button for button in dialog.findChildren(QPushButton) if button.isDefault()).text() == BUTTONS[name]
    dialog.reject()


def test_the_button_that_accepts_is_told_from_the_others(host: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    dialog = opened(host, "order", monkeypatch.setattr)
    grounds = {}
    for button in dialog.findChildren(QPushButton):
        grounds[button.isDefault()] = button.grab().toImage().pixelColor(button.width() // 2, 4).name()
    assert grounds == {True: palette()[Ink.INK].lower(), False: palette()[Ink.PAPER].lower()}
    dialog.reject()


def test_a_removed_order_leaves_its_plants_standing(window: MainWindow, document: Document) -> None:
    Answers(ORDER)
    assert ask_order(document, window)
    order = document.plan.orders[0]
    document.change("Order of Leek", change_planting(document.plan, "p2", order=order.id, length=None))
    window.ledger.setCurrentIndex(2)
    rows = window.ledger.orders.model()
    window.ledger.orders.setCurrentIndex(rows.index(0, 0))
    window.ledger.remove_order.click()
    assert document.plan.orders == ()
    leek = document.plan.plantings[1]
    assert (leek.order, leek.plants) == (None, 300)


def test_two_orders_of_a_crop_for_one_day_are_both_kept(window: MainWindow, document: Document) -> None:
    for _ in range(2):
        Answers(ORDER)
        assert ask_order(document, window)
    first, second = document.plan.orders
    assert first.id != second.id
    assert add_order(document.plan, first).orders[:2] == (first, second)


def line_of(dialog: AskDialog, name: str) -> QLineEdit:
    """The line of that name, to be typed into."""
    field = dialog.fields[name]
    line = field.lineEdit() if isinstance(field, QComboBox) else field
    assert isinstance(line, QLineEdit)
    return line


def test_a_packet_asks_for_what_goes_with_how_the_crop_gets_into_its_bed(
    host: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    dialog = opened(host, "seed packet", monkeypatch.setattr)
    assert isinstance(dialog, AskDialog)
    way = dialog.fields["establish"]
    assert isinstance(way, QComboBox)
    raised = {"raising_days", "pot_up_days", "hardening_days", "oldest_days", "spare", "tray_cells"}
    sown = {"seeds_per_row", "seeder_slack"}

    def asked() -> set[str]:
        return {name for name in raised | sown if dialog.fields[name].isVisibleTo(dialog)}

    assert asked() == raised
    line_of(dialog, "tray_cells").setText("84")
    way.setCurrentText("sown where it grows")
    assert asked() == sown | {"tray_cells"}, "what was typed stays to be seen"
    line_of(dialog, "tray_cells").clear()
    way.setCurrentText("raised and set out")
    assert asked() == raised
    dialog.reject()


@pytest.mark.parametrize("name", ["seed packet", "order", "wish", "new plan"])
@pytest.mark.parametrize("leave", ["escape", "cancel", "close"])
def test_what_was_typed_in_a_long_form_goes_only_when_that_is_meant_twice(
    host: MainWindow, monkeypatch: pytest.MonkeyPatch, name: str, leave: str
) -> None:
    def leaves() -> None:
        button = next(one for one in dialog.findChildren(QPushButton) if not one.property("strong"))
        ways = {
            "escape": lambda: QTest.keyClick(dialog, Qt.Key.Key_Escape),
            "cancel": lambda: QTest.mouseClick(button, Qt.MouseButton.LeftButton),
            "close": dialog.close,
        }
        ways[leave]()

    dialog = opened(host, name, monkeypatch.setattr)
    assert isinstance(dialog, AskDialog)
    leaves()
    assert not dialog.isVisible(), "nothing was typed"
    dialog.show()
    lines = [one for one, field in dialog.fields.items() if isinstance(field, QLineEdit)][:2]
    for line in lines:
        line_of(dialog, line).setText("12")
    leaves()
    assert dialog.isVisible()
    said = [label.text() for label in dialog.findChildren(QLabel) if label.isVisible()]
    assert any(words.startswith("2 lines were typed here and go if you leave") for words in said)
    assert "Leave without it" in [button.text() for button in dialog.findChildren(QPushButton)]
    leaves()
    assert not dialog.isVisible()


@pytest.mark.parametrize("name", ["order", "wish"])
def test_the_crop_of_an_order_or_a_wish_is_found_by_a_part_of_its_name(
    host: MainWindow, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    dialog = opened(host, name, monkeypatch.setattr)
    assert isinstance(dialog, AskDialog)
    crop = dialog.fields["crop"]
    assert isinstance(crop, QComboBox)
    QTest.keyClicks(crop, "ohlrab")
    names = crop.completer()
    assert names is not None
    popup = names.popup()
    assert popup is not None
    QTest.keyClick(popup, Qt.Key.Key_Down)
    QTest.keyClick(popup, Qt.Key.Key_Return)
    assert crop.currentText() == "Kohlrabi"
    dialog.reject()
    for text, told in (("", "a crop is needed"), ("Moonberry", "“Moonberry” is no crop")):
        crop.setCurrentText(text)
        dialog.show()
        QTest.keyClick(dialog, Qt.Key.Key_Return)
        said = [label.text() for label in dialog.findChildren(QLabel) if label.isVisible()]
        assert any(told in words for words in said)
        dialog.reject()


@pytest.mark.parametrize("name", ["order", "new plan", "wish"])
@pytest.mark.parametrize("text", ["x", "what nobody can read"])
def test_what_is_wrong_in_many_lines_has_room_below_each_of_them(
    host: MainWindow, monkeypatch: pytest.MonkeyPatch, name: str, text: str
) -> None:
    dialog = opened(host, name, monkeypatch.setattr)
    assert isinstance(dialog, AskDialog)
    lines = [field for field in dialog.fields.values() if isinstance(field, QLineEdit)]
    usual, inner = lines[0].height(), lines[0].parentWidget()
    assert inner is not None
    for line in lines:
        line.setText(text)
    for key in (Qt.Key.Key_Return, Qt.Key.Key_Escape):
        QTest.keyClick(dialog, key)
        settle(dialog)
        told = [label for label in dialog._complaints.values() if label.isVisible()]
        assert len(told) >= 3
        assert all(label.height() >= label.heightForWidth(label.width()) for label in told)
        assert all(line.height() == usual for line in lines)
        assert all(one.geometry().bottom() < inner.height() for one in dialog.fields.values())
    assert dialog._complaints[""].isVisible()
    dialog.reject()


@pytest.mark.parametrize("name", ["order", "new plan", "seed packet"])
def test_what_was_wrong_is_said_no_more_once_the_text_is_another_and_nothing_jumps(
    host: MainWindow, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    dialog = opened(host, name, monkeypatch.setattr)
    assert isinstance(dialog, AskDialog)
    lines = {name: field for name, field in dialog.fields.items() if isinstance(field, QLineEdit)}
    for line in lines.values():
        line.setText("what nobody can read")
    QTest.keyClick(dialog, Qt.Key.Key_Return)
    settle(dialog)
    wrong = [name for name in lines if dialog._complaints[name].isVisible()]
    assert len(wrong) >= 2
    mended, still = wrong[0], wrong[1:]
    before = {name: place(line, dialog) for name, line in lines.items()}
    QTest.keyClicks(lines[mended], "1")
    settle(dialog)
    assert dialog._complaints[mended].text() == ""
    assert all(dialog._complaints[name].text() for name in still)
    assert {name: place(line, dialog) for name, line in lines.items()} == before
    dialog.reject()


@pytest.mark.parametrize("name", ["order", "new plan", "wish"])
def test_labels_keep_clear_of_their_fields_and_no_hole_is_left_below(
    host: MainWindow, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    dialog = opened(host, name, monkeypatch.setattr)
    assert isinstance(dialog, AskDialog)
    fields = list(dialog.fields.values())
    labels = [label for label in dialog.findChildren(QLabel) if label.buddy() in fields]
    assert len(labels) == len(fields)
    first = min(place(field, dialog).left() for field in fields)
    assert max(place(label, dialog).right() for label in labels) + 10 <= first
    (note,) = (label for label in dialog.findChildren(QLabel) if label.isVisible() and label not in labels)
    assert place(note, dialog).top() - place(fields[-1], dialog).bottom() < 32
    dialog.reject()
