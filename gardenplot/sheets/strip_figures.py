"""The figures of a piece of a spacing strip: at each mark how far it is from 0, and at its end the strip’s length."""

from collections.abc import Iterable
from itertools import pairwise

from attrs import frozen
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.board_words import rows_by_turns
from gardenplot.drawing.spacing_marks import Mark, Purpose, Strip, What
from gardenplot.sheets.paper import BOLD, FACE, POINT_PER_MM
from gardenplot.sheets.strip_piece import Piece, Place
from gardenplot.units import MM, Units
from gardenplot.units.figures import Figure, offset
from gardenplot.words import _

_FIGURE, _BESIDE = 17, 9
_APART = 8.0
"""Points that the figure of the end keeps from those of marks."""
_UPPER, _LOWER = 31.5, 19.0
"""Points from the upper or lower edge to the figures of its marks."""
_Span = tuple[float, float]
"""From where to where something stands, in points."""


def has_ticks(strip: Strip) -> bool:
    """Whether marks are told at the lower edge too, by short lines."""
    return strip.repeats and not any(mark.lower for mark in strip.marks)


@frozen
class Figures:
    """The marks whose figures are shown: all, or every so many; with their unit and number where there is room."""

    marks: tuple[Mark, ...]
    units: Units
    bare: bool
    numbered: str
    rows: dict[What, str]
    lies_across: bool

    @classmethod
    def of(cls, strip: Strip, units: Units, *, lower: bool) -> "Figures":
        """As many figures with as many words as have room between the marks of one edge."""
        marks = tuple(mark for mark in strip.marks if mark.lower is lower and mark.what is not What.CENTRE)
        numbered = _("ring {number}") if strip.purpose is Purpose.RADII else _("row {number}")
        has_others = any(mark.what is What.OTHER for mark in strip.marks) and not strip.cell[0]
        rows = dict(zip((What.PLANT, What.OTHER), rows_by_turns(strip.rows), strict=True)) if has_others else {}
        ways = ((1, False), *((step, True) for step in (1, 2, 5, 10, 20, 50, 100, 200, 500)))
        all_ways = (cls(marks[::step], units, bare, numbered, rows, strip.lies_across) for step, bare in ways)
        return next(
            (shown for shown in all_ways if shown.has_room),
            cls(marks[:1], units, True, numbered, rows, strip.lies_across),
        )

    @property
    def has_room(self) -> bool:
        """Whether no figure comes near to the next."""
        return all(
            (after.at - one.at) / MM * POINT_PER_MM >= self.reach(one)[1] + self.reach(after)[0] + 6
            for one, after in pairwise(self.marks)
        )

    def told(self, at: int) -> Figure:
        """How far from 0 a place is; across the bed as the bed sheet tells it, in quarters of an inch."""
        return offset(at, self.units, inch_parts=4) if self.lies_across else offset(at, self.units)

    def on(self, piece: Piece) -> tuple[Mark, ...]:
        """Those on a piece."""
        return tuple(mark for mark in self.marks if piece.begin <= mark.at <= piece.end)

    def beside(self, mark: Mark) -> tuple[str, ...]:
        """What is set smaller behind a figure, from the most to nothing for where there is no room."""
        unit = self.told(mark.at).unit
        most = " · ".join(part for part in (unit, self.row(mark)) if part)
        return ("",) if self.bare else tuple(dict.fromkeys((most, unit, "")))

    def row(self, mark: Mark) -> str:
        """Which row or rows a mark is of; nothing where its strip marks but one kind."""
        return self.numbered.format(number=mark.number) if mark.number else self.rows.get(mark.what, "")

    def reach(self, mark: Mark) -> tuple[float, float]:
        """How many points a figure reaches left and right of its mark, with what is set smaller behind it."""
        half = pdfmetrics.stringWidth(self.told(mark.at).number, BOLD, _FIGURE) / 2
        return half, half + _beside_width(self.beside(mark)[0])


def _beside_width(words: str) -> float:
    return pdfmetrics.stringWidth(words, FACE, _BESIDE) + 2 if words else 0.0


def draw_figures(page: Canvas, place: Place, shown: Figures, end: list[_Span], *, lower: bool) -> None:
    """The figures of one edge; one that would lie over another is left out, its mark stands for itself.

    What is set smaller beside a figure leaves room for those of the other marks and of the `end`.
    """
    here = shown.on(place.piece)
    taken = [*end]
    if not lower and not place.piece.has_flag:
        taken += _draw_zero(page, place, here)
    for number, mark in enumerate(here, 1):
        later = _bare_spans(place, here[number:], shown)
        most, *less = shown.beside(mark)
        before = shown.row(mark) if less else ""
        for words, is_before in ((most, False), (before, True), *((words, False) for words in less)):
            span = _span(place, mark, shown, words, is_before=is_before)
            if span is not None and _is_free(span, taken if not words else (*taken, *later)):
                taken.append(span)
                told = shown.told(mark.at).number
                _draw_figure(page, place, span, told, (words, "") if is_before else ("", words), lower=lower)
                break


