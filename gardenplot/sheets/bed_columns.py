"""Beside the stake table: row offsets of each planting, how to square the bed, what to carry."""

from collections.abc import Callable
from math import isqrt

from attrs import frozen
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import name_of
from gardenplot.drawing.workings import convention
from gardenplot.layout import LaidOut, Layout, kept_for
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Bed, Pattern, Plan
from gardenplot.sheets.paper import BOLD, FACE, fitted
from gardenplot.supplies import raising
from gardenplot.units import CM, INCH, Units
from gardenplot.units.figures import MINUS, offset, tape
from gardenplot.words import _, ngettext

SIDE_WIDTH = 226.0
"""Width of the side column in points."""


@frozen
class Section:
    """A part of the side column: its height in points and what draws it from a corner at a width."""

    height: float
    draw: Callable[[Canvas, float, float, float], None]


def sections(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], stake_count: int
) -> tuple[Section, ...]:
    """The sections of a bed: offsets first, since they are needed before the first plant."""
    units = plan.place.units
    groups: dict[tuple[object, ...], list[Layout]] = {}
    for layout in layouts:
        key = (layout.grid.pattern, layout.grid.in_row, tuple(row.offset for row in layout.rows), layout.grid.edge)
        groups.setdefault(key, []).append(layout)
    across = [_offsets(plan, group, look) for group in groups.values()]
    if not is_plain(laid.bed):
        across = [_row_by_row(plan, layout, look) for layout in layouts if layout.rows]
    unit = offset(CM, units).unit
    title = _title(
        _("Across the bed"), _("{unit} from the left edge as seen from the head").format(unit=unit).strip()
    )
    return (
        *((title,) if across else ()),
        *across,
        *_reserved(plan, laid, layouts, look),
        *_square(laid.bed, units),
        _carry(plan, laid, layouts, look, stake_count),
    )


def draw_sections(
    page: Canvas, found: tuple[Section, ...], corner: tuple[float, float], width: float, room: float
) -> tuple[Section, ...]:
    """Draw as many sections as fit below a corner; gives the rest."""
    left, y = corner
    bottom = y - room
    for number, section in enumerate(found):
        if y - section.height < bottom and number:
            return found[number:]
        section.draw(page, left, y, width)
        y -= section.height
    return ()


def _title(words: str, quiet: str) -> Section:
    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 12)
        page.drawString(left, top - 11, words)
        page.setFont(FACE, 9)
        page.drawString(left, top - 23, fitted(quiet, FACE, 9, width))

    return Section(28, draw)


def _offsets(plan: Plan, group: list[Layout], look: dict[str, Look]) -> Section:
    """Offsets from the left edge, large, and from the centre, small; plantings that share them stand together."""
    units, first = plan.place.units, group[0]
    names = ", ".join(f"{look[one.planting].letter} {name_of(plan, one.planting)}" for one in group)
    names += ", " + _("every {spacing}").format(spacing=offset(first.grid.in_row, units)) if first.rows else ""
    moved = first.grid.pattern in (Pattern.STAGGERED, Pattern.TRIANGULAR) and len(first.rows) > 1
    lines = _broadcast_lines(first, units) if not first.rows else _offset_lines(first, units)

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 10)
        page.drawString(left, top - 10, fitted(names, BOLD, 10, width))
        y = top - 11
        if moved:
            page.setFont(FACE, 9)
            page.drawString(left, y - 8, _("rows 2, 4 … begin half a spacing further on"))
            y -= 11
        for line in lines:
            y = line(page, left, y, width)

    return Section(17 + 11 * moved + (27 * len(lines) if first.rows else 15), draw)


def _reserved(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]) -> tuple[Section, ...]:
    """The places kept for crops that follow, to be pegged along with the first turn."""
    kept = (one.layout for one in kept_for(laid, layouts))
    return tuple(_pegs(plan, layout, look) for layout in kept if layout.rows)


