"""One window for all tests of a module that work in dialogs, panels or a drawing: it begins anew for each of them.

Making a window takes a quarter of a second. Tests of docks and of what is remembered have their own. So has a test
that is marked as one for which what was done in the window before counts: what was copied, where it was clicked.
"""

import pytest

from gardenplot.window.main import MainWindow

__all__ = ["window"]


@pytest.fixture
def window(request: pytest.FixtureRequest) -> MainWindow:
    """The module's window, showing the metric plan as a new one does."""
    is_own = request.node.get_closest_marker("own_window") is not None
    shown = request.getfixturevalue("own_window" if is_own else "host")
    assert isinstance(shown, MainWindow)
    return shown
