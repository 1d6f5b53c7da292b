"""S6 planned again as worked by hand: 161 of 256 cells usable on 21 April, then a bed that is ten days late."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from gardenplot.__main__ import main
from tests.scenarios.test_commands import PLANS, Numbers, assert_holds, cm
from tests.sheets.pdf_pages import pages_of

Again = Callable[[bool], Numbers]


@pytest.fixture
def again(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Again:
    """What the command says of the fennel, its bed late or not."""

    def run(is_late: bool) -> Numbers:
        plan = json.loads((PLANS / "s6.gardenplot").read_text(encoding="utf-8"))
        plan["plantings"][0]["actual"] = {"sown": "2025-04-07", "stand": 161}
        if is_late:
            plan["beds"][0]["usable_from"] = "2025-05-22"
        path = tmp_path / "s6.gardenplot"
        path.write_text(json.dumps(plan), encoding="utf-8")
        assert main(["again", str(path), "--today", "2025-04-21", "--loss", "5 %", "--json"]) == 0
        printed = capsys.readouterr()
        assert printed.err == ""
        (found,) = json.loads(printed.out)["setbacks"]
        setback: Numbers = found
        return setback

    return run


def answer(setback: Numbers, kind: str) -> Numbers:
    found: Numbers
    (found,) = [one for one in setback["answers"] if one["kind"] == kind]
    return found


def test_s6_can_set_out_152_and_is_16_short(again: Again) -> None:
    found = again(False)
    assert_holds(found, planned=168, stand=161, cells_sown=256, to_set_out=152, short=16, bed_late_days=0)
    assert "(63 %)" in found["says"][0]
    assert [one["kind"] for one in found["answers"]] == ["buy in", "plant short", "spread out", "sow again"]


def test_s6_planted_short_leaves_two_metres_and_is_14_heads_short(again: Again) -> None:
    short = answer(again(False), "plant short")
    assert_holds(
        short, plants=152, plants_per_row=[51, 51, 50], length_mm=cm(1275), leftover_mm=cm(219), units=136,
        units_short=14,
    )  # fmt: skip
    assert short["stakes"] == [
        {"bed": "f1", "planting": "p1", "end": "ends", "old_mm": cm(1415), "new_mm": cm(1290)}
    ]  # fmt: skip


def test_s6_spread_out_has_a_spacing_that_cannot_be_marked_and_no_plant_more(again: Again) -> None:
    spread = answer(again(False), "spread out")
    assert round(spread["spacing"]["exact_mm"] / 10, 1) == 29.3
    assert_holds(spread["spacing"], marked_mm=cm(29), markable=False)
    assert_holds(spread, plants=152, plants_per_row=[51, 51, 50], length_mm=cm(1479))


def test_s6_buys_in_16_and_moves_no_stake(again: Again) -> None:
    bought = answer(again(False), "buy in")
    assert_holds(bought, buy=16, plants=168, units_short=0, market="2025-07-12", stakes=[])


def test_s6_sown_again_takes_28_cells_or_20_with_two_seeds_and_costs_two_markets(again: Again) -> None:
    sown = answer(again(False), "sow again")
    assert_holds(sown["sow"], plants=17, cells=28, cells_with_two_seeds=20, seeds_for_these=40)
    assert_holds(sown, set_out="2025-05-26", ready="2025-07-25", market="2025-07-26", costs_markets=2, units_short=0)


def test_s6_in_a_late_bed_is_over_age_and_sowing_again_costs_no_market(again: Again) -> None:
    late = again(True)
    assert_holds(
        late, bed_late_days=10, set_out="2025-05-22", age_days=45, over_age=True, ready="2025-07-21",
        market="2025-07-26", missed=["2025-07-12", "2025-07-19"], short=16,
    )  # fmt: skip
    sown = answer(late, "sow again")
    assert_holds(sown, set_out="2025-05-26", ready="2025-07-25", market="2025-07-26", costs_markets=0)
    assert "costs no market day" in sown["says"]


def test_a_plan_that_goes_as_planned_has_nothing_to_plan_again(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["again", str(PLANS / "s6.gardenplot"), "--today", "2025-04-21"]) == 0
    # Nothing is recorded of it yet: what was not done without a word is not known to go as planned.
    assert "nothing to plan again: as far as it is recorded, all goes as planned" in capsys.readouterr().out
    assert main(["again", str(PLANS / "s6.gardenplot"), "--loss", "100 %"]) == 2


def test_s6_answered_in_one_plan_sows_again_without_losing_a_market(
    again: Again, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """In a late bed 152 are set out and 16 sown again for the same market: 168 x 0.9 = 151 heads, 150 ordered."""
    number = [one["kind"] for one in again(True)["answers"]].index("sow again") + 1
    plan, out, sheet = (tmp_path / name for name in ("s6.gardenplot", "out.gardenplot", "changed.pdf"))
    words = ["again", str(plan), str(out), "--today", "2025-04-21", "--loss", "5 %", "--json"]
    assert main([*words, "--take", str(number), "--sheet", str(sheet)]) == 0
    said = json.loads(capsys.readouterr().out)
    assert_holds(said, units_short=0, costs_markets=0, buy=0)
    assert [(one["planting"], one["end"], one["old_mm"], one["new_mm"]) for one in said["stakes"]] == [
        ("p1", "ends", cm(1415), cm(1290)), ("p1-2", "begins", None, cm(1290)), ("p1-2", "ends", None, cm(1440))
    ]  # fmt: skip
    (page,) = pages_of(sheet.read_bytes())
    # Both blocks share the stake at 12.90 m.
    assert [words.text for words in page.words if words.size == 20] == ["12.90 m", "14.40 m"]
