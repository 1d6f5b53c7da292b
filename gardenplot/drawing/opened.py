"""What opens when it is asked how a number came about: of a block, a bed or the plan, and of a row of a table."""

from collections.abc import Iterator
from datetime import date

from attrs import evolve, frozen

from gardenplot.drawing.carried import tape_number
from gardenplot.drawing.date_list import DateRow, Job, Week
from gardenplot.drawing.date_words import dates_told
from gardenplot.drawing.days import day_words, weekday_words
from gardenplot.drawing.finding_numbers import finding_numbers
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import PATTERNS, titled, where
from gardenplot.drawing.shopping_list import ShopGroup, in_whole_lengths, seed_for, weight_to_buy, what_words
from gardenplot.drawing.supply_words import numbers_of
from gardenplot.drawing.thinned import thin_number
from gardenplot.drawing.workings import bed_numbers, left_at_fullest, planting_numbers
from gardenplot.findings import Finding, Kind, find_all, find_in_bed, find_of_planting
from gardenplot.layout import LaidOut, fullest_day, lay_out_bed, lay_out_plan, spacings_for_orders
from gardenplot.layout.bed import grown_of
from gardenplot.layout.bed_numbers import pieces_number, planted_number, total_number, wished_number
from gardenplot.layout.compare import candidates
from gardenplot.layout.place_numbers import against
from gardenplot.layout.row_numbers import row_numbers
from gardenplot.plan import GoodKind, Pattern, Plan, bed_of, by_id, crop_of, order_of, planting_of
from gardenplot.plan.edits import suppose_planting
from gardenplot.season import market_days, stand_number
from gardenplot.season.dates import wanted_ready
from gardenplot.supplies import cover_cut
from gardenplot.supplies.bench import bench_by_week
from gardenplot.supplies.shopping import Item
from gardenplot.words import _
from gardenplot.working import RULES, Number, Source, Unit, added, known, worked


@frozen
class Opened:
    """Numbers with their workings under a title."""

    title: str
    numbers: tuple[Number, ...]


def of_plan(plan: Plan) -> Opened:
    """What the plan comes to: its plants, those of each crop, and what each bed has left on its fullest day."""
    laid_out = lay_out_plan(plan)
    crops = dict.fromkeys(layout.crop for laid in laid_out for layout in laid.layouts if not layout.holds_trays)
    left = [left_at_fullest(laid) for laid in laid_out]
    pieces = [evolve(pieces_number(laid, fullest_day(laid)), label=laid.bed.name) for laid in laid_out]
    numbers = (
        known("beds", len(plan.beds), Unit.COUNT, source=Source.COUNTED),
        total_number(laid_out),
        *(evolve(total_number(laid_out, crop), label=crop_of(plan, crop).name) for crop in crops),
        added("left", Unit.LENGTH, left, RULES),
        added("pieces", Unit.COUNT, pieces, RULES),
    )
    return Opened(plan.place.name or _("The plan"), numbers)


def of_selected(plan: Plan, bed: str | None, planting: str | None, today: date | None = None) -> Opened:
    """What the selected block or bed comes to, with what is found about it; of nothing selected, the plan."""
    if bed is None:
        return of_plan(plan)
    numbers = list(numbers_of(plan, bed, planting))
    found = find_all(plan, today) if planting is None else find_of_planting(plan, planting, today)
    for finding in found:
        if planting is not None or finding.bed == bed:
            numbers += found_numbers(plan, finding)
    name = titled(plan, planting, looks(plan)) if planting else bed_of(plan, bed).name
    return Opened(name, tuple(numbers))


def of_pattern(plan: Plan, planting: str, pattern: Pattern) -> Opened:
    """A block in one of the patterns that are shown side by side: its plants, the difference, the length it needs."""
    laid = lay_out_bed(plan, bed_of(plan, planting_of(plan, planting).bed))
    found = next(one for one in candidates(plan, planting) if one.pattern is pattern)
    now, numbers = laid.layout_of(planting), planting_numbers(laid, planting)
    one = grown_of(plan, suppose_planting(plan, planting, pattern=pattern).plantings[_place(plan, planting)])
    rows = row_numbers(laid.bed, one, found.layout)
    here = next(each for each in rows if each.name == "planted")
    were = evolve(next(each for each in numbers if each.name == "planted"), name="planted_now")
    if were.value != now.plants:
        were = known("planted_now", now.plants, Unit.COUNT, source=Source.COUNTED)
    more = worked("more_plants", Unit.COUNT, "planted − planted_now", here, were, source=RULES)
    needs = known("block_needed", found.length, Unit.LENGTH, source=Source.SEARCH_LENGTH)
    apart = known("rows_apart", found.layout.grid.between, Unit.SPACING, source=Source.MEASURED)
    title = _("{planting}, {pattern}").format(planting=titled(plan, planting, looks(plan)), pattern=PATTERNS[pattern])
    return Opened(title, (*rows, more, apart, needs))


