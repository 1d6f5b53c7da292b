"""In the drawing of a bed the names of what stands in it, and a cross at the centre from which rings are measured."""

from collections.abc import Iterator

from attrs import evolve, frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.bed import reach_at
from gardenplot.drawing.handles import sizes
from gardenplot.drawing.marks import Label, Line, Mark, Plants, Weight
from gardenplot.drawing.part import Window, seen
from gardenplot.layout import Layout
from gardenplot.one_line import one_line
from gardenplot.plan import Bed
from gardenplot.sheets.free_paper import Box, is_free, meet, standing
from gardenplot.sheets.paper import FACE
from gardenplot.sheets.render import Frame
from gardenplot.units import MM
from gardenplot.words import _

_SIZE = 10
_HALF = 5.0
"""Half the height in points of a line of words."""
_AROUND, _BESIDE = 1.0, 2.0
"""Points that stay free around a name, and from what it names to the name."""
_CROSS = 6.0
"""Points that a cross reaches each way from the centre."""
_SIDES = ((1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (-1, 1), (1, -1), (-1, -1))


@frozen
class _Thing:
    """What has a name: its place on the page, how far it reaches along and across, and what is kept clear around it.

    All of it is in points.
    """

    name: str
    at: tuple[float, float]
    reach: tuple[float, float]
    clear: tuple[float, float]

    @property
    def box(self) -> Box:
        """Where it stands itself."""
        (x, y), (along, across) = self.at, self.reach
        return x - along, y - across, x + along, y + across

    def places(self) -> Iterator[Box]:
        """Where its name may stand beside it, the best first: close to it, or beyond what is kept clear."""
        half = pdfmetrics.stringWidth(self.name, FACE, _SIZE) / 2 + _AROUND, _HALF + _AROUND
        for beyond in (0.0, 0.0), self.clear:
            for side in _SIDES:
                x, y = (
                    at + one * (reach + more + _BESIDE + room)
                    for at, one, reach, more, room in zip(self.at, side, self.reach, beyond, half, strict=True)
                )
                yield x - half[0], y - half[1], x + half[0], y + half[1]


def draw_obstacle_names(
    page: Canvas, bed: Bed, layouts: tuple[Layout, ...], marks: tuple[Mark, ...], frame: Frame,
    own: Window | None = None,
) -> None:  # fmt: skip
    """Mark the centre of rings, and name what stands in a bed beside it where plants leave room.

    On a page that shows more of the bed than its `own` part names stand in that alone, so that no line where pages
    join runs through one.
    """
    window = own or frame.window
    centre = _centre(bed, layouts, frame)
    if centre is not None and _is_seen(centre, frame.window, frame):
        _cross(page, centre)
    things = [*_obstacles(bed, frame), *([centre] if centre else [])]
    things = [one for one in things if _is_seen(one, window, frame)]
    plants = [standing(mark, frame) for mark in marks if isinstance(mark, Plants)] if things else []
    taken = [*(one.box for one in things), *_lines(marks, frame)]
    here = evolve(frame, window=window)
    for thing in things:
        places = (box for box in thing.places() if _is_in_bed(box, bed, frame) and is_free(box, plants, here))
        box = next((box for box in places if not any(meet(box, other) for other in taken)), None)
        if box is not None:
            taken.append(box)
            _write(page, thing.name, box)


def _obstacles(bed: Bed, frame: Frame) -> Iterator[_Thing]:
    for one in bed.obstacles:
        clear = one.keep_clear.nm / MM if one.keep_clear else 0.0
        along, across = (side / 2 / MM for side in sizes(one))
        yield _Thing(
            one_line(one.name),
            frame.place(one.x.nm / MM, one.y.nm / MM),
            (along * frame.along, across * frame.across),
            (clear * frame.along, clear * frame.across),
        )


def _centre(bed: Bed, layouts: tuple[Layout, ...], frame: Frame) -> _Thing | None:
    """The centre of a bed with rings."""
    if not any(layout.rings for layout in layouts):
        return None
    middle = frame.place(bed.length.nm / 2 / MM, bed.width.nm / 2 / MM)
    return _Thing(_("centre"), middle, (_CROSS, _CROSS), (0.0, 0.0))


def _cross(page: Canvas, centre: _Thing) -> None:
    left, bottom, right, top = centre.box
    page.setLineWidth(0.35 * mm)
    page.line(left, centre.at[1], right, centre.at[1])
    page.line(centre.at[0], bottom, centre.at[0], top)


def _is_seen(thing: _Thing, window: Window | None, frame: Frame) -> bool:
    """Whether a thing itself, and not what is kept clear of it alone, stands in a part of the bed."""
    if window is None:
        return True
    (left, top), (right, bottom) = frame.place(window.left, window.top), frame.place(window.right, window.bottom)
    return meet(thing.box, (left, bottom, right, top))


def _lines(marks: tuple[Mark, ...], frame: Frame) -> Iterator[Box]:
    """Lines of stakes and ends of rows, and words in the drawing, which a name does not cross."""
    for mark in marks if frame.window is None else seen(marks, frame.window):
        if isinstance(mark, Line) and mark.pen.weight is not Weight.ROW:
            (x1, y1), (x2, y2) = frame.place(*mark.start), frame.place(*mark.end)
            yield min(x1, x2) - 1, min(y1, y2) - 1, max(x1, x2) + 1, max(y1, y2) + 1
        elif isinstance(mark, Label):
            (x, y), half = frame.place(*mark.at), max(pdfmetrics.stringWidth(one, FACE, _SIZE) for one in mark.texts)
            yield x - half, y - _HALF, x + half, y + _HALF


def _is_in_bed(box: Box, bed: Bed, frame: Frame) -> bool:
    """Whether a box lies between the edges of a bed, at both its ends and half way."""
    left, right = ((x - frame.left) / frame.along for x in (box[0], box[2]))
    top, bottom = ((frame.top - y) / frame.across for y in (box[3], box[1]))
    if not 0 <= left < right <= bed.length.nm / MM:
        return False
    reaches = (reach_at(bed, round(x * MM), bed.width.nm / MM) for x in (left, (left + right) / 2, right))
    return all(low <= top and bottom <= high for low, high in reaches)


def _write(page: Canvas, name: str, box: Box) -> None:
    """A name with white behind it, so that neither rows nor what is left run through it."""
    left, bottom, right, top = box
    page.setFillGray(1)
    page.rect(left, bottom + _AROUND, right - left, top - bottom - 2 * _AROUND, stroke=0, fill=1)
    page.setFillGray(0)
    page.setFont(FACE, _SIZE)
    page.drawCentredString((left + right) / 2, (bottom + top) / 2 - 0.26 * _SIZE, name)
