"""The page of keys: every action with its keys, changed by pressing others, and the keys that stay as they are."""

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QLineEdit,
    QPushButton,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from gardenplot.gestures.sought import Sought, seek
from gardenplot.window.action import Action, key_words
from gardenplot.window.end_buttons import EnterPresses
from gardenplot.window.fixed_keys import fixed_keys, refusal
from gardenplot.window.plain import PlainLabel
from gardenplot.window.registry import Registry
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.words import _

_ID = Qt.ItemDataRole.UserRole
_MODIFIERS = frozenset(
    [Qt.Key.Key_Shift, Qt.Key.Key_Control, Qt.Key.Key_Alt, Qt.Key.Key_Meta, Qt.Key.Key_AltGr, Qt.Key.Key_CapsLock]
)


class KeysTable(QTreeWidget):
    """Lists actions; while it listens, the next keys are told instead of obeyed, and Escape ends the listening."""

    wanted = Signal()
    pressed_keys = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.listens = False
        self.setAccessibleName(_("Actions and their keys; Enter changes the keys of one"))
        self.setHeaderLabels((_("action"), _("menu"), _("keys")))
        self.setRootIsDecorated(False)
        self.setUniformRowHeights(True)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.header().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        self.header().setStretchLastSection(False)
        self.itemDoubleClicked.connect(self.wanted)

    def event(self, event: QEvent) -> bool:
        """Tab is a key like others while it listens."""
        if self.listens and isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            self.keyPressEvent(event)
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if self.listens:
            if key not in _MODIFIERS:
                self.listens = False
                self.pressed_keys.emit(None if key == Qt.Key.Key_Escape else QKeySequence(event.keyCombination()))
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.wanted.emit()
        else:
            super().keyPressEvent(event)


