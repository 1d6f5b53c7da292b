"""Sentences about a plan for screen, paper and commands: findings, captions, counts."""

from collections import Counter
from collections.abc import Callable, Container, Iterable, Sequence
from datetime import date, timedelta
from functools import lru_cache

from gardenplot.drawing import slip_words, timing_words, today_words
from gardenplot.drawing.days import day_words
from gardenplot.drawing.left_words import at_fullest
from gardenplot.drawing.letters import Look
from gardenplot.drawing.so_many import so_many_cells, so_many_clumps, so_many_in_all, so_many_of, so_many_trays
from gardenplot.findings import Finding, Kind
from gardenplot.layout import LaidOut, Layout, lay_out_bed
from gardenplot.layout.trays import trays_name
from gardenplot.plan import Pattern, Plan, Reserved, bed_of, by_id, crop_of, order_of, planting_of
from gardenplot.plan.clumps import clump_for, clump_of
from gardenplot.season import dates_of, market_day
from gardenplot.units import Units
from gardenplot.units.figures import apart, grouped, offset, span, tape, unlike
from gardenplot.words import _, ngettext

TIMES = "\u2009×\u2009"
_MOST_GROUPS = 3
"""Rows that differ in more ways than this are counted, not listed."""
ANSWERS = {
    Reserved.CUT_FIRST: _("cut first"),
    Reserved.PLACES_EMPTY: _("leave the places empty"),
    Reserved.ROW_EMPTY: _("leave the row empty"),
}
PATTERNS = {
    Pattern.STRAIGHT: _("straight"),
    Pattern.STAGGERED: _("staggered"),
    Pattern.TRIANGULAR: _("triangular"),
    Pattern.TWIN: _("twin rows"),
    Pattern.OFFSETS: _("own offsets"),
    Pattern.CELLS: _("cells"),
    Pattern.RINGS: _("rings"),
    Pattern.BROADCAST: _("broadcast"),
}


_NO_ROOM = {
    Kind.NO_ROW: _("no row fits: both edge distances take {taken} of {width}"),
    Kind.NO_CELL: _("no cell fits: one takes {taken} of {width}"),
    Kind.NO_PLANT: _("no plant fits: one takes {taken} of {width}, and nothing may stand in its way"),
}
NEAR_EDGE = _("outer row {is_} from the edge, {least} is the least")
CLOSER = {
    Kind.CLOSER_IN_ROW: _("{is_} in the row, the packet says {packet}: smaller heads, less air"),
    Kind.CLOSER_ROWS: _("rows {is_} apart, the packet says {packet}: smaller heads, less air"),
}
_TWICE = _("takes all of its order, for which {other} stands too: {count} planted, {needed} needed")
_CLOSER_PAIRS = _(
    "rows {is_} apart in a pair, the packet says {packet} for rows: see that it is a crop for twin rows"
)


def name_of(plan: Plan, planting_id: str) -> str:
    """The crop's name of a planting; of a block of trays, that it is one."""
    planting = planting_of(plan, planting_id)
    crop = crop_of(plan, planting.crop)
    return crop.name if planting.hardens is None else trays_name(crop)


@lru_cache(maxsize=8192)
def counted(layout: Layout, asked: int = 0, clump: int = 1) -> str:
    """Rows and plants of a layout: "4 × 34 = 136", "2 × 46 + 45 = 137"; the plants alone of one row or none.

    Where they are fewer than asked for, also how many that is: "4 × 16 = 64 of 90 plants". Of trays "6 trays", of
    what stands in clumps "34 clumps of 4".
    """
    if layout.holds_trays:
        return so_many_trays(layout.plants)
    if layout.plants < asked:
        plants = so_many_of(layout.plants, asked, clump)
    else:
        plants = so_many_clumps(layout.plants, clump)
    if sum(map(bool, layout.per_row)) < 2 and layout.grid.pattern is not Pattern.CELLS:
        return plants
    groups = len({count for count in layout.per_row if count})
    if groups > _MOST_GROUPS and layout.grid.pattern is not Pattern.CELLS:
        return f"{rows_by_plants(layout)}, {plants}"
    return f"{rows_by_plants(layout)} = {plants if layout.plants < asked else grouped(layout.plants)}"


