"""What the menus do with supplies: the list, how its numbers came about, stores, feeds and water jugs."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog

from gardenplot.drawing import opened, shopping_list
from gardenplot.errors import GardenplotError
from gardenplot.plan.file import file_name, write_whole
from gardenplot.supplies import shopping
from gardenplot.window.late import ask_good, made_list, show_numbers
from gardenplot.window.questions import warn
from gardenplot.window.reasons import NO_BED
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.drawing.shopping_list import ShopGroup
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
        plan = self._document.plan
        if isinstance(item, shopping.Item):
            show_numbers(plan, opened.of_item(plan, item), self._window)
        elif item is not None and item == self._page.groups:
            show_numbers(plan, opened.of_cost(plan, self._page.groups), self._window)
        else:
            self._window.tell(CHOOSE_THING)

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
        QGuiApplication.clipboard().setText(shopping_list.list_text(self._groups()))
        self._window.tell(_("The list is on the clipboard."))

    def _groups(self) -> "tuple[ShopGroup, ...]":
        """The list as the page asks for it, also while another table is in front."""
        return shopping_list.shop_groups(self._document.plan, self._page.asked())

    def why_nothing_chosen(self) -> str:
        """Why nothing can be done to a thing of the list."""
        return "" if self._page.current() is not None else CHOOSE_THING

    def why_no_list(self) -> str:
        """Why there is no list."""
        return "" if self._document.plan.beds else NO_BED
