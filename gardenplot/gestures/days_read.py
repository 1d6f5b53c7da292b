"""Days as a grower types them: "2027-04-09", "9 Apr 2027", "Fri 9 April 2027", "April 9, 2027"."""

from datetime import date

from gardenplot.errors import PlanError
from gardenplot.words import _

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
_WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
SHORTEST = 3
"""Letters of the name of a month or of a day of the week by which it is told from the others."""


def date_from(text: str) -> date | None:
    """A typed date, None for an empty line; raises PlanError.

    Figures alone are read in the order of ISO 8601 and in no other: 3/7/2027 is one day here and another one there.
    """
    if not text:
        return None
    day, weekday = _found(text)
    if day is None:
        words = _("“{typed}” is no date: write it like 2027-04-09 or 9 Apr 2027")
        raise PlanError(words.format(typed=text[:40]))
    if weekday is not None and weekday != day.weekday():
        words = _("“{typed}” is no {wrong} but a {right}")
        raise PlanError(words.format(typed=text[:40], wrong=_WEEKDAYS[weekday], right=_WEEKDAYS[day.weekday()]))
    return day


def day_read(text: str) -> date | None:
    """The day that a line holds, None where it holds none, or one that contradicts itself."""
    try:
        return date_from(text.strip())
    except PlanError:
        return None


def day_text(day: date) -> str:
    """A day as it stands in a line that is typed into: "9 Apr 2027".

    It has no day of the week, which would no longer fit once another day is typed over this one.
    """
    return f"{day.day} {MONTHS[day.month - 1][:SHORTEST]} {day.year}"


def month_named(text: str) -> int | None:
    """The number of a month by its name or the beginning of it."""
    found = _place_in(MONTHS, text)
    return None if found is None else found + 1


def words_of(text: str) -> list[str]:
    """The words of a typed day, in small letters, without the signs between them."""
    return text.replace(".", " ").replace(",", " ").lower().split()


def _found(text: str) -> tuple[date | None, int | None]:
    """The day and, where it was typed, the day of the week, from 0 for Monday."""
    try:
        # Python takes days by their week too, of ten letters like these.
        return date.fromisoformat(text if len(text) == 10 and text[7] == "-" else ""), None
    except ValueError:
        return _named(words_of(text))


def _named(words: list[str]) -> tuple[date | None, int | None]:
    weekday = _place_in(_WEEKDAYS, words[0]) if len(words) == 4 else None
    if weekday is not None:
        words = words[1:]
    if len(words) != 3 or not words[2].isascii() or not words[2].isdigit() or len(words[2]) != 4:
        return None, weekday
    day, month = words[:2] if month_named(words[0]) is None else (words[1], words[0])
    number = month_named(month)
    if number is None or not day.isascii() or not day.isdigit() or len(day) > 2:
        return None, weekday
    try:
        return date(int(words[2]), number, int(day)), weekday
    except ValueError:
        return None, weekday


def _place_in(names: tuple[str, ...], text: str) -> int | None:
    """Which of some names begins with a text of letters enough."""
    if len(text) < SHORTEST:
        return None
    return next((at for at, name in enumerate(names) if name.lower().startswith(text.lower())), None)
