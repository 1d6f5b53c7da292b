"""Planning again what is raised and not yet in the ground: seedlings or cells too few, a bed that is late.

A planting whose bed is late goes in on the bed's first day in every answer, so an answer whose own wait is no longer
costs no market any more. Plants to set out = floor(seedlings x (1 - loss)) + plants bought in; plants to sow again =
ceil(short / (1 - loss)). Where seedlings were not counted but cells were, so many come up as the packet says.
Formulas: common practice, no source.
"""

from bisect import bisect_left
from collections.abc import Iterator
from datetime import date

from attrs import evolve

from gardenplot.filling.claims import of_size, pinned, placed_whole, with_planting
from gardenplot.filling.parted import in_other_beds
from gardenplot.filling.rescue import (
    Ask,
    Case,
    anew,
    earliest,
    for_its_market,
    setback,
    sown_today,
    stands_free,
    told,
)
from gardenplot.filling.setback_numbers import (
    came_up_number,
    counted_number,
    day_number,
    days_number,
    in_percent,
    settable_number,
    share_number,
    short_number,
    sown_cells,
    spread_number,
    that_are_known,
)
from gardenplot.filling.setbacks import Answer, AnswerKind, Setback, Spread, Why
from gardenplot.layout import Grown, Layout, ground_for, lay_out_bed, lay_out_plan
from gardenplot.layout.bed import grown_of
from gardenplot.plan import Actual, Establish, Plan, Planting, bed_of, crop_of, order_of, planting_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.season import Dates, dates_of
from gardenplot.units import CM, INCH, Length, Units, length_of
from gardenplot.working import Number, Source, Unit, known

_NOTHING_YET = Actual()


def raised_setbacks(ask: Ask) -> Iterator[Setback]:
    """What deviates of each planting that is raised and not yet in the ground, in the plan's order."""
    there = pinned(ask.plan)
    for laid in lay_out_plan(ask.plan):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            is_asked = layout.planting in ask.only and one.hardened is None
            if is_asked and not _went_in(one):
                yield from _setback(ask, there, one.planting, layout)


def _went_in(one: Grown) -> bool:
    """Whether it is in the ground, perhaps sown there on a day that no other one is kept for."""
    came, is_direct = one.planting.actual, one.crop.establish is Establish.DIRECT
    return is_in_ground(one.planting) or (is_direct and came is not None and came.sown is not None)


def _setback(ask: Ask, there: Plan, one: Planting, layout: Layout) -> Iterator[Setback]:
    plan = ask.plan
    crop, bed, came = crop_of(plan, one.crop), bed_of(plan, one.bed), one.actual or _NOTHING_YET
    can, plants = settable_number(crop, came, ask.loss), counted_number("planted", layout.plants)
    short = short_number(plants, can) if can is not None else None
    lacks = (short.whole or 0) if short is not None else 0
    settable = layout.plants - lacks if can is None or came.stand is None else can.whole or 0
    dates, first = dates_of(plan, one), bed.usable_from
    late = (first - dates.in_ground).days if first and dates.in_ground and first > dates.in_ground else 0
    case = ask.case(there, planting_of(there, one.id), layout, settable, lacks)
    past = (ask.today - max(dates.in_ground, first or date.min)).days if dates.in_ground else 0
    if not late and not lacks and not is_missed(case, dates):
        return
    cells = sown_cells(grown_of(plan, one), layout) if came.stand is not None or lacks else None
    sown = None if cells is None else cells.whole
    if came.stand is not None and sown:
        # What was sown was sown for the plants that were meant, and not for those that an answer leaves.
        case = evolve(case, planting=evolve(case.planting, actual=evolve(came, cells=sown)))
    is_more = one.order is not None and came.stand is None and lacks > 0 and not late
    counts = that_are_known(*([short, can] if lacks else []), plants, *_came_up(came, cells))
    yield setback(
        case, Why.MORE if is_more else Why.RAISED, _answers(case, sown, is_late=late > 0 or past > 0),
        (*counts, *_late(first if late else None, dates), *_past_numbers(ask.today, dates, past)),
        stand=came.stand, sown=sown, late=late, past=max(0, past), order=one.order if is_more else None,
        wanted=order_of(plan, one.order).units if is_more and one.order is not None else 0,
    )  # fmt: skip


def is_missed(case: Case, planned: Dates) -> bool:
    """Whether its day is past with nothing recorded and that is worth asking of: it may have been done even so.

    What is in trays has something recorded, of what is sown in its bed something else in the plan has. Whose days are
    all over is to be looked back on, what finds its ground taken by now is asked of there, and what its market asks
    for later still can wait.
    """
    day, first = planned.in_ground, case.bed.usable_from or date.min
    if day is None or is_in_ground(case.planting) or case.today <= max(day, first):
        return False
    for_market = for_its_market(case)
    if for_market is not None and for_market > case.today:
        return False
    is_kept = case.planting.actual is not None or (
        not case.is_raised and any(one.actual is not None for one in case.before.plantings)
    )
    is_over = planned.out is not None and planned.out <= case.today
    return is_kept and not is_over and stands_free(case.plan, case.planting)


