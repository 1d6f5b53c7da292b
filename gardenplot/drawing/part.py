"""Marks of a bed as far as they are seen in a part of it."""

from collections.abc import Iterable, Iterator

from attrs import evolve, frozen

from gardenplot.drawing.marks import Label, Line, Mark, Outline, Plants, Point


@frozen
class Window:
    """A rectangle of a bed in mm of its frame."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, points: Iterable[Point]) -> bool:
        """Whether the box round some points is seen in part."""
        xs, ys = zip(*points, strict=True)
        return bool(min(xs) <= self.right and max(xs) >= self.left and min(ys) <= self.bottom and max(ys) >= self.top)


def seen(marks: Iterable[Mark], window: Window) -> Iterator[Mark]:
    """The marks that are seen in a window, whole; a label is set again in the middle of what is seen of its room."""
    for mark in marks:
        match mark:
            case Outline(points=points) if not window.meets(points):
                continue
            case Line(start=start, end=end) if not window.meets((start, end)):
                continue
            case Label():
                label = _label(mark, window)
                if label is not None:
                    yield label
            case Outline() | Line() | Plants():
                yield mark


def _label(label: Label, window: Window) -> Label | None:
    (x, y), reach, wide = label.at, label.room / 2, label.across / 2
    left, right = max(x - reach, window.left), min(x + reach, window.right)
    top, bottom = max(y - wide, window.top), min(y + wide, window.bottom)
    if left >= right or top >= bottom:
        return None
    return evolve(label, at=((left + right) / 2, (top + bottom) / 2), room=right - left, across=bottom - top)
