"""How well blocks stand beside one another in a bed, where any order of them holds as much.

Less is better of each: of ground in the shadow of taller blocks at noon, of stretches that what is left over lies in,
and of the way between blocks that need a cover at the same time.
"""

from collections.abc import Sequence
from itertools import combinations, pairwise, permutations

from attrs import frozen

from gardenplot.filling.model import Strip
from gardenplot.filling.piece import Piece
from gardenplot.filling.task import strip_of
from gardenplot.filling.wanted import First
from gardenplot.layout import LaidOut
from gardenplot.layout.shade import Lie, Tall, lie_of, shaded
from gardenplot.plan import Crop, Plan
from gardenplot.season import Dates, share_days
from gardenplot.season.frost import frosty


@frozen
class Beside:
    """A block in a strip, one that stood before or a piece: its ground without the gap, its crop and its days."""

    start: int
    end: int
    crop: Crop
    dates: Dates

    @property
    def tall(self) -> Tall | None:
        """The block with its height and its days, where all of these are known."""
        height, first, last = self.crop.height, self.dates.in_ground, self.dates.out
        if height is None or first is None or last is None:
            return None
        return Tall(self.start, self.end, height.nm, first, last)


@frozen
class Strand:
    """A bed to arrange pieces in: its strip, the gap it keeps, what stands there, and how it lies to the sun."""

    plan: Plan
    strip: Strip
    gap: int
    stand: tuple[Beside, ...]
    lie: Lie | None

    def beside(self, piece: Piece) -> Beside:
        """A piece as a block beside what stands."""
        return Beside(piece.start, piece.end - self.gap, piece.wanted.crop, piece.dates)

    def faults(self, pieces: Sequence[Piece], first: First) -> tuple[int, ...]:
        """What speaks against an arrangement, the weightiest first."""
        blocks = [*self.stand, *map(self.beside, pieces)]
        found = {
            First.LIGHT: self._shadow(blocks),
            First.ROOM: self._scattered(pieces),
            First.COVER: self._apart(blocks),
        }
        return (found[first], *(found[each] for each in First if each is not first), sum(one.start for one in pieces))

    def _shadow(self, blocks: list[Beside]) -> int:
        """Ground in the noon shadow of taller blocks, in nm at its most."""
        tall = [each for one in blocks if (each := one.tall) is not None] if self.lie is not None else []
        if self.lie is None or len({one.height for one in tall}) < 2:
            return 0
        shadows = (shaded(self.lie, one, other) for one, other in permutations(tall, 2))
        return sum(each.length for each in shadows if each is not None)

    def _scattered(self, pieces: Sequence[Piece]) -> int:
        """In how many stretches the free ground lies, added up over the days; what is no wider than a gap is none."""
        taken = [*self.strip.taken, *(one.taken for one in pieces)]
        days = sorted({day for one in taken for day in (one.first, one.last)})
        count = 0
        for day, following in pairwise(days):
            at = 0
            for start, end in sorted((one.start, one.end) for one in taken if one.first <= day < one.last):
                count += (following - day) * (start - at > self.gap)
                at = max(at, end)
            count += (following - day) * (self.strip.length - at > self.gap)
        return count

    def _apart(self, blocks: list[Beside]) -> int:
        """The way in nm between blocks that stand in frost, and so under a cover, on days that they share."""
        covered = [one for one in blocks if frosty(self.plan.place, one.crop, one.dates)]
        return sum(
            max(0, one.start - other.end, other.start - one.end)
            for one, other in combinations(covered, 2)
            if share_days(one.dates, other.dates)
        )


def strand_of(plan: Plan, laid: LaidOut) -> Strand:
    """A bed of a plan to arrange pieces in."""
    head, gap = laid.bed.zone[0], laid.bed.gap.nm if laid.bed.gap else 0
    stand = tuple(
        Beside(layout.start - head, layout.end - head, one.crop, one.dates)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if layout.end > layout.start and one.hardened is None
    )
    return Strand(plan, strip_of(laid), gap, stand, lie_of(plan, laid.bed))
