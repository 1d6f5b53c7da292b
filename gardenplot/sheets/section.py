"""Parts of the side column, stacked: headings, sentences, lines of offsets and tables of figures."""

from collections.abc import Callable, Sequence

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.sheets.flow import MEASURED, SMALL, Word, as_typed, broken_words, draw_lines, height_of, words_of
from gardenplot.sheets.page_parts import SIDE_WIDTH
from gardenplot.sheets.paper import BOLD, FACE
from gardenplot.units import CM, Units
from gardenplot.units.figures import MINUS, offset
from gardenplot.words import _

_TITLE = 12
LABELS = 50.0
"""Width in points of what stands before a line of offsets."""
LARGEST = 17
"""Size in points of what a whole bed hangs on."""
_MOST_A_LINE = 5
_FAR = 48.0
"""Points from one figure to the next at most."""
_APART = 5.0
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


def heading(name: str, tail: str = "", **figures: object) -> Section:
    """What a part is about: its name, on as many lines as it needs, and what belongs to it with its large figures."""
    named: list[Word] = [((word, BOLD, SMALL),) for word in name.split(" ")]
    told = words_of(tail, **figures)
    if tail[:1] in {",", ":"}:
        named[-1], told = (*named[-1], *told[0]), told[1:]
    return _flowing([*named, *told])


def headed(title: str, words: str, **figures: object) -> Section:
    """A title, and behind it a sentence with figures by which one measures."""
    return _flowing([((title, BOLD, _TITLE),), *words_of(words, **figures)])


def sentence(words: str, size: int = SMALL) -> Section:
    """A sentence, on as many lines as it needs."""
    return _flowing([((word, FACE, size),) for word in words.split(" ")])


def measured(words: str, **figures: object) -> Section:
    """A sentence with figures by which one measures, in its fields; they are large."""
    return _flowing(words_of(words, **figures))


def listed(parts: Sequence[str], figures: Sequence[str] = ()) -> Section:
    """Parts with a dot between them, none broken that has room on a line, on as many lines as they need.

    Some figures in them are large, since one measures by them.
    """
    *before, last = parts
    words: list[Word] = []
    for part in (*(f"{one} ·" for one in before), last):
        large = [one for one in figures if one in part]
        if large:
            template = as_typed(part)
            for number, one in enumerate(large):
                template = template.replace(one, f"{{at{number}}}")
            words += words_of(template, **{f"at{number}": one for number, one in enumerate(large)})
            continue
        has_room = pdfmetrics.stringWidth(part, FACE, SMALL) <= SIDE_WIDTH
        words += [((piece, FACE, SMALL),) for piece in ([part] if has_room else part.split(" "))]
    return _flowing(words)


def _flowing(words: list[Word]) -> Section:
    lines = broken_words(words, SIDE_WIDTH)
    return Section(height_of(lines), lambda page, left, top, width: draw_lines(page, lines, left, top, width))


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


def offsets(
    found: Sequence[int], width: int, units: Units, rows: Sequence[int] = (), *, in_pairs: bool = False
) -> Section:
    """Offsets from the left edge and, lighter, from the centre, in lines of as many as there is room for.

    Over them stand the numbers of their rows, where these are spoken of.
    """
    widest = max(
        max(_wide(short(at, units)), _wide(from_centre(at, width, units), FACE)) for at in found
    )  # fmt: skip
    most = max(1, min(_MOST_A_LINE, int((SIDE_WIDTH - LABELS + _APART) / (widest + _APART))))
    a_line = -(-len(found) // -(-len(found) // most))
    if in_pairs:
        a_line = max(2, most // 2 * 2)
    lines = list[Section]()
    for at in range(0, len(found), a_line):
        if rows:
            lines.append(_row_numbers(rows[at : at + a_line], a_line))
        lines.append(_offset_line(found[at : at + a_line], a_line, width, units, in_pairs=in_pairs))
    return stacked(*lines)


def _wide(words: str, face: str = BOLD) -> float:
    return float(pdfmetrics.stringWidth(words, face, MEASURED))


def _row_numbers(rows: Sequence[int], a_line: int) -> Section:
    """The numbers of rows over a line of their offsets."""

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(FACE, 9)
        page.drawString(left, top - 10, _("row"))
        for x, number in zip(_places(left, width, a_line), rows, strict=False):
            page.drawRightString(x, top - 10, str(number))

    return Section(11, draw)


def _places(left: float, width: float, a_line: int) -> list[float]:
    """Where the offsets of a line end, in points."""
    step = min(_FAR, (width - LABELS) / a_line)
    return [left + LABELS + (number + 1) * step for number in range(a_line)]


def _offset_line(found: Sequence[int], a_line: int, bed_width: int, units: Units, *, in_pairs: bool) -> Section:
    """One line of offsets; those of a pair stand together over a rule."""

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        ends = _places(left, width, a_line)[: len(found)]
        page.setFont(FACE, 9)
        page.drawString(left, top - 12, _("from edge"))
        page.setFont(BOLD, MEASURED)
        for x, at in zip(ends, found, strict=True):
            page.drawRightString(x, top - 13, short(at, units))
        page.setLineWidth(0.35 * mm)
        for number in range(1, len(found), 2) if in_pairs else ():
            page.line(ends[number - 1] - _wide(short(found[number - 1], units)), top - 15.5, ends[number], top - 15.5)
        low = top - (29.0 if in_pairs else 27.0)
        page.setFont(FACE, 9)
        page.drawString(left, low + 1, _("from centre"))
        page.setFont(FACE, MEASURED)
        for x, at in zip(ends, found, strict=True):
            page.drawRightString(x, low, from_centre(at, bed_width, units))

    return Section(34 if in_pairs else 32, draw)
