"""A panel that is scrolled below its heading, which stays: whose fields these are is in sight beside each of them."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QScrollArea, QWidget

from gardenplot.window.labels import rule
from gardenplot.window.plain import as_is

SIDE = 14
"""Pixels between the sides of a panel and what stands in it."""
_ABOVE, _BELOW = 10, 4
_SHARE = 0.5
"""The part of its height that an area gives to its heading at most; the tip tells one that would need more."""


class HeadedArea(QScrollArea):
    """Scrolls a panel; its heading, once it has one, stands above that, as high as its words need."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._title: QLabel | None = None
        self.line = rule()
        self.line.setParent(self)
        """Below the heading, where what is scrolled goes on under it."""
        self.line.hide()
        self.verticalScrollBar().valueChanged.connect(lambda at: self.line.setVisible(at > 0))

    def stay(self, title: QLabel) -> None:
        """Keep a heading of several lines above what is scrolled."""
        self._title = title
        title.setParent(self)
        title.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        title.show()
        self._lay()

    def event(self, event: QEvent) -> bool:
        if event.type() is QEvent.Type.LayoutRequest:
            self._lay()
        return super().event(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._lay()

    def _lay(self) -> None:
        """Give the heading the height of its words, and the rest to what is scrolled."""
        if self._title is None:
            return
        inside, scrolled = self.contentsRect(), self.viewport().geometry()
        width = scrolled.width() - 2 * SIDE
        words = self._title.heightForWidth(width)
        height = min(words, round(inside.height() * _SHARE))
        self._title.setGeometry(scrolled.left() + SIDE, inside.top() + _ABOVE, width, height)
        self._title.setToolTip(as_is(self._title.text()) if height < words else "")
        taken = _ABOVE + height + _BELOW
        self.line.setGeometry(scrolled.left(), inside.top() + taken - 1, scrolled.width(), 1)
        if self.viewportMargins().top() != taken:
            self.setViewportMargins(0, taken, 0, 0)
