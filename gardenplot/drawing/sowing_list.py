"""What is to be sown, day by day: in trays with their cells, in the beds with rows and rate; all by its numbers."""

from collections.abc import Iterator
from datetime import date
from itertools import groupby
from math import ceil

from attrs import frozen

from gardenplot.drawing.date_words import dates_told
from gardenplot.drawing.days import weekday_words
from gardenplot.drawing.letters import looks
from gardenplot.drawing.number_words import value_words
from gardenplot.drawing.sayings import between, counted
from gardenplot.drawing.so_many import (
    so_many_cells,
    so_many_clumps,
    so_many_days,
    so_many_seeds,
    so_many_sown,
    so_many_trays,
)
from gardenplot.drawing.thinned import left_words
from gardenplot.drawing.workings import bought_words
from gardenplot.layout import Grown, LaidOut, Layout, lay_out_plan
from gardenplot.layout.staked import staked
from gardenplot.plan import Crop, Establish, Plan, bed_of
from gardenplot.season import dates_of
from gardenplot.supplies import Raising, raised_for
from gardenplot.supplies.raising import is_thinned, was_sown
from gardenplot.supplies.shopping import EVERYTHING, Asked
from gardenplot.units import Units
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext
from gardenplot.working import Number


@frozen(cache_hash=True)
class SowRow:
    """A sowing: of which planting, how much in short, and all else in lines of words.

    `in_trays` tells what is sown in trays from what is sown where it grows. `sown` is the day on which it was, where
    that is recorded; with `is_done` it was sown, though perhaps nobody recorded when.
    """

    day: date | None
    planting: str
    letter: str
    name: str
    amount: str
    more: tuple[str, ...]
    in_trays: bool
    is_done: bool = False
    sown: date | None = None


@frozen(cache_hash=True)
class SowDay:
    """What is sown on one day; without a day, what has none yet."""

    day: date | None
    rows: tuple[SowRow, ...]


def sow_days(plan: Plan, asked: Asked = EVERYTHING) -> tuple[SowDay, ...]:
    """The sowings that are asked for by day, those in trays first, then along the plan; those without a day last."""
    place = {planting: number for number, planting in enumerate(looks(plan))}
    rows = (row for laid in lay_out_plan(plan) if asked.has(laid.bed.id) for row in _rows(plan, laid))
    found = sorted(
        (row for row in rows if asked.is_on(row.day)),
        key=lambda row: (row.day or date.max, not row.in_trays, place[row.planting]),
    )
    return tuple(SowDay(day, tuple(inner)) for day, inner in groupby(found, lambda row: row.day))


def _rows(plan: Plan, laid: LaidOut) -> Iterator[SowRow]:
    look = looks(plan)
    for one, layout in zip(laid.grown, laid.layouts, strict=True):
        if layout.holds_trays:
            continue
        made, came = raised_for(one, layout), one.planting.actual
        if made.is_all_bought:
            continue
        in_trays = one.crop.establish is Establish.TRANSPLANT
        tell = _tray_words if in_trays else _bed_words
        amount, *more = (*tell(plan, one, layout, made), *bought_words(one.crop, made))
        yield SowRow(
            day=one.dates.sow,
            planting=layout.planting,
            letter=look[layout.planting].letter,
            name=one.crop.name,
            amount=amount,
            more=tuple(words for words in more if words),
            in_trays=in_trays,
            is_done=was_sown(one.planting),
            sown=None if came is None else came.sown or (None if in_trays else came.set_out),
        )


def _tray_words(plan: Plan, one: Grown, layout: Layout, made: Raising) -> tuple[str, ...]:
    units = plan.place.units
    seeds = _seeds_in_cells(one, made, units)
    if made.cells is None:
        seeds = _("cells {not_known}").format(not_known=_told(made.to_sow, units))
    raised = _("for {places}").format(places=_places(made.planted))
    if made.raised is not None:
        raised = _("{plants} to raise for {places}").format(
            plants=_told(made.raised, units), places=_places(made.planted)
        )
    amount = _cells(made, one.crop, layout)
    bed = bed_of(plan, layout.bed)
    where = f"{bed.name}, {between(*staked(bed, layout), units)}"
    trays = _trays(made, one.crop, units)
    return amount, f"{raised} · {seeds}", trays, _thinned(one.crop, made), _later(plan, one), where


def _cells(made: Raising, crop: Crop, layout: Layout) -> str:
    """ "175 cells in 3 trays of 84", or as far as that is known."""
    if made.cells is None:
        return _for(crop, layout)
    cells = so_many_cells(made.cells)
    if made.trays is None or crop.tray_cells is None:
        return cells
    return _("{cells} in {trays} of {in_tray}").format(
        cells=cells, trays=so_many_trays(made.trays), in_tray=grouped(crop.tray_cells)
    )


def _seeds_in_cells(one: Grown, made: Raising, units: Units) -> str:
    """ "1 seed in a cell, 175 seeds, 0.7 g"."""
    each = ngettext("{count} seed in a cell", "{count} seeds in a cell", one.crop.seeds_per_cell or 1)
    parts = [each.format(count=one.crop.seeds_per_cell or 1), so_many_seeds(made.seeds or 0)]
    if made.weight is not None and made.grams is not None:
        parts.append(value_words(made.weight, units))
    return ", ".join(parts)


