"""Sentences of findings about today: what is past and not recorded, what is recorded before its day."""

from datetime import date

from gardenplot.drawing.days import day_words
from gardenplot.drawing.so_many import so_many_days
from gardenplot.findings import Finding, Kind
from gardenplot.findings.today import last_day
from gardenplot.plan import Actual, Plan, order_of, planting_of
from gardenplot.season import dates_of, market_day
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext

OF_TODAY = frozenset(
    {Kind.SOWING_PAST, Kind.POTTING_PAST, Kind.SETTING_PAST, Kind.NOT_YET, Kind.PLAN_PAST}
)  # fmt: skip
"""Findings about today, whose sentences are made here."""
_CAME = {
    "sown": _("is recorded as sown on {day}"),
    "emerged": _("is recorded as emerged on {day}"),
    "potted_up": _("is recorded as potted up on {day}"),
    "hardened": _("is recorded as hardened off from {day}"),
    "set_out": _("is recorded as in the ground since {day}"),
    "harvested": _("is recorded as first harvested on {day}"),
    "cleared": _("is recorded as out of the ground on {day}"),
}


def today_says(plan: Plan, finding: Finding) -> str:
    """The sentence of a finding about today."""
    if finding.kind is Kind.PLAN_PAST:
        return _plan_past(plan, finding)
    if finding.kind is Kind.NOT_YET:
        came = planting_of(plan, finding.planting or "").actual or Actual()
        day: date = getattr(came, finding.came or "")
        words = _("{came}, which is {days} from now")
        return words.format(
            came=_CAME[finding.came or ""].format(day=day_words(day)), days=so_many_days(finding.amount)
        )
    return _missed(plan, finding)


def _plan_past(plan: Plan, finding: Finding) -> str:
    last = last_day(plan)
    words = _("all days of this plan are past, the last was {day}").format(day=day_words(last) if last else "")
    if not finding.amount:
        return words
    return words + ngettext(
        "; nothing is recorded of {count} planting", "; nothing is recorded of {count} plantings", finding.amount
    ).format(count=grouped(finding.amount))


def _missed(plan: Plan, finding: Finding) -> str:
    """What was to be done and when, what that makes of the market, and how many plantings it is told for."""
    dates = dates_of(plan, planting_of(plan, finding.planting or ""))
    match finding.kind:
        case Kind.SOWING_PAST:
            words, day = _("sowing day {day}, {ago}, is not recorded"), dates.sow
        case Kind.POTTING_PAST:
            words, day = _("potting-up day {day}, {ago}, is not recorded"), dates.pot_up
        case _:
            words, day = _("setting-out day {day}, {ago}, is not recorded"), dates.set_out
    ago = _("{days} ago").format(days=so_many_days(finding.amount))
    more = finding.pieces - 1
    others = ngettext(
        "{count} planting more is past its day, and nothing is recorded in this plan",
        "{count} plantings more are past their days, and nothing is recorded in this plan",
        more,
    ).format(count=grouped(more))
    said = (
        words.format(day=day_words(day) if day else "", ago=ago),
        _market(plan, finding),
        others if more > 0 else "",
    )
    return "; ".join(part for part in said if part)


def _market(plan: Plan, finding: Finding) -> str:
    """By how much the market is missed if it is done today; nothing where it is met."""
    planting = planting_of(plan, finding.planting or "")
    if not finding.limit or planting.order is None:
        return ""
    order = order_of(plan, planting.order)
    words = _("set out today, it is ready {days} too late for the market on {day}")
    if finding.kind is Kind.SOWING_PAST:
        words = _("sown today, it is ready {days} too late for the market on {day}")
    return words.format(
        days=so_many_days(finding.limit), day=day_words(market_day(order, planting.market) or order.on)
    )
