"""What comes up thicker than it is left to stand: to what it is thinned, and about when.

Seedlings are thinned when their first true leaves show, about two weeks after they emerge; where nobody knows when
that is, about three weeks after they are sown: common practice, no source.
"""

from datetime import date

from gardenplot.drawing.date_words import dates_told
from gardenplot.layout import Grown, Layout
from gardenplot.plan import Establish, Pattern
from gardenplot.supplies.raising import is_row_thinned, is_thinned
from gardenplot.units import Units
from gardenplot.units.figures import apart, grouped
from gardenplot.words import _
from gardenplot.working import RULES, Number, Source, Trust, Unit, known, smaller, worked

_AFTER_EMERGING, _AFTER_SOWING = 2, 3
"""Weeks."""


def left_words(one: Grown, layout: Layout, units: Units) -> str:
    """To what a planting is thinned: "one every 3 in", "4 in each cell"; empty where it is not."""
    crop = one.crop
    words = ""
    if crop.establish is Establish.TRANSPLANT:
        words = _("{left} in each cell") if is_thinned(crop) else ""
    elif layout.grid.pattern is Pattern.BROADCAST:
        words = ""
    elif crop.seeds_per_row is None:
        words = _("{left} in each place") if is_thinned(crop) else ""
    elif is_row_thinned(crop, layout.grid.in_row):
        words = _("{left} every {length}")
    left = _("one") if crop.stand == 1 else grouped(crop.stand)
    return words.format(left=left, length=apart(layout.grid.in_row, units))


def stands_thinned(one: Grown, layout: Layout, units: Units) -> bool:
    """Whether plants stand at their spacing only once they are thinned in their bed."""
    return one.crop.establish is Establish.DIRECT and bool(left_words(one, layout, units))


def drill_words(one: Grown, layout: Layout, units: Units) -> str:
    """How thick a planting is sown in the rows of its bed and when it is thinned; empty where neither is known.

    "sow 12 / ft; thin when the first true leaves show", "sow 40 / m; thin to 4 when the first true leaves show",
    "sow 6 / m, not thinned".
    """
    left, rate = left_words(one, layout, units), one.crop.seeds_per_row
    if one.crop.establish is not Establish.DIRECT or layout.grid.pattern is Pattern.BROADCAST:
        return ""
    if rate is None:
        return _("thin to {left} when the first true leaves show").format(left=left) if left else ""
    if not left:
        return _("sow {rate}, not thinned").format(rate=rate.text)
    words = _("sow {rate}; thin when the first true leaves show")
    if one.crop.stand > 1:
        words = _("sow {rate}; thin to {count} when the first true leaves show")
    return words.format(rate=rate.text, count=grouped(one.crop.stand))


def thin_number(one: Grown) -> Number | None:
    """About when it is thinned, before it leaves its cell or is ready; None where nobody knows when it is sown."""
    told, sown = dates_told(one), one.dates.sow
    if sown is None or "sow" not in told:
        return None
    begins, after, came = told.get("emerges"), _AFTER_EMERGING, one.planting.actual
    if came is not None and came.emerged is not None and came.emerged >= sown:
        begins = known("emerges", came.emerged.toordinal(), Unit.DATE, source=Source.CAME_ABOUT)
    if begins is None or begins.value is None:
        begins, after = told["sow"], _AFTER_SOWING
    ends = [told[name] for name in ("pot_up", "harden", "set_out", "ready") if name in told]
    ends = [end for end in ends if (end.whole or 0) > sown.toordinal()]
    week = known("days_of_week", 7, Unit.DAYS, trust=Trust.FAIR, source=Source.WEEK)
    formula = f"{begins.name} + {after} × days_of_week"
    if not ends:
        return worked("thin", Unit.DATE, formula, begins, week, source=RULES)
    first = min(ends, key=lambda end: end.value or 0)
    return worked("thin", Unit.DATE, f"smaller({formula}, {first.name})", begins, week, first, source=RULES,
                  using={"smaller": smaller})  # fmt: skip


def thin_about(one: Grown) -> date | None:
    """That day; None beyond the calendar too."""
    number = thin_number(one)
    day = None if number is None else number.whole
    return date.fromordinal(day) if day is not None and day <= date.max.toordinal() else None
