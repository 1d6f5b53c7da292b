"""Filling a season: wishes and orders placed over all beds and days, with a proof of how good the filling is.

The same plan, weights and effort give the same filling.
"""

from collections import Counter
from collections.abc import Callable, Iterator

from attrs import evolve, frozen

from gardenplot.filling.arranged import arranged
from gardenplot.filling.offers import WhyNot, unsuited
from gardenplot.filling.piece import Piece, Pieces
from gardenplot.filling.placed import Placed
from gardenplot.filling.prepared import Prepared
from gardenplot.filling.suits import stretches_for
from gardenplot.filling.task import laid_plants, planting_of_block
from gardenplot.filling.wanted import First, Wanted, Weights, wanted_in
from gardenplot.filling.wholes import Placing, Settled
from gardenplot.plan import Plan, Planting, fresh_id
from gardenplot.plan.edits import add_planting
from gardenplot.season import Span
from gardenplot.season.frost import frosty


@frozen
class Lacking:
    """What is wanted and did not find ground enough: a wish or an order, the plants that it has and those it lacks.

    `plants` are those of the blocks that this filling made, `why` is known where no ground suits it, free or not.
    Where frost is why, `cover` is when it would have to stand under one, on those of its days that ask the least.
    """

    wanted: str
    crop: str
    plants: int
    lacks: int
    why: WhyNot | None = None
    cover: tuple[Span, ...] = ()


@frozen
class Filling:
    """A plan with wishes and orders placed, what they are worth, and what no filling can be worth more than.

    `wanted` is how many wishes and market days of orders lacked plants before.
    """

    plan: Plan
    placed: tuple[Placed, ...]
    lacking: tuple[Lacking, ...]
    worth: float
    bound: float
    wanted: int = 0

    @property
    def proven(self) -> bool:
        """Whether no filling can be worth more."""
        return self.worth >= self.bound

    @property
    def met(self) -> int:
        """How many of those that were wanted have all their plants now."""
        return self.wanted - len(self.lacking)

    @property
    def short_of_bound(self) -> float:
        """How far from the best it can be at most, as a part of the bound."""
        return 0.0 if self.proven else 1 - self.worth / self.bound


Told = Callable[[Filling], bool]
"""Is told of each better filling and says whether to go on."""


def fill(plan: Plan, turns: int = 3000, weights: Weights | None = None, told: Told | None = None) -> Filling:
    """Fill a plan with its wishes and with what its orders lack; what stands already is not touched."""
    return filled(plan, turns, weights or Weights(), lambda made: told is None or told(made()), lambda: None)


def filled(
    plan: Plan,
    turns: int,
    weights: Weights,
    told: Callable[[Callable[[], Filling]], bool],
    turned: Callable[[], object],
) -> Filling:
    """Fill a plan; `told` is handed what makes each better filling, since that costs time, and `turned` is called at
    each turn.
    """
    wanted = wanted_in(plan, weights)
    prepared = Prepared(plan, wanted)
    top = -1

    def better(found: Settled) -> bool:
        """Tell of what was found, unless a search before this one found as much."""
        nonlocal top
        if found.worth <= top:
            return True
        top = found.worth
        return told(lambda: _filling(plan, wanted, found, prepared.scale, weights.first))

    rounds = Placing(prepared, better, turned)
    return _filling(plan, wanted, rounds.run(turns), prepared.scale, weights.first)


def _filling(plan: Plan, wanted: tuple[Wanted, ...], found: Settled, scale: int, first: First) -> Filling:
    tidy = arranged(plan, found.pieces, first)
    filled, placed, series = plan, list[tuple[Piece, Planting]](), _series(plan, tidy)
    for piece in tidy:
        bed = plan.beds[piece.way.strip]
        planting = planting_of_block(filled, piece.wanted, bed, bed.zone[0] + piece.start, piece.plants, piece.dates)
        filled = add_planting(filled, evolve(planting, series=series.get(piece.wanted.series)))
        placed.append((piece, filled.plantings[-1]))
    stand = tuple(_placed(filled, piece, planting) for piece, planting in placed)
    lacking = tuple(
        _lacking(
            plan, wanted, [(piece.number, one.plants) for (piece, _planting), one in zip(placed, stand, strict=True)]
        )
    )
    return Filling(filled, stand, lacking, found.worth / scale, found.bound / scale, len(wanted))


def _series(plan: Plan, pieces: Pieces) -> dict[str | None, str]:
    """The names of the series that pieces come to be, by what they were in what is wanted: one alone is none."""
    counts = Counter((one.wanted.series, one.wanted.id) for one in pieces if one.wanted.series is not None)
    taken = {one.series for one in plan.plantings if one.series is not None}
    found: dict[str | None, str] = {}
    for (series, name), count in counts.items():
        if count > 1:
            found[series] = fresh_id(name, taken)
            taken.add(found[series])
    return found


def _placed(filled: Plan, piece: Piece, planting: Planting) -> Placed:
    found = laid_plants(filled, planting)
    return Placed(
        piece.wanted.id, planting.id, planting.bed, *found, piece.dates.in_ground, piece.dates.out
    )  # fmt: skip


def _lacking(plan: Plan, wanted: tuple[Wanted, ...], plants: list[tuple[int, int]]) -> Iterator[Lacking]:
    """Of a wish that may be any size, all is met by its least."""
    for number, one in enumerate(wanted):
        has = sum(count for each, count in plants if each == number)
        needed = one.least if one.most is None else one.most
        if has < needed:
            why = None if has else _why(plan, one, wanted)
            cover = _least_cover(plan, one) if why is WhyNot.FROST else ()
            yield Lacking(one.id, one.crop.id, has, needed - has, why, cover)


def _why(plan: Plan, one: Wanted, wanted: tuple[Wanted, ...]) -> WhyNot | None:
    """Why nothing of it stands, where that is known: no bed suits it on its days, or its series is not whole.

    Where all other days of its series stand already, it is its own plants that found no ground together.
    """
    beds = [bed for bed in plan.beds if not one.beds or bed.id in one.beds]
    if not any(stretches_for(plan, bed, one.crop, dates) for bed in beds for dates in one.days):
        whys = [unsuited(plan, bed, one.crop, one.days, bed.zone) for bed in beds if one.days]
        return max(whys, key=whys.count, default=None)
    if one.series is None:
        return None
    return WhyNot.SERIES if sum(other.series == one.series for other in wanted) > 1 else WhyNot.WHOLE


def _least_cover(plan: Plan, one: Wanted) -> tuple[Span, ...]:
    """From when to when a cover would have to be on, on the days that ask for one the shortest."""
    spans = (frosty(plan.place, one.crop, dates) for dates in one.days)
    return min(spans, key=lambda each: sum(span.days for span in each), default=())
