"""What came about otherwise, and what it takes to make up for it, as numbers with their workings.

The counts of `Setback` and `Sowing` are the values of these. Formulas: common practice, no source.
"""

from collections.abc import Iterator
from datetime import date
from fractions import Fraction

from attrs import evolve

from gardenplot.layout import Grown, Layout
from gardenplot.plan import Actual, Crop
from gardenplot.supplies.raising import given_cells, raised_for, usable_share
from gardenplot.units.figures import rounded
from gardenplot.working import RULES, Number, Rounding, Source, Trust, Unit, known, larger, smaller, worked

UP, DOWN = Rounding.UP, Rounding.DOWN


def sown_cells(one: Grown, layout: Layout) -> Number:
    """The cells that were sown: as recorded, else as they were typed to be, else whole trays are filled.

    Not known where nobody says.
    """
    given = given_cells(one.planting)
    if given is not None:
        return evolve(given, name="cells_sown")
    crop, raised = one.crop, raised_for(one, layout)
    if raised.filled is not None and raised.trays and crop.tray_cells:
        cells = known("cells_per_tray", crop.tray_cells, Unit.COUNT, source=Source.PACKET)
        return worked("cells_sown", Unit.COUNT, "trays × cells_per_tray", raised.filled, cells, source=RULES)
    return evolve(raised.to_sow or known("cells", None, Unit.COUNT), name="cells_sown")


def settable_number(crop: Crop, came: Actual, loss: Fraction) -> Number | None:
    """The plants that can be set out: of cells that were counted, else of those that were sown, with those bought in.

    None of neither.
    """
    bought = known("bought_in", came.bought, Unit.COUNT, source=Source.CAME_ABOUT)
    plus, more = (" + bought_in", (bought,)) if came.bought else ("", ())
    if came.stand is not None:
        usable = known("usable_cells", came.stand, Unit.COUNT, source=Source.CAME_ABOUT)
        kept = f"usable_cells × (1 − lost_on_the_way){plus}"
        return worked("settable", Unit.COUNT, kept, usable, _lost(loss), *more, rounding=DOWN, source=RULES)
    if came.cells is None or crop.germination is None:
        return None
    sown, share = known("cells_sown", came.cells, Unit.COUNT, source=Source.CAME_ABOUT), usable_share(crop)
    return worked("settable", Unit.COUNT, f"cells_sown × {share.name}{plus}", sown, share, *more, rounding=DOWN,
                  trust=Trust.GOOD, source=RULES)  # fmt: skip


def _lost(loss: Fraction) -> Number:
    return known("lost_on_the_way", loss, Unit.SHARE, source=Source.OF_PLANTING)


def short_number(planned: Number, *there: Number) -> Number:
    """By how many plants what is there is short of what was planned; not less than nothing."""
    left = " − ".join(one.name for one in there)
    return worked("short", Unit.COUNT, f"larger({planned.name} − {left}, 0)", planned, *there,
                  using={"larger": larger}, source=RULES)  # fmt: skip


def counted_number(name: str, count: int, source: Source = Source.COUNTED) -> Number:
    """Plants or cells that were counted."""
    return known(name, count, Unit.COUNT, source=source)


def came_up_number(stand: int, sown: Number) -> Number:
    """The share of cells with a usable plant."""
    usable = known("usable_cells", stand, Unit.COUNT, source=Source.CAME_ABOUT)
    return worked("came_up", Unit.SHARE, "usable_cells ÷ cells_sown", usable, sown, source=RULES)


def in_percent(number: Number) -> Number:
    """A share as it is told, in whole percents."""
    return worked("share", Unit.SHARE, f"to_percent({number.name})", number, using={"to_percent": _to_percent},
                  source=RULES)  # fmt: skip


def _to_percent(part: Fraction) -> Fraction:
    return Fraction(rounded(100 * part), 100)


def empty_number(plants: int, in_row: int) -> Number:
    """The length of row that is empty where rows failed."""
    gone = known("plants_of_rows", plants, Unit.COUNT, source=Source.COUNTED)
    apart = known("in_row_spacing", in_row, Unit.SPACING, source=Source.MEASURED)
    return worked("empty_row", Unit.LENGTH, "plants_of_rows × in_row_spacing", gone, apart, source=RULES)


def day_number(name: str, day: date, source: Source = Source.NONE) -> Number:
    """A day of the calendar."""
    return known(name, day.toordinal(), Unit.DATE, source=source)


def days_number(name: str, later: Number, earlier: Number) -> Number:
    """The days from one day to another one."""
    return worked(name, Unit.DAYS, f"{later.name} − {earlier.name}", later, earlier, source=RULES)


def sowing_numbers(lacks: int, loss: Fraction, share: Number) -> tuple[Number, Number, Number, Number]:
    """Plants to raise again, cells for them with one seed each and with two thinned to one, and seeds for these."""
    plants, cells = _again(lacks, loss, share)
    of_two = _up("cells_of_two", f"raise_again ÷ (1 − (1 − {share.name})^2)", plants, share)
    return plants, cells, of_two, worked("seeds", Unit.COUNT, "2 × cells_of_two", of_two, source=RULES)


def sowing_as_before(lacks: int, loss: Fraction, share: Number, each: Number) -> tuple[Number, Number, Number]:
    """Plants to raise again, cells for them with `each` seeds as the crop is sown, and seeds; `share` is of cells."""
    plants, cells = _again(lacks, loss, share)
    return plants, cells, worked("seeds", Unit.COUNT, "cells × seeds_per_cell", cells, each, source=RULES)


def _again(lacks: int, loss: Fraction, share: Number) -> tuple[Number, Number]:
    short = known("short", lacks, Unit.COUNT, source=Source.COUNTED)
    plants = _up("raise_again", "short ÷ (1 − lost_on_the_way)", short, _lost(loss))
    return plants, _up("cells", f"raise_again ÷ {share.name}", plants, share)


def share_number(stand: int | None, sown: int | None, packet: Fraction | None) -> Number | None:
    """What comes up: as it did before, else as the packet says; None where nobody knows, or nothing came up."""
    if stand and sown:
        came = came_up_number(stand, known("cells_sown", sown, Unit.COUNT, source=Source.CAME_ABOUT))
        return worked("comes_up", Unit.SHARE, "smaller(came_up, 1)", came, using={"smaller": smaller}, source=RULES)
    return None if not packet else known("germination", packet, Unit.SHARE, source=Source.PACKET)


def spread_number(room: int, ranks: int) -> Number:
    """The spacing at which so many ranks take up all of the room."""
    ground = known("room", room, Unit.LENGTH, source=Source.MEASURED)
    lines = known("ranks", ranks, Unit.COUNT, source=Source.COUNTED)
    return worked("could_spread", Unit.SPACING, "room ÷ ranks", ground, lines, rounding=DOWN, source=RULES)


def _up(name: str, formula: str, *terms: Number) -> Number:
    return worked(name, Unit.COUNT, formula, *terms, rounding=UP, source=RULES)


def that_are_known(*numbers: Number | None) -> Iterator[Number]:
    """Those that are known."""
    return (one for one in numbers if one is not None and one.value is not None)
