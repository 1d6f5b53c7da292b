"""Tables of the side column: figures to measure by in columns as wide as they need, under headings that wrap."""

import re
from collections.abc import Sequence
from itertools import accumulate

from attrs import frozen
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.sheets.flow import MEASURED, SMALL
from gardenplot.sheets.page_parts import SIDE_WIDTH
from gardenplot.sheets.paper import BOLD, FACE, fitted
from gardenplot.sheets.section import LARGEST, Section

_HEADING, _HEADING_PITCH = 9, 10.0
_LEAST_HEADING = 44.0
"""Points of width of a heading that stands on one line over slimmer figures."""
_FEW = 8
_PITCHES = (16.0, 15.0)
"""Points from line to line of a table, and of one with more than a few or that is to be `close`."""
_WHOLE, _TAIL = re.compile(r"[−+]?\d+"), re.compile(r"[−+]?\d+(?=\.\d+$)")
"""A whole figure, and what of a decimal one stands before its point."""
_NAME_PITCH = 12.0
"""Points that the name of a row takes above it."""
_GAP, _LEAST_GAP = 6.0, 3.0
"""Points between columns, and between those that lack room."""


@frozen
class _Column:
    """A column: the lines of its heading, the size of its figures, and the points of width it needs.

    `behind` are the points that a whole figure leaves free behind it, so that units stand below units.
    """

    heading: tuple[str, ...]
    size: int
    need: float
    behind: float


def table(
    headings: Sequence[str], rows: Sequence[Sequence[str]], *, largest: int | None = None, named: Sequence[str] = (),
    close: bool = False,
) -> Section:  # fmt: skip
    """Figures in columns, set to the right; one column may be the largest.

    What is not measured, such as the number of a row or of its plants, is marked by a leading blank and set smaller.
    Rows that are `named` have their names on lines of their own above them, cut to the width of the table.
    """
    above = _NAME_PITCH if named else 0.0
    pitch = above + (_PITCHES[close or len(rows) > _FEW] if largest is None else LARGEST + 2.0)
    columns = _columns(headings, rows, largest, wraps=False)
    if sum(column.need for column in columns) + _GAP * (len(columns) - 1) > SIDE_WIDTH:
        columns = _columns(headings, rows, largest, wraps=True)
    widths = _widths([column.need for column in columns])
    gap = (SIDE_WIDTH - sum(widths)) / max(1, len(widths) - 1)
    ends = [end + gap * at for at, end in enumerate(accumulate(widths))]
    high = _HEADING_PITCH * max(len(column.heading) for column in columns)

    def draw(page: Canvas, left: float, top: float, _width: float) -> None:
        page.setFont(FACE, _HEADING)
        for column, end in zip(columns, ends, strict=True):
            first = top - high + _HEADING_PITCH * (len(column.heading) - 1)
            for number, words in enumerate(column.heading):
                page.drawRightString(left + end, first - _HEADING_PITCH * number, words)
        page.setFont(FACE, SMALL)
        for number, name in enumerate(named):
            page.drawString(
                left, top - high - 1 - pitch * number - _NAME_PITCH, fitted(name, FACE, SMALL, SIDE_WIDTH)
            )
        for number, row in enumerate(rows, 1):
            for words, column, end, width in zip(row, columns, ends, widths, strict=True):
                right = left + end - (column.behind if _WHOLE.fullmatch(words) else 0.0)
                _figure(page, words, column.size, (right, top - high - 1 - pitch * number), width)

    return Section(5 + high + pitch * len(rows), draw)


def _columns(
    headings: Sequence[str], rows: Sequence[Sequence[str]], largest: int | None, *, wraps: bool
) -> list[_Column]:
    return [
        _column(words, [row[at] for row in rows], LARGEST if at == largest else MEASURED, wraps=wraps)
        for at, words in enumerate(headings)
    ]


def _column(words: str, cells: list[str], size: int, *, wraps: bool) -> _Column:
    """A column; its heading stands on one line, or where it `wraps` is hardly wider than the figures below it."""
    behind = max(
        (pdfmetrics.stringWidth(_TAIL.sub("", cell), BOLD, size) for cell in cells if _TAIL.match(cell)), default=0.0
    )
    need = max(
        pdfmetrics.stringWidth(cell.strip(), *_face(cell, size)) + (behind if _WHOLE.fullmatch(cell) else 0.0)
        for cell in cells
    )
    lines = [""] if wraps else [words]
    for word in words.split(" ") if wraps else ():
        longer = f"{lines[-1]} {word}".strip()
        if not lines[-1] or pdfmetrics.stringWidth(longer, FACE, _HEADING) <= max(need, _LEAST_HEADING):
            lines[-1] = longer
        else:
            lines.append(word)
    heading = max(pdfmetrics.stringWidth(line, FACE, _HEADING) for line in lines)
    return _Column(tuple(lines), size, max(need, heading), behind)


def fits(headings: Sequence[str], rows: Sequence[Sequence[str]]) -> bool:
    """Whether a table has room for its figures at the size by which one measures."""
    columns = _columns(headings, rows, None, wraps=True)
    return sum(column.need for column in columns) + _LEAST_GAP * (len(columns) - 1) <= SIDE_WIDTH


def _widths(needs: list[float]) -> list[float]:
    """The widths of columns: what they need, all less where there is no room."""
    room = SIDE_WIDTH - _LEAST_GAP * (len(needs) - 1)
    return [need * min(1.0, room / sum(needs)) for need in needs]


def _face(words: str, size: int) -> tuple[str, int]:
    return (FACE, SMALL) if words.startswith(" ") else (BOLD, size)


def _figure(page: Canvas, words: str, size: int, end: tuple[float, float], room: float) -> None:
    """A figure that ends at a point, as large as it is to be or as a column that lacks room lets it."""
    face, most = _face(words, size)
    said, sizes = words.strip(), (most, MEASURED, 13, 12, 11, 10)
    size = next((one for one in sizes if one <= most and pdfmetrics.stringWidth(said, face, one) <= room + 0.1), 9)
    page.setFont(face, size)
    page.drawRightString(*end, fitted(said, face, size, room + 0.1))
