"""The stake table in walking order: figures to measure by of 14 points and up, a box to tick, room for the actual.

The last plant before a stake and the first one behind it have columns of their own, one for both where no stake has
both. Words are wrapped or cut rather than a figure made small; where figures leave too little room for them, rows by
plants stand among them.
"""

from collections.abc import Iterable

from attrs import evolve, field, frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.stakes import Stake
from gardenplot.sheets.paper import BOLD, FACE, fitted
from gardenplot.sheets.stake_words import Line, lines_of, size_of, words_of
from gardenplot.units import Units
from gardenplot.units.figures import grouped, tape
from gardenplot.words import _

_HEADING = 15.0
_LOWEST, _HIGHEST = 21.0, 36.0
_CLOSE = 18.0
"""Points of the lowest row of one line in a table that is to be close."""
MOST_STAKES = 18
_GREY = 0.93
_TAPE, _FIGURE = 17, 14
"""Sizes in points of the tape readings, and of all else that is measured."""
_PITCH = 15.5
"""Points from one figure to the next of the same stake and column."""
_LEAST_WORDS = 150.0
"""Points of width that words have at least where rows by plants have columns of their own."""
_AROUND = 4.0
"""Points that a column keeps free on both sides."""
_ACTUAL, _SPARE = 56.0, (44.0, 32.0, 20.0, 8.0)
"""Points of the column that is written into at least, and those that it takes besides where the words leave them."""
_INDENT = 10.0
"""Points that part rows by plants from the figures before them."""
_HEADINGS = {
    "stake": _("stake"),
    "tape": _("tape"),
    "here": _("here"),
    "last": _("last plant"),
    "first": _("first plant"),
    "plant": _("plant at"),
    "rows": _("rows × plants"),
    "plants": _("plants"),
    "set": _("set"),
    "actual": _("actual"),
}
_READINGS = {"tape", "plant"}
_RIGHT, _CENTRE = {"tape", "last", "first", "plant", "plants"}, {"stake", "set"}

_Column = tuple[float, float]
"""Left and right in points from the left edge of the table."""


