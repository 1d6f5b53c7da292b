"""What came about otherwise than planned, and the answers to it, as values."""

from datetime import date
from enum import StrEnum
from fractions import Fraction

from attrs import frozen

from gardenplot.filling.moved import Moved
from gardenplot.filling.placed import Placed
from gardenplot.filling.ways_out import Way
from gardenplot.layout import Layout
from gardenplot.plan import Plan
from gardenplot.working import Number


class Why(StrEnum):
    """What came about otherwise."""

    RAISED = "seedlings or bed"
    LOST = "lost in the bed"
    EARLY = "ground free early"
    HELD = "ground held longer"
    MORE = "more is ordered"
    FEWER = "less is ordered"
    WITHDRAWN = "order withdrawn"
    OFF_DAY = "not ready for its market"


class AnswerKind(StrEnum):
    """What can be done about it."""

    BUY_IN = "buy in"
    SHORT = "plant short"
    SPREAD = "spread out"
    OTHER_BED = "another bed"
    LATER = "later market"
    SOW_AGAIN = "sow again"
    SOONER = "sooner"
    ENLARGE = "longer block"
    SECOND_BLOCK = "second block"
    OTHER_PLACE = "another place"
    SHORTER = "shorter block"
    FILL_ROWS = "fill the empty rows"
    FILL_GAP = "fill the gap"
    WAY_OUT = "way out"
    LESS = "harvest less"
    REMOVE = "do not plant"
    SPARE = "keep as spare"


@frozen
class Sowing:
    """Cells and seeds to sow again, with one seed in each and with two thinned to one, at what germinates.

    Of a crop that is sown with more seeds in a cell there are only cells with as many again, and their `seeds`.
    Of what is sown in its bed there are no cells: `seeds` go into so many nm of `row`, None where no rate is known.
    `numbers` are all of these with their workings.
    """

    plants: int
    cells: int
    cells_of_two: int
    row: int = 0
    seeds: int | None = None
    numbers: tuple[Number, ...] = ()

    @property
    def seeds_of_two(self) -> int:
        """Seeds where there are two in each cell."""
        return 2 * self.cells_of_two


@frozen
class Spread:
    """A spacing that takes up all of the room, in nm and with its working, and the widest below it to be marked."""

    exact: int
    marked: int
    number: Number

    @property
    def is_markable(self) -> bool:
        """Whether it can be marked as it is."""
        return self.exact == self.marked


@frozen
class Part:
    """What of a planting goes in sooner than the rest: where, the market day that it makes, its units for that day.

    Where one bed is not enough there is `more` of it in others, on the same day.
    `short` units are lacking on that day; None of all of these where it has no order. `numbers` have the workings.
    """

    placed: Placed
    more: tuple[Placed, ...] = ()
    market: date | None = None
    units: int = 0
    short: int = 0
    numbers: tuple[Number, ...] = ()

    @property
    def beds(self) -> tuple[Placed, ...]:
        """All of it, bed by bed."""
        return self.placed, *self.more


@frozen
class Answer:
    """One answer, in the plan that it makes.

    `plants` and `units` stand for the market day in all, `short` units are lacking; `length` is the planting's block
    and `free` what its bed has left then, in nm. `set_out`, `ready` and `market` are of what comes last; `missed` are
    market days before that one, and `costs` how many of them it misses that the planting as it is would make, the
    first on `as_is`. `new` is a planting for the same that the plan did not have, `filled` are others that come to
    stand in what is free, and `part` of it is in another bed sooner than the rest. `planned` was its day
    in the ground. What it `crowds` has no ground on its days any more.
    """

    kind: AnswerKind
    plan: Plan
    layout: Layout
    plants: int
    units: int
    short: int
    free: int
    set_out: date | None
    ready: date | None
    market: date | None
    missed: tuple[date, ...]
    costs: int
    moved: tuple[Moved, ...]
    buy: int = 0
    sowing: Sowing | None = None
    spread: Spread | None = None
    new: str | None = None
    filled: tuple[Placed, ...] = ()
    way: Way | None = None
    as_is: date | None = None
    part: Part | None = None
    crowds: tuple[str, ...] = ()
    planned: date | None = None

    @property
    def length(self) -> int:
        """Length of the block in nm."""
        return self.layout.length


@frozen
class Ground:
    """Ground that is free from one day until another, between two tape readings in nm."""

    bed: str
    start: int
    end: int
    first: date
    until: date


@frozen
class Setback:
    """What came about of a planting that was not planned so, and what that comes to if nothing is done.

    Of `sown` cells `stand` have a usable plant, None where nobody counted; `settable` of them can be set out, `lacks`
    are short of `planned`. `late` is by how many days its bed is, and for `past` days nothing has been recorded
    though it could have gone in; the plants are `age` days old when they go in now.
    In the bed `standing` plants were left, none of them in the `failed_rows`, so that `empty` nm of row are. `days`
    is by how many days its ground is free early, is held longer by the planting `by`, or it is ready too late for its
    market; less than nothing where it is over before that. `wanted` units of its `order` are asked for now.
    `numbers` are what it is about with their workings.
    """

    planting: str
    planned: int
    stand: int | None
    sown: int | None
    settable: int
    lacks: int
    late: int
    set_out: date | None
    age: int | None
    is_over_age: bool
    ready: date | None
    market: date | None
    missed: tuple[date, ...]
    answers: tuple[Answer, ...]
    why: Why = Why.RAISED
    standing: int | None = None
    failed_rows: tuple[int, ...] = ()
    empty: int = 0
    days: int = 0
    by: str | None = None
    order: str | None = None
    wanted: int = 0
    freed: Ground | None = None
    past: int = 0
    numbers: tuple[Number, ...] = ()

    @property
    def came_up(self) -> Fraction | None:
        """The share of cells with a usable plant."""
        return Fraction(self.stand, self.sown) if self.stand is not None and self.sown else None
