"""What the hand-worked jobs offer besides: the other choices of S3, S4 and S5, through the commands."""

import csv
import json
from collections.abc import Callable
from pathlib import Path

import pytest

from gardenplot.__main__ import main
from tests.scenarios.test_commands import PLANS, Numbers, across, assert_holds, by_id, cm, feet

Answered = Callable[[str, Numbers], tuple[int, Numbers]]


def plan(scenario: str) -> Numbers:
    """The plan of a scenario, to be changed."""
    numbers: Numbers = json.loads((PLANS / f"{scenario}.gardenplot").read_text(encoding="utf-8"))
    return numbers


@pytest.fixture
def answered(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Answered:
    """The status and the JSON of a command for a changed plan."""

    def run(command: str, changed: Numbers) -> tuple[int, Numbers]:
        path = tmp_path / "changed.gardenplot"
        path.write_text(json.dumps(changed), encoding="utf-8")
        status = main([command, str(path), "--json"])
        printed = capsys.readouterr()
        assert printed.err == ""
        return status, json.loads(printed.out)

    return run


def findings(answered: Answered, changed: Numbers, kind: str) -> list[Numbers]:
    """The findings of a kind in a changed plan."""
    return [one for one in answered("check", changed)[1]["findings"] if one["kind"] == kind]


# S3: lettuce heads with tomato positions down the centre


def lettuce(reserved: str) -> Numbers:
    """S3 with that answer to the tomatoes' reserved places."""
    changed = plan("s3")
    changed["plantings"][0]["reserved"] = reserved
    return changed


@pytest.mark.parametrize(
    ("reserved", "plants", "per_row", "raised", "cells", "trays"),
    [
        ("cut first", 207, [69, 69, 69], 239, 252, 2),
        ("leave places empty", 184, [69, 46, 69], 212, 224, 2),
        ("leave row empty", 138, [69, 0, 69], 159, 168, 2),
    ],
)
def test_s3_counts_and_raises_each_choice(
    answered: Answered, reserved: str, plants: int, per_row: list[int], raised: int, cells: int, trays: int
) -> None:
    _status, count = answered("count", lettuce(reserved))
    assert_holds(by_id(count)["p1"], plants=plants, plants_per_row=per_row)
    assert_holds(by_id(count)["p2"], plants=23, first_plant_mm=feet(2), last_plant_mm=feet(46))
    assert count["plants"] == plants + 23
    _status, supplies = answered("supplies", lettuce(reserved))
    assert_holds(by_id(supplies)["p1"], **{"raise": raised, "cells": cells, "trays": trays})


def test_s3_asks_for_two_trays_of_two_hundred_as_well(answered: Answered) -> None:
    changed = lettuce("leave places empty")
    changed["crops"][0]["tray_cells"] = 200
    assert_holds(by_id(answered("supplies", changed)[1])["p1"], cells=224, trays=2)


def test_s3_has_one_lettuce_in_the_way_of_each_tomato_until_something_is_done(answered: Answered) -> None:
    (in_the_way,) = findings(answered, lettuce("cut first"), "in the way of what follows")
    assert "23 plants stand within" in in_the_way["says"]
    assert findings(answered, lettuce("leave places empty"), "in the way of what follows") == []
    assert findings(answered, lettuce("leave row empty"), "in the way of what follows") == []


def test_s3_meets_the_order_of_160_unless_the_whole_row_stays_empty(answered: Answered) -> None:
    """174 are needed: 207 and 184 are enough, 138 are 36 short."""
    assert findings(answered, lettuce("cut first"), "order short") == []
    assert findings(answered, lettuce("leave places empty"), "order short") == []
    (short,) = findings(answered, lettuce("leave row empty"), "order short")
    assert "36 plants short of 174" in short["says"]


# S4: staggered rows with a part rank, and triangles that give nothing


def cabbage(pattern: str, length: str = "20 m") -> Numbers:
    """The first bed of S4 filled with cabbages, without an order."""
    changed = plan("s4")
    changed["beds"][0]["length"] = length
    changed["plantings"] = [{"id": "p1", "bed": "f1", "crop": "cabbage", "pattern": pattern}]
    return changed


@pytest.mark.parametrize(
    ("pattern", "length", "per_row"),
    [
        ("straight", "20 m", [47, 47, 47]),
        ("staggered", "20 m", [47, 47, 47]),
        ("triangular", "20 m", [47, 47, 47]),
        ("straight", "19.8 m", [47, 47, 47]),
        ("staggered", "19.8 m", [47, 46, 47]),
        ("triangular", "19.8 m", [47, 46, 47]),
    ],
)
def test_s4_fills_19_metres_with_141_and_18_80_with_140_where_a_row_is_moved(
    answered: Answered, pattern: str, length: str, per_row: list[int]
) -> None:
    _status, count = answered("count", cabbage(pattern, length))
    assert_holds(by_id(count)["p1"], rows=3, plants=sum(per_row), plants_per_row=per_row, from_mm=cm(50))
    assert by_id(count, "beds")["f1"]["leftover_mm"] == 0


def test_s4_has_three_rows_where_floating_point_finds_two(answered: Answered) -> None:
    assert (1.20 - 0.40) / 0.40 < 2
    count = by_id(answered("count", cabbage("straight"))[1])["p1"]
    assert count["row_offsets_mm"] == cm(20, 60, 100)


def test_s4_moves_the_middle_row_of_the_order_by_half_a_spacing(tmp_path: Path) -> None:
    """Rows 1 and 3 from 0.70 to 18.70 m, row 2 from 0.90 to 18.50 m."""
    out = tmp_path / "places.csv"
    assert main(["draw", str(PLANS / "s4.gardenplot"), str(out)]) == 0
    rows = list(csv.DictReader(out.read_text(encoding="utf-8").splitlines()))
    reached = []
    for number in ("1", "2", "3"):
        readings = [float(row["x_mm"]) for row in rows if (row["planting"], row["row"]) == ("p1", number)]
        reached.append((min(readings), max(readings), len(readings)))
    assert reached == [(700, 18700, 46), (900, 18500, 45), (700, 18700, 46)]


def test_s4_sows_leeks_a_day_earlier_in_a_year_without_a_leap_day(answered: Answered) -> None:
    changed = plan("s4")
    changed["plantings"][1]["in_ground"] = "2027-05-03"
    assert by_id(answered("dates", changed)[1])["p2"]["sow"] == "2027-02-17"


# S5: an order that does not fit, and five choices


CORIANDER: Numbers = {"crop": "coriander", "order": "o2"}
CABBAGE: Numbers = {"crop": "cabbage", "order": "o1"}
CLOSER: Numbers = {"row_spacing": ["12 in"], "edge": "6 in"}


def choice(*plantings: Numbers, beds: tuple[Numbers, ...] = ()) -> Numbers:
    """S5 with those plantings instead of its own, and more beds."""
    changed = plan("s5")
    changed["plantings"] = [{"id": f"p{number}", "bed": "t1"} | one for number, one in enumerate(plantings, 1)]
    changed["beds"] += beds
    return changed


def test_s5_choice_1_keeps_the_coriander_whole_and_gives_the_rest_to_the_cabbage(answered: Answered) -> None:
    _status, count = answered("count", choice(CORIANDER, CABBAGE | {"plants": 32}))
    assert_holds(by_id(count)["p1"], rows=6, plants=402, plants_per_row=[67] * 6, from_mm=feet(1), to_mm=feet(17, 9))
    assert_holds(
        by_id(count)["p2"], rows=2, plants=32, row_offsets_mm=across(10.5, 25.5), from_mm=feet(18, 9),
        to_mm=feet(38, 9), first_plant_mm=feet(19, 4.5), last_plant_mm=feet(38, 1.5),
    )  # fmt: skip
    assert by_id(count, "beds")["t1"]["leftover"] == [{"from_mm": feet(38, 9), "to_mm": feet(39)}]


def test_s5_choice_1_is_all_that_its_rest_holds(answered: Answered) -> None:
    """Filling 20 ft 3 in takes 16 ranks and no plant more."""
    _status, count = answered("count", choice(CORIANDER, {"crop": "cabbage"}))
    assert_holds(by_id(count)["p2"], plants=32, plants_per_row=[16, 16], from_mm=feet(18, 9), to_mm=feet(39))


def test_s5_choice_2_keeps_the_cabbage_whole_and_leaves_nine_inches(answered: Answered) -> None:
    """Nine inches of six rows are 4.5 row-feet: coriander is given up."""
    changed = choice(CABBAGE, {"crop": "coriander"})
    _status, count = answered("count", changed)
    assert_holds(by_id(count)["p1"], plants=58, from_mm=feet(1), to_mm=feet(37, 3))
    assert_holds(by_id(count)["p2"], plants=18, plants_per_row=[3] * 6, from_mm=feet(38, 3), to_mm=feet(39))
    assert by_id(count, "beds")["t1"]["leftover_mm"] == 0


def test_s5_choice_3_grows_both_whole_with_sixteen_feet_of_another_bed(answered: Answered) -> None:
    second: Numbers = {"id": "t2", "name": "Second", "length": "18 ft", "width": "36 in",
                       "head_margin": "1 ft", "foot_margin": "1 ft"}  # fmt: skip
    rest = CORIANDER | {"bed": "t2", "length": "16 ft"}
    changed = choice(CABBAGE, CORIANDER | {"length": "9 in"}, rest, beds=(second,))
    _status, count = answered("count", changed)
    assert [by_id(count)[one]["plants"] for one in ("p1", "p2", "p3")] == [58, 18, 384]
    assert [bed["leftover_mm"] for bed in count["beds"]] == [0, 0]
    status, found = answered("check", changed)
    assert (status, [one for one in found["findings"] if one["kind"].startswith("order")]) == (0, [])


def test_s5_choice_4_takes_a_third_row_of_cabbage_closer_than_the_packet(answered: Answered) -> None:
    changed = choice(CORIANDER, CABBAGE | CLOSER | {"plants": 48})
    _status, count = answered("count", changed)
    assert_holds(
        by_id(count)["p2"], rows=3, plants=48, plants_per_row=[16] * 3, row_offsets_mm=across(6, 18, 30),
        from_mm=feet(18, 9), to_mm=feet(38, 9),
    )  # fmt: skip
    assert by_id(count, "beds")["t1"]["leftover_mm"] == feet(0, 3)
    (closer,) = findings(answered, changed, "closer rows")
    assert "smaller heads, less air" in closer["says"]


def test_s5_choice_5_is_still_three_and_a_half_feet_short(answered: Answered) -> None:
    changed = choice(CABBAGE | CLOSER | {"plants": 57}, CORIANDER)
    _status, count = answered("count", changed)
    assert_holds(by_id(count)["p1"], plants=57, plants_per_row=[19] * 3, from_mm=feet(1), to_mm=feet(24, 9))
    assert_holds(by_id(count)["p2"], from_mm=feet(25, 9), to_mm=feet(42, 6))
    (outside,) = findings(answered, changed, "outside")
    assert "3′ 6″ past the foot margin" in outside["says"].replace("\u2009", " ")
    assert answered("check", changed)[0] == 1


def test_s5_is_filled_as_choice_1_and_proved_the_best(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """One order met whole and most of the other: coriander whole, 32 cabbages of 57."""
    old, new = tmp_path / "s5.gardenplot", tmp_path / "filled.gardenplot"
    old.write_text(json.dumps(plan("s5") | {"plantings": []}), encoding="utf-8")
    assert main(["fill", str(old), str(new), "--json"]) == 0
    filled = json.loads(capsys.readouterr().out)
    assert filled["proven"]
    assert [(one["wish"], one["plants"], one["from_mm"], one["to_mm"]) for one in filled["placed"]] == [
        ("o1", 32, feet(18, 9), feet(38, 9)),
        ("o2", 402, feet(1), feet(17, 9)),
    ]
    assert filled["lacking"] == [{"wish": "o1", "crop": "cabbage", "plants": 32, "lacks": 25, "why": None}]
    assert [(one["in_ground"]) for one in filled["placed"]] == ["2025-05-01", "2025-05-06"]


# S5 as it stands: what it is short of, and the ways out that the program finds by itself


@pytest.fixture
def ways_out(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Callable[[Numbers], Numbers]:
    """What is short in a plan, as the filling of it says: the first order that is."""

    def run(changed: Numbers) -> Numbers:
        old, new = tmp_path / "old.gardenplot", tmp_path / "new.gardenplot"
        old.write_text(json.dumps(changed), encoding="utf-8")
        assert main(["fill", str(old), str(new), "--json"]) == 0
        short: Numbers = json.loads(capsys.readouterr().out)["ways_out"][0]
        return short

    return run


def way(short: Numbers, kind: str, crop: str, *, fits: bool = True) -> Numbers:
    """The one way out of a kind."""
    found: Numbers
    (found,) = [one for one in short["ways"] if (one["kind"], one["crop"], one["fits"]) == (kind, crop, fits)]
    return found


def units(found: Numbers) -> dict[str, int]:
    """The units that a way has for each order."""
    return {one["order"]: one["units"] for one in found["met"]}


def blocks(found: Numbers) -> list[tuple[int, float, float]]:
    """Plants and readings of a way's blocks, beds and blocks from their heads on."""
    return sorted((one["plants"], one["from_mm"], one["to_mm"]) for one in found["blocks"])


@pytest.mark.parametrize("stands", [True, False])
def test_s5_is_sixteen_feet_short_and_has_its_five_choices(
    ways_out: Callable[[Numbers], Numbers], *, stands: bool
) -> None:
    """The same whether both plantings stand and leave the bed, or nothing is planted yet."""
    short = ways_out(plan("s5") if stands else plan("s5") | {"plantings": []})
    assert short["lacks_mm"] == feet(16)
    one, two = way(short, "less", "cabbage"), way(short, "less", "coriander")
    assert units(one) == {"o1": 27, "o2": 60}
    assert blocks(one) == [(32, feet(18, 9), feet(38, 9)), (402, feet(1), feet(17, 9))]
    assert one["leftover_mm"] == feet(0, 3)
    assert "(56 %)" in one["says"]
    assert units(two) == {"o1": 49, "o2": 2}
    assert blocks(two) == [(18, feet(38, 3), feet(39)), (58, feet(1), feet(37, 3))]
    assert two["leftover_mm"] == 0
    three = way(short, "split", "coriander")
    assert units(three) == {"o1": 49, "o2": 60}
    assert (three["new_bed_mm"], blocks(three)[-1]) == (feet(18), (384, feet(1), feet(17)))
    four, five = way(short, "closer", "cabbage"), way(short, "closer", "cabbage", fits=False)
    assert units(four) == {"o1": 40, "o2": 60}
    assert blocks(four)[0] == (48, feet(18, 9), feet(38, 9))
    assert four["leftover_mm"] == feet(0, 3)
    assert "smaller heads, less air" in four["says"]
    assert five["short_mm"] == feet(3, 6)
    assert short["ways"][-1] == five
    assert "still does not fit" in five["says"]


def test_s5_says_what_it_is_short_of_in_plants_length_and_units(ways_out: Callable[[Numbers], Numbers]) -> None:
    """Of 400 coriander plants that must stand, nine inches hold 18, which are two bunches."""
    short = ways_out(plan("s5"))
    assert (short["order"], short["lacks_plants"], short["lacks_units"]) == ("o2", 382, 58)
    empty = ways_out(plan("s5") | {"plantings": []})
    assert (empty["order"], empty["lacks_plants"], empty["lacks_units"]) == ("o1", 25, 21)