def _place(plan: Plan, planting: str) -> int:
    return next(number for number, one in enumerate(plan.plantings) if one.id == planting)


def of_crop(plan: Plan, crop: str) -> Opened:
    """The plants of a crop."""
    return Opened(crop_of(plan, crop).name, (total_number(lay_out_plan(plan), crop),))


def of_order(plan: Plan, order_id: str, market: int) -> Opened:
    """A market day of an order: what must stand, what is planted, by how much that is short or late."""
    order, laid_out = order_of(plan, order_id), lay_out_plan(plan)
    crop, day = crop_of(plan, order.crop), market_days(order)[market - 1]
    stand = stand_number(order, crop, spacings_for_orders(laid_out).get((order_id, market)))
    found = [*against(stand, planted_number(laid_out, order_id, market))]
    for laid in laid_out:
        for one in laid.grown:
            if one.planting.order == order_id and (one.planting.market or 1) == market:
                found += _late(plan, laid.bed.id, one.planting.id)
    title = _("{crop} for {day}").format(crop=crop.name, day=day_words(day))
    return Opened(title, (*found, known("market", day.toordinal(), Unit.DATE, source=Source.OF_ORDER)))


def _late(plan: Plan, bed: str, planting: str) -> list[Number]:
    """By how many days a planting is ready too late for its market."""
    laid = lay_out_bed(plan, bed_of(plan, bed))
    one = next(each for each in laid.grown if each.planting.id == planting)
    wanted = wanted_ready(one.planting, one.order)
    ready = next((each for each in planting_numbers(laid, planting) if each.name == "ready"), None)
    if wanted is None or ready is None or (ready.value or 0) <= wanted.toordinal():
        return []
    by = known("wanted", wanted.toordinal(), Unit.DATE, source=Source.OF_ORDER)
    return [worked("late_by", Unit.DAYS, "ready − wanted", ready, by, source=RULES)]


def of_wish(plan: Plan, wish_id: str) -> Opened:
    """A wish: what is planted for it, against what is wished for."""
    wish = by_id(plan.wishes, wish_id)
    planted = wished_number(lay_out_plan(plan), wish_id)
    each = max(1, wish.least) if wish.most is None else wish.most
    wanted = known("wish_wanted", each * wish.times, Unit.COUNT, source=Source.OF_WISH)
    short = worked("short", Unit.COUNT, f"wish_wanted − {planted.name}", wanted, planted, source=RULES)
    is_short = short.value is not None and short.value > 0
    return Opened(crop_of(plan, wish.crop).name, (planted, wanted, *((short,) if is_short else ())))


_DAY_OF = {
    Job.SOW: ("sow",), Job.POT_UP: ("pot_up",), Job.HARDEN: ("harden",), Job.SET_OUT: ("set_out", "sow"),
    Job.THIN: ("thin",), Job.CUT_BY: ("cut_by",), Job.READY: ("ready",), Job.LAST: ("last",), Job.FREE: ("out",),
}  # fmt: skip
"""The date that a job is done on, and beside it what else its row tells."""


def of_job(plan: Plan, row: DateRow) -> Opened:
    """The day of a job first, then the other days and numbers of its planting, of its cover or of its market day."""
    title = _("{what}, {name}, {day}").format(what=row.what, name=row.name, day=weekday_words(row.day))
    if row.market is not None:
        return evolve(of_order(plan, *row.market), title=title)
    if row.planting is None:
        cover = by_id(plan.covers, row.about)
        on = known("begins", cover.start.nm, Unit.READING, source=Source.OF_COVER)
        off = known("ends", cover.end.nm, Unit.READING, source=Source.OF_COVER)
        day = known("cover_day", row.day.toordinal(), Unit.DATE, source=Source.OF_COVER)
        return Opened(title, (day, on, off, *cover_cut(bed_of(plan, row.bed), cover).numbers))
    laid = lay_out_bed(plan, bed_of(plan, row.bed))
    numbers = [*_told_by(plan, laid, row), *planting_numbers(laid, row.planting)]
    about = _DAY_OF.get(row.job, ())
    return Opened(
        title, tuple(sorted(numbers, key=lambda each: (each.name not in about, each.unit is not Unit.DATE)))
    )


