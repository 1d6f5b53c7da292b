"""Which number the stakes of a planting have on its bed's sheet, wherever else they are named."""

from attrs import frozen

from gardenplot.drawing.letters import Look
from gardenplot.drawing.stakes import Stake, stakes
from gardenplot.drawing.turns import turns
from gardenplot.layout import LaidOut
from gardenplot.plan import Plan
from gardenplot.units import Units
from gardenplot.units.figures import tape
from gardenplot.words import _


@frozen
class Numbered:
    """The stakes of one turn of a bed: the turn from 0, of how many, and its stakes in walking order."""

    turn: int
    turns: int
    stakes: tuple[Stake, ...]

    def number_at(self, at: int, units: Units) -> int | None:
        """The number of the stake at a tape reading in nm, or of the one whose reading looks the same on paper."""
        alike = tape(at, units).number
        found = sorted((abs(one.at - at), one.number) for one in self.stakes if tape(one.at, units).number == alike)
        return found[0][1] if found else None


def numbered(plan: Plan, laid: LaidOut, look: dict[str, Look]) -> tuple[Numbered, ...]:
    """The stakes of each turn of a bed, as its sheets number them."""
    laid = laid.without_trays
    found = turns(laid)
    return tuple(Numbered(at, len(found), stakes(plan, laid, turn, look)) for at, turn in enumerate(found))


def numbers_of(plan: Plan, laid: LaidOut, look: dict[str, Look]) -> dict[str, Numbered]:
    """For each planting of a bed the turn in which it first stands."""
    laid, found = laid.without_trays, dict[str, Numbered]()
    for turn, one in zip(turns(laid), numbered(plan, laid, look), strict=True):
        for layout in turn:
            found.setdefault(layout.planting, one)
    return found


def turn_words(turn: int, turns: int) -> str:
    """Which turn of how many, the first being 0: "turn 1 of 2"."""
    return _("turn {number} of {count} on this ground").format(number=turn + 1, count=turns)
