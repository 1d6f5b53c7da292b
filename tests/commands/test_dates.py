"""`gardenplot dates`: JSON, a table with the columns that are needed, the list by week, a calendar file."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from icalendar import Calendar

from gardenplot.__main__ import main
from gardenplot.drawing.date_list import by_week
from gardenplot.files import sample
from gardenplot.plan.file import read_plan
from tests.drawing.hand_worked import hand_worked

S1 = Path(__file__).parents[1] / "scenarios" / "s1.gardenplot"
Typed = Callable[..., tuple[int, str, str]]


@pytest.fixture
def typed(capsys: pytest.CaptureFixture[str]) -> Typed:
    """What a command with these words answers: its status, what it prints, what it says is wrong."""

    def run(*words: object) -> tuple[int, str, str]:
        status = main(["dates", *map(str, words)])
        printed = capsys.readouterr()
        return status, printed.out, printed.err

    return run


def plan_file(folder: Path, planting: dict[str, str], **crop: int) -> Path:
    """A plan with one planting of leeks."""
    path = folder / "one.gardenplot"
    raw = {
        "gardenplot": 1,
        "beds": [{"id": "b1", "name": "Long bed", "length": "12 m", "width": "75 cm"}],
        "crops": [{"id": "leek", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm"} | crop],
        "plantings": [{"id": "p1", "bed": "b1", "crop": "leek", "plants": 40} | planting],
    }
    path.write_text(json.dumps(raw), encoding="utf-8")
    return path


def test_json_has_every_date_of_each_planting(typed: Typed, tmp_path: Path) -> None:
    days = {"raising_days": 30, "hardening_days": 7, "field_days": 40, "harvest_days": 10, "pot_up_days": 12}
    status, out, err = typed(plan_file(tmp_path, {"in_ground": "2027-05-14"}, **days), "--json")
    assert (status, err) == (0, "")
    assert json.loads(out) == {
        "plantings": [
            {
                "id": "p1", "sow": "2027-04-14", "harden": "2027-05-07", "set_out": "2027-05-14",
                "ready": "2027-06-23", "out": "2027-07-04", "pot_up": "2027-04-26", "last": "2027-07-03",
                "market": None,
            }
        ]
    }  # fmt: skip


def test_the_table_shows_further_dates_where_any_is_known(typed: Typed, tmp_path: Path) -> None:
    first = typed(S1)[1].splitlines()
    assert first[0].split() == ["planting", "sow", "harden", "from", "set", "out", "ready", "market", "out"]
    assert first[1].split()[-2:] == ["Sat", "2025-05-17"]
    days = {"raising_days": 30, "field_days": 40, "harvest_days": 10, "pot_up_days": 12}
    heading = typed(plan_file(tmp_path, {"in_ground": "2027-05-14"}, **days))[1].splitlines()[0]
    assert "pot up" in heading
    assert "cut until" in heading
    assert "market" not in heading


def test_short_days_that_are_left_out_of_the_count_are_said(typed: Typed, tmp_path: Path) -> None:
    """At 55° north days are shorter than ten hours from about 23 October to 17 February (a little more than 110)."""
    path = plan_file(tmp_path, {"in_ground": "2027-10-01"}, field_days=40)
    assert "left out" not in typed(path)[1]
    raw = json.loads(path.read_text(encoding="utf-8"))
    raw["place"] = {"latitude": 55, "longitude": -2, "time_zone": "Europe/London"}
    path.write_text(json.dumps(raw), encoding="utf-8")
    (line,) = [line for line in typed(path)[1].splitlines() if "left out of the count" in line]
    words = line.split()
    assert words[:2] == ["A", "Leek:"]
    assert 105 < int(words[2]) < 125


def test_the_list_by_week_is_the_one_of_screen_and_paper(typed: Typed) -> None:
    status, out, err = typed(S1, "--weeks")
    assert (status, err) == (0, "")
    lines = out.splitlines()
    weeks = by_week(hand_worked("s1"))
    headings = [" · ".join(part for part in (week.name, week.days, week.bench) if part) for week in weeks]
    assert [line for line in lines if line.startswith("Week")] == headings
    assert sum(line.startswith("  ") for line in lines) == sum(len(week.rows) for week in weeks)
    assert "  Fri 11 Apr  set out           A Pak choi  136 plants                 Tunnel, second bed" in lines


def test_without_days_the_list_says_so_and_no_calendar_is_written(typed: Typed, tmp_path: Path) -> None:
    plan, out = plan_file(tmp_path, {}), tmp_path / "out.ics"
    assert typed(plan, "--weeks") == (0, "no day is known in the plan\n", "")
    status, printed, err = typed(plan, "--ics", out)
    assert (status, printed) == (2, "")
    assert "nothing for a calendar" in err
    assert not out.exists()


def test_a_calendar_file_is_written(typed: Typed, tmp_path: Path) -> None:
    out = tmp_path / "out.ics"
    assert typed(sample("kestrel-howe.gardenplot"), "--ics", out) == (0, "", "")
    events = Calendar.from_ical(out.read_bytes()).walk("VEVENT")
    rows = [row for week in by_week(read_plan(sample("kestrel-howe.gardenplot")).plan) for row in week.rows]
    assert [event.decoded("dtstart") for event in events] == [row.day for row in rows]


def test_a_calendar_that_cannot_be_written_ends_with_one_line(typed: Typed, tmp_path: Path) -> None:
    status, printed, err = typed(S1, "--ics", tmp_path / "no" / "out.ics")
    assert (status, printed, err.count("\n")) == (2, "", 1)
    assert "cannot be written" in err
