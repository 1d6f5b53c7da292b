"""Whether a closed outline is simple: it has an area, repeats no point and nowhere crosses or touches itself."""

from collections.abc import Sequence

Point = tuple[int, int]


def fault_of(outline: Sequence[Point]) -> str | None:
    """What is wrong with an outline in nm: "points", "repeat", "area" or "crossing"; None if nothing is."""
    if len(outline) < 3:
        return "points"
    if len(set(outline)) < len(outline):
        return "repeat"
    if twice_area(outline) == 0:
        return "area"
    return "crossing" if _crosses(outline) else None


def twice_area(outline: Sequence[Point]) -> int:
    """Twice the area inside, exactly (shoelace formula)."""
    pairs = zip(outline, [*outline[1:], outline[0]], strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs))


def _crosses(outline: Sequence[Point]) -> bool:
    sides = list(zip(outline, [*outline[1:], outline[0]], strict=True))
    last = len(sides) - 1
    for number, (a, b) in enumerate(sides):
        for other in range(number + 1, len(sides)):
            c, d = sides[other]
            beside = other == number + 1 or (number == 0 and other == last)
            if beside and not _folds(a, b, c, d):
                continue
            if beside or _meet(a, b, c, d):
                return True
    return False


def _turn(a: Point, b: Point, c: Point) -> int:
    cross = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
    return (cross > 0) - (cross < 0)


def _between(a: Point, b: Point, c: Point) -> bool:
    """Whether a point c of the line through a and b lies from a to b."""
    return min(a[0], b[0]) <= c[0] <= max(a[0], b[0]) and min(a[1], b[1]) <= c[1] <= max(a[1], b[1])


def _meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two sides share a point."""
    turns = _turn(a, b, c), _turn(a, b, d), _turn(c, d, a), _turn(c, d, b)
    if turns[0] != turns[1] and turns[2] != turns[3]:
        return True
    tips = ((a, b, c), (a, b, d), (c, d, a), (c, d, b))
    return any(turn == 0 and _between(*tip) for turn, tip in zip(turns, tips, strict=True))


def _folds(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two sides that share a corner lie on one another."""
    shared, one, other = (b, a, d) if b == c else (a, b, c)
    if _turn(shared, one, other) != 0:
        return False
    return (one[0] - shared[0]) * (other[0] - shared[0]) + (one[1] - shared[1]) * (other[1] - shared[1]) > 0
