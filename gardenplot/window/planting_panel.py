"""The selected planting: every field editable, its pattern set beside others, its workings and its findings."""

from collections.abc import Callable
from enum import StrEnum
from typing import Any

from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from gardenplot.drawing.conventions import convention
from gardenplot.drawing.date_words import date_lines
from gardenplot.drawing.letters import looks
from gardenplot.drawing.number_words import in_short, results_whole, sources_line
from gardenplot.drawing.planting_words import (
    dates_words,
    order_met_words,
    order_words,
    rows_words,
    spare_words,
)
from gardenplot.drawing.sayings import ANSWERS, marked, name_of, says
from gardenplot.drawing.series_words import linked_words
from gardenplot.drawing.so_many import so_many_clumps
from gardenplot.drawing.style import Ink
from gardenplot.drawing.turned_words import edge_words
from gardenplot.drawing.workings import counted_numbers, planting_numbers, trays_line
from gardenplot.errors import PlanError
from gardenplot.findings import Kind, find_of_planting
from gardenplot.gestures.chosen import CHOSEN_FIELDS, ChosenField
from gardenplot.gestures.typed import PATTERN_FIELDS, PLANTING_FIELDS, TypedField
from gardenplot.layout import Grown, Layout, lay_out_bed
from gardenplot.layout.compare import Answer, answers, candidates
from gardenplot.plan import Plan, Reserved, bed_of, planting_of
from gardenplot.plan.edits import change_planting
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.window.document import Document
from gardenplot.window.fields import Choice, Form
from gardenplot.window.headed_area import SIDE
from gardenplot.window.labels import heading, quiet, rule, words
from gardenplot.window.pattern_choice import PatternChoice
from gardenplot.window.planting_days import PlantingDays
from gardenplot.words import _


