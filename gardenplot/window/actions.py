"""Every action of the window, a line each, in the order of the menus.

An action is `Action(id, words, what it does, keys, why it cannot be done now)`. Its id is what the grower's own keys
are kept under, so it stays. Menus, the index, the page of keys and the help page are made from these lines.
"""

from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDockWidget, QMenu

from gardenplot.gestures import push
from gardenplot.sheets import choices
from gardenplot.window.action import Action, Entry, Keys, Menu, Rule, Submenu
from gardenplot.window.block_deeds import BlockDeeds
from gardenplot.window.ground_deeds import LAYERS
from gardenplot.window.layers import Layers
from gardenplot.window.panel_switch import go_to, switch_of
from gardenplot.window.reasons import Reasons, no_file, no_redo, no_undo, no_wish
from gardenplot.window.recent import examples, recent
from gardenplot.window.wish_deeds import WishDeeds
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow

Entries = Iterator[Entry]


def all_menus(window: "MainWindow") -> tuple[Menu, ...]:
    """The menus of a window with all its actions."""
    why = Reasons(window)
    return (
        Menu("file", _("&File"), tuple(_file(window))),
        Menu("edit", _("&Edit"), tuple(_edit(window, why))),
        Menu("bed", _("&Bed"), tuple(_bed(window, why))),
        Menu("planting", _("&Planting"), tuple(_planting(window, why))),
        Menu("season", _("Se&ason"), tuple(_season(window, why))),
        Menu("supplies", _("S&upplies"), tuple(_supplies(window, why))),
        Menu("sheets", _("&Sheets"), tuple(_sheets(window, why))),
        Menu("view", _("&View"), tuple(_view(window, why))),
        Menu("help", _("&Help"), tuple(_help(window))),
    )


def _file(window: "MainWindow") -> Entries:
    filing = window.filing
    yield Action("file.new", _("&New plan …"), window.new_plan, Keys.New, also=_("begin start first"))
    yield Action("file.open", _("&Open …"), filing.open_asked, Keys.Open, also=_("load plan"))
    yield Submenu(_("Open &recent"), fill=lambda menu: _fill_paths(menu, recent(), filing.open_recent))
    yield Submenu(_("Open an &example"), tuple(_examples(filing.open_example)))
    yield Rule()
    yield Action("file.save", _("&Save"), filing.save, Keys.Save, also=_("keep store"))
    yield Action("file.save-as", _("Save &as …"), filing.save_as, "Ctrl+Shift+S", also=_("keep under another name"))
    also = _("history backup restore bring back old before")
    yield Action(
        "file.versions", _("Earlier &versions …"), filing.versions_asked, "", partial(no_file, window), also=also
    )
    yield Rule()
    yield Action("file.quit", _("&Quit"), window.close, "Ctrl+Q", also=_("close exit leave end"))


def _examples(opens: Callable[[Path], object]) -> Iterator[Action]:
    for path in examples():
        name = path.stem.replace("-", " ").title()
        words = _("example sample to play with")
        yield Action(f"file.example.{path.stem}", name, partial(opens, path), also=words)


def _fill_paths(menu: QMenu, paths: list[Path], opens: Callable[[Path], object]) -> None:
    menu.clear()
    for path in paths:
        menu.addAction(path.stem).triggered.connect(lambda _checked=False, path=path: opens(path))
    if not paths:
        menu.addAction(_("none yet")).setEnabled(False)


