"""A place as it is typed: where it lies, its clock, and the days of the year on which it freezes by odds."""

import re
from collections.abc import Callable
from datetime import date

from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.gestures.days_read import MONTHS, SHORTEST, month_named, words_of
from gardenplot.gestures.reading import text_of, whole_from
from gardenplot.gestures.typed import TypedField
from gardenplot.plan import MonthDay, Odds, Plan
from gardenplot.plan.edits import change_place
from gardenplot.season.nights import USUAL_AHEAD
from gardenplot.season.rotation import USUAL_GAP
from gardenplot.season.sun import zone_of
from gardenplot.units import parse_share
from gardenplot.words import _, ngettext

_DEGREES = re.compile(r"(?P<number>[-−]?\d{1,3}(?:[.,]\d+)?)[ °]*(?P<side>[nsew])?", re.IGNORECASE | re.ASCII)
_LEAP_YEAR = 2028


def month_day_from(text: str) -> MonthDay:
    """A day of the year as "18 May", "May 18" or "05-18"; raises PlanError."""
    words = words_of(text)
    parts = words[0].split("-") if len(words) == 1 else words
    if len(parts) == 2:
        month, day = parts if len(words) == 1 or not parts[0].isdigit() else parts[::-1]
        number = _month(month)
        if number is not None and day.isascii() and day.isdigit():
            try:
                found = date(_LEAP_YEAR, number, int(day))
            except ValueError:
                raise PlanError(_("the year has no {typed}").format(typed=text[:40])) from None
            return MonthDay(found.month, found.day)
    raise PlanError(_("“{typed}” is no day of the year: write it like 18 May or 05-18").format(typed=text[:40]))


def _month(text: str) -> int | None:
    return int(text) if text.isascii() and text.isdigit() and len(text) <= 2 else month_named(text)


def month_day_text(day: MonthDay) -> str:
    """A day of the year as it is typed: "18 May"."""
    return f"{day.day} {MONTHS[day.month - 1][:SHORTEST]}"


def _odds_field(name: str, label: str, share: str) -> TypedField:
    """The day of one chance; those of other chances stay as they are."""
    chance = parse_share(share)

    def shown(plan: Plan, _part: str) -> str:
        odds: Odds = getattr(plan.place, name)
        return next((month_day_text(day) for each, day in odds if each.part == chance.part), "")

    def edit(plan: Plan, _part: str, text: str, _shown: str) -> Plan:
        odds: Odds = getattr(plan.place, name)
        kept = [(each, day) for each, day in odds if each.part != chance.part]
        if text:
            kept.append((chance, month_day_from(text)))
        kept.sort(key=lambda one: one[0].part, reverse=True)
        return change_place(plan, **{name: tuple(kept)})

    return TypedField(f"{name}_{share.rstrip('%')}", label, shown, edit, held=_("not known"))


def _degrees_field(name: str, label: str, sides: str, example: str) -> TypedField:
    def edit(plan: Plan, _part: str, text: str, _shown: str) -> Plan:
        return change_place(plan, **{name: _degrees(text, sides, example) if text else None})

    return TypedField(name, label, lambda plan, _part: text_of(getattr(plan.place, name)), edit, example)


def _degrees(text: str, sides: str, example: str) -> float:
    """Degrees with a decimal point or comma; behind them S or W may stand for the minus, not beside it."""
    found = _DEGREES.fullmatch(text.strip())
    side = ((found["side"] if found else None) or sides[0]).upper()
    is_twice = found is not None and found["side"] is not None and found["number"].startswith(("-", "−"))
    if found is None or side not in sides or is_twice:
        raise PlanError(
            _("“{typed}” is no number of degrees: write it like {example}").format(typed=text[:40], example=example)
        )
    degrees = float(found["number"].replace(",", ".").replace("−", "-"))
    return degrees if side == sides[0] else -degrees


def _zone(plan: Plan, _part: str, text: str, _shown: str) -> Plan:
    if text and zone_of(evolve(plan.place, time_zone=text)) is None:
        raise PlanError(
            _("this computer knows no time zone “{typed}”: write it like Europe/London").format(typed=text[:40])
        )
    return change_place(plan, time_zone=text or None)


def _of_place(name: str) -> Callable[[Plan, str], str]:
    return lambda plan, _part: text_of(getattr(plan.place, name))


def _whole_field(name: str, label: str, held: str) -> TypedField:
    def edit(plan: Plan, _part: str, text: str, _shown: str) -> Plan:
        return change_place(plan, **{name: whole_from(text)})

    return TypedField(name, label, _of_place(name), edit, held=held)


PLACE_FIELDS = (
    _degrees_field("latitude", _("Latitude"), "NS", "57.2 N"),
    _degrees_field("longitude", _("Longitude"), "EW", "4.1 W"),
    TypedField("time_zone", _("Time zone"), _of_place("time_zone"), _zone, "Europe/London"),
    _whole_field(
        "family_gap",
        _("Seasons between crops of a family"),
        ngettext("usual: {count} season", "usual: {count} seasons", USUAL_GAP).format(count=USUAL_GAP),
    ),
    _whole_field(
        "cover_before",
        _("Covers on, minutes before sunset"),
        ngettext("usual: {count} minute", "usual: {count} minutes", USUAL_AHEAD).format(count=USUAL_AHEAD),
    ),
)
"""Where a place lies and how it keeps its beds, in the order of the panel."""
FROST_FIELDS = (
    _odds_field("last_freeze", _("Last freeze, half of all years"), "50%"),
    _odds_field("last_freeze", _("Last freeze, 1 year in 10"), "10%"),
    _odds_field("last_hard_freeze", _("Last hard freeze, half of all years"), "50%"),
    _odds_field("last_hard_freeze", _("Last hard freeze, 1 year in 10"), "10%"),
    _odds_field("first_freeze", _("First freeze, half of all years"), "50%"),
    _odds_field("first_freeze", _("First freeze, 1 year in 10"), "10%"),
)
"""The days of freezes by their odds, in the order of the panel."""
ZONE_UNKNOWN = _("this computer does not know it, so no sun times are told")
LIKE_A_DAY = _("like 18 May or 05-18")
HARD = _("28 °F, −2.2 °C")
SHORT_DAYS = {False: _("do not count"), True: _("count as others do")}
"""What may become of days of less than ten hours of light."""