@frozen
class StakeTable:
    """The stakes that are left to print, in the columns in which all stakes of their bed are set.

    Where they are `close`, rows of one line are lower, so that the bed has more room on the page.
    """

    rows: tuple[Stake, ...]
    units: Units
    columns: dict[str, _Column] = field(eq=False)
    width: float
    close: bool = False

    @property
    def height(self) -> float:
        """The least height in points of the stakes, or of the most that a page takes."""
        return _HEADING + _LOWEST * sum(map(self._share, self.rows[:MOST_STAKES]))

    def fitting(self, room: float) -> int:
        """How many of the stakes fit into so many points of height, 18 at most and one at least."""
        taken, lines = 0, 0.0
        for stake in self.rows[:MOST_STAKES]:
            lines += self._share(stake)
            if taken and _HEADING + lines * _LOWEST > room:
                break
            taken += 1
        return taken

    def first(self, count: int) -> "StakeTable":
        """The first stakes alone."""
        return evolve(self, rows=self.rows[:count])

    def closer(self) -> "StakeTable":
        """The same with lower rows where these have one line."""
        return evolve(self, close=True)

    def without(self, count: int) -> "StakeTable":
        """What is left without the first stakes."""
        return evolve(self, rows=self.rows[count:])

    def draw(self, page: Canvas, corner: tuple[float, float], room: float) -> float:
        """Draw the table with its upper left corner at a point of the page; gives the y in points of its end."""
        if not self.rows:
            return corner[1]
        left, top = corner
        share = max(_LOWEST, min(_HIGHEST, (room - _HEADING) / sum(map(self._share, self.rows))))
        page.setFont(FACE, 9)
        unit = tape(0, self.units).unit
        for name in self.columns:
            # Else metres here and centimetres across the bed would stand on one sheet without a word.
            said = f"{_HEADINGS[name]}, {unit}" if unit and name in _READINGS else _HEADINGS[name]
            self._put(page, name, said, left, top - 10)
        page.setLineWidth(0.35 * mm)
        bottom = top - _HEADING
        page.line(left, bottom, left + self.width, bottom)
        for number, stake in enumerate(self.rows):
            height = share * self._share(stake)
            bottom -= height
            if number % 2 == 0:
                page.setFillGray(_GREY)
                page.rect(left, bottom, self.width, height, stroke=0, fill=1)
                page.setFillGray(0)
            self._row(page, stake, left, bottom + height / 2, height)
        page.line(left, bottom, left + self.width, bottom)
        return bottom

    def _share(self, stake: Stake) -> float:
        """The height of a stake's row, in rows of two lines."""
        if _is_crowded(stake):
            return max(1.0, (len(stake.notes) * _PITCH + 3) / _LOWEST)
        lines, least = len(self._lines(stake)), _CLOSE / _LOWEST if self.close else 1.0
        return max(least if lines == 1 else 1.0, lines / 2 + 0.2 * (lines > 2))

    def _lines(self, stake: Stake) -> list[Line]:
        left, right = self.columns["here"]
        return lines_of(stake, right - left, counts="rows" not in self.columns, apart=_is_crowded(stake))

    def _put(self, page: Canvas, name: str, words: str, left: float, y: float) -> None:
        start, end = self.columns[name]
        if name in _RIGHT:
            page.drawRightString(left + end, y, words)
        elif name in _CENTRE:
            page.drawCentredString(left + (start + end) / 2, y, words)
        else:
            page.drawString(left + start, y, words)

    def _row(self, page: Canvas, stake: Stake, left: float, middle: float, height: float) -> None:
        page.setFont(BOLD, _FIGURE)
        self._put(page, "stake", str(stake.number), left, middle - 5)
        page.setFont(BOLD, _TAPE)
        self._put(page, "tape", tape(stake.at, self.units).number, left, middle - 6)
        self._words(page, stake, left, middle, height)
        self._figures(page, stake, left, middle)
        if "rows" in self.columns:
            start, end = self.columns["rows"]
            _rows(page, stake.rows, (left + start, left + end), middle)
            page.setFont(BOLD, _FIGURE)
            self._put(page, "plants", "" if stake.plants is None else grouped(stake.plants), left, middle - 5)
        page.setLineWidth(0.35 * mm)
        start, end = self.columns["set"]
        page.setFillGray(1)
        page.rect(left + (start + end) / 2 - 7, middle - 7, 14, 14, stroke=1, fill=1)
        page.setFillGray(0)
        start, end = self.columns["actual"]
        page.setLineWidth(0.18 * mm)
        page.line(left + start, middle - 8, left + end, middle - 8)

    def _words(self, page: Canvas, stake: Stake, left: float, middle: float, height: float) -> None:
        start, end = self.columns["here"]
        lines, room = self._lines(stake), end - start
        size = size_of(lines, room, height)
        pitch = _PITCH if _is_crowded(stake) else size + 0.5
        y = middle + pitch * (len(lines) - 1) / 2 - 0.35 * size
        for line in lines:
            line.draw(page, left + start, y, room, size)
            y -= pitch

    def _figures(self, page: Canvas, stake: Stake, left: float, middle: float) -> None:
        """The last plant before a stake and the first one behind it; beside their words where there are several."""
        page.setFont(BOLD, _FIGURE)
        high = _PITCH * (len(stake.notes) - 1) / 2 if _is_crowded(stake) else 0.0
        for place, note in enumerate(stake.notes):
            if note.plant:
                name = "plant" if "plant" in self.columns else "first" if note.begins else "last"
                down = _PITCH * place if _is_crowded(stake) else 0.0
                self._put(page, name, note.plant, left, middle - 5 + high - down)


