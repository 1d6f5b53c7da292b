"""Parts of the side column, stacked: headings, sentences, lines of offsets and tables of figures."""

from collections.abc import Callable, Sequence

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.sheets.page_parts import SIDE_WIDTH
from gardenplot.sheets.paper import BOLD, FACE, fitted
from gardenplot.units import CM, Units
from gardenplot.units.figures import MINUS, offset
from gardenplot.words import _

LABELS = 50.0
"""Width in points of what stands before a line of offsets."""
MEASURED = 14
"""Size in points of a figure that is measured at the bed."""
LARGEST = 17
"""Size in points of what a whole bed hangs on."""
_MOST_A_LINE = 5
_APART = 8.0
"""The least gap in points between figures that are measured beside each other."""


@frozen
class Section:
    """A part of the side column: its height in points and what draws it from a corner at a width."""

    height: float
    draw: Callable[[Canvas, float, float, float], None]


def stacked(*parts: Section) -> Section:
    """Some parts as one, below each other."""

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        for part in parts:
            part.draw(page, left, top, width)
            top -= part.height

    return Section(sum(part.height for part in parts), draw)


def heading(name: str, tail: str = "") -> Section:
    """What a part is about: a name, which is cut where it must be, and what belongs to it, which is not."""

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 10)
        room = width - pdfmetrics.stringWidth(tail, BOLD, 10)
        page.drawString(left, top - 10, fitted(name, BOLD, 10, max(room, 20)) + tail)

    return Section(12, draw)


def sentence(words: str, size: int = 10) -> Section:
    """A sentence, on as many lines as it needs."""
    lines = _broken(words, size)
    pitch = size + 2

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(FACE, size)
        for number, line in enumerate(lines):
            page.drawString(left, top - size - pitch * number, fitted(line, FACE, size, width))

    return Section(pitch * len(lines), draw)


def _broken(words: str, size: int) -> list[str]:
    lines = [""]
    for word in words.split(" "):
        longer = f"{lines[-1]} {word}".strip()
        if pdfmetrics.stringWidth(longer, FACE, size) <= SIDE_WIDTH:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def space(height: float) -> Section:
    """Nothing."""
    return Section(height, lambda *_place: None)


def short(nm: int, units: Units) -> str:
    """An offset as it is read off a rule: the number, with the prime where it is in inches."""
    return offset(nm, units, inch_parts=4).number


def from_centre(at: int, width: int, units: Units) -> str:
    """The distance of an offset from the centre line, with a sign: left of it minus, right of it plus."""
    twice = 2 * at - width
    if abs(twice) < CM // 10:
        return "0"
    return f"{MINUS if twice < 0 else '+'}{short(abs(twice) // 2, units)}"


def offsets(found: Sequence[int], width: int, units: Units, *, in_pairs: bool = False) -> Section:
    """Offsets from the left edge, large, and from the centre, small, in lines of as many as there is room for."""
    widest = max(pdfmetrics.stringWidth(short(at, units), BOLD, MEASURED) for at in found)
    a_line = max(1, min(_MOST_A_LINE, int((SIDE_WIDTH - LABELS) / (widest + _APART))))
    if in_pairs:
        a_line = max(2, a_line // 2 * 2)
    lines = (found[at : at + a_line] for at in range(0, len(found), a_line))
    return stacked(*(_offset_line(line, a_line, width, units, in_pairs=in_pairs) for line in lines))


def _offset_line(found: Sequence[int], a_line: int, bed_width: int, units: Units, *, in_pairs: bool) -> Section:
    """One line of offsets; those of a pair stand together over a rule."""

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        step = (width - LABELS) / a_line
        ends = [left + LABELS + (number + 1) * step for number in range(len(found))]
        page.setFont(FACE, 9)
        page.drawString(left, top - 12, _("from edge"))
        page.setFont(BOLD, MEASURED)
        for x, at in zip(ends, found, strict=True):
            page.drawRightString(x, top - 13, short(at, units))
        page.setLineWidth(0.35 * mm)
        for number in range(1, len(found), 2) if in_pairs else ():
            first = pdfmetrics.stringWidth(short(found[number - 1], units), BOLD, MEASURED)
            page.line(ends[number] - step - first, top - 15.5, ends[number], top - 15.5)
        page.setFont(FACE, 9)
        page.drawString(left, top - 23, _("from centre"))
        for x, at in zip(ends, found, strict=True):
            page.drawRightString(x, top - 24 if in_pairs else top - 23, from_centre(at, bed_width, units))

    return Section(27, draw)


def table(
    headings: Sequence[str], shares: Sequence[float], rows: Sequence[Sequence[str]], *, largest: int | None = None
) -> Section:
    """Figures in columns, set to the right; each column has a share of the width, and one may be the largest.

    What is not measured, such as the number of a row or of its plants, is marked by a leading blank and set smaller.
    """
    pitch = _PITCHES[len(rows) > _FEW] if largest is None else LARGEST + 2.0
    ends = [sum(shares[: number + 1]) / sum(shares) for number in range(len(shares))]

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(FACE, 9)
        for words, end in zip(headings, ends, strict=True):
            page.drawRightString(left + width * end, top - 10, words)
        for number, row in enumerate(rows):
            y = top - 11 - pitch * (number + 1)
            for column, (words, share, end) in enumerate(zip(row, shares, ends, strict=True)):
                most = LARGEST if column == largest else MEASURED
                _figure(page, words, most, left + width * end, y, width * share / sum(shares) - 4)

    return Section(15 + pitch * len(rows), draw)


_FEW = 8
_PITCHES = (16.0, 15.0)
"""Points from line to line of a table, and of one with more than a few."""


def _figure(page: Canvas, words: str, most: int, right: float, y: float, room: float) -> None:
    face, most = (FACE, 10) if words.startswith(" ") else (BOLD, most)
    said, sizes = words.strip(), (most, MEASURED, 12, 10)
    size = next((one for one in sizes if one <= most and pdfmetrics.stringWidth(said, face, one) <= room), 9)
    page.setFont(face, size)
    page.drawRightString(right, y, said)
