"""The numbers of stakes over a drawing: moved apart where they lack room, each led to its place by a line.

Where one line of numbers is too few, they stand on two lines by turns; where that is too few as well, every second or
third is written, and the sheet says so.
"""

from itertools import pairwise

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.sheets.paper import BOLD

_SIZE = 9
_LINE = 10.0
"""Points from one line of numbers to the next."""
_LEADER = 9.0
"""Points below the numbers for the lines that lead to their places, where some are moved."""
_APART = 2.5
"""Points between two numbers on a line."""
_STILL = 0.5
"""A number that is moved by no more points needs no line."""


@frozen
class Numbered:
    """A number, the x in points of its place and of its middle, and its line from 0, the lowest."""

    words: str
    at: float
    middle: float
    line: int


@frozen
class StakeRow:
    """The numbers over a drawing, and of how many stakes each has one: 1 is every one."""

    numbers: tuple[Numbered, ...]
    every: int = 1

    @property
    def is_led(self) -> bool:
        """Whether lines lead from the numbers to their places."""
        return any(abs(one.middle - one.at) > _STILL or one.line for one in self.numbers)

    @property
    def height(self) -> float:
        """The points that it takes above the drawing."""
        return _LINE * (1 + max((one.line for one in self.numbers), default=0)) + _LEADER * self.is_led

    def draw(self, page: Canvas, y: float) -> None:
        """Draw it from a height in points upwards."""
        page.setFont(BOLD, _SIZE)
        page.setLineWidth(0.18 * mm)
        led = _LEADER if self.is_led else 0.0
        for one in self.numbers:
            low = y + led + _LINE * one.line
            page.drawCentredString(one.middle, low, one.words)
            if self.is_led:
                path = page.beginPath()
                path.moveTo(one.at, y - 1)
                path.lineTo(one.middle, y + led - 2.5)
                if one.line:
                    path.lineTo(one.middle, low - 1.5)
                page.drawPath(path)


def stake_row(places: list[tuple[str, float]], low: float, high: float) -> StakeRow:
    """The row of some numbers with the x of their places, in order, that keeps between two x, all in points."""
    wide = [pdfmetrics.stringWidth(words, BOLD, _SIZE) + _APART for words, _at in places]
    for every in range(1, len(places) + 1):
        some, widths = places[::every], wide[::every]
        for lines in (1, 2):
            steps = _steps(widths, lines)
            if sum(steps) + (widths[0] + widths[-1]) / 2 <= high - low:
                middles = spread([at for _words, at in some], steps, low + widths[0] / 2, high - widths[-1] / 2)
                numbers = zip(some, middles, strict=True)
                return StakeRow(
                    tuple(
                        Numbered(words, at, middle, number % lines)
                        for number, ((words, at), middle) in enumerate(numbers)
                    ),
                    every,
                )
    return StakeRow(())


def _steps(widths: list[float], lines: int) -> list[float]:
    """How far the middle of each number is at least from that of the next, on one line or on two by turns."""
    return [(one + other) / 2 / lines for one, other in pairwise(widths)]


def spread(wanted: list[float], steps: list[float], low: float, high: float) -> list[float]:
    """Places in order, so far apart at least, as near to those wanted as may be, between two ends.

    Neighbours that would be too near stand together about the mean of what they want (least squares; the method of
    pooling adjacent violators, Ayer and others 1955).
    """
    starts = [0.0]
    for step in steps:
        starts.append(starts[-1] + step)
    pools: list[tuple[float, int]] = []
    for want, start in zip(wanted, starts, strict=True):
        pools.append((want - start, 1))
        while len(pools) > 1 and pools[-2][0] >= pools[-1][0]:
            (one, count), (other, more) = pools[-2:]
            pools[-2:] = [((one * count + other * more) / (count + more), count + more)]
    moved = [mean for mean, count in pools for _one in range(count)]
    return [min(max(move, low), high - starts[-1]) + start for move, start in zip(moved, starts, strict=True)]