def _edit(window: "MainWindow", why: Reasons) -> Entries:
    stack, shelf = window.document.stack, window.shelf
    undo, redo = stack.createUndoAction(window, _("&Undo")), stack.createRedoAction(window, _("&Redo"))
    yield Action(
        "edit.undo", _("&Undo"), stack.undo, Keys.Undo, partial(no_undo, stack), also=_("take back step"), made=undo
    )
    again = ("Ctrl+Shift+Z", "Ctrl+Y")
    yield Action(
        "edit.redo", _("&Redo"), stack.redo, again, partial(no_redo, stack), also=_("again repeat step"), made=redo
    )
    yield Rule()
    yield from _copies(window.blocks, why)
    yield Rule()
    every, also = _("Choose &all of the bed, then of the plan"), _("select several everything")
    yield Action("edit.all", every, window.blocks.choose_all, Keys.SelectAll, why.bed, also=also)
    yield Action(
        "edit.selected", _("Edit what is &selected"), window.inspector.focus, "F2", also=_("type change size")
    )
    yield Action(
        "edit.find-crop", _("&Find a crop"), partial(go_to, shelf.search), Keys.Find, also=_("shelf search seek")
    )
    yield Action(
        "edit.drawing", _("Go to the &drawing"), window.views.take_keys, "F6", also=_("canvas beds keyboard")
    )
    ledger, also = window.ledger, _("table ledger below keyboard")
    yield Action("edit.counts", _("Go to the &counts"), partial(ledger.go_to, ledger.counts), also=also)
    yield Action("edit.orders", _("Go to the &orders"), partial(ledger.go_to, ledger.orders), also=also)
    weeks = _("table ledger below keyboard weeks list what is to be done")
    wishes = partial(ledger.go_to, ledger.wishes.table)
    yield Action("edit.wishes", _("Go to the &wishes"), wishes, also=also)
    yield Action("edit.dates", _("Go to the dat&es"), partial(ledger.go_to, ledger.dates), also=weeks)
    yield Action("edit.findings", _("Go to the findin&gs"), partial(ledger.go_to, ledger.findings), "F7", also=also)


def _copies(blocks: BlockDeeds, why: Reasons) -> Iterator[Action]:
    """Where a grower looks for them, though only plantings are copied so."""
    yield Action("block.copy", _("Cop&y"), blocks.copy, Keys.Copy, why.planting, also=_("duplicate"))
    paste, also = _("Pas&te in the next gap"), _("copy duplicate")
    yield Action("block.paste", paste, blocks.paste, Keys.Paste, blocks.why_no_paste, also=also)


def _bed(window: "MainWindow", why: Reasons) -> Entries:
    beds, shapes, ground = window.beds, window.shapes, window.ground
    yield Action("bed.add", _("&Add bed …"), beds.add_bed, "Ctrl+B", also=_("new make ground plot"))
    yield Action("bed.copy", _("&Copy bed"), beds.copy_bed, "Ctrl+D", why.chosen_bed, also=_("duplicate another"))
    yield Action("bed.remove", _("&Remove bed"), beds.remove_bed, "", why.chosen_bed, also=_("delete take away"))
    yield Rule()
    corners = _("corner shape polygon change")
    yield Action("bed.reshape", _("R&eshape the outline"), shapes.reshape, "", why.chosen_bed, also=corners)
    yield Action("bed.trace", _("&Trace a bed …"), shapes.trace, also=_("draw outline new shape"))
    obstacle = _("obstacle stake tap pole")
    yield Action("bed.post", _("&Place a post"), shapes.place_post, "", why.chosen_bed, also=obstacle)
    yield Rule()
    fill, also = _("&Fill gaps with wishes"), _("best blocks leftover free ground orders crop now")
    yield Action("bed.fill-gaps", fill, window.gaps.fill, "Ctrl+Shift+G", partial(no_wish, window), also=also)
    yield Rule()
    tunnel, also = _("Add a t&unnel …"), _("polytunnel house cover new")
    yield Action("bed.tunnel", tunnel, ground.add_tunnel, also=also)
    yield Action("bed.path", _("Add a pat&h …"), ground.add_path, also=_("way walk new"))
    yield Submenu(_("Tunne&ls and paths"), fill=ground.fill_strips)
    yield Rule()
    choose = _("Choose the &bed of what is selected")
    yield Action("bed.choose", choose, beds.choose_bed, "Ctrl+Up", why.bed, also=_("select"))
    yield Action("bed.next", _("&Next bed"), beds.next_bed, "Ctrl+Down", why.bed, also=_("select another"))


