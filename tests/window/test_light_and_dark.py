"""Light and dark follow the system while the program runs: everything is drawn in the colours of the other screen."""

from collections.abc import Iterator
from itertools import cycle

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

from gardenplot.drawing.style import DARK, LIGHT, Ink, Palette
from gardenplot.plan.edits import change_planting
from gardenplot.units import CM, Units, length_of
from gardenplot.window.main import MainWindow
from gardenplot.window.theme import palette
from tests.window.walk import DIALOGS, Pixels, keyed, opened, picture, settle

GROUNDS = (Ink.PAPER, Ink.PANEL, Ink.INK)


@pytest.fixture(autouse=True)
def light_again(dressed: QApplication) -> Iterator[None]:
    """Leave a light screen behind."""
    yield
    if palette() is DARK:
        turn(dressed, Qt.ColorScheme.Light)


def turn(app: QApplication, scheme: Qt.ColorScheme) -> None:
    """Let the system go to light or dark, as it tells its programs."""
    app.styleHints().colorSchemeChanged.emit(scheme)


def test_the_window_changes_over_and_back_again(window: MainWindow, dressed: QApplication) -> None:
    document = window.document
    document.change("In the way", change_planting(document.plan, "p2", start=length_of(5 * CM, Units.METRIC)))
    for tab, selected in zip(range(6), cycle([(None, None), ("b2", None), ("b2", "p2")]), strict=False):
        window.sight.select(*selected)
        window.ledger.setCurrentIndex(tab)
        assert_changes_over(window, dressed)


@pytest.mark.parametrize("name", DIALOGS)
def test_a_dialog_that_is_open_changes_over(
    host: MainWindow, dressed: QApplication, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    dialog = opened(host, name, monkeypatch.setattr)
    assert_changes_over(dialog, dressed, paper_stays=name == "bed sheet")
    dialog.close()


def assert_changes_over(shown: QWidget, app: QApplication, *, paper_stays: bool = False) -> None:
    """Go to dark and back: no ground or ink of the other screen is left, and the first picture comes again."""
    settle(shown)
    light = picture(shown)
    turn(app, Qt.ColorScheme.Dark)
    settle(shown)
    assert palette() is DARK
    dark = picture(shown)
    assert shares(light, DARK) < 0.001
    assert paper_stays or shares(dark, LIGHT) < 0.001
    assert shares(light, LIGHT) > 0.1
    assert shares(dark, DARK) > (0.05 if paper_stays else 0.3)
    turn(app, Qt.ColorScheme.Light)
    settle(shown)
    assert palette() is LIGHT
    assert np.array_equal(picture(shown), light)


def shares(pixels: Pixels, inks: Palette) -> float:
    """What share of a picture has the very colours of a palette's grounds and its ink."""
    wanted = [int(inks[ink][1:], 16) for ink in GROUNDS]
    return float(np.isin(keyed(pixels), wanted).mean())


def test_a_window_that_is_made_on_a_dark_screen_is_the_one_that_changed_over(
    window: MainWindow, dressed: QApplication
) -> None:
    turn(dressed, Qt.ColorScheme.Dark)
    settle(window)
    changed = picture(window)
    made = MainWindow()
    made.resize(window.size())
    made.document.start(window.document.plan)
    made.show()
    settle(made)
    other = picture(made)
    made.close()
    assert np.mean(np.any(changed != other, axis=-1)) < 0.001
