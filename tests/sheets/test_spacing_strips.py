"""Spacing strips at true size: cut out and glued from the PDF, each mark lies within 0.05 mm of its plant."""

import re
from datetime import date
from functools import cache
from itertools import combinations, pairwise
from math import dist

import numpy as np
import pypdfium2
import pytest
from attrs import evolve
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from gardenplot.drawing.dibble import Lattice
from gardenplot.drawing.spacing_boards import boards_of
from gardenplot.files import sample
from gardenplot.layout import Layout, lay_out_plan
from gardenplot.layout.positions import positions
from gardenplot.plan import Direction, Pattern, Plan
from gardenplot.plan.edits import change_place
from gardenplot.plan.file import read_plan
from gardenplot.sheets.book import NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices, Kind
from gardenplot.sheets.paper import MISSING, Paper
from gardenplot.sheets.template_tiles import tiled
from gardenplot.units import CM, FOOT, MM, Units
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.layout.ground import Fields, blocks, nm
from tests.sheets.made import made
from tests.sheets.patterned import BOX, BY_NAME, CELLS, L_SHAPE, PLAIN, ROUND, bed_of
from tests.sheets.pdf_pages import POINT_PER_MM, Box, Page, bookmarks_of, pages_of
from tests.sheets.strips_read import Glued, Template, strips_in, templates_in

NEAR = 0.05
"""Millimetres on paper."""
ALL_ROWS = (Pattern.STRAIGHT, Pattern.STAGGERED, Pattern.TRIANGULAR, Pattern.TWIN)
SCENARIOS = ("s1", "s2", "s3", "s4", "s5", "s6")
each_paper = pytest.mark.parametrize("paper", Paper)
each_scenario = pytest.mark.parametrize("scenario", SCENARIOS)


@cache
def printed(plan: Plan, paper: Paper = Paper.A4, choices: Choices = USUAL) -> tuple[Page, ...]:
    """The pages of a plan's spacing strips."""
    return pages_of(made(plan, paper, Kind.STRIPS, choices, name="Upper Sill", day=date(2027, 3, 1)).pdf)


def strip(plan: Plan, words: str, paper: Paper = Paper.A4, choices: Choices = USUAL) -> Glued:
    """The one strip of a plan whose title has some words."""
    (found,) = (one for one in strips_in(printed(plan, paper, choices)).values() if words in one.title)
    return found


def said(plan: Plan, paper: Paper = Paper.A4, choices: Choices = USUAL) -> str:
    """All words of a plan's spacing strips."""
    return " ".join(page.text for page in printed(plan, paper, choices))


def rows_of(layout: Layout) -> list[list[tuple[float, float]]]:
    """The plants of each row along the bed, in mm, from the head on."""
    places = positions(layout).tolist()
    found: dict[int, list[tuple[float, float]]] = {}
    for x, y in places:
        found.setdefault(y, []).append((x / MM, y / MM))
    return [sorted(found[y]) for y in sorted(found)]


def assert_goes_on(marks: tuple[float, ...], repeat: float, plants: list[float], zero: float) -> None:
    """Fail unless a strip laid on again and again with its 0 where it ended marks the plants of a row, one by one."""
    for number, plant in enumerate(plants):
        times, which = divmod(number, len(marks))
        assert marks[which] - zero + times * repeat == pytest.approx(plant, abs=NEAR)


@st.composite
def plans(draw: st.DrawFn) -> tuple[Plan, Paper, Choices]:
    """A bed with one block of rows along it, a board, and paper."""
    block = draw(blocks(ALL_ROWS))
    units = draw(st.sampled_from(Units))
    plan = plan_from({"units": units.value})
    plan = evolve(plan, beds=(block.bed,), crops=(block.crop,), plantings=(block.planting,))
    board = draw(st.none() | st.integers(5 * CM, 200 * CM))
    return plan, draw(st.sampled_from(Paper)), Choices(board=board)


def laid(plan: Plan) -> Layout:
    """The one layout of a plan that has plants."""
    layout = lay_out_plan(plan)[0].layouts[0]
    assume(layout.plants)
    return layout


def origin(plan: Plan, layout: Layout) -> float:
    """Where the ground of a block begins, in mm from the head."""
    return max(layout.start, plan.beds[0].zone[0]) / MM


@settings(max_examples=25)
@given(plans())
def test_a_strip_laid_on_and_on_marks_every_plant_of_a_row(case: tuple[Plan, Paper, Choices]) -> None:
    plan, paper, choices = case
    layout, start = laid(plan), origin(plan, laid(plan))
    glued = strip(plan, "in the row", paper, choices)
    for number, row in enumerate(layout.rows):
        marks = glued.lower if layout.grid.pattern.staggers and number % 2 else glued.upper
        plants = [(run.first + at * run.step) / MM - start for run in row.runs for at in range(run.count)]
        assert_goes_on(marks, glued.repeat, plants, glued.zero)


