"""The words of what the hand does: several blocks at once, neighbours pushed along, a distance measured."""

from collections.abc import Collection, Iterable, Sequence
from datetime import date
from itertools import groupby

from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.planting_words import day_words
from gardenplot.drawing.sayings import between_readings, name_of, says, titled
from gardenplot.findings import Finding, Kind
from gardenplot.layout import free_on, lay_out_bed
from gardenplot.plan import Plan, bed_of, planting_of
from gardenplot.season import dates_of
from gardenplot.units import Units
from gardenplot.units.figures import grouped, offset, span
from gardenplot.words import _, ngettext


def chosen_name(plan: Plan, plantings: Sequence[str]) -> str:
    """What is chosen in a word or two: "Leek", or "3 plantings"."""
    if len(plantings) == 1:
        return name_of(plan, plantings[0])
    return ngettext("{count} planting", "{count} plantings", len(plantings)).format(count=len(plantings))


def several_line(plan: Plan, plantings: Sequence[str], day: date | None) -> str:
    """Several plantings in a line: "3 plantings   250 plants   1.20 – 9.80 m   8.60 m long   0.65 m left"."""
    units, beds = plan.place.units, list(dict.fromkeys(planting_of(plan, one).bed for one in plantings))
    laid_out = [lay_out_bed(plan, bed_of(plan, bed)) for bed in beds]
    blocks = [layout for laid in laid_out for layout in laid.layouts if layout.planting in plantings]
    plants = sum(block.plants for block in blocks)
    start, end = min(block.start for block in blocks), max(block.end for block in blocks)
    left = sum(free_on(laid, day).total for laid in laid_out)
    where = ngettext("in {count} bed", "in {count} beds", len(beds)).format(count=len(beds))
    parts = (
        chosen_name(plan, plantings),
        where if len(beds) > 1 else "",
        ngettext("{count} plant", "{count} plants", plants).format(count=grouped(plants)),
        between_readings(plan, start, end),
        _("{length} long").format(length=span(end - start, units)),
        _("{length} left").format(length=span(left, units)),
    )
    return "   ".join(part for part in parts if part)


def push_words(plan: Plan, pushed: Iterable[tuple[str, int]]) -> str:
    """Who is pushed along how far: "pushes B Leek and C Chard 0.40 m towards the foot"; nothing where nobody is."""
    look = looks(plan)
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


def stopped_words(plan: Plan, planting: str) -> str:
    """Which planting can make no more room."""
    return _("{crop} stands at the margin: nothing can be pushed further").format(
        crop=titled(plan, planting, looks(plan))
    )


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
    words = _("{crop}: {first} + {rest} plants").format(
        crop=name_of(plan, planting), first=grouped(first), rest=grouped(rest)
    )
    if first + rest < whole:
        words += ", " + _("{count} fewer than before, since every second row is moved").format(
            count=grouped(whole - first - rest)
        )
    return words + ("; " + _("both parts stay with the order") if order else "")


def joined_words(plan: Plan, planting: str, first: int, rest: int, whole: int) -> str:
    """What a join comes to: "Leek: 60 + 60 = 120 plants", or how many more the ground between them takes."""
    words = _("{crop}: {first} + {rest} plants").format(
        crop=name_of(plan, planting), first=grouped(first), rest=grouped(rest)
    )
    more = whole - first - rest
    if more:
        return words + ", " + _("and {count} between them: {whole}").format(count=grouped(more), whole=grouped(whole))
    return words + f" = {grouped(whole)}"


def refusal_words(plan: Plan, finding: Finding, held: Collection[str], look: dict[str, Look]) -> str:
    """Why the hand cannot do what it tries with what it holds; of taken ground, also from which day it is free."""
    words = says(plan, finding, look)
    there = [one for one in (finding.planting, finding.other) if one is not None and one not in held]
    if finding.kind is not Kind.OVERLAP or not there:
        return words
    free = dates_of(plan, planting_of(plan, there[0])).out
    return words if free is None else _("{words}; free from {day}").format(words=words, day=day_words(free))
