"""The places of all plants of a layout as one array, for drawing and for export."""

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from gardenplot.layout.turn import Turn
from gardenplot.layout.value import Layout, Run

Places = NDArray[np.int64]


@lru_cache(maxsize=4096)
def positions(layout: Layout) -> Places:
    """Places as an array of shape (plants, 2): tape reading and offset from the base line, in nm, row by row.

    A broadcast band has no places. The array is shared and cannot be written to.
    """
    runs = [(row.offset, run) for row in layout.rows for run in row.runs if run.count]
    rings = [place for ring in layout.rings for place in ring.places]
    places = np.empty((sum(run.count for _offset, run in runs) + len(rings), 2), dtype=np.int64)
    readings, offsets = (places.T[1], places.T[0]) if layout.grid.runs_across else places.T
    if len({(run.count, run.step) for _offset, run in runs}) == 1:
        _fill_alike(runs, readings, offsets)
    else:
        _fill_each(runs, readings, offsets)
    if layout.grid.turn is not None:
        _turn_back(layout.grid.turn, places)
    if rings:
        places[-len(rings) :] = rings
    places.flags.writeable = False
    return places


def _turn_back(turn: Turn, places: Places) -> None:
    """Places of a turned frame put where they are in the bed, as `Turn.place` has them, all at once."""
    (along, across), (cosine, sine) = (places + np.array(turn.origin)).T, turn.cosine_and_sine
    places[:, 0] = np.rint(along * cosine - across * sine)
    places[:, 1] = np.rint(along * sine + across * cosine)


_Runs = list[tuple[int, Run]]


def _fill_alike(runs: _Runs, readings: Places, offsets: Places) -> None:
    """Fill in runs of as many plants each, as far apart, all at once."""
    heads = np.array([(offset, run.first) for offset, run in runs], dtype=np.int64)
    shape, total = (len(runs), runs[0][1].count), len(runs) * runs[0][1].count
    along, ladder = readings[:total].reshape(shape), runs[0][1].step * np.arange(shape[1])
    if (heads[:, 1] == heads[0, 1]).all():
        along[:] = heads[0, 1] + ladder
    else:
        np.add(heads[:, 1:2], ladder, out=along)
    offsets[:total].reshape(shape)[:] = heads[:, :1]


def _fill_each(runs: _Runs, readings: Places, offsets: Places) -> None:
    """Fill in runs one after another."""
    ladder = np.arange(max((run.count for _offset, run in runs), default=0))
    at = 0
    for offset, run in runs:
        np.add(ladder[: run.count] * run.step, run.first, out=readings[at : at + run.count])
        offsets[at : at + run.count] = offset
        at += run.count