@settings(max_examples=25)
@given(plans())
def test_rows_lie_at_their_offsets_from_the_left_edge(case: tuple[Plan, Paper, Choices]) -> None:
    plan, paper, choices = case
    layout = laid(plan)
    # Rows of a bed that is wider than the board are left to the tape.
    choices = evolve(choices, board=max(choices.board or 0, plan.beds[0].width.nm))
    glued = strip(plan, "rows in a bed", paper, choices)
    rows = [row[0][1] for row in rows_of(layout)]
    assert [at - glued.zero for at in glued.upper] == pytest.approx(rows, abs=NEAR)
    width = plan.beds[0].width.nm / MM
    assert [at - glued.zero for at in glued.lower] == pytest.approx([width / 2], abs=NEAR)
    assert glued.repeat == pytest.approx(width, abs=NEAR)


@settings(max_examples=25)
@given(plans())
def test_a_template_laid_on_and_on_marks_every_plant_of_its_rows(case: tuple[Plan, Paper, Choices]) -> None:
    plan, paper, choices = case
    layout = laid(plan)
    found = templates_in(printed(plan, paper, choices))
    many = any(row.count for row in layout.rows[1:]) and layout.grid.pattern is not Pattern.STRAIGHT
    if not many or not found:
        assert not found
        assert not many or "a template would take" in said(plan, paper, choices)
        return
    (template,) = found.values()
    by_row: dict[float, list[float]] = {}
    for x, y in template.spots:
        by_row.setdefault(round(y, 2), []).append(x)
    levels = sorted(by_row)
    assert len(levels) >= 2
    for level, row in zip(levels, layout.rows, strict=False):
        assert level - levels[0] == pytest.approx((row.offset - layout.offsets[0]) / MM, abs=NEAR)
        plants = [
            (run.first + at * run.step) / MM - origin(plan, layout) for run in row.runs for at in range(run.count)
        ]
        assert_goes_on(tuple(sorted(by_row[level])), template.repeat, plants, template.zero)


@settings(max_examples=25)
@given(plans())
def test_all_that_is_drawn_keeps_5_mm_from_the_edges_and_no_words_meet(case: tuple[Plan, Paper, Choices]) -> None:
    plan, paper, choices = case
    laid(plan)
    for page in printed(plan, paper, choices):
        assert_tidy(page)


def assert_tidy(page: Page) -> None:
    """Fail where something lies too near to the edge of the paper, or words lie over words."""
    edge = 5 * POINT_PER_MM
    hatchless = (path for path in page.paths if path.closed or min(path.size) < 0.01)
    width, height = page.size
    for left, bottom, right, top in [*(words.box for words in page.words), *(path.box for path in hatchless)]:
        assert min(left, bottom) >= edge
        assert right <= width - edge
        assert top <= height - edge
    for one, other in combinations(page.words, 2):
        assert are_apart(one.box, other.box), (one.text, other.text)
    marks = [path.box for path in page.paths if len(path.corners) == 2 and max(path.size) < 10.1 * POINT_PER_MM]
    for words in page.words:
        assert all(are_apart(words.box, mark) for mark in marks), words.text


def are_apart(one: Box, other: Box) -> bool:
    """Whether two boxes have nothing in common."""
    return one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]


@each_paper
@each_scenario
@pytest.mark.parametrize("units", Units)
def test_the_strips_of_the_hand_worked_beds_are_true_and_tidy(scenario: str, paper: Paper, units: Units) -> None:
    plan = change_place(hand_worked(scenario), units=units)
    pages = printed(plan, paper)
    for page in pages:
        assert_tidy(page)
    layouts = [layout for bed in lay_out_plan(plan) for layout in bed.layouts]
    along = [one for one in strips_in(pages).values() if "in the row" in one.title]
    assert len(along) == len(layouts)
    for layout, glued in zip(layouts, along, strict=True):
        first = [x - layout.start / MM for x, _y in rows_of(layout)[0]]
        assert_goes_on(glued.upper, glued.repeat, first, glued.zero)


def test_the_marks_of_s1_are_those_that_were_worked_out_by_hand() -> None:
    plan = hand_worked("s1")
    pak_choi, kohlrabi = (one for one in strips_in(printed(plan)).values() if "in the row" in one.title)
    assert pak_choi.upper == pytest.approx([100, 300, 500, 700, 900, 1100], abs=NEAR)
    assert kohlrabi.upper == pytest.approx([125, 375, 625, 875], abs=NEAR)
    assert (pak_choi.length, kohlrabi.length) == pytest.approx((1200, 1000), abs=NEAR)
    large = {words.text for page in printed(plan) for words in page.words if words.size >= 14}
    assert {"0", "10", "30", "50", "70", "90", "110", "120", "12.5", "37.5", "62.5", "87.5"} <= large


