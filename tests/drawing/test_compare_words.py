"""Candidates in words: what each measure says, and that differences lead from what is there now to the candidate."""

from hypothesis import given, settings

from gardenplot.drawing.compare_words import (
    best_words,
    candidate_name,
    comparison_title,
    measure_lines,
    reading_words,
    reason_words,
    signed,
    step_name,
)
from gardenplot.drawing.measure_line import Cell
from gardenplot.layout.candidate import Candidate, Reason
from gardenplot.layout.proposals import best_of, proposals
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_place, change_planting
from gardenplot.units import parse_length
from gardenplot.units.figures import MINUS, THIN
from tests.drawing.hand_worked import hand_worked
from tests.plans import metric_plan, plans


def line(found: tuple[Candidate, ...], heading: str) -> list[Cell]:
    """The cells of a measure, by its heading."""
    return list(next(one.cells for one in measure_lines(found) if one.heading == heading))


def number(words: str) -> int:
    """A difference in plants or rows."""
    return int(words.replace(MINUS, "-").replace(THIN, "") or "0")


@settings(max_examples=60)
@given(plans(least_plantings=1))
def test_now_and_the_difference_make_the_candidate_and_as_it_is_has_none(plan: Plan) -> None:
    found = proposals(plan, plan.plantings[0].id)
    for each in measure_lines(found):
        assert len(each.cells) == len(found)
        assert each.cells[0].difference == ""
        assert not each.cells[0].same
    (planted,) = [
        one for one in measure_lines(found) if one.heading == "Plants" or one.heading.startswith("Clumps of")
    ]
    now, *others = planted.cells
    for cell in others:
        assert number(now.figure) + number(cell.difference) == number(cell.figure)
        assert cell.worse == (number(cell.figure) < number(now.figure))
    lengths = line(found, "Length of bed")
    for one, cell in zip(found, lengths, strict=True):
        longer = one.layout.length - found[0].layout.length
        assert cell.worse == (longer > 0)
        assert not cell.difference or cell.difference.endswith("longer" if longer > 0 else "shorter")
    assert all(candidate_name(one) and step_name(one) for one in found)


def test_s3_says_what_each_answer_costs() -> None:
    found = proposals(hand_worked("s3"), "p1")
    assert comparison_title(found[0].plan, "p1") == "A Cos lettuce, small in Tunnel bed"
    assert reading_words(found[0]) == "All in the same length of bed, 1′\u20090″ – 47′\u20090″."
    assert [candidate_name(one) for one in found[:4]] == [
        "3 rows straight, cut first",
        "3 rows straight, leave the places empty",
        "3 rows straight, leave the row empty",
        "2 rows at 7″, 23″",
    ]
    assert [cell.figure or cell.trouble for cell in line(found, "Order of 160")[:4]] == [
        "met, 33 over", "met, 10 over", "36 plants short", "36 plants short",
    ]  # fmt: skip
    assert [cell.difference for cell in line(found, "Plants")[:4]] == ["", "−23", "−69", "−69"]
    assert [cell.trouble or cell.figure for cell in line(found, "In the way of Tomato")[:4]] == [
        "23 in the way: cut them first", "none", "none", "none",
    ]  # fmt: skip
    best = best_of(found)
    assert best is found[1]
    assert best_words(found[1], found) == "meets the order, keeps every distance"


def test_s5_says_what_stands_closer_and_what_leaves_the_bed() -> None:
    found = proposals(hand_worked("s5"), "p1")
    at = next(number for number, one in enumerate(found) if reason_words(one) == "evenly over the bed")
    assert candidate_name(found[at]) == "3 rows straight"
    assert line(found, "Between rows")[at] == Cell("12″", trouble="3″ closer than the packet")
    assert line(found, "At the edge")[at].trouble == "1½″ nearer than asked for"
    assert line(found, "Length of bed")[at].difference == "12′\u20096″ shorter"
    assert line(found, "Plants in 36′\u20093″")[at].difference == "+29"
    assert line(found, "In the bed")[at].trouble == "B Coriander runs 3′\u20096″ past the foot margin"


def test_s6_says_what_is_left() -> None:
    found = proposals(hand_worked("s6"), "p1")
    at = next(number for number, one in enumerate(found) if one.reason is Reason.FEWER_ROWS)
    left = line(found, "Left in one piece")
    assert (left[0].figure, left[at].figure, left[at].difference, left[at].worse) == (
        "94\u2009cm", "nothing", "94\u2009cm less", True,
    )  # fmt: skip
    assert line(found, "Plants a metre")[0].figure == "12.0"
    assert line(found, "Order of 150")[at].trouble == "49 plants short"


def test_what_cannot_be_marked_is_said_with_the_nearest_spacing() -> None:
    plan = change_place(metric_plan(), markable_rows=(parse_length("30 cm"), parse_length("40 cm")))
    plan = change_planting(plan, "p2", row_spacing=(parse_length("12 in"),))
    cells = line(proposals(plan, "p2"), "Marked with own tools")
    assert cells[0].trouble == "30.5\u2009cm between rows cannot be marked: nearest 30\u2009cm"
    assert "yes" in [cell.figure for cell in cells]


def test_a_step_of_undo_names_the_crop_and_the_candidate() -> None:
    names = [step_name(one) for one in proposals(metric_plan(), "p1")]
    assert names[:2] == ["Pak choi: 3 rows straight", "Pak choi: 3 rows staggered"]


def test_differences_carry_their_sign() -> None:
    assert [signed(12), signed(-8), signed(0), signed(-8, 1)] == ["+12", "−8", "", "−8.0"]
