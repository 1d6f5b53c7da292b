"""Labels: each block and each tray once, all words inside their label, the first ones left free, sizes that fit."""

from datetime import date
from functools import cache
from pathlib import Path

import pytest
from attrs import evolve, frozen
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.__main__ import main
from gardenplot.drawing.label_words import LabelWords, plant_labels, tray_labels
from gardenplot.drawing.letters import looks
from gardenplot.errors import PlanError
from gardenplot.files import sample
from gardenplot.layout import lay_out_plan
from gardenplot.layout.bed import grown_of
from gardenplot.plan import Establish, Plan, crop_of, planting_of
from gardenplot.plan.edits import change_bed, change_crop
from gardenplot.plan.file import read_plan
from gardenplot.sheets.book import NothingToPrintError
from gardenplot.sheets.choices import Choices, Kind, Labelled
from gardenplot.sheets.label_sheet import MOST_LABELS
from gardenplot.sheets.label_sizes import LABEL_SIZES, STAKES, LabelSize, label_size
from gardenplot.sheets.paper import MISSING, Paper
from gardenplot.supplies import raised_for
from gardenplot.units import parse_share
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.layout.ground import Fields
from tests.plans import plans
from tests.sheets.made import made
from tests.sheets.patterned import L_SHAPE, PLAIN, TWIN, bed_of
from tests.sheets.pdf_pages import POINT_PER_MM, Box, Page, Words, pages_of, plain
from tests.sheets.test_lists import LONG, ODD

DAY = date(2027, 2, 26)
SCENARIOS = Path(__file__).parents[1] / "scenarios"
NEAR = 0.05 * POINT_PER_MM
"""A twentieth of a millimetre in points."""
INCH = 25.4
PAPERS = {Paper.A4: (210.0, 297.0), Paper.LETTER: (8.5 * INCH, 11 * INCH)}
"""Millimetres upright: ISO 216; ANSI/ASME Y14.1, size A."""
FOREIGN = ["Μαρούλι", "Капуста", "Rau diếp xoăn", "<b>Chard</b> & %s {0}"]


@frozen
class Sheet:
    """A sheet of labels as it is measured with a rule, in mm: sides, how many, first corner, from one to the next."""

    paper: Paper
    sides: tuple[float, float]
    count: tuple[int, int]
    first: tuple[float, float]
    steps: tuple[float, float]

    def boxes(self) -> list[Box]:
        """The labels row by row, in points from the lower left of the page."""
        height = PAPERS[self.paper][1]
        found = []
        for place in range(self.count[0] * self.count[1]):
            row, column = divmod(place, self.count[0])
            left, top = self.first[0] + column * self.steps[0], self.first[1] + row * self.steps[1]
            sides = left, height - top - self.sides[1], left + self.sides[0], height - top
            found.append(tuple(side * POINT_PER_MM for side in sides))
        return found  # type: ignore[return-value]  # four sides each


SHEETS = {
    "25 x 200 mm, cut from plain paper": Sheet(Paper.A4, (200, 25), (1, 11), (5, 11), (200, 25)),
    "20 x 150 mm, cut from plain paper": Sheet(Paper.A4, (150, 20), (1, 13), (30, 18.5), (150, 20)),
    "1 x 7 1/2 in, cut from plain paper": Sheet(
        Paper.LETTER, (7.5 * INCH, INCH), (1, 10), (0.5 * INCH, 0.5 * INCH), (7.5 * INCH, INCH)
    ),
    "70 x 37 mm, 3 x 8 on A4": Sheet(Paper.A4, (70, 37), (3, 8), (0, 0.5), (70, 37)),
    "63.5 x 38.1 mm, 3 x 7 on A4": Sheet(Paper.A4, (63.5, 38.1), (3, 7), (7.25, 15.15), (66, 38.1)),
    "99.1 x 67.7 mm, 2 x 4 on A4": Sheet(Paper.A4, (99.1, 67.7), (2, 4), (4.65, 13.1), (101.6, 67.7)),
    "105 x 57 mm, 2 x 5 on A4": Sheet(Paper.A4, (105, 57), (2, 5), (0, 6), (105, 57)),
    "2 5/8 x 1 in, 3 x 10 on Letter": Sheet(
        Paper.LETTER, (2.625 * INCH, INCH), (3, 10), (0.1875 * INCH, 0.5 * INCH), (2.75 * INCH, INCH)
    ),
    "4 x 2 in, 2 x 5 on Letter": Sheet(
        Paper.LETTER, (4 * INCH, 2 * INCH), (2, 5), (0.15625 * INCH, 0.5 * INCH), (4.1875 * INCH, 2 * INCH)
    ),
}
"""Sizes and gaps from memory; the margins by hand: half of what the labels and their gaps leave of the paper."""
each_size = pytest.mark.parametrize("name", SHEETS)