def _pegs(plan: Plan, layout: Layout, look: dict[str, Look]) -> Section:
    units = plan.place.units
    title = f"{look[layout.planting].letter} {name_of(plan, layout.planting)}, " + ngettext(
        "{count} place kept", "{count} places kept", layout.plants
    ).format(count=layout.plants)
    offsets = ", ".join(_offset(row.offset, units) for row in layout.rows)
    first = tape(layout.first_plant or 0, units).number
    lines = (
        _("first at {first}, then every {spacing}").format(first=first, spacing=offset(layout.grid.in_row, units)),
        _("{offsets} from the left edge; peg both edges now").format(offsets=offsets),
    )

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 10)
        page.drawString(left, top - 10, fitted(title, BOLD, 10, width))
        page.setFont(FACE, 10)
        for number, line in enumerate(lines):
            page.drawString(left, top - 23 - 12 * number, fitted(line, FACE, 10, width))

    return Section(42, draw)


def _row_by_row(plan: Plan, layout: Layout, look: dict[str, Look]) -> Section:
    """Where rows differ by the bed's outline or by what stands in it: each with its first and last plant."""
    units = plan.place.units
    name = f"{look[layout.planting].letter} {name_of(plan, layout.planting)}, "
    name += _("every {spacing}").format(spacing=offset(layout.grid.in_row, units))
    rows = [row for row in layout.rows if row.count]
    pitch = 14 if len(rows) <= 8 else 12
    headings = (_("from edge"), _("first plant"), _("last plant"), _("plants"))

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 10)
        page.drawString(left, top - 10, fitted(name, BOLD, 10, width))
        page.setFont(FACE, 9)
        for column, heading in enumerate(headings):
            page.drawRightString(left + width / 4 * (column + 1), top - 21, heading)
        for number, row in enumerate(rows):
            y = top - 34 - pitch * number
            runs = [run for run in row.runs if run.count]
            cells = (_offset(row.offset, units), tape(runs[0].first, units).number, tape(runs[-1].last, units).number)
            for column, cell in enumerate((*cells, str(row.count))):
                page.setFont(BOLD, min(pitch, 14) if column == 0 else 12)
                page.drawRightString(left + width / 4 * (column + 1), y, cell)

    return Section(31 + pitch * len(rows), draw)


_Line = Callable[[Canvas, float, float, float], float]


def _broadcast_lines(layout: Layout, units: Units) -> list[_Line]:
    words = _("sown over the band from {first} to {last}").format(
        first=offset(layout.grid.edge, units), last=offset(layout.grid.width - layout.grid.edge, units)
    )

    def draw(page: Canvas, left: float, top: float, width: float) -> float:
        page.setFont(FACE, 10)
        page.drawString(left, top - 12, fitted(words, FACE, 10, width))
        return top - 27

    return [draw]


_MOST_A_LINE = 5
_LABELS = 50.0


def _offset_lines(layout: Layout, units: Units) -> list[_Line]:
    """The offsets in lines of as many as their figures leave room for."""
    rows, width = [row.offset for row in layout.rows], layout.grid.width
    widest = max(pdfmetrics.stringWidth(_offset(at, units), BOLD, 14) for at in rows)
    a_line = max(1, min(_MOST_A_LINE, int((SIDE_WIDTH - _LABELS) / (widest + 4))))
    return [_offset_line(rows[at : at + a_line], a_line, width, units) for at in range(0, len(rows), a_line)]


def _offset(at: int, units: Units) -> str:
    return offset(at, units, inch_parts=4).number


def _offset_line(offsets: list[int], a_line: int, bed_width: int, units: Units) -> _Line:
    def draw(page: Canvas, left: float, top: float, width: float) -> float:
        step = (width - _LABELS) / a_line
        page.setFont(FACE, 9)
        page.drawString(left, top - 12, _("from edge"))
        page.drawString(left, top - 23, _("from centre"))
        for number, at in enumerate(offsets):
            x = left + _LABELS + (number + 1) * step
            page.setFont(BOLD, 14)
            page.drawRightString(x, top - 13, _offset(at, units))
            page.setFont(FACE, 9)
            page.drawRightString(x, top - 23, _from_centre(at, bed_width, units))
        return top - 27

    return draw


