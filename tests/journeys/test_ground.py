"""Beds put in their places on the ground under a tunnel, by mouse and then by keys alone, and a block covered."""

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QPointF

from gardenplot.drawing.ground_under import handle_at
from gardenplot.plan.ground import frames_of
from gardenplot.units import CM, M
from gardenplot.window.main import MainWindow
from gardenplot.window.theme import magnified
from tests.journeys.dialogs import fill
from tests.journeys.person import Person
from tests.journeys.places import Place
from tests.journeys.screen import needs_screen, walk

PLAN = {"name": "Moss end", "beds": "2", "length": "10 m", "width": "80 cm", "margin": "50 cm"}
TUNNEL = {"name": "Glass", "x": "2 m", "y": "2 m", "length": "14 m", "width": "5 m", "cold_edge": "50 cm"}


def on_ground(x: float, y: float) -> Place:
    """A place on the ground, in m from the peg."""

    def point(window: MainWindow) -> QPoint:
        view = window.views.ground
        at = QPointF(*view.eye.eye.pixels((x * 1000, y * 1000))) * magnified()
        return view.mapToGlobal(at.toPoint())

    return point


def in_bed(number: int, reading: float, *, right: float = 0, down: float = 0) -> Place:
    """A reading in m in the middle of a bed, or so many m on the ground away from there."""

    def point(window: MainWindow) -> QPoint:
        one = window.views.ground.eye.figure.beds[number]
        x, y = one.frame.to_ground(reading * M, 40 * CM)
        return on_ground(x / M + right, y / M + down)(window)

    return point


def handle(number: int) -> Place:
    """The handle that turns a bed."""

    def point(window: MainWindow) -> QPoint:
        view = window.views.ground
        at = QPointF(*handle_at(view.eye.figure.beds[number], view.eye.eye)) * magnified()
        return view.mapToGlobal(at.toPoint())

    return point


def lies(person: Person, number: int) -> tuple[int, int, int]:
    """Where a bed lies in cm, and how it is turned in degrees."""
    plan = person.window.document.plan
    one = frames_of(plan)[plan.beds[number].id]
    return one.x // CM, one.y // CM, round(one.turn)


def job(person: Person) -> None:
    """The whole job, to the plan as it was."""
    person.press("ctrl+n")
    fill(person, "New plan", PLAN)
    begun = person.plan()
    person.press("alt+b", "u")
    fill(person, "Add a tunnel", TUNNEL)
    person.wait_until(person.window.views.ground.isVisible, "the ground with the new tunnel")
    _by_mouse(person)
    _by_keys(person)
    for _step in range(person.see(person.window.document.stack.count)):
        person.press("ctrl+z")
    assert person.plan() is begun


def _by_mouse(person: Person) -> None:
    """Into the corner between the cold edges; then the other bed upright beside the tunnel."""
    person.drag(in_bed(0, 5), on_ground(2.6 + 5, 2.6 + 0.4))
    person.expect(lambda: lies(person, 0), (250, 250, 0))
    before = person.see(lambda: lies(person, 1))
    person.carry(in_bed(1, 5), in_bed(1, 5, right=3, down=1))
    person.press("Escape")
    person.let_go()
    assert person.see(lambda: lies(person, 1)) == before
    person.drag(handle(1), in_bed(1, 0, down=10))
    person.expect(lambda: lies(person, 1), (*before[:2], 90))


def _by_keys(person: Person) -> None:
    """The first bed a stride to the right and a finger down, turned and back; its strip, and a cover over it."""
    person.press("F6", "bracketleft")
    person.expect(lambda: person.window.sight.bed, person.plan().beds[0].id)
    person.press("Right", "shift+Down", "ctrl+Right", "ctrl+Left")
    person.expect(lambda: lies(person, 0), (255, 251, 0))
    person.press("Return")
    person.wait_until(person.window.canvas.isVisible, "the strips")
    person.press("ctrl+t")
    fill(person, "Cover over Bed 1", {})
    person.expect(lambda: len(person.window.document.plan.covers), 1)
    person.press("ctrl+g")
    person.wait_until(person.window.views.ground.isVisible, "the ground again")


@pytest.mark.screen
@needs_screen
def test_beds_are_placed_on_the_ground_by_mouse_and_by_keys(tmp_path: Path) -> None:
    walk(job, tmp_path)
