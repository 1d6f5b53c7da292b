"""Numbers in words: every name is a word, every unit has figures, and a formula in figures gives the number."""

import ast
import re
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import gardenplot
from gardenplot.drawing.number_names import NAMES
from gardenplot.drawing.number_sources import SOURCES
from gardenplot.drawing.number_words import formula_words, result_words, sum_words, value_words, working_lines
from gardenplot.drawing.unit_figures import figure, followed
from gardenplot.plan import Bed, Jugs, Plan
from gardenplot.supplies.jugs import jug_heat
from gardenplot.supplies.raising import raising
from gardenplot.supplies.shopping import shopping
from gardenplot.units import (
    BTU,
    FOOT,
    INCH,
    LITRE,
    MM,
    M,
    Units,
    parse_heat_loss,
    parse_length,
    parse_temperature,
    parse_volume,
)
from gardenplot.working import Source, Trust, Unit, known, numbers_in, worked
from tests.plans import plans
from tests.supplies.test_raising import crop

_NAME = re.compile(r"[a-z_]+")
_MAKERS = (
    "worked",
    "known",
    "added",
    "up",
    "down",
    "_up",
    "_shifted",
    "_days",
    "_came",
    "_typed",
    "_summed",
    "_given",
)


def formula_texts() -> Iterator[str]:
    """Every text in the rooms that make numbers which is given as a name or a formula."""
    root = Path(gardenplot.__path__[0])
    rooms = ("supplies", "layout", "season", "filling", "drawing")
    for path in (each for room in rooms for each in root.glob(f"{room}/*.py")):
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in _MAKERS:
                said = (one.value for one in node.args if isinstance(one, ast.Constant))
                yield from (one for one in said if isinstance(one, str))


def test_every_name_in_a_formula_has_words() -> None:
    names = {name for text in formula_texts() for name in _NAME.findall(text)}
    assert len(names) > 50
    assert names - NAMES.keys() == set()


def test_every_source_has_words_of_its_own() -> None:
    assert set(SOURCES) == set(Source)
    assert len(set(SOURCES.values())) == len(Source)


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("unit", Unit)
def test_every_unit_has_figures(unit: Unit, units: Units) -> None:
    words = figure(Fraction(10**12 if unit is not Unit.DATE else 700_000), unit, units, "€")
    assert any(sign.isdecimal() for sign in words)


@pytest.mark.parametrize(
    ("value", "unit", "units", "words"),
    [
        (Fraction(157), Unit.COUNT, Units.METRIC, "157"),
        (Fraction(4711, 30), Unit.COUNT, Units.METRIC, "157.03"),
        (Fraction(629, 1000), Unit.SHARE, Units.METRIC, "62.9 %"),
        (Fraction(175 * LITRE, 10), Unit.VOLUME, Units.METRIC, "17.5 l"),
        (Fraction(17 * M**3), Unit.VOLUME, Units.METRIC, "17 m³"),
        (Fraction(832, 60), Unit.GRAMS, Units.FEET_AND_INCHES, "13.9 g"),
        (Fraction("4535.9237"), Unit.GRAMS, Units.DECIMAL_FEET, "10 lb"),
        (Fraction(3, 4), Unit.HOURS, Units.METRIC, "45 min"),
        (Fraction(5, 2), Unit.MONEY, Units.METRIC, "€ 2.50"),
    ],
)
def test_figures_are_rounded_once_and_have_no_nonsense_digits(
    value: Fraction, unit: Unit, units: Units, words: str
) -> None:
    assert figure(value, unit, units, "€").replace("\u2009", " ") == words


