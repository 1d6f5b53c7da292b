"""The workings on paper: every number that opens in the window for a bed, a block or a thing to buy, with its sum.

What is read back from the pages is held against the lines of the dialog and against the workings of the commands.
"""

import json
import re
from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given, settings

from gardenplot.__main__ import main
from gardenplot.drawing.days import day_words
from gardenplot.drawing.number_words import Line, workings_of
from gardenplot.drawing.opened import Opened, of_cost, of_item, of_plan
from gardenplot.drawing.shopping_list import shop_groups
from gardenplot.drawing.supply_words import numbers_of
from gardenplot.drawing.working_list import working_parts
from gardenplot.errors import PlanError
from gardenplot.files import sample
from gardenplot.plan import GoodKind, Jugs, Plan
from gardenplot.plan.file import read_plan
from gardenplot.sheets.choices import USUAL, Choices, Kind
from gardenplot.sheets.paper import Paper
from gardenplot.supplies.shopping import Asked
from gardenplot.units import parse_heat_loss, parse_length, parse_temperature, parse_volume
from tests.drawing.hand_worked import _SCENARIOS, hand_worked
from tests.plans import plans
from tests.sheets.made import made
from tests.sheets.pdf_pages import Page, bookmarks_of, pages_of, plain
from tests.sheets.printed import bed_with
from tests.sheets.test_lists import LONG, ODD, assert_legible, each_paper

VALUE = 10.5
"""The size in points of what sums come to, and of nothing else."""
NAMES = ("s1", "s2", "s3", "s4", "s5", "s6")


def pages(plan: Plan, paper: Paper = Paper.A4, choices: Choices = USUAL) -> tuple[Page, ...]:
    """The pages of a plan's workings, read back."""
    return pages_of(made(plan, paper, Kind.WORKINGS, choices, day=date(2027, 2, 1)).pdf)


def in_turn(read: tuple[Page, ...]) -> str:
    """All words in the order in which they were drawn: a row after the other, each column whole."""
    return plain(" ".join(words.text for page in read for words in page.words))


def dialogs(plan: Plan) -> Iterator[tuple[Line, ...]]:
    """What opens for the beds, their blocks, the things on the list, their cost and the plan."""
    beds: list[tuple[str, str | None]] = [(bed.id, None) for bed in plan.beds]
    for bed, block in (*beds, *((one.bed, one.id) for one in plan.plantings)):
        yield _lines(plan, Opened("", numbers_of(plan, bed, block)))
    groups = shop_groups(plan)
    for row in (row for group in groups for row in group.rows):
        yield _lines(plan, of_item(plan, row.item))
    if any(row.cells[-1] for group in groups for row in group.rows):
        yield _lines(plan, of_cost(plan, groups))
    yield _lines(plan, of_plan(plan))


def _lines(plan: Plan, opened: Opened) -> tuple[Line, ...]:
    return tuple(workings_of(opened.numbers, plan.place.units, plan.place.money))


def sums(line: Line) -> str:
    """A sum as a row of the sheet tells it behind the name: "rows × plants in a row = 4 × 34 = 136 exact"."""
    source = "" if line.source == "common practice, no source" else line.source
    return plain(f"{line.formula} = {line.sum} {source} = {line.value} {line.trust}")


def is_worked_out(line: Line) -> bool:
    return bool(line.sum) and line.sum not in (line.formula, line.value)


@pytest.mark.parametrize("name", NAMES)
def test_every_number_on_paper_is_the_one_that_opens_in_the_window(name: str) -> None:
    plan = hand_worked(name)
    read, told = pages(plan), [line for lines in dialogs(plan) for line in lines]
    text = in_turn(read)
    for line in told:
        if is_worked_out(line):
            assert sums(line) in text
            assert line.depth or f"{plain(line.name)} {sums(line)}" in text
        elif not line.depth:
            formula = "" if line.sum or not line.is_sum else line.formula
            name = f"{line.name}:" if line.is_labelled and not line.is_sum else line.name
            assert plain(f"{name} {formula} {line.value}") in text
        else:
            assert plain(line.value) in text
    large = " ".join(words.text for page in read for words in page.words if words.size == VALUE)
    on_paper = {plain(value) for value in f" {large}".split(" = ")[1:]}
    assert on_paper == {plain(line.value) for line in told if is_worked_out(line)}


