"""Trays that are filled, and how many of them are in use at once: one is free again when its plants are set out.

Where a day is not known, trays are in use from ever or for ever. Most at once = the largest sum over the days on
which trays are filled: between two of these none is added. Common practice, no source.
"""

from datetime import date

from attrs import frozen

from gardenplot.working import Number


@frozen
class Filled:
    """The trays that a planting fills, from the day of sowing until its plants are set out.

    `is_asked` are those that are still to be filled, when somebody asks; with `is_there` they are filled already.
    """

    number: Number
    sow: date | None
    set_out: date | None
    is_asked: bool = True
    is_there: bool = False

    @property
    def begins(self) -> date:
        """The first day on which they are in use."""
        return self.sow or date.min

    def are_in_use(self, day: date) -> bool:
        """Whether they are in use on a day; a day of setting out before that of sowing says nothing."""
        over = self.set_out if self.set_out is not None and self.set_out > self.begins else date.max
        return self.begins <= day < over


def most_at_once(filled: list[Filled]) -> tuple[Filled, ...]:
    """Of trays of one kind those in use on the day with most of them, of days with some that are asked for.

    A day with a number that is not known comes first.
    """
    on_days = (tuple(one for one in filled if one.are_in_use(day)) for day in sorted({one.begins for one in filled}))
    return max((ones for ones in on_days if any(one.is_asked for one in ones)), key=_measure, default=())


def _measure(ones: tuple[Filled, ...]) -> tuple[bool, int]:
    counts = [one.number.whole for one in ones]
    return None in counts, sum(count or 0 for count in counts)
