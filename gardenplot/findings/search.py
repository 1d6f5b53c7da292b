"""Looking through a plan for findings, bed by bed."""

from collections.abc import Iterator
from datetime import date
from functools import lru_cache
from itertools import combinations

from gardenplot.findings.cold_edge import find_in_cold_edges
from gardenplot.findings.finding import Finding, Kind
from gardenplot.findings.ground import find_on_ground
from gardenplot.findings.hardening import find_trays
from gardenplot.findings.shade import find_shade
from gardenplot.findings.slips import find_slips, find_slips_in
from gardenplot.findings.timing import find_in_time
from gardenplot.findings.today import find_on_day, find_past_markets, find_today, is_past
from gardenplot.findings.tools import find_unmarkable
from gardenplot.layout import (
    Grown,
    LaidOut,
    Layout,
    compete,
    followers_of,
    free_on,
    fullest_day,
    has_room,
    lay_out_bed,
    lay_out_plan,
    nearest_rows,
    planted_for_orders,
    spacings_for_orders,
)
from gardenplot.layout.across import closer_than_packet
from gardenplot.layout.reserved import in_the_way
from gardenplot.plan import Bed, Cover, Order, Pattern, Plan, bed_of, crop_of, planting_of
from gardenplot.season import market_days, stand_for
from gardenplot.season.orders import Each
from gardenplot.units import CM

_BESIDE = 2 * CM
"""A row nearer to a drip line than this is on it; the limit is ours."""


@lru_cache(maxsize=16)
def find_all(plan: Plan, today: date | None = None) -> tuple[Finding, ...]:
    """All findings: bed by bed in the plan's order, then their places, what contradicts itself, what no tool
    marks, days past, and the orders.

    `today` is the day on which the plan is looked at; without one nothing is said to be past.
    """
    covers: dict[str, tuple[Cover, ...]] = {}
    for cover in plan.covers:
        covers[cover.bed] = (*covers.get(cover.bed, ()), cover)
    laid_out = lay_out_plan(plan)
    beds = (
        finding
        for laid in laid_out
        for finding in (*find_in_bed(laid), *find_in_time(laid, plan.place, covers.get(laid.bed.id, ())))
    )
    past = find_today(plan, today) if today is not None else ()
    return (
        *beds, *find_on_ground(plan), *find_trays(plan, laid_out),
        *find_in_cold_edges(plan, laid_out), *find_shade(plan, laid_out), *find_slips(plan, laid_out),
        *find_unmarkable(plan), *past, *find_in_orders(plan, today),
    )  # fmt: skip


def find_of_planting(plan: Plan, planting_id: str, today: date | None = None) -> tuple[Finding, ...]:
    """What stands against one planting, its orders apart; what is only worth knowing is left out."""
    bed = bed_of(plan, planting_of(plan, planting_id).bed)
    laid, covers = lay_out_bed(plan, bed), tuple(cover for cover in plan.covers if cover.bed == bed.id)
    one = next(each for each in laid.grown if each.planting.id == planting_id)
    found = (
        *find_in_bed(laid), *find_in_time(laid, plan.place, covers), *find_trays(plan, lay_out_plan(plan)),
        *find_in_cold_edges(plan, (laid,)), *find_slips_in(laid), *find_unmarkable(plan),
        *(find_on_day(plan, one, laid.layout_of(planting_id), today) if today is not None else ()),
    )  # fmt: skip
    return tuple(each for each in found if planting_id in (each.planting, each.other) and not each.is_note)


@lru_cache(maxsize=2048)
def find_in_bed(laid: LaidOut) -> tuple[Finding, ...]:
    """The findings of one bed, what cannot be done first."""
    found = [*_overlaps(laid), *_leftover(laid)]
    for one, layout in zip(laid.grown, laid.layouts, strict=True):
        found += _in_the_way(laid, layout)
        found += [
            *_dates(one, layout),
            *_outside(laid.bed, layout),
            *_rows(layout),
            *_no_plant(laid.bed, layout),
            *_closer(one, layout),
            *_on_drip_lines(laid.bed, layout),
        ]
    rank = list(Kind).index
    return tuple(sorted(found, key=lambda finding: (rank(finding.kind), finding.start)))


def find_in_orders(plan: Plan, today: date | None = None) -> tuple[Finding, ...]:
    """Orders that nothing is planted for, or too little: the plants short of those that must stand.

    Market days before `today` are told apart, unless all of the plan is past.
    """
    laid_out = lay_out_plan(plan)
    planted, each = planted_for_orders(laid_out), spacings_for_orders(laid_out)
    past = find_past_markets(plan, today) if today is not None else ()
    shortages = (
        finding
        for order in plan.orders
        for finding in _order(plan, order, planted, each, None if today is None or is_past(plan, today) else today)
    )
    return (*past, *shortages)


def _order(
    plan: Plan,
    order: Order,
    planted: dict[tuple[str, int], int],
    each: dict[tuple[str, int], Each],
    first: date | None,
) -> Iterator[Finding]:
    """Each market day that has too little; those that have nothing are told together, with the first of them.

    Those that have nothing before the `first` day are left out, and all of an order that was withdrawn.
    """
    crop, days = crop_of(plan, order.crop), market_days(order) if order.units else ()
    bare = [
        market
        for market, day in enumerate(days, start=1)
        if (order.id, market) not in planted and (first is None or day >= first)
    ]
    for market in range(1, len(days) + 1):
        standing = planted.get((order.id, market), 0)
        needed = stand_for(order, crop, each.get((order.id, market)))
        if market in bare[:1]:
            yield Finding(
                Kind.ORDER_UNPLANTED, order=order.id, amount=0, limit=needed, market=market, pieces=len(bare)
            )
        elif standing < needed and (order.id, market) in planted:
            yield Finding(Kind.ORDER_SHORT, order=order.id, amount=standing, limit=needed, market=market)


