"""Edits give another valid plan or a PlanError, leave their input alone, and touch nothing else."""

import inspect
from collections.abc import Callable, Sequence
from types import ModuleType
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.errors import PlanError
from gardenplot.layout import lay_out_plan
from gardenplot.plan import (
    Bed,
    Cover,
    Crop,
    Order,
    Plan,
    Planting,
    Tunnel,
    Walk,
    Wish,
    bed_of,
    edits,
    planting_of,
    several,
)
from gardenplot.plan.file import text_of
from gardenplot.plan.lying import Standing
from gardenplot.plan.valid import faults
from gardenplot.units import CM, M, Units, parse_degrees, parse_length
from tests.plans import (
    beds,
    covers,
    crops,
    feet_plan,
    lengths,
    metric_plan,
    names,
    orders,
    plans,
    plantings,
    tunnels,
    turns,
    walks,
    wishes,
)
from tests.seasons import days

Part = Bed | Cover | Crop | Order | Planting | Tunnel | Walk | Wish


def id_in(data: st.DataObject, parts: Sequence[Part]) -> str:
    """The id of one of the parts, or now and then of none."""
    return data.draw(st.sampled_from([*(part.id for part in parts), "no-such"]))


def planting_for(data: st.DataObject, plan: Plan) -> Planting:
    """A planting that refers to parts of the plan, or now and then to nothing."""
    bed, crop = id_in(data, plan.beds), id_in(data, plan.crops)
    return data.draw(plantings([bed], [crop], [order.id for order in plan.orders]))


def a_length(data: st.DataObject) -> Any:
    """A length, or now and then none or nothing."""
    return data.draw(lengths(CM, 70 * M) | st.sampled_from([None, parse_length("0 cm")]))


