"""What a person does with the dialogs of answers, which stand beside the drawing."""

from typing import TypeVar

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QTreeWidget

from gardenplot.window.answers_dialog import AnswersDialog
from gardenplot.window.main import MainWindow
from tests.journeys.dialogs import name_file
from tests.journeys.person import Person
from tests.journeys.places import Place
from tests.scenarios.again_plans import SCENARIOS

AnyDialog = TypeVar("AnyDialog", bound=AnswersDialog)


def open_plan(person: Person, name: str) -> None:
    """Open the plan file of a scenario."""
    person.press("ctrl+o")
    name_file(person, "Open plan", SCENARIOS / name)


def answers(person: Person, kind: type[AnyDialog]) -> AnyDialog:
    """The dialog of that kind that is open, once its answers are there."""

    def found() -> AnyDialog | None:
        there = (one for one in person.window.findChildren(kind) if one.isVisible())
        return next((one for one in there if one.view.trouble is not None), None)

    person.wait_until(found, "answers")
    dialog = person.see(found)
    assert dialog is not None
    return dialog


def row(table: QTreeWidget, begins: str, column: int = 0) -> Place:
    """A row of a table, by how a cell of it begins."""

    def place(_window: MainWindow) -> QPoint:
        (item,) = table.findItems(begins, Qt.MatchFlag.MatchStartsWith, column)
        table.scrollToItem(item)
        at = table.visualItemRect(item)
        return table.viewport().mapToGlobal(QPoint(min(60, at.center().x()), at.center().y()))

    return place
