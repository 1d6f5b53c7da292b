"""The switch of a panel, as it stands in the menu and in the index."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QDockWidget, QWidget


def switch_of(dock: QDockWidget) -> QAction:
    """What shows a panel, brings it forward where it lies behind another, and hides it where it is seen."""
    shown, made = dock.toggleViewAction(), QAction(dock.windowTitle(), dock)
    made.setCheckable(True)
    made.setChecked(shown.isChecked())
    shown.toggled.connect(made.setChecked)
    made.triggered.connect(lambda _checked=False: _turn(dock, made))
    return made


def go_to(part: QWidget) -> None:
    """Put the keyboard into a part of a panel, which is shown and comes forward where it lies behind another."""
    bring_forward(part)
    part.setFocus(Qt.FocusReason.ShortcutFocusReason)


def bring_forward(part: QWidget) -> None:
    """Show the panel of a part, in front of those that share its place."""
    around = part.parentWidget()
    while around is not None and not isinstance(around, QDockWidget):
        around = around.parentWidget()
    if around is not None:
        around.show()
        around.raise_()


def _turn(dock: QDockWidget, switch: QAction) -> None:
    """Show a panel that is closed or behind another, else close it; the switch tells whether it is open."""
    dock.setVisible(dock.isHidden() or dock.visibleRegion().isEmpty())
    dock.raise_()
    switch.setChecked(not dock.isHidden())
