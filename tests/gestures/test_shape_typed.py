"""Round beds, boxes and slopes are typed as they are shown; one shape takes the place of another in one edit."""

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures.typed import BED_FIELDS
from gardenplot.plan import Bed, Plan
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.plan.shapes import SHAPES, map_length_of, shapes_of
from gardenplot.plan.valid import faults
from gardenplot.units import CM, M
from tests.gestures.test_outline_typed import OUTLINE, box, per_row, typed
from tests.plans import names, plans

FIELDS = {field.name: field for field in BED_FIELDS}
BOX = "2.4 m by 1.2 m, boards 4 cm, posts 9 cm"
TYPED = {"outline": OUTLINE, "diameter": "3 m", "box": BOX}
each_shape = pytest.mark.parametrize("shape", SHAPES)


def shaped(*typed_in: tuple[str, str]) -> Plan:
    """A plain bed after texts were typed into fields, one after another."""
    plan = box()
    for name, text in typed_in:
        plan = typed(plan, name, text)
    return plan


def only(plan: Plan) -> Bed:
    """The one bed of a plan."""
    (bed,) = plan.beds
    return bed


@each_shape
@pytest.mark.parametrize("before", SHAPES)
def test_one_shape_takes_the_place_of_another_and_is_kept_as_typed(before: str, shape: str) -> None:
    plan = shaped((before, TYPED[before]), (shape, TYPED[shape]))
    assert shapes_of(only(plan)) == (shape,)
    assert FIELDS[shape].shown(plan, "b") == TYPED[shape]
    assert plan_of_text(text_of(plan)).plan == plan
    assert not {"length", "width"} & set(json.loads(text_of(plan))["beds"][0])


@each_shape
def test_a_shape_taken_away_leaves_the_rectangle_that_it_reached(shape: str) -> None:
    before = shaped((shape, TYPED[shape]))
    after = typed(before, shape, "")
    assert shapes_of(only(after)) == ()
    assert (only(after).length.nm, only(after).width.nm) == (only(before).length.nm, only(before).width.nm)
    assert plan_of_text(text_of(after)).plan == after


@each_shape
@pytest.mark.parametrize("side", ["length", "width"])
def test_the_length_of_another_shape_is_not_typed_and_its_own_field_is_named(shape: str, side: str) -> None:
    plan = shaped((shape, TYPED[shape]))
    with pytest.raises(PlanError, match=shape.title()):
        typed(plan, side, "7 m")


def test_a_round_bed_is_planted_at_once_and_a_number_alone_keeps_its_unit() -> None:
    plan = shaped(("diameter", "3 m"))
    # rows 40 cm apart from 30 cm on: chords at 10, 50, 90 and 130 cm are 107.7, 223.6, 274.9 and 297.3 cm
    assert per_row(plan) == (5, 11, 13, 14, 13, 11, 5)
    assert only(typed(plan, "diameter", "2")).length.nm == 2 * M


def test_a_box_needs_no_posts_and_keeps_what_a_file_says_of_it_besides() -> None:
    plan = shaped(("box", BOX))
    raw = json.loads(text_of(plan))
    raw["beds"][0]["box"]["wood"] = "larch"
    plan = typed(plan_of_text(json.dumps(raw)).plan, "box", "8 ft by 4 ft, boards 1 1/2 in")
    assert FIELDS["box"].shown(plan, "b") == "8 ft by 4 ft, boards 1 1/2 in"
    assert json.loads(text_of(plan))["beds"][0]["box"] == {
        "length": "8 ft", "width": "4 ft", "board": "1 1/2 in", "wood": "larch",
    }  # fmt: skip


@each_shape
@pytest.mark.parametrize("other", ["outline", "box"])
def test_blanks_typed_into_an_empty_field_leave_another_shape_alone(shape: str, other: str) -> None:
    plan = shaped((shape, TYPED[shape]))
    if other != shape:
        assert typed(plan, other, " ") is plan


def test_a_slope_leaves_the_ground_and_tells_the_map() -> None:
    plan = shaped(("length", "20 m"), ("slope", "12 %"))
    assert only(plan).length.nm == 20 * M
    assert map_length_of(only(plan)) == 19_857_536_769
    assert only(typed(plan, "slope", "")).slope is None


