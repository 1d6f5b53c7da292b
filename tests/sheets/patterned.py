"""Beds of every shape with blocks of every pattern, to print."""

from gardenplot.plan import Plan
from tests.drawing.hand_worked import plan_from
from tests.layout.ground import Fields

PLAIN: Fields = {"length": "12 m", "width": "1.2 m"}
L_SHAPE: Fields = {
    "outline": [
        ["0 m", "0 m"],
        ["8 m", "0 m"],
        ["8 m", "0.8 m"],
        ["2 m", "0.8 m"],
        ["2 m", "1.6 m"],
        ["0 m", "1.6 m"],
    ]
}
TAPER: Fields = {"outline": [["0 m", "0 m"], ["9 m", "0 m"], ["9 m", "0.6 m"], ["0 m", "1.5 m"]]}
ROUND: Fields = {"diameter": "3 m"}
BOX: Fields = {"box": {"length": "2.5 m", "width": "1.3 m", "board": "5 cm", "post": "9 cm"}}
TWIN: Fields = {"pattern": "twin", "twin_spacing": "20 cm", "row_spacing": ["60 cm"], "edge": "10 cm"}
CELLS: Fields = {"pattern": "cells", "cell": "30 cm", "plants_per_cell": 4, "edge": "0 cm"}
RINGS: Fields = {"pattern": "rings"}
ACROSS: Fields = {"direction": "across"}
MOVED_ACROSS: Fields = {"direction": "across", "pattern": "staggered"}
OWN: Fields = {"pattern": "offsets", "offsets": ["20 cm", "45 cm", "100 cm"]}
BY_NAME: dict[str, tuple[Fields, Fields]] = {
    "plain, twin": (PLAIN, TWIN),
    "plain, own": (PLAIN, OWN),
    "plain, cells": (PLAIN, CELLS),
    "plain, rings": (PLAIN, RINGS),
    "plain, across": (PLAIN, ACROSS),
    "plain, moved across": (PLAIN, MOVED_ACROSS),
    "L": (L_SHAPE, {}),
    "L, twin": (L_SHAPE, TWIN),
    "L, moved across": (L_SHAPE, MOVED_ACROSS),
    "taper": (TAPER, {}),
    "taper, shifted": (TAPER, {"phase": "best"}),
    "round": (ROUND, {}),
    "round, rings": (ROUND, RINGS),
    "round, across": (ROUND, ACROSS),
    "round, cells": (ROUND, CELLS),
    "box": (BOX, {"edge": "5 cm"}),
    "box, cells": (BOX, CELLS),
    "box, five in a cell": (BOX, CELLS | {"plants_per_cell": 5}),
}


def bed_of(bed: Fields, *plantings: Fields, units: str = "metric", **crop: object) -> Plan:
    """A bed with blocks of leeks; without any, with one that fills it."""
    leek = {"id": "c", "name": "Leek", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm"}
    return plan_from(
        {"units": units},
        beds=[{"id": "b", "name": "Bed"} | bed],
        crops=[leek | crop],
        plantings=[{"id": f"p{at}", "bed": "b", "crop": "c"} | one for at, one in enumerate(plantings or ({},), 1)],
    )
