"""Two cases worked by hand for planning again, and what the command says of a plan."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from gardenplot.__main__ import main
from tests.scenarios.test_commands import Numbers

Fields = dict[str, Any]
Again = Callable[..., Fields]

KOHLRABI: Fields = {
    "id": "k", "name": "Kohlrabi", "in_row": "20 cm", "row_spacing": "25 cm", "edge": "10 cm", "field_loss": "10 %",
    "germination": "80 %", "tray_cells": 84, "field_days": 50, "raising_days": 28,
}  # fmt: skip
RADISH: Fields = {
    "id": "r", "name": "Radish", "in_row": "5 cm", "row_spacing": "15 cm", "establish": "direct", "field_days": 28,
}  # fmt: skip
COS: Fields = {
    "id": "c", "name": "Cos lettuce", "in_row": "30 cm", "row_spacing": "30 cm", "edge": "15 cm",
    "germination": "90 %", "field_days": 45, "raising_days": 28,
}  # fmt: skip


def failed_row(**more: Any) -> Fields:
    """Kohlrabi for 12 June, of whose three rows the middle one was eaten."""
    return {
        "gardenplot": 1,
        "place": {"name": "Rook Hollow", "units": "metric"},
        "beds": [
            {"id": "b1", "name": "Long bed", "length": "12 m", "width": "80 cm", "head_margin": "30 cm",
             "foot_margin": "30 cm"}
        ],
        "crops": [KOHLRABI, RADISH, RADISH | {"id": "w", "name": "Bean", "in_row": "10 cm", "row_spacing": "45 cm"}],
        "orders": [{"id": "o", "crop": "k", "units": 120, "on": "2027-06-12"}],
        "wishes": [{"id": "wr", "crop": "r"}, {"id": "wb", "crop": "w"}],
        "plantings": [
            {"id": "p", "bed": "b1", "crop": "k", "from": "30 cm", "length": "9 m", "order": "o",
             "actual": {"sown": "2027-03-25", "set_out": "2027-04-22", "planted": 135, "counted": "2027-05-06",
                        "failed_rows": [2]}},
            *more.get("plantings", ()),
        ],
    }  # fmt: skip


def changed_order(units: int = 80, on: str = "2027-06-19", *, length: str = "10 m", is_out: bool = True) -> Fields:
    """60 Cos lettuce for 19 June, set out or still in trays, of which now other units are wanted, or another day."""
    size: Fields = {"plants": 60, "actual": {"sown": "2027-04-06"}}
    if is_out:
        size = {"length": "6 m", "actual": {"sown": "2027-04-06", "set_out": "2027-05-04", "planted": 60}}
    return {
        "gardenplot": 1,
        "place": {"name": "Rook Hollow", "units": "metric"},
        "beds": [{"id": "b1", "name": "Upper bed", "length": length, "width": "1 m"}],
        "crops": [COS, RADISH],
        "orders": [{"id": "o", "crop": "c", "units": units, "on": on}],
        "plantings": [{"id": "p", "bed": "b1", "crop": "c", "from": "0 m", "order": "o"} | size],
    }


@pytest.fixture
def again(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Again:
    """What the command says of a plan on a day, with further arguments."""

    def run(plan: Fields, today: str, *more: str) -> Fields:
        path = tmp_path / "plan.gardenplot"
        path.write_text(json.dumps(plan), encoding="utf-8")
        assert main(["again", str(path), *more, "--today", today, "--json"]) == 0
        printed = capsys.readouterr()
        assert printed.err == ""
        said: Fields = json.loads(printed.out)
        return said

    return run


def the_setback(said: Fields, why: str) -> Numbers:
    """The one setback of a kind."""
    found: Numbers
    (found,) = [one for one in said["setbacks"] if one["why"] == why]
    return found


def the_answer(setback: Numbers, kind: str) -> Numbers:
    """The one answer of a kind."""
    found: Numbers
    (found,) = [one for one in setback["answers"] if one["kind"] == kind]
    return found


def kinds(setback: Numbers) -> list[str]:
    """The kinds of the answers, the smallest change first."""
    return [one["kind"] for one in setback["answers"]]
