"""What the ground says against the places of beds, with shapely as an independent referee."""

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says, where
from gardenplot.findings import Kind, find_about, find_all, find_on_ground
from gardenplot.findings.ground import footprint, pieces
from gardenplot.plan import Bed, Plan, Standing, edits
from gardenplot.plan.ground import frame_of, frames_of
from gardenplot.units import CM, MM, M, parse_length
from tests.drawing.hand_worked import plan_from
from tests.layout.ground import Fields
from tests.plans import plans, standings, tunnels, turns

BED: Fields = {"id": "a", "name": "Long", "length": "10 m", "width": "80 cm"}
OTHER: Fields = {"id": "b", "name": "Short", "length": "4 m", "width": "1 m"}
TUNNEL: Fields = {"id": "t", "name": "Glass", "x": "5 m", "y": "5 m", "length": "12 m", "width": "6 m"}
L_SHAPE: Fields = {"id": "a", "name": "Corner", "outline": [
    ["0 m", "0 m"], ["6 m", "0 m"], ["6 m", "1 m"], ["1 m", "1 m"], ["1 m", "4 m"], ["0 m", "4 m"]]}  # fmt: skip


def laid(x: str, y: str, turn: str = "0°", *, bed: Fields = BED, at: tuple[str, str] = ("6 m", "6 m")) -> Plan:
    """A bed at a place, and another one at (x, y)."""
    ground: list[Fields] = [{"bed": "a", "x": at[0], "y": at[1]}, {"bed": "b", "x": x, "y": y, "turn": turn}]
    return plan_from(beds=[bed, OTHER], ground=ground)


def told(plan: Plan) -> list[tuple[str, int, int, int]]:
    """Each finding on the ground: its kind, its readings and its amount."""
    return [(one.kind.value, one.start, one.end, one.amount) for one in find_on_ground(plan)]


def test_beds_side_by_side_or_end_to_end_are_no_trouble() -> None:
    for x, y in (("6 m", "6.8 m"), ("6 m", "5 m"), ("16 m", "6 m"), ("2 m", "6 m"), ("30 m", "30 m")):
        assert told(laid(x, y)) == []


@pytest.mark.parametrize(
    ("x", "y", "turn", "start", "end", "deep"),
    [
        ("8 m", "6.7 m", "0°", 2 * M, 6 * M, 10 * CM),
        ("12 m", "5.5 m", "90°", 5 * M, 6 * M, 80 * CM),
        ("12 m", "7 m", "180°", 2 * M, 6 * M, 80 * CM),
        ("15 m", "6 m", "0°", 9 * M, 10 * M, 80 * CM),
    ],
)
def test_beds_on_the_same_ground_are_told_along_the_tape_of_the_first(
    x: str, y: str, turn: str, start: int, end: int, deep: int
) -> None:
    assert told(laid(x, y, turn)) == [("on another bed", start, end, deep)]


def test_a_bed_in_the_corner_of_an_l_is_no_trouble() -> None:
    assert told(laid("7.2 m", "7.2 m", bed=L_SHAPE)) == []
    assert told(laid("6.5 m", "7.2 m", bed=L_SHAPE)) == [("on another bed", 50 * CM, M, 50 * CM)]


def test_a_box_reaches_to_the_outside_of_its_boards() -> None:
    box: Fields = {"id": "a", "name": "Box", "box": {"length": "3 m", "width": "1.5 m", "board": "5 cm"}}
    assert told(laid("8.96 m", "6 m", bed=box)) == []
    (found,) = find_on_ground(laid("8.92 m", "6 m", bed=box))
    assert (found.kind, found.amount) == (Kind.ON_ANOTHER_BED, 3 * CM)


@pytest.mark.parametrize(
    ("x", "y", "turn", "told_of"),
    [
        ("5 m", "5 m", "0°", []),
        ("7 m", "10.2 m", "0°", []),
        ("30 m", "5 m", "0°", []),
        ("17 m", "5 m", "0°", []),
        ("8 m", "6 m", "0°", [("through a tunnel's wall", 10 * M, 10 * M, M)]),
        ("6 m", "4.8 m", "0°", [("through a tunnel's wall", 0, 10 * M, 20 * CM)]),
        ("10 m", "4 m", "90°", [("through a tunnel's wall", 0, 10 * M, 3 * M)]),
    ],
)
def test_a_bed_lies_in_a_tunnel_or_out_of_it_but_not_through_its_wall(
    x: str, y: str, turn: str, told_of: list[tuple[str, int, int, int]]
) -> None:
    plan = plan_from(beds=[BED], tunnels=[TUNNEL], ground=[{"bed": "a", "x": x, "y": y, "turn": turn}])
    assert told(plan) == told_of


