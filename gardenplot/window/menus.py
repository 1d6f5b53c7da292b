"""The menus: every action by its words, with its keys."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu

from gardenplot.window.ground_deeds import LAYERS
from gardenplot.window.layers import Layers
from gardenplot.window.recent import examples, recent
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow

Keys = QKeySequence.StandardKey


def fill_menus(window: "MainWindow") -> None:
    """Fill the menu bar of a window."""
    for fill in (_file, _edit, _bed, _planting, _sheets, _view, _help):
        fill(window)


def _act(menu: QMenu, words: str, does: Callable[[], object], keys: QKeySequence | Keys | str = "") -> QAction:
    action = QAction(words, menu)
    action.setShortcut(QKeySequence(keys))
    action.triggered.connect(lambda _checked=False: does())
    menu.addAction(action)
    return action


def _file(window: "MainWindow") -> None:
    menu, filing = window.menuBar().addMenu(_("&File")), window.filing
    _act(menu, _("&New plan …"), window.new_plan, Keys.New)
    _act(menu, _("&Open …"), filing.open_asked, Keys.Open)
    last, samples = menu.addMenu(_("Open &recent")), menu.addMenu(_("Open an &example"))
    last.aboutToShow.connect(lambda: _fill_paths(last, recent(), filing.open_recent))
    samples.aboutToShow.connect(lambda: _fill_paths(samples, examples(), filing.open_example))
    menu.addSeparator()
    _act(menu, _("&Save"), filing.save, Keys.Save)
    _act(menu, _("Save &as …"), filing.save_as, QKeySequence("Ctrl+Shift+S"))
    menu.addSeparator()
    _act(menu, _("&Quit"), window.close, QKeySequence("Ctrl+Q"))


def _fill_paths(menu: QMenu, paths: list[Path], opens: Callable[[Path], object]) -> None:
    menu.clear()
    for path in paths:
        _act(menu, path.stem, partial(opens, path))
    if not paths:
        menu.addAction(_("none yet")).setEnabled(False)


def _edit(window: "MainWindow") -> None:
    menu, stack = window.menuBar().addMenu(_("&Edit")), window.document.stack
    undo, redo = stack.createUndoAction(menu, _("Undo")), stack.createRedoAction(menu, _("Redo"))
    undo.setShortcut(QKeySequence(Keys.Undo))
    redo.setShortcuts([QKeySequence("Ctrl+Shift+Z"), QKeySequence("Ctrl+Y")])
    menu.addAction(undo)
    menu.addAction(redo)
    menu.addSeparator()
    _act(menu, _("Edit what is &selected"), window.inspector.focus, QKeySequence("F2"))
    _act(menu, _("&Find a crop"), window.shelf.search.setFocus, Keys.Find)
    _act(menu, _("Go to the &drawing"), window.views.take_keys, QKeySequence("F6"))


def _bed(window: "MainWindow") -> None:
    menu = window.menuBar().addMenu(_("&Bed"))
    _act(menu, _("&Add bed …"), window.beds.add_bed, QKeySequence("Ctrl+B"))
    _act(menu, _("&Copy bed"), window.beds.copy_bed, QKeySequence("Ctrl+D"))
    _act(menu, _("&Remove bed"), window.beds.remove_bed)
    menu.addSeparator()
    _act(menu, _("R&eshape the outline"), window.shapes.reshape)
    _act(menu, _("&Trace a bed …"), window.shapes.trace)
    _act(menu, _("&Place a post"), window.shapes.place_post)
    menu.addSeparator()
    _act(menu, _("Add a t&unnel …"), window.ground.add_tunnel)
    _act(menu, _("Add a pat&h …"), window.ground.add_path)
    strips = menu.addMenu(_("Tunne&ls and paths"))
    strips.aboutToShow.connect(lambda: window.ground.fill_strips(strips))
    menu.addSeparator()
    _act(menu, _("Choose the &bed of what is selected"), window.beds.choose_bed, QKeySequence("Ctrl+Up"))
    _act(menu, _("&Next bed"), window.beds.next_bed, QKeySequence("Ctrl+Down"))


def _planting(window: "MainWindow") -> None:
    menu = window.menuBar().addMenu(_("&Planting"))
    _act(
        menu, _("&Place the shelf's crop in the bed"), window.plantings.place_from_shelf, QKeySequence("Ctrl+Return")
    )
    _act(menu, _("Crop from a &seed packet …"), window.plantings.new_crop, QKeySequence("Ctrl+K"))
    _act(menu, _("Edit the &crop …"), window.plantings.edit_crop)
    _act(menu, _("Compare &layouts …"), window.plantings.compare_layouts, QKeySequence("Ctrl+L"))
    menu.addSeparator()
    _act(menu, _("&Remove planting"), window.plantings.remove_planting)
    menu.addSeparator()
    _act(menu, _("Co&ver this block at night …"), window.ground.cover_block, QKeySequence("Ctrl+T"))
    covers = menu.addMenu(_("Cov&ers"))
    covers.aboutToShow.connect(lambda: window.ground.fill_covers(covers))
    menu.addSeparator()
    _act(menu, _("Add &order …"), window.plantings.add_order, QKeySequence("Ctrl+Shift+O"))


def _sheets(window: "MainWindow") -> None:
    menu = window.menuBar().addMenu(_("&Sheets"))
    _act(menu, _("&Bed sheet …"), window.sheets.preview, Keys.Print)
    _act(menu, _("&Drawing as a file …"), window.sheets.export)


def _view(window: "MainWindow") -> None:
    menu, view, views = window.menuBar().addMenu(_("&View")), window.canvas.view, window.views
    _act(menu, _("Zoom &in"), partial(views.zoom, 1.25), QKeySequence("Ctrl+="))
    _act(menu, _("Zoom &out"), partial(views.zoom, 0.8), QKeySequence("Ctrl+-"))
    _act(menu, _("&Whole length"), views.fit, QKeySequence("Ctrl+0"))
    _act(menu, _("&All beds at once"), views.fit_all, QKeySequence("Ctrl+9"))
    _act(menu, _("To the &selection"), views.zoom_to_selection, QKeySequence("Ctrl+E"))
    ground = _act(menu, _("Beds on the &ground"), lambda: None, QKeySequence("Ctrl+G"))
    ground.setCheckable(True)
    ground.toggled.connect(views.show_ground)
    views.turned.connect(ground.setChecked)
    _layers(menu.addMenu(_("La&yers")), window.canvas.layers)
    true_scale = _act(menu, _("&True scale across the beds"), lambda: None)
    true_scale.setCheckable(True)
    true_scale.toggled.connect(view.set_true_scale)
    magnifier = _act(menu, _("&Magnifier at the pointer"), lambda: None, QKeySequence("F8"))
    magnifier.setCheckable(True)
    magnifier.toggled.connect(window.canvas.magnifier.want)
    menu.addSeparator()
    for dock in window.docks:
        menu.addAction(dock.toggleViewAction())


def _layers(menu: QMenu, layers: Layers) -> None:
    """Each layer of the drawing, to show or hide."""
    for layer, words in LAYERS.items():
        action = _act(menu, words, lambda: None)
        action.setCheckable(True)
        action.setChecked(layer in layers.shown)
        action.toggled.connect(partial(layers.show, layer))


def _help(window: "MainWindow") -> None:
    menu = window.menuBar().addMenu(_("&Help"))
    _act(menu, _("How to …"), window.sheets.help, Keys.HelpContents)