@each_paper
def test_the_template_of_s4_is_one_repeat_in_which_every_second_row_is_moved_by_half(paper: Paper) -> None:
    """By hand: two plants 40 cm apart both ways, which would take six pages, so it is not printed but said."""
    plan = hand_worked("s4")
    (lattice,) = {one.what for one in boards_of(lay_out_plan(plan), 120 * CM).made if isinstance(one.what, Lattice)}
    whole = tiled(lattice, paper)
    (x1, y1), (x2, y2) = ((spot.x / MM, spot.y / MM) for spot in whole.template.spots)
    assert (x1, x2, whole.template.repeat / MM, y2 - y1) == (200, 400, 400, 400)
    assert not templates_in(printed(plan, paper))
    assert f"a template would take {len(whole.tiles)} pages for 2 plants, so use the strips" in said(plan, paper)


@each_paper
def test_the_same_at_half_of_its_spacing_is_printed(paper: Paper) -> None:
    plan = bed_of(PLAIN, {"pattern": "staggered"}, in_row="10 cm", row_spacing="10 cm")
    (template,) = templates_in(printed(plan, paper)).values()
    rows = sorted({round(y, 2) for _x, y in template.spots})
    first, second = (sorted(x - template.zero for x, y in template.spots if round(y, 2) == row) for row in rows[:2])
    assert rows[1] - rows[0] == pytest.approx(100, abs=NEAR)
    assert first == pytest.approx([50 + 100 * at for at in range(len(first))], abs=NEAR)
    assert second == pytest.approx([100 + 100 * at for at in range(len(second))], abs=NEAR)
    assert len(template.spots) >= template.tiles


@each_paper
@pytest.mark.parametrize("units", Units)
@each_scenario
def test_the_check_length_of_every_page_is_exact(scenario: str, paper: Paper, units: Units) -> None:
    plan = change_place(hand_worked(scenario), units=units)
    length, words = (100.0, "100 mm") if units is Units.METRIC else (4 * 25.4, "4 in")
    for page in printed(plan, paper)[1:]:
        assert words in page.text
        lines = [path.corners for path in page.paths if len(path.corners) == 2]
        bars = [line for line in lines if abs(dist(*line) - length * POINT_PER_MM) < 0.01]
        assert len(bars) == (2 if "Template" in page.text else 1)
        for (x1, y1), (x2, y2) in bars:
            for x, y in ((x1, y1), (x2, y2)):
                assert any(is_tick(line, (x, y), level=abs(y1 - y2) < 0.01) for line in lines)
            assert min(abs(x1 - x2), abs(y1 - y2)) < 0.01


def is_tick(line: tuple[tuple[float, float], ...], at: tuple[float, float], *, level: bool) -> bool:
    """Whether a short line crosses the end of a bar."""
    (x1, y1), (x2, y2) = line
    middle = (x1 + x2) / 2, (y1 + y2) / 2
    square = abs(x1 - x2) < 0.01 if level else abs(y1 - y2) < 0.01
    return square and dist(middle, at) < 0.01 and 8 < dist(*line) < 12


@pytest.mark.parametrize(("board", "units", "marks"), [
    (None, "metric", 6), (60 * CM, "metric", 3), (59 * CM, "metric", 2), (5 * CM, "metric", 1),
    (None, "decimal feet", 6), (2 * FOOT, "feet and inches", 3),
])  # fmt: skip
def test_a_strip_is_as_long_as_whole_spacings_fit_on_the_board(board: int | None, units: str, marks: int) -> None:
    plan = bed_of(PLAIN, {"rows": 3}, units=units)
    glued = strip(plan, "in the row", choices=Choices(board=board))
    assert len(glued.upper) == marks
    assert glued.repeat == pytest.approx(200 * marks, abs=NEAR)


@pytest.mark.parametrize(("units", "end"), [("metric", ("120", "cm")), ("decimal feet", ("3.94", "ft"))])
def test_the_end_of_a_strip_has_its_unit(units: str, end: tuple[str, str]) -> None:
    """The end of 6 spacings of 20 cm: 1.2 m, which are 3.937 ft."""
    plan = bed_of(PLAIN, {"rows": 3}, units=units)
    texts = [words.text for page in pages_of(made(plan, Paper.A4, Kind.STRIPS).pdf) for words in page.words]
    assert end in set(pairwise(texts))


