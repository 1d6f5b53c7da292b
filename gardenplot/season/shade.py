"""How far the shadow of what is high reaches at noon: its height over the tangent of the sun's, on level ground.

Geometry. In the morning and in the evening shadows are longer and lie elsewhere; noon is when they are shortest, and
when most of the light comes.
"""

from datetime import date
from math import radians, tan

from gardenplot.season.span import Span
from gardenplot.season.sun import Site, noon_lean

_LOWEST = 5.0
"""Degrees over the horizon: with a lower sun all is shade and nothing is told."""


def noon_shadow(site: Site, day: date, height: int) -> int:
    """How far north of what is so high its shadow reaches at noon, in the unit of the height; south if below nothing.

    Nothing where the sun hardly rises.
    """
    lean = noon_lean(site, day)
    return 0 if abs(lean) > 90 - _LOWEST else round(height * tan(radians(lean)))


def telling_days(span: Span) -> tuple[date, ...]:
    """The days of a span on which the noon sun may be lowest or highest: its ends and the solstices between them."""
    years = range(span.first.year, min(span.first.year + 1, span.last.year) + 1)
    solstices = (date(year, month, 21) for year in years for month in (6, 12))
    return (span.first, span.last, *(day for day in solstices if span.first < day < span.last))
