"""The list of boards to make: how they are made and used, then each board with its page, and what has none."""

from attrs import frozen
from reportlab.pdfgen.canvas import Canvas

from gardenplot.sheets.book import About, Book
from gardenplot.sheets.list_page import ListHead, draw_box, draw_list_head, list_room
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, SIZES, Paper, broken
from gardenplot.words import _

_STEPS = (
    _(
        "Print at 100 %, not fitted to the page. Measure the bar on every page with the rule or tape that the bed is "
        "measured with."
    ),
    _(
        "Cut out each piece on its outer line. Glue pieces in order: the cut end of the next one on the thick line "
        "before the hatched edge, so that equal numbers of a join meet."
    ),
    _("Measure the glued strip: if it is not as long as this list says, it is not used."),
    _("Stick it on a board 38 mm (1½ in) wide, under clear tape or varnish. Cut a notch at each mark."),
    _(
        "At the bed, lay 0 where the strip says and plant at each mark. Then lay 0 where the strip ended, and so on "
        "up to the last plant that the bed sheet tells; marks beyond that are not planted. Check each new 0 on the "
        "tape: it lies the length of the strip further on."
    ),
)
_BORED = _("{step} Of a template, bore a hole at each cross.")
_STICK = 3
"""The step that says what is done with the marks."""
CAUTION = _(
    "Clamp the board and guard your eyes and hands when you saw and bore. A strip is only as good as its print and "
    "its glue. The seed packet and local advice come before this sheet."
)
_STEP, _TITLE, _LINE = 15.0, 16.0, 13.0
_GAP = 10.0
_INDENT = 44.0
_PAGES = 74.0
"""Points at the right in which the page stands."""
_MOST_LINES = 24


@frozen
class Entry:
    """A board: its number (0 for what has none), what it is, what there is to know of it, its first and last page."""

    number: int
    title: str
    lines: tuple[str, ...]
    page: int = 0
    last: int = 0
    is_template: bool = False


@frozen
class _Set:
    """An entry with its words broken into lines."""

    entry: Entry
    titles: tuple[str, ...]
    lines: tuple[str, ...]

    @property
    def height(self) -> float:
        """Points."""
        return _TITLE * len(self.titles) + _LINE * len(self.lines) + _GAP


def list_pages(entries: tuple[Entry, ...], paper: Paper) -> int:
    """How many pages a list of entries takes."""
    return len(_paged(entries, paper))


def add_board_list(book: Book, entries: tuple[Entry, ...], about: About) -> None:
    """Add the pages of the list."""
    head = ListHead(_("Spacing strips"), about, CAUTION)
    for number, inside in enumerate(_paged(entries, book.paper)):
        y = draw_list_head(book, head, _("what to make"))
        if number == 0:
            book.bookmark(_("What to make"))
            y = _draw_steps(book.canvas, y, entries)
        for one in inside:
            _draw_entry(book.canvas, one, y)
            y -= one.height
        book.end_page()


def _paged(entries: tuple[Entry, ...], paper: Paper) -> list[list[_Set]]:
    width = SIZES[paper][1] - 2 * MARGIN
    pages: list[list[_Set]] = [[]]
    left = list_room(paper) - _steps_height(_steps(entries, width))
    for one in (_set(entry, width) for entry in entries):
        if one.height > left and (pages[-1] or len(pages) == 1):
            pages.append([])
            left = list_room(paper)
        pages[-1].append(one)
        left -= one.height
    return pages


def _pages(entry: Entry) -> str:
    if entry.last > entry.page:
        return _("pages {first}–{last}").format(first=entry.page, last=entry.last)
    return _("page {number}").format(number=entry.page)


def _set(entry: Entry, width: float) -> _Set:
    titles = broken(entry.title, BOLD, 12, width - _INDENT - _PAGES)
    lines = [line for words in entry.lines for line in broken(words, FACE, 10, width - _INDENT)]
    return _Set(entry, tuple(titles[:_MOST_LINES]), tuple(lines[:_MOST_LINES]))


def _steps(entries: tuple[Entry, ...], width: float) -> list[list[str]]:
    """How boards are made and used, each step in its lines; of a template only where there is one."""
    steps = [*_STEPS]
    if any(entry.is_template for entry in entries):
        steps[_STICK] = _BORED.format(step=steps[_STICK])
    return [broken(words, FACE, 11, width - 22) for words in steps]


def _steps_height(steps: list[list[str]]) -> float:
    return _STEP * sum(map(len, steps)) + 4 * len(steps) + 22


def _draw_steps(page: Canvas, y: float, entries: tuple[Entry, ...]) -> float:
    """How a board is made and used, in numbered steps; gives the y in points below them."""
    top, width = y, page._pagesize[0] - 2 * MARGIN
    steps = _steps(entries, width)
    for number, lines in enumerate(steps, 1):
        page.setFont(BOLD, 12)
        page.drawString(MARGIN, y - 12, f"{number}")
        page.setFont(FACE, 11)
        for line in lines:
            page.drawString(MARGIN + 22, y - 12, line)
            y -= _STEP
        y -= 4
    page.setLineWidth(1)
    page.line(MARGIN, y - 6, MARGIN + width, y - 6)
    return top - _steps_height(steps)


def _draw_entry(page: Canvas, one: _Set, top: float) -> None:
    right, left, entry = page._pagesize[0] - MARGIN, MARGIN + _INDENT, one.entry
    y = top - 12
    if entry.number:
        draw_box(page, MARGIN, y + 4, 12)
        page.setFont(BOLD, 14)
        page.drawRightString(left - 8, y, str(entry.number))
        page.setFont(FACE, 12)
        page.drawRightString(right, y, _pages(entry))
    page.setFont(BOLD, 12)
    for line in one.titles:
        page.drawString(left, y, line)
        y -= _TITLE
    page.setFont(FACE, 10)
    for line in one.lines:
        page.drawString(left, y + 2, line)
        y -= _LINE
