"""The place of every plant as CSV (RFC 4180), in millimetres from the head and from the base line."""

import csv
import io

from gardenplot.drawing.progress import Told, untold
from gardenplot.exports.cells import in_mm, plain
from gardenplot.layout import lay_out_plan
from gardenplot.layout.positions import positions
from gardenplot.plan import Plan

COLUMNS = ("bed", "planting", "row", "plant", "x_mm", "y_mm")


def drawn(plan: Plan, told: Told = untold) -> bytes:
    """The CSV of a plan: rows and plants are numbered from 1, from the base line across and from the head on.

    Trays that harden off are left out: their plants stand elsewhere in the end.
    """
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(COLUMNS)
    for number, laid in enumerate(lay_out_plan(plan)):
        told(number, len(plan.beds))
        for layout in laid.without_trays.layouts:
            places = iter(positions(layout).tolist())
            for row, count in enumerate(layout.per_row, 1):
                for plant in range(1, count + 1):
                    x, y = next(places)
                    writer.writerow((plain(laid.bed.id), plain(layout.planting), row, plant, in_mm(x), in_mm(y)))
    return text.getvalue().encode()