def _overlaps(laid: LaidOut) -> Iterator[Finding]:
    pairs = combinations(zip(laid.grown, laid.layouts, strict=True), 2)
    for (one, layout), (other, beside) in pairs:
        start, end = max(layout.start, beside.start), min(layout.end, beside.end)
        if start < end and compete(one, other):
            first, second = sorted((layout, beside), key=lambda each: each.start)
            yield Finding(
                Kind.OVERLAP, laid.bed.id, second.planting, first.planting, start=start, end=end, amount=end - start
            )


def _in_the_way(laid: LaidOut, layout: Layout) -> Iterator[Finding]:
    """Plants that stand on the places of a following crop when it is set out."""
    for follower in followers_of(laid, layout.planting):
        plants = in_the_way(layout, (follower,))
        if plants:
            yield Finding(
                Kind.IN_THE_WAY, layout.bed, layout.planting, follower.layout.planting,
                start=max(layout.start, follower.layout.start), end=min(layout.end, follower.layout.end),
                amount=plants, limit=follower.keep_clear,
            )  # fmt: skip


def _dates(one: Grown, layout: Layout) -> Iterator[Finding]:
    """Out of the ground before it goes in: a typed day against one that the order gives."""
    dates = one.dates
    if dates.in_ground and dates.out and dates.out <= dates.in_ground:
        yield _at(Kind.DATES, layout, amount=(dates.in_ground - dates.out).days, limit=0)


def _outside(bed: Bed, layout: Layout) -> Iterator[Finding]:
    first, last = bed.zone
    if layout.start < first:
        start, end = layout.start, min(first, layout.end)
        yield _at(Kind.OUTSIDE, layout, start, end, amount=first - layout.start, limit=first)
    if layout.end > last:
        start = max(last, layout.start)
        yield _at(Kind.OUTSIDE, layout, start, layout.end, amount=layout.end - last, limit=last)


def _rows(layout: Layout) -> Iterator[Finding]:
    grid = layout.grid
    if not has_room(grid) and grid.pattern is Pattern.CELLS:
        yield _at(Kind.NO_CELL, layout, amount=grid.width, limit=grid.cell)
    elif not has_room(grid) and grid.pattern is not Pattern.OFFSETS:
        yield _at(Kind.NO_ROW, layout, amount=grid.width, limit=2 * grid.edge_least + grid.twin)
    elif grid.pattern is Pattern.BROADCAST:
        return
    elif grid.rows_asked is not None and grid.rows_asked > grid.rows:
        yield _at(Kind.ROWS, layout, amount=grid.rows_asked, limit=grid.rows)
    elif grid.edge < grid.edge_least:
        yield _at(Kind.EDGE, layout, amount=grid.edge, limit=grid.edge_least)


def _no_plant(bed: Bed, layout: Layout) -> Iterator[Finding]:
    """A block inside the margins that is long enough for a rank, but whose ground holds none."""
    first, last = bed.zone
    inside = min(layout.end, last) - max(layout.start, first)
    if layout.grid.rows and not layout.plants and inside >= max(layout.grid.rank, sum(layout.grid.ends)):
        yield _at(Kind.NO_PLANT, layout, amount=inside, limit=layout.grid.rank)


def _closer(one: Grown, layout: Layout) -> Iterator[Finding]:
    grid, packet = layout.grid, one.crop
    in_row, rows = closer_than_packet(packet, layout)
    if in_row:
        yield _at(Kind.CLOSER_IN_ROW, layout, amount=grid.in_row, limit=packet.in_row.nm)
    if rows:
        yield _at(Kind.CLOSER_ROWS, layout, amount=nearest_rows(grid), limit=packet.row_spacing[0].nm)


def _on_drip_lines(bed: Bed, layout: Layout) -> Iterator[Finding]:
    """Rows along the bed on a drip line, where a trowel or a dibble finds it."""
    if layout.grid.runs_across or layout.grid.turn is not None:
        return
    on = sum(any(abs(row.offset - line.nm) < _BESIDE for line in bed.drip_lines) for row in layout.rows if row.count)
    if on:
        yield _at(Kind.ON_DRIP_LINE, layout, amount=on, limit=_BESIDE)


def _leftover(laid: LaidOut) -> Iterator[Finding]:
    free = free_on(laid, fullest_day(laid))
    if free.leftover:
        largest = max(free.leftover, key=lambda stretch: stretch.length)
        yield Finding(
            Kind.LEFTOVER, laid.bed.id, start=largest.start, end=largest.end, amount=free.total,
            limit=largest.length, pieces=len(free.leftover),
        )  # fmt: skip


def _at(
    kind: Kind, layout: Layout, start: int | None = None, end: int | None = None, *, amount: int, limit: int
) -> Finding:
    return Finding(
        kind,
        layout.bed,
        layout.planting,
        start=layout.start if start is None else start,
        end=layout.end if end is None else end,
        amount=amount,
        limit=limit,
    )
