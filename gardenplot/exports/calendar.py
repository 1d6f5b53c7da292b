"""The dates of a plan as a calendar file (iCalendar, RFC 5545): whole days, each with an id that stays.

A file that is imported again brings what it holds up to date, since ids follow from the plan alone: from the name of
its place, the season, the id of the planting, cover or order, and what is done. A season is a year, in the south one
from July to June, so that next year's plan with the same ids leaves this year's days as they are. What is no longer
in the plan is left to whoever keeps the calendar.
"""

from collections.abc import Iterable, Iterator
from datetime import UTC, date, datetime, timedelta
from hashlib import sha256

from icalendar import Calendar, Event

from gardenplot import __version__
from gardenplot.drawing.date_list import DateRow, Job, date_rows
from gardenplot.drawing.progress import Told, untold
from gardenplot.errors import PlanError
from gardenplot.one_line import one_line
from gardenplot.plan import Plan
from gardenplot.words import _

_CAUTION = _("The seed packet and the local extension service come first; frost dates are odds, no forecast.")
_ONE_DAY = frozenset({Job.COVER_ON, Job.COVER_OFF})
"""What stands for weeks and is no work but on its first day."""
_FIRST_MADE = datetime(2020, 1, 1, tzinfo=UTC)
_HALF_YEAR = 182


def written(plan: Plan, *, name: str = "", made: datetime, told: Told = untold) -> bytes:
    """The calendar file of a plan as made at a moment; the same plan and moment give the same bytes.

    Raises PlanError where no day is known.
    """
    rows = [row for row in date_rows(plan) if row.job is not Job.LAST and not row.is_later_market]
    if not rows:
        raise PlanError(_("no day is known in the plan, so there is nothing for a calendar"))
    calendar = Calendar()
    calendar.add("prodid", f"-//gardenplot//gardenplot {__version__}//EN")
    calendar.add("version", "2.0")
    calendar.add("calscale", "GREGORIAN")
    # RFC 5545 has no name for a calendar; this is what calendars read.
    calendar.add("x-wr-calname", one_line(name or plan.place.name or "gardenplot"))
    for number, (row, uid) in enumerate(zip(rows, _uids(plan, rows), strict=True)):
        told(number, len(rows))
        calendar.add_component(_event(plan, row, uid, made.astimezone(UTC).replace(microsecond=0)))
    content: bytes = calendar.to_ical()
    return content


def _event(plan: Plan, row: DateRow, uid: str, made: datetime) -> Event:
    event = Event()
    event.add("uid", uid)
    event.add("dtstamp", made)
    event.add("last-modified", made)
    # A later file is a later version of each day, whatever changed in it; whole minutes fit the 31 bits there are.
    event.add("sequence", max(0, (made - _FIRST_MADE) // timedelta(minutes=1)))
    event.add("dtstart", row.day)
    if (end := _end(row)) is not None:
        event.add("dtend", end)
    event.add("summary", _summary(row))
    event.add("description", "\n".join(one_line(line) for line in (row.amount_told, row.bed_name, _CAUTION) if line))
    where = ", ".join(part for part in (one_line(row.bed_name), one_line(plan.place.name)) if part.strip())
    if where:
        event.add("location", where)
    event.add("transp", "TRANSPARENT")
    return event


def _summary(row: DateRow) -> str:
    """What, of which, how many: "set out: A Pak choi, 136 plants"."""
    parts = [part for part in (row.name, row.amount_told) if part]
    if row.job in _ONE_DAY:
        parts[1:] = [row.bed_name]
    words = _("{what}: {of}").format(what=row.what, of=", ".join(parts))
    return one_line(_("{words} (done)").format(words=words) if row.done else words)


def _end(row: DateRow) -> date | None:
    """The first day that is no longer meant; none on the calendar's last day, where a single day needs no end."""
    if row.until is not None and row.job not in _ONE_DAY:
        return row.until
    return row.day + timedelta(days=1) if row.day < date.max else None


def _uids(plan: Plan, rows: Iterable[DateRow]) -> Iterator[str]:
    rows = tuple(rows)
    last: dict[tuple[str, str], date] = {}
    for row in rows:
        last[_thing(row)] = max(row.day, last.get(_thing(row), row.day))
    for row in rows:
        kind, about = _thing(row)
        season = _season(plan, last[kind, about])
        parts = "\0".join((plan.place.name, str(season), kind, about, row.job))
        yield f"{row.job.replace(' ', '-')}-{sha256(parts.encode()).hexdigest()[:32]}@gardenplot"


def _thing(row: DateRow) -> tuple[str, str]:
    if row.market is not None:
        return "order", row.about
    return "cover" if row.planting is None else "planting", row.about


def _season(plan: Plan, day: date) -> int:
    """The season that a planting's or cover's last day lies in."""
    is_south = plan.place.latitude is not None and plan.place.latitude < 0
    return date.fromordinal(max(1, day.toordinal() - (_HALF_YEAR if is_south else 0))).year
