"""Sheets of round beds, boxes and slopes say what to measure from, and stay on one page."""

import pytest

from gardenplot.plan import Plan
from gardenplot.sheets.paper import Paper
from tests.drawing.hand_worked import plan_from
from tests.layout.ground import Fields
from tests.sheets.printed import printed, said

BOX: Fields = {"box": {"length": "2.4 m", "width": "1.2 m", "board": "4 cm", "post": "9 cm"}}
OPEN: Fields = {"box": {"length": "2.4 m", "width": "1.2 m", "board": "4 cm"}}


def bed_of(bed: Fields, units: str = "metric", **planting: str) -> Plan:
    """A bed with one block of leeks."""
    return plan_from(
        {"units": units},
        beds=[{"id": "b", "name": "Bed"} | bed],
        crops=[{"id": "c", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm", "edge": "10 cm"}],
        plantings=[{"id": "p", "bed": "b", "crop": "c"} | planting],
    )


def words_of(plan: Plan, paper: Paper = Paper.A4) -> str:
    """All words of its sheets, with plain blanks."""
    return said(plan, paper).replace("\u2009", " ")


@pytest.mark.parametrize(
    ("bed", "units", "words"),
    [
        (BOX, "metric", "boards 4 cm, outside 2.40 × 1.20 m; all readings from the inner face"),
        ({"diameter": "3 m"}, "metric", "centre at 1.50 m, 1.50 m from the left edge; radius 1.50 m"),
        ({"diameter": "9 ft"}, "feet and inches", "centre at 4′ 6″, 4′ 6″ from the left edge; radius 4′ 6″"),
        ({"length": "20 m", "width": "1.2 m", "slope": "12 %"}, "metric",
         "slope 12 %: 20.00 m on the ground, 19.86 m on the map"),
        ({"map_length": "8 m", "width": "1.2 m", "slope": "75 %"}, "metric",
         "slope 75 %: 10.00 m on the ground, 8.00 m on the map"),
    ],
)  # fmt: skip
def test_what_all_readings_hang_on_is_said_in_one_line(bed: Fields, units: str, words: str) -> None:
    (page, *_more) = printed(bed_of(bed, units))
    assert words in [line.text.replace("\u2009", " ") for line in page.words]


def test_a_length_that_follows_from_the_map_is_told_as_its_foot_stake_has_it() -> None:
    """sqrt(40^2 + (9 % of 40)^2) = 40.1617 ft; a width that was typed is told exactly."""
    (page, *_more) = printed(bed_of({"map_length": "40 ft", "width": "3.125 ft", "slope": "9 %"}, "decimal feet"))
    words = [line.text.replace("\u2009", " ") for line in page.words]
    assert "40.16 ft × 3.125 ft" in words
    assert "40.16" in words
    assert not [one for one in words if "40.162" in one]


def test_a_plain_bed_says_nothing_of_this() -> None:
    words = words_of(bed_of({"length": "20 m", "width": "1.2 m"}))
    assert not any(word in words for word in ("boards", "slope", "radius", "on the map"))


@pytest.mark.parametrize(
    ("bed", "diagonals"),
    [
        # sqrt(232^2 + 112^2) = 257.6; between posts sqrt(214^2 + 94^2) = 233.7
        (OPEN, "both diagonals 2.58 m"),
        (BOX, "diagonals, post to post 2.34 m"),
        ({"diameter": "3 m"}, None),
        ({"outline": [["0 m", "0 m"], ["3 m", "0 m"], ["3 m", "1 m"]]}, None),
    ],
)
def test_a_bed_with_corners_is_squared_and_no_other(bed: Fields, diagonals: str | None) -> None:
    words = words_of(bed_of(bed))
    assert ("Square" in words) == (diagonals is not None)
    assert ("3-4-5" in words) == (bed is OPEN)
    assert diagonals is None or diagonals in words


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("bed", [BOX, OPEN, {"diameter": "3 m"}, {"diameter": "1.2 m"}])
def test_a_box_and_a_circle_have_one_page(bed: Fields, paper: Paper) -> None:
    assert len(printed(bed_of(bed), paper)) == 1


def test_a_round_bed_is_named_by_its_diameter_and_a_box_by_its_inside() -> None:
    assert "3.00 m round" in words_of(bed_of({"diameter": "3 m"}))
    assert "2.32 m × 1.12 m" in words_of(bed_of(BOX))


@pytest.mark.parametrize("paper", Paper)
def test_a_bed_of_many_stakes_is_drawn_lower_so_that_it_has_one_page(paper: Paper) -> None:
    # An outline of 12 corners in a circle, written by hand: 14 stakes, since its rows begin and end at many readings.
    corners = [
        (24, 12),
        (22, 18),
        (18, 22),
        (12, 24),
        (6, 22),
        (2, 18),
        (0, 12),
        (2, 6),
        (6, 2),
        (12, 0),
        (18, 2),
        (22, 6),
    ]
    outline = [[f"{x}0 cm", f"{y}0 cm"] for x, y in corners]
    plan = plan_from(
        beds=[{"id": "b1", "name": "Pond", "outline": outline}],
        crops=[{"id": "kale", "name": "Kale", "in_row": "20 cm", "row_spacing": "20 cm"}],
        plantings=[{"id": "p1", "bed": "b1", "crop": "kale", "from": "0 cm", "pattern": "triangular"}],
    )
    (page,) = printed(plan, paper)
    assert 12 <= sum(words.size == 17 for words in page.words) <= 16
    assert "A Kale" in {words.text for words in page.words if words.size == 12}


def test_what_stands_in_a_bed_is_told_with_its_place() -> None:
    obstacles = [
        {"name": "Tap", "x": "2.5 m", "y": "30 cm", "diameter": "10 cm", "keep_clear": "15 cm"},
        {"name": "Pole " * 60, "x": "4 m", "y": "45 cm", "diameter": "8 cm"},
        {"name": "Step", "x": "5 m", "y": "15 cm", "length": "30 cm", "width": "20 cm", "rows": [1, 2]},
    ]
    (page,) = printed(
        plan_from(beds=[{"id": "b1", "name": "Bed", "length": "6 m", "width": "75 cm", "obstacles": obstacles}])
    )
    large = {words.text for words in page.words if words.size >= 14}
    assert {"2.50", "30", "10", "15", "4.00", "45", "8", "0", "30 × 20"} <= large
    assert {"Tap, round", "Step, along × across, rows 1–2 alone"} <= {words.text for words in page.words}
    below = max(words.box[3] for words in page.words if words.text in {"4.00", "45", "8"})
    assert all(words.box[1] >= below for words in page.words if words.text.startswith("Pole"))


def test_rows_that_differ_are_listed_and_a_sown_band_is_not() -> None:
    assert "first plant" in words_of(bed_of({"diameter": "3 m"}))
    assert "from edge" not in words_of(bed_of({"diameter": "3 m"}, pattern="broadcast"))
