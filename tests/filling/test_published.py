"""Published instances with known best values, posed as seasons: bins are beds of one day, squares are blocks."""

import pytest

from gardenplot.filling.bound import most_worth
from gardenplot.filling.gap import fill_gap
from gardenplot.filling.model import Answer, Strip, Task, Way, wrongs
from gardenplot.filling.season import solve
from gardenplot.filling.sizes import Sizes

Code = tuple[tuple[int, ...], ...]

SQUARED: dict[str, tuple[int, int, Code]] = {
    "33 x 32": (33, 32, ((18, 15), (7, 8), (14, 4), (10, 1), (9,))),
    "69 x 61": (69, 61, ((36, 33), (5, 28), (25, 9, 2), (7,), (16,))),
    "112 x 112": (
        112, 112,
        ((50, 35, 27), (8, 19), (15, 17, 11), (6, 24), (29, 25, 9, 2), (7, 18), (16,), (42,), (4, 37), (33,)),
    ),
}  # fmt: skip
"""Rectangles cut into squares, no two alike, by their Bouwkamp codes: Moroń 1925 (MathWorld, "Perfect Rectangle"),
the figure of squaring.net's page on codes, and Duijvestijn's square of lowest order (OEIS A014530)."""


def squares(width: int, code: Code) -> list[tuple[int, int]]:
    """Where each square begins across the width, and its side: a row of the code fills the highest gap."""
    skyline, found = [0] * width, []
    for row in code:
        for side in row:
            top = min(skyline)
            at = skyline.index(top)
            assert skyline[at : at + side] == [top] * side
            skyline[at : at + side] = [top + side] * side
            found.append((at, side))
    assert len(set(skyline)) == 1
    return found


def go_on(_better: Answer, _bound: int) -> bool:
    return True


@pytest.mark.parametrize("name", SQUARED)
def test_squares_of_a_squared_rectangle_fill_a_bed_without_a_gap(name: str) -> None:
    """The width is the season, so the days of each square are known and its place along the bed is not."""
    width, height, code = SQUARED[name]
    ways = ((Way(0, at, at + side, (side,), (side * side,)),) for at, side in squares(width, code))
    task = Task((Strip(height),), tuple(ways))
    answer, bound = solve(task, 3000, go_on)
    assert (wrongs(task, answer), answer.worth, bound) == ([], width * height, width * height)


def test_nine_squares_find_their_days_and_places() -> None:
    width, height, code = SQUARED["33 x 32"]
    wishes = (
        tuple(Way(0, day, day + side, (side,), (side * side,)) for day in range(width - side + 1))
        for _at, side in squares(width, code)
    )
    task = Task((Strip(height),), tuple(wishes))
    answer, bound = solve(task, 3000, go_on)
    assert (wrongs(task, answer), answer.worth, bound) == ([], 1056, 1056)


def bins(count: int, capacity: int, weights: list[int], values: list[int]) -> Task:
    """Beds of one day that any of some things may go into."""
    wishes = zip(weights, values, strict=True)
    return Task(
        (Strip(capacity),) * count,
        tuple(tuple(Way(bed, 0, 1, (weight,), (value,)) for bed in range(count)) for weight, value in wishes),
    )


BINS = [48, 30, 19, 36, 36, 27, 42, 42, 36, 24, 30]
"""The example of the OR-Tools guide on bin packing: bins of 100, and four are needed."""


@pytest.mark.parametrize(("count", "are_enough"), [(3, False), (4, True)])
def test_published_bins_are_as_many_as_are_needed(count: int, are_enough: bool) -> None:
    task = bins(count, 100, BINS, BINS)
    answer, bound = solve(task, 1000, go_on)
    assert wrongs(task, answer) == []
    assert (answer.worth == sum(BINS)) is are_enough
    assert (bound == sum(BINS)) is are_enough


def test_several_knapsacks_have_their_published_best() -> None:
    """The example of the OR-Tools guide on several knapsacks: five of 100, best 395."""
    weights = [48, 30, 42, 36, 36, 48, 42, 42, 36, 24, 30, 30, 42, 36, 36]
    values = [10, 30, 25, 50, 35, 30, 15, 40, 30, 35, 45, 10, 20, 30, 25]
    task = bins(5, 100, weights, values)
    answer, bound = solve(task, 3000, go_on)
    assert (wrongs(task, answer), answer.worth) == ([], 395)
    assert bound >= 395


ROLLS = {
    1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20, 2000: 10, 2050: 12, 2100: 14, 2140: 16,
    2150: 18, 2200: 20,
}  # fmt: skip
"""Wikipedia, "Cutting stock problem": cut from rolls of 5600 mm, of which 73 are needed and do."""


@pytest.mark.parametrize(("count", "are_enough"), [(72, False), (73, True)])
def test_the_bound_knows_how_many_rolls_are_needed(count: int, are_enough: bool) -> None:
    lengths = [length for length, times in ROLLS.items() for _time in range(times)]
    task = bins(count, 5600, lengths, lengths)
    assert (most_worth(task, 0) == sum(lengths)) is are_enough


def test_a_published_subset_sum_is_met() -> None:
    """Wikipedia, "Merkle-Hellman knapsack cryptosystem", the example: what comes to 1129."""
    key = (295, 592, 301, 14, 28, 353, 120, 236)
    found = fill_gap(1129, [Sizes((number,), (number,)) for number in key])
    assert found.worth == 1129
    assert tuple(int(size is not None) for size in found.sizes) == (0, 1, 1, 0, 0, 0, 0, 1)
