"""Hoops and cloth over a stretch of bed."""

from fractions import Fraction
from math import pi
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.plan import Bed, Cover, Good, GoodKind
from gardenplot.supplies import CoverCut, cover_cut, spare_width
from gardenplot.units import CM, INCH, Length, M, parse_length
from tests.layout.ground import Fields, long, nm, plan_with
from tests.plans import lengths


def cut(length: str, width: str, **cover: Any) -> CoverCut:
    """The cut of a cover over a whole bed."""
    crop: Fields = {"in_row": "20 cm", "row_spacing": "25 cm"}
    whole = {"id": "c1", "bed": "b1", "from": "0 m", "to": length}
    plan = plan_with({"length": length, "width": width}, crop, covers=[whole | cover])
    return cover_cut(plan.beds[0], plan.covers[0])


@pytest.mark.parametrize(
    ("length", "most", "hoops", "apart"),
    [
        ("12 m", "1.2 m", 11, "1.2 m"),
        ("75 ft", "5 ft", 16, "5 ft"),
        ("48 ft", "4 ft", 13, "4 ft"),
        ("38 ft", "4 ft", 11, "3.8 ft"),
        ("1 m", "1 m", 2, "1 m"),
        ("1 m", "1.5 m", 2, "1 m"),
    ],
)
def test_hoops_stand_evenly_from_end_to_end(length: str, most: str, hoops: int, apart: str) -> None:
    found = cut(length, "30 in", hoop_spacing=most)
    assert (found.hoops, found.hoop_spacing) == (hoops, Fraction(nm(apart)))


def test_twenty_hoops_over_75_feet_stand_at_exact_nineteenths() -> None:
    found = cut("75 ft", "48 in", hoop_spacing="4 ft")
    assert (found.hoops, found.hoop_spacing) == (20, Fraction(nm("75 ft"), 19))


def test_the_broccoli_cover_is_cut_as_worked_by_hand() -> None:
    found = cut("75 ft", "48 in", leg="8 in", apron="10 in", end="4 ft")
    assert found.hoop_length == pytest.approx(91.398 * INCH, abs=0.001 * INCH)
    assert found.cloth_width == pytest.approx(95.398 * INCH, abs=0.001 * INCH)
    assert found.cloth_length == nm("83 ft")


def test_what_the_cover_does_not_tell_is_not_cut() -> None:
    found = cut("10 m", "75 cm")
    assert [number.value for number in found.numbers] == [None] * 7
    assert [*found.hoop.lacks()] == ["leg"]
    assert found.cloth is not None
    assert [*found.cloth.area.lacks()] == ["apron", "cloth_end"]


def test_a_hoop_may_stand_on_the_ground_and_a_cloth_may_end_at_it() -> None:
    found = cut("10 m", "1 m", leg="0 cm", apron="0 cm", end="0 cm")
    assert found.hoop_length == found.cloth_width == pytest.approx(pi / 2 * M, abs=1)
    assert found.cloth_length == nm("10 m")


def test_film_is_cut_with_what_is_buried_at_its_sides_and_ends() -> None:
    """By hand: half-round over 80 cm is 125.66 cm; 2 x 15 cm buried: 155.66 cm; 18 + 2 x (0.6 + 0.15) m: 19.50 m."""
    found = cut("18 m", "80 cm", hoop_spacing="1.2 m", end="60 cm", buried="15 cm", sheeting="clear film", layers=2)
    assert found.cloth is None
    assert found.film is not None
    assert found.film.width.whole == pytest.approx(155.664 * CM, abs=0.001 * CM)
    assert found.film.length.whole == nm("19.5 m")
    assert found.film.area.value == 2 * (found.film.width.value or 0) * nm("19.5 m")
    assert found.weights is None


def test_film_over_cloth_is_one_sheet_and_the_cloth_keeps_its_layers_and_weights() -> None:
    over = "clear film over cloth"
    both = cut(
        "18 m", "80 cm", hoop_spacing="1.2 m", apron="20 cm", end="60 cm", buried="15 cm", sheeting=over, layers=2
    )
    cloth = cut("18 m", "80 cm", hoop_spacing="1.2 m", apron="20 cm", end="60 cm", layers=2)
    assert [sheet.layers.value for sheet in both.sheets] == [2, 1]
    assert both.cloth == cloth.cloth
    assert both.weights == cloth.weights


def test_film_that_is_not_buried_is_weighed_down_like_cloth() -> None:
    laid = cut("18 m", "80 cm", hoop_spacing="1.2 m", end="60 cm", buried="0 cm", sheeting="clear film")
    assert laid.weights is not None
    assert laid.weights.value == 2 * 16 + 2
    unknown = cut("18 m", "80 cm", end="60 cm", sheeting="clear film")
    assert unknown.film is not None
    assert [*unknown.film.width.lacks()] == ["buried"]


@pytest.mark.parametrize(("widths", "spare"), [(("1.5 m", "2 m", "3 m"), "44.336"), (("1.5 m",), None)])
def test_film_comes_from_the_narrowest_roll_that_is_wide_enough(widths: tuple[str, ...], spare: str | None) -> None:
    """155.66 cm from a roll of 2 m: 44.34 cm to spare."""
    found = cut("18 m", "80 cm", end="60 cm", buried="15 cm", sheeting="clear film")
    goods = tuple(Good(f"g{n}", GoodKind.FILM, width=parse_length(text)) for n, text in enumerate(widths))
    assert found.film is not None
    over = spare_width(found.film, (*goods, Good("c", GoodKind.CLOTH, width=parse_length("1.6 m"))))
    assert (over is None) == (spare is None)
    if over is not None and spare is not None:
        assert over.whole == pytest.approx(float(spare) * CM, abs=0.001 * CM)


@given(lengths(30 * CM, 60 * M), lengths(20 * CM, 3 * M), lengths(30 * CM, 2 * M), st.integers(0, M))
def test_hoops_are_as_few_as_the_most_spacing_allows(length: Length, most: Length, width: Length, leg: int) -> None:
    bed = Bed("b1", "Bed", length, width)
    found = cover_cut(bed, Cover("c1", "b1", long(0), length, hoop_spacing=most, leg=long(leg), apron=long(leg)))
    assert found.hoops is not None
    assert found.hoop_spacing is not None
    assert found.hoop_spacing * (found.hoops - 1) == length.nm
    assert found.hoop_spacing <= most.nm
    assert found.hoops == 2 or (found.hoops - 2) * most.nm < length.nm
    assert found.hoop_length == found.cloth_width
    assert found.hoop_length == pytest.approx(width.nm * pi / 2 + 2 * leg, abs=1)
