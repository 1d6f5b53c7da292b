"""The frame of a grid whose rows run along an edge of the bed: into it, out of it, and the bed's cuts seen in it."""

from math import atan2, ceil, degrees, gcd, hypot, isqrt

from attrs import frozen

from gardenplot.layout.outline import Interval, Point

FINE = 16
"""Binary places to which a place is worked out in a turned frame."""


@frozen(cache_hash=True)
class Turn:
    """Rows along an edge of a bed, or square to it, instead of along the tape.

    `edge` are the edge's ends in the frame of the bed, `length` is the bed's. The turned frame is that of the bed
    turned about its origin until the rows lie along, and moved by `origin`, so that the bed begins at 0 both ways.
    All in nm.
    """

    edge: tuple[Point, Point]
    is_square: bool
    length: int
    origin: Point = (0, 0)

    @property
    def direction(self) -> Point:
        """The way of the rows, from the head on; of rows straight across the bed, from the base line on."""
        (x1, y1), (x2, y2) = self.edge
        along, up = x2 - x1, y2 - y1
        if self.is_square:
            along, up = -up, along
        sign = -1 if along < 0 or (along == 0 and up < 0) else 1
        shared = sign * gcd(along, up)
        return along // shared, up // shared

    @property
    def is_quarter(self) -> bool:
        """Whether the frame is turned by no angle or a right one, so that whole nanometres stay whole."""
        return 0 in self.direction

    @property
    def is_steep(self) -> bool:
        """Whether rows run across the bed rather than along it."""
        along, up = self.direction
        return abs(up) > along

    @property
    def degrees(self) -> float:
        """The angle from the tape to the rows: above 0 where they lead away from the base line, up to 90."""
        along, up = self.direction
        return degrees(atan2(up, along))

    @property
    def cosine_and_sine(self) -> tuple[float, float]:
        """Of the angle from the tape to the rows."""
        along, up = self.direction
        return along / hypot(along, up), up / hypot(along, up)

    def fine(self, point: Point) -> Point:
        """A point of the bed turned, but not moved, in 1 / 2^FINE nm; exact where it is whole."""
        (x, y), (along, up) = point, self.direction
        square = along * along + up * up
        return _over_root(x * along + y * up, square), _over_root(y * along - x * up, square)

    def back(self, along: float, across: float) -> tuple[float, float]:
        """A point of the turned frame as tape reading and offset from the base line."""
        cosine, sine = self.cosine_and_sine
        along, across = along + self.origin[0], across + self.origin[1]
        return along * cosine - across * sine, along * sine + across * cosine

    def place(self, along: int, across: int) -> Point:
        """A place of the turned frame as tape reading and offset, to the nearest nm."""
        x, y = self.back(along, across)
        return round(x), round(y)

    def between(self, low: int, high: int, start: int, end: int) -> Interval:
        """Where along the turned frame all from `low` to `high` lies between two tape readings, exactly.

        It ends before it begins where nothing does.
        """
        along, up = self.direction
        square = along * along + up * up
        first, last = -_times_root(-start, square), _times_root(end, square)
        rise = [(at + self.origin[1]) * up for at in (low, high)]
        if along == 0:
            return _EVERYWHERE if first <= -max(rise) and -min(rise) <= last else _NOWHERE
        return -((-first - max(rise)) // along) - self.origin[0], (last + min(rise)) // along - self.origin[0]

    def inside(self, start: int, end: int, ends: tuple[int, int], beside: int) -> Interval:
        """Between which tape readings a block's rows may run, so that its plants keep what `ends` says to its stakes.

        A row keeps that along itself, and `beside` to either side of it; what this leaves to be kept straight to a
        stake line is kept here. Where the bed itself ends, the rows keep their distance from its edge and no more.
        """
        cosine, sine = self.cosine_and_sine
        head, foot = (ceil(max(0.0, end - max(end * cosine, beside * abs(sine)))) for end in ends)
        return start + (head if start > 0 else 0), end - (foot if end < self.length else 0)


_EVERYWHERE, _NOWHERE = (-(1 << 99), 1 << 99), (0, -1)


def _times_root(number: int, square: int) -> int:
    """A number times the root of a square, rounded down."""
    product = number * number * square
    root = isqrt(product)
    return root if number >= 0 else -root - (root * root < product)


def _over_root(number: int, square: int) -> int:
    """A number over the root of a square in 1 / 2^FINE, rounded towards 0."""
    root = isqrt((number << FINE) ** 2 // square)
    return root if number >= 0 else -root