Attempt = Callable[[Plan, st.DataObject], Plan]
ATTEMPTS: dict[str, Attempt] = {
    "change_place": lambda plan, data: edits.change_place(
        plan, name=data.draw(names()), units=data.draw(st.sampled_from(Units))
    ),
    "add_bed": lambda plan, data: edits.add_bed(plan, data.draw(beds())),
    "change_bed": lambda plan, data: edits.change_bed(
        plan, id_in(data, plan.beds), head_margin=a_length(data), id=id_in(data, plan.beds)
    ),
    "copy_bed": lambda plan, data: edits.copy_bed(plan, id_in(data, plan.beds)),
    "remove_bed": lambda plan, data: edits.remove_bed(plan, id_in(data, plan.beds)),
    "add_planting": lambda plan, data: edits.add_planting(plan, planting_for(data, plan)),
    "add_plantings": lambda plan, data: edits.add_plantings(plan, [planting_for(data, plan) for _one in range(2)]),
    "change_planting": lambda plan, data: edits.change_planting(
        plan,
        id_in(data, plan.plantings),
        **data.draw(
            st.dictionaries(
                st.sampled_from(["plants", "rows", "clump", "seeds_per_cell"]), st.none() | st.integers(-1, 9)
            )
        ),
        length=a_length(data),
    ),
    "suppose_planting": lambda plan, data: edits.suppose_planting(
        plan, id_in(data, plan.plantings), length=a_length(data)
    ),
    "record_actual": lambda plan, data: edits.record_actual(
        plan,
        id_in(data, plan.plantings),
        {"set_out": data.draw(st.none() | days()), "planted": data.draw(st.none() | st.integers(-1, 90))},
        {"length": a_length(data)},
    ),
    "move_planting": lambda plan, data: edits.move_planting(
        plan, id_in(data, plan.plantings), id_in(data, plan.beds), a_length(data)
    ),
    "resize_planting": lambda plan, data: edits.resize_planting(
        plan, id_in(data, plan.plantings), a_length(data), a_length(data)
    ),
    "remove_planting": lambda plan, data: edits.remove_planting(plan, id_in(data, plan.plantings)),
    "add_crop": lambda plan, data: edits.add_crop(plan, data.draw(crops())),
    "carry_crop": lambda plan, data: edits.carry_crop(
        plan, data.draw(st.sampled_from([*plan.crops, data.draw(crops())]))
    ),
    "change_crop": lambda plan, data: edits.change_crop(
        plan, id_in(data, plan.crops), in_row=data.draw(lengths(0, M)), tray_cells=data.draw(st.integers(-1, 90))
    ),
    "remove_crop": lambda plan, data: edits.remove_crop(plan, id_in(data, plan.crops)),
    "add_order": lambda plan, data: edits.add_order(plan, data.draw(orders([id_in(data, plan.crops)]))),
    "change_order": lambda plan, data: edits.change_order(
        plan, id_in(data, plan.orders), units=data.draw(st.integers(-1, 90)), crop=id_in(data, plan.crops)
    ),
    "remove_order": lambda plan, data: edits.remove_order(
        plan,
        id_in(data, plan.orders),
        {one.id: {"plants": data.draw(st.integers(1, 90)), "length": None} for one in plan.plantings},
    ),
    "add_wish": lambda plan, data: edits.add_wish(
        plan, data.draw(wishes([id_in(data, plan.beds)], [id_in(data, plan.crops)]))
    ),
    "change_wish": lambda plan, data: edits.change_wish(
        plan, id_in(data, plan.wishes), least=data.draw(st.integers(-1, 90)), beds=(id_in(data, plan.beds),)
    ),
    "remove_wish": lambda plan, data: edits.remove_wish(plan, id_in(data, plan.wishes)),
    "add_cover": lambda plan, data: edits.add_cover(plan, data.draw(covers([id_in(data, plan.beds)]))),
    "change_cover": lambda plan, data: edits.change_cover(
        plan, id_in(data, plan.covers), end=data.draw(lengths(0, 30 * M)), layers=data.draw(st.integers(0, 11))
    ),
    "remove_cover": lambda plan, data: edits.remove_cover(plan, id_in(data, plan.covers)),
    "place_beds": lambda plan, _data: edits.place_beds(plan),
    "move_bed": lambda plan, data: edits.move_bed(
        plan, id_in(data, plan.beds), data.draw(lengths(0, 60 * M)), data.draw(lengths(0, 60 * M))
    ),
    "turn_bed": lambda plan, data: edits.turn_bed(plan, id_in(data, plan.beds), data.draw(turns())),
    "stand_beds": lambda plan, data: edits.stand_beds(
        plan, [Standing(id_in(data, plan.beds), *data.draw(st.tuples(lengths(0, 60 * M), lengths(0, 60 * M))))]
    ),
    "add_tunnel": lambda plan, data: edits.add_tunnel(plan, data.draw(tunnels())),
    "change_tunnel": lambda plan, data: edits.change_tunnel(
        plan, id_in(data, plan.tunnels), cold_edge=a_length(data), width=data.draw(lengths(0, 9 * M))
    ),
    "remove_tunnel": lambda plan, data: edits.remove_tunnel(plan, id_in(data, plan.tunnels)),
    "add_path": lambda plan, data: edits.add_path(plan, data.draw(walks())),
    "change_path": lambda plan, data: edits.change_path(
        plan, id_in(data, plan.paths), width=data.draw(lengths(0, 2 * M))
    ),
    "remove_path": lambda plan, data: edits.remove_path(plan, id_in(data, plan.paths)),
}
"""Each edit, tried with anything that a person might ask of it."""


def some_fields(data: st.DataObject, plan: Plan) -> dict[str, Any]:
    """A few fields of a planting."""
    return {
        "bed": id_in(data, plan.beds),
        "start": a_length(data),
        "length": a_length(data),
        "plants": None,
        "slack": a_length(data),
    }


def some_ids(data: st.DataObject, plan: Plan) -> list[str]:
    """The ids of some plantings, or now and then of none."""
    return data.draw(st.lists(st.sampled_from([*(one.id for one in plan.plantings), "no-such"]), unique=True))


