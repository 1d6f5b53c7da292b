"""What a finding tells of as numbers: what there is and what it is held to, each in its own unit."""

from collections.abc import Iterator
from datetime import date

from attrs import evolve

from gardenplot.filling.setback_numbers import day_number
from gardenplot.findings import Finding, Kind
from gardenplot.findings.shade import tall_of
from gardenplot.findings.tools import as_marked, places_in
from gardenplot.layout import Grown, LaidOut, Layout, fullest_day, lay_out_bed
from gardenplot.layout.bed import grown_of
from gardenplot.layout.bed_numbers import grown_in, left_number, pieces_number, usable_number
from gardenplot.layout.close_numbers import closer_numbers
from gardenplot.layout.place_numbers import readings
from gardenplot.layout.row_numbers import plants_number, twin_number
from gardenplot.layout.shade import lie_of, shade_number
from gardenplot.layout.told import Told
from gardenplot.plan import Plan, bed_of, crop_of, planting_of
from gardenplot.season.date_numbers import date_numbers
from gardenplot.season.dates import wanted_ready
from gardenplot.season.frost import autumn_freeze, is_hard, last_freeze
from gardenplot.working import RULES, Number, Source, Trust, Unit, known, larger, smaller, worked

_DAYS = frozenset(
    {
        Kind.LATE, Kind.BED_LATE, Kind.SOWN_AFTER, Kind.OUT_UNREADY, Kind.OVER_AGE, Kind.SOWING_PAST,
        Kind.POTTING_PAST, Kind.SETTING_PAST, Kind.NOT_YET, Kind.DATES, Kind.HARDENED_FIRST,
        Kind.ODDS,
    }
)  # fmt: skip
_THINGS = frozenset(
    {
        Kind.ROWS, Kind.TRAYS, Kind.FAMILY, Kind.NO_MARKET, Kind.ORDER_SHORT, Kind.ORDER_UNPLANTED, Kind.ORDER_PAST,
        Kind.PLAN_PAST, Kind.IN_THE_WAY, Kind.ON_DRIP_LINE, Kind.TOO_FEW_SEEDS, Kind.ORDER_TWICE,
    }
)  # fmt: skip
_NEAR = frozenset({Kind.IN_THE_WAY, Kind.ON_DRIP_LINE})
_LONG = frozenset({Kind.OVERLAP, Kind.OUTSIDE, Kind.LEFTOVER, Kind.SHADE, Kind.NO_ROW, Kind.NO_CELL, Kind.NO_PLANT,
                   Kind.ON_ANOTHER_BED, Kind.THROUGH_A_WALL, Kind.COVER_BEYOND, Kind.JUGS_BEYOND})  # fmt: skip
_CLOSER = {Kind.CLOSER_IN_ROW: "closer_in_row", Kind.CLOSER_ROWS: "closer_rows", Kind.EDGE: "near_edge"}
_WORKED = frozenset(
    {
        Kind.OVERLAP, Kind.OUTSIDE, Kind.NO_ROW, Kind.ROWS, Kind.SHADE, Kind.NOT_MARKABLE_IN_ROW,
        Kind.NOT_MARKABLE_ROWS, Kind.NOT_MARKABLE_PAIR, *_CLOSER,
    }
)  # fmt: skip
"""What is told by a sum, in which what there is and what it is held to stand."""


def finding_numbers(plan: Plan, finding: Finding) -> Iterator[Number]:
    """The numbers of a finding's own sentence, those that follow from others by their difference first."""
    if finding.kind is Kind.LEFTOVER:
        yield from _left(plan, finding)
        return
    sums = tuple(_of_ground(plan, finding)) if finding.kind in _WORKED else ()
    if sums:
        yield from sums
        return
    if finding.planting is not None:
        yield from _of_days(plan, finding)
    if finding.kind in (Kind.FROST, Kind.FROST_NOTE, Kind.AUTUMN_FROST):
        return
    unit = Unit.DAYS if finding.kind in _DAYS else Unit.COUNT if finding.kind in _THINGS else Unit.SPACING
    unit = Unit.LENGTH if finding.kind in _LONG else unit
    limit = Unit.DATE if finding.kind is Kind.SHADE else Unit.SPACING if finding.kind in _NEAR else unit
    if finding.amount:
        yield known("found_amount", finding.amount, unit, source=Source.MEASURED)
    if finding.limit:
        yield known("found_limit", finding.limit, limit, source=Source.MEASURED)
    if finding.plants:
        yield known("more_plants", finding.plants, Unit.COUNT, source=Source.COUNTED)


