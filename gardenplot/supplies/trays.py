"""Trays that are filled, and how many of them are in use at once: one is free again when its plants are set out.

Where a day is not known, trays are in use from ever or for ever. Most at once = the largest sum over the days on
which trays are filled: between two of these none is added. Common practice, no source.
"""

from datetime import date
from functools import lru_cache
from itertools import accumulate
from operator import add, itemgetter

from attrs import frozen

from gardenplot.working import Number


@frozen(cache_hash=True)
class Filled:
    """The trays that what is sown together fills, from the day of sowing until its plants are set out.

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

    @property
    def over(self) -> date:
        """The day from which they are free again; a day of setting out before that of sowing says nothing."""
        return self.set_out if self.set_out is not None and self.set_out > self.begins else date.max

    def are_in_use(self, day: date) -> bool:
        """Whether they are in use on a day."""
        return self.begins <= day < self.over


@lru_cache(maxsize=64)
def fullest_day(filled: tuple[Filled, ...]) -> date | None:
    """The day with most trays of one kind in use, of days with some that are asked for; None where none are.

    A day with a number that is not known comes first.
    """
    changes: dict[date, list[int]] = {}
    for one in filled:
        number = one.number.whole
        for day, way in ((one.begins, 1), (one.over, -1)):
            change = changes.setdefault(day, [0, 0, 0])
            change[0] += way * one.is_asked
            change[1] += way * (number is None)
            change[2] += way * (number or 0)
    days = sorted(changes)
    in_use = accumulate((changes[day] for day in days), lambda there, more: [*map(add, there, more)])
    on_days = [(day, unknown > 0, trays) for day, (asked, unknown, trays) in zip(days, in_use, strict=True) if asked]
    return max(on_days, key=itemgetter(1, 2))[0] if on_days else None
