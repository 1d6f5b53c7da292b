"""Plans to print, and their sheets read back."""

from functools import cache

from attrs import evolve, frozen
from hypothesis import strategies as st

from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.plan import Place, Plan
from gardenplot.sheets.paper import Paper
from gardenplot.units import CM, M, Units
from tests.drawing.hand_worked import plan_from
from tests.layout.ground import Fields, blocks, lengths, long
from tests.sheets.made import bed_sheets
from tests.sheets.pdf_pages import Page, pages_of


@cache
def printed(plan: Plan, paper: Paper = Paper.A4) -> tuple[Page, ...]:
    """The pages of a plan's bed sheets."""
    return pages_of(bed_sheets(plan, paper).pdf)


def said(plan: Plan, paper: Paper = Paper.A4) -> str:
    """All words of a plan's bed sheets."""
    return " ".join(page.text for page in printed(plan, paper))


def bed_with(*plantings: Fields, units: str = "metric", crop: str = "Leek", **bed: str) -> Plan:
    """A bed of 12 m x 75 cm with blocks of one crop, p1, p2 ..."""
    return plan_from(
        {"units": units},
        beds=[{"id": "b1", "name": "Long bed", "length": "12 m", "width": "75 cm"} | bed],
        crops=[{"id": "leek", "name": crop, "in_row": "15 cm", "row_spacing": "25 cm", "edge": "10 cm"}],
        plantings=[
            {"id": f"p{number}", "bed": "b1", "crop": "leek"} | one for number, one in enumerate(plantings, 1)
        ],
    )


def in_a_row(count: int, **bed: str) -> Plan:
    """A bed with so many blocks of 45 cm with ground between them."""
    return bed_with(*({"from": f"{60 * number} cm", "length": "45 cm"} for number in range(count)), **bed)


@frozen
class Sheet:
    """A plan of one bed with one planting, in some units, on some paper."""

    plan: Plan
    paper: Paper

    @property
    def laid(self) -> LaidOut:
        """The bed, laid out."""
        (laid,) = lay_out_plan(self.plan)
        return laid

    @property
    def page(self) -> Page:
        """Its first page."""
        return printed(self.plan, self.paper)[0]


@st.composite
def sheets(draw: st.DrawFn) -> Sheet:
    """Any bed from a few centimetres to 60 m with a block of up to a few hundred plants."""
    block = draw(blocks())
    size = draw(lengths(40 * CM, 60 * M).map(long))
    bed = evolve(block.bed, length=size) if draw(st.booleans()) else block.bed
    place = Place(units=draw(st.sampled_from(Units)))
    return Sheet(Plan(place, (bed,), (block.crop,), (block.planting,)), draw(st.sampled_from(Paper)))