def _of_ground(plan: Plan, finding: Finding) -> Iterator[Number]:
    """By how much a block stands into another one, beyond its margin, closer than it should; or has rows too many."""
    laid = lay_out_bed(plan, bed_of(plan, finding.bed or ""))
    layout = laid.layout_of(finding.planting or "")
    one = grown_in(laid, layout)
    match finding.kind:
        case Kind.OVERLAP:
            yield _overlap(readings(laid, layout), readings(laid, laid.layout_of(finding.other or "")))
        case Kind.OUTSIDE:
            yield _outside(laid, layout, at_head=finding.start < finding.limit)
        case Kind.NO_ROW:
            yield from _no_row(Told(laid.bed, one, layout))
        case Kind.SHADE:
            yield from _shade(plan, laid, finding)
        case Kind.NOT_MARKABLE_IN_ROW | Kind.NOT_MARKABLE_ROWS | Kind.NOT_MARKABLE_PAIR:
            yield from _not_markable(plan, laid, finding)
        case Kind.ROWS:
            asked = known("asked_rows", finding.amount, Unit.COUNT, source=Source.OF_PLANTING)
            fit = known("rows", finding.limit, Unit.COUNT, source=Source.COUNTED)
            yield worked("rows_over", Unit.COUNT, "asked_rows − rows", asked, fit, source=RULES)
        case _:
            name = _CLOSER[finding.kind]
            yield from (number for number in closer_numbers(laid.bed, one, layout) if number.name == name)


def _shade(plan: Plan, laid: LaidOut, finding: Finding) -> Iterator[Number]:
    """How much of a block lies in the shadow of another one, and on which day."""
    lie = lie_of(plan, laid.bed)
    beside, taller = (laid.layout_of(one or "") for one in (finding.planting, finding.other))
    lower, higher = (tall_of(grown_in(laid, each), each) for each in (beside, taller))
    day = date.fromordinal(finding.limit)
    if lie is not None and lower is not None and higher is not None:
        yield shade_number(lie, day, higher, lower)
    yield day_number("shade_day", day)


def _not_markable(plan: Plan, laid: LaidOut, finding: Finding) -> Iterator[Number]:
    """The spacing that cannot be marked, the nearest that can, and how many plants more that is."""
    layout = laid.layout_of(finding.planting or "")
    told, is_pair = Told(laid.bed, grown_in(laid, layout), layout), finding.kind is Kind.NOT_MARKABLE_PAIR
    spacing = known("row_spacing", finding.amount, Unit.SPACING, source=told.spacing_from)
    if is_pair:
        spacing = twin_number(told)
    if not finding.limit:
        yield spacing
        return
    changed, after = as_marked(plan, finding)
    now = plants_number(laid.bed, grown_in(laid, layout), layout)
    then = plants_number(laid.bed, grown_in(lay_out_bed(changed, laid.bed), after), after)
    in_row = finding.kind is Kind.NOT_MARKABLE_IN_ROW
    nearest = known("nearest_mark", finding.limit, Unit.SPACING, source=Source.OF_PLACE)
    is_ = told.in_row if in_row else spacing
    yield worked("off_mark", Unit.SPACING, f"nearest_mark − {is_.name}", nearest, is_, source=RULES)
    marked, places = evolve(then, name="planted_marked"), places_in(plan, layout)
    if places == layout.plants:
        yield worked("more_plants", Unit.COUNT, f"planted_marked − {now.name}", marked, now, source=RULES)
        return
    formula = f"planted_marked − larger({now.name}, smaller(places_held, planted_marked))"
    yield worked("more_plants", Unit.COUNT, formula, marked, now, known("places_held", places, Unit.COUNT,
                 source=Source.COUNTED), using={"larger": larger, "smaller": smaller}, source=RULES)  # fmt: skip


def _overlap(mine: tuple[Number, Number], other: tuple[Number, Number]) -> Number:
    """What two blocks have in common: from where the second begins to where the first ends."""
    begins, ends = (evolve(number, name=f"other_{number.name}") for number in other)
    return worked("overlaps", Unit.LENGTH, "smaller(ends, other_ends) − larger(begins, other_begins)", *mine, begins,
                  ends, using={"smaller": smaller, "larger": larger}, source=RULES)  # fmt: skip


def _outside(laid: LaidOut, layout: Layout, *, at_head: bool) -> Number:
    begins, ends = readings(laid, layout)
    if at_head:
        margin = known("zone_begins", laid.bed.zone[0], Unit.READING, source=Source.OF_BED)
        return worked("stands_out", Unit.LENGTH, "zone_begins − begins", margin, begins, source=RULES)
    last = worked("zone_ends", Unit.READING, "bed_length − foot_margin", *usable_number(laid.bed).terms[::2],
                  source=RULES)  # fmt: skip
    return worked("stands_out", Unit.LENGTH, "ends − zone_ends", ends, last, source=RULES)


