"""What is typed about the ground: places and turns of beds, drip lines, tunnels, paths and covers."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.errors import LengthError, PlanError
from gardenplot.gestures.cover_typed import cover_texts, usual_cover, with_cover
from gardenplot.gestures.ground_typed import GROUND_FIELDS
from gardenplot.gestures.strip_typed import (
    path_example,
    strip_texts,
    tunnel_example,
    with_path,
    with_tunnel,
)
from gardenplot.plan import HoopShape, Plan, Sheeting, Tunnel, Walk, bed_of, edits
from gardenplot.plan.ground import frames_of, standing_of
from gardenplot.units import CM, M, Units
from tests.plans import covers, feet_plan, metric_plan, plans, tunnels, walks

FIELDS = {field.name: field for field in GROUND_FIELDS}


def typed(plan: Plan, name: str, text: str, bed: str = "b1") -> Plan:
    """The plan with a text typed into a field of a bed."""
    return FIELDS[name].apply(plan, bed, text)


def test_a_bed_without_a_place_shows_none_and_gets_one_by_the_first_distance_typed() -> None:
    plan = metric_plan()
    assert [FIELDS[name].shown(plan, "b1") for name in ("x", "y", "turn")] == ["", "", ""]
    after = typed(plan, "x", "7.5 m")
    frame = frames_of(after)["b1"]
    assert (frame.x, frame.y) == (750 * CM, frames_of(plan)["b1"].y)
    assert [FIELDS[name].shown(after, "b1") for name in ("x", "y", "turn")] == ["7.5 m", "1 m", "0°"]


def test_distances_and_turns_stay_as_they_are_typed() -> None:
    plan = typed(typed(typed(metric_plan(), "x", "3 m 20 cm"), "y", "450"), "turn", "-22,5")
    standing = standing_of(plan, "b1")
    assert standing is not None
    assert (str(standing.x), str(standing.y), str(standing.turn)) == ("3 m 20 cm", "450 m", "-22,5")
    assert typed(plan, "turn", "-22,5") is plan


def test_distances_to_the_other_side_of_the_peg_are_typed_with_a_minus() -> None:
    plan = typed(typed(metric_plan(), "x", "-2 m"), "y", "−0.75")
    assert (frames_of(plan)["b1"].x, frames_of(plan)["b1"].y) == (-2 * M, -75 * CM)
    assert (FIELDS["x"].shown(plan, "b1"), FIELDS["y"].shown(plan, "b1")) == ("-2 m", "−0.75 m")
    assert typed(plan, "x", "-2 m") is plan
    texts = {**tunnel_example(Units.METRIC), "name": "Lean-to", "turn": "", "x": "-1.5 m"}
    assert with_tunnel(metric_plan(), None, texts).tunnels[0].x.nm == -150 * CM


@pytest.mark.parametrize(
    ("name", "text"), [("x", "--1 m"), ("x", "1 m - 2 m"), ("y", "far"), ("turn", "400°"), ("turn", ""), ("x", "")]
)
def test_nonsense_is_refused(name: str, text: str) -> None:
    plan = edits.place_beds(metric_plan())
    with pytest.raises((LengthError, PlanError)):
        typed(plan, name, text)


def test_drip_lines_are_typed_as_a_list() -> None:
    plan = typed(metric_plan(), "drip_lines", "20; 55 cm")
    assert [line.text for line in bed_of(plan, "b1").drip_lines] == ["20 cm", "55 cm"]
    assert FIELDS["drip_lines"].shown(plan, "b1") == "20 cm; 55 cm"
    assert typed(plan, "drip_lines", "") == metric_plan()


@given(tunnels(), walks())
def test_a_tunnel_and_a_path_read_back_from_their_own_texts(tunnel: Tunnel, path: Walk) -> None:
    plan = metric_plan()
    with_both = edits.add_path(edits.add_tunnel(plan, tunnel), path)
    one, other = with_both.tunnels[0], with_both.paths[0]
    if one.name and other.name:
        assert with_tunnel(with_both, one, strip_texts(one)) is with_both
        assert with_path(with_both, other, strip_texts(other)) is with_both


@pytest.mark.parametrize("units", Units)
def test_the_examples_are_a_tunnel_and_a_path_that_can_be(units: Units) -> None:
    plan = edits.change_place(metric_plan(), units=units)
    plan = with_tunnel(plan, None, {"name": "Long", "turn": "90", **tunnel_example(units)})
    plan = with_path(plan, None, {"name": "Way", "turn": "", **path_example(units)})
    assert (plan.tunnels[0].name, plan.paths[0].name) == ("Long", "Way")
    changed = with_tunnel(plan, plan.tunnels[0], strip_texts(plan.tunnels[0]) | {"width": "7 m", "cold_edge": ""})
    assert (changed.tunnels[0].width.nm, changed.tunnels[0].cold_edge) == (7 * M, None)


def test_a_tunnel_without_a_name_or_with_nothing_between_its_cold_edges_is_refused() -> None:
    plan, texts = metric_plan(), {"name": "Long", "turn": "", **tunnel_example(Units.METRIC)}
    with pytest.raises(PlanError, match="a name is needed"):
        with_tunnel(plan, None, texts | {"name": ""})
    with pytest.raises(PlanError, match="leave nothing of the tunnel"):
        with_tunnel(plan, None, texts | {"cold_edge": "2.5 m"})


def test_a_cover_is_proposed_over_the_block_from_the_day_that_it_is_in_the_ground() -> None:
    cover = usual_cover(metric_plan(), "b1", "p1")
    assert (cover.start.nm, cover.on, cover.off) == (30 * CM, date(2027, 4, 9), None)
    plan = with_cover(metric_plan(), cover, cover_texts(cover) | {"off": "2027-05-10", "hoop_spacing": "1 m"})
    (made,) = plan.covers
    assert (made.off, made.hoop_spacing and made.hoop_spacing.text) == (date(2027, 5, 10), "1 m")
    assert with_cover(plan, made, cover_texts(made)) is plan
    assert with_cover(plan, made, cover_texts(made) | {"layers": "2"}).covers[0].layers == 2


def test_hoops_with_a_height_are_half_ellipses_and_film_is_typed_with_what_is_buried() -> None:
    cover = usual_cover(metric_plan(), "b1", "p1")
    typed = cover_texts(cover) | {"rise": "45 cm", "sheeting": "clear film", "buried": "15 cm"}
    (made,) = with_cover(metric_plan(), cover, typed).covers
    assert (made.hoop_shape, made.sheeting) == (HoopShape.HALF_ELLIPSE, Sheeting.FILM)
    assert made.buried is not None
    assert made.buried.text == "15 cm"
    (again,) = with_cover(with_cover(metric_plan(), cover, typed), made, cover_texts(made) | {"rise": ""}).covers
    assert again.hoop_shape is HoopShape.HALF_ROUND


def test_a_cover_over_a_whole_bed_keeps_inside_its_margins_and_measures_as_the_plan_does() -> None:
    cover = usual_cover(feet_plan(), "t1", None)
    assert (str(cover.start), str(cover.end), str(cover.hoop_spacing)) == ("1'", "52' 6\"", "4 ft")


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"end": "20 cm"}, "is not beyond"),
        ({"end": "15.2 m"}, "beyond the foot of Tunnel, east, which is 15 m long"),
        ({"on": "2027-05-01", "off": "2027-04-01"}, "is not after"),
        ({"layers": "11"}, "does not lie between"),
        ({"off": "May"}, "no date"),
    ],
)
def test_a_cover_that_cannot_be_says_why(changes: dict[str, str], says: str) -> None:
    plan = metric_plan()
    cover = usual_cover(plan, "b1", "p1")
    with pytest.raises(PlanError, match=says):
        with_cover(plan, cover, cover_texts(cover) | changes)


@given(plans(least_beds=1), st.data())
def test_a_cover_reads_back_from_its_own_texts(plan: Plan, data: st.DataObject) -> None:
    cover = data.draw(covers([bed.id for bed in plan.beds]))
    after = edits.add_cover(plan, cover)
    made = after.covers[-1]
    if made.end.nm <= bed_of(plan, made.bed).length.nm:
        assert with_cover(after, made, cover_texts(made)) is after
