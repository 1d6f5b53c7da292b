"""A new plan in the window: by keys, with defaults for what is left empty, wrong answers told where they are."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit

from gardenplot.plan import crop_of
from gardenplot.units import Units
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.new_plan import NewPlanDialog
from tests.window.shared_window import window

__all__ = ["window"]

Key = Qt.Key


def answer(window: MainWindow, does: Callable[[NewPlanDialog], None]) -> None:
    """Ask for a new plan, and act in its dialog."""

    def act() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, NewPlanDialog)
        try:
            does(dialog)
        finally:
            if dialog.isVisible():
                dialog.reject()

    QTimer.singleShot(0, act)
    window.new_plan()


def type_on(dialog: NewPlanDialog, *texts: str) -> None:
    """Type from field to field by Tab, with nothing for what is left as it is; then Return."""
    for number, text in enumerate(texts):
        focused = dialog.focusWidget()
        assert focused is not None
        if number:
            QTest.keyClick(focused, Key.Key_Tab)
            focused = dialog.focusWidget()
            assert focused is not None
        QTest.keyClicks(focused, text)
    focused = dialog.focusWidget()
    assert focused is not None
    QTest.keyClick(focused, Key.Key_Return)


def placeholders(dialog: NewPlanDialog) -> list[str]:
    lines = [dialog.fields[name] for name in ("beds", "length", "width", "margin")]
    return [line.placeholderText() for line in lines if isinstance(line, QLineEdit)]


def test_return_alone_begins_a_plan_with_what_is_shown(window: MainWindow, document: Document) -> None:
    answer(window, type_on_nothing)
    assert [(bed.name, str(bed.length), str(bed.width)) for bed in document.plan.beds] == [
        (f"Bed {number}", "15 m", "80 cm") for number in (1, 2, 3)
    ]
    assert document.plan.plantings == ()


def type_on_nothing(dialog: NewPlanDialog) -> None:
    type_on(dialog, "")


def test_four_answers_by_keys_give_beds_with_the_crop_in_the_first_and_chosen(
    window: MainWindow, document: Document
) -> None:
    answer(window, lambda dialog: type_on(dialog, "feet and", "Long Reach", "2", "40", "3 ft", "", "Lettuce, head"))
    plan = document.plan
    assert (plan.place.name, plan.place.units) == ("Long Reach", Units.FEET_AND_INCHES)
    assert [str(bed.length) for bed in plan.beds] == ["40 ft", "40 ft"]
    (planting,) = plan.plantings
    assert crop_of(plan, planting.crop).name == "Lettuce, head"
    assert (window.sight.bed, window.sight.planting) == (plan.beds[0].id, planting.id)
    assert window.focusWidget() is window.canvas


def test_the_sizes_shown_follow_the_units(window: MainWindow) -> None:
    seen = []

    def look(dialog: NewPlanDialog) -> None:
        units = dialog.fields["units"]
        assert isinstance(units, QComboBox)
        for row in range(units.count()):
            units.setCurrentIndex(row)
            seen.append(placeholders(dialog))

    answer(window, look)
    assert seen == [
        ["usual: 3", "usual: 15 m", "usual: 80 cm", "nothing"],
        ["usual: 3", "usual: 50 ft", "usual: 30 in", "nothing"],
        ["usual: 3", "usual: 50 ft", "usual: 2.5 ft", "nothing"],
    ]


@pytest.mark.parametrize(
    ("texts", "field", "told"),
    [
        (("", "", "many"), "beds", "no whole number"),
        (("", "", "", "long"), "length", "no length"),
        (("", "", "", "", "0"), "width", "needs a size"),
        (("", "", "", "1 m", "", "60 cm"), "margin", "margin"),
        (("", "", "", "", "", "", "Moonberry"), "crop", "no crop of the catalogue"),
        (("", "", "", "", "", "", "Watermelon"), "crop", "of width"),
    ],
)
def test_a_wrong_answer_is_told_below_it_and_gets_the_keyboard(
    window: MainWindow, document: Document, texts: tuple[str, ...], field: str, told: str
) -> None:
    before = document.plan

    def look(dialog: NewPlanDialog) -> None:
        type_on(dialog, *texts)
        assert dialog.isVisible()
        assert told in dialog._complaints[field].text()
        assert dialog._complaints[field].isVisible()
        assert dialog.focusWidget() is dialog.fields[field]

    answer(window, look)
    assert document.plan is before


def test_part_of_a_crop_s_name_offers_the_whole(window: MainWindow, document: Document) -> None:
    def look(dialog: NewPlanDialog) -> None:
        crop = dialog.fields["crop"]
        assert isinstance(crop, QComboBox)
        crop.setFocus()
        QTest.keyClicks(crop, "ohlrab")
        names = crop.completer()
        assert names is not None
        popup = names.popup()
        assert popup is not None
        QTest.keyClick(popup, Key.Key_Down)
        QTest.keyClick(popup, Key.Key_Return)
        assert crop.currentText() == "Kohlrabi"
        QTest.keyClick(crop, Key.Key_Return)

    answer(window, look)
    assert [crop.name for crop in document.plan.crops] == ["Kohlrabi"]
