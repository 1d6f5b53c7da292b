"""What the menus do with supplies: the list, how its numbers came about, stores, feeds and water jugs."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog

from gardenplot.drawing.letters import looks
from gardenplot.drawing.number_words import working_lines, workings_of
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.shopping_list import ShopGroup, list_text, shop_groups, what_words
from gardenplot.drawing.supply_words import numbers_of
from gardenplot.errors import GardenplotError
from gardenplot.plan import bed_of
from gardenplot.plan.file import file_name, write_whole
from gardenplot.supplies.shopping import Item
from gardenplot.window.late import ask_good, made_list, show_working
from gardenplot.window.questions import warn
from gardenplot.window.reasons import NO_BED
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow

CHOOSE_THING = _("Choose a thing of the list first, under Supplies.")


class SupplyDeeds:
    """What is done about supplies."""

    def __init__(self, window: "MainWindow") -> None:
        self._window, self._document = window, window.document
        self._page = window.ledger.supplies
        self._page.wanted.connect(self._show)

    def show_working(self) -> None:
        """Show how what is needed of the chosen thing came about."""
        self._show(self._page.current())

    def _show(self, item: object) -> None:
        if not isinstance(item, Item):
            self._window.tell(CHOOSE_THING)
            return
        numbers, place = (item.cost, item.packs, item.lacking, item.needed), self._document.plan.place
        number = next((one for one in numbers if one.value is not None), item.needed)
        lines = tuple(working_lines(number, place.units, place.money))
        show_working(what_words(self._document.plan, item), lines, self._window)

    def numbers(self) -> None:
        """Show how all numbers of the selected planting or bed came about."""
        plan, sight = self._document.plan, self._window.sight
        if sight.bed is None:
            self._window.tell(_("Choose a block or a bed first."))
            return
        found = tuple(workings_of(numbers_of(plan, sight.bed, sight.planting), plan.place.units, plan.place.money))
        if not found:
            self._window.tell(_("It needs nothing that would have to be worked out."))
            return
        what = titled(plan, sight.planting, looks(plan)) if sight.planting else bed_of(plan, sight.bed).name
        show_working(what, found, self._window)

    def store(self) -> None:
        """Ask what is in store of the chosen thing, and how it is sold."""
        item = self._page.current()
        if item is None:
            self._window.tell(CHOOSE_THING)
            return
        ask_good(self._document, self._window, item)

    def save(self) -> None:
        """Ask for a name and save the list as a table."""
        proposed = f"{file_name(self._document.name)}-supplies.csv"
        name, _kind = QFileDialog.getSaveFileName(self._window, _("Save list as"), proposed, _("Tables (*.csv)"))
        if not name:
            return
        path = Path(name)
        path = path if path.suffix else path.with_suffix(".csv")
        try:
            write_whole(path, made_list(self._groups()))
        except GardenplotError as error:
            warn(self._window, _("Save list"), str(error))
            return
        self._window.tell(_("saved as {path}").format(path=path))

    def copy(self) -> None:
        """Copy the list as text, a line a thing."""
        QGuiApplication.clipboard().setText(list_text(self._groups()))
        self._window.tell(_("The list is on the clipboard."))

    def _groups(self) -> tuple[ShopGroup, ...]:
        """The list as the page asks for it, also while another table is in front."""
        return shop_groups(self._document.plan, self._page.asked())

    def why_nothing_chosen(self) -> str:
        """Why nothing can be done to a thing of the list."""
        return "" if self._page.current() is not None else CHOOSE_THING

    def why_no_list(self) -> str:
        """Why there is no list."""
        return "" if self._document.plan.beds else NO_BED
