"""Dialogs that ask for a few texts: a bed, a crop from its packet, an order, a new plan."""

from functools import partial

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QComboBox,
    QCompleter,
    QFormLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from gardenplot.drawing.style import Ink
from gardenplot.gestures.examples import grey
from gardenplot.window.ask import Accept, Ask
from gardenplot.window.end_buttons import EndButtons
from gardenplot.window.fields import LARGE, Choice, Steady
from gardenplot.window.leave_asked import LeaveAsked
from gardenplot.window.plain import PlainLabel
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.window.theme import magnified, widget_font, write_in
from gardenplot.window.weekday_line import WeekdayLine

_LONG = 7
"""From so many lines on nothing that was typed goes unasked."""
_EDGE = 16
"""Pixels round all that a dialog asks."""


class _Complaint(PlainLabel):
    """The words of what is wrong with a line.

    Where it `hugs` it is as high as its words in its width: a form that is scrolled gives to lines what it has
    reckoned for others, so that some words would be cut and others lie in a hole.
    """

    hugs = False

    def __init__(self) -> None:
        super().__init__()
        self.setWordWrap(True)
        self.setVisible(False)
        write_in(self, Ink.ACCENT)

    def setText(self, words: str) -> None:
        super().setText(words)
        self._hug()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._hug()

    def _hug(self) -> None:
        if self.hugs and self.text():
            # A height that is set is all that a label asks for in any width.
            self.setMinimumHeight(0)
            self.setFixedHeight(self.heightForWidth(self.width()))


