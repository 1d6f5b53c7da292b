"""A day that is typed has its day of the week beside it, or above it where its line is narrow, and in its tip."""

import pytest
from PySide6.QtGui import QColor, QImage

from gardenplot.window.ask import Ask
from gardenplot.window.document import Document
from gardenplot.window.fields import Typed
from gardenplot.window.forms import AskDialog
from gardenplot.window.main import MainWindow
from gardenplot.window.weekday_line import FieldLabel, WeekdayLine
from tests.window.shared_window import window

__all__ = ["window"]

pytestmark = pytest.mark.usefixtures("dressed")


def typed(text: str, width: int = 200) -> WeekdayLine:
    line = Typed(lambda _text: None)
    line.resize(width, line.sizeHint().height())
    line.show_value(text)
    return line


@pytest.mark.parametrize(
    ("text", "weekday"),
    [
        ("15 May 2027", "Sat"), ("2027-05-15", "Sat"), ("May 17, 2027", "Mon"), (" 29 Feb 2028", "Tue"),
        # It is typed already, contradicts itself, is no day, or not one yet.
        ("Sat 15 May 2027", ""), ("Fri 15 May 2027", ""),
        ("15 m", ""), ("15 May 202", ""), ("31 Jun 2027", ""), ("", ""),
    ],
)  # fmt: skip
def test_a_day_has_its_weekday_beside_it(text: str, weekday: str) -> None:
    """Days of the week from a printed calendar of 2027 and 2028, recalled: 15 May 2027 is a Saturday."""
    assert typed(text).weekday() == weekday


def test_it_stands_behind_the_text_and_never_on_it() -> None:
    for width in range(40, 220, 4):
        line = typed("15 May 2027", width)
        ink, bare = inked(line), inked(typed("15 May 2O27", width))
        ends = max(bare)
        if line.has_room():
            assert max(ink) > ends + 8
            assert not [x for x in ink if ends + 1 < x < ends + 8]
        else:
            assert max(ink) <= ends + 2
    assert typed("15 May 2027", 220).has_room()
    assert not typed("15 May 2027", 60).has_room()


def inked(line: WeekdayLine) -> list[int]:
    """Where from left to right something stands within the frame of a line."""
    picture = QImage(line.size(), QImage.Format.Format_RGB32)
    line.render(picture)
    middle = range(6, picture.height() - 6)
    ground = QColor(picture.pixel(picture.width() // 2, 5)).lightness()
    return [
        x for x in range(5, picture.width() - 5)
        if any(abs(QColor(picture.pixel(x, y)).lightness() - ground) > 40 for y in middle)
    ]  # fmt: skip


def test_the_tip_and_what_is_read_aloud_tell_it_too_and_what_holds_while_nothing_is_typed() -> None:
    line = typed("15 May 2027", 60)
    line.stand_empty("follows: 9 Apr")
    assert line.toolTip() == "Sat 15 May 2027\nfollows: 9 Apr"
    assert line.accessibleDescription() == "Sat 15 May 2027"
    line.setText("")
    assert line.toolTip() == line.accessibleDescription() == "follows: 9 Apr"


def test_what_is_wrong_with_a_day_is_read_aloud_before_it() -> None:
    line = Typed(lambda _text: None)
    line.show_value("15 May 2027")
    line.complain("is before it is sown")
    assert line.accessibleDescription() == "is before it is sown"


def test_the_label_above_a_narrow_line_has_it(window: MainWindow, document: Document) -> None:
    planting = next(one for one in document.plan.plantings if one.in_ground is not None)
    assert planting.in_ground is not None
    window.sight.select(planting.bed, planting.id)
    line = window.findChild(Typed, "in_ground")
    assert line is not None
    (label,) = [one for one in window.findChildren(FieldLabel) if one.buddy() is line]
    assert (line.has_room(), label.aside()) == (False, f"{planting.in_ground:%a}")
    line.setText("15 May 2027")
    assert label.aside() == "Sat"
    label.setText("The day on which it is set out")
    assert label.aside() == ""


def test_a_line_of_a_dialog_has_it() -> None:
    asked = AskDialog("Order", (Ask("on", "Market day", text="15 May 2027"),), lambda _texts: {}, "Add")
    asked.show()
    field = asked.fields["on"]
    assert isinstance(field, WeekdayLine)
    assert (field.weekday(), field.has_room()) == ("Sat", True)
    asked.close()