def test_a_strip_has_no_more_marks_than_its_rows_have_plants() -> None:
    plan = bed_of(PLAIN, {"rows": 3, "length": "45 cm"})
    assert strip(plan, "in the row").upper == pytest.approx([100, 300], abs=NEAR)


@each_paper
def test_a_spacing_of_5_m_goes_over_many_pieces_and_stays_exact(paper: Paper) -> None:
    plan = bed_of({"length": "60 m", "width": "8 m"}, {}, in_row="5 m", row_spacing="5 m", edge="1 m")
    glued = strip(plan, "in the row", paper)
    assert len(glued.joins) >= 18
    assert glued.upper == pytest.approx([2500], abs=NEAR)
    assert glued.repeat == pytest.approx(5000, abs=NEAR)
    assert "many joins" in said(plan, paper)


@each_paper
@pytest.mark.parametrize("pattern", ["straight", "staggered", "twin"])
def test_a_spacing_of_1_cm_and_a_bed_of_1_cm_are_marked(pattern: str, paper: Paper) -> None:
    small = {"in_row": "1 cm", "row_spacing": "1 cm", "edge": "0 cm"}
    plan = bed_of({"length": "40 cm", "width": "8 cm"}, {"pattern": pattern}, **small)
    layout = lay_out_plan(plan)[0].layouts[0]
    glued = strip(plan, "in the row", paper)
    assert_goes_on(glued.upper, glued.repeat, [x for x, _y in rows_of(layout)[0]], glued.zero)
    plan = bed_of({"length": "40 cm", "width": "1 cm"}, {"rows": 1}, **small)
    glued = strip(plan, "rows in a bed", paper)
    assert glued.upper == pytest.approx([5], abs=NEAR)
    assert glued.length == pytest.approx(10, abs=NEAR)
    for page in printed(plan, paper):
        assert_tidy(page)


@each_paper
def test_plants_on_the_mark_begin_at_0_and_are_not_cut_through(paper: Paper) -> None:
    plan = bed_of(PLAIN, {"end_margin": "0 cm"})
    glued = strip(plan, "in the row", paper)
    assert glued.zero == pytest.approx(15, abs=NEAR)
    assert_goes_on(glued.upper, glued.repeat, [200.0 * number for number in range(12)], glued.zero)


@pytest.mark.parametrize("pattern", ["straight", "staggered"])
def test_a_strip_does_not_begin_with_an_end_margin_wider_than_a_spacing(pattern: str) -> None:
    plan = bed_of(PLAIN, {"end_margin": "65 cm", "pattern": pattern})
    glued, rows = strip(plan, "in the row"), rows_of(lay_out_plan(plan)[0].layouts[0])
    assert any("first mark on the row’s first plant" in word for word in glued.words)
    first = rows[0][0][0] - 100
    assert_goes_on(glued.upper, glued.repeat, [x - first for x, _y in rows[0]], glued.zero)
    assert_goes_on(glued.lower or glued.upper, glued.repeat, [x - first for x, _y in rows[1]], glued.zero)


@each_paper
@pytest.mark.parametrize("direction", ["straight", "staggered"])
def test_rows_across_the_bed_have_a_strip_along_it_and_one_across(direction: str, paper: Paper) -> None:
    plan = bed_of(PLAIN, {"direction": Direction.ACROSS.value, "pattern": direction})
    layout = lay_out_plan(plan)[0].layouts[0]
    ranks, across = strip(plan, "rows across the bed every", paper), strip(plan, "across a bed", paper)
    rows = [[row for row in layout.rows if row.count][number::2] for number in (0, 1)]
    moved = direction == "staggered"
    whole = [row.offset / MM for row in layout.rows]
    assert_goes_on(ranks.upper, ranks.repeat, whole[:: 1 + moved], ranks.zero)
    if moved:
        assert_goes_on(ranks.lower, ranks.repeat, whole[1::2], ranks.zero)
    places = [[(run.first + at * run.step) / MM for run in row[0].runs for at in range(run.count)] for row in rows]
    assert across.upper == pytest.approx(places[0], abs=NEAR)
    centre = [600.0]
    assert across.lower == pytest.approx(sorted(places[1] + centre if moved else centre), abs=NEAR)


