"""The nights of covers in words: times on the clock, why there are none, and what to do in the morning."""

from datetime import date, datetime, timedelta

from gardenplot.drawing.sayings import between
from gardenplot.plan import Place, Plan, bed_of
from gardenplot.season.nights import NoSunset, ahead_of
from gardenplot.words import _, ngettext

MORNING = _("In the morning: open if it is sunny, leave shut if it is overcast.")
VENT = _("The costly mistake is a vent missed on a sunny day: a shut cover gets hot. Open early.")
NOT_ALL = _(
    "Sunset is that of a level horizon. The frost forecast and the local extension service come before this card."
)
NO_END = _("The plan does not say when a cover comes off for good: ask before it is left off.")
_WHY = {
    NoSunset.NO_PLACE: _("No sun times: the place of this plan has no latitude and longitude."),
    NoSunset.NO_CLOCK: _("No sun times: the place of this plan has no time zone that this computer knows."),
    NoSunset.LIGHT_ALL_DAY: _("No sunset: the sun does not go down on this day."),
    NoSunset.DARK_ALL_DAY: _("No sunset: the sun does not rise on this day."),
    NoSunset.OUT_OF_REACH: _("No sun times: this day is beyond what can be worked out."),
}


NO_SUNSET = (NoSunset.LIGHT_ALL_DAY, NoSunset.DARK_ALL_DAY)
"""Why there is no sunset at all, rather than one that is not known."""


def why_words(why: NoSunset) -> str:
    """Why no sunset is told."""
    return _WHY[why]


def to_write_words(why: NoSunset) -> tuple[str, ...]:
    """What to do where no sunset is told: what the plan lacks, if anything, and last what is done by hand."""
    by_hand = _("Write the sunset of each night on its line, from an almanac, and the time to cover by beside it.")
    match why:
        case NoSunset.NO_PLACE:
            return _("Type latitude and longitude into the place of the plan, and print the card again; or:"), by_hand
        case NoSunset.NO_CLOCK:
            return _("Type the time zone into the place of the plan, and print the card again; or:"), by_hand
        case NoSunset.OUT_OF_REACH:
            return (_("Write the sunset of each night on its line, from an almanac."),)
        case NoSunset.LIGHT_ALL_DAY | NoSunset.DARK_ALL_DAY:
            return (_("Go by the frost forecast, and write the time to cover by on the line."),)


def clock_words(moment: datetime, day: date) -> str:
    """A time on the clock: "18:07", with its weekday where that is not the day it belongs to: "00:20 Sat"."""
    return f"{moment:%H:%M}" if moment.date() == day else f"{moment:%H:%M %a}"


def ahead_words(place: Place) -> str:
    """How the time to cover by came about: "Cover by: 1 hour before sunset"."""
    minutes = ahead_of(place) // timedelta(minutes=1)
    hours, rest = divmod(minutes, 60)
    parts = [ngettext("{count} hour", "{count} hours", hours).format(count=hours)] if hours else []
    if rest or not hours:
        parts.append(ngettext("{count} minute", "{count} minutes", rest).format(count=rest))
    return _("Cover by: {time} before sunset").format(time=" ".join(parts))


def cover_names(plan: Plan) -> dict[str, str]:
    """Where each cover of a plan stands, by its id: "Tunnel, east, 0.50 – 16.50 m"."""
    return {
        cover.id: f"{bed_of(plan, cover.bed).name}, {between(cover.start.nm, cover.end.nm, plan.place.units)}"
        for cover in plan.covers
    }
