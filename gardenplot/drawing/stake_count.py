"""How many stakes are carried to a bed for one of its turns: each that is driven there, counted once.

Those on the base line that the sheet numbers, one at every other corner, those between the legs of the tape, and the
centre of a round bed or of rings.
"""

from collections.abc import Mapping

from gardenplot.drawing.stakes import mark_on
from gardenplot.drawing.tape_legs import legs_of
from gardenplot.layout import LaidOut, Layout
from gardenplot.layout.staked import obstacle_at, other_corners
from gardenplot.units import Units
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext
from gardenplot.working import RULES, Number, Source, Unit, known, worked


def stakes_number(laid: LaidOut, layouts: tuple[Layout, ...], on_line: frozenset[int], units: Units) -> Number:
    """The stakes to carry, those of the sheet's table having the readings `on_line`."""
    bed = laid.bed
    middle = bed.length.nm // 2, bed.width.nm // 2
    is_centred = bed.diameter is not None or any(one.rings for one in layouts)
    line = known("line_stakes", sum(not mark_on(bed, at) for at in on_line), Unit.COUNT, source=Source.SHEETS)
    others = {
        "corner_stakes" if bed.outline else "far_corner_stakes": len(other_corners(bed, on_line)),
        "leg_stakes": sum(at not in on_line for at in legs_of(bed, units)),
        "centre_stake": int(is_centred and obstacle_at(bed, middle) is None),
    }
    terms = line, *(known(name, count, Unit.COUNT, source=RULES) for name, count in others.items() if count)
    return worked("stakes", Unit.COUNT, " + ".join(term.name for term in terms), *terms, source=RULES)


def stakes_words(number: Number) -> str:
    """The stakes to carry, with those that stand off the base line: "9 stakes (2 at far corners)"."""
    count = number.whole or 0
    words = ngettext("{count} stake", "{count} stakes", count).format(count=grouped(count))
    parts = [_ELSEWHERE[term.name].format(count=term.whole) for term in number.terms if term.name in _ELSEWHERE]
    return f"{words} ({', '.join(parts)})" if parts else words


_ELSEWHERE: Mapping[str, str] = {
    "corner_stakes": _("{count} at corners"),
    "far_corner_stakes": _("{count} at far corners"),
    "leg_stakes": _("{count} at legs"),
    "centre_stake": _("{count} at centre"),
}
