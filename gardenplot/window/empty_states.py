"""Where there is nothing yet: words that say so, and the actions that begin, in its place."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QAbstractItemView, QHBoxLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from gardenplot.plan import Plan, crop_of
from gardenplot.window.action import plain
from gardenplot.window.plain import PlainLabel
from gardenplot.window.registry import Registry
from gardenplot.window.theme import widget_font
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow

_MOST_OF_A_NAME = 40
_FOOT = 90
"""Pixels, with text of the usual size, that the words at the foot of the drawing take."""


class EmptyState(QWidget):
    """Lies over all of another widget, or along its foot, while `wanted` says so."""

    def __init__(
        self,
        over: QWidget,
        words: Callable[[], str],
        buttons: Sequence[QPushButton],
        wanted: Callable[[], bool],
        *,
        at_foot: bool = False,
    ) -> None:
        super().__init__(over)
        self._over, self._words, self._wanted, self._at_foot = over, words, wanted, at_foot
        self.label = PlainLabel()
        self.label.setWordWrap(True)
        self.label.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.label.setForegroundRole(self.palette().ColorRole.PlaceholderText)
        self.label.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        self.setAutoFillBackground(True)
        self.setBackgroundRole(self.palette().ColorRole.Base)
        self.setCursor(Qt.CursorShape.ArrowCursor)
        column = QVBoxLayout(self)
        column.setSpacing(12 if buttons else 0)
        column.setContentsMargins(8, 2, 8, 2)
        column.addStretch(1)
        column.addWidget(self.label)
        if buttons:
            column.addLayout(_in_a_row(buttons))
        column.addStretch(1)
        over.installEventFilter(self)
        self.refresh()

    def refresh(self) -> None:
        """Show or hide it, with the words that are right now."""
        wanted = self._wanted()
        if wanted:
            self.label.setText(self._words())
            self._settle()
        self.setVisible(wanted)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep to what it lies over."""
        if watched is self._over and event.type() == QEvent.Type.Resize:
            self.refresh()
        return super().eventFilter(watched, event)

    def _settle(self) -> None:
        room = self._over.rect()
        if self._at_foot:
            room.setTop(room.bottom() - self.sizeHint().height())
        self.setGeometry(room)


def _in_a_row(buttons: Sequence[QPushButton]) -> QHBoxLayout:
    row = QHBoxLayout()
    row.addStretch(1)
    for button in buttons:
        row.addWidget(button)
    row.addStretch(1)
    return row


def show_what_to_begin_with(window: "MainWindow") -> None:
    """Give the drawing, the shelf and the tables of a window their empty states."""
    _over_drawing(window)
    _over_shelf(window)
    _over_tables(window)


def _over_drawing(window: "MainWindow") -> None:
    registry, canvas, document = window.registry, window.canvas, window.document
    begin = [action_button(registry, one) for one in ("bed.add", "file.new", "bed.trace")]
    begin[0].setProperty("strong", True)
    no_bed = EmptyState(
        canvas.viewport(),
        lambda: _("No bed yet. Add one by its length and width, or answer four questions for a whole plan."),
        begin,
        lambda: not document.plan.beds and not canvas.view.has_ground,
    )
    no_bed.label.setFont(widget_font(17))
    no_crop = EmptyState(
        canvas.viewport(),
        lambda: _what_to_drag(document.plan),
        [action_button(registry, one) for one in ("edit.find-crop", "order.add")],
        lambda: bool(document.plan.beds) and not document.plan.plantings and _has_room(window),
        at_foot=True,
    )
    for state in (no_bed, no_crop):
        for signal in (document.changed, document.opened, canvas.stage.ground_wanted, canvas.stage.shown):
            signal.connect(state.refresh)


def _what_to_drag(plan: Plan) -> str:
    """What to drag on a bed first: where there is an order, its crop."""
    if not plan.orders:
        return _("Nothing is planted yet. Drag a crop from the shelf on a bed, or choose one and press Enter.")
    crop = crop_of(plan, plan.orders[0].crop).name[:_MOST_OF_A_NAME]
    words = _(
        "Nothing is planted yet. Drag {crop} from the shelf on a bed: it becomes as long as its order asks for."
    )
    return words.format(crop=crop)


def _has_room(window: "MainWindow") -> bool:
    """Whether the foot of the drawing is free, and nothing is carried over it."""
    view = window.canvas.view
    return window.canvas.stage.trial is None and view.origin[1] + view.strips().height + _FOOT < view.size[1]


def _over_shelf(window: "MainWindow") -> None:
    shelf = window.shelf
    all_crops = QPushButton(_("All crops"))
    all_crops.clicked.connect(shelf.search.clear)
    state = EmptyState(
        shelf.list.viewport(),
        lambda: _("No crop is called “{text}”.").format(text=shelf.search.text()[:_MOST_OF_A_NAME]),
        [all_crops],
        lambda: not shelf.model.crops,
    )
    shelf.model.modelReset.connect(state.refresh)
    shelf.search.textChanged.connect(state.refresh)


def _over_tables(window: "MainWindow") -> None:
    ledger, registry = window.ledger, window.registry
    _over_table(
        ledger.supplies.table,
        lambda: _("Nothing is needed: what to raise, buy and carry will stand here."),
        [action_button(registry, "edit.find-crop")],
    )
    _over_table(
        ledger.crops,
        lambda: _("Nothing is planted yet: the plants of each crop will be counted here."),
        [action_button(registry, "edit.find-crop")],
    )
    _over_table(
        ledger.orders,
        lambda: _("No order yet. An order says how many of which crop are wanted for which market day."),
        [],
    )
    _over_table(
        ledger.wishes.table,
        lambda: _("No wish yet: crops for free ground."),
        [],
    )
    _over_table(ledger.dates, lambda: _no_dates(window), [])
    _over_table(ledger.findings, lambda: _nothing_found(window), [action_button(registry, "sheets.bed")])


def _no_dates(window: "MainWindow") -> str:
    if window.document.plan.plantings:
        return _("No day is known yet: give a planting an order, or type the day on which it goes into the ground.")
    return _("Nothing is planted yet: what is to be done in which week will be told here.")


def _nothing_found(window: "MainWindow") -> str:
    if window.document.plan.plantings:
        return _("No finding: all that is planted fits.")
    return _("Nothing is planted yet: what does not fit, or falls short of an order, will be told here.")


def _over_table(table: QAbstractItemView, words: Callable[[], str], buttons: Sequence[QPushButton]) -> None:
    model = table.model()
    state = EmptyState(table.viewport(), words, buttons, lambda: model.rowCount() == 0)
    for signal in (model.rowsInserted, model.rowsRemoved, model.modelReset):
        signal.connect(state.refresh)


def action_button(registry: Registry, action: str) -> QPushButton:
    """A button for an action of the menus, enabled as that is."""
    button = QPushButton(plain(registry.made(action).text()))
    registry.tie(button, action)
    return button