def counted_in(plan: Plan, layout: Layout, asked: int = 0) -> str:
    """The same of a planting of a plan."""
    return counted(layout, asked, clump_of(plan, layout.planting))


def so_many_planted(laid_out: Iterable[LaidOut], those: Container[str] | None = None) -> str:
    """What grows in some beds in all, or of some plantings in them: "45 plants and 34 clumps"."""
    found = [
        (one.crop.stand > 1, layout.planted)
        for laid in laid_out
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if those is None or layout.planting in those
    ]
    clumps = sum(planted for is_clump, planted in found if is_clump)
    return so_many_in_all(sum(planted for _clump, planted in found) - clumps, clumps)


@lru_cache(maxsize=8192)
def rows_by_plants(layout: Layout) -> str:
    """Rows and plants without their product: "4 × 34", "2 × 46 + 45", "80 cells × 4", or "band"."""
    if layout.grid.pattern is Pattern.BROADCAST:
        return _("band")
    if layout.grid.pattern is Pattern.CELLS and layout.plants:
        return _cells_by_plants(layout)
    rows = Counter(count for count in layout.per_row if count)
    if not rows:
        return "0"
    if len(rows) > _MOST_GROUPS:
        count = rows.total()
        if layout.rings:
            return _("{rings} rings").format(rings=count)
        return _("{rows} rows").format(rows=count)
    return " + ".join(
        f"{times}{TIMES}{grouped(count)}" if times > 1 else grouped(count) for count, times in rows.items()
    )


def _cells_by_plants(layout: Layout) -> str:
    """Whole cells and the plants in each; what a cell that is not full holds stands behind."""
    whole, rest = divmod(layout.plants, layout.grid.per_cell)
    cells = so_many_cells(whole)
    words = f"{cells}{TIMES}{layout.grid.per_cell}" if whole else ""
    return " + ".join(part for part in (words, str(rest) if rest else "") if part)


def between_readings(plan: Plan, start: int, end: int) -> str:
    """Two tape readings: "0.30 – 7.10 m"."""
    return between(start, end, plan.place.units)


@lru_cache(maxsize=8192)
def between(start: int, end: int, units: Units) -> str:
    """Two tape readings in nm in units of their own."""
    first, last = tape(start, units), tape(end, units)
    return f"{first.number} – {last}"


FAULT = "▼"
"""The mark of what cannot be done, in lists and above the bed where it is."""


def weight(finding: Finding) -> str:
    """How heavy a finding weighs, in a word: what cannot be done wears the mark that stands on the drawing."""
    if finding.cannot_be_done:
        return f"{FAULT} {_('cannot be done')}"
    return _("note") if finding.is_note else _("risk")


def marked(finding: Finding, words: str) -> str:
    """The words of a finding, with the mark before them if it cannot be done."""
    return f"{FAULT} {words}" if finding.cannot_be_done else words


def findings_title(found: Sequence[Finding]) -> str:
    """What the list of findings is called, with how many there are of them and how many notes beside them."""
    notes = sum(one.is_note for one in found)
    troubles = len(found) - notes
    title = ngettext("{count} finding", "{count} findings", troubles).format(count=grouped(troubles))
    noted = ngettext("{count} note", "{count} notes", notes).format(count=grouped(notes))
    return " · ".join((title if troubles else _("Findings"), *((noted,) if notes else ())))


