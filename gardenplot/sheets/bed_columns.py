"""Beside the stake table: row offsets of each planting, how to square the bed, what to carry."""

from math import isqrt

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.conventions import convention
from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import titled
from gardenplot.layout import Grown, LaidOut, Layout, kept_for, stood
from gardenplot.plan import Bed, Pattern, Plan
from gardenplot.sheets.page_parts import SIDE_WIDTH
from gardenplot.sheets.paper import BOLD, FACE, fitted
from gardenplot.sheets.row_sections import row_sections
from gardenplot.sheets.section import LABELS, Section, heading, short, stacked
from gardenplot.supplies import raised_for
from gardenplot.units import CM, INCH, Units
from gardenplot.units.figures import grouped, offset, tape
from gardenplot.words import _, ngettext


def sections(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], stake_count: int, string: int = 0
) -> tuple[Section, ...]:
    """The sections of a bed: offsets first, since they are needed before the first plant.

    `string` is how far beside the rows strings are drawn, in nm.
    """
    units = plan.place.units
    across = row_sections(plan, laid, layouts, look, string)
    unit = offset(CM, units).unit
    seen = _("{unit} from the left edge as seen from the head")
    title = _("Across the bed")
    if all(layout.grid.pattern is Pattern.RINGS for layout in layouts):
        seen, title = _("{unit} from the centre of the bed"), _("Rings")
    column_head = _title(title, seen.format(unit=unit).strip())
    return (
        *((stacked(column_head, across[0]), *across[1:]) if across else ()),
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


def _reserved(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]) -> tuple[Section, ...]:
    """The places kept for crops that follow, to be pegged along with the first turn."""
    kept = [one.layout for one in kept_for(laid, layouts) if one.layout.plants]
    found: list[Section] = []
    for layout in kept:
        if layout.rows and not layout.grid.runs_across and layout.grid.turn is None:
            found.append(_pegs(plan, layout, look))
        else:
            found += [heading(_kept_words(plan, layout, look)), *row_sections(plan, laid, (layout,), look)]
    return tuple(found)


def _kept_words(plan: Plan, layout: Layout, look: dict[str, Look]) -> str:
    places = ngettext("{count} place kept", "{count} places kept", layout.plants).format(count=grouped(layout.plants))
    return f"{titled(plan, layout.planting, look)}, {places}"


def _pegs(plan: Plan, layout: Layout, look: dict[str, Look]) -> Section:
    units = plan.place.units
    title = _kept_words(plan, layout, look)
    offsets = ", ".join(short(row.offset, units) for row in layout.rows)
    first, last = (tape(at or 0, units).number for at in (layout.first_plant, layout.last_plant))
    lines = (
        _("first at {first}, then every {spacing} to {last}").format(
            first=first, spacing=offset(layout.grid.in_row, units), last=last
        ),
        _("{offsets} from the left edge; peg both edges now").format(offsets=offsets),
    )

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 10)
        page.drawString(left, top - 10, fitted(title, BOLD, 10, width))
        page.setFont(FACE, 10)
        for number, line in enumerate(lines):
            page.drawString(left, top - 23 - 12 * number, fitted(line, FACE, 10, width))

    return Section(42, draw)


def diagonal(length: int, width: int) -> int:
    """The diagonal of a rectangle in nm, rounded down (Pythagoras)."""
    return isqrt(length * length + width * width)


def _square(bed: Bed, units: Units) -> tuple[Section, ...]:
    """How to square a bed with four corners; between posts, where there are posts in them."""
    if bed.outline or bed.diameter is not None:
        return ()
    post = bed.box.post.nm if bed.box and bed.box.post else 0
    across = diagonal(bed.length.nm - 2 * post, bed.width.nm - 2 * post)
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
    grown = {one.planting.id: one for one in laid.grown}
    lines = [
        _("{stakes} stakes · string of {length}").format(
            stakes=stake_count, length=tape(laid.bed.length.nm, plan.place.units)
        )
    ]
    for layout in layouts:
        made = raised_for(grown[layout.planting].crop, layout)
        carried = _carried(look[layout.planting].letter, layout.plants, made.plants is None, made.trays)
        lines.append(_standing(look[layout.planting].letter, grown[layout.planting], layout) or carried)
    columns = 2 if len(lines) > 4 else 1
    ends = _ends(layouts, look, plan.place.units)

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(BOLD, 12)
        page.drawString(left, top - 13, _("Carry"))
        page.setFont(FACE, 9)
        for number, line in enumerate(ends):
            page.drawString(left + LABELS, top - 13 - 11 * number, fitted(line, FACE, 9, width - LABELS))
        top -= 11 * max(0, len(ends) - 1)
        page.setFont(FACE, 10)
        page.drawString(left, top - 28, lines[0])
        for number, line in enumerate(lines[1:]):
            x, y = left + width / columns * (number % columns), top - 40 - 12 * (number // columns)
            page.drawString(x, y, fitted(line, FACE, 10, width / columns - 4))

    return Section(32 + 11 * max(0, len(ends) - 1) + 12 * -(-(len(lines) - 1) // columns), draw)


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
