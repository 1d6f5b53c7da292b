"""What is drawn on paper measures true: read back from the PDF, within 0.05 mm."""

from math import dist

import numpy as np
import pytest
from hypothesis import assume, given, settings

from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.layout.positions import positions
from gardenplot.plan.edits import change_place
from gardenplot.sheets.paper import Paper, scale_for
from gardenplot.units import MM, M, Units
from tests.drawing.hand_worked import hand_worked, only_bed
from tests.layout.ground import nm
from tests.sheets.patterned import BOX, BY_NAME, L_SHAPE, bed_of
from tests.sheets.pdf_pages import POINT_PER_MM, Box, Page, Point
from tests.sheets.printed import Sheet, bed_with, printed, sheets

NEAR = 0.05 * POINT_PER_MM
SIZES = {Paper.A4: (297, 210), Paper.LETTER: (11 * 25.4, 8.5 * 25.4)}
"""Landscape, in mm: ISO 216 for A4; ANSI/ASME Y14.1 for Letter."""
METRIC_SCALES = {1, 2, 5, 10, 20, 25, 50, 75, 100, 125, 200, 250, 500, 1000, 2000, 5000}
"""ISO 5455 (1, 2 and 5 times powers of ten), and 1:25, 1:75, 1:125, 1:250 of common scale rules."""
each_paper = pytest.mark.parametrize("paper", Paper)
each_units = pytest.mark.parametrize("units", Units)


def marks_in(page: Page, box: Box) -> list[Point]:
    """The plant marks inside a box or on its edge."""
    left, bottom, right, top = box
    return [(x, y) for x, y in page.marks if left - NEAR <= x <= right + NEAR and bottom - NEAR <= y <= top + NEAR]


def true_places(page: Page, laid: LaidOut) -> list[Point]:
    """Where the plants of a bed belong on its page, from the corner of the bed and the scale the page states."""
    left, _bottom, _right, top = outline_of(page, laid)
    along = POINT_PER_MM / page.ratio
    return [
        (left + x / MM * along, top - y / MM * along)
        for layout in laid.layouts
        for x, y in positions(layout).tolist()
    ]


def outline_of(page: Page, laid: LaidOut) -> Box:
    """Where the bed lies on its page."""
    return page.outline(laid.bed.length.nm / MM, laid.bed.width.nm / MM)


def assert_true_places(page: Page, laid: LaidOut) -> None:
    """Fail unless there is one mark for each plant, near to where it belongs, and no other in the bed."""
    places, marks = true_places(page, laid), marks_in(page, outline_of(page, laid))
    assert len(marks) == len(places) == sum(layout.plants for layout in laid.layouts)
    if places:
        assert farthest(places, marks) <= NEAR
        assert farthest(marks, places) <= NEAR


def farthest(places: list[Point], others: list[Point]) -> float:
    """How far the loneliest of some places lies from the nearest of the others."""
    between = np.array(places)[:, None, :] - np.array(others)[None, :, :]
    return float(np.hypot(between[..., 0], between[..., 1]).min(axis=1).max())


@settings(max_examples=25)
@given(sheets())
def test_every_plant_lies_at_its_true_place_on_paper(sheet: Sheet) -> None:
    assert_true_places(sheet.page, sheet.laid)


@each_paper
@each_units
@pytest.mark.parametrize("scenario", ["s1", "s2", "s4"])
def test_the_plants_of_the_hand_worked_beds_lie_at_their_true_places(
    scenario: str, units: Units, paper: Paper
) -> None:
    plan = change_place(hand_worked(scenario), units=units)
    for page, laid in zip(printed(plan, paper), lay_out_plan(plan), strict=True):
        assert_true_places(page, laid)


@each_paper
@each_units
@pytest.mark.parametrize("name", BY_NAME)
def test_the_plants_of_every_pattern_in_every_outline_lie_at_their_true_places(
    name: str, units: Units, paper: Paper
) -> None:
    bed, planting = BY_NAME[name]
    plan = bed_of(bed, planting, units=units.value)
    page, laid = printed(plan, paper)[0], only_bed(plan)
    left, bottom, right, top = box = drawn(page)
    along = POINT_PER_MM / page.ratio
    assert right - left == pytest.approx(laid.bed.length.nm / MM * along, abs=NEAR)
    assert top - bottom == pytest.approx(laid.bed.width.nm / MM * along, abs=NEAR)
    places = [(left + x / MM * along, top - y / MM * along) for x, y in positions(laid.layouts[0]).tolist()]
    marks = marks_in(page, box)
    assert len(marks) == len(places) == laid.layouts[0].plants > 0
    assert farthest(places, marks) <= NEAR
    assert farthest(marks, places) <= NEAR


