"""What is carried to each bed, turn by turn: as JSON and as printed lines."""

from collections.abc import Iterable
from typing import Any

from attrs import frozen

from gardenplot.commands.numbers_shape import working_shape
from gardenplot.commands.shape import in_mm
from gardenplot.drawing.carried import block_words, carried, carried_list, carried_words, turn_days
from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.turns import turns
from gardenplot.layout import LaidOut, Layout, lay_out_plan
from gardenplot.plan import Plan
from gardenplot.supplies import raised_for
from gardenplot.supplies.shopping import Asked
from gardenplot.words import _


@frozen
class _Turn:
    laid: LaidOut
    layouts: tuple[Layout, ...]
    number: int


def _asked_for(plan: Plan, asked: Asked) -> Iterable[_Turn]:
    for laid in (one.without_trays for one in lay_out_plan(plan) if asked.has(one.bed.id)):
        for number, (layouts, day) in enumerate(zip(turns(laid), turn_days(laid), strict=True), 1):
            if layouts and asked.is_on(day):
                yield _Turn(laid, layouts, number)


def carry_shapes(plan: Plan, asked: Asked) -> list[dict[str, Any]]:
    """What is carried to the beds that are asked for, on the days on which their turns begin."""
    return [_shape(plan, turn) for turn in _asked_for(plan, asked)]


def _shape(plan: Plan, turn: _Turn) -> dict[str, Any]:
    needs = [need for one in carried(plan, turn.laid, turn.layouts) for need in one.needs]
    return {
        "bed": turn.laid.bed.id,
        "turn": turn.number,
        "things": [
            {
                "kind": str(need.kind),
                "says": carried_words(plan, need),
                "size": need.size if need.size is None else in_mm(need.size),
                "working": working_shape(plan, need.number),
            }
            for need in needs
        ],
        "blocks": [_block(turn, layout) for layout in turn.layouts],
    }


def _block(turn: _Turn, layout: Layout) -> dict[str, Any]:
    one = next(each for each in turn.laid.grown if each.planting.id == layout.planting)
    day = one.dates.in_ground
    return {
        "id": layout.planting,
        "plants": layout.plants,
        "trays": raised_for(one, layout).trays,
        "day": None if day is None else day.isoformat(),
    }


def print_carry(plan: Plan, asked: Asked) -> None:
    """Print a heading for each turn of a bed, what is carried, and a line for each block."""
    look = looks(plan)
    for turn in _asked_for(plan, asked):
        grown = {one.planting.id: one for one in turn.laid.grown}
        begins = turn_days(turn.laid)[turn.number - 1]
        when = f", {short_day(begins)}" if begins else ""
        print("\n" + _("carry to {bed}{when}").format(bed=turn.laid.bed.name, when=when))
        for one in carried(plan, turn.laid, turn.layouts):
            print("  " + " · ".join(carried_list(plan, one)))
        for layout in turn.layouts:
            planted = grown[layout.planting]
            said, day = block_words(planted, layout, plan.place.units), planted.dates.in_ground
            tail = f" · {short_day(day)}" if day else ""
            print(f"  {titled(plan, layout.planting, look)}: {said}{tail}")
