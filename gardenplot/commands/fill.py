"""`gardenplot fill PLAN [OUT] [--seconds N] [--json] [--workings]`: a new plan, filled by its wishes and orders."""

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import Any

from gardenplot.commands.numbers_shape import add_workings, print_workings, workings_shape
from gardenplot.commands.shape import add_json, add_plan, asked, in_mm, opened, out_beside, print_json
from gardenplot.drawing.filling_words import proof_words, why_words
from gardenplot.drawing.opened_choices import of_filling, of_placed
from gardenplot.drawing.sayings import between_readings, name_of
from gardenplot.drawing.so_many import so_many_clumps
from gardenplot.drawing.ways_numbers import shortage_numbers, way_numbers
from gardenplot.drawing.ways_words import shortage_words, way_words
from gardenplot.filling import Filling, fill
from gardenplot.filling.effort import turns_in
from gardenplot.filling.filled import Lacking
from gardenplot.filling.ways_out import Shortage, Way, shortages
from gardenplot.plan import Plan, bed_of, crop_of, order_of, planting_of
from gardenplot.plan.clumps import crop_as_planted
from gardenplot.plan.file import write_plan
from gardenplot.words import _, ngettext

_A_DAY = 86_400
_SECONDS = _("“{typed}” is no time to look: write seconds, from 0 to a day, for example 5")


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    parser.add_argument("out", type=Path, nargs="?", metavar="OUT", help=_("the plan file to write"))
    look = _("how long to look for something better, about")
    parser.add_argument("--seconds", type=asked(_seconds, _SECONDS), default=5, help=look)
    add_json(parser)
    add_workings(parser)


def _seconds(text: str) -> float:
    """From nothing to a day; argparse says what was typed where it is none."""
    seconds = float(text)
    if not 0 <= seconds <= _A_DAY:
        raise ValueError(text)
    return seconds


def run(arguments: Namespace) -> int:
    """Write the filled plan and print what was placed; exit status 0."""
    out = out_beside(arguments.plan, arguments.out, "filled")
    plan = opened(arguments.plan)
    filling = fill(plan, turns=turns_in(plan, arguments.seconds))
    write_plan(out, filling.plan)
    short = shortages(filling.plan)
    if arguments.json:
        ways = [_short(filling.plan, one, workings=arguments.workings) for one in short]
        print_json({"file": str(out)} | _json(filling, workings=arguments.workings) | {"ways_out": ways})
    else:
        _print(filling, plan)
        for one in short:
            print(shortage_words(filling.plan, one))
            for number, way in enumerate(one.ways, start=1):
                print(f"  {number}. {way_words(way)}")
        if arguments.workings:
            _print_workings(filling, short)
        print(_("written to {path}").format(path=out))
    return 0


def _print_workings(filling: Filling, short: tuple[Shortage, ...]) -> None:
    """How the filling, what it placed and the ways out came about."""
    plan = filling.plan
    rows = range(len(filling.lacking) + len(filling.placed))
    for one in (of_filling(filling), *(of_placed(filling, number) for number in rows)):
        print(f"\n{one.title}")
        print_workings(plan, one.numbers)
    for lack in short:
        print(f"\n{shortage_words(plan, lack)}")
        print_workings(plan, shortage_numbers(plan, lack))
        for way in lack.ways:
            print(f"\n{way_words(way)}")
            print_workings(plan, way_numbers(plan, lack, way))


