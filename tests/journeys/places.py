"""Where a person points to in the window: screen places of crops, tape readings, names and tabs."""

from collections.abc import Callable

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QWidget

from gardenplot.units import parse_length
from gardenplot.window.main import MainWindow

Place = Callable[[MainWindow], QPoint]


def middle_of(widget: QWidget) -> Place:
    """The middle of a widget."""

    def place(_window: MainWindow) -> QPoint:
        assert widget.isVisible(), f"{widget} is not to be seen"
        return widget.mapToGlobal(widget.rect().center())

    return place


def crop(name: str) -> Place:
    """A crop on the shelf."""

    def place(window: MainWindow) -> QPoint:
        shelf = window.shelf
        row = [one.name for one in shelf.model.crops].index(name)
        return shelf.list.viewport().mapToGlobal(shelf.list.visualRect(shelf.model.index(row)).center())

    return place


def reading(tape: str, *, bed: int = 0) -> Place:
    """A tape reading, in the middle of a bed."""

    def place(window: MainWindow) -> QPoint:
        wanted = window.document.plan.beds[bed]
        point = window.canvas.places.point_of(wanted.id, parse_length(tape).nm, wanted.width.nm // 2)
        return window.canvas.viewport().mapToGlobal(point.toPoint())

    return place


def bed_name(bed: int = 0) -> Place:
    """The name of a bed, left of its head end."""
    return lambda window: reading("0 m", bed=bed)(window) - QPoint(90, 0)


def tab(name: str) -> Place:
    """A tab of the ledger."""

    def place(window: MainWindow) -> QPoint:
        bar = window.ledger.tabBar()
        number = [bar.tabText(number) for number in range(bar.count())].index(name)
        return bar.mapToGlobal(bar.tabRect(number).center())

    return place
