"""The sheet of what changed: only the stakes that moved, in walking order, the old figure struck through.

Upright, in black; a line a stake with its number on the bed sheet and a box to tick where it is driven or pulled out.
Below them what is between the stakes: how blocks that are new or changed are planted now.
"""

from attrs import evolve, frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.changed_list import ChangedBed, ChangedStake, changed_beds, relettered_words
from gardenplot.drawing.moved_numbers import StakeNumber
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.stakes import mark_on
from gardenplot.filling.again_ground import as_staked
from gardenplot.plan import Bed, Plan
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.list_page import ListHead, draw_box, draw_fitted, draw_list_head, list_room
from gardenplot.sheets.page_parts import CAUTION, MARGIN, tape_to_bring
from gardenplot.sheets.paper import BOLD, FACE, broken, fitted
from gardenplot.units import Units
from gardenplot.units.figures import tape
from gardenplot.words import _

_BED, _ROW, _MORE = 72.0, 31.0, 15.0
"""Points of height of a bed's heading, of a stake, and of what else begins or ends at it."""
_HEAD, _LINE, _GAP = 24.0, 17.0, 6.0
"""Points of height of the heading over what is between the stakes, of a line of it, and between two of them."""
_STAY, _STAY_SIZE = 17.0, 14
"""Points of height of a line about the stakes that stay, and its size."""
_BOX = 14.0
_NUMBER, _OLD, _NEW = 48.0, 86.0, 104.0
"""Points of width of the number of a stake, and of its old and its new figure."""
_OLD_SIZE, _NEW_SIZE, _NUMBER_SIZE, _ROWS_SIZE = 14, 20, 16, 14
_GREY = 0.93


@frozen
class _Stake:
    """A stake that moved."""

    stake: ChangedStake
    is_grey: bool

    @property
    def height(self) -> float:
        """Points of height."""
        return _ROW + _MORE * (len(self.stake.says) - 1)

    def draw(self, page: Canvas, top: float, right: float) -> None:
        """Draw it below a y in points."""
        if self.is_grey:
            page.setFillGray(_GREY)
            page.rect(MARGIN, top - self.height, right - MARGIN, self.height, stroke=0, fill=1)
            page.setFillGray(0)
        _draw_stake(page, self.stake, top, right)


@frozen
class _Between:
    """What is between the stakes, in lines beside its name or below it; the first of a bed has a heading."""

    name: str
    beside: str
    lines: tuple[str, ...]
    is_first: bool

    @property
    def height(self) -> float:
        """Points of height."""
        return _HEAD * self.is_first + _LINE * (1 + len(self.lines)) + _GAP

    def draw(self, page: Canvas, top: float, right: float) -> None:
        """Draw it below a y in points."""
        if self.is_first:
            page.setFont(FACE, 11)
            page.drawString(MARGIN, top - 17, _("Between the stakes:"))
            top -= _HEAD
        page.setFont(BOLD, _ROWS_SIZE)
        page.drawString(MARGIN, top - 13, fitted(self.name, BOLD, _ROWS_SIZE, right - MARGIN))
        page.setFont(FACE, _ROWS_SIZE)
        page.drawString(MARGIN + _name_width(self.name), top - 13, self.beside)
        for at, words in enumerate(self.lines, start=1):
            page.drawString(MARGIN + 12, top - 13 - _LINE * at, words)


_Item = _Stake | _Between


@frozen
class _Part:
    """A bed with as much of it as a page has room for."""

    bed: Bed
    stay: tuple[str, ...]
    items: tuple[_Item, ...]
    continued: bool

    @property
    def head(self) -> float:
        """Points of height of its heading."""
        return _BED + _STAY * len(self.stay)


