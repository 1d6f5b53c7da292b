"""Water, compost, fertiliser, trays, hoops and heat against published examples; each names its source."""

from fractions import Fraction
from math import pi

import mpmath
import pytest

from gardenplot.plan import Bed, Cover, Feed, HoopShape, Jugs, Place, Watering
from gardenplot.supplies import cover_cut
from gardenplot.supplies.ellipse import half_perimeter
from gardenplot.supplies.feeding import fed
from gardenplot.supplies.jugs import HEAT_OF_FREEZING, HEAT_OF_WATER, WATER, jug_heat
from gardenplot.supplies.water import bed_water, weekly_water
from gardenplot.units import (
    BTU,
    FOOT,
    GALLON,
    INCH,
    LITRE,
    POUND,
    M,
    parse_length,
    parse_line_flow,
    parse_mass_rate,
    parse_share,
    parse_temperature,
    parse_volume,
)


def bed(length: str, width: str, lines: int = 0) -> Bed:
    drip = tuple(parse_length(f"{number + 1} in") for number in range(lines))
    return Bed("b", "Bed", parse_length(length), parse_length(width), drip_lines=drip)


@pytest.mark.parametrize(
    ("square_feet", "depth", "gallons", "within"),
    [
        (43_560, "1 in", 27_154.3, 0.05),  # an acre-inch: Math Central, University of Regina
        (1000, "1 in", 623.376623, 1e-5),  # 231 in³ a gallon (NIST SP 811)
        (1, "1 in", 0.62, 0.005),  # American Community Gardening Association
    ],
)
def test_a_depth_of_water_over_an_area_in_gallons(
    square_feet: int, depth: str, gallons: float, within: float
) -> None:
    found = weekly_water(Watering(weekly_depth=parse_length(depth)), square_feet * FOOT**2)
    assert found.value is not None
    assert float(found.value / GALLON) == pytest.approx(gallons, abs=within)


def test_a_millimetre_on_a_square_metre_is_a_litre() -> None:
    found = weekly_water(Watering(weekly_depth=parse_length("1 mm")), M**2)
    assert found.value == LITRE


@pytest.mark.parametrize(("flow", "hours"), [(13.2, 11.8), (30.6, 5.1), (27, 5.8), (80.4, 1.9)])
def test_hours_of_drip_for_an_inch_on_a_bed_of_thirty_inches(flow: float, hours: float) -> None:
    """Penn State Extension, Determining how long to run drip irrigation systems for vegetables, 2013, table."""
    place = Place(watering=Watering(parse_line_flow(f"{flow} gal/h / 100 ft"), weekly_depth=parse_length("1 in")))
    found = bed_water(place, bed("100 ft", "30 in", lines=1), 100 * FOOT * 30 * INCH)
    assert found.hours.value is not None
    assert float(found.hours.value) == pytest.approx(hours, abs=0.06)


def test_an_efficiency_is_divided_by() -> None:
    """200 sq ft, an inch, 70 % of it reaching the roots: 178.11 gallons, own arithmetic from a published rule."""
    from_sprinklers = Watering(weekly_depth=parse_length("1 in"), efficiency=parse_share("70 %"))
    found = weekly_water(from_sprinklers, 200 * FOOT**2)
    assert found.value is not None
    assert float(found.value / GALLON) == pytest.approx(178.11, abs=0.01)


@pytest.mark.parametrize(
    ("square_feet", "depth", "cubic_yards", "within"),
    [
        (350 * 200, "2 in", 432.10, 0.01),  # Cornell Waste Management Institute prints 434 with a rounded factor
        (2000, "1/4 in", 1.6, 0.06),  # Deschutes Recycling, Composting
        (108, "3 in", 1, 1e-9),  # a yard covers 108 sq ft three inches deep: experts123
        (1000, "1 in", 3.0864, 1e-4),  # plain arithmetic, 1 / 324
    ],
)
def test_compost_to_a_depth(square_feet: int, depth: str, cubic_yards: float, within: float) -> None:
    found = fed(Feed("f", depth=parse_length(depth)), square_feet * FOOT**2)
    assert found.value is not None
    assert float(found.value / (27 * FOOT**3)) == pytest.approx(cubic_yards, abs=within)


@pytest.mark.parametrize(
    ("rate", "square_feet", "pounds"),
    [
        ("14.2857142857 lb / 1000 sq ft", 5000, 71.42),  # 3 lb of N from 21 %: LifeTips lawn, truncated there
        ("6.25 lb / 1000 sq ft", 1000, 6.25),  # 1 lb from 16 %
        ("18 lb / 2000 sq ft", 750, 6.75),  # a bag for 2,000 sq ft: GardenGuides
    ],
)
def test_amendments_by_weight(rate: str, square_feet: int, pounds: float) -> None:
    found = fed(Feed("f", rate=parse_mass_rate(rate)), square_feet * FOOT**2)
    assert found.value is not None
    assert float(found.value / POUND) == pytest.approx(pounds, abs=0.02)


