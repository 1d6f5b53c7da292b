"""A field bed in feet and inches, by mouse: plugs and roots in bunches, an end drawn and typed back."""

from pathlib import Path

import pytest

from gardenplot.layout import lay_out_plan
from gardenplot.plan.file import read_plan
from gardenplot.units import INCH
from tests.journeys.dialogs import fill, keep_sheets, name_file
from tests.journeys.paper import lines_of, size_of, stakes_of
from tests.journeys.person import Person, rows_of
from tests.journeys.places import bed_name, crop, reading, tab
from tests.journeys.screen import needs_screen, walk

PLAN = {
    "name": "Lake shore",
    "units": "feet and inches",
    "beds": "1",
    "length": "100 ft",
    "width": "48 in",
    "margin": "2'",
}
BROCCOLI = {
    "name": "Broccoli",
    "establish": "raised and set out",
    "in_row": "18 in",
    "row_spacing": "2 ft",
    "edge": "12 in",
    "field_days": "58",
    "raising_days": "35",
    "hardening_days": "8",
    "field_loss": "10 %",
    "spare": "20 %",
    "germination": "92 %",
    "seeds_per_cell": "1",
    "tray_cells": "128",
}
BEETS = {
    "name": "Beets",
    "establish": "sown where it grows",
    "in_row": '3"',
    "row_spacing": "1'",
    "edge": "6 in",
    "field_days": "65",
    "field_loss": "20 %",
    "seeds_per_row": "12 / ft",
    "seeder_slack": "10 %",
    "seeds_per_gram": "60",
}
BROCCOLI_STANDS = "A Broccoli 2′ 0″ – 77′ 0″ 2 × 50 100"
BEETS_STAND = "B Beets 78′ 0″ – 93′ 9″ 4 × 63 252"


def job(person: Person) -> None:
    """The whole job, to the bed sheet."""
    person.press("ctrl+n")
    fill(person, "New plan", PLAN)
    _enter_crops_and_orders(person)
    person.drag(crop("Broccoli"), reading("2 ft 11 in"))
    person.expect_blocks(BROCCOLI_STANDS)
    person.drag(crop("Beets"), reading("78.5 ft"))
    person.expect_blocks(BROCCOLI_STANDS, BEETS_STAND)
    _draw_an_end_and_type_it_back(person)
    person.press("ctrl+s")
    name_file(person, "Save plan as", person.folder / "shore")
    assert read_plan(person.folder / "shore.gardenplot").plan == person.plan()
    keep_sheets(person, "Lake shore", person.folder / "shore.pdf", "Letter")


def _enter_crops_and_orders(person: Person) -> None:
    window = person.window
    for packet in (BROCCOLI, BEETS):
        person.click(window.shelf.from_packet)
        fill(person, "From a seed packet", packet)
    person.click(bed_name())
    person.write(window.inspector.bed.form.fields["gap"], "12 in")
    person.click(tab("Orders"))
    for order in ({"crop": "Broccoli", "units": "90"}, {"crop": "Beets", "units": "40", "measure": "5"}):
        person.click(window.ledger.add_order)
        fill(person, "Order", order | {"on": "2025-07-05"})
    ordered = [
        ["Broccoli", "90", "Sat 5 Jul 2025", "100", "0", "not planted"],
        ["Beets", "40", "Sat 5 Jul 2025", "250", "0", "not planted"],
    ]
    person.expect(lambda: rows_of(window.ledger.orders), ordered)


def _draw_an_end_and_type_it_back(person: Person) -> None:
    """Draw the broccoli's foot end by whole ranks, type its old length, and go back and forth by undo and redo."""
    planted = person.plan()
    person.click(reading("40 ft"))
    person.drag(reading("77 ft"), reading("71.2 ft"))
    person.expect_blocks("A Broccoli 2′ 0″ – 71′ 0″ 2 × 46 92", BEETS_STAND)
    drawn = person.plan()
    person.write(person.window.inspector.planting.form.fields["length"], "75 ft")
    person.expect_blocks(BROCCOLI_STANDS, BEETS_STAND)
    typed = person.plan()
    last = person.see(person.window.document.stack.index)
    there_and_back = (
        ("ctrl+z", last - 1, drawn),
        ("ctrl+z", last - 2, planted),
        ("ctrl+y", last - 1, drawn),
        ("ctrl+shift+z", last, typed),
    )
    for keys, index, plan in there_and_back:
        person.press(keys)
        person.expect(person.window.document.stack.index, index)
        assert person.plan() is plan


@pytest.mark.screen
@needs_screen
def test_plugs_and_roots_go_from_their_packets_to_the_bed_and_its_sheet(tmp_path: Path) -> None:
    walk(job, tmp_path)
    (bed,) = lay_out_plan(read_plan(tmp_path / "shore.gardenplot").plan)
    assert [(one.start, one.end, one.plants) for one in bed.layouts] == [
        (24 * INCH, 924 * INCH, 100),
        (936 * INCH, 1125 * INCH, 252),
    ]
    assert size_of(tmp_path / "shore.pdf") == (792, 612)
    lines = lines_of(tmp_path / "shore.pdf")
    assert stakes_of(lines) == [
        ("0′ 0″", "head stake"),
        ("2′ 0″", "A Broccoli begins 2 × 50 = 100 first plant 2′ 9″"),
        ("77′ 0″", "A ends · last plant 76′ 3″"),
        ("78′ 0″", "B Beets begins 4 × 63 = 252 first plant 78′ 1½″"),
        ("93′ 9″", "B ends · last plant 93′ 7½″"),
        ("98′ 0″", "foot margin · 4′ 3″ left before it"),
        ("100′ 0″", "foot stake: if it reads otherwise, stop and measure again"),
    ]
    assert {"Square both diagonals 100′ 1″", "A 100 plants (2 trays) · 7 May"} <= set(lines)
