"""What `gardenplot again` prints for a machine: setbacks, answers, and what all of them come to together."""

from datetime import date
from typing import Any

from gardenplot.commands.numbers_shape import workings_shape
from gardenplot.commands.shape import in_mm
from gardenplot.drawing.again_numbers import numbers_of_answer, setback_numbers
from gardenplot.drawing.again_words import answer_words, setback_words
from gardenplot.drawing.moved_says import remarked_words
from gardenplot.filling.again import Answer, Setback, Sowing
from gardenplot.filling.again_ground import as_staked
from gardenplot.filling.moved import Mark, Moved
from gardenplot.filling.placed import Placed
from gardenplot.filling.setbacks import Part
from gardenplot.filling.together import Together
from gardenplot.plan import Plan


def _day(day: date | None) -> str | None:
    return day.isoformat() if day else None


def setback_json(plan: Plan, one: Setback, *, workings: bool = False) -> dict[str, Any]:
    """A setback of a plan with all its answers, perhaps with the workings of their numbers."""
    return {
        "planting": one.planting,
        "why": str(one.why),
        "planned": one.planned,
        "stand": one.stand,
        "cells_sown": one.sown,
        "to_set_out": one.settable,
        "standing": one.standing,
        "failed_rows": list(one.failed_rows),
        "empty_row_mm": in_mm(one.empty),
        "short": one.lacks,
        "bed_late_days": one.late,
        "past_days": one.past,
        "days": one.days,
        "held_by": one.by,
        "order": one.order,
        "units_wanted": one.wanted,
        "freed": None if one.freed is None else {
            "bed": one.freed.bed, "from_mm": in_mm(one.freed.start), "to_mm": in_mm(one.freed.end),
            "first": _day(one.freed.first), "until": _day(one.freed.until),
        },
        "set_out": _day(one.set_out),
        "age_days": one.age,
        "over_age": one.is_over_age,
        "ready": _day(one.ready),
        "market": _day(one.market),
        "missed": [day.isoformat() for day in one.missed],
        "says": list(setback_words(plan, one)),
        "answers": [_answer(plan, one, answer, workings=workings) for answer in one.answers],
        **workings_shape(plan, setback_numbers(plan, one), wanted=workings),
    }  # fmt: skip


def _answer(plan: Plan, setback: Setback, one: Answer, *, workings: bool) -> dict[str, Any]:
    """An answer to a setback of a plan, perhaps with the workings of its numbers."""
    return answer_json(one) | workings_shape(plan, numbers_of_answer(plan, setback, one), wanted=workings)


def answer_json(one: Answer) -> dict[str, Any]:
    """One answer with the stakes that it moves."""
    spread = one.spread
    return {
        "kind": str(one.kind),
        "planting": one.layout.planting,
        "plants": one.plants,
        "plants_per_row": list(one.layout.per_row),
        "length_mm": in_mm(one.length),
        "leftover_mm": in_mm(one.free),
        "units": one.units,
        "units_short": one.short,
        "set_out": _day(one.set_out),
        "ready": _day(one.ready),
        "market": _day(one.market),
        "missed": [day.isoformat() for day in one.missed],
        "costs_markets": one.costs,
        "buy": one.buy,
        "sow": None if one.sowing is None else _sowing(one.sowing),
        "spacing": None if spread is None else {
            "exact_mm": in_mm(spread.exact), "marked_mm": in_mm(spread.marked), "markable": spread.is_markable,
        },
        "new": one.new,
        "filled": [{"wish": each.wanted} | _placed(each) for each in one.filled],
        "crowds": list(one.crowds),
        "part": None if one.part is None else _part(one.part),
        "stakes": [_stake(each) for each in one.moved if each.mark is Mark.BLOCK],
        "marks": [_mark(each) for each in one.moved if each.mark is not Mark.BLOCK],
        "says": answer_words(one),
    }  # fmt: skip


def _placed(one: Placed) -> dict[str, Any]:
    """What stands in a place of its own, on its days."""
    return {
        "planting": one.planting, "bed": one.bed, "plants": one.plants, "from_mm": in_mm(one.start),
        "to_mm": in_mm(one.end), "in_ground": _day(one.in_ground), "out": _day(one.out),
    }  # fmt: skip


def _part(one: Part) -> dict[str, Any]:
    return _placed(one.placed) | {
        "more": [_placed(each) for each in one.more], "market": _day(one.market), "units": one.units,
        "units_short": one.short,
    }  # fmt: skip


def _sowing(one: Sowing) -> dict[str, Any]:
    if not one.cells:
        return {"plants": one.plants, "row_mm": in_mm(one.row), "seeds": one.seeds}
    if one.seeds is not None:
        return {"plants": one.plants, "cells": one.cells, "seeds": one.seeds}
    return {
        "plants": one.plants, "cells": one.cells, "cells_with_two_seeds": one.cells_of_two,
        "seeds_for_these": one.seeds_of_two,
    }  # fmt: skip


def _stake(one: Moved) -> dict[str, Any]:
    """A stake at an end of a block."""
    return {
        "bed": one.bed, "planting": one.planting, "end": "begins" if one.begins else "ends",
        "old_mm": in_mm(one.old), "new_mm": in_mm(one.new),
    }  # fmt: skip


def _mark(one: Moved) -> dict[str, Any]:
    """Any other mark: what it is, of which row or cover."""
    return _stake(one) | {"what": str(one.mark), "row": one.row or None, "cover": one.cover}


def together_json(plan: Plan, one: Together, *, workings: bool = False) -> dict[str, Any]:
    """What was chosen for all setbacks of a plan, and what that comes to; perhaps with the workings of each."""
    before, now, taken = as_staked(plan), plan, []
    for each in one.taken:
        taken.append(
            {
                "planting": each.setback.planting, "why": str(each.setback.why),
                "says": list(setback_words(now, each.setback)),
                "answer": None if each.answer is None else _answer(now, each.setback, each.answer, workings=workings),
                **workings_shape(now, setback_numbers(now, each.setback), wanted=workings),
            }
        )  # fmt: skip
        now = now if each.answer is None else each.answer.plan
    return {
        "taken": taken, "units_short": one.short, "costs_markets": one.costs, "buy": one.buy,
        "stakes": [_stake(each) for each in one.moved if each.mark is Mark.BLOCK],
        "marks": [_mark(each) for each in one.moved if each.mark is not Mark.BLOCK],
        "says": [remarked_words(before, one.plan, each) for each in one.moved],
    }  # fmt: skip
