"""The sheet of what changed: only the stakes that moved, in walking order, the old figure struck through.

Upright, in black; a line a stake with a box to tick and its number on the bed sheet, bed by bed.
"""

from attrs import evolve, frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.moved_numbers import StakeNumber, renumbered_words, stake_number
from gardenplot.drawing.moved_says import Remarked, remarked, rows_of_new
from gardenplot.drawing.progress import Told, untold
from gardenplot.filling.again_ground import as_staked
from gardenplot.filling.moved import Moved, moved
from gardenplot.plan import Bed, Plan, bed_of
from gardenplot.sheets.book import About, Book, NothingToPrintError, version_of
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.list_page import ListHead, draw_box, draw_fitted, draw_list_head, list_room
from gardenplot.sheets.page_parts import CAUTION, MARGIN, tape_to_bring
from gardenplot.sheets.paper import BOLD, FACE, broken, fitted
from gardenplot.units import Units
from gardenplot.units.figures import tape
from gardenplot.words import _

_SAID = 40.0
"""Points of height of the sentences above the first bed."""
_BED, _ROW, _LINE = 72.0, 31.0, 17.0
"""Points of height of a bed's heading, of a stake, and of a line about the rows of a new block."""
_STAY = 14.0
"""Points of height of a line about the stakes that stay."""
_BOX = 14.0
_NUMBER, _OLD, _NEW = 48.0, 86.0, 104.0
"""Points of width of the number of a stake, and of its old and its new figure."""
_OLD_SIZE, _NEW_SIZE, _NUMBER_SIZE, _ROWS_SIZE = 14, 20, 16, 14
_GREY = 0.93


@frozen
class _Line:
    """A stake that moved, with further lines about a block that begins there."""

    moved: Moved
    number: StakeNumber
    rows: tuple[str, ...]

    @property
    def height(self) -> float:
        return _ROW + _LINE * len(self.rows)


@frozen
class _Part:
    """A bed with the stakes that a page has room for."""

    bed: Bed
    stay: tuple[str, ...]
    lines: tuple[_Line, ...]
    continued: bool

    @property
    def head(self) -> float:
        """Points of height of its heading."""
        return _BED + _STAY * len(self.stay)


