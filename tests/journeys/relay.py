"""The relay that was worked out by hand: lettuce in three rows, then tomatoes down the centre line of the same bed.

What is typed, and what window, file and sheet must say then; the two journeys differ in the hand that does it.
"""

from pathlib import Path

from PySide6.QtWidgets import QApplication

from gardenplot.drawing.cautions import COVERS
from gardenplot.layout import lay_out_plan
from gardenplot.layout.positions import positions
from gardenplot.plan import Plan
from gardenplot.plan.file import read_plan
from gardenplot.units import INCH
from gardenplot.window.compare_dialog import CompareDialog
from gardenplot.window.main import MainWindow
from tests.journeys.dialogs import dialog
from tests.journeys.paper import pages_of, size_of, stakes_of
from tests.journeys.person import Person, plain, rows_of

PLAN = {
    "name": "Alderbight",
    "units": "feet and inches",
    "beds": "1",
    "length": "48 ft",
    "width": "30 in",
    "margin": "1 ft",
}
ROMAINE = {
    "name": "Mini romaine",
    "establish": "raised and set out",
    "in_row": "8 in",
    "row_spacing": "10 in",
    "edge": "5 in",
    "field_days": "45",
    "raising_days": "28",
    "hardening_days": "6",
    "field_loss": "8 %",
    "spare": "15 %",
    "germination": "95 %",
    "seeds_per_cell": "1",
    "tray_cells": "128",
}
TOMATO = {"name": "Tall tomato", "establish": "raised and set out", "in_row": "24 in", "row_spacing": "30 in"}
ORDER = {"crop": "Mini romaine", "units": "160", "on": "2025-05-10"}
HOOPS = {"start": "0 ft", "end": "48 ft", "hoop_spacing": "4 ft"}

ORDERED = "A Mini romaine 1′ 0″ – 39′ 8″ 3 × 58 174"
FULL = "A Mini romaine 1′ 0″ – 47′ 0″ 3 × 69 207"
WITH_PLACES = "A Mini romaine 1′ 0″ – 47′ 0″ 2 × 69 + 46 184"
TOMATOES = "B Tall tomato 1′ 0″ – 47′ 0″ 23 23"
IN_THE_WAY = (
    "23 plants stand within 6″ of places of B Tall tomato: cut them by Sun 11 May 2025, or leave their places empty"
)
ANSWERS = ("cut first: 207 plants", "leave the places empty: 184 plants", "leave the row empty: 138 plants")
SHORT_NAMES = (
    ("3 rows straight, leave the places empty", "met, 10 over", "184", "none"),
    ("3 rows straight, cut first", "met, 33 over", "207", "23 in the way: cut them first"),
    ("3 rows straight, leave the row empty", "36 plants short", "138", "none"),
)
STEPS = (
    "Crop Mini romaine",
    "Crop Tall tomato",
    "Order",
    "Place Mini romaine",
    "Resize Mini romaine",
    "Ground free of Mini romaine",
    "Place Tall tomato",
    "Keep clear of Tall tomato",
    "Set out of Tall tomato",
    "Mini romaine: leave the places empty",
    "Drip lines, from the left edge of Bed 1",
    "Cover over Bed 1",
)


def expect_order(person: Person, planted: int, met: str) -> None:
    """160 heads at 8 % loss: 174 plants must stand."""
    wanted = [["Mini romaine", "160", "Sat 10 May 2025", "174", str(planted), met]]
    person.expect(lambda: rows_of(person.window.ledger.orders), wanted)


def expect_findings(person: Person, *wanted: tuple[str, str]) -> None:
    """What the findings say, in front of the ledger."""
    person.expect(lambda: rows_of(person.window.ledger.findings), [["risk", *row] for row in wanted])


def expect_romaine(person: Person, plants: int, over: int, raised: str) -> None:
    """The panel of the lettuce: its days, its rows, its order and what is raised for it."""
    panel = person.window.inspector.planting
    person.expect(panel.title.text, "A  Mini romaine")
    person.expect(panel.under_title.text, "Bed 1 · in ground Tue 25 Mar – Sat 24 May 2025")
    person.expect(panel.form.fields["plants"].text, str(plants))
    person.expect(panel.form.fields["rows"].text, "3")
    person.expect(lambda: panel.form.hints["rows"].text().split(";")[0], "5″ at the edge")
    person.expect(panel.form.hints["order"].text, f"met, {over} to spare of {plants}")
    person.expect(panel.raising.text, f"To raise or sow: {raised}")


def expect_tomatoes(person: Person) -> None:
    """The panel of the tomatoes: one row on the centre line, in the ground while lettuce stands in the way."""
    panel = person.window.inspector.planting
    person.expect(panel.title.text, "B  Tall tomato")
    person.expect(panel.under_title.text, "Bed 1 · in ground from Mon 12 May 2025")
    texts = {"plants": "23", "rows": "1", "from": "1'", "to": "47'", "in_row": "", "keep_clear": "6 in"}
    for name, text in texts.items():
        person.expect(panel.form.fields[name].text, text)
    person.expect(panel.form.fields["in_row"].placeholderText, "packet: 24 in")
    person.expect(lambda: panel.form.hints["rows"].text().split(";")[0], "15″ at the edge")
    person.expect(panel.findings.text, IN_THE_WAY)


