"""The words of the bed sheets: everything that is needed at the bed, nothing cut off or printed over."""

import re
from datetime import date
from itertools import combinations, pairwise
from math import dist

import numpy as np
import pytest
from hypothesis import given, settings
from pypdfium2 import PdfDocument
from reportlab.lib.units import mm

from gardenplot.drawing.letters import looks
from gardenplot.drawing.turns import turns
from gardenplot.errors import PlanError
from gardenplot.gestures.actual_typed import record
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_bed, change_crop, change_place
from gardenplot.plan.shapes import diagonal
from gardenplot.sheets.paper import Paper
from gardenplot.units import Units
from gardenplot.units.figures import tape
from tests.drawing.hand_worked import hand_worked, only_bed, plan_from
from tests.layout.ground import nm
from tests.plans import feet_plan, metric_plan
from tests.sheets.made import bed_sheets
from tests.sheets.pdf_pages import Words, bookmarks_of, pages_of, plain
from tests.sheets.printed import Sheet, bed_with, in_a_row, printed, said, sheets

each_paper = pytest.mark.parametrize("paper", Paper)
SCENARIOS = ("s1", "s2", "s3", "s4", "s5", "s6")


@each_paper
def test_all_that_was_worked_out_for_s1_is_on_its_sheet(paper: Paper) -> None:
    (page,) = printed(hand_worked("s1"), paper)
    large = {words.text for words in page.words if words.size >= 14}
    assert {"0.00", "0.30", "7.10", "7.30", "11.05", "11.70", "12.00"} <= large
    assert {"7.5", "27.5", "47.5", "67.5", "12.5", "37.5", "62.5", "12.02 m", "−30", "+30"} <= large
    assert {
        "0.40",
        "7.00",
        "7.43",
        "10.93",
        "20 cm",
        "25 cm",
        "60 cm",
        "80 cm",
        "100 cm",
        "12.00 m × 0.75 m",
    } <= large
    for words in ("A Pak choi begins", "A ends · last plant", "65 cm left", "4 × 34", "3 × 15",
                  "metres and centimetres", "9 stakes (2 at far corners)", "136 plants (3 trays)",
                  "45 plants (1 tray)"):  # fmt: skip
        assert words in page.text


@each_paper
def test_all_that_was_worked_out_for_s2_is_on_its_sheet(paper: Paper) -> None:
    (page,) = printed(hand_worked("s2"), paper)
    large = {words.text for words in page.words if words.size >= 14}
    assert {"0′ 0″", "2′ 0″", "77′ 0″", "78′ 0″", "93′ 9″", "98′ 0″", "100′ 0″"} <= large
    assert {"2′ 9″", "76′ 3″", "78′ 1½″", "93′ 7½″"} <= large
    assert {"12″", "36″", "6″", "18″", "30″", "42″", "100′ 1″", "−12″", "+18″"} <= large
    for words in ("A Broccoli begins", "2 × 50", "B Beets begins", "4 × 63", "252", "4′ 3″ left",
                  "feet and inches", "9 stakes (2 at far corners)", "100 plants (2 trays)"):  # fmt: skip
        assert words in page.text


@pytest.mark.parametrize(
    ("margins", "lines"),
    [
        (({}, {}), ["counted with half a spacing at both ends"]),
        (({"end_margin": "0 cm"},) * 2, ["counted with plant on the mark at both ends"]),
        (
            ({}, {"end_margin": "0 cm"}, {"end_margin": "5 cm"}, {}),
            [
                "A D: counted with half a spacing at both ends",
                "B: counted with plant on the mark at both ends",
                "C: counted with 5 cm at both ends",
            ],
        ),
    ],
)
def test_the_counts_say_how_they_treat_the_ends_of_a_block(
    margins: tuple[dict[str, str], ...], lines: list[str]
) -> None:
    blocks = ({"from": f"{3 * at} m", "length": "2 m"} | margin for at, margin in enumerate(margins))
    (page,) = printed(bed_with(*blocks))
    assert [words.text.replace("\u2009", " ") for words in page.words if "both ends" in words.text] == lines