@pytest.mark.parametrize(("half_width", "rise"), [(24, 30), (18, 18), (36, 30), (5, 3), (1, 100), (7, 0)])
def test_half_an_ellipse_is_what_mpmath_says(half_width: int, rise: int) -> None:
    """The complete elliptic integral of the second kind: perimeter = 4 a E(1 − b² / a²) (mpmath.ellipe)."""
    a, b = max(half_width, rise), min(half_width, rise)
    expected = 2 * a * float(mpmath.ellipe(1 - mpmath.mpf(b * b) / (a * a)))
    assert float(half_perimeter(Fraction(half_width), Fraction(rise))) == pytest.approx(expected, rel=1e-14)


@pytest.mark.parametrize(
    ("base", "rise", "arc"),
    [("48 in", "30 in", 85.085), ("36 in", "18 in", 56.5487), ("72 in", "30 in", 103.8869)],
)
def test_hoops_of_half_an_ellipse(base: str, rise: str, arc: float) -> None:
    """Perimeters by numerical integration; Ramanujan's second formula (1914) differs by less than 1e-12 in."""
    cover = Cover(
        "c", "b", parse_length("0 in"), parse_length("50 ft"), hoop_shape=HoopShape.HALF_ELLIPSE,
        rise=parse_length(rise), leg=parse_length("0 in"),
    )  # fmt: skip
    found = cover_cut(bed("50 ft", base), cover)
    assert found.hoop_length == pytest.approx(arc * INCH, abs=0.001 * INCH)


def test_a_cover_plan_of_a_low_tunnel() -> None:
    """30 in wide, 18 in high, 8 in legs, 6 in buried, 50 ft: sums of a half ellipse, plain geometry."""
    cover = Cover(
        "c", "b", parse_length("0 ft"), parse_length("50 ft"), hoop_spacing=parse_length("4 ft"),
        hoop_shape=HoopShape.HALF_ELLIPSE, rise=parse_length("18 in"), leg=parse_length("8 in"),
        apron=parse_length("6 in"), cloth_end=parse_length("24 in"),
    )  # fmt: skip
    found = cover_cut(bed("50 ft", "30 in"), cover)
    assert found.hoop_length == pytest.approx(67.943 * INCH, abs=0.002 * INCH)
    assert found.cloth_width == pytest.approx(63.943 * INCH, abs=0.002 * INCH)
    assert found.cloth_length == 54 * FOOT
    assert found.hoops == 14


def test_a_half_round_hoop_is_half_a_circle() -> None:
    cover = Cover("c", "b", parse_length("0 m"), parse_length("5 m"), leg=parse_length("0 m"))
    assert cover_cut(bed("5 m", "1 m"), cover).hoop_length == pytest.approx(pi / 2 * M, abs=1)


def test_the_heat_of_water_and_of_freezing_are_those_of_the_tables() -> None:
    """1 Btu / (lb °F) by its definition (FAO X5738E, appendix A); 333 kJ / kg (FAO, Frost protection); 144 Btu a
    pound to freeze (USDA Forest Service, Forest Nursery Notes, summer 2015, where a slip makes it a gallon's)."""
    assert float(HEAT_OF_WATER * POUND / BTU * 5 / 9) == pytest.approx(1, abs=1e-6)
    assert float(HEAT_OF_FREEZING * POUND / BTU) == pytest.approx(144, abs=1)
    assert float(HEAT_OF_FREEZING) == pytest.approx(333.467, abs=0.4)


def test_a_gallon_of_water_weighs_what_is_printed() -> None:
    """8.33 lb at 62 °F (Scientific American Reference Book), 8.34 as commonly used; 1 kg a litre is 8.345."""
    assert float(WATER * GALLON / POUND) == pytest.approx(8.34, abs=0.006)


def jugs(count: int | None, stretch: str, across: str) -> Jugs:
    return Jugs(
        "j", "b", parse_length("0 ft"), parse_length(stretch), parse_volume("1 gal"), parse_length(across), count,
        parse_temperature("55 F"), parse_temperature("35 F"),
    )  # fmt: skip


def test_a_gallon_that_cools_by_twenty_degrees_gives_167_btu_and_freezing_about_1195() -> None:
    """8.33 lb x 20 °F, own arithmetic on FAO X5738E; 143.4 Btu a pound x 8.33."""
    found = jug_heat(bed("10 ft", "3 ft"), jugs(1, "10 ft", "6 in"))
    assert found.cooling.value is not None
    assert found.freezing.value is not None
    assert float(found.cooling.value / BTU) == pytest.approx(166.6, abs=0.5)
    assert float(found.freezing.value / BTU) == pytest.approx(1195, abs=10)


@pytest.mark.parametrize(("long", "wide", "across"), [(10, 3, 6), (8, 4, 7), (1, 1, 13), (20, 2, 12)])
def test_as_many_jugs_as_find_room_round_a_block(long: int, wide: int, across: int) -> None:
    """Counted jug by jug: two rows along that reach past both corners, and what is left of the ends."""
    along, ends = 0, 0
    while (along + 1) * across <= 12 * long + 2 * across:
        along += 1
    while (ends + 1) * across <= 12 * wide:
        ends += 1
    found = jug_heat(bed("30 ft", f"{wide} ft"), jugs(None, f"{long} ft", f"{across} in"))
    assert found.count.value == 2 * along + 2 * ends
