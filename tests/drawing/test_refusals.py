"""Why the hand cannot: what is in the way, and from which day the ground is free."""

from datetime import date

import pytest

from gardenplot.drawing.hand_words import refusal_words
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says
from gardenplot.findings import Finding, Kind
from gardenplot.units import M
from tests.drawing.hand_worked import plan_from

PLAN = plan_from(
    beds=[{"id": "b", "name": "B", "length": "10 m", "width": "80 cm"}],
    crops=[{"id": "c", "name": "Chard", "in_row": "20 cm", "row_spacing": "20 cm"}],
    plantings=[
        {"id": "p", "bed": "b", "crop": "c", "from": "1 m", "length": "3 m",
         "in_ground": "2027-04-01", "out": "2027-06-05"},
        {"id": "q", "bed": "b", "crop": "c", "from": "3 m", "length": "3 m", "in_ground": "2027-05-20"},
    ],
)  # fmt: skip
OVERLAP = Finding(Kind.OVERLAP, "b", "q", "p", start=3 * M, end=4 * M, amount=M)


@pytest.mark.parametrize(
    ("held", "tail"),
    [(("q",), "; free from Sat 5 Jun 2027"), (("p",), ""), (("p", "q"), "")],
)
def test_the_day_is_that_of_what_was_there_and_not_of_what_the_hand_holds(held: tuple[str, ...], tail: str) -> None:
    look = looks(PLAN)
    assert refusal_words(PLAN, OVERLAP, held, look) == says(PLAN, OVERLAP, look) + tail


def test_of_anything_else_it_says_no_day() -> None:
    look, outside = looks(PLAN), Finding(Kind.OUTSIDE, "b", "q", start=9 * M, end=10 * M, amount=M)
    assert refusal_words(PLAN, outside, ("q",), look) == says(PLAN, outside, look)


def test_the_day_that_the_hand_is_offered_goes_before_that_of_what_is_in_the_way_first() -> None:
    words = refusal_words(PLAN, OVERLAP, ("q",), looks(PLAN), date(2027, 9, 20))
    assert words.endswith("; free from Mon 20 Sep 2027")
