"""What the sheet of what changed tells: each stake once, none that stays, and what is no stake apart from them."""

import json
from collections import Counter
from datetime import date
from fractions import Fraction

from attrs import evolve
from hypothesis import given, settings

from gardenplot.drawing.changed_list import ChangedBed, changed_beds, relettered_words
from gardenplot.drawing.letters import keeping_letters
from gardenplot.drawing.marked_numbers import moved_numbers
from gardenplot.drawing.remedies import stakes_cell
from gardenplot.drawing.together_words import together_words
from gardenplot.files import sample
from gardenplot.filling.again import AnswerKind, plan_again
from gardenplot.filling.again_ground import as_staked
from gardenplot.filling.moved import Mark, moved
from gardenplot.filling.together import Aim, answer_all
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_planting, move_planting
from gardenplot.plan.file import plan_of_text, read_plan
from gardenplot.units import parse_length
from tests.filling.test_moved import two_beds
from tests.plans import plans
from tests.scenarios.again_plans import late_and_short
from tests.scenarios.planned_again import failed_row
from tests.sheets.pdf_pages import plain

CORNER = {
    "beds": [{"id": "b", "name": "Corner bed", "head_margin": "20 cm", "gap": "20 cm", "outline": [
        ["0 m", "0 m"], ["7.2 m", "0 m"], ["7.2 m", "80 cm"], ["3.4 m", "80 cm"], ["3.4 m", "1.6 m"],
        ["0 m", "1.6 m"],
    ]}],
    "crops": [{"id": "l", "name": "Leek", "in_row": "15 cm", "row_spacing": "30 cm", "germination": "80 %",
               "raising_days": 60, "field_days": 90}],
    "plantings": [{"id": "p", "bed": "b", "crop": "l", "from": "20 cm", "plants": 127, "in_ground": "2027-05-24",
                   "actual": {"sown": "2027-03-15", "cells": 175, "stand": 85}}],
}  # fmt: skip


def answered(plan: Plan, kind: AnswerKind, today: date, loss: Fraction = Fraction(0)) -> ChangedBed:
    """What changes in the one bed of a plan by an answer."""
    (setback,) = plan_again(plan, today, loss)
    (answer,) = [one for one in setback.answers if one.kind is kind]
    (bed,) = changed_beds(as_staked(plan), keeping_letters(plan, answer.plan))
    return bed


def stakes(bed: ChangedBed) -> list[tuple[str, str, list[str], bool]]:
    """Old and new reading of each stake, what it says, and whether it is a job."""
    return [
        (plain(str(one.old or "")), plain(str(one.new or "")), [" ".join(said) for said in one.says], one.is_job)
        for one in bed.stakes
    ]


def between(bed: ChangedBed) -> list[list[str]]:
    return [[name, *map(plain, lines)] for name, lines in bed.between]


def test_a_stake_that_two_blocks_share_is_told_once() -> None:
    """S6 sown again: A ends at 12.90 m where B begins. Offsets, plants and readings as worked by hand, in 1 cm."""
    bed = answered(late_and_short(is_late=False), AnswerKind.SOW_AGAIN, date(2025, 4, 21), Fraction(5, 100))
    assert stakes(bed) == [
        ("14.15 m", "12.90 m", ["A Bulb fennel ends", "B Bulb fennel begins"], True),
        ("", "14.40 m", ["B Bulb fennel ends · new"], True),
    ]
    assert between(bed) == [
        ["A Bulb fennel", "2 × 51 + 50 = 152, 168 before; 25 cm from plant to plant",
         "rows 1–2: 51 each, first plant 0.28, last plant 12.78 m",
         "row 3: 50, first plant 0.28, last plant 12.53 m"],
        ["B Bulb fennel", "6 + 2 × 5 = 16; 25 cm from plant to plant",
         "rows 1–3 at 8.1, 38.1, 68.1 cm from the base line", "row 1: 6, first plant 13.03, last plant 14.28 m",
         "rows 2–3: 5 each, first plant 13.03, last plant 14.03 m", "set out Mon 26 May: 16 plants (1 tray)"],
    ]  # fmt: skip


def test_stakes_are_counted_as_the_sheet_tells_them_in_tables_and_numbers_too() -> None:
    """S6 sown again: of three ends that are not where they were two meet at one stake."""
    plan, today, loss = late_and_short(is_late=False), date(2025, 4, 21), Fraction(5, 100)
    (setback,) = plan_again(plan, today, loss)
    (answer,) = [one for one in setback.answers if one.kind is AnswerKind.SOW_AGAIN]
    assert len([one for one in answer.moved if one.mark is Mark.BLOCK]) == 3
    assert stakes_cell(plan, answer.plan) == "2"
    assert next(moved_numbers(plan, answer.plan)).value == 2
    together = answer_all(
        plan, today, loss, lambda one: next(each for each in one.answers if each.plan == answer.plan)
    )
    assert "2 stakes moved" in together_words(Aim.MOST_MET, together)


def test_a_new_spacing_is_no_stake() -> None:
    bed = answered(late_and_short(is_late=False), AnswerKind.SPREAD, date(2025, 4, 21), Fraction(5, 100))
    assert stakes(bed) == [("14.15 m", "14.94 m", ["A Bulb fennel ends"], True)]
    ((_name, told, *_rows),) = between(bed)
    assert told == "2 × 51 + 50 = 152, 168 before; 29 cm from plant to plant, was 25 cm"