def test_findings_on_the_ground_have_sentences_and_cannot_be_done() -> None:
    plan = evolve(laid("8 m", "6.7 m", at=("4.5 m", "6 m")), tunnels=plan_from(tunnels=[TUNNEL]).tunnels)
    found = [one for one in find_all(plan) if one.kind in (Kind.ON_ANOTHER_BED, Kind.THROUGH_A_WALL)]
    look = looks(plan)
    assert [(where(plan, one, look), says(plan, one, look)) for one in found] == [
        ("Long, 3.50 – 7.50\u2009m", "lies 10\u2009cm into Short on the ground"),
        ("Long, 0.00 – 0.00\u2009m", "sticks 50\u2009cm out of Glass through its wall"),
    ]
    assert all(one.cannot_be_done and not one.is_note for one in found)


def test_beds_without_a_place_are_never_in_one_anothers_way() -> None:
    plan = plan_from(beds=[BED, OTHER], ground=[{"bed": "a", "x": "1 m", "y": "1 m"}])
    assert find_on_ground(plan) == ()
    assert find_on_ground(edits.place_beds(plan)) == ()


def shape_of(bed: Bed, standing: Standing) -> Polygon:
    """A bed on the ground in mm, for the referee."""
    frame = frame_of(standing)
    return Polygon([[at / MM for at in frame.to_ground(x, y)] for x, y in footprint(bed)])


@settings(max_examples=60)
@given(plans(least_beds=2), st.data())
def test_the_referee_finds_the_same_beds_on_one_another(plan: Plan, data: st.DataObject) -> None:
    near = st.integers(0, 300).map(lambda n: parse_length(f"{n} cm"))
    ground = tuple(Standing(bed.id, data.draw(near), data.draw(near), data.draw(turns())) for bed in plan.beds)
    plan = evolve(plan, ground=ground, tunnels=())
    found = {(one.bed, one.lies_on) for one in find_on_ground(plan)}
    shapes = {one.bed: shape_of(bed, one) for bed, one in zip(plan.beds, ground, strict=True)}
    ids = list(shapes)
    for number, one in enumerate(ids):
        for other in ids[number + 1 :]:
            shared = shapes[one].intersection(shapes[other])
            slim = shared.area < 2 or min(_sides(shared)) < 2
            assert ((one, other) in found) or slim
            assert ((one, other) not in found) or shared.area > 0.5


def _sides(shape: Polygon) -> tuple[float, float]:
    left, top, right, bottom = shape.bounds
    return right - left, bottom - top


@given(plans(), st.data())
def test_what_is_found_about_one_bed_is_found_among_all(plan: Plan, data: st.DataObject) -> None:
    if plan.beds:
        ids = [bed.id for bed in plan.beds]
        plan = evolve(plan, ground=data.draw(standings(ids)), tunnels=(data.draw(tunnels()),))
        all_pairs = {frozenset((one.bed, one.lies_on)) for one in find_on_ground(plan)}
        about = {frozenset((one.bed, one.lies_on)) for bed in ids for one in find_about(plan, bed)}
        assert about == all_pairs


@given(plans(least_beds=1), st.data())
def test_moving_a_bed_far_away_ends_its_trouble(plan: Plan, data: st.DataObject) -> None:
    bed = data.draw(st.sampled_from(plan.beds)).id
    far = edits.move_bed(plan, bed, parse_length("900 m"), parse_length("900 m"))
    assert find_about(far, bed) == ()
    assert frames_of(far)[bed].x == 900 * M


@given(st.lists(st.tuples(st.integers(2, 90), st.integers(2, 90)), min_size=1, max_size=8))
def test_an_outline_in_pieces_has_its_whole_area(steps: list[tuple[int, int]]) -> None:
    corners: list[tuple[int, int]] = [(0, 0)]
    x = 0
    for along, across in steps:
        corners += [(x, across * CM), (x + along * CM, across * CM)]
        x += along * CM
    outline = tuple(dict.fromkeys([*corners, (x, 0)]))
    whole = Polygon(outline)
    parts = [Polygon(piece) for piece in pieces(outline)]
    assert sum(part.area for part in parts) == pytest.approx(whole.area)
    assert all(part.equals(part.convex_hull) for part in parts)
