"""The places of all plants of a layout as one array, for drawing and for export."""

from functools import lru_cache
from itertools import cycle

import numpy as np
from numpy.typing import NDArray

from gardenplot.layout.turn import Turn
from gardenplot.layout.value import Layout

Places = NDArray[np.int64]


@lru_cache(maxsize=4096)
def positions(layout: Layout) -> Places:
    """Places as an array of shape (plants, 2): tape reading and offset from the base line, in nm, row by row.

    A broadcast band has no places. The array is shared and cannot be written to.
    """
    places = (_by_turns if _is_alike(layout) else _one_by_one)(layout)
    if layout.grid.turn is not None:
        _turn_back(layout.grid.turn, places)
    if layout.rings:
        places = np.array([place for ring in layout.rings for place in ring.places], dtype=np.int64).reshape(-1, 2)
    places.setflags(write=False)
    return places


def _turn_back(turn: Turn, places: Places) -> None:
    """Places of a turned frame put where they are in the bed, as `Turn.place` has them, all at once."""
    (along, across), (cosine, sine) = (places + np.array(turn.origin)).T, turn.cosine_and_sine
    places[:, 0] = np.rint(along * cosine - across * sine)
    places[:, 1] = np.rint(along * sine + across * cosine)


def _columns(layout: Layout) -> tuple[int, int]:
    """Which column has what is read along a row, and which has its offset."""
    return (1, 0) if layout.grid.runs_across else (0, 1)


def _is_alike(layout: Layout) -> bool:
    """Whether rows have one run each, of one or two kinds by turns, as full rows in a plain bed have."""
    return [len(runs) for runs in layout.fills] in ([1], [1, 1])


def _by_turns(layout: Layout) -> Places:
    """Places of rows that have one run each, all rows of a kind at once."""
    (along, beside), fills = _columns(layout), layout.fills
    in_turn = sum([run.count for (run,) in fills])
    places = np.empty((-(-len(layout.offsets) // len(fills)), in_turn, 2), dtype=np.int64)
    begin = held = 0
    for number, ((first, step, count),) in enumerate(fills):
        end, offsets = begin + count, layout.offsets[number :: len(fills)]
        places[:, begin:end, along] = np.arange(first, first + count * step, step)
        places[: len(offsets), begin:end, beside].T[:] = offsets
        begin = end
        held += count * len(offsets)
    return places.reshape(-1, 2)[:held]


def _one_by_one(layout: Layout) -> Places:
    """Places of runs of any number and length, all at once.

    Steps are counted from the head of the array, and each run is moved back by those before it; 100,000 rows of 10 km
    stay within 64 bits.
    """
    begins, counts, steps, held = [], [], [], 0
    for offset, runs in zip(layout.offsets, cycle(layout.fills), strict=False):
        for first, step, count in runs:
            begins.append((first - step * held, offset))
            counts.append(count)
            steps.append(step)
            held += count
    if not held:
        return np.empty((0, 2), dtype=np.int64)
    places = np.repeat(np.array(begins, dtype=np.int64), counts, axis=0)
    places[:, 0] += np.arange(held) * (steps[0] if len(set(steps)) == 1 else np.repeat(steps, counts))
    return np.ascontiguousarray(places[:, ::-1]) if layout.grid.runs_across else places
