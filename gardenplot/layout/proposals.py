"""The candidates that a grower would want to see of a planting, proposed and laid out, each place of plants once."""

from collections.abc import Iterator

from gardenplot.errors import PlanError
from gardenplot.layout.bed import followers_of
from gardenplot.layout.candidate import Candidate, Changes, Comparison, Reading, Reason, comparison
from gardenplot.layout.markable import markable_beside, markable_pattern
from gardenplot.layout.reserved import in_the_way
from gardenplot.layout.rows_beside import rows_beside
from gardenplot.layout.zone import is_plain
from gardenplot.plan import (
    Bed,
    Crop,
    Direction,
    Pattern,
    Phase,
    Plan,
    Planting,
    Reserved,
    bed_of,
    crop_of,
    planting_of,
)
from gardenplot.units import INCH, MM, Length, Units, length_of

_SPACED = (Pattern.STRAIGHT, Pattern.STAGGERED, Pattern.TWIN, Pattern.RINGS)
"""Patterns whose row spacing may be chosen."""
_FEWER = 6
"""How many rows fewer are tried to keep clear of the places of a following crop."""
_Proposal = tuple[Reason, Changes]


def proposals(plan: Plan, planting_id: str) -> tuple[Candidate, ...]:
    """A planting as it is and, after it, other ways to lay it out, by what differs; none stands where another does.

    What makes no valid plan, or leaves no plant standing, is no proposal.
    """
    ways = comparison(plan, planting_id)
    found = [ways.candidate((), Reason.AS_IT_IS)]
    seen = {found[0].places}
    for reason, changes in _proposed(ways, found[0]):
        try:
            candidate = ways.candidate(changes, reason)
        except PlanError:
            continue
        if candidate.layout.plants and candidate.places not in seen:
            seen.add(candidate.places)
            found.append(candidate)
    return tuple(found)


def best_of(candidates: tuple[Candidate, ...]) -> Candidate | None:
    """The one that keeps all and leaves the bed its longest piece, then the most in all.

    In the same length of bed, the most plants decide after that. Of equals, the first. None where none keeps all, or
    where neither order nor plan asks for a number of plants.
    """
    keeping = [one for one in candidates if one.over is not None and one.keeps_all]
    return max(keeping, key=_worth, default=None)


def _worth(candidate: Candidate) -> tuple[int, int, int]:
    plants = candidate.layout.plants if candidate.reading is Reading.LENGTH else 0
    return candidate.piece, candidate.left, plants


def _proposed(ways: Comparison, now: Candidate) -> Iterator[_Proposal]:
    plan = ways.plan
    planting = planting_of(plan, ways.planting)
    bed, crop = bed_of(plan, planting.bed), crop_of(plan, planting.crop)
    yield from _beside_places(ways, now, crop, planting)
    yield from ((Reason.PATTERN, one) for one in _patterns(bed, crop, planting))
    yield from _rows(now, planting)
    yield from ((Reason.PACKET, one) for one in _packet(crop, planting))
    yield from ((Reason.MARKABLE, one) for one in _markable(now))
    yield from _turned(now, bed, planting)


def _beside_places(ways: Comparison, now: Candidate, crop: Crop, planting: Planting) -> Iterator[_Proposal]:
    """The three answers to the places kept in the block, and rows that put no plant in their way."""
    followers = followers_of(now.laid, planting.id)
    if not followers:
        return
    yield from ((Reason.ANSWER, (("reserved", answer),)) for answer in Reserved)
    grid, cut = now.layout.grid, (("reserved", Reserved.CUT_FIRST),)
    if not grid.offsets:
        return
    for rows in range(grid.rows - 1, max(0, grid.rows - 1 - _FEWER), -1):
        fewer = (*cut, ("rows", rows))
        if planting.pattern is not Pattern.OFFSETS and not _stand_in_the_way(ways, fewer):
            yield Reason.AVOIDS, fewer
            break
    apart = max(grid.between_least, (planting.row_spacing or crop.row_spacing)[0].nm)
    own = rows_beside(grid, followers, apart=apart, finest=_finest(ways.plan))
    if own:
        offsets = tuple(length_of(offset, ways.plan.place.units) for offset in own)
        yield Reason.AVOIDS, (*cut, ("pattern", Pattern.OFFSETS), ("offsets", offsets), ("rows", None))


