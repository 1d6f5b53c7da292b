"""The hand of the monkey: one random event at a time, sent to a window as a screen and its keyboard would.

Every event goes in at the window of the system, so that grabs, popups, shortcuts and blocked windows are Qt's own
business. Which event it is depends on its dice and on what there is to be hit.
"""

import random
from collections.abc import Callable, Sequence

from PySide6.QtCore import QEvent, QKeyCombination, QPoint, QPointF, QRect, QSize, Qt
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence, QWindow
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QComboBox,
    QDialogButtonBox,
    QLineEdit,
    QMenu,
    QWidget,
)
from shiboken6 import isValid

from gardenplot.layout import lay_out_plan
from gardenplot.window.end_buttons import EndButtons
from gardenplot.window.main import MainWindow
from tests.attack.monkey_words import SOUND, TYPED

Keys, Button, Act = Qt.KeyboardModifier, Qt.MouseButton, QTest.MouseAction
_NONE, _LEFT = Keys.NoModifier, Button.LeftButton
HELD = (Keys.ShiftModifier, Keys.ControlModifier, Keys.AltModifier, Keys.ShiftModifier | Keys.ControlModifier)
_WALKS = (
    Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Home, Qt.Key.Key_End,
    Qt.Key.Key_PageUp, Qt.Key.Key_PageDown, Qt.Key.Key_Tab, Qt.Key.Key_Backtab, Qt.Key.Key_Return, Qt.Key.Key_Space,
    Qt.Key.Key_Escape, Qt.Key.Key_Delete, Qt.Key.Key_Backspace, Qt.Key.Key_Insert, Qt.Key.Key_BracketLeft,
    Qt.Key.Key_BracketRight, Qt.Key.Key_Plus, Qt.Key.Key_Minus, Qt.Key.Key_0, Qt.Key.Key_5, Qt.Key.Key_M,
    Qt.Key.Key_Period, Qt.Key.Key_Menu, Qt.Key.Key_Enter,
)  # fmt: skip
_HELD_KEYS = (Qt.Key.Key_Shift, Qt.Key.Key_Control, Qt.Key.Key_Alt)
Deed = Callable[[], object]


