"""The list of what to buy and carry as CSV (RFC 4180)."""

import csv
import io

from gardenplot.drawing.shopping_list import ShopGroup
from gardenplot.drawing.tables import LIST_COLUMNS
from gardenplot.exports.cells import plain
from gardenplot.words import _


def write_list(groups: tuple[ShopGroup, ...]) -> bytes:
    """A line for each thing, its group first; thin spaces of the screen are plain ones."""
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow((_("group"), *LIST_COLUMNS))
    for group in groups:
        for row in group.rows:
            writer.writerow(plain(cell.replace("\u2009", " ")) for cell in (group.name, *row.cells))
    return text.getvalue().encode()
