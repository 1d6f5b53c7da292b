"""The stakes of a bed in walking order, each with its tape reading and what begins and ends there."""

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from itertools import pairwise

from attrs import evolve, frozen

from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import TIMES, name_of, rows_by_plants
from gardenplot.layout import LaidOut, Layout, free_between
from gardenplot.layout.row_ends import RowEnd, row_ends
from gardenplot.layout.staked import beyond, obstacle_at, post_at, staked
from gardenplot.plan import Bed, Pattern, Plan
from gardenplot.units import Units
from gardenplot.units.figures import grouped, span, tape
from gardenplot.words import _, ngettext


@frozen
class Here:
    """What is written beside a stake: a planting (its name may be cut short), what it does here, and more.

    Of a block that `begins` or ends here more is said of its first or last `plant`, whose tape reading that is.
    """

    says: str
    name: str = ""
    more: str = ""
    plant: str = ""
    begins: bool = False

    def __str__(self) -> str:
        more = f"{self.more} {self.plant}".strip()
        return f"{self.name} {self.says}".strip() + (f" · {more}" if more else "")


@frozen
class Stake:
    """One stake: its number from the head, its tape reading in nm, and what is written beside it.

    Where something stands on its place it is a mark on that, and no stake is carried for it.
    """

    number: int
    at: int
    notes: tuple[Here, ...]
    rows: str = ""
    plants: int | None = None
    is_mark: bool = False

    @property
    def here(self) -> tuple[str, ...]:
        """What is written beside it in full."""
        return tuple(str(note) for note in self.notes)


_LEFT = 9
"""What is left behind a stake is told below all that begins and ends there."""
_MARKED = 10
"""That a reading is marked stands below all that begins and ends there."""


_Looks = dict[str, Look]


@frozen
class _Note:
    """Something to write beside the stake of a reading, in words that are made where the stake is shown."""

    at: int
    says: Callable[[_Looks], Here]
    rank: int
    layout: Layout | None = None


def stakes(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]) -> tuple[Stake, ...]:
    """The stakes for some plantings of a bed; ends come before beginnings at the same reading."""
    notes = _driven(plan, laid, layouts)
    notes += _left_notes(plan, laid.bed, layouts, {note.at for note in notes})
    marked = {at: on for at in {note.at for note in notes} if (on := mark_on(laid.bed, at))}
    notes += [_Note(at, _said(_("mark {what}, no stake").format(what=on)), _MARKED)
              for at, on in marked.items()]  # fmt: skip
    found: list[Stake] = []
    for at in sorted({note.at for note in notes}):
        here = sorted((note for note in notes if note.at == at), key=lambda note: note.rank)
        begins = [note.layout for note in here if note.layout is not None]
        found.append(
            Stake(
                len(found),
                at,
                tuple(note.says(look) for note in here),
                "; ".join(_rows(layout) for layout in begins),
                sum(layout.plants for layout in begins) if begins else None,
                at in marked,
            )
        )
    return tuple(found)


def stake_readings(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...]) -> frozenset[int]:
    """The tape readings in nm of the stakes for some plantings of a bed, also of those that are marks."""
    return frozenset(note.at for note in _driven(plan, laid, layouts))


def _driven(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...]) -> list[_Note]:
    """What stakes are driven for: the ends of the bed, of its blocks and of rows inside these."""
    notes = [
        *_bed_notes(plan, laid.bed, layouts),
        *(note for one in layouts for note in _block_notes(plan, laid.bed, one)),
    ]
    ends = [note for one in layouts for note in _row_notes(plan, laid.bed, one)]
    if ends:
        notes += _beside_others(notes, sorted(ends, key=lambda note: note.at), plan.place.units)
    return notes


def mark_on(bed: Bed, at: int) -> str:
    """What stands where the stake of a reading would be driven, so that it is marked there; nothing if it is free."""
    if post_at(bed, (at, 0)):
        is_behind = at in (0, bed.length.nm) or (post_at(bed, (at - 1, 0)) and post_at(bed, (at + 1, 0)))
        return _("the top of the left board") if is_behind else _("the face of the post")
    found = obstacle_at(bed, (at, 0))
    return found.name if found else ""


def _rows(layout: Layout) -> str:
    """Rows and plants; a single row is told as one, lest its plants be taken for rows."""
    words = rows_by_plants(layout)
    return f"1{TIMES}{words}" if len(layout.rows) == 1 and words == grouped(layout.plants) else words


def _bed_notes(plan: Plan, bed: Bed, layouts: tuple[Layout, ...]) -> list[_Note]:
    first, last = bed.zone
    notes = [_Note(0, partial(_head, bed), 0), _Note(bed.length.nm, partial(_foot, bed), 9)]
    ends = [staked(bed, layout) for layout in layouts]
    end = max((end for _start, end in ends), default=first)
    if first > 0 and not any(start == first for start, _end in ends):
        notes.append(_Note(first, _said(_("head margin")), 1))
    if last < bed.length.nm and end != last:
        notes.append(_Note(last, partial(_foot_margin, last - end, plan.place.units), 8))
    return notes


