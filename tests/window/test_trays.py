"""A block of trays in the window: no patterns to pick, no layouts to compare, and the reason why."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from tests.window.shared_window import window
from tests.window.test_planting_days import plan_of

__all__ = ["window"]

TRAYS: dict[str, object] = {"id": "t1", "bed": "b1", "crop": "kale", "from": "15 m", "plants": 2, "hardens": "p1"}


@pytest.fixture
def with_trays(window: MainWindow, document: Document) -> MainWindow:
    """Kale with its trays in the same bed; the trays are selected."""
    document.start(plan_of(TRAYS))
    window.sight.select("b1", "t1")
    return window


def test_trays_have_no_patterns_to_pick_and_no_layouts_to_compare(with_trays: MainWindow) -> None:
    panel, action = with_trays.inspector.planting, with_trays.registry.made("planting.compare")
    assert (panel.patterns.isVisible(), panel.compare.isVisible(), action.isEnabled()) == (False, False, False)
    assert panel.form.fields["plants"].isVisible()
    assert not panel.chosen["pattern"].isVisible()
    with_trays.sight.select("b1", "p1")
    assert (panel.patterns.isVisible(), panel.compare.isVisible(), action.isEnabled()) == (True, True, True)
    assert panel.chosen["pattern"].isVisible()


def test_their_days_and_orders_are_those_of_the_planting_that_they_are_for(with_trays: MainWindow) -> None:
    panel = with_trays.inspector.planting
    fields, days = panel.form.fields, ("in_ground", "out", "sow", "actual_set_out", "actual_sown", "actual_harvested")
    assert panel.under_title.text() == "Tunnel · hardening off Tue 13 Apr – Tue 20 Apr 2027"
    assert not any(fields[name].isVisible() for name in days)
    assert not any(panel.form.hints[name].isVisible() for name in (*days, "order"))
    assert not panel.order.isVisible()
    assert fields["plants"].accessibleName() == "Trays"
    with_trays.sight.select("b1", "p1")
    assert all(fields[name].isVisible() for name in days)
    assert panel.order.isVisible()
    assert fields["plants"].accessibleName() == "Plants"


def test_the_keys_say_why(with_trays: MainWindow) -> None:
    QTest.keyClick(with_trays.canvas, Qt.Key.Key_L, Qt.KeyboardModifier.ControlModifier)
    told = "These are trays that harden off: layouts are compared of the planting that they are for."
    assert with_trays.statusBar().currentMessage() == told
    assert with_trays.registry.made("planting.compare").toolTip() == told