@each_paper
@pytest.mark.parametrize("plants", [1, 4, 5, 8, 16])
def test_cells_have_their_sides_and_their_plants(plants: int, paper: Paper) -> None:
    plan = bed_of(PLAIN, CELLS | {"plants_per_cell": plants})
    places = [(x / MM, y / MM) for x, y in positions(lay_out_plan(plan)[0].layouts[0]).tolist()]
    along, across = strip(plan, "along the bed", paper), strip(plan, "across a bed", paper)
    assert along.upper == pytest.approx([300, 600, 900], abs=NEAR)
    assert along.lower == pytest.approx(sorted({x for x, _y in places if x < 1200}), abs=NEAR)
    assert across.upper == pytest.approx([300, 600, 900], abs=NEAR)
    rows = {y for _x, y in places}
    assert across.lower == pytest.approx(sorted({*rows, 600.0}), abs=NEAR)
    if plants == 1:
        assert "pages for 1 plant, so use the strips" in said(plan, paper)
        return
    (template,) = templates_in(printed(plan, paper)).values()
    assert template.repeat == pytest.approx(300, abs=NEAR)
    top = template.level[0]
    first = sorted((x, y) for x, y in places if x < 300 and y < 300)
    assert np.array([(x, y - top) for x, y in template.spots]) == pytest.approx(np.array(first), abs=NEAR)


@each_paper
def test_rings_have_a_strip_of_their_radii(paper: Paper) -> None:
    plan = bed_of(ROUND, {"pattern": "rings"})
    layout = lay_out_plan(plan)[0].layouts[0]
    glued = strip(plan, "rings", paper)
    radii = sorted(ring.radius / MM for ring in layout.rings if ring.count)
    assert [at - glued.zero for at in glued.upper] == pytest.approx(radii, abs=NEAR)
    outer = layout.rings[0]
    assert f"radius {outer.radius // CM} cm, {outer.count} plants" in said(plan, paper)


@each_paper
@pytest.mark.parametrize("name", BY_NAME)
def test_every_pattern_in_every_outline_is_printed_tidily(name: str, paper: Paper) -> None:
    for page in printed(bed_of(*BY_NAME[name]), paper):
        assert_tidy(page)


@pytest.mark.parametrize("name", ["L", "taper", "round"])
def test_where_the_outline_cuts_rows_the_first_mark_is_laid_on_the_first_plant(name: str) -> None:
    plan = bed_of(*BY_NAME[name])
    glued = strip(plan, "in the row")
    assert any("first mark on the row’s first plant" in word for word in glued.words)
    for row in rows_of(lay_out_plan(plan)[0].layouts[0]):
        first = row[0][0]
        assert_goes_on(
            glued.upper, glued.repeat, [x - first + glued.upper[0] - glued.zero for x, _y in row], glued.zero
        )


def test_a_staggered_block_in_any_outline_is_counted_from_where_it_begins() -> None:
    plan = bed_of(L_SHAPE, {"pattern": "staggered", "phase": "best"})
    layout = lay_out_plan(plan)[0].layouts[0]
    glued = strip(plan, "in the row")
    for number, row in enumerate(layout.rows):
        marks = [(at - glued.zero) % glued.repeat for at in (glued.lower if number % 2 else glued.upper)]
        for run in row.runs:
            for plant in range(run.count):
                at = ((run.first + plant * run.step - layout.start) / MM) % glued.repeat
                assert min(min(abs(at - mark), glued.repeat - abs(at - mark)) for mark in marks) <= NEAR


def test_plantings_with_the_same_spacing_share_a_strip_that_names_them_all() -> None:
    beds = [{"id": f"b{at}", "name": f"Bed {at}", "length": "6 m", "width": "80 cm"} for at in (1, 2, 3)]
    crops = [{"id": name, "name": name, "in_row": "20 cm", "row_spacing": "25 cm"} for name in ("leek", "celery")]
    where: tuple[tuple[str, str, Fields], ...] = (
        ("b1", "leek", {}),
        ("b2", "leek", {}),
        ("b3", "celery", {}),
        ("b3", "leek", {"in_row": "25 cm"}),
    )
    plan = plan_from(beds=beds, crops=crops, plantings=[
        {"id": f"p{at}", "bed": bed, "crop": crop, "from": f"{3 * (at == 3)} m", "length": "2 m"} | more
        for at, (bed, crop, more) in enumerate(where)
    ])  # fmt: skip
    found = strips_in(printed(plan))
    assert [one.title.split("· ")[1] for one in found.values() if "in the row" in one.title] == [
        "leek, celery: every 20 cm in the row", "leek: every 25 cm in the row",
    ]  # fmt: skip
    assert any("A Bed 1 · B Bed 2 · C Bed 3" in word for word in found[1].words)
    assert "for A 3 × 10 in Bed 1 · B 3 × 10 in Bed 2 · C 3 × 10 in Bed 3" in printed(plan)[0].text
    assert len([one for one in found.values() if "rows in a bed" in one.title]) == 1
    only = printed(plan, Paper.A4, Choices(beds=frozenset(["b3"])))
    named = {one.title.split("· ")[1].split(":")[0] for one in strips_in(only).values()}
    assert named == {"celery", "leek", "celery, leek"}
    assert "Bed 1" not in " ".join(page.text for page in only)