def add_changed(book: Book, after: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add the stakes of a plan that are not where they were; raises NothingToPrintError where none moved."""
    before = choices.before or after
    right = book.upright()._pagesize[0] - MARGIN
    beds = changed_beds(as_staked(before), after)
    if not any(bed.stakes or bed.between for bed in beds):
        raise NothingToPrintError(_("no stake moves, so there is no sheet of what changed"))
    sentences = tuple(
        line
        for words in _sentences(before, after, said.version, any(bed.stakes for bed in beds))
        for line in broken(words, FACE, 12, right - MARGIN)
    )
    pages = _pages(beds, right, list_room(book.paper) - _said_height(sentences))
    head = ListHead(_("What changed"), said, CAUTION)
    for number, parts in enumerate(pages):
        told(number, len(pages))
        y = _draw_said(book.canvas, draw_list_head(book, head, _units(after)), sentences)
        for part in parts:
            y = _draw_part(book.canvas, after.place.units, part, y)
        book.end_page()


def _units(plan: Plan) -> str:
    return tape_to_bring(plan.beds[0], plan.place.units)[0] if plan.beds else ""


def _sentences(before: Plan, after: Plan, version: str, has_stakes: bool) -> tuple[str, ...]:
    """What the sheet is for, and of which sheets its numbers and letters are."""
    found = (
        _("Stakes with a box move; those that stay are named at their bed. All other beds stay as they are.")
        if has_stakes
        else _("No stake moves. All other beds stay as they are."),
        _("Stakes have the numbers of the bed sheets of version {version}.").format(version=version),
        relettered_words(before, after),
    )
    return tuple(words for words in found if words)


def _said_height(sentences: tuple[str, ...]) -> float:
    return 10 + 15 * len(sentences)


def _draw_said(page: Canvas, top: float, sentences: tuple[str, ...]) -> float:
    """The sentences above the first bed; gives the y in points below them."""
    for at, words in enumerate(sentences):
        draw_fitted(page, words, (MARGIN, top - 16 - 15 * at), page._pagesize[0] - 2 * MARGIN, FACE, 12)
    return top - _said_height(sentences)


def _columns() -> tuple[float, float, float, float]:
    """Where the number, the old figure and the new one end, and where the words begin, in points."""
    number = MARGIN + _BOX + 4 + _NUMBER
    return number, number + _OLD, number + _OLD + _NEW, number + _OLD + _NEW + 12


def _items(bed: ChangedBed, right: float) -> list[_Item]:
    """What is told of a bed, from the top down."""
    return [
        *(_Stake(stake, bool(number % 2)) for number, stake in enumerate(bed.stakes)),
        *(_between(name, told, right, is_first=not number) for number, (name, told) in enumerate(bed.between)),
    ]


def _between(name: str, told: tuple[str, ...], right: float, *, is_first: bool) -> _Between:
    """The first line stands beside the name where it has room there."""
    width = _name_width(name) + pdfmetrics.stringWidth(told[0], FACE, _ROWS_SIZE)
    beside, below = (told[0], told[1:]) if MARGIN + width <= right else ("", told)
    room = right - MARGIN - 12
    return _Between(
        name, beside, tuple(line for words in below for line in broken(words, FACE, _ROWS_SIZE, room)), is_first
    )


def _name_width(name: str) -> float:
    return float(pdfmetrics.stringWidth(name, BOLD, _ROWS_SIZE)) + 8


def _pages(beds: tuple[ChangedBed, ...], right: float, room: float) -> list[list[_Part]]:
    """Beds on pages; a bed is not begun in the last lines of one, and goes on under its name."""
    pages: list[list[_Part]] = []
    left = 0.0
    for bed in beds:
        waiting, stay = (
            _items(bed, right),
            tuple(broken(bed.stay, FACE, _STAY_SIZE, right - MARGIN)) if bed.stay else (),
        )
        continued = False
        while waiting:
            part = _Part(bed.bed, stay if not continued else (), (), continued)
            if left < part.head + waiting[0].height:
                pages.append([])
                left = room
            taken, high = 0, part.head
            while taken < len(waiting) and high + waiting[taken].height <= left:
                high += waiting[taken].height
                taken += 1
            taken = max(1, taken)
            pages[-1].append(evolve(part, items=tuple(waiting[:taken])))
            left -= high
            waiting, continued = waiting[taken:], True
    return pages


def _draw_part(page: Canvas, units: Units, part: _Part, top: float) -> float:
    """Draw a bed with its stakes and what is between them; gives the y in points below it."""
    right = page._pagesize[0] - MARGIN
    _draw_bed(page, part, units, top, right)
    y = top - part.head
    page.setLineWidth(0.35 * mm)
    page.line(MARGIN, y, right, y)
    for item in part.items:
        item.draw(page, y, right)
        y -= item.height
    return y


def _draw_bed(page: Canvas, part: _Part, units: Units, top: float, right: float) -> None:
    """A bed's name, its tape and its check, what its other stakes are called now, and what the columns are."""
    name = part.bed.name + (_(", continued") if part.continued else "")
    page.setFont(BOLD, 17)
    page.drawString(MARGIN, top - 20, fitted(name, BOLD, 17, right - MARGIN))
    tape_words = _("{tape} · base line: the left edge as seen from the head").format(
        tape=tape_to_bring(part.bed, units)[1]
    )
    draw_fitted(page, tape_words, (MARGIN, top - 34), right - MARGIN, FACE, 10)
    length = part.bed.length.nm
    words = _("the foot reads") if mark_on(part.bed, length) else _("the foot stake reads")
    reading = str(tape(length, units))
    page.setFont(FACE, 10)
    page.drawString(MARGIN, top - 50, words)
    x = MARGIN + pdfmetrics.stringWidth(words, FACE, 10) + 5
    page.setFont(BOLD, 14)
    page.drawString(x, top - 51, reading)
    x += pdfmetrics.stringWidth(reading, BOLD, 14)
    page.setFont(FACE, 10)
    page.drawString(x, top - 50, _(": if it does not, stop and measure again"))
    page.setFont(FACE, _STAY_SIZE)
    for at, line in enumerate(part.stay):
        page.drawString(MARGIN, top - 67 - _STAY * at, line)
    page.setFont(FACE, 9)
    for x, label in zip(_columns(), (_("stake"), _("was"), _("now")), strict=False):
        if any(isinstance(item, _Stake) for item in part.items):
            page.drawRightString(x, top - part.head + 5, label)


def _draw_stake(page: Canvas, stake: ChangedStake, top: float, right: float) -> None:
    """One stake: its number, the old figure struck through, the new one large, and what begins and ends there."""
    number, old, new, what = _columns()
    middle = top - _ROW / 2
    if stake.is_job:
        draw_box(page, MARGIN + 2, middle, _BOX)
    _draw_number(page, stake.number, number, middle)
    if stake.old is not None:
        _strike(page, str(stake.old), FACE, _OLD_SIZE, (old, middle))
    if stake.new is not None:
        page.setFont(BOLD, _size(str(stake.new), _NEW - 8, _NEW_SIZE))
        page.drawRightString(new, middle - 7, str(stake.new))
    for at, (name, does) in enumerate(stake.says):
        room = max(60.0, right - what - pdfmetrics.stringWidth(f"  {does}", FACE, 12))
        said, y = fitted(name, BOLD, 12, room), middle - 4 - _MORE * at
        page.setFont(BOLD, 12)
        page.drawString(what, y, said)
        start = what + pdfmetrics.stringWidth(said, BOLD, 12) + (6 if said else 0)
        draw_fitted(page, does, (start, y), right - start, FACE, 12)


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
