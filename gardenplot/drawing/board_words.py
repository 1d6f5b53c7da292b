"""Spacing strips and templates in words: what each is, what its 0 is laid on, for which blocks it is."""

from gardenplot.drawing.dibble import Template, Way
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import name_of, rows_by_plants
from gardenplot.drawing.spacing_boards import LeftOut, Why
from gardenplot.drawing.spacing_marks import Anchor, Purpose, Strip, What
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan, bed_of, crop_of, planting_of
from gardenplot.units import Units
from gardenplot.units.figures import apart, offset, span
from gardenplot.words import _, ngettext

_BASE_LINE = _("0 on the base line (left edge, from the head)")
_ANCHORS = {
    Anchor.BLOCK: _("0 on the stake where the block begins"),
    Anchor.MARGIN: _("0 on the head margin"),
    Anchor.ROW: _("first mark on the row’s first plant (bed sheet)"),
    Anchor.EDGE: _BASE_LINE,
    Anchor.BASE: _BASE_LINE,
    Anchor.CENTRE: _("0 on the centre of the rings"),
}
PLACES_KEPT = _("leave the places empty that the bed sheet keeps")
"""Said of what marks all places of a row, where some are kept for a crop that follows."""
HAS_RUNS = _("where an obstacle breaks a row, plant nothing between its two runs (bed sheet)")
BEGIN_ANEW = _("where an obstacle breaks a row, begin anew on the first plant behind it (bed sheet)")
"""Said where rows are broken: of what is laid on the block, and of what is laid on a row’s first plant."""
_LATE = _("{begins}; plant from the row’s first plant on (bed sheet)")
_FIRST_CELL = _("0 on the head side of the row’s first cell (bed sheet)")
_TEMPLATES = {
    Anchor.BLOCK: _("0 on the stake where the block begins"),
    Anchor.MARGIN: _("0 on the head margin"),
    Anchor.ROW: _("first plant on the row’s first plant (bed sheet)"),
}
_TITLES = {
    Purpose.IN_ROW: _("every {spacing} in the row"),
    Purpose.IN_RANK: _("every {spacing} in rows across the bed"),
    Purpose.RANKS: _("rows across the bed every {spacing}"),
    Purpose.ROWS: _("rows in a bed of {length}"),
    Purpose.ACROSS: _("every {spacing} across a bed of {length}"),
    Purpose.CELLS_ALONG: _("cells of {side} with {plants}, along the bed"),
    Purpose.CELLS_ACROSS: _("cells of {side} with {plants}, across a bed of {length}"),
    Purpose.RADII: _("rings from the centre"),
}


def strip_title(strip: Strip, units: Units) -> str:
    """What a strip marks: "every 20 cm in the row"."""
    if strip.between:
        return _("every {spacing} in the row, staggered").format(spacing=apart(strip.spacing, units))
    side, count = strip.cell
    plants = ngettext("{count} plant", "{count} plants", count).format(count=count)
    return _TITLES[strip.purpose].format(
        spacing=apart(strip.spacing, units),
        length=span(strip.length, units),
        side=offset(side, units),
        plants=plants,
    )


def template_title(template: Template, units: Units) -> str:
    """What a template marks: "2 rows 40 cm apart, every 40 cm, moved by half"."""
    along, across = template.spacing
    if template.way is Way.CELLS:
        words = ngettext(
            "cells of {side} with {count} plant", "cells of {side} with {count} plants", template.cell[1]
        )
        return words.format(side=offset(along, units), count=template.cell[1])
    if template.way is Way.ACROSS:
        along, across = across, along
    words = _("dibble pattern, every {spacing} in the row, rows {between} apart")
    if template.way is Way.ACROSS:
        words = _("dibble pattern of rows across, every {spacing} in the row, rows {between} apart")
    return words.format(spacing=apart(along, units), between=offset(across, units))


