"""How a number came about: the formula in words and in figures, down to what was typed, and how far to trust it."""

from PySide6.QtCore import QSize
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QVBoxLayout, QWidget

from gardenplot.drawing.number_words import Line
from gardenplot.drawing.style import Ink
from gardenplot.window.plain import PlainLabel
from gardenplot.window.tables import Table, TableRow
from gardenplot.window.theme import magnified, widget_font, write_in
from gardenplot.words import _

_COLUMNS = (_("number"), _("value"), _("in figures"), _("formula"), _("from"), _("trust"))
_WEAK = _("Weak numbers hang on a guess: the night, the soil and the season decide. They are told as a range.")
_WIDTH, _HEIGHT = 780, 440


class WorkingDialog(QDialog):
    """Numbers and all that went into them, each below what came of it; read it, copy it, close it."""

    def __init__(self, title: str, lines: tuple[Line, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(_("How it came about: {what}").format(what=title))
        self.lines = lines
        head = PlainLabel(title)
        head.setFont(widget_font(17, bold=True))
        head.setWordWrap(True)
        self.table = Table(_("How it came about"), _COLUMNS)
        self.table.show_rows([TableRow(_cells(line), bold=not line.depth) for line in self.lines])
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        self.copy = buttons.addButton(_("Copy"), QDialogButtonBox.ButtonRole.ActionRole)
        self.copy.clicked.connect(self._copy)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        column.addWidget(head)
        column.addWidget(self.table, 1)
        if any(line.is_weak for line in lines):
            words = PlainLabel(_WEAK)
            words.setWordWrap(True)
            write_in(words, Ink.SECOND)
            column.addWidget(words)
        column.addWidget(buttons)
        self.resize(QSize(round(_WIDTH * magnified()), _HEIGHT).boundedTo(self.screen().availableSize()))
        self.table.setFocus()

    def _copy(self) -> None:
        """All lines as text, to paste into a letter or a table."""
        QGuiApplication.clipboard().setText("\n".join("\t".join(_cells(line)) for line in self.lines))


def _cells(line: Line) -> tuple[str, ...]:
    return (f"{'   ' * line.depth}{line.name}", line.value, line.sum, line.formula, line.source, line.trust)
