"""The line above the drawing: what belongs together stands together, however wide the window is."""

from itertools import pairwise

import pytest

from gardenplot.window.main import MainWindow
from gardenplot.window.plain import PlainLabel
from tests.window.walk import settle


@pytest.mark.parametrize("width", [1024, 1440, 1920])
def test_the_day_stands_beside_its_words_and_its_slider(window: MainWindow, width: int) -> None:
    window.resize(width, 900)
    settle(window)
    header = window.header
    words = next(label for label in header.findChildren(PlainLabel) if label.text() == "The beds on")
    line = [words, header.day, header.slider, header.always]
    assert [later.x() - part.x() - part.width() for part, later in pairwise(line)] == [8, 8, 8]
    assert all(part.width() == part.sizeHint().width() for part in (words, header.day, header.always))
