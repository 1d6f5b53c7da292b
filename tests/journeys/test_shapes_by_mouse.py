"""A rectangle drawn into another shape, a post put into it, a bed traced below it, and all of it undone."""

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint

from gardenplot.units import parse_length
from gardenplot.window.main import MainWindow
from tests.gestures.shaped import ELL, places, written
from tests.journeys.dialogs import fill
from tests.journeys.person import Person
from tests.journeys.places import Place, bed_name
from tests.journeys.screen import needs_screen, walk

PLAN = {"name": "Moss end", "beds": "1", "length": "10 m", "width": "2 m", "margin": "0 cm"}


def at(place: str, *, traced: bool = False) -> Place:
    """A place like "3 m by 50 cm", in the first bed or on the ground where a bed is traced."""

    def point(window: MainWindow) -> QPoint:
        x, y = (parse_length(part).nm for part in place.split(" by "))
        canvas = window.canvas
        bed = window.document.plan.beds[0].id
        found = canvas.places.ground_point(x, y) if traced else canvas.places.point_of(bed, x, y)
        return canvas.viewport().mapToGlobal(found.toPoint())

    return point


def job(person: Person) -> None:
    """The whole job, to the plan as it was."""
    person.press("ctrl+n")
    fill(person, "New plan", PLAN)
    begun = person.plan()
    _reshape(person)
    _place_post(person)
    _trace(person)
    for name in (
        "Trace Bed 2",
        "Move post in Bed 1",
        "Place post in Bed 1",
        "Reshape bed Bed 1",
        "Reshape bed Bed 1",
    ):
        person.expect(person.window.document.stack.undoText, name)
        person.press("ctrl+z")
    assert person.plan() is begun


def _reshape(person: Person) -> None:
    person.click(bed_name())
    person.press("alt+b", "e")
    person.expect(lambda: len(person.window.document.plan.beds[0].outline), 4)
    person.drag(at("10 m by 2 m"), at("8 m by 1 m"))
    person.expect(
        lambda: places(person.window.document.plan),
        written("0 m by 0 m", "10 m by 0 m", "8 m by 1 m", "0 m by 2 m"),
    )


def _place_post(person: Person) -> None:
    person.press("alt+b", "p")
    person.expect(lambda: len(person.window.document.plan.beds[0].obstacles), 1)
    post = person.plan().beds[0].obstacles[0]
    person.drag(at(f"{post.x} by {post.y}"), at("4 m by 1 m"))
    person.expect(lambda: str(person.window.document.plan.beds[0].obstacles[0].x), "4 m")


def _trace(person: Person) -> None:
    person.press("alt+b", "t")
    person.wait_until(lambda: person.window.canvas.view.has_ground, "the ground for a new bed")
    for corner in (*ELL, ELL[0]):
        person.click(at(corner, traced=True))
    person.expect(lambda: len(person.window.document.plan.beds), 2)
    assert places(person.plan(), 1) == written(*ELL)


@pytest.mark.screen
@needs_screen
def test_beds_are_shaped_by_mouse_and_undone_to_the_very_same_plan(tmp_path: Path) -> None:
    walk(job, tmp_path)