def drawn(page: Page) -> Box:
    """The box of the bed's soil, which is the first outline below the bar to check."""
    bar = max(path.box[1] for path in page.paths if len(path.corners) == 2 and path.size[0] > 100 * POINT_PER_MM - 1)
    return next(path.box for path in page.paths if path.closed and path.box[3] < bar)


def lines_of(page: Page) -> list[Box]:
    """The straight lines of a page that are no outlines."""
    return [path.box for path in page.paths if len(path.corners) == 2]


@each_paper
def test_the_mark_of_a_row_that_ends_lies_at_its_reading_and_across_its_row(paper: Paper) -> None:
    page = printed(bed_of(L_SHAPE), paper)[0]
    left, _bottom, _right, top = drawn(page)
    along = POINT_PER_MM / page.ratio
    for offset in (1000, 1400):
        x, y = left + 2000 * along, top - offset * along
        near = [line for line in lines_of(page) if abs(line[0] - x) <= NEAR and line[2] - line[0] < 0.01]
        assert [1 for line in near if abs((line[1] + line[3]) / 2 - y) <= NEAR]


def test_the_sides_of_cells_lie_where_they_are_marked() -> None:
    page = printed(bed_of(BOX, BY_NAME["box, cells"][1]))[0]
    left, _bottom, _right, top = drawn(page)
    along = POINT_PER_MM / page.ratio
    upright = {
        round((line[0] - left) / along) for line in lines_of(page) if abs(line[3] - line[1] - 300 * along) < NEAR
    }
    assert set(range(0, 2401, 300)) <= upright
    level = {
        round((top - line[1]) / along) for line in lines_of(page) if abs(line[2] - line[0] - 2400 * along) < NEAR
    }
    assert {300, 600, 900} <= level


@each_paper
@pytest.mark.parametrize("scenario", ["s1", "s2"])
def test_a_page_has_exactly_the_size_of_its_paper(scenario: str, paper: Paper) -> None:
    for page in printed(hand_worked(scenario), paper):
        for side, mm in zip(page.size, SIZES[paper], strict=True):
            assert side / POINT_PER_MM == pytest.approx(mm, abs=0.001)


@settings(max_examples=25)
@given(sheets())
def test_the_scale_is_one_that_rules_and_people_know(sheet: Sheet) -> None:
    ratio = sheet.page.ratio
    if sheet.plan.place.units is Units.METRIC:
        assert ratio in METRIC_SCALES
    else:
        assert 12 % ratio == 0 or ratio % 12 == 0


@settings(max_examples=25)
@given(sheets())
def test_all_that_is_drawn_keeps_5_mm_from_the_edges_of_the_paper(sheet: Sheet) -> None:
    assume(all(layout.end <= sheet.laid.bed.length.nm for layout in sheet.laid.layouts))
    edge = 5 * POINT_PER_MM
    for page in printed(sheet.plan, sheet.paper):
        hatchless = (path for path in page.paths if path.closed or min(path.size) < 0.01)
        boxes = [*(words.box for words in page.words), *(path.box for path in hatchless)]
        boxes += [(x, y, x, y) for x, y in page.marks]
        width, height = page.size
        for left, bottom, right, top in boxes:
            assert min(left, bottom) >= edge
            assert right <= width - edge
            assert top <= height - edge


@pytest.mark.parametrize(
    ("length", "width", "units", "ratio"),
    [
        ("25 cm", "5 cm", Units.METRIC, 1),
        ("26 cm", "5 cm", Units.METRIC, 2),
        ("12 m", "75 cm", Units.METRIC, 50),
        ("25 m", "75 cm", Units.METRIC, 100),
        ("500 m", "75 cm", Units.METRIC, 2000),
        ("2 m", "1.2 m", Units.METRIC, 20),
        ("10 in", "3 in", Units.FEET_AND_INCHES, 2),
        ("9 ft", "2 ft", Units.FEET_AND_INCHES, 12),
        ("100 ft", "4 ft", Units.FEET_AND_INCHES, 120),
        ("100 ft", "4 ft", Units.DECIMAL_FEET, 120),
    ],
)
def test_a_bed_is_drawn_as_large_as_a_standard_scale_lets_it(
    length: str, width: str, units: Units, ratio: int
) -> None:
    room = (255 * POINT_PER_MM, 62 * POINT_PER_MM)
    assert scale_for(nm(length), nm(width), room, units).ratio == ratio


