"""Lettuce and then tomatoes down the centre of a bed, by keys alone: from an empty plan to its sheet and back."""

from pathlib import Path

import pytest
from PySide6.QtGui import QCursor
from PySide6.QtWidgets import QLineEdit

from gardenplot.plan.file import read_plan
from gardenplot.window.preview import Preview
from tests.journeys import relay
from tests.journeys.dialogs import dialog, fill, name_file
from tests.journeys.person import Person, plain
from tests.journeys.screen import needs_screen, walk


def job(person: Person) -> None:
    """The whole job, to the sheet, and all of it undone and done again; the pointer stays where it was."""
    pointer = person.see(QCursor.pos)
    person.press("ctrl+n")
    fill(person, "New plan", relay.PLAN)
    begun = person.plan()
    _enter_crops_and_order(person)
    _fill_the_bed(person)
    _put_tomatoes_between(person)
    _leave_their_places_empty(person)
    _compare(person)
    _cover(person)
    person.press("ctrl+s")
    name_file(person, "Save plan as", person.folder / "relay.gardenplot")
    assert read_plan(person.folder / "relay.gardenplot").plan == person.plan()
    _keep_sheets(person)
    relay.undo_all_and_redo(person, begun)
    person.expect(lambda: person.window.document.is_saved, True)
    assert person.see(QCursor.pos) == pointer


def _enter_crops_and_order(person: Person) -> None:
    for packet in (relay.ROMAINE, relay.TOMATO):
        person.press("ctrl+k")
        fill(person, "From a seed packet", packet)
    person.press("ctrl+shift+o")
    fill(person, "Order", relay.ORDER)
    _look_up(person, "go to the orders")
    relay.expect_order(person, 0, "not planted")


def _fill_the_bed(person: Person) -> None:
    """The order takes 58 ranks; eleven more fill the bed. It is cut until 23 May."""
    _find(person, "romaine", "Mini romaine")
    person.press("ctrl+Return")
    person.expect_blocks(relay.ORDERED)
    relay.expect_order(person, 174, "met")
    person.press("F6", *["ctrl+Right"] * 11)
    person.expect_blocks(relay.FULL)
    relay.expect_order(person, 207, "met")
    person.press("F2")
    _retype(person, person.window.inspector.planting.form.fields["out"], "2025-05-24")
    relay.expect_romaine(person, 207, 33, "239 plants, 252 cells, 2 trays of 128")


def _put_tomatoes_between(person: Person) -> None:
    """Refused while all days are shown; placed on the day that is named then, and typed back to 12 May."""
    window, planted = person.window, person.plan()
    _find(person, "tall", "Tall tomato")
    person.press("ctrl+Return")
    later = (
        "it has one from Sat 24 May 2025 on: choose that day above the drawing, or place it when the ground is free"
    )
    person.expect(window.statusBar().currentMessage, f"Bed 1 has no gap for Tall tomato; {later}")
    assert person.plan() is planted
    person.press("F6")
    person.go_to(window.header.always, "shift+Tab")
    person.press("space")
    person.go_to(window.header.slider, "shift+Tab")
    person.press("End", *["Left"] * 7)
    person.expect(lambda: str(window.sight.day), "2025-05-24")
    person.press("ctrl+Return")
    person.expect_blocks(relay.FULL, relay.TOMATOES)
    fields = window.inspector.planting.form.fields
    person.press("F2")
    _retype(person, fields["keep_clear"], "6 in")
    _retype(person, fields["in_ground"], "2025-05-12")
    relay.expect_tomatoes(person)
    person.press("F7")
    relay.expect_findings(person, ("A Mini romaine, Bed 1, 1′ 0″ – 47′ 0″", relay.IN_THE_WAY))


def _leave_their_places_empty(person: Person) -> None:
    """The finding leads to the lettuce; one step down in its answers."""
    person.press("Home", "Return")
    relay.expect_romaine(person, 207, 33, "239 plants, 252 cells, 2 trays of 128")
    relay.expect_answers(person, 0)
    person.press("F2")
    person.go_to(person.window.inspector.planting.reserved, "shift+Tab")
    person.press("Down")
    person.expect_blocks(relay.WITH_PLACES, relay.TOMATOES)
    relay.expect_answers(person, 1)
    relay.expect_romaine(person, 184, 10, "212 plants, 224 cells, 2 trays of 128")
    relay.expect_findings(person)
    _look_up(person, "go to the orders")
    relay.expect_order(person, 184, "met")


def _compare(person: Person) -> None:
    person.press("ctrl+l")
    relay.expect_comparison(person)
    person.press("Escape")
    person.expect_blocks(relay.WITH_PLACES, relay.TOMATOES)


def _cover(person: Person) -> None:
    """Drip lines, hoops, and a look at the season."""
    person.press("ctrl+Up", "F2")
    _retype(person, person.window.inspector.bed.form.fields["drip_lines"], "10 in; 20 in")
    person.press("ctrl+t")
    fill(person, "Cover over Bed 1", relay.HOOPS)
    relay.expect_bed(person)
    _look_up(person, "season map")
    relay.expect_season(person)
    person.photograph("season")


def _keep_sheets(person: Person) -> None:
    person.press("ctrl+p")
    preview = dialog(person, "Bed sheets: Alderbight")
    assert isinstance(preview, Preview)
    person.go_to(preview.paper)
    person.press("Down")
    person.expect(preview.paper.currentText, "Letter")
    person.go_to(preview.keep)
    person.press("space")
    name_file(person, "Keep as PDF", person.folder / "relay.pdf")
    person.press("Escape")


def _find(person: Person, text: str, name: str) -> None:
    """Find a crop on the shelf; Tab leads to the first that is found and chooses it."""
    person.press("ctrl+f", "ctrl+a")
    person.type(text)
    person.press("Tab")
    shelf = person.window.shelf
    person.expect(lambda: [plain(one.data()).split(",")[0] for one in shelf.list.selectedIndexes()], [name])


def _look_up(person: Person, text: str) -> None:
    person.press("F3")
    person.wait_until(person.window.index.line.hasFocus, "the keyboard in the index")
    person.type(text)
    person.press("Return")


def _retype(person: Person, field: QLineEdit, text: str, key: str = "Tab") -> None:
    """Go to a field, type another text into it and finish it."""
    person.go_to(field, key)
    person.press("ctrl+a")
    person.type(text)
    person.press("Return")


@pytest.mark.screen
@needs_screen
def test_a_relay_goes_by_keys_alone_from_its_packets_to_the_sheet_and_back(tmp_path: Path) -> None:
    walk(job, tmp_path)
    relay.check_plan(tmp_path / "relay.gardenplot")
    relay.check_sheet(tmp_path / "relay.pdf")
