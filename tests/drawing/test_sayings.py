"""Sentences for people: each kind of finding, where it is, counts and captions."""

import re
from datetime import date
from math import prod

import pytest
from attrs import evolve
from hypothesis import given, settings

from gardenplot.drawing.captions import captions, drag_line
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import (
    between_readings,
    counted,
    findings_title,
    rows_by_plants,
    says,
    titled,
    weight,
    where,
)
from gardenplot.drawing.slip_words import SLIPS
from gardenplot.drawing.timing_words import TIMING
from gardenplot.drawing.today_words import OF_TODAY
from gardenplot.findings import Finding, Kind, find_all
from gardenplot.layout import Layout, lay_out_plan
from gardenplot.plan import Pattern, Plan, Tunnel
from gardenplot.plan.edits import change_planting
from gardenplot.units import Length, parse_length
from tests.drawing.hand_worked import hand_worked, only_bed, plan_from
from tests.layout.ground import Fields, laid_out, nm
from tests.plans import metric_plan, plans

S1, S2, S3 = hand_worked("s1"), hand_worked("s2"), hand_worked("s3")
CM_13, CM_20, CM_25 = nm("13 cm"), nm("20 cm"), nm("25 cm")

TUNNEL = Tunnel("t", "Polythene", Length(0, "0 m"), Length(0, "0 m"), parse_length("30 m"), parse_length("6 m"))

