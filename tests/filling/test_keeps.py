"""What a filling keeps: no crop bare in frost, no tender one in a cold edge, whatever else stands."""

from datetime import date, timedelta
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.filling_words import why_words
from gardenplot.filling import fill
from gardenplot.filling.now import fill_now
from gardenplot.filling.offers import WhyNot
from gardenplot.filling.ways_out import shortages
from gardenplot.findings import Kind, find_all
from gardenplot.layout import lay_out_plan
from gardenplot.layout.cold_edge import in_cold_edges, out_of_cold_edges
from gardenplot.plan import Plan, Standing, Tunnel
from gardenplot.units import CM, M, Units, length_of, parse_degrees
from tests.drawing.hand_worked import plan_from

Fields = dict[str, Any]
PLACE: Fields = {"last_freeze": {"50%": "04-20", "10%": "05-20"}, "family_gap": 2,
                 "first_freeze": {"10%": "09-20", "50%": "10-10"}}  # fmt: skip
KEPT = {Kind.FROST, Kind.AUTUMN_FROST, Kind.COLD_EDGE, Kind.FAMILY, Kind.OVERLAP, Kind.OUTSIDE}
BEAN: Fields = {
    "id": "bean", "name": "Bean", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm", "frost": "tender",
    "family": "legume", "field_days": 60, "harvest_days": 20, "establish": "transplant",
}  # fmt: skip
TUNNEL: Fields = {
    "id": "t", "name": "Glass", "x": "0 m", "y": "0 m", "length": "8 m", "width": "4 m", "cold_edge": "60 cm",
}  # fmt: skip


def plan_with(
    wishes: list[Fields], covers: list[Fields] | None = None, at: Fields | None = None, **parts: list[Fields]
) -> Plan:
    """A bed of 6 m whose gap is 10 cm, placed on the ground if `at` says where, with a tunnel there."""
    return plan_from(
        PLACE,
        beds=[{"id": "b", "name": "Bed", "length": "6 m", "width": "80 cm", "gap": "10 cm"}],
        crops=[
            BEAN,
            BEAN | {"id": "kale", "name": "Kale", "frost": "half-hardy"},
            BEAN | {"id": "leek", "frost": "hardy"},
        ],
        wishes=[{"crop": "bean"} | wish for wish in wishes],
        covers=[{"bed": "b"} | cover for cover in covers or []],
        ground=[{"bed": "b"} | at] if at else [],
        tunnels=[TUNNEL] if at else [],
        **parts,
    )


def broken(plan: Plan) -> set[tuple[Kind, str | None]]:
    """What a filling may not bring: findings of the kinds that it keeps clear of, by the planting."""
    return {(one.kind, one.planting) for one in find_all(plan) if one.kind in KEPT}


WISH: Fields = {"id": "w", "most": 20, "days": 40, "earliest": "2027-05-01", "latest": "2027-06-09"}


def test_a_tender_crop_that_could_only_stand_bare_in_frost_finds_no_place_and_is_told_why() -> None:
    """In on 30 April or a day sooner at the latest, and in one year of ten it freezes until 20 May."""
    filling = fill(plan_with([WISH | {"latest": "2027-06-10"}]))
    assert filling.placed == ()
    assert [one.why for one in filling.lacking] == [WhyNot.FROST]
    hardy = fill(plan_with([WISH | {"crop": "leek", "latest": "2027-06-10"}]))
    assert len(hardy.placed) == 1


def test_it_waits_for_the_day_on_which_the_frost_is_over() -> None:
    filling = fill(plan_with([WISH | {"latest": "2027-08-01"}]))
    (placed,) = filling.placed
    assert placed.in_ground is not None
    assert placed.in_ground >= date(2027, 5, 20)


