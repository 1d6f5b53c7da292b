"""A bed of any outline is drawn as it lies, with what stands in it."""

from gardenplot.drawing.bed import draw_bed
from gardenplot.drawing.letters import looks
from gardenplot.drawing.marks import Line, Outline, Plants
from gardenplot.drawing.sayings import counted
from gardenplot.drawing.style import Ink
from gardenplot.files import sample
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.file import read_plan
from gardenplot.units import MM

PLAN: Plan = read_plan(sample("tarn-garth.gardenplot")).plan


def marks_of(number: int) -> list[object]:
    """The marks of a bed of the sample."""
    return list(draw_bed(lay_out_plan(PLAN)[number], None, looks(PLAN), PLAN.place.units).marks)


def test_the_soil_has_the_outlines_corners() -> None:
    (soil,) = [mark for mark in marks_of(0) if isinstance(mark, Outline) and mark.fill is Ink.SOIL]
    assert soil.points == tuple((x.nm / MM, y.nm / MM) for x, y in PLAN.beds[0].outline)


def test_a_post_and_a_tap_are_solid_and_their_keep_clear_dashed() -> None:
    outlines = [mark for mark in marks_of(0) if isinstance(mark, Outline)]
    assert len([mark for mark in outlines if mark.fill is Ink.INK]) == 2
    assert len([mark for mark in outlines if mark.pen is not None and mark.pen.dashed]) == 2


def test_no_line_and_no_block_leaves_the_wedge() -> None:
    def upper(x: float) -> float:
        return 300 * x / 12_000

    def lower(x: float) -> float:
        return 1700 - 700 * x / 12_000

    for mark in marks_of(1):
        ends = (mark.start, mark.end) if isinstance(mark, Line) else mark.points if isinstance(mark, Outline) else ()
        assert all(upper(x) - 0.01 <= y <= lower(x) + 0.01 for x, y in ends)


def test_all_plants_of_the_sample_are_drawn() -> None:
    drawn = sum(mark.layout.plants for number in range(3) for mark in marks_of(number) if isinstance(mark, Plants))
    assert drawn == sum(layout.plants for laid in lay_out_plan(PLAN) for layout in laid.layouts) == 427


def test_rows_that_all_differ_are_counted_not_listed() -> None:
    wedge = lay_out_plan(PLAN)[1].layouts[0]
    assert len(set(wedge.per_row)) > 3
    assert counted(wedge) == "5 rows, 160 plants"
