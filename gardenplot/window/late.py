"""What the window loads late, slow to load and not wanted at once: dialogs, pages, panels that are out of sight."""

from collections.abc import Callable
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

from PySide6.QtWidgets import QWidget

from gardenplot.drawing import number_words
from gardenplot.findings.today import is_past
from gardenplot.plan import Cover, Crop, Feed, Jugs, Plan, Tunnel, Walk
from gardenplot.window.document import Document
from gardenplot.window.registry import Registry
from gardenplot.window.sight import Sight

if TYPE_CHECKING:
    from gardenplot.drawing.opened import Opened
    from gardenplot.drawing.shopping_list import ShopGroup
    from gardenplot.filling.ways_out import Lack
    from gardenplot.gestures.stage import Gesture, Stage
    from gardenplot.supplies.shopping import Item
    from gardenplot.window.again_dialog import AgainDialog
    from gardenplot.window.ask import Accept, Ask
    from gardenplot.window.bed_panel import BedPanel
    from gardenplot.window.canvas import Canvas
    from gardenplot.window.canvas_stage import CanvasStage
    from gardenplot.window.fill_dialog import FillDialog
    from gardenplot.window.ground_view import GroundView
    from gardenplot.window.help_page import HelpPage
    from gardenplot.window.journal import Journal
    from gardenplot.window.main import MainWindow
    from gardenplot.window.planting_panel import PlantingPanel
    from gardenplot.window.prints import Print
    from gardenplot.window.season_maps import SeasonMaps
    from gardenplot.window.ways_dialog import WaysDialog


def _late(module: str, name: str) -> Callable[..., Any]:
    """Something of a module of the window, which is loaded by now."""
    return cast(Callable[..., Any], getattr(import_module(f"gardenplot.window.{module}"), name))


def bed_panel(document: Document, parent: QWidget) -> "BedPanel":
    """The panel of a selected bed."""
    return cast("BedPanel", _late("bed_panel", "BedPanel")(document, parent))


def planting_panel(document: Document, parent: QWidget) -> "PlantingPanel":
    """The panel of a selected planting."""
    return cast("PlantingPanel", _late("planting_panel", "PlantingPanel")(document, parent))


def ground_view(document: Document, sight: Sight, canvas: "Canvas") -> "GroundView":
    """The drawing of the ground."""
    return cast("GroundView", _late("ground_view", "GroundView")(document, sight, canvas.layers))


def season_maps(document: Document, sight: Sight, canvas: "Canvas") -> "SeasonMaps":
    """The season maps, of one bed and of all."""
    return cast("SeasonMaps", _late("season_maps", "SeasonMaps")(document, sight, canvas))


def fill_gaps(stage: "Stage", crop: Crop | None, first: tuple[str, int] | None) -> "Gesture":
    """The gesture that fills gaps with what is wished for."""
    return cast("Gesture", import_module("gardenplot.gestures.gap_filled").fill_gaps(stage, crop, first))


def ask(title: str, asks: "tuple[Ask, ...]", accept: "Accept", does: str, note: str, parent: QWidget) -> None:
    """Ask in a dialog; `does` are the words of the button that accepts."""
    _late("forms", "AskDialog")(title, asks, accept, does, note=note, parent=parent).exec()


def ask_new_plan(document: Document, parent: QWidget) -> bool:
    """Ask four things and begin a new plan."""
    return cast(bool, _late("new_plan", "ask_new_plan")(document, parent))


def ask_bed(document: Document, parent: QWidget) -> bool:
    """Ask for a bed and add it."""
    return cast(bool, _late("requests", "ask_bed")(document, parent))


def ask_crop(document: Document, parent: QWidget, crop: str | None = None) -> bool:
    """Ask for a crop as its packet reads, or for changes to one of the plan."""
    return cast(bool, _late("requests", "ask_crop")(document, parent, crop))


def ask_order(document: Document, parent: QWidget, order: str | None = None) -> bool:
    """Ask for an order, or for changes to one of the plan."""
    return cast(bool, _late("requests", "ask_order")(document, parent, order))


def ask_wish(document: Document, parent: QWidget, wish: str | None = None, crop: Crop | None = None) -> bool:
    """Ask for a wish, perhaps for a crop that is chosen, or for changes to one of the plan."""
    return cast(bool, _late("requests", "ask_wish")(document, parent, wish, crop))


def fill_dialog(document: Document, stage: "CanvasStage", parent: QWidget) -> "FillDialog":
    """The dialog that fills the season, not shown yet."""
    return cast("FillDialog", _late("fill_dialog", "FillDialog")(document, stage, parent))


def ask_good(document: Document, parent: QWidget, item: "Item") -> bool:
    """Ask what is in store of a thing on the list, and how it is sold."""
    return cast(bool, _late("supply_requests", "ask_good")(document, parent, item))


