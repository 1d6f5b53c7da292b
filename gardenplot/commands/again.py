"""`gardenplot again PLAN [--today YYYY-MM-DD] [--loss SHARE] [--json]`: what deviates, and the answers."""

from argparse import ArgumentParser, Namespace
from datetime import date
from fractions import Fraction
from typing import Any

from gardenplot.commands.shape import add_json, add_plan, in_mm, opened, print_json
from gardenplot.drawing.again_words import answer_words, moved_words, setback_words
from gardenplot.errors import PlanError
from gardenplot.filling.again import Answer, Setback, plan_again
from gardenplot.gestures.reading import date_from
from gardenplot.plan import Plan
from gardenplot.units import parse_share
from gardenplot.words import _


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    parser.add_argument(
        "--today", metavar="YYYY-MM-DD", help=_("the day on which it is planned again; without it, the real one")
    )
    parser.add_argument(
        "--loss", metavar="SHARE", default="0 %", help=_("seedlings lost between tray and bed, for example “5 %%”")
    )
    add_json(parser)


def run(arguments: Namespace) -> int:
    """Print what came about and the answers; exit status 0. Raises PlanError where a day or a share is no good."""
    today = date_from(arguments.today or "") or date.today()
    loss = parse_share(arguments.loss).part
    if loss >= 1:
        raise PlanError(_("“{typed}” leaves no plant: a share below 100 % is needed").format(typed=arguments.loss))
    plan = opened(arguments.plan)
    found = plan_again(plan, today, Fraction(loss))
    if arguments.json:
        print_json({"today": today.isoformat(), "setbacks": [_setback(plan, one) for one in found]})
        return 0
    if not found:
        print(_("nothing to plan again: all goes as planned"))
    for one in found:
        for line in setback_words(plan, one):
            print(line)
        for number, answer in enumerate(one.answers, start=1):
            print(f"  {number}. {answer_words(answer)}")
            for line in moved_words(answer):
                print(f"     {line}")
    return 0


def _day(day: date | None) -> str | None:
    return day.isoformat() if day else None


def _setback(plan: Plan, one: Setback) -> dict[str, Any]:
    return {
        "planting": one.planting,
        "planned": one.planned,
        "stand": one.stand,
        "cells_sown": one.sown,
        "to_set_out": one.settable,
        "short": one.lacks,
        "bed_late_days": one.late,
        "set_out": _day(one.set_out),
        "age_days": one.age,
        "over_age": one.is_over_age,
        "ready": _day(one.ready),
        "market": _day(one.market),
        "missed": [day.isoformat() for day in one.missed],
        "says": list(setback_words(plan, one)),
        "answers": [_answer(answer) for answer in one.answers],
    }


def _answer(one: Answer) -> dict[str, Any]:
    sowing, spread = one.sowing, one.spread
    return {
        "kind": str(one.kind),
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
        "sow": None if sowing is None else {
            "plants": sowing.plants, "cells": sowing.cells,
            "cells_with_two_seeds": sowing.cells_of_two, "seeds_for_these": sowing.seeds_of_two,
        },
        "spacing": None if spread is None else {
            "exact_mm": in_mm(spread.exact), "marked_mm": in_mm(spread.marked), "markable": spread.is_markable,
        },
        "stakes": [
            {
                "bed": each.bed, "planting": each.planting, "end": "begins" if each.begins else "ends",
                "old_mm": in_mm(each.old), "new_mm": in_mm(each.new),
            }
            for each in one.moved
        ],
        "says": answer_words(one),
    }  # fmt: skip
