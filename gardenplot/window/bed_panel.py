"""The selected bed: its fields, what stands in it, what is left, and its findings."""

from typing import Any

from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from gardenplot.drawing.cover_words import cover_lines, drip_lines
from gardenplot.drawing.left_words import at_fullest, left_at_fullest
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import between_readings, marked, says, where
from gardenplot.drawing.shape_words import map_words
from gardenplot.drawing.style import Ink
from gardenplot.drawing.supply_words import supply_cautions, supply_lines
from gardenplot.findings import Kind, find_about, find_all, find_in_bed
from gardenplot.gestures.ground_typed import GROUND_FIELDS
from gardenplot.gestures.history_typed import HISTORY
from gardenplot.gestures.typed import BED_FIELDS, TypedField
from gardenplot.layout import free_on, fullest_day, lay_out_bed
from gardenplot.plan import bed_of
from gardenplot.units.figures import span
from gardenplot.window.document import Document
from gardenplot.window.fields import Form
from gardenplot.window.headed_area import SIDE
from gardenplot.window.labels import heading, quiet, rule, words
from gardenplot.words import _

_WIDE = ("name", "box", "outline", "obstacles", "drip_lines", "history")
_FIELDS = (*BED_FIELDS, HISTORY, *GROUND_FIELDS)


class BedPanel(QWidget):
    """Goes one way: plan to fields when it changes, a finished field to an edit."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self.bed = ""
        self.title, self.left, self.pieces, self.findings = heading(), quiet(), words(), words(Ink.ACCENT)
        self.covers, self.drip, self.supplies = words(), words(), words()
        self.again, self._below_form = QPushButton(_("Plan again …")), rule()
        self.form = Form(self)
        for field in _FIELDS:
            self.form.add_typed(field.name, field.label, self._finisher(field), wide=field.name in _WIDE)
        column = QVBoxLayout(self)
        column.setContentsMargins(SIDE, 4, SIDE, 12)
        column.setSpacing(8)
        for part in (
            self.left,
            self.form,
            self._below_form,
            self.pieces,
            self.covers,
            self.drip,
            self.supplies,
            self.findings,
            self.again,
        ):
            column.addWidget(part)
        column.addStretch(1)

    def show_bed(self, bed_id: str) -> None:
        """Show a bed of the document's plan."""
        self.bed = bed_id
        plan = self._document.plan
        bed = bed_of(plan, bed_id)
        laid = lay_out_bed(plan, bed)
        self.title.setText(bed.name)
        self.left.setText(left_at_fullest((laid,), plan.place.units))
        for field in _FIELDS:
            line = self.form.fields[field.name]
            line.show_value(field.shown(plan, bed_id))
            line.stand_empty(field.grey(plan, bed_id))
        self.form.hint("length", map_words(bed, plan.place.units))
        free = free_on(laid, fullest_day(laid))
        lines = [
            f"{between_readings(plan, one.start, one.end)}   {span(one.length, plan.place.units)}"
            for one in free.leftover
        ]
        self.pieces.setText("\n".join((at_fullest(_("Left over"), (laid,)), *lines)) if lines else "")
        self.pieces.setVisible(bool(lines))
        look = looks(plan)
        self.covers.setText("\n".join(cover_lines(plan, bed_id)))
        self.covers.setVisible(bool(self.covers.text()))
        self.supplies.setText("\n".join((*supply_lines(plan, bed_id), *supply_cautions(plan, bed_id))))
        self.supplies.setVisible(bool(self.supplies.text()))
        self.drip.setText("\n".join(drip_lines(laid, look, plan.place.units)))
        self.drip.setVisible(bool(self.drip.text()))
        late = [
            one for one in find_all(plan, self._document.today()) if one.kind is Kind.BED_LATE and one.bed == bed_id
        ]
        found = [one for one in (*find_about(plan, bed_id), *find_in_bed(laid), *late) if not one.is_note]
        self.findings.setText(
            "\n".join(marked(one, f"{where(plan, one, look)}: {says(plan, one, look)}") for one in found)
        )
        self.findings.setVisible(bool(found))
        self.again.setVisible(bool(late))
        parts = (self.pieces, self.covers, self.drip, self.supplies, self.findings)
        self._below_form.setVisible(any(part.text() for part in parts))

    def _finisher(self, field: TypedField) -> Any:
        def finished(text: str) -> None:
            plan = self._document.plan
            name = _("{field} of {bed}").format(field=field.label, bed=bed_of(plan, self.bed).name)
            self._document.change(name, field.apply(plan, self.bed, text))
            self.show_bed(self.bed)

        return finished
