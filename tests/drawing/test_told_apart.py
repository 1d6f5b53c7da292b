"""Plantings side by side are told apart by letter, by mark and by colour, whatever eyes look at them."""

from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest
from attrs import evolve
from hypothesis import given, settings

from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.style import DARK, LIGHT, PLANTINGS, Ink, Palette, contrast
from gardenplot.drawing.turns import walked
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan, Planting
from gardenplot.plan.file import read_plan
from gardenplot.plan.lying import Standing
from gardenplot.units import M, parse_length
from tests.colours_seen import Sight, apart, seen
from tests.plans import metric_plan, plans

SAMPLES = sorted((Path(__file__).resolve().parents[2] / "samples").glob("*.gardenplot"))
SCREENS = pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
APART = 6.0
"""Least difference of neighbours by CIEDE2000: six times the least that can be seen."""


@pytest.mark.parametrize(
    ("one", "other", "difference"),
    [
        ((50, 2.6772, -79.7751), (50, 0, -82.7485), 2.0425),
        ((50, -1.3802, -84.2814), (50, 0, -82.7485), 1.0),
        ((50, 0, 0), (50, -1, 2), 2.3669),
        ((50, 2.49, -0.001), (50, -2.49, 0.0009), 7.1792),
        ((50, 2.5, 0), (73, 25, -18), 27.1492),
        ((60.2574, -34.0099, 36.2677), (60.4626, -34.1751, 39.4387), 1.2644),
        ((2.0776, 0.0795, -1.1350), (0.9033, -0.0636, -0.5514), 0.9082),
    ],
)
def test_differences_are_those_of_the_published_pairs(
    one: tuple[float, float, float], other: tuple[float, float, float], difference: float
) -> None:
    """G. Sharma, W. Wu, E. N. Dalal: The CIEDE2000 color-difference formula, 2005, table 1; the pairs from memory."""
    assert apart(one, other) == pytest.approx(difference, abs=5e-5)
    assert apart(other, one) == pytest.approx(difference, abs=5e-5)


@pytest.mark.parametrize("sight", Sight)
def test_greys_stay_the_greys_they_are(sight: Sight) -> None:
    """Every published matrix gives white for white; its rows sum to one within its six figures."""
    for grey in ("#000000", "#777777", "#FFFFFF"):
        assert apart(seen(grey, sight), seen(grey, Sight.USUAL)) < 0.05


def test_red_and_green_are_one_to_the_eyes_that_do_not_tell_them() -> None:
    """The test of the test: a red and an olive of one lightness, far apart to most eyes."""
    red, olive = "#B05A4A", "#7F7A38"
    usual = apart(seen(red, Sight.USUAL), seen(olive, Sight.USUAL))
    assert usual > 25
    assert apart(seen(red, Sight.DEUTERANOPIA), seen(olive, Sight.DEUTERANOPIA)) < usual / 3


def neighbours(plan: Plan) -> list[tuple[Look, Look]]:
    """The looks of plantings that follow one another along their bed, turn by turn."""
    look = looks(plan)
    return [
        pair for laid in lay_out_plan(plan) for pair in pairwise(look[layout.planting] for layout in walked(laid))
    ]


@SCREENS
@pytest.mark.parametrize("sight", Sight)
@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_neighbours_in_the_samples_are_told_apart(sample: Path, sight: Sight, palette: Palette) -> None:
    pairs = neighbours(read_plan(sample).plan)
    for one, other in pairs:
        assert one.letter != other.letter
        assert one.shape is not other.shape
        difference = apart(seen(palette[one.ink], sight), seen(palette[other.ink], sight))
        assert difference >= APART, f"{one.letter} and {other.letter}"


def beds_of(blocks: int, *, grounds: bool = False) -> Plan:
    """Three beds with so many blocks each, one under another, perhaps the last beside the first on the ground."""
    bed, crop = metric_plan().beds[0], metric_plan().crops[0]
    beds = tuple(evolve(bed, id=f"b{number}") for number in range(3))
    size = bed.length.nm // M // blocks
    plantings = tuple(
        Planting(id=f"{one.id}-{at}", bed=one.id, crop=crop.id, start=parse_length(f"{at * size} m"),
                 length=parse_length(f"{size} m"), in_ground=date(2027, 4, 1), out=date(2027, 6, 1))
        for one in beds for at in range(blocks)
    )  # fmt: skip
    plan = Plan(beds=beds, crops=(crop,), plantings=plantings)
    places = {"b0": "0 m", "b1": "40 m", "b2": "1.4 m"} if grounds else {}
    lying = tuple(Standing(name, parse_length("0 m"), parse_length(y)) for name, y in places.items())
    return evolve(plan, ground=lying)


def beside(plan: Plan, one: str, other: str) -> list[tuple[Look, Look]]:
    """The looks of the blocks at the same readings in two beds."""
    look = looks(plan)
    return [(look[name], look[name.replace(one, other)]) for name in look if name.startswith(one)]


@pytest.mark.parametrize("blocks", range(1, 7))
def test_blocks_of_beds_under_one_another_have_another_mark_and_hatch(blocks: int) -> None:
    """With six to a bed the rank in the plan alone would give both the same."""
    plan = beds_of(blocks)
    for one, other in (*beside(plan, "b0", "b1"), *beside(plan, "b1", "b2")):
        assert one.shape is not other.shape
        assert one.hatch is not other.hatch


@pytest.mark.parametrize("blocks", range(1, 7))
def test_blocks_of_beds_that_lie_side_by_side_on_the_ground_have_another_mark(blocks: int) -> None:
    plan = beds_of(blocks, grounds=True)
    for one, other in beside(plan, "b0", "b2"):
        assert one.shape is not other.shape


@settings(max_examples=25)
@given(plans())
def test_neighbours_in_any_plan_are_told_apart(plan: Plan) -> None:
    for one, other in neighbours(plan):
        assert one.shape is not other.shape
        for palette in (LIGHT, DARK):
            for sight in Sight:
                assert apart(seen(palette[one.ink], sight), seen(palette[other.ink], sight)) >= APART


@SCREENS
@pytest.mark.parametrize("sight", Sight)
def test_colours_that_may_stand_side_by_side_are_apart(palette: Palette, sight: Sight) -> None:
    count = len(PLANTINGS)
    for number in range(count):
        for step in (1, 3):
            one, other = PLANTINGS[number], PLANTINGS[(number + step) % count]
            assert apart(seen(palette[one], sight), seen(palette[other], sight)) >= APART, f"{one}, {other}"


@SCREENS
def test_the_edge_of_a_bed_and_its_leftover_are_seen(palette: Palette) -> None:
    """The outline of graphics that carry a meaning (WCAG 2.2, 1.4.11)."""
    for ground in (Ink.PAPER, Ink.SOIL):
        assert contrast(palette[Ink.EDGE], palette[ground]) >= 3


@SCREENS
def test_fields_and_boxes_have_an_outline_that_is_seen(palette: Palette) -> None:
    for ground in (Ink.PAPER, Ink.PANEL):
        assert contrast(palette[Ink.FIELD], palette[ground]) >= 3


@SCREENS
def test_a_letter_is_read_on_the_colour_of_its_planting(palette: Palette) -> None:
    for ink in PLANTINGS:
        assert contrast(palette[Ink.PAPER], palette[ink]) >= 4.5
