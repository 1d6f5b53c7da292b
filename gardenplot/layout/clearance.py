"""What obstacles keep free of plants: the blocked stretch of a row, and whether a single place keeps clear."""

from math import isqrt
from typing import NamedTuple

from gardenplot.layout.outline import Interval, Point
from gardenplot.plan import Obstacle


class Kept(NamedTuple):
    """What an obstacle keeps free, as rows see it, in nm: its middle `along` them and `beside` them, and, twice over,
    its sides, none where it is round, and how far from these no place lies.

    `rows` are the numbers from 1 of the rows that it is in the way of; none means all.
    """

    along: int
    beside: int
    length: int
    width: int
    away: int
    rows: tuple[int, ...]

    def blocked(self, low: int, high: int, row: int, reach: int = 0) -> Interval | None:
        """The stretch of row line `row`, from 0, that it keeps free of places; its very ends are free.

        A place takes all from `low` to `high` across and is `reach` long. Where `low` lies above `high`, the stretch
        is what it keeps free of all lines between the two.
        """
        along, beside, length, width, away, rows = self
        if rows and row + 1 not in rows:
            return None
        past, before = low - beside, beside - high
        twice_beside = 2 * (past if past > before else before) - width
        if twice_beside >= away and (twice_beside > 0 or away):
            return None
        square = away**2 - max(0, twice_beside) ** 2
        root = isqrt(square)
        half = (length + root + (root * root < square) + 1) // 2
        return (along - half - reach, along + half) if half else None


def kept_by(obstacle: Obstacle, *, across: bool = False) -> Kept:
    """What an obstacle keeps free of rows along the bed, or across it."""
    length = obstacle.length.nm if obstacle.length else 0
    width = obstacle.width.nm if obstacle.width else 0
    away = 2 * obstacle.keep_clear.nm if obstacle.keep_clear else 0
    if obstacle.diameter is not None:
        length, width, away = 0, 0, away + obstacle.diameter.nm
    if across:
        return Kept(obstacle.y.nm, obstacle.x.nm, width, length, away, obstacle.rows)
    return Kept(obstacle.x.nm, obstacle.y.nm, length, width, away, obstacle.rows)


def keeps_clear(obstacle: Obstacle, place: Point, number: int) -> bool:
    """Whether a plant of row or ring `number`, from 0, may stand at a place as far as an obstacle goes."""
    stretch = kept_by(obstacle).blocked(place[1], place[1], number)
    return stretch is None or not stretch[0] < place[0] < stretch[1]
