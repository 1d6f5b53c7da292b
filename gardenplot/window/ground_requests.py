"""What the menus ask for through dialogs about the ground and its covers: tunnels, paths, hoops and cloth."""

from collections.abc import Callable, Mapping

from attrs import frozen
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.cautions import COVERS, FILM, TUNNELS
from gardenplot.drawing.cover_words import SHEETINGS
from gardenplot.errors import GardenplotError
from gardenplot.gestures.cover_typed import cover_texts, with_cover
from gardenplot.gestures.strip_typed import path_example, strip_texts, tunnel_example, with_path, with_tunnel
from gardenplot.plan import Cover, Plan, Tunnel, Walk, bed_of
from gardenplot.window.ask import Ask
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.words import _

Texts = Mapping[str, object]
_TUNNEL_NOTE = _("Distances are measured from the peg of the ground. Before stakes are driven: mind what is buried.")
_COVER_NOTE = _(
    "Put it on an hour before sunset and open it early on a sunny morning: heat under cloth harms sooner than cold. "
    "Weigh the cloth down against wind."
)
_SHEETINGS = tuple((words, sheeting) for sheeting, words in SHEETINGS.items())


def ask_tunnel(document: Document, parent: QWidget, tunnel: Tunnel | None = None) -> bool:
    """Ask for a tunnel, or for changes to one of the plan."""
    texts, example = strip_texts(tunnel) if tunnel else {}, tunnel_example(document.plan.place.units)
    asks = (
        Ask("name", _("Name"), texts.get("name", _("Tunnel {number}").format(number=len(document.plan.tunnels) + 1))),
        *_sizes(texts, example),
        Ask("cold_edge", _("Cold edge"), texts.get("cold_edge", ""), example["cold_edge"]),
    )
    title = _("Add a tunnel") if tunnel is None else _("Tunnel {name}").format(name=tunnel.name)
    dialog = _Words(title, _("Add tunnel") if tunnel is None else _("Change tunnel"), f"{_TUNNEL_NOTE} {TUNNELS}")
    return _ask(document, parent, dialog, asks, lambda plan, typed: with_tunnel(plan, tunnel, typed))


def ask_path(document: Document, parent: QWidget, path: Walk | None = None) -> bool:
    """Ask for a path, or for changes to one of the plan."""
    texts, example = strip_texts(path) if path else {}, path_example(document.plan.place.units)
    name = texts.get("name", _("Path {number}").format(number=len(document.plan.paths) + 1))
    asks = (Ask("name", _("Name"), name), *_sizes(texts, example))
    title = _("Add a path") if path is None else _("Path {name}").format(name=path.name)
    note = _("Between beds all ground is path anyway; this is for one with a name and a width.")
    dialog = _Words(title, _("Add path") if path is None else _("Change path"), note)
    return _ask(document, parent, dialog, asks, lambda plan, typed: with_path(plan, path, typed))


def _sizes(texts: Mapping[str, str], example: Mapping[str, str]) -> tuple[Ask, ...]:
    return (
        Ask("x", _("From the left"), texts.get("x", ""), example["x"]),
        Ask("y", _("From the top"), texts.get("y", ""), example["y"]),
        Ask("length", _("Length"), texts.get("length", ""), example["length"]),
        Ask("width", _("Width"), texts.get("width", ""), example["width"]),
        Ask("turn", _("Turned clockwise"), texts.get("turn", ""), default="0°"),
    )


def ask_cover(document: Document, parent: QWidget, cover: Cover) -> bool:
    """Ask for a cover as it is proposed, or for changes to one of the plan."""
    texts, bed = cover_texts(cover), bed_of(document.plan, cover.bed).name
    asks = (
        Ask("start", _("From"), texts["start"]),
        Ask("end", _("To"), texts["end"]),
        Ask("on", _("On from"), texts["on"], "14 Apr 2027"),
        Ask("off", _("Off by"), texts["off"], "28 May 2027"),
        Ask("hoop_spacing", _("Hoops apart, at most"), texts["hoop_spacing"], default=_("no hoops")),
        Ask("rise", _("Height of the hoops"), texts["rise"], default=_("half-round")),
        Ask("leg", _("Leg in the ground"), texts["leg"], default=_("not known")),
        Ask("sheeting", _("Over them"), choices=_SHEETINGS, chosen=cover.sheeting),
        Ask("apron", _("Cloth beyond each side"), texts["apron"], default=_("not known")),
        Ask("cloth_end", _("Cover beyond each end"), texts["cloth_end"], default=_("not known")),
        Ask("buried", _("Film in the ground"), texts["buried"], default=_("not known")),
        Ask("layers", _("Layers"), texts["layers"], default="1"),
    )
    note = f"{_COVER_NOTE} {COVERS} {FILM}"
    title = _("Cover over {bed}").format(bed=bed)
    dialog = _Words(title, _("Change cover") if cover in document.plan.covers else _("Add cover"), note)
    return _ask(document, parent, dialog, asks, lambda plan, typed: with_cover(plan, cover, typed))


@frozen
class _Words:
    """The title of a dialog, the words of the button that accepts, and a note."""

    title: str
    does: str
    note: str


def _ask(
    document: Document,
    parent: QWidget,
    words: _Words,
    asks: tuple[Ask, ...],
    edit: Callable[[Plan, Mapping[str, str]], Plan],
) -> bool:
    """Ask, and make what was typed one step of undo by the name of the dialog."""

    def take(typed: Texts) -> Mapping[str, str]:
        try:
            document.change(words.title, edit(document.plan, {name: str(text or "") for name, text in typed.items()}))
        except GardenplotError as error:
            return {error.field: error.says}
        return {}

    dialog = AskDialog(words.title, asks, take, words.does, note=words.note, parent=parent)
    return dialog.exec() == AskDialog.DialogCode.Accepted
