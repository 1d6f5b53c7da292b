"""What is to be filled, in whole numbers: strips of ground by days, and the ways in which each wish could stand.

A strip is a bed's planting zone, its tape readings counted from its head. The gap that is kept between blocks is
taken for a part of each block, at its foot, and so of the strip: blocks that do not overlap then keep their gaps.
"""

from typing import NamedTuple

from attrs import frozen

ALWAYS = -(10**9), 10**9
"""First and last day where nobody says when."""


class Taken(NamedTuple):
    """A rectangle of a strip that is not free: from and to, and from its first day until its last, that left out.

    What goes into the ground before the day `since` may share it: places reserved for a following crop.
    """

    start: int
    end: int
    first: int
    last: int
    since: int = ALWAYS[0]


@frozen
class Strip:
    """Ground to fill: its length with one gap more, and what is not free."""

    length: int
    taken: tuple[Taken, ...] = ()


@frozen
class Way:
    """One way in which a wish could stand: in one strip, between two days (the last left out), in one of some sizes.

    `lengths` grow and have the gap in them; `worths` are what each is worth and do not fall. `low` and `high` bound
    the stretch of the strip that may be used. `shortest` are lengths that no place in the strip can do with less
    than, where the length depends on the place; without them these are the lengths.
    """

    strip: int
    first: int
    last: int
    lengths: tuple[int, ...]
    worths: tuple[int, ...]
    low: int = 0
    high: int = 2**62
    shortest: tuple[int, ...] = ()

    @property
    def least_lengths(self) -> tuple[int, ...]:
        """The lengths that the bound counts with."""
        return self.shortest or self.lengths


@frozen
class Task:
    """Strips to fill and, for each wish, the ways it could stand, of which at most one is taken."""

    strips: tuple[Strip, ...]
    wishes: tuple[tuple[Way, ...], ...]


class Block(NamedTuple):
    """A wish that stands: at its place and on its days, by the numbers of its wish, of its way and of its size."""

    start: int
    end: int
    first: int
    last: int
    since: int
    wish: int
    way: int
    size: int


@frozen
class Answer:
    """Blocks that do not overlap, in the order of their wishes, and what they are worth together."""

    blocks: tuple[Block, ...]
    worth: int


def worth_of(task: Task, blocks: tuple[Block, ...]) -> int:
    """What blocks are worth together."""
    return sum(task.wishes[block.wish][block.way].worths[block.size] for block in blocks)


def wrongs(task: Task, answer: Answer) -> list[str]:
    """What is wrong with an answer, in words for a contributor: nothing, whoever found it."""
    found = []
    if len({block.wish for block in answer.blocks}) < len(answer.blocks):
        found.append("a wish stands twice")
    by_strip: dict[int, list[Block]] = {}
    for block in answer.blocks:
        way = task.wishes[block.wish][block.way]
        by_strip.setdefault(way.strip, []).append(block)
        if (block.first, block.last) != (way.first, way.last) or block.end - block.start != way.lengths[block.size]:
            found.append(f"{block} is not as its way says")
        if block.start < max(0, way.low) or block.end > min(task.strips[way.strip].length, way.high):
            found.append(f"{block} leaves its stretch")
    for number, blocks in by_strip.items():
        for place, block in enumerate(blocks):
            others: list[Taken | Block] = [*task.strips[number].taken, *blocks[place + 1 :]]
            found += [f"{block} and {other} overlap" for other in others if overlap(block, other)]
    if answer.worth != worth_of(task, answer.blocks):
        found.append("the worth is not that of the blocks")
    return found


def overlap(block: Block, other: Taken | Block) -> bool:
    """Whether two rectangles want the same ground on the same day, a follower's reserved ground apart."""
    return (
        block.start < other.end
        and other.start < block.end
        and block.first < other.last
        and other.first < block.last
        and block.first >= other.since
    )