def test_offsets_are_given_from_the_left_edge_and_from_the_centre_line() -> None:
    texts = [words.text for words in printed(hand_worked("s1"))[0].words]
    edge = texts.index("from edge")
    assert [text for text in texts[edge:] if text[:1] in "−+0" and text != "0 HEAD"][:7] == [
        "−30", "−10", "+10", "+30", "−25", "0", "+25",
    ]  # fmt: skip
    assert [text for text in texts[edge:] if text.endswith(".5")] == [
        "7.5", "27.5", "47.5", "67.5", "12.5", "37.5", "62.5",
    ]  # fmt: skip


@pytest.mark.parametrize("count", [0, 1, 7, 12])
@each_paper
def test_readings_are_the_largest_figures_and_no_row_is_crowded(count: int, paper: Paper) -> None:
    for page in printed(in_a_row(count), paper):
        readings = [words for words in page.words if words.size == 17]
        assert readings
        assert all(re.fullmatch(r"\d+\.\d\d", words.text) for words in readings)
        heights = [words.box[1] for words in readings]
        assert all(21 <= above - below <= 36.01 for above, below in pairwise(heights))


@pytest.mark.parametrize(
    ("length", "width", "across"),
    [("4 m", "3 m", "5 m"), ("12 cm", "5 cm", "13 cm"), ("8 ft", "6 ft", "10 ft")],
)
def test_the_diagonal_is_that_of_pythagoras(length: str, width: str, across: str) -> None:
    assert diagonal(nm(length), nm(width)) == nm(across)


@pytest.mark.parametrize(
    ("width", "units", "triangle"),
    [
        ("75 cm", "metric", "3-4-5: 60 cm head, 80 cm edge, 100 cm across"),
        ("1.2 m", "metric", "3-4-5: 90 cm head, 120 cm edge, 150 cm across"),
        ("4 ft", "feet and inches", "3-4-5: 36″ head, 48″ edge, 60″ across"),
        ("30 in", "feet and inches", "3-4-5: 27″ head, 36″ edge, 45″ across"),
    ],
)
def test_the_triangle_to_square_the_head_with_has_room_in_it(width: str, units: str, triangle: str) -> None:
    assert triangle in said(bed_with(units=units, width=width))


@pytest.mark.parametrize("count", [3, 7, 8, 12])
@each_paper
def test_every_stake_is_on_a_page_once_and_every_page_names_its_bed(count: int, paper: Paper) -> None:
    pages = printed(in_a_row(count), paper)
    readings = [words.text for page in pages for words in page.words]
    for number in range(count):
        assert readings.count(f"{0.6 * number:.2f}") == 1
        assert readings.count(f"{0.6 * number + 0.45:.2f}") == 1
    assert readings.count("12.00") == 1
    for number, page in enumerate(pages, 1):
        assert page.text.startswith("Long bed, continued 12.00 m" if number > 1 else "Long bed 12.00 m")
        assert f"page {number}" in page.text
        assert (f"goes on with page {number + 1}" in page.text) == (number < len(pages))


@each_paper
def test_few_stakes_need_one_page_and_very_many_need_more(paper: Paper) -> None:
    assert len(printed(in_a_row(3), paper)) == 1
    assert len(printed(in_a_row(19), paper)) > 1


@pytest.mark.parametrize(
    "plan", [hand_worked("s1"), hand_worked("s3"), hand_worked("s4"), metric_plan(), feet_plan(), bed_with()]
)
def test_each_turn_of_each_bed_has_a_page(plan: Plan) -> None:
    in_turn = [turns(laid) for laid in lay_out_plan(plan)]
    sheet = bed_sheets(plan, Paper.A4)
    starts = [sum(len(one) for one in in_turn[:number]) for number in range(len(in_turn))]
    assert sheet.first_page == dict(zip((bed.id for bed in plan.beds), starts, strict=True))
    assert len(pages_of(sheet.pdf)) == sum(len(one) for one in in_turn)


def test_each_turn_has_a_bookmark_and_pages_that_go_on_have_none() -> None:
    assert bookmarks_of(bed_sheets(hand_worked("s3"), Paper.A4).pdf) == [
        ("Tunnel bed, turn 1 of 2 on this ground", 0),
        ("Tunnel bed, turn 2 of 2 on this ground", 1),
    ]
    assert bookmarks_of(bed_sheets(in_a_row(19), Paper.A4).pdf) == [("Long bed", 0)]


