"""Straight, staggered and triangular side by side: a true-scale picture of the block, its plants, what differs."""

from functools import lru_cache

import numpy as np
from attrs import cmp_using, evolve, field, frozen
from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFont, QFontMetricsF, QKeyEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QBoxLayout, QButtonGroup, QHBoxLayout, QSizePolicy, QWidget

from gardenplot.drawing.letters import Look
from gardenplot.drawing.marks import Shape
from gardenplot.drawing.sayings import PATTERNS
from gardenplot.drawing.so_many import so_many_plants
from gardenplot.drawing.style import Ink
from gardenplot.layout import Layout
from gardenplot.layout.compare import SIDE_BY_SIDE, InPattern
from gardenplot.layout.positions import positions
from gardenplot.plan import Pattern
from gardenplot.units import MM, Units
from gardenplot.units.figures import apart, grouped, span
from gardenplot.window.plain import as_is
from gardenplot.window.stamps import Pixels, paint_plants
from gardenplot.window.theme import colour, magnified, palette, widget_font
from gardenplot.words import _, ngettext

_PICTURE = 46
_BESIDE = 10
"""Between the picture and the words beside it."""


@frozen
class _Line:
    """A line of words on a card, in its ink."""

    words: str
    ink: Ink = Ink.SECOND
    bold: bool = False

    @property
    def font(self) -> QFont:
        """Its face, at the size that goes with the system's text."""
        return widget_font(14 if self.bold else 12, bold=self.bold)

    def broken(self, room: float) -> tuple["_Line", ...]:
        """The lines in which its words have room, as far as single words have; a number stays with its unit."""
        metrics, lines = QFontMetricsF(self.font), [""]
        for word in self.words.split(" "):
            longer = f"{lines[-1]} {word}".strip()
            if lines[-1] and metrics.horizontalAdvance(longer) > room:
                lines.append(word)
            else:
                lines[-1] = longer
        return tuple(evolve(self, words=words) for words in lines)


@lru_cache(maxsize=64)
def _broken(lines: tuple[_Line, ...], room: float, _magnified: float) -> tuple[_Line, ...]:
    """Lines broken to a room; how much larger than usual text is says how wide they are."""
    return tuple(one for line in lines for one in line.broken(room))


@lru_cache(maxsize=64)
def _least(lines: tuple[_Line, ...], magnified: float) -> int:
    """How much room the longest word of lines takes."""
    return _wide(_broken(lines, 0, magnified))


@frozen
class _Picture:
    """The head end of a block, as high as a picture: the marks of its plants, their radius, and places in pixels."""

    shape: Shape
    ink: Ink
    radius: float
    places: Pixels = field(eq=cmp_using(eq=np.array_equal))


class PatternButton(QAbstractButton):
    """One pattern: the head end of the block to scale, the plants it holds, and what differs."""

    def __init__(self, pattern: Pattern, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.pattern = pattern
        self.setCheckable(True)
        self.setMinimumWidth(64)
        # As high as the highest beside it, so that all pictures begin in one line.
        self.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Minimum)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._picture: _Picture | None = None
        self._lines: tuple[_Line, ...] = ()
        self._shown: tuple[_Line, ...] = ()
        self._is_flat = False

    def sizeHint(self) -> QSize:
        line = QFontMetricsF(widget_font(13)).height()
        below = 0 if self._is_flat else _PICTURE + 4
        return QSize(76, round(max(_PICTURE, max(5, len(self._shown)) * line) + 8 + below))

    def least_width(self) -> int:
        """How wide it must be for the longest word below its picture."""
        return _least(self._lines, magnified())

    def lie_flat(self, flat: bool, room: int) -> None:
        """Show the words beside the picture, or below it in lines of that width."""
        shown = self._lines if flat else _broken(self._lines, room - 4, magnified())
        if (flat, shown) == (self._is_flat, self._shown):
            return
        self._is_flat, self._shown = flat, shown
        self.updateGeometry()
        self.update()

    def show_candidate(self, candidate: InPattern, look: Look, units: Units) -> None:
        """Show what this pattern makes of the block."""
        grid = candidate.layout.grid
        rows = _("rows {apart} apart").format(apart=apart(grid.between, units)) if grid.rows > 1 else ""
        length = span(candidate.length, units) if candidate.length is not None else None
        needs = _("needs {length}").format(length=length) if length is not None else _("no row fits")
        lines = (
            _Line(PATTERNS[self.pattern]),
            _Line(grouped(candidate.layout.plants), Ink.INK, bold=True),
            _Line(_difference(candidate.more), Ink.INK if candidate.more < 0 else Ink.SECOND),
            _Line(rows),
            _Line(_("closer than the packet") if candidate.closer else "", Ink.ACCENT),
            _Line(needs),
        )
        rows = ngettext("{rows} row", "{rows} rows", grid.rows).format(rows=grid.rows)
        says = _("{rows}; {needs} for {plants}.")
        self.setToolTip(as_is(says.format(rows=rows, needs=needs, plants=so_many_plants(candidate.wanted))))
        said, picture = tuple(line for line in lines if line.words), _picture_of(candidate.layout, look)
        if (said, picture) == (self._lines, self._picture):
            return
        self._lines, self._picture = said, picture
        self.setAccessibleName(", ".join(line.words for line in self._lines))
        self.updateGeometry()
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self._picture is None:
            return
        inks = palette()
        painter = QPainter(self)
        painter.setLayoutDirection(self.layoutDirection())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wide = self._beside_words() if self._is_flat else self.width() - 3.0
        frame = QRectF(1.5, 1.5, wide, _PICTURE)
        painter.setBrush(colour(inks, Ink.SOIL))
        painter.setPen(QPen(colour(inks, Ink.ACCENT if self.isChecked() else Ink.RULE), 2 if self.isChecked() else 1))
        painter.drawRoundedRect(frame, 3, 3)
        _paint_plants(painter, self._picture, frame)
        words = QRectF(0, _PICTURE + 4, self.width(), 0)
        self._paint_lines(painter, QRectF(frame.right() + _BESIDE, 2, self.width(), 0) if self._is_flat else words)
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 4, 4)
        painter.end()

    def _beside_words(self) -> float:
        """How wide the picture may be beside words that are all to be read."""
        room = self.width() - _wide(self._lines) - _BESIDE - 3.0
        return max(_PICTURE / 2, min(self.width() / 3, 2.0 * _PICTURE, room))

    def _paint_lines(self, painter: QPainter, frame: QRectF) -> None:
        inks, y = palette(), frame.top()
        side = Qt.AlignmentFlag.AlignLeft if self._is_flat else Qt.AlignmentFlag.AlignHCenter
        for line in self._shown:
            height = QFontMetricsF(line.font).height()
            painter.setFont(line.font)
            painter.setPen(colour(inks, line.ink))
            room = QRectF(frame.left(), y, frame.width(), height)
            painter.drawText(room, side | Qt.AlignmentFlag.AlignVCenter, line.words)
            y += height


