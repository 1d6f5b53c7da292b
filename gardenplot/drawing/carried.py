"""What is carried to a bed for one of its turns: stakes, pegs, string, a tape, marking tools, hoops and covers.

The bed sheet, the list and the command all take it from here. A tape reaches over the diagonal by which the bed is
squared, or to the farthest corner of an outline, in whole metres or feet (Pythagoras); each place that is kept is
pegged at both edges of the bed; a string is as long as its bed,
and a metre or a yard more to be tied. That a spacing tool, a row marker and a dibble do for
all beds: common practice, no source.
"""

from collections.abc import Iterator, Mapping
from datetime import date
from fractions import Fraction
from functools import lru_cache
from math import isqrt

from attrs import frozen

from gardenplot.drawing.days import short_day
from gardenplot.drawing.number_words import value_words
from gardenplot.drawing.so_many import so_many_clumps, so_many_sown
from gardenplot.drawing.stake_count import stakes_number, stakes_words
from gardenplot.drawing.stakes import stake_readings
from gardenplot.drawing.tape_legs import LEGS, is_taped
from gardenplot.drawing.turns import turns
from gardenplot.drawing.workings import with_bought
from gardenplot.layout import Grown, LaidOut, Layout, kept_for
from gardenplot.layout.candidate import has_even_rows
from gardenplot.plan import Bed, Cover, Crop, Establish, GoodKind, Pattern, Plan, crop_of
from gardenplot.plan.shapes import measured_over
from gardenplot.supplies import Raising, raised_for
from gardenplot.supplies.in_store import is_own_tool
from gardenplot.supplies.needed import Need
from gardenplot.supplies.shopping import covered
from gardenplot.units import FOOT, Length, M, Units
from gardenplot.units.figures import THIN, apart, grouped, span, tape
from gardenplot.words import _, ngettext
from gardenplot.working import RULES, Number, Rounding, Source, Unit, known, larger, worked


@frozen
class Carried:
    """Things that go to a bed together, in the order of use: what marks it, or a cover from its day on."""

    needs: tuple[Need, ...]
    day: date | None = None


def carried(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...]) -> tuple[Carried, ...]:
    """What is carried to a bed for the plantings of one turn: what marks it, and each of its covers."""
    covers = (Carried(tuple(covered(plan, cover)), cover.on) for cover in covers_of(plan, laid, layouts))
    return Carried(marking_needs(plan, laid, layouts)), *covers


def marking_needs(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...]) -> tuple[Need, ...]:
    """What marks the plantings of one turn of a bed."""
    name, bed = laid.bed.name, laid.bed
    count = stakes_number(laid, layouts, stake_readings(plan, laid, layouts), plan.place.units)
    reach = tape_number(bed, plan.place.units)
    one = known("tape", 1, Unit.COUNT, source=RULES)
    pegs = _pegs(laid, layouts)
    return (
        *((Need(GoodKind.STAKE, count, label=name),) if count.value else ()),
        *((Need(GoodKind.PEG, pegs, label=name),) if pegs.value else ()),
        Need(GoodKind.STRING, string_number(bed, plan.place.units), label=name),
        Need(GoodKind.TAPE, one, size=reach.whole, label=name),
        *_tools(plan, laid, layouts),
    )


def string_number(bed: Bed, units: Units) -> Number:
    """The string along a bed, with half a metre or 18 in at each end to tie it: common practice, no source."""
    long = known("bed_length", bed.length.nm, Unit.LENGTH, source=Source.SIZE_OF_BED)
    knots = known("for_knots", M if units is Units.METRIC else 3 * FOOT, Unit.LENGTH, source=RULES)
    return worked("string_length", Unit.LENGTH, "bed_length + for_knots", long, knots, source=RULES)


@lru_cache(maxsize=1024)
def tape_number(bed: Bed, units: Units) -> Number:
    """The tape that reaches along a bed and over the diagonal by which it is squared, in whole metres or feet.

    Where no tape reaches so far, one to measure on with in legs.
    """
    if not is_taped(bed, units):
        return known("tape_length", LEGS[units], Unit.LENGTH, source=RULES)
    long = known("bed_length", bed.length.nm, Unit.LENGTH, source=Source.SIZE_OF_BED)
    reach, apart = long, measured_over(bed)
    if apart is not None:
        sides = (
            known(each, side, Unit.LENGTH, source=Source.SIZE_OF_BED)
            for each, side in zip(("corners_along", "corners_across"), apart, strict=True)
        )
        over = worked("diagonal", Unit.LENGTH, "root(corners_along ^ 2 + corners_across ^ 2)", *sides,
                      source=Source.PYTHAGORAS, using={"root": _root})  # fmt: skip
        reach = worked("reach", Unit.LENGTH, "larger(bed_length, diagonal)", long, over, source=Source.GEOMETRY,
                       using={"larger": larger})  # fmt: skip
    return in_wholes("tape_length", reach, units)


