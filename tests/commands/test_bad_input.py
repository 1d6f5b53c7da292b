"""What cannot be read or written ends a command with status 2 and one line, and loses nothing."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from gardenplot.__main__ import main

Fails = Callable[..., str]

COMMANDS = ("count", "dates", "supplies", "check")
each_command = pytest.mark.parametrize("command", COMMANDS)


def sound() -> dict[str, Any]:
    """The JSON value of a small plan without a fault."""
    return {
        "gardenplot": 1,
        "place": {"name": "Whinlaw Foot"},
        "beds": [{"id": "b1", "name": "Bed", "length": "5 m", "width": "75 cm"}],
        "crops": [{"id": "leeks", "name": "Leeks", "in_row": "15 cm", "row_spacing": "25 cm"}],
        "plantings": [{"id": "p1", "bed": "b1", "crop": "leeks", "plants": 40}],
    }


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    """A plan file without a fault."""
    path = tmp_path / "plan.gardenplot"
    path.write_text(json.dumps(sound()), encoding="utf-8")
    return path


@pytest.fixture
def fails(capsys: pytest.CaptureFixture[str]) -> Fails:
    """Run a command that must end with status 2, nothing printed and one line on standard error; gives that line."""

    def run(*words: str | Path) -> str:
        assert main([str(word) for word in words]) == 2
        printed = capsys.readouterr()
        assert printed.out == ""
        assert printed.err.endswith("\n")
        (line,) = printed.err.splitlines()
        return line

    return run


def write(path: Path, **changes: Any) -> Path:
    path.write_text(json.dumps(sound() | changes), encoding="utf-8")
    return path


@each_command
def test_a_sound_plan_ends_with_status_0(plan: Path, command: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([command, str(plan)]) == 0
    assert capsys.readouterr().err == ""


@each_command
def test_a_missing_file_is_named(tmp_path: Path, command: str, fails: Fails) -> None:
    line = fails(command, tmp_path / "nowhere.gardenplot")
    assert "nowhere.gardenplot" in line
    assert "no such file" in line


@each_command
def test_a_folder_is_no_plan(tmp_path: Path, command: str, fails: Fails) -> None:
    assert str(tmp_path) in fails(command, tmp_path)


@each_command
@pytest.mark.parametrize("kept", [0, 1, 40, -1])
def test_a_file_that_was_cut_off_is_named_with_the_line(plan: Path, command: str, kept: int, fails: Fails) -> None:
    plan.write_text(plan.read_text(encoding="utf-8")[:kept], encoding="utf-8")
    line = fails(command, plan)
    assert str(plan) in line
    assert "line 1, column" in line


@each_command
def test_an_unknown_crop_is_named_with_its_place(plan: Path, command: str, fails: Fails) -> None:
    write(plan, plantings=[{"id": "p1", "bed": "b1", "crop": "lovage"}])
    line = fails(command, plan)
    assert "plantings[0].crop" in line
    assert "“lovage”" in line


@each_command
def test_a_plan_of_a_newer_version_says_so(plan: Path, command: str, fails: Fails) -> None:
    line = fails(command, write(plan, gardenplot=2))
    assert "format 2" in line
    assert "newer" in line


@pytest.mark.parametrize(
    ("changes", "place"),
    [
        ({"gardenplot": "one"}, '"gardenplot": "one"'),
        ({"beds": {}}, "beds"),
        ({"beds": [7]}, "beds[0]"),
        ({"beds": [{"id": "b1", "name": "Bed", "width": "75 cm"}]}, "beds[0].length"),
        ({"beds": [{"id": "b1", "name": "Bed", "length": "5", "width": "75 cm"}]}, "beds[0].length"),
        ({"beds": [{"id": "b1", "name": "Bed", "length": "0 m", "width": "75 cm"}]}, "beds[0].length"),
        ({"orders": [{"id": "o1", "crop": "leeks", "units": 40, "on": "2025-02-29"}]}, "orders[0].on"),
        ({"orders": [{"id": "o1", "crop": "leeks", "units": -1, "on": "2025-02-28"}]}, "orders[0].units"),
        ({"covers": [{"id": "c1", "bed": "b1", "from": "3 m", "to": "2 m"}]}, "covers[0].to"),
        ({"plantings": [{"id": "p1", "bed": "b1", "crop": "leeks", "pattern": "heap"}]}, "plantings[0].pattern"),
        ({"plantings": [{"id": "p1", "bed": "b1", "crop": "leeks", "plants": 4, "length": "1 m"}]}, "plantings[0]"),
        ({"plantings": [{"id": "p1", "bed": "b1", "crop": "leeks"}] * 2}, "plantings[1].id"),
    ],
)
def test_a_fault_is_named_with_its_place(plan: Path, changes: dict[str, Any], place: str, fails: Fails) -> None:
    assert f"{plan}: {place}" in fails("count", write(plan, **changes))


@pytest.mark.parametrize(
    ("field", "typed", "says"),
    [
        ("field_loss", 0.07, "“0.07” is no share: write it like 10 %, as text in quotes"),
        ("seeds_per_row", 40, "“40” is no rate: write it like 12 / ft or 40 / m, as text in quotes"),
        ("seeds_per_row", "0 / m", "a rate of nothing sows nothing"),
        ("seeds_per_gram", 0, "0 does not lie above 0 and below a million"),
        ("in_row", 15, 'a number alone is no length: write it as text with a unit, like "30 cm"'),
    ],
)
def test_what_was_typed_is_named_with_an_example(
    plan: Path, field: str, typed: object, says: str, fails: Fails
) -> None:
    crops = [sound()["crops"][0] | {field: typed}]
    assert fails("count", write(plan, crops=crops)) == f"gardenplot: {plan}: crops[0].{field}: {says}"


BOX = {"length": "2.4 m", "width": "1.2 m", "board": "4 cm"}
SIDES = {"length": "5 m", "width": "75 cm"}
OUTLINE = {"outline": [["0 m", "0 m"], ["2 m", "0 m"], ["2 m", "1 m"]]}


@pytest.mark.parametrize(
    ("bed", "place"),
    [
        ({"slope": "12 %"}, "beds[0].length"),
        (SIDES | {"diameter": "3 m"}, "beds[0].diameter"),
        (SIDES | {"box": BOX}, "beds[0].box"),
        (SIDES | OUTLINE, "beds[0].outline"),
        (SIDES | {"map_length": "5 m", "slope": "5 %"}, "beds[0].map_length"),
        (OUTLINE | {"diameter": "3 m"}, "beds[0].diameter"),
        (OUTLINE | {"box": BOX}, "beds[0].box"),
        ({"diameter": "3 m", "box": BOX}, "beds[0].box"),
        ({"diameter": "3 m", "map_length": "3 m", "slope": "5 %"}, "beds[0].map_length"),
        ({"width": "1 m", "map_length": "3 m"}, "beds[0].map_length"),
        ({"box": BOX | {"board": "60 cm"}}, "beds[0].box.board"),
        ({"box": BOX | {"post": "56 cm"}}, "beds[0].box.post"),
        (SIDES | {"slope": "101 %"}, "beds[0].slope"),
    ],
)
@each_command
def test_a_bed_with_two_shapes_or_none_is_named(
    plan: Path, command: str, bed: dict[str, Any], place: str, fails: Fails
) -> None:
    assert f"{plan}: {place}: " in fails(command, write(plan, beds=[{"id": "b1", "name": "Bed"} | bed]))


def test_a_count_tells_the_length_on_the_map(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    level: dict[str, Any] = {"id": "b1", "name": "Bed"} | SIDES
    steep = {"id": "b2", "name": "Bank", "width": "1 m", "slope": "75 %", "length": "10 m"}
    assert main(["count", "--json", str(write(plan, beds=[level, steep]))]) == 0
    assert [bed["map_length_mm"] for bed in json.loads(capsys.readouterr().out)["beds"]] == [None, 8000]


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "null",
        "7",
        "{}",
        '{"gardenplot": 1, "beds": NaN}',
        '{"gardenplot": 1, "gardenplot": 1}',
        "[" * 100_000,
        '{"gardenplot": ' + "9" * 5000 + "}",
    ],
    ids=["nothing", "list", "null", "number", "no version", "NaN", "twice", "deep", "long number"],
)
def test_text_that_is_no_plan_is_refused(plan: Path, text: str, fails: Fails) -> None:
    plan.write_text(text, encoding="utf-8")
    assert str(plan) in fails("count", plan)


def test_bytes_that_are_no_text_are_refused(plan: Path, fails: Fails) -> None:
    plan.write_bytes(b"\x89PNG\r\n\x1a\n\xff\xfe")
    assert "UTF-8" in fails("count", plan)


def test_a_line_break_in_an_id_does_not_break_the_line(plan: Path, fails: Fails) -> None:
    assert "plantings[0].crop" in fails("count", write(plan, plantings=[{"id": "p", "bed": "b1", "crop": "a\nb"}]))


@pytest.mark.parametrize("command", [*COMMANDS, "draw"])
def test_half_a_character_is_no_text(plan: Path, tmp_path: Path, command: str, fails: Fails) -> None:
    bed = {"id": "b\ud800", "name": "Bed \ud800", "length": "5 m", "width": "75 cm"}
    broken = write(plan, beds=[bed], plantings=[{"id": "p1", "bed": "b\ud800", "crop": "leeks", "plants": 40}])
    out = [tmp_path / "out.csv"] if command == "draw" else []
    assert str(plan) in fails(command, broken, *out)


@pytest.mark.parametrize("name", ["out", "out.gif", "out.csv.txt", "out.", ".csv"])
def test_a_drawing_whose_name_ends_in_nothing_known_is_not_written(
    plan: Path, tmp_path: Path, name: str, fails: Fails
) -> None:
    before = sorted(tmp_path.iterdir())
    assert ".svg" in fails("draw", plan, tmp_path / name)
    assert sorted(tmp_path.iterdir()) == before


@pytest.mark.parametrize("suffix", ["svg", "dxf", "csv"])
def test_a_drawing_in_a_missing_folder_is_not_written(plan: Path, tmp_path: Path, suffix: str, fails: Fails) -> None:
    out = tmp_path / "nowhere" / f"out.{suffix}"
    assert str(out) in fails("draw", plan, out)
    assert not out.parent.exists()


def test_a_drawing_is_not_written_over_a_folder(plan: Path, tmp_path: Path, fails: Fails) -> None:
    out = tmp_path / "out.csv"
    out.mkdir()
    assert str(out) in fails("draw", plan, out)
    assert sorted(tmp_path.iterdir()) == [out, plan]


@pytest.mark.parametrize("suffix", ["svg", "dxf", "csv"])
def test_nothing_is_written_over_when_the_plan_is_bad(plan: Path, tmp_path: Path, suffix: str, fails: Fails) -> None:
    out = tmp_path / f"out.{suffix}"
    out.write_text("kept", encoding="utf-8")
    fails("draw", write(plan, gardenplot=2), out)
    assert out.read_text(encoding="utf-8") == "kept"
    assert sorted(tmp_path.iterdir()) == [out, plan]


@each_command
def test_a_field_that_is_not_known_is_said_and_the_rest_is_done(
    plan: Path, command: str, capsys: pytest.CaptureFixture[str]
) -> None:
    before = write(plan, weather="fair").read_bytes()
    assert main([command, str(plan)]) == 0
    printed = capsys.readouterr()
    assert "weather" in printed.err
    assert plan.read_bytes() == before


MADE: tuple[tuple[str, ...], ...] = (
    ("sheet", "PLAN", "OUT"), ("draw", "PLAN", "OUT.csv"), ("count", "PLAN", "--csv", "OUT"),
    ("dates", "PLAN", "--ics", "OUT"), ("supplies", "PLAN", "--csv", "OUT"), ("supplies", "PLAN", "--pdf", "OUT"),
    ("again", "PLAN", "--today", "2026-03-20", "--take", "2", "--sheet", "OUT"),
)  # fmt: skip
"""All that commands make of a plan besides plans."""


@pytest.mark.parametrize("words", MADE, ids=[" ".join(words) for words in MADE])
def test_nothing_that_a_command_makes_is_written_over_a_plan(words: tuple[str, ...], tmp_path: Path) -> None:
    """Neither over its own, under whatever name, nor over another one; and under a name of its own it is written."""
    plan, other = tmp_path / "plan.gardenplot", tmp_path / "other.gardenplot"
    late = sound()
    late["beds"][0]["usable_from"] = "2026-04-01"
    late["crops"][0]["in_row"] = "20 cm"
    late["plantings"][0] |= {"in_ground": "2026-03-28", "actual": {"sown": "2026-02-01", "cells": 40, "stand": 20}}
    for path in (plan, other):
        path.write_text(json.dumps(late), encoding="utf-8")
    link = tmp_path / "link.csv"
    link.symlink_to(plan)
    held = plan.read_bytes()
    for out in (link, *([plan, other] if words[-1] == "OUT" else [])):
        named = {"PLAN": str(plan), "OUT": str(out), "OUT.csv": str(out)}
        assert main([named.get(word, word) for word in words]) == 2
        assert [plan.read_bytes(), other.read_bytes()] == [held, held]
        assert link.is_symlink()
    named = {"PLAN": str(plan), "OUT": str(tmp_path / "out"), "OUT.csv": str(tmp_path / "out.csv")}
    assert main([named.get(word, word) for word in words]) == 0
    assert (tmp_path / words[-1].lower()).stat().st_size > 0


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("fill", "--seconds", "-3"), "“-3” is no time to look: write seconds, from 0 to a day, for example 5"),
        (("fill", "--seconds", "long"), "“long” is no time to look: write seconds, from 0 to a day, for example 5"),
        (("sheet", "OUT", "--scale", "x"), "a scale is 1 to a number from 1 to 10000, and not “x”"),
        (("sheet", "OUT", "--scale", "0"), "a scale is 1 to a number from 1 to 10000, and not “0”"),
        (("sheet", "OUT", "--labels-from", "x"), "labels of a sheet are counted from 1, and not “x”"),
        (("sheet", "OUT", "--paper", "a3"), "“a3” is no paper of this program: write a4 or letter"),
        (("supplies", "--from", "2027-02-30"), "“2027-02-30” is no date: write it like 2027-04-09"),
    ],
)
def test_an_argument_that_is_none_is_named_with_what_would_be(
    plan: Path, words: tuple[str, ...], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    command, *more = (str(plan.with_name("out")) if word == "OUT" else word for word in words)
    with pytest.raises(SystemExit) as left:
        main([command, str(plan), *more])
    assert left.value.code == 2
    assert capsys.readouterr().err.splitlines()[-1].endswith(f": {says}")
