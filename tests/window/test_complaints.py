"""What is wrong with the lines of a dialog stands below each of them, whole and without holes, where it scrolls."""

from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget

from gardenplot.window.document import Document
from gardenplot.window.plain import PlainLabel
from gardenplot.window.theme import dress
from gardenplot.window.wish_dialog import WishDialog
from tests.window.walk import settle, text_of


@pytest.fixture(params=[1.0, 2.0])
def wish(dressed: QApplication, document: Document, request: pytest.FixtureRequest) -> Iterator[WishDialog]:
    """The dialog of a wish with something wrong in every line, with text of a size."""
    with text_of(dressed, request.param, dress):
        around = QWidget()
        dialog = WishDialog(document, None, around)
        dialog.resize(588 if request.param > 1 else 420, 500)
        dialog.show()
        for line in dialog.fields.values():
            if isinstance(line, QLineEdit):
                line.setText("what is no number at all, nor a day")
        dialog._try()
        settle(dialog)
        yield dialog
        dialog.close()


def assert_hugged(dialog: WishDialog) -> None:
    shown = {name: label for name, label in dialog._complaints.items() if label.isVisible()}
    assert len(shown) == len(dialog.fields)
    for name, label in shown.items():
        fresh = PlainLabel(label.text())
        fresh.setWordWrap(True)
        fresh.setFont(label.font())
        assert label.height() == fresh.heightForWidth(label.width()), label.text()
        assert label.y() - dialog.fields[name].geometry().bottom() < 12


def test_each_is_as_high_as_its_words(wish: WishDialog) -> None:
    assert_hugged(wish)


def test_it_stays_so_where_the_dialog_is_made_wider_and_narrower(wish: WishDialog) -> None:
    width = wish.width()
    for wide in (width + 160, width):
        wish.resize(wide, wish.height())
        settle(wish)
        assert_hugged(wish)