CASES = [
    (S1, Finding(Kind.OVERLAP, "b2", "p2", "p1", amount=CM_13), "stands 13 cm into A Pak choi"),
    (S2, Finding(Kind.OVERLAP, "f1", "p2", "p1", amount=nm("2' 3\"")), "stands 2′ 3″ into A Broccoli"),
    (S1, Finding(Kind.OUTSIDE, "b2", "p1", start=0, amount=CM_20, limit=nm("30 cm")),
     "begins 20 cm before the head margin"),
    (S1, Finding(Kind.OUTSIDE, "b2", "p2", start=nm("11.7 m"), end=nm("13.2 m"), amount=nm("1.5 m")),
     "runs 1.50 m past the foot margin"),
    (S1, Finding(Kind.IN_THE_WAY, "b2", "p1", "p2", amount=23, limit=CM_20),
     "23 plants stand within 20 cm of places of B Kohlrabi: cut them by Thu 3 Apr 2025, or leave their places empty"),
    (S1, Finding(Kind.NOT_MARKABLE_IN_ROW, "b2", "p1", amount=CM_25, limit=CM_20, plants=4),
     "25 cm in the row cannot be marked; the nearest is 20 cm: +4 plants"),
    (S1, Finding(Kind.NOT_MARKABLE_ROWS, "b2", "p1", amount=CM_20, limit=CM_25, plants=-34),
     "rows 20 cm apart cannot be marked; the nearest is 25 cm: −34 plants"),
    (S1, Finding(Kind.NOT_MARKABLE_PAIR, "b2", "p1", amount=CM_13, limit=CM_20, plants=-34),
     "rows 13 cm apart in a pair cannot be marked; the nearest is 20 cm: −34 plants"),
    (S1, Finding(Kind.DATES, "b2", "p1", amount=3), "is out of the ground before it goes in"),
    (S1, Finding(Kind.NO_ROW, "b2", "p1", amount=CM_20, limit=CM_25),
     "no row fits: both edge distances take 25 cm of 20 cm"),
    (S1, Finding(Kind.NO_CELL, "b2", "p1", amount=CM_20, limit=CM_25), "no cell fits: one takes 25 cm of 20 cm"),
    (S1, Finding(Kind.NO_PLANT, "b2", "p1", amount=CM_25, limit=CM_20),
     "no plant fits: one takes 20 cm of 25 cm, and nothing may stand in its way"),
    (S1, Finding(Kind.ROWS, "b2", "p1", amount=5, limit=4), "5 rows asked for, 4 fit"),
    (S1, Finding(Kind.ROWS, "b2", "p1", amount=2, limit=1), "2 rows asked for, 1 fits"),
    (S1, Finding(Kind.ROWS, "b2", "p1", amount=1, limit=0), "1 row asked for, 0 fit"),
    (S1, Finding(Kind.ORDER_SHORT, order="o1", amount=100, limit=134),
     "120 Pak choi for Sat 17 May 2025: 34 plants short of 134"),
    (S1, Finding(Kind.ORDER_UNPLANTED, order="o2", limit=43),
     "40 Kohlrabi for Sat 17 May 2025: not planted yet, 43 plants must stand"),
    (S1, Finding(Kind.ORDER_PAST, order="o2", amount=3, pieces=1),
     "40 Kohlrabi for Sat 17 May 2025: that market day is past, and nothing is recorded for it"),
    (S1, Finding(Kind.ORDER_TWICE, "b2", "p2", "p1", amount=216, limit=153),
     "takes all of its order, for which A Pak choi stands too: 216 planted, 153 needed"),
    (S1, Finding(Kind.EDGE, "b2", "p1", amount=nm("5 cm"), limit=nm("7.5 cm")),
     "outer row 5 cm from the edge, 7.5 cm is the least"),
    (S1, Finding(Kind.CLOSER_IN_ROW, "b2", "p2", amount=CM_20, limit=CM_25),
     "20 cm in the row, the packet says 25 cm: smaller heads, less air"),
    (S2, Finding(Kind.CLOSER_IN_ROW, "f1", "p1", amount=nm("7 3/16 in"), limit=nm("7 1/4 in")),
     "7 3/16″ in the row, the packet says 7¼″: smaller heads, less air"),
    (S2, Finding(Kind.CLOSER_ROWS, "f1", "p1", amount=nm("18 in"), limit=nm("2 ft")),
     "rows 18″ apart, the packet says 24″: smaller heads, less air"),
    (S1, Finding(Kind.LEFTOVER, "b2", amount=nm("65 cm"), pieces=1), "65 cm left in one piece at its fullest"),
    (S1, Finding(Kind.LEFTOVER, "b2", amount=nm("2.65 m"), limit=nm("1.3 m"), pieces=2),
     "2.65 m left in 2 pieces at its fullest; the longest, 1.30 m, is here"),
    (S1, Finding(Kind.SHADE, "b2", "p2", "p1", amount=nm("84 cm"), limit=date(2027, 7, 19).toordinal()),
     "84 cm of it lie in the shadow of A Pak choi at noon on Mon 19 Jul 2027"),
    (S1, Finding(Kind.ON_DRIP_LINE, "b2", "p1", amount=1, limit=nm("2 cm")),
     "1 row lies on a drip line, or less than 2 cm from one: move the line aside to plant"),
    (S1, Finding(Kind.ON_ANOTHER_BED, "b2", lies_on="b2", amount=CM_13),
     "lies 13 cm into Tunnel, second bed on the ground"),
    (evolve(S1, tunnels=(TUNNEL,)), Finding(Kind.THROUGH_A_WALL, "b2", lies_on="t", amount=CM_13),
     "sticks 13 cm out of Polythene through its wall"),
]  # fmt: skip


@pytest.mark.parametrize(("plan", "finding", "sentence"), CASES, ids=[case[2] for case in CASES])
def test_a_finding_says_what_is_wrong_and_by_how_much(plan: Plan, finding: Finding, sentence: str) -> None:
    assert says(plan, finding, looks(plan)).replace("\u2009", " ") == sentence


def test_every_kind_of_finding_has_been_heard() -> None:
    assert {finding.kind for _plan, finding, _sentence in CASES} == set(Kind) - TIMING - OF_TODAY - SLIPS
    # Those about days are heard in tests/findings/test_timing.py and test_today.py, slips in test_slips.py.


