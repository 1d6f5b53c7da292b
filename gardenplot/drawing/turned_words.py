"""How the rows of a turned grid lie, in words."""

from gardenplot.layout.outline import Point
from gardenplot.layout.turn import Turn
from gardenplot.units import Units
from gardenplot.units.figures import tape
from gardenplot.words import _


def angle_words(turn: Turn) -> str:
    """The angle between tape and rows: "11.3°"."""
    return f"{abs(turn.degrees):.1f}°"


def edge_words(turn: Turn, units: Units) -> str:
    """What rows are turned to: "turned to the edge from 0.00 m by 0.00 m to 6.00 m by 1.00 m"."""
    first, last = (place_words(end, units) for end in sorted(turn.edge))
    if turn.is_square:
        return _("square to the edge from {first} to {last}").format(first=first, last=last)
    return _("turned to the edge from {first} to {last}").format(first=first, last=last)


def place_words(place: Point, units: Units) -> str:
    """A place as tape reading and distance from the base line: "6.00 m by 1.00 m"."""
    return _("{reading} by {offset}").format(reading=tape(place[0], units), offset=tape(place[1], units))
