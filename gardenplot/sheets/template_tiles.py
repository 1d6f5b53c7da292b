"""A template of a dibble pattern at true size, in tiles, one on a page: cut lines, plants to bore, edges to glue."""

from itertools import pairwise

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.dibble import Lattice, Template, Way
from gardenplot.drawing.joins import cuts
from gardenplot.sheets.board_page import FOOT, HEAD, SIDE, TAB, UPRIGHT_BAR, draw_glue, draw_join
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, POINT_PER_MM, SIZES, Paper, fitted
from gardenplot.units import MM
from gardenplot.words import _

CROSS: float = 10 * mm
"""Points that the arms of a cross at a plant are long, where plants leave so much room."""
_RADIUS: float = 3 * mm
_SHORT: float = 75 * mm
_FLAG: float = 110 * mm
_PAD: float = 3 * mm
_BESIDE = 9


@frozen
class Tile:
    """A tile of a template in nm of it, its number and its row and column from 1, and the numbers of its joins.

    Joins are those at its left, top, right and bottom; 0 where there is none.
    """

    left: int
    top: int
    right: int
    bottom: int
    number: int
    row: int
    column: int
    joins: tuple[int, int, int, int]


@frozen
class Tiled:
    """A template cut into tiles for pages that lie or stand upright."""

    template: Template
    upright: bool
    tiles: tuple[Tile, ...]
    rows: int
    columns: int


@frozen
class Words:
    """The words on a template: whose and what it is, how it is laid and moved on, of which plan and blocks it is."""

    name: str
    title: str
    use: tuple[str, str, str]
    about: str


def tiled(lattice: Lattice, paper: Paper) -> Tiled:
    """The template in the fewest tiles, of pages lying or upright; among these the one that holds the most plants."""
    both = [_tiled(lattice, paper, upright=upright) for upright in (False, True)]
    return min(both, key=lambda one: (len(one.tiles), -len(one.template.spots)))


def _tiled(lattice: Lattice, paper: Paper, *, upright: bool) -> Tiled:
    width, height = SIZES[paper]
    if upright:
        width, height = height, width
    room = width - 2 * SIDE - UPRIGHT_BAR - TAB, height - MARGIN - HEAD - FOOT - TAB
    most = int(room[0] / POINT_PER_MM) * MM, int(room[1] / POINT_PER_MM) * MM
    template = lattice.template(most)
    left, top, right, bottom = template.box
    across = cuts(left, right, tuple(spot.x for spot in template.spots), most[0])
    down = cuts(top, bottom, tuple(spot.y for spot in template.spots), most[1])
    return Tiled(template, upright, _tiles(across, down), len(down) - 1, len(across) - 1)


def _tiles(across: tuple[int, ...], down: tuple[int, ...]) -> tuple[Tile, ...]:
    """Tiles row by row; joins are numbered in the same order, those at the right of a tile before those below it."""
    rows, columns = len(down) - 1, len(across) - 1
    joins: dict[tuple[int, int, bool], int] = {}
    for row in range(rows):
        for column in range(columns):
            if column + 1 < columns:
                joins[row, column, False] = len(joins) + 1
            if row + 1 < rows:
                joins[row, column, True] = len(joins) + 1
    return tuple(
        Tile(
            left, top, right, bottom, row * columns + column + 1, row + 1, column + 1,
            (
                joins.get((row, column - 1, False), 0), joins.get((row - 1, column, True), 0),
                joins.get((row, column, False), 0), joins.get((row, column, True), 0),
            ),
        )
        for row, (top, bottom) in enumerate(pairwise(down))
        for column, (left, right) in enumerate(pairwise(across))
    )  # fmt: skip


