"""What obstacles keep free of plants: the blocked stretch of a row, and whether a single place keeps clear."""

from math import isqrt

from gardenplot.layout.outline import Interval, Point
from gardenplot.layout.value import Line
from gardenplot.plan import Obstacle


def blocked(obstacle: Obstacle, line: Line, number: int, *, across: bool = False, by: int = 0) -> Interval | None:
    """The stretch of row line `number`, from 0, that an obstacle keeps free of places; its very ends are free.

    The line may be moved across by so many nm.
    """
    if obstacle.rows and number + 1 not in obstacle.rows:
        return None
    low, high = (line.low, line.high) if line.reach else (line.offset, line.offset)
    along, beside = (obstacle.y.nm, obstacle.x.nm) if across else (obstacle.x.nm, obstacle.y.nm)
    away = _away(obstacle, max(0, low + by - beside, beside - high - by), across=across)
    return (along - away - line.reach, along + away) if away else None


def _away(obstacle: Obstacle, beside: int, *, across: bool) -> int:
    """How far from an obstacle's middle a place must lie that is `beside` nm away from it the other way."""
    twice_clear = 2 * (obstacle.keep_clear.nm if obstacle.keep_clear else 0)
    twice_beside = 2 * beside
    if obstacle.diameter is not None:
        twice_reach, twice_half = obstacle.diameter.nm + twice_clear, 0
    else:
        length, width = (one.nm if one else 0 for one in (obstacle.length, obstacle.width))
        twice_half, depth = (width, length) if across else (length, width)
        twice_reach, twice_beside = twice_clear, max(0, twice_beside - depth)
    if twice_beside >= twice_reach and (twice_beside or twice_reach):
        return 0
    square = twice_reach**2 - twice_beside**2
    root = isqrt(square)
    twice_away = twice_half + root + (0 if root * root == square else 1)
    return (twice_away + 1) // 2


def keeps_clear(obstacle: Obstacle, place: Point, number: int) -> bool:
    """Whether a plant of row or ring `number`, from 0, may stand at a place as far as an obstacle goes."""
    line = Line(place[1], place[1], place[1], 1, (0, 0), 0)
    stretch = blocked(obstacle, line, number)
    return stretch is None or not stretch[0] < place[0] < stretch[1]
