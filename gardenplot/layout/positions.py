"""The places of all plants of a layout as one array, for drawing and for export."""

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from gardenplot.layout.value import Layout

Places = NDArray[np.int64]


@lru_cache(maxsize=4096)
def positions(layout: Layout) -> Places:
    """Places as an array of shape (plants, 2): tape reading and offset from the base line, in nm, row by row.

    A broadcast band has no places. The array is shared and cannot be written to.
    """
    runs = [(row.offset, run) for row in layout.rows for run in row.runs if run.count]
    places = np.empty((sum(run.count for _offset, run in runs), 2), dtype=np.int64)
    at = 0
    for row_offset, run in runs:
        places[at : at + run.count, 0] = run.first + run.step * np.arange(run.count)
        places[at : at + run.count, 1] = row_offset
        at += run.count
    places.flags.writeable = False
    return places
