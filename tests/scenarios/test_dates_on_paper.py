"""The dates of all six hand-worked jobs, read back from their dates sheets."""

import pytest

from gardenplot.sheets.paper import Paper
from tests.drawing.hand_worked import hand_worked
from tests.sheets.made import dates_sheet
from tests.sheets.pdf_pages import pages_of

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
LINE = 4.0
"""Points between words of one row of the list at most."""

HAND_WORKED = {
    "s1": (
        "Tue 18 Mar: sow in trays, Pak choi", "Fri 4 Apr: harden off, Pak choi", "Fri 11 Apr: set out, Pak choi",
        "Fri 16 May: ready to harvest, Pak choi", "Fri 7 Mar: sow in trays, Kohlrabi",
        "Fri 28 Mar: harden off, Kohlrabi",
        "Fri 4 Apr: set out, Kohlrabi", "Fri 16 May: ready to harvest, Kohlrabi",
    ),
    "s2": (
        "Wed 2 Apr: sow in trays, Broccoli", "Tue 29 Apr: harden off, Broccoli", "Wed 7 May: set out, Broccoli",
        "Fri 4 Jul: ready to harvest, Broccoli", "Wed 30 Apr: sow in the bed, Beets",
        "Fri 4 Jul: ready to harvest, Beets",
    ),
    "s3": (
        "Tue 25 Feb: sow in trays, Cos lettuce", "Wed 19 Mar: harden off, Cos lettuce",
        "Tue 25 Mar: set out, Cos lettuce", "Fri 9 May: ready to harvest, Cos lettuce", "Mon 12 May: set out, Tomato",
    ),
    "s4": (
        "Wed 22 Mar: sow in trays, Summer cabbage", "Tue 25 Apr: harden off, Summer cabbage",
        "Wed 3 May: set out, Summer cabbage", "Fri 7 Jul: ready to harvest, Summer cabbage",
        "Fri 18 Feb: sow in trays, Leeks",
        "Wed 3 May: set out, Leeks",
    ),
    "s5": (
        "Tue 1 Apr: sow in trays, cabbage", "Thu 24 Apr: harden off, cabbage", "Thu 1 May: set out, cabbage",
        "Fri 20 Jun: ready to harvest, cabbage", "Tue 6 May: sow in the bed, Coriander",
        "Fri 20 Jun: ready to harvest, Coriander",
    ),
    "s6": (
        "Mon 7 Apr: sow in trays, fennel", "Mon 5 May: harden off, fennel", "Mon 12 May: set out, fennel",
        "Fri 11 Jul: ready to harvest, fennel",
    ),
}  # fmt: skip
"""Worked by hand with a calendar."""


@pytest.mark.parametrize("scenario", HAND_WORKED)
def test_each_day_stands_on_the_sheet_in_a_row_with_its_job_and_crop(scenario: str) -> None:
    rows = rows_of(scenario)
    for wanted in HAND_WORKED[scenario]:
        day, _colon, what = wanted.partition(": ")
        job, crop = what.split(", ")
        assert any(row.startswith(day) and job in row and crop.lower() in row.lower() for row in rows), (wanted, rows)


def rows_of(scenario: str) -> list[str]:
    """The rows of a dates sheet: weekday and day first, then the other words beside them."""
    found = []
    for page in pages_of(dates_sheet(hand_worked(scenario), Paper.A4).pdf):
        for day in (words for words in page.words if words.text in DAYS):
            beside = [words for words in page.words if abs(words.box[1] - day.box[1]) <= LINE]
            found.append(" ".join(words.text for words in sorted(beside, key=lambda words: words.box[0])))
    return found
