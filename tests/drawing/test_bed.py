"""A bed as marks: where they lie, and the same object for the same values."""

from datetime import date

import pytest
from attrs import evolve
from hypothesis import given, settings

from gardenplot.drawing.bed import BedFigure, draw_bed, draw_turn
from gardenplot.drawing.detail import Detail
from gardenplot.drawing.letters import looks
from gardenplot.drawing.marks import Hatch, Label, Line, Outline, Pen, Plants, Weight
from gardenplot.drawing.style import Ink
from gardenplot.drawing.turns import turns
from gardenplot.gestures.actual_typed import record
from gardenplot.gestures.kept import layout_in
from gardenplot.layout import lay_out_plan, standing
from gardenplot.layout.positions import positions
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_bed, change_place, move_planting
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.units import MM, Units, parse_length
from tests.drawing.hand_worked import hand_worked, only_bed
from tests.plans import metric_plan, plans

SPRING = date(2027, 4, 9)


def figures(plan: Plan, day: date | None = None) -> list[BedFigure]:
    """Each bed of a plan, drawn."""
    return [draw_bed(laid, day, looks(plan), plan.place.units) for laid in lay_out_plan(plan)]


def areas(figure: BedFigure, hatch: Hatch | None) -> list[tuple[float, float]]:
    """From where to where along the bed the areas with a hatch reach."""
    outlines = [mark for mark in figure.marks if isinstance(mark, Outline) and mark.hatch is hatch]
    return [(min(x for x, _y in one.points), max(x for x, _y in one.points)) for one in outlines]


def test_a_plan_that_did_not_change_is_drawn_as_the_very_same_figures() -> None:
    plan = metric_plan()
    again = plan_of_text(text_of(plan)).plan
    assert again is not plan
    for day in (None, SPRING):
        assert all(one is other for one, other in zip(figures(plan, day), figures(again, day), strict=True))


def test_only_the_bed_that_changed_is_drawn_anew() -> None:
    plan = metric_plan()
    after = move_planting(plan, "p2", "b2", parse_length("1 m"))
    (tunnel, field), (same, other) = figures(plan), figures(after)
    assert same is tunnel
    assert other is not field


def test_the_name_of_the_place_is_not_in_the_drawing_but_its_units_are() -> None:
    plan = metric_plan()
    assert figures(change_place(plan, name="Elsewhere"))[0] is figures(plan)[0]
    assert figures(change_place(plan, units=Units.DECIMAL_FEET))[0] != figures(plan)[0]


@settings(max_examples=25)
@given(plans())
def test_every_layout_has_one_mark_of_all_its_plants_or_is_a_sown_band(plan: Plan) -> None:
    for laid, figure in zip(lay_out_plan(plan), figures(plan), strict=True):
        assert (figure.length, figure.width) == (laid.bed.length.nm / MM, laid.bed.width.nm / MM)
        drawn = [mark.layout for mark in figure.marks if isinstance(mark, Plants)]
        bands = len(areas(figure, Hatch.SOWN))
        assert len(drawn) + bands == len(laid.layouts)
        assert set(drawn) <= set(laid.layouts)
        assert sum(len(positions(layout)) for layout in drawn) == sum(layout.plants for layout in drawn)


@settings(max_examples=25)
@given(plans())
def test_on_a_day_only_what_stands_is_drawn_and_a_turn_as_on_its_day(plan: Plan) -> None:
    look, units = looks(plan), plan.place.units
    for laid in lay_out_plan(plan):
        for turn in turns(laid):
            figure = draw_turn(laid, turn, look, units)
            assert {mark.layout for mark in figure.marks if isinstance(mark, Plants)} <= set(turn)
        on_day = draw_bed(laid, SPRING, look, units)
        assert on_day is draw_turn(laid, standing(laid, SPRING), look, units)


def test_the_marks_of_s1_lie_where_it_was_worked_out() -> None:
    (figure,) = figures(hand_worked("s1"))
    assert areas(figure, Hatch.SLANTED) == [(11_050, 11_700)]
    lines = [mark for mark in figure.marks if isinstance(mark, Line)]
    stakes = [line.start[0] for line in lines if line.pen.weight is Weight.STAKE]
    assert stakes == [300, 7100, 7300, 11_050]
    assert [line.start[0] for line in lines if line.pen.ink is Ink.EDGE] == [300, 11_700]
    across = [line for line in lines if line.start[0] == line.end[0]]
    assert len(across) == 6
    assert {(line.start[1], line.end[1]) for line in across} == {(0, 750)}
    rows = [line.start[1] for line in lines if line.pen.weight is Weight.ROW and line.pen.ink is not Ink.EDGE]
    assert rows == [75, 275, 475, 675, 125, 375, 625]
    (left,) = (mark for mark in figure.marks if isinstance(mark, Label))
    assert (left.texts, left.room) == (("65\u2009cm left", "65\u2009cm"), 650)


