"""What a helper must know at the bed beside rows and stakes: what is left, drip lines, covers, what is thinned."""

from math import dist

import pytest
from attrs import evolve

from gardenplot.plan import Plan, Reserved
from gardenplot.units import parse_rate
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.layout.ground import Fields
from tests.sheets.pdf_pages import POINT_PER_MM
from tests.sheets.printed import bed_with, printed


def told(plan: Plan) -> str:
    """All words of the bed sheets, in one line, thin spaces as plain ones."""
    return one_line(" ".join(page.text for page in printed(plan)))


def one_line(words: str) -> str:
    """Words in one line, thin spaces as plain ones."""
    return " ".join(words.replace("\u2009", " ").split())


def test_each_piece_that_is_left_is_told_between_two_stakes() -> None:
    assert "5 98′ 0″ foot margin 4′ 3″ left before it" in told(hand_worked("s2"))
    two = told(bed_with({"from": "1 m", "length": "3 m"}, {"from": "6 m", "length": "3 m"}))
    assert "head stake 1.00 m left after it" in two
    assert "A ends · last plant 2.00 m left after it" in two
    assert "B ends · last plant 3.00 m left after it" in two
    assert "left" not in told(bed_with({"from": "0 m", "length": "12 m"})).replace("left as seen", "").replace(
        "− left, + right", ""
    )


def test_rows_that_are_moved_and_hold_no_plant_in_a_short_block_are_not_told_to_begin_further_on() -> None:
    """20 cm spacings: 35 cm hold one plant in a row that begins with half of one and one in a row that begins whole;
    25 cm hold one and none.
    """
    for length, is_told in (("35 cm", True), ("25 cm", False)):
        block = {"from": "1 m", "length": length, "pattern": "staggered", "in_row": "20 cm"}
        assert ("half a spacing further on" in told(bed_with(block))) is is_told


def test_a_spacing_in_sixteenths_is_told_as_it_is_laid_out() -> None:
    """Worked by hand: 50 × 7 3/16 in = 29′ 11 3/8″; at 7¼ in they would end 3 1/8 in further on."""
    plan = plan_from(
        {"units": "feet and inches"},
        beds=[{"id": "b", "name": "Bed", "length": "40 ft", "width": "30 in"}],
        crops=[{"id": "c", "name": "Leek", "in_row": "7 3/16 in", "row_spacing": "10 in", "edge": "5 in"}],
        plantings=[{"id": "p", "bed": "b", "crop": "c", "from": "0 ft", "plants": 150}],
    )
    words = told(plan)
    assert "A Leek, 7 3/16″ in the row" in words
    assert "29′ 11½″ A ends" in words


@pytest.mark.parametrize(("offset", "drawn"), [("20 cm", True), ("37.5 cm", True), ("30 cm", True), ("33 cm", False)])
def test_drip_lines_are_drawn_where_they_have_room_between_the_rows(offset: str, drawn: bool) -> None:
    """Rows lie at 12.5, 37.5 and 62.5 cm; at 1 : 50 a drip line 4.5 cm from one would run through its plants."""
    plan = bed_with({"from": "1 m", "length": "8 m"}, drip_lines=[offset])  # type: ignore[arg-type]  # a list of lengths
    (page,) = printed(plan)
    assert page.ratio == 50
    left, _bottom, right, top = page.outline(12_000, 750)
    low = top - float(offset.removesuffix(" cm")) * 10 / page.ratio * POINT_PER_MM
    lines = [path.corners for path in page.paths if len(path.corners) == 2]
    assert any(dist(one, (left, low)) < 0.05 and dist(other, (right, low)) < 0.05 for one, other in lines) is drawn
    assert ("Dashed: drip lines." in page.text) is drawn


def test_drip_lines_are_counted_with_their_offsets_and_their_reach() -> None:
    words = told(bed_with(drip_lines=["20 cm", "55 cm"]))  # type: ignore[arg-type]  # a bed's list of lengths
    assert "2 drip lines, tape 0.00 to 12.00 from edge 20 55 from centre −17.5 +17.5" in words
    assert "drip line" not in told(bed_with())


def test_a_cover_says_its_days_its_blocks_and_how_deep_its_hoops_go() -> None:
    words = told(hand_worked("s2"))
    assert (
        "Cover on 7 May, off 4 Jun over A Broccoli 16 hoops from 2′ 0″ to 77′ 0″, every 5′ 0″ "
        "each 8″ deep in the ground at both sides "
        "cloth 4′ 0″ beyond both ends, 10″ on the ground at both sides" in words
    )
    assert "Cover on 4 Jun, off 11 Jun over A Broccoli 20 hoops at 2′ 0″, 5′ 11¼″, 9′ 10¾″" in words
    assert "77′ 0″ how deep the hoops go is not in the plan" in words


