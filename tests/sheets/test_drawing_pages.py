"""The drawing over several pages measures true, and its pages join."""

import re
from itertools import combinations, pairwise
from math import dist

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from gardenplot.drawing.tiles import cut, tiles
from gardenplot.layout import LaidOut
from gardenplot.layout.positions import positions
from gardenplot.layout.zone import clip, corners_of
from gardenplot.plan import Plan
from gardenplot.plan.simple import twice_area
from gardenplot.sheets.choices import Choices, Kind
from gardenplot.sheets.paper import Paper
from gardenplot.sheets.render import Frame, kept_radius, plant_radius
from gardenplot.units import CM, FOOT, MM, M, Units
from tests.drawing.hand_worked import hand_worked, only_bed
from tests.layout.ground import Fields
from tests.sheets.made import made
from tests.sheets.patterned import BY_NAME, L_SHAPE, RINGS, ROUND, TAPER, bed_of
from tests.sheets.pdf_pages import POINT_PER_MM, Box, Page, Point, pages_of, plain
from tests.sheets.printed import Sheet, bed_with, in_a_row, sheets
from tests.sheets.test_geometry import NEAR, farthest
from tests.sheets.test_spacing_strips import are_apart

each_paper = pytest.mark.parametrize("paper", Paper)


def drawn(plan: Plan, paper: Paper = Paper.A4, scale: int | None = None) -> tuple[Page, ...]:
    """The pages of the drawing of a plan."""
    return pages_of(made(plan, paper, Kind.DRAWING, Choices(scale=scale)).pdf)


def soils(page: Page, laid: LaidOut) -> list[Box]:
    """Where the whole bed would lie, most of it beyond the page, for each of the parts below each other on it."""
    wanted = [side / MM / page.ratio * POINT_PER_MM for side in (laid.bed.length.nm, laid.bed.width.nm)]
    return [
        path.box for path in page.paths
        if path.closed and all(abs(is_ - to_be) < 0.02 for is_, to_be in zip(path.size, wanted, strict=True))
    ]  # fmt: skip


def soil(page: Page, laid: LaidOut) -> Box:
    """Where the whole bed would lie, most of it beyond the page, for the first part on it."""
    return soils(page, laid)[0]


def places_on(page: Page, laid: LaidOut, ground: Box) -> list[Point]:
    """Where all plants of a bed would lie, at the scale the page states."""
    left, _bottom, _right, top = ground
    along = POINT_PER_MM / page.ratio
    return [
        (left + x / MM * along, top - y / MM * along)
        for layout in laid.layouts
        for x, y in positions(layout).tolist()
    ]


def parts_of(page: Page, laid: LaidOut) -> list[tuple[list[Point], list[Point]]]:
    """For each part on a page where all plants would lie, and the marks that are nearer to it than to others."""
    grounds = soils(page, laid)
    middles = [(bottom + top) / 2 for _left, bottom, _right, top in grounds]
    marks: list[list[Point]] = [[] for _ground in grounds]
    for x, y in page.marks:
        marks[min(range(len(grounds)), key=lambda number: abs(y - middles[number]))].append((x, y))
    return [(places_on(page, laid, ground), here) for ground, here in zip(grounds, marks, strict=True)]


def assert_true(pages: tuple[Page, ...], laid: LaidOut) -> None:
    """Fail unless every plant in the bed is on some page, every mark is a plant's, and all lie where they should."""
    within = sum(
        int((positions(layout)[:, 0] <= laid.bed.length.nm).sum()) for layout in laid.layouts if layout.plants
    )
    seen: set[int] = set()
    for places, marks in (part for page in pages for part in parts_of(page, laid)):
        if places and marks:
            assert farthest(marks, places) <= NEAR
        seen |= {
            number for number, (x, y) in enumerate(places)
            if any(abs(x - u) <= NEAR and abs(y - v) <= NEAR for u, v in marks)
        }  # fmt: skip
    assert len(seen) >= within