def _json(filling: Filling, *, workings: bool) -> dict[str, Any]:
    def told(number: int) -> dict[str, Any]:
        return workings_shape(filling.plan, of_placed(filling, number).numbers, wanted=True) if workings else {}

    return {
        "worth": filling.worth,
        "bound": filling.bound,
        "proven": filling.proven,
        **workings_shape(filling.plan, of_filling(filling).numbers, wanted=workings),
        "placed": [
            {
                "wish": one.wanted,
                "planting": one.planting,
                "bed": one.bed,
                "plants": one.plants,
                "from_mm": in_mm(one.start),
                "to_mm": in_mm(one.end),
                "in_ground": one.in_ground.isoformat() if one.in_ground else None,
                "out": one.out.isoformat() if one.out else None,
                **told(number),
            }
            for number, one in enumerate(filling.placed, len(filling.lacking))
        ],
        "lacking": [
            {
                "wish": one.wanted, "crop": one.crop, "plants": one.plants, "lacks": one.lacks,
                "why": why_words(one) or None, **told(number),
            }
            for number, one in enumerate(filling.lacking)
        ],
    }  # fmt: skip


def _short(plan: Plan, one: Shortage, *, workings: bool) -> dict[str, Any]:
    """What an order lacks, and the ways out, the best first."""
    return {
        "order": one.order,
        "market": one.market,
        "planting": one.planting,
        "crop": order_of(plan, one.order).crop if one.order is not None else planting_of(plan, one.planting).crop,
        "bed": one.bed,
        "lacks_plants": one.plants,
        "lacks_mm": in_mm(one.length),
        "lacks_units": one.units,
        "says": shortage_words(plan, one),
        "ways": [_way(way) | workings_shape(plan, way_numbers(plan, one, way), wanted=workings) for way in one.ways],
        **workings_shape(plan, shortage_numbers(plan, one), wanted=workings),
    }


def _way(way: Way) -> dict[str, Any]:
    return {
        "kind": str(way.kind),
        "crop": way.crop,
        "fits": way.fits,
        "short_mm": in_mm(way.short),
        "met": [
            {
                "order": one.order, "market": one.market, "planting": one.planting, "plants": one.plants,
                "units": one.units, "of": one.wanted, "days_late": one.late,
            }
            for one in way.met
        ],
        "blocks": [
            {
                "planting": part.planting, "bed": part.bed, "plants": part.plants,
                "from_mm": in_mm(part.start), "to_mm": in_mm(part.end),
            }
            for part in way.parts
        ],
        "more_mm": in_mm(way.more),
        "new_bed_mm": in_mm(bed_of(way.plan, way.new_bed).length.nm) if way.new_bed else None,
        "leftover_mm": in_mm(way.left),
        "changes": way.changes,
        "says": way_words(way),
    }  # fmt: skip


def _lacking_words(plan: Plan, lack: Lacking) -> str:
    """How much of what is wanted has ground, and why no more: "Kale: 46 of 200 plants have ground"."""
    crop, wanted = crop_of(plan, lack.crop), lack.plants + lack.lacks
    words = ngettext(
        "{name}: {plants} of {wanted} plant has ground", "{name}: {plants} of {wanted} plants have ground", wanted
    )
    if crop.stand > 1:
        words = ngettext(
            "{name}: {plants} of {wanted} clump has ground", "{name}: {plants} of {wanted} clumps have ground", wanted
        )
    told = words.format(name=crop.name, plants=lack.plants, wanted=wanted)
    return told if lack.why is None else f"{told}; {why_words(lack)}"


def _print(filling: Filling, plan: Plan) -> None:
    for one in filling.placed:
        readings = between_readings(plan, one.start, one.end)
        days = f"{one.in_ground} – {one.out}" if one.in_ground else _("no dates")
        crop = crop_as_planted(filling.plan, planting_of(filling.plan, one.planting))
        name, plants = name_of(filling.plan, one.planting), so_many_clumps(one.plants, crop.stand)
        print(f"{name}: {bed_of(plan, one.bed).name}, {readings}, {plants}, {days}")
    for lack in filling.lacking:
        print(_lacking_words(plan, lack))
    if filling.proven:
        print(_("worth {worth:g}: the best there is").format(worth=filling.worth))
    else:
        words = _("worth {worth:g}, {proof}: none is above {bound:g}")
        print(words.format(worth=filling.worth, proof=proof_words(filling), bound=filling.bound))
