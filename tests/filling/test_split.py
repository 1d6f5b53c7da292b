"""Wishes that may be split: no piece below the least, no wish in part, and a bound that no split can be above."""

from itertools import product
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.filling import Filling, Weights, fill
from gardenplot.filling.filled import filled
from gardenplot.filling.prepared import Prepared
from gardenplot.filling.split_bound import SplitBound
from gardenplot.filling.wanted import wanted_in
from gardenplot.plan import Plan, Wish
from gardenplot.plan.edits import add_wish
from tests.drawing.hand_worked import plan_from

Fields = dict[str, Any]


def beds_of(*places: int, gap: str = "0 m") -> Plan:
    """Beds with one row of so many places at 20 cm, and what stands there takes none."""
    return plan_from(
        beds=[
            {"id": f"b{number}", "name": f"Bed {number}", "length": f"{20 * count} cm", "width": "40 cm", "gap": gap}
            for number, count in enumerate(places)
        ],
        crops=[{"id": "c", "name": "Leek", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm"}],
    )


def with_wishes(plan: Plan, *wishes: Wish) -> Plan:
    for wish in wishes:
        plan = add_wish(plan, wish)
    return plan


def pieces(filling: Filling, wish: str) -> list[int]:
    return sorted(one.plants for one in filling.placed if one.wanted == wish)


def best_split(places: tuple[int, ...], wishes: tuple[Wish, ...]) -> float:
    """The most that any split is worth: the referee, with no idea but to try all numbers of plants in all beds.

    The wishes have no days, so that two pieces of one wish in a bed are as good as one.
    """

    def splits(wish: Wish) -> list[tuple[int, ...]]:
        least = wish.piece or max(1, wish.least)
        most = wish.most or sum(places)
        found = [
            counts
            for counts in product(*([0, *range(least, min(most, count) + 1)] for count in places))
            if max(1, wish.least) <= sum(counts) <= most and (wish.piece or sum(map(bool, counts)) == 1)
        ]
        return [(0,) * len(places), *found]

    best = 0.0
    for chosen in product(*map(splits, wishes)):
        if all(sum(column) <= count for column, count in zip(zip(*chosen, strict=True), places, strict=True)):
            best = max(best, sum(wish.worth * sum(counts) for wish, counts in zip(wishes, chosen, strict=True)))
    return best


def test_a_wish_that_is_too_long_for_any_bed_stands_in_two_if_it_may_be_split() -> None:
    plan, wish = beds_of(10, 7), Wish("w", "c", least=15, most=16)
    assert fill(with_wishes(plan, wish)).placed == ()
    filling = fill(with_wishes(plan, evolve(wish, piece=5)))
    assert (sum(pieces(filling, "w")), len(filling.placed), filling.proven, filling.lacking) == (16, 2, True, ())


def test_the_last_piece_is_no_crumb_but_takes_from_the_first() -> None:
    """Of 12, 10 would fit into the first bed, and 2 are less than a piece: 7 and 5, or 8 and 4, are pieces."""
    filling = fill(with_wishes(beds_of(10, 7), Wish("w", "c", most=12, piece=4)))
    assert sum(pieces(filling, "w")) == 12
    assert min(pieces(filling, "w")) >= 4


def test_without_a_most_it_takes_every_bed_that_holds_a_piece() -> None:
    filling = fill(with_wishes(beds_of(10, 3, 6), Wish("w", "c", piece=4)))
    assert pieces(filling, "w") == [6, 10]


@pytest.mark.parametrize(("least", "found"), [(16, [6, 10]), (17, [])])
def test_pieces_that_are_too_few_together_are_left_out(least: int, found: list[int]) -> None:
    filling = fill(with_wishes(beds_of(10, 6), Wish("w", "c", least=least, most=30, piece=4)))
    assert pieces(filling, "w") == found
    assert [(one.plants, one.lacks) for one in filling.lacking] == [(sum(found), 30 - sum(found))]


@st.composite
def splits(draw: st.DrawFn) -> tuple[tuple[int, ...], tuple[Wish, ...]]:
    """One to three short beds, and up to three wishes, most of which may be split."""
    places = tuple(draw(st.lists(st.integers(2, 9), min_size=1, max_size=3)))
    wishes = []
    for number in range(draw(st.integers(1, 3 if len(places) < 3 else 2))):
        most = draw(st.integers(1, 14))
        piece = draw(st.sampled_from((None, *range(1, most + 1))))
        least, worth = draw(st.integers(0, most)), draw(st.sampled_from((1.0, 1.5, 2.0)))
        any_number = piece is not None and least < 4 and draw(st.booleans())
        wishes.append(Wish(f"w{number}", "c", least, None if any_number else most, worth=worth, piece=piece))
    return places, tuple(wishes)


@settings(max_examples=80)
@given(splits())
def test_no_piece_is_below_the_least_no_wish_above_its_most_and_no_split_above_the_bound(
    season: tuple[tuple[int, ...], tuple[Wish, ...]],
) -> None:
    places, wishes = season
    filling = fill(with_wishes(beds_of(*places), *wishes), turns=60)
    for wish in wishes:
        found = pieces(filling, wish.id)
        assert len(found) <= 1 or wish.piece is not None
        if found:
            assert min(found) >= (wish.piece or 1)
            assert wish.least <= sum(found) <= (wish.most or sum(places))
    assert filling.worth == sum(wish.worth * sum(pieces(filling, wish.id)) for wish in wishes)
    best = best_split(places, wishes)
    assert filling.worth <= best <= filling.bound
    assert not filling.proven or filling.worth == best


@settings(max_examples=20)
@given(splits())
def test_the_same_wishes_give_the_same_pieces(season: tuple[tuple[int, ...], tuple[Wish, ...]]) -> None:
    places, wishes = season
    plan = with_wishes(beds_of(*places, gap="10 cm"), *wishes)
    assert fill(plan, turns=40) == fill(plan, turns=40)


SCARCE = with_wishes(
    beds_of(7, 5), Wish("v", "c", least=3, most=9, piece=3, worth=2), Wish("w", "c", least=2, most=8, piece=2)
)
"""Ground for twelve plants, and seventeen that are wanted."""


def test_whoever_waits_hears_of_the_bound_of_split_wishes_being_looked_for() -> None:
    wanted = wanted_in(SCARCE, Weights())
    prepared, asked = Prepared(SCARCE, wanted), list[int]()

    def looked() -> bool:
        asked.append(1)
        return True

    bounds = SplitBound(tuple(enumerate(wanted)), prepared.posed, prepared.scale, looked)
    at_first = len(asked)
    bounds.tightened(range(len(wanted)))
    assert 0 < at_first < len(asked)


@settings(max_examples=8)
@given(st.integers(1, 30))
def test_a_filling_of_split_wishes_that_is_stopped_asks_no_more_and_has_a_bound_all_the_same(calls: int) -> None:
    asked: list[int] = []

    def turned() -> bool:
        asked.append(1)
        return len(asked) < calls

    found = filled(SCARCE, 40, Weights(), lambda _made: True, turned)
    assert len(asked) <= calls
    assert found.worth <= best_split((7, 5), SCARCE.wishes) <= found.bound
