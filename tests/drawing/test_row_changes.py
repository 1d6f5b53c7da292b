"""Stakes where rows begin or end inside their block: readings worked out by hand, and laws of any outline."""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from gardenplot.drawing.bed import draw_bed
from gardenplot.drawing.letters import looks
from gardenplot.drawing.marks import Line
from gardenplot.drawing.stakes import Stake, numbers, stakes
from gardenplot.drawing.style import Ink
from gardenplot.layout import LaidOut
from gardenplot.layout.filled import line_ground
from gardenplot.layout.row_ends import NEAR
from gardenplot.plan import Plan
from gardenplot.plan.simple import fault_of
from gardenplot.units import MM, M
from gardenplot.units.figures import tape
from tests.drawing.hand_worked import only_bed, plan_from
from tests.layout.ground import Fields, nm
from tests.layout.outlines import Outline, stairs, stars

L_SHAPE: Fields = {
    "outline": [
        ["0 m", "0 m"],
        ["6 m", "0 m"],
        ["6 m", "0.8 m"],
        ["2 m", "0.8 m"],
        ["2 m", "1.6 m"],
        ["0 m", "1.6 m"],
    ]
}
NOTCH: Fields = {
    "outline": [["0 m", "0 m"], ["6 m", "0 m"], ["6 m", "1.6 m"], ["3 m", "1.6 m"],
                ["3 m", "0.8 m"], ["2 m", "0.8 m"], ["2 m", "1.6 m"], ["0 m", "1.6 m"]]
}  # fmt: skip
TAPER: Fields = {"outline": [["0 m", "0 m"], ["10 m", "0 m"], ["10 m", "0.4 m"], ["0 m", "1.2 m"]]}
BOX: Fields = {"box": {"length": "2.5 m", "width": "1.3 m", "board": "5 cm", "post": "9 cm"}}
POST: Fields = {"name": "post", "x": "2 m", "y": "20 cm", "diameter": "10 cm", "keep_clear": "15 cm"}


