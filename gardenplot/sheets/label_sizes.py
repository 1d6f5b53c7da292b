"""Sizes of labels: sheets of labels by their measures, labels cut from plain paper, and sizes of the grower's own.

The sizes are common ones of label sheets, from memory, no source: width, height, how many lie on a sheet, and the
gaps between them. Margins follow from that, since the labels lie in the middle of their sheet.
"""

import re

from attrs import frozen

from gardenplot.errors import LengthError, PlanError
from gardenplot.units import INCH, MM, parse_length
from gardenplot.words import _

Sides = tuple[int, int]
"""Width and height in nm, upright."""
A4: Sides = (210 * MM, 297 * MM)
"""ISO 216."""
LETTER: Sides = (17 * INCH // 2, 11 * INCH)
"""ANSI/ASME Y14.1, A: 8 1/2 x 11 in."""
_PAPER_NAMES = {A4: "A4", LETTER: "Letter"}
_LEAST = 10 * MM
"""The least side of a label: one line of words has room, but no more."""
_SIDE_MARGIN, _END_MARGIN = 5 * MM, 10 * MM
"""What is left at the sides, and at top and bottom, of plain paper that labels are cut from."""
_MOST = 50
"""Labels in a row or column of a sheet."""


@frozen
class LabelSize:
    """A label's width and height, and how many lie on which paper, with the gaps between them, all in nm.

    Without a paper they are cut from plain paper of any size, as many as it gives. Without margins they lie in the
    middle of the sheet.
    """

    name: str
    width: int
    height: int
    paper: Sides | None = None
    columns: int = 1
    rows: int = 1
    gaps: tuple[int, int] = (0, 0)
    margins: tuple[int, int] | None = None

    @property
    def is_cut(self) -> bool:
        """Whether it is cut from plain paper."""
        return self.paper is None


@frozen
class Cell:
    """Where a label lies on its sheet: its upper left corner from that of the sheet, and its sides, in nm."""

    left: int
    top: int
    width: int
    height: int


def _on(name: str, width: int, height: int, paper: Sides, across: int, down: int, gap: int = 0) -> LabelSize:
    return LabelSize(name, width, height, paper, across, down, (gap, 0))


def _cut(name: str, width: int, height: int) -> LabelSize:
    return LabelSize(name, width, height)


_TENTH, _SIXTEENTH = MM // 10, INCH // 16
LABEL_SIZES = (
    _cut("25 x 200 mm, cut from plain paper", 25 * MM, 200 * MM),
    _cut("20 x 150 mm, cut from plain paper", 20 * MM, 150 * MM),
    _cut("1 x 7 1/2 in, cut from plain paper", INCH, 15 * INCH // 2),
    _on("70 x 37 mm, 3 x 8 on A4", 70 * MM, 37 * MM, A4, 3, 8),
    _on("63.5 x 38.1 mm, 3 x 7 on A4", 635 * _TENTH, 381 * _TENTH, A4, 3, 7, 25 * _TENTH),
    _on("99.1 x 67.7 mm, 2 x 4 on A4", 991 * _TENTH, 677 * _TENTH, A4, 2, 4, 25 * _TENTH),
    _on("105 x 57 mm, 2 x 5 on A4", 105 * MM, 57 * MM, A4, 2, 5),
    _on("2 5/8 x 1 in, 3 x 10 on Letter", 42 * _SIXTEENTH, INCH, LETTER, 3, 10, 2 * _SIXTEENTH),
    _on("4 x 2 in, 2 x 5 on Letter", 4 * INCH, 2 * INCH, LETTER, 2, 5, 3 * _SIXTEENTH),
)
"""The sizes to choose from: width x height, how many beside and below one another."""
STAKES = LABEL_SIZES[0]
"""What is used where nobody chose."""


def cells(size: LabelSize, paper: Sides) -> tuple[Cell, ...]:
    """Where the labels lie on a sheet, row by row; raises PlanError for another paper, or for one that is too small.

    The longer side of what is cut from plain paper lies across it.
    """
    if size.paper not in (None, paper):
        raise PlanError(
            _("labels of {size} do not come on {paper}: choose that paper, or other labels").format(
                size=size.name, paper=_PAPER_NAMES[paper]
            )
        )
    sides = size.width, size.height
    count = size.columns, size.rows
    if size.is_cut:
        sides = max(sides), min(sides)
        room = paper[0] - 2 * _SIDE_MARGIN, paper[1] - 2 * _END_MARGIN
        count = room[0] // sides[0], room[1] // sides[1]
    taken = tuple(
        number * side + max(0, number - 1) * gap for number, side, gap in zip(count, sides, size.gaps, strict=True)
    )
    first = size.margins or tuple((whole - part) // 2 for whole, part in zip(paper, taken, strict=True))
    if (
        min(count) < 1
        or min(first) < 0
        or any(at + part > whole for at, part, whole in zip(first, taken, paper, strict=True))
    ):
        raise PlanError(_("labels of {size} do not fit on {paper}").format(size=size.name, paper=_PAPER_NAMES[paper]))
    steps = [side + gap for side, gap in zip(sides, size.gaps, strict=True)]
    return tuple(
        Cell(first[0] + column * steps[0], first[1] + row * steps[1], *sides)
        for row in range(count[1])
        for column in range(count[0])
    )


_BY = r"\s*[x×]\s*"
_OWN = re.compile(
    rf"(?P<width>[^,]+?){_BY}(?P<height>[^,x×]+)"
    rf"(?:,\s*(?P<columns>\d+){_BY}(?P<rows>\d+)\s+on\s+(?P<paper>a4|letter)"
    rf"(?:,\s*margins\s+(?P<left>[^,]+?){_BY}(?P<top>[^,x×]+))?"
    rf"(?:,\s*gaps\s+(?P<across>[^,]+?){_BY}(?P<down>[^,x×]+))?)?",
    re.IGNORECASE,
)
_UNIT = re.compile(r"(mm|cm|in)\s*$", re.IGNORECASE)


def label_size(text: str) -> LabelSize:
    """A size by its name, or one of the grower's own: width x height, columns x rows on A4 or Letter, margins, gaps.

    "50 x 25 mm, 4 x 10 on A4, margins 5 mm x 8 mm, gaps 0 mm x 2 mm"; without columns and rows they are cut from
    plain paper, without margins they lie in the middle. Raises PlanError for text that is no
    size, and where they do not fit.
    """
    text = text.strip()
    known = next((size for size in LABEL_SIZES if size.name.casefold() == text.casefold()), None)
    if known is not None:
        return known
    found = _OWN.fullmatch(text)
    if found is None:
        raise PlanError(_SHAPE.format(typed=text))
    try:
        size = _own(text, found)
    except LengthError as error:
        raise PlanError(_SHAPE.format(typed=text)) from error
    if min(size.width, size.height) < _LEAST or max(size.columns, size.rows) > _MOST:
        raise PlanError(
            _("labels of {size}: a side is 1 cm at least, and at most {most} lie beside one another").format(
                size=text, most=_MOST
            )
        )
    cells(size, size.paper or A4)
    return size


_SHAPE = _(
    "“{typed}” is no size of labels: write width x height, then columns x rows, like 70 x 37 mm, 3 x 8 on A4, "
    "and perhaps margins 5 mm x 8 mm, gaps 2 mm x 0 mm"
)


def _own(text: str, found: re.Match[str]) -> LabelSize:
    width, height = _pair(found, "width", "height")
    if found["paper"] is None:
        return LabelSize(text, width, height)
    margins = _pair(found, "left", "top") if found["left"] else None
    gaps = _pair(found, "across", "down") if found["across"] else (0, 0)
    paper = A4 if found["paper"].lower() == "a4" else LETTER
    return LabelSize(text, width, height, paper, int(found["columns"]), int(found["rows"]), gaps, margins)


def _pair(found: re.Match[str], one: str, other: str) -> tuple[int, int]:
    """Two lengths in nm; a first one without a unit has that of the second."""
    unit = _UNIT.search(found[other])
    bare = unit[1].lower() if unit else None
    return parse_length(found[one], bare=bare).nm, parse_length(found[other]).nm
