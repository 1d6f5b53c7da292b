"""Keys that stay as they are: those of the drawing, of lists and of fields, which no action can be given."""

from attrs import frozen
from PySide6.QtGui import QKeySequence

from gardenplot.window.action import Menu
from gardenplot.words import _


@frozen
class FixedKeys:
    """Keys, as they are written and as they are pressed, what they do where, and further words that find them."""

    words: str
    pressed: tuple[str, ...]
    where: str
    does: str
    also: str = ""


def fixed_keys() -> tuple[FixedKeys, ...]:
    """All of them, by where they work."""
    return (
        *_on_blocks(),
        *_on_corners(),
        *_in_tracing(),
        *_in_measuring(),
        *_in_gaps(),
        *_on_ground(),
        *_on_season_map(),
        *_anywhere(),
    )


def _on_blocks() -> tuple[FixedKeys, ...]:
    where = _("Drawing")
    return (
        FixedKeys(_("Up, Down"), ("Up", "Down"), where, _("choose the block before, the next block")),
        FixedKeys(_("Shift+Up, Shift+Down"), ("Shift+Up", "Shift+Down"), where, _("choose one more beside it")),
        FixedKeys(
            _("Left, Right"), ("Left", "Right"), where, _("move the chosen block by the plan's step"), _("nudge")
        ),
        FixedKeys(_("Shift+Left, Shift+Right"), ("Shift+Left", "Shift+Right"), where, _("move it finely")),
        FixedKeys(_("Alt+Left, Alt+Right"), ("Alt+Left", "Alt+Right"), where, _("move it, pushing its neighbours")),
        FixedKeys(
            _("Home, End"),
            ("Home", "End"),
            where,
            _("move it up against what lies before, behind"),
            _("butt align beside neighbour"),
        ),
        FixedKeys(
            _("Ctrl+Left, Ctrl+Right"),
            ("Ctrl+Left", "Ctrl+Right"),
            where,
            _("take a rank off it, add one"),
            _("resize longer shorter"),
        ),
        FixedKeys(
            _("Ctrl+Shift+Left, Ctrl+Shift+Right"),
            ("Ctrl+Shift+Left", "Ctrl+Shift+Right"),
            where,
            _("the same at the head end"),
        ),
        FixedKeys(_("Delete, Backspace"), ("Del", "Backspace"), where, _("remove the chosen block, corner or post")),
        FixedKeys(_("Escape"), ("Esc",), where, _("give a drag up; let go of what is chosen"), _("cancel deselect")),
        FixedKeys(_("Alt, held"), (), where, _("suspend the snaps while dragging"), _("snapping off free")),
        FixedKeys(_("Shift, held"), (), where, _("push the neighbours along while dragging")),
        FixedKeys(_("Ctrl, held"), (), where, _("drag a copy; let a crop from the shelf wait for free ground")),
        FixedKeys(_("Wheel with Ctrl, with Shift"), (), where, _("zoom at the pointer; go along the beds")),
    )


def _on_corners() -> tuple[FixedKeys, ...]:
    where = _("Corners and posts")
    return (
        FixedKeys("[, ]", ("[", "]"), where, _("choose the corner or post before, the next")),
        FixedKeys(_("Arrows"), (), where, _("move it, with Shift finely")),
        FixedKeys(_("Insert"), ("Ins",), where, _("a corner more, after the chosen one")),
    )


def _in_tracing() -> tuple[FixedKeys, ...]:
    where = _("Tracing a bed")
    return (
        FixedKeys(_("Arrows"), (), where, _("go on, with Shift finely, with Ctrl to a corner")),
        FixedKeys(_("Space"), (), where, _("set a corner there")),
        FixedKeys(_("Backspace"), (), where, _("take the last corner back")),
        FixedKeys(_("Return, Enter"), ("Return", "Enter"), where, _("close the outline")),
    )


def _in_measuring() -> tuple[FixedKeys, ...]:
    where = _("Measuring")
    return (
        FixedKeys(_("Arrows"), (), where, _("move an end, with Shift finely, with Ctrl to the next mark")),
        FixedKeys(_("Tab"), (), where, _("turn to the other end")),
    )