def measured_on_the_map() -> Plan:
    """A bed of 8 m on the map at 75 %, which is 10 m of ground."""
    raw = json.loads(text_of(shaped(("slope", "75 %"))))
    del raw["beds"][0]["length"]
    raw["beds"][0]["map_length"] = "8 m"
    return plan_of_text(json.dumps(raw)).plan


def test_a_length_on_the_map_stays_while_the_slope_changes() -> None:
    plan = measured_on_the_map()
    assert FIELDS["length"].shown(plan, "b") == "10 m"
    level = only(typed(plan, "slope", "0 %"))
    assert (level.length.nm, map_length_of(level)) == (8 * M, 8 * M)


@pytest.mark.parametrize(("name", "text", "length"), [("slope", "", "10 m"), ("length", "9 m", "9 m")])
def test_a_length_on_the_map_gives_way_to_one_on_the_ground(name: str, text: str, length: str) -> None:
    plan = typed(measured_on_the_map(), name, text)
    assert (only(plan).map_length, only(plan).length.text) == (None, length)
    assert plan_of_text(text_of(plan)).plan == plan


def test_a_length_on_the_map_is_typed_and_taken_back() -> None:
    """3, 4, 5: at 75 % a bed of 12 m on the map is 15 m long."""
    plan = typed(measured_on_the_map(), "map_length", "12 m")
    assert (only(plan).length.nm, only(plan).length.text, FIELDS["map_length"].shown(plan, "b")) == (
        15 * M,
        "",
        "12 m",
    )
    assert plan_of_text(text_of(plan)).plan == plan
    ground = only(typed(plan, "map_length", ""))
    assert (ground.map_length, ground.length.nm, ground.slope) == (None, 15 * M, only(plan).slope)


@pytest.mark.parametrize(
    ("plan", "says"),
    [
        (shaped(("length", "20 m")), "needs a slope first"),
        (shaped(("diameter", "3 m"), ("slope", "12 %")), "type its Diameter"),
    ],
)
def test_a_length_on_the_map_is_for_sloping_rectangles(plan: Plan, says: str) -> None:
    with pytest.raises(PlanError, match=says):
        typed(plan, "map_length", "8 m")


def test_the_width_of_a_bed_on_the_map_is_typed_like_any_other() -> None:
    bed = only(typed(measured_on_the_map(), "width", "90 cm"))
    assert (bed.width.nm, bed.length.nm) == (90 * CM, 10 * M)


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [
        ("diameter", "round", "“round” is no length"),
        ("diameter", "0 m", "at least 1 mm"),
        ("box", "2.4 m by 1.2 m", "“2.4 m by 1.2 m” is no box: write it like 2.4 m by 1.2 m, boards 4 cm"),
        ("box", "2.4 m by 1.2 m, boards wide", "“wide” is no length"),
        ("box", "2.4 m by 1.2 m, boards 4 cm, posts 9", "“9” is no length"),
        ("box", "2.4 m by 1.2 m, boards 60 cm", "boards of 60 cm leave nothing"),
        ("box", "2.4 m by 1.2 m, boards 4 cm, posts 56 cm", "posts of 56 cm leave nothing"),
        ("slope", "12", "“12” is no slope: .* like 12 %"),
        ("slope", "120 %", "up to 100 %"),
        ("slope", "steep", "“steep” is no slope"),
    ],
)
def test_what_makes_no_sense_is_said_with_an_example(name: str, text: str, says: str) -> None:
    with pytest.raises(GardenplotError, match=says):
        typed(box(), name, text)


@settings(max_examples=max(60, settings().max_examples))
@given(
    plan=plans(least_beds=1),
    text=names() | st.sampled_from(["3 m", "7", "12 %", BOX, OUTLINE, ""]),
)
def test_whatever_is_typed_gives_a_valid_plan_that_opens_again_or_says_what_is_wrong(plan: Plan, text: str) -> None:
    for field in BED_FIELDS:
        try:
            after = field.apply(plan, plan.beds[0].id, text)
        except GardenplotError:
            continue
        assert list(faults(after)) == [], field.name
        assert plan_of_text(text_of(after)).plan == after, field.name
