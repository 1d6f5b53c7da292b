"""Covers, hoops and drip lines as marks: where they truly stand, and only on their days."""

from datetime import date
from fractions import Fraction
from itertools import combinations, pairwise
from math import dist

from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.bed import draw_bed
from gardenplot.drawing.cautions import COVERS
from gardenplot.drawing.cover_words import cover_lines, drip_lines
from gardenplot.drawing.covers import (
    EVERY_LAYER,
    PLAIN,
    Layer,
    Over,
    cover_marks,
    drip_marks,
    jug_marks,
    on_paper,
    over_bed,
    standing_covers,
)
from gardenplot.drawing.detail import Detail
from gardenplot.drawing.letters import looks
from gardenplot.drawing.marks import Hatch, Line, Mark, Outline, Plants, Shape, Weight
from gardenplot.drawing.style import Ink
from gardenplot.files import sample
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan, edits
from gardenplot.plan.file import read_plan
from gardenplot.supplies import cover_cut
from gardenplot.supplies.jugs import jug_heat, jugs_at
from gardenplot.units import CM, MM
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.goods import jugs as any_jugs
from tests.plans import covers, metric_plan, plans

COVERED = plan_from(
    beds=[{"id": "b1", "name": "North", "length": "15 m", "width": "80 cm", "drip_lines": ["20 cm", "60 cm"]}],
    covers=[{"id": "c", "bed": "b1", "from": "1 m", "to": "9 m", "on": "2027-04-01", "off": "2027-05-01",
             "hoop_spacing": "1.5 m", "end": "50 cm"}],
)  # fmt: skip
L_SHAPE = [["0 m", "0 m"], ["6 m", "0 m"], ["6 m", "1 m"], ["2 m", "1 m"], ["2 m", "3 m"], ["0 m", "3 m"]]


def drawn(plan: Plan, day: date | None, layers: frozenset[Layer], detail: Detail = Detail.PLANTS) -> tuple[Mark, ...]:
    """The marks of the first bed of a plan with some layers."""
    laid = lay_out_plan(plan)[0]
    over = over_bed(plan, laid.bed.id, day, layers)
    return draw_bed(laid, day, looks(plan), plan.place.units, detail, over).marks


@given(plans(least_beds=1), st.data())
def test_hoops_stand_from_end_to_end_at_the_spacing_that_is_cut(plan: Plan, data: st.DataObject) -> None:
    cover = data.draw(covers([plan.beds[0].id]))
    cut = cover_cut(plan.beds[0], cover)
    stand = cut.hoop_readings
    assert len(stand) == (cut.hoops or 0)
    if stand:
        assert (stand[0], stand[-1]) == (cover.start.nm, cover.end.nm)
        assert cover.hoop_spacing is not None
        apart = [after - one for one, after in pairwise(stand)]
        assert all(one <= cover.hoop_spacing.nm for one in apart)
        assert max(apart) - min(apart) <= 1


def test_a_cover_is_drawn_on_the_days_that_it_stands() -> None:
    on = [date(2027, 3, 31), date(2027, 4, 1), date(2027, 4, 30), date(2027, 5, 1)]
    assert [len(standing_covers(COVERED, "b1", day)) for day in on] == [0, 1, 1, 0]
    assert len(standing_covers(COVERED, "b1", None)) == 1
    shown = [drawn(COVERED, day, frozenset({Layer.COVERS})) for day in on]
    assert [len(marks) - len(shown[0]) for marks in shown] == [0, 3 + 3 * 7, 3 + 3 * 7, 0]


def test_hoops_are_quieter_than_stakes() -> None:
    """They are thinner, in the second ink, and stay within the bed; stakes stand out of it."""
    feet = {
        at / MM + 90 * way for at in cover_cut(COVERED.beds[0], COVERED.covers[0]).hoop_readings for way in (-1, 1)
    }
    lines = [mark for mark in cover_marks(COVERED.beds[0], COVERED.covers[0]) if isinstance(mark, Line)]
    assert {line.start[0] for line in lines if line.start[1] == line.end[1]} <= feet
    assert all(line.pen.ink is Ink.SECOND and line.pen.weight < Weight.STAKE and not line.overhang for line in lines)


