"""The ground drawn: beds true to scale where they lie, words that can be read, what lies under a point."""

from math import cos, hypot, radians

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.covers import EVERY_LAYER
from gardenplot.drawing.ground import GroundFigure, Says, Sign, bed_marks, draw_ground, upright
from gardenplot.drawing.ground_marks import north_letter, north_marks, scale_bar
from gardenplot.drawing.ground_under import CLOSEST, FARTHEST, Eye, eye_on, handle_at, on_ground
from gardenplot.drawing.ground_words import loose_line, place_line, scale_line, strip_words, trouble_line
from gardenplot.drawing.letters import looks
from gardenplot.drawing.marks import Label, Outline
from gardenplot.drawing.style import Ink
from gardenplot.plan import Plan, edits
from gardenplot.plan.ground import frames_of
from gardenplot.units import MM, Degrees, Units, parse_degrees, parse_length
from tests.drawing.hand_worked import plan_from
from tests.layout.ground import Fields
from tests.plans import metric_plan, plans, turns

BED: Fields = {"id": "a", "name": "Alder", "length": "10 m", "width": "80 cm"}
NEXT: Fields = {"id": "b", "name": "Birch", "length": "10 m", "width": "80 cm", "slope": "6 %"}
TUNNEL: Fields = {
    "id": "t", "name": "Glass", "x": "3 m", "y": "3 m", "length": "14 m", "width": "5 m", "cold_edge": "50 cm",
}  # fmt: skip
FULL = Eye(0.05, 100.0, 60.0)


def ground(turn: str = "0°", **more: list[Fields]) -> Plan:
    """Alder at 5 m by 4 m, turned, and Birch 2 m below it."""
    places: list[Fields] = [{"bed": "a", "x": "5 m", "y": "4 m", "turn": turn}, {"bed": "b", "x": "5 m", "y": "6 m"}]
    return plan_from({"units": "metric"}, **({"beds": [BED, NEXT], "ground": places} | more))


def sign(figure: GroundFigure, about: str, says: Says = Says.BED) -> Sign:
    """The words about a part of the plan."""
    return next(one for one in figure.signs if (one.about, one.says) == (about, says))


@settings(max_examples=60)
@given(plans())
def test_every_bed_is_drawn_true_to_scale_within_the_box_of_the_ground(plan: Plan) -> None:
    figure = draw_ground(plan, None)
    assert [one.bed for one in figure.beds] == [bed.id for bed in plan.beds]
    left, top, right, bottom = figure.reach
    for one in figure.beds:
        (x1, y1), (x2, y2) = one.corners[0], one.corners[1]
        (u1, v1), (u2, v2) = (one.frame.from_ground(x * MM, y * MM) for x, y in one.corners[:2])
        assert hypot(x2 - x1, y2 - y1) == pytest.approx(hypot(u2 - u1, v2 - v1) / MM, abs=1e-3)
        assert all(left <= x <= right and top <= y <= bottom for x, y in one.corners)
    assert {one.about for one in figure.signs if one.says is Says.BED} == {bed.id for bed in plan.beds}


@given(turns())
def test_words_never_stand_on_their_head(turn: Degrees) -> None:
    angle, flipped = upright(turn.turn)
    assert -90 <= angle < 90
    assert cos(radians(angle)) == pytest.approx(cos(radians(turn.turn)) * (-1 if flipped else 1), abs=1e-9)


def test_a_name_stands_beyond_the_head_or_else_along_an_edge() -> None:
    stands = sign(draw_ground(ground(), None), "a").stands
    assert [(one.at, one.side, one.above) for one in stands] == [
        ((5000, 4400), -1, 0), ((5000, 4000), 1, 2), ((5000, 4800), 1, -2), ((10_000, 4000), 0, 2),
        ((10_000, 4800), 0, -2),
    ]  # fmt: skip


