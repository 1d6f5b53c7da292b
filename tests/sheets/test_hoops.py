"""Hoops stand where the sheet says: the last at the very end, no reading added up from rounded ones."""

from pathlib import Path

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.__main__ import main
from gardenplot.drawing.covers import cover_marks
from gardenplot.drawing.marks import Line
from gardenplot.plan import Plan
from gardenplot.plan.file import write_plan
from gardenplot.supplies import cover_cut
from gardenplot.units import MM, Units, parse_length
from gardenplot.units.figures import tape
from tests.drawing.hand_worked import plan_from
from tests.sheets.pdf_pages import plain
from tests.sheets.printed import printed


def covered(length: str, apart: str, units: str = "metric", start: str = "0 m") -> Plan:
    """A bed of 20 m under one cover."""
    return plan_from(
        {"units": units},
        beds=[{"id": "b", "name": "Bed", "length": "20 m", "width": "1 m"}],
        covers=[{"id": "c", "bed": "b", "from": start, "to": length, "hoop_spacing": apart}],
    )


def large(plan: Plan) -> list[str]:
    """The figures by which one measures, in reading order."""
    return [plain(words.text) for page in printed(plan) for words in page.words if words.size == 14]


def test_hoops_that_are_no_round_figure_apart_are_told_one_by_one() -> None:
    """By hand: 16.00 m in 15 parts of at most 1.10 m are 1.0667 m each; added up, 1.07 m would end at 16.05 m."""
    figures = large(covered("16 m", "1.1 m"))
    at = figures.index("1.07")
    assert figures[at - 1 : at + 15] == [
        "0.00", "1.07", "2.13", "3.20", "4.27", "5.33", "6.40", "7.47",
        "8.53", "9.60", "10.67", "11.73", "12.80", "13.87", "14.93", "16.00",
    ]  # fmt: skip


def test_hoops_that_are_a_round_figure_apart_are_told_by_it() -> None:
    figures = large(covered("12 m", "1.25 m"))
    assert {"0.00", "12.00", "1.20 m"} <= set(figures)
    assert "2.40" not in figures


@pytest.mark.parametrize("units", ["metric", "feet and inches", "decimal feet"])
@given(end=st.integers(200, 2000), apart=st.integers(30, 300))
def test_readings_and_drawing_have_each_hoop_where_it_stands(units: str, end: int, apart: int) -> None:
    plan = covered(f"{end} cm", f"{apart} cm", units, start="50 cm")
    (bed,), (cover,) = plan.beds, plan.covers
    readings = cover_cut(bed, cover).hoop_readings
    count = -(-(end - 50) // apart)
    assert len(readings) == count + 1
    for number, at in enumerate(readings):
        assert abs(at * count - (50 * count + number * (end - 50)) * 10 * MM) <= count
    lines = [mark for mark in cover_marks(bed, cover) if isinstance(mark, Line)]
    assert sorted({one.start[0] for one in lines if one.start[0] == one.end[0]}) == [at / MM for at in readings]


def test_the_sheet_of_hoops_reads_as_the_tape_does() -> None:
    plan = covered("17.3 m", "1.4 m", "feet and inches", start="0.7 m")
    readings = cover_cut(plan.beds[0], plan.covers[0]).hoop_readings
    figures = [plain(tape(at, Units.FEET_AND_INCHES).number) for at in readings]
    found = large(plan)
    at = found.index(figures[1]) - 1
    assert found[at : at + len(figures)] == figures


@pytest.mark.parametrize(("layers", "says"), [(1, ""), (2, "2 layers of ")])
def test_so_many_layers_of_cloth_are_told_where_it_is_cut_and_laid(
    layers: int, says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """By hand: over 1 m the arc is 1.571 m, with aprons of 20 cm 1.97 m; 8 m and 50 cm at both ends are 9 m."""
    plan = covered("8 m", "2 m")
    leg, apron, cloth_end = (parse_length(text) for text in ("15 cm", "20 cm", "50 cm"))
    cover = evolve(plan.covers[0], layers=layers, leg=leg, apron=apron, cloth_end=cloth_end)
    plan = evolve(plan, covers=(cover,))
    words = " ".join(plain(one.text) for page in printed(plan) for one in page.words)
    assert f"{says}cloth 50 cm beyond" in words.replace("cloth, 50", "cloth 50")
    path = tmp_path / "covered.gardenplot"
    write_plan(path, plan)
    assert main(["supplies", str(path)]) == 0
    said = capsys.readouterr().out.replace("\u2009", " ")
    assert f" · {says}cloth 1.97 m × 9.00 m" in said
