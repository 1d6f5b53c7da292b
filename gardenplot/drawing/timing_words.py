"""Sentences of findings about days: frost as odds, the market, the age of plants, families that come back."""

from datetime import date

from gardenplot.drawing.date_words import table_words
from gardenplot.drawing.days import day_words
from gardenplot.drawing.number_sources import SOURCES
from gardenplot.drawing.so_many import so_many_days
from gardenplot.drawing.trust_words import TRUST
from gardenplot.findings import Finding, Kind
from gardenplot.findings.timing import left_bare
from gardenplot.plan import Crop, Frost, Plan, bed_of, by_id, crop_of, order_of, planting_of
from gardenplot.season import Dates, dates_of, market_day
from gardenplot.season.emergence import NotInTable, emergence
from gardenplot.season.frost import autumn_freeze, is_hard, last_freeze
from gardenplot.units.figures import offset, tape
from gardenplot.words import _, ngettext
from gardenplot.working import Source, Trust

TIMING = frozenset(
    {
        Kind.NO_MARKET, Kind.LATE, Kind.SOWN_AFTER, Kind.OVER_AGE, Kind.FROST, Kind.FROST_NOTE, Kind.AUTUMN_FROST,
        Kind.FAMILY, Kind.TRAYS, Kind.COLD_EDGE, Kind.SOIL_COLD, Kind.SOIL_WARM, Kind.OUT_UNREADY,
        Kind.BED_LATE,
    }
)  # fmt: skip
"""Findings that are about days, whose sentences are made here."""
FROSTS = {
    Frost.HARDY: _("hardy"),
    Frost.HALF_HARDY: _("half-hardy"),
    Frost.TENDER: _("tender"),
    Frost.VERY_TENDER: _("very tender"),
}

_BEFORE = _("{kind}, {days} before {day}; in {share} of years a {freeze} comes later still")
_OFF_BEFORE = _("{kind}, its cover comes off {days} before {day}; in {share} of years a {freeze} comes later still")
_UP_TO = {
    _BEFORE: _("{words}, in up to {more} once it is out"),
    _OFF_BEFORE: _("{words}, in up to {more} once it is off"),
}
"""Between two chances it is as likely as something between the two."""


def timing_says(plan: Plan, finding: Finding) -> str:
    """The sentence of a finding about days."""
    match finding.kind:
        case Kind.NO_MARKET:
            words = _("is for market day {market} of an order that has {count}")
            return words.format(market=finding.amount, count=finding.limit)
        case Kind.LATE | Kind.BED_LATE:
            return (_late if finding.kind is Kind.LATE else _bed_late)(plan, finding)
        case Kind.SOWN_AFTER:
            return _("is sown {days} after it is set out").format(days=so_many_days(finding.amount))
        case Kind.OUT_UNREADY:
            return _("is out {days} before it is ready").format(days=so_many_days(finding.amount))
        case Kind.OVER_AGE:
            return _("is {age} days old when it is set out, {oldest} is the most: it may bolt or stand still").format(
                age=finding.amount, oldest=finding.limit
            )
        case Kind.SOIL_COLD | Kind.SOIL_WARM:
            return _soil(plan, finding)
        case Kind.FAMILY:
            return _family(plan, finding)
        case Kind.TRAYS:
            words = ngettext("{count} tray stands here", "{count} trays stand here", finding.amount)
            raised = ngettext("{count} is raised", "{count} are raised", finding.limit)
            return f"{words.format(count=finding.amount)}, {raised.format(count=finding.limit)}"
        case Kind.COLD_EDGE:
            return _("{length} from the wall of {tunnel}: the outer {edge} are cold, keep to the middle").format(
                length=offset(finding.amount, plan.place.units),
                tunnel=by_id(plan.tunnels, finding.lies_on or "").name,
                edge=offset(finding.limit, plan.place.units),
            )
        case _:
            return _frost(plan, finding)


def _bed_late(plan: Plan, finding: Finding) -> str:
    day = bed_of(plan, finding.bed or "").usable_from
    words = _("goes in {days} before its bed can be used, from {day} on")
    return words.format(days=so_many_days(finding.amount), day=day_words(day) if day else "")


def _late(plan: Plan, finding: Finding) -> str:
    planting = planting_of(plan, finding.planting or "")
    order = order_of(plan, planting.order or "")
    day = market_day(order, planting.market) or order.on
    words = _("is ready {days} too late for the market on {day}")
    return words.format(days=so_many_days(finding.amount), day=day_words(day))


