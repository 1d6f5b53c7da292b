"""What to carry to a bed: what marks it, its covers, and the plants or the seed of each block with its day."""

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.carried import Carried, block_words, carried, carried_list, piece_words
from gardenplot.drawing.conventions import convention
from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import Look
from gardenplot.layout import Grown, LaidOut, Layout, stood
from gardenplot.plan import GoodKind, Pattern, Plan
from gardenplot.sheets.page_parts import SIDE_WIDTH
from gardenplot.sheets.paper import FACE, fitted
from gardenplot.sheets.section import Section, headed, heading, listed, sentence, space, stacked
from gardenplot.units import Units
from gardenplot.units.figures import grouped, offset, span
from gardenplot.words import _

_FEW, _MOST = 3, 10
"""Up to so many blocks what is carried for them stands in one column, and if it is wide up to so many."""
_LINES = 16
"""Longer columns go on in a section of their own, which may stand on the next page."""


def carry_sections(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]
) -> tuple[Section, ...]:
    """What marks a bed, its covers, and the plants or seed to take along, in parts of so many lines."""
    lines = _carried_lines(laid, layouts, look, plan.place.units)
    widest = max((pdfmetrics.stringWidth("".join(line), FACE, 10) for line in lines), default=0)
    columns = 1 if len(lines) <= _FEW or (widest > SIDE_WIDTH / 2 - 4 and len(lines) <= _MOST) else 2
    ends = _ends(layouts, look, plan.place.units)
    pieces = [lines[at : at + columns * _LINES] for at in range(0, len(lines), columns * _LINES)]
    things = (listed(carried_list(plan, one), _cut_to(plan, one)) for one in carried(plan, laid, layouts))
    title = stacked(headed(_("Carry"), ""), *things)
    counted = stacked(*(sentence(line, 9) for line in ends), space(4))
    if not pieces:
        return (stacked(title, counted),)
    *parts, last = (
        stacked(title, _columns(pieces[0], columns)),
        *(stacked(heading(_("Carry, continued")), _columns(piece, columns)) for piece in pieces[1:]),
    )
    return (*parts, stacked(last, counted))


def _cut_to(plan: Plan, one: Carried) -> list[str]:
    """The lengths to which hoops, cloth and film are cut, as the list tells them."""
    units, found = plan.place.units, list[str]()
    for need in one.needs:
        if need.kind in (GoodKind.HOOP, GoodKind.CLOTH, GoodKind.FILM) and need.size is not None:
            found.append(str(span(need.size, units)))
            if need.kind is not GoodKind.HOOP and need.number.value is not None:
                found.append(piece_words(need, units))
    return found


def _columns(lines: list[tuple[str, str]], columns: int) -> Section:
    """What is carried for each block, and on which day, in so many columns."""

    def draw(page: Canvas, left: float, top: float, width: float) -> None:
        page.setFont(FACE, 10)
        for number, (what, day) in enumerate(lines):
            x, y = left + width / columns * (number % columns), top - 10 - 12 * (number // columns)
            room = width / columns - 4 - pdfmetrics.stringWidth(day, FACE, 10)
            page.drawString(x, y, fitted(what, FACE, 10, room) + day)

    return Section(4 + 12.0 * -(-len(lines) // columns), draw)


def _carried_lines(
    laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], units: Units
) -> list[tuple[str, str]]:
    """What is carried for each block and, where they are not all planted on one day, on which day."""
    grown = {one.planting.id: one for one in laid.grown}
    days = {grown[layout.planting].dates.in_ground for layout in layouts}
    lines = []
    for layout in layouts:
        one, letter = grown[layout.planting], look[layout.planting].letter
        day, words = one.dates.in_ground, f"{letter} {block_words(one, layout, units)}"
        standing = _standing(letter, one, layout)
        lines.append((standing or words, f" · {short_day(day)}" if day and len(days) > 1 and not standing else ""))
    return lines


def _ends(layouts: tuple[Layout, ...], look: dict[str, Look], units: Units) -> list[str]:
    """How the counts treat ends and edges of a block: on one line where all agree and it has room, else by letter."""
    ends, edges = dict[str, list[str]](), dict[str, list[str]]()
    for layout in layouts:
        grid, letter = layout.grid, look[layout.planting].letter
        if layout.per_row:
            ends.setdefault(convention(grid, units), []).append(letter)
            if grid.edge_least and grid.pattern is not Pattern.RINGS:
                edge = _("edge at least {edge}").format(edge=offset(grid.edge_least, units))
                edges.setdefault(edge, []).append(letter)
    both = [_("counted with {ends}").format(ends=", ".join((*ends, *edges)))]
    is_alike = len(ends) == len(edges) == 1 and [*ends.values()] == [*edges.values()]
    if is_alike and pdfmetrics.stringWidth(both[0], FACE, 9) <= SIDE_WIDTH:
        return both
    whole = sum(map(len, ends.values()))
    return [line for found in (ends, edges) for line in _by_letter(found, whole)]


def _by_letter(found: dict[str, list[str]], whole: int) -> list[str]:
    """What the blocks, so many on the whole, are counted with: once where all agree, otherwise by letter."""
    if [len(named) for named in found.values()] == [whole]:
        return [_("counted with {ends}").format(ends=ends) for ends in found]
    words = _("{letters}: counted with {ends}")
    return [words.format(letters=" ".join(dict.fromkeys(named)), ends=ends) for ends, named in found.items()]


def _standing(letter: str, one: Grown, layout: Layout) -> str:
    """What needs no carrying, since it is in the ground: "A 160 stand since 12 Apr"; nothing while it is planned."""
    came = one.planting.actual
    if came is None or came.set_out is None:
        return ""
    words = _("{letter} {plants} stand since {day}")
    return words.format(letter=letter, plants=grouped(stood(one, layout)), day=short_day(came.set_out))