@frozen
class _Place:
    """A tile on its page: the points of its upper left corner."""

    tile: Tile
    left: float
    top: float

    def x(self, at: int) -> float:
        """Where a place along the bed lies on the page."""
        return self.left + (at - self.tile.left) / MM * POINT_PER_MM

    def y(self, at: int) -> float:
        """Where a place across the bed lies on the page."""
        return self.top - (at - self.tile.top) / MM * POINT_PER_MM

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top in points, without what is glued."""
        return self.left, self.y(self.tile.bottom), self.x(self.tile.right), self.top


def draw_tile(page: Canvas, whole: Tiled, tile: Tile, words: Words, top: float) -> None:
    """Draw a tile below a height."""
    place = _Place(tile, SIDE, top)
    _draw_frame(page, place, whole)
    _draw_lines(page, place, whole.template)
    arm = _arm(whole.template)
    for spot in whole.template.spots:
        if tile.left <= spot.x <= tile.right and tile.top <= spot.y <= tile.bottom:
            _draw_spot(page, (place.x(spot.x), place.y(spot.y)), arm)
    _draw_labels(page, place, whole.template)
    _draw_joins(page, place, whole)
    if tile.number == 1:
        _draw_words(page, place, whole, words)


def _draw_frame(page: Canvas, place: _Place, whole: Tiled) -> None:
    left, bottom, right, top = place.box
    end, low = right, bottom
    if place.tile.joins[2]:
        end += TAB
        draw_glue(page, (right, bottom, end, top))
    elif _has_flag(place.tile, whole):
        end += _FLAG
    if place.tile.joins[3]:
        low -= TAB
        draw_glue(page, (left, low, end if place.tile.joins[2] else right, bottom))
    page.setLineWidth(0.35 * mm)
    page.rect(left, low, end - left, top - low)
    page.setLineWidth(0.5 * mm)
    if end > right:
        page.line(right, low, right, top)
    if low < bottom:
        page.line(left, bottom, end, bottom)


def _has_flag(tile: Tile, whole: Tiled) -> bool:
    """Whether a template is too narrow for its own words."""
    return whole.columns == 1 and (tile.right - tile.left) / MM * POINT_PER_MM < _SHORT


def _draw_lines(page: Canvas, place: _Place, template: Template) -> None:
    """The 0 line and where it comes next, thick; rows, and sides of cells, thin, from edge to edge."""
    left, bottom, right, top = place.box
    tile = place.tile
    for at in template.upright:
        if tile.left < at < tile.right:
            is_end = at in (0, template.repeat)
            page.setLineWidth((0.5 if is_end else 0.35) * mm)
            page.line(place.x(at), bottom, place.x(at), top if is_end else min(top, place.y(template.level[0])))
    page.setLineWidth(0.35 * mm)
    for at in template.level:
        if tile.top < at < tile.bottom:
            page.line(left, place.y(at), right, place.y(at))


def _arm(template: Template) -> float:
    """Points that the arms of a cross are long, so that no cross meets the next."""
    xs = sorted({spot.x for spot in template.spots})
    ys = sorted({spot.y for spot in template.spots})
    steps = [after - one for line in (xs, ys) for one, after in pairwise(line)]
    return min(CROSS, min(steps, default=MM * 100) / MM * POINT_PER_MM * 0.8)


def _draw_spot(page: Canvas, at: tuple[float, float], arm: float) -> None:
    """A cross with a circle round it: the middle is bored."""
    x, y = at
    page.setLineWidth(0.5 * mm)
    page.line(x - arm / 2, y, x + arm / 2, y)
    page.line(x, y - arm / 2, x, y + arm / 2)
    page.circle(x, y, min(_RADIUS, 0.36 * arm))


def _draw_joins(page: Canvas, place: _Place, whole: Tiled) -> None:
    """The number of each join, on the edge that is glued and inside the edge that is cut."""
    left, bottom, right, top = place.box
    joins, (level, upright) = place.tile.joins, _clear(place, whole.template)
    if joins[0]:
        draw_join(page, (left + 14, level), joins[0])
    if joins[1]:
        draw_join(page, (upright, top - 20), joins[1])
    if joins[2]:
        draw_join(page, (right + TAB / 2, level), joins[2])
    if joins[3]:
        draw_join(page, (upright, bottom - TAB / 2), joins[3])


def _clear(place: _Place, template: Template) -> tuple[float, float]:
    """A height and a place across the page in the widest gap between plants and lines of a tile."""
    left, bottom, right, top = place.box
    ys = [place.y(at) for at in {*template.level, *(spot.y for spot in template.spots)}]
    xs = [place.x(at) for at in {*template.upright, *(spot.x for spot in template.spots)}]
    return _widest(ys, bottom, top), _widest(xs, left, right)


def _widest(taken: list[float], low: float, high: float) -> float:
    """The middle of the widest gap from one end to the other."""
    ends = [low, *sorted(at for at in taken if low < at < high), high]
    one, other = max(pairwise(ends), key=lambda gap: round(gap[1] - gap[0], 3))
    return (one + other) / 2


def _draw_words(page: Canvas, place: _Place, whole: Tiled, words: Words) -> None:
    """What the template is and how it is laid, above its first row or on a flag at its end."""
    left, _bottom, right, top = place.box
    begin, end = left + _PAD, right - _PAD
    if _has_flag(place.tile, whole):
        begin, end = right + _PAD, right + _FLAG - _PAD
    elif place.tile.left < 0 <= place.tile.right:
        begin = place.x(0) + _PAD
    if place.tile.left <= whole.template.repeat < place.tile.right:
        end = place.x(whole.template.repeat) - _PAD
    lines = (
        (BOLD, 12, words.name, ""),
        (BOLD, 10, words.title, ""),
        (BOLD, 9, f"{_('← HEAD')}   {words.use[0]}", _("FOOT →")),
        *((FACE, 9, said, "") for said in (*words.use[1:], words.about)),
    )
    y = top - 13
    for face, size, one, other in lines:
        page.setFont(face, size)
        page.drawRightString(end, y, other)
        room = end - begin - pdfmetrics.stringWidth(other, face, size) - (8 if other else 0)
        page.drawString(begin, y, fitted(one, face, size, room))
        y -= 11


def _draw_labels(page: Canvas, place: _Place, template: Template) -> None:
    """At the 0 line which rows are which, and at the end line what comes there, where no plant is near.

    Of cells and of rows across the bed these lines are told once, above the first.
    """
    right = place.box[2]
    page.setFont(BOLD, 10)
    for number, at in enumerate(template.level):
        if not place.tile.top <= at - 10 * MM <= place.tile.bottom or (number and template.way is not Way.ALONG):
            continue
        words = f"0   {_('row {number}').format(number=number + 1)}" if template.way is Way.ALONG else "0"
        if place.tile.left <= 0 <= place.tile.right and _is_free(template, at, 0, 30 * MM):
            page.drawString(place.x(0) + 4, place.y(at) + 5, words)
        free = _is_free(template, at, template.repeat - 40 * MM, template.repeat)
        if place.tile.left <= template.repeat <= place.tile.right and free:
            page.drawRightString(min(right, place.x(template.repeat)) - 4, place.y(at) + 5, _("next 0 here"))


def _is_free(template: Template, level: int, one: int, other: int) -> bool:
    """Whether no plant stands near to a stretch above a row line."""
    return not any(
        one - 6 * MM < spot.x < other + 6 * MM and -6 * MM < level - spot.y < 12 * MM for spot in template.spots
    )
