"""What is left of a bed on a day, in which pieces, and what is a gap rather than leftover."""

from datetime import date
from itertools import groupby

from hypothesis import given
from hypothesis import strategies as st

from gardenplot.layout import Free, Stretch, free_on, fullest_day, standing
from gardenplot.units import CM
from tests.layout.ground import Fields, laid_out, nm, several

BED: Fields = {"length": "10 m", "width": "75 cm", "head_margin": "50 cm", "foot_margin": "50 cm"}
LEEKS: Fields = {"in_row": "20 cm", "row_spacing": "25 cm"}
SPRING: Fields = {"in_ground": "2027-03-01", "out": "2027-06-01"}
SUMMER: Fields = {"in_ground": "2027-06-01", "out": "2027-09-01"}


def stretch(start: str, end: str) -> Stretch:
    return Stretch(nm(start), nm(end))


def block(start: str, length: str, **fields: str) -> Fields:
    return {"from": start, "length": length} | fields


def test_a_bed_with_nothing_in_it_is_left_over_between_its_margins() -> None:
    assert free_on(laid_out(BED, LEEKS), None) == Free((stretch("0.5 m", "9.5 m"),), ())


def test_a_full_bed_leaves_nothing() -> None:
    assert free_on(laid_out(BED, LEEKS, {}), None) == Free((), ())


def test_what_lies_before_between_and_behind_blocks_is_left_in_three_pieces() -> None:
    free = free_on(laid_out(BED, LEEKS, block("1 m", "2 m"), block("4 m", "3 m")), None)
    assert free.leftover == (stretch("0.5 m", "1 m"), stretch("3 m", "4 m"), stretch("7 m", "9.5 m"))
    assert free.total == nm("4 m")


def test_the_gap_that_a_bed_asks_for_is_no_leftover_but_a_wider_one_is() -> None:
    asks = BED | {"gap": "30 cm"}
    at_the_gap = free_on(laid_out(asks, LEEKS, block("0.5 m", "4 m"), block("4.8 m", "4.7 m")), None)
    assert at_the_gap == Free((), (stretch("4.5 m", "4.8 m"),))
    wider = free_on(laid_out(asks, LEEKS, block("0.5 m", "4 m"), block("4.81 m", "4.69 m")), None)
    assert wider == Free((stretch("4.5 m", "4.81 m"),), ())


def test_without_a_gap_asked_for_ground_too_short_for_one_more_plant_is_a_gap() -> None:
    short = free_on(laid_out(BED, LEEKS, block("0.5 m", "4 m"), block("4.69 m", "4.81 m")), None)
    assert short == Free((), (stretch("4.5 m", "4.69 m"),))
    enough = free_on(laid_out(BED, LEEKS, block("0.5 m", "4 m"), block("4.7 m", "4.8 m")), None)
    assert enough == Free((stretch("4.5 m", "4.7 m"),), ())


def test_the_wider_spaced_of_both_neighbours_decides_what_is_too_short() -> None:
    wide = {"in_row": "40 cm"}
    for one, other in (({}, wide), (wide, {})):
        free = free_on(laid_out(BED, LEEKS, block("0.5 m", "4 m") | one, block("4.8 m", "4.7 m") | other), None)
        assert free == Free((), (stretch("4.5 m", "4.8 m"),))


def test_short_ground_at_the_margins_is_leftover_since_it_lies_between_no_blocks() -> None:
    free = free_on(laid_out(BED, LEEKS, block("0.6 m", "8.8 m")), None)
    assert free == Free((stretch("0.5 m", "0.6 m"), stretch("9.4 m", "9.5 m")), ())


def test_overlapping_blocks_are_counted_once() -> None:
    free = free_on(laid_out(BED, LEEKS, block("0.5 m", "5 m"), block("2 m", "1 m"), block("5 m", "2 m")), None)
    assert free == Free((stretch("7 m", "9.5 m"),), ())


