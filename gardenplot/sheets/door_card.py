"""The door card: a week of nights on a page, a line a night: sunset, cover by, boxes for covers on and open again."""

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import groupby
from math import ceil

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.cautions import COVERS
from gardenplot.drawing.days import days_between, short_day
from gardenplot.drawing.night_words import (
    MORNING,
    NO_END,
    NO_SUNSET,
    NOT_ALL,
    VENT,
    ahead_words,
    clock_words,
    cover_names,
    to_write_words,
    why_words,
)  # fmt: skip
from gardenplot.drawing.progress import Told, untold
from gardenplot.errors import PlanError
from gardenplot.plan import Plan
from gardenplot.season.nights import Night, covered_span, nights
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.list_page import ListHead, draw_box, draw_fitted, draw_list_head
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, Sheets, broken
from gardenplot.words import _, ngettext

MOST_DAYS = 2 * 366
"""Days for which cards are made at once."""
MOST_BOXES = 12
"""Covers that have a box of their own on each line; of more all share one."""
_BOX, _BOX_PITCH = 13.0, 42.0
_BOXES_AT, _OPEN = 254.0, 42.0
"""Points from the left margin to the boxes of covers, and the width of the last column."""
_LINE = 24.0
"""Points of height of a line of boxes."""
_LEAST_ROW, _MOST_ROW = 44.0, 62.0
_FEW = 2
"""So many covers are named at their boxes; of more each has a number, told below."""
_LEGEND_PITCH = 14.0
_GREY = 0.93


@frozen
class _Week:
    monday: date
    nights: tuple[Night, ...]


def add_door_cards(book: Book, plan: Plan, said: About, _choices: Choices = USUAL, told: Told = untold) -> None:
    """Add the cards of all weeks in which a cover stands, each known by its Monday in ISO 8601.

    Raises NothingToPrintError where none stands, PlanError for longer than two years.
    """
    weeks = _weeks(plan)
    head = ListHead(_("Door card"), said, f"{NOT_ALL} {COVERS}")
    numbers = {cover.id: number for number, cover in enumerate(plan.covers, 1)}
    for number, week in enumerate(weeks):
        told(number, len(weeks))
        _draw_card(book, plan, head, week, numbers, tuple(_notes(plan, week, is_first=not number)))
        book.end_page()


def card_for(cards: Sheets, day: date | None) -> int:
    """The number from 0 of the card for a day, else of the first after it, else of the last."""
    later = (page for monday, page in cards.first_page.items() if day is None or _sunday(monday) >= day)
    return next(later, len(cards.first_page) - 1)


def _weeks(plan: Plan) -> tuple[_Week, ...]:
    span = covered_span(plan)
    if span is None:
        raise NothingToPrintError(_("no cover stands on any night, so there is no door card"))
    if span.days > MOST_DAYS:
        raise PlanError(
            _("covers stand from {first} to {last}: door cards are made for two years at most").format(
                first=span.first, last=span.last
            )
        )
    return tuple(
        _Week(monday, tuple(inner)) for monday, inner in groupby(nights(plan, span), lambda one: _monday(one.day))
    )


def _monday(day: date) -> date:
    # The calendar begins on a Monday.
    return day - timedelta(days=day.weekday())


def _sunday(monday: str) -> date:
    first = date.fromisoformat(monday)
    # The calendar ends on a Friday.
    return first + timedelta(days=min(6, (date.max - first).days))


def _draw_card(
    book: Book, plan: Plan, head: ListHead, week: _Week, numbers: dict[str, int], notes: tuple[str, ...]
) -> None:
    days = days_between(week.monday, _sunday(week.monday.isoformat()))
    y = draw_list_head(book, head, days)
    book.bookmark(days, week.monday.isoformat())
    page = book.canvas
    width = page._pagesize[0] - 2 * MARGIN
    for words, face in ((MORNING, BOLD), (VENT, BOLD), *((words, FACE) for words in notes)):
        page.setFont(face, 12)
        for line in broken(words, face, 12, width):
            y -= 16
            page.drawString(MARGIN, y, line)
    y = _draw_headings(page, y - 22, width)
    boxes = _boxes(plan, week, numbers, width - _BOXES_AT - _OPEN)
    for number, night in enumerate(week.nights):
        height = boxes.height_of(night)
        if number % 2:
            page.setFillGray(_GREY)
            page.rect(MARGIN, y - height, width, height, stroke=0, fill=1)
            page.setFillGray(0)
        _draw_night(page, night, boxes, y, height)
        y -= height
    page.setLineWidth(0.35 * mm)
    page.line(MARGIN, y, MARGIN + width, y)
    if not boxes.are_named:
        _draw_covers(page, plan, week, numbers, y - 24)


@frozen
class _Boxes:
    """What stands at the boxes of a card: a label for each cover, how far apart, so many on a line."""

    labels: dict[str, str]
    pitch: float
    per_line: int
    are_named: bool

    def labels_of(self, night: Night) -> list[str]:
        """The labels of the boxes of a night."""
        if len(self.labels) > MOST_BOXES:
            return [_("all {count}").format(count=len(night.covers))]
        return [self.labels[cover.id] for cover in night.covers]

    def height_of(self, night: Night) -> float:
        """The height of a night's line in points."""
        lines = ceil(len(self.labels_of(night)) / self.per_line)
        return max(_MOST_ROW if len(self.labels) <= MOST_BOXES else _LEAST_ROW, lines * _LINE + 8)


