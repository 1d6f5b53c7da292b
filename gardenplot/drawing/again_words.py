"""What came about otherwise than planned, and the answers to it, in words: what each gives and costs, its stakes."""

from collections.abc import Iterator
from datetime import date

from gardenplot.drawing.days import day_words, short_day, with_missing
from gardenplot.drawing.moved_says import remarked_words
from gardenplot.drawing.sayings import between_readings, counted_in, name_of
from gardenplot.drawing.setback_words import setback_words
from gardenplot.drawing.so_many import so_many_cells, so_many_clumps, so_many_seeds
from gardenplot.drawing.ways_words import way_words
from gardenplot.filling.placed import Placed
from gardenplot.filling.setbacks import Answer, AnswerKind, Part
from gardenplot.plan import Establish, Plan, bed_of, crop_of, planting_of
from gardenplot.plan.clumps import clump_of, crop_as_planted
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.season import dates_of
from gardenplot.units.figures import apart, grouped, offset, span
from gardenplot.words import _, ngettext

__all__ = ["answer_words", "done_words", "is_in_trays", "moved_words", "setback_words", "so_many"]


def answer_words(answer: Answer) -> str:
    """An answer in one line: what is done, what stands then, and for which market."""
    parts = [done_words(answer), *_grown_words(answer)]
    return "; ".join(part for part in parts if part)


def done_words(answer: Answer) -> str:
    """What is done: "Buy in 16 plants", "Sow 28 cells again, or 20 cells with two seeds each (40 seeds)"."""
    match answer.kind:
        case AnswerKind.BUY_IN:
            return _("Buy in {plants}").format(plants=so_many(answer, answer.buy)) + _where(answer)
        case AnswerKind.SOW_AGAIN | AnswerKind.SECOND_BLOCK:
            return _sow_words(answer) + _where(answer)
        case AnswerKind.FILL_ROWS | AnswerKind.FILL_GAP:
            return _filled_words(answer)
        case AnswerKind.WAY_OUT:
            return way_words(answer.way) if answer.way is not None else ""
        case _:
            return _block_words(answer)


def _block_words(answer: Answer) -> str:
    """What is done with the block that was planned."""
    plan, name = answer.plan, _name(answer)
    bed, length = bed_of(plan, answer.layout.bed).name, span(answer.length, plan.place.units)
    if answer.kind is AnswerKind.SPREAD:
        return _spread_words(answer)
    if answer.part is not None:
        return _part_words(answer, answer.part)
    words = {
        AnswerKind.SHORT: _("Plant short at the spacing as planned, {rows} in {length}"),
        AnswerKind.OTHER_BED: _("Plant in {bed}{day}"),
        AnswerKind.LATER: _("Hold the plants and set them out late"),
        AnswerKind.SOONER: _("{name} sooner"),
        AnswerKind.ENLARGE: _("A longer block of {name}, {rows} in {length}"),
        AnswerKind.OTHER_PLACE: _("{name} elsewhere in {bed}, {place}"),
        AnswerKind.SHORTER: _("A shorter block of {name}, {rows} in {length}"),
        AnswerKind.LESS: _("Leave it as it is and sell less"),
        AnswerKind.REMOVE: _("Do not plant it"),
        AnswerKind.SPARE: _("Keep what is too many as spare"),
    }[answer.kind]
    if answer.kind is AnswerKind.LATER and not is_in_trays(answer):
        is_there = is_in_ground(planting_of(plan, answer.layout.planting))
        words = _("Leave it as it is for a later market") if is_there else _("Sow {name} later")
    place = between_readings(plan, answer.layout.start, answer.layout.end)
    day, is_gone = _on_day(answer, answer.set_out), answer.kind is AnswerKind.REMOVE
    rows = "" if is_gone else counted_in(plan, answer.layout)
    return words.format(name=name, bed=bed, length=length, rows=rows, place=place, day=day)


