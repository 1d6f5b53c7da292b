"""Candidates for a block in words: what each is called, what it measures, how it differs from what is there now."""

from collections.abc import Callable
from fractions import Fraction

from attrs import evolve

from gardenplot.drawing.compare_supplies import supply_lines
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.measure_line import Cell, MeasureLine
from gardenplot.drawing.sayings import ANSWERS, PATTERNS, between_readings, name_of, says, titled
from gardenplot.drawing.so_many import so_many_clumps, so_many_short
from gardenplot.findings import find_in_bed
from gardenplot.layout import followers_of
from gardenplot.layout.candidate import Candidate, Reading, Reason, Unmarkable
from gardenplot.plan import Pattern, Phase, Plan, bed_of, order_of, planting_of
from gardenplot.plan.clumps import clump_of
from gardenplot.units import FOOT, MM, M, Units
from gardenplot.units.figures import MINUS, apart, grouped, offset, rounded, span
from gardenplot.words import _, ngettext

Candidates = tuple[Candidate, ...]
_NAMES = {
    Pattern.TWIN: _("twin rows"),
    Pattern.OFFSETS: _("own offsets"),
    Pattern.CELLS: _("cells"),
    Pattern.RINGS: _("rings"),
} | PATTERNS
_REASONS = {
    Reason.AS_IT_IS: _("as it is"),
    Reason.AVOIDS: _("clear of the places kept"),
    Reason.PACKET: _("row spacing of the packet"),
    Reason.MARKABLE: _("a spacing that can be marked"),
    Reason.EDGE: _("half a row spacing at the edge"),
    Reason.TYPED: _("your own"),
}


def pattern_words(pattern: Pattern) -> str:
    """What a pattern is called."""
    return _NAMES[pattern]


def candidate_name(candidate: Candidate) -> str:
    """What a candidate is called: "3 rows staggered", "2 rows at 7″, 23″", "3 rows straight, cut first"."""
    parts = [_rows_named(candidate)]
    planting = planting_of(candidate.plan, candidate.layout.planting)
    if followers_of(candidate.laid, planting.id) and candidate.reason in (Reason.AS_IT_IS, Reason.ANSWER):
        parts.append(ANSWERS[planting.reserved])
    if planting.phase is not Phase.CENTRED and candidate.layout.gain:
        parts.append(_("shifted") if candidate.layout.grid.turn is None else _("turned"))
    return ", ".join(parts)


def _rows_named(candidate: Candidate) -> str:
    grid, units = candidate.layout.grid, candidate.plan.place.units
    if grid.pattern is Pattern.BROADCAST:
        return _NAMES[grid.pattern]
    if grid.pattern is Pattern.RINGS:
        return ngettext("{count} ring", "{count} rings", grid.rows).format(count=grid.rows)
    if grid.pattern is Pattern.CELLS:
        return _("cells of {side}, {plants} in each").format(side=offset(grid.cell, units), plants=grid.per_cell)
    if grid.pattern is Pattern.OFFSETS:
        at = ", ".join(offset(row.offset, units).number for row in candidate.layout.rows)
        return ngettext("{count} row at {offsets}", "{count} rows at {offsets}", grid.rows).format(
            count=grid.rows, offsets=f"{at} {offset(0, units).unit}".strip()
        )
    if grid.pattern is Pattern.TWIN:
        return ngettext("{count} row in pairs", "{count} rows in pairs", grid.rows).format(count=grid.rows)
    if grid.runs_across:
        return _("rows across, {pattern}").format(pattern=_NAMES[grid.pattern])
    return ngettext("{count} row {pattern}", "{count} rows {pattern}", grid.rows).format(
        count=grid.rows, pattern=_NAMES[grid.pattern]
    )


def reason_words(candidate: Candidate) -> str:
    """Why a candidate is there, where its name does not say it."""
    if candidate.reason is Reason.MORE_ROWS and "row_spacing" in dict(candidate.changes):
        return _("evenly over the bed")
    return _REASONS.get(candidate.reason, "")


def comparison_title(plan: Plan, planting: str) -> str:
    """What is compared: "A Cos lettuce in Tunnel bed"."""
    bed = bed_of(plan, planting_of(plan, planting).bed).name
    return _("{planting} in {bed}").format(planting=titled(plan, planting, looks(plan)), bed=bed)


