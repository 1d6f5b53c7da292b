"""Beds and plantings in words for those who listen: what it is, how many, from where to where, what is wrong."""

from datetime import date

from gardenplot.drawing.actual_words import came_words
from gardenplot.drawing.left_words import left_on
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import counted, name_of, says
from gardenplot.drawing.shape_words import size_words
from gardenplot.findings import find_in_bed
from gardenplot.layout import LaidOut
from gardenplot.plan import Plan
from gardenplot.units.figures import as_measured, tape
from gardenplot.words import _, ngettext


def planting_spoken(plan: Plan, laid: LaidOut, planting: str, look: dict[str, Look]) -> str:
    """A planting: "A Butterhead lettuce, 3 × 55 = 165, 0.40 to 14.15 m".

    What is in the ground is told from what is planned: "..., in the ground since 9 Apr, planted 160 of 165".
    """
    layout, units = laid.layout_of(planting), plan.place.units
    one = next(each for each in laid.grown if each.planting.id == planting)
    came = came_words(one, layout)
    words = _("{letter} {crop}, {count}, {start} to {end}") + (f", {came}" if came else "")
    return words.format(
        letter=look[planting].letter,
        crop=name_of(plan, planting),
        count=counted(layout, clump=one.crop.stand),
        start=tape(layout.start, units).number,
        end=tape(layout.end, units),
    )


def bed_spoken(plan: Plan, laid: LaidOut, day: date | None, plantings: int) -> str:
    """A bed: "Tunnel, north, bed of 18.00 m × 80 cm, 2 plantings, 20 cm left on 9 Apr"."""
    units = plan.place.units
    words = _("{bed}, bed of {size}, {plantings}, {left}")
    return words.format(
        bed=laid.bed.name,
        size=size_words(laid.bed, units, as_measured),
        plantings=ngettext("{count} planting", "{count} plantings", plantings).format(count=plantings),
        left=left_on((laid,), day, units),
    )


def troubles_spoken(plan: Plan, laid: LaidOut, planting: str | None, look: dict[str, Look]) -> str:
    """The findings of a planting, or those of a bed that are of no planting; notes are left out."""
    found = (one for one in find_in_bed(laid) if one.planting == planting and not one.is_note)
    return "; ".join(says(plan, one, look) for one in found)