ATTEMPTS_OF_SEVERAL: dict[str, Attempt] = {
    "change_plantings": lambda plan, data: several.change_plantings(
        plan, {one: some_fields(data, plan) for one in some_ids(data, plan)}
    ),
    "remove_plantings": lambda plan, data: several.remove_plantings(plan, some_ids(data, plan)),
    "copy_plantings": lambda plan, data: several.copy_plantings(
        plan, {one: some_fields(data, plan) for one in some_ids(data, plan)}
    ),
    "split_planting": lambda plan, data: several.split_planting(
        plan, id_in(data, plan.plantings), some_fields(data, plan), some_fields(data, plan)
    ),
    "join_plantings": lambda plan, data: several.join_plantings(
        plan, id_in(data, plan.plantings), id_in(data, plan.plantings), some_fields(data, plan)
    ),
}
"""Each edit of several plantings."""
EVERY_ATTEMPT = ATTEMPTS | ATTEMPTS_OF_SEVERAL


@pytest.mark.parametrize(("module", "attempts"), [(edits, ATTEMPTS), (several, ATTEMPTS_OF_SEVERAL)])
def test_every_edit_is_tried(module: ModuleType, attempts: dict[str, Attempt]) -> None:
    functions = inspect.getmembers(module, inspect.isfunction)
    public = [name for name, one in functions if one.__module__ == module.__name__]
    assert set(attempts) == {name for name in public if not name.startswith("_")}


def attempted(attempt: Attempt, plan: Plan, data: st.DataObject) -> Plan:
    """The plan after an edit, or the plan itself where the edit cannot be made."""
    try:
        return attempt(plan, data)
    except PlanError:
        return plan


# Each plan is tried with several edits, since it takes longer to draw than all of them to be made.
@pytest.mark.parametrize("tried", [list(EVERY_ATTEMPT)[first::7] for first in range(7)], ids=", ".join)
@given(plan=plans(), data=st.data())
def test_an_edit_leaves_its_input_alone_and_gives_a_valid_plan(
    tried: list[str], plan: Plan, data: st.DataObject
) -> None:
    before = text_of(plan)
    for name in tried:
        after = attempted(EVERY_ATTEMPT[name], plan, data)
        assert text_of(plan) == before, name
        assert list(faults(after)) == [], name
        assert after is plan or after != plan, name


BREAK: list[Callable[[Plan], Plan]] = [
    lambda plan: evolve(plan, beds=plan.beds[1:]),
    lambda plan: evolve(plan, crops=plan.crops[1:]),
    lambda plan: evolve(plan, orders=(), wishes=()),
    lambda plan: evolve(plan, plantings=plan.plantings[1:]),
    lambda plan: evolve(plan, plantings=(*plan.plantings, *plan.plantings[:2])),
    lambda plan: evolve(
        plan, plantings=(*(evolve(one, plants=0) for one in plan.plantings[:1]), *plan.plantings[1:])
    ),
    lambda plan: evolve(plan, plantings=tuple(evolve(one, bed=f"{one.bed}s") for one in plan.plantings)),
    lambda plan: evolve(plan, place=evolve(plan.place, latitude=91.0)),
    lambda plan: evolve(plan, beds=(), ground=plan.ground[:1] * 2),
    *(
        lambda plan, name=name: evolve(plan, **{name: getattr(plan, name) * 2})
        for name in (
            "beds",
            "crops",
            "orders",
            "wishes",
            "covers",
            "ground",
            "tunnels",
            "paths",
            "goods",
            "feeds",
            "jugs",
        )
    ),
    *(
        lambda plan, name=name: evolve(plan, **{name: tuple(evolve(one, bed="none") for one in getattr(plan, name))})
        for name in ("covers", "ground", "jugs")
    ),
]


@given(plan=plans())
def test_beside_the_valid_plan_that_it_was_made_of_as_much_is_found_in_one_that_is_not(plan: Plan) -> None:
    for broken in (attempt(plan) for attempt in BREAK):
        assert list(faults(broken, plan)) == list(faults(broken))


