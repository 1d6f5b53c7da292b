"""What the menus do with what beds are fed and with the water jugs that stand round blocks."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QMenu

from gardenplot.gestures import supply_typed
from gardenplot.plan import Feed, Jugs, bed_of
from gardenplot.plan.goods_edits import remove_supply
from gardenplot.window.late import ask_feed, ask_jugs
from gardenplot.window.menus import fill_with
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow


class FeedDeeds:
    """What is given to beds, and jugs."""

    def __init__(self, window: "MainWindow") -> None:
        self._window, self._document = window, window.document

    def feed(self) -> None:
        """Ask what the selected bed is given, or all beds where none is selected."""
        bed = self._window.sight.bed
        ask_feed(self._document, self._window, None, (bed,) if bed else ())

    def jugs(self) -> None:
        """Ask for water jugs round the selected block or bed."""
        bed = self._window.sight.bed
        if bed is None:
            self._window.tell(_("Choose a block or a bed first."))
            return
        ask_jugs(
            self._document,
            self._window,
            supply_typed.usual_jugs(self._document.plan, bed, self._window.sight.planting),
        )

    def fill_supplies(self, menu: QMenu) -> None:
        """Fill a menu with what can be done to each feed and to all jugs of the plan."""
        plan, window = self._document.plan, self._window
        entries: list[tuple[str, Callable[[], object]]] = []
        for feed in plan.feeds:
            name = feed.name or _("compost")
            entries += self._entries(name, partial(ask_feed, self._document, window, feed), feed)
        for jugs in plan.jugs:
            name = _("jugs in {bed}").format(bed=bed_of(plan, jugs.bed).name)
            entries += self._entries(name, partial(ask_jugs, self._document, window, jugs), jugs)
        fill_with(menu, entries)

    def _entries(
        self, name: str, asks: Callable[[], object], part: Feed | Jugs
    ) -> list[tuple[str, Callable[[], object]]]:
        words = name.replace("&", "&&")
        return [
            (_("Change {name} …").format(name=words), asks),
            (_("Remove {name}").format(name=words), partial(self._remove, name, part)),
        ]

    def _remove(self, name: str, part: Feed | Jugs) -> None:
        self._document.change(_("Remove {name}").format(name=name), remove_supply(self._document.plan, part))
