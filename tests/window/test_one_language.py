"""Days are named as the words are, whatever language the system speaks: those of Qt and those of Python alike."""

import os
import subprocess
import sys

import pytest

PROGRAM = """
import locale
from datetime import date

from gardenplot.drawing.days import day_words
from gardenplot.window.start import made_app

app = made_app()
from gardenplot.window.main import MainWindow

window = MainWindow()
window.sight.show_day(date(2027, 3, 3))
print(day_words(date(2027, 3, 3)), window.header.day.text(), locale.setlocale(locale.LC_TIME), sep="; ")
"""


@pytest.mark.parametrize("system", ["de_DE.UTF-8", "ar_EG.UTF-8", "C.UTF-8"])
def test_days_are_named_in_the_language_of_the_words(system: str) -> None:
    asked = os.environ | {"LC_ALL": system, "QT_QPA_PLATFORM": "offscreen"}
    came = subprocess.run([sys.executable, "-c", PROGRAM], env=asked, capture_output=True, text=True, check=True)
    assert came.stdout.strip() == "Wed 3 Mar 2027; Wed 3 Mar 2027; C"