def test_a_block_that_no_row_fits_into_leaves_the_bed_in_one_piece() -> None:
    free = free_on(laid_out(BED, LEEKS, {"from": "5 m", "plants": 40, "edge": "40 cm"}), None)
    assert free == Free((stretch("0.5 m", "9.5 m"),), ())


def test_ground_is_free_again_on_the_day_that_a_planting_is_out() -> None:
    laid = laid_out(BED, LEEKS, block("0.5 m", "4 m", **SPRING), block("0.5 m", "9 m", **SUMMER))
    days = [date(2027, 2, 28), date(2027, 3, 1), date(2027, 5, 31), date(2027, 6, 1), date(2027, 9, 1)]
    assert [free_on(laid, day).total for day in days] == [nm("9 m"), nm("5 m"), nm("5 m"), 0, nm("9 m")]
    assert [len(standing(laid, day)) for day in days] == [0, 1, 1, 1, 0]


def test_the_fullest_day_is_the_first_on_which_least_is_left() -> None:
    laid = laid_out(BED, LEEKS, block("0.5 m", "4 m", **SPRING), block("0.5 m", "9 m", **SUMMER))
    assert fullest_day(laid) == date(2027, 6, 1)
    assert fullest_day(laid_out(BED, LEEKS, block("0.5 m", "4 m"))) is None


def test_ground_that_was_never_taken_has_no_fullest_day_before_the_calendar_begins() -> None:
    laid = laid_out(BED, LEEKS, {"out": "0001-01-01"})
    assert fullest_day(laid) in (None, date.min)


def pieces_by_hand(blocks: list[tuple[int, int]], gap: int | None) -> Free:
    """The same, walked centimetre by centimetre: runs that no block covers; between two blocks they may be gaps."""
    covered = {at for start, end in blocks for at in range(start, end)}
    leftover: list[Stretch] = []
    gaps: list[Stretch] = []
    for is_free, run in groupby(range(50, 950), key=lambda at: at not in covered):
        cells = list(run)
        if is_free:
            between_blocks = cells[0] > 50 and cells[-1] < 949
            narrow = len(cells) < 20 if gap is None else len(cells) <= gap
            (gaps if between_blocks and narrow else leftover).append(Stretch(cells[0] * CM, (cells[-1] + 1) * CM))
    return Free(tuple(leftover), tuple(gaps))


ends = st.tuples(st.integers(0, 949), st.integers(1, 400)).map(lambda one: (one[0], one[0] + one[1]))


@several
@given(st.lists(ends, max_size=5), st.none() | st.integers(0, 60))
def test_free_ground_is_just_what_no_block_covers(blocks: list[tuple[int, int]], gap: int | None) -> None:
    bed = BED if gap is None else BED | {"gap": f"{gap} cm"}
    laid = laid_out(bed, LEEKS, *(block(f"{start} cm", f"{end - start} cm") for start, end in blocks))
    assert free_on(laid, None) == pieces_by_hand(blocks, gap)


Days = tuple[date | None, date | None]

june = st.none() | st.integers(2, 20).map(lambda day: date(2027, 6, day))


def in_order(days: Days) -> bool:
    first, last = days
    return first is None or last is None or first < last


@several
@given(st.lists(st.tuples(ends, st.tuples(june, june).filter(in_order)), max_size=5))
def test_no_day_leaves_less_than_the_fullest(
    planted: list[tuple[tuple[int, int], Days]],
) -> None:
    plantings = [
        block(f"{start} cm", f"{end - start} cm") | {"in_ground": _iso(first), "out": _iso(last)}
        for (start, end), (first, last) in planted
    ]
    laid = laid_out(BED, LEEKS, *plantings)
    whole_month = [date(2027, 6, day) for day in range(1, 31)]
    assert free_on(laid, fullest_day(laid)).total == min(free_on(laid, day).total for day in whole_month)


def _iso(day: date | None) -> str | None:
    return day.isoformat() if day else None
