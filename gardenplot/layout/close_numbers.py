"""By how much plants stand closer than their packet says, or nearer to the edge, as numbers with their workings."""

from collections.abc import Iterator

from gardenplot.layout.across import closer_than_packet, nearest_rows
from gardenplot.layout.bed import Grown
from gardenplot.layout.row_numbers import row_numbers
from gardenplot.layout.told import Told, first_true
from gardenplot.layout.value import Layout
from gardenplot.plan import Bed, Crop
from gardenplot.working import RULES, Number, Source, Unit, known, worked


def closer_numbers(bed: Bed, one: Grown, layout: Layout) -> Iterator[Number]:
    """What is closer in the row, between rows and to the edge than it should be; nothing of what is not."""
    told, (in_row, rows) = Told(bed, one, layout), closer_than_packet(one.crop, layout)
    if in_row:
        packet = known("packet_in_row", one.crop.in_row.nm, Unit.SPACING, source=Source.PACKET)
        formula = f"packet_in_row − {told.in_row.name}"
        yield worked("closer_in_row", Unit.SPACING, formula, packet, told.in_row, source=RULES)
    if rows:
        packet = known("packet_rows", one.crop.row_spacing[0].nm, Unit.SPACING, source=Source.PACKET)
        apart = known("nearest_rows", nearest_rows(layout.grid), Unit.SPACING, source=Source.MEASURED)
        yield worked("closer_rows", Unit.SPACING, "packet_rows − nearest_rows", packet, apart, source=RULES)
    asked = edge_asked(bed, one.crop, layout)
    if layout.grid.edge < asked:
        source = Source.PACKET if one.crop.edge is not None else Source.OF_BED
        least = first_true(asked, told.edge_distance) or known("edge_distance", asked, Unit.SPACING, source=source)
        edge = next((each for each in row_numbers(bed, one, layout) if each.name == "edge"), None)
        is_ = edge or known("edge", layout.grid.edge, Unit.SPACING, source=Source.MEASURED)
        yield worked("near_edge", Unit.SPACING, "edge_distance − edge", least, is_, source=RULES)


def edge_asked(bed: Bed, crop: Crop, layout: Layout) -> int:
    """The least edge distance in nm that crop or bed ask for: rows spread over the bed have one of their own."""
    asked = crop.edge or bed.edge
    return max(layout.grid.edge_least, asked.nm if asked is not None else 0)
