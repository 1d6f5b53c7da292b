"""Measuring: press and draw, or two clicks, or keys; nothing of it is in the plan."""

import pytest
from attrs import evolve

from gardenplot.gestures.measure import measure, measured_for, readings
from gardenplot.gestures.snap import Pull
from gardenplot.gestures.stage import Event, Measured, Pointer, Pressed, Released, Spot, Stepped, Turned
from gardenplot.units import CM
from tests.gestures.hand import KeptStage, at, block, ground, hold
from tests.layout.ground import nm

PLAN = ground(block("5 m", "3 m"), block("2 m", "1 m", bed="b2"))


def measured(*events: Event, first: Measured | None = None) -> Measured | None:
    """What is measured after some events; never anything that is committed."""
    stage = KeptStage(PLAN)
    gesture = hold(measure(stage, first))
    for event in events:
        gesture.send(event)
    gesture.close()
    assert (stage.committed, stage.refused) == ([], [])
    assert all(trial is None or trial.plan is PLAN for trial in stage.shown)
    last = stage.shown[-1] if stage.shown else None
    return last.measured if last else None


def ends(found: Measured | None) -> tuple[int, int]:
    assert found is not None
    return found.start.x, found.end.x


def test_press_draw_and_let_go() -> None:
    found = measured(at("1 m"), Pressed(), at("2 m"), at("3.5 m"), Released(), at("9 m"))
    assert ends(found) == (nm("1 m"), nm("3.5 m"))


def test_two_clicks() -> None:
    found = measured(at("1 m"), Pressed(), Released(), at("2 m"), at("4 m"), Pressed(), Released(), at("9 m"))
    assert ends(found) == (nm("1 m"), nm("4 m"))


def test_the_next_press_begins_anew() -> None:
    first = (at("1 m"), Pressed(), at("3.5 m"), Released())
    assert ends(measured(*first, at("6 m"), Pressed(), at("7 m"), Released())) == (nm("6 m"), nm("7 m"))


def test_moving_without_a_press_measures_nothing_and_beside_the_beds_nothing_changes() -> None:
    assert measured(at("1 m"), at("2 m")) is None
    assert ends(measured(at("1 m"), Pressed(), at("3 m"), at("0 m", None), Released())) == (nm("1 m"), nm("3 m"))


@pytest.mark.parametrize(
    ("hand", "x", "pull"),
    [("4.95 m", "5 m", Pull.NEIGHBOUR), ("0.33 m", "0.3 m", Pull.HEAD_MARGIN), ("13 m", "12 m", Pull.END),
     ("3.04 m", "3 m", Pull.OTHER_BED), ("4.52 m", "4.5 m", Pull.READING)],
)  # fmt: skip
def test_it_is_drawn_to_what_can_be_measured_from(hand: str, x: str, pull: Pull) -> None:
    found = measured(at("1 m"), Pressed(), at(hand, reach=nm("10 cm") if hand != "13 m" else nm("1 m")))
    assert found is not None
    assert (found.end.x, found.end.snap and found.end.snap.pull) == (nm(x), pull)


def test_across_it_is_drawn_to_edges_rows_and_the_centre() -> None:
    def y_at(y: int, x: str = "6 m") -> int:
        pointer = Pointer("b1", nm(x), y, reach=0, reach_across=3 * CM)
        found = measured(pointer, Pressed())
        assert found is not None
        return found.start.y

    assert [y_at(y * CM) for y in (-5, 2, 21, 24, 38, 74, 90)] == [
        0,
        0,
        225 * CM // 10,
        225 * CM // 10,
        375 * CM // 10,
        75 * CM,
        75 * CM,
    ]


def test_keys_step_the_end_and_tab_turns_to_the_start() -> None:
    first = measured_for(PLAN, "b1", "p1")
    assert ends(first) == (nm("5 m"), nm("8 m"))
    moved = measured(Stepped(nm("5 cm"), 0), Stepped(0, nm("10 cm")), Turned(), Stepped(-nm("1 m"), 0), first=first)
    assert ends(moved) == (nm("4 m"), nm("8.05 m"))
    assert moved is not None
    assert (moved.end.y, moved.at_end) == (nm("10 cm"), False)


def test_keys_go_from_mark_to_mark_and_stay_inside_the_bed() -> None:
    first = measured_for(PLAN, "b1", "p1")
    foot, head = Stepped(1, 0, to_mark=True), Stepped(-1, 0, to_mark=True)
    assert ends(measured(foot, first=first))[1] == nm("11.7 m")
    assert ends(measured(foot, foot, foot, first=first))[1] == nm("12 m")
    assert ends(measured(head, first=first))[1] == nm("5 m")
    assert ends(measured(Stepped(nm("99 m"), -nm("9 m")), first=first))[1] == nm("12 m")


def test_without_a_planting_all_of_the_bed_is_measured() -> None:
    assert ends(measured_for(PLAN, "b2", None)) == (0, nm("20 m"))


def test_the_readings_are_along_across_and_straight() -> None:
    found = Measured(Spot("b1", nm("1 m"), 0), Spot("b1", nm("4 m"), nm("40 cm")))
    words = [line.replace("\u2009", " ") for line in readings(PLAN, found)]
    assert words == ["along 3.00 m · across 40 cm · straight 3.03 m", "1.00 – 4.00 m"]
    level = evolve(found, end=Spot("b1", nm("4 m"), 0))
    assert readings(PLAN, level)[0].replace("\u2009", " ") == "along 3.00 m"


def test_from_bed_to_bed_only_the_shared_tape_is_measured() -> None:
    found = Measured(Spot("b1", nm("1 m"), 0), Spot("b2", nm("4 m"), nm("40 cm")))
    assert readings(PLAN, found)[0].replace("\u2009", " ") == "along 3.00 m · two beds: only along the tape"
