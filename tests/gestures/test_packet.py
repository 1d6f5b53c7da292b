"""A packet typed and read back, line by line."""

import pytest
from attrs import evolve
from hypothesis import given, settings

from gardenplot.gestures.packet import PACKET, PacketField, crop_from, id_from, texts_of, values_from
from gardenplot.plan import Crop, Establish, Plan
from gardenplot.plan.edits import add_crop
from gardenplot.units import Units, parse_length, parse_share
from tests.plans import crops

CHARD = {"name": "Chard", "in_row": "30 cm", "row_spacing": "30 cm to 45 cm"}
LINES = [field.attribute for field in PACKET]


@settings(max_examples=60)
@given(crops())
def test_a_packet_typed_as_it_is_shown_gives_the_same_values(crop: Crop) -> None:
    crop = evolve(crop, name="Sea kale", family="Brassicaceae" if crop.family else None)
    values, wrong = values_from(texts_of(crop), Units.METRIC)
    assert wrong == {}
    assert values == {line: getattr(crop, line) for line in LINES}


@pytest.mark.parametrize(
    ("line", "typed"),
    [
        ("name", " "),
        ("in_row", ""),
        ("in_row", "wide"),
        ("row_spacing", ""),
        ("row_spacing", "30 cm to"),
        ("edge", "-1 cm"),
        ("spread", "wide"),
        ("field_days", "six weeks"),
        ("raising_days", "2.5"),
        ("hardening_days", "-7"),
        ("cool_days", "some"),
        ("harvest_days", "-1"),
        ("pot_up_days", "1.5"),
        ("oldest_days", "old"),
        ("days_from", "the shop"),
        ("frost", "badly"),
        ("field_loss", "110 %"),
        ("spare", "a few"),
        ("germination", "0.9"),
        ("seeds_per_cell", "one"),
        ("tray_cells", "7×12"),
        ("seeds_per_row", "40"),
        ("seeder_slack", "10"),
        ("seeds_per_gram", "many"),
        ("seeds_per_gram", "nan"),
        ("seeds_per_gram", "1e999"),
        ("seeds_per_gram", "1,200"),
        ("seeds_per_gram", "-320"),
        ("seeds_per_gram", "1_200"),
        ("seedlings_per_seed", "2e0"),
        ("plants_per_area", "400 / m"),
    ],
)
def test_what_is_wrong_is_said_at_its_line_and_nowhere_else(line: str, typed: str) -> None:
    values, wrong = values_from(CHARD | {line: typed}, Units.METRIC)
    assert list(wrong) == [line]
    assert len(wrong[line]) > 10
    assert set(values) == set(LINES) - {line}


def test_every_line_is_wrong_at_once_where_every_line_is() -> None:
    nonsense = {line: "nonsense" for line in LINES if line not in ("name", "family")}
    _values, wrong = values_from(nonsense | {"name": ""}, Units.METRIC)
    assert set(wrong) == set(LINES) - {"family"}


@pytest.mark.parametrize(
    "field",
    [field for field in PACKET if field.attribute not in ("edge", "spread")],
    ids=lambda field: field.attribute,
)
def test_the_example_of_each_line_can_be_read(field: PacketField) -> None:
    assert values_from(CHARD | {field.attribute: field.example}, Units.METRIC)[1] == {}


def test_only_what_a_crop_cannot_be_without_is_needed() -> None:
    assert [field.attribute for field in PACKET if field.needed] == list(values_from({}, Units.METRIC)[1])


@pytest.mark.parametrize(
    ("units", "in_row"), [(Units.METRIC, "8 cm"), (Units.FEET_AND_INCHES, "8 in"), (Units.DECIMAL_FEET, "8 ft")]
)
def test_numbers_alone_take_the_plans_unit(units: Units, in_row: str) -> None:
    assert values_from(CHARD | {"in_row": " 8 "}, units)[0]["in_row"] == parse_length(in_row)


def test_a_packet_becomes_a_crop_of_the_plan() -> None:
    values, _wrong = values_from(CHARD | {"field_loss": "10 %", "tray_cells": "84"}, Units.METRIC)
    crop = crop_from(values, Establish.DIRECT)
    assert add_crop(Plan(), crop).crops == (crop,)
    assert (crop.id, crop.establish, crop.tray_cells) == ("chard", Establish.DIRECT, 84)
    assert crop.field_loss == parse_share("10 %")
    assert crop.row_spacing == (parse_length("30 cm"), parse_length("45 cm"))


@pytest.mark.parametrize(
    ("name", "made"),
    [
        ("Pak choi", "pak-choi"),
        ("  Crème   brûlée! ", "creme-brulee"),
        ("Μαρούλι", "μαρουλι"),
        ("Редис, белый", "редис-белыи"),
        ("½ & ?", "1-2"),
        ("¿?", "crop"),
    ],
)
def test_an_id_can_be_read_by_a_person(name: str, made: str) -> None:
    assert id_from(name) == made