def reading_words(now: Candidate) -> str:
    """What is the same for all candidates."""
    plan, layout = now.plan, now.layout
    if now.reading is Reading.LENGTH:
        readings = between_readings(plan, layout.start, layout.end)
        return _("All in the same length of bed, {readings}.").format(readings=readings)
    if planting_of(plan, layout.planting).plants is None:
        return _("Each as long as the order needs.")
    if _clump(now) > 1:
        return _("Each as long as the clumps asked for need.")
    return _("Each as long as the plants asked for need.")


def best_words(best: Candidate, candidates: Candidates) -> str:
    """Why a candidate is the best: "meets the order, leaves most", or where others that break something leave more
    "meets the order, keeps every distance"."""
    planting = planting_of(best.plan, best.layout.planting)
    holds = _("holds all clumps") if _clump(best) > 1 else _("holds all plants")
    meets = _("meets the order") if planting.order is not None else holds
    pieces = [one.piece for one in candidates if one.fits and (one.over or 0) >= 0]
    leaves_most = min(pieces) < best.piece == max(pieces)
    return f"{meets}, {_('leaves most') if leaves_most else _('keeps every distance')}"


def step_name(candidate: Candidate) -> str:
    """The step of undo that a candidate makes: "Pak choi: 3 rows staggered"."""
    crop = name_of(candidate.plan, candidate.layout.planting)
    return _("{crop}: {candidate}").format(crop=crop, candidate=candidate_name(candidate))


def measure_lines(candidates: Candidates) -> tuple[MeasureLine, ...]:
    """All measures that say something about these candidates; the first of them is what is there now."""
    lines = (
        _asked_line(candidates), _plants_line(candidates), _other_line(candidates), _length_line(candidates),
        *_left_lines(candidates), _density_line(candidates), *_row_lines(candidates), _tools_line(candidates),
        _kept_line(candidates), _ground_line(candidates), *supply_lines(candidates),
    )  # fmt: skip
    return tuple(_compared(line) for line in lines if line is not None)


def _compared(line: MeasureLine) -> MeasureLine:
    """The line with the figures marked that are the same as now."""
    now, *others = line.cells
    return evolve(line, cells=(now, *(evolve(cell, same=cell.figure == now.figure) for cell in others)))


def _asked_line(candidates: Candidates) -> MeasureLine | None:
    """Whether the order, or what the plan asks for, is met."""
    now = candidates[0]
    planting = planting_of(now.plan, now.layout.planting)
    if now.over is None:
        return None
    order = order_of(now.plan, planting.order) if planting.order is not None else None
    heading = _("Clumps asked for") if _clump(now) > 1 else _("Plants asked for")
    if order is not None:
        heading = _("Order of {units}").format(units=order.units)
    return MeasureLine(heading, tuple(_asked(one.over or 0, _clump(now)) for one in candidates))


def _clump(candidate: Candidate) -> int:
    """How many plants are left in each place, which is the same in all candidates."""
    return clump_of(candidate.plan, candidate.layout.planting)


def _asked(over: int, clump: int) -> Cell:
    if over < 0:
        return Cell("", trouble=so_many_short(-over, clump))
    return Cell(_("met, {over} over").format(over=grouped(over)) if over else _("met"))


def _plants_line(candidates: Candidates) -> MeasureLine:
    now, clump = candidates[0].layout.plants, _clump(candidates[0])
    heading = _("Clumps of {clump}").format(clump=grouped(clump)) if clump > 1 else _("Plants")
    return MeasureLine(heading, tuple(_plants(one.layout.plants, now) for one in candidates))


def _plants(plants: int, now: int) -> Cell:
    return Cell(grouped(plants), signed(plants - now), worse=plants < now)


def signed(difference: int | Fraction, places: int = 0) -> str:
    """A difference with its sign, "+12" or "−8"; nothing for none."""
    scaled = rounded(Fraction(difference) * 10**places)
    whole, part = divmod(abs(scaled), 10**places)
    number = f"{grouped(whole)}.{part:0{places}}" if places else grouped(whole)
    return f"{'+' if scaled > 0 else MINUS}{number}" if scaled else ""