def _said(words: str) -> Callable[[_Looks], Here]:
    return lambda _look: Here(words)


def _head(bed: Bed, _look: _Looks) -> Here:
    return Here(_("head") if mark_on(bed, 0) else _("head stake"))


def _foot(bed: Bed, _look: _Looks) -> Here:
    if mark_on(bed, bed.length.nm):
        return Here(_("foot: if it reads otherwise, stop and measure again"))
    return Here(_("foot stake: if it reads otherwise, stop and measure again"))


def _foot_margin(left: int, units: Units, _look: _Looks) -> Here:
    words = _("{length} left before it").format(length=span(left, units)) if left > 0 else ""
    return Here(_("foot margin"), more=words)


def _left_notes(plan: Plan, bed: Bed, layouts: tuple[Layout, ...], driven: set[int]) -> Iterator[_Note]:
    """How much is left between a stake and the next one; what the foot margin tells is not told twice."""
    last = bed.zone[1]
    for one in free_between(bed, tuple(sorted(layouts, key=lambda each: (each.start, each.end)))).leftover:
        if one.start in driven and (one.end < last or last == bed.length.nm):
            words = _("{length} left after it").format(length=span(one.length, plan.place.units))
            yield _Note(one.start, _said(words), _LEFT)


def _block_notes(plan: Plan, bed: Bed, layout: Layout) -> list[_Note]:
    start, end = staked(bed, layout)
    return [
        _Note(start, partial(_begins, plan, bed, layout), 5, layout),
        _Note(end, partial(_ends, plan, bed, layout), 3),
    ]


def _begins(plan: Plan, bed: Bed, layout: Layout, look: _Looks) -> Here:
    units, first = plan.place.units, layout.first_plant
    name = f"{look[layout.planting].letter} {name_of(plan, layout.planting)}"
    says = end_words(units, begins=True, beyond=beyond(bed, layout)[0])
    if first is None:
        return Here(says, name, begins=True)
    return Here(says, name, _("first plant"), tape(first, units).number, begins=True)


def _ends(plan: Plan, bed: Bed, layout: Layout, look: _Looks) -> Here:
    units, last, letter = plan.place.units, layout.last_plant, look[layout.planting].letter
    says = end_words(units, begins=False, beyond=beyond(bed, layout)[1])
    return Here(says, letter) if last is None else Here(says, letter, _("last plant"), tape(last, units).number)


def end_words(units: Units, *, begins: bool, beyond: int) -> str:
    """What a block does at one of its stakes; of so many nm beyond it, that they do not fit."""
    if not beyond:
        return _("begins") if begins else _("ends")
    words = _("begins, {length} do not fit") if begins else _("stops, {length} do not fit")
    return words.format(length=span(beyond, units))


def _row_notes(plan: Plan, bed: Bed, layout: Layout) -> list[_Note]:
    """Rows that begin or end inside a block; those whose readings look the same on paper in one note."""
    units = plan.place.units
    alike: dict[tuple[str, bool], list[RowEnd]] = {}
    for end in row_ends(bed, layout):
        alike.setdefault((tape(end.at, units).number, end.begins), []).append(end)
    return [
        _Note(found[0].at, partial(_row_says, layout, found), 6 if begins else 2)
        for (_reading, begins), found in alike.items()
    ]


def _row_says(layout: Layout, ends: list[RowEnd], look: _Looks) -> Here:
    return Here(_row_words(layout, ends), look[layout.planting].letter)


def _row_words(layout: Layout, ends: list[RowEnd]) -> str:
    rows = sorted({end.row + 1 for end in ends})
    if layout.grid.pattern is Pattern.CELLS:
        begin = ngettext("row {rows} of cells begins", "rows {rows} of cells begin", len(rows))
        end = ngettext("row {rows} of cells ends", "rows {rows} of cells end", len(rows))
    else:
        begin = ngettext("row {rows} begins", "rows {rows} begin", len(rows))
        end = ngettext("row {rows} ends", "rows {rows} end", len(rows))
    return (begin if ends[0].begins else end).format(rows=numbers(rows))


def numbers(rows: list[int], called: Callable[[int], str] = str) -> str:
    """Some numbers in order, in short: "3", "3–4", "1–2, 10–11"; or what each is called: "A–C, F"."""
    breaks = [at for at, (one, after) in enumerate(pairwise(rows), 1) if after != one + 1]
    parts = [rows[start:end] for start, end in pairwise([0, *breaks, len(rows)])]
    return ", ".join(called(part[0]) if len(part) == 1 else f"{called(part[0])}–{called(part[-1])}" for part in parts)


def _beside_others(notes: list[_Note], more: Iterable[_Note], units: Units) -> list[_Note]:
    """Further notes, each at the stake of any other whose reading looks the same on paper."""
    known: dict[str, int] = {}
    for note in notes:
        known.setdefault(tape(note.at, units).number, note.at)
    return [evolve(note, at=known.setdefault(tape(note.at, units).number, note.at)) for note in more]
