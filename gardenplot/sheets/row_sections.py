"""Where the rows of each planting lie across the bed, and where their plants stand, pattern by pattern."""

from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import name_of
from gardenplot.drawing.stakes import numbers as rows_listed
from gardenplot.drawing.thinned import drill_words, stands_thinned
from gardenplot.layout import Grown, LaidOut, Layout, Run
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Bed, Pattern, Plan, Reserved, planting_of
from gardenplot.sheets.cell_sections import cell_parts, cell_tables
from gardenplot.sheets.figure_table import table
from gardenplot.sheets.ring_sections import ring_parts, ring_tables
from gardenplot.sheets.section import Section, heading, measured, offsets, sentence, short, space, stacked
from gardenplot.sheets.turned_section import turned_said, turned_tables
from gardenplot.units import Units
from gardenplot.units.figures import apart, grouped, offset, tape
from gardenplot.words import _, ngettext

MOST_LINES, MOST_NAMED = 14, 7
"""Longer tables, and those whose rows have names above them, go on in a section of their own, maybe on the next page.

Parts of a table are alike long, so that they find room on the same page.
"""
MOST_RINGS = 9
_MOST_STRETCHES = 3
"""Rows that are cut into more stretches are told in as few lines as they can be marked in."""
_MOST_UNLIKE = 4
"""Rows that begin and end in more ways than this are not told one by one; the table of stakes has the outermost."""


def row_sections(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], string: int = 0
) -> tuple[Section, ...]:
    """The sections of some plantings; those that share their rows stand together in a plain bed.

    Where strings are drawn so many nm beside the rows along the bed, the offsets are those of the strings.
    """
    groups: dict[object, list[Layout]] = {}
    for layout in layouts:
        key = (
            _key(laid, layout, plan.place.units), _drilled(laid, layout, plan.place.units),
            planting_of(plan, layout.planting).reserved is Reserved.PLACES_EMPTY and layout.planting,
        )  # fmt: skip
        groups.setdefault(key, []).append(layout)
    return tuple(section for group in groups.values() for section in _sections(plan, laid, group, look, string))


def _key(laid: LaidOut, layout: Layout, units: Units) -> object:
    """What plantings must share to stand together: their rows, if no tape reading is part of these."""
    grid = layout.grid
    own = not is_plain(laid.bed) or grid.runs_across or grid.pattern in (Pattern.RINGS, Pattern.CELLS)
    if grid.pattern is not Pattern.BROADCAST and (own or len(_ends(layout, units)) > 1):
        return layout.planting
    planted = tuple((row.offset, row.count > 0) for row in layout.rows)
    return grid.pattern, grid.in_row, grid.in_row_least, planted, grid.edge


def _sections(plan: Plan, laid: LaidOut, group: list[Layout], look: dict[str, Look], string: int) -> list[Section]:
    first, units = group[0], plan.place.units
    grid = first.grid
    name = _named(plan, group, look)
    if grid.pattern is Pattern.BROADCAST:
        return [stacked(heading(name), _band(first, units), space(4))]
    if not first.plants:
        return []
    if grid.pattern is Pattern.RINGS:
        rings = ring_tables(first, units, MOST_RINGS)
        return [
            stacked(heading(name), *ring_parts(laid.bed, first, units), rings[0], space(5)),
            *_further(name, rings),
        ]
    if grid.pattern is Pattern.CELLS and grid.turn is None:
        more = cell_tables(laid.bed, first, units, MOST_LINES)
        return [stacked(heading(name), *_gained(first), *cell_parts(laid.bed, first, units), space(5))] + [
            stacked(heading(name + _(", row by row")), one, space(5)) for one in more
        ]
    beside = beside_rows(first, string)
    about = [
        _every(plan, laid, name, first),
        *_thinned(laid, first, units),
        *_gained(first),
        *_said(laid.bed, first, units),
        *_string_said(beside, units),
        *_kept_empty(plan, first, units),
    ]
    if is_plain(laid.bed):
        return [stacked(*about, *_alike(first, units, beside), space(5))]
    tables = _tables(laid.bed, first, units, beside)
    return [stacked(*about, tables[0], space(5)), *_further(name, tables)]