def in_wholes(name: str, long: Number, units: Units) -> Number:
    """A length in whole metres or feet, rounded up, as it is sold."""
    unit = known("whole_length", M if units is Units.METRIC else FOOT, Unit.LENGTH, source=RULES)
    wholes = worked("wholes", Unit.COUNT, f"{long.name} ÷ whole_length", long, unit, rounding=Rounding.UP,
                    source=RULES)  # fmt: skip
    return worked(name, Unit.LENGTH, "wholes × whole_length", wholes, unit, source=RULES)


def _root(square: Fraction) -> Fraction:
    """The square root of a whole number, rounded down."""
    return Fraction(isqrt(int(square)))


def are_pegged(layout: Layout) -> bool:
    """Whether kept places are marked by pegs at the edges of the bed: rows along it, and their plants even."""
    return bool(layout.rows) and not layout.grid.runs_across and layout.grid.turn is None


def _pegs(laid: LaidOut, layouts: tuple[Layout, ...]) -> Number:
    """Pegs for the kept places, two for each reading."""
    kept = [one.layout for one in kept_for(laid, layouts) if are_pegged(one.layout)]
    runs = [run for layout in kept for row in layout.rows for run in row.runs]
    readings = {run.first + number * run.step for run in runs for number in range(run.count)}
    found = known("kept_readings", len(readings), Unit.COUNT, source=Source.COUNTED)
    return worked("pegs", Unit.COUNT, "2 × kept_readings", found, source=RULES)


def _tools(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...]) -> Iterator[Need]:
    """What marks the spacings where the grower named what own tools mark, and a dibble for what is set out."""
    place, name = plan.place, laid.bed.name
    crops = {layout.planting: crop_of(plan, layout.crop) for layout in layouts}
    in_row = {one.grid.in_row for one in layouts if _is_marked(one, crops[one.planting])}
    between = {one.grid.between for one in layouts if has_even_rows(one)}
    tools: tuple[tuple[GoodKind, set[int], tuple[Length, ...]], ...] = (
        (GoodKind.ROW_MARKER, between, place.markable_rows),
        (GoodKind.SPACER, in_row, place.markable_in_row),
    )
    for kind, spacings, own in tools:
        for spacing in sorted(spacings) if own else ():
            yield Need(kind, _one(kind), size=spacing, label=name)
    if any(crops[one.planting].establish is not Establish.DIRECT for one in layouts if one.plants):
        yield Need(GoodKind.DIBBLE, _one(GoodKind.DIBBLE), label=name)


def _one(kind: GoodKind) -> Number:
    return known(str(kind).replace(" ", "_"), 1, Unit.COUNT, source=RULES)


def _is_marked(layout: Layout, crop: Crop) -> bool:
    """Whether each place in the rows is marked; a seeder drops its seed by the row."""
    spaced = layout.grid.pattern not in (Pattern.BROADCAST, Pattern.CELLS, Pattern.RINGS)
    return spaced and bool(layout.plants) and not crop.is_drilled


def turn_days(laid: LaidOut) -> tuple[date | None, ...]:
    """The day on which each turn of a bed begins: the first of what was not in the turn before; None if not known."""
    days = {one.planting.id: one.dates.in_ground for one in laid.grown}
    found: list[date | None] = []
    before: tuple[Layout, ...] = ()
    for turn in turns(laid):
        fresh = (days[one.planting] for one in turn if one not in before)
        found.append(min((day for day in fresh if day is not None), default=None))
        before = turn
    return tuple(found)


def covers_of(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...]) -> tuple[Cover, ...]:
    """The covers of a bed that go on in a turn: the last one that has begun by then; without a day, the first."""
    days, all_turns = turn_days(laid), turns(laid)
    here = [cover for cover in plan.covers if cover.bed == laid.bed.id]
    return tuple(cover for cover in here if all_turns[_turn_of(cover, days)] == layouts)


def covers_over(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...]) -> tuple[Cover, ...]:
    """The covers over a bed in a turn: those that go on in it or before it and are not taken away when it begins."""
    days, turn = turn_days(laid), turns(laid).index(layouts)
    here = [cover for cover in plan.covers if cover.bed == laid.bed.id]
    return tuple(cover for cover in here if _is_over(cover, turn, days))


def _turn_of(cover: Cover, days: tuple[date | None, ...]) -> int:
    """The number from 0 of the turn in which a cover goes on, of turns that begin on such days."""
    begun = (number for number, day in enumerate(days) if cover.on and day and day <= cover.on)
    return max(begun, default=0)


