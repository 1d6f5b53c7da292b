"""How a number came about: its sum in figures down to what was typed, and of each its formula, source and trust."""

from PySide6.QtCore import QSize
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QPushButton, QVBoxLayout, QWidget

from gardenplot.drawing.number_words import Line
from gardenplot.drawing.style import Ink
from gardenplot.drawing.trust_words import WEAK
from gardenplot.window.end_buttons import EndButtons
from gardenplot.window.plain import PlainLabel
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.window.tables import Table, TableRow
from gardenplot.window.theme import magnified, widget_font, write_in
from gardenplot.words import _

_COLUMNS = (_("number"), _("value"), _("how"))
_WIDTH, _HEIGHT = 780, 440
_LINES = 3
"""Lines below the table that tell of the row that is chosen; there is room for them always, so that nothing jumps."""


class WorkingDialog(QDialog):
    """Numbers and all that went into them, each below what came of it; read it, copy it, close it.

    What is too long to stand beside its number, the formula in words and where it comes from, is told of the row that
    is chosen.
    """

    def __init__(self, title: str, lines: tuple[Line, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(_("How it came about: {what}").format(what=title))
        self.lines = lines
        head = PlainLabel(title)
        head.setFont(widget_font(17, bold=True))
        self.table = Table(_("How it came about"), _COLUMNS)
        self.table.show_rows([TableRow(_shown(line), line, bold=not line.depth) for line in self.lines])
        self.told = PlainLabel()
        write_in(self.told, Ink.SECOND)
        self.told.setMinimumHeight(_LINES * self.told.fontMetrics().lineSpacing())
        words = PlainLabel(WEAK)
        words.setVisible(any(line.is_weak for line in lines))
        self.copy, close = QPushButton(_("Copy")), QPushButton(_("Close"))
        self.copy.clicked.connect(self._copy)
        close.clicked.connect(self.reject)
        buttons = EndButtons(self, self.copy, close, accepts=False)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        for part in (head, self.table, self.told, words, buttons):
            if isinstance(part, PlainLabel):
                part.setWordWrap(True)
            column.addWidget(part, 1 if part is self.table else 0)
        self.table.currentItemChanged.connect(self._tell)
        first = self.table.topLevelItem(0)
        if first is not None:
            self.table.setCurrentItem(first)
        self.resize(QSize(round(_WIDTH * magnified()), _HEIGHT).boundedTo(room_on_screen(self)))
        self.table.setFocus()

    def _tell(self) -> None:
        """Tell all of the chosen number."""
        line = self.table.key_of(self.table.currentItem())
        if isinstance(line, Line):
            words = _details(line)
            self.told.setText(words)
            self.table.setAccessibleDescription(words)

    def _copy(self) -> None:
        """All lines as text, to paste into a letter or a table."""
        QGuiApplication.clipboard().setText("\n".join("\t".join(_cells(line)) for line in self.lines))


def _indented(line: Line) -> str:
    return f"{'   ' * line.depth}{line.name}"


def _shown(line: Line) -> tuple[str, ...]:
    """A number that was worked out beside its sum, one that was put in beside where it comes from."""
    return _indented(line), line.value, line.sum or line.formula or line.source


def _details(line: Line) -> str:
    """The formula in words, where it comes from, and how far to trust it."""
    equals = _("{name} = {formula}").format(name=line.name, formula=line.formula) if line.formula else line.name
    return "\n".join((equals, _("{source} · to trust: {trust}").format(source=line.source, trust=line.trust)))


def _cells(line: Line) -> tuple[str, ...]:
    return (_indented(line), line.value, line.sum, line.formula, line.source, line.trust)
