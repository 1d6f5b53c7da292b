"""The drawing for those who listen: a screen reader finds every bed and planting, with its name, place and state."""

from functools import cache

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QTimer, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QAccessibleEvent,
    QAccessibleInterface,
    QAccessibleObject,
)
from PySide6.QtWidgets import QAbstractScrollArea, QAccessibleWidget

from gardenplot.drawing import spoken_words
from gardenplot.drawing.letters import looks
from gardenplot.layout import LaidOut, Layout, lay_out_bed, standing
from gardenplot.plan import bed_of
from gardenplot.window.canvas_places import CanvasPlaces
from gardenplot.window.document import Document
from gardenplot.window.sight import Sight
from gardenplot.words import _

_Text = QAccessible.Text


class Thing(QObject):
    """A bed, or a planting in it, as an object that a screen reader can hold on to; the canvas owns it."""

    def __init__(self, spoken: "CanvasSpoken", bed: str, planting: str | None) -> None:
        super().__init__(spoken.area)
        self.spoken, self.bed, self.planting = spoken, bed, planting
        self.interface: QAccessibleInterface | None = None
        """Kept here: Qt holds no reference to it that Python would know of."""

    @property
    def inner(self) -> list["Thing"]:
        """What is inside: the plantings of a bed on the day shown."""
        laid = self.spoken.laid(self.bed) if self.planting is None else None
        shown = standing(laid, self.spoken.sight.day) if laid is not None else ()
        return [self.spoken.thing(self.bed, layout.planting) for layout in shown]

    @property
    def is_chosen(self) -> bool:
        """Whether this is what is selected, alone or with others."""
        if self.planting is not None:
            return self.planting in self.spoken.sight.chosen
        return self.leads

    @property
    def leads(self) -> bool:
        """Whether this is what the keys are about."""
        return (self.spoken.sight.bed, self.spoken.sight.planting) == (self.bed, self.planting)

    def text(self, kind: QAccessible.Text) -> str:
        """Its name, or as its description what is wrong with it."""
        laid, plan = self.spoken.laid(self.bed), self.spoken.document.plan
        if laid is None or (self.planting is not None and self.layout is None):
            return ""
        if kind is _Text.Description:
            return spoken_words.troubles_spoken(plan, laid, self.planting, looks(plan))
        if kind is not _Text.Name:
            return ""
        if self.planting is None:
            return spoken_words.bed_spoken(plan, laid, self.spoken.sight.day, len(self.inner))
        return spoken_words.planting_spoken(plan, laid, self.planting, looks(plan))

    @property
    def layout(self) -> Layout | None:
        """The layout of a planting, while it is in the plan."""
        laid = self.spoken.laid(self.bed)
        layouts = laid.layouts if laid is not None else ()
        return next((one for one in layouts if one.planting == self.planting), None)

    @property
    def frame(self) -> QRect:
        """Where it is on the screen."""
        laid, layout = self.spoken.laid(self.bed), self.layout
        if laid is None or (self.planting is not None and layout is None):
            return QRect()
        start, end = (layout.start, layout.end) if layout is not None else (0, laid.bed.length.nm)
        corners = [self.spoken.places.point_of(self.bed, *at) for at in ((start, 0), (end, laid.bed.width.nm))]
        top_left, bottom_right = (self.spoken.area.viewport().mapToGlobal(at.toPoint()) for at in corners)
        return QRect(top_left, bottom_right)


