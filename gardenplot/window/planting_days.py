"""The days of a planting in its panel: as they are planned, and what came about."""

from collections.abc import Callable

from PySide6.QtWidgets import QLabel

from gardenplot.drawing.actual_words import came_words, planted_words, sale_words, was_counted_in_bed
from gardenplot.drawing.date_words import follows_words, market_words
from gardenplot.gestures.actual_typed import ACTUAL_FIELDS, ACTUAL_MATTERS
from gardenplot.gestures.dates_typed import DATE_FIELDS, DATE_MATTERS, is_raised, planned_dates
from gardenplot.gestures.typed import TypedField
from gardenplot.layout import Grown, Layout
from gardenplot.plan import Plan
from gardenplot.window.fields import Form
from gardenplot.window.plain import PlainLabel
from gardenplot.window.theme import widget_font
from gardenplot.words import _

_MATTERS = DATE_MATTERS | ACTUAL_MATTERS
_FOLLOWS = ("sow", "in_ground", "ready", "out", "soil")


class PlantingDays:
    """Two sections of the panel's form; `market` says whether it is ready for its market, `came` what came about."""

    def __init__(
        self, form: Form, finisher: Callable[[TypedField], Callable[[str], None]], market: QLabel, came: QLabel
    ) -> None:
        self._form, self.market, self.came = form, market, came
        self._titles = _section(_("Dates")), _section(_("What came about"))
        for title, words, fields in zip(self._titles, (market, came), (DATE_FIELDS, ACTUAL_FIELDS), strict=True):
            form.add_across(title, words)
            for field in fields:
                form.add_typed(field.name, field.label, finisher(field))

    def show_days(self, plan: Plan, one: Grown, layout: Layout) -> None:
        """Show the days of a planting of a plan; those of trays follow from the planting that they are for."""
        planting, form = one.planting.id, self._form
        for field in (*DATE_FIELDS, *ACTUAL_FIELDS):
            line = form.fields[field.name]
            line.show_value(field.shown(plan, planting))
            line.stand_empty(field.grey(plan, planting))
            matters = _MATTERS.get(field.name)
            form.show_cell(field.name, one.hardened is None and (matters is None or matters(plan, planting)))
        for title in self._titles:
            title.setVisible(one.hardened is None)
        raised = is_raised(plan, planting)
        form.call("in_ground", _("Set out") if raised else _("Sow"))
        form.call("actual_set_out", _("Was set out") if raised else _("Sown"))
        follows = follows_words(one, planned_dates(plan, planting))
        for name in _FOLLOWS:
            form.hint(name, follows.get(name, ""))
        counted = was_counted_in_bed(one)
        form.hint("actual_planted", "" if counted else planted_words(one, layout))
        form.hint("actual_standing", planted_words(one, layout) if counted else "")
        _say(self.market, "; ".join(words for words in (market_words(one), sale_words(plan, one, layout)) if words))
        _say(self.came, came_words(one, layout))


def _section(title: str) -> QLabel:
    label = PlainLabel(title)
    label.setFont(widget_font(14, bold=True))
    label.setContentsMargins(0, 8, 0, 0)
    return label


def _say(label: QLabel, words: str) -> None:
    label.setText(words)
    label.setVisible(bool(words))
