"""Hoops and cloth over a stretch of bed.

Intervals = ceil(length / most spacing); hoops = intervals + 1; true spacing = length / intervals. A half-round hoop
over width w has the arc pi w / 2 (circumference of a circle); hoop = arc + both legs; cloth width = arc + both
aprons; cloth length = stretch + both ends.
"""

from fractions import Fraction
from math import pi

from attrs import frozen

from gardenplot.plan import Bed, Cover


@frozen
class CoverCut:
    """What to cut for one cover, in nm; None where the cover does not say enough."""

    hoops: int | None
    hoop_spacing: Fraction | None
    hoop_length: int | None
    cloth_width: int | None
    cloth_length: int | None


def cover_cut(bed: Bed, cover: Cover) -> CoverCut:
    """Hoops and cloth for a cover over a bed."""
    length = cover.end.nm - cover.start.nm
    intervals = -(-length // cover.hoop_spacing.nm) if cover.hoop_spacing else None
    arc = round(bed.width.nm * pi / 2)
    return CoverCut(
        hoops=intervals + 1 if intervals else None,
        hoop_spacing=Fraction(length, intervals) if intervals else None,
        hoop_length=arc + 2 * cover.leg.nm if cover.leg else None,
        cloth_width=arc + 2 * cover.apron.nm if cover.apron else None,
        cloth_length=length + 2 * cover.cloth_end.nm if cover.cloth_end else None,
    )
