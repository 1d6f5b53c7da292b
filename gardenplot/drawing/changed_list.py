"""What is done anew at the beds, as the sheet of what changed tells it: each stake once, and what is between them.

A stake that stays is not told unless another block begins or ends there now, and then as one that needs no hand.
"""

from collections.abc import Iterable, Iterator

from attrs import evolve, frozen

from gardenplot.drawing.carried import block_words
from gardenplot.drawing.date_list import Job, job_words
from gardenplot.drawing.days import weekday_words
from gardenplot.drawing.letters import looks
from gardenplot.drawing.moved_numbers import StakeNumber, stake_number, staying_words
from gardenplot.drawing.moved_rows import rows_lines
from gardenplot.drawing.moved_says import remarked
from gardenplot.drawing.sayings import between, name_of, titled
from gardenplot.drawing.stakes import numbers
from gardenplot.filling.moved import Mark, Moved, moved
from gardenplot.layout import lay_out_bed
from gardenplot.plan import Bed, Establish, Plan, Planting, bed_of, crop_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.season import dates_of
from gardenplot.supplies.raising import is_seed
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
            staying_words(before, after, bed),
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
    old = None if number.stays and one.new is not None else mark.old
    if one.new is None:
        done = [_("leave the stake") if number.stays else mark.gone]
    else:
        # An old stake that stays for something else is not struck out: this one is a stake more.
        done = [_("stands already")] if number.is_there else [_("new")] if old is None else []
        number = evolve(number, was=number.was if old is not None or number.is_there else None)
    (name, what), *more = _what(before, after, [each for each, _number in group])
    if one.new is None:
        what, done = f"{what}: {done[0]}", []
    told = " · ".join(part for part in (what, *done, number.turn) if part)
    is_job = (one.new is not None and not number.is_there) or (one.old is not None and not number.stays)
    return ChangedStake(number, old, mark.new, ((name, told), *more), is_job)


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


def _blocks(before: Plan, after: Plan, marks: list[Moved]) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The blocks that are new or not as they were, with their plants and rows, and when they go in."""
    look, growing = looks(after), {one.id: one for one in after.plantings}
    changed: dict[str, list[Moved]] = {}
    for one in marks:
        if one.mark is not Mark.COVER and one.planting in growing:
            changed.setdefault(one.planting, []).append(one)
    for planting in after.plantings:
        if planting.bed == marks[0].bed and _day_words(before, after, planting):
            changed.setdefault(planting.id, [])
    for planting_id, ones in changed.items():
        day = _day_words(before, after, growing[planting_id])
        lines = (*(rows_lines(before, after, ones) if ones else ()), *((day,) if day else ()))
        if lines:
            name = f"{look[planting_id].letter} {name_of(after, planting_id)}"
            if (beside := growing[planting_id].gaps_of) is not None:
                name = _("{name}, in the empty places of {other}").format(
                    name=name, other=titled(after, beside, look)
                )
            yield name, lines


def _day_words(before: Plan, after: Plan, planting: Planting) -> str:
    """When a planting goes in that is new or goes in on another day: "set out Thu 22 May, was Mon 12 May".

    Of a new one also what is carried: "set out Mon 26 May: 16 plants (1 tray)".
    """
    now = dates_of(after, planting).in_ground
    if now is None or planting.hardens is not None or is_in_ground(planting):
        return ""
    job = Job.SET_OUT if crop_of(after, planting.crop).establish is Establish.TRANSPLANT else Job.SOW
    what = job_words(job, raised=False, planted=not is_seed(crop_of(after, planting.crop)))
    told = _("{job} {day}").format(job=what, day=weekday_words(now))
    old = next((one for one in before.plantings if one.id == planting.id), None)
    if old is None:
        laid = lay_out_bed(after, bed_of(after, planting.bed))
        one = next(each for each in laid.grown if each.planting.id == planting.id)
        what = block_words(one, laid.layout_of(planting.id), after.place.units)
        return _("{told}: {what}").format(told=told, what=what)
    was = dates_of(before, old).in_ground
    if was == now:
        return ""
    return told if was is None else _("{told}, was {day}").format(told=told, day=weekday_words(was))


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
