"""A bed as marks: soil, end margins, leftover, blocks with their rows and plants, and what cannot be."""

from datetime import date
from functools import lru_cache

from attrs import frozen

from gardenplot.drawing.letters import Look
from gardenplot.drawing.marks import Hatch, Label, Line, Mark, Outline, Pen, Plants, Weight, box
from gardenplot.drawing.style import Ink
from gardenplot.findings import Finding, Kind, find_in_bed
from gardenplot.layout import LaidOut, Layout, Stretch, free_between, standing
from gardenplot.plan import Pattern
from gardenplot.units import MM, Units
from gardenplot.units.figures import span
from gardenplot.words import _

STAKE_OVERHANG = 1.5
"""How far a stake line stands out of the bed, in paper millimetres."""


@frozen
class BedFigure:
    """A bed drawn: its size in mm and its marks from the ground up."""

    bed: str
    length: float
    width: float
    marks: tuple[Mark, ...]


def draw_bed(laid: LaidOut, day: date | None, look: dict[str, Look], units: Units) -> BedFigure:
    """Draw a bed as it stands on a day, or with all its plantings; the same values give the very same figure."""
    return draw_turn(laid, standing(laid, day), look, units)


def draw_turn(laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], units: Units) -> BedFigure:
    """Draw a bed with some of its plantings."""
    return _figure(laid, layouts, tuple(look[layout.planting] for layout in layouts), units)


@lru_cache(maxsize=1024)
def _figure(laid: LaidOut, layouts: tuple[Layout, ...], look: tuple[Look, ...], units: Units) -> BedFigure:
    bed = laid.bed
    length, width = bed.length.nm / MM, bed.width.nm / MM
    marks: list[Mark] = [Outline(box(0, 0, length, width), fill=Ink.SOIL, pen=Pen(Ink.EDGE))]
    marks += _margins(laid, length, width)
    for stretch in free_between(bed, layouts).leftover:
        marks += _leftover(stretch, width, units)
    for layout, one in zip(layouts, look, strict=True):
        marks += _block(layout, one, width)
    for layout in layouts:
        marks += _stakes(layout, width)
    ids = {layout.planting for layout in layouts}
    for finding in find_in_bed(laid):
        if finding.planting in ids and finding.other in {None, *ids}:
            marks += _trouble(finding, width)
    return BedFigure(bed.id, length, width, tuple(marks))


def _margins(laid: LaidOut, length: float, width: float) -> list[Mark]:
    first, last = (at / MM for at in laid.bed.zone)
    pen = Pen(Ink.EDGE, Weight.ROW)
    return [Line((at, 0), (at, width), pen) for at in (first, last) if 0 < at < length]


def _leftover(stretch: Stretch, width: float, units: Units) -> list[Mark]:
    start, end = stretch.start / MM, stretch.end / MM
    length = str(span(stretch.length, units))
    words = (_("{length} left").format(length=length), length)
    return [
        Outline(box(start, 0, end, width), hatch=Hatch.SLANTED),
        Label(((start + end) / 2, width / 2), words, room=end - start, bold=True),
    ]


def _block(layout: Layout, look: Look, width: float) -> list[Mark]:
    start, end = layout.start / MM, layout.end / MM
    grid = layout.grid
    if grid.pattern is Pattern.BROADCAST:
        edge = grid.edge / MM
        return [
            Outline(box(start, 0, end, width), fill=look.ink, tint=0.12),
            Outline(box(start, edge, end, width - edge), fill=look.ink, tint=0.2, hatch=Hatch.SOWN),
        ]
    pen = Pen(look.ink, Weight.ROW)
    lines = [Line((start, row.offset / MM), (end, row.offset / MM), pen) for row in layout.rows]
    spread = min(grid.in_row, grid.between if grid.rows > 1 else grid.width) / MM
    return [
        Outline(box(start, 0, end, width), fill=look.ink, tint=0.16),
        *lines,
        Plants(layout, spread * 0.78, look.ink, look.shape),
    ]


def _stakes(layout: Layout, width: float) -> list[Mark]:
    pen = Pen(Ink.INK, Weight.STAKE)
    return [Line((at / MM, 0), (at / MM, width), pen, STAKE_OVERHANG) for at in (layout.start, layout.end)]


def _trouble(finding: Finding, width: float) -> list[Mark]:
    if finding.kind not in (Kind.OVERLAP, Kind.OUTSIDE):
        return []
    corners = box(finding.start / MM, 0, finding.end / MM, width)
    return [Outline(corners, pen=Pen(Ink.ACCENT, Weight.STAKE), hatch=Hatch.CROSSED)]