def _other_line(candidates: Candidates) -> MeasureLine | None:
    """The block read the other way: its plants in the same length, or its length for as many plants."""
    now, units = candidates[0], candidates[0].plan.place.units
    if now.other is None:
        return None
    if now.reading is Reading.PLANTS:
        held = now.other.plants
        cells = (Cell("–") if one.other is None else _plants(one.other.plants, held) for one in candidates)
        heading = _("Clumps in {length}") if _clump(now) > 1 else _("Plants in {length}")
        return MeasureLine(heading.format(length=span(now.layout.length, units)), tuple(cells))
    length = now.other.length
    none = Cell(_("not in this bed"))
    lengths = (none if one.other is None else _long(one.other.length, length, units) for one in candidates)
    heading = _("For {plants}").format(plants=so_many_clumps(now.layout.plants, _clump(now)))
    return MeasureLine(heading, tuple(lengths))


def _length_line(candidates: Candidates) -> MeasureLine:
    now, units = candidates[0].layout.length, candidates[0].plan.place.units
    cells = tuple(_long(one.layout.length, now, units) for one in candidates)
    return MeasureLine(_("Length of bed"), cells)


def _long(length: int, now: int, units: Units) -> Cell:
    return Cell(
        str(span(length, units)), _differs(length - now, units, _("longer"), _("shorter")), worse=length > now
    )


def _differs(difference: int, units: Units, more: str, less: str) -> str:
    """A difference in length in words, "2.10 m shorter"; nothing where it rounds to nothing."""
    shown = span(abs(difference), units)
    return "" if shown.number == str(offset(0, units).number) else f"{shown} {more if difference > 0 else less}"


def _left_lines(candidates: Candidates) -> tuple[MeasureLine | None, MeasureLine | None]:
    """What the bed has left, in one piece and, where that is more, in all."""
    piece = _left_line(_("Left in one piece"), candidates, lambda one: one.piece)
    if all(one.piece == one.left for one in candidates):
        return piece, None
    return piece, _left_line(_("Left in all"), candidates, lambda one: one.left)


def _left_line(heading: str, candidates: Candidates, left: Callable[[Candidate], int]) -> MeasureLine:
    now, units = left(candidates[0]), candidates[0].plan.place.units
    cells = (
        Cell(
            str(span(left(one), units)) if left(one) else _("nothing"),
            _differs(left(one) - now, units, _("more"), _("less")),
            worse=left(one) < now,
        )
        for one in candidates
    )
    return MeasureLine(heading, tuple(cells))


def _density_line(candidates: Candidates) -> MeasureLine:
    """Plants to a metre or a foot of bed."""
    metric = candidates[0].plan.place.units is Units.METRIC
    unit = M if metric else FOOT
    now = _per(candidates[0], unit)
    cells = (Cell(_decimal(_per(one, unit)), signed(_per(one, unit) - now, 1)) for one in candidates)
    heading = _("Plants a metre") if metric else _("Plants a foot")
    if _clump(candidates[0]) > 1:
        heading = _("Clumps a metre") if metric else _("Clumps a foot")
    return MeasureLine(heading, tuple(cells))


def _per(candidate: Candidate, unit: int) -> Fraction:
    return (candidate.per_metre or Fraction(0)) * Fraction(unit, 1000 * MM)


def _decimal(value: Fraction) -> str:
    tenths = rounded(value * 10)
    return f"{tenths // 10}.{tenths % 10}"


def _row_lines(candidates: Candidates) -> tuple[MeasureLine, ...]:
    """Rows, and how far apart and from the edge they stand, with what is closer than the packet says."""
    units = candidates[0].plan.place.units
    rows = tuple(_rows_cell(one, candidates[0]) for one in candidates)
    apart = tuple(_apart(one, units) for one in candidates)
    in_row = tuple(_spacing(one, one.layout.grid.in_row, one.closer_in_row, units) for one in candidates)
    edge = tuple(_edge(one, units) for one in candidates)
    return (
        MeasureLine(_("Rows"), rows),
        MeasureLine(_("Between rows"), apart),
        MeasureLine(_("In the row"), in_row),
        MeasureLine(_("At the edge"), edge),
    )


