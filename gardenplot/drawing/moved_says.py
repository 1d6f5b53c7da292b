"""What is marked anew at a bed, in words: what it is, its old and its new figure."""

from attrs import frozen

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import name_of
from gardenplot.drawing.stakes import end_words
from gardenplot.filling.moved import Mark, Moved
from gardenplot.plan import Plan, bed_of
from gardenplot.units.figures import Figure, apart, offset, tape
from gardenplot.words import _


@frozen
class Remarked:
    """A mark in words: the letter of its planting, what it is, its figures, and what is done where it has no new one.

    A figure is None where there is none.
    """

    letter: str
    name: str
    what: str
    old: Figure | None
    new: Figure | None
    gone: str


def remarked(before: Plan, after: Plan, one: Moved) -> Remarked:
    """A mark that moved from one plan to another; what goes has the letter that it has in the plan before."""
    units = after.place.units
    figure = tape if one.on_tape else apart if one.mark is Mark.SPACING else offset
    stays = one.new is not None and any(each.id == one.planting for each in after.plantings)
    plan = after if stays else before
    is_known = any(each.id == one.planting for each in plan.plantings)
    return Remarked(
        letter=looks(plan)[one.planting].letter if is_known else "",
        name=name_of(plan, one.planting) if is_known else one.planting,
        what=_what(plan, one),
        gone=_GONE[one.mark],
        old=figure(one.old, units) if one.old is not None else None,
        new=figure(one.new, units) if one.new is not None else None,
    )


_GONE = {
    Mark.BLOCK: _("pull it out"),
    Mark.ROW_END: _("pull it out"),
    Mark.ROWS: _("leave it out"),
    Mark.SPACING: _("leave it out"),
    Mark.COVER: _("take it off"),
}
"""What is done with a mark that goes."""


def _what(plan: Plan, one: Moved) -> str:
    """What is marked: "begins", "row 2 ends", "row 2 from the base line", "from plant to plant"."""
    match one.mark:
        case Mark.BLOCK:
            return end_words(plan.place.units, begins=one.begins, beyond=one.beyond)
        case Mark.ROW_END:
            words = _("row {row} begins") if one.begins else _("row {row} ends")
            return words.format(row=one.row)
        case Mark.ROWS:
            return _("row {row} from the base line").format(row=one.row)
        case Mark.SPACING:
            return _in_rows(plan, one)
        case Mark.COVER:
            return _("cover begins") if one.begins else _("cover ends")


def _in_rows(plan: Plan, one: Moved) -> str:
    """The spacing in the row, and of what stands in gaps that it does."""
    there = [each for each in plan.plantings if each.id == one.planting]
    if there and there[0].gaps_of is not None:
        return _("in the gaps of {name}, from plant to plant").format(name=name_of(plan, there[0].gaps_of))
    return _("from plant to plant")


def remarked_words(before: Plan, after: Plan, one: Moved) -> str:
    """A mark in one line: "Field bed: Bulb fennel ends 12.90 m, was 14.15 m"."""
    mark, bed = remarked(before, after, one), bed_of(after, one.bed).name
    what = f"{mark.name} {mark.what}".strip()
    if mark.new is None:
        words = _("{bed}: {what} {old} no longer")
    else:
        words = _("{bed}: {what} {new}, was {old}") if mark.old is not None else _("{bed}: {what} {new}, new")
    return words.format(bed=bed, what=what, old=mark.old, new=mark.new)