def _planting(window: "MainWindow", why: Reasons) -> Entries:
    deeds, ground = window.plantings, window.ground
    place, also = _("&Place the shelf's crop in the bed"), _("plant set sow add block")
    yield Action("planting.place", place, deeds.place_from_shelf, "Ctrl+Return", why.shelf_crop, also=also)
    free, also = _("Place it when the ground is &free"), _("following later next crop set sow add block shelf")
    wait = partial(deeds.place_from_shelf, waits=True)
    yield Action("planting.place-later", free, wait, "Ctrl+Shift+Return", why.shelf_crop, also=also)
    packet, also = _("Crop from a &seed packet …"), _("new own variety enter")
    yield Action("planting.packet", packet, deeds.new_crop, "Ctrl+K", also=also)
    edit, also = _("Edit the &crop …"), _("change packet spacing days")
    yield Action("planting.crop", edit, deeds.edit_crop, "", why.planting, also=also)
    compare, also = _("Compare layo&uts …"), _("pattern rows staggered triangular spacing side by side")
    yield Action("planting.compare", compare, deeds.compare_layouts, "Ctrl+L", why.layouts, also=also)
    yield Rule()
    yield from _blocks(window.blocks, why)
    harden, also = _("Harden off its trays in a &bed"), _("trays outdoors acclimatise water jugs before setting out")
    yield Action("planting.harden", harden, window.trays.harden, "", why.planting, also=also)
    also = _("succession again every week market days sow follow")
    yield Action("planting.series", _("Repe&at as a series …"), window.series.repeat, "", why.planting, also=also)
    also = _("succession alone by itself take out")
    yield Action("planting.leave-series", _("&Leave the series"), window.series.leave, "", why.series, also=also)
    yield Rule()
    also = _("delete take out block")
    yield Action("planting.remove", _("&Remove planting"), deeds.remove_planting, "", why.planting, also=also)
    yield Rule()
    cover, also = _("Co&ver this block at night …"), _("hoops cloth fleece row cover frost tunnel")
    yield Action("planting.cover", cover, ground.cover_block, "Ctrl+T", why.selection, also=also)
    yield Submenu(_("Cov&ers"), fill=ground.fill_covers)


def _season(window: "MainWindow", why: Reasons) -> Entries:
    """What is wanted of the season, and what is done where it does not fit or does not go as planned."""
    deeds, also = window.plantings, _("market heads bunches wanted customer")
    yield Action("order.add", _("Add &order …"), deeds.add_order, "Ctrl+Shift+O", also=also)
    also = _("delete market chosen")
    yield Action("order.remove", _("Re&move order"), deeds.remove_order, "", why.order, also=also)
    yield from _troubles(window, why)
    yield Rule()
    yield from _wishes(window.wishes, why)


def _wishes(wishes: WishDeeds, why: Reasons) -> Iterator[Action]:
    """What free ground is filled with."""
    fill, also = _("&Fill the season …"), _("free ground wishes orders best propose pack")
    yield Action("wish.fill", fill, wishes.fill, "Ctrl+Shift+F", wishes.why_no_filling, also=also)
    also = _("fill free ground want")
    yield Action("wish.add", _("Add &wish …"), wishes.edit, "Ctrl+I", also=also)
    shelf = _("Wish for the &shelf's crop …")
    yield Action("wish.shelf", shelf, wishes.from_shelf, "Ctrl+Shift+I", why.shelf_crop, also=also)
    yield Action("wish.remove", _("&Remove wish"), wishes.remove, "", wishes.why_no_removal, also=_("delete chosen"))


def _troubles(window: "MainWindow", why: Reasons) -> Iterator[Action]:
    """What is done when something does not fit or does not go as planned."""
    ways, also = _("Ways o&ut of what does not fit …"), _("order short overlap lacks ground closer split another bed")
    yield Action("order.ways", ways, window.ways.open, "Ctrl+Shift+W", window.ways.why_not, also=also)
    again, also = _("Plan a&gain …"), _("stand count germination late bed loss failed short sow again buy in rescue")
    yield Action("planting.again", again, window.again.open, "Ctrl+Shift+A", why.anything_planted, also=also)


def _blocks(blocks: BlockDeeds, why: Reasons) -> Iterator[Action]:
    """What is done to blocks beside their neighbours."""
    swap, also = _("S&wap with the next towards the foot"), _("exchange change places neighbour")
    yield Action("block.swap-foot", swap, lambda: blocks.swap(push.FOOT), "Alt+End", why.planting, also=also)
    swap = _("Swap with the next towards the &head")
    yield Action("block.swap-head", swap, lambda: blocks.swap(push.HEAD), "Alt+Home", why.planting, also=also)
    split, also = _("Spl&it at the pointer or in the middle"), _("cut divide two parts")
    yield Action("block.split", split, blocks.split, "Ctrl+H", why.bed, also=also)
    split = _("Split at a readin&g …")
    yield Action("block.split-at", split, blocks.split_at, "Ctrl+Shift+H", why.planting, also=also)
    join, also = _("&Join with the next towards the foot"), _("merge unite one block")
    yield Action("block.join-foot", join, lambda: blocks.join(push.FOOT), "Ctrl+J", why.planting, also=also)
    join = _("Join with the &next towards the head")
    yield Action("block.join-head", join, lambda: blocks.join(push.HEAD), "Ctrl+Shift+J", why.planting, also=also)