def plan_of(bed: Fields, *plantings: Fields, units: str = "metric") -> Plan:
    """A bed with blocks of leeks; without any, with one that fills it."""
    return plan_from(
        {"units": units},
        beds=[{"id": "b", "name": "Bed"} | bed],
        crops=[{"id": "c", "name": "Leek", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm"}],
        plantings=[{"id": f"p{at}", "bed": "b", "crop": "c"} | one for at, one in enumerate(plantings or ({},), 1)],
    )


def stakes_of(plan: Plan) -> tuple[Stake, ...]:
    laid = only_bed(plan)
    return stakes(plan, laid, laid.layouts, looks(plan))


def changes(plan: Plan) -> list[tuple[str, str]]:
    """The notes about rows, each with the reading of its stake."""
    return [
        (tape(stake.at, plan.place.units).number.replace("\u2009", " "), words)
        for stake in stakes_of(plan)
        for words in stake.here
        if " row" in words
    ]


def test_the_outer_rows_of_an_l_end_at_its_corner() -> None:
    # rows at 20, 60, 100 and 140 cm; beyond 2 m the bed is 80 cm wide
    assert changes(plan_of(L_SHAPE)) == [("2.00", "A rows 3–4 end")]
    found = stakes_of(plan_of(L_SHAPE))
    assert [(stake.number, stake.at) for stake in found] == [(0, 0), (1, nm("2 m")), (2, nm("6 m"))]
    assert [stake.plants for stake in found] == [80, None, None]


def test_a_notch_ends_rows_and_begins_them_again() -> None:
    assert changes(plan_of(NOTCH)) == [("2.00", "A rows 3–4 end"), ("3.00", "A rows 3–4 begin")]


def test_a_row_of_a_tapered_bed_ends_where_the_edge_distance_is_met() -> None:
    # the upper side falls 8 cm a metre, so 20 cm above the row at 60 cm it is met at 5 m; the row at 20 cm is whole
    assert changes(plan_of(TAPER)) == [("5.00", "A row 2 ends")]
    assert changes(plan_of(TAPER, units="feet and inches")) == [("16′ 4¾″", "A row 2 ends")]


def test_a_stretch_without_a_plant_begins_and_ends_nowhere() -> None:
    assert only_bed(plan_of(TAPER)).layouts[0].per_row[2] == 0
    assert not any("row 3" in words for _reading, words in changes(plan_of(TAPER)))


def test_the_two_sides_of_a_round_bed_share_their_stakes() -> None:
    # rows at 30, 70 ... 270 cm, 20 cm of ground beside each: half the chord 1.4, 1.0 and 0.6 m from the middle is
    # sqrt(1.5^2 - 1.4^2) = 0.539, 1.118 and 1.375 m; the middle row begins 1.3 cm from the head, which is at the head
    assert changes(plan_of({"diameter": "3 m"})) == [
        ("0.13", "A rows 3, 5 begin"),
        ("0.38", "A rows 2, 6 begin"),
        ("0.96", "A rows 1, 7 begin"),
        ("2.04", "A rows 1, 7 end"),
        ("2.62", "A rows 2, 6 end"),
        ("2.87", "A rows 3, 5 end"),
    ]


def test_rows_at_the_ends_of_a_block_and_beside_an_obstacle_are_no_change() -> None:
    assert changes(plan_of({"length": "4 m", "width": "80 cm", "obstacles": [POST]})) == []
    assert changes(plan_of(L_SHAPE, {"from": "0 m", "length": "2 m"})) == []
    assert changes(plan_of(L_SHAPE, {"from": "2 m", "length": "2 m"})) == []


def test_a_post_in_the_corner_of_a_box_begins_the_outer_rows_later() -> None:
    # rows at 10, 60 and 110 cm of a box of 2.4 x 1.2 m inside, 5 cm of ground beside each: the outer meet the posts
    assert changes(plan_of(BOX, {"edge": "5 cm", "rows": 3, "row_spacing": ["50 cm"]})) == [
        ("0.09", "A rows 1, 3 begin"),
        ("2.31", "A rows 1, 3 end"),
    ]


def test_cells_begin_where_the_first_whole_cell_does() -> None:
    # cells of 30 cm from the head on: the post of 9 cm takes the first and the eighth cell of the outer rows
    assert changes(plan_of(BOX, {"pattern": "cells", "cell": "30 cm", "edge": "0 cm"})) == [
        ("0.30", "A rows 1, 4 of cells begin"),
        ("2.10", "A rows 1, 4 of cells end"),
    ]


def test_rows_across_rings_and_a_sown_band_have_no_such_stake() -> None:
    for planting in ({"direction": "across"}, {"pattern": "broadcast"}):
        assert changes(plan_of(L_SHAPE, planting)) == []
    assert changes(plan_of({"diameter": "3 m"}, {"pattern": "rings"})) == []


def test_a_row_change_shares_its_stake_with_the_end_of_another_block() -> None:
    long = plan_of(L_SHAPE, {"from": "0 m", "length": "6 m", "in_ground": "2027-03-01", "out": "2027-09-01"},
                   {"from": "1 m", "length": "1.004 m", "in_ground": "2027-03-01", "out": "2027-09-01"})  # fmt: skip
    (shared,) = [stake for stake in stakes_of(long) if nm("1.9 m") < stake.at < nm("2.1 m")]
    assert shared.at == nm("2.004 m")
    assert shared.here == ("A rows 3–4 end", "B ends · last plant 1.90")


@pytest.mark.parametrize(
    ("rows", "words"),
    [([3], "3"), ([3, 4], "3–4"), ([1, 11], "1, 11"), ([1, 2, 10, 11], "1–2, 10–11"), ([1, 3, 4, 5], "1, 3–5")],
)
def test_numbers_are_said_in_short(rows: list[int], words: str) -> None:
    assert numbers(rows) == words


def test_a_short_mark_is_drawn_across_each_row_that_ends_inside_its_block() -> None:
    plan = plan_of(L_SHAPE)
    figure = draw_bed(only_bed(plan), None, looks(plan), plan.place.units)
    marks = [one for one in figure.marks if isinstance(one, Line) and one.pen.ink is Ink.INK and not one.overhang]
    assert [(mark.start[0], mark.end[0]) for mark in marks] == [(2000, 2000)] * 2
    assert [(mark.start[1] + mark.end[1]) / 2 for mark in marks] == pytest.approx([1000, 1400])
    assert all(100 < mark.end[1] - mark.start[1] < 400 for mark in marks)


@st.composite
def shaped(draw: st.DrawFn) -> Plan:
    """A bed of any outline with a block in it."""
    outline: Outline = draw(st.one_of(stars(), stairs()))
    scale = 6 * M // max(1, *(abs(part) for corner in outline for part in corner))
    left, top = min(x for x, _y in outline), min(y for _x, y in outline)
    corners = [((x - left) * scale // MM * MM, (y - top) * scale // MM * MM) for x, y in outline]
    assume(fault_of(corners) is None)
    written = [[f"{x // MM} mm", f"{y // MM} mm"] for x, y in corners]
    start, length = draw(st.integers(0, 300)), draw(st.integers(30, 900))
    block = {"from": f"{start} cm", "length": f"{length} cm", "edge": "0 cm"}
    return plan_of({"outline": written}, block)


def inner_ends(laid: LaidOut) -> list[tuple[int, bool, int]]:
    """Reading, whether it begins, and number of each row whose planted ground ends well inside its block."""
    layout, found = laid.layouts[0], []
    start, end = layout.start, min(layout.end, laid.bed.zone[1])
    for number, (line, row) in enumerate(zip(layout.grid.lines, layout.rows, strict=True), 1):
        for first, last in line_ground(laid.bed, layout.grid, line, start, end):
            if any(first <= run.first <= last for run in row.runs):
                found += [(first, True, number)] if first > start + NEAR else []
                found += [(last, False, number)] if last < end - NEAR else []
    return found


@settings(max_examples=60, deadline=None)
@given(shaped())
def test_every_row_that_begins_or_ends_inside_its_block_is_said_exactly_once(
    plan: Plan,
) -> None:
    laid = only_bed(plan)
    assume(laid.layouts)
    found = stakes_of(plan)
    assert [stake.number for stake in found] == list(range(len(found)))
    assert [stake.at for stake in found] == sorted({stake.at for stake in found})
    said = [
        (tape(stake.at, plan.place.units).number, note.says.endswith(("begins", "begin")), row)
        for stake in found
        for note in stake.notes
        if note.says.startswith("row")
        for row in rows_in(note.says)
    ]
    wanted = [(tape(at, plan.place.units).number, begins, row) for at, begins, row in inner_ends(laid)]
    assert len(said) == len(set(said))
    assert set(wanted) == set(said)


def rows_in(words: str) -> list[int]:
    """The rows that a note names: of "rows 1–2, 5 end" 1, 2 and 5."""
    named = words.removeprefix("rows ").removeprefix("row ").rsplit(" ", 1)[0]
    found: list[int] = []
    for part in named.split(", "):
        first, _dash, last = part.partition("–")
        found += range(int(first), int(last or first) + 1)
    return found