@settings(max_examples=25)
@given(plans())
def test_whatever_is_found_can_be_said_and_placed(plan: Plan) -> None:
    look = looks(plan)
    for finding in find_all(plan):
        assert says(plan, finding, look)
        assert where(plan, finding, look)


@pytest.mark.parametrize(
    ("finding", "place"),
    [
        (Finding(Kind.ORDER_UNPLANTED, order="o1"), "orders"),
        (Finding(Kind.LEFTOVER, "b2", start=nm("11.05 m"), end=nm("11.7 m")), "Tunnel, second bed, 11.05 – 11.70 m"),
        (Finding(Kind.EDGE, "b2", "p2", start=nm("7.3 m"), end=nm("11.05 m")),
         "B Kohlrabi, Tunnel, second bed, 7.30 – 11.05 m"),
    ],
)  # fmt: skip
def test_a_finding_has_its_place(finding: Finding, place: str) -> None:
    assert where(S1, finding, looks(S1)).replace("\u2009", " ") == place


@pytest.mark.parametrize(
    ("kinds", "title"),
    [
        ([], "Findings"),
        ([Kind.OVERLAP], "1 finding"),
        ([Kind.LEFTOVER, Kind.EDGE, Kind.OVERLAP], "2 findings · 1 note"),
        ([Kind.LEFTOVER, Kind.LEFTOVER], "Findings · 2 notes"),
    ],
)
def test_the_findings_are_counted_as_they_are_listed(kinds: list[Kind], title: str) -> None:
    assert findings_title([Finding(kind) for kind in kinds]) == title


@pytest.mark.parametrize(
    ("kind", "word"), [(Kind.OUTSIDE, "▼ cannot be done"), (Kind.EDGE, "risk"), (Kind.LEFTOVER, "note")]
)
def test_a_finding_has_its_weight_in_a_word(kind: Kind, word: str) -> None:
    assert weight(Finding(kind)) == word


def test_readings_carry_their_unit_once() -> None:
    assert between_readings(S1, nm("0.3 m"), nm("7.1 m")) == "0.30 – 7.10\u2009m"
    assert between_readings(S2, nm("2 ft"), nm("77 ft")) == "2′\u20090″ – 77′\u20090″"


@pytest.mark.parametrize(
    ("planting", "words"),
    [
        ({"plants": 45}, "3 × 15 = 45"),
        ({"plants": 44}, "2 × 15 + 14 = 44"),
        ({"plants": 1}, "1 plant"),
        ({"plants": 43, "rows": 1}, "43 plants"),
        ({"length": "2 m", "pattern": "staggered"}, "2 × 10 + 9 = 29"),
        ({"length": "2 m", "pattern": "broadcast"}, "22 plants"),
        ({"length": "2 m", "pattern": "cells", "cell": "30 cm", "plants_per_cell": 5}, "12 cells × 5 = 60"),
        ({"plants": 7, "pattern": "cells", "cell": "30 cm", "plants_per_cell": 5}, "1 cell × 5 + 2 = 7"),
        ({"length": "2 m", "direction": "across"}, "8 × 3 = 24"),
        ({"pattern": "rings"}, "8 + 1 = 9"),
    ],
)
def test_counts_name_rows_plants_and_product(planting: Fields, words: str) -> None:
    bed: Fields = {"length": "12 m", "width": "75 cm"}
    crop: Fields = {"in_row": "20 cm", "row_spacing": "25 cm", "edge": "10 cm"}
    (layout,) = laid_out(bed, crop, planting).layouts
    assert counted(layout).replace("\u2009", " ") == words


def joined(layout: Layout) -> str:
    """Rows and plants with the thousands joined, to be read as numbers."""
    return re.sub("(?<=[0-9])\u2009(?=[0-9])", "", rows_by_plants(layout))