def chosen(name: str, begin: int = 1, labelled: Labelled = Labelled.BOTH) -> Choices:
    """Labels of a size by its name, from one of the first sheet on."""
    return Choices(label=label_size(name), labels_from=begin, labelled=labelled, slip=False)


def pages(plan: Plan, name: str, begin: int = 1, labelled: Labelled = Labelled.BOTH) -> tuple[Page, ...]:
    """The pages of a plan's labels, read back."""
    paper = SHEETS[name].paper if name in SHEETS else Paper.A4
    return pages_of(made(plan, paper, Kind.LABELS, chosen(name, begin, labelled), day=DAY).pdf)


def all_labels(plan: Plan) -> list[LabelWords]:
    """The labels of a plan in the order in which they are printed."""
    return [*plant_labels(plan), *tray_labels(plan)]


@cache
def example() -> Plan:
    """The plan that the program opens with at first."""
    return read_plan(sample("kestrel-howe.gardenplot")).plan


def by_label(page: Page, sheet: Sheet) -> list[list[Words]]:
    """The words of each label of a page, all of them inside their label; those of the lower margin are left out."""
    boxes = sheet.boxes()
    found: list[list[Words]] = [[] for _box in boxes]
    lowest = min(box[1] for box in boxes)
    for words in page.words:
        left, bottom, right, top = words.box
        if top < lowest and words.size == 8 and "print at 100 %" in words.text:
            continue
        middle = (left + right) / 2, (bottom + top) / 2
        inside = [
            number for number, box in enumerate(boxes)
            if box[0] <= middle[0] <= box[2] and box[1] <= middle[1] <= box[3]
        ]  # fmt: skip
        assert inside, (words.text, words.box)
        box = boxes[inside[0]]
        assert left >= box[0] - NEAR
        assert bottom >= box[1] - NEAR
        assert right <= box[2] + NEAR
        assert top <= box[3] + NEAR
        assert words.embedded
        assert words.size >= 8
        found[inside[0]].append(words)
    return found


def test_the_sizes_are_those_that_are_measured_here() -> None:
    assert [size.name for size in LABEL_SIZES] == [*SHEETS]


@each_size
def test_every_label_lies_where_its_sheet_has_it(name: str) -> None:
    labels, sheet = all_labels(example()), SHEETS[name]
    read = [words for page in pages(example(), name) for words in by_label(page, sheet)]
    for label, words in zip(labels, read, strict=False):
        assert words[0].text == label.letter
        assert words[1].text == plain(label.crop)
        assert plain(label.lines[0]) in {one.text for one in words}
    assert not any(read[len(labels) :])
    assert len(read) >= len(labels)


@pytest.mark.parametrize("name", [name for name in SHEETS if "cut from" in name])
def test_cut_lines_are_true(name: str) -> None:
    sheet = SHEETS[name]
    (page, *_others) = pages(example(), name)
    frames = [path.box for path in page.paths if path.closed]
    for frame, box in zip(frames, sheet.boxes(), strict=False):
        assert frame == pytest.approx(box, abs=NEAR)
    assert len(frames) == min(len(all_labels(example())), len(sheet.boxes()))