def test_a_sown_band_has_no_strip_and_that_is_said() -> None:
    plan = bed_of(PLAIN, {"length": "3 m"}, {"pattern": "broadcast", "from": "5 m", "length": "2 m"})
    assert len(strips_in(printed(plan))) == 2
    assert "Leek (B Bed): sown over a band, there is nothing to mark" in printed(plan)[0].text
    with pytest.raises(NothingToPrintError):
        made(bed_of(PLAIN, {"pattern": "broadcast"}), Paper.A4, Kind.STRIPS)
    with pytest.raises(NothingToPrintError):
        made(Plan(), Paper.A4, Kind.STRIPS)


def test_what_is_too_long_for_a_board_is_left_out_and_said() -> None:
    plan = bed_of({"length": "60 m", "width": "20 m"}, {"pattern": "triangular"}, in_row="5 m", edge="1 m")
    words = said(plan)
    assert "a strip of 20.00 m would be too long" in words
    assert "a template would take" in words
    assert strip(plan, "in the row").repeat == pytest.approx(5000, abs=NEAR)


def test_a_strip_says_that_some_of_its_places_are_kept_for_a_later_crop() -> None:
    later = {"keep_clear": "20 cm", "in_ground": "2027-05-20", "rows": 1, "in_row": "60 cm"}
    first = {"in_ground": "2027-04-01", "out": "2027-06-10"}
    keeps, cuts_first = first | {"reserved": "leave places empty"}, first
    assert "leave the places empty that the bed sheet keeps" in said(bed_of(PLAIN, keeps, later))
    assert "leave the places empty" not in said(bed_of(PLAIN, cuts_first, later))


@pytest.mark.parametrize("name", [
    "Λάχανο & κουνουπίδι", "Капуста белокочанная", "Cải bẹ xanh đuôi phụng", "<b>Leek</b> &amp; %s {0}", "=1+1",
    " ".join(["Long winter leek"] * 18),
])  # fmt: skip
@each_paper
def test_names_are_printed_as_they_were_typed(name: str, paper: Paper) -> None:
    plan = plan_from(
        beds=[{"id": "b", "name": f"{name}, bed", "length": "6 m", "width": "80 cm"}],
        crops=[{"id": "c", "name": name, "in_row": "20 cm", "row_spacing": "25 cm"}],
        plantings=[{"id": "p", "bed": "b", "crop": "c", "pattern": "staggered"}],
    )
    pages = printed(plan, paper)
    listed = re.sub(r" pages? \d(–\d)? ", " ", pages[0].text)
    assert f"{name}: every" in listed
    assert f"{name}, bed" in listed
    start = name if len(name) < 40 else name[:40]
    assert all(one.title.startswith(f"{number} · {start}") for number, one in strips_in(pages).items())
    assert all("every 20 cm in the row" in one.title for one in strips_in(pages).values() if one.number == 1)
    for page in pages:
        assert_tidy(page)


def test_a_sign_without_a_letter_is_replaced_and_that_is_said() -> None:
    for page in printed(bed_of(PLAIN, {"pattern": "staggered"}, name="Leek \N{LEAFY GREEN}")):
        assert f"{MISSING} stands for a sign" in page.text or MISSING not in page.text
        assert_tidy(page)


def test_each_piece_says_what_it_is_of_which_plan_and_where_the_head_is() -> None:
    for glued in strips_in(printed(hand_worked("s1"))).values():
        text = " ".join(glued.words)
        pieces = len(glued.joins) + 1
        for words in ("Upper Sill", "printed Mon 1 Mar 2027", "version", f"piece {pieces} of {pieces}"):
            assert words in text
        assert text.count("← HEAD") + text.count("← LEFT EDGE") == pieces


@each_paper
@pytest.mark.parametrize("pattern", ["straight", "staggered"])
@pytest.mark.parametrize(("in_row", "end"), [("4 cm", "120"), ("5 cm", "120"), ("25 cm", "100"), ("1½ in", "118.1")])
def test_a_strip_has_its_length_at_its_end_and_each_figure_at_its_mark(
    in_row: str, end: str, pattern: str, paper: Paper
) -> None:
    plan = bed_of(PLAIN | {"width": "90 cm"}, {"pattern": pattern}, in_row=in_row)
    pages = [page for page in printed(plan, paper) if "Spacing strips, true size" in page.text]
    figures = [(page, words) for page in pages for words in page.words if round(words.size) == 17]
    assert end in {words.text for _page, words in figures}
    for page, words in figures:
        left, bottom, right, top = words.box
        upright = [path.box for path in page.paths if len(path.corners) == 2 and path.size[0] < 0.01]
        sides = [(path.box[at], *path.box[1:]) for path in page.paths if path.closed for at in (0, 2)]
        near = [line for line in (*upright, *sides) if line[1] < top + 40 and line[3] > bottom - 40]
        assert any(left - 6 <= line[0] <= right + 24 for line in near), f"{words.text}, or its unit"


