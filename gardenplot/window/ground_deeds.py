"""What the menus do with the ground: tunnels, paths, covers, and which layers are shown."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QMenu

from gardenplot.drawing import cover_words
from gardenplot.drawing.covers import Layer
from gardenplot.gestures import cover_typed
from gardenplot.plan import Cover, Tunnel, Walk
from gardenplot.plan.edits import remove_cover, remove_path, remove_tunnel
from gardenplot.window.late import ask_cover, ask_path, ask_tunnel
from gardenplot.window.menus import fill_with
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow

LAYERS = {
    Layer.COVERS: _("&Covers and hoops"),
    Layer.DRIP_LINES: _("&Drip lines"),
    Layer.JUGS: _("&Water jugs"),
    Layer.OBSTACLES: _("&Posts and obstacles"),
    Layer.RESERVED: _("&Reserved places"),
    Layer.LEFTOVER: _("&Leftover"),
}
Entry = tuple[str, Callable[[], object]]


class GroundDeeds:
    """What is done to the ground and to covers."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self._document, self._sight = window.document, window.sight

    def add_tunnel(self) -> None:
        """Ask for a tunnel and show it on the ground."""
        if ask_tunnel(self._document, self._window):
            self._window.views.show_ground(True)

    def add_path(self) -> None:
        """Ask for a path and show it on the ground."""
        if ask_path(self._document, self._window):
            self._window.views.show_ground(True)

    def cover_block(self) -> None:
        """Ask for a cover over the selected block, or over the selected bed."""
        if self._sight.bed is None:
            self._window.tell(_("Choose a block or a bed first."))
            return
        ask_cover(
            self._document,
            self._window,
            cover_typed.usual_cover(self._document.plan, self._sight.bed, self._sight.planting),
        )

    def fill_strips(self, menu: QMenu) -> None:
        """Fill a menu with what can be done to each tunnel and path of the plan."""
        plan = self._document.plan
        entries: list[Entry] = []
        for tunnel in plan.tunnels:
            entries += self._entries(tunnel.name, partial(ask_tunnel, self._document, self._window, tunnel), tunnel)
        for path in plan.paths:
            entries += self._entries(path.name, partial(ask_path, self._document, self._window, path), path)
        fill_with(menu, entries)

    def fill_covers(self, menu: QMenu) -> None:
        """Fill a menu with what can be done to each cover of the selected bed, or of all beds."""
        plan = self._document.plan
        entries: list[Entry] = []
        for cover in plan.covers:
            if self._sight.bed in (None, cover.bed):
                asks = partial(ask_cover, self._document, self._window, cover)
                entries += self._entries(cover_words.cover_words(plan, cover), asks, cover)
        fill_with(menu, entries)

    def _entries(self, name: str, asks: Callable[[], object], part: Tunnel | Walk | Cover) -> list[Entry]:
        words = name.replace("&", "&&")
        return [
            (_("Change {name} …").format(name=words), asks),
            (_("Remove {name}").format(name=words), partial(self._remove, name, part)),
        ]

    def _remove(self, name: str, part: Tunnel | Walk | Cover) -> None:
        plan = self._document.plan
        match part:
            case Tunnel():
                after = remove_tunnel(plan, part.id)
            case Walk():
                after = remove_path(plan, part.id)
            case _:
                after = remove_cover(plan, part.id)
        self._document.change(_("Remove {name}").format(name=name), after)
