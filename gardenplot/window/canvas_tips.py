"""What the pointer is told where it rests on the canvas: the name of a bed that is not written, or not whole."""

from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QHelpEvent
from PySide6.QtWidgets import QAbstractScrollArea, QToolTip

from gardenplot.window.canvas_names import is_cut
from gardenplot.window.canvas_view import CanvasView
from gardenplot.window.plain import as_is
from gardenplot.window.theme import magnified


class CanvasTips(QObject):
    """Answers the viewport's questions for a tip."""

    def __init__(self, area: QAbstractScrollArea, view: CanvasView) -> None:
        super().__init__(area)
        self._view = view
        area.viewport().installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is not QEvent.Type.ToolTip or not isinstance(event, QHelpEvent):
            return super().eventFilter(watched, event)
        tip = self.tip_at(event.x() / magnified(), event.y() / magnified())
        QToolTip.showText(event.globalPos(), as_is(tip))
        return True

    def tip_at(self, x: float, y: float) -> str:
        """The whole name of the bed beside a point of the gutter, where it is cut or left out; else nothing."""
        strips, (_left, top) = self._view.strips(), self._view.origin
        strip = strips.strip_at(y - top) if x < strips.gutter else None
        if strip is None:
            return ""
        bed = strip.laid.bed
        return bed.name if strip.bed not in strips.named(None) or is_cut(bed.name, strips) else ""