def test_the_cover_of_the_sample_ends_where_its_block_does_and_lies_on_no_other() -> None:
    plan = read_plan(sample("kestrel-howe.gardenplot")).plan
    cover = plan.covers[0]
    blocks = next(laid for laid in lay_out_plan(plan) if laid.bed.id == cover.bed).layouts
    under = [one for one in blocks if one.start < cover.end.nm and cover.start.nm < one.end]
    assert len(under) == 1
    assert abs(under[0].end - cover.end.nm) <= CM
    beyond = cover.end.nm + (cover.cloth_end.nm if cover.cloth_end else 0)
    assert all(one is under[0] or one.start >= beyond for one in blocks)


def test_from_afar_a_cover_is_its_cloth_alone() -> None:
    near, far = (drawn(COVERED, None, EVERY_LAYER, detail) for detail in Detail)
    cloth = next(mark for mark in near if isinstance(mark, Outline) and mark.points[0] == (1000, 0))
    assert cloth in far
    assert not any(isinstance(mark, Line) and mark.start[0] == mark.end[0] == 1000 for mark in far)


def test_drip_lines_lie_where_they_are_typed_and_only_where_the_bed_has_ground() -> None:
    first, second = drip_marks(COVERED.beds[0])
    assert isinstance(first, Line)
    assert isinstance(second, Line)
    assert (first.start, first.end, second.start) == ((0, 200), (15_000, 200), (0, 600))
    bed = plan_from(beds=[{"id": "b", "name": "L", "outline": L_SHAPE, "drip_lines": "2 m"}]).beds[0]
    (line,) = drip_marks(bed)
    assert isinstance(line, Line)
    assert (line.start, line.end) == ((0, 2000), (2000, 2000))


def test_each_layer_is_shown_or_hidden_by_itself() -> None:
    plan = edits.change_bed(hand_worked("s3"), hand_worked("s3").beds[0].id, drip_lines=COVERED.beds[0].drip_lines)
    posted = plan_from(
        beds=[{"id": "b", "name": "Post", "length": "5 m", "width": "1 m",
               "obstacles": [{"name": "post", "x": "2 m", "y": "50 cm", "diameter": "10 cm"}]}]
    )  # fmt: skip
    day = lay_out_plan(plan)[0].grown[0].dates.in_ground
    asked = {
        Layer.LEFTOVER: (posted, _is_leftover),
        Layer.OBSTACLES: (posted, _is_post),
        Layer.DRIP_LINES: (plan, _is_drip_line),
        Layer.RESERVED: (plan, _is_reserved),
    }
    for layer, (shown, is_it) in asked.items():
        alone, without = drawn(shown, day, frozenset({layer})), drawn(shown, day, EVERY_LAYER - {layer})
        assert any(is_it(mark) for mark in alone), layer
        assert not any(is_it(mark) for mark in without), layer


def _is_leftover(mark: Mark) -> bool:
    return isinstance(mark, Outline) and mark.hatch is Hatch.SLANTED


def _is_post(mark: Mark) -> bool:
    return isinstance(mark, Outline) and mark.fill is Ink.INK


def _is_drip_line(mark: Mark) -> bool:
    return isinstance(mark, Line) and mark.pen.dashed


def _is_reserved(mark: Mark) -> bool:
    return isinstance(mark, Plants) and mark.shape is Shape.RING and mark.ink is Ink.ACCENT


@given(plans())
def test_without_layers_of_the_window_a_bed_is_drawn_as_on_paper(plan: Plan) -> None:
    for laid in lay_out_plan(plan):
        units, look = plan.place.units, looks(plan)
        assert draw_bed(laid, None, look, units, Detail.PLANTS, PLAIN) is draw_bed(laid, None, look, units)
        assert draw_bed(laid, None, look, units, Detail.PLANTS, Over(frozenset())).bed == laid.bed.id


