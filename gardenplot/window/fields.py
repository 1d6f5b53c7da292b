"""Fields that are typed into: each shows a value, passes finished text on, and says at the field what is wrong."""

from collections.abc import Callable, Sequence
from functools import cached_property

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent, QKeySequence, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import (
    QComboBox,
    QGridLayout,
    QLabel,
    QStyle,
    QStyleOptionComboBox,
    QStylePainter,
    QVBoxLayout,
    QWidget,
)

from gardenplot.drawing.style import Ink
from gardenplot.errors import GardenplotError
from gardenplot.window.plain import PlainLabel, as_is
from gardenplot.window.script import runs
from gardenplot.window.theme import magnified, write_in
from gardenplot.window.weekday_line import FieldLabel, WeekdayLine

LARGE = 1.4
"""From this magnification on fields stand one by one."""
_FIELD = 1
"""The place of a field in its cell, below its label."""


class Typed(WeekdayLine):
    """A line that keeps what it shows until another text is finished; Escape brings it back."""

    def __init__(self, finished: Callable[[str], None], parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._shown = self._wrong = ""
        self._finished = finished
        self.lay_below: Callable[[QLabel], object] = QLabel.hide
        """Finds room for the complaint; until then it has none."""
        self.editingFinished.connect(self._finish)

    @cached_property
    def complaint(self) -> QLabel:
        """The words of what is wrong, made when something is."""
        label = PlainLabel("", self)
        label.setVisible(False)
        label.setWordWrap(True)
        write_in(label, Ink.ACCENT)
        self.lay_below(label)
        return label

    def show_value(self, text: str) -> None:
        """Show a value of the plan, unless it is shown already; a complaint is over then."""
        if text == self._shown == self.text() and not self._wrong:
            return
        self._shown = text
        self.setText(text)
        self.setCursorPosition(0)
        if self.hasFocus():
            # What is typed next takes the place of this, as when the field was come to by Tab.
            self.selectAll()
        self.complain("")

    def event(self, event: QEvent) -> bool:
        """The keys for undo are the plan's while nothing is typed here, and the text's while something is."""
        if (
            event.type() is QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and self.text() == self._shown
        ):
            keys = QKeySequence.StandardKey
            if event.matches(keys.Undo) or event.matches(keys.Redo):
                event.ignore()
                return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and (self.text() != self._shown or self._wrong):
            self.show_value(self._shown)
            return
        super().keyPressEvent(event)

    def _finish(self) -> None:
        if self.text() == self._shown:
            self.complain("")
            return
        try:
            self._finished(self.text().strip())
        except GardenplotError as error:
            self.complain(error.says)
        else:
            self.complain("")

    def complain(self, words: str) -> None:
        """Say what is wrong with the text; nothing ends a complaint."""
        if words == self._wrong:
            return
        self._wrong = words
        self.complaint.setText(words)
        self.complaint.setVisible(bool(words))
        self.setProperty("wrong", bool(words))
        self.setAccessibleDescription(self.described())
        self.style().unpolish(self)
        self.style().polish(self)

    def described(self) -> str:
        return self._wrong or super().described()


class Steady(QComboBox):
    """A choice that leaves the wheel to what it stands in: who scrolls a panel past it does not mean to choose.

    Nor does the keyboard go to it then, where Qt would have what is typed next end up in it.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.ignore()


class Choice(Steady):
    """A choice of a few; where the chosen words have no room, their end is left out and the tip tells all of them."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._offered: list[tuple[str, object]] = []

    def offer(self, offered: Sequence[tuple[str, object]], chosen: object) -> None:
        """Offer words, each with what it stands for, and show those for what is chosen, if it is offered.

        The same as before are not laid out anew.
        """
        if self._offered != list(offered):
            self._offered = list(offered)
            self.clear()
            for words, value in offered:
                self.addItem(words, value)
        self.setCurrentIndex(next((at for at, one in enumerate(offered) if one[1] == chosen), -1))

    def take_what_there_is(self) -> None:
        """Ask for no more width than a few letters need, however long its words are."""
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(4)

    def paintEvent(self, _event: QPaintEvent) -> None:
        option, part = QStyleOptionComboBox(), QStyle.SubControl.SC_ComboBoxEditField
        self.initStyleOption(option)
        room = self.style().subControlRect(QStyle.ComplexControl.CC_ComboBox, option, part, self).width() - 4
        words = option.currentText
        option.currentText = option.fontMetrics.elidedText(words, Qt.TextElideMode.ElideRight, room)
        self.setToolTip(as_is(words) if option.currentText != words else "")
        painter = QStylePainter(self)
        painter.setLayoutDirection(runs(words))
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
        painter.end()


class Hints(dict[str, QLabel]):
    """The lines below fields, by their names, each made when it is first asked for."""

    def __init__(self, make: Callable[[str], QLabel]) -> None:
        super().__init__()
        self._make = make

    def __missing__(self, name: str) -> QLabel:
        self[name] = self._make(name)
        return self[name]


class Form(QWidget):
    """Fields, each with its label above and a quiet hint or a complaint below; choices fill the width.

    They stand two by two, or one by one where the system's text is large.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(10)
        self._grid.setVerticalSpacing(6)
        self._columns = 2 if magnified() < LARGE else 1
        for column in range(self._columns):
            self._grid.setColumnStretch(column, 1)
        self._cells: list[tuple[str, QVBoxLayout, int]] = []
        self._hidden: set[str] = set()
        self._taken = 0
        self.fields: dict[str, Typed] = {}
        self.hints = Hints(self._hint)
        self._labels: dict[str, QLabel] = {}

    def show_cell(self, name: str, shown: bool) -> None:
        """Show or hide a field with its label; those behind it move up."""
        label = self._labels[name]
        label.setVisible(shown)
        field = label.buddy()
        if field is not None:
            field.setVisible(shown)
        if shown == (name in self._hidden):
            self._hidden ^= {name}
            self._flow()
            self.hint(name, self.hints[name].text())

    def add_typed(
        self, name: str, label: str, finished: Callable[[str], None], *, empty: str = "", wide: bool = False
    ) -> Typed:
        """A line for a value; the words `empty` stand in it in grey while it is."""
        field = Typed(finished, self)
        field.stand_empty(empty)
        field.setMinimumWidth(56)
        self.fields[name] = field
        cell = self._add(name, label, field, 2 if wide else 1)
        # The stretch stays at the bottom.
        field.lay_below = lambda complaint: cell.insertWidget(cell.count() - 1, complaint)
        return field

    def add_choice(self, name: str, label: str, chosen: Callable[[int], None]) -> Choice:
        """A choice of a few."""
        box = Choice(self)
        box.activated.connect(chosen)
        box.take_what_there_is()
        self._add(name, label, box, 2)
        return box

    def add_across(self, *parts: QWidget) -> None:
        """Parts that take the whole width, below one another: the heading of a section, a line of words."""
        column = QVBoxLayout()
        column.setSpacing(2)
        for part in parts:
            column.addWidget(part)
        self._place("", column, self._columns)

    def call(self, name: str, label: str) -> None:
        """Give a field another label."""
        self._labels[name].setText(label)
        field = self._labels[name].buddy()
        if field is not None:
            field.setAccessibleName(label)

    def hint(self, name: str, words: str) -> None:
        """The quiet words below a field, hidden with it."""
        if words or name in self.hints:
            self.hints[name].setText(words)
            self.hints[name].setVisible(bool(words) and name not in self._hidden)

    def _hint(self, name: str) -> QLabel:
        """An empty line below a field."""
        hint = _quiet(PlainLabel("", self))
        hint.setVisible(False)
        cell = next(cell for known, cell, _columns in self._cells if known == name)
        cell.insertWidget(_FIELD + 1, hint)
        return hint

    def _add(self, name: str, label: str, field: QWidget, columns: int) -> QVBoxLayout:
        words = self._labels[name] = _quiet(FieldLabel(label, self))
        words.setBuddy(field)
        if isinstance(field, WeekdayLine):
            field.textChanged.connect(words.update)
        field.setObjectName(name)
        field.setAccessibleName(label)
        cell = QVBoxLayout()
        cell.setSpacing(2)
        for part in (words, field):
            cell.addWidget(part)
        cell.addStretch(1)
        self._place(name, cell, min(columns, self._columns))
        return cell

    def _place(self, name: str, cell: QVBoxLayout, columns: int) -> None:
        self._cells.append((name, cell, columns))
        self._lay(cell, columns)

    def _lay(self, cell: QVBoxLayout, columns: int) -> None:
        """Lay a cell behind those that are laid; a wide one begins a row of its own."""
        self._taken += self._taken % columns
        self._grid.addLayout(cell, *divmod(self._taken, self._columns), 1, columns)
        self._taken += columns

    def _flow(self) -> None:
        """Lay the cells that are shown one behind another, without holes."""
        for _name, cell, _columns in self._cells:
            self._grid.removeItem(cell)
            cell.setParent(None)
        self._taken = 0
        hidden = [one for one in self._cells if one[0] in self._hidden]
        for _name, cell, columns in (*(one for one in self._cells if one not in hidden), *hidden):
            self._lay(cell, columns)


def labelled(form: Form) -> list[tuple[str, QWidget]]:
    """The fields of a form that are shown, in their order, each with its label."""
    cells = ((form._labels[name].text(), form._labels[name].buddy()) for name, _cell, _columns in form._cells if name)
    return [(label, field) for label, field in cells if field is not None and not field.isHidden()]


def _quiet(label: QLabel) -> QLabel:
    write_in(label, Ink.SECOND)
    label.setWordWrap(True)
    return label
