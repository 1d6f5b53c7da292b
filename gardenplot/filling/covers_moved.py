"""Covers follow the block that they alone stand over."""

from attrs import evolve

from gardenplot.layout import Layout, lay_out_plan
from gardenplot.plan import Cover, Plan, bed_of
from gardenplot.units import length_of

_Layouts = dict[str, Layout]


def with_covers(before: Plan, after: Plan) -> Plan:
    """The plan after a change, with each cover that stood over one block alone over where that block is now.

    It reaches as far beyond the block as it did, at most to the ends of the bed; its days stay.
    """
    if not after.covers:
        return after
    was, now = _layouts(before), _layouts(after)
    return evolve(after, covers=tuple(_followed(after, one, was, now) for one in after.covers))


def _layouts(plan: Plan) -> _Layouts:
    return {layout.planting: layout for laid in lay_out_plan(plan) for layout in laid.layouts}


def _followed(after: Plan, cover: Cover, was: _Layouts, now: _Layouts) -> Cover:
    under = [
        layout
        for layout in was.values()
        if layout.bed == cover.bed and layout.start < cover.end.nm and cover.start.nm < layout.end
    ]
    if len(under) != 1 or under[0].planting not in now:
        return cover
    old, new = under[0], now[under[0].planting]
    if (old.bed, old.start, old.end) == (new.bed, new.start, new.end) or not new.length:
        return cover
    units, last = after.place.units, bed_of(after, new.bed).length.nm
    start = max(0, cover.start.nm + new.start - old.start)
    end = min(last, cover.end.nm + new.end - old.end)
    return evolve(cover, bed=new.bed, start=length_of(start, units), end=length_of(end, units))
