"""Fields that are typed into: what is shown changes nothing, what is typed is read, what is no good says so."""

from collections.abc import Callable
from contextlib import suppress
from datetime import date

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.errors import GardenplotError, LengthError, PlanError
from gardenplot.gestures.actual_typed import ACTUAL_FIELDS
from gardenplot.gestures.dates_typed import DATE_FIELDS
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.typed import BED_FIELDS, PLANTING_FIELDS, TypedField
from gardenplot.plan import Bed, Order, Plan, Planting, bed_of, planting_of
from gardenplot.plan.valid import faults
from gardenplot.units import Units, parse_length
from tests.drawing.hand_worked import hand_worked
from tests.gestures.hand import BEDS, CHARD, block, block_of, ground, spot
from tests.layout.ground import Fields
from tests.plans import beds, crops, names, places, plans, plantings
from tests.seasons import days

PLANTING = {field.name: field for field in (*PLANTING_FIELDS, *DATE_FIELDS, *ACTUAL_FIELDS)}
BED = {field.name: field for field in BED_FIELDS}
TEXTS = ["", "0", "7", "40 cm", "30 to 45", "2027-05-07", "1e9 m"]
BARE = {Units.METRIC: "cm", Units.FEET_AND_INCHES: "in", Units.DECIMAL_FEET: "ft"}


def each(fields: tuple[TypedField, ...]) -> Callable[[Callable[..., None]], Callable[..., None]]:
    return pytest.mark.parametrize("field", fields, ids=lambda field: field.name)


@st.composite
def one_planting(draw: st.DrawFn) -> Plan:
    """A plan of one bed with any planting in it, perhaps for an order."""
    bed, crop = draw(beds()), draw(crops())
    order = Order("o1", crop.id, draw(st.integers(1, 400)), draw(days()))
    planting = draw(plantings([bed.id], [crop.id], [order.id]))
    return Plan(draw(places()), (bed,), (crop,), (evolve(planting, id="p1"),), (order,))


def planted(plan: Plan, **typed: str) -> Planting:
    """The planting p1 after a text was typed into one of its fields."""
    ((name, text),) = typed.items()
    return planting_of(PLANTING[name].apply(plan, "p1", text), "p1")


def bedded(plan: Plan, **typed: str) -> Bed:
    """The bed b1 after a text was typed into one of its fields."""
    ((name, text),) = typed.items()
    return bed_of(BED[name].apply(plan, "b1", text), "b1")


@settings(max_examples=max(40, settings().max_examples))
@given(plan=one_planting())
def test_typing_what_a_planting_shows_changes_nothing(plan: Plan) -> None:
    for name, field in PLANTING.items():
        assert field.apply(plan, "p1", field.shown(plan, "p1")) == plan, name


@settings(max_examples=max(40, settings().max_examples))
@given(plan=plans(least_beds=1))
def test_typing_what_a_bed_shows_changes_nothing(plan: Plan) -> None:
    for field in BED_FIELDS:
        for bed in plan.beds:
            assert field.apply(plan, bed.id, field.shown(plan, bed.id)) == plan, field.name


@settings(max_examples=max(60, settings().max_examples))
@given(plan=one_planting(), text=names() | st.sampled_from(TEXTS))
def test_whatever_is_typed_gives_a_valid_plan_or_says_what_is_wrong(plan: Plan, text: str) -> None:
    for name, field in PLANTING.items():
        with suppress(GardenplotError):
            assert list(faults(field.apply(plan, "p1", text))) == [], name


@pytest.mark.parametrize(
    ("name", "text", "attribute", "value"),
    [
        ("plants", "45", "plants", 45),
        ("plants", "", "plants", None),
        ("rows", "2", "rows", 2),
        ("rows", "", "rows", None),
        ("from", "4 m", "start", parse_length("4 m")),
        ("length", "2.5 m", "length", parse_length("2.5 m")),
        ("edge", "5 cm", "edge", parse_length("5 cm")),
        ("in_row", "20 cm", "in_row", parse_length("20 cm")),
        ("row_spacing", "25 cm to 40 cm", "row_spacing", (parse_length("25 cm"), parse_length("40 cm"))),
        ("slack", "30 cm", "slack", parse_length("30 cm")),
        ("round_up_to", "50 cm", "round_up_to", parse_length("50 cm")),
        ("clump", "4", "clump", 4),
        ("seeds_per_cell", "6", "seeds_per_cell", 6),
    ],
)
def test_what_is_typed_becomes_the_plantings_own(name: str, text: str, attribute: str, value: object) -> None:
    assert getattr(planted(ground(block("5 m", "3 m", rows=1)), **{name: text}), attribute) == value


