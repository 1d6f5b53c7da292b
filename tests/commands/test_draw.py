"""The drawing and the places of plants as files, read back by other programs' eyes."""

import csv
import io
import json
from collections import Counter
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import pytest
from ezdxf.document import Drawing
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.filemanagement import readfile
from hypothesis import given

from gardenplot.__main__ import main
from gardenplot.exports import places
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Pattern, Plan
from tests.plans import plans

SCENARIOS = sorted((Path(__file__).parents[1] / "scenarios").glob("*.gardenplot"))
SVG = {"svg": "http://www.w3.org/2000/svg"}
ODD_NAMES = ["<&>\"'", "Küche – ½ ″", "a;b:c*d|e", "two\nlines", "bell \u0007", "nul \u0000", "%%d", "^J", ""]
each_scenario = pytest.mark.parametrize("plan", SCENARIOS, ids=[path.stem for path in SCENARIOS])


def drawn(plan: Path, out: Path) -> Path:
    """Draw a plan; the command must end with status 0."""
    assert main(["draw", str(plan), str(out)]) == 0
    return out


def counted(plan: Path, capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    """What `count` says of a plan."""
    capsys.readouterr()
    main(["count", str(plan), "--json"])
    numbers: dict[str, Any] = json.loads(capsys.readouterr().out)
    return numbers


def table(content: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(content.decode(), newline="")))


def plan_file(path: Path, text: str, plants: int = 8, bed_id: str = "b1") -> Path:
    """A plan whose names all hold some text."""
    raw = {
        "gardenplot": 1,
        "place": {"name": text},
        "beds": [{"id": bed_id, "name": text, "length": "5 m", "width": "75 cm"}],
        "crops": [{"id": "leeks", "name": text, "in_row": "15 cm", "row_spacing": "25 cm"}],
        "plantings": [{"id": "p1", "bed": bed_id, "crop": "leeks", "plants": plants}],
    }
    path.write_text(json.dumps(raw), encoding="utf-8")
    return path


def plants_in_svg(path: Path) -> list[str]:
    """The steps of each plant: its mark moves to its place with a capital M."""
    marks = ET.parse(path).getroot().iterfind(".//svg:g/svg:path", SVG)
    return [plant for mark in marks for plant in mark.attrib["d"].split("M") if plant]


def plants_in_dxf(document: Drawing) -> int:
    return len(document.modelspace().query("CIRCLE"))


