"""Figures survive a photocopy: a page in black dots alone, 150 to the inch, has its large figures read back from it.

The reader knows each digit as FreeType draws it from the face (through Pillow) and takes the one that is most like
what lies in a character's place; where that is, the PDF's text tells (through PDFium).
"""

import re
from collections.abc import Iterator
from functools import cache
from typing import Any

import numpy as np
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from attrs import frozen
from hypothesis import given, settings
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont

from gardenplot.drawing.letters import looks
from gardenplot.drawing.stakes import stakes
from gardenplot.drawing.tape_legs import is_taped
from gardenplot.drawing.turns import turns
from gardenplot.files import resource
from gardenplot.layout import Layout, free_between, lay_out_plan
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Bed, Pattern, Plan
from gardenplot.plan.shapes import diagonal_of
from gardenplot.sheets.choices import Kind
from gardenplot.sheets.paper import Paper
from gardenplot.sheets.section import from_centre, short
from gardenplot.units import Units
from gardenplot.units.figures import offset, span, tape
from tests.drawing.hand_worked import hand_worked
from tests.sheets.made import made
from tests.sheets.patterned import BY_NAME, bed_of
from tests.sheets.pdf_pages import pages_of, plain
from tests.sheets.printed import Sheet, bed_with, sheets

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
    near = page[max(0, top - 5) : top + 1 + high, max(0, left - 5) : left + 1 + wide]
    if near.shape[0] < high or near.shape[1] < wide:
        return 1.0
    unlike = np.count_nonzero(sliding_window_view(near, shape.shape) ^ shape, axis=(2, 3))
    return min(1.0, float(unlike.min()) / shape.size)


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


def measured_by(plan: Plan) -> Iterator[str]:
    """Every figure by which one measures at the beds of a plan, along, across and square, as the sheets tell it."""
    units, look = plan.place.units, looks(plan)
    for laid in lay_out_plan(plan):
        for turn in turns(laid.without_trays):
            for stake in stakes(plan, laid.without_trays, turn, look):
                yield from (str(stake.number), tape(stake.at, units).number)
                yield from (note.plant for note in stake.notes if note.plant)
            for layout in turn:
                yield from _across_the_bed(laid.bed, layout, units)
        across = diagonal_of(laid.bed)
        if across is not None and is_taped(laid.bed, units):
            yield str(tape(across, units))


def _across_the_bed(bed: Bed, layout: Layout, units: Units) -> Iterator[str]:
    """The offsets of rows along a bed, in a plain one from the centre too, and the spacing in them."""
    grid = layout.grid
    if grid.runs_across or grid.turn is not None or grid.pattern is Pattern.CELLS or not layout.plants:
        return
    yield from (short(row.offset, units) for row in layout.rows if row.count)
    if is_plain(bed) and layout.rows:
        yield from (from_centre(row.offset, grid.width, units) for row in layout.rows if row.count)
        yield str(offset(grid.in_row, units))


READING = re.compile(r"\d\.\d\d\b|\d′")
NOT_MEASURED = re.compile(r"left|do not fit|counted|packet|asked|within|both ends|string of|hoops? of|wide")
"""What is left or lacks, how plants are counted or were asked for, and what is cut before anybody goes to the bed."""


def assert_measured_large(plan: Plan, paper: Paper) -> None:
    """Fail unless every figure by which one measures is of 14 points and up, and none is smaller anywhere."""
    pages = pages_of(made(plan, paper, Kind.BEDS).pdf)
    large = {plain(words.text) for page in pages for words in page.words if words.size >= LARGE}
    assert {plain(figure) for figure in measured_by(plan)} <= large
    left = {
        plain(str(span(stretch.length, plan.place.units)))
        for laid in lay_out_plan(plan)
        for turn in turns(laid.without_trays)
        for stretch in free_between(laid.bed, turn).leftover
    }
    for page in pages:
        below = min((words.box[1] for words in page.words if words.text == "0 HEAD"), default=page.size[1] - 80)
        small = [
            words.text
            for words in page.words
            if words.size < LARGE and words.box[3] < below and plain(words.text) not in left
        ]
        assert [words for words in small if READING.search(words) and not NOT_MEASURED.search(words)] == []


@pytest.mark.parametrize("scenario", ["s1", "s2", "s3", "s4", "s5", "s6"])
@pytest.mark.parametrize("paper", Paper)
def test_figures_that_are_measured_are_14_points_and_up(scenario: str, paper: Paper) -> None:
    assert_measured_large(hand_worked(scenario), paper)


@settings(max_examples=20)
@given(sheets())
def test_figures_of_any_bed_that_are_measured_are_14_points_and_up(sheet: Sheet) -> None:
    assert_measured_large(sheet.plan, sheet.paper)


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("name", BY_NAME)
def test_figures_of_every_pattern_in_every_outline_are_14_points_and_up(name: str, units: Units) -> None:
    bed, planting = BY_NAME[name]
    assert_measured_large(bed_of(bed, planting, units=units), Paper.LETTER)


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("width", ["75 cm", "2.4 m"])
def test_sixteen_stakes_of_blocks_that_meet_stand_on_one_page_in_large_figures(
    units: Units, paper: Paper, width: str
) -> None:
    blocks = ({"from": f"{30 + 70 * number} cm", "length": "70 cm"} for number in range(13))
    plan = bed_with(*blocks, units=units, length="12 m", width=width)
    (page,) = pages_of(made(plan, paper, Kind.BEDS).pdf)
    assert sum(words.size == 17 for words in page.words) == 16
    assert_measured_large(plan, paper)
