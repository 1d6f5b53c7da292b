"""The words of what the hand does: several blocks at once, neighbours pushed along, a distance measured."""

from collections.abc import Collection, Iterable, Sequence
from datetime import date
from itertools import groupby

from gardenplot.drawing.captions import GAP
from gardenplot.drawing.days import day_words
from gardenplot.drawing.left_words import left_on
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import between_readings, name_of, says, so_many_planted, titled
from gardenplot.drawing.so_many import so_many_of
from gardenplot.findings import Finding, Kind
from gardenplot.layout import lay_out_bed, lay_out_plan, planted_for_orders, stood
from gardenplot.plan import Establish, Plan, bed_of, crop_of, order_of, planting_of
from gardenplot.plan.clumps import clump_of, crop_as_planted
from gardenplot.season import dates_of, stand_for
from gardenplot.units import Units
from gardenplot.units.figures import grouped, offset, span
from gardenplot.words import _, ngettext


def chosen_name(plan: Plan, plantings: Sequence[str]) -> str:
    """What is chosen in a word or two: "Leek", or "3 plantings"."""
    if len(plantings) == 1:
        return name_of(plan, plantings[0])
    return ngettext("{count} planting", "{count} plantings", len(plantings)).format(count=len(plantings))


def asked_of(before: Plan, plan: Plan, planting_id: str) -> int:
    """The plants that the hand should leave a planting: those its order still lacks, or those that were typed for it.

    0 where nothing asks for a number. `before` is the plan that the hand began with.
    """
    planting = planting_of(plan, planting_id)
    if planting.order is None:
        typed = (one.plants for one in (planting, *before.plantings) if one.id == planting_id)
        return next((plants for plants in typed if plants is not None), 0)
    order, laid_out = order_of(plan, planting.order), lay_out_plan(plan)
    planted = planted_for_orders(laid_out)[order.id, planting.market or 1]
    laid = lay_out_bed(plan, bed_of(plan, planting.bed))
    layout = laid.layout_of(planting_id)
    itself = next(one for one in laid.grown if one.planting.id == planting_id)
    own, each = stood(itself, layout), layout.grid.in_row
    return max(0, stand_for(order, crop_as_planted(plan, planting), each) - planted + own)


def short_words(before: Plan, plan: Plan, planting_id: str) -> str:
    """That a block is too short for what is asked of it: "Leek: 64 of 90 plants"; nothing where it is not."""
    plants = lay_out_bed(plan, bed_of(plan, planting_of(plan, planting_id).bed)).layout_of(planting_id).plants
    asked = asked_of(before, plan, planting_id)
    if plants >= asked:
        return ""
    words = so_many_of(plants, asked, clump_of(plan, planting_id))
    return _("{crop}: {plants}").format(crop=name_of(plan, planting_id), plants=words)


def several_line(plan: Plan, plantings: Sequence[str], day: date | None) -> str:
    """Several plantings in a line: "3 plantings   250 plants   1.20 – 9.80 m   5.40 m of bed   nothing left"."""
    return GAP.join(several_parts(plan, plantings, day))


def several_parts(plan: Plan, plantings: Sequence[str], day: date | None) -> tuple[str, ...]:
    """The sum of several plantings: how many, plants, from where to where, how much of their beds, what is left."""
    units, beds = plan.place.units, list(dict.fromkeys(planting_of(plan, one).bed for one in plantings))
    laid_out = [lay_out_bed(plan, bed_of(plan, bed)) for bed in beds]
    blocks = [layout for laid in laid_out for layout in laid.layouts if layout.planting in plantings]
    start, end = min(block.start for block in blocks), max(block.end for block in blocks)
    where = ngettext("in {count} bed", "in {count} beds", len(beds)).format(count=len(beds))
    parts = (
        chosen_name(plan, plantings),
        where if len(beds) > 1 else "",
        so_many_planted(laid_out, plantings),
        between_readings(plan, start, end) if len(beds) == 1 else "",
        _("{length} of bed").format(length=span(sum(block.length for block in blocks), units)),
        left_on(laid_out, day, units),
    )
    return tuple(part for part in parts if part)


def together_words(plan: Plan, plantings: Sequence[str], day: date | None, look: dict[str, Look]) -> str:
    """Whose the fields of a panel are, the first's, and the sum of all; nothing where no more than one is chosen."""
    others = len(plantings) - 1
    if others < 1:
        return ""
    alone = ngettext(
        "The fields below are those of {block} alone; {count} more is chosen",
        "The fields below are those of {block} alone; {count} more are chosen",
        others,
    ).format(block=titled(plan, plantings[0], look), count=others)
    sums = " · ".join(several_parts(plan, plantings, day)[1:])
    return f"{alone}\n{_('Together: {sums}').format(sums=sums)}"


