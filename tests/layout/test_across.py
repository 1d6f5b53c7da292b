"""Rows across a bed: how many fit, where they stand, and what another edge distance would give."""

from fractions import Fraction
from math import floor

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from gardenplot.layout import EdgeRule, Layout, RowAnswer, row_answers
from gardenplot.layout.across import rows_that_fit, triangular_between
from gardenplot.units import CM, MM, M, Units, length_of
from tests.layout.ground import Block, blocks, laid_out, lengths, many, nm


def filled(width: str, row_spacing: str | list[str], **planting: str | int) -> Layout:
    """A bed of that width filled with a crop, without any edge distance of its own."""
    bed = {"length": "10 m", "width": width}
    return laid_out(bed, {"in_row": "25 cm", "row_spacing": row_spacing}, planting).layouts[0]


def text(size: int) -> str:
    """A length of so many nm as one types it."""
    return length_of(size, Units.METRIC).text


def offsets(layout: Layout) -> list[int]:
    return [row.offset for row in layout.rows]


def test_a_third_row_fits_exactly() -> None:
    layout = filled("1.2 m", "40 cm", edge="20 cm")
    assert offsets(layout) == [nm("20 cm"), nm("60 cm"), nm("100 cm")]


def test_a_third_row_does_not_fit_by_a_nanometre() -> None:
    assert rows_that_fit(nm("1.2 m") - 1, nm("20 cm"), nm("40 cm")) == 2


def test_one_row_fits_where_both_edge_distances_meet() -> None:
    assert rows_that_fit(nm("60 cm"), nm("30 cm"), nm("25 cm")) == 1
    assert rows_that_fit(nm("60 cm") - 1, nm("30 cm"), nm("25 cm")) == 0


def test_a_bed_narrower_than_both_edge_distances_has_no_row_and_no_plant() -> None:
    layout = filled("50 cm", "40 cm", edge="26 cm")
    assert (layout.rows, layout.plants) == ((), 0)


@pytest.mark.parametrize(
    ("width", "edge", "between", "rows"),
    [
        ("0.75", "0.075", "0.20", 4),
        ("1.20", "0.20", "0.40", 3),
        ("0.7", "0.05", "0.1", 7),
        ("1.00", "0.20", "0.20", 4),
    ],
)
def test_floating_point_would_lose_a_row_that_fits(width: str, edge: str, between: str, rows: int) -> None:
    assert floor((float(width) - 2 * float(edge)) / float(between)) + 1 == rows - 1
    assert rows_that_fit(nm(f"{width} m"), nm(f"{edge} m"), nm(f"{between} m")) == rows


@many
@given(
    width=lengths(CM, 3 * M), between=lengths(MM, 5 * M), pattern=st.sampled_from(["straight", "staggered", "twin"])
)
def test_where_nobody_asks_for_an_edge_distance_every_bed_has_a_row(width: int, between: int, pattern: str) -> None:
    crop = {"in_row": text(min(width, 25 * CM)), "row_spacing": text(between)}
    grid = laid_out({"length": "5 m", "width": text(width)}, crop, {"pattern": pattern}).layouts[0].grid
    assert grid.rows >= 1
    if grid.edge_rule is EdgeRule.MIDDLE:
        assert grid.rows == (2 if pattern == "twin" else 1)
        assert sum(grid.offsets) - grid.rows * width // 2 in (-1, 0)


def test_a_pair_of_rows_stands_in_the_middle_of_a_bed_as_wide_as_the_row_spacing() -> None:
    layout = filled("75 cm", "75 cm", pattern="twin", twin_spacing="25 cm")
    assert offsets(layout) == [nm("25 cm"), nm("50 cm")]
    assert (layout.grid.edge_least, layout.grid.edge_rule) == (nm("25 cm"), EdgeRule.MIDDLE)


@many
@given(width=lengths(1, 3 * M), edge=lengths(0, 1 * M), between=lengths(MM, 1 * M))
def test_rows_follow_the_closed_formula(width: int, edge: int, between: int) -> None:
    expected = floor(Fraction(width - 2 * edge, between)) + 1 if width >= 2 * edge else 0
    assert rows_that_fit(width, edge, between) == expected


@given(blocks())
def test_rows_stand_symmetric_about_the_centre_line_within_a_nanometre(block: Block) -> None:
    layout = block.layout
    for row, mirrored in zip(layout.rows, reversed(layout.rows), strict=True):
        assert 0 <= block.bed.width.nm - (row.offset + mirrored.offset) <= 1