def test_a_cover_over_a_part_of_the_bed_lifts_it_there() -> None:
    cover = {"id": "c", "from": "2 m", "to": "5 m", "on": "2027-04-25", "off": "2027-05-25"}
    filling = fill(plan_with([WISH | {"latest": "2027-06-10"}], [cover]))
    (placed,) = filling.placed
    assert (placed.start, placed.end, placed.plants) == (2 * M, 4 * M, 20)
    for short in ({"off": "2027-05-19"}, {"on": "2027-05-02"}, {"to": "2.1 m"}):
        assert fill(plan_with([WISH | {"latest": "2027-06-10"}], [cover | short])).placed == ()


def test_an_order_goes_to_the_cover_too() -> None:
    cover = {"id": "c", "from": "1 m", "to": "4 m", "on": "2027-04-01", "off": "2027-06-01"}
    order = {"id": "o", "crop": "bean", "units": 10, "on": "2027-07-01"}
    assert fill(plan_with([], orders=[order])).lacking[0].why is WhyNot.FROST
    (placed,) = fill(plan_with([], [cover], orders=[order])).placed
    assert placed.start == M


@settings(max_examples=15)
@given(st.sampled_from(("bean", "kale")), st.dates(date(2027, 5, 25), date(2027, 10, 20)))
def test_a_cover_on_the_very_days_that_are_told_gives_an_order_its_place(crop: str, market: date) -> None:
    """Of half-hardy crops too: frost does not kill them, but a place in the open would be one with a finding."""
    order = {"id": "o", "crop": crop, "units": 10, "on": f"{market}"}
    filling = fill(plan_with([], orders=[order]))
    assert bool(filling.placed) is not bool(filling.lacking)
    for lack in filling.lacking:
        cover = [
            {"id": f"c{number}", "from": "1 m", "to": "4 m", "on": f"{one.first}", "off": f"{one.last}"}
            for number, one in enumerate(lack.cover)
        ]
        (placed,) = (covered := fill(plan_with([], cover, orders=[order]))).placed
        assert placed.start == M
        assert broken(covered.plan) == set()


def test_what_lacks_a_cover_is_told_for_which_days() -> None:
    order = {"id": "o", "crop": "kale", "units": 10, "on": "2027-06-08"}
    (lack,) = fill(plan_with([], orders=[order])).lacking
    assert why_words(lack) == "needs a cover 8 – 20 Apr 2027"


@pytest.mark.parametrize("crop", ["bean", "kale"])
def test_a_gap_is_not_filled_with_what_frost_would_find(crop: str) -> None:
    cover = {"id": "c", "from": "2 m", "to": "5 m", "on": "2027-03-01", "off": "2027-05-25"}
    day, wish = date(2027, 4, 2), {"id": "w", "crop": crop, "most": 60, "earliest": "2027-03-20"}
    bare, covered = (fill_now(plan_with([wish], over), "b", M, day) for over in ([], [cover]))
    assert bare is not None
    assert covered is not None
    assert [one.why for one in bare.without] == [WhyNot.FROST]
    assert [(one.start, one.end) for one in covered.blocks] == [(2 * M, 5 * M)]
    assert broken(covered.plan) == set()


