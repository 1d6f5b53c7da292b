"""What the tables below the drawing show of a plan, row by row; a row that stays as it is stays the same object."""

from datetime import date
from functools import lru_cache

from gardenplot.drawing import date_list
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says, weight, where
from gardenplot.drawing.tables import CountRow, OrderRow, counts_by_bed, counts_by_crop, order_rows
from gardenplot.findings import find_all
from gardenplot.plan import Plan
from gardenplot.units.figures import grouped
from gardenplot.window.tables import TableRow
from gardenplot.words import _

Lines = tuple[TableRow, ...]


def count_lines(plan: Plan) -> Lines:
    """The beds with their plantings, and below them what they have in all."""
    beds = counts_by_bed(plan)
    plants, clumps = sum(bed.plants for bed in beds), sum(bed.clumps for bed in beds)
    total = CountRow(_("In all"), "", "", plants, clumps=clumps)
    return tuple(_count_line(row) for row in (*beds, total))


def crop_lines(plan: Plan) -> Lines:
    """The crops."""
    return tuple(TableRow((row.name, row.told), row.crop) for row in counts_by_crop(plan))


def order_lines(plan: Plan) -> Lines:
    """The market days of the orders."""
    return tuple(TableRow(_order_cells(row), (row.order, row.market)) for row in order_rows(plan))


def date_lines(plan: Plan) -> Lines:
    """The weeks with what is to be done in them."""
    return tuple(_week_line(week) for week in date_list.by_week(plan))


def finding_lines(plan: Plan, today: date) -> Lines:
    """What cannot be done first, notes last."""
    look = looks(plan)
    found = sorted(find_all(plan, today), key=lambda one: (not one.cannot_be_done, one.is_note))
    return tuple(
        TableRow((weight(one), where(plan, one, look), says(plan, one, look)), one, grave=one.cannot_be_done)
        for one in found
    )


@lru_cache(maxsize=8192)
def _count_line(row: CountRow) -> TableRow:
    cells = (row.name, row.readings, row.rows, row.told)
    return TableRow(cells, row, tuple(map(_count_line, row.inner)), bold=bool(row.inner) or row.is_bed)


def _order_cells(row: OrderRow) -> tuple[str, ...]:
    return row.crop, grouped(row.units), row.day, grouped(row.stand), grouped(row.planted), row.met


@lru_cache(maxsize=1024)
def _week_line(week: "date_list.Week") -> TableRow:
    inner = tuple(TableRow(_date_cells(row), row) for row in week.rows)
    return TableRow((week.name, week.days, "", week.bench, "", ""), week, inner, bold=True)


def _date_cells(row: "date_list.DateRow") -> tuple[str, ...]:
    return row.day_words, row.what, row.name, row.amount_told, row.bed_name, _("done") if row.done else ""
