"""Strings on the rows or beside them: the offsets on the bed sheet are those of the strings."""

import pytest

from gardenplot.files import sample
from gardenplot.layout import Layout
from gardenplot.plan import Plan
from gardenplot.plan.file import read_plan
from gardenplot.sheets.choices import Choices, Kind
from gardenplot.sheets.paper import Paper
from gardenplot.sheets.row_sections import beside_rows
from gardenplot.units import CM
from tests.drawing.hand_worked import only_bed
from tests.sheets.made import made
from tests.sheets.pdf_pages import pages_of
from tests.sheets.printed import bed_with


def said(plan: Plan, string: int) -> str:
    """The words of the first bed sheet."""
    return pages_of(made(plan, Paper.A4, Kind.BEDS, Choices(string=string)).pdf)[0].text


def only_layout(plan: Plan) -> Layout:
    """The layout of the only planting."""
    (layout,) = only_bed(plan).layouts
    return layout


def test_offsets_are_those_of_the_strings_where_they_stand_beside_the_rows() -> None:
    plan = bed_with({"length": "3 m"})
    assert [row.offset // (CM // 10) for row in only_layout(plan).rows] == [125, 375, 625]
    assert "from edge 12.5 37.5 62.5" in said(plan, 0)
    beside = said(plan, 5 * CM)
    assert "strings 5 cm left of the rows, at these figures" in beside
    assert "from edge 7.5 32.5 57.5" in beside


@pytest.mark.parametrize(
    ("string", "beside"), [(0, 0), (5 * CM, -5 * CM), (125 * CM // 10, -125 * CM // 10), (13 * CM, 0)]
)
def test_strings_stay_in_the_bed(string: int, beside: int) -> None:
    assert beside_rows(only_layout(bed_with({"length": "3 m"})), string) == beside


def test_strings_go_right_of_rows_that_begin_at_the_left_edge() -> None:
    plan = bed_with({"length": "3 m", "pattern": "offsets", "offsets": ["2 cm", "30 cm"]})
    assert beside_rows(only_layout(plan), 5 * CM) == 5 * CM
    assert "strings 5 cm right of the rows" in said(plan, 5 * CM)
    assert "from edge 7 35" in said(plan, 5 * CM)


def test_rows_across_the_bed_keep_their_strings_on_them() -> None:
    plan = bed_with({"length": "3 m", "direction": "across"})
    assert "strings" not in said(plan, 5 * CM)


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize(
    ("name", "bed", "ratio"),
    [("tarn-garth", "L round the shed", 75), ("larch-bend", "Tunnel 2", 96), ("kestrel-howe", "Field 1", 100)],
)
def test_a_line_more_for_the_strings_does_not_make_the_bed_smaller(
    name: str, bed: str, ratio: int, paper: Paper
) -> None:
    """They were drawn at less than half of that size, while a third of the page was white."""
    plan = read_plan(sample(f"{name}.gardenplot")).plan
    pages = pages_of(made(plan, paper, Kind.BEDS, Choices(string=5 * CM)).pdf)
    assert [page.ratio for page in pages if page.text.startswith(bed)] == [ratio]
