"""Beside the stake table: row offsets of each planting, how to square the bed, what to carry."""

from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.carried import are_pegged
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import says, titled
from gardenplot.drawing.stakes import numbers as rows_listed
from gardenplot.findings import Kind as FindingKind
from gardenplot.findings import find_in_bed
from gardenplot.layout import LaidOut, Layout, kept_for
from gardenplot.plan import Bed, Obstacle, Pattern, Plan
from gardenplot.sheets.corner_sections import corner_sections, squared
from gardenplot.sheets.figure_table import table
from gardenplot.sheets.over_sections import cover_sections, drip_sections
from gardenplot.sheets.page_parts import SIDE_WIDTH
from gardenplot.sheets.row_sections import MOST_NAMED, across_from, row_sections
from gardenplot.sheets.section import (
    Section,
    headed,
    heading,
    offsets,
    sentence,
    short,
    space,
    stacked,
)
from gardenplot.sheets.still_sections import still_sections
from gardenplot.units import CM, Units
from gardenplot.units.figures import apart, grouped, offset, tape
from gardenplot.words import _, ngettext


def sections(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], string: int = 0
) -> tuple[Section, ...]:
    """The sections of a bed behind those of its shape: what still stands in it, its rows, then what lies over it.

    `string` is how far beside the rows strings are drawn, in nm.
    """
    units = plan.place.units
    across = row_sections(plan, laid, layouts, look, string)
    unit = offset(CM, units).unit
    title, seen = _("Across the bed"), _where_the_tape_lies(laid.bed, unit)
    if all(layout.grid.pattern is Pattern.RINGS for layout in layouts):
        title = _("Rings")
        words = _(
            "{unit} from the centre of the bed. Tape and stakes lie along the thick line, left as seen from the head."
        )
        seen = words.format(unit=unit).strip()
    column_head = _title(title, seen)
    return (
        *still_sections(plan, laid, layouts, look),
        *((stacked(column_head, across[0]), *across[1:]) if across else ()),
        *_in_the_way(laid.bed, units),
        *_reserved(plan, laid, layouts, look),
        *drip_sections(plan, laid),
        *cover_sections(plan, laid, layouts, look),
    )


def shape_sections(laid: LaidOut, units: Units) -> tuple[Section, ...]:
    """How a bed gets its shape, which comes first at the bed."""
    return (*squared(laid.bed, units), *corner_sections(laid.bed, units))


def sections_in(found: tuple[Section, ...], room: float, least: int = 1) -> int:
    """How many sections fit into so many points of height below each other, and no fewer than the least."""
    for number, section in enumerate(found):
        room -= section.height
        if room < 0 and number >= least:
            return number
    return len(found)


def draw_sections(page: Canvas, found: tuple[Section, ...], corner: tuple[float, float]) -> None:
    """Draw sections below each other from a corner on."""
    left, y = corner
    for section in found:
        section.draw(page, left, y, SIDE_WIDTH)
        y -= section.height


def _where_the_tape_lies(bed: Bed, unit: str) -> str:
    """Which line tape and stakes lie along, and from which offsets are measured."""
    words = _(
        "{unit} from the base line: the thick line, left as seen from the head. Tape and stakes lie along it. "
        "From centre: −\u2009left, +\u2009right. Foot: at the inner side of its stake."
    )
    if bed.box:
        words = _(
            "{unit} from the base line: the thick line, left as seen from the head. The tape lies along it. "
            "From centre: −\u2009left, +\u2009right."
        )
    if bed.outline:
        words = _(
            "{unit} from the base line: the thick line, left as seen from the head. Tape and stakes lie along it, "
            "also where the bed draws back from it."
        )
    if bed.diameter is not None:
        words = _(
            "{unit} from the base line: the thick line, left as seen from the head, which the bed touches half way. "
            "Tape and stakes lie along it."
        )
    return words.format(unit=unit).strip()


