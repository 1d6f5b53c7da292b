"""The numbers of findings are sums that come to what the finding says, down to what was typed."""

from collections import Counter
from math import radians, tan

import pytest
from attrs import evolve
from hypothesis import given, settings

from gardenplot.drawing.finding_numbers import finding_numbers
from gardenplot.drawing.number_words import in_short
from gardenplot.findings import Finding, Kind, find_all
from gardenplot.plan import Place, Plan
from gardenplot.units import M, Units, parse_length
from gardenplot.working import Source, numbers_in
from tests.drawing.hand_worked import plan_from
from tests.findings.test_shade import bed_with, shadows
from tests.findings.test_tools import TWIN
from tests.findings.test_tools import plan_of as off_the_list
from tests.layout.ground import Block, blocks
from tests.sheets.pdf_pages import plain

BY = {
    Kind.OVERLAP: lambda one: one.amount,
    Kind.OUTSIDE: lambda one: one.amount,
    Kind.NO_ROW: lambda one: one.limit - one.amount,
    Kind.ROWS: lambda one: one.amount - one.limit,
    Kind.EDGE: lambda one: one.limit - one.amount,
    Kind.CLOSER_IN_ROW: lambda one: one.limit - one.amount,
    Kind.CLOSER_ROWS: lambda one: one.limit - one.amount,
}
"""By how much it is, of kinds of finding that a sum tells."""


def test_sums_of_findings_come_to_what_they_say_for_any_blocks() -> None:
    seen: Counter[Kind] = Counter()

    @settings(max_examples=40)
    @given(blocks(), blocks())
    def look(one: Block, other: Block) -> None:
        closer = evolve(one.planting, in_row=other.crop.in_row, row_spacing=other.crop.row_spacing, rows=2)
        beside = evolve(one.planting, id="p2", start=parse_length("20 cm"))
        crowd = Plan(Place(), (one.bed,), (one.crop,), (closer, beside))
        for finding in find_all(crowd):
            if finding.kind in BY:
                seen[finding.kind] += 1
                (number,) = finding_numbers(crowd, finding)
                assert number.terms
                assert number.value == BY[finding.kind](finding)
                assert all(one.source for one in numbers_in(number))
                values = {one.value for one in numbers_in(number)}
                assert finding.kind in (Kind.OVERLAP, Kind.OUTSIDE) or {finding.amount, finding.limit} <= values

    look()
    assert len(seen) > 3


_BOTH = "the smaller of (6.20 m, 4.00 m) − the larger of (3.20 m, 1.00 m)"


def crowded(**bed: str) -> Plan:
    """Leeks from 1.00 to 4.00 m and from 3.20 to 6.20 m in a bed of 6 m, closer than their packet."""
    return plan_from(
        {"units": "metric"},
        beds=[{"id": "b1", "name": "Bed", "length": "6 m", "width": "80 cm", "foot_margin": "50 cm"} | bed],
        crops=[{"id": "leek", "name": "Leek", "in_row": "15 cm", "row_spacing": "30 cm", "edge": "10 cm"}],
        plantings=[
            {"id": "p1", "bed": "b1", "crop": "leek", "from": "1 m", "length": "3 m", "in_row": "12 cm"},
            {"id": "p2", "bed": "b1", "crop": "leek", "from": "3.2 m", "length": "3 m", "row_spacing": "25 cm"},
        ],
    )


@pytest.mark.parametrize(
    ("kind", "words"),
    [
        (
            Kind.OVERLAP,
            f"stands into it: {_BOTH} → 80 cm (exact)",
        ),
        (Kind.OUTSIDE, "stands beyond the margin by: 6.20 m − 5.50 m → 70 cm (exact)"),
        (Kind.CLOSER_IN_ROW, "closer in the row than the packet: 15 cm − 12 cm → 3 cm (exact)"),
        (Kind.CLOSER_ROWS, "rows closer than the packet: 30 cm − 25 cm → 5 cm (exact)"),
    ],
)
def test_findings_worked_by_hand(kind: Kind, words: str) -> None:
    plan = crowded()
    finding = next(one for one in find_all(plan) if one.kind is kind)
    assert told(plan, finding) == words


def test_a_bed_too_narrow_and_rows_too_many_worked_by_hand() -> None:
    """Two edges of 10 cm in a bed of 15 cm; (80 − 20) / 30 + 1 = 3 rows of the 9 asked for."""
    narrow = crowded(width="15 cm")
    found = next(one for one in find_all(narrow) if one.kind is Kind.NO_ROW)
    assert told(narrow, found) == "bed too narrow by: 20 cm − 15 cm → 5 cm (exact)"


def told(plan: Plan, finding: Finding) -> str:
    """The one number of a finding in a line."""
    (number,) = finding_numbers(plan, finding)
    assert not any(one.source is Source.NONE for one in numbers_in(number))
    return plain(in_short(number, Units.METRIC))


def test_a_shadow_is_the_difference_of_heights_times_the_tangent_of_the_sun() -> None:
    """As in the tests of shadows: 1.5 m higher, two blocks that touch, north at the foot, 50 degrees north."""
    plan = bed_with("6 m")
    (finding,) = shadows(plan)
    number, day = finding_numbers(plan, finding)
    assert number.value == pytest.approx(finding.amount, abs=2)
    assert day.value == finding.limit
    assert {"taller", "lower", "sun_lean", "share_along", "between_blocks"} <= {
        one.name for one in numbers_in(number)
    }
    lean = next(one.value for one in numbers_in(number) if one.name == "sun_lean")
    assert number.value == pytest.approx(1.5 * M * tan(radians(lean or 0)), rel=1e-9)


@pytest.mark.parametrize(
    ("place", "off", "more"),
    [
        ({"markable_in_row": ["20 cm", "30 cm"]}, "30 cm − 25 cm → 5 cm (exact)", 3 * (46 - 56)),
        ({"markable_rows": ["20 cm"]}, "20 cm − 30 cm → −10 cm (exact)", 56),
        ({"markable_rows": ["10 cm", "40 cm"]}, "10 cm − 15 cm → −5 cm (exact)", 0),
    ],
)
def test_what_cannot_be_marked_is_held_to_the_nearest_that_can(
    place: dict[str, list[str]], off: str, more: int
) -> None:
    """The plants as they are counted by hand in the tests of what is off the list."""
    plan = off_the_list(place, TWIN if "15 cm" in off else {})
    kinds = (Kind.NOT_MARKABLE_IN_ROW, Kind.NOT_MARKABLE_ROWS, Kind.NOT_MARKABLE_PAIR)
    (finding,) = (one for one in find_all(plan) if one.kind in kinds)
    wider, plants = finding_numbers(plan, finding)
    assert plain(in_short(wider, Units.METRIC)).endswith(off)
    assert plants.value == finding.plants == more
    assert all(one.source is not Source.NONE for number in (wider, plants) for one in numbers_in(number))
