"""What the menus do with beds, plantings, crops, orders and sheets."""

from collections.abc import Callable
from functools import reduce
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QMimeData
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtWidgets import QFileDialog

from gardenplot.drawing import hand_words
from gardenplot.errors import GardenplotError, PlanError
from gardenplot.exports import counts_csv
from gardenplot.findings import Finding
from gardenplot.gestures import kept, orders, trials
from gardenplot.plan import Crop, Plan, bed_of, planting_of
from gardenplot.plan.edits import copy_bed, remove_bed
from gardenplot.plan.file import file_name, write_whole
from gardenplot.plan.in_ground import stays_words
from gardenplot.window import canvas_keys, prints
from gardenplot.window.late import (
    ask_bed,
    ask_crop,
    ask_order,
    compare_layouts,
    made_calendar,
    made_drawing,
    preview,
)
from gardenplot.window.questions import warn
from gardenplot.window.reasons import CHOOSE_BED, CHOOSE_CROP, CHOOSE_PLANTING, NO_BED
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.sheets.choices import Kind
    from gardenplot.window.main import MainWindow
    from gardenplot.window.prints import Print


class BedDeeds:
    """What is done to beds."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self._document, self._sight = window.document, window.sight

    def add_bed(self) -> None:
        """Ask for a bed, add it and select it."""
        if ask_bed(self._document, self._window):
            self._sight.select(self._document.plan.beds[-1].id)

    def copy_bed(self) -> None:
        """Copy the selected beds, without their plantings."""
        if self._bed() is not None:
            self._change(copy_bed, _("Copy bed {name}"), _("Copy {count} beds"))

    def remove_bed(self) -> None:
        """Remove the selected beds; undo brings them back with all that stood in them."""
        if self._bed() is not None:
            self._change(remove_bed, _("Remove bed {name}"), _("Remove {count} beds"))

    def _change(self, edit: Callable[[Plan, str], Plan], of_one: str, of_several: str) -> None:
        """Do something to each of the selected beds in one step, or say why it cannot be done to one of them."""
        plan, beds = self._document.plan, self._sight.beds
        try:
            after = reduce(edit, beds, plan)
        except PlanError as error:
            self._window.tell(error.says)
            return
        words = (of_several if beds[1:] else of_one).format(name=bed_of(plan, beds[0]).name, count=len(beds))
        self._document.change(words, after)

    def choose_bed(self) -> None:
        """Select the bed of what is selected, or the first one."""
        beds = self._document.plan.beds
        if beds:
            self._sight.select(self._sight.bed or beds[0].id)

    def next_bed(self) -> None:
        """Select the next bed."""
        ids = [bed.id for bed in self._document.plan.beds]
        if ids:
            at = ids.index(self._sight.bed) if self._sight.bed in ids else -1
            self._sight.select(ids[(at + 1) % len(ids)])

    def _bed(self) -> str | None:
        if self._sight.bed is None:
            self._window.tell(CHOOSE_BED)
        return self._sight.bed


class PlantingDeeds:
    """What is done to plantings, crops and orders."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self._document, self._sight = window.document, window.sight

    def place_from_shelf(self, *, waits: bool = False) -> None:
        """Place the crop chosen on the shelf; if it `waits`, on the first day on which there is a gap."""
        crop = self._window.shelf.chosen()
        if crop is None:
            self._window.tell(CHOOSE_CROP)
            return
        self.place(crop, waits=waits)

    def place(self, crop: Crop, *, waits: bool = False) -> None:
        """Place a crop in the first gap of the selected bed, or of the first bed; if it `waits` on a later day."""
        plan = self._document.plan
        bed = self._sight.bed or (plan.beds[0].id if plan.beds else None)
        if bed is None:
            self._window.tell(NO_BED)
            return
        try:
            trial = trials.try_first_gap(plan, crop, bed, self._sight.day, waits=waits)
        except PlanError as error:
            self._window.tell(str(error))
            return
        self._document.change(_("Place {crop}").format(crop=crop.name), trial.plan)
        self._sight.show_day(self._sight.day_for(trial.plan, trial.planting))
        self._sight.select(bed, trial.planting)
        if trial.later is not None and trial.planting is not None:
            self._window.tell(f"{crop.name}: {hand_words.later_words(trial.plan, trial.planting, trial.later)}")
        self._window.canvas.setFocus()

    def new_crop(self) -> None:
        """Ask for a crop as its packet reads; it is chosen on the shelf then, whatever was looked for there."""
        before = self._document.plan.crops
        if ask_crop(self._document, self._window):
            added = (crop for crop in self._document.plan.crops if crop not in before)
            self._window.shelf.choose(next(added))

    def edit_crop(self) -> None:
        """Ask for changes to the crop of the selected planting."""
        if self._sight.planting is None:
            self._window.tell(CHOOSE_PLANTING)
            return
        ask_crop(self._document, self._window, planting_of(self._document.plan, self._sight.planting).crop)

    def compare_layouts(self) -> None:
        """Show other ways to lay out the selected planting, and plant the one that is taken."""
        if self._sight.planting is None:
            self._window.tell(CHOOSE_PLANTING)
            return
        plan = self._document.plan
        stays = stays_words(plan, planting_of(plan, self._sight.planting))
        if stays:
            self._window.tell(stays)
            return
        compare_layouts(self._document, self._sight.planting, self._window)

    def remove_planting(self) -> None:
        """Remove the chosen plantings."""
        if self._sight.chosen:
            try:
                canvas_keys.remove(self._document, self._sight.chosen)
            except PlanError as error:
                self._window.tell(error.says)

    def add_order(self) -> None:
        """Ask for an order."""
        self.edit_order(None)

    def edit_order(self, order: str | None) -> None:
        """Ask for changes to an order, or for a new one, and show it among the others."""
        if ask_order(self._document, self._window, order):
            self._window.ledger.turn_to(self._window.ledger.orders)

    def remove_order(self) -> None:
        """Remove the order chosen in the ledger; its plantings keep their plants."""
        order, plan = self._window.ledger.current_order(), self._document.plan
        if order is None:
            self._window.tell(_("Choose an order first."))
            return
        self._document.change(_("Remove order"), orders.drop_order(plan, order))

    def zoom_to_selection(self) -> None:
        """Show the selected planting, or the selected bed, as large as fits."""
        plan = self._document.plan
        if self._sight.planting is not None:
            block = kept.layout_in(plan, self._sight.planting)
            self._window.canvas.view.zoom_to(block.start, block.end)
        elif self._sight.bed is not None:
            self._window.canvas.view.zoom_to(0, bed_of(plan, self._sight.bed).length.nm)

    def show_finding(self, finding: Finding) -> None:
        """Bring the place of a finding into sight, and its words in the panel of a planting."""
        if finding.planting is not None:
            self._window.inspector.show_top()
        if finding.bed is not None and finding.end > finding.start:
            self._window.canvas.view.reveal(finding.bed)
            self._sight.point_at((finding.bed, finding.start, finding.end))


