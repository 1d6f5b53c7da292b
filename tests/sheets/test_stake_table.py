"""The stake table leaves room to write what was really done, in gloves, and takes it from words that can spare it."""

import pytest
from hypothesis import given

from gardenplot.drawing.letters import looks
from gardenplot.drawing.stakes import Stake, stakes
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.sheets.paper import load_face
from gardenplot.sheets.stake_table import StakeTable, stake_table
from gardenplot.sheets.stake_words import lines_of, size_of, words_of
from tests.drawing.hand_worked import hand_worked
from tests.plans import plans

A4, LETTER = 540.0, 490.0
"""Points that the table is wide."""
USUAL = 48.0
"""Points that are written on at least, 17 mm."""


def tables(plan: Plan, width: float) -> list[StakeTable]:
    load_face()
    look = looks(plan)
    return [
        stake_table(stakes(plan, laid, laid.layouts, look), plan.place.units, width) for laid in lay_out_plan(plan)
    ]


def long(table: StakeTable, column: str) -> float:
    left, right = table.columns[column]
    return right - left


@pytest.mark.parametrize(
    ("scenario", "width"), [*((scenario, A4) for scenario in ("s1", "s2", "s4", "s5", "s6")), ("s2", LETTER)]
)
def test_what_is_written_by_hand_has_room_for_gloves(scenario: str, width: float) -> None:
    """28 mm hold the six signs of 12′ 6½″ as a hand in gloves writes them, some 5 mm each."""
    for table in tables(hand_worked(scenario), width):
        assert long(table, "actual") >= 79


@given(plans(least_plantings=1))
def test_no_word_is_lost_for_it_and_no_row_is_higher(plan: Plan) -> None:
    for width in (A4, LETTER):
        for table in tables(plan, width):
            edges = [edge for column in table.columns.values() for edge in column]
            assert edges == sorted(edges)
            assert edges[0] >= 0
            assert edges[-1] <= width
            spare = long(table, "actual") - USUAL
            assert spare >= 0
            for stake in table.rows:
                assert_as_well(table, stake, spare)


def assert_as_well(table: StakeTable, stake: Stake, spare: float) -> None:
    """The words of a stake say in their room what they would say with what they have spared."""
    ends = [note.begins for note in stake.notes if note.plant]
    crowded, counts, room = len(ends) != len(set(ends)), "rows" not in table.columns, long(table, "here")
    before, after = (lines_of(stake, one, counts=counts, apart=crowded) for one in (room + spare, room))
    assert words_of(before) == words_of(after)
    assert len(after) <= max(2, len(before))
    assert size_of(after, room, 100) >= size_of(before, room + spare, 100) - 1
    if spare:
        assert all(line.width(size_of(after, room, 100)) <= room for line in after)
