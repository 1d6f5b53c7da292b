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
    columns = (1, 0) if layout.grid.runs_across else (0, 1)
    places = (_by_turns if _take_turns(runs) else _one_by_one)(runs, columns)
    if layout.grid.turn is not None:
        _turn_back(layout.grid.turn, places)
    if layout.rings:
        places = np.array([place for ring in layout.rings for place in ring.places], dtype=np.int64).reshape(-1, 2)
    places.flags.writeable = False
    return places


def _turn_back(turn: Turn, places: Places) -> None:
    """Places of a turned frame put where they are in the bed, as `Turn.place` has them, all at once."""
    (along, across), (cosine, sine) = (places + np.array(turn.origin)).T, turn.cosine_and_sine
    places[:, 0] = np.rint(along * cosine - across * sine)
    places[:, 1] = np.rint(along * sine + across * cosine)


_Runs = list[tuple[int, Run]]


def _take_turns(runs: _Runs) -> bool:
    """Whether all runs are like the first two by turns, as those of full rows in a plain bed are."""
    return bool(runs) and all(run == runs[number % 2][1] for number, (_offset, run) in enumerate(runs))


def _by_turns(runs: _Runs, columns: tuple[int, int]) -> Places:
    """Places of runs that take turns, pair by pair; what an odd last run leaves of its pair is cut off."""
    pairs, (along, beside) = (len(runs) + 1) // 2, columns
    one, other = runs[0][1], runs[-1 if len(runs) == 1 else 1][1]
    places = np.empty((pairs, one.count + other.count, 2), dtype=np.int64)
    offsets = np.array([offset for offset, _run in runs] + [0] * (len(runs) % 2)).reshape(pairs, 2)
    for begin, run, number in ((0, one, 0), (one.count, other, 1)):
        part = places[:, begin : begin + run.count]
        part[:, :, along] = run.first + run.step * np.arange(run.count)
        part[:, :, beside] = offsets[:, number : number + 1]
    return places.reshape(-1, 2)[: sum(run.count for _offset, run in runs)]


def _one_by_one(runs: _Runs, columns: tuple[int, int]) -> Places:
    """Places of runs, one run after another."""
    places = np.empty((sum(run.count for _offset, run in runs), 2), dtype=np.int64)
    readings, offsets = (places[:, column] for column in columns)
    ladders: dict[int, Places] = {}
    most, at = max((run.count for _offset, run in runs), default=0), 0
    for offset, (first, step, count) in runs:
        ladder = ladders.get(step)
        if ladder is None:
            ladder = ladders[step] = step * np.arange(most)
        np.add(ladder[:count], first, out=readings[at : at + count])
        offsets[at : at + count] = offset
        at += count
    return places
