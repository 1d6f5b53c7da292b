"""Which layers of the drawing are shown; kept with what the window remembers, since it is no part of the plan."""

from PySide6.QtCore import QObject, QSettings, Signal

from gardenplot.drawing.covers import EVERY_LAYER, Layer

_HIDDEN = "hidden layers"


class Layers(QObject):
    """The layers that are shown; all of them until one is hidden."""

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        hidden = str(QSettings().value(_HIDDEN, "")).split(",")
        self.shown = frozenset(layer for layer in EVERY_LAYER if layer.value not in hidden)

    def show(self, layer: Layer, shown: bool) -> None:
        """Show or hide a layer, now and when the window opens again."""
        if shown == (layer in self.shown):
            return
        self.shown = self.shown | {layer} if shown else self.shown - {layer}
        QSettings().setValue(_HIDDEN, ",".join(sorted(one.value for one in EVERY_LAYER - self.shown)))
        self.changed.emit()
