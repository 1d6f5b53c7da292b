"""Beds that are no rectangles are laid out from their sheet alone: ties from both ends, names of corners, marks."""

import re
from itertools import chain, combinations
from math import cos, hypot, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st
from reportlab.pdfbase import pdfmetrics

from gardenplot.drawing.carried import tape_number
from gardenplot.drawing.letters import looks
from gardenplot.drawing.stakes import stakes
from gardenplot.files import sample
from gardenplot.layout.staked import MOST_STAKED, other_corners
from gardenplot.plan import Plan
from gardenplot.plan.file import read_plan
from gardenplot.plan.shapes import ties_of
from gardenplot.sheets.paper import BOLD, Paper
from gardenplot.units import MM, M, Units
from gardenplot.units.figures import tape
from tests.drawing.hand_worked import only_bed, plan_from
from tests.drawing.test_carried import words_of
from tests.layout.ground import Fields
from tests.sheets.patterned import BOX, L_SHAPE, PLAIN, ROUND, TAPER, bed_of
from tests.sheets.pdf_pages import POINT_PER_MM, Page, plain
from tests.sheets.printed import printed, said
from tests.sheets.test_words import lies_over

STEPS = [
    (0, 0),
    (90, 0),
    (90, 5),
    (80, 5),
    (80, 10),
    (70, 10),
    (70, 15),
    (20, 15),
    (20, 12),
    (10, 12),
    (10, 6),
    (0, 6),
]
TWELVE: Fields = {"outline": [[f"{x}0 cm", f"{y}0 cm"] for x, y in STEPS]}
each_paper = pytest.mark.parametrize("paper", Paper)


def stakes_said(plan: Plan) -> str:
    """The stakes to carry in words."""
    return next((words for turn in words_of(plan) for words in turn if "stake" in words), "none")


@each_paper
def test_the_corners_of_an_l_are_tied_to_both_ends_of_its_base_line(paper: Paper) -> None:
    """By hand: from (2.00, 1.60) to the head root(4 + 2.56) = 2.56 m, to the foot root(36 + 2.56) = 6.21 m."""
    (page,) = printed(bed_of(L_SHAPE), paper)
    large = [plain(words.text) for words in page.words if words.size == 14]
    rows = {tuple(large[at : at + 4]) for at in range(len(large) - 3)}
    assert {("8.00", "80", "8.04", "0.80"), ("2.00", "80", "2.15", "6.05"), ("2.00", "160", "2.56", "6.21"),
            ("0.00", "160", "1.60", "8.16")} <= rows  # fmt: skip
    # The tape reaches to the farthest corner, and corners take stakes: four of six, as two are head and foot.
    assert "a metric tape of 9 m or more" in page.text
    assert "7 stakes (4 at corners)" in plain(page.text)


@each_paper
@pytest.mark.parametrize("units", ["metric", "feet and inches", "decimal feet"])
@pytest.mark.parametrize("bed", [L_SHAPE, TAPER, TWELVE])
def test_each_corner_of_the_table_is_named_in_the_drawing(bed: Fields, units: str, paper: Paper) -> None:
    """Two corners of each are the head stake and the foot stake, and have no other name."""
    pages = printed(bed_of(bed, units=units), paper)
    words = [words.text for page in pages for words in page.words]
    named = [name for text in words for name in text.split(" ") if re.fullmatch(r"c\d{1,2}", name)]
    outline = bed["outline"]
    assert isinstance(outline, list)
    tables = 2 if units == "feet and inches" and bed is L_SHAPE else 1
    assert {name: named.count(name) - tables for name in named} == {f"c{at}": 1 for at in range(1, len(outline) - 1)}


def test_an_outline_of_twelve_corners_has_each_of_them_in_its_table() -> None:
    (page,) = printed(bed_of(TWELVE))
    large = {plain(words.text) for words in page.words if words.size == 14}
    for x, y in STEPS[2:]:
        assert {f"{hypot(x, y) / 10:.2f}", f"{hypot(90 - x, y) / 10:.2f}"} <= large
    assert stakes_said(bed_of(TWELVE)) == "16 stakes (10 at corners)"