def _on_day(answer: Answer, day: date | None) -> str:
    """On which day something goes in, as a part of a sentence."""
    if day is None or day == answer.planned:
        return _(" on the day as planned")
    return _(" on {day}").format(day=day_words(day))


def _part_words(answer: Answer, part: Part) -> str:
    """How much goes into other beds on its day and what that is for its market, and what waits for its own bed."""
    plan, there = answer.plan, part.placed
    some = _(" and ").join(
        _("{plants} in {bed}").format(plants=so_many(answer, one.plants), bed=bed_of(plan, one.bed).name)
        for one in part.beds
    )
    told = _("Plant {some}{day}").format(some=some, day=_on_day(answer, there.in_ground))
    if answer.layout.planting not in {one.planting for one in part.beds}:
        own = bed_of(plan, answer.layout.bed).name
        told += _(", the other {rest} late in {own}").format(rest=grouped(answer.layout.plants), own=own)
    if part.market is not None:
        told += _(": {units} for {market}").format(units=grouped(part.units), market=day_words(part.market))
    return told + (_(", {short} short").format(short=grouped(part.short)) if part.short else "")


def is_in_trays(answer: Answer) -> bool:
    """Whether its plants are, or are to be, in trays."""
    one = planting_of(answer.plan, answer.layout.planting)
    return crop_of(answer.plan, one.crop).establish is Establish.TRANSPLANT and not is_in_ground(one)


def _name(answer: Answer) -> str:
    there = any(one.id == answer.layout.planting for one in answer.plan.plantings)
    return name_of(answer.plan, answer.layout.planting) if there else ""


def _spread_words(answer: Answer) -> str:
    units, spread = answer.plan.place.units, answer.spread
    if spread is None:
        return ""
    words = _("Spread out, {marked} in the row over {length}")
    told = words.format(marked=apart(spread.marked, units), length=span(answer.length, units))
    if spread.is_markable:
        return told
    marked = str(apart(spread.marked, units))
    finer = (offset(spread.exact, units, finer=finer) for finer in range(3))
    # What is off by less than is usually told is told as fine as it takes to read otherwise.
    exact = next((one for one in finer if str(one) != marked), offset(spread.exact, units))
    return told + _(" ({exact} would take all, but cannot be marked)").format(exact=exact)


def _sow_words(answer: Answer) -> str:
    sowing = answer.sowing
    if sowing is None:
        return ""
    if not sowing.cells:
        words = _("Sow {plants} again, {row} of row")
        told = words.format(plants=so_many(answer, sowing.plants), row=span(sowing.row, answer.plan.place.units))
        return told if sowing.seeds is None else f"{told}, {so_many_seeds(sowing.seeds)}"
    if sowing.seeds is not None:
        words = _("Sow {cells} again today for {plants}, {seeds}")
        if answer.kind is AnswerKind.SECOND_BLOCK:
            words = _("Sow {cells} for {plants}, {seeds}")
        return words.format(
            cells=so_many_cells(sowing.cells),
            plants=so_many(answer, sowing.plants),
            seeds=so_many_seeds(sowing.seeds),
        )
    words = _("Sow {cells} again today for {plants}, or {fewer} with two seeds each ({seeds})")
    if answer.kind is AnswerKind.SECOND_BLOCK:
        words = _("Sow {cells} for {plants}, or {fewer} with two seeds each ({seeds})")
    return words.format(
        cells=so_many_cells(sowing.cells), plants=so_many(answer, sowing.plants),
        fewer=so_many_cells(sowing.cells_of_two), seeds=so_many_seeds(sowing.seeds_of_two),
    )  # fmt: skip


def so_many(answer: Answer, places: int) -> str:
    """So many plants, or clumps of a crop that stands in these."""
    return so_many_clumps(places, stand_of(answer))


def stand_of(answer: Answer) -> int:
    """How many plants stand in each place of what an answer is about."""
    one = planting_of(answer.plan, answer.new or answer.layout.planting)
    return crop_as_planted(answer.plan, one).stand