def test_covers_in_words() -> None:
    words = [line.replace("\u2009", " ") for line in cover_lines(COVERED, "b1")]
    stands = "1.00 – 9.00 m, Thu 1 Apr 2027 to Sat 1 May 2027, 7 hoops 1.33 m apart"
    assert words == ["Covers", stands, COVERS]
    assert cover_lines(evolve(COVERED, covers=()), "b1") == ()


def test_rows_are_told_their_distance_from_the_nearest_drip_line() -> None:
    plan = edits.change_bed(metric_plan(), "b1", drip_lines=COVERED.beds[0].drip_lines)
    laid = lay_out_plan(plan)[0]
    offsets = [row.offset for row in laid.layouts[0].rows]
    nearest = [min(abs(offset - line) for line in (20 * CM, 60 * CM)) for offset in offsets]
    (title, words) = drip_lines(laid, looks(plan), plan.place.units)
    assert title == "Rows from the nearest drip line"
    assert words.replace("\u2009", " ") == "A  " + ", ".join(f"{nm / CM:g} cm" for nm in nearest)
    assert drip_lines(lay_out_plan(metric_plan())[0], looks(plan), plan.place.units) == ()


@given(plans(least_beds=1), st.data())
def test_as_many_jugs_stand_round_a_stretch_as_are_on_the_list_outside_it_and_beside_one_another(
    plan: Plan, data: st.DataObject
) -> None:
    bed, jugs = plan.beds[0], data.draw(any_jugs([plan.beds[0].id]))
    places, across = jugs_at(bed, jugs), jugs.diameter.nm
    assert len(places) == jug_heat(bed, jugs).count.value
    for x, y in places:
        beyond = max(jugs.start.nm - x, x - jugs.end.nm, -y, y - bed.width.nm)
        assert beyond == Fraction(across, 2)
    if jugs.count is None:
        near = [dist((float(one[0]), float(one[1])), (float(two[0]), float(two[1])))
                for one, two in combinations(places, 2)]  # fmt: skip
        assert min(near, default=across) >= across - 1


WITH_JUGS = plan_from(
    {"units": "metric"},
    beds=[{"id": "b1", "name": "North", "length": "15 m", "width": "80 cm"}, {"id": "b2", "name": "South",
           "length": "15 m", "width": "80 cm"}],
    jugs=[{"id": "j", "bed": "b1", "from": "2 m", "to": "4 m", "volume": "5 l", "diameter": "20 cm"}],
)  # fmt: skip


def test_jugs_are_a_layer_of_their_own_as_wide_as_they_are() -> None:
    """By hand: (200 + 2 x 20) / 20 = 12 along each side, 80 / 20 = 4 at each end; the first at 1.90 m, 10 cm out."""
    (jugs,), bed = WITH_JUGS.jugs, WITH_JUGS.beds[0]
    marks = jug_marks(bed, jugs)
    assert len(marks) == 2 * 12 + 2 * 4
    first = marks[0]
    assert isinstance(first, Outline)
    assert first.circle is not None
    assert (first.circle.middle, first.circle.radius) == ((1900, -100), 100)
    shown, hidden = drawn(WITH_JUGS, None, EVERY_LAYER), drawn(WITH_JUGS, None, EVERY_LAYER - {Layer.JUGS})
    assert set(marks) <= set(shown)
    assert not set(marks) & set(hidden)


def test_jugs_are_drawn_on_paper_within_what_a_page_keeps_free_beside_the_bed() -> None:
    units, look, (bed, other) = WITH_JUGS.place.units, looks(WITH_JUGS), lay_out_plan(WITH_JUGS)
    figure = draw_bed(bed, None, look, units, over=on_paper(WITH_JUGS, "b1"))
    assert set(jug_marks(bed.bed, WITH_JUGS.jugs[0])) <= set(figure.marks)
    assert figure.rim == 200
    assert on_paper(WITH_JUGS, other.bed.id) is PLAIN