class Hand:
    """Knows which button it holds and over which window; `dice` are those of the event that is under way."""

    def __init__(self, window: MainWindow) -> None:
        self.window = window
        self.dice = random.Random(0)
        self.held: tuple[QWindow, Qt.MouseButton] | None = None

    def act(self, top: QWidget) -> None:
        """Do one thing to the window that is in front."""
        if self.held is not None and not (isValid(self.held[0]) and self.held[0].isVisible()):
            self.held = None
        if self.held is not None:
            self._go_on(top)
        elif isinstance(top, QMenu):
            self._choose(top)
        elif top is self.window:
            self._work()
        else:
            self._answer(top)

    def let_go(self) -> None:
        """Let go of the button that is held."""
        if self.held is not None and isValid(self.held[0]):
            (window, button), self.held = self.held, None
            QTest.mouseEvent(Act.MouseRelease, window, button, _NONE, QPoint(5, 5))

    def _one_of(self, weighed: Sequence[tuple[int, Deed]]) -> None:
        weights = [weight for weight, _deed in weighed]
        self.dice.choices([deed for _weight, deed in weighed], weights)[0]()

    def _work(self) -> None:
        """Something that a person does in the main window."""
        self._one_of((
            (20, lambda: self.press(self.window, self.on_canvas())),
            (12, self._drag_block),
            (8, lambda: self.fill(self.window.inspector)),
            (8, lambda: self.move(self.window, self.on_canvas())),
            (4, lambda: self.double(self.window, self.on_canvas())),
            (10, lambda: self.press(self.window, self.on_any(self.window))),
            (3, lambda: self.double(self.window, self.on_any(self.window))),
            (3, lambda: self.move(self.window, self.on_any(self.window))),
            (6, lambda: self.roll(self.window, self.dice.choice((self.on_canvas, self._anywhere))())),
            (12, self.key),
            (10, self._shortcut),
            (3, self._back_or_forth),
            (8, self._open_menu),
            (4, lambda: self.fill(self.window)),
            (4, self._take_from_shelf),
            (2, lambda: self.resize(self.window)),
            (1, self.turn),
        ))  # fmt: skip

    def _go_on(self, top: QWidget) -> None:
        """Something that is done while a button is held."""
        self._one_of((
            (50, self._drag),
            (30, self._release),
            (4, lambda: self.key(Qt.Key.Key_Escape)),
            (6, self._hold_key),
            (4, lambda: self.roll(top, self.on_any(top))),
            (3, self.key),
            (2, self._shortcut),
            (1, lambda: self.resize(top)),
        ))  # fmt: skip

    def _choose(self, menu: QMenu) -> None:
        """Something that is done in a menu."""
        self._one_of((
            (45, lambda: self._click_action(menu)),
            (10, lambda: self.move(menu, self.on_any(menu))),
            (15, lambda: self.key(self.dice.choice(_WALKS[:4]))),
            (10, lambda: self.key(Qt.Key.Key_Return)),
            (15, lambda: self.key(Qt.Key.Key_Escape)),
            (5, lambda: self.click(self.window, self._anywhere())),
        ))  # fmt: skip

    def _answer(self, dialog: QWidget) -> None:
        """Something that is done in a dialog, or in a list that has popped up."""
        self._one_of((
            (35, lambda: self.fill(dialog)),
            (20, lambda: self.press(dialog, self.on_any(dialog))),
            (12, lambda: self._press_button(dialog)),
            (12, self.key),
            (4, lambda: self.double(dialog, self.on_any(dialog))),
            (4, lambda: self.roll(dialog, self.on_any(dialog))),
            (3, lambda: self.key(Qt.Key.Key_Return)),
            (5, lambda: self.key(Qt.Key.Key_Escape)),
            (2, lambda: self.resize(dialog)),
            (1, self.turn),
            (2, lambda: QTest.qWait(20)),
        ))  # fmt: skip

    def on_canvas(self) -> QPoint:
        """A point of the drawing, more often one where something grows; in the frame of the window."""
        views, canvas, dice = self.window.views, self.window.canvas, self.dice
        if views.shows_ground:
            return self._in_widget(views.ground, self.window)
        plan = self.window.document.plan
        blocks = [layout for laid in lay_out_plan(plan) for layout in laid.layouts]
        if not blocks or dice.random() < 0.3:
            return self._in_widget(canvas.viewport(), self.window)
        block = dice.choice(blocks)
        width = next(bed.width.nm for bed in plan.beds if bed.id == block.bed)
        at = dice.choice((block.start, block.end, dice.randint(block.start, max(block.start, block.end))))
        point = canvas.places.point_of(block.bed, at, dice.randint(0, width)) + QPointF(dice.randint(-9, 9), 0)
        if not QRect(QPoint(), canvas.viewport().size()).contains(point.toPoint()):
            return self._in_widget(canvas.viewport(), self.window)
        return canvas.viewport().mapTo(self.window, point.toPoint())

    def on_any(self, top: QWidget) -> QPoint:
        """A point in any part of a window."""
        shown = [one for one in top.findChildren(QWidget) if one.isVisible() and one.window() is top]
        return self._in_widget(self.dice.choice(shown) if shown else top, top)

    def _anywhere(self) -> QPoint:
        return self._in_widget(self.window, self.window)

    def _in_widget(self, part: QWidget, top: QWidget) -> QPoint:
        """A point in what can be seen of a part, in the frame of its window."""
        seen = part.visibleRegion().boundingRect()
        if seen.isEmpty():
            seen = part.rect()
        at = QPoint(seen.left() + self.dice.randrange(max(1, seen.width())),
                    seen.top() + self.dice.randrange(max(1, seen.height())))  # fmt: skip
        return part.mapTo(top, at) if part is not top else at

    def press(self, top: QWidget, at: QPoint) -> None:
        """Press a button, and hold it where it is not a mere click."""
        button = self.dice.choices((Button.LeftButton, Button.RightButton, Button.MiddleButton), (85, 11, 4))[0]
        self.click(top, at, button, holds=self.dice.random() < 0.55)

    def click(
        self, top: QWidget, at: QPoint, button: Qt.MouseButton = Button.LeftButton, *, holds: bool = False
    ) -> None:
        """Click, or press and hold."""
        window = top.windowHandle()
        if window is None or not _is_inside(top, at):
            return
        held = self.dice.choice(HELD) if self.dice.random() < 0.2 else _NONE
        if holds:
            self.held = window, button
        QTest.mouseEvent(Act.MousePress if holds else Act.MouseClick, window, button, held, at)

    def double(self, top: QWidget, at: QPoint) -> None:
        """Click twice."""
        window = top.windowHandle()
        if window is not None and _is_inside(top, at):
            QTest.mouseEvent(Act.MouseDClick, window, Button.LeftButton, _NONE, at)

    def move(self, top: QWidget, at: QPoint) -> None:
        """Move there without a button."""
        window = top.windowHandle()
        if window is not None and _is_inside(top, at):
            QTest.mouseEvent(Act.MouseMove, window, Button.NoButton, _NONE, at)

    def roll(self, top: QWidget, at: QPoint) -> None:
        """Turn the wheel."""
        window = top.windowHandle()
        if window is not None and _is_inside(top, at):
            held = self.dice.choice((_NONE, *HELD))
            QTest.wheelEvent(window, at, QPoint(0, 120 * self.dice.choice((-3, -1, 1, 2))), stateKey=held)

    def key(self, key: Qt.Key | None = None) -> None:
        """Press a key of those that go about, in whatever window has the keyboard."""
        chosen = key if key is not None else self.dice.choice(_WALKS)
        held = _NONE if key is not None or self.dice.random() < 0.6 else self.dice.choice(HELD)
        window = QApplication.focusWindow() or self.window.windowHandle()
        QTest.keyClick(window, chosen, held)

    def _hold_key(self) -> None:
        key = self.dice.choice(_HELD_KEYS)
        window = QApplication.focusWindow() or self.window.windowHandle()
        (QTest.keyPress if self.dice.random() < 0.5 else QTest.keyRelease)(window, key)

    def _shortcut(self) -> None:
        """The keys of any action."""
        registry = self.window.registry
        keys = [one for action in registry.actions for one in registry.keys(action)]
        if keys:
            self._press_keys(self.dice.choice(keys))

    def _back_or_forth(self) -> None:
        keys = self.window.registry.keys(self.dice.choice(("edit.undo", "edit.undo", "edit.redo")))
        if keys:
            self._press_keys(keys[0])

    def _press_keys(self, keys: QKeySequence) -> None:
        combination: QKeyCombination = keys[0]  # type: ignore[index]  # the stubs of Qt lack it
        window = QApplication.focusWindow() or self.window.windowHandle()
        QTest.keyClick(window, combination.key(), combination.keyboardModifiers())

    def _open_menu(self) -> None:
        bar = self.window.menuBar()
        action = self.dice.choice(bar.actions())
        self.click(self.window, bar.mapTo(self.window, bar.actionGeometry(action).center()))

    def _click_action(self, menu: QMenu) -> None:
        actions: list[QAction] = [one for one in menu.actions() if one.isEnabled() and not one.isSeparator()]
        if actions:
            at = menu.actionGeometry(self.dice.choice(actions)).center()
            self.move(menu, at)
            self.click(menu, at)

    def _take_from_shelf(self) -> None:
        """Take hold of a crop; what follows drags it out."""
        area = self.window.shelf.list.viewport()
        if area.isVisible():
            self.click(self.window, self._in_widget(area, self.window), holds=True)

    def _drag_block(self) -> None:
        """Press, move and let go as somebody does who knows the drawing."""
        self.click(self.window, self.on_canvas(), holds=True)
        for _step in range(self.dice.randint(1, 4)):
            if self.held is not None:
                self._drag()
        if self.held is not None and self.dice.random() < 0.9:
            self._release()

    def _drag(self) -> None:
        assert self.held is not None
        window = self.held[0]
        at = self.on_canvas() if window is self.window.windowHandle() else QPoint(
            self.dice.randrange(max(1, window.width())), self.dice.randrange(max(1, window.height()))
        )  # fmt: skip
        if QRect(QPoint(), window.size()).contains(at):
            held = self.dice.choice(HELD) if self.dice.random() < 0.2 else _NONE
            QTest.mouseEvent(Act.MouseMove, window, Button.NoButton, held, at)

    def _release(self) -> None:
        assert self.held is not None
        (window, button), self.held = self.held, None
        at = self.on_canvas() if window is self.window.windowHandle() else QPoint(3, 3)
        if not QRect(QPoint(), window.size()).contains(at):
            at = QPoint(0, 0)
        QTest.mouseEvent(Act.MouseRelease, window, button, _NONE, at)

    def fill(self, part: QWidget) -> None:
        """Type something into a field of a window or a part of it, or choose another thing in a choice."""
        kinds, top = (QLineEdit, QComboBox, QAbstractItemView), part.window()
        fields = [one for one in part.findChildren(QWidget) if isinstance(one, kinds) and _can_be_used(one, top)]
        if not fields:
            self.press(top, self.on_any(top))
            return
        field = self.dice.choice(fields)
        self.click(top, self._in_widget(field, top))
        if isinstance(field, QLineEdit) or (isinstance(field, QComboBox) and field.isEditable()):
            self._type(self.dice.choice(TYPED if self.dice.random() < 0.5 else SOUND))
            if self.dice.random() < 0.6:
                self.key(self.dice.choice((Qt.Key.Key_Return, Qt.Key.Key_Tab, Qt.Key.Key_Escape)))

    def _type(self, words: str) -> None:
        """Write over what stands in the field that has the keyboard; words of other scripts come as they are."""
        window, field = QApplication.focusWindow(), QApplication.focusWidget()
        if window is None or field is None:
            return
        if self.dice.random() < 0.8:
            QTest.keyClick(window, Qt.Key.Key_A, Keys.ControlModifier)
        QApplication.sendEvent(field, QKeyEvent(QEvent.Type.KeyPress, 0, _NONE, words))

    def _press_button(self, dialog: QWidget) -> None:
        """Press a button of a dialog, more often one of those at its foot."""
        every = [one for one in dialog.findChildren(QAbstractButton) if _can_be_used(one, dialog)]
        foot = [one for one in every if isinstance(one.parent(), QDialogButtonBox | EndButtons)]
        buttons = foot if foot and self.dice.random() < 0.5 else every
        if buttons:
            self.click(dialog, self._in_widget(self.dice.choice(buttons), dialog))

    def resize(self, top: QWidget) -> None:
        """Give a window another size."""
        most = QSize(1800, 1100)
        size = QSize(self.dice.randint(300, most.width()), self.dice.randint(250, most.height()))
        top.resize(size)

    def turn(self) -> None:
        """Let the system go to light or dark."""
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.styleHints().colorSchemeChanged.emit(self.dice.choice((Qt.ColorScheme.Dark, Qt.ColorScheme.Light)))


def _is_inside(top: QWidget, at: QPoint) -> bool:
    return top.isVisible() and top.rect().contains(at)


def _can_be_used(part: QWidget, top: QWidget) -> bool:
    return part.isVisible() and part.isEnabled() and part.window() is top