def _where(answer: Answer) -> str:
    """Where what is new comes to stand: in the gaps, or in a block of its own."""
    if answer.new is None:
        return ""
    one = planting_of(answer.plan, answer.new)
    if one.gaps_of is not None:
        return _(" and plant the gaps")
    start = next((each.new for each in answer.moved if each.planting == one.id and each.begins), None)
    end = next((each.new for each in answer.moved if each.planting == one.id and not each.begins), None)
    bed = bed_of(answer.plan, one.bed).name
    if start is None or end is None or answer.kind is AnswerKind.SOW_AGAIN:
        return ""
    return _(" in {bed}, {place}").format(bed=bed, place=between_readings(answer.plan, start, end))


def _so_many_of(answer: Answer, one: Placed) -> str:
    return so_many_clumps(one.plants, clump_of(answer.plan, one.planting))


def _filled_words(answer: Answer) -> str:
    """What comes to stand in the free ground: "Fill the empty rows with 74 plants of Radish"."""
    some = _(" and ").join(
        _("{plants} of {name}").format(plants=_so_many_of(answer, one), name=name_of(answer.plan, one.planting))
        for one in answer.filled
    )
    fills = _("Fill the empty rows with {some}")
    if answer.kind is AnswerKind.FILL_GAP:
        fills = _("Fill the ground with {some}")
    days = {one.in_ground for one in answer.filled if one.in_ground}
    return fills.format(some=some) + (_(" from {day}").format(day=short_day(min(days))) if days else "")


def _grown_words(answer: Answer) -> Iterator[str]:
    if answer.kind is not AnswerKind.REMOVE:
        yield _("{units} to sell").format(units=grouped(answer.units))
        yield _wanted_words(answer)
    if answer.free:
        yield _("{length} of bed left").format(length=span(answer.free, answer.plan.place.units))
    if answer.kind is AnswerKind.FILL_GAP:
        return
    if answer.set_out and answer.ready:
        words = _("sown {day}, ready {ready}") if _is_sown(answer) else _("set out {day}, ready {ready}")
        yield words.format(day=short_day(answer.set_out), ready=short_day(answer.ready))
    if answer.market:
        yield with_missing(_("market {day}").format(day=day_words(answer.market)), answer.missed)
    yield _costs_words(answer)
    for one in answer.crowds:
        day = dates_of(answer.plan, planting_of(answer.plan, one)).in_ground
        words = _("{name} then has no ground where it was planned")
        if day is not None:
            words = _("{name} then has no ground on {day}, where it was planned")
        yield words.format(name=name_of(answer.plan, one), day=day_words(day) if day else "")


def _is_sown(answer: Answer) -> bool:
    """Whether what comes last is sown in its bed."""
    there = [one for one in answer.plan.plantings if one.id == (answer.new or answer.layout.planting)]
    return bool(there) and crop_of(answer.plan, there[0].crop).establish is Establish.DIRECT


def _wanted_words(answer: Answer) -> str:
    """Whether that is as many as are wanted, and all of them late or what comes last."""
    if answer.short:
        return _("{short} short").format(short=grouped(answer.short))
    if not answer.missed:
        return _("as many as are wanted")
    some_are_late = answer.new is not None or answer.part is not None
    return _("as many as are wanted, some of them late") if some_are_late else _("as many as are wanted, late")


def _costs_words(answer: Answer) -> str:
    """Whether it costs market days that the planting as it is would make."""
    if answer.new is None or answer.market is None:
        return ""
    if not answer.costs:
        return _("costs no market day")
    return ngettext("costs {count} market day", "costs {count} market days", answer.costs).format(count=answer.costs)


def moved_words(answer: Answer, before: Plan | None = None) -> tuple[str, ...]:
    """The stakes that are not where they were, one a line: "Field bed: Bulb fennel ends 12.90 m, was 14.15 m".

    What is gone is called by its name where the plan `before` is given.
    """
    return tuple(remarked_words(before or answer.plan, answer.plan, one) for one in answer.moved)
