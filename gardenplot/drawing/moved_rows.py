"""How a block that is new or changed is planted now, in words: its plants, and its rows from first to last plant."""

from collections.abc import Sequence

from gardenplot.drawing.sayings import between_readings, counted_in
from gardenplot.drawing.so_many import so_many_plants
from gardenplot.drawing.stakes import numbers
from gardenplot.drawing.thinned import drill_words, stands_thinned
from gardenplot.filling.moved import Mark, Moved
from gardenplot.layout import Grown, Layout, lay_out_bed
from gardenplot.plan import Pattern, Plan, bed_of
from gardenplot.units import Units
from gardenplot.units.figures import THIN, apart, grouped, offset, tape
from gardenplot.words import _, ngettext

_MOST_RINGS = 12
"""More rings are those of the bed sheet."""
_MOST_KINDS = 6
"""Of more kinds of rows in a block only its first and its last plant are told."""


def rows_lines(before: Plan, after: Plan, marks: Sequence[Moved]) -> tuple[str, ...]:
    """How the block of some marks is planted, in lines; none where it is not in their bed any more.

    "2 × 51 + 50 = 152, 168 before; 25 cm from plant to plant", "rows 1–2: 51 each, first plant 0.28, last plant
    12.78 m", "row 3: 50, first plant 0.28, last plant 12.53 m". Of a new block, and where rows moved, also where they
    lie.
    """
    layout, was = _in_bed(after, marks[0]), _in_bed(before, marks[0])
    if layout is None:
        return ()
    units, kinds = after.place.units, {one.mark: one for one in marks}
    told = counted_in(after, layout)
    if was is not None and was.plants != layout.plants:
        told += _(", {count} before").format(count=grouped(was.plants))
    parts, told_too = [told], list[str]()
    if layout.grid.in_row and not layout.holds_trays:
        parts.append(_("{spacing} from plant to plant").format(spacing=apart(layout.grid.in_row, units)))
        spacing = kinds.get(Mark.SPACING)
        if spacing is not None and spacing.old is not None:
            parts[-1] += _(", was {old}").format(old=apart(spacing.old, units))
        one = _grown(after, layout)
        drilled = drill_words(one, layout, units)
        parts[-1] += _(" once thinned") if stands_thinned(one, layout, units) else ""
        told_too += [drilled] if drilled else []
    if was is None and all(one.mark is not Mark.BLOCK for one in marks):
        parts.insert(0, between_readings(after, layout.start, layout.end))
    return "; ".join(parts), *told_too, *_rows(layout, units, is_marked=was is None or Mark.ROWS in kinds)


def _grown(plan: Plan, layout: Layout) -> Grown:
    """The planting of a layout with its crop."""
    laid = lay_out_bed(plan, bed_of(plan, layout.bed))
    return next(one for one in laid.grown if one.planting.id == layout.planting)


def _in_bed(plan: Plan, one: Moved) -> Layout | None:
    """The layout of a mark's planting in the bed of the mark, where it is there."""
    there = any(each.id == one.planting and each.bed == one.bed for each in plan.plantings)
    return lay_out_bed(plan, bed_of(plan, one.bed)).layout_of(one.planting) if there else None


def _rows(layout: Layout, units: Units, *, is_marked: bool) -> list[str]:
    """The rows that have plants, those that begin and end alike together."""
    kinds: dict[tuple[int, str, str], list[int]] = {}
    grid = layout.grid
    is_plain = not grid.runs_across and grid.turn is None and not layout.rings and not layout.holds_trays
    for number, row in enumerate(layout.rows, start=1) if is_plain and grid.pattern is not Pattern.CELLS else ():
        runs = [run for run in row.runs if run.count]
        if runs:
            ends = tape(min(run.first for run in runs), units), tape(max(run.last for run in runs), units)
            kinds.setdefault((row.count, ends[0].number, str(ends[1])), []).append(number)
    if layout.rings and is_marked:
        return [*_rings(layout, units), *_ends(layout, units)]
    if not 0 < len(kinds) <= _MOST_KINDS:
        return _ends(layout, units)
    found = [_places(layout, sorted(row for rows in kinds.values() for row in rows), units)] if is_marked else []
    for (count, first, last), rows in kinds.items():
        words = ngettext(
            "row {rows}: {count}, first plant {first}, last plant {last}",
            "rows {rows}: {count} each, first plant {first}, last plant {last}",
            len(rows),
        )
        found.append(words.format(rows=numbers(rows), count=grouped(count), first=first, last=last))
    return found


def _rings(layout: Layout, units: Units) -> list[str]:
    """How far each ring lies from the centre, and its plants: "ring 1: 130 cm from the centre, 40 plants"."""
    words = _("ring {ring}: {radius} from the centre, {count}")
    return [
        words.format(ring=number, radius=offset(ring.radius, units), count=so_many_plants(ring.count))
        for number, ring in enumerate(layout.rings, start=1)
        if ring.count
    ][:_MOST_RINGS]


def _places(layout: Layout, rows: list[int], units: Units) -> str:
    """Where rows lie: "rows 1–3 at 8.1, 38.1, 68.1 cm from the base line"."""
    figures = [offset(layout.rows[row - 1].offset, units) for row in rows]
    words = ngettext(
        "row {rows} at {offsets} from the base line", "rows {rows} at {offsets} from the base line", len(rows)
    )
    offsets = f"{', '.join(each.number for each in figures)}{THIN}{figures[0].unit}".strip()
    return words.format(rows=numbers(rows), offsets=offsets)


def _ends(layout: Layout, units: Units) -> list[str]:
    """The first and the last plant of a block, whatever its rows."""
    if layout.first_plant is None or layout.last_plant is None or layout.holds_trays:
        return []
    words = _("first plant {first}, last plant {last}")
    return [words.format(first=tape(layout.first_plant, units).number, last=tape(layout.last_plant, units))]
