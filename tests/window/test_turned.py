"""Turning a grid is chosen in the panel, where a bed has edges to turn to."""

from gardenplot.plan import Phase, planting_of
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from tests.drawing.test_turned import turned
from tests.window.test_panels import choose

TURNED = "where most plants fit, turned to an edge"


def said(window: MainWindow) -> list[str]:
    """The ways that rows may lie, as the panel offers them."""
    box = window.inspector.planting.chosen["phase"]
    return [box.itemText(row) for row in range(box.count())]


def test_rows_are_turned_to_an_edge_and_back_by_undo(window: MainWindow, document: Document) -> None:
    document.start(turned(pattern="staggered", phase="centred"))
    window.sight.select("b", "p")
    assert said(window) == ["centred", "where most plants fit", TURNED]
    choose(window, "phase", TURNED)
    assert planting_of(document.plan, "p").phase is Phase.TURNED
    assert "rows turned" in window.inspector.planting.working.text()
    document.stack.undo()
    assert planting_of(document.plan, "p").phase is Phase.CENTRED


def test_it_is_offered_only_where_it_can_be(window: MainWindow, document: Document) -> None:
    document.start(turned(pattern="straight", phase="best"))
    window.sight.select("b", "p")
    assert said(window) == ["centred", "where most plants fit"]
    choose(window, "pattern", "cells")
    assert said(window)[-1] == TURNED
