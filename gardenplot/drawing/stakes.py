"""The stakes of a bed in walking order, each with its tape reading and what begins and ends there."""

from attrs import frozen

from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import name_of, rows_by_plants
from gardenplot.layout import LaidOut, Layout
from gardenplot.plan import Bed, Plan
from gardenplot.units.figures import span, tape
from gardenplot.words import _


@frozen
class Here:
    """What is written beside a stake: a planting (its name may be cut short), what it does here, and more."""

    says: str
    name: str = ""
    more: str = ""

    def __str__(self) -> str:
        return f"{self.name} {self.says}".strip() + (f" · {self.more}" if self.more else "")


@frozen
class Stake:
    """One stake: its number from the head, its tape reading in nm, and what is written beside it."""

    number: int
    at: int
    notes: tuple[Here, ...]
    rows: str = ""
    plants: int | None = None

    @property
    def here(self) -> tuple[str, ...]:
        """What is written beside it in full."""
        return tuple(str(note) for note in self.notes)


@frozen
class _Note:
    at: int
    here: Here
    rank: int
    layout: Layout | None = None


def stakes(plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]) -> tuple[Stake, ...]:
    """The stakes for some plantings of a bed; ends come before beginnings at the same reading."""
    notes = [
        *_bed_notes(plan, laid.bed, layouts),
        *(note for one in layouts for note in _block_notes(plan, one, look)),
    ]
    found: list[Stake] = []
    for at in sorted({note.at for note in notes}):
        here = sorted((note for note in notes if note.at == at), key=lambda note: note.rank)
        begins = [note.layout for note in here if note.layout is not None]
        found.append(
            Stake(
                len(found),
                at,
                tuple(note.here for note in here),
                "; ".join(rows_by_plants(layout) for layout in begins),
                sum(layout.plants for layout in begins) if begins else None,
            )
        )
    return tuple(found)


def _bed_notes(plan: Plan, bed: Bed, layouts: tuple[Layout, ...]) -> list[_Note]:
    first, last = bed.zone
    foot = Here(_("foot stake: if it reads otherwise, stop and measure again"))
    notes = [_Note(0, Here(_("head stake")), 0), _Note(bed.length.nm, foot, 9)]
    end = max((layout.end for layout in layouts), default=first)
    if first > 0 and not any(layout.start == first for layout in layouts):
        notes.append(_Note(first, Here(_("head margin")), 1))
    if last < bed.length.nm and end != last:
        left = _("{length} left before it").format(length=span(last - end, plan.place.units)) if end < last else ""
        notes.append(_Note(last, Here(_("foot margin"), more=left), 8))
    return notes


def _block_notes(plan: Plan, layout: Layout, look: dict[str, Look]) -> list[_Note]:
    units, letter = plan.place.units, look[layout.planting].letter
    first = last = ""
    if layout.first_plant is not None and layout.last_plant is not None:
        first = _("first plant {reading}").format(reading=tape(layout.first_plant, units).number)
        last = _("last plant {reading}").format(reading=tape(layout.last_plant, units).number)
    begins = Here(_("begins"), f"{letter} {name_of(plan, layout.planting)}", first)
    ends = Here(_("ends"), letter, last)
    return [_Note(layout.start, begins, 5, layout), _Note(layout.end, ends, 3)]
