"""How a bed gets its shape: corners of an outline with their ties, diagonals of four, the centre of a disc."""

from itertools import zip_longest

from gardenplot.drawing.corner_names import named_corners
from gardenplot.drawing.tape_legs import is_taped
from gardenplot.layout.staked import MOST_STAKED
from gardenplot.plan import Bed
from gardenplot.plan.shapes import diagonal, diagonal_of, ties_of
from gardenplot.sheets.figure_table import fits, table
from gardenplot.sheets.row_sections import across_from
from gardenplot.sheets.section import Section, headed, heading, measured, sentence, short, space, stacked
from gardenplot.units import CM, INCH, Units
from gardenplot.units.figures import offset, tape
from gardenplot.words import _

_MOST_LINES, _PIECE = 8, 5
"""More corners stand in sections of so many at most, all of them alike long, so that they find room on one page."""

_Lines = list[tuple[str, ...]]


def corner_sections(bed: Bed, units: Units) -> tuple[Section, ...]:
    """Where the corners of an outline are: along and across, and how far from both ends of the base line.

    A corner where the head stake or the foot stake stands is theirs and not told again. Of many corners the ties
    alone are told, two corners on a line.
    """
    if not bed.outline:
        return ()
    count = len(bed.outline)
    if count > MOST_STAKED:
        words = _("{count} corners along a curve: take them from the drawing over several pages")
        return (stacked(heading(_("Corners of the bed")), sentence(words.format(count=count)), space(5)),)
    names, corners = named_corners(bed), bed.outline
    places: _Lines = [
        (f" {name}", tape(corners[at][0].nm, units).number, short(corners[at][1].nm, units))
        for at, name in names.items()
    ]
    placed = (_("corner"), _("tape"), across_from(bed))
    if not is_taped(bed, units):
        return tuple(_pieces(placed, places))
    both = ties_of(bed)
    ties: _Lines = [(f" {name}", *(tape(tie, units).number for tie in both[at])) for at, name in names.items()]
    tied = (_("corner"), _("head"), _("foot"))
    if len(ties) > _MOST_LINES:
        return tuple(_pieces(*_beside(tied, ties), is_tied=True))
    lines = [(*place, *tie[1:]) for place, tie in zip(places, ties, strict=True)]
    if fits((*placed, *tied[1:]), lines):
        return tuple(_pieces((*placed, *tied[1:]), lines, is_tied=True))
    return *_pieces(placed, places), *_pieces(tied, ties, is_tied=True)


def _beside(headings: tuple[str, ...], lines: _Lines) -> tuple[tuple[str, ...], _Lines]:
    """Corners with two on a line, if there is room for them."""
    half = -(-len(lines) // 2)
    blank = ("",) * len(headings)
    pairs = [(*one, *other) for one, other in zip_longest(lines[:half], lines[half:], fillvalue=blank)]
    return (headings * 2, pairs) if fits(headings * 2, pairs) else (headings, lines)


def _pieces(headings: tuple[str, ...], lines: _Lines, *, is_tied: bool = False) -> list[Section]:
    """Corners in tables of so many lines, closer together where two stand on a line."""
    found, each = [], len(lines)
    if each > _MOST_LINES:
        each = -(-each // -(-each // _PIECE))
    for at in range(0, len(lines), each):
        title = heading(_("Corners of the bed"), _(", by tapes from both ends") if is_tied else "")
        if at:
            title = heading(_("Corners of the bed, continued"))
        found.append(stacked(title, table(headings, lines[at : at + each], close=len(headings) > 5), space(3)))
    return found


def squared(bed: Bed, units: Units) -> tuple[Section, ...]:
    """How to square a bed with four corners, between posts where these stand in them, or to find the centre."""
    if bed.diameter is not None:
        radius = bed.diameter.nm // 2
        words = _("{tie} from the head stake and from the foot stake")
        return (stacked(headed(_("Centre"), words, tie=tape(diagonal(radius, radius), units)), space(5)),)
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
