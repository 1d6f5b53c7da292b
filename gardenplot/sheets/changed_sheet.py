"""The sheet of what changed: only the stakes that moved, in walking order, the old figure struck through.

Upright, in black; a line a stake with a box to tick, bed by bed.
"""

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.moved_says import remarked, rows_of_new
from gardenplot.drawing.progress import Told, untold
from gardenplot.filling.again_ground import as_staked
from gardenplot.filling.moved import Moved, moved
from gardenplot.plan import Bed, Plan, bed_of
from gardenplot.sheets.book import About, Book, NothingToPrintError, version_of
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.list_page import ListHead, draw_box, draw_fitted, draw_list_head, list_room
from gardenplot.sheets.page_parts import CAUTION, MARGIN, tape_to_bring
from gardenplot.sheets.paper import BOLD, FACE, broken, fitted
from gardenplot.units.figures import tape
from gardenplot.words import _

_SAID = 26.0
"""Points of height of the sentence above the first bed."""
_BED, _ROW, _LINE = 66.0, 31.0, 14.0
"""Points of height of a bed's heading, of a stake, and of a line about the rows of a new block."""
_BOX = 14.0
_OLD, _NEW = 86.0, 104.0
"""Points of width of the old and of the new figure."""
_OLD_SIZE, _NEW_SIZE = 14, 20
_GREY = 0.93


@frozen
class _Line:
    """A stake that moved, with further lines about a block that begins there."""

    moved: Moved
    rows: tuple[str, ...]

    @property
    def height(self) -> float:
        return _ROW + _LINE * len(self.rows)


@frozen
class _Part:
    """A bed with the stakes that a page has room for."""

    bed: Bed
    lines: tuple[_Line, ...]
    continued: bool


