"""The plants of every row as CSV (RFC 4180): the counts of the count sheet, for a spreadsheet."""

import csv
import io
from collections.abc import Iterator

from gardenplot.drawing.letters import looks
from gardenplot.drawing.turns import walked
from gardenplot.exports.cells import in_mm, plain
from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.plan import Plan, crop_of

COLUMNS = ("bed", "planting", "crop", "letter", "from_mm", "to_mm", "rows", "row", "plants")


def write_counts(plan: Plan) -> bytes:
    """A line for each row of each planting, in walking order; trays that harden off are left out.

    Beds and plantings stand by their ids, as in the places of plants, crops by their names. Rows are numbered from 1,
    from the base line across, those across the bed from the head, rings from the outside in; a sown band has no row,
    and one line.
    """
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(COLUMNS)
    for laid in lay_out_plan(plan):
        writer.writerows(_rows(plan, laid.without_trays))
    return text.getvalue().encode()


def _rows(plan: Plan, laid: LaidOut) -> Iterator[tuple[str | int, ...]]:
    look = looks(plan)
    for layout in walked(laid):
        per_row = layout.per_row
        what = (
            plain(layout.bed), plain(layout.planting), plain(crop_of(plan, layout.crop).name),
            look[layout.planting].letter, in_mm(layout.start), in_mm(layout.end),
            layout.rows_planted,
        )  # fmt: skip
        for row, plants in enumerate(per_row, 1):
            yield *what, row, plants
        if not per_row:
            yield *what, "", layout.plants
