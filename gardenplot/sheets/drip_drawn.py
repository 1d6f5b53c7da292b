"""The drip lines of a bed in its drawing on paper: dashed and thin, where they have room between its rows.

Covers are told in words alone: one follows the other over the same ground, and their hoops would be taken for stakes.
"""

from gardenplot.drawing.covers import drip_marks
from gardenplot.drawing.marks import Mark
from gardenplot.layout import LaidOut, Layout
from gardenplot.sheets.paper import POINT_PER_MM
from gardenplot.units import MM
from gardenplot.words import _

DRIP_KEY = _("Dashed: drip lines.")
_CLEAR = 1.2 * POINT_PER_MM
"""Points of paper that a drip line keeps from the nearest row that it does not lie on, so that plants stay plain."""


def drip_drawn(laid: LaidOut, layouts: tuple[Layout, ...], across: float) -> tuple[Mark, ...]:
    """The drip lines at so many points to the millimetre; none of them where one has no room between the rows."""
    rows = {
        row.offset for layout in layouts if not layout.grid.runs_across and layout.grid.turn is None
        for row in layout.rows
    }  # fmt: skip
    apart = [abs(line.nm - row) for line in laid.bed.drip_lines for row in rows if line.nm != row]
    return drip_marks(laid.bed) if min(apart, default=0) / MM * across >= _CLEAR or not apart else ()
