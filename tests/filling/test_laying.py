"""Lengths in use on all days in one number, and a bed's blocks laid out anew, against plain counting."""

from random import Random

from hypothesis import given
from hypothesis import strategies as st

from gardenplot.filling.ground import Ground, block_of
from gardenplot.filling.laying import laid_anew
from gardenplot.filling.loads import Loads, taken_on
from gardenplot.filling.model import Answer, Block, Task, worth_of, wrongs
from tests.filling.tasks import tasks


def in_use(task: Task, strip: int, blocks: list[Block], day: int) -> int:
    """Length in use of a strip on a day, by adding it up."""
    mine = (one for one in blocks if task.wishes[one.wish][one.way].strip == strip)
    return taken_on(task.strips[strip], day) + sum(one.end - one.start for one in mine if one.first <= day < one.last)


@given(tasks())
def test_a_strip_is_overfull_when_more_is_in_use_on_some_day_than_it_is_long(task: Task) -> None:
    days = Loads(task)
    loads, blocks = list(days.empty), list[Block]()
    for wish, ways in enumerate(task.wishes):
        for number, way in enumerate(ways):
            fits = [size for size, length in enumerate(way.lengths) if length <= task.strips[way.strip].length]
            if not fits:
                continue
            block = block_of(way, wish, number, fits[-1], 0)
            more = days.more[way.first, way.last, way.lengths[fits[-1]]]
            is_over = any(
                in_use(task, way.strip, [*blocks, block], day) > task.strips[way.strip].length for day in range(4)
            )
            assert bool((loads[way.strip] + more) & days.overfull) is is_over
            if not is_over:
                loads[way.strip] += more
                blocks.append(block)


@given(tasks(wishes=6), st.integers(1, 12), st.integers(0, 99))
def test_blocks_laid_out_anew_do_not_overlap_and_those_without_a_place_are_told(
    task: Task, passes: int, seed: int
) -> None:
    blocks = [block_of(ways[0], wish, 0, 0, 0) for wish, ways in enumerate(task.wishes) if ways]
    mine = [one for one in blocks if task.wishes[one.wish][0].strip == 0]
    found = laid_anew(task, 0, mine, passes, Random(seed).random)
    stand = tuple(one for one in found.standing if isinstance(one, Block))
    assert wrongs(task, Answer(stand, worth_of(task, stand))) == []
    assert sorted(one.wish for one in (*stand, *found.out)) == [one.wish for one in mine]
    assert found.lost == worth_of(task, tuple(found.out))


@given(tasks(), st.integers(0, 99))
def test_a_turn_that_is_taken_back_leaves_the_ground_as_it_was(task: Task, seed: int) -> None:
    ground, chance = Ground(task), Random(seed).random
    before = ground.answer(), sorted(ground.left), list(ground.loads), [list(one) for one in ground.strips]
    ground.begin_turn()
    for wish, ways in enumerate(task.wishes):
        for number, way in enumerate(ways[:1]):
            gap = ground.best_gap(way, 0) if wish in ground.left else None
            if gap is not None:
                ground.set(wish, number, gap.size, gap.start)
                ground.place_again(way.strip, [], 2, chance)
    ground.take_back()
    assert (ground.answer(), sorted(ground.left), ground.loads, ground.strips) == before
