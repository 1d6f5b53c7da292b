"""The boards of a plan: strips and templates, each once for all plantings of a crop that share it."""

from collections.abc import Iterable, Sequence
from enum import StrEnum

from attrs import evolve, frozen

from gardenplot.drawing.dibble import Lattice, lattice_of
from gardenplot.drawing.spacing_marks import Ladder, Purpose, Strip, begins_late, strips_of
from gardenplot.layout import LaidOut, followers_of
from gardenplot.plan import Pattern, Reserved
from gardenplot.units import FOOT, MM, M, Units

LONGEST = 12 * M
"""A strip that is longer than this is no board any more; a tape does better."""
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


@frozen
class Board:
    """A strip, or the lattice of a template, and the ids of all plantings that it is for.

    It `keeps_places` where one of these leaves places empty for a crop that follows, and `begins_late` where rows of
    one of these have no plants yet at the first marks.
    """

    what: Strip | Lattice
    plantings: tuple[str, ...]
    keeps_places: bool = False
    begins_late: bool = False


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
    shared: dict[Ladder | Strip | Lattice, list[str]] = {}
    counts: dict[Ladder | Lattice, int] = {}
    left_out: dict[Why, list[str]] = {}
    for laid in (one.without_trays for one in beds):
        for layout in laid.layouts:
            if layout.grid.pattern is Pattern.BROADCAST:
                left_out.setdefault(Why.BAND, []).append(layout.planting)
            if layout.grid.turn is not None and layout.plants:
                left_out.setdefault(Why.SLANTED, []).append(layout.planting)
            for one in (*strips_of(laid.bed, layout), *lattice_of(laid.bed, layout)):
                shared.setdefault(one, []).append(layout.planting)
                if not isinstance(one, Strip):
                    counts[one] = max(counts.get(one, 1), one.count)
    kept = {planting for laid in beds for planting in _with_places(laid)}
    late = {layout.planting for laid in beds for layout in laid.layouts if begins_late(laid.bed, layout)}
    made = _in_order(
        Board(_what(one, counts, board), tuple(ids), not kept.isdisjoint(ids), not late.isdisjoint(ids))
        for one, ids in shared.items()
    )
    long = [one for one in made if isinstance(one.what, Strip) and one.what.end - one.what.begin > LONGEST]
    return Boards(
        tuple(one for one in made if one not in long),
        (
            *(LeftOut(why, tuple(plantings)) for why, plantings in left_out.items()),
            *(LeftOut(Why.LONG, one.plantings, one.what) for one in long),
        ),
    )


def _with_places(laid: LaidOut) -> Iterable[str]:
    """The plantings of a bed that leave places of their rows empty."""
    for one in laid.grown:
        if one.planting.reserved is Reserved.PLACES_EMPTY and followers_of(laid, one.planting.id):
            yield one.planting.id


def _what(one: Ladder | Strip | Lattice, counts: dict[Ladder | Lattice, int], board: int) -> Strip | Lattice:
    """A strip as long as a board and as all plantings need it."""
    if isinstance(one, Strip):
        return one
    whole = evolve(one, count=counts[one])
    return whole.strip(board) if isinstance(whole, Ladder) else whole


def _in_order(boards: Iterable[Board]) -> list[Board]:
    """Strips, then templates; crop by crop as they come, of each first the strips along the bed."""
    found = list(boards)
    crops = list(dict.fromkeys(one.what.crop for one in found))
    return sorted(found, key=lambda one: (isinstance(one.what, Lattice), crops.index(one.what.crop), _rank(one.what)))


def _rank(what: Strip | Lattice) -> int:
    return _ORDER.index(what.purpose) if isinstance(what, Strip) else len(_ORDER)
