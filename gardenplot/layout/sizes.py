"""The sizes that a block of a planting could have: the plants that it holds, and the length that they need."""

from functools import lru_cache
from typing import NamedTuple

from attrs import evolve, frozen

from gardenplot.layout.block import Sized, length_at, most_plants, sized
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Bed, Crop, Pattern, Planting

_MOST_SIZES = 512
_STARTS = 12
"""Places at which a block's length is asked for in a bed where it depends on the place."""


@frozen
class BlockSizes:
    """Numbers of plants, growing, and the lengths in nm in which they stand wherever the block begins.

    `shortest` are lengths that no place in the bed can do with less than; the lengths themselves in a plain bed.
    """

    plants: tuple[int, ...]
    lengths: tuple[int, ...]
    shortest: tuple[int, ...]


class _Asked(NamedTuple):
    """A planting of no size of its own in a bed, and the grid in which it stands there."""

    bed: Bed
    crop: Crop
    planting: Planting
    size: Sized


def block_sizes(bed: Bed, crop: Crop, planting: Planting, least: int, most: int | None) -> BlockSizes:
    """The sizes of a planting from `least` plants to `most`, or to what its bed holds; none if none fits."""
    return _sizes(
        evolve(bed, id="", name="", note="", history=()), crop, evolve(planting, id="", bed=""), least, most
    )


def block_within(
    bed: Bed, crop: Crop, planting: Planting, most: int | None, start: int, room: int
) -> tuple[int, int]:
    """The plants, no more than the most, that a block which begins at `start` holds within a room; and its length."""
    asked = _asked(bed, crop, planting)
    held = _held(asked, start, room)
    plants = held if most is None else min(held, most)
    return (plants, _length(asked, plants, start)) if plants > 0 else (0, 0)


@lru_cache(maxsize=1024)
def _sizes(bed: Bed, crop: Crop, planting: Planting, least: int, most: int | None) -> BlockSizes:
    if planting.pattern is Pattern.RINGS or not is_plain(bed):
        return _sizes_by_place(bed, crop, planting, least, most)
    room = bed.zone[1] - bed.zone[0]
    plants, lengths = _grown_to(bed, crop, planting, least, most, bed.zone[0], room)
    return BlockSizes(tuple(plants), tuple(lengths), tuple(lengths))


def _grown_to(
    bed: Bed, crop: Crop, planting: Planting, least: int, most: int | None, start: int, room: int
) -> tuple[list[int], list[int]]:
    """From the least on, each length with as many plants as it holds, up to the most or the room.

    Where there are too many lengths, evenly chosen ones.
    """
    plants: list[int] = []
    lengths: list[int] = []
    asked = _asked(bed, crop, planting)
    held = _held(asked, start, room)
    until = held if most is None else min(held, most)
    wanted, step = max(1, least), max(1, (until - least) // _MOST_SIZES)
    while wanted <= until:
        length = _length(asked, wanted, start)
        if length > room:
            break
        count = min(until, max(wanted, _held(asked, start, length)))
        plants.append(count)
        lengths.append(length)
        wanted = min(until, count + step) if count < until else until + 1
    return plants, lengths


def _sizes_by_place(bed: Bed, crop: Crop, planting: Planting, least: int, most: int | None) -> BlockSizes:
    """In a bed whose rows are cut by its shape: the longest that any of some places needs.

    No place can do with less than a plain bed of its width and with its rows.
    """
    first, last = bed.zone
    if planting.pattern is Pattern.RINGS:
        held = _held(_asked(bed, crop, planting), first, last - first)
        count = held if most is None else min(held, most)
        whole = (last - first,) if max(1, least) <= count else ()
        return BlockSizes((count,) * len(whole), whole, whole)
    box = evolve(bed, outline=(), obstacles=(), diameter=None, box=None, slope=None, map_length=None)
    asked = _asked(bed, crop, planting)
    plants, shortest = _grown_to(box, crop, planting, least, most, first, last - first)
    found: list[tuple[int, int, int]] = []
    for count, short in zip(plants, shortest, strict=True):
        starts = [first + (last - first - short) * number // _STARTS for number in range(_STARTS + 1)]
        needed = [(start, _length(asked, count, start)) for start in starts]
        fitting = [length for start, length in needed if start + length <= last]
        if not fitting:
            break
        found.append((count, max([*fitting, found[-1][1] + 1] if found else fitting), short))
    return BlockSizes(*(tuple(part) for part in zip(*found, strict=True))) if found else BlockSizes((), (), ())


def _asked(bed: Bed, crop: Crop, planting: Planting) -> _Asked:
    unsized = evolve(planting, plants=None, order=None, length=None)
    return _Asked(bed, crop, unsized, sized(bed, crop, unsized, None))


def _held(asked: _Asked, start: int, length: int) -> int:
    bed, crop, planting, size = asked
    return most_plants(bed, crop, planting, size, (start, start + length))


def _length(asked: _Asked, plants: int, start: int) -> int:
    bed, crop, planting, size = asked
    return length_at(bed, crop, planting, size._replace(wanted=plants), start)