def _told_by(plan: Plan, laid: LaidOut, row: DateRow) -> Iterator[Number]:
    """The day of a job that is no date of its planting: about when it is thinned, or by when it is cut."""
    if row.job is Job.THIN:
        thin = next(thin_number(one) for one in laid.grown if one.planting.id == row.planting)
        yield from () if thin is None else (thin,)
    elif row.job is Job.CUT_BY:
        found = (one for one in find_in_bed(laid) if one.kind is Kind.IN_THE_WAY and one.planting == row.planting)
        yield from (
            number for one in found if row.about.endswith(f" {one.other}") for number in finding_numbers(plan, one)
        )


def of_week(plan: Plan, week: Week) -> Opened | None:
    """What stands on the bench in a week; nothing where no tray does."""
    for bench in bench_by_week(plan):
        if bench.monday.isocalendar()[:2] == (week.year, week.number):
            return Opened(f"{week.name}, {week.days}", (bench.trays, bench.area))
    return None


def of_finding(plan: Plan, finding: Finding) -> Opened:
    """What a finding is about: what there is and what should be, then all numbers of its block, bed or order."""
    numbers = found_numbers(plan, finding)
    if finding.order is not None:
        numbers += of_order(plan, finding.order, finding.market).numbers
    if finding.bed is not None:
        numbers += bed_or_planting(plan, finding.bed, finding.planting)
    return Opened(where(plan, finding, looks(plan)), tuple(numbers))


def found_numbers(plan: Plan, finding: Finding) -> list[Number]:
    """The numbers of a finding and its place."""
    found = list(finding_numbers(plan, finding))
    if finding.bed is not None:
        for name, at in (("begins", finding.start), ("ends", finding.end)):
            found.append(known(name, at, Unit.READING, source=Source.MEASURED))
    return found


def bed_or_planting(plan: Plan, bed: str, planting: str | None) -> tuple[Number, ...]:
    """All numbers of a planting, or those of a bed."""
    laid = lay_out_bed(plan, bed_of(plan, bed))
    return bed_numbers(laid) if planting is None else planting_numbers(laid, planting, lay_out_plan(plan))


def of_item(plan: Plan, item: Item) -> Opened:
    """What of a thing on the list is needed, in store, to buy, in packs, and what it costs; its size at the end."""
    told = [each for each in (item.cost, item.packs, item.lacking) if each.value is not None]
    size = [_size(plan, item)] if item.kind in _SIZED and item.size is not None else []
    in_all = [item.in_all] if item.in_all is not None and item.in_all.value != item.needed.value else []
    days, long = _days_of(plan, item.plantings), in_whole_lengths(plan, item)
    seed = [number for number in (weight_to_buy(plan, item), seed_for(item)) if number is not None]
    return Opened(what_words(plan, item), (*told, *seed, item.needed, *in_all, item.in_store, *size, *days, *long))


def _days_of(plan: Plan, plantings: tuple[str, ...]) -> Iterator[Number]:
    """The days on which plants that are bought in are set out."""
    look = looks(plan)
    for planting in plantings:
        day = dates_told(grown_of(plan, planting_of(plan, planting))).get("set_out")
        if day is not None:
            yield evolve(day, label=titled(plan, planting, look))


_SIZED = {
    GoodKind.HOOP: "hoop_length",
    GoodKind.CLOTH: "cloth_width",
    GoodKind.FILM: "film_width",
    GoodKind.TAPE: "tape_length",
}
"""Things that have a size, and what it is called."""


def _size(plan: Plan, item: Item) -> Number:
    """The length that hoops are cut to or that a tape reaches, the width of a cloth: worked out, or as it is sold."""
    if item.kind is GoodKind.TAPE:
        reaches = (tape_number(bed, plan.place.units) for bed in plan.beds)
        sold = known("tape_length", item.size, Unit.LENGTH, source=Source.MEASURED)
        return next((number for number in reaches if number.value == item.size), sold)
    for cover in plan.covers:
        cut = cover_cut(bed_of(plan, cover.bed), cover)
        is_hoop = item.kind is GoodKind.HOOP
        for number in (cut.hoop,) if is_hoop else (sheet.width for sheet in cut.sheets if sheet.kind is item.kind):
            if item.size in (number.value, number.whole):
                return number
    return known(_SIZED[item.kind], item.size, Unit.LENGTH, source=Source.SHOP)


def of_cost(plan: Plan, groups: tuple[ShopGroup, ...]) -> Opened:
    """What all of a list costs, and how many things that are to be bought have no price."""
    items = tuple(row.item for group in groups for row in group.rows)
    free = sum(item.cost.value is None for item in items if item.lacking.value != 0)
    without = known("no_price", free, Unit.COUNT, source=Source.COUNTED)
    named = (evolve(item.cost, label=what_words(plan, item)) for item in items if item.cost.value is not None)
    return Opened(_("Cost"), (added("cost", Unit.MONEY, tuple(named), RULES), without))
