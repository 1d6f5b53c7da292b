"""Lettuce and then tomatoes down the centre of a tunnel bed, by mouse: from an empty plan to its sheet and back."""

from pathlib import Path

import pytest

from gardenplot.plan.file import read_plan
from tests.journeys import relay
from tests.journeys.dialogs import fill, keep_sheets, name_file
from tests.journeys.person import Person, plain
from tests.journeys.places import bed_name, count_row, crop, entry, handle, panel, reading, right_end, tab
from tests.journeys.screen import needs_screen, walk


def job(person: Person) -> None:
    """The whole job, to the sheet, and all of it undone and done again."""
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
    keep_sheets(person, "Alderbight", person.folder / "relay.pdf", "Letter")
    relay.undo_all_and_redo(person, begun)
    person.expect(lambda: person.window.document.is_saved, True)


def _enter_crops_and_order(person: Person) -> None:
    window = person.window
    for packet in (relay.ROMAINE, relay.TOMATO):
        person.click(window.shelf.from_packet)
        fill(person, "From a seed packet", packet)
    person.click(tab("Orders"))
    person.click(window.ledger.add_order)
    fill(person, "Order", relay.ORDER)
    relay.expect_order(person, 0, "not planted")


def _fill_the_bed(person: Person) -> None:
    """The order takes 38 ft 8 in; its foot end is drawn to the margin. It is cut until 23 May."""
    person.carry(crop("Mini romaine"), reading("1 ft 6 in"))
    person.expect_trial(relay.ORDERED)
    person.let_go()
    person.expect_blocks(relay.ORDERED)
    relay.expect_order(person, 174, "met")
    person.drag(reading("39 ft 8 in"), reading("47 ft"))
    person.expect_blocks(relay.FULL)
    relay.expect_order(person, 207, "met")
    person.write(person.window.inspector.planting.form.fields["out"], "2025-05-24")
    relay.expect_romaine(person, 207, 33, "239 plants, 252 cells, 2 trays of 128")


def _put_tomatoes_between(person: Person) -> None:
    """Refused while all days are shown; placed on a day when the bed is free, then typed back to 12 May."""
    window = person.window
    planted = person.plan()
    person.drag(crop("Tall tomato"), reading("2 ft"))
    person.expect(
        lambda: plain(window.statusBar().currentMessage()),
        "B Tall tomato stands 2′ 0″ into A Mini romaine; free from Sat 24 May 2025: hold Ctrl to set it out then",
    )
    assert person.plan() is planted
    person.click(window.header.always)
    person.drag(handle(window.header.slider), right_end(window.header.slider))
    person.expect(lambda: str(window.sight.day), "2025-05-31")
    person.drag(crop("Tall tomato"), reading("2 ft"))
    person.expect_blocks(relay.FULL, relay.TOMATOES)
    person.expect(window.statusBar().currentMessage, "")
    fields = window.inspector.planting.form.fields
    person.write(fields["keep_clear"], "6 in")
    person.write(fields["in_ground"], "2025-05-12")
    relay.expect_tomatoes(person)
    person.click(tab("1 finding"))
    relay.expect_findings(person, ("A Mini romaine, Bed 1, 1′ 0″ – 47′ 0″", relay.IN_THE_WAY))


def _leave_their_places_empty(person: Person) -> None:
    """The lettuce is chosen in the counts, which lead to a day on which it stands."""
    window = person.window
    person.click(tab("Counts"))
    person.click(count_row("A  Mini romaine"))
    person.expect(lambda: str(window.sight.day), "2025-03-25")
    relay.expect_romaine(person, 207, 33, "239 plants, 252 cells, 2 trays of 128")
    relay.expect_answers(person, 0)
    box = window.inspector.planting.reserved
    person.scroll_to(box)
    person.click(box)
    person.wait_until(box.view().isVisible, "the three answers")
    person.photograph("answers")
    person.click(entry(box, relay.ANSWERS[1]))
    person.expect_blocks(relay.WITH_PLACES, relay.TOMATOES)
    relay.expect_answers(person, 1)
    relay.expect_romaine(person, 184, 10, "212 plants, 224 cells, 2 trays of 128")
    person.click(tab("Findings"))
    relay.expect_findings(person)
    person.click(tab("Orders"))
    relay.expect_order(person, 184, "met")


def _compare(person: Person) -> None:
    button = person.window.inspector.planting.compare
    person.scroll_to(button)
    person.click(button)
    relay.expect_comparison(person)
    person.photograph("compared")
    person.press("Escape")
    person.expect_blocks(relay.WITH_PLACES, relay.TOMATOES)


def _cover(person: Person) -> None:
    """Drip lines, hoops, and a look at the season."""
    person.click(bed_name())
    person.write(person.window.inspector.bed.form.fields["drip_lines"], "10 in; 20 in")
    person.press("ctrl+t")
    fill(person, "Cover over Bed 1", relay.HOOPS)
    relay.expect_bed(person)
    person.click(panel("Season map"))
    relay.expect_season(person)
    person.photograph("season")


@pytest.mark.screen
@needs_screen
def test_a_relay_goes_from_its_packets_to_the_bed_and_its_sheet_and_back(tmp_path: Path) -> None:
    walk(job, tmp_path)
    relay.check_plan(tmp_path / "relay.gardenplot")
    relay.check_sheet(tmp_path / "relay.pdf")
