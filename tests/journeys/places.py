"""Where a person points to in the window: screen places of crops, tape readings, names and tabs."""

from collections.abc import Callable

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QComboBox, QSlider, QStyle, QStyleOptionSlider, QTabBar, QWidget

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


def panel(name: str) -> Place:
    """The tab of a panel that lies behind or before another."""

    def place(window: MainWindow) -> QPoint:
        bars = [bar for bar in window.findChildren(QTabBar) if bar.parent() is window and bar.isVisible()]
        bar, number = next((bar, n) for bar in bars for n in range(bar.count()) if bar.tabText(n) == name)
        return bar.mapToGlobal(bar.tabRect(number).center())

    return place


def count_row(name: str) -> Place:
    """The row of a planting in the counts, by how it begins."""

    def place(window: MainWindow) -> QPoint:
        table = window.ledger.counts
        (row,) = table.findItems(name, Qt.MatchFlag.MatchStartsWith | Qt.MatchFlag.MatchRecursive)
        return table.viewport().mapToGlobal(table.visualItemRect(row).center())

    return place


def entry(box: QComboBox, words: str) -> Place:
    """An entry in the open list of a choice."""

    def place(_window: MainWindow) -> QPoint:
        view = box.view()
        assert view.isVisible(), "the list of the choice is not open"
        return view.viewport().mapToGlobal(view.visualRect(box.model().index(box.findText(words), 0)).center())

    return place


def handle(slider: QSlider) -> Place:
    """The handle of a slider."""

    def place(_window: MainWindow) -> QPoint:
        option = QStyleOptionSlider()
        slider.initStyleOption(option)
        part = QStyle.SubControl.SC_SliderHandle
        rect = slider.style().subControlRect(QStyle.ComplexControl.CC_Slider, option, part, slider)
        return slider.mapToGlobal(rect.center())

    return place


def right_end(widget: QWidget) -> Place:
    """Just inside the right end of a widget."""
    return lambda _window: widget.mapToGlobal(QPoint(widget.width() - 1, widget.height() // 2))
