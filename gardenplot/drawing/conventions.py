"""How counts treat the ends of their rows, in words."""

from gardenplot.layout import Grid
from gardenplot.plan import Pattern
from gardenplot.units import Units
from gardenplot.units.figures import offset
from gardenplot.words import _


def convention(grid: Grid, units: Units) -> str:
    """How plants along a row are counted, wherever a count is shown."""
    if grid.pattern is Pattern.CELLS:
        return _("whole cells of {cell}").format(cell=offset(grid.cell, units))
    if grid.pattern is Pattern.RINGS:
        return _("outer ring {edge} inside").format(edge=offset(grid.edge_least, units))
    if grid.end_margin is None:
        half = _("half a row spacing") if grid.runs_across else _("half a spacing")
        return _("{half} at both ends").format(half=half)
    if grid.end_margin == 0:
        return _("plant on the mark at both ends")
    return _("{margin} at both ends").format(margin=offset(grid.end_margin, units))
