"""Planning again what was lost in the bed: plants after setting out, rows that failed, seed that came up thinly.

What is put into gaps stands in the places that are empty and takes no other ground. A further row of another crop in
an empty one keeps half its own row spacing and half that of what stands beside it. What is still lost up to the
harvest is counted as it was planned. Formulas: common practice, no source.
"""

from collections.abc import Iterator
from datetime import date, timedelta

from attrs import evolve

from gardenplot.filling.claims import pinned, with_planting
from gardenplot.filling.freed import filled_instead
from gardenplot.filling.placed import Placed
from gardenplot.filling.rescue import (
    Ask,
    Case,
    alone,
    anew,
    bought,
    earliest,
    in_some_bed,
    setback,
    sown_today,
    stands_free,
    told,
)
from gardenplot.filling.setback_numbers import counted_number, empty_number, short_number
from gardenplot.filling.setbacks import Answer, AnswerKind, Setback, Why
from gardenplot.filling.task import comes_back
from gardenplot.layout import Grown, LaidOut, Layout, has_room, lay_out_bed, lay_out_plan, planted_for_wishes, stood
from gardenplot.layout.bed import failed_rows, grown_of
from gardenplot.plan import (
    Crop,
    Direction,
    Establish,
    Pattern,
    Phase,
    Planting,
    Remainder,
    Wish,
    crop_of,
    planting_of,
)
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.season import dates_of
from gardenplot.units import length_of
from gardenplot.working import Number, Source


def stand_setbacks(ask: Ask) -> Iterator[Setback]:
    """What was lost of each planting that stands in its bed and is not cut yet, in the plan's order."""
    there = pinned(ask.plan)
    for laid in lay_out_plan(ask.plan):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            came = one.planting.actual
            is_there = layout.planting in ask.only and is_in_ground(one.planting)
            if came is None or not is_there or came.harvested or came.cleared:
                continue
            planned = layout.plants if came.planted is None else min(came.planted, layout.plants)
            standing = stood(one, layout)
            lost = short_number(
                counted_number("planted", planned), counted_number("still_there", standing, Source.CAME_ABOUT),
                counted_number("in_gaps", _filled(laid, one.planting.id)),
            )  # fmt: skip
            if lost.value:
                own = planting_of(there, one.planting.id)
                yield _setback(ask.case(there, own, layout, standing, lost.whole or 0), one, planned, lost)


def _filled(laid: LaidOut, planting: str) -> int:
    """The plants that stand, or are to stand, in the gaps of a planting."""
    beside = zip(laid.grown, laid.layouts, strict=True)
    return sum(stood(one, layout) for one, layout in beside if one.planting.gaps_of == planting)


def _setback(case: Case, one: Grown, planned: int, lost: Number) -> Setback:
    rows = failed_rows(one, case.layout)
    empty = empty_number(sum(case.layout.per_row[row - 1] for row in rows), case.layout.grid.in_row)
    return setback(
        case, Why.LOST, _answers(case, rows), (lost, empty) if rows else (lost,), planned=planned,
        standing=case.settable, failed_rows=rows, empty=empty.whole,
        stand=one.planting.actual.stand if one.planting.actual else None,
    )  # fmt: skip


def _answers(case: Case, rows: tuple[int, ...]) -> Iterator[Answer]:
    yield from told(case, AnswerKind.LESS, case.plan)
    if case.is_raised:
        yield from _replant(case, rows, AnswerKind.BUY_IN, bought(case, case.today))
    day = earliest(case)
    if day is not None:
        sown = anew(case, day, case.today if case.is_raised else None)
        yield from _replant(case, rows, AnswerKind.SOW_AGAIN, sown)
        yield from _second_block(case, day)
    yield from _other_crops(case, rows)
    if not case.settable:
        yield from filled_instead(case)


def _replant(case: Case, rows: tuple[int, ...], kind: AnswerKind, one: Planting) -> Iterator[Answer]:
    """The same crop in the places that are empty."""
    gaps = _in_gaps(case, rows, one)
    if gaps is None or not stands_free(case.plan, gaps):
        return
    sowing = sown_today(case, alone(case.plan, gaps)) if kind is AnswerKind.SOW_AGAIN else None
    if kind is AnswerKind.SOW_AGAIN and sowing is None:
        return
    plan = with_planting(case.plan, gaps)
    buy = case.lacks if kind is AnswerKind.BUY_IN else 0
    yield from told(case, kind, plan, buy=buy, sowing=sowing, new=gaps.id)


def _in_gaps(case: Case, rows: tuple[int, ...], one: Planting) -> Planting | None:
    """A planting in the gaps of the case's, over all of its block: in its failed rows where these are all that is
    empty, else among its plants."""
    layout, units = case.layout, case.plan.place.units
    there = evolve(
        one, gaps_of=case.planting.gaps_of or case.planting.id, start=length_of(layout.start, units),
        in_row=length_of(layout.grid.in_row, units), remainder=Remainder.FOOT, keep_clear=None,
    )  # fmt: skip
    if _has_lines(layout) and sum(layout.per_row[row - 1] for row in rows) == case.lacks:
        there = _in_rows(case, rows, there)
    if layout.grid.pattern in (Pattern.RINGS, Pattern.BROADCAST):
        return None
    rest = layout.length - alone(case.plan, there).length
    return evolve(there, slack=length_of(rest, units)) if rest > 0 else there