def template_use(template: Template, *, begins_late: bool = False) -> tuple[str, str, str]:
    """How a template is laid along the bed and across it, and how it is moved on."""
    begins = _TEMPLATES.get(template.anchor, _TEMPLATES[Anchor.ROW])
    if begins_late:
        begins = _LATE.format(begins=begins)
    if template.way is Way.CELLS and template.anchor is Anchor.ROW:
        begins = _FIRST_CELL
    moved = _("then 0 on the end line, again and again to the foot")
    match template.way:
        case Way.ALONG:
            across = _("row lines on the strings of the rows, from row 1 on")
            if template.rows < template.of_rows:
                again = _("{moved}; then the same with row 1 on row {row}")
                if template.of_rows > 2 * template.rows:
                    again = _("{moved}; then the same with row 1 on row {row} and so on")
                moved = again.format(moved=moved, row=template.rows + 1)
            if template.of_rows % template.rows:
                moved = _("{moved}, plant nothing beyond row {row}").format(moved=moved, row=template.of_rows)
        case Way.ACROSS:
            across = _("upper line on the base line (left edge, from the head)")
        case Way.CELLS:
            across = _("upper line on the first side of the cells")
            if template.rows < template.of_rows:
                moved = _("{moved}; then the upper line where the lowest was").format(moved=moved)
    return begins, across, moved


def template_size(template: Template, units: Units) -> str:
    """How far it is moved on, and what it holds: "0 line to its end 80 cm, 8 plants"."""
    plants = len(template.spots)
    words = ngettext(
        "{length} from 0 to the end line, {count} plant", "{length} from 0 to the end line, {count} plants", plants
    )
    return words.format(length=offset(template.repeat, units), count=plants)


def strip_size(strip: Strip, units: Units) -> str:
    """How long a strip is once it is glued; where marks lie at its ends it goes on beyond dashed lines."""
    if strip.end != strip.length:
        words = _("{length} from 0 to the dashed line at the end")
        return words.format(length=offset(strip.length, units))
    if strip.begin:
        return _("{length} from the dashed line at 0 to the end").format(length=offset(strip.length, units))
    return _("{length} from 0 to end").format(length=offset(strip.length, units))


def begins_words(strip: Strip, *, begins_late: bool = False) -> str:
    """What the 0, or the first mark, is laid on, and where rows begin late which marks are planted."""
    begins = _begins(strip)
    marks_places = strip.purpose in (Purpose.IN_ROW, Purpose.ACROSS)
    return _LATE.format(begins=begins) if begins_late and marks_places else begins


def _begins(strip: Strip) -> str:
    if strip.purpose is Purpose.CELLS_ALONG and strip.anchor is Anchor.ROW:
        return _FIRST_CELL
    if strip.purpose is Purpose.RANKS and strip.anchor is Anchor.ROW:
        return _("first mark on the first row (bed sheet)")
    return _ANCHORS[strip.anchor]


def ends_words(strip: Strip) -> str:
    """What is where a strip ends."""
    if strip.repeats:
        if strip.anchor is Anchor.ROW and strip.purpose is not Purpose.CELLS_ALONG:
            return _("next: first mark a spacing beyond the last")
        return _("here 0 comes next") if strip.end == strip.length else _("0 comes next on the dashed line")
    if strip.anchor is not Anchor.EDGE:
        return ""
    return _("this end on the right edge") if strip.end == strip.length else _("dashed line on the right edge")


def sides_words(strip: Strip) -> tuple[str, str]:
    """Where the two ends of a strip point to."""
    if strip.anchor is Anchor.CENTRE:
        return _("← CENTRE"), _("EDGE →")
    return (_("← LEFT EDGE"), _("RIGHT EDGE →")) if strip.lies_across else (_("← HEAD"), _("FOOT →"))


def edges_words(strip: Strip) -> str:
    """Which marks stand at which edge of a strip, where both have some."""
    if strip.purpose in (Purpose.CELLS_ALONG, Purpose.CELLS_ACROSS):
        return _("upper edge: sides of the cells, lower edge: plants")
    if any(mark.lower and mark.what is not What.CENTRE for mark in strip.marks):
        upper, lower = rows_by_turns(strip.rows)
        return _("upper edge: {upper}, lower edge: {lower}").format(upper=upper, lower=lower)
    return ""