class SheetDeeds:
    """What leaves the window: sheets and drawings."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window

    def all(self) -> None:
        """Show the set of sheets that a season is worked by, to print or to keep."""
        self.show(prints.print_of_all())

    def one(self, kind: "Kind") -> None:
        """Show the sheets of a kind, at the page of the selected bed."""
        self.show(prints.print_of(kind, self._window.sight.bed))

    def changed(self) -> None:
        """Show what is to be marked anew since the plan was saved last, to print or to keep."""
        before = self._window.document.last_saved
        if before is None:
            self._window.tell(_("The plan was never saved, so there is nothing to compare it with."))
            return
        self.show(prints.print_of_changes(before))

    def cards(self) -> None:
        """Show the door cards, at the week that the drawing shows."""
        self.show(prints.print_of_cards(self._window.sight.day))

    def show(self, asked: "Print") -> None:
        """Show sheets, to print or to keep; says it where there is nothing to print."""
        document = self._window.document
        try:
            preview(document.plan, document.name, asked, self._window)
        except PlanError as error:
            self._window.tell(str(error))

    def copy(self) -> None:
        """Copy the drawing, as a picture and as SVG: a program that it is put into takes what it knows."""
        plan, kinds = self._window.document.plan, {"image/png": "drawing.png", "image/svg+xml": "drawing.svg"}
        copied = QMimeData()
        for kind, name in kinds.items():
            made = made_drawing(plan, Path(name), self._window)
            if made is None:
                self._window.tell(_("stopped; nothing was copied"))
                return
            copied.setData(kind, made)
        copied.setImageData(QImage.fromData(copied.data("image/png")))
        QGuiApplication.clipboard().setMimeData(copied)
        self._window.tell(_("The drawing is on the clipboard."))

    def calendar(self) -> None:
        """Ask for a name and write the dates as a calendar file."""
        document, title = self._window.document, _("Calendar file")
        try:
            made = made_calendar(document.plan, document.name, self._window)
        except PlanError as error:
            self._window.tell(str(error))
            return
        if made is None:
            self._window.tell(_("stopped; nothing was written"))
            return
        proposed, kind = f"{file_name(document.name)}.ics", _("Calendar (*.ics)")
        name, _kind = QFileDialog.getSaveFileName(self._window, title, proposed, kind)
        if not name:
            return
        try:
            write_whole(Path(name), made)
            self._window.tell(_("written to {path}").format(path=name))
        except GardenplotError as error:
            warn(self._window, title, str(error))

    def counts(self) -> None:
        """Ask for a name and write the plants of every row as a table."""
        document, title = self._window.document, _("Counts as a table")
        proposed = f"{file_name(document.name)} counts.csv"
        name, _kind = QFileDialog.getSaveFileName(self._window, title, proposed, "CSV (*.csv)")
        if not name:
            return
        try:
            write_whole(Path(name), counts_csv.write_counts(document.plan))
            self._window.tell(_("written to {path}").format(path=name))
        except GardenplotError as error:
            warn(self._window, title, str(error))

    def export(self) -> None:
        """Ask for a name and write the drawing."""
        proposed = f"{file_name(self._window.document.name)}.svg"
        kinds = "SVG (*.svg);;DXF (*.dxf);;PNG (*.png);;CSV (*.csv)"
        name, _kind = QFileDialog.getSaveFileName(self._window, _("Drawing as a file"), proposed, kinds)
        if not name:
            return
        try:
            made = made_drawing(self._window.document.plan, Path(name), self._window)
            if made is not None:
                write_whole(Path(name), made)
                self._window.tell(_("written to {path}").format(path=name))
            else:
                self._window.tell(_("stopped; nothing was written"))
        except GardenplotError as error:
            warn(self._window, _("Drawing as a file"), str(error))
