"""Which numbers stakes have on the bed sheets before and after a change, those that move and those that stay."""

from attrs import frozen

from gardenplot.drawing.letters import looks
from gardenplot.drawing.stake_numbers import Numbered, numbered, numbers_of, turn_words
from gardenplot.drawing.stakes import Stake
from gardenplot.filling.moved import Mark, Moved
from gardenplot.layout import lay_out_bed
from gardenplot.plan import Plan, bed_of
from gardenplot.units import Units
from gardenplot.units.figures import tape
from gardenplot.words import _

_MOST_NAMED = 16
"""Of more stakes that stay only those that have other numbers are named."""
_TOGETHER = "\u00a0"
"""A space at which no line is broken."""


@frozen
class StakeNumber:
    """A stake's number on the bed sheet before and after; None where it has none. `turn` says which of several.

    `stays` tells that a stake stands where it was afterwards too, `is_there` that one stands already where it goes.
    """

    was: int | None = None
    now: int | None = None
    turn: str = ""
    stays: bool = False
    is_there: bool = False


def stake_number(before: Plan, after: Plan, one: Moved) -> StakeNumber:
    """The numbers of a stake that moves; none of what is no stake of the bed sheet."""
    old, new = _turn_of(before, one), _turn_of(after, one)
    if one.mark not in (Mark.BLOCK, Mark.ROW_END) or (old is None and new is None):
        return StakeNumber()
    units, turn = after.place.units, new or old
    later, sooner = new or _same_turn(after, one, old), old or _same_turn(before, one, new)
    return StakeNumber(
        was=old.number_at(one.old, units) if old is not None and one.old is not None else None,
        now=new.number_at(one.new, units) if new is not None and one.new is not None else None,
        turn=turn_words(turn.turn, turn.turns) if turn is not None and turn.turns > 1 else "",
        stays=later is not None and one.old is not None and later.number_at(one.old, units) is not None,
        is_there=sooner is not None and one.new is not None and sooner.number_at(one.new, units) is not None,
    )


def _turn_of(plan: Plan, one: Moved) -> Numbered | None:
    """The stakes of the turn in which a planting first stands in a bed of a plan, if it does."""
    found = [bed for bed in plan.beds if bed.id == one.bed]
    return numbers_of(plan, lay_out_bed(plan, found[0]), looks(plan)).get(one.planting) if found else None


def _same_turn(plan: Plan, one: Moved, other: Numbered | None) -> Numbered | None:
    """The stakes of the turn of a bed in a plan that has the number of another plan's turn, if it has so many."""
    found = [bed for bed in plan.beds if bed.id == one.bed]
    turns = numbered(plan, lay_out_bed(plan, found[0]), looks(plan)) if found else ()
    return next((each for each in turns if other is not None and each.turn == other.turn), None)


def staying_words(before: Plan, after: Plan, bed_id: str) -> str:
    """The stakes of a bed that stay where they are: what they are called now, and their readings.

    "Stakes that stay: 0 at 0.00 m · 1 at 0.15 m · 3 at 15.09 m (was 2)". They are named by their readings and not by
    the sheet that has them, since stakes are older than the last version of a plan.
    """
    if not all(any(bed.id == bed_id for bed in plan.beds) for plan in (before, after)):
        return ""
    was, now = (numbered(plan, lay_out_bed(plan, bed_of(plan, bed_id)), looks(plan)) for plan in (before, after))
    found = []
    for old, new in zip(was, now, strict=False):
        numbers = {stake.at: stake.number for stake in old.stakes}
        stay = [stake for stake in new.stakes if stake.at in numbers]
        others = [stake for stake in stay if len(stay) <= _MOST_NAMED or stake.number != numbers[stake.at]]
        told = [_staying(stake, numbers[stake.at], after.place.units) for stake in others]
        words = " · ".join([*told, *([_("all others")] if len(others) < len(stay) else [])])
        if words:
            found.append(words if new.turns == 1 else f"{turn_words(new.turn, new.turns)}: {words}")
    return _("Stakes that stay: {stakes}").format(stakes="; ".join(found)) if found else ""


def _staying(stake: Stake, before: int, units: Units) -> str:
    """ "3 at 15.09 m (was 2)", in one piece."""
    words = _("{number} at {reading}") if stake.number == before else _("{number} at {reading} (was {before})")
    return words.format(number=stake.number, reading=tape(stake.at, units), before=before).replace(" ", _TOGETHER)
