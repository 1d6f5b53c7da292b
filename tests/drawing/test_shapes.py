"""Round beds and boxes are drawn as they are: a circle, boards round the inside, posts in its corners."""

from math import hypot

import pytest

from gardenplot.drawing.bed import BedFigure, draw_bed
from gardenplot.drawing.letters import looks
from gardenplot.drawing.marks import Line, Outline, Plants
from gardenplot.drawing.style import Ink
from gardenplot.exports.svg import drawn as svg
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from tests.drawing.hand_worked import plan_from
from tests.layout.ground import Fields

BOX: Fields = {"box": {"length": "2.4 m", "width": "1.2 m", "board": "4 cm", "post": "9 cm"}}


def plan_of(bed: Fields, **planting: str) -> Plan:
    """A bed with one block of leeks."""
    return plan_from(
        beds=[{"id": "b", "name": "Bed"} | bed],
        crops=[{"id": "c", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm", "edge": "10 cm"}],
        plantings=[{"id": "p", "bed": "b", "crop": "c"} | planting],
    )


def figure_of(plan: Plan) -> BedFigure:
    """The one bed, drawn."""
    (laid,) = lay_out_plan(plan)
    return draw_bed(laid, None, looks(plan), plan.place.units)


def outlines(figure: BedFigure, ink: Ink) -> list[Outline]:
    """The areas filled with an ink."""
    return [mark for mark in figure.marks if isinstance(mark, Outline) and mark.fill is ink]


@pytest.mark.parametrize("block", [{}, {"from": "20 cm", "length": "1 m"}, {"pattern": "broadcast", "length": "1 m"}])
def test_all_that_is_drawn_of_a_round_bed_lies_in_its_circle(block: Fields) -> None:
    figure = figure_of(plan_of({"diameter": "3 m"}, **block))
    for mark in figure.marks:
        ends = (mark.start, mark.end) if isinstance(mark, Line) else mark.points if isinstance(mark, Outline) else ()
        assert all(hypot(x - 1500, y - 1500) <= 1500.001 for x, y in ends)
    (soil,) = outlines(figure, Ink.SOIL)
    assert all(hypot(x - 1500, y - 1500) == pytest.approx(1500) for x, y in soil.points)


def test_a_box_has_four_boards_round_its_inside_and_four_black_posts() -> None:
    figure = figure_of(plan_of(BOX))
    boards, posts, (soil,) = outlines(figure, Ink.EDGE), outlines(figure, Ink.INK), outlines(figure, Ink.SOIL)
    assert (len(boards), len(posts), len(soil.points)) == (4, 4, 12)
    corners = [corner for board in boards for corner in board.points]
    assert (min(corners), max(corners)) == ((-40, -40), (2360, 1160))
    assert {post.points[0] for post in posts} == {(0, 0), (2230, 0), (0, 1030), (2230, 1030)}
    assert figure.rim == 40


def test_a_block_past_the_foot_of_a_round_bed_is_still_drawn() -> None:
    figure = figure_of(plan_of({"diameter": "1 m"}, **{"from": "2 m", "length": "1 m", "pattern": "broadcast"}))
    assert all(len(mark.points) > 2 for mark in figure.marks if isinstance(mark, Outline))
    assert not [mark for mark in figure.marks if isinstance(mark, Plants)]


def test_the_boards_lie_within_the_sheet_of_an_svg() -> None:
    assert b'viewBox="-63.2 0 2446.4' in svg(plan_of(BOX))
