"""The installed Qt binding gives back every reference to None that it takes."""

import ctypes
import sys
from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage, QPainter, QPen

# PySide6 6.12.0 on CPython 3.10 and 3.11 drops one reference to None on every call that returns nothing, and the
# interpreter aborts after a few thousand of them. From CPython 3.12 on None is immortal: its count never moves,
# so the first test is trivially true there and the second cannot be made.
CALLS = 200


def lost_references(call: Callable[[], None]) -> int:
    """By how much the count of references to None falls over 200 calls."""
    before = sys.getrefcount(None)
    for _ in range(CALLS):
        call()
    return before - sys.getrefcount(None)


def test_calls_that_return_nothing_lose_no_reference() -> None:
    pen = QPen()
    image = QImage(4, 4, QImage.Format.Format_ARGB32)
    painter = QPainter(image)
    losses = {
        "QPen.setWidth": lost_references(lambda: pen.setWidth(2)),
        "QPainter.setPen": lost_references(lambda: painter.setPen(pen)),
        "QPainter.fillRect": lost_references(lambda: painter.fillRect(0, 0, 4, 4, Qt.GlobalColor.white)),
    }
    painter.end()
    assert {name: lost for name, lost in losses.items() if lost > 0} == {}


@pytest.mark.skipif(sys.version_info >= (3, 12), reason="None is immortal")
def test_a_call_that_drops_a_reference_is_found() -> None:
    none = ctypes.py_object(None)
    try:
        assert lost_references(lambda: ctypes.pythonapi.Py_DecRef(none)) == CALLS
    finally:
        for _ in range(CALLS):
            ctypes.pythonapi.Py_IncRef(none)
