"""Where the place lies, when it freezes there, and what of it counts: fields in the panel of the plan."""

from functools import partial

from PySide6.QtWidgets import QWidget

from gardenplot.drawing.cautions import WATER
from gardenplot.gestures.place_typed import FROST_FIELDS, HARD, LIKE_A_DAY, PLACE_FIELDS, SHORT_DAYS, ZONE_UNKNOWN
from gardenplot.gestures.typed import TypedField
from gardenplot.gestures.watering_typed import WATER_FIELDS
from gardenplot.plan.edits import change_place
from gardenplot.season.sun import zone_of
from gardenplot.window.document import Document
from gardenplot.window.fields import Form
from gardenplot.words import _

_FIELDS = (*PLACE_FIELDS, *FROST_FIELDS, *WATER_FIELDS)
_WIDE = ("time_zone", "family_gap", "cover_before", "line_flow", "weekly_depth")


class PlaceForm(Form):
    """Goes one way: plan to fields when it changes, a finished field to an edit."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document = document
        for field in _FIELDS:
            self.add_typed(field.name, field.label, partial(self._finish, field), wide=field.name in _WIDE)
        self.short_days = self.add_choice(
            "short_days_count", _("Days of less than ten hours of light"), self._pick_short_days
        )
        for count, words in SHORT_DAYS.items():
            self.short_days.addItem(words, count)

    def show_plan(self) -> None:
        """Show the place of the document's plan."""
        plan = self._document.plan
        for field in _FIELDS:
            line = self.fields[field.name]
            line.show_value(field.shown(plan, ""))
            line.stand_empty(field.grey(plan, ""))
        is_unknown = plan.place.time_zone is not None and zone_of(plan.place) is None
        self.hint("time_zone", ZONE_UNKNOWN if is_unknown else "")
        self.hint("last_freeze_50", "" if plan.place.last_freeze else LIKE_A_DAY)
        self.hint("last_hard_freeze_50", HARD)
        self.hint("weekly_depth", "" if plan.place.watering is None else WATER)
        self.short_days.setCurrentIndex(self.short_days.findData(plan.place.short_days_count))

    def _finish(self, field: TypedField, text: str) -> None:
        self._document.change(field.label, field.apply(self._document.plan, "", text))
        self.show_plan()

    def _pick_short_days(self, row: int) -> None:
        count = bool(self.short_days.itemData(row))
        name = _("Days of less than ten hours {count}").format(count=SHORT_DAYS[count])
        self._document.change(name, change_place(self._document.plan, short_days_count=count))
