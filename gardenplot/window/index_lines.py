"""The lines of the index: actions, beds, plantings, fields, keys and crops, with what going to one does."""

from collections.abc import Callable, Iterator
from functools import partial
from typing import TYPE_CHECKING

from attrs import frozen

from gardenplot.drawing.letters import looks
from gardenplot.drawing.planting_words import spacing_words
from gardenplot.drawing.sayings import between_readings, counted_in, name_of
from gardenplot.drawing.shape_words import size_words
from gardenplot.gestures.sought import Sought
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Crop
from gardenplot.plan.catalogue import entries, found_crops
from gardenplot.window.action import Action, Menu, key_words, plain
from gardenplot.window.fixed_keys import fixed_keys
from gardenplot.window.panel_switch import go_to
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow


@frozen(eq=False)
class IndexLine:
    """One line: what it is, where it stands, its keys, and why one cannot go there now."""

    kind: str
    sought: Sought
    goes: Callable[[], object]
    keys: str = ""
    reason: str = ""
    is_action: bool = False

    def spoken(self) -> str:
        """The whole line for a screen reader."""
        parts = (self.sought.name, self.sought.where, self.keys, self.reason)
        return ", ".join(part for part in parts if part)


def index_lines(window: "MainWindow") -> tuple[IndexLine, ...]:
    """All lines as they are now, in the order in which they stand while nothing is typed."""
    named = (*_beds(window), *_plantings(window), *_fields(window))
    return (*_actions(window), *named, *_keys(window), *_crops(window))


def _actions(window: "MainWindow") -> Iterator[IndexLine]:
    for menu in window.registry.menus:
        for action in menu.actions():
            if action.id != "help.index":
                yield _action_line(action, menu, window)


def _action_line(action: Action, menu: Menu, window: "MainWindow") -> IndexLine:
    made = window.registry.made(action.id)
    keys, reason = key_words(made.shortcuts()), action.why_not()
    where = menu.path_of(action)
    if made.isCheckable():
        where += f" · {_('on') if made.isChecked() else _('off')}"
    sought = Sought(plain(made.text()), where, action.also, can_be=not reason)
    return IndexLine(_("Do"), sought, made.trigger, keys, reason, is_action=True)


def _beds(window: "MainWindow") -> Iterator[IndexLine]:
    plan, sight = window.document.plan, window.sight
    for bed in plan.beds:
        sought = Sought(bed.name, size_words(bed, plan.place.units), _("bed"))
        yield IndexLine(_("Bed"), sought, partial(sight.select, bed.id))


def _plantings(window: "MainWindow") -> Iterator[IndexLine]:
    plan, look = window.document.plan, looks(window.document.plan)
    for laid in lay_out_plan(plan):
        for one in laid.layouts:
            name = f"{look[one.planting].letter}  {name_of(plan, one.planting)}  {counted_in(plan, one)}"
            where = f"{laid.bed.name}, {between_readings(plan, one.start, one.end)}"
            goes = partial(_show_planting, window, laid.bed.id, one.planting)
            yield IndexLine(_("Planting"), Sought(name, where, _("planting block")), goes)


def _show_planting(window: "MainWindow", bed: str, planting: str) -> None:
    window.sight.show_day(window.sight.day_for(window.document.plan, planting))
    window.sight.select(bed, planting)


def _fields(window: "MainWindow") -> Iterator[IndexLine]:
    """The fields of what is selected, as they stand beside the drawing."""
    title, fields = window.inspector.fields()
    for label, field in fields:
        yield IndexLine(_("Field"), Sought(label, title, _("field type change edit")), partial(go_to, field))


def _keys(window: "MainWindow") -> Iterator[IndexLine]:
    """Keys that no action has: going to one says once more at the foot of the window what it does."""
    for one in fixed_keys():
        sought = Sought(one.does, f"{one.words} · {one.where}", one.also)
        yield IndexLine(_("Key"), sought, partial(window.tell, f"{one.words}: {one.does}"))


def _crops(window: "MainWindow") -> Iterator[IndexLine]:
    plan = window.document.plan
    others = {entry.crop.id: " ".join(entry.also) for entry in entries()}
    crops, own = found_crops(plan, "")
    for crop in crops:
        also = f"{others.get(crop.id, '')} {crop.family or ''} {_('crop')}"
        where = _("in the plan") if crop.id in own else _("catalogue")
        sought = Sought(crop.name, f"{spacing_words(crop, plan.place.units)}  ·  {where}", also)
        yield IndexLine(_("Crop"), sought, partial(_show_crop, window, crop))


def _show_crop(window: "MainWindow", crop: Crop) -> None:
    window.shelf.choose(crop)