CHANGES_NOTHING: list[Callable[[Plan], Plan]] = [
    lambda plan: edits.change_place(plan, name="Long Reach", units=Units.FEET_AND_INCHES),
    lambda plan: edits.change_bed(plan, "t1", length=parse_length("53.5 ft")),
    lambda plan: edits.change_planting(plan, "p1", plants=180),
    lambda plan: edits.change_planting(plan, "p3", length=parse_length("16 ft")),
    lambda plan: edits.move_planting(plan, "p1", "t1", parse_length("1 ft")),
    lambda plan: edits.resize_planting(plan, "p3", parse_length("20' 6 1/2\""), parse_length("16 ft")),
    lambda plan: edits.change_crop(plan, "beet", in_row=parse_length("3 in")),
    lambda plan: edits.carry_crop(plan, plan.crops[0]),
    lambda plan: edits.change_order(plan, "o1", units=40),
    lambda plan: several.change_plantings(plan, {"p1": {"plants": 180}, "p3": {}}),
    lambda plan: several.remove_plantings(plan, []),
    lambda plan: several.copy_plantings(plan, {}),
]


@pytest.mark.parametrize("edit", CHANGES_NOTHING)
def test_an_edit_that_changes_nothing_gives_the_very_same_plan(edit: Callable[[Plan], Plan]) -> None:
    plan = feet_plan()
    assert edit(plan) is plan


def test_the_same_length_typed_otherwise_is_a_change() -> None:
    after = edits.change_bed(feet_plan(), "t1", length=parse_length("53' 6\""))
    assert after != feet_plan()
    assert bed_of(after, "t1").length.text == "53' 6\""


@given(plan=plans(), data=st.data())
def test_what_is_added_and_taken_away_again_leaves_an_equal_plan(plan: Plan, data: st.DataObject) -> None:
    with_bed = edits.add_bed(plan, data.draw(beds()))
    with_crop = edits.add_crop(with_bed, data.draw(crops()))
    bed, crop = with_crop.beds[-1].id, with_crop.crops[-1].id
    with_order = edits.add_order(with_crop, data.draw(orders([crop])))
    planting = evolve(data.draw(plantings([bed], [crop])), actual=None, series=None)
    with_planting = edits.add_planting(with_order, planting)
    assert edits.remove_planting(with_planting, with_planting.plantings[-1].id) == with_order
    assert edits.remove_order(with_order, with_order.orders[-1].id, {}) == with_crop
    assert edits.remove_crop(with_crop, crop) == with_bed
    assert edits.remove_bed(with_bed, bed) == plan


def test_what_is_added_gets_a_fresh_id() -> None:
    plan = metric_plan()
    for _ in range(2):
        plan = edits.add_bed(plan, plan.beds[0])
        plan = edits.add_crop(plan, plan.crops[1])
        plan = edits.add_planting(plan, plan.plantings[0])
    assert [bed.id for bed in plan.beds] == ["b1", "b2", "b1-2", "b1-3"]
    assert [crop.id for crop in plan.crops] == ["pak-choi", "leek", "leek-2", "leek-3"]
    assert [planting.id for planting in plan.plantings] == ["p1", "p2", "p3", "p1-2", "p1-3"]


@given(plans(least_beds=1), st.data())
def test_a_copied_bed_is_an_empty_twin_right_below(plan: Plan, data: st.DataObject) -> None:
    bed = data.draw(st.sampled_from(plan.beds))
    after = edits.copy_bed(plan, bed.id)
    at = after.beds.index(bed)
    twin = after.beds[at + 1]
    assert evolve(twin, id=bed.id, name=bed.name) == bed
    assert bed.name in twin.name != bed.name
    assert (after.beds[: at + 1] + after.beds[at + 2 :], after.plantings) == (plan.beds, plan.plantings)
    assert twin.id not in {one.id for one in plan.beds}