@settings(max_examples=25)
@given(plans())
def test_rows_by_plants_add_up_to_the_plants(plan: Plan) -> None:
    for laid in lay_out_plan(plan):
        for layout in laid.layouts:
            if layout.grid.pattern is Pattern.CELLS and layout.plants:
                cells = joined(layout).replace(" cells", "").replace(" cell", "").split(" + ")
                assert sum(prod(int(one) for one in term.split("\u2009×\u2009")) for term in cells) == layout.plants
            elif layout.rows and not rows_by_plants(layout).endswith(" rows"):
                terms = [term.split("\u2009×\u2009") for term in joined(layout).split(" + ")]
                rows = sum(int(term[0]) if len(term) == 2 else 1 for term in terms)
                plants = sum(int(term[0]) * int(term[-1]) if len(term) == 2 else int(term[0]) for term in terms)
                assert (rows, plants) == (max(1, sum(1 for count in layout.per_row if count)), layout.plants)


def test_a_planting_is_called_by_letter_and_crop() -> None:
    assert titled(S1, "p2", looks(S1)) == "B Kohlrabi"


def test_under_the_hand_stand_count_readings_and_what_is_left() -> None:
    line = drag_line(S1, "p2", only_bed(S1), None)
    assert (
        line.replace("\u2009", " ") == "Kohlrabi   3 × 15 = 45   7.30 – 11.05 m   3.75 m long   65 cm left all season"
    )


def test_captions_run_from_the_head_on_and_from_the_fullest_words_to_none() -> None:
    first, second = captions(S1, only_bed(S1), None, looks(S1))
    assert (first.planting, first.at, first.look.letter) == ("p1", 300.0, "A")
    assert (second.planting, second.at) == ("p2", 7300.0)
    assert [words.replace("\u2009", " ") for words in second.words] == [
        "Kohlrabi   3 × 15 = 45   7.30 – 11.05 m",
        "Kohlrabi   3 × 15 = 45",
        "Kohlrabi  45",
        "Kohlrabi",
        "",
    ]


def test_a_caption_says_whose_places_are_ringed_in_its_block() -> None:
    """As long as the tomatoes are not set out; where all days are drawn they stand there themselves."""
    laid, look, in_march = only_bed(S3), looks(S3), date(2025, 3, 25)
    (lettuce,) = captions(S3, laid, in_march, look)
    told = [words.replace("\u2009", " ") for words in lettuce.words[:2]]
    fullest = "Cos lettuce, small   3 × 69 = 207   1′ 0″ – 47′ 0″"
    assert told == [f"{fullest}   places kept for B Tomato", fullest]
    assert all("kept" not in words for one in captions(S3, laid, None, look) for words in one.words)
    aside = change_planting(S3, "p1", length=parse_length("8 in"))
    aside = change_planting(aside, "p2", start=parse_length("10 ft"), length=parse_length("4 ft"))
    assert all("kept" not in words for words in captions(aside, only_bed(aside), in_march, look)[0].words)


def test_captions_are_those_of_what_stands_on_the_day() -> None:
    plan = metric_plan()
    field = lay_out_plan(plan)[1]
    assert [one.planting for one in captions(plan, field, date(2027, 5, 27), looks(plan))] == ["p2", "p3"]
    assert [one.planting for one in captions(plan, field, date(2027, 5, 28), looks(plan))] == ["p2"]


def test_a_plan_that_is_short_says_so_in_its_orders_own_units() -> None:
    plan = plan_from(
        beds=[{"id": "b1", "name": "Bed", "length": "2 m", "width": "75 cm"}],
        crops=[{"id": "beet", "name": "Beet", "in_row": "10 cm", "row_spacing": "25 cm"}],
        plantings=[{"id": "p1", "bed": "b1", "crop": "beet", "length": "1 m", "order": "o1"}],
        orders=[{"id": "o1", "crop": "beet", "units": 8, "plants_per_unit": 5, "on": "2027-07-03"}],
    )
    sentences = [says(plan, finding, looks(plan)) for finding in find_all(plan) if finding.order]
    assert sentences == ["8 Beet for Sat 3 Jul 2027: 10 plants short of 40"]