def _supplies(window: "MainWindow", why: Reasons) -> Entries:
    deeds, feeds, ledger = window.supplies, window.feeds, window.ledger
    shop, also = _("Go to the &list"), _("buy shop seed trays hoops cloth carry cost table ledger below")
    yield Action("edit.supplies", shop, partial(ledger.go_to, ledger.supplies.table), "Ctrl+Shift+L", also=also)
    also = _("sum formula explain number trust why")
    working = _("&How it came about …")
    yield Action("supply.working", working, deeds.show_working, "", deeds.why_nothing_chosen, also=also)
    numbers, also = (
        _("&Numbers where the keyboard is …"),
        _("selected sum formula explain trays rows dates working why"),
    )
    yield Action("supply.numbers", numbers, window.numbers.ask, "Ctrl+Shift+N", why.bed, also=also)
    store, also = _("&In store and prices …"), _("stock packets price shop pack germination age")
    yield Action("supply.store", store, deeds.store, "", deeds.why_nothing_chosen, also=also)
    save, also = _("&Save as a table …"), _("export CSV list shopping")
    yield Action("supply.save", save, deeds.save, "", deeds.why_no_list, also=also)
    copy, also = _("&Copy the list"), _("clipboard paste text")
    yield Action("supply.copy", copy, deeds.copy, "", deeds.why_no_list, also=also)
    yield Rule()
    feed, also = _("&Feed the selected bed, or all …"), _("compost manure amendment fertiliser soil")
    yield Action("supply.feed", feed, feeds.feed, "", why.bed, also=also)
    jugs, also = _("&Water jugs round what is selected …"), _("frost night heat harden off")
    yield Action("supply.jugs", jugs, feeds.jugs, "", why.selection, also=also)
    yield Submenu(_("F&eeds and jugs"), fill=feeds.fill_supplies)


def _sheets(window: "MainWindow", why: Reasons) -> Entries:
    sheets, one = window.sheets, window.sheets.one
    also = _("print paper PDF stakes preview")
    yield Action("sheets.bed", _("&Bed sheet …"), lambda: one(choices.Kind.BEDS), Keys.Print, why.bed, also=also)
    also = _("print paper PDF book bind everything set")
    yield Action("sheets.all", _("&All sheets …"), sheets.all, "Ctrl+Shift+P", why.bed, also=also)
    yield Rule()
    also = _("print paper PDF several pages match lines scale large")
    yield Action("sheets.scaled", _("Drawing to &scale …"), lambda: one(choices.Kind.DRAWING), "", why.bed, also=also)
    also = _("print paper PDF true size 1:1 board rake dibble template marks")
    yield Action(
        "sheets.strips", _("Spacing st&rips …"), lambda: one(choices.Kind.STRIPS), "", why.planted, also=also
    )
    also = _("print paper PDF stand boxes tally")
    yield Action("sheets.counts", _("Co&unt sheet …"), lambda: one(choices.Kind.COUNTS), "", why.planted, also=also)
    also = _("print paper PDF stakes trays tags")
    yield Action("sheets.labels", _("&Labels …"), lambda: one(choices.Kind.LABELS), "", why.planted, also=also)
    also = _("print paper PDF stakes moved again marked anew old struck through")
    yield Action("sheets.changed", _("&What changed …"), sheets.changed, "", why.bed, also=also)
    yield Rule()
    also = _("print paper PDF seed trays cells day")
    yield Action("sheets.sowing", _("Sow&ing list …"), lambda: one(choices.Kind.SOWING), "", why.planted, also=also)
    also = _("print paper PDF weeks list what is to be done calendar")
    yield Action("sheets.dates", _("Da&tes sheet …"), lambda: one(choices.Kind.DATES), "", why.planted, also=also)
    also = _("print paper PDF buy seed trays cloth supplies")
    yield Action("sheets.list", _("Sho&pping list …"), lambda: one(choices.Kind.LIST), "", why.bed, also=also)
    also = _("print paper PDF nights covers sunset frost week")
    yield Action("sheets.card", _("Door &card …"), sheets.cards, "", why.cover, also=also)
    also = _("print paper PDF numbers sums formulas proof how it came about")
    yield Action("sheets.workings", _("Wor&kings …"), lambda: one(choices.Kind.WORKINGS), "", why.bed, also=also)
    yield Rule()
    yield from _files(window, why)


