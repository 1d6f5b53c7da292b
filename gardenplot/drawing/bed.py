"""A bed as marks: soil, end margins, leftover, blocks with their rows and plants, and what cannot be."""

from datetime import date
from functools import cached_property, lru_cache

from attrs import frozen

from gardenplot.drawing import trays
from gardenplot.drawing.covers import PLAIN, Layer, Over, layer_marks
from gardenplot.drawing.detail import Detail
from gardenplot.drawing.letters import Look
from gardenplot.drawing.marks import (
    Circle,
    Hatch,
    Label,
    Line,
    Mark,
    Outline,
    Pen,
    Plants,
    Point,
    Shape,
    Weight,
    box,
    disc,
)
from gardenplot.drawing.style import Ink
from gardenplot.findings import Finding, Kind, find_in_bed
from gardenplot.layout import Grid, LaidOut, Layout, Stretch, free_between, kept_for, standing
from gardenplot.layout.cells import sub_rows
from gardenplot.layout.filled import line_ground, lines_of, rows_of_cells
from gardenplot.layout.row_ends import block_ground, row_ends
from gardenplot.layout.turned import bed_for
from gardenplot.layout.zone import clip, corners_of, held, is_plain
from gardenplot.plan import Bed, Obstacle, Pattern
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.plan.shapes import posts_of
from gardenplot.units import MM, Length, Units
from gardenplot.units.figures import span
from gardenplot.words import _

STAKE_OVERHANG = 1.5
"""How far a stake line stands out of the bed, in paper millimetres."""


@frozen(slots=False)  # with a cached property, every attribute of a slotted class takes a search
class BedFigure:
    """A bed drawn: its size in mm, its marks from the ground up, and how far boards or jugs stand out of it in mm."""

    bed: str
    length: float
    width: float
    marks: tuple[Mark, ...]
    rim: float = 0.0

    @cached_property
    def unlabelled(self) -> tuple[Mark, ...]:
        """Its marks without words."""
        return tuple(mark for mark in self.marks if not isinstance(mark, Label))


def draw_bed(
    laid: LaidOut,
    day: date | None,
    look: dict[str, Look],
    units: Units,
    detail: Detail = Detail.PLANTS,
    over: Over = PLAIN,
) -> BedFigure:
    """Draw a bed as it stands on a day, or with all its plantings; the same values give the very same figure."""
    return draw_turn(laid, standing(laid, day), look, units, detail, over)


def draw_turn(
    laid: LaidOut,
    layouts: tuple[Layout, ...],
    look: dict[str, Look],
    units: Units,
    detail: Detail = Detail.PLANTS,
    over: Over = PLAIN,
) -> BedFigure:
    """Draw a bed with some of its plantings, and with the layers that are wanted over them."""
    return _figure(laid, layouts, tuple(look[layout.planting] for layout in layouts), units, detail, over)


@lru_cache(maxsize=1024)
def _figure(
    laid: LaidOut, layouts: tuple[Layout, ...], look: tuple[Look, ...], units: Units, detail: Detail, over: Over
) -> BedFigure:
    bed = laid.bed
    length, width = bed.length.nm / MM, bed.width.nm / MM
    circle = None if bed.diameter is None else Circle((length / 2, width / 2), length / 2)
    marks: list[Mark] = [Outline(ground_of(bed, 0, bed.length.nm), fill=Ink.SOIL, pen=Pen(Ink.EDGE), circle=circle)]
    marks += _boards(bed, length, width)
    marks += _margins(laid, length, width)
    for stretch in free_between(bed, layouts).leftover if Layer.LEFTOVER in over.layers else ():
        marks += _leftover(bed, stretch, width, units)
    if detail is Detail.PLANTS:
        marks += _planted(laid, layouts, look, over.layers)
    else:
        there = _in_ground(laid)
        for layout, one in zip(layouts, look, strict=True):
            marks += _from_afar(bed, layout, one, is_there=layout.planting in there)
    marks += layer_marks(bed, over, detail)
    ids = {layout.planting for layout in layouts}
    for finding in find_in_bed(laid):
        if finding.planting in ids and finding.other in {None, *ids}:
            marks += _trouble(finding, width)
    boards = bed.box.board.nm / MM if bed.box else 0.0
    return BedFigure(bed.id, length, width, tuple(marks), max(boards, over.rim))


