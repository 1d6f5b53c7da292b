"""Every stake and every corner of the sheet's tables is found in its drawing, whatever room there is."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.sheets.paper import Paper
from gardenplot.sheets.stake_row import spread
from tests.sheets.patterned import PLAIN, ROUND, bed_of
from tests.sheets.pdf_pages import POINT_PER_MM, Page, Words
from tests.sheets.printed import in_a_row, printed

each_paper = pytest.mark.parametrize("paper", Paper)
CROWDED = {
    "round": bed_of(ROUND, in_row="20 cm", row_spacing="20 cm"),
    "small round": bed_of({"diameter": "1.3 m"}, in_row="10 cm", row_spacing="10 cm", edge="5 cm"),
    "forty blocks": in_a_row(40, length="40 m"),
    "plain": bed_of(PLAIN),
}


def numbers_drawn(page: Page) -> list[Words]:
    """The numbers over the drawing."""
    tape = next(words for words in page.words if words.text == "0 HEAD")
    return [words for words in page.words if words.size == 9 and words.text.isdigit() and words.box[1] > tape.box[3]]


@each_paper
@pytest.mark.parametrize("name", CROWDED)
def test_every_stake_of_the_table_has_its_number_in_the_drawing(name: str, paper: Paper) -> None:
    pages = printed(CROWDED[name], paper)
    told = [words.text for page in pages for words in page.words if words.size == 17 and words.text[-1].isdigit()]
    drawn = numbers_drawn(pages[0])
    assert [words.text for words in sorted(drawn, key=lambda words: words.box[0])] == [
        str(number) for number in range(len(told))
    ]
    for one in drawn:
        assert not any(overlap(one, other) for other in drawn if other is not one)


def overlap(one: Words, other: Words) -> bool:
    """Whether words stand upon each other."""
    return (
        one.box[0] < other.box[2] and other.box[0] < one.box[2]
        and one.box[1] < other.box[3] and other.box[1] < one.box[3]
    )  # fmt: skip


def test_a_line_leads_from_each_number_to_its_very_reading() -> None:
    (page,) = printed(CROWDED["round"])
    along = POINT_PER_MM / page.ratio
    readings = [float(words.text) * 1000 for words in page.words if words.size == 17 and words.text[-1].isdigit()]
    drawn = sorted(numbers_drawn(page), key=lambda words: words.box[0])
    level = (path.box for path in page.paths if len(path.corners) == 2 and is_base(path.box, along))
    line = max(level, key=lambda box: box[1])
    for words, reading in zip(drawn, readings, strict=True):
        middle, at = (words.box[0] + words.box[2]) / 2, line[0] + reading * along
        assert any(
            abs(path.corners[0][0] - at) < 6 * along and abs(path.corners[-1][0] - middle) < 0.6
            for path in page.paths if len(path.corners) == 2
        )  # fmt: skip


def is_base(box: tuple[float, float, float, float], along: float) -> bool:
    """Whether a line is as long as the bed and level."""
    return abs(box[2] - box[0] - 3000 * along) < 0.1 and box[3] - box[1] < 0.01


def test_stakes_that_are_far_too_many_are_numbered_by_turns_and_the_sheet_says_so() -> None:
    page = printed(in_a_row(160, length="100 m"))[0]
    drawn = sorted(int(words.text) for words in numbers_drawn(page))
    steps = {after - one for one, after in pairwise(drawn)}
    assert len(steps) == 1
    assert f"one stake of {steps.pop()} is numbered" in page.text


@given(st.lists(st.floats(0, 500), min_size=1, max_size=30), st.floats(1, 20))
def test_numbers_keep_their_order_their_distance_and_their_ends(wanted: list[float], step: float) -> None:
    wanted.sort()
    steps = [step] * (len(wanted) - 1)
    found = spread(wanted, steps, -100, 700)
    assert all(after - one >= step - 1e-6 for one, after in pairwise(found))
    assert found[0] >= -100 - 1e-6
    assert found[-1] <= 700 + 1e-6
    if all(after - one >= step for one, after in pairwise(wanted)):
        assert found == pytest.approx(wanted)
