"""Spacing strips and templates read back from a PDF: cut out and glued as a grower would, by what is on the paper.

A piece is a box 38 mm high, a tile the only box of its page; edges to glue are 12 mm wide, a flag 155 mm. Lengths in
mm from the end or the corner that is cut.
"""

import re
from itertools import accumulate

from attrs import frozen

from tests.sheets.pdf_pages import POINT_PER_MM, Box, Page, Words

EXACT = 0.01
HEIGHT, TAB, FLAG = 38.0, 12.0, 155.0


@frozen
class Glued:
    """A strip glued from its pieces: its length, its marks at both edges, and lines across it that are no joins."""

    number: int
    title: str
    length: float
    upper: tuple[float, ...]
    lower: tuple[float, ...]
    lines: tuple[float, ...]
    joins: tuple[float, ...]
    words: tuple[str, ...]

    @property
    def zero(self) -> float:
        """Where its 0 is: its end, or a line across it that is near to that."""
        return next((at for at in self.lines if at < 25), 0.0)

    @property
    def repeat(self) -> float:
        """From its 0 to its end, or to the line near to that."""
        return (
            next((at for at in reversed(self.lines) if at > self.length - 25 and at > self.zero), self.length)
            - self.zero
        )


@frozen
class _Piece:
    number: int
    pieces: int
    strip: int
    title: str
    width: float
    upper: tuple[float, ...]
    lower: tuple[float, ...]
    lines: tuple[float, ...]
    words: tuple[str, ...]


def strips_in(pages: tuple[Page, ...]) -> dict[int, Glued]:
    """All strips of some pages by their number."""
    found: dict[int, list[_Piece]] = {}
    for page in pages:
        for piece in _pieces(page):
            found.setdefault(piece.strip, []).append(piece)
    return {number: _glued(pieces) for number, pieces in found.items()}


def _glued(pieces: list[_Piece]) -> Glued:
    assert [piece.number for piece in pieces] == list(range(1, pieces[0].pieces + 1))
    starts = [0.0, *accumulate(piece.width for piece in pieces)]

    def whole(part: str) -> tuple[float, ...]:
        return tuple(
            start + at for start, piece in zip(starts, pieces, strict=False) for at in sorted(getattr(piece, part))
        )

    words = tuple(word for piece in pieces for word in piece.words)
    return Glued(
        pieces[0].strip, pieces[0].title, starts[-1], whole("upper"), whole("lower"), whole("lines"),
        tuple(starts[1:-1]), words,
    )  # fmt: skip


def _pieces(page: Page) -> list[_Piece]:
    boxes = {path.box for path in page.paths if path.closed and abs(path.size[1] / POINT_PER_MM - HEIGHT) < EXACT}
    return [_piece(page, box) for box in sorted(boxes, key=lambda box: -box[3])]


def _piece(page: Page, box: Box) -> _Piece:
    left, bottom, right, top = box
    words = _inside(page, box)
    which = next(found for word in words if (found := re.fullmatch(r"piece (\d+) of (\d+)", word.text)))
    number, pieces = int(which[1]), int(which[2])
    title = next(word.text for word in words if re.match(r"\d+ · ", word.text))
    upright = [line for line in _upright(page) if left - EXACT <= line[0] <= right + EXACT]
    across = [(line[0] - left) / POINT_PER_MM for line in upright if _is(line, bottom, top)]
    width = (right - left) / POINT_PER_MM
    glue = TAB if number < pieces else FLAG if any(abs(width - FLAG - at) < EXACT for at in across) else 0.0
    width -= glue
    if glue:
        assert any(abs(at - width) < EXACT for at in across)
    short = (left, right, bottom, top)
    return _Piece(
        number, pieces, int(title.split(" ")[0]), title, width, _marks(upright, short, upper=True),
        _marks(upright, short, upper=False),
        tuple(at for at in across if EXACT < at < width - EXACT), tuple(word.text for word in words),
    )  # fmt: skip


def _marks(upright: list[Box], sides: Box, *, upper: bool) -> tuple[float, ...]:
    """Marks that reach 6 mm in from an edge; each counts once, however often it is drawn."""
    left, _right, bottom, top = sides
    ends = (top - 6 * POINT_PER_MM, top) if upper else (bottom, bottom + 6 * POINT_PER_MM)
    return tuple({round((line[0] - left) / POINT_PER_MM, 4) for line in upright if _is(line, *ends)})


def _is(line: Box, low: float, high: float) -> bool:
    return abs(line[1] - low) < 0.01 and abs(line[3] - high) < 0.01


def _upright(page: Page) -> list[Box]:
    return [path.box for path in page.paths if len(path.corners) == 2 and path.size[0] < 0.001]


def _level(page: Page) -> list[Box]:
    return [path.box for path in page.paths if len(path.corners) == 2 and path.size[1] < 0.001]


