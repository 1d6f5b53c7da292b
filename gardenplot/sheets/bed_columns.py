"""Beside the stake table: row offsets of each planting, how to square the bed, what to carry."""

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.conventions import convention
from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import says, titled
from gardenplot.findings import Kind as FindingKind
from gardenplot.findings import find_in_bed
from gardenplot.layout import Grown, LaidOut, Layout, kept_for, stood
from gardenplot.plan import Bed, Pattern, Plan
from gardenplot.sheets.page_parts import SIDE_WIDTH, diagonal_of
from gardenplot.sheets.paper import BOLD, FACE, fitted
from gardenplot.sheets.row_sections import MOST_LINES, across_from, row_sections
from gardenplot.sheets.section import LABELS, Section, heading, sentence, short, space, stacked, table
from gardenplot.supplies import raised_for
from gardenplot.units import CM, INCH, Units
from gardenplot.units.figures import grouped, offset, tape
from gardenplot.words import _, ngettext

_FEW, _MOST = 3, 10
"""Up to so many blocks what is carried for them stands in one column, and if it is wide up to so many."""


def sections(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], stake_count: int, string: int = 0
) -> tuple[Section, ...]:
    """The sections of a bed: offsets first, since they are needed before the first plant.

    `string` is how far beside the rows strings are drawn, in nm.
    """
    units = plan.place.units
    across = row_sections(plan, laid, layouts, look, string)
    unit = offset(CM, units).unit
    seen = _("{unit} from the base line (left edge, from the head)")
    if laid.bed.outline:
        seen = _("{unit} from the base line, left as seen from the head")
    title = _("Across the bed")
    if all(layout.grid.pattern is Pattern.RINGS for layout in layouts):
        seen, title = _("{unit} from the centre of the bed"), _("Rings")
    column_head = _title(title, seen.format(unit=unit).strip())
    return (
        *((stacked(column_head, across[0]), *across[1:]) if across else ()),
        *_in_the_way(laid.bed, units),
        *_reserved(plan, laid, layouts, look),
        *_square(laid.bed, units),
        _carry(plan, laid, layouts, look, stake_count),
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


def _title(words: str, quiet: str) -> Section:
    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 12)
        page.drawString(left, top - 11, words)
        page.setFont(FACE, 9)
        page.drawString(left, top - 23, fitted(quiet, FACE, 9, width))

    return Section(28, draw)


def _in_the_way(bed: Bed, units: Units) -> tuple[Section, ...]:
    """What stands in a bed: where its middle is, and how far plants keep from it."""
    if not bed.obstacles:
        return ()
    names, shares = (_("in the way"), _("middle, tape"), across_from(bed), _("keep clear")), (58, 60, 50, 50)
    room = SIDE_WIDTH * shares[0] / sum(shares) - 4
    rows = [
        (
            f" {fitted(one.name, FACE, 10, room)}",
            tape(one.x.nm, units).number,
            short(one.y.nm, units),
            short(one.keep_clear.nm if one.keep_clear else 0, units),
        )
        for one in bed.obstacles
    ]
    pieces = (rows[at : at + MOST_LINES] for at in range(0, len(rows), MOST_LINES))
    return tuple(stacked(table(names, shares, piece), space(5)) for piece in pieces)


def _reserved(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]) -> tuple[Section, ...]:
    """The places kept for crops that follow, to be pegged along with the first turn."""
    kept = [one.layout for one in kept_for(laid, layouts) if one.layout.plants]
    found: list[Section] = []
    for layout in kept:
        if _are_pegged(layout):
            found.append(_pegs(plan, layout, look))
        else:
            found += [heading(_kept_words(plan, layout, look)), *row_sections(plan, laid, (layout,), look)]
    return (*found, *(_to_cut(plan, laid, layouts, look) if kept else ()))


def _kept_words(plan: Plan, layout: Layout, look: dict[str, Look]) -> str:
    places = ngettext("{count} place kept", "{count} places kept", layout.plants).format(count=grouped(layout.plants))
    return f"{titled(plan, layout.planting, look)}, {places}"


def _pegs(plan: Plan, layout: Layout, look: dict[str, Look]) -> Section:
    units = plan.place.units
    places = ", ".join(short(row.offset, units) for row in layout.rows)
    first, last = (tape(at or 0, units).number for at in (layout.first_plant, layout.last_plant))
    names = (_("first at"), _("then every"), _("last at"), _("from edge"))
    figures = (first, str(offset(layout.grid.in_row, units)), last, places)
    return stacked(
        heading(_kept_words(plan, layout, look)),
        table(names, (50, 56, 58, 56), [figures]),
        sentence(_("peg both edges of the bed at each of them now")),
        space(4),
    )


def _are_pegged(layout: Layout) -> bool:
    """Whether kept places are marked by pegs at the edges of the bed: rows along it, and their plants even."""
    return bool(layout.rows) and not layout.grid.runs_across and layout.grid.turn is None


def _peg_count(laid: LaidOut, layouts: tuple[Layout, ...]) -> int:
    """Pegs for the kept places, two for each reading."""
    kept = [one.layout for one in kept_for(laid, layouts) if _are_pegged(one.layout)]
    runs = [run for layout in kept for row in layout.rows for run in row.runs]
    return 2 * len({run.first + number * run.step for run in runs for number in range(run.count)})


def _to_cut(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]) -> list[Section]:
    """What of this turn stands where a kept place is, and by when it goes."""
    shown = {layout.planting for layout in layouts}
    return [
        stacked(sentence(f"{look[one.planting].letter}: {says(plan, one, look)}"), space(4))
        for one in find_in_bed(laid)
        if one.kind is FindingKind.IN_THE_WAY and one.planting in shown
    ]


