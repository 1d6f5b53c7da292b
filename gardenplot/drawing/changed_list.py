"""What is done anew at the beds, as the sheet of what changed tells it: each stake once, and what is between them.

A stake that stays is not told unless another block begins or ends there now, and then as one that needs no hand.
"""

from collections.abc import Iterable, Iterator

from attrs import evolve, frozen

from gardenplot.drawing.letters import looks
from gardenplot.drawing.moved_numbers import StakeNumber, renumbered_words, stake_number
from gardenplot.drawing.moved_rows import rows_lines
from gardenplot.drawing.moved_says import remarked
from gardenplot.drawing.sayings import between, name_of
from gardenplot.drawing.stakes import numbers
from gardenplot.filling.moved import Mark, Moved, moved
from gardenplot.plan import Bed, Plan
from gardenplot.units import Units
from gardenplot.units.figures import Figure, tape
from gardenplot.words import _, ngettext


@frozen
class ChangedStake:
    """A stake with its number, its old and its new reading, None where it has none, and what begins and ends there.

    `says` has a line for each planting, its letter and name apart; the first also says what is done with the stake.
    Where it `is_job` a stake is driven or pulled out.
    """

    number: StakeNumber
    old: Figure | None
    new: Figure | None
    says: tuple[tuple[str, str], ...]
    is_job: bool


@frozen
class ChangedBed:
    """A bed with its stakes in walking order, and each thing between them: its name and lines of words."""

    bed: Bed
    stay: str
    stakes: tuple[ChangedStake, ...]
    between: tuple[tuple[str, tuple[str, ...]], ...]


_Numbered = tuple[Moved, StakeNumber]
_MOST_LETTERS = 8
"""Of more letters that are others now it is not told which."""


def relettered_words(before: Plan, after: Plan) -> str:
    """Which blocks have other letters than before, on stakes and labels that are in somebody's hand.

    "Letters are not as before: B is now C, C is now D".
    """
    was, now = looks(before), looks(after)
    trays = {one.id for one in after.plantings if one.hardens is not None}
    pairs = [
        (was[one].letter, look.letter)
        for one, look in now.items()
        if one in was and one not in trays and was[one].letter != look.letter
    ]
    if not pairs:
        return ""
    if len(pairs) > _MOST_LETTERS:
        return _("Letters are not as before: put new labels on the stakes")
    told = ", ".join(_("{old} is now {new}").format(old=old, new=new) for old, new in pairs)
    return _("Letters are not as before: {letters}").format(letters=told)


def changed_beds(before: Plan, after: Plan) -> tuple[ChangedBed, ...]:
    """The beds in which something is not where it was, in the plan's order."""
    beds = {bed.id: bed for bed in (*before.beds, *after.beds)}
    found: dict[str, list[Moved]] = {}
    for one in moved(before, after):
        found.setdefault(one.bed, []).append(one)
    return tuple(
        ChangedBed(
            beds[bed],
            renumbered_words(before, after, bed),
            tuple(_stakes(before, after, marks)),
            (*_blocks(before, after, marks), *_covers(before, after, marks)),
        )
        for bed, marks in found.items()
    )


def stakes_moved(before: Plan, after: Plan) -> int:
    """How many stakes are driven, pulled out, or moved; where two blocks meet there is one, and covers have none."""
    return sum(stake.is_job for bed in changed_beds(before, after) for stake in bed.stakes)


def _stakes(before: Plan, after: Plan, marks: Iterable[Moved]) -> Iterator[ChangedStake]:
    """The stakes of the bed sheets, those alike on paper as one."""
    units = after.place.units
    driven = [(one, stake_number(before, after, one)) for one in marks if one.mark in (Mark.BLOCK, Mark.ROW_END)]
    places: dict[tuple[str, bool, str], dict[str, list[_Numbered]]] = {}
    for one, number in sorted(_told(driven, units), key=lambda each: each[0].old is None):
        alike = places.setdefault((number.turn, one.new is None, _at(one.reading, units)), {})
        # What has no old reading needs the same stake as what moves there.
        old = _at(one.old, units) if one.old is not None and one.new is not None else next(iter(alike), "")
        alike.setdefault(old, []).append((one, number))
    groups = [
        [(one, evolve(number, is_there=number.is_there or rank > 0)) for one, number in group]
        for alike in places.values()
        for rank, group in enumerate(alike.values())
    ]
    for group in sorted(groups, key=lambda each: each[0][0].reading):
        yield _stake(before, after, group)