def _inside(page: Page, box: Box) -> list[Words]:
    left, bottom, right, top = box
    return [
        one for one in page.words
        if left <= one.box[0] and one.box[2] <= right and bottom <= one.box[1] and one.box[3] <= top
    ]  # fmt: skip


@frozen
class Template:
    """A template glued from its tiles: its size, its plants, and the lines that go all the way along or across."""

    number: int
    size: tuple[float, float]
    spots: tuple[tuple[float, float], ...]
    upright: tuple[float, ...]
    level: tuple[float, ...]
    tiles: int

    @property
    def zero(self) -> float:
        """Where its 0 is along the bed: its end, or the line near to that."""
        return next((at for at in self.upright if at < 25), 0.0)

    @property
    def repeat(self) -> float:
        """From its 0 to its end, or to the line near to that."""
        ends = [at for at in self.upright if self.size[0] - 25 < at and at > self.zero]
        return (ends[-1] if ends else self.size[0]) - self.zero


@frozen
class _Tile:
    row: int
    column: int
    rows: int
    columns: int
    page: Page
    box: Box


def templates_in(pages: tuple[Page, ...]) -> dict[int, Template]:
    """All templates of some pages by their number."""
    found: dict[int, list[_Tile]] = {}
    for page in pages:
        words = [word.text for word in page.words]
        which = [
            r
            for word in words
            if (r := re.fullmatch(r"tile .*: (\d+) of (\d+) from the top, (\d+) of (\d+) from the left", word))
        ]
        if which:
            title = next(word for word in words if word.startswith("Template"))
            box = max((path.box for path in page.paths if path.closed), key=lambda box: box[2] - box[0])
            row, rows, column, columns = map(int, which[0].groups())
            found.setdefault(int(title.split(" · ")[0].split(" ")[-1]), []).append(
                _Tile(row, column, rows, columns, page, box)
            )
    return {number: _whole(number, tiles) for number, tiles in found.items()}


def _whole(number: int, tiles: list[_Tile]) -> Template:
    rows, columns = tiles[0].rows, tiles[0].columns
    assert [(tile.row, tile.column) for tile in tiles] == [
        (row, column) for row in range(1, rows + 1) for column in range(1, columns + 1)
    ]
    widths = [_size(tile)[0] for tile in tiles if tile.row == 1]
    heights = [_size(tile)[1] for tile in tiles if tile.column == 1]
    lefts, tops = [0.0, *accumulate(widths)], [0.0, *accumulate(heights)]
    spots, upright, level = [], set(), set()
    for tile in tiles:
        assert abs(_size(tile)[0] - widths[tile.column - 1]) < EXACT
        assert abs(_size(tile)[1] - heights[tile.row - 1]) < EXACT
        left, top = lefts[tile.column - 1], tops[tile.row - 1]
        spots += [(left + x, top + y) for x, y in _spots(tile)]
        width, height = _size(tile)
        x0, y0 = tile.box[0], tile.box[3]
        for line in _upright(tile.page):
            at, high = (line[0] - x0) / POINT_PER_MM, (line[3] - line[1]) / POINT_PER_MM
            if abs(high - height) < EXACT < at < width - EXACT:
                upright.add(round(left + at, 3))
        for line in _level(tile.page):
            at, wide = (y0 - line[1]) / POINT_PER_MM, (line[2] - line[0]) / POINT_PER_MM
            if abs(wide - width) < EXACT < at < height - EXACT:
                level.add(round(top + at, 3))
    return Template(
        number, (lefts[-1], tops[-1]), tuple(sorted(spots)), tuple(sorted(upright)), tuple(sorted(level)), len(tiles)
    )


def _size(tile: _Tile) -> tuple[float, float]:
    left, bottom, right, top = tile.box
    width = (right - left) / POINT_PER_MM - (TAB if tile.column < tile.columns else 0)
    if tile.columns == 1 and any(
        _is(line, bottom, top) and left + 1 < line[0] < right - 300 for line in _upright(tile.page)
    ):
        width -= 110.0
    return width, (top - bottom) / POINT_PER_MM - (TAB if tile.row < tile.rows else 0)


def _spots(tile: _Tile) -> list[tuple[float, float]]:
    """Where two lines of one length cross in their middles, inside the tile."""
    left, bottom, right, top = tile.box
    levels = {
        (round((line[0] + line[2]) / 2, 2), round(line[1], 2)): line[2] - line[0]
        for line in _level(tile.page)
        if left < line[0] and line[2] < right and line[2] - line[0] < 11 * POINT_PER_MM
    }
    found = []
    for line in _upright(tile.page):
        middle = round(line[0], 2), round((line[1] + line[3]) / 2, 2)
        near = next(
            (long for at, long in levels.items() if max(abs(at[0] - middle[0]), abs(at[1] - middle[1])) < 0.02), 0
        )
        if bottom < line[1] and line[3] < top and abs(near - (line[3] - line[1])) < 0.01:
            found.append(((line[0] - left) / POINT_PER_MM, (top - (line[1] + line[3]) / 2) / POINT_PER_MM))
    return found
