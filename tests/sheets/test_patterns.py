"""Every pattern in every outline says on paper how it is marked out, in figures that are read from above."""

from itertools import combinations

import pytest

from gardenplot.sheets.bed_arranged import room_for
from gardenplot.sheets.paper import Paper
from gardenplot.sheets.section import space
from tests.layout.ground import Fields
from tests.sheets.patterned import (
    ACROSS,
    BOX,
    BY_NAME,
    CELLS,
    L_SHAPE,
    MOVED_ACROSS,
    OWN,
    PLAIN,
    RINGS,
    ROUND,
    TAPER,
    TWIN,
    bed_of,
)
from tests.sheets.pdf_pages import Page, plain
from tests.sheets.printed import printed
from tests.sheets.test_words import lies_over


def page_of(bed: Fields, *plantings: Fields, units: str = "metric", **crop: object) -> Page:
    """The one page of a bed's sheet."""
    (page,) = printed(bed_of(bed, *plantings, units=units, **crop))
    return page


def texts(page: Page, least: float = 0) -> list[str]:
    """The lines of words of a page, or those of at least some points, with plain blanks."""
    return [words.text.replace("\u2009", " ") for words in page.words if words.size >= least]


def table_below(page: Page, heading: str, columns: int) -> list[tuple[str, ...]]:
    """The lines of the last table whose last column has that heading, as far as they are figures."""
    words = texts(page)
    after = words[len(words) - words[::-1].index(heading) :]
    lines = [tuple(after[at : at + columns]) for at in range(0, len(after), columns)]
    stop = next((at for at, line in enumerate(lines) if not all(is_figure(one) for one in line)), len(lines))
    return lines[:stop]


def is_figure(words: str) -> bool:
    return words[:1].isdigit()


def test_twin_rows_are_said_in_pairs_and_their_offsets_stand_over_a_rule() -> None:
    # (120 - 20 - 2 * 10) / 60 + 1 = 2 pairs, 80 cm across and centred
    page = page_of(PLAIN, TWIN | {"from": "1 m", "length": "4.2 m"})
    assert "pairs 60 cm apart, 20 cm inside a pair" in plain(page.text)
    assert {"20", "40", "80", "100"} <= set(texts(page, 14))
    assert {"−40", "−20", "+20", "+40"} <= set(texts(page))
    figures = {words.text: words.box for words in page.words if words.size == 14}
    rules = [path.box for path in page.paths if len(path.corners) == 2 and path.size[1] < 0.01]
    for first, last in (("20", "40"), ("80", "100")):
        left, right, base = figures[first][0], figures[last][2], figures[first][1]
        assert [
            1 for rule in rules if abs(rule[0] - left) < 2 and abs(rule[2] - right) < 2 and 0 < base - rule[1] < 5
        ]


def test_one_pair_needs_no_distance_between_pairs() -> None:
    page = page_of(PLAIN | {"width": "50 cm"}, TWIN | {"length": "4 m"})
    assert "20 cm inside the pair" in plain(page.text)


def test_own_offsets_are_said_as_they_were_given() -> None:
    page = page_of(PLAIN, OWN | {"length": "4 m"})
    assert {"20", "45", "100"} <= set(texts(page, 14))
    assert {"−40", "−15", "+40"} <= set(texts(page))


def test_cells_say_how_many_where_their_lines_lie_and_where_plants_stand_in_them() -> None:
    page = page_of(PLAIN, CELLS | {"length": "6 m"})
    assert "cells of 30 cm, 4 plants in each: 20 × 4 cells" in plain(page.text)
    assert {"0", "30", "60", "90", "120"} <= set(texts(page, 14))
    assert table_below(page, "plants from its head side", 2) == [("7.5", "7.5 22.5"), ("22.5", "7.5 22.5")]
    (five,) = [page_of(BOX, CELLS | {"plants_per_cell": 5})]
    assert table_below(five, "plants from its head side", 2) == [("5", "7.5 22.5"), ("15", "15"), ("25", "7.5 22.5")]
    (many,) = [page_of(PLAIN, CELLS | {"plants_per_cell": 36, "length": "3 m"})]
    assert table_below(many, "plants from its head side", 2)[0] == ("2.5", "2.5, then every 5")


@pytest.mark.parametrize(
    ("length", "said"), [("4 m", "cells end at 4.90, 10 cm left after them"), ("3.9 m", None)]
)  # fmt: skip
def test_it_is_said_where_cells_end_before_their_block_does(length: str, said: str | None) -> None:
    """13 cells of 30 cm take 3.90 m."""
    text = plain(page_of(PLAIN, CELLS | {"from": "1 m", "length": length}).text)
    assert said is None or said in text
    assert ("cells end" in text) is (said is not None)