@pytest.mark.parametrize(
    ("name", "text"), [("in_row", "30 cm"), ("in_row", ""), ("row_spacing", "30 cm"), ("row_spacing", "")]
)
def test_the_packets_own_spacing_is_not_kept_with_the_planting(name: str, text: str) -> None:
    own: Fields = {"in_row": "20 cm", "row_spacing": "25 cm"}
    assert planted(ground(block("5 m", "3 m", **own)), **{name: text}) == planted(
        ground(block("5 m", "3 m", **{key: value for key, value in own.items() if key != name})), slack=""
    )


def test_plants_take_the_place_of_a_length_and_a_length_that_of_plants() -> None:
    by_plants = planted(ground(block("5 m", "3 m")), plants="8")
    assert (by_plants.plants, by_plants.length) == (8, None)
    by_length = planted(ground({"from": "5 m", "plants": 8}), length="3 m")
    assert (by_length.plants, by_length.length) == (None, parse_length("3 m"))


def test_the_last_reading_decides_the_length_and_the_first_stays() -> None:
    plan = hand_worked("s1")
    after = PLANTING["to"].apply(plan, "p2", "9.8 m")
    assert block_of(after, "p2") == spot("7.3 m", "9.8 m", "b2")
    assert layout_in(after, "p2").plants == 30


@pytest.mark.parametrize("text", ["5 m", "4.9 m"])
def test_the_last_reading_must_lie_beyond_the_first(text: str) -> None:
    with pytest.raises(PlanError, match="is not beyond"):
        planted(ground(block("5 m", "3 m")), to=text)


LENGTHS = ("from", "to", "length", "edge", "in_row", "row_spacing", "slack", "round_up_to")


@pytest.mark.parametrize("name", LENGTHS)
@pytest.mark.parametrize("text", ["wide", "-5 cm", "3 parsecs", "11 km", "11000 m", "1/0 in", "1,000 cm"])
def test_what_is_no_length_is_not_taken(name: str, text: str) -> None:
    with pytest.raises(LengthError):
        planted(ground(block("5 m", "3 m")), **{name: text})


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("plants", "many"),
        ("plants", "0"),
        ("plants", "-3"),
        ("plants", "99999999"),
        ("rows", "1.5"),
        ("rows", "0"),
        ("clump", "0"),
        ("clump", "101"),
        ("seeds_per_cell", "a few"),
        ("from", ""),
        ("to", ""),
        ("length", "0 cm"),
        ("in_row", "0.1 mm"),
        ("row_spacing", "45 cm to 30 cm"),
        ("row_spacing", "1 cm to 2 cm to 3 cm"),
        ("in_ground", "soon"),
        ("out", "2027-02-29"),
    ],
)
def test_what_no_plan_can_hold_is_not_taken(name: str, text: str) -> None:
    with pytest.raises(PlanError):
        planted(ground(block("5 m", "3 m")), **{name: text})


def test_a_planting_is_out_only_after_it_is_in() -> None:
    plan = ground(block("5 m", "3 m", in_ground="2027-05-07"))
    with pytest.raises(PlanError, match="is not after"):
        planted(plan, out="2027-05-07")
    assert str(planted(plan, out="2027-05-08").out) == "2027-05-08"


PACKET_WORDS = {
    "in_row": "packet: 30 cm",
    "row_spacing": "packet: 30 cm",
    "edge": "half the row spacing: 15 cm",
    "slack": "none",
    "end_margin": "half a spacing",
    "clump": "one plant",
    "seeds_per_cell": "one",
    "in_ground": "no day yet",
}