def _came_up(came: Actual, cells: Number | None) -> Iterator[Number]:
    if cells is not None:
        yield cells
        if came.stand is not None and cells.value:
            yield in_percent(came_up_number(came.stand, cells))


def _late(first: date | None, dates: Dates) -> Iterator[Number]:
    """By how many days the bed is late."""
    if first is not None and dates.in_ground is not None:
        usable, planned = day_number("usable_from", first, Source.OF_BED), day_number("planned_day", dates.in_ground)
        yield days_number("bed_late", usable, planned)


def _past_numbers(today: date, dates: Dates, past: int) -> Iterator[Number]:
    """By how many days its own day is past."""
    if past > 0 and dates.in_ground is not None:
        yield days_number("past_by", day_number("today", today), day_number("planned_day", dates.in_ground))


def _answers(case: Case, sown: int | None, *, is_late: bool) -> Iterator[Answer]:
    if case.lacks:
        yield from told(case, AnswerKind.BUY_IN, with_planting(case.plan, _bought(case)), buy=case.lacks)
        if case.settable:
            yield from told(case, AnswerKind.SHORT, with_planting(case.plan, _fewer(case)))
            yield from _spread(case)
        yield from _sow_again(case, sown)
    elif is_late:
        yield from told(case, AnswerKind.LATER, case.plan)
    if is_late and case.settable:
        planned = evolve(planting_of(pinned(case.before), case.planting.id), actual=case.planting.actual)
        one, plants = (
            (of_size(planned, case.settable), case.settable) if case.lacks else (planned, case.layout.plants)
        )
        yield from in_other_beds(case, _fewer(case), plants, one)


def _bought(case: Case) -> Planting:
    """The planting with all that it lacks bought in."""
    came = case.planting.actual or _NOTHING_YET
    return evolve(case.planting, actual=evolve(came, bought=(came.bought or 0) + case.lacks))


def _fewer(case: Case) -> Planting:
    return of_size(case.planting, case.settable) if case.lacks else case.planting


def _spread(case: Case) -> Iterator[Answer]:
    """As many ranks as the plants need, over all the room that the planting has at its place.

    Where its ground is not as wide everywhere it is the widest spacing found at which all of them have a place there.
    """
    few = with_planting(case.plan, _fewer(case))
    layout = lay_out_bed(few, case.bed).layout_of(case.planting.id)
    room = ground_for(few, case.planting, case.bed.id).end_of_room(layout.start) - layout.start
    ranks = -(-layout.length // layout.grid.rank) if layout.grid.rank else 0
    if layout.grid.runs_across or not ranks or layout.grid.cell:
        return
    number = spread_number(room, ranks)
    exact = number.whole or 0
    spacings = _markable(case, exact, layout.grid.in_row)

    def is_inside(spacing: int) -> bool:
        spread = lay_out_bed(_spaced(case, spacing), case.bed).layout_of(case.planting.id)
        return spread.plants >= layout.plants and spread.end <= layout.start + room

    at = bisect_left(spacings, True, key=is_inside)
    if at == len(spacings):
        return
    marked = spacings[at]
    spread = Spread(exact, marked, number)
    if at:
        # Less than room for room, since the ground is cut: found by trying, not by a formula.
        spread = Spread(marked, marked, known(number.name, marked, Unit.SPACING, source=Source.TRIED))
    yield from told(case, AnswerKind.SPREAD, _spaced(case, marked), spread=spread)


def _spaced(case: Case, spacing: int) -> Plan:
    """As many plants as there are, so many nm apart in the row."""
    return with_planting(case.plan, evolve(_fewer(case), in_row=length_of(spacing, case.plan.place.units)))


def _markable(case: Case, exact: int, least: int) -> list[int]:
    """Spacings up to one and above another that can be marked, the widest first.

    By the place's tools, else whole cm or quarters of an inch.
    """
    markable: tuple[Length, ...] = case.plan.place.markable_in_row
    if markable:
        found = {one.nm for one in markable}
    else:
        finest = CM if case.plan.place.units is Units.METRIC else INCH // 4
        found = set(range(exact // finest * finest, least, -finest))
    return sorted((one for one in found if least < one <= exact), reverse=True)


def _sow_again(case: Case, sown: int | None) -> Iterator[Answer]:
    """Sown today for the places that are left, set out when they have their days and the bed can be used."""
    came, day = case.planting.actual or _NOTHING_YET, earliest(case)
    if day is None or not sown or came.stand == 0:
        return
    sowing = sown_today(case, case.layout, share_number(came.stand, sown, None))
    few = with_planting(case.plan, _fewer(case)) if case.settable else case.plan
    if sowing is None:
        return
    late = evolve(anew(case, day, case.today), sow_cells=sowing.cells)
    there = placed_whole(few, late, () if case.settable else (case.planting.id,))
    if there is None:
        return
    if not case.settable:
        few = evolve(few, plantings=tuple(one for one in few.plantings if one.id != case.planting.id))
    yield from told(case, AnswerKind.SOW_AGAIN, with_planting(few, there), sowing=sowing, new=there.id)
