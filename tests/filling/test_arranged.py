"""Pieces arranged along their beds: the same on free ground, tall ones away from the sun, what is left together."""

from collections import Counter
from itertools import combinations
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.filling import Filling, First, Weights, fill
from gardenplot.filling.arranged import arranged
from gardenplot.filling.model import Taken, Way
from gardenplot.filling.piece import Piece
from gardenplot.filling.preferred import strand_of
from gardenplot.filling.wanted import wanted_in
from gardenplot.findings import Kind, find_all
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.units import CM, M
from tests.drawing.hand_worked import plan_from

Fields = dict[str, Any]
SPACED: Fields = {"in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm"}
PLACE: Fields = {"latitude": 50.0, "longitude": 0.0, "last_freeze": {"50%": "04-20", "10%": "05-20"}}
WISH: Fields = {"least": 10, "most": 10, "days": 60, "earliest": "2027-05-01", "latest": "2027-06-30"}


def plan_with(
    wishes: list[Fields], north: str = "90°", plantings: list[Fields] | None = None, bed: str = "6 m"
) -> Plan:
    """A bed of one row whose foot lies to the right, under a cover until June; ten plants take 2 m."""
    return plan_from(
        PLACE | {"north": north},
        beds=[{"id": "b", "name": "Bed", "length": bed, "width": "40 cm"}],
        crops=[
            SPACED | {"id": "tomato", "name": "Tomato", "height": "1.8 m", "frost": "tender"},
            SPACED | {"id": "lettuce", "name": "Lettuce", "height": "30 cm", "frost": "hardy"},
            SPACED | {"id": "bean", "name": "Bean", "frost": "tender"},
            SPACED | {"id": "leek", "name": "Leek", "frost": "hardy"},
        ],
        wishes=[WISH | wish for wish in wishes],
        plantings=plantings or [],
        covers=[{"id": "c", "bed": "b", "from": "0 m", "to": bed, "on": "2027-04-01", "off": "2027-06-15"}],
        ground=[{"bed": "b", "x": "0 m", "y": "0 m"}],
    )


def order_of(filling: Filling) -> list[str]:
    return [one.wanted for one in sorted(filling.placed, key=lambda one: one.start)]


@pytest.mark.parametrize(("north", "order"), [("90°", ["lettuce", "tomato"]), ("270°", ["tomato", "lettuce"])])
@pytest.mark.parametrize("worth", [0.1, 10.0])
def test_the_taller_one_stands_on_the_side_away_from_the_sun(north: str, order: list[str], worth: float) -> None:
    wishes: list[Fields] = [{"id": "tomato", "crop": "tomato", "worth": worth}, {"id": "lettuce", "crop": "lettuce"}]
    filling = fill(plan_with(wishes, north))
    assert order_of(filling) == order
    assert not [one for one in find_all(filling.plan) if one.kind is Kind.SHADE]


def test_nothing_that_stands_is_moved_for_the_light() -> None:
    stands = {
        "id": "s",
        "bed": "b",
        "crop": "lettuce",
        "from": "4 m",
        "length": "2 m",
        "in_ground": "2027-05-01",
        "out": "2027-06-30",
    }
    plan = plan_with([{"id": "tomato", "crop": "tomato"}, {"id": "bean", "crop": "bean"}], plantings=[stands])
    filling = fill(plan)
    assert order_of(filling) == ["tomato", "bean"]
    assert filling.plan.plantings[0] == plan.plantings[0]


def test_what_needs_a_cover_stands_side_by_side() -> None:
    """Beans at 0 m and 4 m with leeks between them, all from May on: while it may freeze one cloth is over both."""
    plan = plan_with([{"id": name, "crop": name[:4]} for name in ("bean", "leek", "bean-2")])
    pieces = []
    for number, one in enumerate(wanted_in(plan, Weights())):
        (dates, *_later) = one.days
        assert dates.in_ground is not None
        assert dates.out is not None
        way = Way(0, dates.in_ground.toordinal(), dates.out.toordinal(), (2 * M,), (10,))
        pieces.append(Piece(number, one, way, dates, 10, 10, number * 2 * M, 2 * M))
    for first in First:
        found = arranged(plan, tuple(pieces), first)
        assert [one.wanted.id for one in sorted(found, key=lambda one: one.start)].index("leek") != 1


