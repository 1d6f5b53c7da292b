"""The bed sheets as pages on the screen, the very PDF that is kept or printed."""

from datetime import date
from functools import partial
from pathlib import Path

import pypdfium2
from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QImage, QKeySequence, QPageLayout, QPageSize, QPainter, QPixmap, QShortcut
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QMessageBox,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from gardenplot.errors import FileError
from gardenplot.plan import Plan
from gardenplot.plan.file import file_name, write_whole
from gardenplot.sheets.bed_sheet import bed_sheets
from gardenplot.sheets.paper import Paper
from gardenplot.window.settings import keep_paper, kept_paper
from gardenplot.window.wrapping import Wrapping
from gardenplot.words import _

_PAPERS = {Paper.A4: ("A4", QPageSize.PageSizeId.A4), Paper.LETTER: ("Letter", QPageSize.PageSizeId.Letter)}
_PRINT_DPI = 300


class Preview(QDialog):
    """One page at a time; paper, print, keep."""

    def __init__(self, plan: Plan, name: str, bed: str | None, parent: QWidget) -> None:
        super().__init__(parent)
        self._plan, self._name, self._page = plan, name, 0
        self.setWindowTitle(_("Bed sheets: {name}").format(name=name))
        self.picture, self.number = QLabel(), QLabel()
        self.picture.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.paper = QComboBox()
        self.paper.setAccessibleName(_("Paper"))
        for paper, (words, _size) in _PAPERS.items():
            self.paper.addItem(words, paper)
        self.paper.setCurrentIndex(max(0, self.paper.findData(kept_paper())))
        self.before, self.after = QPushButton(_("Page before")), QPushButton(_("Next page"))
        self.keep, self.print = QPushButton(_("Keep as PDF …")), QPushButton(_("Print …"))
        self.print.setProperty("strong", True)
        self._lay_out()
        self.before.clicked.connect(partial(self._turn, -1))
        self.after.clicked.connect(partial(self._turn, 1))
        self.keep.clicked.connect(self._keep)
        self.print.clicked.connect(self._print)
        self.paper.activated.connect(self._make)
        for keys, step in (("PgUp", -1), ("PgDown", 1)):
            QShortcut(QKeySequence(keys), self).activated.connect(partial(self._turn, step))
        self._make()
        self._show(self.sheets.first_page.get(bed or "", 0))

    def _lay_out(self) -> None:
        row, column = Wrapping(), QVBoxLayout(self)
        pages, paper, caution = QHBoxLayout(), QHBoxLayout(), QLabel()
        area = QScrollArea()
        area.setWidget(self.picture)
        area.setWidgetResizable(True)
        area.setAccessibleName(_("The page, to scroll"))
        column.addWidget(area, 1)
        groups: dict[QHBoxLayout, tuple[QWidget, ...]] = {
            pages: (self.before, self.number, self.after),
            paper: (self.paper, self.keep, self.print),
        }
        for group, parts in groups.items():
            for part in parts:
                group.addWidget(part)
        caution.setText(_("Print at 100 %, not fitted to the page, and measure the bar."))
        caution.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        caution.setAlignment(Qt.AlignmentFlag.AlignCenter)
        row.add_group(pages)
        row.addWidget(caution)
        row.add_group(paper)
        column.addLayout(row)
        self.resize(QSize(1120, 860).boundedTo(self.screen().availableSize() * 0.94))

    def _make(self) -> None:
        paper = Paper(self.paper.currentData())
        keep_paper(paper)
        today = date.today()
        self.sheets = bed_sheets(self._plan, paper, name=self._name, printed=today)
        self._document = pypdfium2.PdfDocument(self.sheets.pdf)
        self._show(min(self._page, len(self._document) - 1))

    def _turn(self, step: int) -> None:
        self._show(max(0, min(self._page + step, len(self._document) - 1)))

    def _show(self, page: int) -> None:
        self._page = page
        ratio = self.devicePixelRatioF()
        image = page_image(self._document, page, 1.28 * ratio)
        image.setDevicePixelRatio(ratio)
        self.picture.setPixmap(QPixmap.fromImage(image))
        words = _("page {number} of {count}").format(number=page + 1, count=len(self._document))
        self.number.setText(words)
        self.before.setEnabled(page > 0)
        self.after.setEnabled(page + 1 < len(self._document))

    def _keep(self) -> None:
        proposed = _("{name} bed sheets.pdf").format(name=file_name(self._name))
        name, _kind = QFileDialog.getSaveFileName(self, _("Keep as PDF"), proposed, "PDF (*.pdf)")
        if not name:
            return
        try:
            write_whole(Path(name), self.sheets.pdf)
        except FileError as error:
            QMessageBox.warning(self, _("Keep as PDF"), str(error))

    def _print(self) -> None:
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        size = _PAPERS[Paper(self.paper.currentData())][1]
        printer.setPageSize(QPageSize(size))
        printer.setPageOrientation(QPageLayout.Orientation.Landscape)
        if QPrintDialog(printer, self).exec() == QDialog.DialogCode.Accepted:
            print_pages(self.sheets.pdf, printer)


def print_pages(pdf: bytes, printer: QPrinter) -> None:
    """Print a PDF at its true size: a point on the page is 1/72 in on paper, whatever the printer's margins."""
    printer.setFullPage(True)
    document = pypdfium2.PdfDocument(pdf)
    painter = QPainter(printer)
    per_point = printer.resolution() / 72
    for number in range(len(document)):
        if number:
            printer.newPage()
        width, height = document[number].get_size()
        image = page_image(document, number, _PRINT_DPI / 72)
        painter.drawImage(QRectF(0, 0, width * per_point, height * per_point), image)
    painter.end()


def page_image(document: pypdfium2.PdfDocument, number: int, scale: float) -> QImage:
    """A page of a PDF as an image, `scale` pixels to the point."""
    pixels = document[number].render(scale=scale, rev_byteorder=True).to_numpy()
    height, width, channels = pixels.shape
    kind = QImage.Format.Format_RGB888 if channels == 3 else QImage.Format.Format_RGBX8888
    return QImage(pixels.tobytes(), width, height, width * channels, kind).copy()


def preview(plan: Plan, name: str, bed: str | None, parent: QWidget) -> None:
    """Show the bed sheets of a plan, the page of a bed first."""
    Preview(plan, name, bed, parent).exec()
