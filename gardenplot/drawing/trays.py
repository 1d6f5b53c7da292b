"""Trays as marks: each a rectangle with the walls between its cells hinted at."""

from gardenplot.drawing.marks import Hatch, Mark, Outline, Pen, box
from gardenplot.layout import Layout
from gardenplot.layout.positions import positions
from gardenplot.units import MM

_RIM = 6 * MM
"""How far inside the ground that a tray covers it is drawn, so that neighbours are told apart."""


def tray_marks(layout: Layout, pen: Pen) -> list[Mark]:
    """The trays of a block."""
    along, across = layout.grid.in_row / 2 - _RIM, layout.grid.between / 2 - _RIM
    return [
        Outline(
            box((x - along) / MM, (y - across) / MM, (x + along) / MM, (y + across) / MM),
            fill=pen.ink, tint=0.3, pen=pen, hatch=Hatch.CROSSED,
        )
        for x, y in positions(layout)
    ]  # fmt: skip
