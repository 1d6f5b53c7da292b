"""The length for so many plants in beds whose rows are cut: what it is guessed from never decides it."""

import json

import pytest

from gardenplot.layout import block
from gardenplot.layout.block import length_at, sized
from gardenplot.plan.file import plan_of_text
from gardenplot.units import CM

L_SHAPE = {
    "outline": [
        ["0 m", "0 m"],
        ["6 m", "0 m"],
        ["6 m", "60 cm"],
        ["3 m", "60 cm"],
        ["3 m", "1.2 m"],
        ["0 m", "1.2 m"],
    ]
}
WEDGE = {"outline": [["0 m", "0 m"], ["6 m", "25 cm"], ["6 m", "90 cm"], ["0 m", "1.2 m"]]}
ROUND = {"diameter": "3 m"}
POST = {
    "length": "6 m",
    "width": "1.2 m",
    "head_margin": "20 cm",
    "obstacles": [{"name": "post", "x": "2 m", "y": "45 cm", "diameter": "12 cm", "keep_clear": "20 cm"}],
}


@pytest.mark.parametrize("bed", [L_SHAPE, WEDGE, ROUND, POST], ids=["L", "wedge", "round", "post"])
@pytest.mark.parametrize(
    "pattern",
    [
        {},
        {"pattern": "staggered"},
        {"pattern": "triangular"},
        {"pattern": "twin", "twin_spacing": "8 cm"},
        {"direction": "across"},
        {"end_margin": "20 cm"},
        {"phase": "best"},
        {"pattern": "cells", "cell": "30 cm", "plants_per_cell": 4},
    ],
)
def test_the_length_is_that_found_by_halving(
    monkeypatch: pytest.MonkeyPatch, bed: dict[str, object], pattern: dict[str, object]
) -> None:
    raw = {
        "gardenplot": 1,
        "beds": [{"id": "b", "name": "Bed"} | bed],
        "crops": [{"id": "c", "name": "Crop", "in_row": "17 cm", "row_spacing": "26 cm", "edge": "11 cm"}],
        "plantings": [{"id": "p", "bed": "b", "crop": "c", "plants": 1} | pattern],
    }
    plan = plan_of_text(json.dumps(raw)).plan
    (ground,), (crop,), (planting,) = plan.beds, plan.crops, plan.plantings
    size = sized(ground, crop, planting, None)
    asked = [(start * CM, plants) for start in (0, 131, 305) for plants in (1, 2, 7, 19, 44, 300)]

    def lengths() -> list[int]:
        return [length_at(ground, crop, planting, size._replace(wanted=plants), start) for start, plants in asked]

    guessed = lengths()
    monkeypatch.setattr(block, "_is_least", lambda *_asked: False)
    assert guessed == lengths()