def _has_lines(layout: Layout) -> bool:
    """Whether rows are straight lines along the bed that can each be planted alone."""
    grid = layout.grid
    return grid.pattern in (Pattern.STRAIGHT, Pattern.OFFSETS) and not grid.runs_across and grid.turn is None


def _in_rows(case: Case, rows: tuple[int, ...], one: Planting) -> Planting:
    """A planting whose rows are some of those of the case's."""
    units = case.plan.place.units
    offsets = tuple(length_of(case.layout.offsets[row - 1], units) for row in rows)
    return evolve(
        one, pattern=Pattern.OFFSETS, offsets=offsets, rows=None, row_spacing=(), twin_spacing=None, cell=None,
        direction=Direction.ALONG, phase=Phase.CENTRED,
    )  # fmt: skip


def _second_block(case: Case, day: date) -> Iterator[Answer]:
    """What is lacking once more in other ground: of what is sown in its bed, since rows in rows come up unevenly."""
    if case.crop.establish is not Establish.DIRECT:
        return
    there = in_some_bed(case, case.plan, anew(case, day, None))
    if there is not None:
        plan = with_planting(case.plan, there)
        sowing = sown_today(case, alone(plan, there))
        yield from told(case, AnswerKind.SECOND_BLOCK, plan, sowing=sowing, new=there.id)


def _other_crops(case: Case, rows: tuple[int, ...]) -> Iterator[Answer]:
    """Each wish that can grow in the empty rows."""
    if not rows or not _has_lines(case.layout):
        return
    planted = planted_for_wishes(lay_out_plan(case.plan))
    for wish in case.plan.wishes:
        most = None if wish.most is None else wish.most - planted.get((wish.id, 1), 0)
        there = _wished(case, rows, wish, most)
        if there is None:
            continue
        plan = with_planting(case.plan, there)
        layout, dates = lay_out_bed(plan, case.bed).layout_of(there.id), dates_of(plan, there)
        placed = Placed(
            wish.id, there.id, case.bed.id, layout.plants, layout.start, layout.end, dates.in_ground, dates.out
        )
        yield from told(case, AnswerKind.FILL_ROWS, plan, filled=(placed,))


def _wished(case: Case, rows: tuple[int, ...], wish: Wish, most: int | None) -> Planting | None:
    """A wish in those of the empty rows that keep their distance, as many plants as it may have; None where none can.

    It goes in as soon as it may, and must be out before its latest day and before others need the ground.
    """
    crop, units = crop_of(case.plan, wish.crop), case.plan.place.units
    raising = crop.raising_days if crop.establish is Establish.TRANSPLANT else 0
    kept = _keeping(case, rows, crop)
    if raising is None or not kept or (wish.beds and case.bed.id not in wish.beds):
        return None
    day = max(case.today + timedelta(days=raising), wish.earliest or date.min)
    bare = Planting(
        case.fresh, case.bed.id, crop.id, start=length_of(case.layout.start, units), in_ground=day, wish=wish.id,
        length=length_of(case.layout.length, units), gaps_of=case.planting.gaps_of or case.planting.id,
        out=day + timedelta(days=wish.days) if wish.days else None,
    )  # fmt: skip
    there = _in_rows(case, kept, bare)
    layout = alone(case.plan, there)
    if most is not None and layout.plants > most > 0:
        there = evolve(there, plants=most, length=None)
        rest = case.layout.length - alone(case.plan, there).length
        there = evolve(there, slack=length_of(rest, units)) if rest > 0 else there
        layout = alone(case.plan, there)
    dates = grown_of(case.plan, there).dates
    is_late = wish.latest is not None and (dates.out is None or dates.out > wish.latest)
    is_few = not layout.plants or layout.plants < wish.least or (most is not None and most <= 0)
    laid = lay_out_bed(case.plan, case.bed)
    if is_late or is_few or not has_room(layout.grid) or comes_back(case.plan.place, laid, crop, there.id, dates):
        return None
    return there if stands_free(case.plan, there) else None


def _keeping(case: Case, rows: tuple[int, ...], crop: Crop) -> tuple[int, ...]:
    """The empty rows in which another crop keeps its distance from the edge, from what stands and from itself."""
    offsets, own, between = case.layout.offsets, case.layout.grid.between, crop.row_spacing[0].nm
    asked = crop.edge or case.bed.edge
    edge = between // 2 if asked is None else asked.nm
    standing = [at for number, at in enumerate(offsets, start=1) if number not in rows]
    kept: list[int] = []
    for row in rows:
        at = offsets[row - 1]
        from_edge = min(at, case.bed.width.nm - at)
        beside = all(2 * abs(at - other) >= own + between for other in standing)
        if from_edge >= edge and beside and all(at - offsets[other - 1] >= between for other in kept):
            kept.append(row)
    return tuple(kept)