def says(plan: Plan, finding: Finding, look: dict[str, Look]) -> str:
    """The sentence of a finding, without its place."""
    units = plan.place.units
    amount, limit = offset(finding.amount, units), offset(finding.limit, units)
    match finding.kind:
        case Kind.ON_ANOTHER_BED | Kind.THROUGH_A_WALL:
            return _place_says(plan, finding)
        case Kind.OVERLAP | Kind.OUTSIDE | Kind.LEFTOVER | Kind.IN_THE_WAY | Kind.SHADE | Kind.ON_DRIP_LINE:
            return _ground_says(plan, finding, look)
        case Kind.NOT_MARKABLE_IN_ROW | Kind.NOT_MARKABLE_ROWS | Kind.NOT_MARKABLE_PAIR:
            return _tools_say(finding, units)
        case Kind.NO_ROW | Kind.NO_CELL | Kind.NO_PLANT:
            return _NO_ROOM[finding.kind].format(taken=span(finding.limit, units), width=span(finding.amount, units))
        case Kind.DATES:
            return _("is out of the ground before it goes in")
        case Kind.ROWS:
            asked = ngettext("{asked} row asked for", "{asked} rows asked for", finding.amount)
            fit = ngettext("{count} fits", "{count} fit", finding.limit)
            return f"{asked.format(asked=finding.amount)}, {fit.format(count=finding.limit)}"
        case Kind.EDGE:
            amount, limit = unlike(finding.amount, finding.limit, units)
            return NEAR_EDGE.format(is_=amount, least=limit)
        case Kind.CLOSER_IN_ROW | Kind.CLOSER_ROWS:
            pairs = finding.kind is Kind.CLOSER_ROWS and _is_twin(plan, finding)
            amount, limit = apart(finding.amount, units), apart(finding.limit, units)
            return (_CLOSER_PAIRS if pairs else CLOSER[finding.kind]).format(is_=amount, packet=limit)
        case Kind.ORDER_SHORT | Kind.ORDER_UNPLANTED | Kind.ORDER_PAST | Kind.ORDER_TWICE:
            return _order_says(plan, finding, look)
        case _:
            return _says_of(finding.kind)(plan, finding)


def _says_of(kind: Kind) -> Callable[[Plan, Finding], str]:
    """What makes the sentences of a kind that are not made here."""
    if kind in slip_words.SLIPS:
        return slip_words.slip_says
    return today_words.today_says if kind in today_words.OF_TODAY else timing_words.timing_says


def _is_twin(plan: Plan, finding: Finding) -> bool:
    return planting_of(plan, finding.planting or "").pattern is Pattern.TWIN


def _ground_says(plan: Plan, finding: Finding, look: dict[str, Look]) -> str:
    length = span(finding.amount, plan.place.units)
    if finding.kind is Kind.OVERLAP:
        return _("stands {length} into {other}").format(length=length, other=titled(plan, finding.other or "", look))
    if finding.kind is Kind.IN_THE_WAY:
        return _in_the_way_says(plan, finding, look)
    if finding.kind is Kind.ON_DRIP_LINE:
        return ngettext(
            "{count} row lies on a drip line, or less than {beside} from one: move the line aside to plant",
            "{count} rows lie on drip lines, or less than {beside} from one: move the lines aside to plant",
            finding.amount,
        ).format(count=finding.amount, beside=offset(finding.limit, plan.place.units))
    if finding.kind is Kind.SHADE:
        words = _("{length} of it lie in the shadow of {other} at noon on {day}")
        day = day_words(date.fromordinal(finding.limit))
        return words.format(length=length, other=titled(plan, finding.other or "", look), day=day)
    if finding.kind is Kind.LEFTOVER:
        words = ngettext(
            "{length} left in one piece",
            "{length} left in {count} pieces",
            finding.pieces,
        ).format(length=length, count=finding.pieces)
        words = at_fullest(words, (lay_out_bed(plan, bed_of(plan, finding.bed or "")),))
        if finding.pieces == 1:
            return words
        here = span(finding.limit, plan.place.units)
        return _("{words}; the longest, {length}, is here").format(words=words, length=here)
    if finding.start < finding.limit:
        return _("begins {length} before the head margin").format(length=length)
    return _("runs {length} past the foot margin").format(length=length)


def _in_the_way_says(plan: Plan, finding: Finding, look: dict[str, Look]) -> str:
    """What stands on kept places, and by when it must be cut: the day before these are planted."""
    following = planting_of(plan, finding.other or "")
    last = cut_by(dates_of(plan, following).in_ground)
    by = _("first") if last is None else _("by {day}").format(day=day_words(last))
    return ngettext(
        "{count} plant stands within {clear} of a place of {other}: cut it {by}, or leave its place empty",
        "{count} plants stand within {clear} of places of {other}: cut them {by}, or leave their places empty",
        finding.amount,
    ).format(
        count=grouped(finding.amount),
        clear=offset(finding.limit, plan.place.units),
        other=titled(plan, following.id, look),
        by=by,
    )


def cut_by(begins: date | None) -> date | None:
    """The last day to cut what stands on kept places: the day before that on which these are planted."""
    return begins - timedelta(days=1) if begins is not None and begins > date.min else None