class AskDialog(LeaveAsked):
    """Asks, and closes only when `accept_texts` finds nothing wrong.

    `accept_texts` is given the texts and choices by name and gives the words of what is wrong, by name; words for no
    field of the dialog stand at the bottom. `does` are the words of the button that accepts.
    """

    def __init__(
        self,
        title: str,
        asks: tuple[Ask, ...],
        accept_texts: Accept,
        does: str,
        *,
        note: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self._accept_texts = accept_texts
        self.fields: dict[str, QWidget] = {}
        self._complaints: dict[str, _Complaint] = {"": _Complaint()}
        inner = QWidget()
        self._form = form = QFormLayout(inner)
        form.setLabelAlignment(Qt.AlignmentFlag.AlignLeft)
        form.setContentsMargins(0, 0, 0, 0)
        form.setHorizontalSpacing(12)
        if magnified() >= LARGE:
            form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        for ask in asks:
            self._add(form, ask)
        column = QVBoxLayout(self)
        column.setContentsMargins(*(_EDGE,) * 4)
        column.setSpacing(12)
        fields = _scrolled(inner, len(asks))
        column.addWidget(fields)
        if note:
            column.addWidget(_note(note))
        column.addWidget(self._complaints[""])
        column.addWidget(self._buttons(does))
        self.setMinimumWidth(round(420 * min(magnified(), LARGE)))
        self._is_scrolled = fields is not inner
        if self._is_scrolled:
            self._show_all_there_is_room_for(inner, fields)
        self.fields[asks[0].name].setFocus()
        self._begun = {ask.name: self.typed()[ask.name] for ask in asks if ask.is_typed or not ask.choices}

    def _show_all_there_is_room_for(self, inner: QWidget, area: QWidget) -> None:
        """Be as high as all fields are, as far as the screen has room; the rest is scrolled to."""
        for name, label in self._complaints.items():
            label.hugs = bool(name)
        usual, room = self.sizeHint(), room_on_screen(self) * 0.9
        all_of_it = usual.height() - area.sizeHint().height() + inner.sizeHint().height() + 4
        self.resize(usual.expandedTo(QSize(0, all_of_it)).boundedTo(room))

    def _add(self, form: QFormLayout, ask: Ask) -> None:
        field = _named(ask) if ask.is_typed else _choice(ask) if ask.choices else _line(ask)
        field.setObjectName(ask.name)
        field.setAccessibleName(ask.label)
        if ask.group:
            form.addRow(_heading(ask.group))
        self.fields[ask.name] = field
        complaint = self._complaints[ask.name] = _Complaint()
        changed = field.currentTextChanged if isinstance(field, QComboBox) else field.textEdited
        changed.connect(partial(_end, complaint))
        form.addRow(ask.label, field)
        form.addRow("", self._complaints[ask.name])
        form.setRowVisible(self._complaints[ask.name], False)

    def _buttons(self, does: str) -> EndButtons:
        accepts = QPushButton(does)
        accepts.clicked.connect(self._try)
        return EndButtons(self, self.leaves, accepts)

    def show_line(self, name: str, shown: bool) -> None:
        """Ask for a line, or leave it out for now."""
        self._form.setRowVisible(self.fields[name], shown)

    def lost(self) -> int:
        typed = self.typed()
        lines = sum(1 for name, before in self._begun.items() if typed[name] != before)
        return lines if len(self.fields) >= _LONG else 0

    def say(self, words: str) -> None:
        self._complaints[""].setText(words)
        self._complaints[""].setVisible(True)
        self._make_room()

    def call(self, name: str, label: str) -> None:
        """Give a field another label."""
        words, field = self._form.labelForField(self.fields[name]), self.fields[name]
        if isinstance(words, QLabel):
            words.setText(label)
        field.setAccessibleName(label)

    def typed(self) -> dict[str, object]:
        """What was typed and chosen, by name."""
        return {name: _value(field) for name, field in self.fields.items()}

    def _try(self) -> None:
        self.stay()
        told = self._accept_texts(self.typed())
        wrong = {name if name in self.fields else "": words for name, words in told.items()}
        for name, label in self._complaints.items():
            label.setText(wrong.get(name, ""))
            label.setVisible(name in wrong)
            if name:
                self._form.setRowVisible(label, name in wrong)
        self._make_room()
        first = next((name for name in self.fields if name in wrong), None)
        if first is not None:
            self.fields[first].setFocus()
        if not wrong:
            self.accept()

    def _make_room(self) -> None:
        """Grow by what is said outside of what is scrolled, if the screen has room; else all is squeezed."""
        lines = {} if self._is_scrolled else {name: field.width() for name, field in self.fields.items()}
        widths = lines | {"": self.width() - 2 * _EDGE}
        for name, width in widths.items():
            label = self._complaints[name]
            label.setMinimumHeight(0 if label.isHidden() else label.heightForWidth(width))
        if self.minimumSizeHint().height() > room_on_screen(self).height():
            for name in widths:
                self._complaints[name].setMinimumHeight(0)


def _line(ask: Ask) -> QLineEdit:
    line = WeekdayLine(ask.text)
    line.stand_empty(grey(ask.example, ask.default))
    return line


def _choice(ask: Ask) -> QComboBox:
    box = Choice()
    for name, value in ask.choices:
        box.addItem(name, value)
    box.setCurrentIndex(max(0, box.findData(ask.chosen)))
    return box


def _named(ask: Ask) -> QComboBox:
    """A choice that is typed into; any part of a name finds it, and what is no name is for `accept_texts` to tell."""
    box = Steady()
    box.setEditable(True)
    box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
    box.addItems([name for name, _value in ask.choices])
    box.setCurrentIndex(box.findText(ask.text))
    line, names = box.lineEdit(), box.completer()
    if line is not None and names is not None:
        line.setPlaceholderText(grey(ask.example, ask.default))
        names.setFilterMode(Qt.MatchFlag.MatchContains)
        names.setCompletionMode(QCompleter.CompletionMode.PopupCompletion)
    return box


def _value(field: QWidget) -> object:
    if isinstance(field, QComboBox):
        return field.currentText().strip() if field.isEditable() else field.currentData()
    return field.text().strip() if isinstance(field, QLineEdit) else None


def _heading(words: str) -> QLabel:
    label = PlainLabel(words)
    label.setFont(widget_font(15, bold=True))
    label.setContentsMargins(0, 10, 0, 0)
    return label


def _note(words: str) -> QLabel:
    label = PlainLabel(words)
    label.setWordWrap(True)
    label.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
    write_in(label, Ink.SECOND)
    return label


def _end(complaint: QLabel, _text: str) -> None:
    """Say no more of a text that stands there no longer; the room for it stays, so that nothing jumps."""
    complaint.setMinimumHeight(complaint.height())
    complaint.setText("")


def _scrolled(inner: QWidget, asks: int) -> QWidget:
    if asks <= (8 if magnified() < LARGE else 5):
        return inner
    area = QScrollArea()
    area.setWidget(inner)
    area.setWidgetResizable(True)
    bar = area.verticalScrollBar().sizeHint().width()
    area.setMinimumSize(
        inner.minimumSizeHint().width() + bar + 2 * area.frameWidth(), min(430, inner.sizeHint().height() + 4)
    )
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    return area