def _planted(
    laid: LaidOut, layouts: tuple[Layout, ...], look: tuple[Look, ...], layers: frozenset[Layer]
) -> list[Mark]:
    """Blocks with their rows and plants, what stands in their way, and their stakes."""
    bed, marks, width = laid.bed, list[Mark](), laid.bed.width.nm / MM
    grown, there = {one.planting.id: one.crop.spread for one in laid.grown}, _in_ground(laid)
    for layout, one in zip(layouts, look, strict=True):
        if layout.planting in there:
            marks.append(Outline(ground_of(bed, layout.start, layout.end), one.ink, 0.2, _there(one)))
        marks += _block(bed, layout, one, width, grown[layout.planting])
    if Layer.OBSTACLES in layers:
        marks += (_solid(box(*(at / MM for at in (*least, *most)))) for least, most in posts_of(bed))
        marks += (mark for obstacle in bed.obstacles for mark in _obstacle(obstacle))
    for layout in layouts:
        marks += _row_ends(bed, layout)
        marks += _stakes(bed, layout, width)
    return [*marks, *(_reserved(laid, layouts) if Layer.RESERVED in layers else ())]


def _in_ground(laid: LaidOut) -> set[str]:
    """The plantings of a bed that are in the ground and no longer only planned."""
    return {one.planting.id for one in laid.grown if is_in_ground(one.planting)}


def _there(look: Look) -> Pen:
    """The frame round a block that is in the ground."""
    return Pen(look.ink, Weight.STAKE)


def _from_afar(bed: Bed, layout: Layout, look: Look, *, is_there: bool) -> list[Mark]:
    """A block whose plants are too small to be drawn: its ground with a hatch of its own, and its letter."""
    middle, length = (layout.start + layout.end) // 2, layout.length / MM
    top, bottom = reach_at(bed, middle, bed.width.nm / MM)
    letter = Label((middle / MM, (top + bottom) / 2), (look.letter,), length, bottom - top, bold=True)
    ground = ground_of(bed, layout.start, layout.end)
    frame = _there(look) if is_there else None
    return [Outline(ground, fill=look.ink, tint=0.4, hatch=look.hatch, pen=frame), letter]


def _reserved(laid: LaidOut, layouts: tuple[Layout, ...]) -> list[Mark]:
    """Rings round the places that are kept for crops which are not drawn themselves."""
    kept = kept_for(laid, layouts)
    return [Plants(one.layout, 2 * one.keep_clear / MM, Ink.ACCENT, Shape.RING) for one in kept]


def ground_of(bed: Bed, start: int, end: int) -> tuple[Point, ...]:
    """The corners in mm of a bed between two tape readings in nm; of its whole width where there is nothing of it."""
    whole = box(start / MM, 0, end / MM, bed.width.nm / MM)
    if is_plain(bed):
        return whole
    part = clip(corners_of(bed), start, end)
    return tuple((x / MM, y / MM) for x, y in part) if len(part) > 2 else whole


def _obstacle(obstacle: Obstacle) -> list[Mark]:
    """What stands in the bed, solid, and what is kept clear of it, dashed."""
    clear = obstacle.keep_clear.nm / MM if obstacle.keep_clear else 0.0
    x, y, dashed = obstacle.x.nm / MM, obstacle.y.nm / MM, Pen(Ink.INK, Weight.ROW, dashed=True)
    if obstacle.diameter is not None:
        radius = obstacle.diameter.nm / 2 / MM
        solid, kept = disc(x, y, radius, Pen(Ink.INK), Ink.INK), disc(x, y, radius + clear, dashed)
    else:
        half = (
            obstacle.length.nm / 2 / MM if obstacle.length else 0.0,
            obstacle.width.nm / 2 / MM if obstacle.width else 0.0,
        )
        solid = _solid(box(x - half[0], y - half[1], x + half[0], y + half[1]))
        around = box(x - half[0] - clear, y - half[1] - clear, x + half[0] + clear, y + half[1] + clear)
        kept = Outline(around, pen=dashed)
    return [solid, kept] if clear else [solid]