def _stand_in_the_way(ways: Comparison, changes: Changes) -> bool:
    try:
        candidate = ways.candidate(changes, Reason.AVOIDS)
    except PlanError:
        return True
    return in_the_way(candidate.layout, followers_of(candidate.laid, ways.planting)) > 0


def _patterns(bed: Bed, crop: Crop, planting: Planting) -> Iterator[Changes]:
    """The other patterns of rows, and what a round bed, a boarded box and a crop that is sown broadcast offer."""
    others = [*(one for one in Pattern if one.has_even_rows), Pattern.TWIN]
    others += [Pattern.RINGS] if bed.diameter is not None else []
    others += [Pattern.CELLS] if bed.box is not None else []
    others += [Pattern.BROADCAST] if crop.plants_per_area is not None else []
    for pattern in others:
        along = () if pattern.has_even_rows else (("direction", Direction.ALONG),)
        if pattern is not planting.pattern:
            yield (("pattern", pattern), *along)


def _rows(now: Candidate, planting: Planting) -> Iterator[_Proposal]:
    """One row more, at the spacing as it is and evenly over the bed, and one fewer; of twin rows a pair."""
    grid = now.layout.grid
    if grid.runs_across or planting.pattern not in (*_SPACED, Pattern.TRIANGULAR) or not grid.rows:
        return
    step = 2 if planting.pattern is Pattern.TWIN else 1
    more = grid.rows + step
    if grid.width > (more // step - 1) * grid.between_least + grid.twin:
        yield Reason.MORE_ROWS, (("rows", more),)
    if planting.pattern in (Pattern.STRAIGHT, Pattern.STAGGERED):
        finest = _finest(now.plan)
        even = grid.width // more // finest * finest
        if even:
            between, edge = (_length(nm, now) for nm in (even, even // 2))
            yield Reason.MORE_ROWS, (("rows", more), ("row_spacing", (between,)), ("edge", edge))
    if grid.rows > step:
        yield Reason.FEWER_ROWS, (("rows", grid.rows - step),)


def _packet(crop: Crop, planting: Planting) -> Iterator[Changes]:
    """As many rows as fit at the least and at the most row spacing of the packet, and over its range."""
    if planting.pattern in _SPACED:
        yield from ((("row_spacing", (one,)), ("rows", None)) for one in dict.fromkeys(crop.row_spacing))
        yield ("row_spacing", ()), ("rows", None)


def _markable(now: Candidate) -> Iterator[Changes]:
    """Spacings that the place can mark where those of now are none: the nearest, then the next on either side."""
    grid, place = now.layout.grid, now.plan.place
    pattern = (("pattern", markable_pattern(grid.pattern)),)
    in_row = markable_beside(grid.in_row, place.markable_in_row) if now.marking.in_row is not None else ()
    rows = markable_beside(grid.between, place.markable_rows) if now.marking.rows is not None else ()
    if in_row and rows:
        yield (("in_row", in_row[0]), ("row_spacing", (rows[0],)), *pattern)
    yield from ((("in_row", one),) for one in in_row)
    yield from ((("row_spacing", (one,)), *pattern) for one in rows)


def _turned(now: Candidate, bed: Bed, planting: Planting) -> Iterator[_Proposal]:
    """The edge at half the row spacing, rows the other way, and the best phase where a bed is no plain rectangle."""
    grid = now.layout.grid
    if not grid.edge_rule.is_usual and planting.pattern is not Pattern.OFFSETS:
        yield Reason.EDGE, (("edge", _length(grid.between_least // 2, now)),)
    if planting.pattern.has_even_rows:
        other = Direction.ALONG if planting.direction is Direction.ACROSS else Direction.ACROSS
        yield Reason.ACROSS, (("direction", other),)
    if not is_plain(bed):
        other_phase = Phase.CENTRED if planting.phase is Phase.BEST else Phase.BEST
        yield Reason.PHASE, (("phase", other_phase),)


def _finest(plan: Plan) -> int:
    """What is easily measured across a bed, in nm."""
    return 5 * MM if plan.place.units is Units.METRIC else INCH // 4


def _length(nm: int, now: Candidate) -> Length:
    return length_of(nm, now.plan.place.units)