def add_changed(book: Book, after: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add the stakes of a plan that are not where they were; raises NothingToPrintError where none moved."""
    before = choices.before or after
    staked = as_staked(before)
    right = book.upright()._pagesize[0] - MARGIN
    lines = [
        _Line(one, stake_number(staked, after, one), tuple(_rows(after, one, right))) for one in moved(staked, after)
    ]
    if not lines:
        raise NothingToPrintError(_("no stake moves, so there is no sheet of what changed"))
    stay = {bed.id: tuple(_stay(staked, after, bed.id, right)) for bed in after.beds}
    pages = _pages(after, lines, stay, list_room(book.paper) - _SAID)
    head = ListHead(_("What changed"), said, CAUTION)
    for number, parts in enumerate(pages):
        told(number, len(pages))
        y = _draw_said(book.canvas, draw_list_head(book, head, _units(after)), version_of(before), said.version)
        for part in parts:
            y = _draw_part(book.canvas, staked, after, part, y)
        book.end_page()


def _units(plan: Plan) -> str:
    return tape_to_bring(plan.beds[0], plan.place.units)[0] if plan.beds else ""


def _draw_said(page: Canvas, top: float, before: str, after: str) -> float:
    """What the sheet is for; gives the y in points below it."""
    words = _("Only these stakes move; all others stay where version {version} has them.").format(version=before)
    draw_fitted(page, words, (MARGIN, top - 16), page._pagesize[0] - 2 * MARGIN, FACE, 12)
    words = _("Stakes have the numbers of the bed sheets of version {version}.").format(version=after)
    draw_fitted(page, words, (MARGIN, top - 31), page._pagesize[0] - 2 * MARGIN, FACE, 12)
    return top - _SAID


def _rows(plan: Plan, one: Moved, right: float) -> list[str]:
    words = rows_of_new(plan, one)
    return broken(words, FACE, _ROWS_SIZE, right - _rows_at()) if words else []


def _stay(before: Plan, after: Plan, bed: str, right: float) -> list[str]:
    words = renumbered_words(before, after, bed)
    return broken(words, FACE, 11, right - MARGIN) if words else []


def _columns() -> tuple[float, float, float, float]:
    """Where the number, the old figure and the new one end, and where the words begin, in points."""
    number = MARGIN + _BOX + 4 + _NUMBER
    return number, number + _OLD, number + _OLD + _NEW, number + _OLD + _NEW + 12


def _rows_at() -> float:
    """Where lines about the rows of a new block begin: they have room below its old figure, as it has none."""
    return _columns()[0] + 12


def _pages(plan: Plan, lines: list[_Line], stay: dict[str, tuple[str, ...]], room: float) -> list[list[_Part]]:
    """Beds on pages; a bed is not begun in the last lines of one, and goes on under its name."""
    beds: dict[str, list[_Line]] = {}
    for line in lines:
        beds.setdefault(line.moved.bed, []).append(line)
    pages: list[list[_Part]] = []
    left = 0.0
    for bed_id, lines_there in beds.items():
        waiting, continued = lines_there, False
        while waiting:
            part = _Part(bed_of(plan, bed_id), stay[bed_id] if not continued else (), (), continued)
            if left < part.head + waiting[0].height:
                pages.append([])
                left = room
            taken, high = 0, part.head
            while taken < len(waiting) and high + waiting[taken].height <= left:
                high += waiting[taken].height
                taken += 1
            taken = max(1, taken)
            pages[-1].append(evolve(part, lines=tuple(waiting[:taken])))
            left -= high
            waiting, continued = waiting[taken:], True
    return pages


def _draw_part(page: Canvas, before: Plan, after: Plan, part: _Part, top: float) -> float:
    """Draw a bed with its stakes; gives the y in points below it."""
    right = page._pagesize[0] - MARGIN
    _draw_bed(page, part, after.place.units, top, right)
    y = top - part.head
    page.setLineWidth(0.35 * mm)
    page.line(MARGIN, y, right, y)
    for number, line in enumerate(part.lines):
        if number % 2:
            page.setFillGray(_GREY)
            page.rect(MARGIN, y - line.height, right - MARGIN, line.height, stroke=0, fill=1)
            page.setFillGray(0)
        _draw_line(page, before, after, line, y, right)
        y -= line.height
    return y


def _draw_bed(page: Canvas, part: _Part, units: Units, top: float, right: float) -> None:
    """A bed's name, its tape and its check, what its other stakes are called now, and what the columns are."""
    name = part.bed.name + (_(", continued") if part.continued else "")
    page.setFont(BOLD, 17)
    page.drawString(MARGIN, top - 20, fitted(name, BOLD, 17, right - MARGIN))
    draw_fitted(page, tape_to_bring(part.bed, units)[1], (MARGIN, top - 34), right - MARGIN, FACE, 10)
    words, reading = _("the foot stake reads"), str(tape(part.bed.length.nm, units))
    page.setFont(FACE, 10)
    page.drawString(MARGIN, top - 50, words)
    x = MARGIN + pdfmetrics.stringWidth(words, FACE, 10) + 5
    page.setFont(BOLD, 14)
    page.drawString(x, top - 51, reading)
    x += pdfmetrics.stringWidth(reading, BOLD, 14)
    page.setFont(FACE, 10)
    page.drawString(x, top - 50, _(": if it does not, stop and measure again"))
    page.setFont(FACE, 11)
    for at, line in enumerate(part.stay):
        page.drawString(MARGIN, top - 64 - _STAY * at, line)
    page.setFont(FACE, 9)
    for x, label in zip(_columns(), (_("stake"), _("was"), _("now")), strict=False):
        page.drawRightString(x, top - part.head + 5, label)


def _draw_line(page: Canvas, before: Plan, after: Plan, line: _Line, top: float, right: float) -> None:
    """One stake: its number, the old figure struck through, the new one large, and what it is."""
    number, old, new, what = _columns()
    mark, middle = remarked(before, after, line.moved), top - _ROW / 2
    draw_box(page, MARGIN + 2, middle, _BOX)
    _draw_number(page, line.number, number, middle)
    if mark.old is not None:
        _strike(page, str(mark.old), FACE, _OLD_SIZE, (old, middle))
    if mark.new is not None:
        page.setFont(BOLD, _size(str(mark.new), _NEW - 8, _NEW_SIZE))
        page.drawRightString(new, middle - 7, str(mark.new))
    said = f"{mark.letter} {mark.name}".strip()
    tail = _tail(mark, line.number)
    room = max(60.0, right - what - pdfmetrics.stringWidth(f"  {tail}", FACE, 12))
    said = fitted(said, BOLD, 12, room)
    page.setFont(BOLD, 12)
    page.drawString(what, middle - 4, said)
    start = what + pdfmetrics.stringWidth(said, BOLD, 12) + (6 if said else 0)
    draw_fitted(page, tail, (start, middle - 4), right - start, FACE, 12)
    page.setFont(FACE, _ROWS_SIZE)
    for at, words in enumerate(line.rows):
        page.drawString(_rows_at(), top - _ROW - _LINE * at - 9, words)


def _tail(mark: Remarked, number: StakeNumber) -> str:
    """What a stake is, and what is done with it where that is not just to move it."""
    if mark.new is None:
        parts = [f"{mark.what}: {_('leave the stake') if number.stays else mark.gone}"]
    elif mark.old is None:
        parts = [mark.what, _("has a stake") if number.is_there else _("new")]
    else:
        parts = [mark.what, *([_("leave the old one")] if number.stays else ())]
        parts += [_("has a stake")] if number.is_there else ()
    return " · ".join(part for part in (*parts, number.turn) if part)


def _draw_number(page: Canvas, number: StakeNumber, right: float, middle: float) -> None:
    """A stake's number; before it the one that it had, struck through, where that is another."""
    if number.now is not None:
        page.setFont(BOLD, _NUMBER_SIZE)
        page.drawRightString(right, middle - 6, str(number.now))
        right -= pdfmetrics.stringWidth(str(number.now), BOLD, _NUMBER_SIZE) + 8
    if number.was is not None and number.was != number.now:
        _strike(page, str(number.was), FACE, _NUMBER_SIZE, (right, middle))


def _size(words: str, room: float, most: int) -> int:
    """The largest size at which a figure has room, 14 pt at least."""
    return next((one for one in range(most, 14, -1) if pdfmetrics.stringWidth(words, BOLD, one) <= room), 14)


def _strike(page: Canvas, words: str, face: str, size: int, end: tuple[float, float]) -> None:
    """A figure that no longer holds, with a line through it; it ends at a point and has its middle there."""
    right, middle = end
    page.setFont(face, size)
    page.drawRightString(right, middle - 0.36 * size, words)
    page.setLineWidth(0.5 * mm)
    page.line(right - pdfmetrics.stringWidth(words, face, size) - 3, middle, right + 3, middle)
