"""The one window: shelf, drawing, what is selected, ledger, and the lines above and below."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QCloseEvent, QKeyEvent
from PySide6.QtWidgets import QApplication, QMainWindow, QMenu, QVBoxLayout, QWidget

from gardenplot.drawing.strips import Under
from gardenplot.drawing.tables import summary
from gardenplot.drawing.tape_words import under_words
from gardenplot.window.actions import all_menus
from gardenplot.window.again_deeds import AgainDeeds
from gardenplot.window.block_deeds import BlockDeeds
from gardenplot.window.canvas import Canvas
from gardenplot.window.deeds import BedDeeds, PlantingDeeds, SheetDeeds
from gardenplot.window.document import Document
from gardenplot.window.elided import Elided
from gardenplot.window.empty_states import show_what_to_begin_with
from gardenplot.window.feed_deeds import FeedDeeds
from gardenplot.window.filing import Filing
from gardenplot.window.focus_in_sight import keep_focus_in_sight
from gardenplot.window.gap_deeds import GapDeeds
from gardenplot.window.ground_deeds import GroundDeeds
from gardenplot.window.header import Header
from gardenplot.window.in_question import offer_answers
from gardenplot.window.index import Index
from gardenplot.window.inspector import Inspector
from gardenplot.window.keeps_still import KeepsStill
from gardenplot.window.late import ask_new_plan, season_maps
from gardenplot.window.ledger import Ledger
from gardenplot.window.menus import context_menu, fill_menus
from gardenplot.window.number_deeds import NumberDeeds
from gardenplot.window.pages import Pages
from gardenplot.window.panels import LEAST_WIDTH, Panels
from gardenplot.window.registry import Registry
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.window.series_deeds import SeriesDeeds
from gardenplot.window.shape_deeds import ShapeDeeds
from gardenplot.window.shelf import Shelf
from gardenplot.window.sight import Sight
from gardenplot.window.steps import Steps
from gardenplot.window.supply_deeds import SupplyDeeds
from gardenplot.window.tray_deeds import TrayDeeds
from gardenplot.window.views import Views
from gardenplot.window.waiting import Waiting
from gardenplot.window.ways_deeds import WaysDeeds
from gardenplot.window.wish_deeds import WishDeeds
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.drawing.ground_under import OnGround
    from gardenplot.window.planting_panel import PlantingPanel
    from gardenplot.window.season_maps import SeasonMaps
    from gardenplot.window.season_panel import SeasonPanel

_TELL_FOR = 8000
_USUAL_SIZE, _LEAST_SIZE = QSize(1440, 900), QSize(LEAST_WIDTH, 700)
"""How large the window opens on a screen that has room for it, and on any."""


class MainWindow(QMainWindow):
    """Puts the parts together; each works with the document and with what is in sight."""

    def __init__(self) -> None:
        super().__init__()
        self.document = Document(self)
        # What was said of the plan before is over; first of all, since others have something to say of the change.
        self.document.changed.connect(lambda: self.statusBar().clearMessage())
        self.sight = Sight(self.document, self)
        self.filing = Filing(self.document, self)
        self.header = Header(self.document, self.sight)
        self.canvas = Canvas(self.document, self.sight)
        self.views = Views(self.document, self.sight, self.canvas)
        self.shelf = Shelf(self.document)
        self.inspector = Inspector(self.document, self.sight)
        self.ledger = Ledger(self.document, self.sight)
        self._season = Waiting(_("Season map"), lambda: season_maps(self.document, self.sight, self.canvas))
        self.beds, self.plantings, self.sheets = BedDeeds(self), PlantingDeeds(self), SheetDeeds(self)
        self.shapes, self.ground, self.blocks = ShapeDeeds(self), GroundDeeds(self), BlockDeeds(self)
        self.trays, self.series, self.gaps = TrayDeeds(self), SeriesDeeds(self), GapDeeds(self)
        self.wishes, self.supplies, self.feeds = WishDeeds(self), SupplyDeeds(self), FeedDeeds(self)
        self.ways, self.again = WaysDeeds(self), AgainDeeds(self)
        self.steps = Steps(self.document)
        self.index, self.pages = Index(self), Pages(self)
        self.panels = Panels(self)
        self.docks = self.panels.docks
        self._lay_out()
        self.numbers = NumberDeeds(self)
        self.registry = Registry(all_menus(self), self)
        _tie_buttons(self)
        fill_menus(self)
        self._join()
        show_what_to_begin_with(self)
        screen = room_on_screen(self)
        self.resize(_USUAL_SIZE.boundedTo(screen.expandedTo(_LEAST_SIZE)))
        self.panels.restore()
        app = QApplication.instance()
        if isinstance(app, QApplication):
            keep_focus_in_sight(app)
        self.canvas.setFocus()

    @property
    def season_maps(self) -> "SeasonMaps":
        """The panel of the season."""
        return self._season.part

    @property
    def season(self) -> "SeasonPanel":
        """The season map of one bed."""
        return self.season_maps.panel

    def _lay_out(self) -> None:
        centre = QWidget()
        column = QVBoxLayout(centre)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.header)
        column.addWidget(self.views, 1)
        self.setCentralWidget(centre)
        left, right = Qt.DockWidgetArea.LeftDockWidgetArea, Qt.DockWidgetArea.RightDockWidgetArea
        self.setCorner(Qt.Corner.BottomLeftCorner, left)
        self.setCorner(Qt.Corner.BottomRightCorner, right)
        self.panels.add("shelf", _("Shelf"), self.shelf, left)
        self.panels.add("selected", _("What is selected"), self.inspector, right)
        below = Qt.DockWidgetArea.BottomDockWidgetArea
        ledger = self.panels.add("ledger", _("Counts, orders, findings"), self.ledger, below)
        self._season.made_with(self.panels.add("season", _("Season map"), self._season, below, behind=ledger))
        self.panels.add("steps", _("Steps"), self.steps, right, shown=False)
        self.pointed, self.total, self.scale = Elided(), Elided(), Elided()
        for label in (self.pointed, self.total, self.scale):
            label.setContentsMargins(8, 0, 8, 0)
        self.statusBar().addWidget(KeepsStill(self.pointed), 1)
        self.statusBar().addPermanentWidget(self.total)
        self.statusBar().addPermanentWidget(self.scale)

    def _join(self) -> None:
        """Connect the parts that must know of one another."""

        def point(found: "Under | OnGround | None") -> None:
            self.pointed.setText(under_words(self.document.plan, found) if found else "")

        self.canvas.hand.pointed.connect(point)
        self.views.pointed.connect(point)
        self.document.opened.connect(lambda: self.sight.begin(self.document.plan))
        self.document.changed.connect(self._show_state)
        self.document.saved.connect(self._show_state)
        self.canvas.view.changed.connect(self._show_scale)
        self.canvas.hand.told.connect(self.tell)
        self.canvas.stage.refused.connect(self.tell)
        self.canvas.menu_wanted.connect(lambda at: self._context_menu().exec(at))
        self.views.ground_looked.connect(self._show_scale)
        self.views.turned.connect(self._show_scale)
        self.views.refused.connect(self.tell)
        self.views.menu_wanted.connect(lambda at: self._context_menu().exec(at))
        self.shelf.list.chosen.connect(self.plantings.place)
        self.shelf.from_packet.clicked.connect(self.plantings.new_crop)
        self.inspector.planting_made.connect(lambda panel: _tie(self.registry, panel))
        self.inspector.bed_made.connect(lambda panel: self.registry.tie(panel.again, "planting.again"))
        self.ledger.order_wanted.connect(self.plantings.edit_order)
        self.ledger.shown.connect(self.plantings.show_finding)
        self.filing.told.connect(self.tell)
        for signal in (
            self.document.opened,
            self.document.stack.indexChanged,
            self.sight.selected,
            self.views.turned,
            self.shelf.list.selectionModel().currentChanged,
            self.shelf.model.modelReset,
            *self.ledger.chosen,
        ):
            # What can be done now may have changed.
            signal.connect(self.registry.refresh)

    def tell(self, words: str) -> None:
        """Say something at the foot of the window, for a while."""
        self.statusBar().showMessage(words, _TELL_FOR)

    def new_plan(self) -> None:
        """Ask for a new plan, if the one that is open may be left."""
        if self.filing.may_leave() and ask_new_plan(self.document, self):
            for planting in self.document.plan.plantings:
                self.sight.select(planting.bed, planting.id)
            self.canvas.setFocus()

    def closeEvent(self, event: QCloseEvent) -> None:
        if not self.filing.may_leave():
            event.ignore()
            return
        self.panels.keep()
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that nobody took: those of an action that cannot be done now are told the reason."""
        reason = self.registry.answer(event)
        if reason is None:
            super().keyPressEvent(event)
        elif reason:
            self.tell(reason)

    def _show_state(self) -> None:
        self.setWindowTitle(_("{name}[*] – Gardenplot").format(name=self.document.name))
        self.setWindowModified(not self.document.is_saved)
        self.total.setText(summary(self.document.plan))

    def _show_scale(self) -> None:
        self.scale.setText(self.views.scale_words(self.logicalDpiX()))

    def _context_menu(self) -> QMenu:
        """The menu of what lies under the pointer: planting or bed."""
        self.registry.refresh()
        return context_menu(self.registry, "planting" if self.sight.planting else "bed", self)


def _tie_buttons(window: MainWindow) -> None:
    """Buttons that do what an action does."""
    ledger, tie = window.ledger, window.registry.tie
    tie(window.header.sheet, "sheets.bed")
    tie(ledger.remove_order, "order.remove")
    tie(ledger.wishes.remove, "wish.remove")
    tie(ledger.wishes.fill, "wish.fill")
    tie(ledger.supplies.working, "supply.working")
    tie(ledger.supplies.store, "supply.store")
    offer_answers(ledger, window.registry)


def _tie(registry: Registry, panel: "PlantingPanel") -> None:
    """Let the buttons of a planting's panel do what they say."""
    registry.tie(panel.compare, "planting.compare")
    registry.tie(panel.leave, "planting.leave-series")
    registry.tie(panel.again, "planting.again")