def _named(plan: Plan, group: list[Layout], look: dict[str, Look]) -> str:
    """Plantings by letters and names, alike ones together and those in a row in short: "A–C, F Leek"."""
    place, letters = {planting: number for number, planting in enumerate(look)}, [one.letter for one in look.values()]
    alike: dict[str, list[int]] = {}
    for one in group:
        alike.setdefault(name_of(plan, one.planting), []).append(place[one.planting])
    return ", ".join(f"{rows_listed(sorted(places), letters.__getitem__)} {name}" for name, places in alike.items())


def beside_rows(layout: Layout, string: int) -> int:
    """How far in nm strings stand from the rows, minus to the left; on them where neither side has them in the bed.

    Of rows across the bed and of turned ones the strings are on the rows.
    """
    grid, offsets_ = layout.grid, [row.offset for row in layout.rows]
    if not string or grid.runs_across or grid.turn is not None or not offsets_:
        return 0
    if min(offsets_) >= string:
        return -string
    return string if max(offsets_) + string <= grid.width else 0


def _string_said(beside: int, units: Units) -> list[Section]:
    """On which side of the rows the strings are, if they are not on them."""
    if not beside:
        return []
    words = _("strings {far} left of the rows, at these figures")
    if beside > 0:
        words = _("strings {far} right of the rows, at these figures")
    return [measured(words, far=offset(abs(beside), units))]


def _kept_empty(plan: Plan, layout: Layout, units: Units) -> list[Section]:
    """The rows along the bed that stay empty for the crop that follows, and those with places that do."""
    reserved, found = planting_of(plan, layout.planting).reserved, list[Section]()
    for row in layout.rows if reserved is not None and not layout.grid.runs_across else ():
        if reserved is Reserved.ROW_EMPTY and not row.count:
            found.append(measured(_("the row at {at} stays empty"), at=offset(row.offset, units)))
        elif reserved is Reserved.PLACES_EMPTY and sum(1 for run in row.runs if run.count) > 1:
            words = ngettext(
                "the row at {at} has {plants} plant: none at a place that is kept",
                "the row at {at} has {plants} plants: none at a place that is kept", row.count,
            )  # fmt: skip
            words = words.format(at="{at}", plants=grouped(row.count))
            found.append(measured(words, at=offset(row.offset, units)))
    return found


def _further(name: str, tables: list[Section]) -> list[Section]:
    """All tables but the first, each under the name of its planting."""
    return [stacked(heading(name + _(", continued")), one, space(5)) for one in tables[1:]]


def _every(plan: Plan, laid: LaidOut, name: str, layout: Layout) -> Section:
    """A name and the spacing in the row: "every 29 cm", with what was asked for where the remainder is spread."""
    grid, units = layout.grid, plan.place.units
    spacing, words = apart(grid.in_row, units), _(", {spacing} in the row")
    if stands_thinned(_grown(laid, layout), layout, units):
        words = _(", {spacing} in the row once thinned")
    if grid.in_row_least is None or grid.in_row_least == grid.in_row:
        return heading(name, words, spacing=spacing)
    typed = planting_of(plan, layout.planting).in_row is not None
    least = _("({least} asked for)") if typed else _("(packet {least})")
    return heading(name, f"{words} {least.format(least=apart(grid.in_row_least, units))}", spacing=spacing)


def _drilled(laid: LaidOut, layout: Layout, units: Units) -> str:
    """How thick it is sown in its bed and to what it is thinned, as far as that is known."""
    return drill_words(_grown(laid, layout), layout, units)


def _grown(laid: LaidOut, layout: Layout) -> Grown:
    return next(one for one in laid.grown if one.planting.id == layout.planting)


def _thinned(laid: LaidOut, layout: Layout, units: Units) -> list[Section]:
    """That the spacing is what is left of what is sown."""
    words = _drilled(laid, layout, units)
    return [sentence(words)] if words else []


