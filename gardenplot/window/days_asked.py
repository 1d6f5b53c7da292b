"""The first and the last day that a list is for, as they are typed; an empty line is no limit."""

from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gardenplot.errors import PlanError
from gardenplot.gestures.days_read import date_from
from gardenplot.gestures.reading import text_of
from gardenplot.window.fields import Form, Typed
from gardenplot.words import _

_ROUND_IT = 26
"""Pixels of a line round its text."""
_OF_EACH_MONTH = tuple(text_of(date(2000, month, 28)) for month in range(1, 13))
"""Days of which one is as wide as any; figures are all of one width."""


class DaysAsked(QWidget):
    """Two lines for days; what is no date, or would end before it begins, is said below its line."""

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.first: date | None = None
        self.last: date | None = None
        self.form = Form(self)
        self.begin = self.form.add_typed("first", _("From day"), self._type_first, empty=_("any"))
        self.end = self.form.add_typed("last", _("To day"), self._type_last, empty=_("any"))
        for line in (self.begin, self.end):
            line.setFixedWidth(max(map(line.fontMetrics().horizontalAdvance, _OF_EACH_MONTH)) + _ROUND_IT)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.form)

    def _type_first(self, text: str) -> None:
        day = date_from(text)
        _check(day, self.last)
        self.first = day
        self._keep(self.begin, day)

    def _type_last(self, text: str) -> None:
        day = date_from(text)
        _check(self.first, day)
        self.last = day
        self._keep(self.end, day)

    def _keep(self, line: Typed, day: date | None) -> None:
        line.show_value(text_of(day))
        self.changed.emit()


def _check(first: date | None, last: date | None) -> None:
    if first is not None and last is not None and last < first:
        raise PlanError(_("{last} is before {first}").format(last=text_of(last), first=text_of(first)))
