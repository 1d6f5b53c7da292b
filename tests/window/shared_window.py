"""One window for all tests of a module that work in dialogs and panels: it begins anew for each of them.

Making a window takes a quarter of a second. Tests of the drawing, of docks and of what is remembered have their own.
"""

import pytest

from gardenplot.window.main import MainWindow

__all__ = ["window"]


@pytest.fixture
def window(host: MainWindow) -> MainWindow:
    """The module's window, showing the metric plan as a new one does."""
    return host
