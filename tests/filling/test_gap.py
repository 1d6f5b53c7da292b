"""One gap on one day: published knapsacks, the referee of all combinations, and lengths that share no unit."""

from itertools import permutations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.filling.gap import Filler, GapFilling, Room, fill_gap, packed
from gardenplot.filling.sizes import Sizes

Knapsack = tuple[int, tuple[int, ...], tuple[int, ...], int]

BURKARDT: dict[str, Knapsack] = {
    "P01": (165, (23, 31, 29, 44, 53, 38, 63, 85, 89, 82), (92, 57, 49, 68, 60, 43, 67, 84, 87, 72), 309),
    "P03": (190, (56, 59, 80, 64, 75, 17), (50, 50, 64, 46, 50, 5), 150),
    "P06": (170, (41, 50, 49, 59, 55, 57, 60), (442, 525, 511, 593, 546, 564, 617), 1735),
}
"""J. Burkardt, KNAPSACK_01 (Florida State University): capacity, weights, profits, best profit as published."""


@pytest.mark.parametrize("name", BURKARDT)
def test_published_knapsacks_have_their_published_best(name: str) -> None:
    capacity, weights, profits, best = BURKARDT[name]
    found = fill_gap(capacity, [Sizes((weight,), (profit,)) for weight, profit in zip(weights, profits, strict=True)])
    assert (found.worth, found.proven) == (best, True)


OR_TOOLS_WEIGHTS = (
    7, 0, 30, 22, 80, 94, 11, 81, 70, 64, 59, 18, 0, 36, 3, 8, 15, 42, 9, 0, 42, 47, 52, 32, 26, 48, 55, 6, 29, 84,
    2, 4, 18, 56, 7, 29, 93, 44, 71, 3, 86, 66, 31, 65, 0, 79, 20, 65, 52, 13,
)  # fmt: skip
OR_TOOLS_PROFITS = (
    360, 83, 59, 130, 431, 67, 230, 52, 93, 125, 670, 892, 600, 38, 48, 147, 78, 256, 63, 17, 120, 164, 432, 35, 92,
    110, 22, 42, 50, 323, 514, 28, 87, 73, 78, 15, 26, 78, 210, 36, 85, 189, 274, 43, 33, 10, 19, 389, 276, 312,
)  # fmt: skip


def test_the_knapsack_of_fifty_has_its_published_best() -> None:
    """The example of the OR-Tools guide on knapsacks: capacity 850, best 7534; some weights are 0."""
    pairs = zip(OR_TOOLS_WEIGHTS, OR_TOOLS_PROFITS, strict=True)
    assert fill_gap(850, [Sizes((weight,), (profit,)) for weight, profit in pairs]).worth == 7534


@pytest.mark.parametrize(
    ("length", "blocks", "repeated", "best"),
    [
        (317, (144, 96, 120, 60, 90), False, 306),
        (1137, (360, 288, 240, 180, 150, 132, 105, 96), False, 1134),
        (100, (60, 50, 50), False, 100),
        (317, (144, 96, 120, 60, 90), True, 312),
        (233, (72, 54, 33), True, 231),
    ],
)
def test_blocks_use_as_much_of_a_leftover_length_as_they_can(
    length: int, blocks: tuple[int, ...], repeated: bool, best: int
) -> None:
    """Plain subset sums, worked by trying all; the longest first would leave 40 of 100 with 60, 50 and 50."""
    wishes = []
    for block in blocks:
        lengths = tuple(range(block, length + 1, block)) if repeated else (block,)
        wishes.append(Sizes(lengths, lengths))
    assert fill_gap(length, wishes).worth == best


@st.composite
def wishes(draw: st.DrawFn, unit: int = 1) -> list[Sizes]:
    """Up to four wishes of up to five sizes, some in even steps."""
    found = []
    for _number in range(draw(st.integers(0, 4))):
        if draw(st.booleans()):
            lengths = sorted(draw(st.sets(st.integers(1, 20), min_size=1, max_size=5)))
            worths = sorted(draw(st.lists(st.integers(0, 20), min_size=len(lengths), max_size=len(lengths))))
        else:
            first, step, count = draw(st.integers(1, 9)), draw(st.integers(1, 4)), draw(st.integers(1, 6))
            least, more = draw(st.integers(0, 9)), draw(st.integers(0, 4))
            lengths = [first + step * number for number in range(count)]
            worths = [least + more * number for number in range(count)]
        found.append(Sizes(tuple(length * unit for length in lengths), tuple(worths)))
    return found


