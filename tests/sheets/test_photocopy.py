"""Figures survive a photocopy: a page in black dots alone, 150 to the inch, has its large figures read back from it.

The reader knows each digit as FreeType draws it from the face (through Pillow) and takes the one that is most like
what lies in a character's place; where that is, the PDF's text tells (through PDFium).
"""

import ctypes
from functools import cache
from typing import Any

import numpy as np
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from attrs import frozen
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont

from gardenplot.files import resource
from gardenplot.sheets.choices import Kind
from gardenplot.sheets.paper import Paper
from tests.drawing.hand_worked import hand_worked
from tests.sheets.made import made

DPI = 150
DIGITS = "0123456789"
FACES = ("fonts/DejaVuSansCondensed-Bold.ttf", "fonts/DejaVuSansCondensed.ttf")
LARGE = 13.9
"""Points; what is read at the bed is no smaller than 14."""
Dots = NDArray[np.bool_]


@frozen
class Figure:
    """A digit of a page: which it is, its box in dots from the upper left, and its size in points."""

    digit: str
    box: tuple[int, int, int, int]
    size: float


def copied(page: Any) -> Dots:
    """A page as a copier sees it: black dots and white ones, greys as scattered dots; true where black."""
    grey = page.render(scale=DPI / 72, grayscale=True).to_pil().convert("L")
    return ~np.asarray(grey.convert("1"), dtype=bool)


def figures(page: Any) -> list[Figure]:
    """The large digits of a page."""
    text, height, found = page.get_textpage(), page.get_size()[1], []
    for number in range(text.count_chars()):
        sign = chr(pdfium.FPDFText_GetUnicode(text.raw, number))
        size = float(pdfium.FPDFText_GetFontSize(text.raw, number))
        if sign in DIGITS and size >= LARGE:
            left, bottom, right, top = text.get_charbox(number)
            dots = (left, height - top, right, height - bottom)
            found.append(Figure(sign, tuple(round(one * DPI / 72) for one in dots), size))
    return found


@cache
def drawn(face: str, digit: str, size: float) -> Dots:
    """A digit as FreeType draws it, cut to its own box."""
    font = ImageFont.truetype(str(resource(face)), round(size * DPI / 72))
    picture = Image.new("L", (80, 80), 255)
    ImageDraw.Draw(picture).text((10, 10), digit, font=font, fill=0)
    dots = np.asarray(picture) < 128
    downs, acrosses = np.nonzero(dots.any(axis=1))[0], np.nonzero(dots.any(axis=0))[0]
    return dots[downs[0] : downs[-1] + 1, acrosses[0] : acrosses[-1] + 1]


def read(page: Dots, figure: Figure) -> str:
    """The digit that is most like what lies in a place, wherever in it; each is laid on in all places near by."""
    return min(
        DIGITS, key=lambda digit: min(_unlike(page, figure, drawn(face, digit, figure.size)) for face in FACES)
    )


def _unlike(page: Dots, figure: Figure, digit: Dots) -> float:
    """The least share of dots that differ within a digit's own box and a rim of two dots around it."""
    left, top, _right, _bottom = figure.box
    shape = np.pad(digit, 2)
    high, wide = shape.shape
    best = 1.0
    for down in range(-3, 4):
        for across in range(-3, 4):
            y, x = top + down - 2, left + across - 2
            there = page[y : y + high, x : x + wide]
            if there.shape == shape.shape:
                best = min(best, float((there ^ shape).mean()))
    return best


@pytest.mark.parametrize(
    ("scenario", "kind", "paper"),
    [
        ("s1", Kind.BEDS, Paper.A4), ("s2", Kind.BEDS, Paper.LETTER), ("s4", Kind.BEDS, Paper.A4),
        ("s1", Kind.DATES, Paper.A4), ("s1", Kind.CARDS, Paper.LETTER), ("s1", Kind.LIST, Paper.A4),
    ],
)  # fmt: skip
def test_the_large_figures_of_a_copied_page_read_back_as_they_were_printed(
    scenario: str, kind: Kind, paper: Paper
) -> None:
    document = pypdfium2.PdfDocument(made(hand_worked(scenario), paper, kind).pdf)
    page = document[0]
    dots, wanted = copied(page), figures(page)
    assert len(wanted) > 4
    assert [read(dots, figure) for figure in wanted] == [figure.digit for figure in wanted]


def test_the_reader_does_not_read_what_is_not_there() -> None:
    page = pypdfium2.PdfDocument(made(hand_worked("s1"), Paper.A4, Kind.BEDS).pdf)[0]
    wanted = figures(page)
    blank = np.zeros_like(copied(page))
    assert [read(blank, figure) for figure in wanted] != [figure.digit for figure in wanted]


def test_figures_that_are_measured_are_14_points_and_up() -> None:
    page = pypdfium2.PdfDocument(made(hand_worked("s1"), Paper.A4, Kind.BEDS).pdf)[0]
    text = page.get_textpage()
    large = "".join(figure.digit for figure in figures(page))
    for reading in ("030", "710", "1105", "1200"):
        assert reading in large
    size = ctypes.c_float(pdfium.FPDFText_GetFontSize(text.raw, 0)).value
    assert size >= LARGE