def _bare_spans(place: Place, marks: Iterable[Mark], shown: Figures) -> list[_Span]:
    """From where to where the figures of marks stand, without what is set smaller beside them."""
    return [span for mark in marks if (span := _span(place, mark, shown, "")) is not None]


def _draw_figure(
    page: Canvas, place: Place, span: _Span, number: str, beside: tuple[str, str], *, lower: bool
) -> None:
    """A figure, and what is set smaller before it and behind it."""
    base = place.bottom + _LOWER if lower else place.top - _UPPER
    page.setFont(BOLD, _FIGURE)
    page.drawString(span[0] + _beside_width(beside[0]), base, number)
    page.setFont(FACE, _BESIDE)
    page.drawString(span[0], base, beside[0])
    page.drawRightString(span[1], base, beside[1])


def _span(place: Place, mark: Mark, shown: Figures, beside: str, *, is_before: bool = False) -> _Span | None:
    """From where to where a figure stands: its middle at its mark, or aside where the piece ends or a line is.

    None where what stands behind the figure, or before it, lacks room, so that it would push the figure aside.
    """
    half = shown.reach(mark)[0]
    strip, x = place.piece.strip, place.x(mark.at)
    low, high = place.left + 4, place.right - 4
    if mark.at <= strip.length != strip.end:
        high = min(high, place.x(strip.length) - 4)
    if mark.at >= 0 != strip.begin:
        low = max(low, place.x(0) + 4)
    width = 2 * half + _beside_width(beside)
    left = max(low, min(x - half, high - 2 * half))
    if is_before:
        left -= _beside_width(beside)
        return (left, left + width) if beside and left >= low else None
    if left + width <= high:
        return left, left + width
    if beside:
        return None
    return (place.right + 4, place.right + 4 + width) if place.piece.has_flag else (high - width, high)


def _is_free(span: _Span, taken: Iterable[_Span], apart: float = 4.0) -> bool:
    return all(span[1] + apart <= left or right + apart <= span[0] for left, right in taken)


def _draw_zero(page: Canvas, place: Place, marks: tuple[Mark, ...]) -> list[_Span]:
    """The 0 of a strip where no mark is."""
    if not place.piece.begin <= 0 <= place.piece.end or any(mark.at == 0 for mark in marks):
        return []
    left = place.x(0) + 4
    span = left, left + pdfmetrics.stringWidth("0", BOLD, _FIGURE)
    _draw_figure(page, place, span, "0", ("", ""), lower=False)
    return [span]


def draw_length(page: Canvas, place: Place, shown: dict[bool, Figures]) -> tuple[dict[bool, list[_Span]], str]:
    """The length of a strip at its end where no mark is, clear of all marks and of their figures.

    Right under the last mark it would be read as that mark's, so it stands at the lower edge where the upper one has
    no room for it. Gives where it stands, and where there is no room the length, to be said with the end.
    """
    strip, length = place.piece.strip, shown[False].told(place.piece.strip.length)
    taken: dict[bool, list[_Span]] = {False: [], True: []}
    is_marked = any(mark.at == strip.length and (not mark.lower or mark in shown[True].marks) for mark in strip.marks)
    if not place.piece.is_last or place.piece.has_flag or is_marked:
        return taken, ""
    figures = {lower: _bare_spans(place, shown[lower].on(place.piece), shown[lower]) for lower in taken}
    ways = ((False, length.unit), (True, length.unit), (False, ""), (True, ""))
    for (lower, unit), apart in (*((way, _APART) for way in ways), ((False, ""), _APART / 2)):
        right = place.x(strip.length) - 4
        span = right - pdfmetrics.stringWidth(length.number, BOLD, _FIGURE) - _beside_width(unit), right
        marks = [place.x(mark.at) for mark in strip.marks if mark.lower is lower or has_ticks(strip)]
        if _is_free(span, figures[lower], apart) and not any(span[0] < x <= right + 4 for x in marks):
            _draw_figure(page, place, span, length.number, ("", unit), lower=lower)
            taken[lower].append(span)
            return taken, ""
    return taken, str(length)