@given(blocks())
def test_rows_are_evenly_spaced_and_keep_the_edge_distance(block: Block) -> None:
    layout = block.layout
    between = [second - first for first, second in zip(offsets(layout), offsets(layout)[1:], strict=False)]
    assert set(between) <= {layout.grid.between}
    for offset in offsets(layout):
        assert layout.grid.edge_least <= offset <= block.bed.width.nm - layout.grid.edge_least


@given(blocks())
def test_one_row_more_would_not_fit(block: Block) -> None:
    grid = block.layout.grid
    assert grid.rows * grid.between_least > grid.width - 2 * grid.edge_least


@pytest.mark.parametrize(
    ("planting", "crop", "bed", "edge", "rule"),
    [
        ("1 cm", "2 cm", "3 cm", "1 cm", EdgeRule.PLANTING),
        (None, "2 cm", "3 cm", "2 cm", EdgeRule.CROP),
        (None, None, "3 cm", "3 cm", EdgeRule.BED),
        (None, None, None, "15 cm", EdgeRule.HALF_SPACING),
    ],
)
def test_the_edge_distance_is_the_plantings_else_the_crops_else_the_beds_else_half_the_spacing(
    planting: str | None, crop: str | None, bed: str | None, edge: str, rule: EdgeRule
) -> None:
    ground = {"length": "5 m", "width": "75 cm", "edge": bed}
    leeks = {"in_row": "25 cm", "row_spacing": "30 cm", "edge": crop}
    grid = laid_out(ground, leeks, {"edge": planting}).layouts[0].grid
    assert (grid.edge_least, grid.edge_rule) == (nm(edge), rule)


def test_the_least_of_a_range_decides_how_many_rows_and_they_spread_up_to_the_most() -> None:
    roomy = filled("1 m", ["30 cm", "45 cm"], edge="20 cm").grid
    assert (roomy.rows, roomy.between, roomy.edge) == (3, nm("30 cm"), nm("20 cm"))
    spread = filled("1 m", ["30 cm", "45 cm"], edge="12 cm").grid
    assert (spread.rows, spread.between, spread.edge) == (3, nm("38 cm"), nm("12 cm"))
    capped = filled("1 m", ["35 cm", "36 cm"], edge="10 cm").grid
    assert (capped.rows, capped.between, capped.edge) == (3, nm("36 cm"), nm("14 cm"))


def test_rows_that_are_asked_for_stand_nearer_to_the_edge_but_never_beyond_it() -> None:
    assert offsets(filled("75 cm", "30 cm", edge="15 cm", rows=3)) == [nm("7.5 cm"), nm("37.5 cm"), nm("67.5 cm")]
    asked = filled("75 cm", "30 cm", edge="15 cm", rows=9).grid
    assert (asked.rows, asked.rows_asked, asked.edge) == (3, 9, nm("7.5 cm"))


def test_a_single_row_that_is_asked_for_stands_on_the_centre_line() -> None:
    assert offsets(filled("75 cm", "30 cm", rows=1)) == [nm("37.5 cm")]


def test_thirty_inches_hold_two_rows_at_six_inches_and_three_at_three() -> None:
    at_six, at_three = filled("30 in", "12 in", edge="6 in"), filled("30 in", "12 in", edge="3 in")
    two, three = RowAnswer(2, nm("9 in")), RowAnswer(3, nm("3 in"))
    assert row_answers(at_six.grid) == (two, three)
    assert row_answers(at_three.grid) == (three, two)


def test_half_the_row_spacing_gives_the_other_answer_for_the_fennel_bed() -> None:
    fennel = filled("76.2 cm", "30 cm", edge="7.5 cm")
    assert offsets(fennel) == [nm("8.1 cm"), nm("38.1 cm"), nm("68.1 cm")]
    assert row_answers(fennel.grid)[1].rows == 2


def test_a_bed_for_one_row_only_has_one_answer() -> None:
    assert row_answers(filled("30 cm", "40 cm", edge="10 cm").grid) == (RowAnswer(1, nm("15 cm")),)


@given(blocks())
def test_both_row_answers_lie_inside_the_bed(block: Block) -> None:
    grid = block.layout.grid
    answers = row_answers(grid)
    assert answers[0] == RowAnswer(grid.rows, grid.edge)
    assert len({answer.rows for answer in answers}) == len(answers)
    for answer in answers[1:]:
        assert 0 <= answer.edge <= grid.width // 2


@many
@given(st.integers(MM, 2 * M))
@example(40 * CM)
@example(1)
def test_triangular_rows_are_as_close_as_no_two_plants_are_too_near(in_row: int) -> None:
    between, shift = triangular_between(in_row), in_row // 2
    assert between**2 + shift**2 >= in_row**2
    assert (between - 1) ** 2 + shift**2 < in_row**2
