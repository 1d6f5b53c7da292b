"""A metric bed from an empty plan to its sheet, by mouse: two crops, two orders, a change of mind."""

from pathlib import Path

import pytest

from gardenplot.layout import lay_out_plan
from gardenplot.plan.file import read_plan
from gardenplot.units import CM
from tests.journeys.dialogs import fill, keep_sheets, name_file
from tests.journeys.paper import lines_of, stakes_of
from tests.journeys.person import Person, plain, rows_of
from tests.journeys.places import bed_name, crop, reading, tab
from tests.journeys.screen import needs_screen, walk

PLAN = {"name": "North glen", "beds": "1", "length": "12 m", "width": "75 cm", "margin": "30 cm"}
PAK_CHOI = {
    "name": "Pak choi",
    "establish": "raised and set out",
    "in_row": "20 cm",
    "row_spacing": "20 cm",
    "edge": "7.5 cm",
    "field_days": "35",
    "raising_days": "24",
    "hardening_days": "7",
    "field_loss": "10 %",
    "spare": "15 %",
    "germination": "90 %",
    "seeds_per_cell": "1",
    "tray_cells": "84",
}
KOHLRABI = PAK_CHOI | {
    "name": "Kohlrabi",
    "in_row": "25 cm",
    "row_spacing": "25 cm",
    "edge": "10 cm",
    "field_days": "42",
    "raising_days": "28",
    "field_loss": "5 %",
}
PAK_CHOI_STANDS = "A Pak choi 0.30 – 7.10 m 4 × 34 136"
KOHLRABI_STANDS = "B Kohlrabi 7.30 – 11.05 m 3 × 15 45"


def job(person: Person) -> None:
    """The whole job, to the bed sheet."""
    person.press("ctrl+n")
    fill(person, "New plan", PLAN)
    _enter_crops_and_orders(person)
    _plant(person)
    _change_mind(person)
    person.click(tab("Findings · 1 note"))
    findings = person.window.ledger.findings
    left = "65 cm left in one piece at its fullest"
    person.expect(lambda: rows_of(findings), [["note", "Bed 1, 11.05 – 11.70 m", left]])
    person.press("ctrl+s")
    name_file(person, "Save plan as", person.folder / "glen.gardenplot")
    assert read_plan(person.folder / "glen.gardenplot").plan == person.plan()
    keep_sheets(person, "North glen", person.folder / "glen.pdf", "A4")


def _enter_crops_and_orders(person: Person) -> None:
    window = person.window
    for packet in (PAK_CHOI, KOHLRABI):
        person.click(window.shelf.from_packet)
        fill(person, "From a seed packet", packet)
    person.click(bed_name())
    person.write(window.inspector.bed.form.fields["gap"], "20 cm")
    person.click(tab("Orders"))
    for name, heads in (("Pak choi", "120"), ("Kohlrabi", "40")):
        person.click(window.ledger.add_order)
        fill(person, "Order", {"crop": name, "units": heads, "on": "2025-05-17"})
    ordered = [
        ["Pak choi", "120", "Sat 17 May 2025", "134", "0", "not planted"],
        ["Kohlrabi", "40", "Sat 17 May 2025", "43", "0", "not planted"],
    ]
    person.expect(lambda: rows_of(window.ledger.orders), ordered)


def _plant(person: Person) -> None:
    """Drag both crops from the shelf; the first one is drawn before the hand lets go."""
    person.carry(crop("Pak choi"), reading("45 cm"))
    person.expect_trial(PAK_CHOI_STANDS)
    person.expect_blocks()
    person.let_go()
    person.expect_blocks(PAK_CHOI_STANDS)
    person.drag(crop("Kohlrabi"), reading("7.50 m"))
    person.expect_blocks(PAK_CHOI_STANDS, KOHLRABI_STANDS)


def _change_mind(person: Person) -> None:
    """Drag the kohlrabi where it cannot stand, then where it can, and undo that."""
    planted = person.plan()
    person.drag(reading("9 m"), reading("6 m"))
    person.expect(
        lambda: plain(person.window.statusBar().currentMessage()),
        "B Kohlrabi stands 2.80 m into A Pak choi; free from Sat 17 May 2025",
    )
    assert person.plan() is planted
    person.drag(reading("9 m"), reading("9.60 m"))
    person.expect_blocks(PAK_CHOI_STANDS, "B Kohlrabi 7.95 – 11.70 m 3 × 15 45")
    person.press("ctrl+z")
    person.expect_blocks(PAK_CHOI_STANDS, KOHLRABI_STANDS)
    assert person.plan() is planted


@pytest.mark.screen
@needs_screen
def test_two_crops_go_from_their_packets_to_the_bed_and_its_sheet(tmp_path: Path) -> None:
    walk(job, tmp_path)
    (bed,) = lay_out_plan(read_plan(tmp_path / "glen.gardenplot").plan)
    assert [(one.start, one.end, one.plants) for one in bed.layouts] == [
        (30 * CM, 710 * CM, 136),
        (730 * CM, 1105 * CM, 45),
    ]
    lines = lines_of(tmp_path / "glen.pdf")
    assert stakes_of(lines) == [
        ("0.00", "head stake"),
        ("0.30", "A Pak choi begins first plant 0.40 4 × 34 136"),
        ("7.10", "A ends · last plant 7.00"),
        ("7.30", "B Kohlrabi begins first plant 7.43 3 × 15 45"),
        ("11.05", "B ends · last plant 10.93"),
        ("11.70", "foot margin 65 cm left before it"),
        ("12.00", "foot stake: if it reads otherwise, stop and measure again"),
    ]
    assert {
        "Square both diagonals 12.02 m",
        "A 136 plants (3 trays) · 11 Apr",
        "B 45 plants (1 tray) · 4 Apr",
    } <= set(lines)