def expect_answers(person: Person, chosen: int) -> None:
    """The three answers with their counts, of which one is chosen."""
    box = person.window.inspector.planting.reserved
    person.expect(lambda: tuple(box.itemText(number) for number in range(box.count())), ANSWERS)
    person.expect(box.currentText, ANSWERS[chosen])


def expect_comparison(person: Person) -> None:
    """The three answers beside one another, the first columns of those that are open."""
    dialog(person, "Compare layouts: A Mini romaine in Bed 1")
    person.expect(_compared, SHORT_NAMES)


def _compared() -> tuple[tuple[str, ...], ...]:
    open_now = QApplication.activeModalWidget()
    assert isinstance(open_now, CompareDialog)
    columns = [column.shown for column in open_now.columns.columns[: len(SHORT_NAMES)]]
    lines = ("Order of 160", "Plants", "In the way of Tall tomato")
    cells = [[one.cells[one.headings.index(line)] for line in lines] for one in columns]
    return tuple(
        (one.name, *(cell.figure or cell.trouble for cell in row)) for one, row in zip(columns, cells, strict=True)
    )


def expect_bed(person: Person) -> None:
    """Nothing left over, 13 hoops, and all rows 5 in from the drip lines."""
    panel = person.window.inspector.bed
    person.expect(panel.left.text, "nothing left at its fullest")
    person.expect(lambda: plain(panel.covers.text()), f"Covers 0′ 0″ – 48′ 0″, 13 hoops 4′ 0″ apart {COVERS}")
    person.expect(panel.drip.text, "Rows from the nearest drip line\nA  5″, 5″, 5″\nB  5″")
    person.expect(panel.findings.text, "")


def expect_season(person: Person) -> None:
    """The map has both crops with their counts, and the days on which they take the ground."""
    person.wait_until(lambda: not person.window.season.visibleRegion().isEmpty(), "the season map")
    person.expect(lambda: _mapped(person.window), [
        ("Mini romaine 2 × 69 + 46 = 184", "out by 24 May", "2025-03-25"),
        ("Tall tomato 23 plants", "until it is taken out", "2025-05-12"),
    ])  # fmt: skip


def _mapped(window: MainWindow) -> list[tuple[str, str, str]]:
    axes = window.season.axes()
    return [(plain(one.lines[0][0]), one.lines[1][0], str(one.first)) for one in axes.season.blocks] if axes else []


def undo_all_and_redo(person: Person, begun: Plan) -> None:
    """Each step goes by its name, to the very plan that was begun, and all of them come back."""
    done, stack = person.plan(), person.window.document.stack
    for name in reversed(STEPS):
        person.expect(stack.undoText, name)
        person.press("ctrl+z")
    person.expect(stack.canUndo, False)
    assert person.plan() is begun
    for name in STEPS:
        person.expect(stack.redoText, name)
        person.press("ctrl+shift+z")
    person.expect(stack.canRedo, False)
    assert person.plan() is done


def check_plan(path: Path) -> None:
    """Where each plant stands in the file that was kept, in inches."""
    (bed,) = lay_out_plan(read_plan(path).plan)
    lettuce, tomatoes = ({(x / INCH, y / INCH) for x, y in positions(one).tolist()} for one in bed.layouts)
    rows = {(16 + 8 * number, row) for number in range(69) for row in (5, 15, 25)}
    pegs = {(24 * number, 15) for number in range(1, 24)}
    assert tomatoes == pegs
    assert lettuce == rows - pegs
    assert (len(tomatoes), len(lettuce), len(rows)) == (23, 184, 207)


def check_sheet(path: Path) -> None:
    """A page for spring with the pegs of summer, a page for summer."""
    assert size_of(path) == (792, 612)
    spring, summer = pages_of(path)
    foot = ("48′ 0″", "foot stake: if it reads otherwise, stop and measure again")
    assert stakes_of(spring) == [
        ("0′ 0″", "head stake"),
        ("1′ 0″", "A Mini romaine begins 2 × 69 + 46 = 184 first plant 1′ 4″"),
        ("47′ 0″", "A ends · last plant 46′ 8″"),
        foot,
    ]
    assert stakes_of(summer) == [
        ("0′ 0″", "head stake"),
        ("1′ 0″", "B Tall tomato begins first plant 2′ 0″ 1 × 23 23"),
        ("47′ 0″", "B ends · last plant 46′ 0″"),
        foot,
    ]
    assert {
        "B Tall tomato, 23 places kept",
        "first at then every last at",
        "2′ 0″ 24″ 46′ 0″",
        "peg both edges of the bed at each of them now",
        "A 184 plants (2 trays)",
    } <= set(spring)
    assert any("turn 1 of 2 on this ground · planned from Tue 25 Mar 2025" in line for line in spring)
    assert any("turn 2 of 2 on this ground · planned from Mon 12 May 2025" in line for line in summer)