def test_a_bed_turned_right_about_has_its_name_right_of_its_head_and_reads_from_there() -> None:
    one = sign(draw_ground(ground("180°"), None), "a")
    assert (one.stands[0].at, one.stands[0].side, one.turn) == ((5000, 3600), 1, 0)


def test_words_keep_clear_of_beds_and_walls_and_if_they_can_of_the_cold_edge() -> None:
    figure = draw_ground(ground(tunnels=[TUNNEL]), None)
    assert len(figure.solid) == 2 + 4
    assert figure.solid[0] == ((5000, 4000), (15_000, 4000), (15_000, 4800), (5000, 4800))
    assert figure.lines[0] == ((3500, 3500), (16_500, 3500))


def test_blocks_have_their_letter_in_the_middle_of_their_ground() -> None:
    plan = edits.place_beds(metric_plan())
    block = sign(draw_ground(plan, None), "p1", Says.BLOCK)
    frame = frames_of(plan)["b1"]
    assert block.words[-1] == "A"
    assert block.stands[0].at[0] == pytest.approx((frame.x + parse_length("5.3 m").nm) / MM)
    assert block.ink.startswith("planting")


def test_a_tunnel_has_walls_and_a_dashed_cold_edge_and_a_path_is_a_tinted_strip() -> None:
    way: Fields = {"id": "w", "name": "Way", "x": "0 m", "y": "9 m", "length": "20 m", "width": "1 m"}
    figure = draw_ground(ground(tunnels=[TUNNEL], paths=[way]), None)
    path, edge, inner, walls = (mark for mark in figure.under if isinstance(mark, Outline))
    assert path.points[0] == (0, 9000)
    assert (edge.points[0], inner.points[0], walls.points[2]) == ((3000, 3000), (3500, 3500), (17_000, 8000))
    assert inner.pen is not None
    assert inner.pen.dashed


def test_a_slope_is_an_arrow_down_to_the_head_with_its_share() -> None:
    figure = draw_ground(ground(), None)
    arrow = figure.over[0]
    assert arrow.start[0] > arrow.end[0]  # type: ignore[union-attr]  # the shaft is a line
    assert sign(figure, "b", Says.SLOPE).words == ("6 % down", "6 %")


def test_the_marks_of_a_bed_are_those_of_its_strip_without_their_words() -> None:
    plan = metric_plan()
    (one, _other) = draw_ground(plan, None).beds
    marks = bed_marks(plan, looks(plan), one, None, 0.05, EVERY_LAYER)
    assert marks
    assert not any(isinstance(mark, Label) for mark in marks)


def test_what_cannot_be_is_hatched_in_the_accent_where_it_lies() -> None:
    plan = edits.move_bed(ground(), "b", parse_length("9 m"), parse_length("4.5 m"))
    hatched = [mark for mark in draw_ground(plan, None).over if isinstance(mark, Outline)]
    assert [(mark.points[0], mark.pen and mark.pen.ink) for mark in hatched] == [((9000, 4000), Ink.ACCENT)]
    assert trouble_line(plan, "b") == "lies 30\u2009cm into Alder on the ground"
    assert trouble_line(ground(), "b") == ""


def test_where_a_bed_lies_in_words() -> None:
    assert place_line(ground("22.5°"), "a").split("   ") == [
        "Alder",
        "5.00\u2009m from the left",
        "4.00\u2009m from the top",
        "22.5°",
    ]
    assert loose_line(metric_plan()).startswith("No bed has a place yet: all lie side by side with paths of 45")
    assert loose_line(ground()) == ""
    assert loose_line(edits.copy_bed(ground(), "a")).startswith("Dashed beds have no place yet")
    assert strip_words(ground(tunnels=[TUNNEL]).tunnels[0], Units.METRIC).endswith("cold edge 50\u2009cm")
    assert scale_line(0.05, 25.4) == "the ground · scale 1 : 20"