class KeysPage(EnterPresses):
    """A filter, the table, a line that says what happens, and what can be done to the chosen action's keys."""

    def __init__(self, registry: Registry, parent: QWidget) -> None:
        super().__init__(parent)
        self._registry = registry
        self._wished: QKeySequence | None = None
        self.setWindowTitle(_("Keys"))
        self.filter, self.table, self.told = QLineEdit(), KeysTable(), PlainLabel()
        self.filter.setPlaceholderText(_("Words of an action, of its menu, or keys"))
        self.filter.setAccessibleName(_("Find an action"))
        self.filter.setClearButtonEnabled(True)
        self.told.setWordWrap(True)
        self.told.setMinimumHeight(self.fontMetrics().height() * 2)
        self.told.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.change, self.take_over = QPushButton(_("Change …")), QPushButton(_("Take over"))
        self.without, self.reset = QPushButton(_("No keys")), QPushButton(_("As at first"))
        self.reset_all, self.copy = QPushButton(_("All as at first")), QPushButton(_("Copy as text"))
        self._lay_out()
        self.filter.textChanged.connect(self._show_found)
        self.table.wanted.connect(self._listen)
        self.table.pressed_keys.connect(self._take)
        self.table.currentItemChanged.connect(self._choose)
        self.change.clicked.connect(self._listen)
        self.take_over.clicked.connect(lambda: self._give(self._wished))
        self.without.clicked.connect(lambda: self._give(None))
        self.reset.clicked.connect(self._reset)
        self.reset_all.clicked.connect(registry.reset_keys)
        self.copy.clicked.connect(self._copy)
        registry.keys_changed.connect(self._show_found)
        # Rows are as high as they are drawn, and columns as wide, only in a table that knows its style.
        self.table.ensurePolished()
        self._show_found()
        for column in (1, 2):
            self.table.resizeColumnToContents(column)

    def _lay_out(self) -> None:
        column, row, last = QVBoxLayout(self), QHBoxLayout(), QHBoxLayout()
        close = QPushButton(_("Close"))
        close.clicked.connect(self.accept)
        for part in (self.change, self.take_over, self.without, self.reset):
            row.addWidget(part)
        row.addStretch(1)
        for part in (self.reset_all, self.copy):
            last.addWidget(part)
        last.addStretch(1)
        last.addWidget(close)
        for button in self.findChildren(QPushButton):
            button.setAutoDefault(False)
        column.addWidget(self.filter)
        column.addWidget(self.table)
        column.addWidget(self.told)
        column.addLayout(row)
        column.addLayout(last)
        wanted = QSize(self.fontMetrics().averageCharWidth() * 124, self.fontMetrics().height() * 36)
        self.resize(wanted.boundedTo(room_on_screen(self) * 0.94))

    def _chosen(self) -> Action | None:
        item = self.table.currentItem()
        return self._registry.actions.get(item.data(0, _ID)) if item is not None else None

    def _show_found(self) -> None:
        chosen = self._chosen()
        lines = _lines(self._registry)
        found = seek([Sought(f"{name} {keys}", where) for _id, name, where, keys in lines], self.filter.text())
        self.table.clear()
        for number in sorted(found):
            action, *cells = lines[number]
            item = QTreeWidgetItem(cells)
            item.setData(0, _ID, action)
            self.table.addTopLevelItem(item)
            if chosen is not None and action == chosen.id:
                self.table.setCurrentItem(item)
        first = self.table.topLevelItem(0)
        if self.table.currentItem() is None and first is not None:
            self.table.setCurrentItem(first)
        self._choose()

    def _choose(self) -> None:
        """Say what can be done to the chosen line."""
        self.table.listens, self._wished = False, None
        action = self._chosen()
        self.take_over.setVisible(False)
        for button in (self.change, self.without, self.reset):
            button.setEnabled(action is not None)
        if self.table.topLevelItemCount() == 0:
            self.told.setText(_("No action is called that."))
        elif action is None:
            self.told.setText(_("These keys stay as they are."))
        else:
            self.told.setText(_("Enter, or a double click, changes the keys of “{name}”.").format(name=action.name))

    def _listen(self) -> None:
        action = self._chosen()
        if action is None:
            return
        self._choose()
        self.table.setFocus()
        self.table.listens = True
        self.told.setText(_("Press the keys for “{name}”; Escape leaves them.").format(name=action.name))

    def _take(self, keys: QKeySequence | None) -> None:
        """Take the keys that were pressed, or say why not."""
        action = self._chosen()
        if keys is None or action is None:
            self._choose()
            return
        owner, refused = self._registry.owner_of(keys), refusal(keys, self._registry.menus)
        if refused:
            self.told.setText(refused)
        elif owner is not None and owner is not action:
            self._wished = keys
            clash = _("{keys} calls “{other}” already. Take over gives it to “{name}” and leaves the other without.")
            self.told.setText(clash.format(keys=key_words([keys]), other=owner.name, name=action.name))
            self.take_over.setVisible(True)
            self.take_over.setFocus()
        else:
            self._give(keys)

    def _give(self, keys: QKeySequence | None) -> None:
        action = self._chosen()
        if action is not None:
            self._registry.give_keys(action.id, () if keys is None else (keys,))
            self.table.setFocus()
            said = _("“{name}” now has the keys {keys}.") if keys else _("“{name}” now has no keys.")
            self.told.setText(said.format(name=action.name, keys=key_words([keys] if keys else [])))

    def _reset(self) -> None:
        """Give the chosen action its first keys again, unless another has them by now."""
        action = self._chosen()
        if action is None:
            return
        owner = next(
            (one for keys in action.keys if (one := self._registry.owner_of(keys)) not in (None, action)), None
        )
        if owner is None:
            self._registry.give_keys(action.id, action.keys)
            self.told.setText(_("“{name}” has its first keys again.").format(name=action.name))
        else:
            taken = _("“{other}” has the first keys of “{name}” now; change those first.")
            self.told.setText(taken.format(other=owner.name, name=action.name))

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(keys_text(self._registry))
        self.told.setText(_("All actions with their keys were copied as text."))


def _lines(registry: Registry) -> list[tuple[str, str, str, str]]:
    """Id, name, where and keys of all actions, then of the keys that stay."""
    actions = [
        (action.id, action.name, menu.path_of(action), key_words(registry.keys(action.id)))
        for menu in registry.menus
        for action in menu.actions()
    ]
    return [*actions, *(("", one.does, one.where, one.words) for one in fixed_keys())]


def keys_text(registry: Registry) -> str:
    """All actions with their keys as text in columns, to print or to pin up."""
    lines = [(where, name, keys) for _id, name, where, keys in _lines(registry)]
    wide = [max(len(line[column]) for line in lines) for column in (0, 1)]
    return "\n".join(f"{where.ljust(wide[0])}  {name.ljust(wide[1])}  {keys}".rstrip() for where, name, keys in lines)