@settings(max_examples=15)
@given(sheets(), st.sampled_from([5, 10, 12, 20, 48]))
def test_every_plant_lies_at_its_true_place_on_some_page(sheet: Sheet, scale: int) -> None:
    length = sheet.laid.bed.length.nm
    if length / scale > 8 * M:
        scale = -(-length // (8 * M))
    assert_true(drawn(sheet.plan, sheet.paper, scale), sheet.laid)


@each_paper
@pytest.mark.parametrize("name", BY_NAME)
def test_every_pattern_in_every_outline_lies_at_its_true_place(name: str, paper: Paper) -> None:
    bed, planting = BY_NAME[name]
    plan = bed_of(bed, planting)
    pages, laid = drawn(plan, paper, 5), only_bed(plan)
    shown = sum(len(page.marks) for page in pages)
    assert shown >= laid.layouts[0].plants
    for page in pages:
        left, top = min(x for x, _y in corners(page)), max(y for _x, y in corners(page))
        along = POINT_PER_MM / page.ratio
        true = [(left + x / MM * along, top - y / MM * along) for x, y in positions(laid.layouts[0]).tolist()]
        assert not page.marks or farthest(list(page.marks), true) <= NEAR


def corners(page: Page) -> tuple[Point, ...]:
    """The corners of the largest closed outline of a page, which is the soil."""
    return max((path for path in page.paths if path.closed), key=lambda path: path.size[0] * path.size[1]).corners


@each_paper
@pytest.mark.parametrize(("scale", "units"), [(10, "metric"), (12, "feet and inches")])
def test_a_bed_of_100_ft_at_1_to_10_joins_exactly(paper: Paper, scale: int, units: str) -> None:
    plan = bed_with({"from": "2 ft", "length": "96 ft"}, units=units, length="100 ft", width="30 in")
    pages, laid = drawn(plan, paper, scale), only_bed(plan)
    assert len(pages) > 10
    assert {page.ratio for page in pages} == {scale}
    readings = [sorted(match_readings(page, laid)) for page in pages]
    assert readings[0][0] == readings[1][0]
    for before, after in pairwise(readings):
        assert before[-1] == pytest.approx(after[0], abs=NEAR / POINT_PER_MM * scale)
    assert_true(pages, laid)
    each = POINT_PER_MM / scale
    for page, (first, *_more, last) in zip(pages[1:-1], readings[1:-1], strict=True):
        left, beyond = soil(page, laid)[0], 8 * scale + 0.1
        assert all(first - beyond < (x - left) / each < last + beyond for x, _y in page.marks), "a stray rim"
    both = [shared(one, laid) & shared(other, laid) for one, other in pairwise(pages)]
    assert all(both[:-1])


def match_readings(page: Page, laid: LaidOut) -> list[float]:
    """The readings in mm at which a page has match lines: upright lines that stand out of the bed on both sides."""
    left, bottom, _right, top = soil(page, laid)
    upright = [path.box for path in page.paths if len(path.corners) == 2 and path.size[0] < 0.01]
    tall = [box for box in upright if box[1] < bottom - 5 and box[3] > top + 5]
    return [round((box[0] - left) / POINT_PER_MM * page.ratio, 3) for box in tall]


def shared(page: Page, laid: LaidOut) -> set[Point]:
    """The places of the plants on a page in the bed, in mm."""
    left, _bottom, _right, top = soil(page, laid)
    each = POINT_PER_MM / page.ratio
    return {(float(round((x - left) / each)), float(round((top - y) / each))) for x, y in page.marks}


def test_each_page_names_the_pages_that_join_it_and_where() -> None:
    pages = drawn(hand_worked("s1"))
    for number, page in enumerate(pages, 1):
        before, after = f"← joins page {number - 1} at", f"joins page {number + 1} at"
        assert (before in page.text) == (number > 1)
        assert (after in page.text) == (number < len(pages))
    assert "joins page 2 at 2.40 m" in pages[0].text
    assert "← joins page 1 at 2.40 m" in pages[1].text


def test_a_bed_too_wide_for_a_page_is_cut_across_as_well() -> None:
    plan = bed_with({"from": "0 m", "length": "4 m"}, width="2.4 m", length="5 m")
    pages = drawn(plan, scale=10)
    assert_true(pages, only_bed(plan))
    assert len(pages) > 4
    assert any("↓ joins page" in page.text for page in pages)
    assert any("↑ joins page" in page.text for page in pages)


def test_a_bed_that_fits_is_on_one_page_with_nothing_to_join() -> None:
    (page,) = drawn(bed_with({"from": "0 m", "length": "1 m"}, length="1.2 m", width="50 cm"))
    assert "join" not in page.text
    assert page.ratio == 5


def test_a_name_is_whole_over_the_little_of_a_block_that_a_page_shows() -> None:
    plan = bed_with({"from": "0 m", "length": "2.6 m"}, {"from": "2.9 m", "length": "5 m"}, crop="Butterhead lettuce")
    page = drawn(plan, scale=10)[1]
    assert "…" not in page.text
    one, other = (words for words in page.words if words.text.endswith("Butterhead lettuce"))
    assert are_apart(one.box, other.box)
    left = soil(page, only_bed(plan))[0]
    shown = left + 2320 / 10 * POINT_PER_MM, left + 2600 / 10 * POINT_PER_MM
    assert one.box[0] < sum(shown) / 2 < one.box[2], "over its block"


def test_stakes_close_to_each_other_are_numbered_beside_each_other() -> None:
    blocks = [{"from": f"{at} cm", "length": "15 cm"} for at in range(0, 96, 16)]
    (page,) = drawn(bed_with(*blocks, length="4 m"), scale=20)
    low = [words for words in page.words if words.size == 14 and words.text[0].isdigit() and words.box[3] < 400]
    assert {words.text for words in low if "." not in words.text} == {str(number) for number in range(13)}
    assert {words.text for words in low if "." in words.text} >= {"0.00", "0.15", "0.95", "4.00"}
    for one, other in combinations(low, 2):
        apart = one.box[2] <= other.box[0] or other.box[2] <= one.box[0]
        assert apart or abs(one.box[1] - other.box[1]) > 10, (one.text, other.text)


@pytest.mark.parametrize(("scale", "pages"), [(25, 1), (10, 5)])
def test_where_a_bed_is_on_one_page_no_map_says_which_one(scale: int, pages: int) -> None:
    """It would be a black bar, the heaviest mark of the page."""
    found = drawn(bed_with({"from": "1 m", "length": "8 m"}), Paper.A4, scale)
    assert len(found) == pages
    page = found[0]
    parts = [path for path in page.paths if path.closed and path.size[1] < 18 and path.box[1] > page.size[1] - 100]
    assert len(parts) == (0 if pages == 1 else pages)


@each_paper
def test_the_base_line_is_the_thick_one_on_every_page_and_the_foot_is_named(paper: Paper) -> None:
    """Whoever has only the drawing sees which edge tape and stakes lie along."""
    plan = bed_with({"from": "1 m", "length": "8 m"}, drip_lines=["25 cm"])  # type: ignore[arg-type]  # a list of lengths
    laid = only_bed(plan)
    pages = drawn(plan, paper, 10)
    assert len(pages) > 1
    for number, page in enumerate(pages):
        left, _bottom, right, top = soil(page, laid)
        along = POINT_PER_MM / 10
        thick = [
            path.box
            for path in page.paths
            if len(path.corners) == 2 and path.size[1] < 0.01 and abs(path.box[1] - top) < 0.01 and path.size[0] > 100
        ]
        assert len(thick) == 1
        assert left - 0.01 <= thick[0][0] < thick[0][2] <= right + 0.01
        assert "Thick line: base line, left as seen from the head" in page.text
        assert "Dashed: drip lines." in page.text
        drips = [
            path.box for path in page.paths if abs(path.box[1] - (top - 250 * along)) < 0.01 and path.size[1] < 0.01
        ]
        assert drips
        assert ("FOOT 12.00" in plain(page.text)) == (number == len(pages) - 1)


@each_paper
@pytest.mark.parametrize("scale", [10, 25, None])
@pytest.mark.parametrize("bed", [L_SHAPE, TAPER])
def test_corners_of_an_outline_have_their_names_beside_them(bed: Fields, scale: int | None, paper: Paper) -> None:
    """Within 15 points of paper, on each page that shows the corner; the first two are head and foot stake."""
    plan = bed_of(bed)
    laid, named = only_bed(plan), set[int]()
    for page in drawn(plan, paper, scale):
        left, _bottom, _right, top = soil(page, laid)
        along = POINT_PER_MM / page.ratio
        for words in page.words:
            if found := re.fullmatch(r"c(\d)", words.text):
                x, y = (at.nm / MM for at in laid.bed.outline[int(found[1]) + 1])
                middle = (words.box[0] + words.box[2]) / 2, (words.box[1] + words.box[3]) / 2
                assert dist(middle, (left + x * along, top - y * along)) < 15
                named.add(int(found[1]))
        assert "c1, c2 …: corners of the bed" in page.text
    assert named == set(range(1, len(laid.bed.outline) - 1))


@each_paper
@pytest.mark.parametrize("length", ["2.45 m", "4 m"])
def test_stakes_at_the_right_of_a_page_stand_within_its_margin(length: str, paper: Paper) -> None:
    blocks = [{"from": f"{at} cm", "length": "6 cm"} for at in range(170, 240, 14)]
    (page, *_more) = drawn(bed_with(*blocks, length=length), paper, 10)
    low = [words for words in page.words if words.size in (11, 12, 14) and re.fullmatch(r"\d+|\d\.\d\d", words.text)]
    assert len(low) >= 14
    for words in low:
        assert words.box[2] <= page.size[0] - 10 * POINT_PER_MM
    for one, other in combinations(low, 2):
        assert are_apart(one.box, other.box), (one.text, other.text)


@each_paper
def test_all_that_is_drawn_keeps_5_mm_from_the_edges(paper: Paper) -> None:
    edge = 5 * POINT_PER_MM
    for page in drawn(hand_worked("s1"), paper):
        for words in page.words:
            left, bottom, right, top = words.box
            assert left >= edge
            assert bottom >= edge
            assert right <= page.size[0] - edge
            assert top <= page.size[1] - edge


@example(2 * M, 25 * CM, 240 * CM, 8 * CM, Units.METRIC)
@given(
    st.integers(1, 200 * M), st.integers(0, M), st.integers(5 * CM, 20 * M), st.integers(0, M),
    st.sampled_from(Units),
)  # fmt: skip
def test_stretches_cover_a_length_and_fit_and_meet_at_match_lines(
    length: int, rim: int, room: int, overlap: int, units: Units
) -> None:
    found = cut(length, rim, room, overlap, units)
    rim, overlap = min(rim, room // 4), min(overlap, room // 4)
    assert found[0].start == -rim
    assert found[0].before is None
    assert found[-1].end == length + rim
    assert found[-1].after is None
    assert all(span.end - span.start <= room for span in found)
    for one, other in pairwise(found):
        assert one.after == other.before
        assert one.after is not None
        assert one.end == one.after + overlap or one.end == length + rim
        assert other.start == one.after - overlap


def test_match_lines_stand_at_round_readings() -> None:
    found = cut(30 * M, 0, round(2.63 * M), 8 * CM, Units.METRIC)
    assert [span.after for span in found[:3]] == [240 * CM, 480 * CM, 720 * CM]
    found = cut(100 * FOOT, 0, 9 * FOOT + 6 * CM, 5 * CM, Units.FEET_AND_INCHES)
    assert [span.after for span in found[:2]] == [8 * FOOT, 16 * FOOT]


def test_match_lines_stand_at_rounder_readings_where_that_takes_no_more_pages() -> None:
    assert [span.after for span in cut(6 * M, 0, round(2.63 * M), 8 * CM, Units.METRIC)] == [2 * M, 4 * M, None]


@pytest.mark.parametrize(
    ("length", "room", "units"),
    [(100 * FOOT, 9 * FOOT + 20 * CM, Units.FEET_AND_INCHES), (2200 * MM, 1160 * MM, Units.METRIC),
     (18 * M, 2470 * MM, Units.METRIC), (100 * FOOT, 9 * FOOT + 20 * CM, Units.DECIMAL_FEET)],
)  # fmt: skip
def test_no_page_is_left_with_less_than_half_a_part(length: int, room: int, units: Units) -> None:
    parts = [end - start for start, end in (span.own for span in cut(length, 0, room, 5 * CM, units))]
    assert sum(parts) == length
    assert len(parts) == -(-length // (room - 10 * CM)), "no more pages than the room lets be"
    assert 2 * parts[-1] >= parts[0]


ODD = {"L": L_SHAPE, "taper": TAPER, "round": ROUND, "long": {"length": "30 m", "width": "75 cm"}}


@pytest.mark.parametrize("scale", [5, 10, 20])
@pytest.mark.parametrize("name", ODD)
def test_pages_have_ground_and_each_is_joined_by_those_that_it_joins(name: str, scale: int) -> None:
    bed = only_bed(bed_of(ODD[name], {})).bed
    room = 250 * scale * MM, 130 * scale * MM
    along, across = (
        cut(length.nm, 0, most, 8 * scale * MM, Units.METRIC)
        for length, most in zip((bed.length, bed.width), room, strict=True)
    )
    found = {(tile.column, tile.line): tile for tile in tiles(along, across, corners_of(bed))}
    area = 0
    for (column, line), tile in found.items():
        part = clip(tuple((y, x) for x, y in clip(corners_of(bed), *along[column].own)), *across[line].own)
        area += abs(twice_area(part))
        assert twice_area(part)
        for after, other, side in (
            (tile.along.after, (column + 1, line), "along"), (tile.across.after, (column, line + 1), "across"),
        ):  # fmt: skip
            assert (after is not None) == (other in found)
            assert after is None or getattr(found[other], side).before == after
    assert area == pytest.approx(abs(twice_area(corners_of(bed))), rel=1e-6), "all ground is on some page"


@pytest.mark.parametrize("name", ODD)
def test_pages_say_whom_they_join_and_no_word_is_drawn_over(name: str) -> None:
    pages = drawn(bed_of(ODD[name], {}), scale=10)
    back = {"→": "←", "←": "→", "↑": "↓", "↓": "↑"}
    joins = {
        (number, int(other), arrow, reading)
        for number, page in enumerate(pages, 1)
        for words in page.words
        for before, other, reading, behind in re.findall(
            r"([←↑↓]?) ?joins page (\d+) at ([\d.]+)\D*?(→?)(?= *[←↑↓]|$)", words.text
        )
        for arrow in (before or behind,)
    }
    assert len(pages) == 1 or {number for number, *_more in joins} == set(range(1, len(pages) + 1))
    assert joins == {(other, number, back[arrow], reading) for number, other, arrow, reading in joins}
    for page in pages:
        top = page.size[1] - 110
        small = [path.box for path in page.paths if path.closed and path.size[1] < 20 and path.box[1] > top]
        assert len(small) == (len(pages) if len(pages) > 1 else 0), "where this page is among the others"
        assert all(box[3] - box[1] > 2 for box in small)
        assert len(pages) == 1 or max(box[3] for box in small) - min(box[1] for box in small) > 8
        for words in page.words:
            assert all(are_apart(words.box, box) for box in small), words.text


@pytest.mark.parametrize("scale", [1, 10, None])
def test_a_box_of_thick_timber_is_drawn_at_any_scale(scale: int | None) -> None:
    plan = bed_of({"box": {"length": "2 m", "width": "1.3 m", "board": "25 cm"}})
    pages = drawn(plan, scale=scale)
    assert 1 <= len(pages) <= 200
    assert_true(pages, only_bed(plan))


@pytest.mark.parametrize("ratio", [5, 10, 20, 50, 100])
def test_the_ring_of_a_kept_place_is_seen_round_a_plant_that_stands_in_it(ratio: int) -> None:
    """S3: rings of 12 in round lettuces of 8 in."""
    frame = Frame(0, 0, POINT_PER_MM / ratio, POINT_PER_MM / ratio)
    assert kept_radius(12 * 25.4, frame) - plant_radius(8 * 25.4, frame) > 0.3 * POINT_PER_MM


def test_what_stands_in_kept_places_is_seen_on_all_pages() -> None:
    """S3: 69 lettuces in each of three rows, 23 of them in rings."""
    pages = drawn(hand_worked("s3"), scale=12)[:6]
    for page in pages:
        (letter,) = [words.box for words in page.words if words.text == "B"]
        middle = (letter[0] + letter[2]) / 2, (letter[1] + letter[3]) / 2
        near = sorted(dist(middle, mark) for mark in page.marks)
        assert near[0] > 9, "the letter stands upon none of them"
        assert near[1] < 40, "the ring, and the lettuce in it"


def test_a_block_is_named_only_over_parts_with_rows_of_it() -> None:
    """Two rows, 20 and 50 cm from the base line of a bed of 3 m: the parts behind them have neither."""
    plan = bed_with(
        {"from": "0 m", "length": "2 m", "pattern": "offsets", "offsets": ["20 cm", "50 cm"]},
        length="2 m",
        width="3 m",
    )
    pages = drawn(plan, scale=10)
    assert len(pages) > 1
    assert [bool(re.search(r"A Leek", page.text)) for page in pages] == [True, *[False] * (len(pages) - 1)]


def test_a_sown_band_is_named_over_each_part_of_it() -> None:
    """It has plants and no places."""
    plan = bed_of({"length": "6 m", "width": "80 cm"}, {"pattern": "broadcast"}, plants_per_area="400 / m2")
    pages = drawn(plan, scale=10)
    assert len(pages) > 1
    assert all("A Leek" in page.text for page in pages)


@pytest.mark.parametrize("scale", [5, 10, 20])
def test_rings_and_round_beds_and_posts_are_drawn_round(scale: int) -> None:
    post = {"name": "post", "x": "1.5 m", "y": "1.5 m", "diameter": "12 cm", "keep_clear": "20 cm"}
    plan = bed_of(ROUND | {"obstacles": [post]}, RINGS)
    laid, each = only_bed(plan), POINT_PER_MM / scale
    page = drawn(plan, scale=scale)[0]
    (left, _bottom, _right, top), middle = soil(page, laid), laid.bed.length.nm / 2 / MM
    centre, radii = (left + middle * each, top - middle * each), set[float]()
    for path in (path for path in page.paths if path.closed and len(path.corners) > 5):
        sides = [((x + u) / 2, (y + v) / 2) for (x, y), (u, v) in pairwise(path.corners)]
        far = [dist(point, centre) for point in (*path.corners, *sides)]
        assert max(far) - min(far) < 0.02 * POINT_PER_MM
        radii.add(round(max(far) / each))
    rings = {round(ring.radius / MM) for ring in laid.layouts[0].rings}
    assert radii >= {round(middle), max(rings)}
    assert radii <= {round(middle), 60, 60 + 200, *rings}, "the bed, the post and what is kept clear of it, the rings"


@each_paper
def test_parts_of_a_slim_bed_stand_below_each_other_and_join_exactly(paper: Paper) -> None:
    plan = bed_with({"from": "0 m", "length": "11 m"}, length="12 m", width="75 cm")
    laid, pages = only_bed(plan), drawn(plan, paper, 20)
    assert [len(soils(page, laid)) for page in pages] == [2, 1]
    assert_true(pages, laid)
    first, last = pages
    reading = re.search(r"joins what stands below at ([\d.]+)", first.text)
    assert reading is not None
    assert f"← joins what stands above at {reading[1]}" in first.text
    assert "← joins page 1 at" in last.text
    # The match line of both parts stands at the reading that the words tell.
    for ground in soils(first, laid):
        at = ground[0] + float(reading[1]) * 1000 / 20 * POINT_PER_MM
        middle = (ground[1] + ground[3]) / 2
        upright = [path.box for path in first.paths if len(path.corners) == 2 and path.size[0] < 0.01]
        assert any(abs(box[0] - at) <= NEAR and box[1] < middle < box[3] for box in upright)
    stakes = [words.text for page in pages for words in page.words if words.size == 14 and words.text.isdigit()]
    assert stakes == ["0", "1", "2"]


@each_paper
def test_no_part_stands_upon_another(paper: Paper) -> None:
    for width in ("10 cm", "20 cm", "40 cm", "41 cm"):
        plan = bed_with({"from": "0 m", "length": "9 m"}, length="12 m", width=width)
        for page in drawn(plan, paper, 10):
            boxes = sorted(soils(page, only_bed(plan)), key=lambda box: box[1])
            assert all(above[1] - below[3] > 60 for below, above in pairwise(boxes))
            assert all(box[1] > 28 + 54 for box in boxes)


@each_paper
@pytest.mark.parametrize("scale", [50, 200])
def test_every_stake_of_forty_blocks_is_told_within_the_margins_and_upon_no_other(paper: Paper, scale: int) -> None:
    pages, told = drawn(in_a_row(40, length="40 m"), paper, scale), set[str]()
    for page in pages:
        low = [words for words in page.words if words.size == 14 and re.fullmatch(r"\d+|\d+\.\d\d", words.text)]
        told |= {words.text for words in low}
        edge = 10 * POINT_PER_MM
        for words in low:
            assert edge <= words.box[0]
            assert words.box[2] <= page.size[0] - edge
            assert words.box[1] > 50
        for one, other in combinations(low, 2):
            assert are_apart(one.box, other.box), (one.text, other.text)
    assert {str(number) for number in range(81)} <= told
    assert {"0.45", "11.85", "23.40", "40.00"} <= told


def test_stakes_for_which_a_page_has_no_room_are_told_by_turns_and_it_says_so() -> None:
    (page,) = drawn(in_a_row(160, length="100 m"), scale=500)
    assert "one stake of 3 is told" in page.text
    told = [int(words.text) for words in page.words if words.size == 14 and words.text.isdigit()]
    assert sorted(told) == list(range(0, 321, 3))
