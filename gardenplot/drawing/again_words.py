"""What came about otherwise than planned, and the answers to it, in words: what each gives and costs, its stakes."""

from collections.abc import Iterator

from gardenplot.drawing.days import day_words, short_day
from gardenplot.drawing.sayings import counted, name_of
from gardenplot.drawing.so_many import so_many_cells, so_many_days, so_many_plants, so_many_seeds
from gardenplot.filling.again import Answer, AnswerKind, Setback
from gardenplot.filling.moved import Moved
from gardenplot.plan import Plan, bed_of, planting_of
from gardenplot.units.figures import offset, rounded, span, tape
from gardenplot.words import _, ngettext


def setback_words(plan: Plan, one: Setback) -> tuple[str, ...]:
    """What came about of a planting: one line for what stands, one for its bed, one for its age."""
    return tuple(_setback_lines(plan, one))


def _setback_lines(plan: Plan, one: Setback) -> Iterator[str]:
    name = name_of(plan, one.planting)
    if one.lacks and one.stand is not None:
        came = "" if one.came_up is None else f" ({rounded(100 * one.came_up)} %)"
        words = _("{name}: {stand} of {sown} cells usable{came}, {settable} to set out, {lacks} short of {planned}")
        yield words.format(
            name=name, stand=one.stand, sown=one.sown or "?", came=came, settable=one.settable, lacks=one.lacks,
            planned=one.planned,
        )  # fmt: skip
    if one.late and one.set_out:
        bed = bed_of(plan, planting_of(plan, one.planting).bed).name
        words = _("{name}: {bed} can be used from {day}, {days} late")
        yield words.format(name=name, bed=bed, day=day_words(one.set_out), days=so_many_days(one.late))
    if one.is_over_age and one.age is not None:
        yield _("{name}: {days} old when set out, too old: it may bolt or stand still").format(
            name=name, days=so_many_days(one.age)
        )
    if one.late and one.ready and one.market:
        words = _("{name}: ready {ready}, for the market on {market}")
        yield words.format(name=name, ready=day_words(one.ready), market=day_words(one.market)) + _missed_words(one)


def _missed_words(one: Setback | Answer) -> str:
    """The market days before, which are missed."""
    if not one.missed:
        return ""
    return _(", missing {days}").format(days=", ".join(short_day(day) for day in one.missed))


def answer_words(answer: Answer) -> str:
    """An answer in one line: what is done, what stands then, and for which market."""
    parts = [done_words(answer), *_grown_words(answer)]
    return "; ".join(part for part in parts if part)


def done_words(answer: Answer) -> str:
    """What is done: "Buy in 16 plants", "Sow 28 cells again, or 20 cells with two seeds each (40 seeds)"."""
    units = answer.plan.place.units
    match answer.kind:
        case AnswerKind.BUY_IN:
            return _("Buy in {plants}").format(plants=so_many_plants(answer.buy))
        case AnswerKind.SHORT:
            return _("Plant short at the spacing as planned, {rows} in {length}").format(
                rows=counted(answer.layout), length=span(answer.length, units)
            )
        case AnswerKind.SPREAD:
            return _spread_words(answer)
        case AnswerKind.OTHER_BED:
            return _("Plant in {bed} on the day as planned").format(bed=bed_of(answer.plan, answer.layout.bed).name)
        case AnswerKind.LATER:
            return _("Hold the plants and set them out late")
        case AnswerKind.SOW_AGAIN:
            return _sow_words(answer)


def _spread_words(answer: Answer) -> str:
    units, spread = answer.plan.place.units, answer.spread
    if spread is None:
        return ""
    words = _("Spread out, {marked} in the row over {length}")
    told = words.format(marked=offset(spread.marked, units), length=span(answer.length, units))
    if spread.is_markable:
        return told
    return told + _(" ({exact} would take all, but cannot be marked)").format(exact=offset(spread.exact, units))


def _sow_words(answer: Answer) -> str:
    sowing = answer.sowing
    if sowing is None:
        return ""
    words = _("Sow {cells} again today for {plants}, or {fewer} with two seeds each ({seeds})")
    return words.format(
        cells=so_many_cells(sowing.cells), plants=so_many_plants(sowing.plants),
        fewer=so_many_cells(sowing.cells_of_two), seeds=so_many_seeds(sowing.seeds_of_two),
    )  # fmt: skip


def _grown_words(answer: Answer) -> Iterator[str]:
    yield _("{units} to sell").format(units=answer.units)
    if answer.short:
        yield _("{short} short").format(short=answer.short)
    else:
        yield _("as many as are wanted, late") if answer.missed else _("as many as are wanted")
    if answer.free:
        yield _("{length} of bed left").format(length=span(answer.free, answer.plan.place.units))
    if answer.set_out and answer.ready:
        yield _("set out {day}, ready {ready}").format(day=short_day(answer.set_out), ready=short_day(answer.ready))
    if answer.market:
        yield _("market {day}").format(day=day_words(answer.market)) + _missed_words(answer)
    yield _costs_words(answer)


def _costs_words(answer: Answer) -> str:
    """Whether it costs market days that the planting as it is would make."""
    if answer.kind is not AnswerKind.SOW_AGAIN or answer.market is None:
        return ""
    if not answer.costs:
        return _("costs no market day")
    return ngettext("costs {count} market day", "costs {count} market days", answer.costs).format(count=answer.costs)


def moved_words(answer: Answer) -> tuple[str, ...]:
    """The stakes that are not where they were, one a line: "Field bed: Bulb fennel ends 12.90 m, was 14.15 m"."""
    return tuple(_moved(answer.plan, one) for one in answer.moved)


def _moved(plan: Plan, one: Moved) -> str:
    units = plan.place.units
    bed, does = bed_of(plan, one.bed).name, _("begins") if one.begins else _("ends")
    there = any(each.id == one.planting for each in plan.plantings)
    name = name_of(plan, one.planting) if there else one.planting
    old = tape(one.old, units) if one.old is not None else None
    if one.new is None:
        return _("{bed}: {name} no longer {does} at {old}").format(bed=bed, name=name, does=does, old=old)
    words = _("{bed}: {name} {does} {new}, was {old}") if old else _("{bed}: {name} {does} {new}, new")
    return words.format(bed=bed, name=name, does=does, new=tape(one.new, units), old=old)