def _rows_cell(candidate: Candidate, now: Candidate) -> Cell:
    grid = candidate.layout.grid
    if grid.runs_across or grid.pattern is Pattern.BROADCAST:
        return Cell(_("across") if grid.runs_across else _("band"))
    plain = not now.layout.grid.runs_across and now.layout.grid.pattern is not Pattern.BROADCAST
    return Cell(str(grid.rows), signed(grid.rows - now.layout.grid.rows) if plain else "")


def _apart(candidate: Candidate, units: Units) -> Cell:
    grid = candidate.layout.grid
    cell = _spacing(candidate, grid.between, candidate.closer_rows, units)
    if grid.pattern is not Pattern.TWIN:
        return cell
    words = _("{apart}, pairs {twin}").format(apart=cell.figure, twin=apart(grid.twin, units))
    return evolve(cell, figure=words)


def _spacing(candidate: Candidate, spacing: int, closer: int, units: Units) -> Cell:
    if candidate.layout.grid.pattern is Pattern.BROADCAST:
        return Cell("–")
    closer_words = _("{closer} closer than the packet").format(closer=offset(closer, units)) if closer else ""
    return Cell(str(apart(spacing, units)), trouble=closer_words)


def _edge(candidate: Candidate, units: Units) -> Cell:
    near = candidate.near_edge
    trouble = _("{near} nearer than asked for").format(near=offset(near, units)) if near else ""
    return Cell(str(offset(candidate.layout.grid.edge, units)), trouble=trouble)


def _tools_line(candidates: Candidates) -> MeasureLine | None:
    """Whether the place's own tools mark the spacings."""
    place = candidates[0].plan.place
    if not place.markable_in_row and not place.markable_rows:
        return None
    return MeasureLine(_("Marked with own tools"), tuple(_tools(one) for one in candidates))


def _tools(candidate: Candidate) -> Cell:
    units, marking = candidate.plan.place.units, candidate.marking
    unmarkable = [
        _cannot_be_marked(where, one, units)
        for where, one in (
            (_("in the row"), marking.in_row),
            (_("between rows"), marking.rows),
            (_("in a pair"), marking.pair),
        )
        if one is not None
    ]
    return Cell("" if unmarkable else _("yes"), trouble="; ".join(unmarkable))


def _cannot_be_marked(where: str, one: Unmarkable, units: Units) -> str:
    if not one.nearest:
        return _("{spacing} {where} cannot be marked").format(spacing=apart(one.spacing, units), where=where)
    return _("{spacing} {where} cannot be marked: nearest {nearest}").format(
        spacing=apart(one.spacing, units), where=where, nearest=apart(one.nearest, units)
    )


def _kept_line(candidates: Candidates) -> MeasureLine | None:
    """Plants in the way of the crops that follow, where there are any."""
    now = candidates[0]
    followers = followers_of(now.laid, now.layout.planting)
    if not followers:
        return None
    names = ", ".join(name_of(now.plan, one.layout.planting) for one in followers)
    return MeasureLine(_("In the way of {crops}").format(crops=names), tuple(_kept(one) for one in candidates))


def _kept(candidate: Candidate) -> Cell:
    count = candidate.in_the_way
    if not count:
        return Cell(_("none"))
    words = ngettext("{count} in the way: cut it first", "{count} in the way: cut them first", count)
    return Cell("", trouble=words.format(count=grouped(count)))


def _ground_line(candidates: Candidates) -> MeasureLine | None:
    """What cannot be done in the bed with a candidate, where anything cannot."""
    look = looks(candidates[0].plan)
    cells = tuple(_ground(one, look) for one in candidates)
    return MeasureLine(_("In the bed"), cells) if any(cell.trouble for cell in cells) else None


def _ground(candidate: Candidate, look: dict[str, Look]) -> Cell:
    """By the letters that the plan has now, which are those on the drawing."""
    plan, own = candidate.plan, candidate.layout.planting
    sentences = [
        says(plan, one, look)
        if one.planting in (own, None)
        else f"{titled(plan, one.planting, look)} {says(plan, one, look)}"
        for one in find_in_bed(candidate.laid)
        if one.cannot_be_done
    ]
    return Cell("" if sentences else _("fits"), trouble="; ".join(sentences))
