"""What is left in words: on the day that is shown, at its fullest, all season; and fewer plants than asked for."""

from datetime import date

import pytest

from gardenplot.drawing.captions import drag_line
from gardenplot.drawing.hand_words import asked_of, several_line, short_words
from gardenplot.drawing.left_words import left_at_fullest, left_on
from gardenplot.gestures.drags import place_crop, resize_block
from gardenplot.gestures.stage import Trial
from gardenplot.layout import lay_out_bed, lay_out_plan
from gardenplot.plan import Plan, bed_of, crop_of
from gardenplot.units import Units
from tests.gestures.hand import KeptStage, at, block, drag, ground
from tests.layout.ground import Fields

APRIL: Fields = {"in_ground": "2027-04-09", "out": "2027-05-28"}
JUNE: Fields = {"in_ground": "2027-06-01", "out": "2027-08-01"}
SEASON = ground(block("30 cm", "6 m", **APRIL), block("30 cm", "9 m", **JUNE), block("0 m", "20 m", bed="b2", **JUNE))
TUNNEL, FIELD = lay_out_plan(SEASON)


@pytest.mark.parametrize(
    ("day", "words"),
    [
        (date(2027, 4, 9), "5.40 m left on 9 Apr"),
        (date(2027, 6, 1), "2.40 m left on 1 Jun"),
        (date(2027, 9, 1), "11.40 m left on 1 Sep"),
        (None, "2.40 m left all season"),
    ],
)
def test_what_is_left_is_said_of_the_day_that_is_shown(day: date | None, words: str) -> None:
    assert plain(left_on((TUNNEL,), day, Units.METRIC)) == words


def test_of_all_days_the_figure_is_that_of_the_fullest_and_says_so() -> None:
    assert plain(left_at_fullest((TUNNEL,), Units.METRIC)) == "2.40 m left in 1 piece at its fullest"
    assert left_at_fullest((FIELD,), Units.METRIC) == "nothing left at its fullest"
    assert plain(left_at_fullest((TUNNEL, FIELD), Units.METRIC)) == "2.40 m left in 1 piece, each bed at its fullest"


def test_a_sum_of_several_pieces_is_not_read_as_one() -> None:
    """3 m is free before the block and 2.40 m behind it."""
    apart = ground(block("3.3 m", "6 m", **APRIL))
    tunnel = lay_out_plan(apart)[:1]
    assert plain(left_on(tunnel, date(2027, 4, 9), Units.METRIC)) == "5.40 m left in 2 pieces on 9 Apr"
    assert plain(drag_line(apart, "p1", tunnel[0], None)).endswith("   5.40 m left in 2 pieces all season")


def test_without_any_date_no_day_is_spoken_of() -> None:
    tunnel = lay_out_plan(ground(block("30 cm", "6 m")))[:1]
    assert plain(left_on(tunnel, None, Units.METRIC)) == "5.40 m left"
    assert plain(left_at_fullest(tunnel, Units.METRIC)) == "5.40 m left in 1 piece"


def test_a_full_bed_has_nothing_left_and_no_nought_is_read() -> None:
    assert left_on((FIELD,), date(2027, 6, 1), Units.METRIC) == "nothing left on 1 Jun"
    assert left_on((FIELD,), None, Units.METRIC) == "no piece left all season"
    assert drag_line(SEASON, "p3", FIELD, date(2027, 6, 1)).endswith("   nothing left on 1 Jun")


def test_several_blocks_are_summed_and_beds_apart_have_no_readings_in_common() -> None:
    line = plain(several_line(SEASON, ("p2", "p3"), date(2027, 6, 1)))
    assert line.startswith("2 plantings   in 2 beds   ")
    assert line.endswith(" plants   29.00 m of bed   2.40 m left on 1 Jun")
    assert "0.30 – 9.30 m   9.00 m of bed" in plain(several_line(SEASON, ("p2",), None))


ORDER: Fields = {"id": "o", "crop": "leek", "units": 90, "on": "2027-07-01"}
TYPED = ground({"crop": "leek", "from": "30 cm", "plants": 90})


def test_a_crop_cut_short_by_its_gap_says_how_many_of_its_order_stand() -> None:
    plan = ground(block("30 cm", "9 m"), orders=[ORDER])
    stage = KeptStage(plan)
    drag(place_crop(stage, crop_of(plan, "leek")), at("9.6 m"))
    trial = held(stage)
    assert trial.planting is not None
    planted = lay_out_bed(trial.plan, bed_of(trial.plan, "b1")).layout_of(trial.planting).plants
    assert 0 < planted < 90
    assert asked_of(plan, trial.plan, trial.planting) == 90
    assert f" = {planted} of 90 plants   " in line(plan, trial)


def test_an_end_drawn_in_says_how_many_of_the_typed_plants_stand() -> None:
    stage = KeptStage(TYPED)
    drag(resize_block(stage, "p1", foot=True), at("2.1 m"))
    assert "3 × 12 = 36 of 90 plants" in line(TYPED, held(stage))
    assert short_words(TYPED, held(stage).plan, "p1") == "Leek: 36 of 90 plants"


def test_what_another_block_has_of_the_order_is_not_asked_for_again() -> None:
    leek = {"crop": "leek", "order": "o"}
    plan = ground(block("30 cm", "3 m", **leek), block("0 m", "9 m", bed="b2", **leek), orders=[ORDER])
    assert asked_of(plan, plan, "p1") == 0
    assert short_words(plan, plan, "p1") == ""


def held(stage: KeptStage) -> Trial:
    """The last trial that was shown."""
    return next(trial for trial in reversed(stage.shown) if trial is not None)


def line(before: Plan, trial: Trial) -> str:
    """The line under the hand."""
    assert trial.planting is not None
    assert trial.bed is not None
    laid = lay_out_bed(trial.plan, bed_of(trial.plan, trial.bed))
    return plain(drag_line(trial.plan, trial.planting, laid, None, asked_of(before, trial.plan, trial.planting)))


def plain(words: str) -> str:
    """With ordinary spaces."""
    return words.replace("\u2009", " ")
