"""The letter and the look of each planting."""

from itertools import pairwise

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.letters import keeping_letters, letter, looks, looks_in_hand
from gardenplot.drawing.marks import Shape
from gardenplot.drawing.style import PLANTINGS
from gardenplot.drawing.turns import turns
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.plan.valid import faults
from gardenplot.units import parse_length
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.plans import plans


@pytest.mark.parametrize(
    ("number", "name"),
    [(0, "A"), (1, "B"), (25, "Z"), (26, "AA"), (27, "AB"), (51, "AZ"), (52, "BA"), (701, "ZZ"), (702, "AAA")],
)
def test_letters_go_on_after_z(number: int, name: str) -> None:
    assert letter(number) == name


@given(st.integers(0, 20_000))
def test_each_number_has_letters_of_its_own_in_order(number: int) -> None:
    one, next_one = letter(number), letter(number + 1)
    assert (len(one), one) < (len(next_one), next_one)


@settings(max_examples=25)
@given(plans())
def test_letters_are_given_once_each_and_without_a_hole(plan: Plan) -> None:
    found = looks(plan)
    assert set(found) == {planting.id for planting in plan.plantings}
    assert {look.letter for look in found.values()} == {letter(number) for number in range(len(plan.plantings))}


def test_letters_run_bed_by_bed_from_the_head_on_whatever_the_order_in_the_plan() -> None:
    plan = in_a_row("4 m", "1 m", "7 m")
    assert {name: look.letter for name, look in looks(plan).items()} == {"p1": "B", "p2": "A", "p3": "C"}
    assert [look.letter for look in looks(hand_worked("s4")).values()] == ["A", "B"]


def test_as_many_looks_as_there_are_shapes_and_colours_are_tried_before_one_comes_back() -> None:
    found = looks(in_a_row(*(f"{n} m" for n in range(len(Shape) * len(PLANTINGS)))))
    assert len({(look.ink, look.shape) for look in found.values()}) == len(Shape) * len(PLANTINGS)


@pytest.mark.parametrize("order", [range(14), range(13, -1, -1), [0, 2, 3, 4, 5, 6, 1, 7, 9, 8]], ids=str)
def test_neighbours_differ_in_shape(order: list[int]) -> None:
    plan = in_a_row(*(f"{n} m" for n in order))
    look = looks(plan)
    for laid in lay_out_plan(plan):
        for turn in turns(laid):
            for one, beside in pairwise(look[layout.planting] for layout in turn):
                assert one.shape != beside.shape


def in_a_row(*starts: str) -> Plan:
    """A bed with a block of leeks at each of those readings, p1, p2 ... in the order they are given."""
    return plan_from(
        beds=[{"id": "b1", "name": "Bed", "length": "60 m", "width": "75 cm"}],
        crops=[{"id": "leek", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm"}],
        plantings=[
            {"id": f"p{number}", "bed": "b1", "crop": "leek", "from": start, "length": "60 cm"}
            for number, start in enumerate(starts, 1)
        ],
    )


def test_while_the_hand_holds_a_new_planting_it_alone_has_a_new_letter() -> None:
    before, new = in_a_row("1 m", "5 m"), evolve(in_a_row("3 m").plantings[0], id="new")
    held = looks_in_hand(before, evolve(before, plantings=(*before.plantings, new)))
    assert {name: look.letter for name, look in held.items()} == {"p1": "A", "p2": "B", "new": "C"}
    assert {name: look for name, look in held.items() if name != "new"} == looks(before)


def test_at_the_end_of_the_plan_the_letter_in_the_hand_is_the_one_that_stays() -> None:
    before, new = in_a_row("1 m", "5 m"), evolve(in_a_row("8 m").plantings[0], id="new")
    after = evolve(before, plantings=(*before.plantings, new))
    assert looks_in_hand(before, after) == looks(after)


def test_what_was_there_keeps_its_letter_and_what_is_new_takes_the_next_free_one() -> None:
    """A new block between the first two: the second stays B, and is C again only in a plan that nobody keeps."""
    before, new = in_a_row("1 m", "5 m"), evolve(in_a_row("3 m").plantings[0], id="new")
    after = evolve(before, plantings=(*before.plantings, new))
    assert letters(after) == {"p1": "A", "new": "B", "p2": "C"}
    kept = keeping_letters(before, after)
    assert letters(kept) == {"p1": "A", "p2": "B", "new": "C"}
    assert plan_of_text(text_of(kept)).plan == kept
    newer = evolve(kept, plantings=(*kept.plantings, evolve(in_a_row("7 m").plantings[0], id="newer")))
    assert letters(newer) == {"p1": "A", "p2": "B", "new": "C", "newer": "D"}
    at_the_end = evolve(before, plantings=(*before.plantings, evolve(new, start=parse_length("8 m"))))
    assert keeping_letters(before, at_the_end) == at_the_end


def test_the_letter_of_what_is_gone_is_not_given_to_what_is_new() -> None:
    before, new = in_a_row("1 m", "5 m"), evolve(in_a_row("3 m").plantings[0], id="new")
    after = evolve(before, plantings=(new, before.plantings[1]))
    assert letters(keeping_letters(before, after)) == {"p2": "B", "new": "C"}


def test_a_letter_that_two_have_written_down_is_the_first_ones_and_none_is_given_twice() -> None:
    plan = in_a_row("1 m", "5 m", "3 m")
    plan = evolve(plan, plantings=tuple(evolve(one, letter="B") for one in plan.plantings))
    assert letters(plan) == {"p1": "B", "p3": "A", "p2": "C"}
    (fault,) = faults(evolve(plan, plantings=(evolve(plan.plantings[0], letter="b"),)))
    assert fault.place.endswith("letter")


@settings(max_examples=25)
@given(plans(), plans())
def test_from_any_plan_to_any_other_letters_are_kept_and_given_once(before: Plan, after: Plan) -> None:
    was, now = letters(before), letters(keeping_letters(before, after))
    growing = {one.id for one in after.plantings if one.hardens is None}
    stayed = growing & {one.id for one in before.plantings if one.hardens is None}
    assert {one: now[one] for one in stayed} == {one: was[one] for one in stayed}
    assert len({now[one] for one in growing}) == len(growing)


def letters(plan: Plan) -> dict[str, str]:
    return {planting: look.letter for planting, look in looks(plan).items()}