def numbers_of_command(capsys: pytest.CaptureFixture[str], name: str, *words: str) -> Iterator[dict[str, Any]]:
    """All numbers with a sum that a command tells a machine, with those that went into them."""
    assert main([words[0], str(_SCENARIOS / f"{name}.gardenplot"), "--json", *words[1:]]) == 0
    waiting = [json.loads(capsys.readouterr().out)]
    while waiting:
        found = waiting.pop()
        waiting += found.values() if isinstance(found, dict) else found if isinstance(found, list) else ()
        if isinstance(found, dict) and found.get("sum") and found["sum"] not in (found["formula"], found["says"]):
            yield found


@pytest.mark.parametrize("name", NAMES)
def test_every_number_of_the_commands_is_on_paper_too(capsys: pytest.CaptureFixture[str], name: str) -> None:
    text = in_turn(pages(hand_worked(name)))
    for words in (("count", "--workings"), ("dates", "--workings"), ("supplies",)):
        found = [*numbers_of_command(capsys, name, *words)]
        assert found or (name == "s5" and words == ("supplies",))
        for number in found:
            assert plain(f"{number['formula']} = {number['sum']}") in text
            assert plain(f"= {number['says']}") in text


@each_paper
def test_the_sums_of_s1_stand_on_it_as_they_were_worked_by_hand(paper: Paper) -> None:
    text = in_turn(pages(hand_worked("s1"), paper))
    for words in (
        "plants in a row stand ÷ rows = 134 ÷ 4 = 34 (33.5, up) exact",
        "planted rows × plants in a row = 4 × 34 = 136 exact",
        "cells raise ÷ germination = 157 ÷ 90 % = 175 (174.44, up) good",
        "= 11.40 m − 10.55 m − 20 cm = 65 cm exact",
        "= ≈ 3.1416 × 75 cm ÷ 2 geometry: circumference of a circle = 1.18 m exact",
        "hoops to cut arc + 2 × leg in the ground not known: needs leg in the ground",
        "typed for the order: ordered 120;",
        "Formulas: common practice, no source, where none is named.",
    ):
        assert words in text


_SIZES = {"m": Fraction(1), "cm": Fraction(1, 100), "%": Fraction(1, 100), "m²": Fraction(1), "": Fraction(1)}
_TOLD = re.compile(r"(\d[\d.]*) ?(m²|cm|m|%)?(?![\w.])")


def by_pencil(sum_: str) -> Fraction | None:
    """What a sum of metres, centimetres, counts and shares comes to by its own figures; None of any other sum."""
    closed = re.sub(r"(?<=\d) (?=\d{3}(?!\d))", "", plain(sum_).replace("≈", " "))
    text = _TOLD.sub(lambda told: f"Fraction('{told[1]}')*Fraction('{_SIZES[told[2] or '']}')", closed)
    text = text.replace("×", "*").replace("÷", "/").replace("−", "-")
    if re.search(r"[^\d\s()+*/.'-]", text.replace("Fraction", "")):
        return None
    value = eval(re.sub(r"(Fraction\('[\d.]+'\)\*Fraction\('[\d/]+'\))", r"(\1)", text), {"Fraction": Fraction})
    return Fraction(value)


