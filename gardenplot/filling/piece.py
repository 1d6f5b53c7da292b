"""What has found its place while a season is filled: a wish, a piece of one, or an order's market day."""

from attrs import frozen

from gardenplot.filling.model import Block, Taken, Way
from gardenplot.filling.task import Posed
from gardenplot.filling.wanted import Wanted
from gardenplot.season import Dates


@frozen
class Piece:
    """A block in a strip: by its number which of what is wanted it is, and what that is for this block alone.

    `start` and `length` are in nm from the strip's beginning, the gap at its foot being a part of it. `worth` is
    in the whole numbers of its task.
    """

    number: int
    wanted: Wanted
    way: Way
    dates: Dates
    plants: int
    worth: int
    start: int
    length: int

    @property
    def end(self) -> int:
        """Where the next block may begin."""
        return self.start + self.length

    @property
    def taken(self) -> Taken:
        """The ground that it takes, for whatever else is placed."""
        return Taken(self.start, self.end, self.way.first, self.way.last)

    def shares_days(self, other: "Piece | Taken") -> bool:
        """Whether it may not stand on the same ground as another one."""
        taken = other if isinstance(other, Taken) else other.taken
        return self.way.first < taken.last and taken.first < self.way.last and self.way.first >= taken.since


Pieces = tuple[Piece, ...]


def piece_of(posed: Posed, number: int, block: Block) -> Piece:
    """A block of a posed task as a piece of what is wanted by that number."""
    way = posed.task.wishes[block.wish][block.way]
    dates = posed.dates[block.wish][block.way]
    plants, worth = posed.plants[block.wish][block.way][block.size], way.worths[block.size]
    length = block.end - block.start
    return Piece(
        number, posed.wanted[block.wish], way, dates, plants, worth, block.start, length
    )  # fmt: skip


def blocked(taken: tuple[Taken, ...], pieces: Pieces, strip: int) -> tuple[Taken, ...]:
    """What is not free in a strip once pieces stand there too."""
    return tuple(sorted((*taken, *(one.taken for one in pieces if one.way.strip == strip))))
