"""What lies over, in and round a bed as layers: covers with hoops on the days they stand, drip lines, water jugs."""

from collections.abc import Iterable
from datetime import date
from enum import StrEnum
from functools import lru_cache

from attrs import evolve, frozen

from gardenplot.drawing.detail import Detail
from gardenplot.drawing.marks import Line, Mark, Outline, Pen, Weight, box, disc
from gardenplot.drawing.style import Ink
from gardenplot.layout.zone import held, is_plain
from gardenplot.plan import Bed, Cover, Jugs, Plan
from gardenplot.supplies import cover_cut
from gardenplot.supplies.jugs import jugs_at
from gardenplot.units import MM

_FOOT = 90.0
"""Half the foot that tells a hoop from a stake line, in mm along the bed."""


class Layer(StrEnum):
    """What of a drawing of beds can be shown or hidden."""

    COVERS = "covers"
    DRIP_LINES = "drip lines"
    JUGS = "water jugs"
    OBSTACLES = "obstacles"
    RESERVED = "reserved places"
    LEFTOVER = "leftover"


EVERY_LAYER = frozenset(Layer)


@frozen(cache_hash=True)
class Over:
    """Which layers of a bed are drawn, the covers that stand over it, and the water jugs that stand round it."""

    layers: frozenset[Layer]
    covers: tuple[Cover, ...] = ()
    jugs: tuple[Jugs, ...] = ()

    @property
    def rim(self) -> float:
        """How far what is drawn stands out of the bed, in mm."""
        return max((each.diameter.nm / MM for each in self.jugs), default=0.0)


PLAIN = Over(frozenset({Layer.OBSTACLES, Layer.RESERVED, Layer.LEFTOVER}))
"""A bed as it is drawn on paper and in files: without covers and drip lines."""


def over_bed(plan: Plan, bed_id: str, day: date | None, layers: frozenset[Layer]) -> Over:
    """What is drawn over a bed of a plan on a day, or of all days."""
    covers = standing_covers(plan, bed_id, day) if Layer.COVERS in layers else ()
    return Over(layers, covers, _jugs(plan, bed_id) if Layer.JUGS in layers else ())


def on_paper(plan: Plan, bed_id: str) -> Over:
    """What is drawn over a bed on paper and in files: its water jugs, no cover and no drip line."""
    jugs = _jugs(plan, bed_id)
    return evolve(PLAIN, jugs=jugs) if jugs else PLAIN


def _jugs(plan: Plan, bed_id: str) -> tuple[Jugs, ...]:
    return tuple(each for each in plan.jugs if each.bed == bed_id)


def layer_marks(bed: Bed, over: Over, detail: Detail) -> tuple[Mark, ...]:
    """The marks of the layers that lie over the plants of a bed, in mm in its frame; from afar cloths alone."""
    if detail is Detail.BLOCKS:
        return tuple(cover_marks(bed, cover)[0] for cover in over.covers)
    drip = drip_marks(bed) if Layer.DRIP_LINES in over.layers else ()
    jugs = (mark for each in over.jugs for mark in jug_marks(bed, each))
    return (*drip, *(mark for cover in over.covers for mark in cover_marks(bed, cover)), *jugs)


def standing_covers(plan: Plan, bed_id: str, day: date | None) -> tuple[Cover, ...]:
    """The covers over a bed on a day, or all of them; one without dates always stands, on its last day it is off."""
    return tuple(one for one in plan.covers if one.bed == bed_id and _stands(one, day))


def _stands(cover: Cover, day: date | None) -> bool:
    if day is None:
        return True
    return (cover.on is None or cover.on <= day) and (cover.off is None or day < cover.off)


@lru_cache(maxsize=512)
def cover_marks(bed: Bed, cover: Cover) -> tuple[Mark, ...]:
    """A cover seen from above: the cloth as a clear sheet with its ends, and each hoop where it truly stands."""
    start, end, width = cover.start.nm / MM, cover.end.nm / MM, bed.width.nm / MM
    beyond = cover.cloth_end.nm / MM if cover.cloth_end else 0.0
    marks: list[Mark] = [Outline(box(start, 0, end, width), fill=Ink.PAPER, tint=0.35, pen=Pen(Ink.SECOND))]
    if beyond:
        pen = Pen(Ink.SECOND, Weight.ROW, dashed=True)
        for one, other in ((start - beyond, start), (end, end + beyond)):
            marks.append(Outline(box(one, width * 0.12, other, width * 0.88), pen=pen))
    marks += (mark for at in cover_cut(bed, cover).hoop_readings for mark in _hoop(at / MM, width))
    return tuple(marks)


def _hoop(at: float, width: float) -> tuple[Mark, ...]:
    """A hoop from above, quieter than a stake: a thin line across, no longer than that, with a foot at each side."""
    pen = Pen(Ink.SECOND, Weight.ROW)
    feet = (Line((at - _FOOT, side), (at + _FOOT, side), Pen(Ink.SECOND, Weight.EDGE)) for side in (0, width))
    return (Line((at, 0), (at, width), pen), *feet)


@lru_cache(maxsize=512)
def drip_marks(bed: Bed) -> tuple[Mark, ...]:
    """The drip lines of a bed, each wherever the bed has ground."""
    pen = Pen(Ink.SECOND, Weight.ROW, dashed=True)
    return tuple(
        Line((first / MM, line.nm / MM), (last / MM, line.nm / MM), pen)
        for line in bed.drip_lines
        for first, last in drip_runs(bed, line.nm)
    )


@lru_cache(maxsize=512)
def jug_marks(bed: Bed, jugs: Jugs) -> tuple[Mark, ...]:
    """The jugs round a stretch of a bed from above, each where it stands and as wide as it is."""
    radius, pen = jugs.diameter.nm / 2 / MM, Pen(Ink.SECOND, Weight.EDGE)
    return tuple(disc(float(x / MM), float(y / MM), radius, pen, Ink.PAPER) for x, y in jugs_at(bed, jugs))


def drip_runs(bed: Bed, offset: int) -> Iterable[tuple[int, int]]:
    """From where to where in nm along the tape a drip line lies: wherever its bed has ground at that offset."""
    return ((0, bed.length.nm),) if is_plain(bed) else held(bed, offset, offset)
