"""Several plantings chosen together, the first of which leads: added, taken away, framed, walked through."""

from collections.abc import Sequence
from datetime import date

from gardenplot.drawing.strips import Strips
from gardenplot.layout import lay_out_plan, standing
from gardenplot.plan import Plan, planting_of
from gardenplot.units import MM

Chosen = tuple[str, ...]


def walk(plan: Plan, day: date | None) -> Chosen:
    """The plantings that stand on a day, bed by bed from the head on."""
    return tuple(layout.planting for laid in lay_out_plan(plan) for layout in standing(laid, day))


def toggled(chosen: Chosen, planting: str) -> Chosen:
    """What is chosen with one more planting, which leads from then on, or without the one."""
    if planting in chosen:
        return tuple(one for one in chosen if one != planting)
    return (planting, *chosen)


def next_of(here: Chosen, before: str) -> str:
    """Which of the blocks that lie on one another at a spot follows another one of them; after the last the first."""
    return here[(here.index(before) + 1) % len(here)]


def extended(order: Chosen, chosen: Chosen, way: int) -> Chosen:
    """What is chosen with the next planting in walking order, or without the last one where the way goes back."""
    if not order:
        return ()
    if not chosen or chosen[0] not in order:
        return order[:1] if way > 0 else order[-1:]
    at = order.index(chosen[0]) + way
    if not 0 <= at < len(order):
        return chosen
    lead = order[at]
    if lead in chosen:
        return (lead, *(one for one in chosen[1:] if one != lead))
    return (lead, *chosen)


def all_of(plan: Plan, day: date | None, chosen: Chosen, bed: str | None) -> Chosen:
    """All plantings of a bed on a day; where these are chosen already, or in no bed, all of the plan."""
    order = walk(plan, day)
    here = tuple(one for one in order if planting_of(plan, one).bed == bed)
    return _led(order if not here or set(here) <= set(chosen) else here, chosen)


def _led(wanted: Chosen, chosen: Chosen) -> Chosen:
    """The same plantings, led by the one that led before if it is among them."""
    lead = [one for one in chosen[:1] if one in wanted]
    return (*lead, *(one for one in wanted if one not in lead))


def joined(chosen: Chosen, more: Sequence[str]) -> Chosen:
    """What is chosen and some plantings more."""
    return (*chosen, *(one for one in more if one not in chosen))


def framed(strips: Strips, day: date | None, one: tuple[float, float], other: tuple[float, float]) -> Chosen:
    """The plantings that a frame between two points touches, in pixels from tape zero and the top of all strips."""
    left, right = sorted((one[0], other[0]))
    top, bottom = sorted((one[1], other[1]))
    return tuple(
        layout.planting
        for strip in strips.strips
        if strip.top <= bottom and strip.top + strip.height >= top
        for layout in standing(strip.laid, day)
        if layout.start / MM * strips.along <= right and layout.end / MM * strips.along >= left
    )
