"""The sheet of what changed: each stake that moved once, its old figure struck through, the new one large."""

import json
from datetime import date
from fractions import Fraction
from pathlib import Path
from typing import Any

import numpy as np
import pypdfium2
import pytest
from hypothesis import given, settings

from gardenplot.__main__ import main
from gardenplot.drawing.letters import keeping_letters, looks
from gardenplot.drawing.moved_numbers import stake_number
from gardenplot.drawing.moved_says import remarked
from gardenplot.drawing.stakes import stakes
from gardenplot.drawing.turns import turns
from gardenplot.errors import PlanError
from gardenplot.filling.moved import Mark, moved
from gardenplot.filling.together import Aim, answer_all, by_aim, by_number
from gardenplot.layout import lay_out_bed
from gardenplot.plan import Plan, bed_of, planting_of
from gardenplot.plan.edits import change_planting, move_planting
from gardenplot.plan.file import plan_of_text, read_plan, text_of
from gardenplot.sheets.book import version_of
from gardenplot.sheets.paper import Paper
from gardenplot.units import parse_length
from gardenplot.units.figures import tape
from tests.filling.test_again_in_bed import two_that_deviate
from tests.filling.test_moved import two_beds
from tests.plans import plans
from tests.sheets import patterned
from tests.sheets.made import changed_sheet
from tests.sheets.pdf_pages import Page, Words, pages_of, plain
from tests.sheets.test_lists import assert_legible, boxes

each_paper = pytest.mark.parametrize("paper", Paper)
TODAY = date(2027, 5, 10)


def answered() -> tuple[Plan, Plan]:
    """A plan that deviates, and the one in which a second block is planted and another one is shorter."""
    plan = two_that_deviate()
    return plan, answer_all(plan, TODAY, Fraction(0), by_number([1, 2, 2])).plan


def struck(page: Page, words: Words) -> bool:
    """Whether a line of its own runs through the middle of some words, from before their first to behind the last."""
    left, bottom, right, top = words.box
    lines = (path.box for path in page.paths)
    return any(
        line[0] <= left and right <= line[2] and line[2] - line[0] < right - left + 12
        and bottom < line[1] < top and line[3] - line[1] < 0.1
        for line in lines
    )  # fmt: skip


@each_paper
def test_each_stake_that_moved_stands_there_once_with_its_old_figure_struck_through(paper: Paper) -> None:
    before, after = answered()
    (page,) = pages_of(changed_sheet(before, after, paper, name="Rook Hollow", printed=TODAY).pdf)
    assert_legible(page, paper)
    found = moved(before, after)
    # At 6.00 m a stake stands already, so that there is nothing to tick.
    assert (len(found), boxes(page, 14)) == (3, 2)
    large = [words for words in page.words if words.size == 20]
    assert [words.text for words in large] == [plain(str(remarked(before, after, one).new)) for one in found]
    # The new block of the upper bed begins where another ends: one stake more, and its foot stake is 3, not 2.
    assert [words.text for words in page.words if struck(page, words)] == ["3.00 m"]
    # They are named by their readings: no sheet needs to have been printed of the plan as it was last.
    assert "3 at 10.00 m (was 2)" in plain(page.text)
    assert f"version {version_of(before)}" not in page.text
    for said in (
        "What changed", "Rook Hollow", "printed Mon 10 May 2027", "page 1 of 1", "Upper bed", "Lower bed",
        f"version {version_of(after)}", "those that stay are named at their bed", "bring a metric tape of 11 m",
        "base line: the left edge as seen from the head",
        "the foot stake reads 10.00 m", "Ask where cables and pipes lie", "2 × 7 + 6 = 20", "20, 50, 80 cm",
    ):  # fmt: skip
        assert plain(said) in page.text, said


def test_stakes_stand_in_walking_order_from_the_top_down() -> None:
    before, after = answered()
    (page,) = pages_of(changed_sheet(before, after, Paper.A4).pdf)
    middles = [words.box[1] for words in page.words if words.size == 20]
    assert middles == sorted(middles, reverse=True)


def test_a_stake_that_goes_is_to_be_pulled_out() -> None:
    plan = two_beds()
    (page,) = pages_of(changed_sheet(plan, move_planting(plan, "p", "b2", parse_length("2 m")), Paper.A4).pdf)
    gone = [words for words in page.words if struck(page, words)]
    assert [(words.text, words.size) for words in gone] == [("1", 16), ("1.00 m", 14), ("2", 16), ("4.00 m", 14)]
    assert page.text.count("pull it out") == 2
    stay = plain(" ".join(page.text.split()))
    assert "Stakes that stay: 0 at 0.00 m · 1 at 5.00 m (was 3) · 2 at 8.00 m (was 4) · 3 at 10.00 m (was 5)" in stay


