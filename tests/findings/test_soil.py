"""Soil in which nothing that is sown comes up, by the published table of days to emerge.

Harrington and Minges, Vegetable Seed Germination, University of California Agricultural Extension 1954, in
`resources/crops/tables/emergence_days.csv`, which the tests read for themselves. "NG" is printed where next to
nothing emerged.
"""

import csv
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says
from gardenplot.files import resource
from gardenplot.findings import Finding, Kind, find_all
from gardenplot.plan import Plan
from tests.findings.test_timing import planned

TABLE = {
    row["vegetable"]: {int(name[5:-1]): cell for name, cell in row.items() if name.startswith("days_")}
    for row in csv.DictReader(resource("crops/tables/emergence_days.csv").read_text(encoding="utf-8").splitlines())
}
SOIL = (Kind.SOIL_COLD, Kind.SOIL_WARM)


def sown(name: str | None, soil: str | None, **planting: Any) -> Plan:
    crop = {"establish": "direct", "emerges_like": name}
    return planned(crop, {"plants": 20, "in_ground": "2027-05-01", "soil": soil} | planting)


def found(plan: Plan) -> list[Finding]:
    return [one for one in find_all(plan) if one.kind in SOIL]


def said(plan: Plan) -> list[str]:
    return [says(plan, one, looks(plan)) for one in found(plan)]


@given(st.sampled_from(sorted(TABLE)), st.integers(-40, 1200))
def test_soil_is_told_where_it_lies_beyond_what_the_table_has_and_nowhere_else(crop: str, tenths: int) -> None:
    there = [degrees for degrees, cell in TABLE[crop].items() if cell.isdigit()]
    plan = sown(crop, f"{'-' if tenths < 0 else ''}{abs(tenths) // 10}.{abs(tenths) % 10} F")
    kinds = [one.kind for one in found(plan)]
    if tenths < min(there) * 10:
        assert kinds == [Kind.SOIL_COLD]
    elif tenths > max(there) * 10:
        assert kinds == [Kind.SOIL_WARM]
    else:
        assert kinds == []
    assert not any(one.cannot_be_done for one in found(plan))
    for words in said(plan):
        assert f"the table has {min(there)} to {max(there)} °F" in words


@pytest.mark.parametrize(
    ("crop", "soil", "words"),
    [
        ("Bean, Snap", "8 °C",
         "too cold to sow: soil of 8 °C: the table has 59 to 95 °F (15 to 35 °C), next to none emerging at 50 °F "
         "(10 °C); Harrington and Minges, Vegetable Seed Germination, University of California 1954 "
         "(fair: a week or two)"),
        ("Pea", "38 F",
         "too cold to sow: soil of 38 F: the table has 41 to 86 °F (5 to 30 °C); Harrington and Minges, "
         "Vegetable Seed Germination, University of California 1954 (fair: a week or two)"),
        ("Lettuce", "33 °C",
         "too warm to sow: soil of 33 °C: the table has 32 to 86 °F (0 to 30 °C), next to none emerging at 95 °F "
         "(35 °C); Harrington and Minges, Vegetable Seed Germination, University of California 1954 "
         "(fair: a week or two)"),
    ],
)  # fmt: skip
def test_the_limits_of_the_table_are_named_with_their_source(crop: str, soil: str, words: str) -> None:
    assert said(sown(crop, soil)) == [words]


def test_nothing_is_claimed_of_soil_or_crops_that_nobody_knows() -> None:
    assert not found(sown("Bean, Snap", None))
    assert not found(sown(None, "1 °C"))
    assert not found(sown("Skirret", "1 °C"))


def test_what_has_come_up_was_warm_enough() -> None:
    assert found(sown("Bean, Snap", "8 °C", actual={"set_out": "2027-05-01"}))
    assert not found(sown("Bean, Snap", "8 °C", actual={"set_out": "2027-05-01", "emerged": "2027-05-20"}))
    assert not found(sown("Bean, Snap", "8 °C", actual={"stand": 18}))


def test_what_is_raised_in_trays_is_not_asked_for_its_soil() -> None:
    plan = planned({"emerges_like": "Tomato"}, {"plants": 20, "soil": "1 °C"})
    assert not found(plan)
