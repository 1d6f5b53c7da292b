"""Round beds, boarded boxes and slopes: read, held to one shape, and written back as they were typed."""

import json
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.errors import FileError
from gardenplot.plan import Bed
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.plan.shapes import (
    is_rectangle,
    map_length_of,
    on_the_ground,
    on_the_map,
    posts_of,
    straight_corners,
)
from gardenplot.plan.simple import fault_of, twice_area
from gardenplot.units import CM, MM, Length, M, Share, parse_share
from tests.plans import beds, shares

Fields = dict[str, Any]
BOX: Fields = {"length": "2.4 m", "width": "1.2 m", "board": "4 cm", "post": "9 cm"}
SIDES: Fields = {"length": "5 m", "width": "1 m"}


def file_with(bed: Fields) -> str:
    """A plan file of one bed."""
    return json.dumps({"gardenplot": 1, "beds": [{"id": "b", "name": "Bed"} | bed]})


def read(bed: Fields) -> Bed:
    """The bed in such a file."""
    return plan_of_text(file_with(bed)).plan.beds[0]


def written(bed: Fields) -> str:
    """The bed as it is written back, its fields in their order."""
    saved = json.loads(text_of(plan_of_text(file_with(bed)).plan))["beds"][0]
    return json.dumps({name: value for name, value in saved.items() if name not in ("id", "name")})


@pytest.mark.parametrize(
    ("bed", "length", "width"),
    [
        ({"diameter": "3 m"}, 3 * M, 3 * M),
        ({"box": BOX}, 232 * CM, 112 * CM),
        ({"box": {"length": "8 ft", "width": "4 ft", "board": "1 1/2 in"}}, 93 * 25_400_000, 45 * 25_400_000),
        # 3-4-5: a rise of 3 in 4 makes 5 on the ground
        ({"width": "1 m", "slope": "75 %", "map_length": "8 m"}, 10 * M, M),
        (SIDES | {"slope": "12 %"}, 5 * M, M),
    ],
)
def test_length_and_width_follow_from_the_shape_and_only_it_is_written(bed: Fields, length: int, width: int) -> None:
    found = read(bed)
    assert (found.length.nm, found.width.nm) == (length, width)
    assert written(bed) == json.dumps(bed)


def test_what_is_not_known_in_a_box_is_said_and_kept() -> None:
    bed = {"box": BOX | {"wood": "larch"}}
    assert plan_of_text(file_with(bed)).problems == ("beds[0].box.wood: is not known; it is kept as it is",)
    assert written(bed) == json.dumps(bed)


OUTLINE = [["0 m", "0 m"], ["2 m", "0 m"], ["2 m", "1 m"]]