def test_a_stake_that_stays_for_rows_of_another_block_is_not_told() -> None:
    """Rows 3 to 5 of the L end at 3.40 m, those of A before and those of B after."""
    plan = plan_of_text(json.dumps({"gardenplot": 1} | CORNER)).plan
    bed = answered(plan, AnswerKind.SOW_AGAIN, date(2027, 5, 1))
    told = stakes(bed)
    assert "3.40 m" not in {reading for one in told for reading in one[:2]}
    assert [one[2] for one in told] == [["A Leek ends"], ["B Leek begins · new"], ["B Leek ends · new"]]


def test_rows_that_end_alike_are_told_together_and_only_rows_with_plants() -> None:
    """A block that goes beyond the wide arm has five rows there and two behind it."""
    plan = plan_of_text(json.dumps({"gardenplot": 1} | CORNER)).plan
    (bed,) = changed_beds(plan, change_planting(plan, "p", plants=None, start=parse_length("2 m"),
                                                length=parse_length("4 m")))  # fmt: skip
    assert ["A Leek ends"] in [one[2] for one in stakes(bed)]
    (behind,) = changed_beds(plan, move_planting(plan, "p", "b", parse_length("3.6 m")))
    gone = [one for one in stakes(behind) if not one[1]]
    assert gone == [("3.40 m", "", ["A Leek rows 3–5 end: pull it out"], True)]
    ((_name, told, *rows),) = between(behind)
    assert told.startswith("2 × 24 = 48, 127 before")
    assert rows == ["rows 1–2: 24 each, first plant 3.68, last plant 7.13 m"]


def test_a_cover_is_told_apart_since_no_stake_was_driven_for_it() -> None:
    plan = two_beds()
    shorter = change_planting(plan, "p", length=parse_length("2 m"))
    cover, other = shorter.covers
    after = evolve(shorter, covers=(evolve(cover, end=parse_length("3.2 m")), other))
    (bed,) = changed_beds(plan, after)
    assert [one[:2] for one in stakes(bed)] == [("4.00 m", "3.00 m")]
    assert between(bed)[-1] == ["Cover", "0.80 – 3.20 m, was 0.80 – 4.20 m"]


def test_a_new_block_says_how_thick_it_is_sown_and_where_its_rings_lie() -> None:
    radish, scallion, parsley = (
        changed_beds(evolve(plan, plantings=tuple(one for one in plan.plantings if one.crop != crop)), plan)
        for name, crop in (("larch-bend", "radish"), ("larch-bend", "scallion"), ("otter-steep", "parsley"))
        for plan in (read_plan(sample(f"{name}.gardenplot")).plan,)
    )
    ((_name, told, sown, *_rows),) = between(radish[0])
    assert told == "6 × 76 = 456; 1½″ from plant to plant"
    assert sown == "sow 10 / ft, not thinned"
    (_name, told, sown, *_rows), *_others = between(scallion[0])
    assert told.endswith("; 2″ from plant to plant once thinned")
    assert sown == "sow 16 / ft; thin when the first true leaves show"
    ((_name, told, *rings),) = between(parsley[0])
    assert told == "5 rings, 106 plants; 20 cm from plant to plant"
    assert rings[::4] == ["ring 1: 130 cm from the centre, 40 plants", "ring 5: 10 cm from the centre, 2 plants"]


def test_letters_that_are_others_now_are_said() -> None:
    """A block planted between two by hand: letters run along the plan, and the second becomes the third."""
    before = two_beds()
    new = evolve(before.plantings[0], id="new", start=parse_length("4.2 m"), length=parse_length("60 cm"))
    after = evolve(before, plantings=(*before.plantings, new))
    assert relettered_words(before, after) == "Letters are not as before: B is now C"
    assert relettered_words(before, keeping_letters(before, after)) == ""
    many = evolve(before, plantings=(new, *(evolve(new, id=f"m{at}", bed="b2") for at in range(9))))
    front = evolve(new, id="front", start=parse_length("0 m"))
    assert relettered_words(many, evolve(many, plantings=(*many.plantings, front))).endswith("labels on the stakes")


@settings(max_examples=25)
@given(plans(), plans())
def test_from_any_plan_to_any_other_no_stake_is_told_twice(before: Plan, after: Plan) -> None:
    for bed in changed_beds(before, after):
        new = Counter(
            (one.number.turn, str(one.new)) for one in bed.stakes if one.new is not None and one.old is None
        )
        gone = Counter((one.number.turn, str(one.old)) for one in bed.stakes if one.new is None)
        assert {*new.values(), *gone.values()} <= {1}
        assert all(one.says for one in bed.stakes)
        assert all(lines and all(lines) for _name, lines in bed.between)
    blocks = {
        (one.bed, one.planting) for one in moved(before, after) if one.mark is Mark.BLOCK and one.new is not None
    }
    assert {bed for bed, _planting in blocks} <= {one.bed.id for one in changed_beds(before, after)}


def test_a_block_that_goes_in_on_another_day_says_so_beside_the_day_that_was_meant() -> None:
    """S6: its bed can be used from Thu 22 May on and not from Mon 12 May; 16 more are sown again for Mon 26 May."""
    bed = answered(late_and_short(), AnswerKind.SOW_AGAIN, date(2025, 4, 21), Fraction(5, 100))
    days = [lines[-1] for _name, *lines in between(bed)]
    assert days == ["set out Thu 22 May, was Mon 12 May", "set out Mon 26 May: 16 plants (1 tray)"]


def test_what_is_sown_into_empty_places_says_in_whose() -> None:
    plan = plan_of_text(json.dumps(failed_row())).plan
    (setback,) = plan_again(plan, date(2027, 5, 6), Fraction(5, 100))
    found = [changed_beds(as_staked(plan), one.plan) for one in setback.answers if one.kind is AnswerKind.FILL_ROWS]
    names = [name for beds in found for bed in beds for name, _lines in bed.between]
    assert "B Radish, in the empty places of A Kohlrabi" in names