@pytest.mark.parametrize("name", ["kestrel-howe", "tarn-garth"])
def test_sums_of_metres_come_out_by_the_figures_that_are_printed(name: str) -> None:
    """17.20 m less 15.375 m less 20 cm: with 15.38 m for the 15.375 m it came to 1.62 m where 1.63 m stood."""
    plan = read_plan(sample(f"{name}.gardenplot")).plan
    checked = 0
    for line in (line for lines in dialogs(plan) for line in lines if line.sum):
        told = re.match(r"−?(\d[\d.]*) ?(m²|cm|m)(?![\w.])", plain(line.value))
        value = by_pencil(line.sum)
        if told is None or value is None:
            continue
        size, decimals = _SIZES[told[2]], len(told[1].partition(".")[2])
        half = size / 10**decimals / 2
        assert abs(value - Fraction(told[1]) * size) <= (half * 3 if "≈" in line.sum else half), line
        checked += 1
    assert checked >= 30


@pytest.mark.parametrize("name", ["s1", "s2", "s3", "s5"])
def test_hoops_are_told_by_the_length_that_they_are_cut_to_and_no_width_of_cloth(name: str) -> None:
    """S2 by hand: hoops of 7 ft 7 1/2 in, under cloth 7 ft 11 1/2 in wide."""
    plan = hand_worked(name)
    items = [row.item for group in shop_groups(plan) for row in group.rows]
    hoops = [of_item(plan, one) for one in items if one.kind is GoodKind.HOOP and one.size is not None]
    assert hoops or name != "s2"
    for opened in hoops:
        told = {number.name: number for number in opened.numbers}
        assert told["hoop_length"].terms
        assert "cloth_width" not in told


def test_a_small_plan_takes_few_pages() -> None:
    """One bed with two blocks on five, four beds with ten blocks and twenty things to buy on fourteen."""
    assert len(pages(hand_worked("s1"))) <= 5
    assert len(pages(read_plan(sample("kestrel-howe.gardenplot")).plan)) <= 14