def test_stakes_have_the_numbers_of_the_bed_sheet_and_none_stands_beyond_its_bed() -> None:
    """A block of 3 m moved to 8 m of a bed of 10 m: its second stake is the foot stake, and 1 m does not fit."""
    plan = two_beds()
    after = move_planting(plan, "p", "b2", parse_length("8 m"))
    (page,) = pages_of(changed_sheet(plan, after, Paper.A4).pdf)
    numbers = [words.text for words in page.words if words.size == 16 and not struck(page, words)]
    readings = [words.text for words in page.words if words.size == 20]
    laid = lay_out_bed(after, bed_of(after, "b2"))
    driven = {stake.at: stake.number for stake in stakes(after, laid, laid.layouts, looks(after))}
    assert dict(zip(readings, numbers, strict=True)) == {
        plain(str(tape(at, after.place.units))): str(number) for at, number in driven.items() if number
    }
    assert readings[-1] == "10.00 m"
    assert "stops, 1.00 m do not fit · stands already" in page.text


def test_a_stake_that_another_block_needs_is_not_pulled_out() -> None:
    """1 m to 4 m and 4 m to 7 m: where the first block ends sooner, the stake at 4 m stays for the second."""
    plan = change_planting(two_beds(), "q", start=parse_length("4 m"))
    sooner = change_planting(plan, "p", length=parse_length("2 m"))
    gone = move_planting(plan, "p", "b2", parse_length("1 m"))
    for after, says in ((sooner, "ends · new"), (gone, "ends: leave the stake")):
        (page,) = pages_of(changed_sheet(plan, after, Paper.A4).pdf)
        assert says in page.text
        assert "4.00 m" in page.text
        # The stake at 4 m stays for the other block: its figure is struck out only where nothing new is driven.
        assert any(struck(page, words) and words.text == "4.00 m" for words in page.words) is (after is gone)
    back = pages_of(changed_sheet(sooner, plan, Paper.A4).pdf)[0]
    assert "ends · stands already" in back.text


@settings(max_examples=25)
@given(plans(), plans())
def test_any_stake_that_moves_has_the_number_that_its_reading_has_on_the_bed_sheet(before: Plan, after: Plan) -> None:
    for one in moved(before, after):
        if one.new is None or one.mark not in (Mark.BLOCK, Mark.ROW_END):
            continue
        if planting_of(after, one.planting).hardens is not None:
            assert stake_number(before, after, one).now is None
            continue
        laid, number = lay_out_bed(after, bed_of(after, one.bed)), stake_number(before, after, one)
        readings = {
            tape(stake.at, after.place.units).number
            for turn in turns(laid.without_trays)
            for stake in stakes(after, laid.without_trays, turn, looks(after))
            if stake.number == number.now
        }
        assert tape(one.new, after.place.units).number in readings
        assert 0 <= one.new <= laid.bed.length.nm


@pytest.mark.parametrize("units", ["feet and inches", "decimal feet"])
def test_the_largest_figures_of_every_unit_have_room(units: str) -> None:
    parts: dict[str, Any] = {
        "place": {"units": units},
        "beds": [{"id": "b1", "name": "Bed " + "of a very long name " * 9, "length": "1600 ft", "width": "4 ft"}],
        "crops": [{"id": "c", "name": "Leek " + "of the old sort " * 9, "in_row": "6 in", "row_spacing": "10 in"}],
        "plantings": [{"id": "p", "bed": "b1", "crop": "c", "from": "1500 ft 11 3/4 in", "length": "50 ft"}],
    }
    plan = plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan
    after = change_planting(plan, "p", start=parse_length("1510 ft 10 3/4 in"), in_row=parse_length("7 in"))
    (page,) = pages_of(changed_sheet(plan, after, Paper.LETTER).pdf)
    assert_legible(page, Paper.LETTER)
    assert (
        min(
            words.size
            for words in page.words
            if words.text == plain(str(remarked(plan, after, moved(plan, after)[0]).new))
        )
        >= 14
    )


