"""What holds for everything that lies on the ground: sizes above nothing, each bed in one place."""

from gardenplot.plan.checks import Says, above_nothing
from gardenplot.plan.lying import Standing, Tunnel, Walk
from gardenplot.words import _


def standing_says(beds: set[str], standing: Standing, seen: set[str]) -> Says:
    """What is wrong with the place of a bed among `beds`; `seen` are those whose place was looked at before."""
    if standing.bed not in beds:
        yield "bed", _("there is no “{id}” in the plan").format(id=standing.bed)
    if standing.bed in seen:
        yield "bed", _("“{id}” has a place already: each bed stands once").format(id=standing.bed)
    seen.add(standing.bed)


def strip_says(strip: Tunnel | Walk) -> Says:
    """What is wrong with the size of a tunnel or a path."""
    yield from above_nothing("length", strip.length)
    yield from above_nothing("width", strip.width)
    if isinstance(strip, Tunnel) and strip.cold_edge is not None:
        yield from above_nothing("cold_edge", strip.cold_edge)
        if 2 * strip.cold_edge.nm >= min(strip.length.nm, strip.width.nm):
            yield (
                "cold_edge",
                _("cold edges of {edge} leave nothing of the tunnel between them").format(edge=strip.cold_edge),
            )