def _thinned(crop: Crop, made: Raising) -> str:
    """ "thin to 4, about 98 out", or of what is sown by the row how many alone; empty where nothing is thinned."""
    out = grouped(made.thinned.whole) if made.thinned is not None and made.thinned.whole else ""
    if is_thinned(crop) and (made.to_sow is not None or crop.seeds_per_row is None):
        words = _("thin to {count}, about {out} out") if out else _("thin to {count}")
        return words.format(count=grouped(crop.stand), out=out)
    return _("about {out} thinned out").format(out=out) if out else ""


def _trays(made: Raising, crop: Crop, units: Units) -> str:
    """How the trays are filled, and what one less would give where that is enough.

    "2 full trays, 7 cells in the last; 2 trays would still give about 151 plants, 15 to spare"; where that is not
    enough, "1 full tray, 110 cells in the last; 18 more fill it".
    """
    trays, in_tray, last = made.trays, crop.tray_cells, made.last_tray.whole if made.last_tray else None
    if made.cells is not None and trays is None:
        return _("trays {not_known}").format(not_known=_told(made.filled, units))
    if trays is None or last is None or trays < 2:
        return ""
    full = trays if last == in_tray else trays - 1
    words = ngettext("{count} full tray", "{count} full trays", full).format(count=grouped(full))
    if full < trays:
        words = _("{full}, {cells} in the last").format(full=words, cells=so_many_cells(last))
    if made.spill is None and full < trays and in_tray is not None:
        more = grouped(in_tray - last)
        return _("{words}; {count} more fill it").format(words=words, count=more)
    return f"{words}; {spill_words(crop, made)}" if made.spill is not None else words


def spill_words(crop: Crop, made: Raising) -> str:
    """What one tray less would still give: "2 trays would still give about 151 plants, 15 to spare"."""
    spill = made.spill
    if spill is None:
        return ""
    less = ngettext(
        "{trays} tray would still give about {plants}", "{trays} trays would still give about {plants}", spill.trays
    ).format(trays=grouped(spill.trays), plants=so_many_clumps(spill.plants, crop.stand))
    spare = _("{count} to spare").format(count=grouped(spill.plants - made.planted))
    return f"{less}, {spare}" if spill.plants > made.planted else less


def _later(plan: Plan, one: Grown) -> str:
    """When it is potted up, hardened off, and where, and set out."""
    dates = one.dates
    bench = next((other for other in plan.plantings if other.hardens == one.planting.id), None)
    harden = dates.harden if bench is None else dates_of(plan, bench).harden
    there = "" if bench is None else _(" in {bed}").format(bed=bed_of(plan, bench.bed).name)
    parts = (
        (_("pot up {day}"), dates.pot_up, ""),
        (_("harden from {day}"), harden, there),
        (_("set out {day}"), dates.set_out, ""),
    )
    return " · ".join(words.format(day=weekday_words(day)) + tail for words, day, tail in parts if day is not None)


def _bed_words(plan: Plan, one: Grown, layout: Layout, made: Raising) -> tuple[str, ...]:
    units = plan.place.units
    bed = bed_of(plan, layout.bed)
    where = f"{bed.name}, {between(*staked(bed, layout), units)}"
    emerges = _days_to_emerge(one)
    if emerges is not None:
        where += " · " + _("emerges after about {days}").format(days=so_many_days(emerges))
    rate = _rate(one, layout, made, units)
    return _seed(one.crop, made, layout, units), *rate, _thinned(one.crop, made), where


def _days_to_emerge(one: Grown) -> int | None:
    """Days until it emerges, up to a whole one; None where the soil or the table does not tell."""
    emerges = dates_told(one).get("emerges")
    terms = emerges.terms if emerges is not None else ()
    days = next((term.value for term in terms if term.name == "emergence_days"), None)
    return None if days is None else ceil(days)


def _seed(crop: Crop, made: Raising, layout: Layout, units: Units) -> str:
    """ "352 seeds, 3.5 g", or for how many plants where the seed is not known."""
    if made.seeds is None:
        return _for(crop, layout)
    seeds = so_many_sown(crop, made.seeds)
    return seeds if made.weight is None or made.grams is None else f"{seeds}, {value_words(made.weight, units)}"


def _rate(one: Grown, layout: Layout, made: Raising, units: Units) -> Iterator[str]:
    """ "8.00 m of row at 40 / m, slack 10 %", "4 × 20 = 80 · thin to one every 10 cm"; or what the seed needs."""
    terms = {} if made.seed is None else {term.name: term for term in made.seed.terms}
    if made.seeds is None:
        yield _("seed {not_known}").format(not_known=_told(made.seed, units))
    row, rate, slack = (terms.get(name) for name in ("row", "sown", "slack"))
    thin = ""
    if row is not None and rate is not None and rate.value is not None:
        words = _("{row} of row at {rate}").format(row=value_words(row, units), rate=value_words(rate, units))
        if slack is not None and slack.value:
            words += _(", slack {slack}").format(slack=value_words(slack, units))
        yield words
        left = left_words(one, layout, units)
        thin = _("thin to {left}").format(left=left) if left else ""
    yield " · ".join(part for part in (counted(layout, clump=one.crop.stand), thin) if part)


def _for(crop: Crop, layout: Layout) -> str:
    return _("for {plants}").format(plants=so_many_clumps(layout.plants, crop.stand))


def _places(count: int) -> str:
    return ngettext("{count} place", "{count} places", count).format(count=grouped(count))


def _told(number: Number | None, units: Units) -> str:
    return "" if number is None else value_words(number, units)