def _from_centre(at: int, bed_width: int, units: Units) -> str:
    """The distance from the centre line, with a sign: left of it minus, right of it plus."""
    twice = 2 * at - bed_width
    figure = offset(abs(twice) // 2, units, inch_parts=4).number
    if abs(twice) < CM // 10:
        return "0"
    return f"{MINUS if twice < 0 else '+'}{figure}"


def diagonal(length: int, width: int) -> int:
    """The diagonal of a rectangle in nm, rounded down (Pythagoras)."""
    return isqrt(length * length + width * width)


def _square(bed: Bed, units: Units) -> tuple[Section, ...]:
    """How to square a bed with four corners; between posts, where there are posts in them."""
    if bed.outline or bed.diameter is not None:
        return ()
    post = bed.box.post.nm if bed.box and bed.box.post else 0
    across = diagonal(bed.length.nm - 2 * post, bed.width.nm - 2 * post)
    words = _("diagonals, post to post") if post else _("both diagonals")

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 12)
        page.drawString(left, top - 13, _("Square"))
        page.setFont(FACE, 10)
        page.drawString(left, top - 29, words)
        page.setFont(BOLD, 14)
        figure_at = left + max(78, pdfmetrics.stringWidth(words, FACE, 10) + 8)
        page.drawString(figure_at, top - 30, str(tape(across, units)))
        page.setFont(FACE, 9)
        if not post:
            page.drawString(left, top - 42, fitted(_three_four_five(bed.width.nm, units), FACE, 9, width))

    return (Section(48, draw),)


_THREES = {Units.METRIC: (3 * CM, 15 * CM, 30 * CM, 45 * CM, 60 * CM, 90 * CM, 150 * CM, 300 * CM)}
_THREES_IN = tuple(3 * INCH * part for part in (1, 2, 3, 4, 6, 9, 12, 18, 24, 36))


def _three_four_five(width: int, units: Units) -> str:
    """The largest 3-4-5 triangle that the bed's head has room for."""
    three = max((one for one in _THREES.get(units, _THREES_IN) if one <= width), default=3 * CM)
    legs = (str(offset(three * part // 3, units)) for part in (3, 4, 5))
    return _("3-4-5: {across} head, {down} edge, {between} across").format(
        **dict(zip(("across", "down", "between"), legs, strict=True))
    )


def _carry(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], stake_count: int
) -> Section:
    crops = {one.planting.id: one.crop for one in laid.grown}
    lines = [
        _("{stakes} stakes · string of {length}").format(
            stakes=stake_count, length=tape(laid.bed.length.nm, plan.place.units)
        )
    ]
    for layout in layouts:
        made = raising(crops[layout.planting], layout.plants, layout.grid.in_row)
        lines.append(_carried(look[layout.planting].letter, layout.plants, made.plants is None, made.trays))
    columns = 2 if len(lines) > 4 else 1
    ends = _ends(layouts, look, plan.place.units)

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 12)
        page.drawString(left, top - 13, _("Carry"))
        page.setFont(FACE, 9)
        for number, line in enumerate(ends):
            page.drawString(left + _LABELS, top - 13 - 11 * number, fitted(line, FACE, 9, width - _LABELS))
        top -= 11 * max(0, len(ends) - 1)
        page.setFont(FACE, 10)
        page.drawString(left, top - 28, lines[0])
        for number, line in enumerate(lines[1:]):
            x, y = left + width / columns * (number % columns), top - 40 - 12 * (number // columns)
            page.drawString(x, y, fitted(line, FACE, 10, width / columns - 4))

    return Section(32 + 11 * max(0, len(ends) - 1) + 12 * -(-(len(lines) - 1) // columns), draw)


def _ends(layouts: tuple[Layout, ...], look: dict[str, Look], units: Units) -> list[str]:
    """How the counts treat the ends of a block: once where all agree, otherwise by letter."""
    letters: dict[str, list[str]] = {}
    for layout in layouts:
        if layout.rows:
            letters.setdefault(convention(layout.grid, units), []).append(look[layout.planting].letter)
    if len(letters) == 1:
        return [_("counts: {ends}").format(ends=ends) for ends in letters]
    return [f"{' '.join(dict.fromkeys(named))}: {ends}" for ends, named in letters.items()]


def _carried(letter: str, plants: int, sown: bool, trays: int | None) -> str:
    if sown:
        return _("{letter} seed for {plants} places").format(letter=letter, plants=plants)
    words = _("{letter} {plants} plants").format(letter=letter, plants=plants)
    if trays:
        words += " " + ngettext("({count} tray)", "({count} trays)", trays).format(count=trays)
    return words
