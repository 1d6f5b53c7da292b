"""Sheets as pages on the screen, the very PDF that is kept or printed."""

from collections.abc import Callable
from contextlib import suppress
from functools import partial

import pypdfium2
from attrs import evolve
from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QImage, QKeySequence, QPageLayout, QPageSize, QPainter, QPixmap, QResizeEvent, QShortcut
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QDialog,
    QHBoxLayout,
    QProgressDialog,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from gardenplot.errors import PlanError
from gardenplot.plan import Plan
from gardenplot.plan.file import file_name
from gardenplot.sheets.choices import NAMES, Kind
from gardenplot.sheets.door_card import card_for
from gardenplot.sheets.paper import Paper, Sheets
from gardenplot.window.end_buttons import EnterPresses, make_strong
from gardenplot.window.plain import PlainLabel
from gardenplot.window.print_choices import PrintChoices
from gardenplot.window.prints import Print
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.window.settings import keep_paper, kept_paper
from gardenplot.window.sheets_kept import keep_one_by_one, keep_pdf
from gardenplot.window.sheets_made import StoppedError, made_sheets
from gardenplot.window.theme import magnified
from gardenplot.window.wrapping import Wrapping
from gardenplot.words import _

_PAPERS = {Paper.A4: ("A4", QPageSize.PageSizeId.A4), Paper.LETTER: ("Letter", QPageSize.PageSizeId.Letter)}
_PRINT_DPI = 300
_LEAST_SCALE, _MOST_SCALE = 0.8, 1.28