def test_rows_of_cells_that_differ_say_where_they_begin_and_end() -> None:
    page = page_of(BOX, CELLS)
    assert "cells of 30 cm, 4 plants in each: 28 cells" in plain(page.text)
    assert table_below(page, "cells", 4) == [
        ("1", "0.30", "2.10", "6"),
        ("2", "0.00", "2.40", "8"),
        ("3", "0.00", "2.40", "8"),
        ("4", "0.30", "2.10", "6"),
    ]


def test_rings_say_their_centre_and_the_radius_and_plants_of_each() -> None:
    # radii 130, 90, 50 and 10 cm hold pi / asin(20 / 2r) = 40.8, 28.2, 15.6 and 2 plants, rounded down
    page = page_of(ROUND, RINGS)
    assert "first plant of each ring on the centre line towards the" in texts(page)
    assert [words for words in texts(page, 17) if words in {"130", "90", "50", "10"}] == ["130", "90", "50", "10"]
    assert {"1.50 m", "150 cm"} <= {plain(words) for words in texts(page, 14)}
    assert "drive a stake at the centre first: all rings are measured from it" in plain(page.text)
    assert "3 stakes (1 at centre)" in plain(page.text)
    assert table_below(page, "plants", 4) == [
        ("1", "130", "20.4", "40"),
        ("2", "90", "20.2", "28"),
        ("3", "50", "20.8", "15"),
        ("4", "10", "20", "2"),
    ]


def test_many_rings_go_on_in_a_section_of_their_own() -> None:
    crowd = RINGS | {"in_row": "6 cm", "row_spacing": ["8 cm"], "edge": "5 cm"}
    for paper in Paper:
        for page in printed(bed_of(ROUND, crowd), paper):
            assert all(words.box[1] > 26 for words in page.words)
            for one, other in combinations(page.words, 2):
                assert not lies_over(one, other), f"“{one.text}” and “{other.text}”"
    assert "A Leek, continued" in " ".join(page.text for page in printed(bed_of(ROUND, crowd)))


def test_a_ring_that_is_cut_short_does_not_say_where_its_first_plant_stands() -> None:
    words = texts(page_of(ROUND, RINGS | {"from": "1 m"}))
    assert "Rings" in words
    assert not any("first plant of each ring" in one for one in words)


def test_a_ring_says_how_far_its_plants_are_apart() -> None:
    # 2 * 130 sin(pi / 40) = 20.4 cm, 2 * 90 sin(pi / 28) = 20.2 cm, 2 * 50 sin(pi / 15) = 20.8 cm
    assert {"20.4", "20.2", "20.8", "20"} <= set(texts(page_of(ROUND, RINGS), 14))


def test_rows_across_say_their_first_reading_their_step_and_their_plants_from_the_edge() -> None:
    # 5 plants 20 cm apart take 80 cm of 120; rows 40 cm apart, the first half of that inside the block
    page = page_of(PLAIN, ACROSS | {"from": "1 m", "length": "4 m"})
    assert table_below(page, "last at", 3)[0] == ("1.20", "40 cm", "4.80")
    assert {"20", "40", "60", "80", "100"} <= set(texts(page, 14))
    assert {"−40", "−20", "+20", "+40"} <= set(texts(page))


def test_rows_across_that_are_staggered_have_their_second_kind_beside_them() -> None:
    page = page_of(PLAIN | {"width": "1.1 m"}, MOVED_ACROSS | {"from": "1 m", "length": "4 m"})
    words = texts(page)
    first, second = words.index("rows 1, 3 … 9"), words.index("rows 2, 4 … 10")
    assert first < second
    kinds = [[one for one in texts(page, 14) if one in words[at : at + 14]] for at in (first, second)]
    # 4 plants take 60 cm, with the shift 70 of 110
    assert {"20", "40", "60", "80"} <= set(kinds[0])
    assert {"30", "50", "70", "90"} <= set(kinds[1])


def test_rows_across_of_an_l_are_told_apart_where_it_grows_slim() -> None:
    # 7 plants take 120 of 160 cm, 3 take 40 of 80, which leaves no room for the shift: moved rows hold one less
    assert table_below(page_of(L_SHAPE, MOVED_ACROSS), "plants", 5) == [
        ("1, 3 … 5", "0.20", "20", "140", "7"),
        ("2, 4", "0.60", "30", "130", "6"),
        ("6, 8 … 20", "2.20", "30", "50", "2"),
        ("7, 9 … 19", "2.60", "20", "60", "3"),
    ]


