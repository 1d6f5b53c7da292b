"""Poor germination and a late bed, by mouse: recorded, planned again, the order rescued; worked by hand (S6).

Then as much in a second bed, and both answered in one plan, by mouse and by keyboard.
"""

from datetime import date
from pathlib import Path

import pytest

from gardenplot.window.again_dialog import AgainDialog
from tests.journeys.answers import answers, open_plan, row
from tests.journeys.person import Person, plain, rows_of
from tests.journeys.places import bed_name, reading
from tests.journeys.screen import needs_screen, walk
from tests.scenarios.again_plans import both_short

LATE = ["22 May (+10 days)", "21 Jul (+10 days)", "26 Jul (+14 days)"]
ANSWERS = [
    ["Buy in", "+16 plants", "151", *LATE, "94 cm", "none"],
    ["Plant short", "", "136 (−14)", *LATE, "2.19 m", "1"],
    ["Spread out", "29 cm in the row", "136 (−14)", *LATE, "15 cm", "1"],
    ["Sow again today", "+28 cells", "151", "26 May (+14 days)", "25 Jul (+14 days)", LATE[2], "69 cm", "2"],
]
SHORT = "A Bulb fennel 0.15 – 12.90 m 2 × 51 + 50 152"
BOTH = (SHORT, "C Bulb fennel 12.90 – 14.40 m 6 + 2 × 5 16", "B Bulb fennel 0.15 – 9.65 m 3 × 38 114")


def lose(person: Person, dialog: AgainDialog, share: str) -> None:
    """Type the share of seedlings that are lost from tray to bed."""
    person.click(dialog.loss)
    person.press("ctrl+a")
    person.type(share)
    person.press("Tab")


def job(person: Person) -> None:
    """The stand count, the bed's day, and the answers to both together."""
    window = person.window
    person.see(lambda: setattr(window.document, "today", lambda: date(2025, 4, 21)))
    open_plan(person, "s6.gardenplot")
    person.expect_blocks("A Bulb fennel 0.15 – 14.15 m 3 × 56 168")
    person.click(reading("7 m"))
    fields = window.inspector.planting.form.fields
    person.write(fields["actual_sown"], "2025-04-07")
    person.write(fields["actual_stand"], "161")
    person.click(bed_name())
    person.write(window.inspector.bed.form.fields["usable_from"], "2025-05-22")
    recorded = person.plan()
    person.scroll_to(window.inspector.bed.again)
    person.click(window.inspector.bed.again)
    dialog = answers(person, AgainDialog)
    lose(person, dialog, "5 %")
    words = "Bulb fennel: 161 of 256 cells usable (63 %), 152 to set out, 16 short of 168"
    person.expect(lambda: plain(dialog.view.says.text()), words)
    person.expect(lambda: rows_of(dialog.view.table), ANSWERS)
    person.click(row(dialog.view.table, "Plant short"))
    person.expect_trial(SHORT)
    person.click(row(dialog.view.table, "Sow again"))
    person.expect_trial(SHORT, "B Bulb fennel 12.90 – 14.40 m 6 + 2 × 5 16")
    price = "Sow 28 cells again today for 17 plants, or 20 cells with two seeds each (40 seeds)"
    person.expect(lambda: price in plain(dialog.view.price.text()), True)
    person.expect(lambda: "costs no market day" in dialog.view.price.text(), True)
    person.expect(lambda: str(window.sight.day), "2025-05-26")
    person.photograph("sow-again")
    assert person.plan() is recorded
    person.click(dialog.take)
    person.expect_blocks(SHORT, "B Bulb fennel 12.90 – 14.40 m 6 + 2 × 5 16")
    person.expect(window.document.stack.undoText, "Bulb fennel: Sow again today")
    person.press("ctrl+z")
    person.expect(lambda: window.document.plan is recorded, True)
    for _step in range(3):
        person.press("ctrl+z")
    person.expect(lambda: window.document.is_saved, True)


def both(person: Person) -> None:
    """Both beds answered in one step, by mouse and again by keyboard; what is undone is the plan as it was."""
    window = person.window
    person.see(lambda: setattr(window.document, "today", lambda: date(2025, 4, 21)))
    person.see(lambda: window.document.start(both_short()))
    recorded = person.plan()
    person.press("ctrl+shift+a")
    dialog = answers(person, AgainDialog)
    lose(person, dialog, "5 %")
    beds, table = dialog.all.table, dialog.view.table
    person.click(row(table, "Sow again"))
    person.click(row(beds, "B Bulb fennel"))
    person.expect(lambda: "114 to set out, 54 short" in dialog.view.says.text(), True)
    person.click(row(table, "Plant short"))
    person.expect_trial(*BOTH)
    person.photograph("both-beds")
    person.click(dialog.take)
    person.expect_blocks(*BOTH)
    person.expect(window.document.stack.undoText, "Plan again, 2 answers")
    person.press("ctrl+z")
    person.expect(lambda: window.document.plan is recorded, True)
    person.press("ctrl+shift+a")
    dialog = answers(person, AgainDialog)
    beds, table = dialog.all.table, dialog.view.table
    person.press("Down", "Down", "Down")
    person.go_to(beds)
    person.press("Down")
    person.go_to(table)
    person.press("Down")
    person.expect_trial(*BOTH)
    person.press("Return")
    person.expect_blocks(*BOTH)
    person.press("ctrl+z")
    person.expect(lambda: window.document.plan is recorded, True)


@pytest.mark.screen
@needs_screen
def test_a_season_that_goes_wrong_twice_is_planned_again(tmp_path: Path) -> None:
    walk(job, tmp_path)


@pytest.mark.screen
@needs_screen
def test_two_beds_that_deviate_are_answered_in_one_plan(tmp_path: Path) -> None:
    walk(both, tmp_path)