def test_a_plan_without_beds_says_so_and_makes_no_empty_file() -> None:
    with pytest.raises(PlanError, match="bed"):
        bed_sheets(Plan(), Paper.A4)


def test_the_turns_of_s3_are_numbered_and_each_has_its_own_crop() -> None:
    lettuce, tomatoes = printed(hand_worked("s3"))
    assert "turn 1 of 2" in lettuce.text
    assert "turn 2 of 2" in tomatoes.text
    assert "Tomato begins" not in lettuce.text
    for words in ("B Tomato, 23 places kept", "peg both edges of the bed",
                  "6 stakes (2 at far corners) · 46 pegs · string of 51′ 0″",
                  "A: 23 plants stand within 6″ of places of B", "cut them by Sun 11 May 2025"):  # fmt: skip
        assert words in lettuce.text
    assert {"2′ 0″", "24″", "46′ 0″", "15″"} <= {words.text for words in lettuce.words if words.size >= 14}
    # What stands and is pegged already is told as that alone: nothing is pegged or planted twice.
    for words in ("peg both edges", "46 pegs", "lettuce begins", "lettuce ends"):
        assert words not in tomatoes.text
    assert tomatoes.text.count("lettuce") == tomatoes.text.count("A Cos lettuce, small stands") == 1
    assert tomatoes.text.count("peg") == tomatoes.text.count("pegs at both edges of the bed mark") == 1


@each_paper
def test_a_heading_with_all_its_parts_is_whole(paper: Paper) -> None:
    sheet = bed_sheets(hand_worked("s3"), paper, name="Alderbight", printed=date(2025, 3, 1))
    for page, begins in zip(
        pages_of(sheet.pdf),
        ("turn 1 of 2 on this ground · planned from Tue 25 Mar 2025", "from Mon 12 May 2025"),
        strict=True,
    ):
        for words in (begins, "version ", "printed Sat 1 Mar 2025 · Alderbight"):
            assert words in page.text
        left, right = (next(one for one in page.words if part in one.text) for part in ("of 2 on this", "bring a "))
        assert left.size == right.size


@each_paper
def test_less_is_told_in_the_heading_rather_than_the_plan_s_name_cut(paper: Paper) -> None:
    sheet = bed_sheets(hand_worked("s3"), paper, name="alderbight-spring.gardenplot", printed=date(2025, 3, 1))
    for page, turn in zip(pages_of(sheet.pdf), ("turn 1 of 2", "turn 2 of 2"), strict=True):
        for words in (turn, "version ", "printed Sat 1 Mar 2025 · alderbight-spring.gardenplot", "of the head stake"):
            assert words in page.text


def test_lengths_to_which_hoops_and_cloth_are_cut_are_large() -> None:
    """S2: hoops of 7 ft 7 1/2 in, cloth of 83 ft, 7 ft 11 1/2 in wide, worked by hand in the scenario."""
    carry = [words for page in printed(hand_worked("s2")) for words in page.words if words.size == 14]
    assert {"7′ 7½″", "83′ 0″", "7′ 11½″"} <= {plain(words.text) for words in carry}


def test_the_heading_says_what_it_is_when_it_was_printed_and_which_tape_to_bring() -> None:
    sheet = bed_sheets(hand_worked("s1"), Paper.A4, name="Spring", printed=date(2025, 3, 1))
    (page,) = pages_of(sheet.pdf)
    for words in ("Tunnel, second bed", "12.00 m × 0.75 m", "Spring", "printed Sat 1 Mar 2025", "from Fri 4 Apr 2025",
                  "tape of 13 m or more", "zero at the inner side of the head stake"):  # fmt: skip
        assert words in page.text


def test_rows_that_are_spoken_of_have_their_numbers_over_their_offsets() -> None:
    first, second = printed(hand_worked("s4"))
    assert re.search(r"in the row .*row 1 2 3 from edge ", first.text)
    assert " row 1 2" not in second.text


def test_rows_that_begin_or_end_unlike_others_have_their_own_first_and_last_plant() -> None:
    first, second = printed(hand_worked("s4"))
    large = [words.text for words in first.words if words.size >= 14]
    for figure in ("0.70", "18.70", "0.90", "18.50"):
        assert figure in large
    assert {"1, 3", "2"} <= {words.text for words in first.words}
    assert "first plant" not in {words.text for words in second.words}