def gap_line(plan: Plan, bed: str, start: int, end: int) -> str:
    """A gap of a bed in a line: "gap in East   2.00 – 5.20 m   3.20 m long"."""
    name = _("gap in {bed}").format(bed=bed_of(plan, bed).name)
    length = _("{length} long").format(length=span(end - start, plan.place.units))
    return GAP.join((name, between_readings(plan, start, end), length))


def push_words(plan: Plan, pushed: Iterable[tuple[str, int]], look: dict[str, Look]) -> str:
    """Who is pushed along how far: "pushes B Leek and C Chard 0.40 m towards the foot"; nothing where nobody is."""
    ways = (
        (1, _("pushes {who} towards the foot"), _("{names} {length}")),
        (-1, _("pushes {who} towards the head"), _("{names} {length}")),
    )
    lines = []
    for way, sentence, each in ways:
        those = sorted((abs(by), planting) for planting, by in pushed if by * way > 0)
        groups = [
            (by, [titled(plan, one, look) for _by, one in some]) for by, some in groupby(those, lambda one: one[0])
        ]
        if groups:
            who = listed(
                [each.format(names=listed(names), length=span(by, plan.place.units)) for by, names in groups]
            )
            lines.append(sentence.format(who=who))
    return " · ".join(lines)


def stopped_words(plan: Plan, planting: str, look: dict[str, Look]) -> str:
    """Which planting can make no more room."""
    return _("{crop} is at the margin and goes no further").format(crop=titled(plan, planting, look))


def later_words(plan: Plan, planting: str, day: date, *, offered: bool = False) -> str:
    """That a new planting goes in when its ground is free: "set out on Fri 28 May 2027, when the ground is free".

    Or that it could, if that is only `offered`.
    """
    if crop_of(plan, planting_of(plan, planting).crop).establish is Establish.TRANSPLANT:
        words = _("hold Ctrl to set it out then") if offered else _("set out on {day}, when the ground is free")
    else:
        words = _("hold Ctrl to sow it then") if offered else _("sown on {day}, when the ground is free")
    return words.format(day=day_words(day))


def listed(names: Sequence[str]) -> str:
    """Names in a row: "Leek", "Leek and Chard", "Leek, Chard and Beet"."""
    if len(names) < 2:
        return "".join(names)
    return _("{first} and {last}").format(first=", ".join(names[:-1]), last=names[-1])


def measured_words(units: Units, along: int, across: int | None, straight: int) -> str:
    """A distance in nm along, across and straight; from one bed to another only along the tape that they share."""
    words = _("along {length}").format(length=span(along, units))
    if across is None:
        return words + " · " + _("two beds: only along the tape")
    if across:
        words += " · " + _("across {length}").format(length=offset(across, units))
        words += " · " + _("straight {length}").format(length=span(straight, units))
    return words


def parts_words(plan: Plan, planting: str, first: int, rest: int, whole: int) -> str:
    """What a split comes to: "Leek: 60 + 60 plants; both stay with the order"."""
    order = planting_of(plan, planting).order
    words = _parts_words(plan, planting, first, rest)
    if first + rest < whole:
        words += ", " + _("{count} fewer than before, since every second row is moved").format(
            count=grouped(whole - first - rest)
        )
    return words + ("; " + _("both parts stay with the order") if order else "")


def _parts_words(plan: Plan, planting: str, first: int, rest: int) -> str:
    words = _("{crop}: {first} + {rest} plants")
    if clump_of(plan, planting) > 1:
        words = _("{crop}: {first} + {rest} clumps")
    return words.format(crop=name_of(plan, planting), first=grouped(first), rest=grouped(rest))


def joined_words(plan: Plan, planting: str, first: int, rest: int, whole: int) -> str:
    """What a join comes to: "Leek: 60 + 60 = 120 plants", or how many more the ground between them takes."""
    words = _parts_words(plan, planting, first, rest)
    more = whole - first - rest
    if more:
        return words + ", " + _("and {count} between them: {whole}").format(count=grouped(more), whole=grouped(whole))
    return words + f" = {grouped(whole)}"


def refusal_words(
    plan: Plan, finding: Finding, held: Collection[str], look: dict[str, Look], later: date | None = None
) -> str:
    """Why the hand cannot do what it tries with what it holds; of taken ground, also from which day it is free.

    Where the hand is offered a `later` day, that is the day, since something else may stand there in between.
    """
    words = says(plan, finding, look)
    there = [one for one in (finding.planting, finding.other) if one is not None and one not in held]
    if finding.kind is not Kind.OVERLAP or not there:
        return words
    free = later or dates_of(plan, planting_of(plan, there[0])).out
    return words if free is None else _("{words}; free from {day}").format(words=words, day=day_words(free))
