"""Sheets as pages on the screen, the very PDF that is kept or printed."""

from collections.abc import Callable
from contextlib import suppress
from functools import partial
from pathlib import Path

import pypdfium2
from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QImage, QKeySequence, QPageLayout, QPageSize, QPainter, QPixmap, QShortcut
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QProgressDialog,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from gardenplot.errors import FileError
from gardenplot.plan import Plan
from gardenplot.plan.file import file_name, write_whole
from gardenplot.sheets.choices import Kind
from gardenplot.sheets.door_card import card_for
from gardenplot.sheets.paper import Paper, Sheets
from gardenplot.window.plain import PlainLabel
from gardenplot.window.prints import Print
from gardenplot.window.questions import warn
from gardenplot.window.settings import keep_paper, kept_paper
from gardenplot.window.sheets_made import StoppedError, made_sheets
from gardenplot.window.wrapping import Wrapping
from gardenplot.words import _

_PAPERS = {Paper.A4: ("A4", QPageSize.PageSizeId.A4), Paper.LETTER: ("Letter", QPageSize.PageSizeId.Letter)}
_PRINT_DPI = 300


class Preview(QDialog):
    """One page at a time; paper, print, keep."""

    def __init__(self, plan: Plan, name: str, asked: Print, parent: QWidget) -> None:
        super().__init__(parent)
        self._plan, self._name, self._page, self._over, self._asked = plan, name, 0, parent, asked
        self.setWindowTitle(_("{sheets}: {name}").format(sheets=asked.name, name=name))
        self.picture, self.number = PlainLabel(), PlainLabel()
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
        self.paper.activated.connect(self._change_paper)
        for keys, step in (("PgUp", -1), ("PgDown", 1)):
            QShortcut(QKeySequence(keys), self).activated.connect(partial(self._turn, step))
        self._make()
        self._show(first_page(self.sheets, asked))

    def _lay_out(self) -> None:
        row, column = Wrapping(), QVBoxLayout(self)
        pages, paper, caution = QHBoxLayout(), QHBoxLayout(), PlainLabel()
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
        caution.setText(self._asked.caution)
        caution.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        caution.setAlignment(Qt.AlignmentFlag.AlignCenter)
        row.add_group(pages)
        row.addWidget(caution)
        row.add_group(paper)
        column.addLayout(row)
        self.resize(QSize(1120, 860).boundedTo(self.screen().availableSize() * 0.94))

    def _change_paper(self) -> None:
        """Lay the sheets out on the paper chosen; where that is stopped, they stay as they are."""
        try:
            self._make()
        except StoppedError:
            self.paper.setCurrentIndex(self.paper.findData(self._paper))

    def _make(self) -> None:
        paper = Paper(self.paper.currentData())
        over = self if self.isVisible() else self._over
        self.sheets = made_sheets(self._plan, paper, self._name, self._asked, over)
        keep_paper(paper)
        self._paper = paper
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
        proposed = self._asked.file.format(name=file_name(self._name))
        name, _kind = QFileDialog.getSaveFileName(self, _("Keep as PDF"), proposed, "PDF (*.pdf)")
        if not name:
            return
        try:
            write_whole(Path(name), self.sheets.pdf)
        except FileError as error:
            warn(self, _("Keep as PDF"), str(error))

    def _print(self) -> None:
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        size = _PAPERS[Paper(self.paper.currentData())][1]
        printer.setPageSize(QPageSize(size))
        printer.setPageOrientation(self._orientation())
        if QPrintDialog(printer, self).exec() == QDialog.DialogCode.Accepted:
            with PrintingProgress(self) as progress:
                print_pages(self.sheets.pdf, printer, progress.goes_on)

    def _orientation(self) -> QPageLayout.Orientation:
        width, height = self._document[0].get_size()
        return QPageLayout.Orientation.Landscape if width > height else QPageLayout.Orientation.Portrait


def always(_done: int, _pages: int) -> bool:
    """Go on to the end."""
    return True


class PrintingProgress(QProgressDialog):
    """Shows which page is printed, lets the window live on between pages, and can be stopped."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(_("Printing …"), _("Stop after this page"), 0, 0, parent)
        self.setWindowModality(Qt.WindowModality.WindowModal)
        self.setMinimumDuration(300)

    def __enter__(self) -> "PrintingProgress":
        return self

    def __exit__(self, *_error: object) -> None:
        self.close()
        self.deleteLater()

    def goes_on(self, done: int, pages: int) -> bool:
        """Show how many pages are done, and say whether nobody stopped it."""
        self.setMaximum(pages)
        self.setValue(done)
        QApplication.processEvents()
        return not self.wasCanceled()


def print_pages(pdf: bytes, printer: QPrinter, goes_on: Callable[[int, int], bool] = always) -> None:
    """Print a PDF at its true size: a point on the page is 1/72 in on paper, whatever the printer's margins.

    `goes_on` is asked before each page but the first, by how many pages are done and of how many.
    """
    printer.setFullPage(True)
    document = pypdfium2.PdfDocument(pdf)
    painter = QPainter(printer)
    per_point = printer.resolution() / 72
    for number in range(len(document)):
        if number:
            if not goes_on(number, len(document)):
                break
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


def first_page(sheets: Sheets, asked: Print) -> int:
    """The number from 0 of the page that is shown first."""
    if asked.kinds == (Kind.CARDS,):
        return card_for(sheets, asked.day)
    return sheets.first_page.get(asked.bed or "", 0)


def preview(plan: Plan, name: str, asked: Print, parent: QWidget) -> None:
    """Show sheets of a plan, to print or to keep; nothing where laying them out was stopped.

    Raises PlanError where there is nothing to print.
    """
    with suppress(StoppedError):
        Preview(plan, name, asked, parent).exec()