def stake_table(rows: tuple[Stake, ...], units: Units, width: float) -> StakeTable:
    """The table of a bed's stakes, so many points wide."""
    widths = {
        "stake": 28.0,
        "tape": max(50.0, _widest((tape(stake.at, units).number for stake in rows), _TAPE) + 12),
        "here": 0.0,
        **_plant_widths(rows),
        "rows": min(84.0, max(64.0, _widest((stake.rows for stake in rows), _FIGURE) + 10)) + _INDENT,
        "plants": max(36.0, _widest((grouped(stake.plants or 0) for stake in rows), _FIGURE) + 8),
        "set": 28.0,
        "actual": _ACTUAL,
    }
    if width - sum(widths.values()) < _LEAST_WORDS:
        del widths["rows"], widths["plants"]
    widths["here"] = width - sum(widths.values())
    spare = _spare(rows, widths["here"], counts="rows" not in widths)
    widths["here"] -= spare
    widths["actual"] += spare
    columns, x = dict[str, _Column](), 0.0
    for name, wide in widths.items():
        columns[name] = (x + _AROUND + _INDENT * (name == "rows"), x + wide - _AROUND)
        x += wide
    return StakeTable(rows, units, columns, width)


def _spare(rows: tuple[Stake, ...], here: float, *, counts: bool) -> float:
    """Points of width of the words that serve what is written by hand, often in gloves: no word is lost for it, takes
    more lines than a row has anyway, or is smaller by more than a point."""
    return next((one for one in _SPARE if all(_has_words(stake, here, one, counts=counts) for stake in rows)), 0.0)


def _has_words(stake: Stake, here: float, less: float, *, counts: bool) -> bool:
    """Whether the words beside a stake have room as they are where they have so many points less."""
    rooms = here - 2 * _AROUND, here - 2 * _AROUND - less
    usual, narrow = (lines_of(stake, room, counts=counts, apart=_is_crowded(stake)) for room in rooms)
    size = size_of(narrow, rooms[1], _HIGHEST * 2)
    return (
        words_of(usual) == words_of(narrow)
        and len(narrow) <= max(2, len(usual))
        and size >= size_of(usual, rooms[0], _HIGHEST * 2) - 1
        and all(line.width(size) <= rooms[1] for line in narrow)
    )


def _plant_widths(rows: tuple[Stake, ...]) -> dict[str, float]:
    """The columns of first and last plants: one for each where a stake has both, else one for all, or none."""
    ends = {
        name: _widest((note.plant for stake in rows for note in stake.notes if note.begins is begins), _FIGURE) + 10
        for name, begins in (("last", False), ("first", True))
    }
    if any(len({note.begins for note in stake.notes if note.plant}) > 1 for stake in rows):
        return {name: max(48.0, wide) for name, wide in ends.items()}
    return {"plant": max(ends.values())} if max(ends.values()) > 10 else {}


def _widest(words: Iterable[str], size: int) -> float:
    return max((pdfmetrics.stringWidth(one, BOLD, size) for one in words), default=0.0)


def _is_crowded(stake: Stake) -> bool:
    """Whether a stake has several figures for one column."""
    ends = [note.begins for note in stake.notes if note.plant]
    return len(ends) != len(set(ends))


def _rows(page: Canvas, words: str, column: _Column, middle: float) -> None:
    """Rows by plants, as large as there is room for, on two lines rather than cut short."""
    left, right = column
    room = right - left
    size = next((one for one in (14, 12, 10) if pdfmetrics.stringWidth(words, BOLD, one) <= room), 9)
    lines = [words]
    if pdfmetrics.stringWidth(words, BOLD, size) > room and " + " in words:
        size, (first, last) = 10, words.rsplit(" + ", 1)
        lines = [first, f"+ {last}"]
    page.setFont(BOLD, size)
    for number, line in enumerate(lines):
        page.drawString(left, middle - 5 + 5.5 * (len(lines) - 1) - 11 * number, fitted(line, BOLD, size, room))
