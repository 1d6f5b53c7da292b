"""What is looked at, which is no part of the plan: the selection and the day that the drawing shows."""

from collections import Counter
from datetime import date

from PySide6.QtCore import QObject, Signal

from gardenplot.drawing.handles import Handle, handles_of
from gardenplot.layout import fullest_day, lay_out_plan
from gardenplot.plan import Plan, bed_of, planting_of
from gardenplot.season import Dates, dates_of, grown_on
from gardenplot.window.document import Document


class Sight(QObject):
    """The selected planting and others chosen with it, the bed, in it perhaps a corner or an obstacle, and the day.

    Without a day all days are shown. `beside` are beds that are chosen with the bed on the ground.
    """

    selected = Signal()
    day_changed = Signal()
    spot_changed = Signal()

    def __init__(self, document: Document, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        document.changed.connect(self._follow)
        self.planting: str | None = None
        self.bed: str | None = None
        self.others: tuple[str, ...] = ()
        self.beside: tuple[str, ...] = ()
        self.handle: Handle | None = None
        self.day: date | None = None
        self.spot: tuple[str, int, int] | None = None

    def select(
        self,
        bed: str | None,
        planting: str | None = None,
        handle: Handle | None = None,
        others: tuple[str, ...] = (),
        beside: tuple[str, ...] = (),
    ) -> None:
        """Select a planting and others with it, a bed and others with it, a corner or obstacle, or nothing."""
        self.point_at(None)
        wanted = bed, planting, handle, others, beside
        if wanted != (self.bed, self.planting, self.handle, self.others, self.beside):
            self.bed, self.planting, self.handle, self.others, self.beside = wanted
            self.selected.emit()

    def choose_beds(self, beds: tuple[str, ...]) -> None:
        """Select beds, of which the first leads, or nothing."""
        self.select(beds[0] if beds else None, beside=beds[1:])

    @property
    def chosen(self) -> tuple[str, ...]:
        """The selected planting and those chosen with it."""
        return (self.planting, *self.others) if self.planting is not None else ()

    def choose(self, plan: Plan, plantings: tuple[str, ...]) -> None:
        """Select plantings of a plan, of which the first leads; with none, no more than the bed."""
        if not plantings:
            self.select(self.bed)
            return
        self.select(planting_of(plan, plantings[0]).bed, plantings[0], others=plantings[1:])

    def point_at(self, spot: tuple[str, int, int] | None) -> None:
        """Point at a stretch of a bed between two tape readings in nm, until something else is selected."""
        if spot != self.spot:
            self.spot = spot
            self.spot_changed.emit()

    def show_day(self, day: date | None) -> None:
        """Show the beds as they stand on a day; of several chosen plantings those stay that can be seen then."""
        if day != self.day:
            self.day = day
            self.day_changed.emit()
            seen = tuple(one for one in self.others if _stands(self._document.plan, one, day))
            self.select(self.bed, self.planting, self.handle, seen, self.beside)

    @property
    def beds(self) -> tuple[str, ...]:
        """The selected bed and those chosen with it."""
        return (self.bed, *self.beside) if self.bed is not None else ()

    @property
    def shaped(self) -> str | None:
        """The bed whose corners can be taken hold of: the one that is selected, while no planting is."""
        return self.bed if self.planting is None else None

    def day_for(self, plan: Plan, planting: str | None) -> date | None:
        """The day shown, or the planting's first day in the ground where it does not stand on the day shown."""
        if planting is None:
            return self.day
        dates = dates_of(plan, planting_of(plan, planting))
        return self.day if grown_on(dates, self.day) else dates.in_ground or self.day

    def begin(self, plan: Plan) -> None:
        """Look at a plan that was just opened: nothing selected, on the day when most of it is taken."""
        self.select(None)
        days = {day for day in map(fullest_day, lay_out_plan(plan)) if day}
        grown = Counter(one.dates for laid in lay_out_plan(plan) for one in laid.grown)
        self.show_day(max(days, key=lambda day: (_standing(grown, day), day), default=None))

    def _follow(self, before: Plan, plan: Plan) -> None:
        """Let go of what is no longer in the plan, and stay with a planting that goes into the ground later.

        A corner or an obstacle is known by its number among the same.
        """
        lead = self.planting if any(one.id == self.planting for one in before.plantings) else None
        there = {one.id for one in plan.beds}
        beds = tuple(one for one in self.beds if one in there)
        known = {one.id for one in plan.plantings}
        chosen = tuple(one for one in self.chosen if one in known)
        if chosen:
            self.choose(plan, chosen)
            if lead == chosen[0] and _is_later(before, plan, chosen[0], self.day):
                self.show_day(self.day_for(plan, lead))
        else:
            bed = beds[0] if beds else None
            same = bed == self.bed and bed is not None and _has_same_handles(before, plan, bed)
            self.select(bed, None, self.handle if same else None, beside=beds[1:])


def _has_same_handles(before: Plan, plan: Plan, bed: str) -> bool:
    return handles_of(bed_of(before, bed)) == handles_of(bed_of(plan, bed))


def _is_later(before: Plan, plan: Plan, planting: str, day: date | None) -> bool:
    """Whether a planting that stood on a day goes into the ground after it."""
    first = dates_of(plan, planting_of(plan, planting)).in_ground
    return _stands(before, planting, day) and day is not None and first is not None and day < first


def _stands(plan: Plan, planting: str, day: date | None) -> bool:
    return grown_on(dates_of(plan, planting_of(plan, planting)), day)


def _standing(grown: Counter[Dates], day: date) -> int:
    return sum(count for dates, count in grown.items() if grown_on(dates, day))
