"""Rings of plants: their centre, then radius, plants and spacing of each, to be drawn with a string and a rule."""

from itertools import pairwise
from math import dist

from gardenplot.layout import Layout
from gardenplot.layout.value import Ring
from gardenplot.plan import Bed
from gardenplot.sheets.figure_table import table
from gardenplot.sheets.section import Section, sentence, short
from gardenplot.units import Units
from gardenplot.units.figures import offset, tape
from gardenplot.words import _


def ring_parts(bed: Bed, layout: Layout, units: Units) -> list[Section]:
    """Where the centre of the rings is, and how their plants begin."""
    middle = bed.length.nm // 2, bed.width.nm // 2
    centre = [(str(tape(middle[0], units)), str(offset(middle[1], units)))]
    starts = all(ring.places[0] == (middle[0] - ring.radius, middle[1]) for ring in layout.rings if ring.count)
    first = [sentence(_("first plant of each ring on the centre line towards the head"), 9)] if starts else []
    stake = sentence(_("drive a stake at the centre first: all rings are measured from it"))
    return [stake, table((_("centre, tape"), _("centre, from the base line")), centre), *first]


def ring_tables(layout: Layout, units: Units, most: int) -> list[Section]:
    """A line for each ring, from outside in, so many a table."""
    lines = [(f" {number}", *_measures(ring, units), f" {ring.count}")
             for number, ring in enumerate(layout.rings, 1) if ring.count]  # fmt: skip
    names = (_("ring"), _("radius"), _("plant to plant"), _("plants"))
    return [table(names, lines[at : at + most], largest=1) for at in range(0, len(lines), most)]


def _measures(ring: Ring, units: Units) -> tuple[str, str]:
    return (short(ring.radius, units), apart(ring, units)) if ring.radius else (" " + _("centre"), "")


def apart(ring: Ring, units: Units) -> str:
    """From a plant of a ring to the next, straight across; nothing for one plant."""
    steps = [round(dist(one, other)) for one, other in pairwise(ring.places)]
    return short(min(steps), units) if steps else ""