def _at(nm: int, units: Units) -> str:
    return tape(nm, units).number


def _told(driven: list[_Numbered], units: Units) -> Iterator[_Numbered]:
    """Without rows of one block that end at a stake that stays, and rows of another that take it over."""
    ends = [each for each in driven if each[0].mark is Mark.ROW_END]
    left = {
        (number.turn, one.begins, _at(one.reading, units)) for one, number in ends if one.new is None and number.stays
    }
    for one, number in driven:
        stays = number.stays if one.new is None else one.old is None and number.is_there
        taken_over = one.mark is Mark.ROW_END and (number.turn, one.begins, _at(one.reading, units)) in left
        if not (stays and taken_over):
            yield one, number


def _stake(before: Plan, after: Plan, group: list[_Numbered]) -> ChangedStake:
    """One stake of all that begins and ends at it."""
    one, number = group[0]
    mark = remarked(before, after, one)
    if one.new is None:
        done = [_("leave the stake") if number.stays else mark.gone]
    elif one.old is None:
        done = [_("has a stake") if number.is_there else _("new")]
    else:
        done = [*([_("leave the old one")] if number.stays else ()), *([_("has a stake")] if number.is_there else ())]
    (name, what), *more = _what(before, after, [each for each, _number in group])
    if one.new is None:
        what, done = f"{what}: {done[0]}", []
    told = " · ".join(part for part in (what, *done, number.turn) if part)
    is_job = (one.new is not None and not number.is_there) or (one.old is not None and not number.stays)
    return ChangedStake(number, mark.old, mark.new, ((name, told), *more), is_job)


def _what(before: Plan, after: Plan, marks: list[Moved]) -> Iterator[tuple[str, str]]:
    """For each planting what it does at a stake; what ends before what begins, rows that end alike together."""
    alike: dict[tuple[bool, str, Mark], list[Moved]] = {}
    for one in sorted(marks, key=lambda each: (each.begins, each.mark is Mark.BLOCK)):
        alike.setdefault((one.begins, one.planting, one.mark), []).append(one)
    for (begins, _planting, kind), ones in alike.items():
        mark, what = remarked(before, after, ones[0]), ""
        if kind is Mark.ROW_END:
            rows = sorted({one.row for one in ones})
            words = (ngettext("row {rows} begins", "rows {rows} begin", len(rows)) if begins
                     else ngettext("row {rows} ends", "rows {rows} end", len(rows)))  # fmt: skip
            what = words.format(rows=numbers(rows))
        yield f"{mark.letter} {mark.name}".strip(), what or mark.what


def _blocks(before: Plan, after: Plan, marks: Iterable[Moved]) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The blocks that are new or not as they were, with their plants and rows."""
    look, growing = looks(after), {one.id for one in after.plantings}
    changed: dict[str, list[Moved]] = {}
    for one in marks:
        if one.mark is not Mark.COVER and one.planting in growing:
            changed.setdefault(one.planting, []).append(one)
    for planting, ones in changed.items():
        lines = rows_lines(before, after, ones)
        if lines:
            yield f"{look[planting].letter} {name_of(after, planting)}", lines


def _covers(before: Plan, after: Plan, marks: Iterable[Moved]) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The covers that are not where they were; nobody has driven stakes for these."""
    units = after.place.units
    was, now = (
        {(one.bed, one.id): between(one.start.nm, one.end.nm, units) for one in plan.covers}
        for plan in (before, after)
    )
    for cover in dict.fromkeys((one.bed, one.cover or "") for one in marks if one.mark is Mark.COVER):
        old, new = was.get(cover), now.get(cover)
        if old == new:
            continue
        words = _("{new}, was {old}") if old and new else _("{new}, new") if new else _("{old}: take it off")
        yield _("Cover"), (words.format(old=old, new=new),)
