"""The window by its index alone: a plan from four answers, a key changed and used, steps gone back, help read."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from gardenplot.window.keys_page import KeysPage
from tests.journeys.dialogs import dialog, fill, name_file
from tests.journeys.person import Person, plain
from tests.journeys.screen import needs_screen, walk

PLAN = {"name": "Moss end", "beds": "2", "length": "10", "width": "90", "crop": "Leek"}


def job(person: Person) -> None:
    """From the empty window to a plan that stands as it was begun."""
    _begin(person)
    begun = person.plan()
    _change_a_key(person)
    _go_back_by_steps(person)
    assert person.plan() is begun
    _read_help(person)


def _look_up(person: Person, text: str, name: str) -> None:
    """Open the index by its key, type, and go to the first line, which must be that one."""
    index = person.window.index
    person.press("F3")
    person.wait_until(index.line.hasFocus, "the keyboard in the index")
    person.type(text)
    person.expect(lambda: plain(index.model.lines[0].sought.name) if index.model.lines else "", name)
    person.press("Return")


def _begin(person: Person) -> None:
    """Four answers by Tab; the first crop stands in the first bed and is chosen."""
    _look_up(person, "begin", "New plan …")
    fill(person, "New plan", PLAN)
    person.expect_blocks("A Leek 0.00 – 9.91 m 5 × 65 325")
    person.expect(lambda: person.window.sight.planting, "leek")
    person.press("ctrl+s")
    name_file(person, "Save plan as", person.folder / "moss.gardenplot")
    person.expect(lambda: person.window.document.is_saved, True)
    _look_up(person, "bed 2", "Bed 2")
    person.expect(lambda: person.window.sight.bed, person.plan().beds[1].id)
    _look_up(person, "a leek", "A Leek 5 × 65 = 325")
    person.expect(lambda: person.window.sight.planting, "leek")


def _change_a_key(person: Person) -> None:
    """Ctrl+B is refused with the name of its owner, F9 is taken and zooms."""
    _look_up(person, "shortcut", "Keys …")
    page = dialog(person, "Keys")
    assert isinstance(page, KeysPage)
    person.type("zoom in")
    person.expect(page.table.topLevelItemCount, 1)
    person.press("Tab", "Return", "ctrl+b")
    person.expect(lambda: "Add bed" in page.told.text(), True)
    person.photograph("clash")
    person.click(page.table)
    person.press("Return", "F9")
    person.expect(lambda: "now has the keys F9" in page.told.text(), True)
    person.press("Escape")
    person.wait_until(lambda: QApplication.activeModalWidget() is None, "the end of the page of keys")
    before = person.see(lambda: person.window.canvas.view.along)
    person.press("F9")
    person.wait_until(lambda: person.window.canvas.view.along > before, "a larger drawing")


def _go_back_by_steps(person: Person) -> None:
    """Two steps by keys, then back to the first by the list."""
    person.press("F6", "ctrl+Left", "ctrl+Left", "Right")
    person.expect(person.window.document.stack.count, 2)
    _look_up(person, "panel step", "Steps")
    person.wait_until(person.window.steps.isVisible, "the list of steps")
    person.photograph("steps")
    person.click(person.window.steps)
    person.press("Home", "Return")
    person.expect(person.window.document.stack.index, 0)
    person.expect(lambda: person.window.document.is_saved, True)


def _read_help(person: Person) -> None:
    """F1 opens the page, which says the key as it is now; Escape closes it."""
    person.press("F1")
    person.wait_until(lambda: _help_is_open(person), "the help page")
    person.photograph("help")
    page = person.window.pages.page
    assert page is not None
    person.see(page.activateWindow)
    person.wait_until(page.isActiveWindow, "the keyboard in the help page")
    person.see(page.close)


def _help_is_open(person: Person) -> bool:
    page = person.window.pages.page
    return page is not None and page.isVisible()


@pytest.mark.screen
@needs_screen
def test_a_plan_is_begun_and_gone_through_by_the_index_and_keys(tmp_path: Path) -> None:
    walk(job, tmp_path)