def _files(window: "MainWindow", why: Reasons) -> Entries:
    sheets = window.sheets
    also = _("export iCalendar ICS phone dates")
    yield Action("sheets.calendar", _("Calendar &file …"), sheets.calendar, "", why.planted, also=also)
    also = _("export picture SVG DXF PNG CSV")
    yield Action("sheets.drawing", _("&Drawing as a file …"), sheets.export, "", why.bed, also=also)
    also = _("export CSV spreadsheet rows plants")
    yield Action("sheets.table", _("Cou&nts as a table …"), sheets.counts, "", why.planted, also=also)
    also = _("clipboard picture SVG PNG paste")
    yield Action("sheets.copy", _("Cop&y the drawing"), sheets.copy, "", why.bed, also=also)


def _view(window: "MainWindow", why: Reasons) -> Entries:
    view, views = window.canvas.view, window.views
    yield Action("view.in", _("Zoom &in"), partial(views.zoom, 1.25), "Ctrl+=", also=_("larger closer magnify"))
    yield Action("view.out", _("Zoom &out"), partial(views.zoom, 0.8), "Ctrl+-", also=_("smaller farther"))
    yield Action("view.whole", _("&Whole length"), views.fit, "Ctrl+0", also=_("zoom all fit"))
    beds, also = _("&All beds at once"), _("zoom whole plan fit everything")
    yield Action("view.all", beds, views.fit_all, "Ctrl+9", also=also)
    closer, also = _("To the &selection"), _("zoom bed block fit")
    yield Action("view.selection", closer, views.zoom_to_selection, "Ctrl+E", why.selection, also=also)
    measure, also = _("&Measure"), _("distance tape ruler length between two points")
    yield Action("view.measure", measure, window.blocks.measure, "Ctrl+M", why.bed, also=also)
    yield Rule()
    ground, also = _("Beds on the &ground"), _("map tunnel path north where they lie")
    yield Action(
        "view.ground", ground, keys="Ctrl+G", also=also, toggles=views.show_ground, is_on=lambda: views.shows_ground
    )
    yield Submenu(_("La&yers"), tuple(_layers(window.canvas.layers)))
    true, also = _("&True scale across the beds"), _("stretched enlarged width")
    yield Action("view.true-scale", true, also=also, toggles=view.set_true_scale)
    glass, also = _("Magni&fier at the pointer"), _("lens enlarge closer")
    yield Action("view.magnifier", glass, keys="F8", also=also, toggles=window.canvas.magnifier.want)
    yield Rule()
    for dock in window.panels.docks:
        shown = switch_of(dock)
        also = _("panel show hide close open") + f" {_('history undo redo')}" * (dock.objectName() == "steps")
        yield Action(f"view.{dock.objectName()}", dock.windowTitle(), shown.trigger, also=also, made=shown)
    yield Submenu(_("Mo&ve a panel"), tuple(_panels_moved(window)))
    also = _("reset restore dock layout")
    yield Action("view.panels", _("&Panels as at first"), window.panels.as_at_first, also=also)


def _panels_moved(window: "MainWindow") -> Iterator[Action]:
    panels = window.panels
    for dock in panels.docks:
        words, also = _("{panel} to another side").format(panel=dock.windowTitle()), _("panel move dock float")
        moves = partial(_tell_move, window, dock)
        yield Action(f"panel.move.{dock.objectName()}", words, moves, also=also)


def _tell_move(window: "MainWindow", dock: QDockWidget) -> None:
    window.tell(window.panels.move_on(dock))


def _layers(layers: Layers) -> Iterator[Action]:
    for layer, words in LAYERS.items():
        also, show = _("layer show hide"), partial(layers.show, layer)
        yield Action(f"layer.{layer.value}", words, also=also, toggles=show, is_on=partial(layers.shows, layer))


def _help(window: "MainWindow") -> Entries:
    yield Action("help.page", _("&From order to sheet"), window.pages.help, Keys.HelpContents, also=_("how to help"))
    yield Action("help.keys", _("&Keys …"), window.pages.keys, also=_("shortcut keyboard change customise"))
    also = _("search seek find all actions what can be done")
    yield Action("help.index", _("&Index of everything …"), window.index.open, ("F3", "Ctrl+/"), also=also)
