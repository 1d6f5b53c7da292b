"""What does not go as planned, with what can be done about it: a row of differences each, a sentence, its stakes."""

from collections.abc import Callable, Iterable

from attrs import evolve, field, frozen

from gardenplot.drawing.changed_list import stakes_moved
from gardenplot.drawing.letters import Look, looks, looks_in_hand
from gardenplot.drawing.moved_says import remarked
from gardenplot.filling.moved import Moved, moved
from gardenplot.plan import Plan, bed_of
from gardenplot.units.figures import MINUS, grouped
from gardenplot.words import _, ngettext
from gardenplot.working import Number

Numbers = Callable[[], Iterable[Number]]
"""Gives numbers with their workings, which are worked out when somebody asks for them."""


@frozen
class Remedy:
    """One thing that can be done, and the plan that it makes.

    `cells` are its differences in the order of the trouble's columns, `says` all of it in a sentence, `stakes` a line
    for each stake that moves, `step` its name as a step of undo. One that does not `fit` leaves the trouble smaller.
    `numbers` gives how all of them came about.
    """

    cells: tuple[str, ...]
    says: str
    stakes: tuple[str, ...]
    step: str
    plan: Plan
    fits: bool = True
    numbers: Numbers = field(default=tuple, eq=False, repr=False)


@frozen
class Trouble:
    """What does not go as planned: its name in a list, by how much in lines, and the remedies, the best first.

    It is about a planting, which perhaps does not stand in the plan yet. `numbers` gives how those of its own came
    about.
    """

    about: str
    title: str
    says: tuple[str, ...]
    columns: tuple[str, ...]
    remedies: tuple[Remedy, ...]
    numbers: Numbers = field(default=tuple, eq=False, repr=False)


def without_empty(trouble: Trouble) -> Trouble:
    """A trouble without the columns in which no remedy says anything."""
    columns, remedies = trouble.columns, trouble.remedies
    kept = [number for number in range(len(columns)) if any(one.cells[number] for one in remedies)]
    rows = (evolve(one, cells=tuple(one.cells[number] for number in kept)) for one in remedies)
    return evolve(trouble, columns=tuple(columns[number] for number in kept), remedies=tuple(rows))


def met_cell(units: int, short: int, late: int = 0) -> str:
    """How much of what is wanted there is: "all", "27 (−21)", "all, +46 days"."""
    there = f"{grouped(units)} ({MINUS}{grouped(short)})" if short > 0 else _("all")
    return f"{there}, {days_more(late)}" if late else there


def days_more(days: int) -> str:
    """A difference in days: "+10 days", "−1 day"."""
    sign = "+" if days > 0 else MINUS
    words = ngettext("{sign}{count} day", "{sign}{count} days", abs(days))
    return words.format(sign=sign, count=grouped(abs(days)))


def stake_lines(before: Plan, after: Plan) -> tuple[str, ...]:
    """What is marked anew, old and new figure: "Field bed: A Bulb fennel ends  14.15 m → 12.90 m"."""
    look = looks_in_hand(before, after) | looks(before)
    return tuple(_stake(before, after, one, look) for one in moved(before, after))


def _stake(before: Plan, after: Plan, one: Moved, look: dict[str, Look]) -> str:
    mark = remarked(before, after, one)
    letter = look[one.planting].letter if one.planting in look else ""
    name = f"{letter} {mark.name}".strip()
    old, new = (_("none") if figure is None else str(figure) for figure in (mark.old, mark.new))
    words = _("{bed}: {name} {does}  {old} → {new}")
    return words.format(bed=bed_of(after, one.bed).name, name=name, does=mark.what, old=old, new=new)


def stakes_cell(before: Plan, after: Plan) -> str:
    """How many stakes move."""
    stakes = stakes_moved(before, after)
    return grouped(stakes) if stakes else _("none")
