"""What has to be marked anew at a bed: block ends, row ends, rows, spacings and covers, in walking order."""

import json
from collections import Counter
from typing import Any

from hypothesis import given, settings

from gardenplot.drawing.moved_says import remarked_words
from gardenplot.filling.covers_moved import with_covers
from gardenplot.filling.moved import Mark, Moved, moved
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_planting, move_planting, remove_planting
from gardenplot.plan.file import plan_of_text
from gardenplot.units import CM, Length, parse_length
from tests.filling.test_again_in_bed import CROPS
from tests.plans import plans

Fields = dict[str, Any]


def two_beds(**bed: Any) -> Plan:
    """Lettuce in 1 m to 4 m and 5 m to 8 m of the first of two beds, under a cover each."""
    first: Fields = {"id": "b1", "name": "Upper bed", "length": "10 m", "width": "1 m"}
    parts: Fields = {
        "beds": [first | bed, {"id": "b2", "name": "Lower bed", "length": "10 m", "width": "1 m"}],
        "crops": CROPS,
        "plantings": [{"id": "p", "bed": "b1", "crop": "c", "from": "1 m", "length": "3 m"},
                      {"id": "q", "bed": "b1", "crop": "c", "from": "5 m", "length": "3 m"}],
        "covers": [{"id": "v", "bed": "b1", "from": "0.8 m", "to": "4.2 m"},
                   {"id": "w", "bed": "b1", "from": "4.8 m", "to": "8.2 m"}],
    }  # fmt: skip
    return plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan


def length(text: str) -> Length:
    return parse_length(text)


def marks(found: tuple[Moved, ...]) -> list[tuple[str, Mark, int | None, int | None]]:
    """Bed, kind, old and new in cm."""
    return [(one.bed, one.mark, _cm(one.old), _cm(one.new)) for one in found]


def _cm(nm: int | None) -> int | None:
    return None if nm is None else nm // CM


@settings(max_examples=30)
@given(plans(), plans())
def test_nothing_moves_where_nothing_changes_and_all_of_it_back_again(one: Plan, other: Plan) -> None:
    assert moved(one, one) == ()
    there, back = moved(one, other), moved(other, one)
    if {bed.id for bed in one.beds} == {bed.id for bed in other.beds}:
        assert Counter((each.bed, each.planting, each.mark, each.row, each.old, each.new) for each in there) == (
            Counter((each.bed, each.planting, each.mark, each.row, each.new, each.old) for each in back)
        )
    assert all(each.old != each.new for each in there)


def test_a_block_in_another_bed_is_pulled_out_here_and_new_there() -> None:
    plan = two_beds()
    after = move_planting(plan, "p", "b2", length("0.5 m"))
    assert marks(moved(plan, after)) == [
        ("b1", Mark.BLOCK, 100, None), ("b1", Mark.BLOCK, 400, None),
        ("b2", Mark.BLOCK, None, 50), ("b2", Mark.BLOCK, None, 350),
    ]  # fmt: skip
    assert [remarked_words(plan, after, one) for one in moved(plan, after)][:3] == [
        "Upper bed: Cos lettuce begins 1.00\u2009m no longer",
        "Upper bed: Cos lettuce ends 4.00\u2009m no longer",
        "Lower bed: Cos lettuce begins 0.50\u2009m, new",
    ]


def test_a_planting_that_is_gone_is_still_called_by_its_name() -> None:
    plan = two_beds()
    after = remove_planting(plan, "p")
    words = [remarked_words(plan, after, one) for one in moved(plan, after)]
    assert words[0] == "Upper bed: Cos lettuce begins 1.00\u2009m no longer"


def test_rows_and_spacings_are_marked_anew_where_their_block_begins() -> None:
    """Two rows instead of three: (100 - 30) / 2 = 35, so 35 and 65 cm instead of 20, 50 and 80."""
    plan = two_beds()
    after = change_planting(plan, "p", rows=2, in_row=length("25 cm"))
    assert marks(moved(plan, after)) == [
        ("b1", Mark.ROWS, 20, 35), ("b1", Mark.ROWS, 50, 65), ("b1", Mark.ROWS, 80, None),
        ("b1", Mark.SPACING, 30, 25),
    ]  # fmt: skip
    assert [remarked_words(plan, after, one) for one in moved(plan, after)] == [
        "Upper bed: Cos lettuce row 1 from the base line 35\u2009cm, was 20\u2009cm",
        "Upper bed: Cos lettuce row 2 from the base line 65\u2009cm, was 50\u2009cm",
        "Upper bed: Cos lettuce row 3 from the base line 80\u2009cm no longer",
        "Upper bed: Cos lettuce from plant to plant 25\u2009cm, was 30\u2009cm",
    ]


def test_rows_that_end_inside_their_block_have_stakes_that_move() -> None:
    """The bed is 1 m wide up to 6 m and 60 cm beyond; two rows of a block that reaches past that end there."""
    outline = [["0 m", "0 m"], ["10 m", "0 m"], ["10 m", "60 cm"], ["6 m", "60 cm"], ["6 m", "1 m"], ["0 m", "1 m"]]
    plan = two_beds(outline=outline, length=None, width=None)
    found = moved(plan, change_planting(plan, "q", start=length("6.5 m")))
    assert marks(found) == [
        ("b1", Mark.ROW_END, 600, None), ("b1", Mark.ROW_END, 600, None),
        ("b1", Mark.BLOCK, 500, 650), ("b1", Mark.BLOCK, 800, 950),
    ]  # fmt: skip
    assert [(one.row, one.begins) for one in found if one.mark is Mark.ROW_END] == [(2, False), (3, False)]


def test_a_cover_follows_the_block_that_it_alone_stands_over() -> None:
    plan = two_beds()
    after = with_covers(plan, change_planting(plan, "p", length=length("2.1 m")))
    assert marks(moved(plan, after)) == [("b1", Mark.BLOCK, 400, 310), ("b1", Mark.COVER, 420, 330)]
    other = with_covers(plan, move_planting(plan, "q", "b2", length("7 m")))
    assert [(one.bed, one.start.nm, one.end.nm) for one in other.covers][1] == ("b2", 680 * CM, 1000 * CM)


def test_a_cover_over_two_blocks_stays() -> None:
    plan = two_beds()
    wide = plan_of_text(json.dumps({
        "gardenplot": 1, "beds": [{"id": "b1", "name": "Upper bed", "length": "10 m", "width": "1 m"}],
        "crops": CROPS,
        "plantings": [{"id": "p", "bed": "b1", "crop": "c", "from": "1 m", "length": "3 m"},
                      {"id": "q", "bed": "b1", "crop": "c", "from": "5 m", "length": "3 m"}],
        "covers": [{"id": "v", "bed": "b1", "from": "0.5 m", "to": "8.5 m"}],
    })).plan  # fmt: skip
    assert with_covers(wide, change_planting(wide, "p", length=length("2 m"))).covers == wide.covers
    assert with_covers(plan, remove_planting(plan, "p")).covers == plan.covers
