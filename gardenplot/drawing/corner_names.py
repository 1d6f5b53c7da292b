"""What the corners of an outline are called, in its drawing and in the table of its corners."""

from gardenplot.plan import Bed
from gardenplot.words import _


def named_corners(bed: Bed) -> dict[int, str]:
    """The names of an outline's corners by their numbers from 0 in its order: "c1", "c2".

    Those that are the ends of the base line have none: there stand the head stake and the foot stake.
    """
    ends = (0, 0), (bed.length.nm, 0)
    others = (number for number, (x, y) in enumerate(bed.outline) if (x.nm, y.nm) not in ends)
    return {number: _("c{number}").format(number=named) for named, number in enumerate(others, 1)}
