"""Where strips are cut into pieces: all of it, no piece too long, no mark cut through."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.joins import cuts
from gardenplot.units import MM
from tests.layout.ground import several

CLEAR = 6 * MM


@st.composite
def marked(draw: st.DrawFn) -> tuple[int, int, tuple[int, ...], int]:
    """A strip from one place to another with marks, and how long a piece may be."""
    begin = draw(st.integers(-20 * MM, 0))
    end = draw(st.integers(10 * MM, 6000 * MM))
    marks = draw(st.lists(st.integers(begin, end), max_size=40))
    step = draw(st.none() | st.integers(5 * MM, 900 * MM))
    if step is not None:
        marks = list(range(begin + step // 2, end, step))
    return begin, end, tuple(marks), draw(st.integers(200 * MM, 280 * MM))


@several
@given(marked())
def test_pieces_are_the_whole_strip_and_none_is_too_long(strip: tuple[int, int, tuple[int, ...], int]) -> None:
    begin, end, marks, most = strip
    found = cuts(begin, end, marks, most)
    assert (found[0], found[-1]) == (begin, end)
    assert all(0 < after - one <= most for one, after in pairwise(found))


@several
@given(marked())
def test_a_join_keeps_off_marks_as_far_as_they_leave_room(strip: tuple[int, int, tuple[int, ...], int]) -> None:
    begin, end, marks, most = strip
    ends = sorted({begin, *marks, end})
    for cut in cuts(begin, end, marks, most)[1:-1]:
        before, behind = max(at for at in ends if at <= cut), min(at for at in ends if at > cut)
        room = min(CLEAR, (behind - before) // 2)
        assert cut - before >= room
        assert behind - cut >= room


def test_pieces_are_about_even() -> None:
    assert cuts(0, 1200 * MM, (), 270 * MM) == tuple(240 * MM * number for number in range(6))
    assert cuts(0, 270 * MM, (), 270 * MM) == (0, 270 * MM)
