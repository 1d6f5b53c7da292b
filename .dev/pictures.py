"""Make the pictures of the README: the window with a sample, the ground, layouts compared, and bed sheets."""

import os
import sys
from datetime import date
from pathlib import Path

import setup

os.environ["QT_QPA_PLATFORM"] = "offscreen"

import pypdfium2
from PySide6.QtCore import QSettings

from gardenplot.plan.file import read_plan
from gardenplot.sheets.choices import Choices, Kind
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import Paper
from gardenplot.window.compare_dialog import CompareDialog
from gardenplot.window.main import MainWindow
from gardenplot.window.preview import page_image
from gardenplot.window.start import made_app

TODAY = date(2027, 2, 26)
"""The day on which the windows look at their plans: before the first sowing of the samples."""
OUT = setup.TOP / ".dev" / "pictures"
SAMPLE = setup.TOP / "samples" / "kestrel-howe.gardenplot"
SHAPES = setup.TOP / "samples" / "otter-steep.gardenplot"


def main() -> int:
    """Write window.png, ground.png, compare.png, sheet.png, shapes.png and strips.png."""
    app = made_app()
    QSettings.setPath(QSettings.Format.NativeFormat, QSettings.Scope.UserScope, os.devnull)
    window = MainWindow()
    window.document.today = lambda: TODAY
    window.resize(1440, 900)
    window.document.open(SAMPLE)
    window.sight.select("tunnel-north", "lettuce-1")
    window.show()
    window.panels.as_at_first()
    for _turn in range(5):
        app.processEvents()
    window.grab().save(str(OUT / "window.png"))
    window.views.show_ground(True)
    window.sight.select("field-1")
    for _turn in range(5):
        app.processEvents()
    window.grab().save(str(OUT / "ground.png"))
    window.document.open(SHAPES)
    compared = CompareDialog(window.document.plan, "leek", window)
    compared.resize(1300, 700)
    compared.show()
    for _turn in range(5):
        app.processEvents()
    compared.grab().save(str(OUT / "compare.png"))
    print_page(SAMPLE, "tunnel-south", "sheet.png")
    print_page(SHAPES, "corner", "shapes.png")
    print_strips(SAMPLE, "tunnel-north", "strips.png")
    return 0


def print_page(sample: Path, bed: str, name: str) -> None:
    """Write the first page of a bed's sheet."""
    sheets = printed(read_plan(sample).plan, Paper.A4, [Kind.BEDS], name=sample.stem, day=date(2027, 3, 12))
    page_image(pypdfium2.PdfDocument(sheets.pdf), sheets.first_page[bed], 1.6).save(str(OUT / name))


def print_strips(sample: Path, bed: str, name: str) -> None:
    """Write the first page of strips for a bed, which comes after the list of what to make."""
    choices = Choices(beds=frozenset({bed}))
    sheets = printed(
        read_plan(sample).plan, Paper.A4, [Kind.STRIPS], choices=choices, name=sample.stem, day=date(2027, 3, 12)
    )
    page_image(pypdfium2.PdfDocument(sheets.pdf), 1, 1.2).save(str(OUT / name))


if __name__ == "__main__":
    sys.exit(main())