@each_scenario
def test_the_table_of_places_agrees_with_the_count(
    plan: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    rows = table(drawn(plan, tmp_path / "out.csv").read_bytes())
    count = counted(plan, capsys)
    assert len(rows) == count["plants"]
    for one in count["plantings"]:
        own = [row for row in rows if row["planting"] == one["id"]]
        in_each_row = Counter(int(row["row"]) for row in own)
        assert [in_each_row[number + 1] for number in range(one["rows"])] == one["plants_per_row"]
        assert {row["bed"] for row in own} == {one["bed"]}
        assert min(float(row["x_mm"]) for row in own) == one["first_plant_mm"]
        assert max(float(row["x_mm"]) for row in own) == one["last_plant_mm"]
        assert sorted({float(row["y_mm"]) for row in own}) == one["row_offsets_mm"]


@given(plans())
def test_the_table_of_any_plan_lists_every_plant_once(plan: Plan) -> None:
    rows = table(places.drawn(plan))
    layouts = [layout for laid in lay_out_plan(plan) for layout in laid.layouts]
    assert len(rows) == sum(one.plants for one in layouts if one.grid.pattern is not Pattern.BROADCAST)
    numbered = {(row["bed"], row["planting"], row["row"], row["plant"]) for row in rows}
    assert len(numbered) == len(rows)


def test_trays_that_harden_off_are_no_plants_of_the_table(tmp_path: Path) -> None:
    path = plan_file(tmp_path / "a.gardenplot", "Bed")
    raw = json.loads(path.read_text(encoding="utf-8"))
    raw["plantings"][0] |= {"in_ground": "2027-05-14"}
    raw["crops"][0] |= {"raising_days": 30, "hardening_days": 7, "tray_cells": 4, "germination": "100 %"}
    raw["beds"].append({"id": "b2", "name": "Tunnel", "length": "5 m", "width": "75 cm"})
    raw["plantings"].append({"id": "t1", "bed": "b2", "crop": "leeks", "plants": 2, "hardens": "p1"})
    path.write_text(json.dumps(raw), encoding="utf-8")
    assert {row["planting"] for row in table(drawn(path, tmp_path / "a.csv").read_bytes())} == {"p1"}


def test_the_table_has_the_columns_that_are_fixed(tmp_path: Path) -> None:
    first, *others = drawn(SCENARIOS[0], tmp_path / "out.csv").read_bytes().split(b"\r\n")
    assert first == b"bed,planting,row,plant,x_mm,y_mm"
    assert others[0] == b"b2,p1,1,1,400,75"
    assert others[-1] == b""


@pytest.mark.parametrize("bed_id", ["=1+1", "+1", "-1", "@now", "\t=1+1", "\r=1+1"])
def test_no_id_runs_as_a_formula(tmp_path: Path, bed_id: str) -> None:
    rows = table(drawn(plan_file(tmp_path / "a.gardenplot", "Bed", bed_id=bed_id), tmp_path / "a.csv").read_bytes())
    assert {row["bed"] for row in rows} == {f"'{bed_id}"}


def test_an_id_with_commas_and_quotes_is_read_back_as_it_is(tmp_path: Path) -> None:
    bed_id = 'east, "upper"\nrow'
    rows = table(drawn(plan_file(tmp_path / "a.gardenplot", "Bed", bed_id=bed_id), tmp_path / "a.csv").read_bytes())
    assert [row["bed"] for row in rows] == [bed_id] * 8


@each_scenario
def test_the_svg_has_as_many_plants_as_are_counted(
    plan: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    plants = plants_in_svg(drawn(plan, tmp_path / "out.svg"))
    count = counted(plan, capsys)
    assert len(plants) == count["plants"]
    first = count["plantings"][0]
    assert plants[0].startswith(f"{first['first_plant_mm']:.10g} {first['row_offsets_mm'][0]:.10g}")


@each_scenario
def test_the_dxf_has_as_many_plants_as_are_counted_and_no_fault(
    plan: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    document = readfile(drawn(plan, tmp_path / "out.dxf"))
    assert document.audit().errors == []
    assert plants_in_dxf(document) == counted(plan, capsys)["plants"]
    assert document.header["$INSUNITS"] == 4


def test_beds_in_the_dxf_lie_below_one_another_each_with_its_plants(tmp_path: Path) -> None:
    (two_beds,) = [path for path in SCENARIOS if path.stem == "s4"]
    document = readfile(drawn(two_beds, tmp_path / "out.dxf"))
    outlines = [one for one in document.modelspace() if isinstance(one, LWPolyline) and one.dxf.layer == "BED"]
    corners = [list(one.vertices()) for one in outlines]
    beds = [{y for _x, y in corner} for corner in corners if max(x for x, _y in corner) == 20_000]
    assert len(beds) == 2
    assert max(beds[1]) < min(beds[0])
    plants = [one.dxf.center.y for one in document.modelspace().query("CIRCLE")]
    assert [sum(min(bed) < y < max(bed) for y in plants) for bed in beds] == [137, 316]


@pytest.mark.parametrize("name", ODD_NAMES)
def test_any_name_leaves_the_svg_well_formed(tmp_path: Path, name: str) -> None:
    assert len(plants_in_svg(drawn(plan_file(tmp_path / "a.gardenplot", name), tmp_path / "a.svg"))) == 8


@pytest.mark.parametrize("name", ODD_NAMES)
def test_any_name_leaves_the_dxf_whole(tmp_path: Path, name: str) -> None:
    document = readfile(drawn(plan_file(tmp_path / "a.gardenplot", name), tmp_path / "a.dxf"))
    assert document.audit().errors == []
    assert plants_in_dxf(document) == 8


def test_the_ending_may_be_in_capitals_and_an_old_drawing_is_replaced(tmp_path: Path) -> None:
    out = tmp_path / "OUT.CSV"
    out.write_text("old", encoding="utf-8")
    drawn(SCENARIOS[0], out)
    assert len(table(out.read_bytes())) == 181
    assert list(tmp_path.iterdir()) == [out]