@each_paper
@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize(
    ("corners", "length", "width", "rows"),
    [(12, 240, 240, 18), (12, 400, 400, 40), (12, 1200, 400, 40), (12, 720, 240, 30)],
)
def test_stakes_and_corners_of_an_outline_of_many_corners_are_on_one_page(
    corners: int, length: int, width: int, rows: int, units: Units, paper: Paper
) -> None:
    """Corners on an ellipse that touches its base line, in cm, with so many stakes that 16 are not exceeded."""
    turns = [2 * pi * at / corners for at in range(corners)]
    outline = [[f"{length * (1 - cos(one)) / 2:.2f} cm", f"{width * (1 - sin(one)) / 2:.2f} cm"] for one in turns]
    plan = bed_of({"outline": outline}, units=units, row_spacing=f"{rows} cm")
    laid = only_bed(plan)
    assert 8 <= len(stakes(plan, laid, laid.layouts, looks(plan))) <= 16
    (page,) = printed(plan, paper)
    large = {plain(words.text) for words in page.words if words.size == 14}
    for tie in chain.from_iterable(ties_of(laid.bed)):
        assert plain(tape(tie, units).number) in large
    for one, other in combinations(page.words, 2):
        assert not lies_over(one, other), f"“{one.text}” and “{other.text}”"


def test_the_corners_of_a_curve_are_left_to_the_drawing() -> None:
    corners = [[f"{at} cm", "0 cm"] for at in range(0, 700, 10)] + [["690 cm", "1 m"], ["0 m", "1 m"]]
    plan = bed_of({"outline": corners})
    assert len(corners) > MOST_STAKED
    assert "72 corners along a curve: take them from the drawing" in said(plan)
    assert "corners" not in stakes_said(plan)


@given(st.dictionaries(st.integers(1, 1999), st.integers(1, 500), min_size=1, max_size=9))
def test_two_tapes_meet_at_the_corner_of_any_outline(others: dict[int, int]) -> None:
    """Where circles round both ends of the base line meet is worked out anew, and is the corner."""
    corners = [(0, 0), (2000, 0), *sorted(others.items(), reverse=True)]
    (bed,) = plan_from(beds=[{"id": "b", "name": "B", "outline": [[f"{x} mm", f"{y} mm"] for x, y in corners]}]).beds
    base = bed.length.nm / MM
    for (x, y), (head, foot) in zip(corners, ties_of(bed), strict=True):
        one, other = head / MM, foot / MM
        along = (one**2 - other**2 + base**2) / (2 * base)
        assert along == pytest.approx(x, abs=0.01)
        assert max(0.0, one**2 - along**2) == pytest.approx(y**2, abs=1)
        assert (tape_number(bed, Units.METRIC).whole or 0) >= max(head, foot)


@each_paper
def test_a_box_is_marked_on_its_board_where_its_posts_stand(paper: Paper) -> None:
    (page,) = printed(bed_of(BOX), paper)
    text = plain(page.text)
    assert "mark the top of the left board, no stake" in text
    assert "mark the face of the post, no stake" in text
    marks = [words.text for words in page.words if words.text.startswith("mark the")]
    assert [words.split(" ")[2] for words in marks] == ["top", "face", "face", "top"]
    assert "zero at the inner face of the head board" in text
    assert "head stake" not in text
    assert "foot: if it reads otherwise, stop and measure again" in text
    assert stakes_said(bed_of(BOX)) == "none"


def test_what_stands_on_the_base_line_is_marked_itself() -> None:
    post = {"name": "Water post", "x": "5 m", "y": "3 cm", "diameter": "10 cm"}
    plan = bed_of(PLAIN | {"obstacles": [post]}, {"length": "5 m"})
    assert "mark Water post, no stake" in said(plan)
    assert stakes_said(plan) == "4 stakes (2 at far corners)"