@pytest.mark.parametrize(("in_row", "units", "last", "end"), [
    ("1½ in", "feet and inches", "47¼″", "48″"), ("5 cm", "metric", "117.5", "120"), ("4 cm", "metric", "118", "120"),
])  # fmt: skip
def test_the_last_mark_has_its_own_figure_and_the_end_stands_clear_of_it(
    in_row: str, units: str, last: str, end: str
) -> None:
    """The end's figure right under the last arrow was read as the figure of that arrow."""
    pages = printed(bed_of(PLAIN, {"rows": 3}, in_row=in_row, units=units))
    (page,) = (page for page in pages if any(words.text.startswith("here 0 comes next") for words in page.words))
    large = {words.text: words.box for words in page.words if round(words.size) == 17}
    mark, length = large[last], large[end]
    assert mark[2] + 8 <= length[0] or not (mark[1] < length[3] and length[1] < mark[3])


def test_the_end_of_a_strip_does_not_stand_under_the_last_side_of_its_cells() -> None:
    """Cells from 1 cm to 121 cm in a box 122 cm wide: with 122 under the mark at 121 the strip seemed to be wrong."""
    plan = bed_of(PLAIN | {"width": "122 cm"}, CELLS, in_row="30 cm", edge="1 cm")
    assert max(strip(plan, "across a bed").upper) == pytest.approx(1210, abs=NEAR)
    (page,) = (page for page in printed(plan) if any("right edge" in words.text for words in page.words))
    large = {words.text: words.box for words in page.words if round(words.size) == 17}
    assert large["122"][3] < large["121"][1]


@each_paper
def test_each_row_of_a_strip_is_numbered_also_where_a_piece_ends(paper: Paper) -> None:
    plan = bed_of(PLAIN | {"width": "1.7 m"}, {}, row_spacing="30 cm", edge="25 cm")
    long = Choices(board=170 * CM)
    glued = strip(plan, "rows in a bed", paper, long)
    assert len(glued.upper) == 5
    for number in range(1, 6):
        assert any(re.search(rf"row {number}\b", word) for word in glued.words)
    for page in printed(plan, paper, long):
        assert_tidy(page)


@each_paper
def test_a_template_says_on_each_tile_of_which_crop_it_is(paper: Paper) -> None:
    near = {"in_row": "10 cm", "row_spacing": "15 cm", "name": "Butterhead lettuce"}
    pages = printed(bed_of(PLAIN, {"pattern": "staggered"}, **near), paper)
    tiles = [page.text for page in pages if "Template" in page.text]
    assert tiles
    assert all("Butterhead lettuce" in text for text in tiles)


def test_joins_have_the_same_number_on_both_pieces() -> None:
    for glued in strips_in(printed(hand_worked("s1"))).values():
        numbers = [word for word in glued.words if word.isdecimal() and 1 <= int(word) <= len(glued.joins)]
        assert glued.joins
        for join in range(1, len(glued.joins) + 1):
            assert numbers.count(str(join)) >= 2


def test_the_list_says_on_which_page_each_board_begins_and_so_do_the_bookmarks() -> None:
    plan = hand_worked("s4")
    pdf = made(plan, Paper.A4, Kind.STRIPS).pdf
    pages, marks = pages_of(pdf), bookmarks_of(pdf)
    assert marks[0] == ("What to make", 0)
    for words, page in marks[1:]:
        assert words.split(" · ")[1].split(":")[0] in pages[page].text
        assert re.search(rf"pages? {page + 1}\b", pages[0].text)
    read = strips_in(pages)
    for number, glued in read.items():
        on = [at for at, page in enumerate(pages, 1) if any(word.text == glued.title for word in page.words)]
        told = f"page {on[0]}" if on[0] == on[-1] else f"pages {on[0]}–{on[-1]}"
        row = next(words for words in pages[0].words if words.text == glued.title.partition(" · ")[2])
        beside = [words.text for words in pages[0].words if abs(words.box[1] - row.box[1]) < 3]
        assert told in beside, number


def test_the_same_plan_gives_the_same_bytes() -> None:
    one, other = (made(hand_worked("s4"), Paper.A4, Kind.STRIPS).pdf for _time in range(2))
    assert one == other