def test_what_is_left_over_lies_in_one_piece_where_an_order_gives_that() -> None:
    """Leeks are out after 20 days: between two that stay their ground would lie alone."""
    short = {"id": "short", "crop": "leek", "days": 20, "latest": "2027-05-21", "worth": 2}
    wishes: list[Fields] = [{"id": "l1", "crop": "leek", "worth": 3}, short, {"id": "l2", "crop": "leek"}]
    filling = fill(plan_with(wishes, bed="7 m"), weights=Weights(first=First.ROOM))
    assert order_of(filling)[2] == "short"


@st.composite
def placed(draw: st.DrawFn) -> tuple[Plan, tuple[Piece, ...]]:
    """Pieces of several crops in a bed of 6 m with a block of some days, some of them bound to a stretch."""
    stands = {
        "id": "s", "bed": "b", "crop": draw(st.sampled_from(("lettuce", "tomato"))),
        "from": f"{draw(st.integers(0, 4))} m", "length": "1 m", "in_ground": "2027-05-20", "out": "2027-06-10",
    }  # fmt: skip
    crops = ("tomato", "lettuce", "bean", "leek")
    wishes: list[Fields] = [{"id": name, "crop": name} for name in crops]
    plan = plan_with(wishes, draw(st.sampled_from(("90°", "270°"))), [stands] if draw(st.booleans()) else [])
    (laid,) = lay_out_plan(plan)
    taken = [*strand_of(plan, laid).strip.taken]
    found: list[Piece] = []
    for number, one in enumerate(wanted_in(plan, Weights())):
        dates = one.days[draw(st.integers(0, len(one.days) - 1))]
        assert dates.in_ground is not None
        assert dates.out is not None
        first, last = dates.in_ground.toordinal(), dates.out.toordinal()
        length, start = draw(st.integers(2, 20)) * 10 * CM, draw(st.integers(0, 40)) * 10 * CM
        low, high = draw(st.sampled_from(((0, 2**62), (start, start + length), (max(0, start - M), start + 2 * M))))
        way = Way(0, first, last, (length,), (1,), low, high)
        piece = Piece(number, one, way, dates, 1, 1, start, length)
        if start + length <= 6 * M and not any(_overlap(piece.taken, each) for each in taken):
            taken.append(piece.taken)
            found.append(piece)
    return plan, tuple(found)


def _overlap(one: Taken, other: Taken) -> bool:
    return (
        one.start < other.end and other.start < one.end and one.first < other.last and other.first < one.last
    )  # fmt: skip


@settings(max_examples=60)
@given(placed(), st.sampled_from(First))
def test_the_same_pieces_stand_on_free_ground_and_no_worse_than_before(
    season: tuple[Plan, tuple[Piece, ...]], first: First
) -> None:
    plan, pieces = season
    (laid,) = lay_out_plan(plan)
    strand = strand_of(plan, laid)
    found = arranged(plan, pieces, first)
    assert [(one.number, one.length, one.way) for one in found] == [
        (one.number, one.length, one.way) for one in pieces
    ]
    for one in found:
        assert max(0, one.way.low) <= one.start
        assert one.end <= min(strand.strip.length, one.way.high)
        assert not any(_overlap(one.taken, each) for each in strand.strip.taken)
    assert not any(_overlap(one.taken, other.taken) for one, other in combinations(found, 2))
    if pieces:
        assert strand.faults(found, first) <= strand.faults(pieces, first)
        assert strand.faults(arranged(plan, found, first), first) <= strand.faults(found, first)
    assert arranged(plan, pieces, first) == found


def test_a_filling_is_worth_the_same_whatever_comes_first() -> None:
    wishes: list[Fields] = [{"id": name, "crop": name} for name in ("tomato", "lettuce", "bean", "leek")]
    fillings = [fill(plan_with(wishes), weights=Weights(first=first)) for first in First]
    assert len({(one.worth, one.bound) for one in fillings}) == 1
    counts = [
        Counter((each.wanted, each.bed, each.plants, each.in_ground) for each in one.placed) for one in fillings
    ]
    assert counts[0] == counts[1] == counts[2]