def _is_over(cover: Cover, turn: int, days: tuple[date | None, ...]) -> bool:
    goes_on, begins = _turn_of(cover, days), days[turn]
    stays = cover.off is None or (begins is not None and begins < cover.off)
    return goes_on == turn or (goes_on < turn and stays)


def whole_words(nm: int, units: Units) -> str:
    """A length of whole metres or feet: "13 m"."""
    size, sign = (M, "m") if units is Units.METRIC else (FOOT, "ft")
    return f"{nm // size}{THIN}{sign}"


def carried_list(plan: Plan, one: Carried) -> tuple[str, ...]:
    """Things to carry in words; of a cover its day with the first of them: "14 Apr: 14 hoops of 2.38 m"."""
    first, *others = (carried_words(plan, need) for need in one.needs)
    return _("{day}: {what}").format(day=short_day(one.day), what=first) if one.day else first, *others


def carried_words(plan: Plan, need: Need) -> str:
    """A thing to carry in words: "7 stakes", "string of 12.00 m", "tape of 13 m", "11 hoops of 2.38 m"."""
    units, number = plan.place.units, need.number
    size = "" if need.size is None else str(span(need.size, units))
    if number.value is None:
        return _("{what}, size not known").format(what=_ALONE[need.kind])
    match need.kind:
        case GoodKind.STRING:
            return _("string of {length}").format(length=tape(number.whole or 0, units))
        case GoodKind.TAPE:
            return _("tape of {length}").format(length=whole_words(need.size or 0, units))
        case GoodKind.SPACER | GoodKind.ROW_MARKER:
            own = is_own_tool(plan, need.kind, need.size)
            words = _TOOLS[need.kind] if own else _("spacing strip {spacing}")
            return words.format(spacing=apart(need.size or 0, units))
        case GoodKind.DIBBLE:
            return _ALONE[need.kind]
        case GoodKind.CLOTH | GoodKind.FILM:
            words = _("{length} of {what}, {width} wide") if size else _("{length} of {what}")
            return words.format(length=_pieces_words(need, units), what=_ALONE[need.kind], width=size)
        case GoodKind.STAKE:
            return stakes_words(number)
    count = number.whole or 0
    words = _counted(need.kind, count).format(count=grouped(count))
    return _("{hoops} of {length}").format(hoops=words, length=size) if size else words


def piece_words(need: Need, units: Units) -> str:
    """How long each piece of cloth or film is cut."""
    number = need.number
    each = number if number.value is None else known(number.name, number.value / need.pieces, Unit.LENGTH)
    return value_words(each, units)


def _pieces_words(need: Need, units: Units) -> str:
    """All pieces: "3 × 17.65 m"."""
    length = piece_words(need, units)
    return length if need.pieces == 1 else _("{count} × {length}").format(count=need.pieces, length=length)


def _counted(kind: GoodKind, count: int) -> str:
    match kind:
        case GoodKind.PEG:
            return ngettext("{count} peg", "{count} pegs", count)
        case GoodKind.HOOP:
            return ngettext("{count} hoop", "{count} hoops", count)
        case _:
            return ngettext("{count} weight or peg", "{count} weights or pegs", count)


def _seed_words(crop: Crop, made: Raising, layout: Layout, units: Units) -> str:
    """The seed of a block and how thick it is sown, or for how many places where the seed is not known."""
    if made.seeds is None:
        words = ngettext("seed for {plants} place", "seed for {plants} places", layout.plants)
        return words.format(plants=grouped(layout.plants))
    parts = [so_many_sown(crop, made.seeds)]
    if made.weight is not None and made.grams is not None:
        parts.append(value_words(made.weight, units))
    if crop.seeds_per_row is not None:
        parts.append(crop.seeds_per_row.text)
    return ", ".join(parts)


_TOOLS: Mapping[GoodKind, str] = {
    GoodKind.SPACER: _("spacing tool {spacing}"),
    GoodKind.ROW_MARKER: _("row marker {spacing}"),
}
_ALONE: Mapping[GoodKind, str] = {
    GoodKind.HOOP: _("hoops"),
    GoodKind.CLOTH: _("cloth"),
    GoodKind.FILM: _("clear film"),
    GoodKind.WEIGHT: _("weights or pegs"),
    GoodKind.DIBBLE: _("dibble"),
}


def block_words(one: Grown, layout: Layout, units: Units) -> str:
    """What is carried for a block: "136 plants (3 trays)", "63 clumps of 4 (2 trays)", "832 seeds, 12 / ft"."""
    made = raised_for(one, layout)
    if made.to_sow is None and not made.is_all_bought:
        return with_bought(_seed_words(one.crop, made, layout, units), one.crop, made)
    words = so_many_clumps(layout.plants, one.crop.stand)
    if made.trays:
        words += " " + ngettext("({count} tray)", "({count} trays)", made.trays).format(count=made.trays)
    return with_bought(words, one.crop, made)
