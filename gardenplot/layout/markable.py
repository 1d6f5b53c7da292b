"""Spacings that the grower's own tools can mark, and those nearest to one that they cannot."""

from gardenplot.plan import Pattern
from gardenplot.units import Length


def nearest_markable(spacing: int, markable: tuple[Length, ...]) -> Length | None:
    """The nearest spacing on a list, the wider of two; None where the list is empty or has the spacing itself."""
    if not markable or any(one.nm == spacing for one in markable):
        return None
    return min(markable, key=lambda one: (abs(one.nm - spacing), -one.nm))


def markable_beside(spacing: int, markable: tuple[Length, ...]) -> tuple[Length, ...]:
    """The next narrower and the next wider spacing of a list, the nearest first; none where it has the spacing."""
    nearest = nearest_markable(spacing, markable)
    if nearest is None:
        return ()
    narrower = [one for one in markable if one.nm < spacing]
    wider = [one for one in markable if one.nm > spacing]
    beside = [max(narrower, key=_nm, default=None), min(wider, key=_nm, default=None)]
    return (nearest, *(one for one in beside if one is not None and one.nm != nearest.nm))


def markable_pattern(pattern: Pattern) -> Pattern:
    """The pattern for rows at a spacing of one's own: triangular rows stand as they must, others are staggered."""
    return Pattern.STAGGERED if pattern is Pattern.TRIANGULAR else pattern


def _nm(length: Length) -> int:
    return length.nm
