"""An order that does not fit, by mouse: five ways out looked at, taken and undone; worked by hand (S5)."""

from pathlib import Path

import pytest

from gardenplot.window.ways_dialog import WaysDialog
from tests.journeys.answers import answers, open_plan, row
from tests.journeys.person import Person, plain
from tests.journeys.places import tab
from tests.journeys.screen import needs_screen, walk

CABBAGE_LAST = "A Coriander 1′ 0″ – 17′ 9″ 6 × 67 402"
WAYS = (
    ("Less Chinese cabbage", "27 of 48 Chinese cabbage (56 %), 60 of 60 Coriander; 3″ of bed left",
     (CABBAGE_LAST, "B Chinese cabbage 18′ 9″ – 38′ 9″ 2 × 16 32")),
    ("Less Coriander", "48 of 48 Chinese cabbage, 2 of 60 Coriander (3 %); nothing left",
     ("A Chinese cabbage 1′ 0″ – 37′ 3″ 2 × 29 58", "B Coriander 38′ 3″ – 39′ 0″ 6 × 3 18")),
    ("Coriander split", "9″ here and 16′ 0″ in a further bed of 18′ 0″ with its margins: 48 of 48",
     ("A Chinese cabbage 1′ 0″ – 37′ 3″ 2 × 29 58", "B Coriander 38′ 3″ – 39′ 0″ 6 × 3 18",
      "C Coriander 1′ 0″ – 17′ 0″ 6 × 64 384")),
    ("Chinese cabbage closer, 3", "40 of 48 Chinese cabbage (83 %), 60 of 60 Coriander; rows 12″ apart, the packet",
     (CABBAGE_LAST, "B Chinese cabbage 18′ 9″ – 38′ 9″ 3 × 16 48")),
    ("Chinese cabbage closer, 57", "still does not fit: 3′ 6″ too long",
     (CABBAGE_LAST, "B Chinese cabbage 18′ 9″ – 42′ 6″ 3 × 16 48")),
)  # fmt: skip
"""The choices 1 to 5: the row, what it comes to, the blocks; a block that leaves its bed holds what stands in it."""


def job(person: Person) -> None:
    """From the order's row to each of the ways, which is looked at, taken and undone."""
    window = person.window
    open_plan(person, "s5.gardenplot")
    begun = person.plan()
    person.click(tab("Orders"))
    person.click(row(window.ledger.orders, "Coriander"))
    for name, comes_to, blocks in WAYS:
        _look_and_take(person, name, comes_to, blocks)
        person.expect_blocks(*blocks)
        person.expect(window.document.stack.count, 1)
        person.press("ctrl+z")
        person.expect(lambda: window.document.plan is begun, True)
    person.click(window.ledger.ways)
    person.click(answers(person, WaysDialog).leave)
    assert person.plan() is begun


def _look_and_take(person: Person, name: str, comes_to: str, blocks: tuple[str, ...]) -> None:
    begun = person.plan()
    person.click(person.window.ledger.ways)
    dialog = answers(person, WaysDialog)
    person.expect(lambda: "16′ 0″ of bed, 58 of the order" in plain(dialog.view.says.text()), True)
    person.click(row(dialog.view.table, name))
    person.expect(lambda: comes_to in plain(dialog.view.price.text()), True)
    person.expect_trial(*blocks)
    assert person.plan() is begun
    person.click(dialog.take)


@pytest.mark.screen
@needs_screen
def test_an_order_that_does_not_fit_is_looked_at_from_all_sides(tmp_path: Path) -> None:
    walk(job, tmp_path)