def _soil(plan: Plan, finding: Finding) -> str:
    """What the table has, with its source and how far to trust it."""
    planting = planting_of(plan, finding.planting or "")
    crop, soil = crop_of(plan, planting.crop), planting.soil
    told = emergence(crop.emerges_like, soil) if soil is not None else None
    words = _("too cold to sow: {table}; {source} ({trust})")
    if finding.kind is Kind.SOIL_WARM:
        words = _("too warm to sow: {table}; {source} ({trust})")
    table = table_words(told, soil) if soil is not None and isinstance(told, NotInTable) else ""
    return words.format(table=table, source=SOURCES[Source.EMERGENCE], trust=TRUST[Trust.FAIR])


def _frost(plan: Plan, finding: Finding) -> str:
    planting = planting_of(plan, finding.planting or "")
    crop, dates = crop_of(plan, planting.crop), dates_of(plan, planting)
    if finding.kind is Kind.AUTUMN_FROST:
        return _autumn(plan, crop, dates, date.fromordinal(finding.limit) if finding.limit else None)
    if finding.kind is Kind.FROST and finding.limit:
        words = _("{words}: leave it on for longer, or have it at hand")
        return words.format(words=_spring(plan, crop.frost, date.fromordinal(finding.limit), _OFF_BEFORE))
    words = _spring(plan, crop.frost, dates.in_ground)
    if finding.kind is Kind.FROST:
        bare = _bare(plan, finding, dates.in_ground)
        told = _("{words}: its cover leaves {readings} bare") if bare else _("{words}: have a cover at hand, or wait")
        return told.format(words=words, readings=bare)
    return _("{words}: keep the cover on").format(words=words) if finding.limit else words


def _bare(plan: Plan, finding: Finding, day: date | None) -> str:
    """Where a cover that is on leaves a block bare, between tape readings; nothing where none is over it."""
    covers = tuple(one for one in plan.covers if one.bed == finding.bed)
    bare = left_bare(covers, finding.start, finding.end, day) if day is not None else ()
    units = plan.place.units
    return ", ".join(f"{tape(first, units).number} – {tape(last, units)}" for first, last in bare)


def _spring(plan: Plan, frost: Frost | None, day: date | None, words: str = _BEFORE) -> str:
    """How a day lies to the last freeze, with the odds: "tender, 13 days before Tue 20 May; ..."."""
    hard = is_hard(plan.place, frost)
    freeze = last_freeze(plan.place, day, hard=hard) if day else None
    if freeze is None or freeze.day is None:
        return ""
    told = words.format(
        kind=FROSTS[frost] if frost is not None else _("what frost it takes is not said"),
        days=so_many_days(freeze.days),
        day=day_words(freeze.day),
        share=freeze.likelier,
        freeze=_("hard freeze") if hard else _("freeze"),
    )
    return told if freeze.at_most is None else _UP_TO[words].format(words=told, more=freeze.at_most)


def _autumn(plan: Plan, crop: Crop, dates: Dates, on: date | None) -> str:
    """How the last day to cut, or the day on which its cover goes on too late, lies to the first freeze, with the
    odds: "tender, and to be cut until Sat 18 Oct 2025: by Sat 20 Sep 2025 it has frozen in half of all years"."""
    freeze = autumn_freeze(plan.place, crop, dates, on)
    if freeze is None or dates.stays is None:
        return ""
    words = _("{frost}, and to be cut until {last}")
    if dates.stays != dates.last:
        words = _("{frost}, and in the ground until {last}")
    stands = words.format(frost=FROSTS[crop.frost or Frost.TENDER], last=day_words(dates.stays))
    if on is not None:
        stands = _("{stands}, its cover goes on {day}").format(stands=stands, day=day_words(on))
    words = _("{stands}: by {day} it has frozen in {share} of years")
    if freeze.share.part * 2 == 1:
        words = _("{stands}: by {day} it has frozen in half of all years")
    told = words.format(stands=stands, day=day_words(freeze.day), share=freeze.share)
    if freeze.more is None:
        return told
    words = _("{words}, in up to {more} by its last day") if on is None else _("{words}, in up to {more} by then")
    return words.format(words=told, more=freeze.more)


def _family(plan: Plan, finding: Finding) -> str:
    planting = planting_of(plan, finding.planting or "")
    family = crop_of(plan, planting.crop).family or ""
    bed = bed_of(plan, planting.bed).name
    seasons = ngettext("{count} season in between", "{count} seasons in between", finding.amount).format(
        count=finding.amount
    )
    return _("{family} again in {bed} with {seasons}; {gap} are meant").format(
        family=family, bed=bed, seasons=seasons if finding.amount else _("no season in between"), gap=finding.limit
    )
