"""The next picture is painted in the memory of the last one."""

import subprocess
import sys

import pytest

from tests.rules.source_tree import ROOT

PICTURES = """
import resource
from PySide6.QtGui import QPixmap
from gardenplot.window.start import made_app
app = made_app() if {kept} else __import__("PySide6.QtWidgets").QtWidgets.QApplication([])

def paint_some():
    made = [QPixmap(2000, 250) for _number in range(3)]
    for picture in made:
        picture.fill("white")

for _turn in range(3):
    paint_some()
before = resource.getrusage(resource.RUSAGE_SELF).ru_minflt
for _turn in range(20):
    paint_some()
print(resource.getrusage(resource.RUSAGE_SELF).ru_minflt - before)
"""


@pytest.mark.skipif(sys.platform != "linux", reason="it is Linux whose C library is asked")
def test_pictures_ask_the_system_for_no_more_memory_than_the_first_ones() -> None:
    counts = [
        int(subprocess.run([sys.executable, "-c", PICTURES.format(kept=kept)], cwd=ROOT, capture_output=True,
                           check=True, text=True).stdout)
        for kept in (True, False)
    ]  # fmt: skip
    kept, usual = counts
    assert kept < 100
    assert usual > 1000, "there would be nothing to keep"