@each_scenario
def test_strips_are_black_on_white(scenario: str) -> None:
    document = pypdfium2.PdfDocument(made(hand_worked(scenario), Paper.A4, Kind.STRIPS).pdf)
    try:
        for page in document:
            assert np.ptp(page.render(scale=1).to_numpy()[..., :3], axis=2).max() == 0
    finally:
        document.close()


def test_a_box_with_posts_has_cells_that_are_laid_on_the_first_one() -> None:
    plan = bed_of(BOX, CELLS | {"plants_per_cell": 5})
    assert "0 on the head side of the row’s first cell" in said(plan)
    assert isinstance(next(iter(templates_in(printed(plan)).values())), Template)
    assert nm("30 cm") == lay_out_plan(plan)[0].layouts[0].grid.cell


def test_rows_of_a_bed_that_is_wider_than_the_board_are_left_to_the_tape() -> None:
    plan = bed_of(PLAIN | {"width": "1.7 m"}, {"rows": 3})
    assert not any("rows in a bed" in one.title for one in strips_in(printed(plan)).values())
    words = "Leek (A Bed): a strip of 1.70 m across the bed is longer than the board, a tape does better"
    assert words in said(plan)
    assert strip(plan, "rows in a bed", choices=Choices(board=160 * CM)).length == pytest.approx(1700, abs=NEAR)


@pytest.mark.parametrize(("rows", "words"), [
    (2, "upper edge: row 1, lower edge: row 2"), (3, "upper edge: rows 1, 3, lower edge: row 2"),
    (4, "upper edge: rows 1, 3, lower edge: rows 2, 4"), (5, "upper edge: rows 1, 3 …, lower edge: rows 2, 4"),
])  # fmt: skip
def test_a_staggered_strip_names_no_row_that_is_not_there(rows: int, words: str) -> None:
    plan = bed_of(PLAIN, {"pattern": "staggered", "rows": rows}, row_spacing="20 cm")
    assert words in printed(plan)[0].text
    assert any(words in word for word in strip(plan, "in the row").words)
    assert f"row {rows + 1}" not in said(plan)


def test_a_strip_that_goes_on_beyond_its_length_says_up_to_where_it_is_measured() -> None:
    """The last plant of a staggered row lies where the strip ends, so the paper goes on behind a dashed line."""
    plan = bed_of(PLAIN, {"pattern": "staggered", "rows": 3})
    glued = strip(plan, "in the row")
    assert glued.length == pytest.approx(glued.repeat + 15, abs=NEAR)
    assert "120 cm from 0 to the dashed line at the end" in printed(plan)[0].text
    assert any("0 comes next on the dashed line" in word for word in glued.words)
    assert "100 cm from 0 to end" in printed(bed_of(PLAIN, {"rows": 3}, in_row="25 cm"))[0].text


def test_a_strip_says_that_nothing_is_planted_where_an_obstacle_breaks_a_row() -> None:
    words = "where an obstacle breaks a row, plant nothing between its two runs"
    post = {"obstacles": [{"name": "post", "x": "5 m", "y": "30 cm", "diameter": "10 cm", "keep_clear": "10 cm"}]}
    assert words in said(bed_of(PLAIN | post, {"pattern": "staggered"}))
    assert words not in said(bed_of(PLAIN, {"pattern": "staggered"}))


def test_rows_have_the_figures_of_the_bed_sheet() -> None:
    """Rows 10 3/8 in apart begin 6 7/8 in from the edge: a tape is read to a quarter, so both papers say 7."""
    plan = read_plan(sample("larch-bend.gardenplot")).plan
    kale = strip(plan, "Kale: rows in a bed")
    figures = [word for word in kale.words if word in ("7″", "17¼″", "27¾″", "38″")]
    assert len(figures) == len(kale.upper) == 4
    sheets = pages_of(made(plan, Paper.A4, Kind.BEDS).pdf)
    on_sheet = next(words for page in sheets if "Kale" in page.text for words in [[one.text for one in page.words]])
    assert {"7″", "17¼″", "27¾″", "38″"} <= {*" ".join(on_sheet).split()}


def test_the_first_piece_says_which_marks_are_at_which_edge() -> None:
    pages = printed(bed_of(PLAIN, {"pattern": "staggered", "rows": 3}))
    (words,) = {one.text for page in pages for one in page.words if one.text.startswith("← HEAD 0 on")}
    assert words.endswith("upper edge: rows 1, 3, lower edge: row 2")


def test_a_template_of_cells_says_where_its_0_lies_and_where_it_comes_next() -> None:
    plan = bed_of(PLAIN, CELLS | {"cell": "20 cm", "plants_per_cell": 4})
    words = [one.text for page in printed(plan) if "Template" in page.text for one in page.words]
    assert "0" in words
    assert "next 0 here" in words
    assert "then the upper line where the lowest was" in said(plan)
