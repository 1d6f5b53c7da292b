"""What stands on labels: one for each block, to stake beside it, and one for each tray, in lines of words."""

from collections.abc import Iterator
from datetime import date

from attrs import frozen

from gardenplot.drawing.days import day_words, short_day
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.sayings import TIMES, between, counted
from gardenplot.drawing.so_many import so_many_cells
from gardenplot.drawing.stake_numbers import Numbered, numbers_of
from gardenplot.drawing.turns import walked
from gardenplot.layout import Grown, LaidOut, Layout, lay_out_plan
from gardenplot.layout.staked import staked
from gardenplot.plan import Establish, Pattern, Plan, bed_of
from gardenplot.supplies import raised_for
from gardenplot.supplies.shopping import EVERYTHING, Asked
from gardenplot.units import Units
from gardenplot.units.figures import apart, grouped, offset
from gardenplot.words import _


@frozen(cache_hash=True)
class LabelWords:
    """The words of a label: a planting's letter and crop, to be read from afar, and lines, the most needed first."""

    planting: str
    letter: str
    crop: str
    lines: tuple[str, ...]


def plant_labels(plan: Plan, asked: Asked = EVERYTHING) -> tuple[LabelWords, ...]:
    """A label for each block that goes into the ground when asked, bed by bed in walking order.

    Stakes have the numbers of the bed sheet on which the block first stands.
    """
    look = looks(plan)
    return tuple(
        label
        for laid in lay_out_plan(plan)
        if asked.has(laid.bed.id)
        for label in _of_bed(plan, laid.without_trays, look, asked)
    )


def _of_bed(plan: Plan, laid: LaidOut, look: dict[str, Look], asked: Asked) -> Iterator[LabelWords]:
    grown, driven = {one.planting.id: one for one in laid.grown}, numbers_of(plan, laid, look)
    for layout in walked(laid):
        one = grown[layout.planting]
        if asked.is_on(one.dates.in_ground):
            yield _of_block(plan, one, layout, look, driven[layout.planting])


def _of_block(plan: Plan, one: Grown, layout: Layout, look: dict[str, Look], driven: Numbered) -> LabelWords:
    units, bed = plan.place.units, bed_of(plan, layout.bed)
    start, end = staked(bed, layout)
    first, last = driven.number_at(start, units), driven.number_at(end, units)
    words = _("stakes {first}, {last} · {readings}")
    if first is not None and last is not None and last > first + 1:
        words = _("stakes {first}–{last} · {readings}")
    stands = words.format(first=first, last=last, readings=between(start, end, units))
    lines = (stands, _rows(one, layout, units), _in_ground(one), bed.name)
    return LabelWords(layout.planting, look[layout.planting].letter, one.crop.name, tuple(filter(None, lines)))


def _rows(one: Grown, layout: Layout, units: Units) -> str:
    """Rows by plants and how far these stand apart: "4 × 34 = 136 · 20 × 20 cm"."""
    apart, count = spacing_of(layout, units), counted(layout, clump=one.crop.stand)
    return f"{count} · {apart}" if apart else count


def spacing_of(layout: Layout, units: Units) -> str:
    """How far plants stand apart in the row, by how far rows do; in one row, or on rings, the first alone."""
    grid = layout.grid
    if grid.pattern is Pattern.BROADCAST or not layout.plants:
        return ""
    if grid.pattern is Pattern.CELLS:
        return _("cells of {side}").format(side=offset(grid.cell, units))
    along = apart(grid.in_row, units)
    if len(layout.per_row) < 2 or grid.pattern in (Pattern.RINGS, Pattern.OFFSETS):
        return _("{length} apart").format(length=along)
    if grid.pattern is not Pattern.TWIN:
        return f"{along.number}{TIMES}{offset(grid.between, units)}"
    inside = f"{along.number}{TIMES}{offset(grid.twin, units)}"
    if len(layout.per_row) <= 2:
        return inside
    return _("{inside}, pairs {between} apart").format(inside=inside, between=offset(grid.between, units))


def _in_ground(one: Grown) -> str:
    """The day that it is set out or sown there."""
    day = one.dates.in_ground
    if day is None:
        return ""
    words = _("set out {day}") if one.crop.establish is Establish.TRANSPLANT else _("sown {day}")
    return words.format(day=day_words(day))


def tray_labels(plan: Plan, asked: Asked = EVERYTHING) -> tuple[LabelWords, ...]:
    """A label for each tray that is sown when asked, by the day of sowing, then along the plan.

    Where it is not known how many trays a planting takes, one label with room for their number.
    """
    look = looks(plan)
    place = {planting: number for number, planting in enumerate(look)}
    found = [
        (one.dates.sow or date.max, place[layout.planting], _of_trays(plan, one, layout, look))
        for laid in lay_out_plan(plan)
        if asked.has(laid.bed.id)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if one.crop.establish is Establish.TRANSPLANT
        and asked.is_on(one.dates.sow)
        and not layout.holds_trays
        and not raised_for(one, layout).is_all_bought
    ]
    return tuple(label for _day, _place, labels in sorted(found, key=lambda each: each[:2]) for label in labels)


def _of_trays(plan: Plan, one: Grown, layout: Layout, look: dict[str, Look]) -> list[LabelWords]:
    made = raised_for(one, layout)
    later = _later(plan, one)
    last = made.last_tray.whole if made.last_tray else None
    if made.trays is None or last is None:
        numbered = [_("tray ____ of ____")]
    else:
        numbered = [
            _("tray {number} of {count} · {cells}").format(
                number=grouped(number),
                count=grouped(made.trays),
                cells=so_many_cells(last if number == made.trays else one.crop.tray_cells or 0),
            )
            for number in range(1, made.trays + 1)
        ]
    letter = look[layout.planting].letter
    return [LabelWords(layout.planting, letter, one.crop.name, (words, *later)) for words in numbered]


def _later(plan: Plan, one: Grown) -> tuple[str, ...]:
    """When a tray is sown, hardened off and set out, and in which bed; each where it is known."""
    dates = one.dates
    moved = ((_("harden {day}"), dates.harden), (_("set out {day}"), dates.set_out))
    lines = (
        "" if dates.sow is None else _("sown {day}").format(day=day_words(dates.sow)),
        " · ".join(words.format(day=short_day(day)) for words, day in moved if day is not None),
        bed_of(plan, one.planting.bed).name,
    )
    return tuple(filter(None, lines))
