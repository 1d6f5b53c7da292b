"""Filling a season: wishes and orders placed over all beds and days, with a proof of how good the filling is.

A search finds the blocks, a solver the bound that no filling can be above. The same plan, weights and effort give the
same filling.
"""

from collections.abc import Callable, Iterator

from attrs import frozen

from gardenplot.filling.bound import most_worth, worth_alone
from gardenplot.filling.exact import best_of_all
from gardenplot.filling.model import Answer, Block, Taken, Task, Way
from gardenplot.filling.offers import WhyNot, unsuited
from gardenplot.filling.placed import Placed
from gardenplot.filling.search import Search
from gardenplot.filling.suits import stretches_for
from gardenplot.filling.task import Posed, laid_plants, planted, pose
from gardenplot.filling.wanted import Wanted, Weights, wanted_in
from gardenplot.plan import Plan

_SEEDS, _FEW_WISHES = (1, 2, 3), 60
"""Searches from the same start, each with numbers of its own; with more wishes one long search finds more."""

_FEW_WAYS, _NODES = 400, 200
"""With so few ways the bound is tightened by so many nodes of the solver's tree at once: it takes a moment."""

_STEPS_A_TURN = 20
"""Blocks tried when all fillings of a small task are, for each turn that it had."""

_TURNS_A_NODE = 1000
"""With more, there is a node for so many turns when the search has ended."""


@frozen
class Lacking:
    """What is wanted and did not find ground enough: a wish or an order, the plants that it has and those it lacks.

    `plants` are those of the blocks that this filling made, `why` is known where no ground suits it, free or not.
    """

    wanted: str
    crop: str
    plants: int
    lacks: int
    why: WhyNot | None = None


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
    posed = pose(plan, wanted_in(plan, weights))
    top = -1

    def better(answer: Answer, bound: int) -> bool:
        """Tell of an answer, unless a search before this one found as good a one."""
        nonlocal top
        if answer.worth <= top:
            return True
        top = answer.worth
        return told(lambda: _filling(plan, posed, answer, bound))

    answer, bound = solve(posed.task, turns, better, turned)
    return _filling(plan, posed, answer, bound)


def solve(
    task: Task, turns: int, told: Callable[[Answer, int], bool], turned: Callable[[], object] = lambda: None
) -> tuple[Answer, int]:
    """The best filling of a task that so many turns find, and a bound that none is above.

    `told` is called with each better one and the bound so far, and says whether to go on; `turned` at
    each turn.
    """
    bound = worth_alone(task)
    best = Search(task).best
    if best.worth < bound:
        bound = most_worth(task, 0)
        if sum(map(len, task.wishes)) <= _FEW_WAYS:
            bound = min(bound, most_worth(task, _NODES))
    seeds = _SEEDS if len(task.wishes) <= _FEW_WISHES else _SEEDS[:1]
    for seed in seeds:
        if best.worth >= bound:
            return best, bound
        search = Search(task, seed)
        goes_on = told(search.best, bound) and search.run(
            -(-turns // len(seeds)), bound, lambda better: told(better, bound), turned
        )
        best = max(best, search.best, key=lambda answer: answer.worth)
        if not goes_on:
            return best, bound
    return _proved(task, best, bound, turns)


def _proved(task: Task, best: Answer, bound: int, turns: int) -> tuple[Answer, int]:
    """What a search has found, with its bound tightened as far as so many turns allow."""
    proved = best_of_all(task, best, _STEPS_A_TURN * turns) if best.worth < bound else None
    if proved is not None:
        return proved, proved.worth
    nodes = turns // _TURNS_A_NODE
    return best, min(bound, most_worth(task, nodes)) if nodes and best.worth < bound else bound


def _filling(plan: Plan, posed: Posed, answer: Answer, bound: int) -> Filling:
    tidy = _towards_the_head(posed.task, answer.blocks)
    filled, plantings = planted(plan, posed, tidy)
    placed = []
    for block, planting in zip(tidy, plantings, strict=True):
        dates = posed.dates[block.wish][block.way]
        wanted = posed.wanted[block.wish].id
        found = laid_plants(filled, planting)
        placed.append(Placed(wanted, planting.id, planting.bed, *found, dates.in_ground, dates.out))
    lacking = tuple(_lacking(plan, posed, {block.wish: one.plants for block, one in zip(tidy, placed, strict=True)}))
    return Filling(filled, tuple(placed), lacking, answer.worth / posed.scale, bound / posed.scale, len(posed.wanted))


def _lacking(plan: Plan, posed: Posed, plants: dict[int, int]) -> Iterator[Lacking]:
    """Of a wish that may be any size, all is met by its least."""
    for number, one in enumerate(posed.wanted):
        has, wanted = plants.get(number, 0), one.least if one.most is None else one.most
        if has < wanted:
            why = None if posed.task.wishes[number] else _unsuited(plan, posed, one)
            yield Lacking(one.id, one.crop.id, has, wanted - has, why)


def _unsuited(plan: Plan, posed: Posed, one: Wanted) -> WhyNot | None:
    """Why no bed that it may use suits it on any of its days."""
    beds = [bed for bed in posed.beds if not one.beds or bed.id in one.beds]
    if any(stretches_for(plan, bed, one.crop, dates) for bed in beds for dates in one.days):
        return None
    whys = [unsuited(plan, bed, one.crop, one.days, bed.zone) for bed in beds if one.days]
    return max(whys, key=whys.count, default=None)


def _towards_the_head(task: Task, blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """The same blocks as near to the head of their strips as they can be slid, so that what is left lies together."""
    stand: dict[int, list[Block]] = {}
    for block in sorted(blocks):
        way = task.wishes[block.wish][block.way]
        others = stand.setdefault(way.strip, [])
        start = _nearest(way, block, [*task.strips[way.strip].taken, *others])
        others.append(block._replace(start=start, end=start + block.end - block.start))
    return tuple(sorted((block for ones in stand.values() for block in ones), key=lambda block: block.wish))


def _nearest(way: Way, block: Block, others: list[Taken | Block]) -> int:
    """The least tape reading from which a block can be slid no further."""
    ends = [
        one[1]
        for one in others
        if one[1] <= block.start and one[2] < block.last and block.first < one[3] and block.first >= one[4]
    ]
    return max([0, way.low, *ends])
