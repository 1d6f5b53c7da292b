"""Spacings that the grower's own tools cannot mark, with the nearest that they can and what it costs in plants."""

from collections.abc import Iterator

from attrs import evolve

from gardenplot.findings.finding import Finding, Kind
from gardenplot.layout import Layout, candidate, lay_out_bed, lay_out_plan
from gardenplot.layout.markable import markable_pattern
from gardenplot.plan import Plan, bed_of, crop_of, planting_of
from gardenplot.plan.edits import suppose_planting
from gardenplot.units import Length


def find_unmarkable(plan: Plan) -> tuple[Finding, ...]:
    """Blocks whose spacing in the row, between rows or in a pair is not on a list of the place; none without one."""
    if not plan.place.markable_in_row and not plan.place.markable_rows:
        return ()
    layouts = (layout for laid in lay_out_plan(plan) for layout in laid.layouts)
    return tuple(finding for layout in layouts for finding in _unmarkable(plan, layout))


def as_marked(plan: Plan, finding: Finding) -> tuple[Plan, Layout]:
    """The plan in which the block of a finding has the nearest spacing that can be marked, and the block there."""
    layout = lay_out_bed(plan, bed_of(plan, finding.bed or "")).layout_of(finding.planting or "")
    nearest = Length(finding.limit, "")
    if finding.kind is Kind.NOT_MARKABLE_IN_ROW:
        return _with(plan, layout, in_row=nearest)
    if finding.kind is Kind.NOT_MARKABLE_PAIR:
        return _with(plan, layout, twin_spacing=nearest)
    return _with(plan, layout, row_spacing=(nearest,), pattern=markable_pattern(layout.grid.pattern))


def places_in(plan: Plan, layout: Layout) -> int:
    """The plants that the length of a block holds at its own spacing: more than stand there where some stay empty."""
    return max(layout.plants, _with(plan, layout)[1].plants)


def beside(planted: int, places: int, marked: int) -> int:
    """What so many plants at a spacing that can be marked are more or fewer than.

    Those that are planted where they are fewer, all places of the block where they are more, so that places which are
    left empty as it is, in a rank that is filled in part or in its slack, are none that the other spacing gives.
    """
    return max(planted, min(places, marked))


def _unmarkable(plan: Plan, layout: Layout) -> Iterator[Finding]:
    """What of a block cannot be marked; nothing of one without plants, as of an order that was withdrawn."""
    if not layout.plants:
        return
    grid, cannot = layout.grid, candidate.marking(plan.place, layout, crop_of(plan, layout.crop))
    if cannot.in_row is not None:
        yield _found(plan, Kind.NOT_MARKABLE_IN_ROW, layout, grid.in_row, cannot.in_row.nearest)
    if cannot.rows is not None:
        found = _found(plan, Kind.NOT_MARKABLE_ROWS, layout, grid.between, cannot.rows.nearest)
        yield _within_packet(plan, layout, found) or found if found.plants < 0 else found
    if cannot.pair is not None:
        yield _found(plan, Kind.NOT_MARKABLE_PAIR, layout, grid.twin, cannot.pair.nearest)


def _within_packet(plan: Plan, layout: Layout, found: Finding) -> Finding | None:
    """Where the nearest costs plants: the widest of the packet's range that costs none; None where none does."""
    planting = planting_of(plan, layout.planting)
    least = (planting.row_spacing or crop_of(plan, planting.crop).row_spacing)[0].nm
    there = [one.nm for one in plan.place.markable_rows if least <= one.nm < found.amount]
    if not there:
        return None
    other = _found(plan, found.kind, layout, found.amount, max(there))
    return evolve(other, pieces=1) if other.plants >= 0 else None


def _with(plan: Plan, layout: Layout, **changes: object) -> tuple[Plan, Layout]:
    """The same block with another spacing."""
    length = Length(layout.length, "")
    start = Length(max(0, layout.start), "")
    changed = suppose_planting(plan, layout.planting, start=start, length=length, **changes)
    return changed, lay_out_bed(changed, bed_of(changed, layout.bed)).layout_of(layout.planting)


def _found(plan: Plan, kind: Kind, layout: Layout, amount: int, nearest: int) -> Finding:
    found = Finding(
        kind, layout.bed, layout.planting, start=layout.start, end=layout.end, amount=amount, limit=nearest
    )
    if not nearest:
        return found
    _changed, after = as_marked(plan, found)
    return evolve(found, plants=after.plants - beside(layout.plants, places_in(plan, layout), after.plants))
