"""What is left of beds in words: on the day that is shown, or where a figure is for all days, at its fullest."""

from collections.abc import Sequence
from datetime import date

from gardenplot.drawing.days import short_day
from gardenplot.layout import LaidOut, free_on, fullest_day
from gardenplot.units import Units
from gardenplot.units.figures import span
from gardenplot.words import _, ngettext


def left_on(laid_out: Sequence[LaidOut], day: date | None, units: Units) -> str:
    """What is left of beds on a day: "0.65 m left on 9 Apr", "2.94 m left in 2 pieces on 9 Apr".

    Without a day, it is what no planting ever takes: "0.65 m left all season".
    """
    free = [free_on(laid, day) for laid in laid_out]
    total, pieces = sum(one.total for one in free), sum(len(one.leftover) for one in free)
    words = _("{length} left") if total else _("nothing left")
    if pieces > 1:
        words = ngettext("{length} left in {count} piece", "{length} left in {count} pieces", pieces)
    words = words.format(length=span(total, units), count=pieces)
    if not any(fullest_day(laid) for laid in laid_out):
        return words
    if day is None:
        # Nothing may be free on all days where something is on each of them.
        return _("{words} all season").format(words=words) if total else _("no piece left all season")
    return _("{words} on {day}").format(words=words, day=short_day(day))


def left_at_fullest(laid_out: Sequence[LaidOut], units: Units) -> str:
    """What is left of beds, each on its fullest day: "0.65 m left in 1 piece at its fullest"."""
    free = [free_on(laid, fullest_day(laid)) for laid in laid_out]
    total, pieces = sum(one.total for one in free), sum(len(one.leftover) for one in free)
    words = _("nothing left")
    if pieces:
        words = ngettext("{length} left in {count} piece", "{length} left in {count} pieces", pieces)
    return at_fullest(words.format(length=span(total, units), count=pieces), laid_out)


def at_fullest(words: str, laid_out: Sequence[LaidOut]) -> str:
    """Words about beds on their fullest days, which says so unless every day is alike."""
    if not any(fullest_day(laid) for laid in laid_out):
        return words
    sentence = ngettext("{words} at its fullest", "{words}, each bed at its fullest", len(laid_out))
    return sentence.format(words=words)
