"""What the corners of an outline are called, in its drawing and in the table of its corners."""

from gardenplot.words import _


def corner_name(number: int) -> str:
    """The name of a corner by its number from 1 in the order of the outline: "c3"."""
    return _("c{number}").format(number=number)