class CanvasSpoken(QObject):
    """Keeps the things of a canvas, and tells a screen reader what is chosen, changed and refused."""

    told = Signal(object)
    """The thing that a screen reader is told to look at."""

    def __init__(self, area: QAbstractScrollArea, places: CanvasPlaces, document: Document, sight: Sight) -> None:
        super().__init__(area)
        self.area, self.places, self.document, self.sight = area, places, document, sight
        self.interface: QAccessibleInterface | None = None
        self._things: dict[tuple[str, str | None], Thing] = {}
        _install()
        area.installEventFilter(self)
        sight.selected.connect(self._tell_chosen)
        document.changed.connect(self._follow)

    def laid(self, bed: str) -> LaidOut | None:
        """A bed with its layouts, while it is in the plan."""
        plan = self.document.plan
        return lay_out_bed(plan, bed_of(plan, bed)) if any(one.id == bed for one in plan.beds) else None

    def thing(self, bed: str, planting: str | None = None) -> Thing:
        """A bed or a planting as an object, the same one at every call."""
        key = (bed, planting)
        if key not in self._things:
            self._things[key] = Thing(self, bed, planting)
        return self._things[key]

    @property
    def beds(self) -> list[Thing]:
        """All beds, from the top."""
        return [self.thing(bed.id) for bed in self.document.plan.beds]

    @property
    def chosen(self) -> Thing | None:
        """The bed or planting that is selected."""
        return self.thing(self.sight.bed, self.sight.planting) if self.sight.bed is not None else None

    def at(self, point: QPoint) -> Thing | None:
        """What lies under a point of the screen."""
        found = self.places.under(self.area.viewport().mapFromGlobal(point).toPointF())
        return self.thing(found.bed, found.planting) if found is not None else None

    def refuse(self, words: str) -> None:
        """Say at once why something cannot be."""
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.area, words))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.FocusIn:
            # After Qt's own word that the canvas has the keyboard.
            QTimer.singleShot(0, self, self._tell_chosen)
        return super().eventFilter(watched, event)

    def _tell_chosen(self) -> None:
        chosen = self.chosen if QAccessible.isActive() and self.area.hasFocus() else None
        if chosen is not None:
            self._tell(chosen, QAccessible.Event.Focus)

    def _follow(self) -> None:
        """Forget what is no longer in the plan, and let the name of what is chosen be read again."""
        if not self._things:
            return
        plan = self.document.plan
        known: set[tuple[str, str | None]] = {(bed.id, None) for bed in plan.beds}
        known |= {(planting.bed, planting.id) for planting in plan.plantings}
        for key in self._things.keys() - known:
            self._things.pop(key).deleteLater()
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleEvent(self.area, QAccessible.Event.ObjectReorder))
        chosen = (self.sight.bed, self.sight.planting)
        if chosen in self._things:
            self._tell(self._things[chosen], QAccessible.Event.NameChanged)

    def _tell(self, thing: Thing, kind: QAccessible.Event) -> None:
        self.told.emit(thing)
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleEvent(thing, kind))


class _SpokenCanvas(QAccessibleWidget):
    """The canvas as a tree whose branches are the beds."""

    def __init__(self, spoken: CanvasSpoken) -> None:
        super().__init__(spoken.area, QAccessible.Role.Tree, _("Drawing of the beds"))
        self._spoken = spoken

    def childCount(self) -> int:
        return len(self._spoken.beds)

    def child(self, index: int) -> QAccessibleInterface:
        return _interface(self._spoken.beds, index)

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        return _index(self._spoken.beds, child)

    def childAt(self, x: int, y: int) -> QAccessibleInterface:
        return _interface_of(self._spoken.at(QPoint(x, y)))

    def focusChild(self) -> QAccessibleInterface:
        return _interface_of(self._spoken.chosen if self._spoken.area.hasFocus() else None)


class _SpokenThing(QAccessibleObject):
    """A bed or a planting as an item of that tree."""

    def __init__(self, thing: Thing) -> None:
        super().__init__(thing)
        self._thing = thing

    def parent(self) -> QAccessibleInterface:
        spoken, thing = self._thing.spoken, self._thing
        return QAccessible.queryAccessibleInterface(spoken.thing(thing.bed) if thing.planting else spoken.area)

    def childCount(self) -> int:
        return len(self._thing.inner)

    def child(self, index: int) -> QAccessibleInterface:
        return _interface(self._thing.inner, index)

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        return _index(self._thing.inner, child)

    def role(self) -> QAccessible.Role:
        return QAccessible.Role.TreeItem

    def text(self, kind: QAccessible.Text) -> str:
        return self._thing.text(kind)

    def rect(self) -> QRect:
        return self._thing.frame

    def state(self) -> QAccessible.State:
        thing, state = self._thing, QAccessible.State()
        state.focusable = state.selectable = 1
        state.selected = int(thing.is_chosen)
        state.focused = int(thing.leads and thing.spoken.area.hasFocus())
        state.expandable = state.expanded = int(thing.planting is None)
        viewport = thing.spoken.area.viewport()
        seen = QRect(viewport.mapToGlobal(QPoint(0, 0)), viewport.size())
        state.offscreen = int(not seen.intersects(thing.frame))
        return state


def _interface_of(thing: Thing | None) -> QAccessibleInterface:
    if thing is None:
        return None  # type: ignore[return-value]  # Qt takes None for nothing there; the stubs do not say so
    return QAccessible.queryAccessibleInterface(thing)


def _interface(things: list[Thing], index: int) -> QAccessibleInterface:
    return _interface_of(things[index] if 0 <= index < len(things) else None)


def _index(things: list[Thing], child: QAccessibleInterface) -> int:
    thing = child.object()
    return things.index(thing) if thing in things else -1


@cache
def _install() -> None:
    """Let Qt ask here for the interfaces of canvases and their things; once for the whole program."""
    QAccessible.installFactory(_made)


def _made(_key: str, found: QObject) -> QAccessibleInterface | None:
    if isinstance(found, Thing):
        found.interface = _SpokenThing(found)
        return found.interface
    spoken = getattr(found, "spoken", None) if isinstance(found, QAbstractScrollArea) else None
    if isinstance(spoken, CanvasSpoken):
        spoken.interface = _SpokenCanvas(spoken)
        return spoken.interface
    return None