def add_changed(book: Book, after: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add the stakes of a plan that are not where they were; raises NothingToPrintError where none moved."""
    before = choices.before or after
    staked = as_staked(before)
    right = book.upright()._pagesize[0] - MARGIN
    lines = [_Line(one, tuple(_rows(after, one, right))) for one in moved(staked, after)]
    if not lines:
        raise NothingToPrintError(_("no stake moves, so there is no sheet of what changed"))
    pages = _pages(after, lines, list_room(book.paper) - _SAID)
    head = ListHead(_("What changed"), said, CAUTION)
    for number, parts in enumerate(pages):
        told(number, len(pages))
        y = _draw_said(book.canvas, draw_list_head(book, head, _units(after)), version_of(before))
        for part in parts:
            y = _draw_part(book.canvas, staked, after, part, y)
        book.end_page()


def _units(plan: Plan) -> str:
    return tape_to_bring(plan.beds[0], plan.place.units)[0] if plan.beds else ""


def _draw_said(page: Canvas, top: float, version: str) -> float:
    """What the sheet is for; gives the y in points below it."""
    words = _("Only these stakes move; all others stay where version {version} has them.").format(version=version)
    draw_fitted(page, words, (MARGIN, top - 16), page._pagesize[0] - 2 * MARGIN, FACE, 12)
    return top - _SAID


def _rows(plan: Plan, one: Moved, right: float) -> list[str]:
    words = rows_of_new(plan, one)
    return broken(words, FACE, 11, right - _columns()[2]) if words else []


def _columns() -> tuple[float, float, float]:
    """Where the old figure ends, where the new one ends, and where the words begin, in points."""
    first = MARGIN + _BOX + 8 + _OLD
    return first, first + _NEW, first + _NEW + 14


def _pages(plan: Plan, lines: list[_Line], room: float) -> list[list[_Part]]:
    """Beds on pages; a bed is not begun in the last lines of one, and goes on under its name."""
    beds: dict[str, list[_Line]] = {}
    for line in lines:
        beds.setdefault(line.moved.bed, []).append(line)
    pages: list[list[_Part]] = []
    left = 0.0
    for bed_id, lines_there in beds.items():
        waiting, continued = lines_there, False
        while waiting:
            if left < _BED + waiting[0].height:
                pages.append([])
                left = room
            taken, high = 0, _BED
            while taken < len(waiting) and high + waiting[taken].height <= left:
                high += waiting[taken].height
                taken += 1
            taken = max(1, taken)
            pages[-1].append(_Part(bed_of(plan, bed_id), tuple(waiting[:taken]), continued))
            left -= high
            waiting, continued = waiting[taken:], True
    return pages


def _draw_part(page: Canvas, before: Plan, after: Plan, part: _Part, top: float) -> float:
    """Draw a bed with its stakes; gives the y in points below it."""
    right, units = page._pagesize[0] - MARGIN, after.place.units
    name = part.bed.name + (_(", continued") if part.continued else "")
    page.setFont(BOLD, 17)
    page.drawString(MARGIN, top - 20, fitted(name, BOLD, 17, right - MARGIN))
    foot = _("the foot stake reads {reading}: if it does not, stop and measure again")
    page.setFont(FACE, 10)
    page.drawString(MARGIN, top - 34, tape_to_bring(part.bed, units)[1])
    page.drawString(MARGIN, top - 46, foot.format(reading=tape(part.bed.length.nm, units)))
    old, new, what = _columns()
    page.setFont(FACE, 9)
    for x, label in ((old, _("was")), (new, _("now"))):
        page.drawRightString(x, top - 61, label)
    page.setLineWidth(0.35 * mm)
    page.line(MARGIN, top - _BED, right, top - _BED)
    y = top - _BED
    for number, line in enumerate(part.lines):
        if number % 2:
            page.setFillGray(_GREY)
            page.rect(MARGIN, y - line.height, right - MARGIN, line.height, stroke=0, fill=1)
            page.setFillGray(0)
        _draw_line(page, before, after, line, y, (old, new, what, right))
        y -= line.height
    return y


def _draw_line(
    page: Canvas, before: Plan, after: Plan, line: _Line, top: float, columns: tuple[float, float, float, float]
) -> None:
    """One stake: the old figure struck through, the new one large, and what it is."""
    old, new, what, right = columns
    mark, middle = remarked(before, after, line.moved), top - _ROW / 2
    draw_box(page, MARGIN + 2, middle, _BOX)
    if mark.old is not None:
        _strike(page, str(mark.old), old, middle)
    if mark.new is not None:
        page.setFont(BOLD, _size(str(mark.new), _NEW - 8, _NEW_SIZE))
        page.drawRightString(new, middle - 7, str(mark.new))
    said = f"{mark.letter} {mark.name}".strip()
    tail = mark.what if mark.new is not None else f"{mark.what}: {mark.gone}"
    if mark.old is None:
        tail += _(" (new)")
    room = max(60.0, right - what - pdfmetrics.stringWidth(f"  {tail}", FACE, 12))
    said = fitted(said, BOLD, 12, room)
    page.setFont(BOLD, 12)
    page.drawString(what, middle - 4, said)
    start = what + pdfmetrics.stringWidth(said, BOLD, 12) + (6 if said else 0)
    draw_fitted(page, tail, (start, middle - 4), right - start, FACE, 12)
    page.setFont(FACE, 11)
    for number, words in enumerate(line.rows):
        page.drawString(what, top - _ROW - _LINE * number - 6, words)


def _size(words: str, room: float, most: int) -> int:
    """The largest size at which a figure has room, 14 pt at least."""
    return next((one for one in range(most, 14, -1) if pdfmetrics.stringWidth(words, BOLD, one) <= room), 14)


def _strike(page: Canvas, words: str, right: float, middle: float) -> None:
    """A figure that no longer holds, with a line through it."""
    page.setFont(FACE, _OLD_SIZE)
    page.drawRightString(right, middle - 5, words)
    page.setLineWidth(0.5 * mm)
    page.line(right - pdfmetrics.stringWidth(words, FACE, _OLD_SIZE) - 3, middle, right + 3, middle)
