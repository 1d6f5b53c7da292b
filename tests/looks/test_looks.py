"""The window as it was approved by eye; `pytest tests/looks --rewrite-looks` approves what is seen now."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from unittest.mock import patch

import numpy as np
import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QApplication, QDialog, QPushButton

from gardenplot.files import sample
from gardenplot.plan import Plan
from gardenplot.plan.file import read_plan
from gardenplot.window.compare_dialog import CompareDialog
from gardenplot.window.main import MainWindow
from gardenplot.window.panels import Panels
from gardenplot.window.theme import dress
from tests.looks.approving import FOLDER, MOST_OFF, Pixels, few_colours, marked, read, share_off, write
from tests.looks.crowded import crowded_plan
from tests.window.walk import picture, settle, text_of

WINTER = date(2027, 1, 15)
"""A day before the first sowing of the example, of which nothing is past then."""
SAMPLE = "kestrel-howe.gardenplot"
MOST_BYTES, MOST_BYTES_IN_ALL = 120_000, 1_000_000


@contextmanager
def window(plan: Plan, width: int, height: int, today: date = WINTER) -> Iterator[MainWindow]:
    """A window on a plan on some day, on a screen of its width, with the keyboard on the drawing alone."""
    with patch.object(Panels, "room", width):
        shown = MainWindow()
    shown.document.today = lambda: today
    shown.document.start(plan)
    shown.resize(width, height)
    shown.show()
    shown.canvas.setFocus()
    settle(shown)
    try:
        yield shown
    finally:
        shown.document.start(Plan())
        shown.close()
        shown.deleteLater()
        QApplication.sendPostedEvents(shown, QEvent.Type.DeferredDelete.value)


def example() -> Plan:
    """The plan that the program opens with at first."""
    return read_plan(sample(SAMPLE)).plan


def light(_app: QApplication) -> Pixels:
    """The example with a planting selected."""
    with window(example(), 1280, 800) as shown:
        shown.sight.select("tunnel-north", "lettuce-1")
        settle(shown)
        return picture(shown)


def dark(app: QApplication) -> Pixels:
    """The same on a dark screen, with a bed selected and the findings in front."""
    with window(example(), 1280, 800) as shown:
        app.styleHints().colorSchemeChanged.emit(Qt.ColorScheme.Dark)
        shown.sight.select("field-1")
        shown.ledger.setCurrentIndex(6)
        settle(shown)
        seen = picture(shown)
        app.styleHints().colorSchemeChanged.emit(Qt.ColorScheme.Light)
        return seen


def large_text(app: QApplication) -> Pixels:
    """Text twice as large on a screen of 1366 x 768."""
    with text_of(app, 2.0, dress), window(example(), 1366, 768) as shown:
        shown.sight.select("tunnel-south", "turnip-1")
        settle(shown)
        return picture(shown)


def small_window(_app: QApplication) -> Pixels:
    """A small window with nothing selected and the orders in front."""
    with window(example(), 1024, 700) as shown:
        shown.ledger.setCurrentIndex(2)
        settle(shown)
        return picture(shown)


def crowded(_app: QApplication) -> Pixels:
    """Two hundred beds, all in sight."""
    with window(crowded_plan(), 1280, 800) as shown:
        shown.canvas.view.fit(all_beds=True)
        settle(shown)
        return picture(shown)


def empty(_app: QApplication) -> Pixels:
    """A plan without a bed, in which the days of a fortnight round today are shown."""
    with window(Plan(), 1024, 700, date(2027, 4, 8)) as shown:
        return picture(shown)


def from_the_right(app: QApplication) -> Pixels:
    """The example in a window that runs from right to left."""
    app.setLayoutDirection(Qt.LayoutDirection.RightToLeft)
    with window(example(), 1024, 700) as shown:
        shown.sight.select("tunnel-north", "spinach-1")
        settle(shown)
        seen = picture(shown)
    app.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
    return seen


def ground(app: QApplication) -> Pixels:
    """The beds in their places on the ground, on a dark screen."""
    with window(example(), 1024, 700) as shown:
        app.styleHints().colorSchemeChanged.emit(Qt.ColorScheme.Dark)
        shown.views.show_ground(True)
        shown.sight.select("field-2")
        settle(shown)
        seen = picture(shown)
        app.styleHints().colorSchemeChanged.emit(Qt.ColorScheme.Light)
        return seen


def compare(_app: QApplication) -> Pixels:
    """Layouts compared."""
    with window(example(), 1024, 700) as shown:
        dialog = CompareDialog(shown.document.plan, "lettuce-1", shown)
        return _dialog(dialog, 1024, 680)


def _dialog(dialog: QDialog, width: int, height: int) -> Pixels:
    dialog.resize(width, height)
    dialog.show()
    settle(dialog)
    seen = picture(dialog)
    dialog.close()
    return seen


LOOKS: dict[str, Callable[[QApplication], Pixels]] = {
    "light": light,
    "dark": dark,
    "large-text": large_text,
    "small-window": small_window,
    "crowded": crowded,
    "empty": empty,
    "from-the-right": from_the_right,
    "ground": ground,
    "compare": compare,
}


@pytest.mark.parametrize("look", LOOKS)
def test_it_looks_as_it_was_approved(
    dressed: QApplication, look: str, request: pytest.FixtureRequest, tmp_path: Path
) -> None:
    seen = LOOKS[look](dressed)
    if request.config.getoption("--rewrite-looks"):
        write(look, seen)
    path = FOLDER / f"{look}.png"
    assert path.exists(), "nothing is approved yet: pytest tests/looks --rewrite-looks"
    approved = read(path)
    off = share_off(seen, approved)
    if off > MOST_OFF:
        now, where = write(look, seen, tmp_path), write(f"{look}-where", marked(seen, approved), tmp_path)
        pytest.fail(f"{off:.2%} looks different: see {now} and {where}; approve it with --rewrite-looks")


def test_the_pictures_are_small_and_none_is_left_over() -> None:
    files = sorted(FOLDER.glob("*"))
    assert [path.stem for path in files] == sorted(LOOKS)
    assert all(path.stat().st_size <= MOST_BYTES for path in files)
    assert sum(path.stat().st_size for path in files) <= MOST_BYTES_IN_ALL


def test_few_colours_are_enough(dressed: QApplication) -> None:
    seen = LOOKS["light"](dressed)
    numbers, colours = few_colours(seen)
    assert share_off(seen, colours[numbers]) == 0
    assert np.abs(seen.astype(int) - colours[numbers]).mean() < 2


def test_a_button_that_is_gone_is_found_and_letters_smoothed_otherwise_are_not(dressed: QApplication) -> None:
    with window(example(), 1024, 700) as shown:
        seen = picture(shown)
        smoothed = (seen.astype(int) * 9 + np.roll(seen, 1, axis=1)) // 10
        assert share_off(seen, smoothed.astype(np.uint8)) <= MOST_OFF
        assert share_off(seen, np.roll(seen, 4, axis=0)) > MOST_OFF
        button: QPushButton = shown.header.sheet
        button.hide()
        settle(shown)
        assert share_off(seen, picture(shown)) > MOST_OFF
    assert dressed is not None