def _boxes(plan: Plan, week: _Week, numbers: dict[str, int], room: float) -> _Boxes:
    standing = {cover.id for night in week.nights for cover in night.covers}
    if len(standing) <= _FEW:
        names = cover_names(plan)
        return _Boxes({one: names[one] for one in standing}, room, 1, are_named=True)
    labels = {one: str(numbers[one]) for one in standing}
    if len(standing) > MOST_BOXES:
        return _Boxes(labels, room, 1, are_named=False)
    return _Boxes(labels, _BOX_PITCH, int(room // _BOX_PITCH), are_named=False)


def _notes(plan: Plan, week: _Week, *, is_first: bool) -> Iterator[str]:
    """How long before sunset, by which clock, and why some times are not told; what the plan lacks on the first card.

    The others hang on a door, where nobody types anything into the plan.
    """
    ahead = ahead_words(plan.place)
    if any(night.sunset is not None for night in week.nights):
        where = plan.place.name or _("the place")
        ahead = _("{ahead}, by the clock at {place}, summer time counted").format(ahead=ahead, place=where)
    yield ahead
    if any(cover.off is None for night in week.nights for cover in night.covers):
        yield NO_END
    for why in dict.fromkeys(night.why for night in week.nights):
        if why is not None:
            to_do = to_write_words(why)
            yield from (why_words(why), *to_do) if is_first or len(to_do) == 1 else to_do[1:]


def _draw_headings(page: Canvas, y: float, width: float) -> float:
    page.setFont(FACE, 10)
    for left, words in (
        (4.0, _("night of")), (112.0, _("sunset")), (170.0, _("cover by")), (_BOXES_AT, _("covered")),
    ):  # fmt: skip
        page.drawString(MARGIN + left, y, words)
    page.drawRightString(MARGIN + width, y, _("opened next morning"))
    page.setLineWidth(0.35 * mm)
    page.line(MARGIN, y - 5, MARGIN + width, y - 5)
    return y - 5


def _draw_night(page: Canvas, night: Night, boxes: _Boxes, top: float, height: float) -> None:
    middle = top - height / 2
    page.setFont(FACE, 14)
    page.drawString(MARGIN + 4, middle - 5, f"{night.day:%a}")
    page.setFont(BOLD, 17)
    page.drawString(MARGIN + 40, middle - 6, short_day(night.day))
    _draw_times(page, night, middle)
    labels = boxes.labels_of(night)
    first = middle + _LINE * (ceil(len(labels) / boxes.per_line) - 1) / 2
    for number, label in enumerate(labels):
        line, column = divmod(number, boxes.per_line)
        x, y = MARGIN + _BOXES_AT + boxes.pitch * column, first - _LINE * line
        draw_box(page, x, y, _BOX)
        size = 12 if boxes.are_named else 14
        draw_fitted(page, label, (x + _BOX + 5, y - 5), boxes.pitch - _BOX - 7, BOLD, size)
    draw_box(page, page._pagesize[0] - MARGIN - _OPEN + 8, middle, 18)


def _draw_times(page: Canvas, night: Night, middle: float) -> None:
    """Sunset and the time to cover by; a line to write each on where it is not known."""
    sunset, by = (MARGIN + 112, 54.0), (MARGIN + 170, _BOXES_AT - 176)
    page.setLineWidth(0.18 * mm)
    if night.sunset is not None:
        draw_fitted(page, clock_words(night.sunset, night.day), (sunset[0], middle - 5), sunset[1], FACE, 14)
    elif night.why in NO_SUNSET:
        draw_fitted(page, _("none"), (sunset[0], middle - 5), sunset[1], FACE, 14)
    else:
        page.line(sunset[0], middle - 8, sunset[0] + sunset[1] - 6, middle - 8)
    if night.cover_by is not None:
        draw_fitted(page, clock_words(night.cover_by, night.day), (by[0], middle - 8), by[1], BOLD, 22)
    else:
        page.line(by[0], middle - 8, by[0] + by[1] - 4, middle - 8)


def _draw_covers(page: Canvas, plan: Plan, week: _Week, numbers: dict[str, int], y: float) -> None:
    """Which cover is which, in two columns; where there is no room for all, how many more there are."""
    names = cover_names(plan)
    standing = sorted({cover.id for night in week.nights for cover in night.covers}, key=lambda one: numbers[one])
    width = (page._pagesize[0] - 2 * MARGIN) / 2
    lines = max(1, int((y - MARGIN - 30) // _LEGEND_PITCH))
    columns = 1 if len(standing) <= 4 else 2
    shown = standing if len(standing) <= lines * columns else standing[: lines * columns - 1]
    words = [f"{numbers[one]}  {names[one]}" for one in shown]
    if more := len(standing) - len(shown):
        words.append(ngettext("and {count} more", "and {count} more", more).format(count=more))
    down = ceil(len(words) / columns)
    for number, line in enumerate(words):
        column, row = divmod(number, down)
        room = 2 * width / columns - 12
        draw_fitted(page, line, (MARGIN + column * width, y - _LEGEND_PITCH * row), room, FACE, 12)
