"""The letter and the look of each planting: the same on screen, sheet, stake and label."""

from functools import lru_cache
from itertools import count

from attrs import evolve, frozen

from gardenplot.drawing.across import across
from gardenplot.drawing.marks import Hatch, Shape
from gardenplot.drawing.style import PLANTINGS, Ink
from gardenplot.drawing.turns import walked
from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.plan import Plan


@frozen(cache_hash=True)
class Look:
    """How one planting is told from the others: by letter and shape, and also by colour."""

    planting: str
    letter: str
    ink: Ink
    shape: Shape

    @property
    def hatch(self) -> Hatch:
        """What fills its block where its plants are too small to be drawn; it goes with the shape of their mark."""
        return _HATCHES[self.shape]


_look = lru_cache(maxsize=8192)(Look)
"""A look that stays as it is stays the same object, so that the looks of two plans are soon compared."""

_HATCHES = {
    Shape.DISC: Hatch.SPOTTED,
    Shape.RING: Hatch.UPRIGHT,
    Shape.SQUARE: Hatch.GRID,
    Shape.DIAMOND: Hatch.LEVEL,
    Shape.TRIANGLE: Hatch.BACKWARD,
    Shape.CROSS: Hatch.DENSE,
}

_SHAPES = tuple(Shape)
_TURNED = tuple((*_SHAPES[first:], *_SHAPES[:first]) for first in range(len(_SHAPES)))
"""All shapes, beginning with each of them."""


@lru_cache(maxsize=16)
def looks(plan: Plan) -> dict[str, Look]:
    """The look of every planting, by its id; letters run along the plan, bed by bed, turn by turn, from the head.

    A planting keeps the letter that is written down for it, the first in the plan where it is written down for
    several; the others have those that are left. Trays look as what they are raised for.
    """
    growing = tuple([planting.id for planting in plan.plantings if planting.hardens is None])
    walks = tuple([_walk(laid) for laid in lay_out_plan(plan)])
    found = _looks(growing, walks, tuple(_kept(plan).items()), tuple(across(plan).items()))
    return _with_trays(plan, found)


@lru_cache(maxsize=2048)
def _walk(laid: LaidOut) -> tuple[str, ...]:
    """The plantings that are met on a walk along a bed."""
    return tuple([layout.planting for layout in walked(laid.without_trays)])


@lru_cache(maxsize=16)
def _looks(
    growing: tuple[str, ...],
    walks: tuple[tuple[str, ...], ...],
    letters: tuple[tuple[str, str], ...],
    beside: tuple[tuple[str, tuple[str, ...]], ...],
) -> dict[str, Look]:
    """The looks of all that grows, by all that tells them: most edits change nothing of it."""
    rank = {planting: number for number, planting in enumerate(growing)}
    kept, neighbours = dict(letters), dict(beside)
    taken = {*kept.values()}
    free = (name for number in count() if (name := letter(number)) not in taken)
    found: dict[str, Look] = {}
    for walk in walks:
        shape: Shape | None = None
        ink: int | None = None
        for planting in walk:
            number = rank[planting]
            others = tuple(found[one].shape for one in neighbours.get(planting, ()) if one in found)
            shape, ink = _shape(number % len(_TURNED), shape, others), _ink(number % len(PLANTINGS), ink)
            found[planting] = _look(planting, kept.get(planting) or next(free), PLANTINGS[ink], shape)
    return found


def _kept(plan: Plan) -> dict[str, str]:
    """The letters that are written down, by the planting that keeps each."""
    found: dict[str, str] = {}
    for one in plan.plantings:
        if one.letter is not None and one.hardens is None:
            found.setdefault(one.letter, one.id)
    return {planting: name for name, planting in found.items()}


def keeping_letters(before: Plan, after: Plan) -> Plan:
    """A plan in which each planting of an earlier one has the letter that it had there, and a new one the next free.

    Letters are written down only where one would be another otherwise, and then all of them.
    """
    was, now = looks(before), looks(after)
    taken = {look.letter for look in was.values()}
    free = (name for number in count() if (name := letter(number)) not in taken)
    letters = {one.id: was[one.id].letter if one.id in was else next(free)
               for one in after.plantings if one.hardens is None}  # fmt: skip
    if all(now[one].letter == name for one, name in letters.items()):
        return after
    lettered = (evolve(one, letter=letters.get(one.id)) for one in after.plantings)
    return evolve(after, plantings=tuple(lettered))


def _with_trays(plan: Plan, found: dict[str, Look]) -> dict[str, Look]:
    trays = {one.id: one.hardens for one in plan.plantings if one.hardens is not None}
    return found | {one: evolve(found[raised], planting=one) for one, raised in trays.items()} if trays else found


@lru_cache(maxsize=16)
def looks_in_hand(before: Plan, trial: Plan) -> dict[str, Look]:
    """The looks of a plan that the hand tries: each planting of the plan before keeps its own, so that nothing jumps.

    What is new has the letter that it will have where no other has that yet, else the next free one.
    """
    kept = looks(before)
    came = {one.id for one in trial.plantings if one.hardens is None and one.id not in kept}
    # Looks of a plan are asked along all of it, so only for what is new: most that a hand tries has nothing new.
    new = [one for planting, one in looks(trial).items() if planting in came] if came else []
    taken = {one.letter for one in kept.values()}
    settled = {one.planting for one in new if one.letter not in taken}
    taken |= {one.letter for one in new}
    free = (name for number in count() if (name := letter(number)) not in taken)
    lettered = [one if one.planting in settled else evolve(one, letter=next(free)) for one in new]
    return _with_trays(trial, kept | {one.planting: one for one in lettered})


@lru_cache(maxsize=4096)
def _shape(number: int, neighbour: Shape | None, others: tuple[Shape, ...]) -> Shape:
    """The shape of a planting by its rank, counted round, or the next that its neighbour has not, nor one across.

    Where those across have all the others, it is the one that the fewest of them have.
    """
    return min((one for one in _TURNED[number] if one is not neighbour), key=others.count)


@lru_cache(maxsize=256)
def _ink(number: int, neighbour: int | None) -> int:
    """The number of a planting's colour by its rank, counted round, or the next one that is far from its neighbour's.

    Only the colours beside one in their order and those three away are far from it to every eye.
    """
    colours = len(PLANTINGS)
    far = (1, 3, colours - 3, colours - 1)
    return next(
        ink
        for ink in (each % colours for each in range(number, number + colours))
        if neighbour is None or (ink - neighbour) % colours in far
    )


@lru_cache(maxsize=8192)
def letter(number: int) -> str:
    """A, B ... Z, AA, AB ... for 0, 1 ... 25, 26, 27 ..."""
    name = ""
    number += 1
    while number:
        number, place = divmod(number - 1, 26)
        name = chr(ord("A") + place) + name
    return name
