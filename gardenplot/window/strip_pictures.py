"""Pictures of beds as they were painted last: a bed is painted anew only when it, its scale or its colours change."""

from collections.abc import Iterable
from math import ceil, floor

from attrs import evolve, frozen
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap

from gardenplot.drawing.bed import BedFigure
from gardenplot.drawing.style import Ink, Palette
from gardenplot.window.canvas_drawn import DrawnBeds
from gardenplot.window.painting import Scale, paint
from gardenplot.window.theme import colour

_ABOVE = 10.0
"""Pixels above and below the soil for stakes and boards."""
_TALLEST = 4096
"""Pixels of the screen from which a picture would be too high to be kept: only its part in sight is painted then."""
_DASH = 16.0
"""Pixels that hold a dash and a gap."""
_AHEAD = 0.5
"""How much more than is in sight is painted on both sides while one scrolls, in lengths of what is: scrolling on
paints nothing then."""


@frozen(eq=False)
class Picture:
    """A bed painted from `first` to `last` mm, and from which figure at which scale."""

    figure: BedFigure
    scale: Scale
    times: float
    inks: Palette
    image: QPixmap
    left: float
    top: float

    def is_of(self, figure: BedFigure, scale: Scale, times: float, inks: Palette) -> bool:
        """Whether what it shows is as it would be painted."""
        return (
            self.figure is figure
            and self.inks is inks
            and self.times == times
            and self.scale.along == scale.along
            and self.scale.across == scale.across
        )

    def reaches(self, scale: Scale) -> bool:
        """Whether it shows all that is in sight."""
        mine = self.scale
        from_head, to_foot = mine.first <= 0.0, mine.last >= self.figure.length
        return (from_head or mine.first <= scale.first) and (to_foot or mine.last >= scale.last)


class StripPictures:
    """The picture of each bed, by its id; of beds that are out of sight they are let go."""

    def __init__(self) -> None:
        self._pictures: dict[str, Picture] = {}
        self.drawn = DrawnBeds()

    def paint(
        self, painter: QPainter, beds: Iterable[tuple[BedFigure, float]], left: float, scale: Scale, room: float,
        inks: Palette,
    ) -> None:  # fmt: skip
        """Paint beds, each with its own top, with at most `room` pixels above their soil and below."""
        device = painter.deviceTransform()
        times, beside, above = device.m11(), device.dx(), device.dy()
        # At half a pixel of the screen it would hang on where a picture begins to which side Qt rounds it.
        head = (round(beside + left * times) - beside) / times
        for figure, top in beds:
            picture = self.of(figure, scale, room, inks, times)
            if picture is None:
                _paint_sight(painter, figure, scale, room, inks, QPointF(left, top))
                continue
            high = (round(above + top * times) - above) / times
            painter.drawPixmap(QPointF(head + picture.left, high + picture.top), picture.image)

    def of(self, figure: BedFigure, scale: Scale, room: float, inks: Palette, times: float) -> Picture | None:
        """The picture of a bed with `times` pixels of the screen to a pixel; None where it would be too high."""
        picture = self._pictures.get(figure.bed)
        is_same = picture is not None and picture.is_of(figure, scale, times, inks)
        if picture is None or not is_same or not picture.reaches(scale):
            if figure.width * scale.across * times > _TALLEST:
                self._pictures.pop(figure.bed, None)
                return None
            # Who goes on to another part of the same bed scrolls.
            ahead = _AHEAD if is_same else 0.0
            picture = self._pictures[figure.bed] = _painted(figure, scale, times, room, inks, ahead)
        return picture

    def keep(self, beds: set[str]) -> None:
        """Let go of all other beds' pictures."""
        for bed in self._pictures.keys() - beds:
            del self._pictures[bed]


def reach_above(figure: BedFigure, across: float, room: float) -> float:
    """How many pixels a picture goes on above the soil and below, of at most `room`; `across` are pixels per mm."""
    return min(_ABOVE + figure.rim * across, room)


def _paint_sight(painter: QPainter, figure: BedFigure, sight: Scale, room: float, inks: Palette, at: QPointF) -> None:
    """Paint what is in sight of a bed, of which no picture is kept."""
    above, rim = reach_above(figure, sight.across, room), figure.rim * sight.along + 2
    # As in a picture.
    first = max(0.0, sight.first - _DASH / sight.along)
    scale = evolve(sight, first=first, last=min(figure.length, sight.last))
    frame = QRectF(-rim, -above, figure.length * sight.along + 2 * rim, figure.width * sight.across + 2 * above)
    painter.save()
    painter.translate(at)
    painter.setClipRect(frame, Qt.ClipOperation.IntersectClip)
    paint(painter, figure.marks, scale, inks)
    painter.restore()


def _painted(figure: BedFigure, sight: Scale, times: float, room: float, inks: Palette, ahead: float) -> Picture:
    # A dashed line begins with a whole dash, and that where nobody sees it.
    ahead = max(ahead * (sight.last - sight.first), _DASH / sight.along)
    rim, above = figure.rim * sight.along, floor(reach_above(figure, sight.across, room) * times) / times
    first, last = max(0.0, sight.first - ahead), min(figure.length, sight.last + ahead)
    scale = Scale(sight.along, sight.across, first, last)
    left = floor((first * scale.along - rim - 2) * times) / times
    right, height = last * scale.along + rim + 2, figure.width * scale.across + 2 * above
    image = QPixmap(max(1, ceil((right - left) * times)), ceil(height * times))
    image.setDevicePixelRatio(times)
    image.fill(colour(inks, Ink.PAPER))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(-left, above)
    paint(painter, figure.marks, scale, inks)
    painter.end()
    return Picture(figure, scale, times, inks, image, left, -above)