def referee(length: int, wished: list[Sizes]) -> tuple[int, int]:
    """The most worth, and of that the most length, of all combinations."""
    best = 0, 0
    for choice in product(*([None, *range(len(one.lengths))] for one in wished)):
        used = sum(one.lengths[size] for one, size in zip(wished, choice, strict=True) if size is not None)
        if used <= length:
            worth = sum(one.worths[size] for one, size in zip(wished, choice, strict=True) if size is not None)
            best = max(best, (worth, used))
    return best


def reached(wished: list[Sizes], found: GapFilling) -> tuple[int, int]:
    """The worth and the length of what was found."""
    used = sum(one.lengths[size] for one, size in zip(wished, found.sizes, strict=True) if size is not None)
    return found.worth, used


@given(st.integers(0, 60), wishes())
def test_it_is_the_best_of_all_combinations_and_uses_most_ground(length: int, wished: list[Sizes]) -> None:
    found = fill_gap(length, wished)
    assert found.proven
    assert reached(wished, found) == referee(length, wished)


@given(st.integers(0, 60), wishes(unit=1_000_003), st.integers(0, 1_000_002))
def test_lengths_finer_than_it_counts_in_never_overfill_the_gap(length: int, wished: list[Sizes], odd: int) -> None:
    """Lengths whose only common unit is a nanometre: never too long, and the best where it says so."""
    gap = length * 1_000_003 + odd
    shifted = [Sizes(tuple(each + 1 for each in one.lengths), one.worths) for one in wished]
    found = fill_gap(gap, shifted)
    worth, used = reached(shifted, found)
    best = referee(gap, shifted)[0]
    assert used <= gap
    assert worth <= best
    assert not found.proven or worth == best


@st.composite
def rooms_in(draw: st.DrawFn, length: int, count: int) -> list[Room]:
    """Rooms that grow at both ends from wish to wish."""
    lows = sorted(draw(st.lists(st.integers(0, length), min_size=count, max_size=count)))
    highs = sorted(draw(st.lists(st.integers(0, length), min_size=count, max_size=count)))
    return list(zip(lows, highs, strict=True))


def best_in_rooms(wished: list[Sizes], rooms: list[Room]) -> int:
    """The most worth in any order and at any places: the referee of rooms."""
    best = 0
    for choice in product(*([None, *range(len(one.lengths))] for one in wished)):
        stand = [number for number, size in enumerate(choice) if size is not None]
        worth = sum(wished[number].worths[choice[number] or 0] for number in stand)
        if worth > best and any(
            packed([wished[n] for n in order], [rooms[n] for n in order], [choice[n] for n in order]) is not None
            for order in permutations(stand)
        ):
            best = worth
    return best


@settings(max_examples=150)
@given(st.data(), st.integers(1, 40), st.sampled_from((1, 1_000_003)))
def test_in_rooms_it_is_the_best_of_all_orders_and_no_block_leaves_its_room(
    data: st.DataObject, length: int, unit: int
) -> None:
    wished = data.draw(wishes(unit))[:3]
    rooms = [(low * unit, high * unit) for low, high in data.draw(rooms_in(length, len(wished)))]
    found = fill_gap(length * unit, wished, rooms)
    assert found.proven
    assert packed(wished, rooms, found.sizes) is not None
    assert found.worth == best_in_rooms(wished, rooms)


@settings(max_examples=150)
@given(st.data(), st.integers(1, 40))
def test_whatever_the_order_and_the_rooms_none_is_worth_more_than_the_bound_and_what_reaches_it_stands(
    data: st.DataObject, length: int
) -> None:
    wished = data.draw(wishes())[:3]
    ends = st.tuples(st.integers(0, length), st.integers(0, length))
    rooms = data.draw(st.lists(st.sampled_from(data.draw(st.lists(ends, min_size=2, max_size=2))), min_size=3))
    rooms = rooms[: len(wished)]
    filler, best = Filler(length, wished, rooms), best_in_rooms(wished, rooms)
    for order in permutations(range(len(wished))):
        mine, theirs = [wished[number] for number in order], [rooms[number] for number in order]
        found = filler.filled(order)
        assert packed(mine, theirs, found.sizes) is not None
        assert found.worth == fill_gap(length, mine, theirs).worth <= best
    most, reached_it, turns = filler.anywhere()
    assert best <= most
    if reached_it is not None:
        assert packed([wished[n] for n in turns], [rooms[n] for n in turns], reached_it.sizes) is not None
        assert reached_it.worth == most == best
