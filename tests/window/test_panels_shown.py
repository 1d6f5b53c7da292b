"""Panels that were closed, or lie behind others, come forward when they are asked for."""

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gardenplot.window.main import MainWindow


def test_a_panel_behind_another_comes_forward_before_it_is_closed(window: MainWindow) -> None:
    switch, season = window.registry.made("view.season"), window.season
    seen = []
    for _time in range(3):
        switch.trigger()
        QApplication.processEvents()
        seen.append((not season.visibleRegion().isEmpty(), switch.isChecked()))
    assert seen == [(True, True), (False, False), (True, True)]


@pytest.mark.parametrize(("action", "table"), [("counts", 0), ("orders", 2), ("dates", 4), ("findings", 6)])
def test_each_table_is_gone_to_even_where_its_panel_is_closed(
    window: MainWindow, qtbot: QtBot, action: str, table: int
) -> None:
    window.registry.made("view.ledger").trigger()
    assert not window.ledger.isVisible()
    qtbot.waitUntil(window.isActiveWindow)
    window.registry.made(f"edit.{action}").trigger()
    assert window.ledger.currentIndex() == table
    assert QApplication.focusWidget() is getattr(window.ledger, action)
