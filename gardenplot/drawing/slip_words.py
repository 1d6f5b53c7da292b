"""Sentences of findings about what contradicts itself: odds of frost, covers, hardening off, cells, orders."""

from datetime import date

from gardenplot.drawing.days import short_day
from gardenplot.drawing.so_many import so_many_days, so_many_plants
from gardenplot.findings import Finding, Kind
from gardenplot.findings.slips import wrong_odds
from gardenplot.plan import MonthDay, Plan, crop_of, order_of, planting_of
from gardenplot.season import emergence
from gardenplot.units.figures import span
from gardenplot.words import _

SLIPS = frozenset(
    {
        Kind.ODDS, Kind.COVER_BEYOND, Kind.JUGS_BEYOND, Kind.HARDENED_FIRST, Kind.TOO_FEW_SEEDS, Kind.OTHER_CROP,
        Kind.NO_EMERGENCE,
    }
)  # fmt: skip
"""Findings about slips, whose sentences are made here."""
_ODDS = {
    "last_freeze": _("last freeze: {one} on {day}, but {after} on {before} already; {falls}"),
    "last_hard_freeze": _("last hard freeze: {one} on {day}, but {after} on {before} already; {falls}"),
    "first_freeze": _("first freeze: {one} on {day}, but {after} on {before} already; {grows}"),
    "first_hard_freeze": _("first hard freeze: {one} on {day}, but {after} on {before} already; {grows}"),
}
_FALLS = _("the chance that it still freezes falls as days go by")
_GROWS = _("the chance that it has frozen grows as days go by")


def slip_says(plan: Plan, finding: Finding) -> str:
    """The sentence of a finding about a slip."""
    length = span(finding.amount, plan.place.units)
    match finding.kind:
        case Kind.ODDS:
            return _odds(plan, finding.came or "")
        case Kind.COVER_BEYOND:
            return _("a cover runs {length} past the foot of the bed").format(length=length)
        case Kind.JUGS_BEYOND:
            return _("water jugs stand up to {length} past the foot of the bed").format(length=length)
        case Kind.HARDENED_FIRST:
            return _("is hardened off {days} before it is sown").format(days=so_many_days(finding.amount))
        case Kind.TOO_FEW_SEEDS:
            words = _("a cell can give {plants}, {count} are meant in each place: sow more seeds in it")
            return words.format(plants=so_many_plants(finding.amount), count=finding.limit)
        case Kind.NO_EMERGENCE:
            return _no_emergence(plan, finding.planting or "")
        case _:
            planting = planting_of(plan, finding.planting or "")
            crop = crop_of(plan, order_of(plan, planting.order or "").crop)
            return _("stands for an order of {crop}").format(crop=crop.name)


def _no_emergence(plan: Plan, planting: str) -> str:
    name = crop_of(plan, planting_of(plan, planting).crop).emerges_like or ""
    near = _(", ").join(_("“{name}”").format(name=one) for one in emergence.nearest_names(name))
    words = _("“{name}” is not in the table of days to emerge, so that none are told; nearest: {near}")
    if not near:
        words = _("“{name}” is not in the table of days to emerge, nor is a name like it, so that none are told")
    return words.format(name=name, near=near)


def _odds(plan: Plan, name: str) -> str:
    found = wrong_odds(plan.place, name)
    if found is None:
        return ""
    (one, day), (after, before) = found
    return _ODDS[name].format(
        one=one, day=_short(day), after=after, before=_short(before), falls=_FALLS, grows=_GROWS
    )


def _short(day: MonthDay) -> str:
    return short_day(date(2000, day.month, day.day))  # any leap year
