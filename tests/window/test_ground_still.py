"""The picture that is kept of the ground without the chosen beds never shows what has gone by."""

from datetime import date

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gardenplot.drawing.covers import Layer
from gardenplot.plan import Tunnel, edits
from gardenplot.units import parse_length
from gardenplot.window.document import Document
from gardenplot.window.ground_view import GroundView
from gardenplot.window.layers import Layers
from gardenplot.window.sight import Sight
from tests.plans import metric_plan


def painted_from_nothing(view: GroundView) -> QImage:
    """What the view shows once it was of another size meanwhile."""
    size = view.size()
    view.resize(size.width() - 40, size.height())
    view.grab()
    view.resize(size)
    return view.grab().toImage()


def test_the_first_bed_that_is_moved_gives_all_their_place_and_none_of_them_is_painted_anew(
    dressed: QApplication,  # noqa: ARG001  # it has to be there first
    qtbot: QtBot,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    document = Document()
    document.start(metric_plan())
    sight = Sight(document)
    view = GroundView(document, sight, Layers())
    qtbot.addWidget(view)
    view.resize(700, 500)
    sight.select("b1", None)
    dashed = view.grab().toImage()
    painted: list[object] = []
    with monkeypatch.context() as watched:
        watched.setattr("gardenplot.window.ground_still.paint_still", lambda *_rest, **_named: painted.append(view))
        QTest.keyClick(view, Qt.Key.Key_Right)
        assert {one.bed for one in document.plan.ground} == {"b1", "b2"}
        shown = view.grab().toImage()
    assert not painted
    assert shown != dashed
    assert shown == painted_from_nothing(view)


def test_after_any_change_the_ground_shows_what_a_painting_from_nothing_would(
    dressed: QApplication,  # noqa: ARG001  # it has to be there first
    qtbot: QtBot,
) -> None:
    document = Document()
    document.start(edits.copy_bed(metric_plan(), metric_plan().beds[0].id))
    first, second = (bed.id for bed in document.plan.beds[:2])
    sight, layers = Sight(document), Layers()
    view = GroundView(document, sight, layers)
    qtbot.addWidget(view)
    view.resize(700, 500)
    # From then on the view looks at the same ground, whatever its size.
    view.eye.zoom(1.1, QPointF(300, 200))
    seen = [view.grab().toImage()]
    x, y, long, wide = (parse_length(text) for text in ("1 m", "1 m", "3 m", "1 m"))
    for change in (
        lambda: sight.select(first, None),
        lambda: QTest.keyClick(view, Qt.Key.Key_Right),
        lambda: sight.select(second, None),
        lambda: document.change("", edits.change_bed(document.plan, first, width=parse_length("60 cm"))),
        lambda: document.change("", edits.add_tunnel(document.plan, Tunnel("t", "High", x, y, long, wide))),
        lambda: sight.show_day(date(2020, 1, 1)),
        lambda: layers.show(Layer.LEFTOVER, False),
        document.stack.undo,
        lambda: view.eye.pan(QPointF(9, 5)),
    ):
        change()
        shown = view.grab().toImage()
        assert shown == painted_from_nothing(view)
        assert shown != seen[-1]
        seen.append(shown)
