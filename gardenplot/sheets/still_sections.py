"""What of an earlier turn still stands in a bed when those of a later one are planted: where, and until when."""

from collections.abc import Iterator
from datetime import date

from gardenplot.drawing.carried import are_pegged
from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import cut_by, titled
from gardenplot.layout import Grown, LaidOut, Layout, followers_of
from gardenplot.layout.reserved import Follower, in_the_way, with_answer
from gardenplot.plan import Pattern, Plan, Reserved
from gardenplot.season import share_days
from gardenplot.sheets.section import Section, headed, sentence, space, stacked
from gardenplot.units import Units
from gardenplot.units.figures import grouped, offset
from gardenplot.words import _, ngettext

_MOST_ROWS = 6
"""More rows are counted, not listed: one knows the bed by these."""


def still_sections(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]
) -> tuple[Section, ...]:  # fmt: skip
    """The plantings of earlier turns among which those of a turn are planted; none where all the ground is free."""
    found = [
        part
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if layout not in layouts and _is_among(one, laid, layouts)
        for part in _parts(plan, laid, one, layout, layouts, look)
    ]
    return (stacked(headed(_("Still in the bed"), ""), *found, space(5)),) if found else ()


def _is_among(one: Grown, laid: LaidOut, layouts: tuple[Layout, ...]) -> bool:
    """Whether a planting went in before one of a turn and stands beside it on some day."""
    begins, shown = one.dates.in_ground, {layout.planting for layout in layouts}
    return begins is not None and any(
        other.planting.id in shown
        and other.dates.in_ground is not None
        and begins < other.dates.in_ground
        and share_days(one.dates, other.dates)
        for other in laid.grown
    )


def _parts(
    plan: Plan, laid: LaidOut, one: Grown, layout: Layout, layouts: tuple[Layout, ...], look: dict[str, Look]
) -> Iterator[Section]:
    """Where a planting stands and until when, what is cut of it for those of the turn, and which have pegs."""
    units, shown = plan.place.units, {other.planting for other in layouts}
    kept = tuple(each for each in followers_of(laid, layout.planting) if each.layout.planting in shown)
    yield _stands(titled(plan, layout.planting, look), one, with_answer(layout, kept, Reserved.PLACES_EMPTY), units)
    for follower in kept:
        yield from _made_free(plan, laid, layout, follower, look)


def _stands(name: str, one: Grown, layout: Layout, units: Units) -> Section:
    """One planting: "A Cos lettuce stands in rows at 5″, 25″ until 23 May", small, as nothing is set out there."""
    # Its ground is free on the day that it is out.
    last = cut_by(one.dates.out)
    until = _(" until {day}").format(day=short_day(last)) if last is not None else ""
    rows = [str(offset(row.offset, units)) for row in layout.rows if row.count]
    is_along = not layout.grid.runs_across and layout.grid.turn is None and layout.grid.pattern is not Pattern.CELLS
    if not rows or not is_along:
        return sentence(_("{name} stands{until}").format(name=name, until=until))
    if len(rows) > _MOST_ROWS:
        words = ngettext("{name} stands in {count} row{until}", "{name} stands in {count} rows{until}", len(rows))
        return sentence(words.format(name=name, count=len(rows), until=until))
    words = ngettext("{name} stands in the row at {at}{until}", "{name} stands in rows at {at}{until}", len(rows))
    return sentence(words.format(name=name, at=", ".join(rows), until=until))


def _made_free(
    plan: Plan, laid: LaidOut, layout: Layout, follower: Follower, look: dict[str, Look]
) -> Iterator[Section]:  # fmt: skip
    """How many plants are cut where a following crop is set out, and that its places are pegged."""
    other, letter = follower.layout.planting, look[follower.layout.planting].letter
    cut, last = in_the_way(layout, (follower,)), cut_by(_begins(laid, other))
    if cut and last is not None:
        words = ngettext(
            "{count} plant of it is cut by {day}, where {letter} comes",
            "{count} plants of it are cut by {day}, where {letter} comes",
            cut,
        )
        yield sentence(words.format(count=grouped(cut), day=short_day(last), letter=letter))
    if follower.layout.plants and are_pegged(follower.layout):
        words = _("{planting}: pegs at both edges of the bed mark its places")
        yield sentence(words.format(planting=titled(plan, other, look)))


def _begins(laid: LaidOut, planting_id: str) -> date | None:
    return next(one.dates.in_ground for one in laid.grown if one.planting.id == planting_id)