def _picture_of(layout: Layout, look: Look) -> _Picture:
    grid = layout.grid
    scale = _PICTURE / (grid.width / MM)
    places = (positions(layout) - (layout.start, 0)) / MM * scale
    radius = min(grid.in_row, grid.between) / MM * scale * 0.36
    return _Picture(look.shape, look.ink, max(1.0, min(radius, 7.0)), places)


def _paint_plants(painter: QPainter, picture: _Picture, frame: QRectF) -> None:
    painter.save()
    painter.setClipRect(frame.adjusted(1, 1, -1, -1))
    painter.translate(frame.topLeft())
    near = picture.places[picture.places[:, 0] <= frame.width()]
    paint_plants(painter, picture.shape, picture.radius, colour(palette(), picture.ink), near)
    painter.restore()


def _wide(lines: tuple[_Line, ...]) -> int:
    """How much room lines of words take."""
    return round(max((QFontMetricsF(one.font).horizontalAdvance(one.words) for one in lines), default=0)) + 4


def _difference(more: int) -> str:
    if more == 0:
        return _("the same")
    return f"+{grouped(more)}" if more > 0 else grouped(more)


class PatternChoice(QWidget):
    """The three patterns of a block; one of them may be picked by mouse or by arrow keys and Space."""

    picked = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        # Pictures of beds and their numbers, with the head at the left as in the drawing.
        self.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        self._group = QButtonGroup(self)
        self._row = row
        # Made at once: a part that comes later would stand first in the order of the Tab key.
        self.buttons = {pattern: self._made(pattern) for pattern in SIDE_BY_SIDE}

    def show_candidates(self, found: tuple[InPattern, ...], look: Look, units: Units, now: Pattern) -> None:
        """Show the candidates and which of them is the block's own."""
        self._group.setExclusive(False)
        for candidate in found:
            button = self.buttons[candidate.pattern]
            button.show_candidate(candidate, look, units)
            button.setChecked(candidate.pattern is now)
        self._group.setExclusive(now in self.buttons)
        self._settle()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._settle()

    def _settle(self) -> None:
        """Stand side by side where all words have room, else one under another."""
        buttons, gap = list(self.buttons.values()), self._row.spacing()
        room = (self.width() - gap * (len(buttons) - 1)) // max(1, len(buttons))
        flat = any(button.least_width() > room for button in buttons)
        ways = QBoxLayout.Direction
        self._row.setDirection(ways.TopToBottom if flat else ways.LeftToRight)
        for button in buttons:
            button.lie_flat(flat, room)

    def _made(self, pattern: Pattern) -> PatternButton:
        button = PatternButton(pattern, self)
        button.clicked.connect(lambda: self.picked.emit(pattern))
        self._group.addButton(button)
        self._row.addWidget(button, 1)
        return button

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right go from one pattern to the next."""
        buttons = list(self.buttons.values())
        at = next((number for number, button in enumerate(buttons) if button.hasFocus()), None)
        steps: dict[int, int] = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        step = steps.get(event.key())
        if at is None or step is None:
            super().keyPressEvent(event)
            return
        buttons[(at + step) % len(buttons)].setFocus(Qt.FocusReason.TabFocusReason)
