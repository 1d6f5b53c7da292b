"""Paper sizes, the scales of drawings on them, and the face they are printed in."""

from bisect import bisect_right
from enum import StrEnum
from functools import cache
from math import ceil

from attrs import frozen
from reportlab import rl_config
from reportlab.lib.units import inch, mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from gardenplot.files import resource
from gardenplot.one_line import one_line
from gardenplot.sheets.choices import Kind
from gardenplot.sheets.right_to_left import shown
from gardenplot.units import INCH, MM, Units

POINT_PER_MM: float = mm
"""72 points to the inch of 25.4 mm (ISO 32000, default user space)."""
FACE, BOLD = "Gardenplot", "Gardenplot-Bold"
MISSING = "\N{REPLACEMENT CHARACTER}"
"""Stands for a sign that the face has no letter for."""


class Paper(StrEnum):
    """Sizes of paper."""

    A4 = "a4"
    LETTER = "letter"


SIZES = {Paper.A4: (297 * mm, 210 * mm), Paper.LETTER: (11 * inch, 8.5 * inch)}
"""Width and height in points, landscape: A4 is 210 x 297 mm (ISO 216), Letter 8 1/2 x 11 in (ANSI/ASME Y14.1, A)."""


@frozen
class Sheets:
    """A PDF, and the number from 0 of the first page of each thing in it, by the thing's id.

    What was asked for along with others and is not in it, since there is nothing of it, is left out.
    """

    pdf: bytes
    first_page: dict[str, int]
    left_out: tuple[Kind, ...] = ()


_METRIC = (1, 2, 5, 10, 20, 25, 50, 75, 100, 125, 200, 250, 500, 1000, 2000, 5000)
"""Drawing scales of ISO 5455 with those of the triangular scale rule, 1 : 25, 1 : 75 and 1 : 125, between them."""
_FEET = (1, 2, 4, 6, 12, 24, 48, 60, 96, 120, 240, 360, 480, 600, 1200, 2400, 6000)
"""1 in to so many inches: 12 is 1 in = 1 ft, 120 is 1 in = 10 ft."""


@frozen
class DrawingScale:
    """One to so many, and how that is said."""

    ratio: int
    words: str

    def on_paper(self, nm: int) -> float:
        """A length of ground in points of paper."""
        return nm / MM / self.ratio * POINT_PER_MM


def scales(units: Units) -> tuple[DrawingScale, ...]:
    """The standard scales of a system of units, from the largest."""
    return tuple(scale_of(ratio, units) for ratio in (_METRIC if units is Units.METRIC else _FEET))


def scale_of(ratio: int, units: Units) -> DrawingScale:
    """One to so many, in the words of a system of units."""
    if units is not Units.METRIC and ratio % 12 == 0:
        return DrawingScale(ratio, f"1 in = {ratio // 12} ft (1 : {ratio})")
    return DrawingScale(ratio, f"1 : {ratio}")


def scale_for(length: int, width: int, room: tuple[float, float], units: Units) -> DrawingScale:
    """The largest standard scale at which a length and a width in nm fit into so many points along and across."""
    least = max(length / MM * POINT_PER_MM / room[0], width / MM * POINT_PER_MM / room[1])
    ratios = _METRIC if units is Units.METRIC else _FEET
    return scale_of(next((one for one in ratios if one >= least), ceil(least)), units)


def check_length(units: Units) -> tuple[float, str]:
    """The bar to measure before the sheet is used: its length in points and in words."""
    return (100 * mm, "100 mm") if units is Units.METRIC else (4 * INCH / MM * POINT_PER_MM, "4 in")


@cache
def load_face() -> None:
    """Register the bundled face with reportlab, once, and have it write bytes as they are and not as text."""
    rl_config.useA85 = 0
    pdfmetrics.registerFont(TTFont(FACE, str(resource("fonts/DejaVuSansCondensed.ttf"))))
    pdfmetrics.registerFont(TTFont(BOLD, str(resource("fonts/DejaVuSansCondensed-Bold.ttf"))))


def printable(text: str) -> str:
    """A text on one line, with a sign of its own for each that the face has no letter for."""
    has = pdfmetrics.getFont(FACE).face.charToGlyph
    text = one_line(text)
    return (
        text
        if all(map(has.__contains__, map(ord, text)))
        else "".join(sign if ord(sign) in has else MISSING for sign in text)
    )


def as_drawn(text: str) -> str:
    """A printable text in the order in which a page draws its signs, letters that join in the form that they have."""
    return shown(text, pdfmetrics.getFont(FACE).face.charToGlyph.__contains__)


def width_of(text: str, face: str, size: float) -> float:
    """The points of width that a text takes on a page."""
    return float(pdfmetrics.stringWidth(as_drawn(printable(text)), face, size))


def fitted(text: str, face: str, size: float, room: float) -> str:
    """A text on one line, cut with an ellipsis where it is wider than so many points."""
    text = printable(text)
    if pdfmetrics.stringWidth(text, face, size) <= room:
        return text
    # A name from a strange file can be as long as a book: the place of the cut is halved down to, not walked to.
    cut = bisect_right(range(len(text)), room, key=lambda end: pdfmetrics.stringWidth(text[:end] + "…", face, size))
    return text[: max(0, cut - 1)].rstrip() + "…"


def broken(text: str, face: str, size: float, room: float) -> list[str]:
    """A text on as many lines as it needs in so many points; a word that is wider than that is cut."""
    text = printable(text)
    words = text.split(" ")
    if pdfmetrics.stringWidth(text, face, size) <= room:
        # Most texts have room on one line, and it need not be tried after each of their words.
        return [" ".join(filter(None, map(str.rstrip, words))).strip()]
    lines = [""]
    for word in words:
        longer = f"{lines[-1]} {word}".strip()
        if not lines[-1] or pdfmetrics.stringWidth(longer, face, size) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return [fitted(line, face, size, room) for line in lines]