@pytest.mark.parametrize("name", [name for name in SHEETS if "cut from" not in name])
def test_nothing_is_drawn_on_labels_that_come_cut(name: str) -> None:
    assert not any(page.paths for page in pages(example(), name))


@settings(max_examples=max(20, settings().max_examples // 20), deadline=None)
@given(plans(), st.sampled_from([*SHEETS]))
def test_the_words_of_any_plan_lie_inside_their_labels(plan: Plan, name: str) -> None:
    labels = all_labels(plan)
    if not labels:
        with pytest.raises(NothingToPrintError):
            pages(plan, name)
        return
    if len(labels) > MOST_LABELS:
        with pytest.raises(PlanError, match="too many"):
            pages(plan, name)
        return
    read = [words for page in pages(plan, name) for words in by_label(page, SHEETS[name])]
    assert [words[0].text for words in read if words] == [label.letter for label in labels]


@settings(max_examples=max(20, settings().max_examples // 20), deadline=None)
@given(plans())
def test_there_is_a_label_for_each_block_and_each_tray(plan: Plan) -> None:
    layouts = {layout.planting: layout for laid in lay_out_plan(plan) for layout in laid.without_trays.layouts}
    look = looks(plan)
    assert sorted(label.planting for label in plant_labels(plan)) == sorted(layouts)
    trays = [label.planting for label in tray_labels(plan)]
    for planting, layout in layouts.items():
        crop = crop_of(plan, layout.crop)
        count = raised_for(grown_of(plan, planting_of(plan, planting)), layout).trays
        if crop.establish is Establish.TRANSPLANT:
            assert trays.count(planting) == (1 if count is None else count)
        else:
            assert planting not in trays
    assert all(label.letter == look[label.planting].letter for label in all_labels(plan))


@each_size
@pytest.mark.parametrize("begin", [2, 5, 8])
def test_labels_that_are_gone_are_left_free(name: str, begin: int) -> None:
    labels, sheet = all_labels(example()), SHEETS[name]
    read = [words for page in pages(example(), name, begin) for words in by_label(page, sheet)]
    assert not any(read[: begin - 1])
    assert [words[0].text for words in read if words] == [label.letter for label in labels]
    assert read[begin - 1][0].text == labels[0].letter


@pytest.mark.parametrize("begin", [0, -3, 25])
def test_a_first_label_that_no_sheet_has_is_refused(begin: int) -> None:
    with pytest.raises(PlanError, match="one of 1 to 24"):
        pages(example(), "70 x 37 mm, 3 x 8 on A4", begin)


def test_labels_of_other_paper_are_refused() -> None:
    with pytest.raises(PlanError, match="do not come on Letter"):
        made(example(), Paper.LETTER, Kind.LABELS, chosen("70 x 37 mm, 3 x 8 on A4"))


BLOCKS = {
    "s1": [("A", "Pak choi", "stakes 1, 2 · 0.30 – 7.10 m", "4 × 34 = 136 · 20 × 20 cm", "set out Fri 11 Apr 2025"),
           ("B", "Kohlrabi", "stakes 3, 4 · 7.30 – 11.05 m", "3 × 15 = 45 · 25 × 25 cm", "set out Fri 4 Apr 2025")],
    "s2": [("A", "Broccoli", "stakes 1, 2 · 2′ 0″ – 77′ 0″", "2 × 50 = 100 · 18″ × 24″", "set out Wed 7 May 2025"),
           ("B", "Beets", "stakes 3, 4 · 78′ 0″ – 93′ 9″", "4 × 63 = 252 · 3″ × 12″", "sown Wed 30 Apr 2025")],
    "s3": [("A", "Cos lettuce, small", "stakes 1, 2 · 1′ 0″ – 47′ 0″", "3 × 69 = 207", "set out Tue 25 Mar 2025"),
           ("B", "Tomato", "stakes 1, 2 · 1′ 0″ – 47′ 0″", "23 plants · 24″ apart", "set out Mon 12 May 2025")],
    "s4": [("A", "Summer cabbage", "stakes 1, 2 · 0.50 – 18.90 m", "2 × 46 + 45 = 137", "set out Wed 3 May 2028"),
           ("B", "Leeks", "stakes 1, 2 · 0.50 – 12.35 m", "4 × 79 = 316 · 15 × 30 cm", "set out Wed 3 May 2028")],
    "s5": [("A", "Chinese cabbage", "1′ 0″ – 37′ 3″", "2 × 29 = 58", "set out Thu 1 May 2025")],
    "s6": [("A", "Bulb fennel", "stakes 1, 2 · 0.15 – 14.15 m", "3 × 56 = 168 · 25 × 30 cm",
            "set out Mon 12 May 2025")],
}  # fmt: skip
TRAYS = {
    "s1": [("B", "tray 1 of 1 · 58 cells", "sown Fri 7 Mar 2025", "harden 28 Mar · set out 4 Apr"),
           ("A", "tray 1 of 3 · 84 cells", "sown Tue 18 Mar 2025", "harden 4 Apr · set out 11 Apr"),
           ("A", "tray 2 of 3 · 84 cells"), ("A", "tray 3 of 3 · 7 cells")],
    "s2": [("A", "tray 1 of 2 · 128 cells", "sown Wed 2 Apr 2025", "harden 29 Apr · set out 7 May"),
           ("A", "tray 2 of 2 · 3 cells")],
    "s4": [("B", "tray 1 of 2 · 240 cells", "sown Fri 18 Feb 2028"), ("B", "tray 2 of 2 · 195 cells"),
           ("A", "tray 1 of 3 · 60 cells", "harden 25 Apr · set out 3 May"), ("A", "tray 2 of 3 · 60 cells"),
           ("A", "tray 3 of 3 · 52 cells", "sown Wed 22 Mar 2028")],
    "s6": [("A", "tray 1 of 2 · 128 cells", "sown Mon 7 Apr 2025", "harden 5 May · set out 12 May"),
           ("A", "tray 2 of 2 · 110 cells")],
}  # fmt: skip
"""From the hand-worked scenarios; the last tray has the cells that the full ones leave."""


@pytest.mark.parametrize(
    ("planting", "words"),
    [
        (TWIN | {"row_spacing": "90 cm"}, "20 × 20 cm"),
        (TWIN, "20 × 20 cm, pairs 60 cm apart"),
        ({}, "20 × 40 cm"),
    ],
)
def test_a_label_tells_the_spacing_of_pairs_apart_from_that_inside_them(planting: Fields, words: str) -> None:
    """With one pair there is no distance of pairs."""
    (label,) = plant_labels(bed_of(PLAIN, planting))
    assert plain(label.lines[1]).partition(" · ")[2] == words


def test_a_label_names_the_stakes_of_its_block_from_the_first_to_the_last() -> None:
    (label,) = plant_labels(bed_of(L_SHAPE))
    assert label.lines[0].startswith("stakes 0–")


@pytest.mark.parametrize(
    ("scenario", "labelled", "expected"),
    [
        *((name, Labelled.BLOCKS, BLOCKS[name]) for name in BLOCKS),
        *((name, Labelled.TRAYS, TRAYS[name]) for name in TRAYS),
    ],
)
def test_the_hand_worked_blocks_and_trays_have_their_labels(
    scenario: str, labelled: Labelled, expected: list[tuple[str, ...]]
) -> None:
    name = "99.1 x 67.7 mm, 2 x 4 on A4"
    (page,) = pages(hand_worked(scenario), name, labelled=labelled)
    read = [" ".join(one.text for one in words) for words in by_label(page, SHEETS[name])]
    for words, parts in zip(read, expected, strict=False):
        for part in parts:
            assert plain(part) in words


def test_where_trays_are_not_known_their_number_is_left_to_write_in() -> None:
    plan = hand_worked("s3")
    (label,) = (label for label in tray_labels(plan) if label.crop == "Tomato")
    assert label.lines[0].split() == ["tray", "____", "of", "____"]


@pytest.mark.parametrize("crop", [LONG, ODD, "Ω" * 300, "Капуста " * 40, *FOREIGN])
@each_size
def test_names_of_any_kind_are_printed_as_they_were_typed_or_cut(crop: str, name: str) -> None:
    plan = hand_worked("s1")
    plan = change_crop(change_bed(plan, plan.beds[0].id, name=crop), plan.crops[0].id, name=crop)
    sheet = SHEETS[name]
    read = [words for page in pages(plan, name) for words in by_label(page, sheet) if words]
    for words in read:
        letter, first = words[0], words[1]
        assert letter.size > 24
        assert first.size >= 12
    if crop in FOREIGN:
        assert any(plain(crop) in " ".join(one.text for one in words) for words in read)


def test_signs_without_a_letter_are_replaced_and_that_is_said_below_the_labels() -> None:
    plan = change_crop(hand_worked("s1"), hand_worked("s1").crops[0].id, name="Salad 🌱")
    (page,) = pages(plan, STAKES.name)
    assert f"Salad {MISSING}" in page.text
    assert f"{MISSING} stands for a sign without a letter" in page.text
    assert "stands for a sign" not in pages(hand_worked("s1"), STAKES.name)[0].text


def test_every_page_says_of_which_plan_it_is_where_the_paper_has_room() -> None:
    for page in pages(example(), STAKES.name):
        assert "print at 100 %" in page.text
        assert "printed Fri 26 Feb 2027" in page.text
        assert "version " in page.text


@pytest.mark.parametrize("begin", [1, 5, 24])
def test_where_the_paper_has_no_room_the_first_label_of_each_sheet_says_of_which_plan_it_is(begin: int) -> None:
    name = "70 x 37 mm, 3 x 8 on A4"
    found = pages_of(made(example(), Paper.A4, Kind.LABELS, evolve(chosen(name, begin), slip=True), day=DAY).pdf)
    count = len(all_labels(example()))
    labels = []
    for number, page in enumerate(found):
        first = 0 if number else begin - 1
        read = by_label(page, SHEETS[name])
        said = " ".join(words.text for words in read[first])
        assert not any(read[:first])
        for words in ("Kestrel Howe", "version ", "printed Fri 26 Feb 2027", "print at 100 %"):
            assert words in said, words
        assert f"page {number + 1} of {len(found)}" in page.text
        labels += [words for words in read[first + 1 :] if words]
    assert len(labels) == count


def test_the_same_plan_and_day_give_the_same_bytes() -> None:
    first, second = (made(example(), Paper.A4, Kind.LABELS, day=DAY).pdf for _turn in range(2))
    assert first == second


def test_where_nothing_is_planted_there_are_no_labels() -> None:
    with pytest.raises(NothingToPrintError, match="no labels"):
        made(Plan(), Paper.A4, Kind.LABELS)
    bed = plan_from(beds=[{"id": "b", "name": "Bed", "length": "3 m", "width": "1 m"}])
    with pytest.raises(NothingToPrintError):
        made(bed, Paper.A4, Kind.LABELS)


def test_more_labels_than_anybody_prints_are_refused() -> None:
    plan = hand_worked("s1")
    # 157 plants to raise of seed of which one in a hundred comes up, each in a tray of its own: 15,700 trays.
    crops = (evolve(plan.crops[0], tray_cells=1, germination=parse_share("1 %")), *plan.crops[1:])
    big = evolve(plan, crops=crops)
    with pytest.raises(PlanError, match="too many"):
        made(big, Paper.A4, Kind.LABELS)


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("50 x 25 mm, 4 x 10 on A4", Sheet(Paper.A4, (50, 25), (4, 10), (5, 23.5), (50, 25))),
        ("4 cm × 2.5 cm, 4 x 10 on letter, margins 1 cm x 5 mm, gaps 2 mm x 1 mm",
         Sheet(Paper.LETTER, (40, 25), (4, 10), (10, 5), (42, 26))),
        ("3 1/2 x 1 in, 2 x 8 on Letter, gaps 1/4 in x 1/8 in",
         Sheet(Paper.LETTER, (3.5 * INCH, INCH), (2, 8), (0.625 * INCH, 1.0625 * INCH), (3.75 * INCH, 1.125 * INCH))),
        ("30 x 180 mm", Sheet(Paper.A4, (180, 30), (1, 9), (15, 13.5), (180, 30))),
    ],
)  # fmt: skip
def test_a_size_of_the_growers_own_lies_as_it_was_typed(typed: str, expected: Sheet) -> None:
    choices = Choices(label=label_size(typed))
    read = pages_of(made(example(), expected.paper, Kind.LABELS, choices, day=DAY).pdf)
    found = [words for page in read for words in by_label(page, expected)]
    assert [words[0].text for words in found if words] == [label.letter for label in all_labels(example())]


@pytest.mark.parametrize(
    "typed",
    ["", "large", "70 mm", "70 x 37", "0 x 37 mm, 3 x 8 on A4", "70 x 37 mm, 3 x 8", "70 x 37 mm, 3 x 8 on A5",
     "70 x 37 mm, 0 x 8 on A4", "70 x 37 mm, 4 x 8 on A4", "70 x 37 mm, 3 x 9 on A4", "5 x 37 mm, 3 x 8 on A4",
     "70 x 37 mm, 3 x 8 on A4, margins 10 mm x 0 mm", "70 x 37 mm, 3 x 8 on A4, gaps 1 mm x 0 mm", "300 x 25 mm",
     "25 x 25 mm, 99999999999 x 1 on A4", "-70 x 37 mm, 3 x 8 on A4", "x" * 5000],
)  # fmt: skip
def test_what_is_no_size_or_does_not_fit_is_refused(typed: str) -> None:
    with pytest.raises(PlanError, match="labels"):
        label_size(typed)


def test_the_command_prints_them(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    plan, out, name = SCENARIOS / "s1.gardenplot", tmp_path / "labels.pdf", "70 x 37 mm, 3 x 8 on A4"
    asked = ["sheet", str(plan), str(out), "--what", "labels", "--labels-from", "3", "--labelled", "trays"]
    asked += ["--no-slip", "--label"]
    assert main([*asked, name]) == 0
    (page,) = pages_of(out.read_bytes())
    read = by_label(page, SHEETS[name])
    assert [words[0].text for words in read if words] == ["B", "A", "A", "A"]
    assert not any(read[:2])
    out.unlink()
    assert main([*asked, "large"]) == 2
    assert "“large” is no size of labels" in capsys.readouterr().err
    assert not out.exists()


@settings(deadline=None)
@given(
    st.integers(10, 210), st.integers(10, 297), st.integers(1, 12), st.integers(1, 20), st.sampled_from(Paper),
    st.integers(0, 4),
)  # fmt: skip
def test_any_size_that_is_taken_fits_its_paper(
    width: int, height: int, columns: int, rows: int, paper: Paper, gap: int
) -> None:
    text = f"{width} x {height} mm, {columns} x {rows} on {paper.value}, gaps {gap} mm x {gap} mm"
    taken = columns * width + (columns - 1) * gap, rows * height + (rows - 1) * gap
    if taken[0] > PAPERS[paper][0] or taken[1] > PAPERS[paper][1]:
        with pytest.raises(PlanError, match="do not fit"):
            label_size(text)
        return
    size: LabelSize = label_size(text)
    assert (size.columns, size.rows) == (columns, rows)


@pytest.mark.parametrize("size", [STAKES.name, "70 x 37 mm, 3 x 8 on A4"])
def test_all_labels_of_a_print_have_the_same_sizes_on_the_same_lines(size: str) -> None:
    """S4: long names beside short ones, in columns that the printer's margin makes narrower than the others."""
    for page in pages_of(made(hand_worked("s4"), Paper.A4, Kind.LABELS, Choices(label=label_size(size))).pdf):
        crops = [words for words in page.words if words.text in ("Summer cabbage", "Leeks")]
        assert len(crops) > 3
        assert len({words.size for words in crops}) == 1
        others = {
            words.size for words in page.words if words.text.startswith(("tray ", "stakes ", "60 cells", "set out"))
        }
        assert len(others) == 1