def ask_feed(document: Document, parent: QWidget, feed: Feed | None = None, beds: tuple[str, ...] = ()) -> bool:
    """Ask what beds are given, or for changes to it."""
    return cast(bool, _late("supply_requests", "ask_feed")(document, parent, feed, beds))


def ask_jugs(document: Document, parent: QWidget, jugs: Jugs) -> bool:
    """Ask for water jugs as they are proposed, or for changes to some of the plan."""
    return cast(bool, _late("supply_requests", "ask_jugs")(document, parent, jugs))


def show_numbers(plan: Plan, opened: "Opened", parent: QWidget) -> None:
    """Show how numbers of a plan came about."""
    lines = tuple(number_words.workings_of(opened.numbers, plan.place.units, plan.place.money))
    _late("working_dialog", "WorkingDialog")(opened.title, lines, parent).exec()


def made_list(groups: "tuple[ShopGroup, ...]") -> bytes:
    """What to buy and carry, as a table of text."""
    return cast(bytes, import_module("gardenplot.exports.shopping_csv").write_list(groups))


def lacks_of(document: Document) -> "tuple[Lack, ...]":
    """What the orders of a plan lack on market days to come, or on all of a plan that is past."""
    plan, today = document.plan, document.today()
    found = import_module("gardenplot.filling.ways_out").lacks(plan, None if is_past(plan, today) else today)
    return cast("tuple[Lack, ...]", found)


def ways_dialog(
    document: Document, canvas: "Canvas", sight: Sight, parent: QWidget, lacks: "tuple[Lack, ...]", number: int
) -> "WaysDialog":
    """The dialog of the ways out of what does not fit, at one of the lacks, not shown yet."""
    made = _late("ways_dialog", "WaysDialog")(document, canvas, sight, parent, lacks, number)
    return cast("WaysDialog", made)


def again_dialog(
    document: Document, canvas: "Canvas", sight: Sight, parent: QWidget, plantings: tuple[str | None, ...],
    only: str | None,
) -> "AgainDialog":  # fmt: skip
    """The dialog that plans again, at the first of some plantings that deviates, perhaps with one ticked alone."""
    wanted = _late("deviations", "Wanted")(plantings, only)
    return cast("AgainDialog", _late("again_dialog", "AgainDialog")(document, canvas, sight, parent, wanted))


def ask_tunnel(document: Document, parent: QWidget, tunnel: Tunnel | None = None) -> bool:
    """Ask for a tunnel, or for changes to one of the plan."""
    return cast(bool, _late("ground_requests", "ask_tunnel")(document, parent, tunnel))


def ask_path(document: Document, parent: QWidget, path: Walk | None = None) -> bool:
    """Ask for a path, or for changes to one of the plan."""
    return cast(bool, _late("ground_requests", "ask_path")(document, parent, path))


def ask_cover(document: Document, parent: QWidget, cover: Cover) -> bool:
    """Ask for a cover as it is proposed, or for changes to one of the plan."""
    return cast(bool, _late("ground_requests", "ask_cover")(document, parent, cover))


def compare_layouts(document: Document, planting: str, parent: QWidget) -> bool:
    """Show candidates for a planting and plant the one that is taken."""
    return cast(bool, _late("compare_dialog", "compare_layouts")(document, planting, parent))


def preview(plan: Plan, name: str, asked: "Print", parent: QWidget) -> None:
    """Show sheets in a dialog; raises PlanError where there is nothing to print."""
    _late("preview", "preview")(plan, name, asked, parent)


def made_drawing(plan: Plan, path: Path, parent: QWidget) -> bytes | None:
    """What a file of that name holds, None where making it was stopped; raises GardenplotError."""
    made = _late("drawing_made", "made_drawing")(plan, path, parent)
    return cast(bytes | None, made)


def made_calendar(plan: Plan, name: str, parent: QWidget) -> bytes | None:
    """The dates as a calendar file, None where making it was stopped; raises PlanError."""
    made = _late("drawing_made", "made_calendar")(plan, name, parent)
    return cast(bytes | None, made)


def show_versions(document: Document, path: Path, parent: QWidget, *, damaged: bool = False) -> Plan | None:
    """Show the earlier versions of a file in a dialog; the plan of one that is to be opened."""
    shown = _late("versions_dialog", "show_versions")(document, path, parent, damaged=damaged)
    return cast(Plan | None, shown)


def offer_left_work(window: "MainWindow", journal: "Journal") -> None:
    """Offer work that an earlier session left unsaved."""
    _late("left_work", "offer_left_work")(window, journal)


def help_page(registry: Registry, parent: QWidget) -> "HelpPage":
    """The help page, not shown yet."""
    return cast("HelpPage", _late("help_page", "HelpPage")(registry, parent))


def change_keys(registry: Registry, parent: QWidget) -> None:
    """Show all actions with their keys in a dialog, to change them."""
    _late("keys_page", "KeysPage")(registry, parent).exec()