def test_many_stakes_go_on_over_pages_under_the_name_of_their_bed() -> None:
    some = [{"id": f"p{at}", "bed": "b1", "crop": "c", "from": f"{at} m", "length": "60 cm"} for at in range(50)]
    parts: dict[str, Any] = {
        "beds": [{"id": "b1", "name": "Long bed", "length": "60 m", "width": "1 m"}],
        "crops": [{"id": "c", "name": "Leek", "in_row": "15 cm", "row_spacing": "30 cm"}],
        "plantings": some,
    }
    plan = plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan
    after = plan
    for one in some:
        after = change_planting(after, str(one["id"]), length=parse_length("75 cm"))
    pages = pages_of(changed_sheet(plan, after, Paper.A4).pdf)
    assert sum(boxes(page, 14) for page in pages) == 50
    assert len(pages) == 6
    for number, page in enumerate(pages, start=1):
        assert_legible(page, Paper.A4)
        assert f"page {number} of 6" in page.text
        assert ("Long bed, continued" in page.text) is (number > 1)


def test_the_same_plans_give_the_same_bytes_and_no_change_gives_no_sheet() -> None:
    before, after = answered()
    assert changed_sheet(before, after, Paper.A4).pdf == changed_sheet(before, after, Paper.A4).pdf
    with pytest.raises(PlanError, match="no stake moves"):
        changed_sheet(before, before, Paper.A4)


def test_the_command_writes_the_plan_and_the_sheet(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    plan, out, sheet = tmp_path / "plan.gardenplot", tmp_path / "out.gardenplot", tmp_path / "changed.pdf"
    kept = _written(plan)
    day = ["--today", "2027-05-10"]
    assert main(["again", str(plan), str(out), "--take", "1,2,2", "--sheet", str(sheet), *day]) == 0
    assert "Lower bed: Cos lettuce ends 2.10\u2009m, was 3.00\u2009m" in capsys.readouterr().out
    before, after = answered()
    assert read_plan(out).plan == keeping_letters(before, after) != after
    (page,) = pages_of(sheet.read_bytes())
    assert "2.10 m" in page.text
    assert "printed Mon 10 May 2027" not in page.text
    assert plan.read_text(encoding="utf-8") == kept
    assert main(["again", str(plan), "--take", Aim.MOST_MET, *day]) == 0
    by_name = read_plan(tmp_path / "plan-again.gardenplot").plan
    assert by_name == keeping_letters(before, answer_all(before, TODAY, Fraction(0), by_aim(Aim.MOST_MET)).plan)


def test_where_no_stake_moves_the_plan_is_written_and_it_is_said_that_there_is_no_sheet(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    plan, out, sheet = tmp_path / "plan.gardenplot", tmp_path / "out.gardenplot", tmp_path / "changed.pdf"
    _written(plan)
    words = ["again", str(plan), str(out), "--take", "0,0,0", "--sheet", str(sheet), "--today", "2027-05-10"]
    assert main(words) == 0
    assert "no stake moves, so there is no sheet of what changed" in capsys.readouterr().err
    assert read_plan(out).plan == two_that_deviate()
    assert not sheet.exists()


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (["--sheet", "x.pdf"], "say which answers to take"),
        (["--take", "first"], "says no answers"),
        (["--take", "9"], "no answer 9"),
        (["--take", "1,1,1,1"], "3 things deviate"),
    ],
)
def test_what_cannot_be_taken_is_said_and_nothing_is_written(
    more: list[str], says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    plan = tmp_path / "plan.gardenplot"
    _written(plan)
    monkeypatch.chdir(tmp_path)
    assert main(["again", str(plan), *more, "--today", "2027-05-10"]) == 2
    assert says in capsys.readouterr().err
    assert [one.name for one in tmp_path.iterdir()] == ["plan.gardenplot"]
    assert main(["again", str(plan), str(plan), "--take", "1", "--today", "2027-05-10"]) == 2


def _written(path: Path) -> str:
    text = text_of(two_that_deviate())
    path.write_text(text, encoding="utf-8")
    return text


@each_paper
def test_no_colour_is_on_paper(paper: Paper) -> None:
    document = pypdfium2.PdfDocument(changed_sheet(*answered(), paper).pdf)
    try:
        pixels = document[0].render(scale=1.5).to_numpy()[..., :3]
        assert np.ptp(pixels, axis=2).max() == 0
    finally:
        document.close()


def test_a_box_whose_foot_is_a_mark_between_posts_has_no_foot_stake() -> None:
    before, after = (patterned.bed_of(patterned.BOX, {"length": length}) for length in ("1 m", "1.4 m"))
    (page,) = pages_of(changed_sheet(before, after, Paper.A4, printed=TODAY).pdf)
    assert "the foot reads 2.40 m" in plain(page.text)
    assert "zero at the inner face of the head board" in page.text