def test_scales_in_feet_are_said_in_inches_to_the_foot() -> None:
    scale = scale_for(nm("100 ft"), nm("4 ft"), (721, 200), Units.FEET_AND_INCHES)
    assert scale.words == "1 in = 10 ft (1 : 120)"
    scale = scale_for(12 * M, nm("75 cm"), (721, 200), Units.METRIC)
    assert scale.words == "1 : 50"
    assert scale.on_paper(12 * M) == pytest.approx(240 * POINT_PER_MM)


def test_even_the_longest_bed_has_a_scale() -> None:
    for units in Units:
        scale = scale_for(10_000 * M, M, (721, 200), units)
        assert scale.on_paper(10_000 * M) <= 721


@each_paper
@each_units
def test_the_check_bar_is_exactly_as_long_as_it_says(units: Units, paper: Paper) -> None:
    (page,) = printed(change_place(hand_worked("s1"), units=units), paper)
    length, words = (100.0, "100 mm") if units is Units.METRIC else (4 * 25.4, "4 in")
    assert f"this bar is {words}" in page.text
    lines = [path.corners for path in page.paths if len(path.corners) == 2]
    bars = [line for line in lines if abs(dist(*line) - length * POINT_PER_MM) < 0.01]
    (bar,) = bars
    ends = {round(x, 2) for x, _y in bar}
    ticks = {round(line[0][0], 2) for line in lines if line[0][0] == line[1][0] and straddles(line, bar[0][1])}
    assert ends <= ticks


def straddles(line: tuple[Point, ...], y: float) -> bool:
    """Whether an upright line crosses a height."""
    return min(line[0][1], line[1][1]) < y < max(line[0][1], line[1][1])


def test_stakes_and_margins_of_s1_stand_at_their_readings() -> None:
    plan = hand_worked("s1")
    (page,) = printed(plan)
    left, bottom, right, top = page.outline(12_000, 750)
    along = POINT_PER_MM / page.ratio
    uprights = [path.corners for path in page.paths if len(path.corners) == 2 and path.size[0] < 0.01]
    across = {
        round((x1 - left) / along)
        for (x1, y1), (_x2, y2) in uprights
        if left < x1 < right and max(y1, y2) >= top - 0.01 and min(y1, y2) <= bottom + 0.01
    }
    assert across == {300, 7100, 7300, 11_050, 11_700}


def test_the_tape_below_the_bed_is_a_scale_bar_for_the_whole_of_it() -> None:
    (page,) = printed(hand_worked("s1"))
    left, bottom, _right, _top = page.outline(12_000, 750)
    along = POINT_PER_MM / page.ratio
    ticks = [path.box for path in page.paths if len(path.corners) == 2 and abs(path.size[1] - 5) < 0.01]
    below = sorted(round((box[0] - left) / along, 1) for box in ticks if box[3] < bottom)
    assert sorted(set(below)) == [1000.0 * metre for metre in range(13)]


def test_rows_lie_at_their_offsets_from_the_left_edge_seen_from_the_head() -> None:
    (page,) = printed(bed_with({"from": "1 m", "length": "3 m", "rows": 1}, width="12 cm"))
    _left, _bottom, _right, top = box = page.outline(12_000, 120)
    offsets = {round((top - y) / POINT_PER_MM * page.ratio) for _x, y in marks_in(page, box)}
    assert offsets == {60}


def test_the_enlarged_drawing_says_that_it_is_not_to_scale() -> None:
    (slim, *_others), (wide,) = printed(hand_worked("s3")), printed(hand_worked("s1"))
    assert "not to scale" in slim.text
    assert len(slim.marks) == 2 * (207 + 23)
    assert "not to scale" not in wide.text
    assert len(wide.marks) == 181


@pytest.mark.parametrize(
    ("length", "width"),
    [("1 cm", "75 cm"), ("500 m", "75 cm"), ("1 cm", "1 cm"), ("60 m", "40 m"), ("10000 m", "1 m")],
)
@each_paper
def test_beds_of_any_shape_are_drawn_to_the_scale_they_state(length: str, width: str, paper: Paper) -> None:
    plan = bed_with(length=length, width=width)
    (page,) = printed(plan, paper)
    left, bottom, right, top = outline_of(page, only_bed(plan))
    assert 0 <= left < right <= page.size[0]
    assert 0 <= bottom < top <= page.size[1]
