"""Beside the stake table: row offsets of each planting, how to square the bed, what to carry."""

from collections.abc import Iterator

from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.carried import are_pegged, covers_of
from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import says, titled
from gardenplot.drawing.tape_legs import is_taped
from gardenplot.findings import Kind as FindingKind
from gardenplot.findings import find_in_bed
from gardenplot.layout import LaidOut, Layout, kept_for
from gardenplot.plan import Bed, Pattern, Plan
from gardenplot.plan.shapes import diagonal_of
from gardenplot.sheets.figure_table import table
from gardenplot.sheets.page_parts import SIDE_WIDTH
from gardenplot.sheets.row_sections import MOST_LINES, across_from, row_sections
from gardenplot.sheets.section import (
    Section,
    headed,
    heading,
    measured,
    offsets,
    sentence,
    short,
    space,
    stacked,
)
from gardenplot.supplies.covers import cover_cut
from gardenplot.units import CM, INCH, Units
from gardenplot.units.figures import grouped, offset, span, tape
from gardenplot.words import _, ngettext

_MOST_CORNERS = 8
"""An outline of more corners follows a curve: it is taken from the drawing."""


def sections(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], string: int = 0
) -> tuple[Section, ...]:
    """The sections of a bed: offsets first, since they are needed before the first plant; all but what is carried.

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
        *((stacked(column_head, across[0]), *across[1:]) if across else ()),
        *_corners(laid.bed, units),
        *_in_the_way(laid.bed, units),
        *_reserved(plan, laid, layouts, look),
        *_hoops(plan, laid, layouts),
        *_square(laid.bed, units),
    )


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
    words = _("{unit} from the base line: the thick line, left as seen from the head. Tape and stakes lie along it.")
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


def _corners(bed: Bed, units: Units) -> tuple[Section, ...]:
    """Where the corners of an outline are, to stake it or to see whether the bed is as it was drawn."""
    if not 0 < len(bed.outline) <= _MOST_CORNERS:
        return ()
    rows = [
        (f" {number}", tape(x.nm, units).number, short(y.nm, units)) for number, (x, y) in enumerate(bed.outline, 1)
    ]
    names = (_("corner"), _("tape"), across_from(bed))
    return (stacked(heading(_("Corners of the bed")), table(names, rows), space(5)),)


def _in_the_way(bed: Bed, units: Units) -> tuple[Section, ...]:
    """What stands in a bed: where its middle is, and how far plants keep from it."""
    if not bed.obstacles:
        return ()
    names = (_("in the way"), _("middle, tape"), across_from(bed), _("keep clear"))
    rows = [
        (
            f" {one.name}",
            tape(one.x.nm, units).number,
            short(one.y.nm, units),
            short(one.keep_clear.nm if one.keep_clear else 0, units),
        )
        for one in bed.obstacles
    ]
    pieces = (rows[at : at + MOST_LINES] for at in range(0, len(rows), MOST_LINES))
    return tuple(stacked(table(names, piece, named=True), space(5)) for piece in pieces)


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
    figures = (first, str(offset(layout.grid.in_row, units)), last)
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
    return [
        stacked(sentence(f"{look[one.planting].letter}: {says(plan, one, look)}"), space(4))
        for one in find_in_bed(laid)
        if one.kind is FindingKind.IN_THE_WAY and one.planting in shown
    ]


def _hoops(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...]) -> Iterator[Section]:
    """Where the hoops of each cover stand along the tape."""
    units = plan.place.units
    for cover in covers_of(plan, laid, layouts):
        cut = cover_cut(laid.bed, cover)
        if cut.hoops is None or cut.hoops < 2 or cut.hoop_spacing is None:
            continue
        words = _("{hoops} from {first} to {last}, every {spacing}").format(
            hoops=ngettext("{count} hoop", "{count} hoops", cut.hoops).format(count=cut.hoops),
            first="{first}", last="{last}", spacing="{spacing}",
        )  # fmt: skip
        first, last = tape(cover.start.nm, units).number, tape(cover.end.nm, units).number
        title = _("Cover") if cover.on is None else _("Cover, {day}").format(day=short_day(cover.on))
        yield stacked(
            headed(title, words, first=first, last=last, spacing=span(round(cut.hoop_spacing), units)), space(5)
        )


def _square(bed: Bed, units: Units) -> tuple[Section, ...]:
    """How to square a bed with four corners; between posts, where there are posts in them."""
    across, post = diagonal_of(bed), bed.box is not None and bed.box.post is not None
    if across is None:
        return ()
    words = _("diagonals, post to post {diagonal}") if post else _("both diagonals {diagonal}")
    if not is_taped(bed, units):
        words = _("the head")
    parts = [headed(_("Square"), words, diagonal=tape(across, units))]
    if not post:
        parts.append(_three_four_five(bed.width.nm, units))
    return (stacked(*parts, space(5)),)


_THREES = {Units.METRIC: (3 * CM, 15 * CM, 30 * CM, 45 * CM, 60 * CM, 90 * CM, 150 * CM, 300 * CM)}
_THREES_IN = tuple(3 * INCH * part for part in (1, 2, 3, 4, 6, 9, 12, 18, 24, 36))


def _three_four_five(width: int, units: Units) -> Section:
    """The largest 3-4-5 triangle that the bed's head has room for."""
    three = max((one for one in _THREES.get(units, _THREES_IN) if one <= width), default=3 * CM)
    across, down, between = (offset(three * part // 3, units) for part in (3, 4, 5))
    words = _("3-4-5: {across} head, {down} edge, {between} across")
    return measured(words, across=across, down=down, between=between)