@pytest.mark.parametrize(
    ("cover", "said"),
    [
        ({"from": "0 m", "to": "2.5 m"}, "Cover over A Leek from 0.00 to 2.50"),
        ({"from": "1 m", "to": "5 m"}, "Cover over part of A Leek, part of B Leek from 1.00 to 5.00"),
        ({"from": "6 m", "to": "9 m", "off": "2027-04-20"}, "Cover off 20 Apr from 6.00 to 9.00"),
        ({"from": "0 m", "to": "6 m", "on": "2027-06-12"}, "Cover on 12 Jun over B Leek from 0.00 to 6.00"),
        (
            {"from": "0 m", "to": "2 m", "sheeting": "clear film", "buried": "30 cm"},
            "Cover over A Leek from 0.00 to 2.00 film 30 cm in the ground all round",
        ),
    ],
)
def test_a_cover_lies_over_what_stands_there_on_its_days(cover: Fields, said: str) -> None:
    days = {"in_ground": "2027-04-01"}
    plan = plan_from(
        {"units": "metric"},
        beds=[{"id": "b1", "name": "Long bed", "length": "12 m", "width": "75 cm"}],
        crops=[{"id": "leek", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm"}],
        plantings=[
            {"id": "p1", "bed": "b1", "crop": "leek", "from": "0 m", "length": "2 m", "out": "2027-06-01"} | days,
            {"id": "p2", "bed": "b1", "crop": "leek", "from": "3 m", "length": "3 m"} | days,
        ],
        covers=[{"id": "c1", "bed": "b1"} | cover],
    )
    assert said in told(plan)


def test_rows_that_are_drilled_tell_their_rate_from_the_spacing_that_is_left() -> None:
    words = told(hand_worked("s2"))
    assert "B Beets, 3″ in the row once thinned" in words
    assert "sow 12 / ft; thin when the first true leaves show" in words
    assert "A Broccoli, 18″ in the row from edge" in words
    sparse = evolve(hand_worked("s2").crops[1], seeds_per_row=parse_rate("5 / ft"))
    words = told(evolve(hand_worked("s2"), crops=(hand_worked("s2").crops[0], sparse)))
    assert "B Beets, 3″ in the row sow 5 / ft, not thinned" in words
    beets = evolve(hand_worked("s2").crops[1], clump=2)
    in_twos = evolve(hand_worked("s2"), crops=(hand_worked("s2").crops[0], beets))
    assert "sow 12 / ft; thin to 2 when the first true leaves show" in told(in_twos)


def test_rows_and_places_that_stay_empty_for_what_follows_are_not_told_as_planted() -> None:
    """S3 with the middle row, or the tomatoes' places in it, left empty: 2 x 69, or 2 x 69 + 46."""
    plan = hand_worked("s3")
    lettuce, *others = plan.plantings
    row, places = (
        told(evolve(plan, plantings=(evolve(lettuce, reserved=reserved), *others)))
        for reserved in (Reserved.ROW_EMPTY, Reserved.PLACES_EMPTY)
    )
    assert "in the row the row at 15″ stays empty from edge 5″ 25″ from centre" in row
    assert "in the row the row at 15″ has 46 plants: none at a place that is kept from edge 5″ 15″ 25″" in places


def test_how_many_stand_at_once_is_told_with_and_without_what_is_cut_first() -> None:
    """S3, worked by hand: 207 lettuces, 23 of them where tomatoes go, 184 beside these."""
    assert "207 stand at once, 184 without those 23" in told(hand_worked("s3"))


@pytest.mark.parametrize(
    ("answer", "said"),
    [
        (Reserved.CUT_FIRST, "in rows at 5″, 15″, 25″ until 23 May 23 plants of it are cut by 11 May, where B comes"),
        (Reserved.PLACES_EMPTY, "in rows at 5″, 15″, 25″ until 23 May"),
        (Reserved.ROW_EMPTY, "in rows at 5″, 25″ until 23 May"),
    ],
)
def test_a_later_turn_tells_what_still_stands_where_and_until_when(answer: Reserved, said: str) -> None:
    """S3: tomatoes are set out on 12 May among lettuce that goes on 24 May."""
    plan = hand_worked("s3")
    lettuce, *others = plan.plantings
    first, second = printed(evolve(plan, plantings=(evolve(lettuce, reserved=answer), *others)))
    pegs = "B Tomato: pegs at both edges of the bed mark its places"
    assert f"Still in the bed A Cos lettuce, small stands {said} {pegs} Across" in one_line(second.text)
    assert "Still in the bed" not in first.text


def test_ground_that_is_free_when_a_later_turn_begins_has_nothing_standing_in_it() -> None:
    _first, second = printed(two_turns())
    assert "Still in the bed" not in second.text


@pytest.mark.parametrize(
    ("days", "is_over"),
    [({}, True), ({"on": "2027-04-01"}, True), ({"off": "2027-06-20"}, True), ({"off": "2027-06-10"}, False)],
)
def test_a_cover_is_told_on_every_turn_that_it_lies_over(days: Fields, is_over: bool) -> None:
    first, second = (one_line(page.text) for page in printed(two_turns(days)))
    assert "over A Leek from 0.00 to 3.00" in first
    assert ("over B Leek from 0.00 to 3.00" in second) is is_over
    assert "hoop" not in second


def two_turns(cover: Fields | None = None) -> Plan:
    """A bed with one crop until 10 June and another one from 15 June on the same ground, perhaps with a cover."""
    covers = [] if cover is None else [{"id": "c1", "bed": "b1", "from": "0 m", "to": "3 m", **cover}]
    block = {"bed": "b1", "crop": "leek", "from": "0 m", "length": "3 m"}
    return plan_from(
        {"units": "metric"},
        beds=[{"id": "b1", "name": "Long bed", "length": "12 m", "width": "75 cm"}],
        crops=[{"id": "leek", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm"}],
        plantings=[
            {"id": "p1", "in_ground": "2027-04-01", "out": "2027-06-10", **block},
            {"id": "p2", "in_ground": "2027-06-15", "out": "2027-09-10", **block},
        ],
        covers=covers,
    )
