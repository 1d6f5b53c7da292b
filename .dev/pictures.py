"""Make the pictures of the README: the window with a sample, and the first bed sheet."""

import os
import sys
from datetime import date

import setup

os.environ["QT_QPA_PLATFORM"] = "offscreen"

import pypdfium2
from PySide6.QtCore import QSettings

from gardenplot.plan.file import read_plan
from gardenplot.sheets.bed_sheet import bed_sheets
from gardenplot.sheets.paper import Paper
from gardenplot.window.main import MainWindow
from gardenplot.window.preview import page_image
from gardenplot.window.start import made_app

OUT = setup.TOP / ".dev" / "pictures"
SAMPLE = setup.TOP / "samples" / "kestrel-howe.gardenplot"


def main() -> int:
    """Write window.png and sheet.png."""
    app = made_app()
    QSettings.setPath(QSettings.Format.NativeFormat, QSettings.Scope.UserScope, os.devnull)
    window = MainWindow()
    window.resize(1440, 900)
    window.document.open(SAMPLE)
    window.sight.select("tunnel-north", "lettuce-1")
    window.show()
    for _turn in range(5):
        app.processEvents()
    window.grab().save(str(OUT / "window.png"))
    sheets = bed_sheets(read_plan(SAMPLE).plan, Paper.A4, name=SAMPLE.stem, printed=date(2027, 3, 12))
    document = pypdfium2.PdfDocument(sheets.pdf)
    page_image(document, sheets.first_page["tunnel-south"], 1.6).save(str(OUT / "sheet.png"))
    return 0


if __name__ == "__main__":
    sys.exit(main())
