"""What a price for ground rules out is in no best filling: a plain knapsack, length by length, is the referee."""

from hypothesis import given
from hypothesis import strategies as st

from gardenplot.filling.likely import Ends, priced

Wishes = list[Ends]


@st.composite
def many(draw: st.DrawFn) -> Wishes:
    """Up to ten wishes with the first and the last of a run of sizes; some fit nowhere."""
    size = st.tuples(st.integers(0, 12), st.integers(0, 40))
    ends = st.lists(size, max_size=2).map(tuple)
    return draw(st.lists(ends, min_size=1, max_size=10))


def best(units: int, wishes: Wishes, held: int | None = None) -> int | None:
    """The most worth of wishes that fit together, one of which must be held; None where it fits nowhere."""
    most: list[int | None] = [0] * (units + 1)
    for number, ends in enumerate(wishes):
        with_it = [
            max(
                (
                    before + worth
                    for length, worth in ends
                    if length <= at and (before := most[at - length]) is not None
                ),
                default=None,
            )
            for at in range(units + 1)
        ]
        if number == held:
            most = with_it
        else:
            both = zip(most, with_it, strict=True)
            most = [max((each for each in pair if each is not None), default=None) for pair in both]
    return most[units]


@given(st.integers(1, 30), many())
def test_no_filling_is_worth_more_than_the_bound_and_no_wish_of_a_best_one_is_ruled_out(
    units: int, wishes: Wishes
) -> None:
    wishes = [tuple(end for end in ends if end[0] <= units) for ends in wishes]
    found, by_price = best(units, wishes), priced(units, wishes)
    assert found is not None
    assert found <= by_price.most
    for number in range(len(wishes)):
        with_it = best(units, wishes, number)
        assert with_it is None or with_it < found or by_price.could_be_in(number, found)


@given(st.integers(1, 30), many(), st.integers(1, 10))
def test_the_first_that_are_tried_are_those_that_are_worth_most_beyond_their_ground(
    units: int, wishes: Wishes, count: int
) -> None:
    by_price = priced(units, wishes)
    first = by_price.first(count)
    beyond = [each for each in by_price.beyond if each is not None]
    assert first == sorted(first)
    assert sorted(by_price.beyond[number] or 0 for number in first) == sorted(beyond)[max(0, len(beyond) - count) :]