def _in_gaps() -> tuple[FixedKeys, ...]:
    where = _("Filling gaps")
    return (
        FixedKeys(_("Left, Right"), (), where, _("go to the gap before, the next one of the bed")),
        FixedKeys(_("Up, Down"), (), where, _("go to the bed before, the next bed with a gap")),
        FixedKeys(_("Return, Enter"), (), where, _("take the blocks that are shown")),
    )


def _on_ground() -> tuple[FixedKeys, ...]:
    where = _("Beds on the ground")
    return (
        FixedKeys("[, ]", (), where, _("choose the bed before, the next")),
        FixedKeys("{, }", (), where, _("choose one more beside it")),
        FixedKeys(_("Ctrl, held"), (), where, _("click a bed to choose it too, or to let go of it")),
        FixedKeys(_("Arrows"), (), where, _("move the chosen beds, with Shift finely")),
        FixedKeys(_("Ctrl+Left, Ctrl+Right"), (), where, _("turn them"), _("rotate")),
        FixedKeys(_("Return, Enter"), (), where, _("go to its strip")),
    )


def _on_season_map() -> tuple[FixedKeys, ...]:
    where = _("Season map")
    return (
        FixedKeys(_("Up, Down"), (), where, _("the day before, the next day; Page up and Page down by a week")),
        FixedKeys(_("Left, Right"), (), where, _("choose the planting before, the next; with Shift one more")),
        FixedKeys(_("Alt+Up, Alt+Down"), ("Alt+Up", "Alt+Down"), where, _("move what is chosen by a day")),
        FixedKeys(
            _("Alt+Shift+Up, Alt+Shift+Down"),
            ("Alt+Shift+Up", "Alt+Shift+Down"),
            where,
            _("move it by a week"),
        ),
        FixedKeys(_("Alt+Left, Alt+Right"), (), where, _("move it along its bed, with Shift finely")),
        FixedKeys(
            _("Insert, Shift+Insert"),
            ("Shift+Ins",),
            where,
            _("copy it to the same ground, on the day that is free again, or before it"),
        ),
        FixedKeys(_("Ctrl+Left, Ctrl+Right, Home, End, Delete"), (), where, _("as on the drawing")),
        FixedKeys(
            _("Alt+Page up, Alt+Page down"),
            ("Alt+PgUp", "Alt+PgDown"),
            where,
            _("move the day on which it is out, with Shift by a week"),
        ),
        FixedKeys("+, −, 0", (), where, _("fewer days, more days, all days")),
        FixedKeys(_("Up, Down, Return"), (), _("Season maps of all beds"), _("choose a bed; open its own map")),
        FixedKeys(_("Wheel, with Ctrl"), (), where, _("earlier and later days; zoom at the pointer")),
        FixedKeys(_("Alt, Shift, Ctrl, held"), (), where, _("as on the drawing")),
        FixedKeys(_("Escape"), (), where, _("give a drag up; let go of what is chosen")),
    )


def _anywhere() -> tuple[FixedKeys, ...]:
    where = _("Lists and fields")
    return (
        FixedKeys(_("Tab, Shift+Tab"), ("Tab", "Shift+Tab"), where, _("the next field, the one before")),
        FixedKeys(_("Return, Enter"), (), where, _("finish a field; take the chosen line")),
        FixedKeys(_("Escape"), (), where, _("bring back what stood in a field; close a dialog")),
    )


def refusal(keys: QKeySequence, menus: tuple[Menu, ...]) -> str:
    """Why keys cannot be given to any action, nothing where they can."""
    words = keys.toString(QKeySequence.SequenceFormat.NativeText)
    for fixed in fixed_keys():
        if keys.toString(QKeySequence.SequenceFormat.PortableText) in fixed.pressed:
            stays = _("{keys} stays as it is – {where}: {does}.")
            return stays.format(keys=words, where=fixed.where, does=fixed.does)
    for menu in menus:
        if keys == QKeySequence.mnemonic(menu.words):
            return _("{keys} opens the menu {menu}.").format(keys=words, menu=menu.name)
    if _is_typed(keys):
        return _("{keys} alone is typed into fields: hold Ctrl or Alt with it, or take a function key.").format(
            keys=words
        )
    return ""


def _is_typed(keys: QKeySequence) -> bool:
    text = keys.toString(QKeySequence.SequenceFormat.PortableText).removeprefix("Shift+")
    return len(text) == 1 or text == "Space"
