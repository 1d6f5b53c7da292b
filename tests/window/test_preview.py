"""The bed sheets on the screen and on the printer: the very pages of the PDF, at their true size."""

from collections.abc import Iterator
from pathlib import Path

import numpy
import pypdfium2
import pytest
from numpy.typing import NDArray
from PySide6.QtCore import QMarginsF, Qt
from PySide6.QtGui import QImage, QPageLayout, QPageSize
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QMessageBox

from gardenplot.sheets.choices import Kind
from gardenplot.sheets.paper import Paper
from gardenplot.window.main import MainWindow
from gardenplot.window.preview import Preview, page_image, print_pages
from gardenplot.window.prints import print_of
from tests.plans import metric_plan
from tests.sheets.made import bed_sheets

_PER_MM = 4
"""Pixels to the millimetre, where pages are compared."""
_SIZES = {Paper.A4: QPageSize.PageSizeId.A4, Paper.LETTER: QPageSize.PageSizeId.Letter}


@pytest.fixture
def preview(window: MainWindow) -> Iterator[Preview]:
    """The sheets of both beds on A4, opened at the second bed."""
    shown = Preview(window.document.plan, "Upper Sill", print_of(Kind.BEDS, "b2"), window)
    shown.paper.setCurrentIndex(shown.paper.findData(Paper.A4))
    shown.paper.activated.emit(shown.paper.currentIndex())
    shown.show()
    yield shown
    shown.close()
    shown.deleteLater()


def rendered(pdf: bytes, page: int) -> NDArray[numpy.uint8]:
    """A page as rows of greys."""
    grey = pypdfium2.PdfDocument(pdf)[page].render(scale=_PER_MM * 25.4 / 72, grayscale=True).to_numpy()
    return numpy.asarray(grey, numpy.uint8).reshape(grey.shape[:2])


def ink(page: NDArray[numpy.uint8]) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of all that is printed, in millimetres from the paper's corner."""
    down, across = numpy.nonzero((page < 128).any(axis=1))[0], numpy.nonzero((page < 128).any(axis=0))[0]
    return across[0] / _PER_MM, down[0] / _PER_MM, across[-1] / _PER_MM, down[-1] / _PER_MM


def test_it_opens_at_the_page_of_the_selected_bed_and_turns_both_ways(preview: Preview) -> None:
    pages = len(pypdfium2.PdfDocument(preview.sheets.pdf))
    first = preview.sheets.first_page["b2"] + 1
    assert 1 < first <= pages
    assert preview.number.text() == f"page {first} of {pages}"
    QTest.mouseClick(preview.before, Qt.MouseButton.LeftButton)
    assert preview.number.text() == f"page {first - 1} of {pages}"
    for _ in range(pages):
        QTest.mouseClick(preview.after, Qt.MouseButton.LeftButton)
    assert preview.number.text() == f"page {pages} of {pages}"
    assert not preview.after.isEnabled()


def test_each_page_shown_is_the_page_of_the_pdf(preview: Preview) -> None:
    document = pypdfium2.PdfDocument(preview.sheets.pdf)
    scale = preview.scale * preview.devicePixelRatioF()
    images = []
    for number in range(len(document)):
        preview.before.click() if number == 0 else preview.after.click()
        shown = preview.picture.pixmap().toImage().convertToFormat(QImage.Format.Format_RGB32)
        assert shown == page_image(document, number, scale).convertToFormat(QImage.Format.Format_RGB32)
        images.append(shown)
    assert len(images) > 1
    assert images[0] != images[1]


def test_what_is_kept_is_the_pdf_that_was_shown(
    preview: Preview, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_asked: (str(tmp_path / "sill.pdf"), ""))
    preview.keep.click()
    assert (tmp_path / "sill.pdf").read_bytes() == preview.sheets.pdf


def test_a_pdf_that_cannot_be_kept_is_told(preview: Preview, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    told: list[str] = []
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_asked: (str(tmp_path / "no" / "sill.pdf"), ""))
    monkeypatch.setattr(QMessageBox, "warning", lambda _parent, _title, words: told.append(words))
    preview.keep.click()
    assert "cannot be written" in told[0]


def test_the_paper_chosen_is_remembered(window: MainWindow, preview: Preview) -> None:
    QTest.keyClick(preview.paper, Qt.Key.Key_Down)
    assert pypdfium2.PdfDocument(preview.sheets.pdf)[0].get_size() == (792, 612)
    again = Preview(window.document.plan, "Upper Sill", print_of(Kind.BEDS), window)
    assert again.paper.currentData() == Paper.LETTER
    assert again.number.text().startswith("page 1 of ")
    again.deleteLater()


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("margin", [0, 20])
@pytest.mark.parametrize("paper", Paper)
def test_a_printer_puts_each_page_on_paper_at_its_true_size(tmp_path: Path, paper: Paper, margin: int) -> None:
    pdf = bed_sheets(metric_plan(), paper).pdf
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    printer.setPageSize(QPageSize(_SIZES[paper]))
    printer.setPageOrientation(QPageLayout.Orientation.Landscape)
    printer.setPageMargins(QMarginsF(margin, margin, margin, margin), QPageLayout.Unit.Millimeter)
    print_pages(pdf, printer)
    printed = (tmp_path / "printed.pdf").read_bytes()
    wanted = pypdfium2.PdfDocument(pdf)
    assert len(pypdfium2.PdfDocument(printed)) == len(wanted)
    for number, page in enumerate(wanted):
        assert pypdfium2.PdfDocument(printed)[number].get_size() == pytest.approx(page.get_size(), abs=1)
        assert ink(rendered(printed, number)) == pytest.approx(ink(rendered(pdf, number)), abs=0.5)
