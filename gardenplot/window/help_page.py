"""The help page in a window of its own: from order to sheet, with the keys as they are set now."""

import re

from PySide6.QtCore import QEvent, QSize, QUrl
from PySide6.QtGui import QKeySequence, QShortcut, QTextCharFormat, QTextCursor, QTextDocument
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLineEdit, QTextBrowser, QVBoxLayout, QWidget

from gardenplot.drawing.style import Ink
from gardenplot.files import resource
from gardenplot.window.action import key_words
from gardenplot.window.plain import PlainLabel
from gardenplot.window.registry import Registry
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.window.theme import colour, palette
from gardenplot.words import _

_NAMED = re.compile(r"\{([a-z.-]+)\}")
"""An action on the page, by its id: {bed.add}."""
_DOES = "do"


class HelpPage(QDialog):
    """Stays open beside the work; a click on an action's name does it."""

    def __init__(self, registry: Registry, parent: QWidget) -> None:
        super().__init__(parent)
        self._registry = registry
        self.setWindowTitle(_("From order to sheet"))
        self.page, self.wanted, self.told = QTextBrowser(), QLineEdit(), PlainLabel()
        self.page.setOpenLinks(False)
        self.page.setAccessibleName(_("From order to sheet"))
        self.wanted.setPlaceholderText(_("Find on this page"))
        self.wanted.setAccessibleName(_("Find on this page"))
        self.wanted.setClearButtonEnabled(True)
        row, column = QHBoxLayout(), QVBoxLayout(self)
        row.addWidget(self.wanted, 1)
        row.addWidget(self.told)
        column.addLayout(row)
        column.addWidget(self.page)
        self.page.document().setDocumentMargin(16)
        self.page.anchorClicked.connect(self._follow)
        self.wanted.textChanged.connect(self._find_first)
        self.wanted.returnPressed.connect(self._find_next)
        QShortcut(QKeySequence(QKeySequence.StandardKey.Find), self).activated.connect(self._begin_to_find)
        registry.keys_changed.connect(self.refresh)
        self.refresh()
        self.page.setFocus()
        wanted = QSize(self.fontMetrics().averageCharWidth() * 100, self.fontMetrics().height() * 42)
        self.resize(wanted.boundedTo(room_on_screen(self) * 0.94))

    def refresh(self) -> None:
        """Show the page with the keys as they are."""
        text = resource("help/page.md").read_text(encoding="utf-8")
        self.page.setMarkdown(_NAMED.sub(lambda found: linked(self._registry, found[1]), text))
        underline_links(self.page.document())

    def changeEvent(self, event: QEvent) -> None:
        """The links are written anew in the ink of a light or a dark screen."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self.refresh()

    def _follow(self, link: QUrl) -> None:
        """Do what was clicked, or say why it cannot be done now."""
        action = self._registry.actions.get(link.path())
        if link.scheme() != _DOES or action is None:
            return
        self.told.setText(action.why_not())
        if not action.why_not():
            self._registry.window.activateWindow()
            self._registry.made(action.id).trigger()

    def _begin_to_find(self) -> None:
        self.wanted.setFocus()
        self.wanted.selectAll()

    def _find_first(self) -> None:
        self.page.moveCursor(QTextCursor.MoveOperation.Start)
        self._find_next()

    def _find_next(self) -> None:
        """Go to the next place, from the end on to the first one."""
        words = self.wanted.text()
        found = not words or self.page.find(words)
        if not found:
            self.page.moveCursor(QTextCursor.MoveOperation.Start)
            found = self.page.find(words, QTextDocument.FindFlag(0))
        self.told.setText("" if found else _("not on this page"))


def underline_links(page: QTextDocument) -> None:
    """Draw links in ink with a line under them, so that they are told from words without colour."""
    for start, end in _links(page):
        cursor = QTextCursor(page)
        cursor.setPosition(start)
        cursor.setPosition(end, QTextCursor.MoveMode.KeepAnchor)
        cursor.mergeCharFormat(_link())


def _links(page: QTextDocument) -> list[tuple[int, int]]:
    """Where links begin and end."""
    found, block = [], page.begin()
    while block.isValid():
        part = block.begin()
        while not part.atEnd():
            fragment = part.fragment()
            if fragment.charFormat().isAnchor():
                found.append((fragment.position(), fragment.position() + fragment.length()))
            part += 1
        block = block.next()
    return found


def _link() -> QTextCharFormat:
    made = QTextCharFormat()
    made.setFontUnderline(True)
    made.setForeground(colour(palette(), Ink.INK))
    return made


def linked(registry: Registry, action: str) -> str:
    """An action as its menu, its name and its keys, linked to what it does."""
    named, keys = registry.actions[action], key_words(registry.keys(action))
    path = f"[{registry.path_of(action)} ▸ {named.name}]({_DOES}:{action})"
    return f"{path} ({keys})" if keys else path