@settings(max_examples=max(8, settings().max_examples // 40), deadline=None)
@given(plans())
def test_what_went_into_several_numbers_is_told_once(plan: Plan) -> None:
    before: set[tuple[str, str, str]] = set()
    for part in working_parts(plan, Asked()):
        lines = [row for row in part.rows if isinstance(row, Line)]
        assert not before & {line.says for line in lines if line.depth} or part.bed
        before |= {line.says for line in lines}


def test_a_bed_without_drip_lines_tells_nothing_of_them() -> None:
    plan = read_plan(sample("kestrel-howe.gardenplot")).plan
    names = {bed.name for bed in plan.beds if bed.drip_lines}
    parts = [part for part in working_parts(plan, Asked()) if part.bed]
    assert names
    assert {part.name for part in parts} - names
    for part in parts:
        told = " ".join(row.name if isinstance(row, Line) else " ".join(row) for row in part.rows)
        assert ("drip line" in told) == (part.name in names)
        assert "a week" in told


def told_of(plan: Plan, name: str) -> dict[str, Line]:
    """The sums of a bed or a block on paper by their names."""
    part = next(part for part in working_parts(plan, Asked()) if part.name == name)
    return {row.name: row for row in part.rows if isinstance(row, Line)}


def test_what_is_left_of_a_bed_says_on_which_day() -> None:
    """The north tunnel has lettuce and radish in spring, then cucumber, which leaves least."""
    plan = read_plan(sample("kestrel-howe.gardenplot")).plan
    left = told_of(plan, "Tunnel, north")["left over, Tunnel, north, fullest on 28 May 2027"]
    assert plain(left.value) == "20 cm"
    (whole,) = (line for line in told_of(plan, "The plan").values() if line.name == "left over")
    assert "Tunnel, north, fullest on 28 May 2027" in whole.formula


def test_a_gap_that_is_too_wide_says_why_it_is_left_over() -> None:
    """In field 1 the blocks are 30.5 cm apart, where the bed asks for 30 cm."""
    plan = read_plan(sample("kestrel-howe.gardenplot")).plan
    wide = told_of(plan, "Field 1")["wider than the gap, so left over, by"]
    assert (plain(wide.sum), plain(wide.value)) == ("30.5 cm − 30 cm", "0.5 cm")


def test_a_block_in_the_slim_part_of_a_bed_says_how_many_rows_have_room_there() -> None:
    """Kale stands in the leg of the L: of five rows that the width of the bed holds two."""
    plan = read_plan(sample("tarn-garth.gardenplot")).plan
    part = next(part for part in working_parts(plan, Asked()) if part.name.endswith("Kale"))
    numbers_used = plain(" ".join(words for row in part.rows if isinstance(row, tuple) for words in row))
    assert "of these with room for plants 2" in numbers_used


def test_a_bed_with_a_number_for_a_name_keeps_it_apart_from_its_figures() -> None:
    plan = read_plan(sample("kestrel-howe.gardenplot")).plan
    text = in_turn(pages(plan))
    assert "pieces, Field 1: 2;" in text
    assert "other number of rows 4" in text


def test_two_covers_of_a_bed_are_told_apart_by_their_days() -> None:
    """S2 has cloth from 7 May to 4 Jun, then another over more of the bed to 11 Jun: 16 hoops, then 20."""
    plan = hand_worked("s2")
    covers = [part for part in working_parts(plan, Asked()) if part.name.startswith("Cover on ")]
    assert len(covers) == 2
    for part, cover, hoops in zip(covers, plan.covers, ("16", "20"), strict=True):
        assert cover.off is not None
        assert part.name.endswith(f"off {day_words(cover.off)}")
        assert next(row.value for row in part.rows if isinstance(row, Line) and row.name == "hoops") == hoops
    assert "hoops" not in told_of(plan, plan.beds[0].name)


def test_squares_are_written_as_by_hand() -> None:
    text = in_turn(pages(read_plan(sample("kestrel-howe.gardenplot")).plan))
    assert "√((corner to corner, along)² + (corner to corner, across)²)" in text
    assert "^" not in text


def test_only_beds_that_were_chosen_are_on_it() -> None:
    plan = hand_worked("s4")
    first, second = plan.beds
    text = in_turn(pages(plan, choices=Choices(beds=frozenset([second.id]))))
    assert second.name in text
    assert "Summer cabbage" not in text
    assert first.name not in text
    sheets = made(plan, Paper.A4, Kind.WORKINGS)
    assert [words for words, _page in bookmarks_of(sheets.pdf)] == [first.name, second.name]
    assert set(sheets.first_page) == {first.id, second.id}


def test_weak_numbers_are_ranges_and_said_to_be_so() -> None:
    plan = hand_worked("s1")
    jugs = Jugs(
        "j1", plan.beds[0].id, parse_length("1 m"), parse_length("3 m"), parse_volume("5 l"), parse_length("17 cm"),
        warm=parse_temperature("15 °C"), cold=parse_temperature("0 °C"), loss=parse_heat_loss("60 W / m2"),
    )  # fmt: skip
    text = in_turn(pages(evolve(plan, jugs=(jugs,))))
    assert "makes up for the bed's loss for" in text
    assert re.search(r"= about [\d½]+ (hour|minute)s? to [\d½]+ (hour|minute)s? weak", text)
    assert "Weak numbers hang on a guess" in text
    assert "Weak numbers" not in in_turn(pages(plan))


@pytest.mark.parametrize("name", [LONG, ODD])
@each_paper
def test_names_of_any_kind_and_sums_longer_than_a_page_stay_on_their_pages(name: str, paper: Paper) -> None:
    plan = bed_with(*({"from": f"{60 * number} cm", "length": "45 cm"} for number in range(20)))
    plan = evolve(plan, crops=(evolve(plan.crops[0], name=name),))
    for page in pages(plan, paper):
        assert_legible(page, paper)


def test_the_same_plan_and_day_give_the_same_bytes() -> None:
    first, second = (made(hand_worked("s3"), Paper.A4, Kind.WORKINGS).pdf for _turn in range(2))
    assert first == second


def test_a_plan_without_beds_has_none() -> None:
    with pytest.raises(PlanError, match="no workings"):
        made(Plan(), Paper.A4, Kind.WORKINGS)
