"""Where the head of a bed lies: a bed from left to right has it on the left, which is west where north is up."""

import pytest

from gardenplot.drawing.compass import head_words
from tests.drawing.hand_worked import plan_from


@pytest.mark.parametrize(
    ("north", "turn", "words"),
    [
        ("0°", "0°", "head in the west"),
        ("0°", "90°", "head in the north"),
        ("0°", "180°", "head in the east"),
        ("90°", "0°", "head in the south"),  # north lies to the right, so the left end is in the south
        ("-20°", "0°", "head in the west"),
        ("-45°", "0°", "head in the north-west"),
        ("22.5°", "0°", "head in the west"),
        ("23°", "0°", "head in the south-west"),
    ],
)
def test_the_side_of_the_head_is_told_by_the_winds(north: str, turn: str, words: str) -> None:
    ground = [{"bed": "b1", "x": "1 m", "y": "1 m", "turn": turn}]
    plan = plan_from(
        {"north": north}, beds=[{"id": "b1", "name": "A", "length": "9 m", "width": "1 m"}], ground=ground
    )
    assert head_words(plan, "b1") == words


def test_nothing_is_told_where_north_or_the_place_of_the_bed_is_not_known() -> None:
    beds = [{"id": "b1", "name": "A", "length": "9 m", "width": "1 m"}]
    assert head_words(plan_from({"north": "0°"}, beds=beds), "b1") == ""
    assert head_words(plan_from({}, beds=beds, ground=[{"bed": "b1", "x": "1 m", "y": "1 m"}]), "b1") == ""
