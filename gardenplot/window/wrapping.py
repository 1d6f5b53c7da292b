"""A layout that sets its parts in a line as words are set, and begins another line where they do not fit."""

from collections.abc import Sequence

from attrs import frozen
from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QStyle, QWidget


@frozen
class _Line:
    """What stands in one line, and how high it is."""

    items: tuple[QLayoutItem, ...]
    height: int


class Wrapping(QLayout):
    """Parts that want to be wide share what is left of their line; `pinned` stands at the end of the first line."""

    def __init__(self, parent: QWidget | None = None, *, spacing: int = 10) -> None:
        super().__init__(parent)
        self.items: list[QLayoutItem] = []
        self.pinned: QLayoutItem | None = None
        self.setSpacing(spacing)

    def add_group(self, group: QLayout) -> None:
        """Add parts that are never set in two lines."""
        self.addChildLayout(group)
        self.addItem(group)

    def addItem(self, item: QLayoutItem) -> None:
        self.items.append(item)
        self.invalidate()

    def count(self) -> int:
        return len(self.items)

    def itemAt(self, index: int) -> QLayoutItem:
        return self.items[index] if _holds(self, index) else None  # type: ignore[return-value]  # Qt takes None past the end

    def takeAt(self, index: int) -> QLayoutItem:
        return self.items.pop(index) if _holds(self, index) else None  # type: ignore[return-value]  # Qt takes None past the end

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation.Horizontal

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        edges = _edges(self)
        lines = _lines(self, width - edges.width())
        return edges.height() + sum(line.height for line in lines) + self.spacing() * max(0, len(lines) - 1)

    def minimumSize(self) -> QSize:
        return QSize(max((item.minimumSize().width() for item in _shown(self)), default=0), 0) + _edges(self)

    def sizeHint(self) -> QSize:
        """As wide as all of it in one line."""
        shown = _shown(self)
        wide = sum(_wanted(item) + self.spacing() for item in shown) - self.spacing()
        return QSize(wide, max((item.sizeHint().height() for item in shown), default=0)) + _edges(self)

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        inside = rect.marginsRemoved(self.contentsMargins())
        top, parent = inside.top(), self.parentWidget()
        direction = parent.layoutDirection() if parent is not None else Qt.LayoutDirection.LeftToRight
        for line in _lines(self, inside.width()):
            frame = QRect(inside.left(), top, inside.width(), line.height)
            for item, place in zip(line.items, _places(line, frame, self.spacing()), strict=True):
                item.setGeometry(QStyle.visualRect(direction, frame, place))
            top += line.height + self.spacing()


def _holds(layout: Wrapping, index: int) -> bool:
    return 0 <= index < len(layout.items)


def _edges(layout: Wrapping) -> QSize:
    around = layout.contentsMargins()
    return QSize(around.left() + around.right(), around.top() + around.bottom())


def _shown(layout: Wrapping) -> list[QLayoutItem]:
    return [item for item in layout.items if not item.isEmpty()]


def _lines(layout: Wrapping, room: int) -> list[_Line]:
    """Which parts stand in which line where there is so much room."""
    gap, shown = layout.spacing(), _shown(layout)
    pinned = [item for item in shown if item is layout.pinned]
    lines: list[list[QLayoutItem]] = [[]]
    used = sum(_wanted(item) + gap for item in pinned) - gap
    for item in (item for item in shown if item not in pinned):
        if lines[-1] and used + gap + _wanted(item) > room:
            lines.append([])
            used = -gap
        lines[-1].append(item)
        used += gap + _wanted(item)
    lines[0] += pinned
    return [_Line(tuple(line), max(_height(item, room) for item in line)) for line in lines if line]


def _places(line: _Line, frame: QRect, gap: int) -> list[QRect]:
    """Where the parts of a line go, from the left."""
    places, left = [], frame.left()
    spare = frame.width() - sum(map(_wanted, line.items)) - gap * (len(line.items) - 1)
    shares = _shares(line.items, spare) if spare >= 0 else _given(line.items, -spare)
    for item, more in zip(line.items, shares, strict=True):
        size = QSize(min(_wanted(item) + more, frame.width()), min(line.height, _height(item, frame.width())))
        places.append(QRect(QPoint(left, frame.top() + (line.height - size.height()) // 2), size))
        left += size.width() + gap
    return places


def _wanted(item: QLayoutItem) -> int:
    return max(item.minimumSize().width(), item.sizeHint().width())


def _height(item: QLayoutItem, room: int) -> int:
    if item.hasHeightForWidth():
        return item.heightForWidth(min(room, _wanted(item)))
    return item.sizeHint().height()


def _given(items: Sequence[QLayoutItem], lack: int) -> list[int]:
    """What each part gives of what its line lacks, down to its least width, as numbers below nothing."""
    given = []
    for item in items:
        given.append(-min(lack, max(0, _wanted(item) - item.minimumSize().width())))
        lack += given[-1]
    return given


def _shares(items: Sequence[QLayoutItem], spare: int) -> list[int]:
    """What each part gets of the pixels that are left in its line, those with the narrowest limits first."""
    shares = [0] * len(items)
    elastic = {
        number: max(0, item.maximumSize().width() - _wanted(item))
        for number, item in enumerate(items)
        if item.expandingDirections() & Qt.Orientation.Horizontal
    }
    for served, number in enumerate(sorted(elastic, key=elastic.__getitem__)):
        shares[number] = max(0, min(elastic[number], spare // (len(elastic) - served)))
        spare -= shares[number]
    return shares
