"""What `gardenplot count` says of rows: those that hold a plant, in words, for a machine and as a table."""

import csv
import json
from pathlib import Path

import pytest

from gardenplot.__main__ import main
from tests.scenarios.test_commands import PLANS


def test_rows_without_a_plant_are_not_counted(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A wedge, 2 ft wide at the head and 0.3 ft wider every foot; rows at 0.4, 1.3, 2.2 ... ft, 9 in 8 ft.

    0.2 ft from the edge the third begins at (2.2 - 1.8) / 0.3 = 1.33 ft, the fourth at 4.33 ft, the fifth at 7.33 ft:
    of 6 ft with a plant every 1.5 ft they hold 4, 4, 3 (4.67 ft) and 1 (1.67 ft), the others none.
    """
    wedge = {
        "gardenplot": 1,
        "place": {"units": "decimal feet"},
        "beds": [
            {
                "id": "b",
                "name": "Wedge",
                "outline": [["0 ft", "0 ft"], ["20 ft", "0 ft"], ["20 ft", "8 ft"], ["0 ft", "2 ft"]],
            }
        ],
        "crops": [{"id": "c", "name": "Kale", "in_row": "1.5 ft", "row_spacing": "0.9 ft", "edge": "0.2 ft"}],
        "plantings": [{"id": "p", "bed": "b", "crop": "c", "from": "0 ft", "length": "6 ft"}],
    }
    plan, table = tmp_path / "wedge.gardenplot", tmp_path / "wedge.csv"
    plan.write_text(json.dumps(wedge), encoding="utf-8")
    assert main(["count", str(plan), "--csv", str(table)]) == 0
    capsys.readouterr()
    assert main(["count", str(plan), "--json"]) == 0
    (found,) = json.loads(capsys.readouterr().out)["plantings"]
    assert found["plants_per_row"] == [4, 4, 3, 1, 0, 0, 0, 0, 0]
    assert found["rows"] == 4
    assert {row["rows"] for row in csv.DictReader(table.read_text(encoding="utf-8").splitlines())} == {"4"}


def test_a_block_that_holds_nothing_has_the_rows_that_it_would_have(capsys: pytest.CaptureFixture[str]) -> None:
    """The dill that its bed has no room for: (40 - 6) / 6 = 5.7, 6 rows."""
    assert main(["count", str(PLANS / "further/savoy_and_dill.gardenplot"), "--json"]) == 0
    dill = json.loads(capsys.readouterr().out)["plantings"][1]
    assert (dill["rows"], dill["plants"]) == (6, 0)
