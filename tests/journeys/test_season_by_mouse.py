"""A season of a tunnel bed by mouse on the season map: spring as the sample has it, then summer, then autumn."""

from datetime import date, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QPointF

from gardenplot.drawing.sayings import name_of
from gardenplot.files import sample
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.season_words import season_line
from gardenplot.plan import planting_of
from gardenplot.season import dates_of
from gardenplot.units import MM, parse_length
from gardenplot.window.main import MainWindow
from gardenplot.window.season_axes import Axes
from tests.journeys.person import Person, plain
from tests.journeys.places import Place, crop, panel
from tests.journeys.screen import needs_screen, walk

DAYS = timedelta(days=20)
STEPS = (
    "Remove Cucumber",
    "Place Cucumber",
    "Day out of the ground of Cucumber",
    "Copy Spinach",
    "Place Butterhead lettuce",
    "Move 2 plantings",
    "Resize Butterhead lettuce",
    "Move Butterhead lettuce",
)


def job(person: Person) -> None:
    """The whole season, and all of it undone."""
    window = person.window
    person.see(lambda: window.document.open(sample("kestrel-howe.gardenplot")))
    begun = person.plan()
    person.click(panel("Season map"))
    person.wait_until(lambda: not window.season.visibleRegion().isEmpty(), "the season map")
    person.click(on_block("cucumber-1"))
    person.press("Delete")
    _summer(person)
    _autumn(person)
    person.photograph("season")
    _to_another_bed(person)
    for name in reversed(STEPS):
        person.expect(window.document.stack.undoText, name)
        person.press("ctrl+z")
    person.expect(window.document.stack.canUndo, False)
    assert person.plan() is begun


def _summer(person: Person) -> None:
    """Cucumbers from the shelf to their day on the map, and their lower side drawn to the day they are out."""
    person.drag(crop("Cucumber"), on_map("0.65 m", date(2027, 5, 28)))
    _expect(person, "cucumber", "28 May – 13 Jul 2027, 46 days 0.40 – 17.40 m 34 plants")
    person.drag(on_block("cucumber", "lower"), on_map("9 m", date(2027, 9, 1)))
    _expect(person, "cucumber", "28 May – 1 Sep 2027, 96 days 0.40 – 17.40 m 34 plants")


def _autumn(person: Person) -> None:
    """Spinach copied down with Ctrl, lettuce from the shelf, both moved up together, the lettuce shortened."""
    person.hold("ctrl")
    person.drag(on_block("spinach-1"), on_map("15.4 m", date(2027, 10, 1)))
    person.free("ctrl")
    _expect(person, "spinach-1-2", "1 Sep – 28 Oct 2027, 57 days 14.40 – 16.40 m 4 × 20 = 80")
    person.drag(crop("Butterhead lettuce"), on_map("0.55 m", date(2027, 9, 3)))
    _expect(person, "butterhead", "1 Sep – 16 Oct 2027, 45 days 0.40 – 14.15 m 3 × 55 = 165")
    person.hold("ctrl")
    person.click(on_block("spinach-1-2"))
    person.free("ctrl")
    person.expect(lambda: set(person.window.sight.chosen), {"spinach-1-2", "butterhead"})
    person.drag(on_block("butterhead"), on_map("7.3 m", date(2027, 10, 9)))
    person.expect(person.window.document.stack.undoText, STEPS[5])
    person.expect(lambda: len({_first(person.window, one) for one in ("butterhead", "spinach-1-2")}), 1)
    person.drag(on_block("butterhead", "foot"), on_map("10.4 m", date(2027, 10, 10)))
    person.expect(lambda: _line(person.window, "butterhead").endswith("0.40 – 10.40 m 3 × 40 = 120"), True)


def _to_another_bed(person: Person) -> None:
    """In the maps of all beds in small the lettuce goes to the other tunnel bed, on the days that it has."""
    window = person.window
    first = person.see(lambda: _first(window, "butterhead"))
    person.click(window.season_maps.switch)
    person.wait_until(window.season_maps.beds.isVisible, "the maps of all beds")
    there = in_small("tunnel-south", "7 m", first + DAYS)
    person.carry(in_small("tunnel-north", "5 m", first + DAYS), there)
    person.bring(there)
    person.let_go()
    person.expect(lambda: layout_in(window.document.plan, "butterhead").bed, "tunnel-south")
    person.expect(lambda: _first(window, "butterhead"), first)
    person.photograph("small")


def _expect(person: Person, planting: str, words: str) -> None:
    person.expect(lambda: _line(person.window, planting), words)


def _line(window: MainWindow, planting: str) -> str:
    """A planting's days, readings and plants; nothing while it is not in the plan."""
    plan = window.document.plan
    there = any(one.id == planting for one in plan.plantings)
    return plain(season_line(plan, planting)).partition(name_of(plan, planting))[2].strip() if there else ""


def _first(window: MainWindow, planting: str) -> date:
    first = dates_of(window.document.plan, planting_of(window.document.plan, planting)).in_ground
    assert first is not None
    return first


def _axes(window: MainWindow) -> Axes:
    axes = window.season.axes()
    assert axes is not None
    return axes


def on_map(tape: str, day: date) -> Place:
    """A tape reading on a day of the season map."""
    return lambda window: window.season.mapToGlobal(_point(_axes(window), tape, day))


def in_small(bed: str, tape: str, day: date) -> Place:
    """A tape reading on a day of the map of a bed in small."""

    def place(window: MainWindow) -> QPoint:
        beds = window.season_maps.beds
        axes = next(one for one in beds.all_axes() if one.season.bed == bed)
        return beds.mapToGlobal(_point(axes, tape, day))

    return place


def _point(axes: Axes, tape: str, day: date) -> QPoint:
    return QPointF(axes.x(parse_length(tape).nm / MM), axes.y(day, day) + axes.each / 2).toPoint()


def on_block(planting: str, side: str = "middle") -> Place:
    """The middle of a planting on the season map, just inside its lower side or just inside its foot end."""

    def place(window: MainWindow) -> QPoint:
        axes = _axes(window)
        frame = axes.frame(next(one for one in axes.season.blocks if one.planting == planting))
        at = {
            "middle": frame.center(),
            "lower": QPointF(frame.center().x(), frame.bottom() - 1),
            "foot": QPointF(frame.right() - 1, frame.center().y()),
        }[side]
        return window.season.mapToGlobal(at.toPoint())

    return place


@pytest.mark.screen
@needs_screen
def test_a_season_goes_from_spring_to_autumn_on_the_map_and_back(tmp_path: Path) -> None:
    walk(job, tmp_path)