class Preview(EnterPresses):
    """One page at a time; what is printed and on which paper, print, keep."""

    def __init__(self, plan: Plan, name: str, asked: Print, parent: QWidget) -> None:
        super().__init__(parent)
        self._plan, self._name, self._page, self._over, self._asked = plan, name, 0, parent, asked
        self.picture, self.number, self.caution = PlainLabel(), PlainLabel(), PlainLabel()
        self.picture.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._area = _scrolled(self.picture, _("The page, to scroll"))
        self.choices = PrintChoices(plan, asked)
        self.paper = QComboBox()
        self.paper.setAccessibleName(_("Paper"))
        for paper, (words, _size) in _PAPERS.items():
            self.paper.addItem(words, paper)
        self.paper.setCurrentIndex(max(0, self.paper.findData(kept_paper())))
        self.before, self.after = QPushButton(_("Page before")), QPushButton(_("Next page"))
        self.single, self.keep = QPushButton(_("Keep one by one …")), QPushButton(_("Keep as PDF …"))
        self.print = QPushButton(_("Print …"))
        make_strong(self.print)
        for button in (self.before, self.after, self.single, self.keep, self.print):
            # Enter in a field takes what was typed and prints nothing.
            button.setAutoDefault(False)
        self._lay_out()
        self.before.clicked.connect(partial(self._turn, -1))
        self.after.clicked.connect(partial(self._turn, 1))
        self.single.clicked.connect(self._keep_single)
        self.keep.clicked.connect(self._keep)
        self.print.clicked.connect(self._print)
        self.paper.activated.connect(self._remake)
        self.choices.changed.connect(self._remake)
        for keys, step in (("PgUp", -1), ("PgDown", 1)):
            QShortcut(QKeySequence(keys), self).activated.connect(partial(self._turn, step))
        self._asked = self.choices.asked
        self._make()
        self._page = first_page(self.sheets, asked)
        self._show(self._page)
        self.keep.setFocus()

    def _lay_out(self) -> None:
        row, column, upper = Wrapping(), QVBoxLayout(self), QHBoxLayout()
        pages, paper = QHBoxLayout(), QHBoxLayout()
        beside = _scrolled(self.choices, _("What is printed, to scroll"))
        beside.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        beside.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        bar = beside.verticalScrollBar().sizeHint().width() + 2 * beside.frameWidth()
        # The choices are wider by a pixel or two when they are shown than they tell before.
        beside.setMinimumWidth(self.choices.sizeHint().width() + bar + 4)
        upper.addWidget(beside, 0)
        upper.addWidget(self._area, 1)
        column.addLayout(upper, 1)
        groups: dict[QHBoxLayout, tuple[QWidget, ...]] = {
            pages: (self.before, self.number, self.after),
            paper: (self.paper, self.single, self.keep, self.print),
        }
        for group, parts in groups.items():
            for part in parts:
                group.addWidget(part)
        self.caution.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self.caution.setAlignment(Qt.AlignmentFlag.AlignCenter)
        row.add_group(pages)
        row.addWidget(self.caution)
        row.add_group(paper)
        column.addLayout(row)
        self.resize(QSize(1200, 860).boundedTo(room_on_screen(self) * 0.94))

    def _remake(self) -> None:
        """Lay the sheets out as they are chosen now; where that is stopped, all stays as it was."""
        before, paper = self._asked, self.paper.currentData()
        try:
            asked = self.choices.asked
            if (asked, paper) == (before, self._paper) and self.print.isEnabled():
                # A field that is left, and not changed, asks for nothing.
                return
            self._asked = asked
            self._make()
        except StoppedError:
            self._asked = before
            self.choices.show_asked(before)
            self.paper.setCurrentIndex(self.paper.findData(self._paper))
        except PlanError as error:
            self.picture.setText(str(error))
            self._allow(can=False)

    def _make(self) -> None:
        paper, over = Paper(self.paper.currentData()), self if self.isVisible() else self._over
        self.sheets = made_sheets(self._plan, paper, self._name, self._asked, over)
        keep_paper(paper)
        self._paper = paper
        self._document = pypdfium2.PdfDocument(self.sheets.pdf)
        self.setWindowTitle(_("{sheets}: {name}").format(sheets=self._asked.name, name=self._name))
        nothing = ", ".join(NAMES[kind] for kind in self.sheets.left_out)
        self.caution.setText(
            _("Nothing to print of: {kinds}").format(kinds=nothing) if nothing else self._asked.caution
        )
        self._allow(can=True)
        self._show(min(self._page, len(self._document) - 1))

    def _allow(self, *, can: bool) -> None:
        for button in (self.before, self.after, self.single, self.keep, self.print):
            button.setEnabled(can)
        self.single.setEnabled(can and len(self._asked.kinds) > 1)

    @property
    def scale(self) -> float:
        """Pixels to the point: as wide as there is room for, neither too small to be read nor larger than needed."""
        wide: float = self._document[self._page].get_size()[0]
        least = min(_LEAST_SCALE * magnified(), _MOST_SCALE)
        return min(max((self._area.viewport().width() - 2) / wide, least), _MOST_SCALE)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Show the page as large as there is room for."""
        super().resizeEvent(event)
        if self.isVisible() and self.print.isEnabled():
            self._show(self._page)

    def _turn(self, step: int) -> None:
        self._show(max(0, min(self._page + step, len(self._document) - 1)))

    def _show(self, page: int) -> None:
        self._page = page
        ratio = self.devicePixelRatioF()
        image = page_image(self._document, page, self.scale * ratio)
        image.setDevicePixelRatio(ratio)
        self.picture.setPixmap(QPixmap.fromImage(image))
        words = _("page {number} of {count}").format(number=page + 1, count=len(self._document))
        self.number.setText(words)
        self.before.setEnabled(page > 0)
        self.after.setEnabled(page + 1 < len(self._document))

    def _keep(self) -> None:
        kept = keep_pdf(self.sheets.pdf, f"{file_name(self._name)} {self._asked.file}", self)
        if kept is not None:
            # What to beware of stays beside it.
            words, metrics = f"{self._asked.caution} · {_('kept as {file}')}", self.caution.fontMetrics()
            room = max(0, self.caution.width() - metrics.horizontalAdvance(words.format(file="")))
            self.caution.setText(words.format(file=metrics.elidedText(kept.name, Qt.TextElideMode.ElideMiddle, room)))

    def _keep_single(self) -> None:
        kinds = (kind for kind in self._asked.kinds if kind not in self.sheets.left_out)
        prints = tuple(evolve(self._asked, kinds=(kind,)) for kind in kinds)
        keep_one_by_one(self._plan, self._paper, self._name, prints, self)

    def _print(self) -> None:
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        size = _PAPERS[Paper(self.paper.currentData())][1]
        printer.setPageSize(QPageSize(size))
        printer.setPageOrientation(orientation(self._document, 0))
        if QPrintDialog(printer, self).exec() == QDialog.DialogCode.Accepted:
            with PrintingProgress(self) as progress:
                print_pages(self.sheets.pdf, printer, progress.goes_on)


def _scrolled(inside: QWidget, name: str) -> QScrollArea:
    """A part of the dialog that scrolls."""
    area = QScrollArea()
    area.setWidget(inside)
    area.setWidgetResizable(True)
    area.setAccessibleName(name)
    return area


def orientation(document: pypdfium2.PdfDocument, page: int) -> QPageLayout.Orientation:
    """Whether a page lies or stands."""
    width, height = document[page].get_size()
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
            printer.setPageOrientation(orientation(document, number))
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