def test_shifted_rows_say_what_they_gain() -> None:
    page = page_of(TAPER, {"phase": "best"}, in_row="25 cm", row_spacing="30 cm", edge="12 cm")
    assert "rows shifted: 3 plants more than centred" in texts(page)
    assert not any("shifted" in words for words in texts(page_of(TAPER)))


@pytest.mark.parametrize(
    ("planting", "words"),
    [
        # 4.10 m hold 14 plants of 28 cm, and of 29 cm too (4.06 m)
        ({}, "29 cm in the row (packet 28 cm)"),
        ({"in_row": "27 cm"}, "27 cm in the row"),
        ({"in_row": "28 cm"}, "29 cm in the row (28 cm asked for)"),
    ],
)
def test_a_spread_remainder_says_both_spacings(planting: Fields, words: str) -> None:
    page = page_of(PLAIN, {"length": "4.1 m", "remainder": "spread"} | planting, in_row="28 cm")
    assert f"A Leek, {words} " in plain(page.text)
    assert f"{words.split(maxsplit=1)[0]} cm" in texts(page, 14)


def test_rows_of_an_l_are_numbered_as_their_stakes_name_them() -> None:
    page = page_of(L_SHAPE)
    assert "A rows 3–4 end" in texts(page)
    assert [words.text for words in page.words if words.size == 17] == ["0.00", "2.00", "8.00"]
    lines = texts(page)
    at = lines.index("last plant")
    figures = lines[at + 2 :]
    assert [tuple(figures[row * 5 : row * 5 + 5]) for row in range(4)] == [
        ("1", "20", "0.10", "7.90", "40"),
        ("2", "60", "0.10", "7.90", "40"),
        ("3", "100", "0.10", "1.90", "10"),
        ("4", "140", "0.10", "1.90", "10"),
    ]


@pytest.mark.parametrize("units", ["metric", "feet and inches", "decimal feet"])
@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("name", BY_NAME)
def test_no_pattern_in_no_outline_is_printed_over_or_cut_short(name: str, paper: Paper, units: str) -> None:
    bed, planting = BY_NAME[name]
    for page in printed(bed_of(bed, planting, units=units), paper):
        assert not any(words.text.endswith("…") and not words.text.startswith("rows") for words in page.words)
        for one, other in combinations(page.words, 2):
            assert not lies_over(one, other), f"“{one.text}” and “{other.text}”"


@pytest.mark.parametrize("units", ["metric", "feet and inches"])
@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("name", BY_NAME)
def test_a_bed_with_one_block_has_one_page(name: str, paper: Paper, units: str) -> None:
    bed, planting = BY_NAME[name]
    assert len(printed(bed_of(bed, planting, units=units), paper)) == 1


def test_three_blocks_of_different_patterns_have_one_page() -> None:
    blocks = [
        ACROSS | {"from": "0.5 m", "length": "3 m"},
        TWIN | {"from": "4 m", "length": "3 m"},
        CELLS | {"from": "8 m", "length": "2.4 m"},
    ]
    page = page_of(PLAIN, *blocks)
    for words in ("Square", "Carry", "cells of 30 cm, 4 plants in each: 8 × 4 cells"):
        assert words in plain(page.text)


def test_a_wedge_of_very_many_rows_goes_on_over_pages_with_its_heading() -> None:
    wedge: Fields = {"outline": [["0 m", "0 m"], ["30 m", "0 m"], ["30 m", "1 m"], ["0 m", "16 m"]]}
    pages = printed(bed_of(wedge))
    assert len(pages) > 1
    assert any("A Leek, continued" in page.text for page in pages)
    ends = [words.text for page in pages for words in page.words if words.text.startswith("A row ")]
    assert len(ends) == len(set(ends)) > 30
    for page in pages:
        for one, other in combinations(page.words, 2):
            assert not lies_over(one, other), f"“{one.text}” and “{other.text}”"


def test_what_stands_below_the_stakes_needs_less_height_than_one_column() -> None:
    parts = (space(100), space(90), space(80))
    assert room_for(15, parts) < 270
    assert room_for(15, ()) == room_for(15, (space(1),))


def test_places_left_out_for_a_post_are_not_told_as_planted() -> None:
    # Shifted rows keep their places on both sides of a post: 0.25, 0.75 … 4.75, of which the one at 2.75 is left out.
    post = {"name": "Post", "x": "2.75 m", "y": "20 cm", "diameter": "10 cm", "keep_clear": "25 cm"}
    bed = PLAIN | {"width": "80 cm", "obstacles": [post]}
    page = page_of(bed, {"length": "5 m", "pattern": "staggered", "row_spacing": "40 cm"}, in_row="50 cm")
    words = [words.text for words in page.words]
    at = words.index("2.25")
    assert words[at - 1 : at + 5] == ["0.25", "2.25", "5", "3.25", "4.75", "4"]
