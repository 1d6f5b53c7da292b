"""What is said while a planting is drawn on the season map: its days, place and market, what draws or hinders it."""

from collections.abc import Collection, Sequence

from gardenplot.drawing.captions import GAP
from gardenplot.drawing.date_words import market_words
from gardenplot.drawing.days import day_words, short_day
from gardenplot.drawing.hand_words import chosen_name
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import between_readings, counted_in, name_of, says, so_many_planted, titled
from gardenplot.drawing.timing_words import timing_says
from gardenplot.findings import Finding, Kind, find_in_bed
from gardenplot.findings.timing import find_in_time
from gardenplot.gestures.day_snap import DayPull, DaySnap
from gardenplot.gestures.kept import layout_in
from gardenplot.layout import Grown, lay_out_bed
from gardenplot.plan import Plan, Planting, bed_of, planting_of
from gardenplot.season import Dates, dates_of
from gardenplot.words import _, ngettext


def days_words(dates: Dates) -> str:
    """From when to when a planting has its ground: "25 Mar – 24 May 2025, 60 days"."""
    first, out = dates.in_ground, dates.out
    if first is None:
        return _("until {day}").format(day=day_words(out)) if out is not None else _("all days")
    if out is None:
        return _("from {day} on").format(day=day_words(first))
    days = (out - first).days
    length = ngettext("{count} day", "{count} days", days).format(count=days)
    start = short_day(first) if first.year == out.year else f"{short_day(first)} {first.year}"
    return _("{first} – {out}, {length}").format(first=start, out=f"{short_day(out)} {out.year}", length=length)


def season_line(plan: Plan, planting_id: str) -> str:
    """A planting in a line: crop, days, readings and plants."""
    layout = layout_in(plan, planting_id)
    days = days_words(dates_of(plan, planting_of(plan, planting_id)))
    readings = between_readings(plan, layout.start, layout.end)
    return GAP.join((name_of(plan, planting_id), days, readings, counted_in(plan, layout)))


def several_season_line(plan: Plan, plantings: Sequence[str]) -> str:
    """Several plantings in a line: how many, their days from the first to the last, readings and plants."""
    each = [dates_of(plan, planting_of(plan, one)) for one in plantings]
    blocks = [layout_in(plan, one) for one in plantings]
    firsts, outs = [one.in_ground for one in each if one.in_ground], [one.out for one in each if one.out]
    is_open = len(outs) < len(each)
    days = days_words(Dates(in_ground=min(firsts, default=None), out=None if is_open else max(outs)))
    beds = {one.bed for one in blocks}
    where = (
        ngettext("in {count} bed", "in {count} beds", len(beds)).format(count=len(beds))
        if len(beds) > 1
        else between_readings(plan, min(one.start for one in blocks), max(one.end for one in blocks))
    )
    count = so_many_planted([lay_out_bed(plan, bed_of(plan, bed)) for bed in beds], plantings)
    return GAP.join((chosen_name(plan, plantings), days, where, count))


def ready_words(plan: Plan, planting_id: str) -> str:
    """When a planting is ready, against its market where it has one; nothing where nobody knows."""
    one = _grown(plan, planting_id)
    if one.dates.ready is None:
        return ""
    return market_words(one) or _("ready {day}").format(day=day_words(one.dates.ready))


def unready_words(plan: Plan, plantings: Sequence[str]) -> str:
    """That one of some plantings is out before it is ready; nothing where none is."""
    beds = dict.fromkeys(planting_of(plan, one).bed for one in plantings)
    found = (one for bed in beds for one in find_in_time(lay_out_bed(plan, bed_of(plan, bed)), plan.place, ()))
    unready = (one for one in found if one.kind is Kind.OUT_UNREADY and one.planting in plantings)
    words = ((name_of(plan, one.planting or ""), timing_says(plan, one)) for one in unready)
    return next((says if len(plantings) == 1 else f"{name} {says}" for name, says in words), "")


def in_the_way_words(plan: Plan, plantings: Sequence[str], look: dict[str, Look]) -> str:
    """How many plants of some plantings stand in the way of what follows, or of others in theirs; perhaps nothing."""
    beds = dict.fromkeys(planting_of(plan, one).bed for one in plantings)
    found = (one for bed in beds for one in find_in_bed(lay_out_bed(plan, bed_of(plan, bed))))
    about = [
        one
        for one in found
        if one.kind is Kind.IN_THE_WAY and one.other and (one.planting in plantings or one.other in plantings)
    ]
    return " · ".join(
        ngettext(
            "{count} plant of {crop} in the way of {other}",
            "{count} plants of {crop} in the way of {other}",
            one.amount,
        ).format(
            count=one.amount,
            crop=titled(plan, one.planting or "", look),
            other=titled(plan, one.other or "", look),
        )
        for one in about
    )


def no_longer_words(before: Plan, plan: Plan, plantings: Sequence[str]) -> str:
    """That first days that followed from something else are typed now; nothing where they are as they were."""
    was = {one.id: one for one in before.plantings}
    typed = [
        was[one]
        for one in plantings
        if one in was and was[one].in_ground is None and planting_of(plan, one).in_ground is not None
    ]
    if len(plantings) == 1:
        return _NO_LONGER[_counted_from(typed[0])] if typed else ""
    counted = sum(1 for one in typed if _counted_from(one) == "market")
    words = ngettext(
        "{count} is no longer counted back from its market",
        "{count} are no longer counted back from their markets",
        counted,
    )
    return words.format(count=counted) if counted else ""


_NO_LONGER = {
    "market": _("no longer counted back from its market"),
    "ready": _("no longer counted back from the day that it is ready"),
    "sowing": _("no longer counted on from its sowing"),
    "": "",
}


def _counted_from(planting: Planting) -> str:
    if planting.sow is not None or (planting.actual is not None and planting.actual.sown is not None):
        return "sowing"
    if planting.ready is not None:
        return "ready"
    return "market" if planting.order is not None else ""


def day_snap_words(plan: Plan, drawn: DaySnap | None, look: dict[str, Look]) -> str:
    """What drew the hand to a day; nothing for a day like any other."""
    if drawn is None or drawn.pull is DayPull.DAY:
        return ""
    other = titled(plan, drawn.planting, look) if drawn.planting is not None else ""
    return {
        DayPull.FREE: _("the day {other} is out").format(other=other),
        DayPull.NEEDED: _("out as {other} goes in").format(other=other),
        DayPull.SHOWN: _("the day shown"),
        DayPull.MARKET: _("counted back from its market"),
        DayPull.FOLLOWS: _("the day after its last harvest"),
        DayPull.KEPT: _("days as they were"),
    }[drawn.pull]


def taken_words(plan: Plan, finding: Finding, held: Collection[str], look: dict[str, Look]) -> str:
    """Why a planting cannot be there; of taken ground, from when to when the other has it."""
    words = says(plan, finding, look)
    there = [one for one in (finding.planting, finding.other) if one is not None and one not in held]
    if finding.kind is not Kind.OVERLAP or not there:
        return words
    days = days_words(dates_of(plan, planting_of(plan, there[0])))
    return _("{words}, there {days}").format(words=words, days=days)


def _grown(plan: Plan, planting_id: str) -> Grown:
    laid = lay_out_bed(plan, bed_of(plan, planting_of(plan, planting_id).bed))
    return next(one for one in laid.grown if one.planting.id == planting_id)
