"""Blocks worked by a real pointer and real keys: framed, moved together, copied, pushed, swapped, split, measured."""

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint

from gardenplot.plan.file import write_plan
from gardenplot.units import M
from gardenplot.window.main import MainWindow
from tests.gestures.hand import block, ground
from tests.journeys.dialogs import name_file
from tests.journeys.person import Person
from tests.journeys.places import Place, reading
from tests.journeys.screen import needs_screen, walk

ROW = ground(block("1 m", "90 cm"), block("3 m", "1.2 m"), block("6 m", "1.8 m"))
STAND = ("A Chard 1.00 – 1.90 m 2 × 3 6", "B Chard 3.00 – 4.20 m 2 × 4 8", "C Chard 6.00 – 7.80 m 2 × 6 12")


def below(tape: str) -> Place:
    """A place under a tape reading of the first bed, beside all blocks."""

    def place(window: MainWindow) -> QPoint:
        bed = window.document.plan.beds[0]
        height = window.canvas.places.point_of(bed.id, 0, bed.width.nm) - window.canvas.places.point_of(bed.id, 0, 0)
        return reading(tape)(window) + QPoint(0, round(height.y() / 2) + 20)

    return place


def job(person: Person) -> None:
    """Everything that the hand does with blocks, each undone again."""
    person.see(lambda: write_plan(person.folder / "row.gardenplot", ROW))
    person.press("ctrl+o")
    name_file(person, "Open plan", person.folder / "row.gardenplot")
    person.expect_blocks(*STAND)
    for part in (_move_several, _copy, _push, _swap, _split_and_join):
        begun = person.plan()
        part(person)
        person.press("ctrl+z")
        person.expect_blocks(*STAND)
        assert person.plan() is begun
    _measure(person)


def _move_several(person: Person) -> None:
    person.carry(below("8.5 m"), reading("3.5 m"))
    person.expect(lambda: person.window.canvas.band.inside, ("p2", "p3"))
    person.let_go()
    person.carry(reading("6.5 m"), reading("8.5 m"))
    moved = ("A Chard 1.00 – 1.90 m 2 × 3 6", "B Chard 5.00 – 6.20 m 2 × 4 8", "C Chard 8.00 – 9.80 m 2 × 6 12")
    person.expect_trial(*moved)
    person.photograph("several")
    person.let_go()
    person.expect_blocks(*moved)
    person.expect(person.window.document.stack.undoText, "Move 2 plantings")


def _copy(person: Person) -> None:
    copied = (*STAND, "D Chard 9.00 – 9.90 m 2 × 3 6")
    person.carry(reading("1.5 m"), reading("9.5 m"))
    person.expect(lambda: trial.copies if (trial := person.window.canvas.stage.trial) else None, False)
    person.hold("ctrl")
    person.expect_trial(*copied)
    person.photograph("copy")
    person.let_go()
    person.free("ctrl")
    person.expect_blocks(*copied)


def _push(person: Person) -> None:
    person.carry(reading("1.5 m"), reading("3.5 m"))
    person.hold("shift")
    pushed = ("A Chard 3.00 – 3.90 m 2 × 3 6", "B Chard 4.10 – 5.30 m 2 × 4 8", STAND[2])
    person.expect_trial(*pushed)
    person.photograph("push")
    person.let_go()
    person.free("shift")
    person.expect_blocks(*pushed)


def _swap(person: Person) -> None:
    person.click(reading("1.5 m"))
    person.press("alt+End")
    person.expect_blocks("A Chard 1.00 – 2.20 m 2 × 4 8", "B Chard 3.30 – 4.20 m 2 × 3 6", STAND[2])


def _split_and_join(person: Person) -> None:
    person.click(reading("6.62 m"))
    person.press("ctrl+h")
    person.expect_blocks(*STAND[:2], "C Chard 6.00 – 6.60 m 2 × 2 4", "D Chard 6.60 – 7.80 m 2 × 4 8")
    person.press("ctrl+j")
    person.expect_blocks(*STAND)
    person.press("ctrl+z")
    person.expect(lambda: len(person.window.document.plan.plantings), 4)


def _measure(person: Person) -> None:
    person.press("ctrl+m")
    person.drag(reading("1 m"), reading("6 m"))
    person.expect(lambda: _measured(person.window), (1.0, 6.0))
    person.press("Tab", "Right")
    person.expect(lambda: _measured(person.window), (1.05, 6.0))
    person.photograph("measure")
    person.press("Escape")
    person.expect(lambda: _measured(person.window), None)
    assert not person.see(person.window.isWindowModified)


def _measured(window: MainWindow) -> tuple[float, float] | None:
    trial = window.canvas.stage.trial
    found = trial.measured if trial else None
    return (found.start.x / M, found.end.x / M) if found else None


@pytest.mark.screen
@needs_screen
def test_the_hand_works_on_blocks_and_undoes_it_all(tmp_path: Path) -> None:
    walk(job, tmp_path)
