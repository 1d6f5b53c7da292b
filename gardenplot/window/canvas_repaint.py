"""Has those parts of the canvas painted anew that show otherwise, at once or in bits."""

from collections.abc import Callable, Iterator

from PySide6.QtCore import QObject, QRect, QRectF
from PySide6.QtGui import QRegion, QTransform
from PySide6.QtWidgets import QWidget

from gardenplot.layout import lay_out_bed
from gardenplot.plan import Plan
from gardenplot.window.canvas_bands import BitByBit, bands
from gardenplot.window.canvas_changes import changed_between, changed_by_edit
from gardenplot.window.canvas_paint import Scene, make_ready
from gardenplot.window.strip_pictures import StripPictures
from gardenplot.window.theme import magnified


class Repaint(QObject):
    """Follows what the canvas shows, and knows what it showed when it was painted last."""

    def __init__(
        self, viewport: QWidget, scene: Callable[[], Scene], frame: Callable[[], QRect], pictures: StripPictures
    ) -> None:
        super().__init__(viewport)
        self._viewport, self._scene, self._frame, self._pictures = viewport, scene, frame, pictures
        self._bits = BitByBit(viewport, self._make_ready)
        self._laying: Iterator[None] = iter(())
        self.shown: Scene | None = None

    def painted(self, scene: Scene, region: QRegion) -> None:
        """To be told of all that was painted."""
        self.shown = scene
        self._bits.painted(region)

    def follow_trial(self, plan: Plan, *, in_bits: bool) -> None:
        """Paint anew what the hand has changed, or what it would change that plan to, bit by bit."""
        if self.shown is None:
            return
        frame, strips, times = self._frame(), self.shown.strips, _times()
        if in_bits and strips.ground is None:
            self._laying = _laying_out(plan)
            self._bits.paint([times.map(QRegion(part)) for part in bands(strips.strips, self.shown.top, frame)])
        else:
            self._viewport.update(times.map(changed_between(self.shown, self._scene(), frame)))

    def follow_edit(self) -> None:
        """Paint anew what an edit has changed."""
        if self.shown is not None:
            self._viewport.update(_times().map(changed_by_edit(self.shown, self._scene(), self._frame())))

    def _make_ready(self, part: QRegion) -> Iterator[None]:
        yield from self._laying
        sight, sharp = _times().inverted()[0].mapRect(QRectF(part.boundingRect())), self._viewport.devicePixelRatioF()
        yield from make_ready(sight, self._frame(), self._scene(), self._pictures, sharp * magnified())


def _laying_out(plan: Plan) -> Iterator[None]:
    """Lay all beds out, one in a step: a scene shows them all."""
    for bed in plan.beds:
        lay_out_bed(plan, bed)
        yield


def _times() -> QTransform:
    return QTransform.fromScale(magnified(), magnified())
