"""What the numbers of a layout are made from: the lengths and plants that were put in, each with its source."""

from collections import Counter

from attrs import frozen

from gardenplot.layout.across import triangular_between
from gardenplot.layout.bed import Grown
from gardenplot.layout.value import EdgeRule, Grid, Layout
from gardenplot.plan import Bed, Pattern
from gardenplot.season import stand_number
from gardenplot.working import RULES, Number, Rounding, Source, Unit, known, worked

_EDGES = {
    EdgeRule.PLANTING: Source.OF_PLANTING, EdgeRule.CROP: Source.PACKET, EdgeRule.BED: Source.OF_BED,
    EdgeRule.HALF_SPACING: Source.HALF_SPACING, EdgeRule.MIDDLE: Source.MIDDLE_OF_BED,
}  # fmt: skip


@frozen
class Told:
    """A bed, a planting in it and its layout, and the numbers that were put into it."""

    bed: Bed
    one: Grown
    layout: Layout

    @property
    def grid(self) -> Grid:
        """How its plants stand."""
        return self.layout.grid

    @property
    def inside(self) -> int:
        """Length of the block inside the margins of the bed, in nm."""
        first, last = self.bed.zone
        return max(0, min(self.layout.end, last) - max(self.layout.start, first))

    @property
    def bed_width(self) -> Number:
        """Width of the bed."""
        return known("bed_width", self.grid.width, Unit.SPACING, source=Source.SIZE_OF_BED)

    @property
    def row_spacing(self) -> Number:
        """The least distance from row to row that was asked for."""
        if self.grid.pattern is Pattern.TRIANGULAR:
            return worked("row_spacing", Unit.SPACING, "triangle_height(in_row_spacing)", self.narrow, using=_HEIGHT,
                          source=Source.TRIANGLE)  # fmt: skip
        return known("row_spacing", self.grid.between_least, Unit.SPACING, source=self.spacing_from)

    @property
    def spacing_from(self) -> Source:
        """Who said how far apart its rows are."""
        return Source.OF_PLANTING if self.one.planting.row_spacing else Source.PACKET

    @property
    def edge_distance(self) -> Number:
        """The least distance from the edge that was asked for."""
        source = _EDGES[self.grid.edge_rule]
        return known("edge_distance", self.grid.edge_least, Unit.SPACING, source=source)

    @property
    def in_row(self) -> Number:
        """The spacing in the row as it came about."""
        if self.grid.in_row_least is None:
            return self.narrow
        return known("in_row_spread", self.grid.in_row, Unit.SPACING, source=Source.SPREAD)

    @property
    def narrow(self) -> Number:
        """The spacing in the row that was asked for."""
        spacing = self.grid.in_row if self.grid.in_row_least is None else self.grid.in_row_least
        source = Source.OF_PLANTING if self.one.planting.in_row else Source.PACKET
        return known("in_row_spacing", spacing, Unit.SPACING, source=source)

    @property
    def end_margin(self) -> Number:
        """What is kept free at both ends; of nothing where plants keep half a spacing."""
        return known("end_margin", self.grid.end_margin or 0, Unit.SPACING, source=Source.OF_PLANTING)

    @property
    def wanted(self) -> Number | None:
        """The plants that were typed, or that must stand for an order; None where a length rules."""
        planting, order = self.one.planting, self.one.order
        if planting.length is not None:
            return None
        if planting.plants is not None:
            return known("asked", planting.plants, Unit.COUNT, source=Source.OF_PLANTING)
        return stand_number(order, self.one.crop, int(self.narrow.value or 0)) if order is not None else None

    @property
    def is_for_order(self) -> bool:
        """Whether an order gives the size, which fills its last rank."""
        return self.one.planting.plants is None and self.wanted is not None

    @property
    def name(self) -> str:
        """What is counted."""
        return "trays_there" if self.layout.holds_trays else "planted"


_HEIGHT = {"triangle_height": lambda side: type(side)(triangular_between(int(side)))}


def row_spacing_most(told: Told) -> Number:
    """The most distance from row to row that was asked for."""
    spacing = told.one.planting.row_spacing or told.one.crop.row_spacing
    return known("row_spacing_most", spacing[-1].nm, Unit.SPACING, source=told.spacing_from)


def drawn(told: Told) -> Number:
    """The length of ground that its rows have: as typed, else as it is drawn."""
    if told.inside != told.layout.length:
        return known("block_inside", told.inside, Unit.LENGTH, source=Source.MEASURED)
    typed = told.one.planting.length is not None
    source = Source.OF_PLANTING if typed else Source.MEASURED
    return known("block", told.layout.length, Unit.LENGTH, source=source)


def counted(told: Told) -> Number:
    """The plants of all rows added up as they stand, without a formula for any of them."""
    counts = [count for count in told.layout.per_row if count]
    if not told.layout.per_row:
        return known(told.name, told.layout.plants, Unit.COUNT, source=Source.COUNTED)
    parts, terms = [], []
    for place, (count, alike) in enumerate(Counter(counts).items(), 1):
        terms.append(known(f"a_row_{place}", count, Unit.COUNT, source=Source.COUNTED))
        parts.append(f"a_row_{place}")
        if alike > 1:
            terms.append(known(f"rows_alike_{place}", alike, Unit.COUNT, source=Source.COUNTED))
            parts[-1] = f"rows_alike_{place} × a_row_{place}"
    return worked(told.name, Unit.COUNT, " + ".join(parts) or "0", *terms, source=Source.COUNTED)


def down(name: str, unit: Unit, formula: str, *terms: Number) -> Number:
    """The whole part of a formula."""
    return worked(name, unit, formula, *terms, rounding=Rounding.DOWN, source=RULES)


def up(name: str, unit: Unit, formula: str, *terms: Number) -> Number:
    """A formula rounded up."""
    return worked(name, unit, formula, *terms, rounding=Rounding.UP, source=RULES)


def first_true(value: int, *ways: Number | None) -> Number | None:
    """The first of several workings that comes to a value."""
    return next((one for one in ways if one is not None and one.value == value), None)
