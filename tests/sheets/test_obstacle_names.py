"""What stands in a bed has its name beside it in the drawings, and the centre of rings has a cross."""

from math import dist

import pytest

from gardenplot.plan import Plan
from gardenplot.sheets.choices import Choices, Kind
from gardenplot.sheets.paper import Paper
from gardenplot.units import MM
from tests.drawing.hand_worked import only_bed, plan_from
from tests.layout.ground import Fields
from tests.sheets.made import made
from tests.sheets.patterned import RINGS, ROUND, bed_of
from tests.sheets.pdf_pages import POINT_PER_MM, Page, Words, pages_of
from tests.sheets.printed import printed

TAP: Fields = {"name": "tap", "x": "3 m", "y": "60 cm", "diameter": "10 cm", "keep_clear": "15 cm"}
POST: Fields = {"name": "post", "x": "5 m", "y": "40 cm", "length": "30 cm", "width": "20 cm"}


def with_obstacles(in_row: str, rows: str) -> Plan:
    """A bed with a tap and a post in it, all planted."""
    return plan_from(
        {"units": "metric"},
        beds=[{"id": "b1", "name": "Bed", "length": "8 m", "width": "1.2 m", "obstacles": [TAP, POST]}],
        crops=[{"id": "kale", "name": "Kale", "in_row": in_row, "row_spacing": rows}],
        plantings=[{"id": "p1", "bed": "b1", "crop": "kale", "from": "0 m", "length": "8 m"}],
    )


def drawn(plan: Plan, scale: int | None = 10) -> tuple[Page, ...]:
    """The pages of the drawing over pages."""
    return pages_of(made(plan, Paper.A4, Kind.DRAWING, Choices(scale=scale)).pdf)


def names_on(page: Page) -> list[Words]:
    """The names of the tap and of the post in the drawing."""
    return [words for words in page.words if words.text in ("tap", "post")]


def stands_upon(words: Words, page: Page) -> bool:
    """Whether a name stands upon the middle of a plant."""
    left, bottom, right, top = words.box
    return any(left <= x <= right and bottom <= y <= top for x, y in page.marks)


@pytest.mark.parametrize(("in_row", "rows"), [("30 cm", "30 cm"), ("12 cm", "20 cm"), ("25 cm", "40 cm")])
def test_on_pages_each_obstacle_is_named_once_beside_it_and_upon_no_plant(in_row: str, rows: str) -> None:
    plan = with_obstacles(in_row, rows)
    bed, pages = only_bed(plan).bed, drawn(with_obstacles(in_row, rows))
    named = [(words, page) for page in pages for words in names_on(page)]
    assert sorted(words.text for words, _page in named) == ["post", "tap"]
    assert len(pages) > 1
    for words, page in named:
        assert words.size == 10
        assert not stands_upon(words, page)
        obstacle = next(one for one in bed.obstacles if one.name == words.text)
        middle = (words.box[0] + words.box[2]) / 2, (words.box[1] + words.box[3]) / 2
        size = (obstacle.diameter or obstacle.length or bed.length).nm / MM / 10 * POINT_PER_MM
        beside = [
            path.box for path in page.paths
            if path.closed and abs(path.size[0] - size) < 0.1
            and dist(((path.box[0] + path.box[2]) / 2, (path.box[1] + path.box[3]) / 2), middle) < size / 2 + 40
        ]  # fmt: skip
        assert beside


def test_a_bed_sheet_names_obstacles_where_plants_leave_room_and_else_not() -> None:
    (page,) = printed(with_obstacles("30 cm", "60 cm"))
    assert sorted(words.text for words in names_on(page)) == ["post", "tap"]
    assert not any(stands_upon(words, page) for words in names_on(page))
    (page,) = printed(with_obstacles("6 cm", "8 cm"))
    assert not names_on(page)


def crossed_at(page: Page, at: tuple[float, float]) -> int:
    """How many lines of 12 points have their middle there."""
    return sum(
        max(path.size) == pytest.approx(12, abs=0.1)
        and dist(((path.box[0] + path.box[2]) / 2, (path.box[1] + path.box[3]) / 2), at) < 0.1
        for path in page.paths
    )


def test_the_centre_of_rings_has_a_cross() -> None:
    plan = bed_of(ROUND, RINGS)
    (sheet,) = printed(plan)
    left, bottom, right, top = sheet.outline(3000, 3000)
    assert crossed_at(sheet, ((left + right) / 2, (bottom + top) / 2)) == 2
    (page,) = drawn(plan, 50)
    left, bottom, right, top = page.outline(3000, 3000)
    assert crossed_at(page, ((left + right) / 2, (bottom + top) / 2)) == 2
    assert not any(max(path.size) == pytest.approx(12, abs=0.1) for path in printed(bed_of(ROUND))[0].paths)
