"""Trays that are too few, or that stand in the cold edge of a tunnel, are found."""

import pytest

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says
from gardenplot.findings import Kind, find_all
from gardenplot.plan import Plan
from tests.layout.ground import Fields, plan_with

BED: Fields = {"length": "10 m", "width": "75 cm"}
CROP: Fields = {
    "in_row": "20 cm", "row_spacing": "20 cm", "raising_days": 28, "hardening_days": 7, "germination": "90 %",
    "spare": "15 %", "tray_cells": 84,
}  # fmt: skip
GROWN: Fields = {"from": "0 m", "plants": 136, "in_ground": "2027-05-10"}
TUNNEL: Fields = {"id": "t", "name": "Tunnel", "x": "0 m", "y": "0 m", "length": "12 m", "width": "5 m"}


def plan_of(at: str, trays: int = 3, y: str = "2 m", cold: str | None = "60 cm", turn: str = "0°") -> Plan:
    block = {
        "from": at, "plants": trays, "in_row": "54 cm", "row_spacing": "28 cm", "hardens": "p1",
    }  # fmt: skip
    return plan_with(
        BED, CROP, GROWN, block, ground=[{"bed": "b1", "x": "1 m", "y": y, "turn": turn}],
        tunnels=[TUNNEL | {"cold_edge": cold}],
    )  # fmt: skip


def said(plan: Plan, kind: Kind) -> list[str]:
    return [says(plan, one, looks(plan)).replace("\u2009", " ") for one in find_all(plan) if one.kind is kind]


@pytest.mark.parametrize(("trays", "words"), [(3, []), (2, ["2 trays stand here, 3 are raised"])])
def test_as_many_trays_stand_as_are_raised(trays: int, words: list[str]) -> None:
    """136 plants, 15 % spare, 90 % germination, trays of 84: 3 trays (scenario by hand)."""
    assert said(plan_of("4 m", trays), Kind.TRAYS) == words


def test_trays_in_the_outer_strip_of_a_tunnel_are_told_to_move() -> None:
    """The bed's head lies beyond the 60 cm of the end wall, its long side at y = 0.3 m does not."""
    assert said(plan_of("4 m"), Kind.COLD_EDGE) == []
    assert said(plan_of("4 m", y="0.3 m"), Kind.COLD_EDGE) == [
        "30 cm from the wall of Tunnel: the outer 60 cm are cold, keep to the middle"
    ]
    assert said(plan_of("4 m", y="0.3 m", cold=None), Kind.COLD_EDGE) == []
    assert said(plan_of("4 m", y="0.6 m"), Kind.COLD_EDGE) == []


def test_outside_of_a_tunnel_there_is_no_cold_edge() -> None:
    assert said(plan_of("4 m", y="8 m"), Kind.COLD_EDGE) == []


@pytest.mark.parametrize(("frost", "found"), [("tender", 1), ("very tender", 1), ("half-hardy", 0), (None, 0)])
def test_tender_crops_are_told_to_move_out_of_the_outer_strip_too(frost: str | None, found: int) -> None:
    """That tender crops are kept out of it is common practice, no source."""
    crop = CROP | ({"frost": frost} if frost else {})
    plan = plan_with(
        BED, crop, GROWN | {"plants": 12}, ground=[{"bed": "b1", "x": "1 m", "y": "0.3 m"}],
        tunnels=[TUNNEL | {"cold_edge": "60 cm"}],
    )  # fmt: skip
    assert len(said(plan, Kind.COLD_EDGE)) == found
