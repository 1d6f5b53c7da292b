"""A piece of a spacing strip from one cut to the next, what is said on it, and where it lies on its page."""

from itertools import pairwise

from attrs import frozen
from reportlab.lib.units import mm

from gardenplot.drawing.joins import cuts
from gardenplot.drawing.spacing_marks import Mark, Strip
from gardenplot.sheets.paper import POINT_PER_MM
from gardenplot.units import MM

HEIGHT: float = 38 * mm
"""Points of height of a piece: it goes on a board 38 mm, or 1 1/2 in, wide."""
_SHORT = 100 * MM
"""A strip that is shorter has its words on a flag at its end."""


@frozen
class Said:
    """The words on a piece: whose strip and what it is, what its ends are laid on, of which plan and blocks it is."""

    name: str
    title: str
    begins: str
    ends: str
    sides: tuple[str, str]
    about: str
    edges: str = ""


@frozen
class Piece:
    """A piece of a strip from one cut to the next, in nm of its strip; which one of how many."""

    strip: Strip
    said: Said
    begin: int
    end: int
    number: int
    pieces: int

    @property
    def is_last(self) -> bool:
        """Whether no piece comes behind it."""
        return self.number == self.pieces

    @property
    def has_flag(self) -> bool:
        """Whether it is too short for its own words."""
        return self.end - self.begin < _SHORT and self.is_last

    @property
    def marks(self) -> tuple[Mark, ...]:
        """The marks on it."""
        return tuple(mark for mark in self.strip.marks if self.begin <= mark.at <= self.end)


def pieces_of(strip: Strip, said: Said, most: int) -> tuple[Piece, ...]:
    """A strip in pieces of at most `most` nm."""
    between = cuts(strip.begin, strip.end, tuple(mark.at for mark in strip.marks), most)
    return tuple(
        Piece(strip, said, begin, end, number, len(between) - 1)
        for number, (begin, end) in enumerate(pairwise(between), 1)
    )


@frozen
class Place:
    """A piece on its page: the points of its upper left corner."""

    piece: Piece
    left: float
    top: float

    def x(self, at: int) -> float:
        """Where a place on the strip lies on the page."""
        return self.left + (at - self.piece.begin) / MM * POINT_PER_MM

    @property
    def right(self) -> float:
        """Where it ends, without what is glued or only carries words."""
        return self.x(self.piece.end)

    @property
    def bottom(self) -> float:
        """Its lower edge."""
        return self.top - HEIGHT
