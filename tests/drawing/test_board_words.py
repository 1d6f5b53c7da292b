"""What is said of spacing strips and templates leads to the rows that there are, and to no others."""

import re

import pytest

from gardenplot.drawing.board_words import begins_words, template_use
from gardenplot.drawing.dibble import Lattice, Template
from gardenplot.drawing.spacing_boards import Board, boards_of
from gardenplot.drawing.spacing_marks import Purpose, Strip, What
from gardenplot.layout import Layout, lay_out_plan
from gardenplot.plan import Plan
from gardenplot.units import CM, MM, M
from tests.drawing.hand_worked import only_bed
from tests.layout.ground import Fields
from tests.sheets.patterned import L_SHAPE, PLAIN, ROUND, TWIN, bed_of

LEG: Fields = {"from": "3 m", "length": "4 m", "end_margin": "20 cm"}
"""A block in the slim part of the L, which is 80 cm wide there and 1.60 m elsewhere."""
POND: Fields = {
    "outline": [["2.4 m", "1.2 m"], ["1.2 m", "2.4 m"], ["0 m", "1.2 m"], ["1.2 m", "0 m"]],
}
"""A bed that stands on its corner."""


def boards(plan: Plan) -> tuple[Board, ...]:
    """The boards of a plan, 4 m long."""
    return boards_of(lay_out_plan(plan), 400 * CM).made


def strip(plan: Plan, purpose: Purpose) -> tuple[Strip, Board]:
    """The one strip of a plan that has a purpose."""
    (found,) = (
        (one.what, one) for one in boards(plan) if isinstance(one.what, Strip) and one.what.purpose is purpose
    )
    return found


def template(plan: Plan, room: tuple[int, int]) -> tuple[Template, Board]:
    """The one template of a plan, for so much paper."""
    (found,) = ((one.what.template(room), one) for one in boards(plan) if isinstance(one.what, Lattice))
    return found


def assert_leads_to(layout: Layout, found: Template) -> None:
    """Fail unless a template moved across as it says marks every row, and says where it would go beyond them."""
    moved = template_use(found)[2]
    last = max(number for number, row in enumerate(layout.rows, 1) if row.count)
    onto = re.search(r"row 1 on row (\d+)", moved)
    assert (onto is not None) == (found.rows < last), moved
    if onto is not None:
        assert int(onto[1]) == found.rows + 1
        assert ("and so on" in moved) == (last > 2 * found.rows)
    beyond = re.search(r"nothing beyond row (\d+)", moved)
    assert (beyond is not None) == (last % found.rows > 0), moved
    assert beyond is None or int(beyond[1]) == last
    levels = sorted({spot.y for spot in found.spots})
    for number, row in enumerate(layout.rows[:last]):
        first = min(spot.x for spot in found.spots if spot.y == levels[number % found.rows])
        begins = min(spot.x for spot in found.spots if spot.y == levels[0])
        away = (row.runs[0].first - layout.rows[0].runs[0].first) % layout.grid.in_row
        assert (first - begins) % layout.grid.in_row == away, f"row {number + 1}"


@pytest.mark.parametrize("paper", [15 * CM, 20 * CM, 26 * CM, 60 * CM])
@pytest.mark.parametrize("rows", range(2, 8))
@pytest.mark.parametrize("pattern", ["staggered", "triangular"])
def test_a_template_is_moved_on_to_rows_that_there_are_and_meets_the_same_kind(
    pattern: str, rows: int, paper: int
) -> None:
    plan = bed_of(PLAIN | {"width": "90 cm"}, {"pattern": pattern, "rows": rows}, row_spacing="10 cm", edge="5 cm")
    (layout,) = only_bed(plan).layouts
    assert_leads_to(layout, template(plan, (26 * CM, paper))[0])


@pytest.mark.parametrize("paper", [15 * CM, 60 * CM, 2 * M])
def test_a_template_of_pairs_is_moved_on_by_whole_pairs(paper: int) -> None:
    plan = bed_of(PLAIN, TWIN | {"row_spacing": ["40 cm"]})
    assert_leads_to(only_bed(plan).layouts[0], template(plan, (26 * CM, paper))[0])


def test_a_template_says_nothing_of_rows_for_which_the_bed_is_too_slim() -> None:
    plan = bed_of(L_SHAPE, LEG | {"pattern": "staggered"})
    assert len([row for row in only_bed(plan).layouts[0].rows if row.count]) == 2
    assert "row" not in template_use(template(plan, (26 * CM, 15 * CM))[0])[2]


def test_in_the_slim_part_of_a_bed_a_strip_of_rows_ends_where_that_ends() -> None:
    plan = bed_of(L_SHAPE, LEG)
    found, _board = strip(plan, Purpose.ROWS)
    assert found.length == 80 * CM
    assert [mark.at for mark in found.marks] == [20 * CM, 60 * CM]
    across = bed_of(L_SHAPE, LEG | {"direction": "across", "pattern": "staggered"})
    found, _board = strip(across, Purpose.ACROSS)
    assert max(mark.at for mark in found.marks) <= found.length == 80 * CM
    assert not any(mark.what is What.CENTRE for mark in found.marks)


def test_in_the_wide_part_of_a_bed_it_goes_all_across_with_the_centre() -> None:
    found, _board = strip(bed_of(L_SHAPE), Purpose.ROWS)
    assert found.length == 1600 * MM
    assert [mark.at for mark in found.marks if mark.what is What.CENTRE] == [800 * MM]


@pytest.mark.parametrize("bed", [POND, ROUND])
@pytest.mark.parametrize("pattern", ["staggered", "triangular"])
def test_where_rows_begin_for_themselves_marks_before_their_first_plants_are_not_planted(
    pattern: str, bed: Fields
) -> None:
    for block in ({"pattern": pattern}, {"pattern": pattern, "direction": "across"}):
        plan = bed_of(bed, block)
        purpose = Purpose.ACROSS if "direction" in block else Purpose.IN_ROW
        found, board = strip(plan, purpose)
        assert "plant from the row’s first plant on" in begins_words(found, begins_late=board.begins_late)
    (pattern_board,) = (one for one in boards(bed_of(bed, {"pattern": pattern})) if isinstance(one.what, Lattice))
    assert pattern_board.begins_late


@pytest.mark.parametrize("bed", [PLAIN, L_SHAPE])
def test_where_all_rows_begin_with_their_block_nothing_is_said_of_that(bed: Fields) -> None:
    found, board = strip(bed_of(bed, {"pattern": "staggered"}), Purpose.IN_ROW)
    assert begins_words(found, begins_late=board.begins_late) == "0 on the stake where the block begins"
