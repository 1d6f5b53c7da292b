"""Labels: each block's to stake beside it and each tray's, on sheets of labels or cut from plain paper, in black.

The letter and the crop stay large, and all labels of a print have the same sizes. Other words shrink to fit and are
cut below 8 pt; lines for which a label has no height are left out, the least needed first. On plain paper each label
has its cut lines, and a long one keeps its foot free for the soil. What every page says of its plan stands in the
lower margin where there is one, else on a slip, the first label of each sheet, unless that is not wanted.
"""

from collections.abc import Sequence

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.label_words import LabelWords, plant_labels, tray_labels
from gardenplot.drawing.progress import Told, untold
from gardenplot.errors import PlanError
from gardenplot.plan import Plan
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices, Labelled
from gardenplot.sheets.label_sizes import A4, LETTER, Cell, cells
from gardenplot.sheets.list_page import draw_fitted
from gardenplot.sheets.paper import BOLD, FACE, MISSING, POINT_PER_MM, Paper, broken, fitted
from gardenplot.supplies.shopping import Asked
from gardenplot.units import MM
from gardenplot.words import _

_PAPERS = {Paper.A4: A4, Paper.LETTER: LETTER}
MOST_LABELS = 2000
"""Labels that are made at once."""
_PAD = 2.2 * mm
"""Kept free inside a label, since no printer takes paper in exactly alike."""
_PAGE_EDGE = 5 * mm
"""Kept free at the edges of the paper, where printers do not reach."""
_LEAST_MARGIN: float = 5 * mm + 8
"""Points of a lower margin in which a line of words has room."""
_LARGEST_LETTER, _LARGEST_CROP, _LEAST_CROP = 96, 30, 12
_LARGEST, _LEAST = 18, 8
"""Sizes in points of the other words."""
_APART = 8.0
"""Points between two columns of lines."""
_CAPITAL, _TAIL, _BEFORE = 0.74, 0.22, 0.1
"""How high a capital is, how far J and Q reach below the line, and J before its place, in shares of the size."""
_ASCENT, _LEADING = 0.76, 1.24
_LETTER = 0.24
"""The share of a label's width that its letter takes at most."""
_LONG = 4
"""A label so many times as long as high is stuck into the soil, and has room for two columns."""
_IN_SOIL = 0.3
"""The share of a long label's length that goes into the soil."""


@frozen
class _Box:
    """A rectangle on a page in points, from the lower left of the page."""

    left: float
    bottom: float
    width: float
    height: float

    @property
    def top(self) -> float:
        return self.bottom + self.height


