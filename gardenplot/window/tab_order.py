"""Parts of the window that are made late have their place in the order of the Tab key all the same."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget


def put_behind(before: QWidget, late: QWidget) -> list[QWidget]:
    """Have Tab come to all of a part that was made just now right behind another part, which may take no keys itself.

    Gives what takes keys in the part, in the order of its children. Qt puts what is made last at the very end of its
    window. That order is told and never asked: what `nextInFocusChain` gives to Python goes along with the part that
    was asked for it, and takes actions with it that are in use.
    """
    inside = (late, *late.findChildren(QWidget))
    stops = [one for one in inside if _takes_keys(one) and one.window() is late.window()]
    policy = before.focusPolicy()
    # Qt puts nothing behind what takes no keys, though that has a place in the order too.
    before.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    last = before
    for stop in stops:
        QWidget.setTabOrder(last, stop)
        last = stop
    before.setFocusPolicy(policy)
    return stops


def _takes_keys(part: QWidget) -> bool:
    return part.focusPolicy() != Qt.FocusPolicy.NoFocus
