"""Small tasks for hypothesis, and a referee that tries every place of every wish, tape reading by tape reading."""

from collections.abc import Iterator

from hypothesis import strategies as st

from gardenplot.filling.model import ALWAYS, Block, Strip, Taken, Task, Way, overlap


@st.composite
def tasks(draw: st.DrawFn, longest: int = 7, days: int = 4, wishes: int = 4) -> Task:
    """Up to two strips a few units long, with something taken now and then, and a few wishes of a few sizes."""
    strips = tuple(draw(st.lists(_strips(longest, days), min_size=1, max_size=2)))
    ways = st.lists(_ways(len(strips), longest, days), min_size=0, max_size=3).map(tuple)
    return Task(strips, tuple(draw(st.lists(ways, max_size=wishes))))


@st.composite
def _strips(draw: st.DrawFn, longest: int, days: int) -> Strip:
    length = draw(st.integers(1, longest))
    taken = []
    for _number in range(draw(st.integers(0, 1))):
        start = draw(st.integers(0, length - 1))
        first = draw(st.integers(0, days - 1))
        since = draw(st.sampled_from((ALWAYS[0], first)))
        end, last = draw(st.integers(start + 1, length)), draw(st.integers(first + 1, days))
        taken.append(Taken(start, end, first, last, since))
    return Strip(length, tuple(taken))


@st.composite
def _ways(draw: st.DrawFn, strips: int, longest: int, days: int) -> Way:
    first = draw(st.integers(0, days - 1))
    lengths = sorted(draw(st.sets(st.integers(1, longest), min_size=1, max_size=3)))
    worths = sorted(draw(st.lists(st.integers(0, 9), min_size=len(lengths), max_size=len(lengths))))
    return Way(
        draw(st.integers(0, strips - 1)), first, draw(st.integers(first + 1, days)), tuple(lengths), tuple(worths),
        low=draw(st.sampled_from((0, 0, 1, 2))), high=draw(st.sampled_from((2**62, 2**62, 5, 3))),
    )  # fmt: skip


def best_worth(task: Task) -> int:
    """The most that any filling is worth: the referee, with no idea but to try everything."""

    def most(wish: int, stand: tuple[tuple[int, Block], ...]) -> int:
        if wish == len(task.wishes):
            return 0
        best = most(wish + 1, stand)
        for strip, block in _everywhere(task, wish):
            others: list[Taken | Block] = [
                *task.strips[strip].taken,
                *(other for number, other in stand if number == strip),
            ]
            if not any(overlap(block, other) for other in others):
                worth = task.wishes[wish][block.way].worths[block.size]
                best = max(best, worth + most(wish + 1, (*stand, (strip, block))))
        return best

    return most(0, ())


def _everywhere(task: Task, wish: int) -> Iterator[tuple[int, Block]]:
    for number, way in enumerate(task.wishes[wish]):
        for size, length in enumerate(way.lengths):
            for start in range(way.low, min(task.strips[way.strip].length, way.high) - length + 1):
                yield way.strip, Block(start, start + length, way.first, way.last, ALWAYS[0], wish, number, size)