@given(plans(least_beds=1), st.data())
def test_a_removed_bed_takes_its_plantings_and_covers_along_and_no_others(plan: Plan, data: st.DataObject) -> None:
    gone = data.draw(st.sampled_from(plan.beds)).id
    plan = evolve(plan, plantings=tuple(evolve(one, actual=None, series=None) for one in plan.plantings))
    after = edits.remove_bed(plan, gone)
    assert after.beds == tuple(bed for bed in plan.beds if bed.id != gone)
    assert after.plantings == tuple(one for one in plan.plantings if one.bed != gone)
    assert after.covers == tuple(one for one in plan.covers if one.bed != gone)
    assert (after.crops, after.orders, after.place) == (plan.crops, plan.orders, plan.place)


def test_a_wish_for_a_removed_bed_alone_does_not_spread_to_all_beds() -> None:
    wishes = (Wish("w1", "leek", beds=("b1",)), Wish("w2", "leek", beds=("b1", "b2")), Wish("w3", "leek"))
    after = edits.remove_bed(evolve(metric_plan(), wishes=wishes), "b1")
    assert {wish.id: wish.beds for wish in after.wishes} in (
        {"w2": ("b2",), "w3": ()},
        {"w1": ("b1",), "w2": ("b2",), "w3": ()},
    )


def test_what_was_planted_for_a_wish_stays_when_the_wish_goes() -> None:
    plan = edits.add_wish(metric_plan(), Wish("w", "leek", most=40))
    planted = edits.change_planting(plan, "p2", wish="w")
    after = edits.remove_wish(planted, "w")
    assert after == metric_plan()
    alone = edits.change_wish(planted, "w", beds=("b1",))
    assert planting_of(edits.remove_bed(alone, "b1"), "p2").wish is None


IN_USE = [
    evolve(feet_plan(), plantings=()),
    evolve(feet_plan(), orders=(), plantings=(Planting("p1", "t1", "beet"),)),
    evolve(feet_plan(), orders=(), plantings=(), wishes=(Wish("w1", "beet"),)),
]


@pytest.mark.parametrize("plan", IN_USE, ids=["ordered", "planted", "wished for"])
def test_a_crop_that_is_in_use_cannot_be_removed(plan: Plan) -> None:
    with pytest.raises(PlanError, match="Beetroot"):
        edits.remove_crop(plan, "beet")
    assert edits.remove_crop(evolve(plan, plantings=(), orders=(), wishes=()), "beet").crops == plan.crops[:1]


def test_plants_take_the_place_of_a_length_and_a_length_that_of_plants() -> None:
    by_plants = planting_of(edits.change_planting(metric_plan(), "p2", plants=40), "p2")
    by_length = planting_of(edits.change_planting(metric_plan(), "p1", length=parse_length("2 m")), "p1")
    assert (by_plants.plants, by_plants.length) == (40, None)
    assert (by_length.plants, by_length.length) == (None, parse_length("2 m"))
    with pytest.raises(PlanError, match="not both"):
        edits.change_planting(metric_plan(), "p1", plants=40, length=parse_length("2 m"))


def test_a_planting_dragged_to_another_length_has_that_length_and_no_slack_on_top() -> None:
    plan = edits.change_planting(feet_plan(), "p1", slack=parse_length("1 ft"), round_up_to=parse_length("4 ft"))
    after = edits.resize_planting(plan, "p1", parse_length("2 ft"), parse_length("5 ft"))
    assert (planting_of(after, "p1").slack, planting_of(after, "p1").round_up_to) == (None, None)
    (layout,) = (layout for laid in lay_out_plan(after) for layout in laid.layouts if layout.planting == "p1")
    assert (layout.start, layout.length) == (parse_length("2 ft").nm, parse_length("5 ft").nm)


def test_an_edit_shares_with_the_plan_before_all_that_it_does_not_change() -> None:
    plan = metric_plan()
    after = edits.move_planting(plan, "p1", "b2", parse_length("12.5 m"))
    assert after.beds is plan.beds
    assert after.crops is plan.crops
    assert after.plantings[1] is plan.plantings[1]
    assert planting_of(after, "p1") == evolve(plan.plantings[0], bed="b2", start=parse_length("12.5 m"))