@pytest.mark.parametrize(
    ("bed", "place", "says"),
    [
        ({}, "beds[0].length", "is missing"),
        ({"slope": "12 %"}, "beds[0].length", "is missing"),
        ({"outline": []}, "beds[0].length", "is missing"),
        ({"map_length": "3 m", "slope": "3 %"}, "beds[0].width", "is missing"),
        ({"outline": OUTLINE, "diameter": "3 m"}, "beds[0].diameter", "outline or diameter, not both"),
        ({"outline": OUTLINE, "box": BOX}, "beds[0].box", "outline or box, not both"),
        ({"diameter": "3 m", "box": BOX}, "beds[0].box", "diameter or box, not both"),
        ({"diameter": "3 m", "length": "3 m"}, "beds[0].diameter", "length follows from it"),
        ({"diameter": "3 m", "width": "3 m"}, "beds[0].diameter", "width follows from it"),
        ({"box": BOX, **SIDES}, "beds[0].box", "length follows from it"),
        ({"map_length": "3 m", "slope": "3 %", **SIDES}, "beds[0].map_length", "length follows from it"),
        ({"map_length": "3 m", "width": "1 m"}, "beds[0].map_length", "needs a slope"),
        ({"map_length": "3 m", "slope": "3 %", "diameter": "3 m"}, "beds[0].map_length", "follows from diameter"),
        ({"map_length": "10 km", "slope": "3 %", "width": "1 m"}, "beds[0].map_length", "no length"),
        ({"map_length": "9999 m", "slope": "3 %", "width": "1 m"}, "beds[0].map_length", "longer than 10 km"),
        ({"diameter": "0 m"}, "beds[0].diameter", "too small"),
        ({"diameter": 3}, "beds[0].diameter", "as text with a unit"),
        ({"diameter": None}, "beds[0].length", "is missing"),
        ({"box": "2 m"}, "beds[0].box", "curly brackets"),
        ({"box": BOX | {"board": None}}, "beds[0].box.board", "is missing"),
        ({"box": {"diameter": "3 m"}}, "beds[0].box.length", "is missing"),
        ({"box": BOX | {"board": "0 m"}}, "beds[0].box.board", "too small"),
        ({"box": BOX | {"board": "60 cm"}}, "beds[0].box.board", "leave nothing"),
        ({"box": BOX | {"board": "2 m"}}, "beds[0].box.board", "leave nothing"),
        ({"box": BOX | {"post": "56 cm"}}, "beds[0].box.post", "leave nothing"),
        ({"box": BOX | {"post": "0.5 mm"}}, "beds[0].box.post", "too small"),
        (SIDES | {"slope": "101 %"}, "beds[0].slope", "no share"),
        (SIDES | {"slope": "-5 %"}, "beds[0].slope", "no share"),
        (SIDES | {"slope": 12}, "beds[0].slope", "no share"),
    ],
)
def test_a_bed_of_no_shape_or_of_two_is_refused_with_its_place(bed: Fields, place: str, says: str) -> None:
    with pytest.raises(FileError) as refused:
        read(bed)
    assert str(refused.value).startswith(f"{place}: ")
    assert says in str(refused.value)


def test_the_posts_are_taken_out_of_the_corners() -> None:
    bed = read({"box": BOX})
    corners = straight_corners(bed)
    assert len(corners) == 12
    assert fault_of(corners) is None
    assert twice_area(corners) == 2 * (232 * 112 - 4 * 9 * 9) * CM**2
    assert posts_of(bed)[-1] == ((223 * CM, 103 * CM), (232 * CM, 112 * CM))
    assert is_rectangle(read({"box": {**BOX, "post": None}}))
    assert not is_rectangle(bed)


@given(beds())
def test_every_outline_is_simple_and_lies_in_its_length_and_width(bed: Bed) -> None:
    corners = straight_corners(bed)
    assert fault_of(corners) is None
    assert {min(x for x, _y in corners), min(y for _x, y in corners)} == {0}
    assert (max(x for x, _y in corners), max(y for _x, y in corners)) == (bed.length.nm, bed.width.nm)


def test_twelve_in_a_hundred_over_twenty_metres() -> None:
    # 20 / sqrt(1.0144) = 19.8575367690..., by decimal arithmetic
    bed = read({"length": "20 m", "width": "1 m", "slope": "12 %"})
    assert map_length_of(bed) == 19_857_536_769
    assert map_length_of(read(SIDES)) is None
    assert map_length_of(read({"map_length": "8 m", "slope": "75 %", "width": "1 m"})) == 8 * M


@given(st.integers(MM, 9000 * M), shares())
def test_ground_and_map_are_the_sides_of_a_right_angle_rounded_down(length: int, slope: Share) -> None:
    steep = 1 + slope.part**2
    ground, level = on_the_ground(length, slope), on_the_map(length, slope)
    assert ground**2 <= length**2 * steep < (ground + 1) ** 2
    assert level**2 * steep <= length**2 < (level + 1) ** 2 * steep
    assert level <= length <= ground
    assert 0 <= length - on_the_map(ground, slope) <= 1


def test_level_ground_is_as_long_as_its_map() -> None:
    assert on_the_ground(7 * M + 1, parse_share("0 %")) == on_the_map(7 * M + 1, parse_share("0 %")) == 7 * M + 1
    assert parse_share("12 %").part == Fraction(3, 25)


def test_a_bed_whose_length_was_not_worked_out_is_no_bed() -> None:
    with pytest.raises(FileError):
        read({"diameter": "3 m", "length": "2 m", "width": "2 m"})
    assert read({"diameter": "3 m"}).length == Length(3 * M, "")