def _gained(layout: Layout) -> list[Section]:
    """What the rows are shifted for."""
    if not layout.gain:
        return []
    words = ngettext(
        "rows shifted: {count} plant more than centred", "rows shifted: {count} plants more than centred", layout.gain
    )
    return [sentence(words.format(count=layout.gain), 9)]


def _said(bed: Bed, layout: Layout, units: Units) -> list[Section]:
    """How the rows lie to each other, where that is not plain from their offsets."""
    grid = layout.grid
    if grid.turn is not None:
        return turned_said(layout, grid.turn, units)
    if grid.runs_across:
        return _across_said(layout, units)
    if grid.pattern is Pattern.TWIN:
        inside = offset(grid.twin, units)
        if len(layout.rows) <= 2:
            return [measured(_("{inside} inside the pair"), inside=inside)]
        words = _("pairs {between} apart, {inside} inside a pair")
        return [measured(words, between=offset(grid.between, units), inside=inside)]
    # Where the ground cuts rows each has its first plant beside it, which need not be half a spacing on.
    # In a short block those that are moved may hold none.
    if grid.pattern.staggers and any(row.count for row in layout.rows[1::2]) and is_plain(bed):
        return [_shifted_said(len(layout.rows))]
    return []


def _shifted_said(rows: int) -> Section:
    """Which of so many rows begin half a spacing further on."""
    shifted = list(range(2, rows + 1, 2))
    words = ngettext(
        "row {rows} begins half a spacing further on", "rows {rows} begin half a spacing further on", len(shifted)
    )
    return sentence(words.format(rows=_listed(shifted)), 9)


def _across_said(layout: Layout, units: Units) -> list[Section]:
    """Where the rows across lie along the tape."""
    rows = [row for row in layout.rows if row.count]
    first, last = (tape(row.offset, units).number for row in (rows[0], rows[-1]))
    names = (_("rows across, first at"), _("then every"), _("last at"))
    return [table(names, [(first, str(offset(layout.grid.between, units)), last)])]


def _alike(layout: Layout, units: Units, beside: int) -> list[Section]:
    """Offsets that hold for all of a block in a plain bed: of its rows or, of rows across, of their plants."""
    grid = layout.grid
    if not grid.runs_across:
        planted = {number: row.offset + beside for number, row in enumerate(layout.rows, 1) if row.count}
        in_pairs = grid.pattern is Pattern.TWIN and len(planted) == len(layout.rows)
        spoken_of = tuple(planted) if len(_ends(layout, units)) > 1 else ()
        across = offsets(tuple(planted.values()), grid.width, units, spoken_of, in_pairs=in_pairs)
        return [across, *_unlike(layout, units)]
    parts: list[Section] = []
    kinds = [row for row in layout.rows[: len(grid.kinds)] if row.count]
    for kind, row in enumerate(kinds):
        numbers = list(range(kind + 1, len(layout.rows) + 1, len(layout.grid.kinds)))
        which = ngettext("row {rows}", "rows {rows}", len(numbers)).format(rows=_listed(numbers))
        places = [run.first + number * run.step for run in row.runs for number in range(run.count)]
        parts += [sentence(which, 9)] if len(kinds) > 1 else []
        parts.append(offsets(places, grid.width, units))
    return parts


def _ends(layout: Layout, units: Units) -> dict[tuple[str, str], list[int]]:
    """First and last plant as they are read off the tape, and the rows from 1 that have them."""
    alike: dict[tuple[str, str], list[int]] = {}
    for number, row in enumerate(layout.rows, 1):
        if row.count:
            ends = tape(row.runs[0].first, units).number, tape(row.runs[-1].last, units).number
            alike.setdefault(ends, []).append(number)
    return alike


def _unlike(layout: Layout, units: Units) -> list[Section]:
    """First and last plant of rows that begin or end otherwise than others of their block, as a check on each."""
    alike = _ends(layout, units)
    if not 1 < len(alike) <= _MOST_UNLIKE:
        return []
    names = (_("rows"), _("first plant"), _("last plant"))
    return [table(names, [(f" {rows_listed(rows)}", *ends) for ends, rows in alike.items()])]