def _place_says(plan: Plan, finding: Finding) -> str:
    length, other = span(finding.amount, plan.place.units), finding.lies_on or ""
    if finding.kind is Kind.ON_ANOTHER_BED:
        return _("lies {length} into {bed} on the ground").format(length=length, bed=bed_of(plan, other).name)
    tunnel = by_id(plan.tunnels, other).name
    return _("sticks {length} out of {tunnel} through its wall").format(length=length, tunnel=tunnel)


def _tools_say(finding: Finding, units: Units) -> str:
    amount, nearest = apart(finding.amount, units), apart(finding.limit, units)
    cost = (
        _("as many plants")
        if not finding.plants
        else ngettext("{count} plant", "{count} plants", abs(finding.plants)).format(
            count=f"+{grouped(finding.plants)}" if finding.plants > 0 else grouped(finding.plants)
        )
    )
    if finding.pieces:
        words = _("rows {is_} apart cannot be marked; {nearest} can, within the packet's range: {cost}")
        return words.format(is_=amount, nearest=nearest, cost=cost)
    if finding.kind is Kind.NOT_MARKABLE_ROWS:
        return _("rows {is_} apart cannot be marked; the nearest is {nearest}: {cost}").format(
            is_=amount, nearest=nearest, cost=cost
        )
    if finding.kind is Kind.NOT_MARKABLE_PAIR:
        words = _("rows {is_} apart in a pair cannot be marked; the nearest is {nearest}: {cost}")
        if not finding.limit:
            words = _("rows {is_} apart in a pair cannot be marked, nor any that are closer than the pairs")
        return words.format(is_=amount, nearest=nearest, cost=cost)
    return _("{is_} in the row cannot be marked; the nearest is {nearest}: {cost}").format(
        is_=amount, nearest=nearest, cost=cost
    )


def _order_says(plan: Plan, finding: Finding, look: dict[str, Look]) -> str:
    if finding.kind is Kind.ORDER_TWICE:
        words, other = _TWICE, titled(plan, finding.other or "", look)
        return words.format(other=other, count=grouped(finding.amount), needed=grouped(finding.limit))
    order = order_of(plan, finding.order or "")
    name, clumps = crop_of(plan, order.crop).name, clump_for(plan, order) > 1
    day = day_words(market_day(order, finding.market) or order.on)
    if finding.kind is not Kind.ORDER_SHORT:
        words = _("{units} {crop} for {day}: not planted yet, {plants} must stand")
        if finding.kind is Kind.ORDER_PAST:
            words = _("{units} {crop} for {day}: that market day is past, and nothing is recorded for it")
        needed = _plants_or_clumps(finding.limit, clumps=clumps)
        words = words.format(units=grouped(order.units), crop=name, day=day, plants=needed)
        more = finding.pieces - 1
        if more < 1:
            return words
        return words + ngettext(
            "; nor for {count} later market day", "; nor for {count} later market days", more
        ).format(count=grouped(more))
    words = _("{units} {crop} for {day}: {short} short of {plants}")
    return words.format(
        units=grouped(order.units), crop=name, day=day, plants=grouped(finding.limit),
        short=_plants_or_clumps(finding.limit - finding.amount, clumps=clumps),
    )  # fmt: skip


def _plants_or_clumps(count: int, *, clumps: bool) -> str:
    """ "12 plants", or clumps however many stand in each."""
    return so_many_in_all(0 if clumps else count, count if clumps else 0)


def titled(plan: Plan, planting_id: str, look: dict[str, Look]) -> str:
    """Letter and name of a planting: "A Pak choi"."""
    return f"{look[planting_id].letter} {name_of(plan, planting_id)}"


def where(plan: Plan, finding: Finding, look: dict[str, Look]) -> str:
    """The place of a finding in words: planting, bed and tape readings, the orders, or the plan."""
    if finding.bed is None:
        return _("orders") if finding.order is not None else _("plan")
    bed = bed_of(plan, finding.bed).name
    readings = between_readings(plan, finding.start, finding.end)
    if finding.planting is None:
        return f"{bed}, {readings}"
    return f"{titled(plan, finding.planting, look)}, {bed}, {readings}"
