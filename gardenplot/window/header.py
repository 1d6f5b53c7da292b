"""Above the drawing: the plan's name, the day that is shown, and the way to the bed sheet."""

from datetime import date, timedelta

from PySide6.QtCore import QDate, QEvent, QLocale, QSignalBlocker, Qt
from PySide6.QtGui import QKeyEvent, QKeySequence, QMouseEvent
from PySide6.QtWidgets import QCheckBox, QDateEdit, QHBoxLayout, QPushButton, QSizePolicy, QSlider, QWidget

from gardenplot.drawing.style import Ink
from gardenplot.season import Span, season_of
from gardenplot.window.document import Document
from gardenplot.window.elided import Elided
from gardenplot.window.plain import PlainLabel, as_is
from gardenplot.window.script import runs
from gardenplot.window.sight import Sight
from gardenplot.window.theme import widget_font, write_in
from gardenplot.window.wrapping import Wrapping
from gardenplot.words import _

_LONGEST_NAME = 36


class _Day(QDateEdit):
    """The field of the day that is shown; the keys for undo are the plan's there too, since a day is no text."""

    def event(self, event: QEvent) -> bool:
        keys = QKeySequence.StandardKey
        if (
            event.type() is QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and (event.matches(keys.Undo) or event.matches(keys.Redo))
        ):
            event.ignore()
            return False
        return super().event(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Qt makes the calendar when a press opens it; its red would be one more colour, on days of work."""
        calendar = self.calendarWidget()
        for day in (Qt.DayOfWeek.Saturday, Qt.DayOfWeek.Sunday):
            calendar.setWeekdayTextFormat(day, calendar.weekdayTextFormat(Qt.DayOfWeek.Monday))
        super().mousePressEvent(event)


class Header(QWidget):
    """One line; the slider runs over the days of the plan."""

    def __init__(self, document: Document, sight: Sight, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        self.name, self.state = Elided(), PlainLabel()
        self.name.setFont(widget_font(17, bold=True))
        write_in(self.state, Ink.SECOND)
        self.day = _Day()
        self.day.setCalendarPopup(True)
        # Before the format, whose parts Qt puts in the order of the direction that it finds.
        self.day.setLayoutDirection(runs(QLocale().dayName(1)))
        self.day.setDisplayFormat("ddd d MMM yyyy")
        self.day.setAccessibleName(_("Day shown"))
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setMinimumWidth(60)
        self.slider.setMaximumWidth(220)
        self.slider.setAccessibleName(_("Day shown, along the season"))
        self.always = QCheckBox(_("all days"))
        self.sheet = QPushButton(_("Bed sheet …"))
        self.sheet.setProperty("strong", True)
        self._lay_out()
        self.day.dateChanged.connect(self._pick)
        self.slider.valueChanged.connect(lambda number: self._sight.show_day(date.fromordinal(number)))
        self.always.toggled.connect(self._pick_always)
        document.changed.connect(self.refresh)
        document.saved.connect(self.refresh)
        sight.day_changed.connect(self.refresh)

    def _lay_out(self) -> None:
        """All in one line where there is room, else in two."""
        row, plan, day = Wrapping(self, spacing=8), QHBoxLayout(), QHBoxLayout()
        row.setContentsMargins(12, 6, 12, 6)
        self.state.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        plan.addWidget(self.name)
        plan.addWidget(self.state, 1)
        for part in (PlainLabel(_("The beds on")), self.day, self.slider, self.always):
            day.addWidget(part)
            if part is not self.slider:
                # What the slider leaves of a wide line would go between the words and the day.
                part.setSizePolicy(QSizePolicy.Policy.Fixed, part.sizePolicy().verticalPolicy())
        for group in (plan, day):
            group.setSpacing(8)
            row.add_group(group)
        row.addWidget(self.sheet)
        row.pinned = row.itemAt(row.count() - 1)

    def refresh(self) -> None:
        """Show the name, whether it is saved, and the day."""
        name = self._document.name
        self.name.setText(name if len(name) <= _LONGEST_NAME else f"{name[: _LONGEST_NAME - 1]}…")
        self.name.shown_whole = name
        clean, path = self._document.is_saved, self._document.path
        saved = _("saved") if path else _("not saved yet")
        self.state.setText(f"· {saved if clean else _('changed')}")
        self.state.setToolTip(as_is(str(path)) if path else "")
        season = self._season()
        day = self._sight.day or _first_day(season)
        blockers = [QSignalBlocker(one) for one in (self.day, self.slider, self.always)]
        self.slider.setRange(min(season.first, day).toordinal(), max(season.last, day).toordinal())
        self.slider.setValue(day.toordinal())
        self.day.setDate(QDate(day.year, day.month, day.day))
        self.always.setChecked(self._sight.day is None)
        for part in (self.day, self.slider):
            part.setEnabled(self._sight.day is not None)
        del blockers

    def _season(self) -> Span:
        """The days of the plan, or a fortnight round today where it has none."""
        week, today = timedelta(days=7), self._document.today()
        return season_of(self._document.plan) or Span(today - week, today + week)

    def _pick(self, day: QDate) -> None:
        self._sight.show_day(date(day.year(), day.month(), day.day()))

    def _pick_always(self, always: bool) -> None:
        self._sight.show_day(None if always else _first_day(self._season()))


def _first_day(season: Span) -> date:
    """The day that is shown first where it was all days: a week into the season, today in a plan without days."""
    return season.first + timedelta(days=7)
