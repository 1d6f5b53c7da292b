"""The stakes below a drawing: number in a box and reading, each below its place, on as many lines as they need.

Where no line is free they stand further on rather than upon others, and further back rather than in the margin. Where
all the page has no room for them, every second or third is told, and the page says so.
"""

from math import ceil

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.stakes import Stake
from gardenplot.drawing.tiles import Span
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE
from gardenplot.sheets.render import Frame
from gardenplot.units import MM, Units
from gardenplot.units.figures import tape
from gardenplot.words import _

LINES, LINE = 2, 19.0
"""Lines that there is room for below every drawing, and points from one to the next."""
_FIGURE = 14
"""The size in points of numbers and readings."""
_TITLE = 28.0
"""Points left of the stakes for what they are."""
_APART = 8.0
"""Points between what is said of one stake and of the next."""


@frozen
class _One:
    """A stake in words: where it stands in mm, its number and its reading, and the points that these take."""

    at: float
    number: str
    reading: str

    @property
    def box(self) -> float:
        """Points of width of the box round the number."""
        return float(pdfmetrics.stringWidth(self.number, BOLD, _FIGURE)) + 6

    @property
    def width(self) -> float:
        """Points of width of all of it."""
        return self.box + 4 + float(pdfmetrics.stringWidth(self.reading, BOLD, _FIGURE))


@frozen
class StakesBelow:
    """The stakes of a part of a bed."""

    stakes: tuple[_One, ...]

    def lines(self, room: float) -> int:
        """How many lines they take in so many points: two, or more where they need them."""
        # What does not fit exactly into each line needs some more of the next.
        return max(LINES, ceil(1.2 * sum(one.width + _APART for one in self.stakes) / room))

    def draw(self, page: Canvas, frame: Frame, low: float, most: int) -> None:
        """Draw them, the first line at a height in points, on so many lines at most."""
        left, right = MARGIN + _TITLE, page._pagesize[0] - MARGIN
        every = ceil(self.lines(right - left) / max(LINES, most))
        told = StakesBelow(self.stakes[::every])
        page.setFont(FACE, 9)
        page.drawString(MARGIN, low, _("stake") if told.stakes else "")
        if every > 1:
            page.drawRightString(right, MARGIN + 14, _("one stake of {count} is told").format(count=every))
        page.setLineWidth(0.18 * mm)
        page.setFont(BOLD, _FIGURE)
        middles = [frame.place(one.at, 0)[0] for one in told.stakes]
        places = _on_lines(middles, [one.width for one in told.stakes], (left, right), told.lines(right - left))
        for one, (line, start) in zip(told.stakes, places, strict=True):
            base = low - LINE * line
            page.rect(start, base - 3, one.box, 16, stroke=1, fill=0)
            page.drawCentredString(start + one.box / 2, base, one.number)
            page.drawString(start + one.box + 4, base, one.reading)


def stakes_below(driven: tuple[Stake, ...], along: Span, units: Units) -> StakesBelow:
    """The stakes that a part shows, of all of its bed."""
    here = (stake for stake in driven if along.start <= stake.at <= along.end)
    return StakesBelow(tuple(_One(stake.at / MM, str(stake.number), tape(stake.at, units).number) for stake in here))


def _on_lines(
    middles: list[float], widths: list[float], room: tuple[float, float], lines: int
) -> list[tuple[int, float]]:
    """On which line words so many points wide stand and where they begin, about their middles."""
    ends, found = [room[0]] * lines, list[tuple[int, float]]()
    for middle, width in zip(middles, widths, strict=True):
        line = next((one for one, end in enumerate(ends) if end <= middle - width / 2), ends.index(min(ends)))
        start = max(middle - width / 2, ends[line])
        ends[line] = start + width + _APART
        found.append((line, start))
    limits = [room[1]] * lines
    for number, (line, start) in reversed(list(enumerate(found))):
        found[number] = line, min(start, limits[line] - widths[number])
        limits[line] = found[number][1] - _APART
    return found