@pytest.mark.parametrize(
    ("bed", "planting", "words"),
    [
        (PLAIN, {}, "4 stakes (2 at far corners)"),
        (ROUND, {"pattern": "rings"}, "3 stakes (1 at centre)"),
        (ROUND, {"pattern": "broadcast"}, "3 stakes (1 at centre)"),
        # Stakes at 0, 60, 100 and 130 m; of the legs of 50 m that at 100 m is one of these.
        (
            {"length": "130 m", "width": "1 m"},
            {"from": "60 m", "length": "40 m"},
            "7 stakes (2 at far corners, 1 at legs)",
        ),
        ({"box": {"length": "2.5 m", "width": "1.3 m", "board": "5 cm"}}, {}, "2 stakes"),
    ],
)
def test_every_stake_that_is_driven_is_carried_once(bed: Fields, planting: Fields, words: str) -> None:
    assert stakes_said(bed_of(bed, planting)) == words


def test_the_centre_of_a_round_bed_is_tied_too() -> None:
    """By hand: root(2) x 1.50 m = 2.12 m."""
    assert "2.12 m" in {
        plain(words.text) for page in printed(bed_of(ROUND)) for words in page.words if words.size == 14
    }


def corner_marks(page: Page, name: str) -> tuple[float, float]:
    """The middle of a corner's name in the drawing."""
    words = next(words for words in page.words if words.text == name and words.size == 8)
    return (words.box[0] + words.box[2]) / 2, (words.box[1] + words.box[3]) / 2


def test_names_of_corners_stand_beside_them_and_outside_the_bed() -> None:
    (page,) = printed(bed_of(L_SHAPE))
    along = POINT_PER_MM / page.ratio
    (x1, y1), (x3, y3) = corner_marks(page, "c1"), corner_marks(page, "c3")
    # Each is as far from its corner, to the right and below: their distance is nearly that of the corners.
    assert x1 - x3 == pytest.approx(6000 * along, abs=2)
    assert y1 - y3 == pytest.approx(800 * along, abs=2)


def test_corners_that_stakes_mark_already_take_none() -> None:
    laid = only_bed(bed_of(L_SHAPE))
    assert len(other_corners(laid.bed, {0, 8 * M})) == 4
    assert len(other_corners(laid.bed, set())) == 6


@pytest.mark.parametrize(
    ("edge", "words"),
    [
        ({"edge": "20 cm"}, "counted with half a spacing at both ends counted with edge at least 20 cm"),
        ({}, "counted with half a spacing at both ends counted with edge at least 25 cm"),
        ({"edge": "0 cm"}, None),
    ],
)
def test_what_is_kept_clear_of_the_edge_is_said(edge: Fields, words: str | None) -> None:
    """Of its own, else of its crop: 25 cm; the rows themselves may lie further in."""
    plan = bed_of(PLAIN, edge, edge="25 cm")
    assert (words is None) == ("edge at least" not in plain(said(plan)))
    assert words is None or words in plain(said(plan))


def test_edges_that_differ_are_told_by_letter() -> None:
    plan = bed_of(PLAIN, {"edge": "20 cm", "length": "4 m"}, {"edge": "10 cm", "from": "5 m", "length": "4 m"})
    texts = {plain(words.text) for page in printed(plan) for words in page.words}
    assert {
        "counted with half a spacing at both ends",
        "A: counted with edge at least 20 cm",
        "B: counted with edge at least 10 cm",
    } <= texts


def test_a_bed_leaves_room_beside_it_where_that_draws_it_larger() -> None:
    """With its many rows and corners below it, this L of 9 m would be drawn at 1 : 200."""
    page = printed(read_plan(sample("tarn-garth.gardenplot")).plan)[0]
    assert "L round the shed" in page.text
    assert page.ratio == 75


def test_units_of_a_column_stand_below_each_other_where_some_figures_are_whole() -> None:
    plan = read_plan(sample("tarn-garth.gardenplot")).plan
    page = printed(plan)[2]
    right = {words.text: words.box[2] for words in page.words if words.text in ("68", "16.1", "206.6")}
    tail = pdfmetrics.stringWidth(".1", BOLD, 14)
    assert right["68"] == pytest.approx(right["16.1"] - tail, abs=1.5)
    assert right["16.1"] == pytest.approx(right["206.6"], abs=1.5)