def _title(words: str, quiet: str) -> Section:
    return stacked(headed(words, ""), sentence(quiet, 9), space(4))


def _in_the_way(bed: Bed, units: Units) -> tuple[Section, ...]:
    """What stands in a bed: where its middle is, how large it is, and how far plants keep from it."""
    headings = (_("middle, tape"), across_from(bed), _("size"), _("keep clear"))
    found = []
    for at in range(0, len(bed.obstacles), MOST_NAMED):
        piece = bed.obstacles[at : at + MOST_NAMED]
        rows = [
            (
                tape(one.x.nm, units).number,
                short(one.y.nm, units),
                _size_of(one, units),
                short(one.keep_clear.nm if one.keep_clear else 0, units),
            )
            for one in piece
        ]
        title = heading(_("In the way") if at == 0 else _("In the way, continued"))
        found.append(stacked(title, table(headings, rows, named=[_named(one) for one in piece]), space(5)))
    return tuple(found)


def _named(one: Obstacle) -> str:
    """An obstacle by its name and shape, and the rows that it is in the way of where that is not all."""
    shape = _("{name}, round") if one.diameter is not None else _("{name}, along × across")
    words = shape.format(name=one.name)
    if not one.rows:
        return words
    rows = ngettext("row {rows} alone", "rows {rows} alone", len(one.rows)).format(rows=rows_listed(sorted(one.rows)))
    return f"{words}, {rows}"


def _size_of(one: Obstacle, units: Units) -> str:
    if one.diameter is not None:
        return short(one.diameter.nm, units)
    sides = (one.length, one.width)
    return " × ".join(short(side.nm if side else 0, units) for side in sides)


def _reserved(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]) -> tuple[Section, ...]:
    """The places kept for crops that follow, to be pegged along with the first turn."""
    kept = [one.layout for one in kept_for(laid, layouts) if one.layout.plants]
    found: list[Section] = []
    for layout in kept:
        if are_pegged(layout):
            found.append(_pegs(plan, layout, look))
        else:
            found += [heading(_kept_words(plan, layout, look)), *row_sections(plan, laid, (layout,), look)]
    return (*found, *(_to_cut(plan, laid, layouts, look) if kept else ()))


def _kept_words(plan: Plan, layout: Layout, look: dict[str, Look]) -> str:
    places = ngettext("{count} place kept", "{count} places kept", layout.plants).format(count=grouped(layout.plants))
    return f"{titled(plan, layout.planting, look)}, {places}"


def _pegs(plan: Plan, layout: Layout, look: dict[str, Look]) -> Section:
    units = plan.place.units
    first, last = (tape(at or 0, units).number for at in (layout.first_plant, layout.last_plant))
    names = (_("first at"), _("then every"), _("last at"))
    figures = (first, str(apart(layout.grid.in_row, units)), last)
    return stacked(
        heading(_kept_words(plan, layout, look)),
        table(names, [figures]),
        offsets([row.offset for row in layout.rows], layout.grid.width, units),
        sentence(_("peg both edges of the bed at each of them now")),
        space(4),
    )


def _to_cut(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]) -> list[Section]:
    """What of this turn stands where a kept place is, and by when it goes."""
    shown = {layout.planting for layout in layouts}
    plants = {layout.planting: layout.plants for layout in layouts}
    return [
        stacked(sentence(f"{look[one.planting].letter}: {says(plan, one, look)}"),
                sentence(_stand_words(plants[one.planting], one.amount)), space(4))
        for one in find_in_bed(laid)
        if one.kind is FindingKind.IN_THE_WAY and one.planting in shown
    ]  # fmt: skip


def _stand_words(plants: int, to_cut: int) -> str:
    """How many stand before and after that: "207 stand at once, 184 without those 23"."""
    words = _("{all} stand at once, {rest} without those {cut}")
    return words.format(all=grouped(plants), rest=grouped(plants - to_cut), cut=grouped(to_cut))