def test_blocks_whose_rows_differ_do_not_share_their_first_and_last_plants() -> None:
    plan = bed_with(*({"from": place, "plants": 13, "pattern": "staggered"} for place in ("0 m", "2 m")))
    (page,) = printed(plan)
    large = [words.text for words in page.words if words.size >= 14]
    for layout in only_bed(plan).layouts:
        for row in layout.rows:
            for at in (row.runs[0].first, row.runs[-1].last):
                assert tape(at, Units.METRIC).number in large


def test_blocks_that_share_their_rows_are_named_once_by_their_letters() -> None:
    page = printed(in_a_row(20))[0]
    assert "A–T Leek, 15 cm in the row" in plain(page.text)


def test_rows_are_measured_from_the_base_line_and_that_is_told_where_it_is() -> None:
    words = (
        "cm from the base line: the thick line, left as seen from the head. Tape and stakes lie along it. "
        "From centre: − left, + right. Foot: at the inner side of its stake."
    )
    assert words in plain(said(hand_worked("s1")))
    wedge = [["0 m", "0 m"], ["6 m", "30 cm"], ["6 m", "80 cm"], ["0 m", "90 cm"]]
    plan = plan_from(
        beds=[{"id": "b1", "name": "Wedge", "outline": wedge}],
        crops=[{"id": "leek", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm"}],
        plantings=[{"id": "p1", "bed": "b1", "crop": "leek", "from": "0 m", "length": "2 m"}],
    )
    assert "Tape and stakes lie along it, also where the bed draws back from it." in plain(said(plan))
    assert "Corners of the bed" in said(plan)
    assert "from edge" not in said(plan)


def test_where_blocks_are_planted_on_several_days_each_has_its_day() -> None:
    (page,) = printed(hand_worked("s1"))
    assert "A 136 plants (3 trays) · 11 Apr" in page.text
    assert "B 45 plants (1 tray) · 4 Apr" in page.text


def test_a_day_that_all_blocks_share_stands_in_the_heading_alone() -> None:
    (page,) = printed(
        bed_with(*({"from": place, "length": "1 m", "in_ground": "2027-04-09"} for place in ("0 m", "2 m")))
    )
    assert "planned from Fri 9 Apr 2027" in page.text
    assert page.text.count("9 Apr") == 1


@each_paper
def test_what_is_carried_for_many_blocks_keeps_its_days(paper: Paper) -> None:
    days = {f"{1 + number} Apr": f"2027-04-{1 + number:02}" for number in range(14)}
    plan = bed_with(
        *(
            {"from": f"{60 * number} cm", "length": "45 cm", "in_ground": day}
            for number, day in enumerate(days.values())
        )
    )
    for day in days:
        assert f" · {day}" in said(plan, paper)


@pytest.mark.parametrize(("length", "least"), [("12 m", "13 m"), ("11.5 m", "12 m"), ("11.98 m", "13 m")])
def test_the_tape_to_bring_reaches_over_the_diagonal(length: str, least: str) -> None:
    assert f"a metric tape of {least} or more" in said(bed_with(length=length))


@pytest.mark.parametrize(
    ("length", "units", "words"),
    [
        ("99 m", "metric", "a metric tape of 100 m or more · zero at the inner side of the head stake"),
        (
            "500 m",
            "metric",
            "a metric tape of 50 m or more · zero at the inner side of the head stake; measure on in legs of 50 m",
        ),
        (
            "420 ft",
            "feet and inches",
            "100 ft or more · zero at the inner side of the head stake; measure on in legs of 100 ft",
        ),
    ],
)
def test_a_bed_that_no_tape_reaches_over_is_measured_in_legs(length: str, units: str, words: str) -> None:
    """Stakes for the legs are carried too: 9 between 0 and 500 m, 4 between 0 and 420 ft."""
    text = plain(said(bed_with(length=length, units=units)))
    assert words in text
    both = {"500 m": "13 stakes (2 at far corners, 9 at legs)", "420 ft": "8 stakes (2 at far corners, 4 at legs)"}
    legs = both.get(length)
    assert ("at legs" in text) is (legs is not None)
    assert legs is None or legs in text
    assert ("both diagonals" in text) is (legs is None)


@pytest.mark.parametrize(
    ("width", "units", "size"),
    [
        ("76.2 cm", "metric", "12.00 m × 0.762 m"),
        ("75 cm", "metric", "12.00 m × 0.75 m"),
        ("30 in", "feet and inches", "2′ 6″"),
        ("30 3/16 in", "feet and inches", "2′ 6 3/16″"),
        ("2.345 ft", "decimal feet", "2.345 ft"),
    ],
)
def test_the_heading_tells_how_large_a_bed_is_exactly(width: str, units: str, size: str) -> None:
    (page,) = printed(bed_with(width=width, units=units))
    title = next(plain(words.text) for words in page.words if words.size == 14 and " × " in words.text)
    assert title.endswith(size)


def test_what_is_carried_stands_on_the_first_of_several_pages_with_all_its_blocks() -> None:
    first, *others = printed(in_a_row(40, length="40 m"))
    assert "83 stakes (2 at far corners)" in first.text
    assert {"A 9 plants", "Z 9 plants", "AN 9 plants"} <= {words.text for words in first.words}
    assert not any("9 plants" in page.text for page in others)


def test_every_block_of_forty_has_its_letter_over_it() -> None:
    page = printed(in_a_row(40, length="40 m"))[0]
    drawn = [words.text for words in page.words if words.size == 9 and re.fullmatch("[A-Z]{1,2}", words.text)]
    assert sorted(drawn) == sorted(one.letter for one in looks(in_a_row(40, length="40 m")).values())


@each_paper
def test_places_that_are_kept_have_their_letter_by_name_and_under_a_ring_in_both_strips(paper: Paper) -> None:
    lettuce, tomatoes = printed(hand_worked("s3"), paper)
    assert "A Cos lettuce, small · ○ B Tomato" in plain(lettuce.text)
    letters = [words for words in lettuce.words if words.text == "B" and words.size < 10]
    assert len(letters) == 2, "under the bed, and under it once more where it is enlarged"
    for letter in letters:
        middle = (letter.box[0] + letter.box[2]) / 2, (letter.box[1] + letter.box[3]) / 2
        above = [mark for mark in lettuce.marks if abs(mark[0] - middle[0]) < 0.1 and mark[1] > middle[1]]
        assert len(above) >= 4, "the lettuces of three rows and the ring"
        assert min(dist(middle, mark) for mark in lettuce.marks) > 9, "it stands upon none of them"
    assert "○" not in tomatoes.text


def test_the_tape_of_a_bed_that_is_not_squared_reaches_to_its_foot() -> None:
    assert "a metric tape of 3 m or more" in said(plan_from(beds=[{"id": "b1", "name": "Round", "diameter": "3 m"}]))


@each_paper
def test_a_block_that_does_not_fit_has_no_stake_beyond_its_bed_and_says_what_lacks(paper: Paper) -> None:
    plan = hand_worked("s5")
    (page,) = printed(plan, paper)
    assert "55′ 0″" not in page.text
    for words in (
        "16′ 0″ of B Coriander do not fit this bed: the crosshatched ground",
        "B Coriander · 16′ 0″ do not fit",
        "B stops, 16′ 0″ do not fit",
        "38′ 10½″",
        "8 stakes (2 at far corners)",
    ):
        assert words in page.text
    assert "B Coriander · 16′ 0″ do not fit" in {words.text for words in page.words if words.size == 12}
    picture = np.asarray(PdfDocument(bed_sheets(plan, paper).pdf)[0].render(scale=1, grayscale=True).to_numpy())
    assert picture[:, -round(10 * mm) :].min() == 255


@pytest.mark.parametrize("units", Units)
def test_the_same_plan_gives_the_same_bytes(units: Units) -> None:
    plan = change_place(hand_worked("s1"), units=units)
    day = date(2025, 3, 1)
    assert bed_sheets(plan, Paper.A4, printed=day) == bed_sheets(plan, Paper.A4, printed=day)
    assert bed_sheets(plan, Paper.A4, printed=day) != bed_sheets(plan, Paper.LETTER, printed=day)


def test_another_plan_has_another_version() -> None:
    plan = hand_worked("s1")
    other = change_bed(plan, "b2", note="stony")
    assert said(plan) != said(other)


@pytest.mark.parametrize("scenario", SCENARIOS)
def test_every_face_is_in_the_file(scenario: str) -> None:
    assert all(words.embedded for page in printed(hand_worked(scenario)) for words in page.words)
    assert b"/Helvetica" not in bed_sheets(hand_worked(scenario), Paper.A4).pdf


NAMES = [
    "Küche & Garten",
    "<b>Tunnel</b> &amp; %s {bed} \\n",
    "Μαρούλι θερμοκηπίου",
    "Теплица № 2, редис",
    "Nhà kính, xà lách và rau muống",
    "Łąka – ½ ″ × 3′",
    "100 % (east)",
]


@pytest.mark.parametrize("name", NAMES)
def test_names_are_printed_as_they_are_typed(name: str) -> None:
    plan = change_bed(bed_with({"from": "1 m", "length": "8 m"}, crop=name), "b1", name=name)
    (page,) = printed(plan)
    texts = [words.text for words in page.words]
    assert name in texts
    assert f"A {name}" in texts
    assert f"A {name} begins" in page.text.replace("\u2009", " ")


def test_a_line_break_in_a_name_is_printed_as_a_space() -> None:
    plan = change_bed(bed_with({"from": "1 m", "length": "8 m"}, crop="Leek\nearly"), "b1", name="East\nfield")
    texts = [words.text for words in printed(plan)[0].words]
    assert "East field" in texts
    assert "A Leek early" in texts


@each_paper
def test_a_name_of_300_letters_is_cut_and_runs_into_nothing(paper: Paper) -> None:
    name = "".join(f"Long name {number} " for number in range(30))[:300]
    plan = change_bed(bed_with({"from": "1 m", "length": "4 m"}, {"from": "5 m"}, crop=name), "b1", name=name)
    pages = printed(plan, paper)
    assert any(words.text.endswith("…") and words.text.startswith("Long name 0 Long") for words in pages[0].words)
    assert_nothing_printed_over(plan, paper)
    for reading in ("1.00", "5.00", "12.00"):
        assert reading in {words.text for words in pages[0].words}


@pytest.mark.parametrize("crop", ["Leek", "Head lettuce", "Winter purslane, second sowing"])
@pytest.mark.parametrize("units", ["metric", "feet and inches", "decimal feet"])
@each_paper
def test_first_and_last_plant_are_not_cut_off_where_blocks_meet(crop: str, units: str, paper: Paper) -> None:
    plan = bed_with({"from": "1.5 m", "length": "3 m"}, {"from": "4.5 m", "length": "3 m"}, crop=crop, units=units)
    firsts = {
        "metric": ("1.58", "4.43", "4.58", "7.43"),
        "feet and inches": ("5′ 2″", "14′ 6¼″", "15′ 0″", "24′ 4¼″"),
        "decimal feet": ("5.17", "14.52", "15.01", "24.36"),
    }
    (page,) = printed(plan, paper)
    large = [words.text for words in page.words if words.size == 14]
    assert [one for one in large if one in firsts[units]] == list(firsts[units])
    assert {"last plant", "first plant"} <= {words.text for words in page.words}


@pytest.mark.parametrize("scenario", SCENARIOS)
@each_paper
def test_no_words_of_the_hand_worked_beds_are_printed_over_others(scenario: str, paper: Paper) -> None:
    assert_nothing_printed_over(hand_worked(scenario), paper)


@pytest.mark.parametrize(
    "plan",
    [
        bed_with(),
        bed_with({"from": "0 m", "length": "30 cm"}),
        bed_with({"from": "11.7 m", "length": "30 cm"}),
        bed_with({"from": "0 m"}),
        in_a_row(12),
        in_a_row(40, length="40 m"),
        bed_with({"from": "1 m", "length": "2 m", "pattern": "broadcast"}),
        bed_with({"from": "1 m", "length": "8 m", "pattern": "staggered"}),
        bed_with({"from": "1 m", "length": "8 m"}, width="4 m"),
        bed_with({"from": "1 m", "length": "8 m"}, {"from": "2 m", "length": "8 m"}),
        bed_with({"from": "1 cm"}, length="30 cm"),
        bed_with(length="1 cm"),
        bed_with({"from": "10 m", "length": "480 m"}, length="500 m"),
        bed_with({"from": "0 ft"}, units="decimal feet", length="100 ft"),
    ],
    ids=[
        "empty",
        "at the head",
        "at the foot",
        "full",
        "many",
        "forty",
        "sown",
        "staggered",
        "wide",
        "overlap",
        "tiny",
        "1 cm",
        "500 m",
        "decimal feet",
    ],
)
@each_paper
def test_no_words_are_printed_over_others(plan: Plan, paper: Paper) -> None:
    assert_nothing_printed_over(plan, paper)


@settings(max_examples=20)
@given(sheets())
def test_no_words_of_any_bed_are_printed_over_others(sheet: Sheet) -> None:
    assert_nothing_printed_over(sheet.plan, sheet.paper)


@each_paper
def test_a_long_plan_name_does_not_reach_the_tape_to_bring(paper: Paper) -> None:
    plan = change_place(hand_worked("s2"), name="Lower Greyshingle, the four beds beyond the old orchard wall")
    assert_nothing_printed_over(plan, paper)


def test_a_crop_may_have_a_dot_in_its_name() -> None:
    plan = change_crop(hand_worked("s1"), "pak-choi", name="Pak choi · green")
    text = said(plan)
    assert "A Pak choi · green begins" in text
    assert "0.40" in text


def test_a_bed_without_plantings_shows_its_whole_length_as_left() -> None:
    (page,) = printed(bed_with(head_margin="30 cm"))
    assert "11.70 m left" in page.text
    assert "4 stakes" not in page.text
    assert "5 stakes (2 at far corners)" in page.text


def test_a_tiny_bed_still_has_its_stakes() -> None:
    (page,) = printed(bed_with(length="1 cm", width="1 cm"))
    assert {"0.00", "0.01"} <= {words.text for words in page.words}


def test_the_offsets_of_many_rows_go_on_in_the_next_line() -> None:
    (page,) = printed(bed_with({"from": "1 m", "length": "2 m"}, width="2.5 m"))
    texts = [words.text for words in page.words]
    offsets = [f"{12.5 + 25 * row:g}" for row in range(10)]
    assert all(offset in texts for offset in offsets)
    assert texts.count("from edge") >= 2


def assert_nothing_printed_over(plan: Plan, paper: Paper) -> None:
    """Fail unless every line of words has its place to itself."""
    for page in printed(plan, paper):
        for one, other in combinations(page.words, 2):
            assert not lies_over(one, other), f"“{one.text}” and “{other.text}”"


def lies_over(one: Words, other: Words) -> bool:
    """Whether two lines of words share more than half a point of paper."""
    left, bottom = max(one.box[0], other.box[0]), max(one.box[1], other.box[1])
    right, top = min(one.box[2], other.box[2]), min(one.box[3], other.box[3])
    return right - left > 0.5 and top - bottom > 0.5


@each_paper
def test_the_sheet_tells_what_is_planned_from_what_is_in_the_ground(paper: Paper) -> None:
    plan = hand_worked("s1")
    (page,) = printed(plan, paper)
    assert "planned from" in page.text
    first, *others = [one.id for one in plan.plantings]
    plan = record(record(plan, first, "set_out", date(2025, 4, 7)), first, "planted", 130)
    (page,) = printed(plan, paper)
    assert "planned from" in page.text
    assert "A 130 stand since 7 Apr" in page.text
    for one in others:
        plan = record(plan, one, "set_out", date(2025, 4, 8))
    (page,) = printed(plan, paper)
    assert "in the ground since Mon 7 Apr 2025" in page.text
    assert "trays" not in page.text


def test_which_end_is_the_head_is_told_or_asked_for() -> None:
    ground = [{"bed": "b1", "x": "1 m", "y": "1 m"}]
    beds = [{"id": "b1", "name": "A", "length": "9 m", "width": "1 m"}]
    assert "head at" in said(plan_from({}, beds=beds, ground=ground))
    known = said(plan_from({"north": "0°"}, beds=beds, ground=ground))
    assert "head in the west" in known
    assert "head at" not in known