@given(
    st.integers(1, 30 * M // 1000).map(lambda many: many * 1000)
    | st.integers(1, 64 * 900).map(lambda many: many * INCH // 64),
    st.sampled_from((Unit.LENGTH, Unit.SPACING, Unit.READING)), st.sampled_from(Units),
)  # fmt: skip
def test_a_length_in_a_sum_reads_back_to_itself_unless_it_is_said_to_be_rounded(
    nm: int, unit: Unit, units: Units
) -> None:
    words = followed(Fraction(nm), unit, units)
    finest = INCH // 16 if units is Units.FEET_AND_INCHES else FOOT // 1000 if units is Units.DECIMAL_FEET else MM
    if words.startswith("≈"):
        assert 0 < abs(parse_length(words[1:].strip()).nm - nm) <= finest
    else:
        assert parse_length(words).nm == nm


@pytest.mark.parametrize(("value", "unit", "units", "words"), [
    (Fraction(15375, 1000) * M, Unit.LENGTH, Units.METRIC, "15.375 m"),
    (Fraction(15), Unit.COUNT, Units.METRIC, "15"),
    (Fraction(22, 7), Unit.COUNT, Units.METRIC, "≈ 3.1429"),
    (Fraction(215, 1000) * M, Unit.SPACING, Units.METRIC, "21.5 cm"),
    (Fraction(111, 16) * INCH, Unit.SPACING, Units.FEET_AND_INCHES, "6 15/16″"),
    (Fraction(3996, 10) * LITRE, Unit.VOLUME, Units.METRIC, "399.6 l"),
    (Fraction(1, 3), Unit.SHARE, Units.METRIC, "≈ 33.333 %"),
])  # fmt: skip
def test_a_value_stands_in_a_sum_as_it_is(value: Fraction, unit: Unit, units: Units, words: str) -> None:
    assert followed(value, unit, units).replace("\u2009", " ") == words


def test_a_working_names_every_step_down_to_what_was_typed() -> None:
    """The trays of S1's pak choi, worked by hand: 136 x 1.15 = 156.4, up 157; / 0.9 = 174.4, up 175; / 84, up 3."""
    found = raising(crop(spare="15 %", germination="90 %", tray_cells=84), 136, 200_000_000).filled
    assert found is not None
    lines = [(line.depth, line.name, line.sum, line.value) for line in working_lines(found, Units.METRIC)]
    assert lines == [
        (0, "trays", "175 ÷ 84", "3 (2.08, up)"),
        (1, "cells", "157 ÷ 90\u2009%", "175 (174.44, up)"),
        (2, "raise", "136 × (1 + 15\u2009%)", "157 (156.4, up)"),
        (3, "planted", "", "136"),
        (3, "spare", "", "15\u2009%"),
        (2, "germination", "", "90\u2009%"),
        (1, "cells in a tray", "", "84"),
    ]


def test_what_is_not_known_says_what_it_needs_and_is_never_nothing() -> None:
    found = raising(crop(spare="15 %", tray_cells=84), 136, 200_000_000).filled
    assert found is not None
    assert result_words(found, Units.METRIC) == "not known: needs germination"
    assert sum_words(found, Units.METRIC) == ""
    assert formula_words(found) == "cells ÷ cells in a tray"


@pytest.mark.parametrize(
    ("unit", "said"), [(Unit.DATE, "fair: a week or two"), (Unit.DAYS, "fair: a week or two"), (Unit.COUNT, "fair")]
)
def test_weeks_are_said_of_the_trust_in_days_alone(unit: Unit, said: str) -> None:
    (line,) = working_lines(known("weights", 24, unit, trust=Trust.FAIR), Units.METRIC)
    assert line.trust == said


@given(st.fractions(min_value=0, max_value=100), st.sampled_from(Units))
def test_a_weak_number_is_a_range_about_it_without_decimals(hours: Fraction, units: Units) -> None:
    weak = worked("lasts", Unit.HOURS, "hours", known("hours", hours, Unit.HOURS), trust=Trust.WEAK)
    words = value_words(weak, units)
    assert words.startswith("about ")
    assert "." not in words


@given(plans())
def test_every_number_of_any_plan_can_be_told(plan: Plan) -> None:
    for item in shopping(plan):
        for number in numbers_in(item.cost):
            assert value_words(number, plan.place.units, plan.place.money)
            assert next(iter(working_lines(number, plan.place.units))).name


def test_twenty_gallon_jugs_hold_a_bed_for_about_an_hour() -> None:
    """S5's night: 20 x 8.34 x 15 = 2,502 Btu against 114 sq ft x 20 = 2,280 Btu an hour; worked by hand."""
    bed = Bed("b", "Tunnel", parse_length("40 ft"), parse_length("36 in"))
    jugs = Jugs(
        "j", "b", parse_length("1 ft"), parse_length("39 ft"), parse_volume("1 gal"), parse_length("6 in"), 20,
        parse_temperature("55 F"), parse_temperature("40 F"), parse_heat_loss("20 Btu / sq ft h"),
    )  # fmt: skip
    found = jug_heat(bed, jugs)
    assert found.cooling.value is not None
    assert float(found.cooling.value / BTU) == pytest.approx(2502, abs=3)
    assert found.lasts.value is not None
    assert float(found.lasts.value) == pytest.approx(1.1, abs=0.01)
    assert value_words(found.lasts, Units.FEET_AND_INCHES) == "about 50 minutes to 1½ hours"