def _no_row(told: Told) -> Iterator[Number]:
    """What both edge distances take, with a pair of rows between them, of the width of the bed."""
    twin = known("twin_spacing", told.grid.twin, Unit.SPACING, source=Source.OF_PLANTING)
    terms = (told.edge_distance, twin) if told.grid.twin else (told.edge_distance,)
    formula = "2 × edge_distance + twin_spacing" if told.grid.twin else "2 × edge_distance"
    taken = worked("taken", Unit.LENGTH, formula, *terms, source=RULES)
    width = evolve(told.bed_width, unit=Unit.LENGTH)
    yield worked("too_narrow", Unit.LENGTH, "taken − bed_width", taken, width, source=RULES)


def _left(plan: Plan, finding: Finding) -> Iterator[Number]:
    laid = lay_out_bed(plan, bed_of(plan, finding.bed or ""))
    yield left_number(laid, fullest_day(laid))
    yield pieces_number(laid, fullest_day(laid))
    yield known("longest", finding.limit, Unit.LENGTH, source=Source.MEASURED)


def _of_days(plan: Plan, finding: Finding) -> Iterator[Number]:
    """The days of a finding as the difference of two dates, or of a date and a freeze."""
    one = grown_of(plan, planting_of(plan, finding.planting or ""))
    dates = date_numbers(one.planting, one.crop, one.order, one.site)
    in_ground = dates.get("set_out", dates.get("sow"))
    if in_ground is None:
        return
    match finding.kind:
        case Kind.LATE:
            yield from _between("late_by", dates.get("ready"), _day("wanted", wanted_ready(one.planting, one.order)))
        case Kind.BED_LATE:
            usable = bed_of(plan, finding.bed or "").usable_from
            yield from _between("too_early", _day("usable_from", usable), in_ground)
        case Kind.OUT_UNREADY:
            yield from _between("unready", dates.get("ready"), dates.get("out"))
        case Kind.OVER_AGE:
            yield from _between("age", in_ground, dates.get("sow"))
        case Kind.AUTUMN_FROST:
            yield from _first_freeze(plan, one, date.fromordinal(finding.limit) if finding.limit else None)
        case Kind.FROST | Kind.FROST_NOTE:
            off = date.fromordinal(finding.limit) if finding.kind is Kind.FROST and finding.limit else None
            yield from _freezes(
                plan, one, _day("cover_off", off, Source.OF_COVER) or in_ground, off or one.dates.in_ground
            )
        case Kind.IN_THE_WAY:
            yield from _cut_by(plan, finding)
        case _:
            return


def _freezes(plan: Plan, one: Grown, told: Number, day: date | None) -> Iterator[Number]:
    """How the day in the ground, or of the cover coming off, lies to the last freeze, with its odds."""
    crop = crop_of(plan, one.planting.crop)
    if day is None:
        return
    freeze = last_freeze(plan.place, day, hard=is_hard(plan.place, crop.frost))
    if freeze is not None and freeze.likelier is not None:
        yield from _between("before_freeze", _day("freeze", freeze.day), told)
        yield known("later_freeze", freeze.likelier.part, Unit.SHARE, source=Source.OF_PLACE)


def _first_freeze(plan: Plan, one: Grown, until: date | None) -> Iterator[Number]:
    """The first freeze of autumn by a day, with its odds."""
    first = autumn_freeze(plan.place, crop_of(plan, one.planting.crop), one.dates, until)
    if first is not None:
        yield known("first_freeze", first.day.toordinal(), Unit.DATE, source=Source.OF_PLACE)
        yield known("earlier_freeze", first.share.part, Unit.SHARE, source=Source.OF_PLACE)


def _cut_by(plan: Plan, finding: Finding) -> Iterator[Number]:
    """The day before what follows is set out."""
    after = grown_of(plan, planting_of(plan, finding.other or ""))
    dates = date_numbers(after.planting, after.crop, after.order, after.site)
    follows = dates.get("set_out", dates.get("sow"))
    if follows is not None:
        day = known("a_day", 1, Unit.DAYS, source=RULES)
        yield worked("cut_by", Unit.DATE, f"{follows.name} − a_day", follows, day, source=RULES)


def _day(name: str, day: date | None, source: Source = Source.OF_PLACE) -> Number | None:
    return None if day is None else known(name, day.toordinal(), Unit.DATE, source=source)


def _between(name: str, later: Number | None, earlier: Number | None) -> Iterator[Number]:
    """The days from one date to another, where both are known."""
    if later is not None and earlier is not None:
        formula = f"{later.name} − {earlier.name}"
        yield worked(name, Unit.DAYS, formula, later, earlier, trust=Trust.FAIR, source=RULES)