class PlantingPanel(QWidget):
    """Goes one way: plan to fields when it changes, a finished field to an edit."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self.planting = ""
        self.title, self.under_title = heading(), quiet()
        self.patterns = PatternChoice(self)
        self.patterns.picked.connect(lambda pattern: self._choose(CHOSEN_FIELDS[0], pattern))
        self.compare = QPushButton(_("Compare layouts …"), self)
        self.form = Form(self)
        self.bed = self.form.add_choice("bed", _("Bed"), self._pick_bed)
        self.order = self.form.add_choice("order", _("Order"), self._pick_order)
        self.reserved = self.form.add_choice("reserved", _("Places of what follows"), self._pick_answer)
        self.chosen = {field.name: self._add_choice(field) for field in CHOSEN_FIELDS}
        for typed in PLANTING_FIELDS:
            wide = typed.name in ("twin_spacing", "offsets", "row_spacing", "edge")
            self.form.add_typed(typed.name, typed.label, self._finisher(typed), wide=wide)
        self.days = PlantingDays(self.form, self._finisher, words(), words())
        self.raising, self.working, self.findings = words(), words(), words(Ink.ACCENT)
        self.together, self.series = words(), words()
        self.leave, self.again = QPushButton(_("Leave the series")), QPushButton(_("Plan again …"))
        column = QVBoxLayout(self)
        column.setContentsMargins(SIDE, 4, SIDE, 12)
        column.setSpacing(8)
        for part in (self.under_title, self.raising, self.together, self.findings, self.series,
                     self.leave, self.patterns, self.compare, self.form, self.again, rule(),
                     self.working):  # fmt: skip
            column.addWidget(part)
        column.addStretch(1)

    def show_planting(self, planting_id: str) -> None:
        """Show a planting of the document's plan."""
        self.planting = planting_id
        plan = self._document.plan
        planting, look = planting_of(plan, planting_id), looks(plan)
        laid = lay_out_bed(plan, bed_of(plan, planting.bed))
        layout = laid.layout_of(planting_id)
        one = next(each for each in laid.grown if each.planting.id == planting_id)
        self.title.setText(f"{look[planting_id].letter}  {one.crop.name}")
        self.under_title.setText(dates_words(plan, one))
        for part in (self.patterns, self.compare):
            part.setVisible(planting.hardens is None)
        self.form.show_cell("order", planting.hardens is None)
        self.form.call("plants", _("Plants") if planting.hardens is None else _("Trays"))
        if planting.hardens is None:
            self.patterns.show_candidates(
                candidates(plan, planting_id), look[planting_id], plan.place.units, planting.pattern
            )
        self.series.setText(linked_words(plan, planting_id))
        self.series.setVisible(planting.series is not None)
        self.leave.setVisible(planting.series is not None)
        self._show_choices(plan, one)
        self._show_fields(plan, one, layout)
        self._show_words(plan, one, layout)

    def _show_choices(self, plan: Plan, one: Grown) -> None:
        self.bed.offer([(bed.name, bed.id) for bed in plan.beds], one.planting.bed)
        orders = (order for order in plan.orders if order.crop == one.crop.id)
        met = [(order_words(order, plan.place.units), order.id) for order in orders]
        self.order.offer([(_("none"), None), *met], one.planting.order)
        kept = [(_answer_words(answer, one), answer.reserved) for answer in answers(plan, one.planting.id)]
        self.reserved.offer(kept, one.planting.reserved)
        self.form.show_cell("reserved", self.reserved.count() > 0)
        for name in ("bed", "reserved", *self.chosen):
            self.form.hint(name, "")
        for field in CHOSEN_FIELDS:
            values = field.offered(plan, one.planting.id)
            offered = [(field.values[value], value) for value in values]
            self.chosen[field.name].offer(offered, getattr(one.planting, field.name))
            self.form.show_cell(field.name, field.matters(plan, one.planting.id))

    def _show_fields(self, plan: Plan, one: Grown, layout: Layout) -> None:
        for field in PLANTING_FIELDS:
            line = self.form.fields[field.name]
            line.show_value(field.shown(plan, one.planting.id))
            line.stand_empty(field.grey(plan, one.planting.id))
        for name, pattern in PATTERN_FIELDS.items():
            self.form.show_cell(name, one.planting.pattern is pattern)
        self.days.show_days(plan, one, layout)
        self.form.hint("order", order_met_words(plan, one, layout))
        self.form.hint("rows", rows_words(layout, plan.place.units))
        self.form.hint("length", spare_words(layout, plan.place.units))

    def _show_words(self, plan: Plan, one: Grown, layout: Layout) -> None:
        made = trays_line(one, layout)
        self.raising.setText(_("To raise or sow: {made}").format(made=made) if made else "")
        self.raising.setVisible(bool(made))
        units, laid = plan.place.units, lay_out_bed(plan, bed_of(plan, one.planting.bed))
        sums = (in_short(number, units) for number in counted_numbers(laid.bed, one, layout))
        counted = _("Counts: {convention}.").format(convention=convention(layout.grid, units))
        turn = layout.grid.turn
        turned = (_("Rows are {turned}.").format(turned=edge_words(turn, units)),) if turn is not None else ()
        sources = sources_line(planting_numbers(laid, one.planting.id))
        results = (results_whole(line) for line in (*sums, *turned, counted, "", *date_lines(one, units)))
        self.working.setText("\n".join((*results, sources)))
        look = looks(plan)
        found = find_of_planting(plan, self.planting, self._document.today())
        self.findings.setText("\n".join(marked(each, says(plan, each, look)) for each in found))
        self.findings.setVisible(bool(found))
        is_late = any(each.kind is Kind.BED_LATE for each in found)
        self.again.setVisible(one.planting.actual is not None or is_late)

    def _finisher(self, field: TypedField) -> Any:
        def finished(text: str) -> None:
            plan = self._document.plan
            name = _("{field} of {crop}").format(field=field.label, crop=name_of(plan, self.planting))
            if not self._document.change(name, field.apply(plan, self.planting, text)):
                self.show_planting(self.planting)

        return finished

    def _add_choice(self, field: ChosenField) -> Choice:
        def chosen(row: int) -> None:
            self._choose(field, field.offered(self._document.plan, self.planting)[row])

        return self.form.add_choice(field.name, field.label, chosen)

    def _choose(self, field: ChosenField, value: StrEnum) -> None:
        words = f"{{crop}}: {field.values[value]}"
        self._try(field.name, words, lambda plan: field.edit(plan, self.planting, value))

    def _try(self, field: str, words: str, edit: Callable[[Plan], Plan]) -> None:
        """Make a choice the plan's; one that cannot be is said at its field, which shows the plan again."""
        plan, complaint = self._document.plan, ""
        try:
            self._document.change(words.format(crop=name_of(plan, self.planting)), edit(plan))
        except PlanError as error:
            complaint = error.says
        self.show_planting(self.planting)
        if complaint:
            self.form.hint(field, complaint)

    def _pick_bed(self, row: int) -> None:
        bed = self.bed.itemData(row)
        self._try("bed", _("Move {crop}"), lambda plan: change_planting(plan, self.planting, bed=bed))

    def _pick_answer(self, row: int) -> None:
        answer = Reserved(self.reserved.itemData(row))
        words = _("{crop}: {answer}").format(crop="{crop}", answer=ANSWERS[answer])
        self._try("reserved", words, lambda plan: change_planting(plan, self.planting, reserved=answer))

    def _pick_order(self, row: int) -> None:
        """Plant for another order, which gives the size unless the planting is in the ground."""
        order, now = self.order.itemData(row), planting_of(self._document.plan, self.planting)
        changes = {"plants": None, "length": None} if order and not is_in_ground(now) else {}
        if order != now.order:
            changes["market"] = None
        self._try(
            "order",
            _("Order of {crop}"),
            lambda plan: change_planting(plan, self.planting, order=order, **changes),
        )


def _answer_words(answer: Answer, one: Grown) -> str:
    """An answer to the places that are kept in a block, with what it leaves: "cut first: 190 plants"."""
    plants = so_many_clumps(answer.plants, one.crop.stand)
    return _("{answer}: {plants}").format(answer=ANSWERS[answer.reserved], plants=plants)
