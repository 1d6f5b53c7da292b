"""What came about is shared so that no part lacks a plant for a rounding that another one does not need."""

from fractions import Fraction
from math import floor

from gardenplot.plan import Actual
from gardenplot.plan.parted_record import evenly, shared

LOSSES = tuple(Fraction(percent, 100) for percent in (0, 3, 5, 8, 10, 15, 20, 25, 33, 40, 50))


def are_whole(parts: tuple[int, int], plants: tuple[int, int], loss: Fraction) -> bool:
    return all(floor(part * (1 - loss)) >= each for part, each in zip(parts, plants, strict=True))


def test_two_parts_are_whole_at_every_loss_at_which_two_parts_can_be() -> None:
    """All ways to share up to 24 seedlings between two parts of up to 10 plants, tried one by one."""
    for few in range(1, 11):
        for rest in range(1, 11):
            for stand in range(few + rest, 25):
                first, second = shared(Actual(stand=stand), few, few + rest)
                assert first is not None
                assert second is not None
                parts = first.stand or 0, second.stand or 0
                assert sum(parts) == stand
                for loss in LOSSES:
                    ways = ((one, stand - one) for one in range(stand + 1))
                    can_be = any(are_whole(way, (few, rest), loss) for way in ways)
                    assert are_whole(parts, (few, rest), loss) is can_be


def test_cells_that_nobody_counted_are_shared_as_seedlings_are() -> None:
    """11 of 9 plants by hand: 5 are 1.25 a plant of 4, 6 are 1.2 a plant of 5; 4 would be one a plant."""
    first, second = shared(Actual(cells=11), 4, 9)
    assert first is not None
    assert second is not None
    assert (first.cells, second.cells) == (5, 6)
    assert evenly(11, 4, 9) == 5
    assert evenly(7, 9, 9) == 7
