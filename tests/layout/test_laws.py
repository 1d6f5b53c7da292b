"""Laws of every layout: a bed may be listed elsewhere or seen from its other end, grow, and be asked the other way.

Rows that run straight along a bed count the same from either end and from either side, and so do twin rows. What
breaks this on purpose: staggered and triangular rows begin with one that is not moved, nearest to the base line, and
keep one phase from the head of their block; cells and rows across are ranks from the head. Rows across count the same
from either side only. The best phase is chosen for its block, so that a longer block may lie on other lines: laws
that compare two blocks are not asked of it.
"""

from attrs import evolve
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from gardenplot.layout import lay_out_plan
from gardenplot.plan import Bed, Plan
from gardenplot.units import MM
from tests.layout.any_ground import BROADCAST, RINGS, Found, cm, grounds, only, packets, rows
from tests.layout.ground import Fields, long
from tests.plans import plans


@settings(max_examples=max(50, settings().max_examples // 4))
@given(plans(least_beds=2), st.randoms(use_true_random=False))
def test_a_bed_elsewhere_in_the_list_is_planted_the_same(plan: Plan, order: object) -> None:
    beds = list(plan.beds)
    order.shuffle(beds)  # type: ignore[attr-defined]  # a random.Random, typed as less
    planted = {laid.bed.id: laid.layouts for laid in lay_out_plan(plan)}
    assert {laid.bed.id: laid.layouts for laid in lay_out_plan(evolve(plan, beds=tuple(beds)))} == planted


def seen_from(bed: Fields, laid: Bed, *, other_end: bool) -> Fields:
    """A bed as it is seen from its other end or else from its other side; obstacles lie in it."""
    axis, reach = ("x", laid.length.nm) if other_end else ("y", laid.width.nm)
    number = 0 if other_end else 1

    def mirrored(at: int) -> str:
        assume(at <= reach)
        return long(reach - at).text

    turned = dict(bed)
    if laid.outline:
        corners = [[x.text, y.text] for x, y in laid.outline]
        for corner, point in zip(corners, laid.outline, strict=True):
            corner[number] = mirrored(point[number].nm)
        turned["outline"] = corners
    turned["obstacles"] = [
        one | {axis: mirrored(getattr(obstacle, axis).nm)}
        for one, obstacle in zip(bed.get("obstacles", []), laid.obstacles, strict=True)
    ]
    if other_end and "head_margin" in bed:
        turned |= {"head_margin": bed["foot_margin"], "foot_margin": bed["head_margin"]}
    return turned


STRAIGHT = st.just({"pattern": "straight"}) | st.fixed_dictionaries(
    {"pattern": st.just("twin"), "twin_spacing": cm(3, 9)}
)


@settings(max_examples=max(100, settings().max_examples))
@given(grounds(), packets(), STRAIGHT)
def test_straight_rows_count_the_same_from_either_end(bed: Fields, crop: Fields, planting: Fields) -> None:
    laid = only((bed, crop, planting))
    turned = only((seen_from(bed, laid.bed, other_end=True), crop, planting))
    assert turned.layouts[0].per_row == laid.layouts[0].per_row


@settings(max_examples=max(100, settings().max_examples))
@given(grounds(), packets(), STRAIGHT | st.just({"direction": "across"}))
def test_straight_rows_count_the_same_from_either_side(bed: Fields, crop: Fields, planting: Fields) -> None:
    laid = only((bed, crop, planting))
    turned = only((seen_from(bed, laid.bed, other_end=False), crop, planting))
    order = 1 if planting.get("direction") == "across" else -1
    assert turned.layouts[0].per_row == laid.layouts[0].per_row[::order]


@st.composite
def on_fixed_lines(draw: st.DrawFn) -> Found:
    """A block of any pattern whose lines do not depend on its length; a band is sown where nothing is in its way."""
    planting = draw(st.one_of(rows(), rows(), RINGS, BROADCAST))
    begins: Fields = draw(st.sampled_from([{}, {"from": "30 cm"}]))
    ground = draw(grounds(most=0 if planting == {"pattern": "broadcast"} else 2))
    return ground, draw(packets()), planting | {"phase": "centred"} | begins


@settings(max_examples=max(100, settings().max_examples))
@given(on_fixed_lines(), st.integers(1, 400), st.integers(1, 200))
def test_more_length_never_holds_fewer(found: Found, length: int, more: int) -> None:
    bed, crop, planting = found
    counts = [
        only((bed, crop, planting | {"length": f"{one} cm"})).layouts[0].plants for one in (length, length + more)
    ]
    assert counts[0] <= counts[1]


@settings(max_examples=max(100, settings().max_examples))
@given(on_fixed_lines(), st.integers(1, 80))
def test_a_nanometre_less_than_so_many_plants_need_holds_fewer(found: Found, plants: int) -> None:
    bed, crop, planting = found
    assume(planting["pattern"] != "rings" if "pattern" in planting else True)
    layout = only((bed, crop, planting | {"plants": plants})).layouts[0]
    assume(layout.plants == plants and layout.length > MM)
    shorter = only((bed, crop, planting | {"length": long(layout.length - 1).text})).layouts[0]
    assert shorter.plants < plants