def _solid(corners: tuple[Point, ...]) -> Outline:
    return Outline(corners, fill=Ink.INK, pen=Pen(Ink.INK))


def _boards(bed: Bed, length: float, width: float) -> list[Mark]:
    """The boards round a box: the sides from end to end, the head and the foot between them."""
    if bed.box is None:
        return []
    thick = bed.box.board.nm / MM
    boards = (
        box(-thick, -thick, length + thick, 0),
        box(-thick, width, length + thick, width + thick),
        box(-thick, 0, 0, width),
        box(length, 0, length + thick, width),
    )
    return [Outline(one, fill=Ink.EDGE, tint=0.35, pen=Pen(Ink.EDGE, Weight.ROW)) for one in boards]


def _margins(laid: LaidOut, length: float, width: float) -> list[Mark]:
    pen, found = Pen(Ink.EDGE, Weight.ROW), []
    for at in laid.bed.zone:
        if 0 < at / MM < length:
            top, bottom = reach_at(laid.bed, at, width)
            found.append(Line((at / MM, top), (at / MM, bottom), pen))
    return [*found]


def _leftover(bed: Bed, stretch: Stretch, width: float, units: Units) -> list[Mark]:
    start, end = stretch.start / MM, stretch.end / MM
    length = str(span(stretch.length, units))
    words = (_("{length} left").format(length=length), length)
    top, bottom = reach_at(bed, (stretch.start + stretch.end) // 2, width)
    return [
        Outline(ground_of(bed, stretch.start, stretch.end), hatch=Hatch.SLANTED),
        Label(((start + end) / 2, (top + bottom) / 2), words, end - start, bottom - top, bold=True),
    ]


def _block(bed: Bed, layout: Layout, look: Look, width: float, spread: Length | None) -> list[Mark]:
    """A block with its rows and plants, each as wide as it grows, or where that is not said as its spacing leaves."""
    start, end = layout.start / MM, layout.end / MM
    grid = layout.grid
    ground = box(start, 0, end, width) if is_plain(bed) else ground_of(bed, layout.start, layout.end)
    if grid.pattern is Pattern.BROADCAST:
        edge = grid.edge / MM
        band = box(start, edge, end, width - edge) if is_plain(bed) else ground
        return [
            Outline(ground, fill=look.ink, tint=0.12),
            Outline(band, fill=look.ink, tint=0.2, hatch=Hatch.SOWN),
        ]
    if layout.holds_trays:
        return [Outline(ground, fill=look.ink, tint=0.08), *trays.tray_marks(layout, Pen(look.ink, Weight.ROW))]
    return [
        Outline(ground, fill=look.ink, tint=0.16),
        *_rows(bed, layout, Pen(look.ink, Weight.ROW)),
        Plants(layout, spread.nm / MM if spread else 0.78 * _least_spacing(layout) / MM, look.ink, look.shape),
    ]


def _least_spacing(layout: Layout) -> int:
    grid = layout.grid
    across = grid.between if len(layout.rows) > 1 and not grid.runs_across else grid.width
    if grid.cell:
        across = grid.cell // len(sub_rows(grid.per_cell))
    return min(grid.in_row, grid.twin or across, grid.rank)


def _rows(bed: Bed, layout: Layout, pen: Pen) -> list[Mark]:
    """The lines on which plants stand: rows along or across the bed, rings, or the sides of cells."""
    middle = bed.length.nm // 2 / MM, bed.width.nm // 2 / MM
    rings: list[Mark] = [disc(*middle, ring.radius / MM, pen) for ring in layout.rings if ring.radius]
    if layout.grid.pattern is Pattern.CELLS:
        return _cells(bed, layout, pen)
    lines = (
        Line(_spot(layout.grid, first, offset), _spot(layout.grid, last, offset), pen)
        for offset, (first, last) in _row_runs(bed, layout)
    )
    return [*rings, *lines]


def _row_runs(bed: Bed, layout: Layout) -> list[tuple[int, tuple[int, int]]]:
    """Each row's offset and where its line runs, in nm: over all of a plain bed's block, else its planted ground."""
    grid = layout.grid
    if is_plain(bed):
        whole = (0, grid.width) if grid.runs_across else (layout.start, layout.end)
        return [(row.offset, whole) for row in layout.rows]
    start, end = block_ground(bed, layout)
    seen, planted = bed_for(bed, grid.turn), {row.offset: row.runs for row in layout.rows}
    return [
        (line.offset, (low, high))
        for line in lines_of(grid, start, end)
        for low, high in line_ground(seen, grid, line, start, end)
        if any(low <= run.first <= high for run in planted.get(line.offset, ()) if run.count)
    ]


def _spot(grid: Grid, along: int, offset: int) -> Point:
    """A spot on a row line in the frame of the bed, from nm to mm."""
    x, y = (offset, along) if grid.runs_across else (along, offset)
    if grid.turn is not None:
        back = grid.turn.back(x, y)
        return back[0] / MM, back[1] / MM
    return x / MM, y / MM


def _cells(bed: Bed, layout: Layout, pen: Pen) -> list[Mark]:
    """The sides of all cells."""
    grid, lines = layout.grid, []
    rows = rows_of_cells(bed_for(bed, grid.turn), grid, *block_ground(bed, layout))
    for line, row in zip(grid.lines, rows, strict=True):
        for run in row.runs:
            first, last = run.first, run.last + grid.cell
            lines += [((first, y), (last, y)) for y in (line.low, line.high)]
            sides = (run.first + number * grid.cell for number in range(run.count + 1))
            lines += [((x, line.low), (x, line.high)) for x in sides]
    return [Line(_spot(grid, *one), _spot(grid, *other), pen) for one, other in lines]


def _row_ends(bed: Bed, layout: Layout) -> list[Mark]:
    """A short mark across each row that begins or ends inside its block."""
    grid, pen = layout.grid, Pen(Ink.INK)
    reach = min(grid.between, grid.twin or grid.between) / 3
    marks: list[Mark] = []
    for end in row_ends(bed, layout):
        low, high = (end.offset, end.offset + end.reach) if end.reach else (end.offset - reach, end.offset + reach)
        low, high = max(0, low), min(grid.width, high)
        marks.append(Line((end.at / MM, low / MM), (end.at / MM, high / MM), pen))
    return marks


def _stakes(bed: Bed, layout: Layout, width: float) -> list[Mark]:
    pen = Pen(Ink.INK, Weight.STAKE)
    lines: list[Mark] = []
    for at in (layout.start, layout.end):
        top, bottom = reach_at(bed, at, width)
        lines.append(Line((at / MM, top), (at / MM, bottom), pen, STAKE_OVERHANG))
    return lines


def reach_at(bed: Bed, reading: int, width: float) -> tuple[float, float]:
    """From where to where a bed lies at a tape reading, in mm; all its width where the reading is not in it."""
    lies = () if is_plain(bed) else held(bed, reading, reading, across=True)
    return (lies[0][0] / MM, lies[-1][1] / MM) if lies else (0.0, width)


def _trouble(finding: Finding, width: float) -> list[Mark]:
    if finding.kind not in (Kind.OVERLAP, Kind.OUTSIDE):
        return []
    corners = box(finding.start / MM, 0, finding.end / MM, width)
    return [Outline(corners, pen=Pen(Ink.ACCENT, Weight.STAKE), hatch=Hatch.CROSSED)]