@given(st.floats(0.001, 1.5), st.floats(-500, 500), st.floats(-500, 500), st.floats(0.2, 5))
def test_zooming_keeps_what_lies_under_the_pointer(scale: float, x: float, y: float, factor: float) -> None:
    eye = Eye(scale, 13.0, -70.0)
    after = eye.zoomed(factor, x, y)
    assert after.pixels(eye.spot(x, y)) == pytest.approx((x, y), abs=1e-6)
    assert FARTHEST <= after.scale <= CLOSEST


@given(plans(), st.floats(200, 3000), st.floats(200, 2000))
def test_the_whole_ground_is_seen_with_its_margin(plan: Plan, width: float, height: float) -> None:
    reach = draw_ground(plan, None).reach
    eye = eye_on(reach, (width, height), 40.0)
    left, top = eye.pixels(reach[:2])
    right, bottom = eye.pixels(reach[2:])
    assert left >= 39
    assert top >= 39
    assert right <= width - 39
    assert bottom <= height - 39


@settings(max_examples=60)
@given(turns(), st.floats(0.05, 9.9), st.floats(0.05, 0.75))
def test_every_place_in_a_bed_is_found_under_its_point(turn: Degrees, reading: float, offset: float) -> None:
    plan = edits.turn_bed(ground(), "a", parse_degrees(turn.text))
    figure = draw_ground(plan, None)
    one = figure.bed_of("a")
    assert one is not None
    x, y = one.frame.to_ground(reading * 1000 * MM, offset * 1000 * MM)
    found = on_ground(figure, FULL, None, *FULL.pixels((x / MM, y / MM)), chosen="a")
    assert found is not None
    assert (found.bed, found.is_handle) == ("a", False)
    assert found.x / MM == pytest.approx(reading * 1000, abs=0.01)
    assert found.y / MM == pytest.approx(offset * 1000, abs=0.01)


def test_what_lies_under_a_point() -> None:
    plan = edits.place_beds(metric_plan())
    figure = draw_ground(plan, None)
    one = figure.bed_of("b1")
    assert one is not None
    x, y = one.frame.to_ground(5000 * MM, 300 * MM)
    found = on_ground(figure, FULL, None, *FULL.pixels((x / MM, y / MM)))
    assert found is not None
    assert (found.bed, found.planting) == ("b1", "p1")
    assert on_ground(figure, FULL, None, 5, 5) is None
    handle = handle_at(one, FULL)
    assert on_ground(figure, FULL, None, *handle) is None
    held = on_ground(figure, FULL, None, *handle, chosen="b1")
    assert held is not None
    assert held.is_handle


def test_a_bed_slimmer_than_the_hand_can_aim_is_found_close_beside() -> None:
    figure, far = draw_ground(ground(), None), Eye(0.002, 0.0, 0.0)
    x, y = far.pixels((9000, 4400))
    found = on_ground(figure, far, None, x, y - 3)
    assert found is not None
    assert found.bed == "a"


@pytest.mark.parametrize(("units", "px", "words"), [
    (Units.METRIC, 0.05, "2.00 m"), (Units.METRIC, 0.5, "0.50 m"), (Units.FEET_AND_INCHES, 0.02, "20′ 0″"),
])  # fmt: skip
def test_a_scale_bar_is_a_round_length_of_true_size(units: Units, px: float, words: str) -> None:
    bar = scale_bar(units, px)
    assert str(bar.words).replace("\u2009", " ") == words
    assert bar.pixels >= 90
    last = bar.marks[-1]
    assert isinstance(last, Outline)
    assert last.points[1][0] == pytest.approx(bar.pixels)


@pytest.mark.parametrize(("north", "x", "y"), [("0", 0, -41), ("90", 41, 0), ("180", 0, 41), ("-90", -41, 0)])
def test_the_north_arrow_points_north(north: str, x: float, y: float) -> None:
    degrees = parse_degrees(north)
    assert north_letter(degrees) == pytest.approx((x, y), abs=1e-9)
    assert len(north_marks(degrees)) == 3