def test_a_crop_that_the_plan_carries_already_keeps_the_plans_own_words() -> None:
    plan = metric_plan()
    other = evolve(plan.crops[1], name="Winter leek")
    assert edits.carry_crop(plan, other) is plan


UNKNOWN: list[Callable[[Plan], Plan]] = [
    lambda plan: edits.change_bed(plan, "no-such"),
    lambda plan: edits.copy_bed(plan, "no-such"),
    lambda plan: edits.remove_bed(plan, "no-such"),
    lambda plan: edits.add_planting(plan, Planting("p9", "no-such", "leek")),
    lambda plan: edits.add_planting(plan, Planting("p9", "b1", "no-such")),
    lambda plan: edits.change_planting(plan, "no-such"),
    lambda plan: edits.move_planting(plan, "no-such", "b1", parse_length("1 m")),
    lambda plan: edits.move_planting(plan, "p1", "no-such", parse_length("1 m")),
    lambda plan: edits.resize_planting(plan, "no-such", parse_length("1 m"), parse_length("1 m")),
    lambda plan: edits.remove_planting(plan, "no-such"),
    lambda plan: edits.change_crop(plan, "no-such"),
    lambda plan: edits.remove_crop(plan, "no-such"),
    lambda plan: edits.change_order(plan, "no-such"),
    lambda plan: edits.remove_order(plan, "no-such", {}),
    lambda plan: several.change_plantings(plan, {"p1": {}, "no-such": {}}),
    lambda plan: several.remove_plantings(plan, ["p1", "no-such"]),
    lambda plan: several.copy_plantings(plan, {"no-such": {}}),
    lambda plan: several.split_planting(plan, "no-such", {}, {}),
    lambda plan: several.join_plantings(plan, "p1", "no-such", {}),
    lambda plan: several.join_plantings(plan, "no-such", "p1", {}),
    lambda plan: edits.change_wish(plan, "no-such"),
    lambda plan: edits.remove_wish(plan, "no-such"),
    lambda plan: edits.change_cover(plan, "no-such"),
    lambda plan: edits.remove_cover(plan, "no-such"),
    lambda plan: edits.move_bed(plan, "no-such", parse_length("1 m"), parse_length("1 m")),
    lambda plan: edits.turn_bed(plan, "no-such", parse_degrees("90°")),
    lambda plan: edits.change_tunnel(plan, "no-such"),
    lambda plan: edits.remove_tunnel(plan, "no-such"),
    lambda plan: edits.change_path(plan, "no-such"),
    lambda plan: edits.remove_path(plan, "no-such"),
]


@pytest.mark.parametrize("edit", UNKNOWN)
def test_an_edit_of_what_is_not_there_says_so(edit: Callable[[Plan], Plan]) -> None:
    with pytest.raises(PlanError, match="there is no “no-such” in the plan"):
        edit(metric_plan())


NONSENSE: list[tuple[Callable[[Plan], Plan], str]] = [
    (lambda plan: edits.change_bed(plan, "b1", length=parse_length("0 m")), "beds[0].length: "),
    (lambda plan: edits.change_bed(plan, "b1", length=parse_length("50 cm")), "beds[0].head_margin: "),
    (lambda plan: edits.change_bed(plan, "b1", id="b2"), "beds[1].id: "),
    (lambda plan: edits.change_planting(plan, "p1", plants=0), "plantings[0].plants: "),
    (lambda plan: edits.change_planting(plan, "p2", out=plan.plantings[1].in_ground), "plantings[1].out: "),
    (lambda plan: edits.change_crop(plan, "leek", row_spacing=()), "crops[1].row_spacing: "),
]


@pytest.mark.parametrize(("edit", "place"), NONSENSE, ids=[place for _, place in NONSENSE])
def test_an_edit_that_makes_no_sense_names_the_place(edit: Callable[[Plan], Plan], place: str) -> None:
    with pytest.raises(PlanError) as refused:
        edit(metric_plan())
    assert str(refused.value).startswith(place)