def across_from(bed: Bed) -> str:
    """What offsets are measured from: the left edge, unless the outline has corners that leave the base line."""
    return _("from line") if bed.outline else _("from edge")


def _tables(bed: Bed, layout: Layout, units: Units, beside: int) -> list[Section]:
    """Where rows differ by the bed's outline or by what stands in it: each with its first and last plant."""
    if layout.grid.turn is not None:
        return turned_tables(bed, layout, layout.grid.turn, units, MOST_LINES)
    lines = _across_lines(layout, units) if layout.grid.runs_across else _along_lines(layout, units, beside)
    names = (_("row"), across_from(bed), _("first plant"), _("last plant"), _("plants"))
    if layout.grid.runs_across:
        names = (_("rows"), _("tape"), _("first"), _("last"), _("plants"))
    each = -(-len(lines) // -(-len(lines) // MOST_LINES))
    return [table(names, lines[at : at + each]) for at in range(0, len(lines), each)]


def _along_lines(layout: Layout, units: Units, beside: int) -> list[tuple[str, ...]]:
    lines: list[tuple[str, ...]] = []
    for number, row in enumerate(layout.rows, 1):
        for turn, (first, last, count) in enumerate(_stretches(row.runs)):
            which = (f" {number}", short(row.offset + beside, units)) if turn == 0 else ("", "")
            lines.append((*which, tape(first, units).number, tape(last, units).number, f" {count}"))
    return lines


def _across_lines(layout: Layout, units: Units) -> list[tuple[str, ...]]:
    """Rows across: those that follow each other and are alike on one line, with the reading of the first."""
    kinds, rows = len(layout.grid.kinds), layout.rows
    empty = next((number for number, row in enumerate(rows) if row.count), 0)
    found: list[tuple[list[int], tuple[tuple[int, int, str], ...]]] = []
    for kind in range(kinds):
        alike: list[tuple[list[int], tuple[tuple[int, int, str], ...]]] = []
        for number in range(kind, len(rows), kinds):
            runs = _stretches(rows[number].runs)
            if alike and alike[-1][1] == runs:
                alike[-1][0].append(number)
            else:
                alike.append(([number], runs))
        found += alike
    lines: list[tuple[str, ...]] = []
    for numbers, runs in sorted(found):
        reading = tape(rows[numbers[0]].offset, units).number
        for turn, (first, last, count) in enumerate(runs):
            which = (f" {_listed([number + 1 - empty for number in numbers])}", reading) if turn == 0 else ("", "")
            lines.append((*which, short(first, units), short(last, units), f" {count}"))
    return lines


def _listed(numbers: list[int]) -> str:
    """Row numbers that are evenly apart: "3", "1–13", "1, 3 … 13"."""
    first, last = numbers[0], numbers[-1]
    if len(numbers) == 1:
        return str(first)
    if numbers[1] - numbers[0] == 1:
        return f"{first}–{last}"
    return f"{first}, {last}" if len(numbers) == 2 else f"{first}, {numbers[1]} … {last}"


def _stretches(runs: tuple[Run, ...]) -> tuple[tuple[int, int, str], ...]:
    """First plant, last plant and number of each stretch of a row.

    Of a row in many stretches those are one whose plants are whole spacings away from those before them, with the
    number of places that are marked in one go behind that of the plants.
    """
    planted = [run for run in runs if run.count]
    if len(planted) <= _MOST_STRETCHES:
        return tuple((run.first, run.last, grouped(run.count)) for run in planted)
    found: list[tuple[int, int, int, int]] = []
    for run in planted:
        if found and (run.first - found[-1][1]) % run.step == 0:
            found[-1] = (found[-1][0], run.last, found[-1][2] + run.count, run.step)
        else:
            found.append((run.first, run.last, run.count, run.step))
    return tuple(
        (first, last, _("{plants} of {places}").format(plants=count, places=(last - first) // max(1, step) + 1))
        for first, last, count, step in found
    )


def _band(layout: Layout, units: Units) -> Section:
    grid = layout.grid
    words = _("sown over the band from {first} to {last}")
    return measured(words, first=offset(grid.edge, units), last=offset(grid.width - grid.edge, units))