def test_soil_blocks_and_leftover_of_s1_take_the_whole_width() -> None:
    (figure,) = figures(hand_worked("s1"))
    outlines = [mark.points for mark in figure.marks if isinstance(mark, Outline)]
    assert outlines[0] == ((0, 0), (12_000, 0), (12_000, 750), (0, 750))
    assert {y for points in outlines for _x, y in points} == {0, 750}
    assert [(points[0][0], points[1][0]) for points in outlines[1:]] == [
        (11_050, 11_700),
        (300, 7100),
        (7300, 11_050),
    ]


def test_a_bed_without_margins_has_no_lines_for_them() -> None:
    plan = change_bed(hand_worked("s1"), "b2", head_margin=None, foot_margin=None)
    (figure,) = figures(plan)
    assert [mark for mark in figure.marks if isinstance(mark, Line) and mark.pen.ink is Ink.EDGE] == []


def test_plants_of_s1_do_not_touch() -> None:
    (figure,) = figures(hand_worked("s1"))
    spreads = [mark.spread for mark in figure.marks if isinstance(mark, Plants)]
    assert all(0 < spread < spacing for spread, spacing in zip(spreads, (200, 250), strict=True))


def test_what_stands_into_its_neighbour_is_crossed_out_as_far_as_it_does() -> None:
    plan = move_planting(hand_worked("s1"), "p2", "b2", parse_length("6.97 m"))
    (figure,) = figures(plan)
    assert areas(figure, Hatch.CROSSED) == [(6970, 7100)]
    (trouble,) = (mark for mark in figure.marks if isinstance(mark, Outline) and mark.hatch is Hatch.CROSSED)
    assert trouble.pen is not None
    assert trouble.pen.ink is Ink.ACCENT


def test_what_runs_past_the_foot_margin_is_crossed_out_there() -> None:
    plan = change_bed(hand_worked("s1"), "b2", foot_margin=parse_length("1.2 m"))
    assert areas(figures(plan)[0], Hatch.CROSSED) == [(10_800, 11_050)]


def test_trouble_is_drawn_only_where_both_in_it_are() -> None:
    plan = move_planting(hand_worked("s1"), "p2", "b2", parse_length("6.97 m"))
    laid = only_bed(plan)
    (first, second), units = laid.layouts, plan.place.units
    for layouts in ((first,), (second,)):
        assert areas(draw_turn(laid, layouts, looks(plan), units), Hatch.CROSSED) == []


def test_plants_are_drawn_as_wide_as_their_crop_grows_or_as_their_spacing_leaves_them() -> None:
    plan = metric_plan()
    grown = evolve(plan, crops=tuple(evolve(crop, spread=parse_length("32 cm")) for crop in plan.crops))
    for wide, marks in ((True, figures(grown)), (False, figures(plan))):
        plants = [mark for figure in marks for mark in figure.marks if isinstance(mark, Plants)]
        assert plants
        for mark in plants:
            least = min(mark.layout.grid.in_row, mark.layout.grid.between) / MM
            assert mark.spread == 320 if wide else mark.spread < least


@pytest.mark.parametrize("detail", Detail)
def test_what_is_in_the_ground_has_a_frame_and_what_is_only_planned_has_none(detail: Detail) -> None:
    plan = metric_plan()
    there = record(plan, "p2", "set_out", SPRING)
    framed = []
    for each in (plan, there):
        drawn = [draw_bed(laid, None, looks(each), Units.METRIC, detail) for laid in lay_out_plan(each)]
        marks = [mark for figure in drawn for mark in figure.marks if isinstance(mark, Outline)]
        framed.append([mark for mark in marks if mark.pen and mark.pen.weight is Weight.STAKE])
    layout = layout_in(there, "p2")
    assert framed[0] == []
    (frame,) = framed[1]
    assert {x for x, _y in frame.points} == {layout.start / MM, layout.end / MM}
    assert frame.pen == Pen(looks(there)["p2"].ink, Weight.STAKE)