def test_only_what_is_tender_is_kept_out_of_the_cold_edge_and_a_bed_may_lie_partly_in_it() -> None:
    """The bed begins at the end wall: its first 60 cm are cold, the rest is warm as far as the other wall's 60 cm."""
    at = {"x": "0 m", "y": "1.5 m"}
    for crop, start in (("bean", 60 * CM), ("leek", 0)):
        wish = {"id": "w", "crop": crop, "most": 200, "days": 30, "earliest": "2027-06-01", "latest": "2027-07-01"}
        (placed,) = fill(plan_with([wish], at=at)).placed
        assert (placed.start, placed.plants) == (start, 2 * ((6 * M - start) // (20 * CM)))
        gap = fill_now(plan_with([wish], at=at), "b", 3 * M, date(2027, 6, 5))
        assert gap is not None
        assert [one.start for one in gap.blocks] == [start]


def not_before(plan: Plan, day: str) -> Plan:
    """The plan with a bed that can be used from a day on."""
    return evolve(plan, beds=tuple(evolve(bed, usable_from=date.fromisoformat(day)) for bed in plan.beds))


def test_nothing_goes_into_a_bed_before_it_can_be_used() -> None:
    """A wish waits for that very day, an order and a gap that cannot are told why."""
    leek: Fields = WISH | {"crop": "leek", "latest": "2027-08-01"}
    (placed,) = fill(not_before(plan_with([leek]), "2027-06-13")).placed
    assert placed.in_ground == date(2027, 6, 13)
    order = {"id": "o", "crop": "leek", "units": 10, "on": "2027-08-01"}  # in on 1 June
    for first, why in (("2027-06-01", []), ("2027-06-02", [WhyNot.EARLY])):
        filling = fill(not_before(plan_with([], orders=[order]), first))
        assert [one.why for one in filling.lacking] == why
        assert Kind.BED_LATE not in {one.kind for one in find_all(filling.plan)}
    found = fill_now(not_before(plan_with([leek]), "2027-06-13"), "b", M, date(2027, 5, 20))
    assert found is not None
    assert [(one.wanted, one.why) for one in found.without] == [("w", WhyNot.EARLY)]


def test_no_way_out_leads_into_a_bed_before_it_can_be_used() -> None:
    """20 leeks in the ground from 31 May on stand on one another; the other bed can be used a day later."""
    order = {"crop": "leek", "units": 40, "on": "2027-07-31"}
    plantings = [{"id": f"p{one}", "bed": "b", "crop": "leek", "order": one} for one in "oq"]
    plan = plan_with([], orders=[order | {"id": "o"}, order | {"id": "q"}], plantings=plantings)
    for first, kinds in (("2027-05-31", {True}), ("2027-06-01", {False})):
        other = evolve(plan.beds[0], id="late", usable_from=date.fromisoformat(first))
        (short,) = shortages(evolve(plan, beds=(*plan.beds, other)))
        assert {any(part.bed == "late" for way in short.ways for part in way.parts)} == kinds


def test_a_bed_along_the_wall_has_no_room_for_tender_crops() -> None:
    plan = plan_with([{"id": "w", "most": 20}], at={"x": "1 m", "y": "0.3 m"})
    assert fill(plan).lacking[0].why is WhyNot.COLD_EDGE
    gap = fill_now(plan, "b", M, None)
    assert gap is not None
    assert [one.why for one in gap.without] == [WhyNot.COLD_EDGE]


def test_a_bed_that_lies_in_the_warm_part_is_free_to_its_very_end() -> None:
    (laid,) = lay_out_plan(plan_from(beds=[{"id": "b", "name": "Bed", "length": "20 ft", "width": "30 in"}]))
    place = Standing("b", length_of(M, Units.METRIC), length_of(M, Units.METRIC))
    (tunnel,) = plan_with([], at={"x": "0 m", "y": "1.5 m"}).tunnels
    assert out_of_cold_edges(laid.bed, place, (tunnel,)) == ((0, laid.bed.length.nm),)


@given(st.data())
def test_a_block_in_a_stretch_out_of_the_cold_edges_is_never_found_in_one(data: st.DataObject) -> None:
    """The stretches are worked out in one way, the finding in another: by the block's corners."""
    (laid,) = lay_out_plan(plan_with([]))
    tens = st.integers(-60, 100).map(lambda tenth: length_of(tenth * 10 * CM, Units.METRIC))
    turn = parse_degrees(str(data.draw(st.sampled_from((0, 0, 90, 180, 10, 33, 215)))))
    place = Standing("b", data.draw(tens), data.draw(tens), turn)
    edges = st.sampled_from((30 * CM, 60 * CM)).map(lambda nm: length_of(nm, Units.METRIC))
    wall = length_of(0, Units.METRIC)
    tunnels = tuple(
        Tunnel(name, name, wall, data.draw(tens), length_of(8 * M, Units.METRIC), length_of(4 * M, Units.METRIC),
               cold_edge=data.draw(edges))
        for name in data.draw(st.sampled_from(("t", "tu")))
    )  # fmt: skip
    for low, high in out_of_cold_edges(laid.bed, place, tunnels):
        start = data.draw(st.integers(low, high - 1))
        end = data.draw(st.integers(start + 1, high))
        assert not list(in_cold_edges(laid.bed, start, end, place, tunnels))
        assert not list(in_cold_edges(laid.bed, low, high, place, tunnels))


COVERED = (("2027-03-01", "2027-05-10"), ("2027-04-10", "2027-06-01"), ("2027-08-20", "2027-12-01"))


def test_two_wishes_of_a_family_in_two_years_do_not_share_a_bed() -> None:
    """One bed, two seasons in between are asked for: the dearer one stands, the other one goes to another bed."""
    wishes = [
        WISH
        | {"id": f"w{year}", "crop": "leek", "earliest": f"{year}-06-01", "latest": f"{year}-07-20", "worth": worth}
        for year, worth in ((2027, 1), (2028, 2))
    ]
    filling = fill(plan_with(wishes))
    assert [one.wanted for one in filling.placed] == ["w2028"]
    assert not broken(filling.plan)
    plan = plan_with(wishes)
    more = evolve(plan, beds=(*plan.beds, evolve(plan.beds[0], id="b2", name="Other")))
    filling = fill(more)
    assert {one.bed for one in filling.placed} == {"b", "b2"}
    assert (filling.worth, broken(filling.plan)) == (60, set())


@st.composite
def seasons(draw: st.DrawFn) -> Plan:
    """Wishes of three crops from spring to autumn, a cover or two, a bed in a tunnel or not, a block that stands."""
    wishes = []
    for number in range(draw(st.integers(1, 4))):
        first = date(2027, 3, 20) + timedelta(days=draw(st.integers(0, 160)) + 365 * draw(st.sampled_from((0, 0, 1))))
        wishes.append(
            {
                "id": f"w{number}", "crop": draw(st.sampled_from(("bean", "kale", "leek"))),
                "least": draw(st.integers(1, 8)), "most": draw(st.sampled_from((8, 14, 30))), "days": 50,
                "earliest": first.isoformat(),
                "latest": (first + timedelta(days=draw(st.integers(50, 100)))).isoformat(),
            }
        )  # fmt: skip
    covers = [
        {
            "id": f"c{number}", "from": f"{draw(st.integers(0, 3))} m", "to": f"{draw(st.integers(4, 6))} m",
        }
        | dict(zip(("on", "off"), draw(st.sampled_from(COVERED)), strict=True))
        for number in range(draw(st.integers(0, 2)))
    ]  # fmt: skip
    at = draw(st.sampled_from((None, {"x": "-3 m", "y": "2 m"}, {"x": "5 m", "y": "-1 m", "turn": "60°"})))
    stands = {"id": "p", "bed": "b", "crop": "leek", "from": f"{draw(st.integers(0, 4))} m", "length": "1 m"}
    days = draw(st.sampled_from(({}, {"in_ground": "2027-05-20", "out": "2027-07-10"}, {"in_ground": "2025-05-20"})))
    return plan_with(wishes, covers, at, plantings=[stands | days] if draw(st.booleans()) else [])


@settings(max_examples=60)
@given(seasons(), st.integers(1, 59), st.integers(0, 200))
def test_a_filling_brings_no_frost_no_cold_edge_no_family_too_soon_and_no_overlap(
    plan: Plan, at: int, day: int
) -> None:
    before = broken(plan)
    assert broken(fill(plan, turns=30).plan) <= before
    now = fill_now(plan, "b", at * 10 * CM, date(2027, 4, 1) + timedelta(days=day))
    assert now is None or broken(now.plan) <= before
