"""The stakes that are not where they were after a change, and what else has to be marked anew at the bed."""

from collections.abc import Iterator
from enum import StrEnum
from itertools import zip_longest

from attrs import frozen

from gardenplot.layout import Grown, LaidOut, Layout, lay_out_plan
from gardenplot.layout.row_ends import row_ends
from gardenplot.layout.staked import beyond, staked
from gardenplot.plan import Cover, Plan, bed_of


class Mark(StrEnum):
    """What is marked at a bed, in the order in which it is marked."""

    BLOCK = "block"
    ROW_END = "row end"
    ROWS = "rows"
    SPACING = "spacing"
    COVER = "cover"


@frozen
class Moved:
    """A mark of a planting in a bed, its old and its new value in nm; None where there is none.

    Of a block, a row that begins or ends inside it, and a cover it is the tape reading of a stake, none of them
    beyond the bed, and `begins` says which end; so many nm lie `beyond` the new one, since they do not fit. Of a
    `row`, counted from 1 at the base line, it is the offset from there; of a spacing what lies between two plants.
    These two are marked from the tape reading `at` on. A planting or a `cover` may be in one of both plans alone.
    """

    bed: str
    planting: str
    begins: bool
    old: int | None
    new: int | None
    mark: Mark = Mark.BLOCK
    row: int = 0
    cover: str | None = None
    at: int | None = None
    beyond: int = 0

    @property
    def reading(self) -> int:
        """The tape reading at which somebody who walks along the bed comes to it, in nm."""
        return next((one for one in (self.at, self.new, self.old) if one is not None), 0)

    @property
    def on_tape(self) -> bool:
        """Whether it is read off the tape, as stakes and covers are, rather than marked between them."""
        return self.mark in (Mark.BLOCK, Mark.ROW_END, Mark.COVER)


_MARKS = list(Mark)


def moved(before: Plan, after: Plan) -> tuple[Moved, ...]:
    """All marks that are not where they were, bed by bed and from the head on; no others.

    What stands in the gaps of a planting has no stakes of its own.
    """
    same = {*lay_out_plan(before)} & {*lay_out_plan(after)}
    was, now = _blocks(before, same), _blocks(after, same)
    found: list[Moved] = []
    for bed, planting in dict.fromkeys((*was, *now)):
        old, new = was.get((bed, planting)), now.get((bed, planting))
        found += [*_ends(bed, planting, old, new), *_row_ends(bed, planting, old, new), *_marked(old, new)]
        found += _in_gaps(now, new) if old is None else ()
    found += _covers(before, after)
    order = {bed.id: number for number, bed in enumerate((*after.beds, *before.beds))}
    return tuple(
        sorted(
            (one for one in found if one.old != one.new),
            key=lambda one: (order[one.bed], one.reading, _MARKS.index(one.mark), one.row),
        )
    )


_Block = tuple[LaidOut, Grown, Layout]


def _blocks(plan: Plan, same: set[LaidOut]) -> dict[tuple[str, str], _Block]:
    """The blocks of a plan by bed and planting, without beds that are the same."""
    return {
        (layout.bed, layout.planting): (laid, one, layout)
        for laid in lay_out_plan(plan)
        if laid not in same
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
    }


def _ends(bed: str, planting: str, old: _Block | None, new: _Block | None) -> Iterator[Moved]:
    """Both ends of a block."""
    for begins in (True, False):
        (was, _over), (now, over) = _end(old, begins), _end(new, begins)
        yield Moved(bed, planting, begins, was, now, beyond=over)


def _end(block: _Block | None, begins: bool) -> tuple[int | None, int]:
    """The stake at an end of a block, and how much does not fit there; none where it has no stakes."""
    if block is None or block[1].planting.gaps_of is not None or not block[2].length:
        return None, 0
    number = 0 if begins else 1
    bed, layout = block[0].bed, block[2]
    return staked(bed, layout)[number], beyond(bed, layout)[number]


def _row_ends(bed: str, planting: str, old: _Block | None, new: _Block | None) -> Iterator[Moved]:
    """Rows that begin or end inside their block."""
    was, now = _rows_cut(old), _rows_cut(new)
    for row, begins in dict.fromkeys((*was, *now)):
        for one, other in zip_longest(was.get((row, begins), ()), now.get((row, begins), ())):
            yield Moved(bed, planting, begins, one, other, Mark.ROW_END, row)


def _rows_cut(block: _Block | None) -> dict[tuple[int, bool], list[int]]:
    found: dict[tuple[int, bool], list[int]] = {}
    for end in row_ends(block[0].bed, block[2]) if block is not None else ():
        found.setdefault((end.row + 1, end.begins), []).append(end.at)
    return found


def _marked(old: _Block | None, new: _Block | None) -> Iterator[Moved]:
    """Rows and spacings of a block that was there before; those of a new one are marked with it."""
    if old is None or new is None:
        return
    was, now = old[2], new[2]
    place = now.bed, now.planting, True
    yield Moved(*place, was.grid.in_row, now.grid.in_row, Mark.SPACING, at=now.start)
    if was.grid.runs_across or now.grid.runs_across or was.grid.turn or now.grid.turn:
        return
    for row, (one, other) in enumerate(zip_longest(was.offsets, now.offsets), start=1):
        yield Moved(*place, one, other, Mark.ROWS, row, at=now.start)


def _covers(before: Plan, after: Plan) -> Iterator[Moved]:
    """Both ends of the covers."""
    was, now = ({(one.bed, one.id): one for one in plan.covers} for plan in (before, after))
    for bed, cover in dict.fromkeys((*was, *now)):
        old, new = was.get((bed, cover)), now.get((bed, cover))
        starts, ends = zip(_ends_of(before, old), _ends_of(after, new), strict=True)
        yield Moved(bed, "", True, *starts, Mark.COVER, cover=cover)
        yield Moved(bed, "", False, *ends, Mark.COVER, cover=cover)


def _ends_of(plan: Plan, cover: Cover | None) -> tuple[int | None, int | None]:
    """From where to where a cover stands over its bed."""
    if cover is None:
        return None, None
    length = bed_of(plan, cover.bed).length.nm
    return min(max(0, cover.start.nm), length), max(0, min(cover.end.nm, length))


def _in_gaps(blocks: dict[tuple[str, str], _Block], new: _Block | None) -> Iterator[Moved]:
    """The spacing of what comes to stand in gaps, where it is another one than that of the plants beside it."""
    if new is None or new[1].planting.gaps_of is None:
        return
    layout, beside = new[2], blocks.get((new[2].bed, new[1].planting.gaps_of))
    if beside is not None and beside[2].grid.in_row != layout.grid.in_row:
        place = layout.bed, layout.planting, True
        yield Moved(*place, None, layout.grid.in_row, Mark.SPACING, at=layout.start)