@pytest.mark.parametrize(("name", "words"), PACKET_WORDS.items())
def test_what_holds_without_a_typed_value_is_said_by_its_word_and_never_as_a_value(name: str, words: str) -> None:
    plan = ground(block("5 m", "3 m"))
    assert (PLANTING[name].shown(plan, "p1"), PLANTING[name].grey(plan, "p1")) == ("", words)


@each((*PLANTING.values(), *BED_FIELDS))
def test_an_example_says_that_it_is_one(field: TypedField) -> None:
    plan = ground(block("5 m", "3 m"), units=Units.FEET_AND_INCHES)
    words = field.grey(plan, "p1" if field in PLANTING.values() else "b1")
    assert not field.example or field.held or words.startswith("like ")


SHOWN: Fields = {
    "from": "5000 mm",
    "length": "300 cm",
    "edge": "75 mm",
    "in_row": "12 in",
    "row_spacing": "0.3 m",
    "slack": "1 ft",
    "round_up_to": "50 mm",
}


@pytest.mark.parametrize(("name", "shown"), SHOWN.items())
def test_a_number_alone_takes_the_unit_that_is_shown(name: str, shown: str) -> None:
    plan = ground(SHOWN)
    assert PLANTING[name].shown(plan, "p1") == shown
    unit = shown.split(" ")[1]
    after = PLANTING[name].apply(plan, "p1", "400")
    assert PLANTING[name].shown(after, "p1") == f"400 {unit}"


@pytest.mark.parametrize("whose", ["crop", "bed"])
def test_a_number_alone_takes_the_unit_of_an_edge_that_is_the_crops_or_the_beds(whose: str) -> None:
    edges: dict[str, Fields] = {"crop": {}, "bed": {}} | {whose: {"edge": "3 in"}}
    plan = ground(block("5 m", "3 m"), beds=[BEDS[0] | edges["bed"]], crops=[CHARD | edges["crop"]])
    says = {"crop": "packet", "bed": "bed"}[whose]
    assert (PLANTING["edge"].shown(plan, "p1"), PLANTING["edge"].grey(plan, "p1")) == ("", f"{says}: 3 in")
    assert planted(plan, edge="4").edge == parse_length("4 in")


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("name", ["slack", "round_up_to"])
def test_where_nothing_is_shown_a_number_alone_takes_the_plans_unit(name: str, units: Units) -> None:
    plan = ground(block("5 m", "3 m"), units=units)
    after = PLANTING[name].apply(plan, "p1", "2")
    assert PLANTING[name].shown(after, "p1") == f"2 {BARE[units]}"


@pytest.mark.parametrize(
    ("name", "text", "value"),
    [
        ("length", "15 m", parse_length("15 m")),
        ("width", "80", parse_length("80 cm")),
        ("head_margin", "", None),
        ("foot_margin", "1 ft", parse_length("1 ft")),
        ("edge", "5", parse_length("5 cm")),
        ("gap", "0 cm", parse_length("0 cm")),
    ],
)
def test_what_is_typed_becomes_the_beds_own(name: str, text: str, value: object) -> None:
    assert getattr(bedded(ground(), **{name: text}), name) == value


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("length", ""),
        ("width", ""),
        ("width", "wide"),
        ("length", "0.5 mm"),
        ("head_margin", "12 m"),
        ("gap", "-1 cm"),
    ],
)
def test_what_no_bed_can_be_is_not_taken(name: str, text: str) -> None:
    with pytest.raises((LengthError, PlanError)):
        bedded(ground(), **{name: text})


def test_a_bed_may_have_any_name() -> None:
    assert bedded(ground(), name="Küche <b>&%s").name == "Küche <b>&%s"


def test_the_day_from_which_a_bed_can_be_used_is_typed_and_cleared() -> None:
    plan = ground()
    late = BED["usable_from"].apply(plan, plan.beds[0].id, "2027-05-22")
    assert late.beds[0].usable_from == date(2027, 5, 22)
    assert BED["usable_from"].apply(late, plan.beds[0].id, "") == plan
    with pytest.raises(GardenplotError, match="no date"):
        BED["usable_from"].apply(plan, plan.beds[0].id, "in May")
