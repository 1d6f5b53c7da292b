"""The boards of a plan: strips and templates, each once for all plantings that share it, of whatever crop."""

from collections.abc import Iterable, Sequence
from enum import StrEnum
from fractions import Fraction

from attrs import evolve, frozen

from gardenplot.drawing.dibble import Lattice, lattice_of
from gardenplot.drawing.spacing_marks import Ladder, Purpose, Strip, begins_late, strips_of
from gardenplot.layout import LaidOut, Layout, followers_of
from gardenplot.plan import Pattern, Reserved
from gardenplot.units import FOOT, MM, M, Units

LONGEST = 12 * M
"""A strip that is longer than this is no board any more; a tape does better."""
_OVER = Fraction(11, 10)
"""A strip across the bed may be so many times as long as a board: boards are cut from longer ones."""
_Marks = Ladder | Strip | Lattice
_ORDER = (
    Purpose.IN_ROW, Purpose.CELLS_ALONG, Purpose.RANKS, Purpose.IN_RANK, Purpose.ACROSS, Purpose.ROWS,
    Purpose.CELLS_ACROSS, Purpose.RADII,
)  # fmt: skip


class Why(StrEnum):
    """Why there is no strip."""

    BAND = "band"
    LONG = "long"
    SLANTED = "slanted"
    LARGE = "large"
    WIDE = "wide"


@frozen
class Board:
    """A strip, or the lattice of a template, and the ids of all plantings that it is for, and of their crops.

    It `keeps_places` where one of these leaves places empty for a crop that follows, and `begins_late` where rows of
    one of these have no plants yet at the first marks; `has_runs` where an obstacle breaks rows of one of these.
    """

    what: Strip | Lattice
    plantings: tuple[str, ...]
    crops: tuple[str, ...]
    keeps_places: bool = False
    begins_late: bool = False
    has_runs: bool = False


@frozen
class LeftOut:
    """What has no strip or template, and why; of what is too long or too large, what that would be."""

    why: Why
    plantings: tuple[str, ...]
    what: Strip | Lattice | None = None


@frozen
class Boards:
    """All boards, and what is left out."""

    made: tuple[Board, ...]
    left_out: tuple[LeftOut, ...]


def usual_board(units: Units) -> int:
    """How long a board is where nobody said, in nm: 1.2 m or 4 ft."""
    return 1200 * MM if units is Units.METRIC else 4 * FOOT


def boards_of(beds: Sequence[LaidOut], board: int) -> Boards:
    """The boards of the plantings of some beds, for boards of so many nm; trays that harden off have none."""
    shared: dict[_Marks, list[tuple[_Marks, Layout]]] = {}
    left_out: dict[Why, list[str]] = {}
    for laid in (one.without_trays for one in beds):
        for layout in laid.layouts:
            if layout.grid.pattern is Pattern.BROADCAST:
                left_out.setdefault(Why.BAND, []).append(layout.planting)
            if layout.grid.turn is not None and layout.plants:
                left_out.setdefault(Why.SLANTED, []).append(layout.planting)
            for one in (*strips_of(laid.bed, layout), *lattice_of(laid.bed, layout)):
                shared.setdefault(one, []).append((one, layout))
    said = _Said.of(beds)
    found = _in_order(said.board(ones, board) for ones in shared.values())
    why = {one: kept for one in found if (kept := _left_out(one.what, board)) is not None}
    return Boards(
        tuple(one for one in found if one not in why),
        (
            *(LeftOut(each, tuple(plantings)) for each, plantings in left_out.items()),
            *(LeftOut(each, one.plantings, one.what) for one, each in why.items()),
        ),
    )


def _what(ones: list[_Marks], board: int) -> Strip | Lattice:
    """What has the same marks as one, as long as a board and as all of them need it."""
    first = ones[0]
    if isinstance(first, Lattice):
        return evolve(first, count=max(one.count for one in ones if isinstance(one, Lattice)))
    rows = max(one.rows for one in ones if not isinstance(one, Lattice))
    if isinstance(first, Strip):
        return evolve(first, rows=rows)
    count = max(one.count for one in ones if isinstance(one, Ladder))
    return evolve(first, count=count, rows=rows).strip(board)


def _left_out(what: Strip | Lattice, board: int) -> Why | None:
    """Why a strip is none: no tape is so handy that it would be worth a longer board across a bed."""
    if not isinstance(what, Strip):
        return None
    if what.end - what.begin > LONGEST:
        return Why.LONG
    return Why.WIDE if what.lies_across and what.length > board * _OVER else None


@frozen
class _Said:
    """The plantings that leave places empty, that begin late in some rows, and whose rows are broken by obstacles."""

    kept: frozenset[str]
    late: frozenset[str]
    runs: frozenset[str]

    @classmethod
    def of(cls, beds: Sequence[LaidOut]) -> "_Said":
        """Those of some beds."""
        every = [(laid.bed, layout) for laid in beds for layout in laid.layouts]
        return cls(
            frozenset(planting for laid in beds for planting in _with_places(laid)),
            frozenset(layout.planting for bed, layout in every if begins_late(bed, layout)),
            frozenset(layout.planting for bed, layout in every if bed.obstacles and _is_broken(layout)),
        )

    def board(self, ones: list[tuple[_Marks, Layout]], board: int) -> Board:
        """A strip as long as a board and as all of its plantings need it, with what is to be said of them."""
        layouts = [layout for _one, layout in ones]
        ids = tuple(layout.planting for layout in layouts)
        return Board(
            _what([one for one, _layout in ones], board),
            ids,
            tuple(dict.fromkeys(layout.crop for layout in layouts)),
            not self.kept.isdisjoint(ids),
            not self.late.isdisjoint(ids),
            not self.runs.isdisjoint(ids),
        )


def _is_broken(layout: Layout) -> bool:
    return any(sum(1 for run in row.runs if run.count) > 1 for row in layout.rows)


def _with_places(laid: LaidOut) -> Iterable[str]:
    """The plantings of a bed that leave places of their rows empty."""
    for one in laid.grown:
        if one.planting.reserved is Reserved.PLACES_EMPTY and followers_of(laid, one.planting.id):
            yield one.planting.id


def _in_order(boards: Iterable[Board]) -> list[Board]:
    """Strips, then templates; crop by crop as they come, of each first the strips along the bed."""
    found = list(boards)
    crops = list(dict.fromkeys(one.crops[0] for one in found))
    return sorted(found, key=lambda one: (isinstance(one.what, Lattice), crops.index(one.crops[0]), _rank(one.what)))


def _rank(what: Strip | Lattice) -> int:
    return _ORDER.index(what.purpose) if isinstance(what, Strip) else len(_ORDER)