def add_labels(book: Book, plan: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add labels for blocks and trays; raises NothingToPrintError where there is nothing to label.

    Raises PlanError for labels that do not come on the paper, for a first free label that a sheet does not have, and
    for more than 2,000 at once.
    """
    labels = _wanted(plan, choices)
    if not labels:
        raise NothingToPrintError(_("nothing is planted in the plan, so there are no labels"))
    if len(labels) > MOST_LABELS:
        raise PlanError(
            _("{count} labels are too many: at most {most} are made at once; choose fewer beds or days").format(
                count=len(labels), most=MOST_LABELS
            )
        )
    on_sheet = cells(choices.label, _PAPERS[book.paper])
    if not 1 <= choices.labels_from <= len(on_sheet):
        raise PlanError(
            _("a sheet has {count} labels: the first free one is one of 1 to {count}").format(count=len(on_sheet))
        )
    spots = [_spot(cell, book.paper, is_cut=choices.label.is_cut) for cell in on_sheet]
    sizes = _sizes(labels, [spot.words for spot in spots])
    margin = _margin(book.paper, on_sheet)
    has_slip = choices.slip and margin < _LEAST_MARGIN and len(spots) > 1
    sheets = _sheets(labels, len(spots), choices.labels_from - 1, has_slip=has_slip)
    for number, (first, on_it) in enumerate(sheets):
        told(number, len(sheets))
        page = book.upright()
        for label, spot in zip(on_it, spots[first + has_slip :], strict=False):
            _draw_words(page, label, spot.words, sizes)
            if choices.label.is_cut:
                _draw_cuts(page, spot)
        if has_slip:
            _draw_slip(book, said, spots[first].words)
        elif margin >= _LEAST_MARGIN:
            _draw_foot(book, said, margin)
        # The note that a book puts above what lacks letters would lie on the labels: it stands in the foot.
        page.lacks_letters = False
        book.end_page()


def _sheets(
    labels: list[LabelWords], count: int, begun: int, *, has_slip: bool
) -> list[tuple[int, list[LabelWords]]]:
    """Labels on sheets of so many, `begun` of the first being gone, each sheet with its first place that is free."""
    found, rest, first = [], labels, begun
    while rest:
        taken = max(0, count - first - has_slip)
        found.append((first, rest[:taken]))
        rest, first = rest[taken:], 0
    return found


def _wanted(plan: Plan, choices: Choices) -> list[LabelWords]:
    asked, found = Asked(choices.beds, choices.first, choices.last), list[LabelWords]()
    if choices.labelled is not Labelled.TRAYS:
        found += plant_labels(plan, asked)
    if choices.labelled is not Labelled.BLOCKS:
        found += tray_labels(plan, asked)
    return found


def _points(nm: int) -> float:
    return nm / MM * POINT_PER_MM


@frozen
class _Letter:
    """The size of the letters of all labels, and the width of their column, in points."""

    size: float
    column: float


def _letter_column(labels: Sequence[LabelWords], boxes: Sequence[_Box]) -> _Letter:
    """Letters as high as the lowest label, those of all labels in a column of a quarter of it at most."""
    height, width = min(box.height for box in boxes), min(box.width for box in boxes)
    widest = max(pdfmetrics.stringWidth(label.letter, BOLD, 1) for label in labels) + _BEFORE
    size = min(_LARGEST_LETTER, height / (_CAPITAL + 2 * _TAIL), _LETTER * width / widest)
    return _Letter(size, widest * size + max(5.0, 0.14 * size))


@frozen
class _Sizes:
    """What all labels of a print have alike, so that they look alike: sizes, columns, and how high their words are.

    They are those of the narrowest and lowest label and of the longest words.
    """

    letter: _Letter
    columns: int
    crop: int
    lines: int
    used: float


def _sizes(labels: Sequence[LabelWords], boxes: Sequence[_Box]) -> _Sizes:
    letter = _letter_column(labels, boxes)
    width, height = min(box.width for box in boxes) - letter.column, min(box.height for box in boxes)
    room = _Box(0, 0, width, height)
    columns = 2 if width >= _LONG * height else 1
    crop = min(_crop_lines(one.crop, room, -(-len(one.lines) // columns))[1] for one in labels)
    heads = [_crop_lines(one.crop, room, -(-len(one.lines) // columns), crop)[0] for one in labels]
    found = [
        _lines(one.lines, columns, _pitch(room, columns) - _APART, height - len(head) * crop * _LEADING)
        for one, head in zip(labels, heads, strict=True)
    ]
    lines = min(size for _count, size in found)
    used = max(
        (len(head) * crop + -(-count // columns) * lines) * _LEADING
        for head, (count, _size) in zip(heads, found, strict=True)
    )
    return _Sizes(letter, columns, crop, lines, used)


def _pitch(room: _Box, columns: int) -> float:
    """Points from one column of lines to the next."""
    return (room.width + _APART) / columns


@frozen
class _Spot:
    """Where a label lies: all of it, the part for its words, and the part that goes into the soil, if any."""

    whole: _Box
    words: _Box
    soil: _Box | None


def _spot(cell: Cell, paper: Paper, *, is_cut: bool) -> _Spot:
    """The parts of a label; its words keep away from its edges and from those of the paper."""
    width, height = map(_points, _PAPERS[paper])
    whole = _Box(
        _points(cell.left), height - _points(cell.top + cell.height), _points(cell.width), _points(cell.height)
    )
    soil = None
    if is_cut and whole.width >= _LONG * whole.height:
        length = _IN_SOIL * whole.width
        soil = _Box(whole.left + whole.width - length, whole.bottom, length, whole.height)
    end = soil.left if soil else whole.left + whole.width
    left, bottom = max(whole.left + _PAD, _PAGE_EDGE), max(whole.bottom + _PAD, _PAGE_EDGE)
    right, top = min(end - _PAD, width - _PAGE_EDGE), min(whole.top - _PAD, height - _PAGE_EDGE)
    return _Spot(whole, _Box(left, bottom, right - left, top - bottom), soil)


def _draw_cuts(page: Canvas, spot: _Spot) -> None:
    """Where to cut, and how far the foot of a long label is stuck into the soil."""
    whole, soil = spot.whole, spot.soil
    page.setLineWidth(0.18 * mm)
    page.rect(whole.left, whole.bottom, whole.width, whole.height)
    if soil is not None:
        page.setLineWidth(0.35 * mm)
        page.line(soil.left, soil.bottom, soil.left, soil.top)
        draw_fitted(
            page, _("in the soil"), (soil.left + 6, soil.bottom + soil.height / 2 - 3), soil.width - 12, FACE, 9
        )


def _draw_words(page: Canvas, label: LabelWords, box: _Box, sizes: _Sizes) -> None:
    """The letter at the left, the crop beside it, below that the lines, in two columns if wide."""
    letter, columns, size = sizes.letter, sizes.columns, sizes.lines
    page.setFont(BOLD, letter.size)
    base = box.bottom + (box.height - _CAPITAL * letter.size) / 2
    page.drawString(box.left + _BEFORE * letter.size, base, label.letter)
    room = _Box(box.left + letter.column, box.bottom, box.width - letter.column, box.height)
    crop, crop_size = _crop_lines(label.crop, room, -(-len(label.lines) // columns), sizes.crop)
    pitch = _pitch(room, columns)
    count, _own = _lines(label.lines, columns, pitch - _APART, room.height - len(crop) * crop_size * _LEADING)
    down = -(-count // columns)
    y = room.top - max(0.0, room.height - sizes.used) / 2
    page.setFont(BOLD, crop_size)
    for words in crop:
        page.drawString(room.left, y - _ASCENT * crop_size, words)
        y -= crop_size * _LEADING
    for number, words in enumerate(label.lines[:count]):
        column, row = divmod(number, down)
        corner = room.left + column * pitch, y - row * size * _LEADING - _ASCENT * size
        draw_fitted(page, words, corner, pitch - _APART, BOLD if number == 0 else FACE, size)


def _crop_lines(name: str, room: _Box, below: int, largest: int = _LARGEST_CROP) -> tuple[Sequence[str], int]:
    """The crop's name as large as it fits: on one line, or on two where there is the height; cut below 12 pt.

    So many lines are to stand below it.
    """
    largest = max(_LEAST_CROP, min(largest, int(room.height / (below + 1))))
    two = int((room.height - below * _LEAST * _LEADING) / 2 / _LEADING)
    for most, highest in ((1, largest), (2, min(largest, two))):
        for size in range(highest, _LEAST_CROP - 1, -1):
            found = broken(name, BOLD, size, room.width)
            if len(found) <= most and not any(line.endswith("…") for line in found):
                return found, size
    first, *others = broken(name, BOLD, _LEAST_CROP, room.width)
    if two < _LEAST_CROP or not others:
        return [fitted(name, BOLD, _LEAST_CROP, room.width)], _LEAST_CROP
    return [first, fitted(" ".join(others), BOLD, _LEAST_CROP, room.width)], _LEAST_CROP


def _lines(lines: Sequence[str], columns: int, width: float, height: float) -> tuple[int, int]:
    """How many lines have room, and the one size of all those that need not be cut."""
    for kept in range(len(lines), 0, -1):
        highest = min(_LARGEST, int(height / _LEADING / -(-kept // columns)))
        widths = [
            pdfmetrics.stringWidth(words, BOLD if number == 0 else FACE, 1)
            for number, words in enumerate(lines[:kept])
        ]
        whole = [wide for wide in widths if wide * _LEAST <= width]
        if highest >= _LEAST:
            return kept, max(_LEAST, min(highest, int(width / max(whole, default=1.0))))
    return 0, _LEAST


def _margin(paper: Paper, on_sheet: Sequence[Cell]) -> float:
    """Points below the lowest label of a sheet."""
    return _points(_PAPERS[paper][1] - max(cell.top + cell.height for cell in on_sheet))


def _about(page: Canvas, said: About) -> tuple[str, ...]:
    """How to print a page, what stands for letters that it lacks, and of which plan it is."""
    note = (_("{sign} stands for a sign without a letter").format(sign=MISSING),) if page.lacks_letters else ()
    return (_("print at 100 %, not fitted to the page"), *note, *said.said)


def _draw_foot(book: Book, said: About, margin: float) -> None:
    """What a page says of its plan, below the labels."""
    page = book.canvas
    base, right = max(_PAGE_EDGE, margin / 2 - 2), page._pagesize[0] - 10 * mm
    words = " · ".join(_about(page, said))
    page.setFont(FACE, _LEAST)
    page.drawString(10 * mm, base, fitted(words, FACE, _LEAST, right - 10 * mm - 80))
    book.number_page(right, base, _LEAST)


def _draw_slip(book: Book, said: About, box: _Box) -> None:
    """The same on a label, the plan's name and its version first, the page's number in its last line."""
    page = book.canvas
    lines = [*reversed(said.said), *_about(page, said)[: -len(said.said)]]
    pitch = min(14.0, box.height / (len(lines) + 1))
    size = max(_LEAST, min(11, int(pitch / 1.2)))
    kept = lines[: max(1, int(box.height / (size * 1.2)) - 1)]
    y = box.top - size
    for number, words in enumerate(kept):
        draw_fitted(page, words, (box.left, y - number * size * 1.2), box.width, BOLD if number == 0 else FACE, size)
    book.number_page(box.left + box.width, box.bottom + 2, _LEAST)
