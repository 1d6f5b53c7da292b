"""A block by keys alone: chosen on the shelf, placed, nudged, sized, typed, removed, and all of it undone."""

from pathlib import Path

import pytest

from tests.journeys.dialogs import fill, name_file
from tests.journeys.person import Person
from tests.journeys.screen import needs_screen, walk

PLAN = {"name": "Moss end", "beds": "2", "length": "10 m", "width": "80 cm", "margin": "50 cm"}
SALSIFY = {"name": "Salsify", "establish": "sown where it grows", "in_row": "10 cm", "row_spacing": "20 to 30"}


def job(person: Person) -> None:
    """The whole job, to the plan as it was."""
    _begin(person)
    begun = person.plan()
    _place(person)
    _nudge_and_size(person)
    _type(person)
    person.press("F6", "Delete")
    person.expect_blocks()
    _undo_all(person)
    assert person.plan() is begun


def _begin(person: Person) -> None:
    """A plan of two beds and a crop from its packet, by Tab from field to field."""
    person.press("ctrl+n")
    fill(person, "New plan", PLAN)
    person.press("ctrl+k")
    fill(person, "From a seed packet", SALSIFY)
    person.press("ctrl+s")
    name_file(person, "Save plan as", person.folder / "moss.gardenplot")
    person.expect(lambda: person.window.document.is_saved, True)


def _place(person: Person) -> None:
    """Find the crop by its name and put it into the second bed."""
    person.press("ctrl+Down", "ctrl+Down")
    person.expect(lambda: person.window.sight.bed, person.plan().beds[1].id)
    person.press("ctrl+f")
    person.type("salsi")
    person.press("Tab", "Down")
    person.expect(lambda: crop.name if (crop := person.window.shelf.chosen()) else None, "Salsify")
    person.press("ctrl+Return")
    person.expect_blocks("A Salsify 0.50 – 9.50 m 4 × 90 360")


def _nudge_and_size(person: Person) -> None:
    """Ten ranks off the foot end, one back; on by three strides of 5 cm and back by 1 cm."""
    person.press("F6")
    person.press(*["ctrl+Left"] * 10)
    person.expect_blocks("A Salsify 0.50 – 8.50 m 4 × 80 320")
    person.press("ctrl+Right")
    person.expect_blocks("A Salsify 0.50 – 8.60 m 4 × 81 324")
    person.press("Right", "Right", "Right")
    person.expect_blocks("A Salsify 0.65 – 8.75 m 4 × 81 324")
    person.press("shift+Left")
    person.expect_blocks("A Salsify 0.64 – 8.74 m 4 × 81 324")


def _type(person: Person) -> None:
    """Plants, and with Tab the field after the next; a wrong text is told there and Escape takes it back."""
    fields = person.window.inspector.planting.form.fields
    person.press("F2")
    person.expect(fields["plants"].hasFocus, True)
    person.press("ctrl+a")
    person.type("200")
    person.press("Tab")
    person.expect_blocks("A Salsify 0.64 – 5.64 m 4 × 50 200")
    person.press("Tab")
    person.expect(fields["from"].hasFocus, True)
    person.press("ctrl+a")
    person.type("two strides")
    person.press("Return")
    person.expect(lambda: "two strides" in fields["from"].complaint.text(), True)
    person.expect_blocks("A Salsify 0.64 – 5.64 m 4 × 50 200")
    person.press("Escape", "ctrl+a")
    person.type("1 m")
    person.press("Return")
    person.expect_blocks("A Salsify 1.00 – 6.00 m 4 × 50 200")


def _undo_all(person: Person) -> None:
    """Each of the six steps since the crop goes by its name."""
    stack = person.window.document.stack
    for name in ("Remove", "From of", "Plants of", "Move", "Resize", "Place"):
        person.expect(stack.undoText, f"{name} Salsify")
        person.press("ctrl+z")
    person.expect(stack.undoText, "Crop Salsify")


@pytest.mark.screen
@needs_screen
def test_a_block_is_placed_changed_and_removed_by_keys_and_undone_to_the_very_same_plan(tmp_path: Path) -> None:
    walk(job, tmp_path)
