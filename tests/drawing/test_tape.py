"""The tape along the drawing: round readings, true words, never crowded, at any zoom."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.tape import round_step, ticks
from gardenplot.units import CM, FOOT, INCH, LONGEST, MM, M, Units, parse_length
from tests.layout.ground import nm

ROUND = {
    Units.METRIC: (CM, 5 * CM, 10 * CM, 50 * CM),
    Units.FEET_AND_INCHES: (INCH // 4, INCH, 3 * INCH, 6 * INCH),
    Units.DECIMAL_FEET: (FOOT // 100, FOOT // 10, FOOT // 2),
}
WHOLE = {Units.METRIC: M, Units.FEET_AND_INCHES: FOOT, Units.DECIMAL_FEET: FOOT}
each_units = pytest.mark.parametrize("units", Units)
zooms = st.floats(-4.1, 1).map(lambda power: 10**power)
"""Pixels per mm, from ten kilometres in a window to a few centimetres."""


@st.composite
def views(draw: st.DrawFn) -> tuple[int, int, float]:
    """The stretch of tape in a window up to 2000 pixels wide, and its zoom."""
    zoom = draw(zooms)
    start = draw(st.integers(-M, LONGEST))
    width = draw(st.integers(0, 2000))
    return start, start + round(width / zoom * MM), zoom


@each_units
@given(view=views())
def test_ticks_are_never_closer_than_7_px_and_words_never_closer_than_64(
    units: Units, view: tuple[int, int, float]
) -> None:
    found = ticks(view[0], view[1], units, view[2])
    pixels = [tick.at / MM * view[2] for tick in found]
    worded = [tick.at / MM * view[2] for tick in found if tick.words]
    for crowd, least in ((pixels, 7), (worded, 64)):
        assert all(after - before >= least * 0.999 for before, after in pairwise(crowd))


@each_units
@given(view=views())
def test_ticks_stand_on_round_readings_in_the_view_and_on_the_tape(
    units: Units, view: tuple[int, int, float]
) -> None:
    readings = [tick.at for tick in ticks(view[0], view[1], units, view[2])]
    assert all(max(0, view[0]) <= at <= view[1] for at in readings)
    steps = {after - before for before, after in pairwise(readings)}
    assert len(steps) <= 1
    for step in steps:
        assert step in ROUND[units] or step % WHOLE[units] == 0
        assert all(at % step == 0 for at in readings)


@each_units
@given(view=views())
def test_the_words_of_a_tick_are_exactly_its_reading(units: Units, view: tuple[int, int, float]) -> None:
    for tick in ticks(view[0], view[1], units, view[2]):
        if tick.words:
            assert nm("0 m" if tick.words == "0" else tick.words) == tick.at


@each_units
@given(zoom=zooms)
def test_a_window_of_1000_px_always_shows_words(units: Units, zoom: float) -> None:
    end = round(1000 / zoom * MM)
    assert sum(bool(tick.words) for tick in ticks(0, end, units, zoom)) >= 3


@each_units
@given(zoom=zooms, farther=st.floats(1, 10))
def test_zooming_out_never_makes_a_finer_tape(units: Units, zoom: float, farther: float) -> None:
    near, far = (round_step(units, 64 / scale * MM) for scale in (zoom, zoom / farther))
    assert far >= near


@pytest.mark.parametrize(
    ("units", "zoom", "end", "words"),
    [
        (Units.METRIC, 0.1, "2 m", ["0", "1 m", "2 m"]),
        (Units.METRIC, 0.2, "1 m", ["0", "0.5 m", "1.0 m"]),
        (Units.METRIC, 1, "0.3 m", ["0", "0.1 m", "0.2 m", "0.3 m"]),
        (Units.METRIC, 2, "10 cm", ["0", "0.05 m", "0.10 m"]),
        (Units.FEET_AND_INCHES, 0.25, "2 ft", ["0", "1′", "2′"]),
        (Units.FEET_AND_INCHES, 0.5, "1 ft", ["0", "0′ 6″", "1′"]),
        (Units.FEET_AND_INCHES, 12, "1/2 in", ["0", "0′ 0.25″", "0′ 0.5″"]),
        (Units.DECIMAL_FEET, 0.25, "2 ft", ["0", "1 ft", "2 ft"]),
        (Units.DECIMAL_FEET, 0.5, "1 ft", ["0", "0.5 ft", "1.0 ft"]),
        (Units.DECIMAL_FEET, 22, "0.02 ft", ["0", "0.01 ft", "0.02 ft"]),
    ],
)
def test_a_tape_reads_as_its_owner_speaks(units: Units, zoom: float, end: str, words: list[str]) -> None:
    found = [tick.words for tick in ticks(0, parse_length(end).nm, units, zoom) if tick.words]
    assert [text.replace("\u2009", " ") for text in found] == words


def test_short_ticks_stand_between_the_words() -> None:
    readings = [(tick.at, bool(tick.words)) for tick in ticks(0, M, Units.METRIC, 0.2)]
    assert readings == [(at * 5 * CM, at % 10 == 0) for at in range(21)]