def _square(bed: Bed, units: Units) -> tuple[Section, ...]:
    """How to square a bed with four corners; between posts, where there are posts in them."""
    across, post = diagonal_of(bed), bed.box is not None and bed.box.post is not None
    if across is None:
        return ()
    words = _("diagonals, post to post") if post else _("both diagonals")

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 12)
        page.drawString(left, top - 13, _("Square"))
        page.setFont(FACE, 10)
        page.drawString(left, top - 29, words)
        page.setFont(BOLD, 14)
        figure_at = left + max(78, pdfmetrics.stringWidth(words, FACE, 10) + 8)
        page.drawString(figure_at, top - 30, str(tape(across, units)))
        page.setFont(FACE, 9)
        if not post:
            page.drawString(left, top - 42, fitted(_three_four_five(bed.width.nm, units), FACE, 9, width))

    return (Section(48, draw),)


_THREES = {Units.METRIC: (3 * CM, 15 * CM, 30 * CM, 45 * CM, 60 * CM, 90 * CM, 150 * CM, 300 * CM)}
_THREES_IN = tuple(3 * INCH * part for part in (1, 2, 3, 4, 6, 9, 12, 18, 24, 36))


def _three_four_five(width: int, units: Units) -> str:
    """The largest 3-4-5 triangle that the bed's head has room for."""
    three = max((one for one in _THREES.get(units, _THREES_IN) if one <= width), default=3 * CM)
    legs = (str(offset(three * part // 3, units)) for part in (3, 4, 5))
    return _("3-4-5: {across} head, {down} edge, {between} across").format(
        **dict(zip(("across", "down", "between"), legs, strict=True))
    )


def _carry(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], stake_count: int
) -> Section:
    pegs = _peg_count(laid, layouts)
    parts = (
        ngettext("{count} stake", "{count} stakes", stake_count).format(count=stake_count),
        ngettext("{count} peg", "{count} pegs", pegs).format(count=pegs) if pegs else "",
        _("string of {length}").format(length=tape(laid.bed.length.nm, plan.place.units)),
    )
    first = " · ".join(filter(None, parts))
    lines = _carried_lines(laid, layouts, look)
    widest = max((pdfmetrics.stringWidth("".join(line), FACE, 10) for line in lines), default=0)
    columns = 1 if len(lines) <= _FEW or (widest > SIDE_WIDTH / 2 - 4 and len(lines) <= _MOST) else 2
    ends = _ends(layouts, look, plan.place.units)

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 12)
        page.drawString(left, top - 13, _("Carry"))
        page.setFont(FACE, 9)
        for number, line in enumerate(ends):
            page.drawString(left + LABELS, top - 13 - 11 * number, fitted(line, FACE, 9, width - LABELS))
        top -= 11 * max(0, len(ends) - 1)
        page.setFont(FACE, 10)
        page.drawString(left, top - 28, first)
        for number, (what, day) in enumerate(lines):
            x, y = left + width / columns * (number % columns), top - 40 - 12 * (number // columns)
            room = width / columns - 4 - pdfmetrics.stringWidth(day, FACE, 10)
            page.drawString(x, y, fitted(what, FACE, 10, room) + day)

    return Section(32 + 11 * max(0, len(ends) - 1) + 12 * -(-len(lines) // columns), draw)


def _carried_lines(laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]) -> list[tuple[str, str]]:
    """What is carried for each block and, where they are not all planted on one day, on which day."""
    grown = {one.planting.id: one for one in laid.grown}
    days = {grown[layout.planting].dates.in_ground for layout in layouts}
    lines = []
    for layout in layouts:
        one, letter = grown[layout.planting], look[layout.planting].letter
        made = raised_for(one.crop, layout)
        day = one.dates.in_ground
        carried = _carried(letter, layout.plants, made.plants is None, made.trays)
        standing = _standing(letter, one, layout)
        lines.append((standing or carried, f" · {short_day(day)}" if day and len(days) > 1 and not standing else ""))
    return lines


def _ends(layouts: tuple[Layout, ...], look: dict[str, Look], units: Units) -> list[str]:
    """How the counts treat the ends of a block: once where all agree, otherwise by letter."""
    letters: dict[str, list[str]] = {}
    for layout in layouts:
        if layout.per_row:
            letters.setdefault(convention(layout.grid, units), []).append(look[layout.planting].letter)
    if len(letters) == 1:
        return [_("counts: {ends}").format(ends=ends) for ends in letters]
    return [f"{' '.join(dict.fromkeys(named))}: {ends}" for ends, named in letters.items()]


def _standing(letter: str, one: Grown, layout: Layout) -> str:
    """What needs no carrying, since it is in the ground: "A 160 stand since 12 Apr"; nothing while it is planned."""
    came = one.planting.actual
    if came is None or came.set_out is None:
        return ""
    words = _("{letter} {plants} stand since {day}")
    return words.format(letter=letter, plants=grouped(stood(one, layout)), day=short_day(came.set_out))


def _carried(letter: str, plants: int, sown: bool, trays: int | None) -> str:
    if sown:
        return _("{letter} seed for {plants} places").format(letter=letter, plants=grouped(plants))
    words = _("{letter} {plants} plants").format(letter=letter, plants=grouped(plants))
    if trays:
        words += " " + ngettext("({count} tray)", "({count} trays)", trays).format(count=trays)
    return words
