"""The words that go with a block: its caption under the bed, and the line under the pointer while it is dragged."""

from datetime import date
from functools import lru_cache

from attrs import frozen

from gardenplot.drawing.actual_words import came_words, since_words
from gardenplot.drawing.left_words import left_on
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import between, between_readings, counted, counted_in, name_of
from gardenplot.layout import Grown, LaidOut, Layout, kept_for, standing
from gardenplot.plan import Plan
from gardenplot.units import MM, Units
from gardenplot.units.figures import grouped, span
from gardenplot.words import _

GAP = "   "
"""What stands between the parts of a line."""


@frozen
class Caption:
    """A block's caption: where the block begins and ends in mm, its letter, its words from the fullest on.

    `read` are those words that go without what came about and what is kept, but with the tape readings.
    """

    planting: str
    at: float
    end: float
    look: Look
    words: tuple[str, ...]
    read: str


def captions(plan: Plan, laid: LaidOut, day: date | None, look: dict[str, Look]) -> tuple[Caption, ...]:
    """The captions of a bed on a day, from the head on."""
    grown, shown = {one.planting.id: one for one in laid.grown}, standing(laid, day)
    keeps = any(one.planting.keep_clear is not None for one in laid.grown)
    ringed = [one.layout for one in kept_for(laid, shown)] if keeps else []
    return tuple(
        _caption(
            layout, grown[layout.planting], look[layout.planting], plan.place.units, _kept(plan, layout, ringed, look)
        )
        for layout in shown
    )


def _kept(plan: Plan, layout: Layout, ringed: list[Layout], look: dict[str, Look]) -> str:
    """What the rings in a block stand for: "places kept for B Tall tomato"."""
    whose = (one for one in ringed if one.start < layout.end and layout.start < one.end)
    names = ", ".join(f"{look[one.planting].letter} {name_of(plan, one.planting)}" for one in whose)
    return _("places kept for {crops}").format(crops=names) if names else ""


@lru_cache(maxsize=4096)
def _caption(layout: Layout, one: Grown, look: Look, units: Units, kept: str) -> Caption:
    name, count = one.crop.name, counted(layout, clump=one.crop.stand)
    readings = between(layout.start, layout.end, units)
    came = since_words(one)
    fullest = GAP.join(words for words in (name, count, readings, came_words(one, layout)) if words)
    since = (f"{name}   {count}   {came}", f"{name}   {came}") if came else ()
    read = f"{name}   {count}   {readings}"
    words = (
        *((f"{fullest}{GAP}{kept}",) if kept else ()),
        fullest,
        *since,
        read,
        f"{name}   {count}",
        f"{name}  {grouped(layout.plants)}",
        name,
        "",
    )
    return Caption(layout.planting, layout.start / MM, layout.end / MM, look, tuple(dict.fromkeys(words)), read)


def drag_line(plan: Plan, planting_id: str, laid: LaidOut, day: date | None, asked: int = 0) -> str:
    """What is under the hand: "Kohlrabi   3 × 15 = 45   7.30 – 11.05 m   3.75 m long   0.65 m left on 9 Apr".

    Where fewer plants stand than asked for, it says so.
    """
    layout = laid.layout_of(planting_id)
    left = left_on((laid,), day, plan.place.units)
    readings = between_readings(plan, layout.start, layout.end)
    length = _("{length} long").format(length=span(layout.length, plan.place.units))
    return GAP.join((name_of(plan, planting_id), counted_in(plan, layout, asked), readings, length, left))
