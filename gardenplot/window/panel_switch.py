"""The switch of a panel, as it stands in the menu and in the index."""

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QDockWidget


def switch_of(dock: QDockWidget) -> QAction:
    """What shows a panel, brings it forward where it lies behind another, and hides it where it is seen."""
    shown, made = dock.toggleViewAction(), QAction(dock.windowTitle(), dock)
    made.setCheckable(True)
    made.setChecked(shown.isChecked())
    shown.toggled.connect(made.setChecked)
    made.triggered.connect(lambda _checked=False: _turn(dock, made))
    return made


def _turn(dock: QDockWidget, switch: QAction) -> None:
    """Show a panel that is closed or behind another, else close it; the switch tells whether it is open."""
    dock.setVisible(dock.isHidden() or dock.visibleRegion().isEmpty())
    dock.raise_()
    switch.setChecked(not dock.isHidden())