def rows_by_turns(rows: int) -> tuple[str, str]:
    """Every second one of so many rows, and the others: "rows 1, 3", "row 2"."""
    odd, even = (range(first, rows + 1, 2) for first in (1, 2))
    return _rows(odd), _rows(even)


def _rows(numbers: range) -> str:
    words = ngettext("row {numbers}", "rows {numbers}", len(numbers))
    return words.format(numbers=", ".join(map(str, numbers[:2])) + (" …" if len(numbers) > 2 else ""))


def blocks_words(plan: Plan, plantings: tuple[str, ...], look: dict[str, Look]) -> str:
    """The blocks that something is for, by letter and bed: "A, C Tunnel, second bed · F Field"."""
    letters: dict[str, list[str]] = {}
    for planting in plantings:
        letters.setdefault(planting_of(plan, planting).bed, []).append(look[planting].letter)
    return " · ".join(f"{', '.join(found)} {bed_of(plan, bed).name}" for bed, found in letters.items())


def counted_words(plan: Plan, plantings: tuple[str, ...], look: dict[str, Look]) -> str:
    """The blocks that something is for, with their rows and plants: "A 4 × 34 in Tunnel, second bed"."""
    layouts = {one.planting: one for laid in lay_out_plan(plan) for one in laid.layouts}
    words = _("{letter} {rows} in {bed}")
    return " · ".join(
        words.format(
            letter=look[one].letter,
            rows=rows_by_plants(layouts[one]),
            bed=bed_of(plan, planting_of(plan, one).bed).name,
        )
        for one in plantings
    )


def crops_words(plan: Plan, crops: tuple[str, ...]) -> str:
    """The names of some crops: "Pak choi, Kohlrabi"."""
    return ", ".join(crop_of(plan, crop).name for crop in crops)


def ring_words(strip: Strip, units: Units) -> tuple[str, ...]:
    """The rings of a strip of radii, from the outermost in: how many plants stand on each."""
    rings = sorted((mark for mark in strip.marks if mark.number), key=lambda mark: mark.number)
    return tuple(
        ngettext("in the centre {count} plant", "in the centre {count} plants", count).format(count=count)
        if not ring.at
        else ngettext(
            "ring {number}: radius {radius}, {count} plant", "ring {number}: radius {radius}, {count} plants", count
        ).format(number=ring.number, radius=offset(ring.at, units), count=count)
        for ring, count in zip(rings, strip.on_rings, strict=False)
    )


def left_out_words(plan: Plan, one: LeftOut, look: dict[str, Look], pages: int = 0, plants: int = 0) -> str:
    """What has no strip, and why; of a template how many pages it would take for how many plants."""
    names = dict.fromkeys(name_of(plan, planting) for planting in one.plantings)
    blocks = f"{', '.join(names)} ({blocks_words(plan, one.plantings, look)})"
    match one.why:
        case Why.BAND:
            return _("{blocks}: sown over a band, there is nothing to mark").format(blocks=blocks)
        case Why.SLANTED:
            return _("{blocks}: rows run slantwise, so lay the rows out by the bed sheet").format(blocks=blocks)
        case Why.LONG:
            return _("{blocks}: a strip of {length} would be too long, a tape does better").format(
                blocks=blocks, length=span(_length(one), plan.place.units)
            )
        case Why.WIDE:
            words = _("{blocks}: a strip of {length} across the bed is longer than the board, a tape does better")
            return words.format(blocks=blocks, length=span(_length(one), plan.place.units))
        case Why.LARGE:
            words = ngettext(
                "{blocks}: a template would take {pages} pages for {count} plant, so use the strips",
                "{blocks}: a template would take {pages} pages for {count} plants, so use the strips",
                plants,
            )
            return words.format(blocks=blocks, pages=pages, count=plants)


def _length(one: LeftOut) -> int:
    return one.what.length if isinstance(one.what, Strip) else 0
